"""Fasts for chart plotters and other programs: GeoJSON (RFC 7946) and GPX 1.1.

A typed position is a point, or a waypoint. Where none was typed the tow's track stays a line: nobody knows where on it the gear came
fast, and a point would say so.
"""

from collections.abc import Iterable, Sequence
from datetime import UTC, datetime
from xml.etree.ElementTree import Element, SubElement

from logbook.model.gear import FastMark
from logbook.model.quantity import Position
from logbook.render.cautions import FAST
from logbook.render.files.geometry import collection, geometry, lines_of
from logbook.render.files.xml import document, said
from logbook.render.language import _, _c

_GPX = "http://www.topografix.com/GPX/1/1"
_HALF_A_TURN = 180.0
"""The schema has it as -180 alone."""
_PLACES = 7


def has_place(mark: FastMark) -> bool:
    """Tell whether anything is known of where it was."""
    return mark.at is not None or bool(mark.track)


def fasts_geojson(marks: Sequence[FastMark]) -> bytes:
    """Return the fasts of which a place is known as a feature collection."""
    features: Iterable[dict[str, object]] = (
        {"type": "Feature", "geometry": made, "properties": _properties(mark)}
        for mark in marks
        if (made := geometry((mark.at,) if mark.at is not None else mark.track)) is not None
    )
    return collection((lines_of(features),), FAST.told())


def _properties(mark: FastMark) -> dict[str, object]:
    return {
        "what": mark.what or _c("gear that came fast", "fast"),
        "vessel": mark.vessel,
        "trip": mark.trip_id,
        "tow": mark.tow,
        "when": mark.when.isoformat() if mark.when is not None else None,
        "ground": mark.ground,
        "depth_m": mark.depth_m,
        "position": _of_ship(mark),
        "caution": FAST.told(),
    }


def _where(mark: FastMark) -> str:
    """Return what stands for the place of a fast of which no position was typed."""
    return _("the tow's track") if len(mark.track) > 1 else _("one end of the tow")


def _of_ship(mark: FastMark) -> str:
    if mark.at is not None:
        return _("of the ship, as typed")
    return _("none typed: {instead}").format(instead=_where(mark))


def fasts_gpx(marks: Sequence[FastMark], name: str) -> bytes:
    """Return the fasts of which a place is known: waypoints where a position was typed, else tracks.

    Source:
        GPX 1.1 schema (Topografix).
    """
    root = Element("gpx", {"version": "1.1", "creator": "trawl-trip-logbook", "xmlns": _GPX})
    about = SubElement(root, "metadata")
    said(about, "name", _("Fasts, {fleet}").format(fleet=name))
    said(about, "desc", FAST.told())
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
    return document(root)


def _place(place: Position) -> dict[str, str]:
    longitude = round(place.longitude, _PLACES)
    longitude = -_HALF_A_TURN if longitude == _HALF_A_TURN else longitude
    return {"lat": f"{place.latitude:.{_PLACES}f}", "lon": f"{longitude:.{_PLACES}f}"}


def _described(element: Element, mark: FastMark, when: datetime | None) -> None:
    """Add time, name and words in the order that the schema asks for."""
    if when is not None:
        said(element, "time", when.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ"))
    said(element, "name", mark.what or _c("gear that came fast", "fast"))
    whose = _("{vessel}, tow {no}").format(vessel=mark.vessel, no=mark.tow)
    depth = f"{mark.depth_m:.0f} m" if mark.depth_m is not None else ""
    seen = (
        _("ship's position, the gear lay astern")
        if mark.at is not None
        else _("no position typed: {instead}").format(instead=_where(mark))
    )
    where = ", ".join(part for part in (whose, mark.ground, depth) if part)
    said(element, "desc", f"{where}; {seen}")
