"""Passage, landing and turnaround, as they were."""

from datetime import datetime

from msgspec.structs import replace

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.figures import LandingFigures, Neighbours, ProbeFigures
from logbook.model.fleet import Fleet, Port
from logbook.model.named import ByName
from logbook.model.quantity import HOUR, Position
from logbook.model.trip import Landing, Trip
from logbook.reckon.catch import add
from logbook.reckon.geodesy import track_length


def hours(start: datetime | None, end: datetime | None) -> float | None:
    """Return the hours from one moment to another; None where either is not known or the end comes first."""
    if start is None or end is None or end < start:
        return None
    return (end - start) / HOUR


def destination(trip: Trip, fleet: Fleet) -> str | None:
    """Return the port she is bound for: as said, else the one she sailed from, else the home port."""
    return trip.bound_for or trip.sailed_from or fleet.home_port


def reckon_landing(trip: Trip, last: Landing, fleet: Fleet, neighbours: Neighbours) -> LandingFigures:
    """Return how the trip was landed; of several landings the last, with all of them beside it.

    Args:
        trip: The trip.
        last: The last of its landings.
        fleet: Its fleet, for ports and limits.
        neighbours: For when she sailed again.
    """
    ordered = sorted(trip.landings, key=lambda landing: (landing is last, landing.docked or trip.begins))
    each = [_one(trip, landing, before, fleet) for landing, before in zip(ordered, (None, *ordered), strict=False)]
    each[-1] = replace(each[-1], turnaround_h=hours(each[-1].landing_finished, neighbours.next_sailed))
    return replace(each[-1], landings=tuple(each) if len(each) > 1 else ())


def steam_out(trip: Trip) -> float | None:
    """Return the hours from sailing to the first shot."""
    first = min((tow.shot for tow in trip.tows if tow.shot is not None), default=None)
    return hours(trip.sailed, first)


def _homeward_from(trip: Trip, docked: datetime | None) -> datetime | None:
    """Return when the passage to a landing began: turned for home, else the last haul before it."""
    if trip.turned is not None and trip.turned.at is not None:
        return trip.turned.at
    hauls = (tow.hauled for tow in trip.tows if tow.hauled is not None)
    return max((hauled for hauled in hauls if docked is None or hauled <= docked), default=None)


def port_basis(trip: Trip, fleet: Fleet) -> Basis:
    """Return how it came about where she is bound for: nothing where it was said."""
    if trip.bound_for is not None or destination(trip, fleet) is None:
        return ()
    return (("port", reasons.PORT_SAILED_FROM if trip.sailed_from else reasons.HOME_PORT),)


def _one(trip: Trip, landing: Landing, before: Landing | None, fleet: Fleet) -> LandingFigures:
    """Return how one landing went; `before` is the landing before it."""
    there = fleet.port(landing.port or destination(trip, fleet))
    discharge = hours(landing.started, landing.finished)
    limit = fleet.limits.landing_temperature
    rate, rate_basis = _rate(landing, discharge, there)
    passage_nm, passage_h = _passage(trip, landing, before, there, fleet)
    return LandingFigures(
        port=landing.port or destination(trip, fleet),
        expected=False,
        docked=landing.docked,
        passage_nm=passage_nm,
        passage_h=passage_h,
        landing_started=landing.started,
        landing_finished=landing.finished,
        discharge_h=discharge,
        discharge_kg_per_h=rate,
        steam_out_h=steam_out(trip),
        steam_home_h=hours(_homeward_from(trip, landing.docked), landing.docked),
        turnaround_h=None,
        temperatures=ByName(
            (pen, ProbeFigures(temperature_c=celsius, within_limit=celsius <= limit))
            for pen, celsius in landing.temperatures
        ),
        basis=(*((port_basis(trip, fleet)) if landing.port is None else ()), *rate_basis),
    )


def _rate(landing: Landing, discharge_h: float | None, there: Port | None) -> tuple[float | None, Basis]:
    """Return kilograms discharged an hour: as weighed, else at the port's usual rate."""
    weighed = add(entry.weight.kilograms if entry.weight else None for entry in landing.out_turn)
    if weighed is not None and discharge_h:
        return float(weighed) / discharge_h, ()
    usual = there.landing_rate_kg_per_h if there is not None else None
    return usual, (("discharge_kg_per_h", reasons.PORT_RATE),) if usual is not None else ()


def _passage(
    trip: Trip, landing: Landing, before: Landing | None, there: Port | None, fleet: Fleet
) -> tuple[float | None, float | None]:
    """Return the nautical miles and hours of the passage to a landing, as it was sailed; None for what can't be told.

    It led from where she turned, else from where the last tow ended, or from the port of the landing before where she did not
    fish after that; through the fixes on the way; to the port.
    """
    left, start = _homeward_from(trip, landing.docked), _left_at(trip, landing.docked)
    sailed = (before.finished or before.docked) if before is not None else None
    if before is not None and sailed is not None and (left is None or left <= sailed):
        from_port = fleet.port(before.port)
        left, start = sailed, from_port.at if from_port is not None else None
    took = hours(left, landing.docked)
    if there is None or there.at is None or start is None or left is None:
        return None, took
    fixes = sorted(
        (fix.at, fix.place, fix.position)
        for fix in trip.passage
        if fix.at is not None and fix.position is not None and fix.at > left
        if landing.docked is None or fix.at < landing.docked
    )
    return track_length((start, *(position for _, _, position in fixes), there.at)), took


def _left_at(trip: Trip, docked: datetime | None) -> Position | None:
    """Return where the passage to a landing began: where she turned, else where the last tow before it ended."""
    if trip.turned is not None and trip.turned.position is not None:
        return trip.turned.position
    known = [
        tow.end or tow.start
        for tow in trip.tows
        if docked is None or (tow.hauled or tow.shot or docked) <= docked
        if tow.end is not None or tow.start is not None
    ]
    return known[-1] if known else None
