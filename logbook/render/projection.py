"""Mercator, as sea charts have it, and the shape of a chartlet."""

from math import asinh, cos, degrees, radians, tan

LEFT, RIGHT, TOP, BOTTOM = 66, 12, 12, 28
"""Room round a chartlet for what is written outside it, in pixels."""

_TOPMOST = 84.9


def northing(latitude: float) -> float:
    """Return how far up a Mercator chart a latitude lies, in degrees of longitude."""
    return degrees(asinh(tan(radians(latitude))))


def chart_shape(width: int, height: int) -> float:
    """Return height over width of a chartlet's inside, for a plate of that size."""
    return (height - TOP - BOTTOM) / (width - LEFT - RIGHT)


def fitted(west: float, east: float, south: float, north: float, shape: float) -> tuple[float, float, float, float]:
    """Return edges that hold all this and have a shape, height over width, on a Mercator chart.

    Args:
        west: Degrees, less than `east`.
        east: Degrees.
        south: Degrees, less than `north`.
        north: Degrees.
        shape: Height over width.

    Returns:
        West, east, south and north; either both of the one pair or both of the other moved outwards.
    """
    across, up = east - west, northing(north) - northing(south)
    if up < across * shape:
        more = (across * shape - up) / 2 * cos(radians((south + north) / 2))
        return west, east, max(south - more, -_TOPMOST), min(north + more, _TOPMOST)
    more = (up / shape - across) / 2
    return west - more, east + more, south, north
