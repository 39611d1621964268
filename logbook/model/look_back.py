"""What the logs say of a place at this time of other years."""

from datetime import datetime

from msgspec import Struct

from logbook.model.basis import Basis
from logbook.model.fleet_figures import GroupFigures
from logbook.model.gear import FastMark
from logbook.model.named import ByName
from logbook.model.places import SpeciesHere, TowMark
from logbook.model.quantity import Position


class FastNear(Struct, frozen=True, kw_only=True):
    """A fast near a place, and how far off it is; of a track, the nearest of it."""

    mark: FastMark
    away_nm: float


class LookBack(Struct, frozen=True, kw_only=True):
    """A look back at a place.

    Attributes:
        position: The place.
        at: The day of the year looked back from.
        weeks: So many weeks before and after it.
        within_nm: So near.
        by_year: Year to sums of the tows near by in those weeks, the year looked back from as well.
        species: What they kept, most first.
        tows: The best of them.
        fasts: Fasts near by at any time, the nearest first.
        basis: What it leaves out.
    """

    position: Position
    at: datetime
    weeks: float
    within_nm: float
    by_year: ByName[GroupFigures]
    species: tuple[SpeciesHere, ...]
    tows: tuple[TowMark, ...]
    fasts: tuple[FastNear, ...]
    basis: Basis = ()
