"""Passage, landing and turnaround, as they were."""

from dataclasses import replace
from datetime import datetime

from logbook.model.figures import LandingFigures, Neighbours, ProbeFigures
from logbook.model.fleet import Fleet
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


def reckon_landing(trip: Trip, fleet: Fleet, neighbours: Neighbours) -> LandingFigures:
    """Return how the trip was landed; of several landings the last, with all of them beside it.

    Args:
        trip: The trip.
        fleet: Its fleet, for ports and limits.
        neighbours: For when she sailed again.
    """
    if not trip.landings:
        return _empty(trip, fleet)
    each = tuple(_one(trip, landing, fleet) for landing in trip.landings)
    last = replace(each[-1], turnaround_h=hours(each[-1].landing_finished, neighbours.next_sailed))
    return replace(last, landings=(*each[:-1], last) if len(each) > 1 else ())


def _steam_out(trip: Trip) -> float | None:
    first = min((tow.shot for tow in trip.tows if tow.shot is not None), default=None)
    return hours(trip.sailed, first)


def _homeward_from(trip: Trip) -> datetime | None:
    """Return when the passage home began: turned for home, else the last haul."""
    if trip.turned is not None and trip.turned.at is not None:
        return trip.turned.at
    return max((tow.hauled for tow in trip.tows if tow.hauled is not None), default=None)


def _empty(trip: Trip, fleet: Fleet) -> LandingFigures:
    return LandingFigures(
        port=destination(trip, fleet),
        expected=True,
        docked=None,
        passage_nm=None,
        passage_h=None,
        landing_started=None,
        landing_finished=None,
        discharge_h=None,
        discharge_kg_per_h=None,
        steam_out_h=_steam_out(trip),
        steam_home_h=None,
        turnaround_h=None,
        temperatures=ByName(),
        basis=_port_basis(trip.bound_for),
    )


def _port_basis(port: str | None) -> tuple[tuple[str, str], ...]:
    return () if port is not None else (("port", "assumed: the port she sailed from, or the home port"),)


def _one(trip: Trip, landing: Landing, fleet: Fleet) -> LandingFigures:
    port = landing.port or destination(trip, fleet)
    discharge = hours(landing.started, landing.finished)
    weighed = add(entry.weight.kilograms if entry.weight else None for entry in landing.out_turn)
    limit = fleet.limits.landing_temperature
    rate = float(weighed) / discharge if weighed is not None and discharge else None
    there = fleet.port(port)
    usual = there.landing_rate_kg_per_h if there is not None else None
    basis = list(_port_basis(landing.port))
    if rate is None and usual is not None:
        rate = usual
        basis.append(("discharge_kg_per_h", "assumed: the port's usual rate"))
    steam_home = hours(_homeward_from(trip), landing.docked)
    return LandingFigures(
        port=port,
        expected=False,
        docked=landing.docked,
        passage_nm=_passage_nm(trip, port, fleet),
        passage_h=steam_home,
        landing_started=landing.started,
        landing_finished=landing.finished,
        discharge_h=discharge,
        discharge_kg_per_h=rate,
        steam_out_h=_steam_out(trip),
        steam_home_h=steam_home,
        turnaround_h=None,
        temperatures=ByName(
            (pen, ProbeFigures(temperature_c=celsius, within_limit=celsius <= limit))
            for pen, celsius in landing.temperatures
        ),
        basis=tuple(basis),
    )


def _passage_nm(trip: Trip, port: str | None, fleet: Fleet) -> float | None:
    """Return how far the passage home was: from where she turned through the fixes after it to the port."""
    there = fleet.port(port)
    left = _homeward_from(trip)
    start = _left_at(trip)
    if there is None or there.at is None or start is None or left is None:
        return None
    fixes = sorted(
        (fix.at, fix.place, fix.position)
        for fix in trip.passage
        if fix.at is not None and fix.position is not None and fix.at > left
    )
    return track_length((start, *(position for _, _, position in fixes), there.at))


def _left_at(trip: Trip) -> Position | None:
    """Return where the passage home began: where she turned, else where the last tow ended."""
    if trip.turned is not None and trip.turned.position is not None:
        return trip.turned.position
    ends = [tow.end or tow.start for tow in trip.tows if tow.end is not None or tow.start is not None]
    return ends[-1] if ends else None
