"""The rows of a trip's tables of tows, day by day, and what was said of each tow."""

from collections.abc import Iterable, Mapping
from datetime import date
from decimal import Decimal

from markupsafe import Markup
from msgspec import Struct
from msgspec.structs import replace

from logbook.model.course import Course
from logbook.model.figures import Reckoned, TowFigures
from logbook.model.language import N_
from logbook.model.trip import Tow
from logbook.render.gather import added, logged_tows
from logbook.render.language import _
from logbook.render.marks import NO_MARK, Notes
from logbook.render.notes import note

_TOW_FIELDS = (
    "duration_h",
    "ground",
    "depth_m",
    "kept_kg",
    "kept_kg_per_h",
    "put_back_kg",
    "pens",
    "ice_days",
)
_TRACK_FIELDS = (
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
)


_UNUSUAL = N_("far from most of this trip's: worth a look, no judgement")


class TowRow(Struct, frozen=True, kw_only=True):
    """A row of the tables of tows: what was typed, what was reckoned, its letters and its words."""

    anchor: str
    log: Tow
    tow: TowFigures
    marks: Mapping[str, Markup]
    track_marks: Mapping[str, Markup]
    species: tuple[tuple[Decimal | None, bool, Markup], ...]
    others: Decimal | None
    words: tuple[str, ...]


class TowDay(Struct, frozen=True, kw_only=True):
    """The tows shot on one day."""

    day: date | None
    rows: tuple[TowRow, ...]
    kept_kg: Decimal | None
    so_far_kg: Decimal | None


class Said(Struct, frozen=True, kw_only=True):
    """A remark on a tow."""

    no: int
    anchor: str
    text: Markup


def tow_days(reckoned: Reckoned, columns: tuple[str, ...], notes: Notes, track_notes: Notes) -> tuple[TowDay, ...]:
    """Return the tows in order, grouped by the day they were shot."""
    grouped: list[tuple[date | None, list[TowRow]]] = []
    for number, (log, tow) in enumerate(logged_tows(reckoned), 1):
        when = tow.shot or tow.hauled
        day = when.date() if when else (grouped[-1][0] if grouped else None)
        if not grouped or grouped[-1][0] != day:
            grouped.append((day, []))
        row = _row(f"tow-{number}", log, tow, columns, notes, track_notes)
        grouped[-1][1].append(_flagged(row, number, reckoned.course, track_notes))
    made: list[TowDay] = []
    for day, rows in grouped:
        kept = added(row.tow.kept_kg for row in rows)
        so_far = added((kept, made[-1].so_far_kg if made else None))
        made.append(TowDay(day=day, rows=tuple(rows), kept_kg=kept, so_far_kg=so_far))
    return tuple(made)


def _flagged(row: TowRow, number: int, course: Course, notes: Notes) -> TowRow:
    """Return a row with a letter at every figure that lies far from most of the trip's."""
    unusual = [name for name, places in course.unusual.items() if number in places]
    if not unusual:
        return row
    marks = dict(row.track_marks)
    for name in unusual:
        marks[name] = marks.get(name, NO_MARK) + notes.mark(_(_UNUSUAL))
    return replace(row, track_marks=marks)


def _row(anchor: str, log: Tow, tow: TowFigures, columns: tuple[str, ...], notes: Notes, track_notes: Notes) -> TowRow:
    """Return a tow's row; a species it did not catch is blank, one whose weight is not known is not."""
    species = []
    for name in columns:
        caught = tow.catch.get(name)
        mark = notes.marks(caught.basis, ("kept_kg",)).get("kept_kg", NO_MARK) if caught else NO_MARK
        species.append((caught.kept_kg if caught else None, caught is not None and caught.kept, mark))
    return TowRow(
        anchor=anchor,
        log=log,
        tow=tow,
        marks=notes.marks(tow.basis, _TOW_FIELDS),
        track_marks=track_notes.marks(tow.basis, _TRACK_FIELDS),
        species=tuple(species),
        others=added(caught.kept_kg for name, caught in tow.catch.items() if name not in columns),
        words=_tow_words(log),
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


def said_of_tows(days: Iterable[TowDay]) -> tuple[Said, ...]:
    """Return the remarks on tows, in order."""
    rows = (row for day in days for row in day.rows if row.log.remarks.strip())
    return tuple(Said(no=row.tow.no, anchor=row.anchor, text=note(row.log.remarks)) for row in rows)
