"""What the archive knows of each species: where and when it is caught, in which grades, and the tows that did best."""

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import FleetFigures, Landed
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.places import Months, SpeciesFigures
from logbook.reckon.listed import Listed, best_of, grouped, listed, rate_of

_BEST = 15
_MONTHS = range(1, 13)


def reckon_species(trips: Sequence[Reckoned], figures: FleetFigures) -> tuple[SpeciesFigures, ...]:
    """Return what is known of every species that was ever kept, the heaviest first.

    Rates are over the hours of all tows of a month or a ground whose catch is known, with those that had none of the species.
    """
    tows = [one for one in listed(trips) if one.known or one.tow.catch]
    names = {fold_name(name): name for name in figures.grounds}
    months = grouped(tows, lambda one: one.when.month if one.when is not None else None)
    folded = grouped(tows, lambda one: fold_name(one.tow.ground) if one.tow.ground is not None else None)
    grounds = {names[name]: own for name, own in folded.items() if name in names}
    by_place = {name: _by_month(own) for name, own in grounds.items()}
    codes = {name: total.code for trip in trips for name, total in trip.figures.catch.items()}
    return tuple(
        SpeciesFigures(
            name=name,
            code=codes.get(name),
            group=group,
            landed_by_month=_landed(name, figures.landed),
            by_month=_rates(name, months),
            by_ground=_by_ground(name, grounds, by_place),
            kept_by_ground=_kept(name, grounds),
            grades=_grades(name, trips),
            best=best_of((one for one in tows if name in one.tow.catch), name, _BEST),
        )
        for name, group in figures.species.items()
        if group.kept_kg
    )


def _by_month(tows: Iterable[Listed]) -> dict[int, list[Listed]]:
    return grouped(tows, lambda one: one.when.month if one.when is not None else None)


def _rates(name: str, months: Mapping[int, Sequence[Listed]]) -> Months:
    return tuple(rate_of(name, months[month]) if month in months else None for month in _MONTHS)


def _kept(name: str, grounds: Mapping[str, Sequence[Listed]]) -> ByName[Decimal]:
    kept = {
        ground: sum((one.tow.catch[name].kept_kg or Decimal(0) for one in tows if name in one.tow.catch), Decimal(0))
        for ground, tows in grounds.items()
    }
    return ByName(sorted(((ground, kg) for ground, kg in kept.items() if kg), key=lambda one: (-one[1], one[0])))


def _by_ground(
    name: str, grounds: Mapping[str, Sequence[Listed]], by_place: Mapping[str, Mapping[int, Sequence[Listed]]]
) -> ByName[Months]:
    return ByName((ground, _rates(name, by_place[ground])) for ground in _kept(name, grounds))


def _grades(name: str, trips: Iterable[Reckoned]) -> ByName[Decimal]:
    grades: dict[str, Decimal] = {}
    for trip in trips:
        total = trip.figures.catch.get(name)
        for grade, kept in total.grades.items() if total is not None else ():
            if kept is not None:
                grades[grade] = grades.get(grade, Decimal(0)) + kept
    return ByName(sorted(grades.items(), key=lambda one: (-one[1], one[0])))


def _landed(name: str, landed: Iterable[Landed]) -> ByName[Decimal]:
    months: dict[str, Decimal] = {}
    for one in landed:
        weight = one.species.get(name)
        if weight:
            month = f"{one.docked:%Y-%m}"
            months[month] = months.get(month, Decimal(0)) + weight
    return ByName(sorted(months.items()))
