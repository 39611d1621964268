"""The sums of a trip by ground."""

from collections.abc import Sequence

from logbook.model.figures import TowFigures
from logbook.model.fleet_figures import GroupFigures
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.reckon.sums import clean_tows, figures_of, sums_of


def by_ground(tows: Sequence[TowFigures]) -> ByName[GroupFigures]:
    """Return the sums of a trip's tows on every ground that they name, whatever its case, the most fished first."""
    clean = clean_tows(tows)
    grounds: dict[str, list[TowFigures]] = {}
    for tow in tows:
        if tow.ground is not None:
            grounds.setdefault(fold_name(tow.ground), []).append(tow)
    made = [figures_of(own[0].ground or "", sums_of(own, clean)) for own in grounds.values()]
    return most_fished(made)


def most_fished(groups: Sequence[GroupFigures]) -> ByName[GroupFigures]:
    """Return groups by name, that of the most tows first."""
    return ByName((group.name, group) for group in sorted(groups, key=lambda group: (-group.tows, group.name)))
