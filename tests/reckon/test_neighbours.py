"""What the other trips of a vessel say of each of hers."""

from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.figures import Neighbours
from logbook.model.past import Past, Spread
from logbook.model.trip import Trip
from logbook.reckon.neighbours import neighbours_of, trip_id, with_past
from tests.read.logs import trip
from tests.reckon.build import moment

SAILED = ("2026-03-04 05:30", "2026-03-04 18:00", "2026-03-11 06:00")


def log(sailed: str, file: str, vessel: str = "Solan Bright") -> Trip:
    body = "tows:\n  - {shot: 23:00, hauled: 23:30, net: rockhopper, catch: {cod: 100 kg}}\n"
    landed = f"landed: {{docked: {sailed[:8]}{int(sailed[8:10]) + 1:02} 09:00, out-turn: {{cod: 90 kg}}}}\n"
    return replace(trip(f"vessel: {vessel}\nsailed: {sailed}, Port Kerrin\n{body}{landed}"), file=file)


def logs() -> list[Trip]:
    own = [log(sailed, f"{n}.yaml") for n, sailed in enumerate(SAILED)]
    return [*own, log("2026-03-05 06:00", "other.yaml", "Other")]


@given(st.permutations(logs()))
def test_which_trip_was_before_and_after_whatever_the_order(trips: Sequence[Trip]) -> None:
    made = neighbours_of(trips)

    assert made["0.yaml"] == Neighbours(
        number_that_day=1, next_id="solan-bright-2026-03-04-2", next_sailed=moment("2026-03-04 18:00")
    )
    assert made["1.yaml"] == Neighbours(
        number_that_day=2,
        previous_id="solan-bright-2026-03-04",
        next_id="solan-bright-2026-03-11",
        next_sailed=moment("2026-03-11 06:00"),
    )
    assert made["2.yaml"] == Neighbours(number_that_day=1, previous_id="solan-bright-2026-03-04-2")
    assert made["other.yaml"] == Neighbours()


def test_one_name_in_two_spellings_is_one_vessel() -> None:
    made = neighbours_of([log(SAILED[0], "a.yaml", "Unlisted One"), log(SAILED[2], "b.yaml", "UNLISTED  one")])

    assert made["a.yaml"].next_sailed == moment(SAILED[2])
    assert made["b.yaml"].previous_id == trip_id("Unlisted One", moment(SAILED[0]))


def test_two_trips_that_began_together_are_none_later_than_the_other() -> None:
    made = neighbours_of([log(SAILED[0], "b.yaml"), log(SAILED[0], "a.yaml")])

    assert (made["a.yaml"].next_sailed, made["a.yaml"].next_id) == (None, "solan-bright-2026-03-04-2")
    assert made["b.yaml"].previous_id == "solan-bright-2026-03-04"


def told(trip: Neighbours) -> int:
    """Return how many earlier trips tell hail and scale of cod."""
    return trip.past.out_turn_over_hail.get("cod", Spread()).trips


@given(st.permutations(logs()))
def test_every_trip_has_what_her_earlier_ones_leave_behind(trips: Sequence[Trip]) -> None:
    made = with_past(trips)

    assert [told(made[f"{n}.yaml"]) for n in range(3)] == [0, 1, 2]
    assert made["2.yaml"].past.nets["rockhopper"].tows == 2
    assert made["other.yaml"].past == Past()
    assert {name: replace(one, past=Neighbours().past) for name, one in made.items()} == dict(neighbours_of(trips))


@pytest.mark.parametrize(
    ("vessel", "number", "expected"),
    [
        ("Solan Bright", 1, "solan-bright-2026-03-04"),
        ("SOLAN  bright", 2, "solan-bright-2026-03-04-2"),
        ("Solan Bright", 11, "solan-bright-2026-03-04-11"),
    ],
)
def test_a_trips_id_is_its_vessel_and_its_day(vessel: str, number: int, expected: str) -> None:
    assert trip_id(vessel, moment(SAILED[0]), number) == expected


def test_no_trips_have_no_neighbours() -> None:
    assert dict(neighbours_of([])) == dict(with_past([])) == {}
