"""Where the files for other programs lie in the archive, and what each of them is."""

from collections.abc import Iterable

from logbook.model.language import N_
from logbook.render.language import _

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
    table_file("trips"): N_("trips, one row each"),
    table_file("tows"): N_("tows, one row each"),
    table_file("catches"): N_("what each tow caught, by species and grade"),
    table_file("landings"): N_("landings, made and expected"),
    table_file("landed"): N_("what was put ashore, by species and grade"),
    table_file("sales"): N_("what was sold, and what it brought"),
    table_file("problems"): N_("what is wrong in the logs"),
    DATAPACKAGE: N_("what every column of the tables is, and its unit"),
    TRACKS: N_("tracks of the tows"),
    FASTS_GEOJSON: N_("fasts, for maps"),
    FASTS_GPX: N_("fasts, for a chart plotter"),
    FEED: N_("landings, for a feed reader"),
    CALENDAR: N_("landings, made and expected, for a calendar"),
}


def listed(paths: Iterable[str]) -> tuple[tuple[str, str], ...]:
    """Return those of the files that are of the whole fleet, each with what it is in the language in force."""
    there = frozenset(paths)
    return tuple((path, _(about)) for path, about in _ABOUT.items() if path in there)
