"""Sums over a group of tows or trips: what a vessel, a ground, a species or a month came to.

Rates are ratios of totals, not means of ratios. In every rate foul tows are told apart.
"""

from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Sequence
from decimal import Decimal

from msgspec.structs import replace

from logbook.model.figures import Reckoned, SpeciesCatch, TowFigures
from logbook.model.fleet_figures import GroupFigures
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.quantity import Money
from logbook.reckon.catch import add
from logbook.reckon.totals import add_floats, catch_per_hour
from logbook.reckon.weather import LIGHTS, by_light_of


def group_of_tows(name: str, trips: int, tows: Sequence[TowFigures], clean: Iterable[TowFigures]) -> GroupFigures:
    """Return the sums over some tows.

    Args:
        name: What they have in common.
        trips: How many trips they are of.
        tows: The tows.
        clean: Those of them that were not foul, nor sorted with one that was.
    """
    by_light = by_light_of(tows)
    return GroupFigures(
        name=name,
        trips=trips,
        days_at_sea=None,
        tows=len(tows),
        foul_tows=sum(tow.foul for tow in tows),
        towed_h=add_floats(tow.duration_h for tow in tows),
        kept_kg=add(tow.kept_kg for tow in tows),
        put_back_kg=add(tow.put_back_kg for tow in tows),
        live_kg=add(tow.live_kg for tow in tows),
        kept_kg_per_h=catch_per_hour(tows),
        kept_kg_per_h_clean=catch_per_hour(clean),
        hours_by_light=ByName((light, hours) for light, (hours, _) in by_light.items()),
        kept_kg_per_h_by_light=ByName((light, catch_per_hour(own)) for light, (_, own) in by_light.items()),
    )


def group_of_trips(name: str, trips: Sequence[Reckoned]) -> GroupFigures:
    """Return the sums over some whole trips, with what they landed, how old it was and what it brought."""
    tows = [tow for trip in trips for tow in trip.figures.tows]
    clean = [tow for trip in trips for tow in clean_tows(trip.figures.tows)]
    return replace(
        group_of_tows(name, len(trips), tows, clean),
        days_at_sea=add_floats(trip.figures.totals.days_at_sea for trip in trips),
        out_turn_kg=add(hail.out_turn_kg for trip in trips for hail in trip.figures.hail.values()),
        mean_ice_days=_mean_age(trips),
        gross=_gross(trips),
    )


def clean_tows(tows: Sequence[TowFigures]) -> list[TowFigures]:
    """Return the tows of one trip that were not foul, nor sorted with one that was."""
    foul = {tow.no for tow in tows if tow.foul}
    return [tow for tow in tows if foul.isdisjoint((tow.no, *tow.sorted_with))]


def by_place(
    trips: Iterable[Sequence[TowFigures]], place_of: Callable[[TowFigures], str | None]
) -> ByName[GroupFigures]:
    """Return the sums of every place that tows name, whatever its case, the most fished first.

    Args:
        trips: The tows of each trip.
        place_of: What of a tow is its place: its ground, its rectangle; None leaves it out.
    """
    names: dict[str, str] = {}
    tows: dict[str, list[TowFigures]] = defaultdict(list)
    clean: dict[str, list[TowFigures]] = defaultdict(list)
    visits: Counter[str] = Counter()
    for of_trip in trips:
        sound = set(map(id, clean_tows(of_trip)))
        placed = [(fold_name(place), place, tow) for tow in of_trip if (place := place_of(tow)) is not None]
        for folded, place, tow in placed:
            names.setdefault(folded, place)
            tows[folded].append(tow)
            if id(tow) in sound:
                clean[folded].append(tow)
        visits.update({folded for folded, _, _ in placed})
    groups = [group_of_tows(names[folded], visits[folded], own, clean[folded]) for folded, own in tows.items()]
    return ByName((group.name, group) for group in sorted(groups, key=lambda group: (-group.tows, group.name)))


def by_species(trips: Sequence[Reckoned]) -> ByName[GroupFigures]:
    """Return each species' sums, the heaviest first; its rate is over all hours whose catch is known, with tows that had none."""
    names = dict.fromkeys(name for trip in trips for name in trip.figures.catch)
    groups = [_species(name, trips) for name in names]
    return ByName((group.name, group) for group in sorted(groups, key=_heaviest))


def _heaviest(group: GroupFigures) -> tuple[Decimal, str]:
    return (Decimal(1) if group.kept_kg is None else -group.kept_kg), group.name


def _species(name: str, trips: Sequence[Reckoned]) -> GroupFigures:
    with_it = [trip for trip in trips if name in trip.figures.catch]
    tows = [tow for trip in with_it for tow in trip.figures.tows if name in tow.catch]
    caught: list[SpeciesCatch] = [tow.catch[name] for tow in tows]
    every = [tow for trip in trips for tow in trip.figures.tows]
    clean = [tow for trip in trips for tow in clean_tows(trip.figures.tows)]
    return GroupFigures(
        name=name,
        trips=len(with_it),
        days_at_sea=None,
        tows=len(tows),
        foul_tows=sum(tow.foul for tow in tows),
        towed_h=add_floats(tow.duration_h for tow in tows),
        kept_kg=add(part.kept_kg for part in caught),
        put_back_kg=add(part.put_back_kg for part in caught),
        live_kg=add(part.live_kg for part in caught),
        kept_kg_per_h=_rate(name, every),
        kept_kg_per_h_clean=_rate(name, clean),
        kept_kg_per_h_by_light=ByName(
            (light, _rate(name, own)) for light in LIGHTS if (own := [tow for tow in every if tow.light == light])
        ),
        out_turn_kg=add(hail.out_turn_kg for trip in trips if (hail := trip.figures.hail.get(name)) is not None),
    )


def _rate(name: str, tows: Iterable[TowFigures]) -> float | None:
    """Return what was kept of a species over the hours of all tows whose catch is known."""
    known = [tow for tow in tows if tow.kept_kg is not None and tow.catch_h is not None]
    kept = add(tow.catch[name].kept_kg for tow in known if name in tow.catch)
    hours = add_floats(tow.catch_h for tow in known)
    return float(kept) / hours if kept is not None and hours else None


def _mean_age(trips: Iterable[Reckoned]) -> float | None:
    """Return the mean age at docking of what was kept, by weight."""
    landed = [trip.figures for trip in trips if trip.figures.trip.docked is not None]
    known = [
        (float(one.totals.kept_kg), one.age.mean_ice_days)
        for one in landed
        if one.totals.kept_kg and one.age.mean_ice_days is not None
    ]
    total = sum(kept for kept, _ in known)
    return sum(kept * days for kept, days in known) / total if total else None


def _gross(trips: Iterable[Reckoned]) -> Money | None:
    money = [trip.figures.money for trip in trips if trip.figures.money is not None]
    known = [one.gross for one in money if one.gross is not None]
    return Money(sum(known, Decimal(0))) if known else None
