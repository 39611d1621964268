"""What one trip gives to the files of the whole fleet: its lines of each, ready to be put behind those of other trips."""

from logbook.model.edition import Policy
from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.fleet_figures import Landed
from logbook.model.named import ByName
from logbook.render.files.calendar import landing_events
from logbook.render.files.of_trips import TripRow
from logbook.render.files.tables import TABLES
from logbook.render.files.tracks import track_lines
from logbook.render.find_index import trip_data

TRACK_LINES = "tracks"
EVENTS = "events"
FIND_DATA = "find"
"""Names of pieces; those of tables go by the table's name."""


def trip_rows(trip: Reckoned, landed: Landed | None, fleet: Fleet, policy: Policy) -> ByName[bytes]:
    """Return a trip's pieces of files, in the language in force.

    Args:
        trip: The trip as the edition shows it.
        landed: What it put ashore; None where it has not docked.
        fleet: The fleet file, or what stands for it.
        policy: What the edition shows.
    """
    row = TripRow(trip=trip, landed=landed)
    tables = ((kind.name, kind.lines(kind.records(row), policy)) for kind in TABLES if kind.shown(policy))
    return ByName(
        (
            *tables,
            (TRACK_LINES, track_lines(trip)),
            (EVENTS, landing_events(trip, fleet.title)),
            (FIND_DATA, trip_data(trip)),
        )
    )
