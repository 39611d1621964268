"""How ice and age went: the lines end where the figures stand, and go through every look that was logged."""

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.course import Course
from logbook.model.figures import TripFigures
from tests.reckon.build import HEAD, reckoned

TOWS = (
    "  - {shot: 18:10, hauled: 19:40, pen: P1, catch: {cod: 1000 kg}}\n"
    "  - {shot: 20:00, hauled: 21:30, pen: P1, catch: {cod: 500 kg}, ice: 300 kg}\n"
)


def course(text: str) -> tuple[Course, TripFigures]:
    (trip,) = reckoned(HEAD + text)
    return trip.course, trip.figures


def test_the_ice_goes_down_from_what_was_loaded_to_what_is_left() -> None:
    line, figures = course(f"ice loaded: 10 t\ntows:\n{TOWS}")

    assert line.ice[0].left_kg == 10_000
    assert line.ice[0].at == figures.trip.sailed
    assert line.ice[-1].at == figures.trip.as_of
    assert line.ice[-1].left_kg == pytest.approx(figures.ice.left_kg)


def test_it_starts_anew_from_every_look() -> None:
    line, figures = course(
        f"ice loaded: 10 t\ntows:\n{TOWS}readings:\n  - {{at: 2026-03-04 20:00, ice left: 8 t}}\n"
        "  - {at: 2026-03-05 02:00, ice left: 9 t}\n"
    )
    seen = [(one.at.hour, one.left_kg) for one in line.ice if one.seen]

    assert seen == [(20, 8000), (2, 9000)]
    assert line.ice[-1].left_kg == pytest.approx(figures.ice.left_kg)


def test_a_look_alone_begins_the_line() -> None:
    line, _ = course(f"tows:\n{TOWS}readings:\n  - {{at: 2026-03-04 20:00, ice left: 8 t}}\n")

    assert line.ice[0].seen
    assert line.ice[0].left_kg == 8000


def test_without_any_ice_known_there_is_no_line() -> None:
    assert course(f"tows:\n{TOWS}")[0].ice == ()


def test_ice_taken_aboard_is_there_from_then_on() -> None:
    line, figures = course(
        f"ice loaded: 1 t\ntows:\n{TOWS}readings:\n  - {{at: 2026-03-04 12:00, ice taken aboard: 5 t}}\n"
    )

    assert max(one.left_kg for one in line.ice) > 5000
    assert line.ice[-1].left_kg == pytest.approx(figures.ice.left_kg)


def test_the_age_begins_at_nought_and_ends_as_the_figures_have_it() -> None:
    line, figures = course(f"tows:\n{TOWS}passage:\n  - {{at: 2026-03-06 08:00, at position: 58 50N 015 00W}}\n")

    assert line.ages[0].oldest_days == 0
    assert line.ages[-1].at == figures.trip.as_of
    assert line.ages[-1].oldest_days == pytest.approx(figures.age.oldest_equivalent_ice_days)
    assert line.ages[-1].mean_days == pytest.approx(figures.age.mean_equivalent_ice_days)


def test_it_goes_on_to_the_end_of_landing() -> None:
    line, figures = course(
        f"tows:\n{TOWS}landed:\n  port: Port Kerrin\n  docked: 2026-03-06 08:00\n  started landing: 09:00\n  finished landing: 15:00\n"
    )

    assert figures.trip.docked is not None
    assert line.ages[-1].at == figures.trip.docked + timedelta(hours=7)


def test_a_trip_without_fish_has_no_age() -> None:
    assert course("tows:\n  - {shot: 18:10, hauled: 19:40, catch: none}\n")[0].ages == ()


@given(st.lists(st.tuples(st.integers(1, 60), st.integers(0, 12_000)), max_size=6), st.integers(0, 12_000))
def test_the_line_is_in_order_of_time_and_ends_at_the_figure(looks: list[tuple[int, int]], loaded: int) -> None:
    readings = "".join(
        f"  - {{at: 2026-03-{5 + hour // 24:02} {hour % 24:02}:00, ice left: {left} kg}}\n" for hour, left in looks
    )
    line, figures = course(f"ice loaded: {loaded} kg\ntows:\n{TOWS}" + (f"readings:\n{readings}" if looks else ""))

    times = [one.at for one in line.ice]
    assert times == sorted(times)
    assert all(one.left_kg >= 0 for one in line.ice)
    assert line.ice[-1].left_kg == pytest.approx(figures.ice.left_kg)
    ages = [one.oldest_days for one in line.ages]
    assert ages == sorted(ages)


def test_a_tow_unlike_the_others_is_flagged_and_few_tows_flag_nothing() -> None:
    def tows(speeds: list[str]) -> str:
        lines = [
            f"  - {{shot: {hour:02}:00, hauled: {hour:02}:50, speed: {speed} kn, depth: 100 m, warp: 300 m, catch: none}}\n"
            for hour, speed in enumerate(speeds, 7)
        ]
        return "tows:\n" + "".join(lines)

    assert course(tows(["3.2", "3.1", "3.3", "3.2", "5.9", "3.0"]))[0].unusual["speed_kn"] == (5,)
    assert course(tows(["3.2", "3.1", "3.3", "3.2", "5.9", "3.0"]))[0].unusual["warp_to_depth"] == ()
    assert dict(course(tows(["3.2", "3.1", "5.9", "3.0"]))[0].unusual) == {}
