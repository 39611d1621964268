"""Where the files for other programs lie in the archive, and what each of them is."""

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
