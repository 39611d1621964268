"""What every chartlet shares: tracks kept whole over the date line, how far it reaches, the grounds that lie on it."""

from collections.abc import Sequence
from statistics import median

from logbook.model.fleet import Fleet
from logbook.model.quantity import Position
from logbook.render.charts import Chartlet, Outline, Point, Track
from logbook.render.projection import chart_shape, fitted
from logbook.render.shown import one_line

WIDTH, HEIGHT = 620, 520
_MARGIN = 0.06
_LEAST = 0.1
"""Degrees of latitude that a chartlet spans at the least."""
_FAR = 12.0
"""What lies so many times further from the middle than half of all do, and two degrees at least, is left off."""
_FAR_LEAST = 2.0


def points_of(places: Sequence[Position | None]) -> tuple[Point, ...]:
    """Return positions as points of a chartlet, as far as they are known."""
    return tuple((place.longitude, max(-84.0, min(84.0, place.latitude))) for place in places if place is not None)


def unwrapped(points: tuple[Point, ...], near: float) -> tuple[Point, ...]:
    """Return points with longitudes within half a turn of one, so that tracks across 180° stay whole."""
    return tuple((near + (lon - near + 180) % 360 - 180, lat) for lon, lat in points)


def near_and_far(placed: Sequence[tuple[Point, ...]]) -> tuple[list[int], list[int]]:
    """Return the places in order of the tracks that lie together, and of those far off, which a slip of the pen may have put there."""
    lon = median(points[0][0] for points in placed)
    lat = median(points[0][1] for points in placed)
    away = [max(max(abs(x - lon), abs(y - lat)) for x, y in points) for points in placed]
    reach = max(median(away) * _FAR, _FAR_LEAST)
    near = [n for n, far in enumerate(away) if far <= reach]
    return near, [n for n, far in enumerate(away) if far > reach]


def framed(tracks: Sequence[Track], fleet: Fleet, rectangles: tuple[tuple[str, Point], ...] = ()) -> Chartlet:
    """Return a chartlet that shows some tracks, of which there is one at least, with a margin round them."""
    everything = [point for track in tracks for point in track.points]
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
        tracks=tuple(tracks),
        outlines=_outlines(fleet, west, east, south, north),
        rectangles=rectangles,
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
