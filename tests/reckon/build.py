"""Tiny trips that the tests of the reckoning share, read from logs as people type them."""

from logbook.model.figures import TripFigures
from logbook.reckon.trip import reckon_trip
from tests.read.logs import fleet, trip

HEAD = "vessel: Solan Bright\nsailed: 2026-03-04 05:30, Port Kerrin\n"


def figures(text: str, head: str = HEAD) -> TripFigures:
    """Return the figures of a log whose first lines are given."""
    return reckon_trip(trip(head + text), fleet())
