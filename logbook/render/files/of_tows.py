"""The tables of tows and of what each caught: one row a tow, and one for each species and grade of it."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import Reckoned, SpeciesCatch, TowFigures
from logbook.model.language import N_
from logbook.model.names import fold_name
from logbook.model.quantity import Position
from logbook.model.trip import Amount, Tow
from logbook.render.files.columns import (
    LIST,
    MOMENT,
    NUMBER,
    TEXT,
    TRUTH,
    WHOLE,
    Column,
    column,
    fasts_shown,
    positions_shown,
    put_back_shown,
    rectangles_shown,
    words_shown,
)
from logbook.render.gather import logged_tows

_ANGLE = 6
"""Decimals of a degree: a tenth of a metre, more than anybody types."""

_UNGRADED = "ungraded"
"""What amounts go by that were given without a grade, where others of the species have one."""


class TowRow(Struct, frozen=True, kw_only=True):
    """A tow as logged and as reckoned; `order` is its place among the tows of the trip, from 1."""

    trip: Reckoned
    order: int
    tow: Tow
    figures: TowFigures


class CatchRow(Struct, frozen=True, kw_only=True):
    """A species and grade of a tow; what was put back or kept undersize has no grade."""

    tow: TowRow
    species: str
    grade: str | None
    kept_kg: Decimal | None
    kept_count: int | None
    state: str | None
    undersize_kg: Decimal | None = None
    put_back_kg: Decimal | None = None


def tow_rows(trips: Iterable[Reckoned]) -> Iterator[TowRow]:
    """Give every tow of the trips in order."""
    for trip in trips:
        for order, (tow, figures) in enumerate(logged_tows(trip), 1):
            yield TowRow(trip=trip, order=order, tow=tow, figures=figures)


def catch_rows(tows: Iterable[TowRow]) -> Iterator[CatchRow]:
    """Give every species and grade of the tows."""
    for tow in tows:
        amounts: dict[str, list[Amount]] = defaultdict(list)
        for amount in tow.tow.catch:
            amounts[fold_name(amount.species)].append(amount)
        for name, species in tow.figures.catch.items():
            yield from _of_species(tow, name, species, amounts.get(fold_name(name), []))


def _of_species(tow: TowRow, name: str, species: SpeciesCatch, amounts: Sequence[Amount]) -> Iterator[CatchRow]:
    """Give a row a grade; then one for what has none: all of it, or what was put back and kept undersize beside the grades."""
    for grade, kept_kg in species.grades.items():
        folded = fold_name(grade)
        of_it = [amount for amount in amounts if fold_name(amount.grade or _UNGRADED) == folded]
        yield CatchRow(
            tow=tow, species=name, grade=grade, kept_kg=kept_kg, kept_count=_count(of_it), state=_state(of_it)
        )
    if not species.grades or species.undersize_kg is not None or species.put_back_kg is not None:
        whole = () if species.grades else amounts
        yield CatchRow(
            tow=tow,
            species=name,
            grade=None,
            kept_kg=None if species.grades else species.kept_kg,
            kept_count=_count(whole),
            state=_state(whole),
            undersize_kg=species.undersize_kg,
            put_back_kg=species.put_back_kg,
        )


def _count(amounts: Iterable[Amount]) -> int | None:
    counts = [amount.count for amount in amounts if amount.count is not None]
    return sum(counts) if counts else None


def _state(amounts: Iterable[Amount]) -> str | None:
    """Return how fish was dressed, where all of it was dressed alike."""
    states = {amount.state for amount in amounts}
    return next(iter(states)) if len(states) == 1 else None


def _latitude(place: Position | None) -> float | None:
    return place.latitude if place is not None else None


def _longitude(place: Position | None) -> float | None:
    return place.longitude if place is not None else None


def _fast(row: TowRow) -> str | None:
    return row.tow.fast.what if row.tow.fast is not None else None


def _code(row: CatchRow) -> str | None:
    total = row.tow.trip.figures.catch.get(row.species)
    return total.code if total is not None else None


_KEY: tuple[Column[TowRow], ...] = (
    column("trip", TEXT, N_("Id of the trip"), lambda row: row.trip.figures.trip.id),
    column("tow_order", WHOLE, N_("Its place among the tows of the trip, from 1"), lambda row: row.order),
    column("tow", WHOLE, N_("Number of the tow, as logged"), lambda row: row.figures.no),
)

_MADE: tuple[Column[TowRow], ...] = (
    column("vessel", TEXT, N_("Her name"), lambda row: row.trip.figures.trip.vessel),
    column("ground", TEXT, N_("Name of the ground"), lambda row: row.figures.ground),
    column(
        "rectangle", TEXT, N_("ICES statistical rectangle"), lambda row: row.figures.rectangle, shown=rectangles_shown
    ),
    # For translators: what stands in the cells is English, whatever the language.
    column("side", TEXT, N_("port, starboard or stern"), lambda row: row.figures.side),
    column("net", TEXT, N_("Name of the net"), lambda row: row.figures.net),
    column("pens", LIST, N_("Pens that the catch lies in"), lambda row: row.figures.pens),
    column("shot", MOMENT, N_("Towing begins"), lambda row: row.figures.shot),
    column("hauled", MOMENT, N_("Heaving begins"), lambda row: row.figures.hauled),
    column("on_ice", MOMENT, N_("When the catch was under ice"), lambda row: row.figures.on_ice),
    column("duration_h", NUMBER, N_("From shot to hauled"), lambda row: row.figures.duration_h, unit="h"),
    column("distance_nm", NUMBER, N_("Distance towed"), lambda row: row.figures.distance_nm, unit="nmi"),
    column("distance_by", TEXT, N_("How the distance came about"), lambda row: row.figures.distance_by),
    column("speed_kn", NUMBER, N_("Speed over the ground"), lambda row: row.figures.speed_kn, unit="kn"),
    column("depth_m", NUMBER, N_("Mean depth of water"), lambda row: row.figures.depth_m, unit="m"),
    column("warp_to_depth", NUMBER, N_("Warp out over depth"), lambda row: row.figures.warp_to_depth),
    # For translators: what stands in the cells is English, whatever the language.
    column("light", TEXT, N_("day, twilight or night"), lambda row: row.figures.light),
    column("wind_force", WHOLE, N_("Wind logged with the tow"), lambda row: row.tow.wind.force if row.tow.wind else None, unit="Beaufort"),
    column("sea_temperature_c", NUMBER, N_("Sea at the surface, logged with the tow"), lambda row: row.tow.sea_temperature, unit="°C"),
)  # fmt: skip

_WHERE: tuple[Column[TowRow], ...] = tuple(
    column(name, NUMBER, about, value, unit="°", shown=positions_shown, places=_ANGLE)
    for name, about, value in (
        ("start_latitude", N_("Where the tow began, north positive, WGS84"), lambda row: _latitude(row.tow.start)),
        ("start_longitude", N_("The same, east positive"), lambda row: _longitude(row.tow.start)),
        ("end_latitude", N_("Where it ended, north positive, WGS84"), lambda row: _latitude(row.tow.end)),
        ("end_longitude", N_("The same, east positive"), lambda row: _longitude(row.tow.end)),
    )
)

_CAUGHT: tuple[Column[TowRow], ...] = (
    # For translators: what stands in the cells is English, whatever the language.
    column("catch_told", TEXT, N_("known, nothing, with next, unknown or unreadable"), lambda row: str(row.tow.kept)),
    column("kept_kg", NUMBER, N_("Marketable catch as estimated aboard, as dressed"), lambda row: row.figures.kept_kg, unit="kg"),
    column("put_back_kg", NUMBER, N_("Put back"), lambda row: row.figures.put_back_kg, unit="kg", shown=put_back_shown),
    column("live_kg", NUMBER, N_("Live weight of what was kept"), lambda row: row.figures.live_kg, unit="kg"),
    column("kept_kg_per_h", NUMBER, N_("Kept over the hours it took"), lambda row: row.figures.kept_kg_per_h, unit="kg/h"),
    column("ice_days", NUMBER, N_("Age on ice, at the trip's `as_of`"), lambda row: row.figures.ice_days, unit="d"),
    column("foul", TRUTH, N_("true for a foul tow"), lambda row: row.figures.foul),
    column("came_fast", TRUTH, N_("true where gear came fast"), lambda row: row.tow.fast is not None, shown=fasts_shown),
    column("fast", TEXT, N_("What it came fast on, as typed"), _fast, shown=lambda policy: policy.fasts and policy.words),
    column("damage", TEXT, N_("Damage, as typed"), lambda row: row.tow.damage, shown=words_shown),
    column("gear_lost", TEXT, N_("Gear lost, as typed"), lambda row: row.tow.gear_lost, shown=words_shown),
    column("bottom", TEXT, N_("What the bottom is, as typed"), lambda row: row.tow.bottom, shown=words_shown),
    column("remarks", TEXT, N_("Remarks, in Markdown as typed"), lambda row: row.tow.remarks, shown=words_shown),
)  # fmt: skip

TOWS = (*_KEY, *_MADE, *_WHERE, *_CAUGHT)

CATCHES: tuple[Column[CatchRow], ...] = (
    column("trip", TEXT, N_("Id of the trip"), lambda row: row.tow.trip.figures.trip.id),
    column("tow_order", WHOLE, N_("The tow's place among the tows of the trip, from 1"), lambda row: row.tow.order),
    column("tow", WHOLE, N_("Number of the tow, as logged"), lambda row: row.tow.figures.no),
    column("species", TEXT, N_("Name of the species"), lambda row: row.species),
    column("code", TEXT, N_("FAO 3-alpha code"), _code),
    column("grade", TEXT, N_("Size grade; empty where the row has none"), lambda row: row.grade),
    column("state", TEXT, N_("How it was dressed when weighed"), lambda row: row.state),
    column("kept_kg", NUMBER, N_("Marketable catch as estimated aboard, as dressed"), lambda row: row.kept_kg, unit="kg"),
    column("kept_count", WHOLE, N_("Fish counted, where a count was typed"), lambda row: row.kept_count),
    column("undersize_kg", NUMBER, N_("Kept under the legal size, all grades"), lambda row: row.undersize_kg, unit="kg", shown=put_back_shown),
    column("put_back_kg", NUMBER, N_("Put back, all grades"), lambda row: row.put_back_kg, unit="kg", shown=put_back_shown),
)  # fmt: skip
