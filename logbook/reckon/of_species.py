"""What the archive knows of each species: where and when it is caught, in which grades, and the tows that did best."""

from collections.abc import Iterator, Mapping
from decimal import Decimal

from logbook.model.fleet_figures import GroupFigures
from logbook.model.named import ByName
from logbook.model.places import Months, SpeciesFigures
from logbook.model.tally import ALL, NOUGHT, KeptHere, SpeciesTally, Tally
from logbook.reckon.fleet import by_species
from logbook.reckon.sums import HOUR_US

_MONTHS = range(1, 13)


def reckon_species(tally: Tally) -> Iterator[SpeciesFigures]:
    """Give what is known of every species that was ever kept, the heaviest first.

    Rates are over the hours of all tows of a month or a ground whose catch is known, with those that had none of the species.
    """
    for name, group in by_species(tally).items():
        if group.kept_kg:
            yield _figures(name, group, tally.species[name], tally)


def _figures(name: str, group: GroupFigures, species: SpeciesTally, tally: Tally) -> SpeciesFigures:
    kept = _by_ground(name, tally)
    return SpeciesFigures(
        name=name,
        code=species.code,
        group=group,
        landed_by_month=ByName(sorted(species.landed.items())),
        by_month=_rates(species.months, tally.months),
        by_ground=ByName((ground, rates) for ground, _, rates in kept),
        kept_by_ground=ByName((ground, here.kept) for ground, here, _ in kept),
        grades=ByName(sorted(species.grades.items(), key=lambda one: (-one[1], one[0]))),
        best=species.best,
    )


def _by_ground(name: str, tally: Tally) -> list[tuple[str, KeptHere, Months]]:
    """Return what each ground gave of a species, the ground with most of it first."""
    found = []
    for ground in tally.grounds.values():
        here = ground.species.get(name)
        if here is not None:
            hours = {month: sums.rates[ALL].us for month, sums in ground.months.items() if ALL in sums.rates}
            found.append((ground.name, here, _rates(here.months, hours)))
    return sorted(found, key=lambda one: (-one[1].kept, one[0]))


def _rates(kept: Mapping[int, Decimal], hours: Mapping[int, int]) -> Months:
    """Return the catch per hour of each calendar month; None where there are no hours."""
    return tuple(
        float(kept.get(month, NOUGHT)) / (hours[month] / HOUR_US) if hours.get(month) else None for month in _MONTHS
    )
