"""Where the files for other programs lie in the archive, and what each of them is."""

import re
from collections.abc import Iterable

from msgspec import Struct

from logbook.model.language import N_
from logbook.render.language import _

FILES = "files/"
DATAPACKAGE = "files/datapackage.json"
FASTS_GEOJSON = "files/fasts.geojson"
FASTS_GPX = "files/fasts.gpx"
FEED = "files/landings.atom"
CALENDAR = "files/landings.ics"

_OF_YEAR = re.compile(r"-\d{4}(?=\.\w+$)")


def table_file(name: str) -> str:
    """Return the path of a table."""
    return f"files/{name}.csv"


def tracks_file(year: str) -> str:
    """Return the path of the tracks of a year."""
    return f"files/tracks-{year}.geojson"


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
    "files/tracks.geojson": N_("tracks of the tows"),
    FASTS_GEOJSON: N_("fasts, for maps"),
    FASTS_GPX: N_("fasts, for a chart plotter"),
    FEED: N_("landings, for a feed reader"),
    CALENDAR: N_("landings expected, and those of the 400 days before the last word, for a calendar"),
}
"""By path, of what is parted without the year."""


class Listed(Struct, frozen=True, kw_only=True):
    """Files of one kind in the list of all of them.

    Attributes:
        about: What they are, in the language in force.
        first: The file, or that of the latest year.
        earlier: Years before that, the latest first, each with its file.
        parted: Whether there is a file for each year.
    """

    about: str
    first: str
    earlier: tuple[tuple[str, str], ...]
    parted: bool


def listed(paths: Iterable[str]) -> tuple[Listed, ...]:
    """Return those of the files that are of the whole fleet, kind by kind."""
    kinds: dict[str, list[str]] = {}
    for path in sorted(paths, reverse=True):
        kinds.setdefault(_OF_YEAR.sub("", path), []).append(path)
    return tuple(
        Listed(
            about=_(about),
            first=kinds[kind][0],
            earlier=tuple((path.rpartition("-")[2].partition(".")[0], path) for path in kinds[kind][1:]),
            parted=kinds[kind] != [kind],
        )
        for kind, about in _ABOUT.items()
        if kind in kinds
    )
