"""Positions as GeoJSON (RFC 7946): points and lines on WGS84, longitude first, cut at the 180th meridian."""

import json
from collections.abc import Iterable, Sequence
from itertools import pairwise

from logbook.model.quantity import Position

_HALF_A_TURN = 180.0
_PLACES = 6
"""Decimals of a degree: a tenth of a metre, more than anybody types."""

_BETWEEN = b",\n"
_ENCODER = json.JSONEncoder(ensure_ascii=False, allow_nan=False)


def lines_of(features: Iterable[dict[str, object]]) -> bytes:
    """Return features as they stand in a file, one a line, without what stands around them."""
    return _BETWEEN.join(_text(feature) for feature in features)


def collection(lines: Iterable[bytes], caution: str) -> bytes:
    """Return lines of features as a file, with what they are not; those that are empty have no place in it.

    Source:
        RFC 7946 section 6.1: members of one's own, as `caution`, are allowed.
    """
    head = b'{"type": "FeatureCollection", "caution": ' + _text(caution) + b', "features": [\n'
    return head + _BETWEEN.join(filter(None, lines)) + b"\n]}\n"


def _text(value: object) -> bytes:
    return _ENCODER.encode(value).encode("utf-8", "replace")


def geometry(places: Sequence[Position]) -> dict[str, object] | None:
    """Return one place as a point, more of them as a line, in pieces where it crosses the date line; None for none.

    Source:
        RFC 7946 sections 3.1.1 (longitude before latitude), 4 (WGS84) and 3.1.9 (a line over the date line is cut there).
    """
    points = [[round(place.longitude, _PLACES), round(place.latitude, _PLACES)] for place in places]
    if not points:
        return None
    if len(points) == 1:
        return {"type": "Point", "coordinates": points[0]}
    lines = _cut(points)
    if len(lines) == 1:
        return {"type": "LineString", "coordinates": lines[0]}
    return {"type": "MultiLineString", "coordinates": lines}


def _cut(points: Sequence[list[float]]) -> list[list[list[float]]]:
    """Return a line in pieces each longer than a point, none of which crosses the 180th meridian."""
    lines = [[points[0]]]
    for before, after in pairwise(points):
        step = after[0] - before[0]
        if abs(step) <= _HALF_A_TURN:
            lines[-1].append(after)
            continue
        edge = _HALF_A_TURN if step < 0 else -_HALF_A_TURN
        whole = step + (360 if step < 0 else -360)
        part = (edge - before[0]) / whole if whole else 0.0
        latitude = round(before[1] + part * (after[1] - before[1]), _PLACES)
        lines[-1] += [[edge, latitude]] if before != [edge, latitude] else []
        lines.append([[-edge, latitude]])
        lines[-1] += [after] if after != [-edge, latitude] else []
    return [line for line in lines if len(line) > 1] or [[points[0], points[0]]]
