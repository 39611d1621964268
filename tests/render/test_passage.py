from datetime import timedelta

from msgspec.structs import replace

from logbook.model.figures import Reckoned
from logbook.render.facts import first_facts, many_days
from logbook.render.marks import Notes
from logbook.render.passage import legs
from logbook.render.trip import trip_title
from tests.render import example


def names(trip: Reckoned) -> list[str]:
    return [leg.name for leg in legs(trip.figures, Notes(), trip.neighbours.next_sailed)]


def test_a_landed_trip_is_told_from_quay_to_quay() -> None:
    assert names(example.trip(tows=3)) == [
        "Sailed", "First shot", "Last hauled", "Turned for home", "Docked", "Landing began", "Landing finished",
    ]  # fmt: skip


def test_a_trip_that_is_out_ends_with_what_is_expected() -> None:
    trip = example.trip(tows=3, state="homeward")
    last = legs(trip.figures, Notes())[-1]

    assert last.name == "Expected to dock"
    assert last.took.replace("\u202f", " ") == "passage 12.8 h, 121.3 nm"
    assert 'class="mark"' in last.mark


def test_a_turnaround_stands_with_the_next_sailing() -> None:
    trip = example.trip(tows=3)
    docked = trip.figures.trip.docked
    assert docked
    landing = replace(trip.figures.landing, turnaround_h=41.5)
    last = legs(replace(trip.figures, landing=landing), Notes(), docked + timedelta(days=2))[-1]

    assert (last.name, last.took.replace("\u202f", " ")) == ("Sailed again", "turned round in 41.5 h")


def test_several_landings_are_told_one_after_the_other() -> None:
    trip = example.trip(tows=3)
    first = replace(trip.figures.landing, port="North Quay")
    landing = replace(trip.figures.landing, landings=(first, trip.figures.landing))
    docked = [leg.where for leg in legs(replace(trip.figures, landing=landing), Notes()) if leg.name == "Docked"]

    assert docked == ["North Quay", "Port Kerrin"]


def test_the_facts_asked_first_differ_at_sea_and_ashore() -> None:
    out = [fact.name for fact in first_facts(example.trip(tows=3, state="at sea"), None, Notes())]
    ashore = [fact.name for fact in first_facts(example.trip(tows=3), None, Notes())]

    assert out[0] == "Kept so far"
    assert out[-1] == "Oldest fish aboard"
    assert ashore[0] == "Kept"
    assert ashore[-1] == "Oldest fish at landing"


def test_days_of_a_limit_are_told_plainly() -> None:
    assert [many_days(10.0), many_days(1.0), many_days(7.5).replace("\u202f", " ")] == ["10 days", "1 day", "7.5 days"]


def test_a_trip_without_a_number_goes_by_its_date() -> None:
    assert trip_title(example.trip(number=None, tows=1).figures) == "Solan Bright, 4 March 2026"
    assert trip_title(example.trip(tows=1).figures) == "Solan Bright, trip 14"
