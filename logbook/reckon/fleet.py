"""Sums over all trips of the fleet: by vessel, ground, species and season, and what was landed when.

Rates are ratios of totals, not means of ratios.
"""

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal
from statistics import median

from msgspec.structs import replace

from logbook.model.fleet_figures import FleetFigures, GroupFigures, HailBias, Usual, VesselFigures
from logbook.model.gear import FastMark
from logbook.model.named import ByName
from logbook.model.tally import ALL, CLEAN, Mishaps, Rate, SpeciesTally, Sums, Tally, TripSums
from logbook.reckon.groups import most_fished
from logbook.reckon.landed import every_month
from logbook.reckon.out_turn import quartiles
from logbook.reckon.sums import figures_of, figures_of_trips, per_hour
from logbook.reckon.weather import LIGHTS


def reckon_fleet(tally: Tally, vessels: Mapping[str, TripSums], seasons: Mapping[str, TripSums]) -> FleetFigures:
    """Return the sums over all trips.

    Args:
        tally: Of all of them.
        vessels: Of those of each vessel, by her name.
        seasons: Of those that docked in each season.
    """
    docked = [(name, seasons[name]) for name in sorted(seasons) if seasons[name].sums.trips]
    return FleetFigures(
        vessels=ByName((name, figures_of_trips(name, own)) for name, own in vessels.items()),
        grounds=_grounds(tally),
        species=by_species(tally),
        seasons=ByName((name, figures_of_trips(name, sums)) for name, sums in docked),
        landed_by_month=every_month(tally.landed),
        offsets=tally.offsets,
    )


def _grounds(tally: Tally) -> ByName[GroupFigures]:
    return most_fished([figures_of(ground.name, ground.sums) for ground in tally.grounds.values()])


def by_species(tally: Tally) -> ByName[GroupFigures]:
    """Return each species' sums, the heaviest first; its rate is over all hours whose catch is known, with tows that had none."""
    groups = [_species(name, one, tally.every.sums) for name, one in tally.species.items()]
    return ByName((group.name, group) for group in sorted(groups, key=_heaviest))


def _heaviest(group: GroupFigures) -> tuple[Decimal, str]:
    return (Decimal(1) if group.kept_kg is None else -group.kept_kg), group.name


def _species(name: str, species: SpeciesTally, every: Sums) -> GroupFigures:
    def rate(of: str) -> float | None:
        kept, over = species.sums.rates.get(of), every.rates.get(of)
        return per_hour(Rate(kept=kept.kept, us=over.us)) if kept is not None and over is not None else None

    return replace(
        figures_of(name, species.sums),
        kept_kg_per_h=rate(ALL),
        kept_kg_per_h_clean=rate(CLEAN),
        kept_kg_per_h_by_light=ByName((light, rate(light)) for light in LIGHTS if light in every.hours),
        out_turn_kg=species.out_turn,
    )


def reckon_vessel(tally: Tally) -> VesselFigures:
    """Return what a vessel's page tells over all her trips, from the sums over hers alone."""
    return VesselFigures(
        grounds=_grounds(tally),
        usual=_usual_catch(tally.own.kept),
        bias=_bias(tally.own.bias),
        landed_by_year=ByName(sorted(tally.own.landed.items())),
        best=tuple(trip for _, trip in tally.own.best),
        offsets=tally.offsets,
    )


def _bias(told: Mapping[str, Sequence[float]]) -> tuple[HailBias, ...]:
    """Return how the vessel's out-turns lay over her hails, where both are wholly known; the most told species first."""
    made = []
    for name, percents in sorted(told.items(), key=lambda one: (-len(one[1]), one[0])):
        low, middle, high = quartiles(percents)
        made.append(HailBias(name=name, trips=len(percents), median_percent=middle, low_percent=low, high_percent=high))
    return tuple(made)


def _usual_catch(kept: Mapping[str, Sequence[tuple[Decimal, str]]]) -> tuple[Usual, ...]:
    """Return what a vessel's trips kept of each species, most kept first."""
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


def fasts_in_order(mishaps: Iterable[Mishaps]) -> tuple[FastMark, ...]:
    """Return every fast of the fleet in order of time; those whose time is not known last."""
    marks = [mark for one in mishaps for mark in one.fasts]
    known = sorted(
        (mark for mark in marks if mark.when is not None), key=lambda mark: (mark.when, mark.trip_id, mark.tow)
    )
    unknown = sorted((mark for mark in marks if mark.when is None), key=lambda mark: (mark.trip_id, mark.tow))
    return (*known, *unknown)
