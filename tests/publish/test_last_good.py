"""A trip whose log no longer reads: as it was last read, marked, counted, and no more of it than its edition shows."""

import json
import lzma
import os
from collections.abc import Callable
from pathlib import Path

import pytest

from logbook.build import build
from logbook.model.built import NoLogsError
from logbook.model.edition import CREW, EDITIONS, OFFICE, PUBLIC
from logbook.model.figures import Reckoned
from logbook.model.page import Page
from logbook.publish import folder as publishing
from logbook.publish import last_good
from logbook.publish.last_good import last_good_page, read_last_good
from logbook.publish.manifest import MANIFEST, published_trips, read_manifest
from logbook.read.folder import named_from, read_folder
from logbook.reckon.trip import reckon_trips
from logbook.redact.policy import policy_of
from tests.ledger import redacted
from tests.redact.canaries import MONEY, WORDS, plant
from tests.test_editions import CLOSE, OPEN, everything

SAMPLES = Path(__file__).parents[2] / "sample_logs"
TRIP, VESSEL = "trips/quillvessel-2026-03-04.html", "vessels/quillvessel.html"
BROKEN = "quillnothing: [\n"
MARK = "can't be read at present"


@pytest.fixture(autouse=True)
def _no_grace(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(publishing, "_GRACE_S", 0)


def made(logs: Path, site: Path, edition: str = OFFICE, **asked: bool) -> dict[str, bytes]:
    """Build an edition and return the files of its archive."""
    build(logs, site, lambda _: None, (edition,), **asked)
    return {path: (site / path).read_bytes() for path in read_manifest(site).files}


def page(files: dict[str, bytes], path: str) -> str:
    return files[path].decode().replace("&#39;", "'")


def quill(logs: Path) -> Path:
    return logs / "quillsubfolder" / "quillfile.yaml"


@pytest.mark.parametrize("edition", EDITIONS)
def test_the_trip_stays_with_its_figures_and_a_mark_of_when_they_are_from(tmp_path: Path, edition: str) -> None:
    logs = plant(tmp_path)
    before = made(logs, tmp_path / "site", edition)
    quill(logs).write_text(BROKEN)

    after = made(logs, tmp_path / "site", edition)

    assert after.keys() == before.keys()
    different = {path for path in after if after[path] != before[path]}
    about_logs = {path for path in different if "problems" in path or "/weeks" in path or path.startswith("weeks/")}
    beside = {"index.html", "files/datapackage.json", "files/trips/quillvessel-2026-03-04.json"}
    assert {TRIP, VESSEL} <= different
    assert different - {TRIP, VESSEL} - about_logs - (beside if edition == OFFICE else set()) == set()
    assert f"The log of this trip {MARK}." in page(after, TRIP)
    # The last word in the log: the landing finished at 03:10 on 8 March.
    assert "as it was last read, up to 8" in page(after, TRIP)
    assert MARK in page(after, VESSEL)
    assert all(MARK not in page(before, path) for path in (TRIP, VESSEL))


def test_the_office_is_told_among_the_log_problems(tmp_path: Path) -> None:
    logs = plant(tmp_path)
    made(logs, tmp_path / "site")
    quill(logs).write_text(BROKEN)

    problems = page(made(logs, tmp_path / "site"), "problems.html")

    assert "The archive keeps the trip as it was last read, up to 8" in problems


def test_the_trip_is_unmarked_when_its_log_reads_again_and_goes_when_the_file_goes(tmp_path: Path) -> None:
    logs = plant(tmp_path)
    before, text = made(logs, tmp_path / "site"), quill(logs).read_text()
    quill(logs).write_text(BROKEN)
    made(logs, tmp_path / "site")
    made(logs, tmp_path / "site")

    quill(logs).write_text(text)
    assert made(logs, tmp_path / "site") == before

    quill(logs).write_text(BROKEN)
    made(logs, tmp_path / "site")
    quill(logs).unlink()
    assert TRIP not in made(logs, tmp_path / "site")


def test_a_log_renamed_as_it_breaks_and_one_that_tells_another_trip_keep_nothing(tmp_path: Path) -> None:
    logs = plant(tmp_path)
    text = quill(logs).read_text()
    made(logs, tmp_path / "site")
    quill(logs).unlink()
    (logs / "other.yaml").write_text(BROKEN)
    assert TRIP not in made(logs, tmp_path / "site")

    (logs / "other.yaml").write_text(text)
    assert TRIP in made(logs, tmp_path / "site")
    (logs / "other.yaml").write_text(text.replace("2026-03-04", "2026-02-04").replace("Quillvessel", "Terncliff"))
    after = made(logs, tmp_path / "site")
    assert TRIP not in after
    assert "trips/terncliff-2026-02-04.html" in after


def test_a_folder_of_logs_that_can_not_be_opened_keeps_their_trips(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    logs = plant(tmp_path)
    made(logs, tmp_path / "site", CREW)
    listed = os.scandir

    def closed(folder: os.PathLike[str]) -> object:
        if Path(folder).name == "quillsubfolder":  # root may open any folder, so this one is closed for it
            raise PermissionError(13, "Permission denied", os.fspath(folder))
        return listed(folder)

    monkeypatch.setattr(os, "scandir", closed)

    assert MARK in page(made(logs, tmp_path / "site", CREW), TRIP)


@pytest.mark.parametrize("edition", EDITIONS)
def test_what_is_kept_has_no_word_or_sum_that_the_edition_does_not_show(tmp_path: Path, edition: str) -> None:
    logs = plant(tmp_path)
    made(logs, tmp_path / "site", edition)
    quill(logs).write_text(BROKEN)
    made(logs, tmp_path / "site", edition)

    text = everything(tmp_path / "site")

    assert [word for word, who in WORDS.items() if edition not in who and word in text.casefold()] == []
    assert edition == OFFICE or [sum_ for sum_ in MONEY if sum_ in text] == []


@pytest.mark.parametrize(("first", "then"), [(OFFICE, CREW), (OFFICE, PUBLIC), (CREW, PUBLIC)])
def test_another_edition_in_the_same_folder_takes_out_of_what_is_kept_what_it_does_not_show(
    tmp_path: Path, first: str, then: str
) -> None:
    logs = plant(tmp_path, OPEN)
    made(logs, tmp_path / "site", first)
    quill(logs).write_text(BROKEN)

    assert TRIP in made(logs, tmp_path / "site", then)

    text = everything(tmp_path / "site")
    assert [word for word, who in WORDS.items() if then not in who and word in text.casefold()] == []
    assert [sum_ for sum_ in MONEY if sum_ in text] == []


def test_a_fleet_file_that_closes_takes_positions_and_fasts_out_of_what_is_kept(tmp_path: Path) -> None:
    logs = plant(tmp_path, OPEN)
    made(logs, tmp_path / "site", CREW)
    assert "58°31.7" in everything(tmp_path / "site")
    quill(logs).write_text(BROKEN)
    fleet = (logs / "fleet.yaml").read_text()
    (logs / "fleet.yaml").write_text(fleet.replace(OPEN, "editions: {crew: {positions: ground, fasts: no}}"))

    made(logs, tmp_path / "site", CREW)

    text = everything(tmp_path / "site")
    assert MARK in (tmp_path / "site" / TRIP).read_text().replace("&#39;", "'")
    assert [place for place in ("58°31.7", "58.5283", "quillfast", "58°35.9", "58.5983") if place in text] == []


def test_what_was_not_kept_does_not_come_back_when_the_fleet_file_opens(tmp_path: Path) -> None:
    logs = plant(tmp_path, CLOSE)
    made(logs, tmp_path / "site", PUBLIC)
    quill(logs).write_text(BROKEN)

    assert TRIP in made(logs, tmp_path / "site", OFFICE)
    assert "quillskipper" not in (tmp_path / "site" / TRIP).read_text().casefold()


LOG = "vessel: VESSEL\ntrip: NUMBER\nsailed: 2026-03-04 HOUR\ntows:\n  - {shot: HOUR, hauled: HAULED, net: rock, catch: {cod: 100 kg}}\n"


def log(vessel: str, number: int, hour: str) -> str:
    hauled = f"{int(hour[:2]) + 1:02}{hour[2:]}"
    text = LOG.replace("VESSEL", vessel).replace("NUMBER", str(number))
    return text.replace("HOUR", hour).replace("HAULED", hauled)


@pytest.fixture
def day(tmp_path: Path) -> Path:
    """Return logs of two trips of one vessel on one day, and of another vessel's."""
    logs = tmp_path / "logs"
    logs.mkdir()
    (logs / "1.yaml").write_text(log("Solan Bright", 1, "05:30"))
    (logs / "2.yaml").write_text(log("Solan Bright", 2, "15:30"))
    (logs / "3.yaml").write_text(log("Ternbank", 3, "06:30"))
    return logs


def test_of_two_trips_of_one_day_each_keeps_its_page(day: Path, tmp_path: Path) -> None:
    before = made(day, tmp_path / "site")
    (day / "1.yaml").write_text(BROKEN)

    after = made(day, tmp_path / "site")

    first, second = "trips/solan-bright-2026-03-04.html", "trips/solan-bright-2026-03-04-2.html"
    assert after[second] == before[second]
    assert MARK in page(after, first)
    assert "trip <bdi>1</bdi>" in page(after, first)


def test_a_kept_trip_moves_up_when_the_one_before_it_goes(day: Path, tmp_path: Path) -> None:
    made(day, tmp_path / "site")
    (day / "1.yaml").unlink()
    (day / "2.yaml").write_text(BROKEN)

    after = made(day, tmp_path / "site")

    assert "trip <bdi>2</bdi>" in page(after, "trips/solan-bright-2026-03-04.html")
    assert "trips/solan-bright-2026-03-04-2.html" not in after


def test_a_kept_trip_that_was_at_sea_is_so_no_longer_once_she_sailed_again(day: Path, tmp_path: Path) -> None:
    (day / "2.yaml").unlink()
    made(day, tmp_path / "site")
    (day / "1.yaml").write_text(BROKEN)
    (day / "2.yaml").write_text(log("Solan Bright", 2, "15:30"))

    assert "landing not logged" in page(made(day, tmp_path / "site"), "trips/solan-bright-2026-03-04.html")


def test_where_every_log_is_there_and_none_can_be_read_all_trips_stay(day: Path, tmp_path: Path) -> None:
    made(day, tmp_path / "site")
    for name in ("1.yaml", "2.yaml", "3.yaml"):
        (day / name).write_text(BROKEN)

    made(day, tmp_path / "site")

    assert len(published_trips(tmp_path / "site")) == 3


def test_where_no_log_can_be_read_and_some_have_gone_the_archive_is_left_as_it_stands(
    day: Path, tmp_path: Path
) -> None:
    before = made(day, tmp_path / "site")
    (day / "1.yaml").write_text(BROKEN)
    (day / "2.yaml").unlink()
    (day / "3.yaml").unlink()

    with pytest.raises(NoLogsError, match="are left as they stand"):
        made(day, tmp_path / "site")
    assert {path: (tmp_path / "site" / path).read_bytes() for path in before} == before

    assert len([path for path in made(day, tmp_path / "site", allow_empty=True) if path.startswith("trips/")]) == 1


@pytest.mark.parametrize("content", [b"", b"\0" * 200, b"editions: [\n"])
def test_a_fleet_file_that_tells_nothing_any_more_spoils_no_archive(tmp_path: Path, content: bytes) -> None:
    logs = plant(tmp_path, CLOSE)
    before = made(logs, tmp_path / "site", CREW)
    (logs / "fleet.yaml").write_bytes(content)

    with pytest.raises(NoLogsError, match=r"nothing can be read of .*fleet\.yaml"):
        made(logs, tmp_path / "site", CREW)
    assert {path: (tmp_path / "site" / path).read_bytes() for path in before} == before

    (logs / "fleet.yaml").write_text("fleet: Quillfleet\nquill: 3\n")
    made(logs, tmp_path / "site", CREW)


def kept_file(site: Path) -> Path:
    return next(
        path
        for path in sorted(site.rglob("*.json.xz"))
        if "Solan Bright" in lzma.decompress(path.read_bytes()).decode()
    )


@pytest.mark.parametrize(
    "spoil",
    [
        lambda path: path.write_bytes(b""),
        lambda path: path.write_bytes(b"\0" * 400),
        lambda path: path.write_bytes(path.read_bytes()[:-20]),
        lambda path: path.write_bytes(lzma.compress(b"{}")),
        lambda path: path.write_bytes(lzma.compress(b"[" * 100_000)),
        lambda path: path.write_bytes(
            lzma.compress(lzma.decompress(path.read_bytes()).replace(b'"format":1', b'"format":9'))
        ),
        lambda path: path.write_bytes(
            lzma.compress(lzma.decompress(path.read_bytes()).replace(b'"figures"', b'"figurs"'))
        ),
        lambda path: path.unlink(),
    ],
)
def test_a_kept_trip_that_is_damaged_or_of_another_version_costs_only_itself(
    tmp_path: Path, day: Path, spoil: Callable[[Path], object]
) -> None:
    (day / "2.yaml").unlink()
    made(day, tmp_path / "site")
    spoil(kept_file(tmp_path / "site"))
    (day / "1.yaml").write_text(BROKEN)

    made(day, tmp_path / "site")

    assert published_trips(tmp_path / "site") == {"ternbank-2026-03-04"}


def test_only_what_is_on_the_archives_list_is_taken_for_a_kept_trip(tmp_path: Path, day: Path) -> None:
    made(day, tmp_path / "site")
    listed = json.loads((tmp_path / "site" / MANIFEST).read_text())
    listed["files"] = {path: one for path, one in listed["files"].items() if not path.startswith("last-good/")}
    (tmp_path / "site" / MANIFEST).write_text(json.dumps(listed))

    assert read_last_good(tmp_path / "site", ["1.yaml"]) == ()


def test_a_pack_that_would_fill_the_memory_is_not_unpacked(
    tmp_path: Path, day: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made(day, tmp_path / "site")
    monkeypatch.setattr(last_good, "_MOST", 1000)

    assert read_last_good(tmp_path / "site", ["1.yaml"]) == ()


@pytest.fixture(scope="module")
def samples() -> tuple[Reckoned, ...]:
    read = named_from(read_folder(SAMPLES), SAMPLES)
    return reckon_trips(read.trips, read.fleet, read.problems)


@pytest.mark.parametrize("edition", EDITIONS)
def test_a_kept_trip_comes_back_as_it_was_written(samples: tuple[Reckoned, ...], tmp_path: Path, edition: str) -> None:
    shown = redacted(samples, policy_of(edition, read_folder(SAMPLES).fleet))
    names = {trip.figures.trip.id: trip.log.file for trip in samples}

    def page_of(trip: Reckoned) -> Page:
        return last_good_page(trip, names[trip.figures.trip.id], lambda one: one)

    publishing.publish(map(page_of, shown), tmp_path)

    back = {trip.figures.trip.id: trip for trip in read_last_good(tmp_path, names.values())}

    assert back.keys() == names.keys()
    for trip in shown:
        same = back[trip.figures.trip.id]
        assert same.log_unread
        assert same.log.file == names[trip.figures.trip.id]
        assert (same.figures.totals, same.figures.tows, same.course) == (
            trip.figures.totals,
            trip.figures.tows,
            trip.course,
        )
        assert list(same.figures.catch) == list(trip.figures.catch)
        assert page_of(same) == page_of(trip)
