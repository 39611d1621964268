"""What a vessel's trips leave behind for the next one, gathered trip by trip in order of time.

Of each trip only what it leaves is needed, not the whole of it, so that a change in one log of many years asks for little.
"""

from bisect import insort
from collections.abc import Iterable

from msgspec.structs import replace

from logbook.model.named import ByName
from logbook.model.past import GearPast, Left, Past, Rested
from logbook.model.quantity import DAY
from logbook.model.trip import Trip
from logbook.reckon.as_of import as_of, until
from logbook.reckon.catch import species_key
from logbook.reckon.gear import carried_on, left_of_nets, left_of_rigging, rigged
from logbook.reckon.out_turn import out_turn_over_hail, spread
from logbook.reckon.rest import rest_until, rested

_WEEK = 7 * DAY


class Behind:
    """What is left behind after some of a vessel's trips."""

    def __init__(self) -> None:
        """Begin before her first trip."""
        self._ratios: dict[str, list[float]] = {}
        self._nets: dict[str, GearPast] = {}
        self._rigging: dict[str, GearPast] = {}
        self._recent: tuple[Left, ...] = ()

    def before(self, trip: Left) -> Past:
        """Return what bears on the next trip, but for her rest on those before."""
        names = [name for name in trip.species if name in self._ratios]
        nets = [name for name, _ in trip.nets if name in self._nets]
        return Past(
            out_turn_over_hail=ByName((name, spread(self._ratios[name])) for name in names),
            nets=ByName((name, self._nets[name]) for name in nets),
            rigging=ByName(self._rigging.items()),
        )

    def recent(self, trip: Left) -> tuple[str, ...]:
        """Return the logs of the week before the next trip in order, back to one of which it is not known when it ended.

        None where the next trip's own log tells of no rest.
        """
        return tuple(one.file for one in self._week_before(trip)) if trip.rests else ()

    def add(self, trip: Left) -> None:
        """Gather what one more trip leaves."""
        for name, ratio in trip.ratios:
            insort(self._ratios.setdefault(name, []), ratio)
        for name, left in trip.nets:
            self._nets[name] = carried_on(self._nets.get(name, GearPast()), left)
        for part, left in trip.rigging:
            if part in trip.rigged or part in self._rigging:
                self._rigging[part] = carried_on(self._rigging.get(part, GearPast()), left)
        self._recent = (*self._week_before(trip), trip)

    def _week_before(self, trip: Left) -> tuple[Left, ...]:
        since = trip.sailed - _WEEK
        kept = len(self._recent)
        while kept and (end := self._recent[kept - 1].until) is not None and end > since:
            kept -= 1
        return self._recent[kept:]


def left_by(trip: Trip) -> Left:
    """Return what a trip leaves behind."""
    stood = until(trip, as_of(trip, None))
    return Left(
        file=trip.file,
        sailed=trip.sailed or trip.begins,
        until=rest_until(trip),
        rests=bool(trip.rest or trip.watches),
        species=tuple(_species(trip)),
        ratios=tuple(out_turn_over_hail(stood).items()),
        nets=tuple(left_of_nets(stood)),
        rigging=tuple(left_of_rigging(stood)),
        rigged=rigged(stood),
    )


def _species(trip: Trip) -> dict[str, None]:
    """Return the species of a trip's catch and out-turn, each once."""
    names = [
        amount.species
        for tow in trip.tows
        for amounts in (tow.catch, tow.undersize, tow.put_back)
        for amount in amounts
    ]
    names += [line.species for landing in trip.landings for line in landing.out_turn]
    return dict.fromkeys(species_key(name) for name in dict.fromkeys(names))


def past_of(earlier: Iterable[Trip], trip: Trip) -> Past:
    """Return what trips leave behind for another; they are one vessel's, in order of time, each as its log has it."""
    behind = Behind()
    logs: dict[str, Rested] = {}
    for one in earlier:
        behind.add(left_by(one))
        logs[one.file] = rested(one)
    left = left_by(trip)
    return replace(behind.before(left), recent=tuple(logs[file] for file in behind.recent(left)))
