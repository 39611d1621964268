"""What counts at a moment."""

import pytest

from tests.reckon.build import figures, moment

TOWS = """\
tows:
  - {shot: 18:00, hauled: 19:00, stowed: 20:30, catch: {cod: 100 kg}}
  - {shot: 20:00, hauled: 21:00, catch: {cod: 50 kg}, pen: P1, fast: yes, ice: 20 kg, to: 58 50N 015 00W, depth: 98 fm}
  - {}
  - {shot: 22:00, hauled: 23:00, catch: {cod: 50 kg}}
  - {remarks: no times at all}
"""


def test_figures_are_as_of_the_docking_whatever_is_asked() -> None:
    made = figures(TOWS + "landed: 2026-03-05 09:00, Port Kerrin\n", at="2026-03-04 20:15")

    assert made.trip.as_of == made.trip.last_word == moment("2026-03-05 09:00")
    assert made.totals.kept_kg == 200


def test_else_as_of_the_moment_asked_for_else_the_last_thing_logged() -> None:
    assert figures(TOWS, at="2026-03-04 20:15").trip.as_of == moment("2026-03-04 20:15")
    assert figures(TOWS).trip.as_of == moment("2026-03-04 23:00")
    assert figures("").trip.as_of == moment("2026-03-04 05:30")


def test_gear_still_down_has_nothing_of_what_came_later() -> None:
    made = figures(TOWS, at="2026-03-04 20:15")

    assert [tow.no for tow in made.tows] == [1, 2]
    down = made.tows[1]
    assert (down.hauled, down.on_ice, down.kept_kg, down.pens, down.foul) == (None, None, None, (), False)
    assert (down.shot, down.depth_m) == (moment("2026-03-04 20:00"), pytest.approx(179.2224))
    assert made.totals.incomplete == ("tow 2: gear still down",)


def test_a_tow_without_times_goes_with_the_one_before_it() -> None:
    assert [tow.no for tow in figures(TOWS, at="2026-03-04 21:30").tows] == [1, 2, 3]


def test_fish_stowed_later_is_still_on_deck() -> None:
    # Stowed at 20:30 by the log: at 20:15 it has been an hour and a quarter on a deck of 10 degrees, where a day is four.
    made = figures(TOWS, at="2026-03-04 20:15")

    assert made.tows[0].equivalent_ice_days == pytest.approx(4 * 1.25 / 24)
    assert made.trip.last_word == moment("2026-03-04 20:00")


def test_before_the_usual_stowing_time_fish_on_deck_is_expected_under_ice_then() -> None:
    log = "tows:\n  - {shot: 18:00, hauled: 19:00, stowed: 20:00}\n  - {shot: 20:00, hauled: 21:00, stowed: 23:30}\n"

    early, late = figures(log, at="2026-03-04 21:15").tows[1], figures(log, at="2026-03-04 23:00").tows[1]

    assert early.on_ice == moment("2026-03-04 22:00")
    assert late.on_ice == moment("2026-03-04 23:00")
    assert dict(late.basis)["on_ice"].startswith("assumed: not before")


def test_stretches_of_time_end_at_the_moment() -> None:
    made = figures("time lost:\n  - {from: 18:00, to: 22:00, why: dodging}\n", at="2026-03-04 20:00")

    assert made.trip.last_word == moment("2026-03-04 20:00")


def test_turning_for_home_later_is_not_yet() -> None:
    log = "turned for home: 2026-03-06 08:00\n"

    assert figures(log, at="2026-03-06 07:00").trip.state == "at sea"
    assert figures(log, at="2026-03-06 09:00").trip.state == "homeward"
    assert figures(log, at="2026-03-06 09:00", next_sailed="2026-03-09 09:00").trip.state == "homeward"
    assert figures(log, at="2026-03-10 09:00", next_sailed="2026-03-09 09:00").trip.state == "landing not logged"


def test_before_she_sailed_there_are_no_days_at_sea() -> None:
    made = figures(TOWS, at="2026-03-04 05:00")

    assert made.totals.days_at_sea is None
    assert made.trip.last_word == moment("2026-03-04 05:30")
    assert made.tows == ()


def test_tows_later_than_the_docking_are_left_out_and_named() -> None:
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 19:00, catch: {cod: 100 kg}}\n"
        "  - {shot: 2026-03-14 18:00, hauled: 19:00, catch: {cod: 70 kg}}\nlanded: 2026-03-05 09:00, Port Kerrin\n"
    )

    assert made.totals.kept_kg == 100
    assert "tow 2: later than the docking" in made.totals.incomplete


def test_the_last_landing_is_the_one_docked_last() -> None:
    made = figures(
        "landed:\n  - {port: Sulvik, docked: 2026-03-06 18:00}\n  - {port: Port Kerrin, docked: 2026-03-05 06:30}\n"
    )

    assert (made.trip.port, made.landing.port) == ("Sulvik", "Sulvik")
    assert [landing.port for landing in made.landing.landings] == ["Port Kerrin", "Sulvik"]


def test_a_clock_change_between_two_moments_is_in_the_hours() -> None:
    # Directive 2000/84/EC: summer time began on 29 March 2026 at 01:00 UTC, so this day has 23 hours.
    head = "vessel: Solan Bright\nzone: Europe/London\nsailed: 2026-03-28 12:00, Port Kerrin\n"
    made = figures("tows:\n  - {shot: 2026-03-28 23:30, hauled: 2026-03-29 03:00, catch: {cod: 100 kg}}\n", head)

    assert made.tows[0].duration_h == pytest.approx(2.5)
    assert made.totals.days_at_sea == pytest.approx(14 / 24)
