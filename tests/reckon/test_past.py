"""What a vessel's trips leave behind for the next one."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.past import Past, Spread
from logbook.model.trip import Trip
from logbook.reckon.neighbours import with_past
from logbook.reckon.past import Behind, left_by, past_of
from tests.read.logs import trip


def log(day: int, hail: int = 100, scale: int | None = 90, *, docked: bool = True, fish: str = "cod") -> Trip:
    """Return a trip that sailed on a day of March and docked on the next."""
    out_turn = f", out-turn: {{{fish}: {scale} kg}}" if scale is not None else ""
    landed = f"landed: {{docked: 2026-03-{day + 1:02} 09:00, port: Sulvik{out_turn}}}\n" if docked else ""
    made = trip(
        f"vessel: Solan Bright\nsailed: 2026-03-{day:02} 05:30, Port Kerrin\n"
        f"rest:\n  - {{who: A. Fell, from: 2026-03-{day:02} 06:00, to: 11:00}}\n"
        f"tows:\n  - {{shot: 12:00, hauled: 14:00, net: rockhopper, catch: {{{fish}: {hail} kg}}}}\n{landed}"
    )
    return replace(made, file=f"{day:02}.yaml")


NEXT = log(29)


def test_a_first_trip_has_nothing_behind_it() -> None:
    assert past_of([], NEXT) == Past()


def test_ratios_are_gathered_by_species() -> None:
    made = past_of([log(1, 100, 90), log(3, 100, 110), log(5, 100, None), log(7, 200, 100)], NEXT)

    assert dict(made.out_turn_over_hail) == {"cod": Spread(trips=3)}


def test_how_they_lie_is_told_of_five_and_more() -> None:
    # By hand: the middle of 0.90 0.95 1.00 1.05 1.10, and the quartiles with both ends.
    made = past_of(
        [log(day, 100, scale) for day, scale in zip(range(1, 10, 2), (90, 110, 95, 105, 100), strict=True)], NEXT
    )

    assert made.out_turn_over_hail["cod"] == Spread(trips=5, low=0.95, middle=1.0, high=1.05)


def test_what_a_trip_has_nothing_to_do_with_does_not_bear_on_it() -> None:
    made = past_of([log(1, fish="ling"), log(3, fish="cod")], log(29, fish="ling"))

    assert dict(made.out_turn_over_hail) == {"ling": Spread(trips=1)}


def test_each_trip_has_what_those_before_it_leave() -> None:
    trips = [log(day) for day in (1, 3, 5)]

    made = with_past(trips)
    assert [made[trip.file].past for trip in trips] == [past_of(trips[:n], trip) for n, trip in enumerate(trips)]


def test_nets_are_left_with_their_hours_and_those_not_towed_stay_known() -> None:
    made = past_of([log(1), log(3)], NEXT)

    assert (made.nets["rockhopper"].towed_h, made.nets["rockhopper"].tows) == (4.0, 2)
    assert (made.nets["flat net"].towed_h, made.nets["flat net"].tows) == (None, 0)


def test_tows_after_the_docking_leave_nothing_behind() -> None:
    late = trip(
        "vessel: Solan Bright\nsailed: 2026-03-01 05:30, Port Kerrin\ntows:\n"
        "  - {shot: 12:00, hauled: 14:00, net: rockhopper, catch: {cod: 100 kg}}\n"
        "  - {shot: 2026-03-05 12:00, hauled: 19:00, net: rockhopper, catch: {cod: 900 kg}}\n"
        "landed: {docked: 2026-03-02 09:00, out-turn: {cod: 90 kg}}\n"
    )

    assert past_of([late], NEXT).nets["rockhopper"].towed_h == 2.0
    assert left_by(late).ratios == (("cod", 0.9),)


@given(st.lists(st.integers(1, 28), min_size=2, max_size=8, unique=True).map(sorted))
def test_the_rest_of_the_week_before_is_kept(days: list[int]) -> None:
    *earlier, last = days
    made = past_of([log(day) for day in earlier], log(last))

    kept = [one.sailed.day for one in made.recent]
    # ILO C188 Art. 14: rest is looked at over any seven days; what ended at 09:00 a week before she sailed at 05:30 is within them.
    assert kept == [day for day in earlier if day + 1 >= last - 7]


def test_a_trip_that_nobody_knows_the_end_of_ends_the_week() -> None:
    made = past_of([log(23), log(25, docked=False), log(27)], NEXT)

    assert [one.sailed.day for one in made.recent] == [27]


def test_trips_of_a_year_do_not_pile_up() -> None:
    behind = Behind()
    counts = []
    for day in range(1, 30, 2):
        left = left_by(log(day))
        counts.append(len(behind.recent(left)))
        behind.add(left)

    assert max(counts) <= 5
    assert all(later <= earlier + 1 for earlier, later in pairwise(counts))


@pytest.mark.parametrize("scale", [0, 100, 300])
def test_a_ratio_is_out_turn_over_hail(scale: int) -> None:
    assert left_by(log(1, 200, scale)).ratios == (("cod", scale / 200),)
