"""Fasts for chart plotters and other programs: GeoJSON (RFC 7946) and GPX 1.1.

A typed position is a point, or a waypoint. Where none was typed the tow's track stays a line: nobody knows where on it the gear came
fast, and a point would say so.
"""

import json
from collections.abc import Iterable, Sequence
from datetime import UTC, datetime
from itertools import pairwise
from xml.etree.ElementTree import Element, SubElement, tostring

from logbook.model.gear import FastMark
from logbook.model.quantity import Position
from logbook.render.cautions import FAST

_GPX = "http://www.topografix.com/GPX/1/1"
_HALF_A_TURN = 180.0


def fasts_geojson(marks: Sequence[FastMark]) -> bytes:
    """Return the fasts of which a place is known as a feature collection.

    Source:
        RFC 7946: longitude before latitude, WGS84; a line over the date line is cut there.
    """
    features = [
        {"type": "Feature", "geometry": geometry, "properties": _properties(mark)}
        for mark in marks
        if (geometry := _geometry(mark)) is not None
    ]
    made = {"type": "FeatureCollection", "features": features}
    return (json.dumps(made, ensure_ascii=False, indent=1, allow_nan=False) + "\n").encode("utf-8", "replace")


def _properties(mark: FastMark) -> dict[str, object]:
    return {
        "what": mark.what or "fast",
        "vessel": mark.vessel,
        "trip": mark.trip_id,
        "tow": mark.tow,
        "when": mark.when.isoformat() if mark.when is not None else None,
        "ground": mark.ground,
        "depth_m": mark.depth_m,
        "position": "of the ship, as typed" if mark.at is not None else "none typed: the tow's track",
        "caution": str(FAST),
    }


def _geometry(mark: FastMark) -> dict[str, object] | None:
    places = (mark.at,) if mark.at is not None else mark.track
    points = [[place.longitude, place.latitude] for place in places]
    if not points:
        return None
    if len(points) == 1:
        return {"type": "Point", "coordinates": points[0]}
    lines = _cut(points)
    if len(lines) == 1:
        return {"type": "LineString", "coordinates": lines[0]}
    return {"type": "MultiLineString", "coordinates": lines}


def _cut(points: Sequence[list[float]]) -> list[list[list[float]]]:
    """Return a line in pieces none of which crosses the 180th meridian."""
    lines = [[points[0]]]
    for before, after in pairwise(points):
        step = after[0] - before[0]
        if abs(step) <= _HALF_A_TURN:
            lines[-1].append(after)
            continue
        edge = _HALF_A_TURN if step < 0 else -_HALF_A_TURN
        whole = step + (360 if step < 0 else -360)
        part = (edge - before[0]) / whole if whole else 0.0
        latitude = before[1] + part * (after[1] - before[1])
        lines[-1].append([edge, latitude])
        lines.append([[-edge, latitude], after])
    return lines


def fasts_gpx(marks: Sequence[FastMark], name: str) -> bytes:
    """Return the fasts of which a place is known: waypoints where a position was typed, else tracks.

    Source:
        GPX 1.1 schema (Topografix).
    """
    root = Element("gpx", {"version": "1.1", "creator": "trawl-trip-logbook", "xmlns": _GPX})
    about = SubElement(root, "metadata")
    _text(about, "name", f"Fasts, {name}")
    _text(about, "desc", str(FAST))
    for mark in marks:
        if mark.at is not None:
            _described(SubElement(root, "wpt", _place(mark.at)), mark, when=mark.when)
    for mark in marks:
        if mark.at is None and mark.track:
            track = SubElement(root, "trk")
            _described(track, mark, when=None)
            segment = SubElement(track, "trkseg")
            for place in mark.track:
                SubElement(segment, "trkpt", _place(place))
    body: bytes = tostring(root, encoding="utf-8")
    return b'<?xml version="1.0" encoding="UTF-8"?>\n' + body + b"\n"


def _place(place: Position) -> dict[str, str]:
    longitude = -_HALF_A_TURN if place.longitude == _HALF_A_TURN else place.longitude
    return {"lat": f"{place.latitude:.7f}", "lon": f"{longitude:.7f}"}


def _described(element: Element, mark: FastMark, when: datetime | None) -> None:
    """Add time, name and words in the order that the schema asks for."""
    if when is not None:
        _text(element, "time", when.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ"))
    _text(element, "name", mark.what or "fast")
    depth = f", {mark.depth_m:.0f} m" if mark.depth_m is not None else ""
    where = f", {mark.ground}" if mark.ground else ""
    seen = "ship's position, the gear lay astern" if mark.at is not None else "no position typed: the tow's track"
    _text(element, "desc", f"{mark.vessel}, tow {mark.tow}{where}{depth}; {seen}")


def _text(parent: Element, name: str, words: str) -> None:
    SubElement(parent, name).text = "".join(_allowed(words))


def _allowed(words: Iterable[str]) -> Iterable[str]:
    """Give the characters that XML 1.0 allows; others have no place in it, however they are written."""
    for letter in words:
        if letter in "\t\n\r" or " " <= letter <= "\ud7ff" or "\ue000" <= letter <= "\ufffd" or letter > "\uffff":
            yield letter
