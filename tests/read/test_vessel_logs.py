"""The other logs of a vessel, found by their first keys."""

import os
from pathlib import Path

import pytest

from logbook.read.folder import FleetFiles, read_log
from logbook.read.vessel_logs import VesselLog, _read_head, other_logs, read_earlier
from logbook.reckon.past import left_by
from tests.read.logs import FLEET

TOWS = "tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 2 baskets}}\n"


def head(day: int, vessel: str = "Solan Bright") -> str:
    return f"vessel: {vessel}\nsailed: 2026-03-{day:02} 05:30, Port Kerrin\n"


@pytest.fixture
def logs(tmp_path: Path) -> Path:
    (tmp_path / "fleet.yaml").write_text(FLEET)
    (tmp_path / "own.yaml").write_text(head(10) + TOWS)
    return tmp_path


def others(logs: Path, log: str = "own.yaml") -> tuple[VesselLog, ...]:
    fleets = FleetFiles()
    trip, _ = read_log(logs / log, fleets)
    assert trip is not None
    return other_logs(logs / log, trip, fleets)


def earlier(logs: Path) -> list[str]:
    """Return the names of the files of the earlier trips, in order of time."""
    fleets = FleetFiles()
    trip, _ = read_log(logs / "own.yaml", fleets)
    assert trip is not None
    return [Path(one.file).name for one in read_earlier(other_logs(logs / "own.yaml", trip, fleets), trip, fleets)]


def test_only_other_logs_of_the_same_vessel_are_found(logs: Path) -> None:
    (logs / "a").mkdir()
    (logs / "a" / "later.yaml").write_text(head(20) + TOWS)
    (logs / "b.yml").write_text(head(4, "KI 114") + TOWS)
    (logs / "c.yaml").write_text(head(5, "Other") + TOWS)

    assert [other.path.name for other in others(logs)] == ["later.yaml", "b.yml"]


def test_a_log_is_found_from_a_folder_below_as_well(logs: Path) -> None:
    (logs / "a").mkdir()
    (logs / "a" / "later.yaml").write_text(head(20) + TOWS)

    assert [other.path.name for other in others(logs, "a/later.yaml")] == ["own.yaml"]


def test_without_a_fleet_file_the_logs_beside_it_are_looked_at(logs: Path) -> None:
    (logs / "fleet.yaml").unlink()
    (logs / "b.yaml").write_text(head(4).replace("Solan Bright", "SOLAN bright") + TOWS)

    assert [other.path.name for other in others(logs)] == ["b.yaml"]


@pytest.mark.parametrize(
    "text",
    [
        head(4) + TOWS,
        "\ufeff" + head(4) + TOWS,
        head(4).replace("\n", "\r\n") + TOWS,
        TOWS + head(4),
        "---\n" + head(4) + TOWS,
        f"# a remark\n\n{head(4)}",
        "VESSEL: solan bright\nSailed:   2026-03-04 05:30, Port Kerrin\n",
        "vessel : Solan Bright\nsailed\t: 2026-03-04 05:30\n",
        '"vessel": "Solan Bright"\n"sailed": 2026-03-04 05:30\n',
        "vessel:\n  Solan Bright\nsailed: 2026-03-04 05:30,\n  Port Kerrin\n",
        "vessel: Solan Bright\ntows:\n  - {shot: 2026-03-04 05:30}\n",
        "  vessel: Solan Bright\n  sailed: 2026-03-04 05:30\n",
        "{vessel: Solan Bright, sailed: 2026-03-04 05:30}\n",
        "ship_vessel: none\n" + head(4),
    ],
)
def test_where_the_first_keys_do_not_do_the_whole_log_is_read(logs: Path, text: str) -> None:
    (logs / "b.yaml").write_bytes(text.encode())
    whole, _ = read_log(logs / "b.yaml", FleetFiles())

    (found,) = others(logs)
    assert whole is not None
    assert (found.head.vessel, found.head.begins, found.head.file) == (whole.vessel, whole.begins, whole.file)


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "latin-1"])
def test_a_log_in_another_encoding_is_found_as_it_is_read(logs: Path, encoding: str) -> None:
    (logs / "b.yaml").write_bytes((head(4) + "skipper: Åse\n" + TOWS).encode(encoding))
    whole, _ = read_log(logs / "b.yaml", FleetFiles())

    assert [other.head.begins for other in others(logs)] == ([whole.begins] if whole else [])


@pytest.mark.parametrize("zone", ["Europe/Oslo", "+05:30", "'-03:00'", "UTC"])
def test_the_sailing_is_in_the_logs_own_zone(logs: Path, zone: str) -> None:
    (logs / "b.yaml").write_text(f"{head(4)}zone: {zone}\n{TOWS}")
    whole, _ = read_log(logs / "b.yaml", FleetFiles())

    assert whole is not None
    assert [other.head.begins for other in others(logs)] == [whole.begins]


@pytest.mark.parametrize(
    "zone", ['"zone": "+05:30"', "'zone' : -03:00", "zone:\n  +05:30", "zone: >\n  +05:30", "? zone\n: +05:30"]
)
def test_a_zone_that_is_typed_out_of_the_way_is_not_passed_over(logs: Path, zone: str) -> None:
    (logs / "b.yaml").write_text(f"{head(4)}{zone}\n{TOWS}")
    whole, _ = read_log(logs / "b.yaml", FleetFiles())

    assert whole is not None
    assert [other.head.begins for other in others(logs)] == [whole.begins]


@pytest.mark.parametrize("text", ["", "nothing to read\n", "vessel: Solan Bright\n", "\x00\x01", "- a\n- b\n"])
def test_what_is_no_trip_is_left_out(logs: Path, text: str) -> None:
    (logs / "b.yaml").write_text(text)

    assert others(logs) == ()


def test_earlier_trips_are_read_whole_in_order_of_time_whatever_their_names(logs: Path) -> None:
    for name, day in (("z", 1), ("m", 4), ("a", 7), ("b", 20)):
        (logs / f"{name}.yaml").write_text(head(day) + TOWS)

    assert earlier(logs) == ["z.yaml", "m.yaml", "a.yaml"]


def test_a_trip_that_began_at_the_same_time_is_earlier_by_its_name_alone(logs: Path) -> None:
    (logs / "a.yaml").write_text(head(10) + TOWS)
    (logs / "z.yaml").write_text(head(10) + TOWS)

    assert earlier(logs) == ["a.yaml"]


def test_earlier_trips_have_their_tows(logs: Path) -> None:
    (logs / "b.yaml").write_text(head(4) + TOWS + "landed: {docked: 2026-03-05 09:00, out-turn: {cod: 63 kg}}\n")
    fleets = FleetFiles()
    trip, _ = read_log(logs / "own.yaml", fleets)
    assert trip is not None

    # Two baskets of cod of 42 kg were hailed, so 63 over 84.
    assert left_by(read_earlier(others(logs), trip, fleets)[0]).ratios == (("cod", 0.75),)


def test_a_log_that_goes_away_meanwhile_is_left_out(logs: Path) -> None:
    (logs / "b.yaml").write_text(head(4) + TOWS)
    fleets = FleetFiles()
    trip, _ = read_log(logs / "own.yaml", fleets)
    assert trip is not None
    found = other_logs(logs / "own.yaml", trip, fleets)
    (logs / "b.yaml").unlink()

    assert read_earlier(found, trip, fleets) == ()


def test_what_cannot_be_opened_is_left_out(logs: Path) -> None:
    (logs / "b.yaml").mkdir()
    if hasattr(os, "mkfifo"):  # not on every system
        os.mkfifo(logs / "c.yaml")
    (logs / "d.yaml").symlink_to(logs / "gone.yaml")

    assert others(logs) == ()
    assert _read_head(logs / "gone.yaml", FleetFiles()) is None
