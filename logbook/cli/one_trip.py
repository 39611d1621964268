"""One log read and reckoned, with what its vessel's other logs have to say about it."""

import sys
from datetime import datetime
from pathlib import Path

from logbook.cli.say import FAULTY_LOGS, Failure, print_problems, shown
from logbook.cli.words import moment
from logbook.model.figures import TripFigures
from logbook.model.fleet import Fleet
from logbook.model.trip import Trip
from logbook.read.folder import FleetFiles, read_log, read_vessel_heads
from logbook.reckon.as_of import docked
from logbook.reckon.trip import neighbours_of, reckon_trip


def reckoned(log: Path, at: str | None, *, others: bool = True) -> tuple[Trip, Fleet, TripFigures]:
    """Return the trip of a log, the fleet it belongs to and its figures.

    Args:
        log: The log.
        at: The moment that is asked for, as typed.
        others: False where the vessel's other logs matter only for one that has not docked: then they may have a later sailing.

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
    heads = read_vessel_heads(log, trip, fleets) if others or docked(trip) is None else ()
    neighbours = neighbours_of((trip, *heads))[trip.file]
    fleet = fleets.of(log).fleet
    return trip, fleet, reckon_trip(trip, fleet, neighbours, at=time, problems=problems)
