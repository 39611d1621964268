"""The page of gear and fasts: which rows it has, and what its chartlet shows."""

from datetime import UTC, datetime

import pytest
from msgspec.structs import replace

from logbook.model.edition import OFFICE
from logbook.model.gear import NetFigures
from logbook.redact.policy import policy_of
from logbook.render.charts import Chartlet
from logbook.render.gear import GearPage, gear_contexts, gear_rows, render_gear
from logbook.render.marks import Notes
from logbook.render.pages import site_of
from tests.ledger import ledger_of
from tests.read.logs import fleet
from tests.reckon.build import reckoned

HEAD = "vessel: Solan Bright\nsailed: 2026-03-04 05:30, Port Kerrin\ntows:\n"
NET = NetFigures(
    towed_h=2.0,
    tows=1,
    foul_tows=0,
    fasts=0,
    damage=(),
    time_lost_h=None,
    towed_h_since_mended=5.0,
    tows_since_mended=3,
    mended_at=datetime(2026, 3, 4, tzinfo=UTC),
)


def page(*logs: str) -> GearPage:
    ledger = ledger_of(reckoned(*logs), fleet())
    site = site_of("Test Fleet", policy_of(OFFICE, fleet()))
    kits = {name: ledger.kit(ledger.of_vessel(name)[-1].id) for name in ledger.vessels}
    (made,) = gear_contexts(site, fleet(), kits, ledger.fasts())
    return made


def drawn(made: GearPage) -> Chartlet:
    assert made.chart is not None
    assert isinstance(made.chart.drawing, Chartlet)
    return made.chart.drawing


def tow(shot: str, more: str) -> str:
    return f"  - {{shot: 2026-03-04 {shot}, net: rockhopper, {more}}}\n"


def test_fasts_stand_in_order_of_time_with_the_numbers_of_the_chartlet() -> None:
    made = page(
        HEAD
        + tow("18:00", "hauled: 19:00, fast: 58 50N 015 00W")
        + tow("20:00", "hauled: 21:00, fast: yes")
        + tow("22:00", "hauled: 23:00, fast: wreck, from: 58 51N 015 00W, to: 58 53N 015 02W"),
        HEAD.replace("Solan Bright", "Other") + tow("19:30", "hauled: 20:30, fast: rock"),
    )

    assert [(row.number, row.mark.vessel, row.mark.tow, row.placed) for row in made.fasts] == [
        (1, "Solan Bright", 1, True),
        (2, "Other", 1, False),
        (3, "Solan Bright", 2, False),
        (4, "Solan Bright", 3, True),
    ]
    assert [(track.label, len(track.points), track.foul) for track in drawn(made).tracks] == [
        ("1", 1, True),
        ("4", 2, True),
    ]
    assert made.chart is not None
    assert made.chart.alt == "Chartlet of 2 places where gear came fast, numbered as in the table."
    assert made.placed


def test_fasts_of_no_known_place_have_neither_chartlet_nor_files() -> None:
    made = page(HEAD + tow("18:00", "hauled: 19:00, fast: yes"))

    assert (len(made.fasts), made.chart, made.placed) == (1, None, False)


def test_no_fasts_and_no_gear_are_a_page_that_says_so() -> None:
    made = page()

    assert (made.fasts, made.vessels, made.chart, made.placed) == ((), (), None, False)
    assert "No fast is logged" in render_gear(made)
    assert "No gear is told of" in render_gear(made)


def test_a_chartlet_lies_whole_across_the_date_line() -> None:
    made = page(
        HEAD
        + tow("18:00", "hauled: 19:00, fast: yes, from: 58 50N 179 50E, to: 58 52N 179 50W")
        + tow("20:00", "hauled: 21:00, fast: 58 53N 179 45W")
    )

    chartlet = drawn(made)
    assert 0 < chartlet.east - chartlet.west < 5
    for track in chartlet.tracks:
        assert all(chartlet.west < x < chartlet.east and chartlet.south < y < chartlet.north for x, y in track.points)


def test_a_fast_that_a_slip_put_far_away_is_left_off_the_chartlet_and_that_is_said() -> None:
    near = "".join(tow(f"{6 + n}:00", f"hauled: {6 + n}:30, fast: 58 5{n}N 015 00W") for n in range(5))
    made = page(HEAD + near + tow("20:00", "hauled: 21:00, fast: 18 50S 115 00E"))

    assert [track.label for track in drawn(made).tracks] == ["1", "2", "3", "4", "5"]
    assert made.chart is not None
    assert made.chart.alt == (
        "Chartlet of 5 places where gear came fast, numbered as in the table; not on it, since far from the others: 6."
    )


def test_each_vessel_has_her_gear_after_her_last_trip() -> None:
    later = HEAD.replace("2026-03-04", "2026-03-14")
    made = page(
        HEAD + tow("18:00", "hauled: 20:00"),
        later
        + "  - {shot: 18:00, hauled: 19:00, net: flat net}\ngear:\n  - {at: 2026-03-15 06:00, warps: both, event: changed}\n",
        HEAD.replace("Solan Bright", "Other"),
    )

    (vessel,) = made.vessels
    assert vessel.name == "Solan Bright"
    assert [(row.name, row.figures.towed_h, row.figures.towed_h_since_mended) for row in vessel.rows] == [
        ("rockhopper", None, 2.0),
        ("flat net", 1.0, 1.0),
        ("warps", 1.0, None),
    ]
    assert [words for _, words in made.notes] == ["since the first log: none says that it was changed or mended"]


@pytest.mark.parametrize(
    ("figures", "shown"),
    [
        (NET, True),
        (replace(NET, tows=0, towed_h=None), True),
        (replace(NET, tows=0, tows_since_mended=0), True),
        (replace(NET, tows_since_mended=0, mended_at=None), True),
        (replace(NET, tows=0, tows_since_mended=0, mended_at=None), False),
    ],
)
def test_gear_that_was_never_towed_and_never_mended_has_no_row(figures: NetFigures, shown: object) -> None:
    assert bool(gear_rows({"rockhopper": figures}, Notes())) is shown


def test_what_hours_leave_out_has_a_letter() -> None:
    notes = Notes()
    told = replace(
        NET, basis=(("towed_h_since_mended", "tows whose hours are not known are left out"), ("tows", "else"))
    )

    (row, plain) = gear_rows({"a": told, "b": NET}, notes)
    assert (row.mark, plain.mark) == ('<sup class="mark">a</sup>', "")
    assert list(notes) == [("a", "tows whose hours are not known are left out")]
