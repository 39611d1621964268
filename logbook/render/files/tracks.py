"""Tracks of tows as GeoJSON (RFC 7946): straight lines between the positions that were typed."""

from collections.abc import Iterable, Iterator
from datetime import datetime

from logbook.model.figures import Reckoned
from logbook.model.language import N_
from logbook.render.cautions import NAVIGATION
from logbook.render.files.cells import PLACES
from logbook.render.files.geometry import collection, geometry, lines_of
from logbook.render.files.of_tows import TowRow, tow_rows
from logbook.render.language import _

_LINE = N_("straight between the positions typed")
_POINT = N_("one position typed")


def track_lines(trip: Reckoned) -> bytes:
    """Return every tow of a trip of which a position is shown, as lines of a file; nothing where there is none."""
    return lines_of(_features(tow_rows((trip,))))


def tracks_geojson(lines: Iterable[bytes]) -> bytes | None:
    """Return the lines of trips as a file; None where there is none."""
    told = [line for line in lines if line]
    return collection(told, NAVIGATION.told()) if told else None


def _features(tows: Iterable[TowRow]) -> Iterator[dict[str, object]]:
    for row in tows:
        typed = (row.tow.start, *row.tow.via, row.tow.end)
        places = [place for place in typed if place is not None]
        made = geometry(places)
        if made is not None:
            yield {
                "type": "Feature",
                "id": f"{row.trip.figures.trip.id}/{row.order}",
                "geometry": made,
                "properties": _properties(row, _(_LINE if len(places) > 1 else _POINT)),
            }


def _properties(row: TowRow, track: str) -> dict[str, object]:
    figures = row.figures
    return {
        "vessel": row.trip.figures.trip.vessel,
        "trip": row.trip.figures.trip.id,
        "tow": figures.no,
        "tow_order": row.order,
        "shot": _moment(figures.shot),
        "hauled": _moment(figures.hauled),
        "ground": figures.ground,
        "net": figures.net,
        "depth_m": _rounded(figures.depth_m),
        "distance_nm": _rounded(figures.distance_nm),
        "kept_kg": float(figures.kept_kg) if figures.kept_kg is not None else None,
        "foul": figures.foul,
        "track": track,
    }


def _rounded(value: float | None) -> float | None:
    return round(value, PLACES) if value is not None else None


def _moment(moment: datetime | None) -> str | None:
    return moment.isoformat() if moment is not None else None
