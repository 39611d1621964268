"""The chartlet of a trip's tows, as data: what lies on it, how far it reaches and what is said of it."""

from collections.abc import Sequence
from math import floor
from statistics import median

from msgspec import Struct

from logbook.model.figures import Reckoned, TowFigures
from logbook.model.fleet import Fleet
from logbook.model.quantity import Position
from logbook.model.trip import Tow
from logbook.render.charts import Chart, Chartlet, Outline, Point, Track
from logbook.render.gather import logged_tows
from logbook.render.links import trip_chart
from logbook.render.projection import chart_shape, fitted
from logbook.render.shown import many, one_line

WIDTH, HEIGHT = 620, 520
_MARGIN = 0.06
_LEAST = 0.1
"""Degrees of latitude that a chartlet spans at the least."""
_FAR = 12.0
"""A tow that lies so many times further from the middle than half of them do, and two degrees at least, is left off."""
_FAR_LEAST = 2.0


class TowChart(Struct, frozen=True, kw_only=True):
    """The chartlet with what is said beneath it.

    Attributes:
        chart: What is drawn.
        left_off: Numbers of tows that lie far from all others and are not on it.
        without: How many tows have no position.
        foul: How many tows on it were foul.
    """

    chart: Chart
    left_off: tuple[int, ...]
    without: int
    foul: int


def tow_chart(reckoned: Reckoned, fleet: Fleet) -> TowChart | None:
    """Return the chartlet of a trip; None where no tow has a position."""
    tows = logged_tows(reckoned)
    placed = [(tow, figures, points) for tow, figures in tows if (points := _points(tow))]
    if not placed:
        return None
    east = placed[0][2][0][0]
    turned = [(tow, figures, _unwrapped(points, east)) for tow, figures, points in placed]
    near, far = _near(turned)
    labels = _labels([figures for _, figures, _ in near])
    drawing = _drawing(near, labels, fleet)
    chart = Chart(
        path=trip_chart(reckoned.figures.trip.id, "chartlet"),
        alt=_words([figures for _, figures, _ in near]),
        width=WIDTH,
        height=HEIGHT,
        drawing=drawing,
    )
    foul = sum(figures.foul for _, figures, _ in near)
    return TowChart(
        chart=chart, left_off=tuple(figures.no for _, figures, _ in far), without=len(tows) - len(placed), foul=foul
    )


Placed = tuple[Tow, TowFigures, tuple[Point, ...]]


def _points(tow: Tow) -> tuple[Point, ...]:
    """Return where a tow led, as far as it is known."""
    known: list[Position] = [place for place in (tow.start, *tow.via, tow.end) if place is not None]
    return tuple((place.longitude, max(-84.0, min(84.0, place.latitude))) for place in known)


def _unwrapped(points: tuple[Point, ...], near: float) -> tuple[Point, ...]:
    """Return points with longitudes within half a turn of one, so that tracks across 180° stay whole."""
    return tuple((near + (lon - near + 180) % 360 - 180, lat) for lon, lat in points)


def _near(placed: Sequence[Placed]) -> tuple[list[Placed], list[Placed]]:
    """Return the tows that lie together and those that lie far off, which a slip of the pen may have put there."""
    lon = median(points[0][0] for _, _, points in placed)
    lat = median(points[0][1] for _, _, points in placed)
    away = [max(max(abs(x - lon), abs(y - lat)) for x, y in points) for _, _, points in placed]
    reach = max(median(away) * _FAR, _FAR_LEAST)
    near = [one for one, far in zip(placed, away, strict=True) if far <= reach]
    return near, [one for one, far in zip(placed, away, strict=True) if far > reach]


def _labels(tows: Sequence[TowFigures]) -> dict[int, str]:
    """Return which tows are numbered on the chartlet: the first of every day, the last, and foul ones."""
    named, seen = {}, None
    for place, tow in enumerate(tows):
        day = tow.shot.date() if tow.shot else seen
        if day != seen or tow.foul or place in {0, len(tows) - 1}:
            named[place] = str(tow.no)
        seen = day
    return named


def _drawing(near: Sequence[Placed], labels: dict[int, str], fleet: Fleet) -> Chartlet:
    everything = [point for _, _, points in near for point in points]
    west, east = min(x for x, _ in everything), max(x for x, _ in everything)
    south, north = min(y for _, y in everything), max(y for _, y in everything)
    more = max((north - south) * _MARGIN, (east - west) * _MARGIN / 2, (_LEAST - (north - south)) / 2, 0.01)
    west, east, south, north = fitted(
        west - 2 * more, east + 2 * more, max(south - more, -84.5), min(north + more, 84.5), chart_shape(WIDTH, HEIGHT)
    )
    return Chartlet(
        west=west,
        east=east,
        south=south,
        north=north,
        tracks=tuple(
            Track(points=points, foul=figures.foul, label=labels.get(place, ""))
            for place, (_, figures, points) in enumerate(near)
        ),
        outlines=_outlines(fleet, west, east, south, north),
        rectangles=_rectangles(near),
    )


def _outlines(fleet: Fleet, west: float, east: float, south: float, north: float) -> tuple[Outline, ...]:
    """Return the fleet's grounds that lie within these edges at least in part."""
    made = []
    for ground in fleet.grounds:
        corners = _corners([(corner.longitude, corner.latitude) for corner in ground.corners])
        inside = corners and not (
            max(x for x, _ in corners) < west
            or min(x for x, _ in corners) > east
            or max(y for _, y in corners) < south
            or min(y for _, y in corners) > north
        )
        if inside:
            made.append(Outline(name=one_line(ground.name, 30), corners=corners))
    return tuple(made)


def _corners(points: list[Point]) -> tuple[Point, ...]:
    """Return a ground's outline; two corners make a box."""
    if len(points) == 2:  # noqa: PLR2004 - two corners
        (x1, y1), (x2, y2) = points
        return ((x1, y1), (x2, y1), (x2, y2), (x1, y2))
    return tuple(points)


def _rectangles(near: Sequence[Placed]) -> tuple[tuple[str, Point], ...]:
    """Return the statistical rectangles fished with their south-west corners."""
    found: dict[str, Point] = {}
    for tow, figures, _ in near:
        if figures.rectangle and tow.start and figures.rectangle not in found:
            end = tow.end or tow.start
            lon, lat = (tow.start.longitude + end.longitude) / 2, (tow.start.latitude + end.latitude) / 2
            found[figures.rectangle] = (float(floor(lon)), floor(lat * 2) / 2)
    return tuple(sorted(found.items()))


def _words(tows: Sequence[TowFigures]) -> str:
    grounds = sorted({one_line(tow.ground) for tow in tows if tow.ground})
    rectangles = sorted({tow.rectangle for tow in tows if tow.rectangle})
    foul = sum(tow.foul for tow in tows)
    said = f"Chartlet of {many(len(tows), 'tow')}"
    if grounds:
        said += f" on {', '.join(grounds[:4])}" + (" and other grounds" if len(grounds) > 4 else "")  # noqa: PLR2004 - four are named
    if rectangles:
        said += f", in {'rectangle' if len(rectangles) == 1 else 'rectangles'} {', '.join(rectangles)}"
    return f"{said}; {foul} of them foul." if foul else f"{said}."
