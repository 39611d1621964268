"""What a vessel's trips leave behind for the next one, gathered trip by trip in order of time."""

from collections.abc import Iterable
from datetime import timedelta

from logbook.model.named import ByName
from logbook.model.past import Past
from logbook.model.trip import Trip
from logbook.reckon.as_of import as_of, until
from logbook.reckon.gear import gear_after
from logbook.reckon.out_turn import out_turn_over_hail

_WEEK = timedelta(days=7)
NOTHING = Past()
"""Of a vessel's first trip."""


def past_of(earlier: Iterable[Trip]) -> Past:
    """Return what trips leave behind; they are one vessel's, in order of time, each as its log has it."""
    past = NOTHING
    for trip in earlier:
        past = after(past, trip)
    return past


def after(past: Past, trip: Trip) -> Past:
    """Return what is left behind after one more trip."""
    stood = until(trip, as_of(trip, None))
    nets, rigging = gear_after(stood, past)
    ratios = {name: past.out_turn_over_hail[name] for name in past.out_turn_over_hail}
    for name, ratio in out_turn_over_hail(stood).items():
        ratios[name] = (*ratios.get(name, ()), ratio)
    return Past(
        trips=past.trips + 1,
        out_turn_over_hail=ByName(ratios.items()),
        nets=nets,
        rigging=rigging,
        recent=(*(one for one in past.recent if as_of(one, None) > trip.begins - 2 * _WEEK), trip),
    )
