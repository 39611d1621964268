"""The tables of landings: one row a landing, one for each species and grade put ashore, and one for each that was sold."""

from collections.abc import Iterable, Iterator
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import LandingFigures, Reckoned
from logbook.model.language import N_
from logbook.model.money import MoneyLine
from logbook.model.trip import Landing
from logbook.render.files.columns import (
    CURRENCY,
    MOMENT,
    NUMBER,
    TEXT,
    TRUTH,
    WHOLE,
    Column,
    column,
    margin_shown,
    positions_shown,
)
from logbook.render.gather import added

NO_WATCH = N_(
    "A time expected is reckoned from her last word, weather not in it. Not a watch on any vessel: one that is overdue is the coastguard's."
)


class LandingRow(Struct, frozen=True, kw_only=True):
    """A landing that was made or is expected; `order` is its place among those of the trip, from 1."""

    trip: Reckoned
    order: int
    figures: LandingFigures
    log: Landing | None


class LandedRow(Struct, frozen=True, kw_only=True):
    """A species and grade put ashore over all landings of a trip."""

    trip: Reckoned
    species: str
    grade: str | None
    hail_kg: Decimal | None
    out_turn_kg: Decimal | None
    difference_kg: Decimal | None
    difference_percent: float | None
    within_tolerance: bool | None = None


class SoldRow(Struct, frozen=True, kw_only=True):
    """A species, grade or lot that was sold."""

    trip: Reckoned
    line: MoneyLine


def landing_rows(trips: Iterable[Reckoned]) -> Iterator[LandingRow]:
    """Give every landing whose time is logged or reckoned, trip by trip."""
    for trip in trips:
        last = trip.figures.landing
        for order, figures in enumerate(last.landings or (last,), 1):
            if figures.docked is not None:
                yield LandingRow(trip=trip, order=order, figures=figures, log=_log_of(figures, trip))


def _log_of(figures: LandingFigures, trip: Reckoned) -> Landing | None:
    """Return what was typed of a landing; None for one that is expected."""
    if figures.expected:
        return None
    return next((one for one in trip.log.landings if (one.docked, one.started) == _times(figures)), None)


def _times(figures: LandingFigures) -> tuple[object, object]:
    return figures.docked, figures.landing_started


def landed_rows(trips: Iterable[Reckoned]) -> Iterator[LandedRow]:
    """Give every species and grade that landed trips put ashore: hail beside out-turn."""
    for trip in trips:
        if trip.figures.trip.docked is None:
            continue
        for name, hail in trip.figures.hail.items():
            for grade, part in hail.grades.items():
                yield LandedRow(
                    trip=trip,
                    species=name,
                    grade=grade,
                    hail_kg=part.hail_kg,
                    out_turn_kg=part.out_turn_kg,
                    difference_kg=part.difference_kg,
                    difference_percent=part.difference_percent,
                )
            if not hail.grades:
                yield LandedRow(
                    trip=trip,
                    species=name,
                    grade=None,
                    hail_kg=hail.hail_kg,
                    out_turn_kg=hail.out_turn_kg,
                    difference_kg=hail.difference_kg,
                    difference_percent=hail.difference_percent,
                    within_tolerance=hail.within_tolerance,
                )


def sold_rows(trips: Iterable[Reckoned]) -> Iterator[SoldRow]:
    """Give everything that was sold, trip by trip."""
    for trip in trips:
        if trip.figures.money is not None:
            for line in trip.figures.money.lines:
                yield SoldRow(trip=trip, line=line)


def _out_turn(row: LandingRow) -> Decimal | None:
    entries = row.log.out_turn if row.log is not None else ()
    return added(entry.weight.kilograms if entry.weight is not None else None for entry in entries)


def _warmest(row: LandingRow) -> float | None:
    return max((probe.temperature_c for probe in row.figures.temperatures.values()), default=None)


def _code(row: LandedRow) -> str | None:
    total = row.trip.figures.catch.get(row.species)
    return total.code if total is not None else None


LANDINGS: tuple[Column[LandingRow], ...] = (
    column("trip", TEXT, N_("Id of the trip"), lambda row: row.trip.figures.trip.id),
    column("landing", WHOLE, N_("Its place among the landings of the trip, from 1"), lambda row: row.order),
    column("vessel", TEXT, N_("Her name"), lambda row: row.trip.figures.trip.vessel),
    column("port", TEXT, N_("Name of the port"), lambda row: row.figures.port),
    column("expected", TRUTH, N_("true where the time is reckoned and she has not docked"), lambda row: row.figures.expected),
    column("docked", MOMENT, N_("When she docked, or is expected to, in fair weather"), lambda row: row.figures.docked),
    column("last_word", MOMENT, N_("The last moment that her log tells of"), lambda row: row.trip.figures.trip.last_word),
    column("landing_started", MOMENT, N_("Discharge begins"), lambda row: row.figures.landing_started),
    column("landing_finished", MOMENT, N_("Discharge ends"), lambda row: row.figures.landing_finished),
    column("discharge_h", NUMBER, N_("Time it took"), lambda row: row.figures.discharge_h, unit="h"),
    column("discharge_kg_per_h", NUMBER, N_("Rate of it, as weighed or as usual at the port"), lambda row: row.figures.discharge_kg_per_h, unit="kg/h"),
    column("out_turn_kg", NUMBER, N_("Over the scale at this landing"), _out_turn, unit="kg"),
    column("passage_nm", NUMBER, N_("Length of the passage home"), lambda row: row.figures.passage_nm, unit="nmi", shown=positions_shown),
    column("passage_h", NUMBER, N_("Time it took or takes"), lambda row: row.figures.passage_h, unit="h"),
    column("turnaround_h", NUMBER, N_("From the end of landing to sailing again"), lambda row: row.figures.turnaround_h, unit="h"),
    column("warmest_c", NUMBER, N_("Warmest at the inspector's probe"), _warmest, unit="°C"),
)  # fmt: skip

LANDED: tuple[Column[LandedRow], ...] = (
    column("trip", TEXT, N_("Id of the trip"), lambda row: row.trip.figures.trip.id),
    column("species", TEXT, N_("Name of the species"), lambda row: row.species),
    column("code", TEXT, N_("FAO 3-alpha code"), _code),
    column("grade", TEXT, N_("Size grade; empty where the row has none"), lambda row: row.grade),
    column("hail_kg", NUMBER, N_("Kept, as estimated aboard"), lambda row: row.hail_kg, unit="kg"),
    column("out_turn_kg", NUMBER, N_("Over the scale, at all landings of the trip"), lambda row: row.out_turn_kg, unit="kg"),
    column("difference_kg", NUMBER, N_("Out-turn less hail"), lambda row: row.difference_kg, unit="kg", shown=margin_shown),
    column("difference_percent", NUMBER, N_("That, of the hail"), lambda row: row.difference_percent, unit="%", shown=margin_shown),
    column("within_tolerance", TRUTH, N_("Whether it lies within the fleet's limit; told where there are no grades"), lambda row: row.within_tolerance, shown=margin_shown),
)  # fmt: skip


SALES: tuple[Column[SoldRow], ...] = (
    column("trip", TEXT, N_("Id of the trip"), lambda row: row.trip.figures.trip.id),
    column("species", TEXT, N_("Name of the species"), lambda row: row.line.species),
    column("grade", TEXT, N_("Size grade; empty where one price held for all"), lambda row: row.line.grade),
    column("weight_kg", NUMBER, N_("What was sold of it"), lambda row: row.line.weight_kg, unit="kg"),
    column("price_per_kg", NUMBER, N_("What a kilogram brought"), lambda row: row.line.price_per_kg, unit=CURRENCY),
    column("value", NUMBER, N_("What it brought"), lambda row: row.line.value, unit=CURRENCY),
)
