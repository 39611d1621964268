"""What a species' and a ground's page tell: sums by month, ground, depth and light, and the best tows."""

from datetime import datetime
from decimal import Decimal

from msgspec import Struct, field

from logbook.model.fleet_figures import GroupFigures
from logbook.model.gear import FastMark
from logbook.model.named import ByName


class TowMark(Struct, frozen=True, kw_only=True, array_like=True):
    """A tow that a figure leads to.

    Attributes:
        trip_id: Which trip.
        vessel: Whose.
        order: Its place among the tows of the trip, from 1.
        no: Its number.
        when: When it was shot, else hauled; None where neither is known.
        ground: Its ground.
        kept_kg: What it kept, of the species or of all.
        kept_kg_per_h: The same over its hours.
        words: What was said of it, where that is what it is listed for.
    """

    trip_id: str
    vessel: str
    order: int
    no: int
    when: datetime | None
    ground: str | None
    kept_kg: Decimal | None
    kept_kg_per_h: float | None
    words: str = ""


Months = tuple[float | None, ...]
"""Twelve values, January first; None where nothing is known."""


class SpeciesFigures(Struct, frozen=True, kw_only=True):
    """All that a species' page tells.

    Attributes:
        name: Its name.
        code: FAO 3-alpha code, where it has one.
        group: Its sums over the archive.
        landed_by_month: Month as `2026-03` to kilograms.
        by_month: Catch per hour of all years by calendar month.
        by_ground: Ground to catch per hour by calendar month, the ground with most of it first.
        kept_by_ground: Ground to what was kept there.
        grades: Grade to what was kept of it.
        best: Tows that kept most of it for each hour.
    """

    name: str
    code: str | None
    group: GroupFigures
    landed_by_month: ByName[Decimal]
    by_month: Months
    by_ground: ByName[Months]
    kept_by_ground: ByName[Decimal]
    grades: ByName[Decimal]
    best: tuple[TowMark, ...]


class SpeciesHere(Struct, frozen=True, kw_only=True):
    """A species on a ground, or near a position.

    Attributes:
        name: Its name.
        kept_kg: What was kept.
        kept_kg_per_h: Over the hours of all tows whose catch is known.
        kept_kg_per_h_clean: The same without foul tows.
    """

    name: str
    kept_kg: Decimal
    kept_kg_per_h: float | None
    kept_kg_per_h_clean: float | None


class GroundFigures(Struct, frozen=True, kw_only=True):
    """All that a ground's page tells.

    Attributes:
        name: Its name.
        group: Its sums over the archive.
        by_month: Calendar month 1 to 12 to sums over all years; months not fished are left out.
        by_depth: Band of depth, as `200–250 m`, to sums.
        by_year: Year of the tow to sums.
        species: What is kept there, most first.
        weeks: What weeks `same_weeks` are of, as their first and last day.
        same_weeks: Year to sums of the same weeks of it.
        best: Tows that kept most for each hour.
        fasts: Where gear came fast there.
        damage: Tows whose gear was damaged or lost, with the words of the log.
    """

    name: str
    group: GroupFigures
    by_month: tuple[tuple[int, GroupFigures], ...]
    by_depth: ByName[GroupFigures]
    by_year: ByName[GroupFigures]
    species: tuple[SpeciesHere, ...]
    weeks: tuple[datetime, datetime] | None
    same_weeks: ByName[GroupFigures]
    best: tuple[TowMark, ...]
    fasts: tuple[FastMark, ...]
    damage: tuple[TowMark, ...] = field(default_factory=tuple)


class Places(Struct, frozen=True, kw_only=True):
    """What the pages of species and grounds tell.

    Attributes:
        species: Those that were ever kept, the heaviest first.
        grounds: Those that a tow names, the most fished first.
    """

    species: tuple[SpeciesFigures, ...] = ()
    grounds: tuple[GroundFigures, ...] = ()
