"""Sums over tows and trips that add up exactly, and the figures they come to.

Rates are ratios of totals, not means of ratios. In every rate foul tows are told apart.
"""

from collections import Counter
from collections.abc import Hashable, Iterable, Mapping, Sequence
from decimal import Decimal
from typing import TypeVar

from msgspec.structs import replace

from logbook.model.figures import Reckoned, TowFigures
from logbook.model.fleet_figures import GroupFigures
from logbook.model.named import ByName
from logbook.model.quantity import Money
from logbook.model.tally import ALL, CLEAN, NOUGHT, Rate, Sums, TripSums
from logbook.reckon.catch import add
from logbook.reckon.weather import LIGHTS

K = TypeVar("K", bound=Hashable)
T = TypeVar("T")

HOUR_US = 3_600_000_000
_DAY_S = 86_400
_DAY_US = _DAY_S * 1_000_000


def sums_of(tows: Iterable[TowFigures], clean: frozenset[int], trips: int = 1) -> Sums:
    """Return the sums over some tows.

    Args:
        tows: The tows.
        clean: Ids of the objects among them that were not foul, nor sorted with one that was.
        trips: Of how many trips they are.
    """
    own = tuple(tows)
    hours: dict[str, int] = {}
    rated: dict[str, list[TowFigures]] = {}
    for tow in own:
        if tow.duration_h is not None:
            for name in (ALL, tow.light) if tow.light in LIGHTS else (ALL,):
                hours[name] = hours.get(name, 0) + microseconds(tow.duration_h)
        if tow.kept_kg is not None and tow.catch_h:
            for name in _rates_of(tow, clean=id(tow) in clean):
                rated.setdefault(name, []).append(tow)
    return Sums(
        trips=trips,
        tows=len(own),
        foul=sum(tow.foul for tow in own),
        kept=add(tow.kept_kg for tow in own),
        put_back=add(tow.put_back_kg for tow in own),
        live=add(tow.live_kg for tow in own),
        hours=hours,
        rates={name: _rate(of_it) for name, of_it in rated.items()},
    )


def _rates_of(tow: TowFigures, *, clean: bool) -> Iterable[str]:
    """Give the names of the rates that a tow counts in."""
    yield ALL
    if clean:
        yield CLEAN
    if tow.light in LIGHTS:
        yield tow.light


def _rate(tows: Sequence[TowFigures]) -> Rate:
    return Rate(kept=add(tow.kept_kg for tow in tows) or NOUGHT, us=sum(microseconds(tow.catch_h or 0) for tow in tows))


def microseconds(hours: float) -> int:
    """Return hours in whole microseconds, of which moments are made."""
    return round(hours * HOUR_US)


def sums_of_trip(trip: Reckoned) -> TripSums:
    """Return the sums over one whole trip, with what it landed, how old that was and what it brought."""
    figures = trip.figures
    days, aged = figures.totals.days_at_sea, Decimal(0)
    age_s = Decimal(0)
    if figures.trip.docked is not None and figures.totals.kept_kg and figures.age.mean_ice_days is not None:
        aged = figures.totals.kept_kg
        age_s = aged * round(figures.age.mean_ice_days * _DAY_S)
    return TripSums(
        sums=sums_of(figures.tows, clean_tows(figures.tows)),
        days_us=round(days * _DAY_US) if days is not None else None,
        out_turn=add(hail.out_turn_kg for hail in figures.hail.values()),
        aged_kg=aged,
        aged_kg_s=age_s,
        gross=figures.money.gross if figures.money is not None else None,
    )


def clean_tows(tows: Sequence[TowFigures]) -> frozenset[int]:
    """Return the ids of the objects that are tows of one trip that were not foul, nor sorted with one that was."""
    foul = {tow.no for tow in tows if tow.foul}
    return frozenset(id(tow) for tow in tows if foul.isdisjoint((tow.no, *tow.sorted_with)))


def added(parts: Sequence[Sums]) -> Sums:
    """Return what sums come to together."""
    if len(parts) == 1:
        return parts[0]
    hours: Counter[str] = Counter()
    kept: dict[str, Decimal] = {}
    times: Counter[str] = Counter()
    for part in parts:
        hours.update(part.hours)
        for name, rate in part.rates.items():
            kept[name] = kept.get(name, NOUGHT) + rate.kept
            times[name] += rate.us
    return Sums(
        trips=sum(part.trips for part in parts),
        tows=sum(part.tows for part in parts),
        foul=sum(part.foul for part in parts),
        kept=add(part.kept for part in parts),
        put_back=add(part.put_back for part in parts),
        live=add(part.live for part in parts),
        hours=dict(hours),
        rates={name: Rate(kept=weight, us=times[name]) for name, weight in kept.items()},
    )


def added_trips(parts: Sequence[TripSums]) -> TripSums:
    """Return what sums over trips come to together."""
    days = [part.days_us for part in parts if part.days_us is not None]
    return TripSums(
        sums=added([part.sums for part in parts]),
        days_us=sum(days) if days else None,
        out_turn=add(part.out_turn for part in parts),
        aged_kg=sum((part.aged_kg for part in parts), NOUGHT),
        aged_kg_s=sum((part.aged_kg_s for part in parts), NOUGHT),
        gross=add(part.gross for part in parts),
    )


def added_by(parts: Iterable[Mapping[K, Sums]]) -> dict[K, Sums]:
    """Return what sums come to by what they are of."""
    return {name: added(own) for name, own in gathered(parts).items()}


def gathered(parts: Iterable[Mapping[K, T]]) -> dict[K, list[T]]:
    """Return the values of several tables by their names, which stand in order."""
    found: dict[K, list[T]] = {}
    for part in parts:
        for name, one in part.items():
            found.setdefault(name, []).append(one)
    return found


def weights(parts: Iterable[Mapping[K, Decimal]]) -> dict[K, Decimal]:
    """Return what weights come to by what they are of."""
    return {name: sum(own, NOUGHT) for name, own in gathered(parts).items()}


def figures_of(name: str, sums: Sums) -> GroupFigures:
    """Return what sums over tows come to."""
    lights = {light: sums.hours[light] for light in LIGHTS if light in sums.hours}
    return GroupFigures(
        name=name,
        trips=sums.trips,
        days_at_sea=None,
        tows=sums.tows,
        foul_tows=sums.foul,
        towed_h=sums.hours[ALL] / HOUR_US if ALL in sums.hours else None,
        kept_kg=sums.kept,
        put_back_kg=sums.put_back,
        live_kg=sums.live,
        kept_kg_per_h=per_hour(sums.rates.get(ALL)),
        kept_kg_per_h_clean=per_hour(sums.rates.get(CLEAN)),
        hours_by_light=ByName((light, us / HOUR_US) for light, us in lights.items()),
        kept_kg_per_h_by_light=ByName((light, per_hour(sums.rates.get(light))) for light in lights),
    )


def per_hour(rate: Rate | None) -> float | None:
    """Return a catch per hour; None where nothing is known of it."""
    return float(rate.kept) / (rate.us / HOUR_US) if rate is not None and rate.us else None


def figures_of_trips(name: str, sums: TripSums) -> GroupFigures:
    """Return what sums over whole trips come to."""
    return replace(
        figures_of(name, sums.sums),
        days_at_sea=sums.days_us / _DAY_US if sums.days_us is not None else None,
        out_turn_kg=sums.out_turn,
        mean_ice_days=float(sums.aged_kg_s) / float(sums.aged_kg) / _DAY_S if sums.aged_kg else None,
        gross=Money(sums.gross) if sums.gross is not None else None,
    )
