"""How old the fish is: days since it came up, and days as if kept at 0 °C."""

from bisect import bisect_right
from collections.abc import Sequence
from datetime import datetime
from decimal import Decimal

from msgspec import Struct

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.figures import Age
from logbook.model.fleet import Fleet
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.quantity import DAY, Celsius
from logbook.model.trip import Tow, Trip
from logbook.reckon.curve import Curve
from logbook.reckon.hold import pen_curves, pens_of_tows
from logbook.reckon.on_ice import Iced
from logbook.reckon.spoilage import linear_days
from logbook.reckon.together import sorted_together, still_waiting

WARM_DECK = Celsius(10.0)
"""Assumed on deck where no temperature is known."""
_VALID = (-2.0, 15.0)


class Fish(Struct, frozen=True, kw_only=True):
    """What one tow's fish went through since it was hauled.

    Attributes:
        hauled: When it came up; the earliest it can have been where that is not known.
        hauled_assumed: True where it is not.
        iced: When it was under ice, not before `hauled`.
        iced_assumed: True where that was not logged.
        deck_c: How warm it lay until then.
        deck_days: Days it aged until then, as if kept at 0 °C.
        pens: How warm it lies since; one curve for each pen it is in.
        of_deck: What was assumed of the deck; empty where nothing.
        of_pens: What was assumed or is doubtful of its pens.
    """

    hauled: datetime
    hauled_assumed: bool
    iced: datetime
    iced_assumed: bool
    deck_c: float
    deck_days: float
    pens: tuple[Curve, ...]
    of_deck: str
    of_pens: tuple[str, ...]


def equivalent_days(fish: Fish, time: datetime) -> float:
    """Return the age of fish at a moment, as if kept at 0 °C; of fish in several pens, that of the oldest."""
    return _ages(fish, (time,))[0]


def _ages(fish: Fish, times: Sequence[datetime]) -> list[float]:
    """Return the age of fish at each of some moments, in order of time."""
    on_deck = bisect_right(times, fish.iced)
    in_pens = [curve.days(fish.iced, times[on_deck:]) for curve in fish.pens]
    return [
        *[_deck_days(fish.deck_c, fish.hauled, time) for time in times[:on_deck]],
        *[fish.deck_days + days for days in _oldest(in_pens)],
    ]


def _oldest(ages: Sequence[list[float]]) -> list[float]:
    """Return the greatest of several ages at each of some moments."""
    return ages[0] if len(ages) == 1 else list(map(max, *ages))


def _deck_days(celsius: float, hauled: datetime, until: datetime) -> float:
    return linear_days(celsius, celsius, (until - hauled) / DAY)


def fish_of(trip: Trip, fleet: Fleet, iced: Sequence[Iced]) -> tuple[Fish | None, ...]:
    """Return what the fish of every tow went through; None for a tow that has not come up.

    Args:
        trip: The trip as it stood.
        fleet: For the temperature of pens without a reading.
        iced: When each tow's fish was under ice.
    """
    curves = pen_curves(trip)
    pens = pens_of_tows(trip)
    return tuple(_fish(*parts, trip, fleet, curves) for parts in zip(trip.tows, iced, pens, strict=True))


def _fish(tow: Tow, iced: Iced, pens: Sequence[str], trip: Trip, fleet: Fleet, curves: dict[str, Curve]) -> Fish | None:
    if iced.came_up is None or iced.under is None:
        return None
    assumed = float(fleet.assumed.pen_temperature)
    warm = warmest(tow, trip)
    deck = WARM_DECK if warm is None else warm
    told: dict[str, Curve | None] = {pen: curves.get(fold_name(pen)) for pen in pens or ("",)}
    return Fish(
        hauled=iced.came_up,
        hauled_assumed=tow.hauled is None,
        iced=iced.under,
        iced_assumed=bool(iced.basis) or iced.at is None,
        deck_c=deck,
        deck_days=_deck_days(deck, iced.came_up, iced.under),
        pens=tuple(Curve(((iced.came_up, assumed),)) if curve is None else curve for curve in told.values()),
        of_deck=reasons.DECK.format(degrees=f"{WARM_DECK:g}") if warm is None else "",
        of_pens=tuple(words for pen, curve in told.items() if (words := _of_pen(pen, curve, assumed))),
    )


def _of_pen(pen: str, curve: Curve | None, assumed: float) -> str:
    if curve is None:
        degrees = f"{assumed:g}"
        return reasons.PEN.format(degrees=degrees, pen=pen) if pen else reasons.HOLD.format(degrees=degrees)
    if all(_VALID[0] <= celsius <= _VALID[1] for celsius in curve.celsius):
        return ""
    return reasons.PEN_OUTSIDE.format(pen=pen)


def warmest(tow: Tow, trip: Trip) -> Celsius | None:
    """Return the higher of sea and deck temperature, the trip's where the tow gives none; None where neither is known."""
    sea = trip.sea_temperature if tow.sea_temperature is None else tow.sea_temperature
    deck = trip.deck_temperature if tow.deck_temperature is None else tow.deck_temperature
    return max((celsius for celsius in (sea, deck) if celsius is not None), default=None)


class TowAge(Struct, frozen=True, kw_only=True):
    """How old one tow's fish is.

    Attributes:
        days: Clock days since hauled.
        equivalent_days: Days as if kept at 0 °C.
        basis: What was assumed.
    """

    days: float
    equivalent_days: float
    basis: Basis = ()


def tow_age(fish: Fish | None, as_of: datetime) -> TowAge | None:
    """Return how old a tow's fish is at a moment; None where it is not known when it was hauled."""
    if fish is None or fish.hauled_assumed:
        return None
    words = [fish.of_deck] if fish.of_deck and min(fish.iced, as_of) > fish.hauled else []
    words += fish.of_pens if as_of > fish.iced else ()
    return TowAge(
        days=(as_of - fish.hauled) / DAY,
        equivalent_days=equivalent_days(fish, as_of),
        basis=(("equivalent_ice_days", "; ".join(words)),) if words else (),
    )


class Lot(Struct, frozen=True, kw_only=True):
    """Fish that was sorted together: of one tow, or of several; it is as old as its oldest.

    Attributes:
        kept_kg: What was kept; None where that is not known, so that there may be fish.
        fish: What the fish of each tow in it went through; one at least.
    """

    kept_kg: Decimal | None
    fish: tuple[Fish, ...]

    def days(self, time: datetime) -> float:
        """Return its age at a moment in days by the clock."""
        return (time - min([fish.hauled for fish in self.fish])) / DAY

    def equivalent_days(self, time: datetime) -> float:
        """Return its age at a moment as if kept at 0 °C."""
        return self.ages((time,))[0]

    def ages(self, times: Sequence[datetime]) -> list[float]:
        """Return the same at each of some moments, in order of time."""
        return _oldest([_ages(fish, times) for fish in self.fish])


def lots_of(tows: Sequence[Tow], kept_kg: Sequence[Decimal | None], fish: Sequence[Fish | None]) -> tuple[Lot, ...]:
    """Return the fish aboard, or that may be aboard; none of tows that caught nothing.

    Args:
        tows: The tows in order.
        kept_kg: What each of them kept.
        fish: What the fish of each went through.
    """
    waiting = tuple((n,) for n in range(len(tows) - len(still_waiting(tows)), len(tows)))
    lots = []
    for group in (*sorted_together(tows), *waiting):
        hauled = tuple(one for one in (fish[n] for n in group) if one is not None)
        if hauled and kept_kg[group[-1]] != 0:
            lots.append(Lot(kept_kg=kept_kg[group[-1]], fish=hauled))
    return tuple(lots)


def reckon_age(lots: Sequence[Lot], as_of: datetime, fleet: Fleet) -> Age:
    """Return how old the fish aboard is, weighted by what was kept.

    The oldest may be fish whose weight is not known; means and weights are of what is.

    Args:
        lots: All fish aboard.
        as_of: The moment it is as old as that.
        fleet: For the limit and what is assumed.
    """
    ages, equivalent = [lot.days(as_of) for lot in lots], [lot.equivalent_days(as_of) for lot in lots]
    aged = zip(lots, ages, equivalent, strict=True)
    known = [(lot.kept_kg, days, equal) for lot, days, equal in aged if lot.kept_kg is not None]
    total = float(sum(kept for kept, _, _ in known))
    limit = fleet.limits.ice_days
    by_day: dict[int, Decimal] = {}
    for kept, days, _ in known:
        by_day[int(days)] = by_day.get(int(days), Decimal(0)) + kept
    return Age(
        as_of=as_of,
        limit_days=limit,
        oldest_ice_days=max(ages, default=None),
        mean_ice_days=sum(float(kept) * days for kept, days, _ in known) / total if known else None,
        oldest_equivalent_ice_days=max(equivalent, default=None),
        mean_equivalent_ice_days=sum(float(kept) * equal for kept, _, equal in known) / total if known else None,
        kept_kg_by_day=ByName((str(day), by_day[day]) for day in sorted(by_day)),
        over_limit_kg=sum((kept for kept, _, equal in known if equal > limit), Decimal(0)) if known else None,
        basis=_age_basis(lots, ages, equivalent, as_of, fleet),
    )


def _age_basis(
    lots: Sequence[Lot], days: Sequence[float], equivalent: Sequence[float], as_of: datetime, fleet: Fleet
) -> Basis:
    """Return what was assumed: that there is fish where its weight is not known, when it came up, how warm and long it lay."""
    known = [lot for lot in lots if lot.kept_kg is not None]
    clock, known_clock = _early(lots), _early(known)
    oldest = _fish_not_known(lots, days)
    equal = _fish_not_known(lots, equivalent)
    all_of = assumed_of(lots, as_of, fleet)
    known_of = assumed_of(known, as_of, fleet) if len(known) < len(lots) else all_of
    return tuple(
        (name, "; ".join(words))
        for name, words in (
            ("oldest_ice_days", oldest + clock),
            ("mean_ice_days", known_clock),
            ("oldest_equivalent_ice_days", equal + all_of),
            ("mean_equivalent_ice_days", known_of),
            ("kept_kg_by_day", known_clock),
            ("over_limit_kg", known_of),
        )
        if words
    )


def _fish_not_known(lots: Sequence[Lot], ages: Sequence[float]) -> list[str]:
    oldest = max(ages, default=None)
    unknown = any(lot.kept_kg is None and age == oldest for lot, age in zip(lots, ages, strict=True))
    return [reasons.FISH_NOT_KNOWN] if unknown else []


def _early(lots: Sequence[Lot]) -> list[str]:
    early = any(fish.hauled_assumed for lot in lots for fish in lot.fish)
    return [reasons.HAULED_EARLY] if early else []


def assumed_of(lots: Sequence[Lot], as_of: datetime, fleet: Fleet) -> list[str]:
    """Return what was assumed of fish for its age as if kept at 0 °C: when it came up, how warm and how long it lay."""
    fish = [one for lot in lots for one in lot.fish]
    in_pens = any(words.startswith("assumed") for one in fish if as_of > one.iced for words in one.of_pens)
    doubtful = dict.fromkeys(
        words for one in fish if as_of > one.iced for words in one.of_pens if words.startswith("doubtful")
    )
    return [
        *_early(lots),
        *([reasons.UNDER_ICE] if any(one.iced_assumed for one in fish) else []),
        *dict.fromkeys(one.of_deck for one in fish if one.of_deck and min(one.iced, as_of) > one.hauled),
        *([reasons.PENS.format(degrees=f"{float(fleet.assumed.pen_temperature):g}")] if in_pens else []),
        *doubtful,
    ]
