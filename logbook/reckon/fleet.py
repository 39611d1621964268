"""Sums over all trips of the fleet: by vessel, ground, species and season, and what was landed when.

Rates are ratios of totals, not means of ratios.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import datetime
from decimal import Decimal
from statistics import median

from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.fleet_figures import FleetFigures, GroupFigures, HailBias, Landed, Usual, VesselFigures
from logbook.model.gear import FastMark
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.reckon.catch import species_key
from logbook.reckon.gear import fasts_of
from logbook.reckon.groups import by_place, by_species, group_of_trips
from logbook.reckon.out_turn import is_whole, quartiles


def reckon_fleet(trips: Sequence[Reckoned], fleet: Fleet) -> FleetFigures:
    """Return the sums over all trips.

    Args:
        trips: All trips with their figures, in any order.
        fleet: For when its season begins.
    """
    ordered = sorted(trips, key=lambda trip: (fold_name(trip.figures.trip.vessel), trip.log.begins, trip.log.file))
    landed = tuple(sorted(_landings(ordered, fleet), key=lambda landing: (landing.docked, landing.trip_id)))
    vessels = _by_vessel(ordered)
    tows = [trip.figures.tows for trip in ordered]
    return FleetFigures(
        vessels=ByName((name, group_of_trips(name, own)) for name, own in vessels.items()),
        of_vessel=ByName((name, _of_vessel(own, fleet)) for name, own in vessels.items()),
        grounds=by_place(tows, lambda tow: tow.ground),
        rectangles=by_place(tows, lambda tow: tow.rectangle),
        species=by_species(ordered),
        seasons=_docked_in(ordered, lambda docked: season(docked, fleet)),
        months=_docked_in(ordered, _month),
        months_of_season=_months_of_season(ordered, fleet),
        weeks=_docked_in(ordered, _week),
        fasts=_fasts(ordered),
        landed=landed,
        landed_by_month=_by_month(landed),
    )


def season(docked: datetime, fleet: Fleet) -> str:
    """Return the season a docking belongs to: its calendar year, or where it starts elsewhere both years, as `2025–26`."""
    year = docked.year if (docked.month, docked.day) >= fleet.season_start else docked.year - 1
    return str(year) if fleet.season_start == (1, 1) else f"{year}–{(year + 1) % 100:02}"


def _grouped(trips: Sequence[Reckoned], name_of: Callable[[Reckoned], str | None]) -> dict[str, list[Reckoned]]:
    groups: dict[str, list[Reckoned]] = {}
    for trip in trips:
        name = name_of(trip)
        if name is not None:
            groups.setdefault(name, []).append(trip)
    return groups


def _by_vessel(trips: Sequence[Reckoned]) -> dict[str, list[Reckoned]]:
    """Return the trips of each vessel, in order of time, by her name as it was first shown."""
    names = {fold_name(trip.figures.trip.vessel): trip.figures.trip.vessel for trip in reversed(trips)}
    own = _grouped(trips, lambda trip: fold_name(trip.figures.trip.vessel))
    return {names[folded]: of_it for folded, of_it in own.items()}


def _of_vessel(trips: Sequence[Reckoned], fleet: Fleet) -> VesselFigures:
    """Return what a vessel's page tells over all her trips, which stand in order of time."""
    last = trips[-1].figures
    landed: dict[str, Decimal] = {}
    for landing in _landings(trips, fleet):
        year = str(landing.docked.year)
        landed[year] = landed.get(year, Decimal(0)) + sum(landing.species.values(), Decimal(0))
    return VesselFigures(
        grounds=by_place([trip.figures.tows for trip in trips], lambda tow: tow.ground),
        usual=usual_catch(trips),
        gear=last.gear,
        rigging=last.rigging,
        bias=_bias(trips),
        landed_by_year=ByName(sorted(landed.items())),
    )


def _bias(trips: Sequence[Reckoned]) -> tuple[HailBias, ...]:
    """Return how the vessel's out-turns lay over her hails, where both are wholly known; the most told species first."""
    told: dict[str, list[float]] = {}
    for trip in trips:
        for name, hail in trip.figures.hail.items():
            if hail.difference_percent is not None and is_whole(hail):
                told.setdefault(name, []).append(hail.difference_percent)
    made = []
    for name, percents in sorted(told.items(), key=lambda one: (-len(one[1]), one[0])):
        low, middle, high = quartiles(percents)
        made.append(HailBias(name=name, trips=len(percents), median_percent=middle, low_percent=low, high_percent=high))
    return tuple(made)


def usual_catch(trips: Iterable[Reckoned]) -> tuple[Usual, ...]:
    """Return what a vessel's trips kept of each species, most kept first."""
    kept: dict[str, list[tuple[Decimal, str]]] = {}
    for trip in trips:
        for name, species in trip.figures.catch.items():
            if species.kept_kg:
                kept.setdefault(name, []).append((species.kept_kg, trip.figures.trip.id))
    made = [_usual(name, weights) for name, weights in kept.items()]
    return tuple(sorted(made, key=lambda usual: (-usual.kept_kg, usual.name)))


def _usual(name: str, weights: Sequence[tuple[Decimal, str]]) -> Usual:
    most_kg, most_id = max(weights)
    return Usual(
        name=name,
        trips=len(weights),
        kept_kg=sum((weight for weight, _ in weights), Decimal(0)),
        median_kg=median(weight for weight, _ in weights),
        most_kg=most_kg,
        most_id=most_id,
    )


def _fasts(trips: Iterable[Reckoned]) -> tuple[FastMark, ...]:
    """Return every fast of the fleet in order of time; those whose time is not known last."""
    marks = [mark for trip in trips for mark in fasts_of(trip.log, trip.figures.trip.id)]
    known = sorted(
        (mark for mark in marks if mark.when is not None), key=lambda mark: (mark.when, mark.trip_id, mark.tow)
    )
    return (*known, *(mark for mark in marks if mark.when is None))


def _docked_in(trips: Sequence[Reckoned], name_of: Callable[[datetime], str]) -> ByName[GroupFigures]:
    """Return the sums of trips by the name of the time they docked in, in order."""

    def of(trip: Reckoned) -> str | None:
        docked = trip.figures.trip.docked
        return name_of(docked) if docked is not None else None

    return ByName((name, group_of_trips(name, own)) for name, own in sorted(_grouped(trips, of).items()))


def _months_of_season(trips: Sequence[Reckoned], fleet: Fleet) -> ByName[ByName[GroupFigures]]:
    def of(trip: Reckoned) -> str | None:
        docked = trip.figures.trip.docked
        return season(docked, fleet) if docked is not None else None

    return ByName((name, _docked_in(own, _month)) for name, own in sorted(_grouped(trips, of).items()))


def _month(docked: datetime) -> str:
    return f"{docked:%Y-%m}"


def _week(docked: datetime) -> str:
    year, week, _ = docked.isocalendar()
    return f"{year}-W{week:02}"


def _landings(trips: Iterable[Reckoned], fleet: Fleet) -> Iterator[Landed]:
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
            season=season(head.docked, fleet),
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
