"""As much of a trip's figures as is asked of all trips at once, found without reckoning the others."""

from logbook.model.figures import Reckoned
from logbook.model.placed import Head
from logbook.model.trip import Trip
from logbook.reckon.as_of import as_of, last_word, until
from logbook.reckon.catch import key, kilograms


def head_of(trip: Trip, trip_id: str = "") -> Head:
    """Return the head of a trip; its id is the others' to tell."""
    time = as_of(trip, None)
    stood = until(trip, time)
    caught = {key(amount) for tow in stood.tows for fate in (tow.catch, tow.undersize, tow.put_back) for amount in fate}
    kept = {key(amount) for tow in stood.tows for amount in tow.catch if kilograms(amount)}
    return Head(id=trip_id, last_word=last_word(stood, time), caught=tuple(sorted(caught)), kept=tuple(sorted(kept)))


def head_in(trip: Reckoned) -> Head:
    """Return the same of a trip that is reckoned."""
    figures = trip.figures
    return Head(
        id=figures.trip.id,
        last_word=figures.trip.last_word,
        caught=tuple(sorted(figures.catch)),
        kept=tuple(sorted(name for name, species in figures.catch.items() if species.kept_kg)),
    )
