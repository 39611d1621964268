"""Species' entries beside a log, and back in it."""

from msgspec.structs import replace

from logbook.model.entries import Lean, lean, whole
from logbook.model.packed import packed, unpacked
from logbook.model.trip import Trip
from tests.read.logs import trip

LOG = (
    "vessel: Solan Bright\nsailed: 2026-03-01 05:30, Port Kerrin\ntows:\n"
    "  - {shot: 12:00, hauled: 14:00, catch: {cod: 100 kg, codling: 20 kg, oddfish: 5 kg}, put back: {skate: 9 kg}}\n"
    "  - {shot: 15:00, hauled: 17:00, catch: {cod: 80 kg}, undersize: {haddock: 3 kg}}\n"
    "landed: {docked: 2026-03-02 09:00, out-turn: {cod: 190 kg, oddfish: 4 kg}}\n"
)


def test_a_trip_comes_back_as_it_was() -> None:
    made = trip(LOG)

    assert whole(lean(made)) == made
    assert whole(unpacked(packed(lean(made)), Lean)) == made


def test_each_entry_stands_beside_the_trip_once() -> None:
    made = lean(trip(LOG))

    assert sorted(entry.name for entry in made.entries) == ["cod", "haddock", "skate"]
    assert all(amount.known is None for tow in made.trip.tows for amount in (*tow.catch, *tow.undersize, *tow.put_back))
    assert all(line.known is None for landing in made.trip.landings for line in landing.out_turn)


def test_two_species_of_one_name_stay_apart() -> None:
    made = with_first_known(trip(LOG), "Gadus other")

    assert whole(lean(made)) == made


def test_a_name_that_is_known_once_and_not_elsewhere_stays_so() -> None:
    made = with_first_known(trip(LOG), None)

    assert whole(lean(made)) == made


def with_first_known(made: Trip, scientific: str | None) -> Trip:
    """Return a trip whose first amount has another entry of the same name, or none."""
    first, *others = made.tows
    amount, *rest = first.catch
    assert amount.known is not None
    known = replace(amount.known, scientific=scientific) if scientific is not None else None
    return replace(made, tows=(replace(first, catch=(replace(amount, known=known), *rest)), *others))


def test_nothing_caught_has_no_entries() -> None:
    made = trip(
        "vessel: Solan Bright\nsailed: 2026-03-01 05:30, Port Kerrin\ntows:\n  - {shot: 12:00, hauled: 14:00}\n"
    )

    assert lean(made) == Lean(trip=made, entries=())
