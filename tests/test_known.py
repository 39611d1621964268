"""What is known of a logs folder from build to build is what reading and reckoning all of it at once tells."""

import os
import pickle
import random
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import chdir, closing
from pathlib import Path
from unittest.mock import patch

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.known import Reading, Task, look, read_and_reckon, reckoned
from logbook.model.figures import Reckoned
from logbook.model.past import Past
from logbook.model.trip import without_entries
from logbook.read.folder import Folder, named_from, open_file, read_folder
from logbook.reckon.head import head_in
from logbook.reckon.trip import reckon_trips
from logbook.store.store import Store, StoreError

_FLEET = """\
fleet: Test Fleet
waters: N W
units: {depth: fm, catch: basket}
measures: {basket: 40 kg}
vessels:
  - {name: Solan Bright, steaming speed: 9.5 kn, nets: [{name: rockhopper}, {name: flat net}]}
  - {name: Ternbank, steaming speed: 9 kn}
ports:
  - {name: Port Kerrin, at: 59 40.0N 012 10.0W}
"""
_VESSELS = ("Solan Bright", "Ternbank", "solan  bright", "Auk")


def text(chance: random.Random, vessel: str | None = None, day: int | None = None) -> str:
    """Return a log of a few days of 2026, so that trips overlap, follow closely and bear on each other in all ways."""
    day = day or chance.randint(1, 60)
    start = f"2026-{1 + day // 28:02}-{1 + day % 28:02}"
    end = f"2026-{1 + (day + 2) // 28:02}-{1 + (day + 2) % 28:02}"
    hauled, cod = chance.choice(("19:40", "20:10")), chance.choice(("3", "12", "x", "5 fish"))
    net = chance.choice(("rockhopper", "flat net", "old net"))
    lines = [
        f"vessel: {vessel or chance.choice(_VESSELS)}",
        f"sailed: {start} 05:30, Port Kerrin",
        "tows:",
        f"  - {{shot: 18:10, hauled: {hauled}, net: {net}, catch: {{cod: {cod}}}}}",
        f"  - {{shot: 21:30, hauled: 22:10, catch: {{{chance.choice(('ling', 'codling', 'oddfish'))}: 9 baskets}}}}",
    ]
    if chance.random() < 0.3:
        part = chance.choice(("net: rockhopper", "net: flat net", "doors: both", "net"))
        lines += [
            "gear:",
            f"  - {{at: {start} 20:30, {part}, event: {chance.choice(('mended', 'changed', 'measured'))}}}",
        ]
    if chance.random() < 0.4:
        lines += ["rest:", f"  - {{who: A. Fell, from: {start} 06:00, to: {chance.choice(('12:00', '13:00'))}}}"]
    if chance.random() < 0.8:
        lines.append(
            f"landed: {{docked: {end} 21:15, port: Port Kerrin, out-turn: {{cod: {chance.randint(300, 500)} kg}}}}"
        )
    return "\n".join([*lines, ""])


def begin(folder: Path, chance: random.Random, logs: int) -> Path:
    """Write a fleet file and some logs."""
    folder.mkdir(parents=True)
    (folder / "fleet.yaml").write_text(_FLEET, "utf-8")
    for number in range(logs):
        (folder / f"log-{number:02}.yaml").write_text(text(chance), "utf-8")
    return folder


def at_once(logs: Path, last_good: tuple[Reckoned, ...] = ()) -> tuple[Folder, tuple[Reckoned, ...]]:
    """Return what reading and reckoning all of a folder tells, without what only reckoning needed."""
    with chdir(logs):  # so that the places of entries have their files' names from the logs folder
        folder = named_from(read_folder(Path()), Path())
        made = reckon_trips(folder.trips, folder.fleet, folder.problems, last_good)
    return folder, tuple(
        replace(one, log=without_entries(one.log), neighbours=replace(one.neighbours, past=Past())) for one in made
    )


def told(reading: Reading) -> tuple[Reckoned, ...]:
    """Return every trip."""
    return tuple(reading.trip(name) for name in reading.names)


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    with closing(Store(tmp_path / "store.sqlite")) as made:
        yield made


def _edit(logs: Path, chance: random.Random) -> None:
    chance.choice(_logs(logs)).write_text(text(chance), "utf-8")


def _touch(logs: Path, chance: random.Random) -> None:
    file = chance.choice(_logs(logs))
    file.write_text(file.read_text("utf-8") + "\n", "utf-8")


def _add(logs: Path, chance: random.Random) -> None:
    (logs / f"log-{chance.randint(10, 99)}.yaml").write_text(text(chance), "utf-8")


def _copy(logs: Path, chance: random.Random) -> None:
    (logs / f"log-{chance.randint(10, 99)}.yaml").write_bytes(chance.choice(_logs(logs)).read_bytes())


def _take_away(logs: Path, chance: random.Random) -> None:
    chance.choice(_logs(logs)).unlink()


def _rename(logs: Path, chance: random.Random) -> None:
    chance.choice(_logs(logs)).rename(logs / f"log-{chance.randint(10, 99)}.yaml")


def _spoil(logs: Path, chance: random.Random) -> None:
    chance.choice(_logs(logs)).write_text("nothing of a trip\n", "utf-8")


def _fleet(logs: Path, chance: random.Random) -> None:
    (logs / "fleet.yaml").write_text(_FLEET.replace("40 kg", f"{chance.randint(38, 42)} kg"), "utf-8")


def _fleet_below(logs: Path, chance: random.Random) -> None:
    below = logs / "own"
    below.mkdir(exist_ok=True)
    (below / "fleet.yaml").write_text(f"fleet: Own\nlimits: {{ice days: {chance.choice(('soon', '8'))}}}\n", "utf-8")
    (below / "log-1.yaml").write_text(text(chance), "utf-8")


def _nothing(_logs: Path, _chance: random.Random) -> None:
    pass


_CHANGES = (_edit, _touch, _add, _copy, _take_away, _rename, _spoil, _fleet, _fleet_below, _nothing)


def _logs(folder: Path) -> list[Path]:
    return sorted(folder.glob("log-*.yaml")) or [folder / "log-00.yaml"]


@settings(max_examples=12, deadline=None)
@given(seed=st.integers(0, 2**32), changes=st.lists(st.sampled_from(_CHANGES), min_size=1, max_size=5))
def test_what_is_known_is_what_all_of_it_tells_at_once(
    tmp_path_factory: pytest.TempPathFactory, seed: int, changes: list[Callable[[Path, random.Random], None]]
) -> None:
    folder, chance = tmp_path_factory.mktemp("known"), random.Random(seed)
    logs = begin(folder / "logs", chance, 7)
    before: dict[tuple[str, bytes], Reckoned] = {}
    for change in (_nothing, *changes):
        if change is not _take_away or len(_logs(logs)) > 1:
            change(logs, chance)
        with closing(Store(folder / "store.sqlite")) as store:
            reading = read_and_reckon(logs, store)
            trips = told(reading)
            keys = {name: reading.key(name) for name in reading.names}
            shown, named = reading.shown, reading.folder
            heads = [reading.head(name) for name in reading.names]
            store.keep()
        whole, expected = at_once(logs)

        assert trips == expected, change.__name__
        assert reading.names == tuple(one.log.file for one in expected)
        assert heads == [head_in(one) for one in expected]
        assert (shown.problems, shown.logs, shown.unread) == (whole.problems, whole.logs, whole.unread)
        given_names = read_folder(logs)
        assert (named.problems, named.unread) == (given_names.problems, given_names.unread)
        for name, trip in zip(reading.names, trips, strict=True):
            assert before.setdefault((name, keys[name]), trip) == trip, "one key, two trips"


def row(tmp_path: Path, days: int = 6) -> Path:
    """Write logs of one vessel that follow each other week by week, and one of another."""
    logs = tmp_path / "logs"
    logs.mkdir()
    (logs / "fleet.yaml").write_text(_FLEET, "utf-8")
    for week in range(days):
        (logs / f"log-{week}.yaml").write_text(_WEEK.format(week=week, day=1 + 4 * week), "utf-8")
    (logs / "other.yaml").write_text(_WEEK.format(week=9, day=3).replace("Solan Bright", "Auk"), "utf-8")
    return logs


_WEEK = """\
vessel: Solan Bright
skipper: A. Fell
trip: {week}
sailed: 2026-03-{day:02} 05:30, Port Kerrin
tows:
  - {{shot: 18:10, hauled: 19:40, net: rockhopper, catch: {{cod: 12}}}}
  - {{shot: 20:30, hauled: 22:10, net: rockhopper, catch: {{ling: 4}}}}
gear:
  - {{at: 2026-03-{day:02} 20:00, net: rockhopper, event: mended}}
landed: {{docked: 2026-03-{day:02} 23:15, port: Port Kerrin, out-turn: {{cod: 350 kg}}}}
"""


def changed(logs: Path, store: Store, change: Callable[[], object]) -> list[str]:
    """Return the logs whose trips have other keys after a change."""
    before = read_and_reckon(logs, store)
    keys = {name: before.key(name) for name in before.names}
    change()
    after = read_and_reckon(logs, store)
    return [name for name in after.names if keys.get(name) != after.key(name)]


def edited(file: Path, old: str, new: str) -> None:
    text = file.read_text("utf-8")
    assert old in text
    file.write_text(text.replace(old, new), "utf-8")


@pytest.mark.parametrize(
    ("old", "new", "others"),
    [
        pytest.param("A. Fell", "B. Fell", (), id="a name bears on no other trip"),
        pytest.param("ling: 4", "ling: 5", (), id="nor does fish that was not weighed ashore"),
        pytest.param("22:10", "22:20", ("log-3.yaml",), id="hours since mended, till it is mended again"),
        pytest.param("out-turn: {cod: 350 kg}", "out-turn: {cod: 380 kg}", (), id="a ratio that moves no quartile yet"),
        pytest.param(", out-turn: {cod: 350 kg}", "", ("log-3.yaml", "log-4.yaml", "log-5.yaml"), id="how many ratios"),
        pytest.param("05:30", "05:20", ("log-1.yaml",), id="when she next sailed"),
    ],
)
def test_a_change_reaches_those_it_bears_on_alone(
    tmp_path: Path, store: Store, old: str, new: str, others: tuple[str, ...]
) -> None:
    logs = row(tmp_path)

    found = changed(logs, store, lambda: edited(logs / "log-2.yaml", old, new))

    assert sorted(found) == sorted(("log-2.yaml", *others))


def test_a_new_trip_reaches_its_neighbours(tmp_path: Path, store: Store) -> None:
    logs = row(tmp_path)
    new = _WEEK.format(week=8, day=28)

    assert changed(logs, store, lambda: (logs / "new.yaml").write_text(new, "utf-8")) == ["log-5.yaml", "new.yaml"]


def test_what_changes_nothing_that_is_said_changes_no_key(tmp_path: Path, store: Store) -> None:
    logs = row(tmp_path)

    assert changed(logs, store, lambda: edited(logs / "log-2.yaml", "350 kg}}", "350 kg}}  # a word")) == []
    assert changed(logs, store, lambda: edited(logs / "fleet.yaml", "fleet: Test", "# a word\nfleet: Test")) == []
    assert len(changed(logs, store, lambda: edited(logs / "fleet.yaml", "40 kg", "41 kg"))) == 7


def test_a_log_that_has_not_changed_is_not_opened(tmp_path: Path, store: Store) -> None:
    logs = row(tmp_path)
    for file in logs.iterdir():
        os.utime(file, ns=(10**18, 10**18))
    read_and_reckon(logs, store)
    edited(logs / "log-3.yaml", "A. Fell", "B. Fell")

    with patch.object(look, "open_file", wraps=open_file) as opened:
        told(read_and_reckon(logs, store))
    assert [call.args[1] for call in opened.call_args_list] == ["log-3.yaml"]


def test_a_log_of_the_last_moments_is_looked_at_again(tmp_path: Path, store: Store) -> None:
    logs = row(tmp_path)
    read_and_reckon(logs, store)
    file, seen = logs / "log-3.yaml", (logs / "log-3.yaml").stat()
    edited(file, "A. Fell", "B. Fell")
    os.utime(file, ns=(seen.st_atime_ns, seen.st_mtime_ns))  # as a change within the clock's grain leaves it

    assert read_and_reckon(logs, store).trip("log-3.yaml").log.skipper == "B. Fell"


def test_the_folder_may_be_named_in_any_way(tmp_path: Path, store: Store) -> None:
    logs = row(tmp_path)
    read_and_reckon(logs, store)
    with chdir(tmp_path):
        there = read_and_reckon(Path("logs"), store)
        with chdir(logs):
            here = read_and_reckon(Path(), store)

    assert there.names == here.names
    assert [there.key(name) for name in there.names] == [here.key(name) for name in here.names]


def test_one_log_is_read_by_itself(tmp_path: Path, store: Store) -> None:
    logs = row(tmp_path)
    reading = read_and_reckon(logs / "log-1.yaml", store)

    assert (reading.shown.logs, reading.names) == (1, (str(logs / "log-1.yaml"),))
    assert reading.trip(reading.names[0]).figures.trip.id == "solan-bright-2026-03-05"


def test_a_folder_that_cannot_be_listed_is_told_and_nothing_forgotten(tmp_path: Path, store: Store) -> None:
    logs = row(tmp_path)
    names = read_and_reckon(logs, store).names
    with patch("logbook.read.folder.os.scandir", side_effect=PermissionError), pytest.raises(PermissionError):
        read_and_reckon(logs, store)

    assert read_and_reckon(logs, store).names == names


def test_trips_as_they_were_take_their_place(tmp_path: Path, store: Store) -> None:
    logs = row(tmp_path)
    _, trips = at_once(logs)
    lost = [replace(one, log_unread=True) for one in trips if one.log.file in {"log-2.yaml", "log-5.yaml"}]
    for one in lost:
        (logs / one.log.file).write_text("spoilt\n", "utf-8")

    reading = read_and_reckon(logs, store)
    with_them = reading.with_last_good(lost)

    assert reading.shown.unread == ("log-2.yaml", "log-5.yaml")
    assert told(reading) == at_once(logs)[1]
    assert told(with_them) == at_once(logs, tuple(lost))[1]
    assert with_them.names == tuple(one.log.file for one in at_once(logs, tuple(lost))[1])
    assert [with_them.head(name) for name in with_them.names] == [head_in(one) for one in told(with_them)]
    assert with_them.key("log-3.yaml") != reading.key("log-3.yaml")
    assert with_them.key("other.yaml") == reading.key("other.yaml")
    assert told(reading) == at_once(logs)[1]


def test_a_task_goes_to_another_process(tmp_path: Path, store: Store) -> None:
    reading = read_and_reckon(row(tmp_path), store)
    task: Task = pickle.loads(pickle.dumps(reading.task("log-3.yaml")))  # noqa: S301 - our own

    assert reckoned(task, reading.shown.fleet) == reading.trip("log-3.yaml")


@pytest.mark.parametrize("seed", range(8))
def test_a_damaged_store_is_told_or_does_not_matter(tmp_path: Path, seed: int) -> None:
    logs, chance, place = row(tmp_path), random.Random(seed), tmp_path / "store.sqlite"
    with closing(Store(place)) as store:
        read_and_reckon(logs, store)
        store.keep()
    with closing(sqlite3.connect(place)) as base:
        table = chance.choice([name for (name,) in base.execute("SELECT name FROM sqlite_master WHERE type = 'table'")])
        columns = [row[1] for row in base.execute(f"PRAGMA table_info({table})")]
        column = chance.choice(columns)
        base.execute(f"UPDATE {table} SET {column} = CAST(zeroblob(9) AS TEXT)||rowid WHERE rowid % 2 = 1")  # noqa: S608
        base.commit()
    edited(logs / "log-3.yaml", "A. Fell", "B. Fell")

    with closing(Store(place)) as store:
        try:
            found = told(read_and_reckon(logs, store))
        except StoreError:
            return
    assert found == at_once(logs)[1]
