"""What a vessel's trips leave behind for the next one."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.past import Past
from logbook.model.trip import Trip
from logbook.reckon.past import NOTHING, after, past_of
from tests.read.logs import trip


def log(day: int, hail: int = 100, scale: int | None = 90, *, docked: bool = True) -> Trip:
    """Return a trip that sailed on a day of March and docked on the next."""
    out_turn = f", out-turn: {{cod: {scale} kg}}" if scale is not None else ""
    landed = f"landed: {{docked: 2026-03-{day + 1:02} 09:00, port: Sulvik{out_turn}}}\n" if docked else ""
    return trip(
        f"vessel: Solan Bright\nsailed: 2026-03-{day:02} 05:30, Port Kerrin\n"
        f"tows:\n  - {{shot: 12:00, hauled: 14:00, net: rockhopper, catch: {{cod: {hail} kg}}}}\n{landed}"
    )


def test_a_first_trip_has_nothing_behind_it() -> None:
    assert past_of([]) == NOTHING == Past()


def test_ratios_stand_in_order_of_time_by_species() -> None:
    made = past_of([log(1, 100, 90), log(3, 100, 110), log(5, 100, None), log(7, 200, 100)])

    assert made.trips == 4
    assert dict(made.out_turn_over_hail) == {"cod": (0.9, 1.1, 0.5)}


def test_trip_by_trip_is_the_same_as_all_at_once() -> None:
    trips = [log(day) for day in (1, 3, 5)]
    step = NOTHING
    for one in trips:
        step = after(step, one)

    assert step == past_of(trips)


def test_nets_are_left_with_their_hours_and_those_not_towed_stay_known() -> None:
    made = past_of([log(1), log(3)])

    assert (made.nets["rockhopper"].towed_h, made.nets["rockhopper"].tows) == (4.0, 2)
    assert (made.nets["flat net"].towed_h, made.nets["flat net"].tows) == (None, 0)


def test_tows_after_the_docking_leave_nothing_behind() -> None:
    late = trip(
        "vessel: Solan Bright\nsailed: 2026-03-01 05:30, Port Kerrin\ntows:\n"
        "  - {shot: 12:00, hauled: 14:00, net: rockhopper, catch: {cod: 100 kg}}\n"
        "  - {shot: 2026-03-05 12:00, hauled: 19:00, net: rockhopper, catch: {cod: 900 kg}}\n"
        "landed: {docked: 2026-03-02 09:00, out-turn: {cod: 90 kg}}\n"
    )
    made = past_of([late])

    assert (made.nets["rockhopper"].towed_h, dict(made.out_turn_over_hail)) == (2.0, {"cod": (0.9,)})


@given(st.lists(st.integers(1, 28), min_size=2, max_size=8, unique=True).map(sorted))
def test_only_trips_of_the_last_weeks_are_kept_whole(days: list[int]) -> None:
    made = past_of([log(day) for day in days])

    kept = [one.begins.day for one in made.recent]
    assert kept == sorted(kept)
    assert kept[-1] == days[-1]
    # ILO C188 Art. 14: rest is looked at over any seven days; nothing that ended within a week of the next sailing is lost.
    assert {day for day in days if day + 1 > days[-1] - 7} <= set(kept)


def test_trips_of_a_year_do_not_pile_up() -> None:
    trips = [log(day) for day in range(1, 30, 2)]

    counts = [len(past_of(trips[:n]).recent) for n in range(1, len(trips) + 1)]
    assert max(counts) <= 9
    assert all(later <= earlier + 1 for earlier, later in pairwise(counts))


@pytest.mark.parametrize("scale", [0, 100, 300])
def test_a_ratio_is_out_turn_over_hail(scale: int) -> None:
    assert past_of([log(1, 200, scale)]).out_turn_over_hail["cod"] == (scale / 200,)
