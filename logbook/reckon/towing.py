"""How long and how far a tow was, how much bottom it swept, and where and in what light."""

from datetime import timedelta

from msgspec import Struct

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.language import N_
from logbook.model.quantity import HOUR, METRES_PER_NAUTICAL_MILE, Metres, Position
from logbook.model.trip import Tow, Trip
from logbook.reckon.geodesy import middle, track_length
from logbook.reckon.light import light


class Towing(Struct, frozen=True, kw_only=True):
    """How one tow went over the ground.

    Attributes:
        hours: Time towing.
        distance_nm: How far.
        distance_by: What that was reckoned by: positions, logged speed or usual speed.
        speed_kn: Over the ground; None where only the usual speed is known.
        doors_km2: Swept between the doors.
        wings_km2: Swept between the wings.
        basis: What was assumed.
    """

    hours: float | None
    distance_nm: float | None
    distance_by: str | None
    speed_kn: float | None
    doors_km2: float | None
    wings_km2: float | None
    basis: Basis


def duration(tow: Tow) -> timedelta | None:
    """Return how long a tow was towing: from shot to hauled; None where that can't be told."""
    if tow.shot is None or tow.hauled is None or tow.hauled < tow.shot:
        return None
    return tow.hauled - tow.shot


def reckon_towing(tow: Tow, trip: Trip) -> Towing:
    """Return how a tow went over the ground.

    Args:
        tow: The tow.
        trip: Its trip, for the vessel's usual speed and the spread of its nets.

    Source:
        Distance by geodesics on WGS84 (Karney 2013); swept area as distance × spread, as on ICES bottom trawl surveys.
    """
    towed = duration(tow)
    hours = towed / HOUR if towed is not None else None
    distance, by = _distance(tow, trip, hours)
    net = trip.vessel.net(tow.net)
    doors = _swept(distance, net.door_spread if net else None)
    wings = _swept(distance, net.wing_spread if net else None)
    return Towing(
        hours=hours,
        distance_nm=distance,
        distance_by=by,
        speed_kn=distance / hours if by == "positions" and distance is not None and hours else tow.speed,
        doors_km2=doors,
        wings_km2=wings,
        basis=_assumed(distance, doors, wings) if by == "usual speed" else (),
    )


def _assumed(distance: float | None, doors: float | None, wings: float | None) -> Basis:
    """Return which figures the usual speed was assumed for."""
    figures = (("distance_nm", distance), ("swept_doors_km2", doors), ("swept_wings_km2", wings))
    return tuple((name, reasons.USUAL_SPEED) for name, value in figures if value is not None)


def _distance(tow: Tow, trip: Trip, hours: float | None) -> tuple[float | None, str | None]:
    if tow.start is not None and tow.end is not None:
        return track_length((tow.start, *tow.via, tow.end)), N_("positions")
    if hours is not None and tow.speed is not None:
        return tow.speed * hours, N_("logged speed")
    if hours is not None and trip.vessel.towing_speed is not None:
        return trip.vessel.towing_speed * hours, N_("usual speed")
    return None, None


def _swept(distance: float | None, spread: Metres | None) -> float | None:
    """Return a swept area in km²."""
    if distance is None or spread is None:
        return None
    return distance * METRES_PER_NAUTICAL_MILE * spread / 1e6


def warp_to_depth(tow: Tow) -> float | None:
    """Return how many times the depth of water the warp was; of ranges, their means."""
    if tow.warp is None or tow.depth is None or not tow.depth.mean:
        return None
    return tow.warp.mean / tow.depth.mean


def middle_of(tow: Tow) -> Position | None:
    """Return the middle between where a tow began and ended; where only one of them is known, that."""
    if tow.start is not None and tow.end is not None:
        return middle(tow.start, tow.end)
    return tow.start or tow.end


def light_of(tow: Tow, place: Position | None) -> str | None:
    """Return day, twilight or night at the middle of a tow; of gear still down, when it was shot."""
    if place is None or tow.shot is None:
        return None
    return light(place, tow.shot + (duration(tow) or timedelta(0)) / 2)
