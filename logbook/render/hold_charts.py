"""The charts of a trip's hold, as data: its pens, the loose ice and the age of the fish as time went on."""

import re
from collections.abc import Sequence
from datetime import datetime, timedelta

from logbook.model.figures import PenFigures, Reckoned
from logbook.model.quantity import HOUR
from logbook.render.charts import BROAD, SLIM, Chart, HoldPlan, Line, Lines, PenBox
from logbook.render.draw_sizes import hold_height
from logbook.render.language import _, _c
from logbook.render.links import trip_chart
from logbook.render.shown import (
    brief_month,
    brief_number,
    days_unit,
    fixed,
    many,
    one_line,
    percent_unit,
    plain,
    short_day,
    weight,
)

_HEIGHT = 300
_MOST_IN_A_ROW = 12
_NUMBERED = re.compile(r"(\D*?)\s*(\d+)")


def hold_chart(reckoned: Reckoned) -> Chart | None:
    """Return the pens with what lies in each; None for a vessel of which no pen is known."""
    pens = reckoned.figures.pens
    if not pens:
        return None
    drawing = HoldPlan(rows=tuple(tuple(_box(name, pens[name]) for name in row) for row in pen_rows(tuple(pens))))
    used = [pen for pen in pens.values() if pen.kept_kg]
    full = reckoned.figures.totals.hold_full_percent
    said = (
        _("Plan of the hold: fish in {used} of {pens}; the table of pens has the same.")
        if full is None
        else _("Plan of the hold: fish in {used} of {pens}, {full} full by weight; the table of pens has the same.")
    )
    return Chart(
        path=trip_chart(reckoned.figures.trip.id, "hold"),
        alt=said.format(used=len(used), pens=many(len(pens), "pen", "pens"), full=plain(percent_unit(full))),
        width=BROAD,
        height=hold_height(drawing),
        drawing=drawing,
    )


def pen_rows(names: Sequence[str]) -> tuple[tuple[str, ...], ...]:
    """Return pens row by row: those named alike but for a number in one row, `P1 P2 …` over `S1 S2 …`; a long row broken."""
    rows: dict[str, list[str]] = {}
    for name in names:
        numbered = _NUMBERED.fullmatch(name)
        rows.setdefault(numbered[1].casefold() if numbered else "", []).append(name)
    return tuple(
        tuple(row[start : start + _MOST_IN_A_ROW])
        for row in rows.values()
        for start in range(0, len(row), _MOST_IN_A_ROW)
    )


def _box(name: str, pen: PenFigures) -> PenBox:
    """Return a pen with its weight, how full it is, the days it was filled on and the age of its oldest fish."""
    known = pen.full_percent is not None
    if not pen.kept_kg and not pen.tows:
        return PenBox(
            name=one_line(name, 9), words=(_("empty") if pen.kept_kg is not None else _("not told"),), full=0.0
        )
    words = [plain(weight(pen.kept_kg))]
    if known:
        words.append(plain(percent_unit(pen.full_percent)))
    words.append(_filled(pen.first_on_ice, pen.last_on_ice))
    words.append(plain(days_unit(pen.oldest_ice_days)) if pen.oldest_ice_days is not None else "")
    return PenBox(
        name=one_line(name, 9),
        words=tuple(word for word in words if word),
        full=pen.full_percent / 100 if pen.full_percent is not None else None,
    )


def _filled(first: datetime | None, last: datetime | None) -> str:
    """Return the days that fish was put under ice on: `5 Mar`, or `5–6`."""
    if first is None or last is None:
        return ""
    if first.date() == last.date():
        return _c("date", "{day} {mon}").format(day=first.day, mon=brief_month(first.month))
    return f"{first.day}\u2013{last.day}"


def ice_chart(reckoned: Reckoned) -> Chart | None:
    """Return the loose ice over time with the looks that were logged; None where no ice is known."""
    course = reckoned.course.ice
    if len(course) < 2 or course[-1].at <= course[0].at:  # noqa: PLR2004 - a line has two ends
        return None
    start = course[0].at
    lasts = reckoned.figures.ice.lasts_until
    end = course[-1].at
    lines = [
        Line(
            points=tuple((_hours(start, one.at), one.left_kg / 1000) for one in course),
            colour=0,
            words=f"{fixed(course[-1].left_kg / 1000, 1)} t",
            marks=tuple((_hours(start, one.at), one.left_kg / 1000) for one in course if one.seen),
        )
    ]
    if lasts is not None and end < lasts <= end + timedelta(days=10):
        gone = ((_hours(start, end), course[-1].left_kg / 1000), (_hours(start, lasts), 0.0))
        lines.append(Line(points=gone, colour=0, words=_("gone"), broken=True))
        end = lasts
    seen = sum(one.seen for one in course)
    return Chart(
        path=trip_chart(reckoned.figures.trip.id, "ice"),
        alt=_("Loose ice over time: {first} at first, {last} at the end, {looks} logged.").format(
            first=weight(course[0].left_kg), last=weight(course[-1].left_kg), looks=many(seen, "look", "looks")
        ),
        width=SLIM,
        height=_HEIGHT,
        drawing=Lines(unit="t", hours=_hours(start, end), days=_days(start, end), lines=tuple(lines)),
    )


def ageing_chart(reckoned: Reckoned) -> Chart | None:
    """Return how the oldest fish and the mean aged against the limit; None where there is no fish."""
    course = reckoned.course.ages
    if not course:
        return None
    start, end = course[0].at, course[-1].at
    age = reckoned.figures.age
    oldest = tuple((_hours(start, one.at), one.oldest_days) for one in course)
    mean = tuple((_hours(start, one.at), one.mean_days) for one in course if one.mean_days is not None)
    lines = [Line(points=oldest, colour=0, words=_("oldest"))]
    if mean:
        lines.append(Line(points=mean, colour=1, words=_("mean")))
    return Chart(
        path=trip_chart(reckoned.figures.trip.id, "ageing"),
        alt=_(
            "Age of the fish over time, as if kept at 0 °C: the oldest {days} at the end, against a limit of {limit}."
        ).format(days=plain(days_unit(course[-1].oldest_days)), limit=plain(days_unit(age.limit_days))),
        width=SLIM,
        height=_HEIGHT,
        drawing=Lines(
            unit=_("days, as if kept at 0 °C"),
            hours=_hours(start, end),
            days=_days(start, end),
            lines=tuple(lines),
            limit=(age.limit_days, _("limit {days} days").format(days=brief_number(age.limit_days))),
        ),
    )


def _hours(start: datetime, moment: datetime) -> float:
    return (moment - start) / HOUR


def _days(start: datetime, end: datetime) -> tuple[tuple[float, str], ...]:
    """Return the hours at which each day begins, by the clock of the start, with its name."""
    zone = start.tzinfo
    midnight = start.replace(hour=0, minute=0, second=0, microsecond=0)
    made = []
    while midnight < end.astimezone(zone):
        made.append((max(0.0, _hours(start, midnight)), short_day(midnight.date())))
        midnight += timedelta(days=1)
    return tuple(made)
