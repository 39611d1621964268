"""One log read and reckoned, with what its vessel's other logs have to say about it."""

import sys
from datetime import datetime
from enum import Enum, auto
from pathlib import Path

from msgspec.structs import replace

from logbook.cli.say import FAULTY_LOGS, Failure, print_problems, shown
from logbook.cli.words import moment
from logbook.model.figures import TripFigures
from logbook.model.fleet import Fleet
from logbook.model.trip import Trip
from logbook.read.folder import FleetFiles, read_log
from logbook.read.vessel_logs import VesselLog, other_logs, read_earlier
from logbook.reckon.as_of import docked
from logbook.reckon.neighbours import neighbours_of
from logbook.reckon.past import past_of
from logbook.reckon.trip import reckon_trip


class Past(Enum):
    """When the vessel's earlier trips are read."""

    NEVER = auto()
    WHILE_OUT = auto()
    ALWAYS = auto()


def reckoned(log: Path, at: str | None, *, past: Past) -> tuple[Trip, Fleet, TripFigures]:
    """Return the trip of a log, the fleet it belongs to and its figures.

    Args:
        log: The log.
        at: The moment that is asked for, as typed.
        past: When her earlier trips matter: for hours of gear, weeks of rest and how her hails lay beside the scale. Her other
            logs are looked at anyway for one that has not docked: there may be a later sailing.

    Raises:
        Failure: No trip can be read in the log, or the moment can't be read.
    """
    fleets = FleetFiles()
    trip, problems = read_log(log, fleets)
    problems = tuple(sorted({*problems, *fleets.problems}))
    if trip is None:
        print_problems(problems, sys.stderr)
        raise Failure(f"no trip can be read in {shown(log)}", FAULTY_LOGS)
    time: datetime | None = moment(at, trip)
    out = docked(trip) is None
    others: tuple[VesselLog, ...] = other_logs(log, trip, fleets) if past is Past.ALWAYS or out else ()
    neighbours = neighbours_of((trip, *(other.head for other in others)))[trip.file]
    if past is Past.ALWAYS or (past is Past.WHILE_OUT and out):
        neighbours = replace(neighbours, past=past_of(read_earlier(others, trip, fleets), trip))
    fleet = fleets.of(log).fleet
    return trip, fleet, reckon_trip(trip, fleet, neighbours, at=time, problems=problems)
