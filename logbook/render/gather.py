"""Figures put side by side for a page: tows by day, by ground, a vessel's usual catch.

It adds up and picks out what was reckoned; no figure of a trip comes about here.
"""

from collections.abc import Iterable
from datetime import datetime
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import Reckoned, SpeciesTotal, TowFigures
from logbook.model.fleet_figures import Landed
from logbook.model.named import ByName
from logbook.model.trip import Tow

NOUGHT = Decimal(0)


def added(weights: Iterable[Decimal | None]) -> Decimal | None:
    """Return the sum of what is known; None where nothing is."""
    known = [weight for weight in weights if weight is not None]
    return sum(known, NOUGHT) if known else None


def by_weight(catch: ByName[SpeciesTotal]) -> tuple[str, ...]:
    """Return the names of the species, most kept first; those of no known weight last, by name."""
    return tuple(sorted(catch, key=lambda name: (-(catch[name].kept_kg or NOUGHT), name)))


def kept_species(catch: ByName[SpeciesTotal]) -> tuple[str, ...]:
    """Return the names of the species that were kept, most kept first; without those only put back or kept undersize."""
    return tuple(name for name in by_weight(catch) if catch[name].kept)


def logged_tows(reckoned: Reckoned) -> tuple[tuple[Tow, TowFigures], ...]:
    """Return every tow as it was logged with its figures."""
    tows, figures = reckoned.log.tows, reckoned.figures.tows
    if len(tows) == len(figures):
        return tuple(zip(tows, figures, strict=True))
    named = {tow.no: tow for tow in reversed(tows)}
    return tuple((named[tow.no], tow) for tow in figures if tow.no in named)


class TripLine(Struct, frozen=True, kw_only=True):
    """A trip in a table of trips.

    Attributes:
        trip: The trip.
        landed_kg: What it put ashore; None where it is not known.
        weighed: True where that went over the scale.
        chief: The species it kept most of, up to two.
    """

    trip: Reckoned
    landed_kg: Decimal | None
    weighed: bool
    chief: tuple[str, ...]


def trip_line(trip: Reckoned, landed: Landed | None) -> TripLine:
    """Return a trip as it stands in tables."""
    return TripLine(
        trip=trip,
        landed_kg=added(landed.species.values()) if landed else None,
        weighed=bool(landed and landed.weighed),
        chief=kept_species(trip.figures.catch)[:2],
    )


def begun(trip: Reckoned) -> tuple[datetime, str]:
    """Return what trips are put in order by: when they began, then which they are."""
    return trip.log.begins, trip.figures.trip.id


def moments(trips: Iterable[Reckoned]) -> list[datetime]:
    """Return the moments of trips that tell which offset their logs are kept in."""
    found: list[datetime | None] = []
    for trip in trips:
        head = trip.figures.trip
        found += [trip.log.begins, head.sailed, head.docked, head.turned_for_home, head.last_word, head.as_of]
        found += [moment for tow in trip.figures.tows for moment in (tow.shot, tow.hauled)]
    return [moment for moment in found if moment is not None]
