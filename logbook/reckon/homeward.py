"""The way home that is still ahead: from the last position over the fleet's routes to the port."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from msgspec import Struct

from logbook.model import reasons
from logbook.model.fleet import Fleet, Port, Route
from logbook.model.names import fold_name
from logbook.model.quantity import HOUR, Position
from logbook.model.trip import Trip
from logbook.reckon.geodesy import track_length
from logbook.reckon.landing import destination

FOREVER = timedelta(days=366)
"""Beyond this a look ahead says nothing."""
POOR_WEATHER = 0.7
"""Of the steaming speed, where the vessel's poor weather speed is not known."""


class Passage(Struct, frozen=True, kw_only=True):
    """A passage home as it would be.

    Attributes:
        leaves: When it begins: from the moment of the figures, or where she turned for home already, from there.
        nautical_miles: How far; None where that can't be told.
        hours: How long at steaming speed, the same.
        poor_hours: How long at the poor weather speed, the same.
        straight: Whether it leads straight to the port, as no route to it is known.
        not_known: Why it can't be told; empty where it can.
    """

    leaves: datetime
    nautical_miles: float | None
    hours: float | None
    poor_hours: float | None
    straight: bool = False
    not_known: str = ""


class _Seen(Struct, frozen=True, kw_only=True):
    """Where she was at a moment; `order` tells which counts of two at one moment."""

    at: datetime
    order: int
    position: Position


def passage_ahead(trip: Trip, fleet: Fleet, as_of: datetime) -> Passage:
    """Return the passage home from the last position.

    Args:
        trip: The trip as it stood at `as_of`.
        fleet: For the port and the routes to it.
        as_of: The moment.
    """
    last = max(_positions(trip), key=lambda seen: (seen.at, seen.order), default=None)
    port = destination(trip, fleet)
    there = fleet.port(port)
    vessel = trip.vessel
    leaves = _leaves(trip, last, as_of)
    why = _why_not(port, there, last)
    if why or last is None or there is None or there.at is None:
        return Passage(leaves=leaves, nautical_miles=None, hours=None, poor_hours=None, not_known=why)
    routes = _routes(fleet, there)
    miles = shortest(last.position, there.at, routes, _left_from(trip, last))
    speed = vessel.steaming_speed
    if not speed or miles / speed > FOREVER / HOUR:
        return Passage(
            leaves=leaves,
            nautical_miles=miles,
            hours=None,
            poor_hours=None,
            straight=not routes,
            not_known=reasons.NO_SPEED,
        )
    poor = min(speed, vessel.poor_weather_speed or speed * POOR_WEATHER)
    poor_hours = min(miles / poor, FOREVER / HOUR)
    return Passage(leaves=leaves, nautical_miles=miles, hours=miles / speed, poor_hours=poor_hours, straight=not routes)


def _positions(trip: Trip) -> Iterator[_Seen]:
    for tow in trip.tows:
        if tow.start is not None and tow.shot is not None:
            yield _Seen(at=tow.shot, order=0, position=tow.start)
        if tow.end is not None and tow.hauled is not None:
            yield _Seen(at=tow.hauled, order=1, position=tow.end)
    for fix in trip.passage:
        if fix.at is not None and fix.position is not None:
            yield _Seen(at=fix.at, order=2, position=fix.position)
    if trip.turned is not None and trip.turned.at is not None and trip.turned.position is not None:
        yield _Seen(at=trip.turned.at, order=3, position=trip.turned.position)


def _leaves(trip: Trip, last: _Seen | None, as_of: datetime) -> datetime:
    """Return when the passage from the last position begins or began."""
    if trip.turned is None or trip.turned.at is None:
        return as_of
    return max(trip.turned.at, last.at) if last is not None else trip.turned.at


def _left_from(trip: Trip, last: _Seen) -> Position | None:
    """Return where a passage began that she is on already; None before the first fix of it, or where that is not known."""
    turned = trip.turned.at if trip.turned is not None else None
    if turned is None or last.at <= turned:
        return None
    before = [seen for seen in _positions(trip) if seen.at <= turned]
    return max(before, key=lambda seen: (seen.at, seen.order)).position if before else None


def _why_not(port: str | None, there: Port | None, last: _Seen | None) -> str:
    if port is None:
        return reasons.NO_PORT
    if there is None or there.at is None:
        return reasons.NO_PLACE_OF_PORT.format(port=port)
    return "" if last is not None else reasons.NO_POSITION


def _routes(fleet: Fleet, port: Port) -> tuple[Route, ...]:
    return tuple(route for route in fleet.routes if fold_name(route.to) == fold_name(port.name))


def shortest(start: Position, port: Position, routes: tuple[Route, ...], left: Position | None) -> float:
    """Return the nautical miles from a position to a port by the shortest of the routes to it, straight where there is none.

    Args:
        start: The position.
        port: Where the port lies.
        routes: The fleet's routes to it.
        left: Where the passage began, for one already on it: she is on the shortest route from there, on the leg of it that her
            position lengthens least. None for one that takes it from here.
    """
    if not routes:
        return _length(start, port)
    taken = min((route.via for route in routes), key=lambda via: _length(left or start, *via, port))
    if left is None:
        return _length(start, *taken, port)
    passed = min(range(len(taken) + 1), key=lambda n: _length(left, *taken[:n], start, *taken[n:], port))
    return _length(start, *taken[passed:], port)


def _length(*track: Position) -> float:
    return track_length(track) or 0.0


def after(moment: datetime, hours: float | None) -> datetime | None:
    """Return the moment some hours later; None where they are not known."""
    return moment + timedelta(hours=hours) if hours is not None else None
