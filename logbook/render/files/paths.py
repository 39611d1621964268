"""Where the files for other programs lie in the archive, and what each of them is."""

from collections.abc import Iterable

FILES = "files/"
DATAPACKAGE = "files/datapackage.json"
TRACKS = "files/tracks.geojson"
FASTS_GEOJSON = "files/fasts.geojson"
FASTS_GPX = "files/fasts.gpx"
FEED = "files/landings.atom"
CALENDAR = "files/landings.ics"


def table_file(name: str) -> str:
    """Return the path of a table."""
    return f"files/{name}.csv"


def trip_file(trip_id: str) -> str:
    """Return the path of a trip's figures."""
    return f"files/trips/{trip_id}.json"


_ABOUT = {
    table_file("trips"): "trips, one row each",
    table_file("tows"): "tows, one row each",
    table_file("catches"): "what each tow caught, by species and grade",
    table_file("landings"): "landings, made and expected",
    table_file("landed"): "what was put ashore, by species and grade",
    table_file("sales"): "what was sold, and what it brought",
    table_file("problems"): "what is wrong in the logs",
    DATAPACKAGE: "what every column of the tables is, and its unit",
    TRACKS: "tracks of the tows",
    FASTS_GEOJSON: "fasts, for maps",
    FASTS_GPX: "fasts, for a chart plotter",
    FEED: "landings, for a feed reader",
    CALENDAR: "landings, made and expected, for a calendar",
}


def listed(paths: Iterable[str]) -> tuple[tuple[str, str], ...]:
    """Return those of the files that are of the whole fleet, each with what it is."""
    there = frozenset(paths)
    return tuple((path, about) for path, about in _ABOUT.items() if path in there)
