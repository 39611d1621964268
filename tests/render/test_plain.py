"""The report for a terminal."""

import subprocess
import sys

from msgspec.structs import replace

from logbook.model.named import ByName
from logbook.render.plain import plain_report
from tests.render import example
from tests.render.test_pages import bare_trip, half_kept_trip


def report(tows: int = 12) -> str:
    trip = example.trip(tows=tows)
    return plain_report(trip.log, trip.figures)


def test_the_report_begins_with_which_trip_it_is() -> None:
    assert report().splitlines()[:3] == [
        "Solan Bright, trip 14 (landed), solan-bright-2026-03-04",
        "Sailed 4 March 2026, 05:30 from Port Kerrin",
        "Docked 6 March 2026, 03:10 at Port Kerrin",
    ]


def test_every_tow_has_a_line_with_its_figures() -> None:
    trip = example.trip(tows=12)
    first = next(line for line in report().splitlines() if line.startswith("  1  "))

    assert first.split()[:7] == ["1", "Wed", "4", "March", "18:10", "19:27", "1:17"]
    assert first.split()[-3] == str(trip.figures.tows[0].kept_kg)
    assert sum(line[:3].strip().isdigit() for line in report().splitlines()) >= 12


def test_columns_line_up() -> None:
    lines = report().splitlines()
    start = next(place for place, line in enumerate(lines) if line.startswith("Tow "))
    heads, rows = lines[start], lines[start + 1 : start + 13]
    end = heads.index("Kept kg") + len("Kept kg")

    assert all(row[end - 1].isdigit() and row[end] == " " for row in rows)


def test_what_was_carried_or_assumed_is_said_with_the_tows() -> None:
    assert "  ground: carried (tows 1-7, 9-12)" in report().splitlines()
    assert "  distance_nm: assumed: usual speed (tows 5, 10)" in report().splitlines()


def test_what_is_not_known_is_said_and_never_nought() -> None:
    text = plain_report(bare_trip().log, bare_trip().figures)

    assert "Kept            not known" in text
    assert "<span" not in text
    assert "None" not in text
    assert "<span" not in plain_report(half_kept_trip().log, half_kept_trip().figures)


def test_our_own_words_need_no_special_terminal() -> None:
    report().encode("cp1252")


def test_a_trip_without_species_has_no_table_of_them() -> None:
    trip = example.trip(tows=1)
    text = plain_report(trip.log, replace(trip.figures, catch=ByName()))

    assert "Species" not in text


def test_a_report_does_not_load_what_draws_charts() -> None:
    code = "import sys, logbook.render.plain; sys.exit('matplotlib' in sys.modules)"

    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0  # noqa: S603 - ourselves


def test_loading_the_pages_does_not_load_what_draws_charts() -> None:
    code = "import sys, logbook.render.pages; sys.exit('matplotlib' in sys.modules)"

    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0  # noqa: S603 - ourselves
