"""Tiny trips that the tests of the reckoning share, read from logs as people type them."""

from datetime import UTC, datetime

from msgspec.structs import replace

from logbook.model.figures import Neighbours, Reckoned, TripFigures
from logbook.model.fleet import Fleet
from logbook.reckon.trip import reckon_trip, reckon_trips
from tests.read.logs import fleet, read, trip

HEAD = "vessel: Solan Bright\nsailed: 2026-03-04 05:30, Port Kerrin\n"


def moment(text: str) -> datetime:
    """Return a moment in UTC."""
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def figures(
    text: str,
    head: str = HEAD,
    *,
    of: Fleet | None = None,
    at: str | None = None,
    next_sailed: str | None = None,
) -> TripFigures:
    """Return the figures of a log whose first lines are given."""
    of = of or fleet()
    neighbours = Neighbours(next_sailed=moment(next_sailed) if next_sailed else None)
    return reckon_trip(trip(head + text, of), of, neighbours, at=moment(at) if at else None)


def reckoned(*texts: str, of: Fleet | None = None) -> tuple[Reckoned, ...]:
    """Return the trips of some whole logs, each in a file of its own."""
    of = of or fleet()
    logs = []
    for n, text in enumerate(texts):
        log, _ = read(text, of)
        assert log is not None
        logs.append(replace(log, file=f"{n}.yaml"))
    return reckon_trips(logs, of)
