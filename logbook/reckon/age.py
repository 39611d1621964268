"""How old the fish is: days since it came up, and days as if kept at 0 °C."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from itertools import pairwise

from logbook.model.figures import Age, Basis
from logbook.model.fleet import Fleet
from logbook.model.named import ByName
from logbook.model.quantity import DAY, Celsius
from logbook.model.trip import Tow, Trip

COLDEST = -10.0
WARM_DECK = Celsius(10.0)
"""Assumed on deck where no temperature is known."""
_VALID = (-2.0, 15.0)

Curve = tuple[tuple[datetime, float], ...]
"""Temperatures at moments in order, linear between them, flat before the first and after the last."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TowAge:
    """How old one tow's fish is.

    Attributes:
        days: Clock days since hauled.
        equivalent_days: Days as if kept at 0 °C.
        basis: What was assumed.
    """

    days: float
    equivalent_days: float
    basis: Basis = ()


def rate(celsius: float) -> float:
    """Return how many times faster fish ages than at 0 °C: (1 + 0.1 T)², 0 at -10 °C and below.

    Source:
        Huss (1995), FAO Fisheries Technical Paper 348; Olley and Ratkowsky. For fresh fish from about -2 to 15 °C.
    """
    return (1 + 0.1 * celsius) ** 2 if celsius > COLDEST else 0.0


def linear_days(start_c: float, end_c: float, days: float) -> float:
    """Return the equivalent days of a stretch in which the temperature goes evenly from one value to another, exactly."""
    if start_c > end_c:
        start_c, end_c = end_c, start_c
    if end_c <= COLDEST:
        return 0.0
    if start_c < COLDEST:
        days *= (end_c - COLDEST) / (end_c - start_c)
        start_c = COLDEST
    a, b = 1 + 0.1 * start_c, 1 + 0.1 * end_c
    return days * (a * a + a * b + b * b) / 3


def temperature_at(curve: Curve, time: datetime) -> float:
    """Return the temperature of a curve at a moment."""
    if time <= curve[0][0]:
        return curve[0][1]
    for (before, low), (after, high) in pairwise(curve):
        if time <= after:
            return low + (high - low) * ((time - before) / (after - before))
    return curve[-1][1]


def curve_days(curve: Curve, start: datetime, end: datetime) -> float:
    """Return the equivalent days between two moments along a curve; 0 where the end is not after the start."""
    if end <= start:
        return 0.0
    inner = [time for time, _ in curve if start < time < end]
    points = [start, *inner, end]
    return sum(
        linear_days(temperature_at(curve, a), temperature_at(curve, b), (b - a) / DAY) for a, b in pairwise(points)
    )


def pen_curves(trip: Trip) -> dict[str, Curve]:
    """Return each pen's readings in order of time; of several at one moment the warmest counts."""
    readings: dict[str, dict[datetime, float]] = {}
    for reading in trip.readings:
        for pen, celsius in reading.temperatures:
            if reading.at is not None:
                at = readings.setdefault(pen, {})
                at[reading.at] = max(celsius, at.get(reading.at, celsius))
    return {pen: tuple(sorted(at.items())) for pen, at in readings.items()}


def pens_of_tows(trip: Trip) -> dict[int, tuple[str, ...]]:
    """Return where each tow's fish lies by its number: as the stowage tells it, else as the tow does."""
    stowed: dict[int, list[str]] = {}
    for line in trip.stowage:
        for no in line.tows:
            stowed.setdefault(no, []).append(line.pen)
    return {tow.no: tuple(dict.fromkeys(stowed.get(tow.no, tow.pens))) for tow in trip.tows}


def deck_temperature(tow: Tow, trip: Trip) -> tuple[float, str]:
    """Return the temperature fish lies at until it is iced, and how it is known: the higher of sea and deck."""
    own = [celsius for celsius in (tow.sea_temperature, tow.deck_temperature) if celsius is not None]
    if own:
        return max(own), ""
    trips = [celsius for celsius in (trip.sea_temperature, trip.deck_temperature) if celsius is not None]
    if trips:
        return max(trips), "assumed: the trip's sea or deck temperature"
    return WARM_DECK, f"assumed: {WARM_DECK:g} °C on deck"


def tow_age(
    tow: Tow, on_ice: datetime, trip: Trip, fleet: Fleet, curves: dict[str, Curve], as_of: datetime, pens: Sequence[str]
) -> TowAge | None:
    """Return how old a tow's fish is at a moment; None where it was not hauled by then.

    Args:
        tow: The tow.
        on_ice: When its fish was under ice.
        trip: Its trip, for temperatures.
        fleet: For what is assumed.
        curves: Temperatures of the pens.
        as_of: The moment.
        pens: Where its fish lies; of several the oldest counts.
    """
    if tow.hauled is None or tow.hauled > as_of:
        return None
    deck, words = deck_temperature(tow, trip)
    iced = max(tow.hauled, min(on_ice, as_of))
    on_deck = rate(deck) * ((iced - tow.hauled) / DAY)
    assumed = float(fleet.assumed.pen_temperature)
    basis = [words] if words and iced > tow.hauled else []
    in_pens = []
    for pen in pens or ("",):
        curve = curves.get(pen, ((iced, assumed),))
        in_pens.append(curve_days(curve, iced, as_of))
        if pen not in curves and as_of > iced:
            basis.append(f"assumed: {assumed:g} °C in {pen}" if pen else f"assumed: {assumed:g} °C in the hold")
        elif any(not _VALID[0] <= celsius <= _VALID[1] for _, celsius in curve):
            basis.append(f"doubtful: {pen} is outside -2 to 15 °C, where the rule holds")
    return TowAge(
        days=(as_of - tow.hauled) / DAY,
        equivalent_days=on_deck + max(in_pens),
        basis=(("equivalent_ice_days", "; ".join(dict.fromkeys(basis))),) if basis else (),
    )


def reckon_age(aged: Iterable[tuple[Decimal | None, float | None, float | None]], as_of: datetime, fleet: Fleet) -> Age:
    """Return how old the fish aboard is, weighted by what was kept.

    Args:
        aged: Kept weight, clock days and equivalent days of each tow.
        as_of: The moment they are reckoned for.
        fleet: For the limit.
    """
    fish = [(kept, days, equal) for kept, days, equal in aged if kept and days is not None and equal is not None]
    limit = fleet.limits.ice_days
    if not fish:
        return Age(
            as_of=as_of,
            limit_days=limit,
            oldest_ice_days=None,
            mean_ice_days=None,
            oldest_equivalent_ice_days=None,
            mean_equivalent_ice_days=None,
            kept_kg_by_day=ByName(),
            over_limit_kg=None,
        )
    total = float(sum(kept for kept, _, _ in fish))
    by_day: dict[int, Decimal] = {}
    for kept, days, _ in fish:
        by_day[int(days)] = by_day.get(int(days), Decimal(0)) + kept
    return Age(
        as_of=as_of,
        limit_days=limit,
        oldest_ice_days=max(days for _, days, _ in fish),
        mean_ice_days=sum(float(kept) * days for kept, days, _ in fish) / total,
        oldest_equivalent_ice_days=max(equal for _, _, equal in fish),
        mean_equivalent_ice_days=sum(float(kept) * equal for kept, _, equal in fish) / total,
        kept_kg_by_day=ByName((str(day), by_day[day]) for day in sorted(by_day)),
        over_limit_kg=sum((kept for kept, _, equal in fish if equal > limit), Decimal(0)),
    )
