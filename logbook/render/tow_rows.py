"""The rows of a trip's tables of tows, day by day, and what was said of each tow.

Cells come ready to the template: two tables have some thirty for each tow, so that a filter for each was half the time of a page.
"""

from collections.abc import Mapping
from datetime import date, timedelta
from decimal import Decimal

from markupsafe import Markup, escape
from msgspec import Struct

from logbook.model.course import Course
from logbook.model.figures import Reckoned, SpeciesCatch, TowFigures
from logbook.model.language import N_
from logbook.model.trip import Tow
from logbook.render.gather import added, logged_tows
from logbook.render.language import _, chosen
from logbook.render.marks import NO_MARK, Notes
from logbook.render.notes import note
from logbook.render.shown import (
    clock,
    days,
    fathoms,
    hours_minutes,
    kilograms,
    knots,
    metres,
    miles,
    position,
    ratio,
    square_km,
    words,
)

_TOW_FIELDS = frozenset(
    {"duration_h", "ground", "depth_m", "kept_kg", "kept_kg_per_h", "put_back_kg", "pens", "ice_days"}
)
_TRACK_FIELDS = frozenset(
    {
        "rectangle",
        "light",
        "distance_nm",
        "speed_kn",
        "depth_m",
        "warp_to_depth",
        "side",
        "net",
        "swept_doors_km2",
        "swept_wings_km2",
        "kept_kg_per_km2",
        "equivalent_ice_days",
    }
)
_KEPT = frozenset({"kept_kg"})


_UNUSUAL = N_("far from most of this trip's: worth a look, no judgement")


class TowRow(Struct, frozen=True, kw_only=True):
    """A row of the table of tows: every cell as it is shown, with the letter of how it came about.

    Attributes:
        anchor: Its id on the page.
        no: Number of the tow.
        foul: Whether it was foul.
        species: Of each species with a column of its own; blank where none was kept.
        others: Of all others together; blank where none was kept.
        put_back: Blank where nothing is told of it.
        befell: What befell gear and catch, in words.
    """

    anchor: str
    no: int
    foul: bool
    shot: str
    hauled: str
    towed: str
    ground: str
    ground_mark: str
    depth: str
    kept: str
    rate: str
    species: tuple[str, ...]
    others: str
    put_back: str
    pens: str
    pens_mark: str
    old: str
    befell: tuple[str, ...]


class TrackRow(Struct, frozen=True, kw_only=True):
    """A row of the table of tracks and gear, in the same manner; `via` is how many turning points it had."""

    no: int
    start: str
    end: str
    via: int
    rectangle: str
    light: str
    distance: str
    distance_by: str
    speed: str
    depth: str
    warp: str
    side: str
    net: str
    net_mark: str
    doors: str
    wings: str
    per_km2: str
    old: str


class TowDay(Struct, frozen=True, kw_only=True):
    """The tows shot on one day."""

    day: date | None
    rows: tuple[TowRow, ...]
    kept_kg: Decimal | None
    so_far_kg: Decimal | None


class Columns(Struct, frozen=True, kw_only=True):
    """What all rows of a page share: species with a column of their own, the clock, whether depths are in fathoms."""

    species: tuple[str, ...]
    offset: timedelta | None
    fathoms: bool


class Said(Struct, frozen=True, kw_only=True):
    """A remark on a tow."""

    no: int
    anchor: str
    text: Markup


def tow_days(reckoned: Reckoned, columns: Columns, notes: Notes) -> tuple[TowDay, ...]:
    """Return the tows in order, grouped by the day they were shot."""
    grouped: list[tuple[date | None, list[TowRow], list[Decimal | None]]] = []
    for number, (log, tow) in enumerate(logged_tows(reckoned), 1):
        when = tow.shot or tow.hauled
        day = when.date() if when else (grouped[-1][0] if grouped else None)
        if not grouped or grouped[-1][0] != day:
            grouped.append((day, [], []))
        grouped[-1][1].append(_row(f"tow-{number}", log, tow, columns, notes))
        grouped[-1][2].append(tow.kept_kg)
    made: list[TowDay] = []
    for day, rows, weights in grouped:
        kept = added(weights)
        so_far = added((kept, made[-1].so_far_kg if made else None))
        made.append(TowDay(day=day, rows=tuple(rows), kept_kg=kept, so_far_kg=so_far))
    return tuple(made)


def track_rows(reckoned: Reckoned, notes: Notes) -> tuple[TrackRow, ...]:
    """Return where each tow led and with what, with a letter at every figure that lies far from most of the trip's."""
    rows = []
    for number, (log, tow) in enumerate(logged_tows(reckoned), 1):
        marks = notes.marks(tow.basis, _TRACK_FIELDS)
        rows.append(_track(log, tow, _flagged(marks, number, reckoned.course, notes)))
    return tuple(rows)


def _flagged(marks: Mapping[str, Markup], number: int, course: Course, notes: Notes) -> Mapping[str, Markup]:
    """Return a tow's letters with one more at every figure that lies far from most of the trip's."""
    unusual = [name for name, places in course.unusual.items() if number in places]
    if not unusual:
        return marks
    more = {name: marks.get(name, NO_MARK) + notes.mark(_(_UNUSUAL)) for name in unusual}
    return {**marks, **more}


def _with(shown: str, mark: Markup | None) -> str:
    """Return a cell with the letter of how it came about."""
    return shown if mark is None else Markup(f"{escape(shown)}{mark}")  # noqa: S704 - both are safe


def _row(anchor: str, log: Tow, tow: TowFigures, columns: Columns, notes: Notes) -> TowRow:
    species = tuple([_species(tow.catch.get(name), notes) for name in columns.species])
    others = added(caught.kept_kg for name, caught in tow.catch.items() if name not in columns.species)
    mark = notes.marks(tow.basis, _TOW_FIELDS).get
    depth = fathoms(tow.depth_m) if columns.fathoms else metres(tow.depth_m)
    return TowRow(
        anchor=anchor,
        no=tow.no,
        foul=tow.foul,
        shot=clock(tow.shot, columns.offset),
        hauled=clock(tow.hauled, columns.offset),
        towed=_with(hours_minutes(tow.duration_h), mark("duration_h")),
        ground=words(tow.ground),
        ground_mark=mark("ground", NO_MARK),
        depth=_with(depth, mark("depth_m")),
        kept=_with(kilograms(tow.kept_kg), mark("kept_kg")),
        rate=_with(kilograms(tow.kept_kg_per_h), mark("kept_kg_per_h")),
        species=species,
        others="" if others is None else kilograms(others),
        put_back="" if tow.put_back_kg is None else _with(kilograms(tow.put_back_kg), mark("put_back_kg")),
        pens=words(", ".join(tow.pens)),
        pens_mark=mark("pens", NO_MARK),
        old=_with(days(tow.ice_days), mark("ice_days")),
        befell=_tow_words(log),
    )


def _species(caught: SpeciesCatch | None, notes: Notes) -> str:
    """Return what a tow kept of a species: blank where it caught none; one whose weight is not known is not."""
    if caught is None:
        return ""
    mark = notes.marks(caught.basis, _KEPT).get("kept_kg")
    return _with(kilograms(caught.kept_kg), mark) if caught.kept else ""


def _track(log: Tow, tow: TowFigures, marks: Mapping[str, Markup]) -> TrackRow:
    mark = marks.get
    return TrackRow(
        no=tow.no,
        start=position(log.start),
        end=position(log.end),
        via=len(log.via),
        rectangle=_with(words(tow.rectangle), mark("rectangle")),
        light=_with(words(chosen(tow.light)), mark("light")),
        distance=_with(miles(tow.distance_nm), mark("distance_nm")),
        distance_by=words(chosen(tow.distance_by)),
        speed=_with(knots(tow.speed_kn), mark("speed_kn")),
        depth=_with(metres(tow.depth_m), mark("depth_m")),
        warp=_with(ratio(tow.warp_to_depth), mark("warp_to_depth")),
        side=_with(words(chosen(tow.side)), mark("side")),
        net=words(tow.net),
        net_mark=mark("net", NO_MARK),
        doors=_with(square_km(tow.swept_doors_km2), mark("swept_doors_km2")),
        wings=_with(square_km(tow.swept_wings_km2), mark("swept_wings_km2")),
        per_km2=_with(kilograms(tow.kept_kg_per_km2), mark("kept_kg_per_km2")),
        old=_with(days(tow.equivalent_ice_days), mark("equivalent_ice_days")),
    )


def _tow_words(tow: Tow) -> tuple[str, ...]:
    """Return what befell the gear and the catch, in words."""
    said = []
    if tow.fast is not None:
        said.append(_("came fast: {what}").format(what=tow.fast.what) if tow.fast.what else _("came fast"))
    if tow.damage:
        said.append(_("damage: {what}").format(what=tow.damage))
    if tow.gear_lost:
        said.append(_("lost: {what}").format(what=tow.gear_lost))
    if tow.bottom:
        said.append(_("bottom: {what}").format(what=tow.bottom))
    if tow.kept == "with next":
        said.append(_("sorted with the next tow"))
    return tuple(said)


def said_of_tows(reckoned: Reckoned) -> tuple[Said, ...]:
    """Return the remarks on tows, in order."""
    return tuple(
        Said(no=tow.no, anchor=f"tow-{number}", text=note(log.remarks))
        for number, (log, tow) in enumerate(logged_tows(reckoned), 1)
        if log.remarks.strip()
    )
