"""Sums over all trips of the fleet: by vessel, ground, species and season, and what was landed when.

Rates are ratios of totals, not means of ratios.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import datetime
from decimal import Decimal

from logbook.model.figures import FleetFigures, GroupFigures, Landed, Reckoned, SpeciesCatch, TowFigures
from logbook.model.fleet import Fleet
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.reckon.catch import add, species_key
from logbook.reckon.totals import add_floats, catch_per_hour


def reckon_fleet(trips: Sequence[Reckoned], fleet: Fleet) -> FleetFigures:
    """Return the sums over all trips.

    Args:
        trips: All trips with their figures, in any order.
        fleet: For when its season begins.
    """
    ordered = sorted(trips, key=lambda trip: (fold_name(trip.figures.trip.vessel), trip.log.begins, trip.log.file))
    landed = tuple(sorted(_landings(ordered), key=lambda landing: (landing.docked, landing.trip_id)))
    return FleetFigures(
        vessels=ByName(_by_vessel(ordered)),
        grounds=ByName(_by_ground(ordered)),
        species=ByName(_by_species(ordered)),
        seasons=ByName(_by_season(ordered, fleet)),
        landed=landed,
        landed_by_month=_by_month(landed),
    )


def season(docked: datetime, fleet: Fleet) -> str:
    """Return the season a docking belongs to: its calendar year, or where it starts elsewhere both years, as `2025–26`."""
    year = docked.year if (docked.month, docked.day) >= fleet.season_start else docked.year - 1
    return str(year) if fleet.season_start == (1, 1) else f"{year}–{(year + 1) % 100:02}"


def _group(name: str, trips: Sequence[Reckoned], tows: Sequence[TowFigures], *, days: bool) -> GroupFigures:
    own = set(map(id, tows))
    return GroupFigures(
        name=name,
        trips=len(trips),
        days_at_sea=add_floats(trip.figures.totals.days_at_sea for trip in trips) if days else None,
        tows=len(tows),
        foul_tows=sum(tow.foul for tow in tows),
        towed_h=add_floats(tow.duration_h for tow in tows),
        kept_kg=add(tow.kept_kg for tow in tows),
        put_back_kg=add(tow.put_back_kg for tow in tows),
        live_kg=add(tow.live_kg for tow in tows),
        kept_kg_per_h=catch_per_hour(tows),
        kept_kg_per_h_clean=catch_per_hour(tow for tow in _clean(trips) if id(tow) in own),
    )


def _tows(trips: Iterable[Reckoned]) -> list[TowFigures]:
    return [tow for trip in trips for tow in trip.figures.tows]


def _grouped(trips: Sequence[Reckoned], name_of: Callable[[Reckoned], str | None]) -> dict[str, list[Reckoned]]:
    groups: dict[str, list[Reckoned]] = {}
    for trip in trips:
        name = name_of(trip)
        if name is not None:
            groups.setdefault(name, []).append(trip)
    return groups


def _by_vessel(trips: Sequence[Reckoned]) -> Iterator[tuple[str, GroupFigures]]:
    names = {fold_name(trip.figures.trip.vessel): trip.figures.trip.vessel for trip in trips}
    for folded, own in _grouped(trips, lambda trip: fold_name(trip.figures.trip.vessel)).items():
        yield names[folded], _group(names[folded], own, _tows(own), days=True)


def _by_season(trips: Sequence[Reckoned], fleet: Fleet) -> Iterator[tuple[str, GroupFigures]]:
    def of(trip: Reckoned) -> str | None:
        docked = trip.figures.trip.docked
        return season(docked, fleet) if docked is not None else None

    for name, own in sorted(_grouped(trips, of).items()):
        yield name, _group(name, own, _tows(own), days=True)


def _by_ground(trips: Sequence[Reckoned]) -> Iterator[tuple[str, GroupFigures]]:
    names: dict[str, str] = {}
    tows: dict[str, list[TowFigures]] = {}
    visits: dict[str, list[Reckoned]] = {}
    for trip in trips:
        for tow in trip.figures.tows:
            if tow.ground is None:
                continue
            folded = fold_name(tow.ground)
            names.setdefault(folded, tow.ground)
            tows.setdefault(folded, []).append(tow)
            own = visits.setdefault(folded, [])
            if not own or own[-1] is not trip:
                own.append(trip)
    for folded in sorted(names):
        yield names[folded], _group(names[folded], visits[folded], tows[folded], days=False)


def _by_species(trips: Sequence[Reckoned]) -> Iterator[tuple[str, GroupFigures]]:
    """Give each species' sums; its rate is over all hours whose catch is known, with tows that had none of it."""
    names = dict.fromkeys(name for trip in trips for name in trip.figures.catch)
    groups = [(name, _species(name, trips)) for name in names]
    yield from sorted(groups, key=_heaviest)


def _heaviest(item: tuple[str, GroupFigures]) -> tuple[Decimal, str]:
    name, group = item
    return (Decimal(1) if group.kept_kg is None else -group.kept_kg), name


def _species(name: str, trips: Sequence[Reckoned]) -> GroupFigures:
    with_it = [trip for trip in trips if name in trip.figures.catch]
    tows = [tow for tow in _tows(with_it) if name in tow.catch]
    caught: list[SpeciesCatch] = [tow.catch[name] for tow in tows]
    kept = add(part.kept_kg for part in caught)
    known = [tow for tow in _tows(trips) if tow.kept_kg is not None and tow.catch_h is not None]
    clean = [tow for tow in _clean(trips) if tow.kept_kg is not None and tow.catch_h is not None]
    known_kept = add(tow.catch[name].kept_kg for tow in known if name in tow.catch)
    clean_kept = add(tow.catch[name].kept_kg for tow in clean if name in tow.catch)
    return GroupFigures(
        name=name,
        trips=len(with_it),
        days_at_sea=None,
        tows=len(tows),
        foul_tows=sum(tow.foul for tow in tows),
        towed_h=add_floats(tow.duration_h for tow in tows),
        kept_kg=kept,
        put_back_kg=add(part.put_back_kg for part in caught),
        live_kg=add(part.live_kg for part in caught),
        kept_kg_per_h=_per_hour(known_kept, known),
        kept_kg_per_h_clean=_per_hour(clean_kept, clean),
    )


def _per_hour(kept: Decimal | None, tows: Iterable[TowFigures]) -> float | None:
    hours = add_floats(tow.catch_h for tow in tows)
    return float(kept) / hours if kept is not None and hours else None


def _clean(trips: Iterable[Reckoned]) -> list[TowFigures]:
    """Return the tows that were not foul, nor sorted with one that was."""
    clean = []
    for trip in trips:
        foul = {tow.no for tow in trip.figures.tows if tow.foul}
        clean += [tow for tow in trip.figures.tows if foul.isdisjoint((tow.no, *tow.sorted_with))]
    return clean


def _landings(trips: Iterable[Reckoned]) -> Iterator[Landed]:
    """Give what each landed trip put ashore: over the scale where it was weighed, else as hailed."""
    for trip in trips:
        head = trip.figures.trip
        if head.docked is None:
            continue
        weighed: dict[str, Decimal] = {}
        for landing in trip.log.landings:
            for entry in landing.out_turn:
                if entry.weight is not None:
                    name = species_key(entry.species)
                    weighed[name] = weighed.get(name, Decimal(0)) + entry.weight.kilograms
        hailed = {name: total.kept_kg for name, total in trip.figures.catch.items() if total.kept_kg}
        yield Landed(
            trip_id=head.id,
            vessel=head.vessel,
            docked=head.docked,
            species=ByName((weighed or hailed).items()),
            weighed=bool(weighed),
        )


def _by_month(landed: Sequence[Landed]) -> ByName[ByName[Decimal]]:
    """Return landings by month and species, with the months between the first and the last that had none."""
    if not landed:
        return ByName()
    months: dict[str, dict[str, Decimal]] = {}
    first, last = landed[0].docked, landed[-1].docked
    year, month = first.year, first.month
    while (year, month) <= (last.year, last.month):
        months[f"{year}-{month:02}"] = {}
        year, month = (year, month + 1) if month < 12 else (year + 1, 1)  # noqa: PLR2004 - months of a year
    for landing in landed:
        sums = months[f"{landing.docked:%Y-%m}"]
        for name, weight in landing.species.items():
            sums[name] = sums.get(name, Decimal(0)) + weight
    return ByName((name, ByName(sorted(sums.items()))) for name, sums in months.items())
