"""What trips put ashore, in which season and which month."""

from collections.abc import Mapping
from datetime import datetime
from decimal import Decimal

from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.fleet_figures import Landed
from logbook.model.named import ByName
from logbook.reckon.catch import species_key


def season(docked: datetime, fleet: Fleet) -> str:
    """Return the season a docking belongs to: its calendar year, or where it starts elsewhere both years, as `2025–26`."""
    year = docked.year if (docked.month, docked.day) >= fleet.season_start else docked.year - 1
    return str(year) if fleet.season_start == (1, 1) else f"{year}–{(year + 1) % 100:02}"


def landed_of(trip: Reckoned, fleet: Fleet) -> Landed | None:
    """Return what a trip put ashore, over the scale where it was weighed, else as hailed; None where it has not docked."""
    head = trip.figures.trip
    if head.docked is None:
        return None
    weighed: dict[str, Decimal] = {}
    for landing in trip.log.landings:
        for entry in landing.out_turn:
            if entry.weight is not None:
                name = species_key(entry.species)
                weighed[name] = weighed.get(name, Decimal(0)) + entry.weight.kilograms
    hailed = {name: total.kept_kg for name, total in trip.figures.catch.items() if total.kept_kg}
    return Landed(
        trip_id=head.id,
        vessel=head.vessel,
        docked=head.docked,
        season=season(head.docked, fleet),
        species=ByName((weighed or hailed).items()),
        weighed=bool(weighed),
    )


def month_of(docked: datetime) -> str:
    """Return the month of a docking, as `2026-03`."""
    return f"{docked:%Y-%m}"


def every_month(landed: Mapping[str, Mapping[str, Decimal]]) -> ByName[ByName[Decimal]]:
    """Return landings by month and species, with the months between the first and the last that had none."""
    if not landed:
        return ByName()
    made = []
    month, last = min(landed), max(landed)
    while month <= last:
        made.append((month, ByName(sorted(landed.get(month, {}).items()))))
        year, number = int(month[:-3]), int(month[-2:])
        month = f"{year:04}-{number + 1:02}" if number < 12 else f"{year + 1:04}-01"  # noqa: PLR2004 - months of a year
    return ByName(made)
