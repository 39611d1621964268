"""Figures put side by side for a page: tows by day, by ground, a vessel's usual catch.

It adds up and picks out what was reckoned; no figure of a trip comes about here.
"""

from collections import Counter
from collections.abc import Iterable, Mapping
from datetime import date
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import Reckoned, SpeciesTotal, TowFigures
from logbook.model.ledger import Brief, Entry, Ledger
from logbook.model.named import ByName
from logbook.model.trip import Tow

NOUGHT = Decimal(0)
_OUT = ("homeward", "at sea")


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


def trip_line(brief: Brief) -> TripLine:
    """Return a trip as it stands in tables."""
    trip, landed = brief.trip, brief.landed
    return TripLine(
        trip=trip,
        landed_kg=added(landed.species.values()) if landed else None,
        weighed=bool(landed and landed.weighed),
        chief=kept_species(trip.figures.catch)[:2],
    )


def offsets_of(briefs: Iterable[Brief]) -> Mapping[int, int]:
    """Return how many times of the logs of some trips have which offset from UTC, in seconds."""
    counts: Counter[int] = Counter()
    for brief in briefs:
        counts.update(brief.offsets)
    return counts


def out_at_sea(entries: Iterable[Entry]) -> list[Entry]:
    """Return the trips that are out, those homeward first, then by vessel."""
    return sorted((one for one in entries if one.state in _OUT), key=lambda one: (_OUT.index(one.state), one.id))


def week_of(day: date) -> str:
    """Return the ISO week of a day, as `2026-W10`."""
    year, week, _weekday = day.isocalendar()
    return f"{year}-W{week:02}"


def latest_landed(entries: Iterable[Entry]) -> list[Entry]:
    """Return the trips that docked, the latest first."""
    docked = [(entry.docked, entry.id, entry) for entry in entries if entry.docked is not None]
    return [entry for _, _, entry in sorted(docked, key=lambda one: one[:2], reverse=True)]


def weeks_of(ledger: Ledger) -> tuple[str, ...]:
    """Return the weeks that have a page, those of a landing and that of the last word, the last first."""
    days = [entry.docked.date() for entry in ledger.entries if entry.docked is not None]
    days += [ledger.latest.date()] if ledger.latest is not None else []
    return tuple(sorted(set(map(week_of, days)), reverse=True))


def every_month(months: Iterable[str]) -> list[str]:
    """Return the months from the first of some to the last, as `2026-03`."""
    numbers = [int(month[:-3]) * 12 + int(month[-2:]) - 1 for month in months]
    return (
        [f"{number // 12:04}-{number % 12 + 1:02}" for number in range(min(numbers), max(numbers) + 1)]
        if numbers
        else []
    )
