"""How warm pens were, and where tows lie."""

import pytest

from logbook.reckon.hold import pen_curves, pens_of_tows
from tests.read.logs import trip
from tests.reckon.build import HEAD, figures, moment

READINGS = """\
readings:
  - {at: 2026-03-06 08:00, temperatures: {P1: 2 C, tank: 4 C}}
  - {at: 2026-03-06 18:00, temperatures: {P1: 1 C, Tank: 3 C}}
  - {at: 2026-03-06 18:00, temperatures: {P1: 1.5 C}}
  - {at: 99:00, temperatures: {P1: 9 C}}
"""


def test_temperatures_are_linear_between_readings_and_flat_outside() -> None:
    curve = pen_curves(trip(HEAD + READINGS))["p1"]
    clocks = ("00:00", "08:00", "13:00", "18:00", "23:59")

    assert [curve.at(moment(f"2026-03-06 {clock}")) for clock in clocks] == [2, 2, pytest.approx(1.75), 1.5, 1.5]


def test_a_pen_is_the_same_whatever_its_case() -> None:
    curves = pen_curves(trip(HEAD + READINGS))

    assert sorted(curves) == ["p1", "tank"]
    assert curves["tank"].celsius == (4, 3)


def test_the_tally_says_where_tows_lie_else_the_tow_does() -> None:
    log = trip(
        HEAD
        + "tows:\n  - {shot: 18:00, hauled: 19:00, pen: P1}\n  - {shot: 20:00, hauled: 21:00}\n"
        + "stowage:\n  - {at: 21:30, pen: P2, tows: 2, fish: {cod: 1 box}}\n  - {at: 22:00, pen: S1, tows: 2, fish: {cod: 1 box}}\n"
    )

    assert pens_of_tows(log) == (("P1",), ("P2", "S1"))


def test_fish_is_as_warm_as_the_tally_has_it_lie() -> None:
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 19:00, stowed: 19:00, pen: P1, catch: {cod: 1 box}}\n"
        "stowage:\n  - {at: 19:00, pen: P2, tows: 1, fish: {cod: 1 box}}\n"
        "readings:\n  - {at: 2026-03-05 08:00, temperatures: {P1: 0 C, P2: 2 C}}\nlanded: 2026-03-06 19:00, Port Kerrin\n"
    )

    assert made.age.oldest_equivalent_ice_days == pytest.approx(2 * 1.44)
    assert made.age.basis == ()
