"""What is legal in a log but suspicious: each a warning, the figure used all the same."""

from collections.abc import Callable, Iterable, Iterator
from datetime import datetime
from decimal import Decimal
from itertools import pairwise
from math import asin, cos, degrees, radians, sin, sqrt

from logbook.model.fleet import Vessel
from logbook.model.problem import Place, Problem, Severity
from logbook.model.quantity import DAY, HOUR, Position
from logbook.model.trip import CatchKept, Fix, GearEvent, Reading, Stowed, Tow, Trip, Weather

CODES = frozenset(
    {
        "tows-overlap",
        "towing-speed",
        "position-jump",
        "depth-odd",
        "catch-odd",
        "ice-grew",
        "tow-outside-trip",
        "trip-long",
        "no-tows",
    }
)

Spot = Callable[..., Place]
"""Tells of a tow and some of its keys where the first of them that it has was typed."""

FASTEST_TOW_KN = 6.0
SLOWEST_TOW_KN = 1.0
STEAMING_KN = 10.0
"""Taken for a vessel whose steaming speed is not known."""
LEEWAY = 1.5
TEN_TIMES = 10
LONGEST_TRIP = 120 * DAY
"""No trawler stays out so long; common practice, no source."""
ENOUGH = 5
"""A median of fewer values says nothing."""


def doubts(trip: Trip, tows_at: Place, spot: Spot) -> list[Problem]:
    """Return a warning for everything suspicious in one trip.

    Args:
        trip: The trip.
        tows_at: Where its tows begin, or should.
        spot: Tells where one of a tow's figures was typed.
    """
    return [
        *_no_tows(trip, tows_at),
        *_overlaps(trip.tows, spot),
        *_outside(trip, spot),
        *_towing_speeds(trip.tows, spot),
        *_jumps(trip.tows, trip.vessel, spot),
        *_ten_times(trip.tows, _depth, "depth-odd", spot),
        *_ten_times(trip.tows, _catch, "catch-odd", spot),
        *_ice_grew(trip.readings),
        *_long(trip),
    ]


def _warning(place: Place, code: str, message: str, hint: str) -> Problem:
    return Problem(place=place, severity=Severity.WARNING, code=code, message=message, hint=hint)


def apart_nm(a: Position, b: Position) -> float:
    """Return how far two positions lie apart on a sphere, in nautical miles: near enough for a doubt."""
    north = radians(b.latitude - a.latitude) / 2
    east = radians(b.longitude - a.longitude) / 2
    chord = sin(north) ** 2 + cos(radians(a.latitude)) * cos(radians(b.latitude)) * sin(east) ** 2
    return degrees(2 * asin(min(1.0, sqrt(chord)))) * 60


def track_nm(tow: Tow) -> float | None:
    """Return how far a tow's positions lead, in nautical miles; None where it has not both ends."""
    if tow.start is None or tow.end is None:
        return None
    return sum(apart_nm(a, b) for a, b in pairwise((tow.start, *tow.via, tow.end)))


def _no_tows(trip: Trip, at: Place) -> Iterator[Problem]:
    if not trip.tows and not trip.tows_lost:
        yield Problem(
            place=at,
            severity=Severity.WARNING if trip.landings else Severity.NOTE,
            code="no-tows",
            message="this log has no tows yet",
            hint="add them below `tows:`, each after a dash",
        )


def _overlaps(tows: Iterable[Tow], spot: Spot) -> Iterator[Problem]:
    for before, tow in pairwise(tows):
        if before.hauled is not None and tow.shot is not None and tow.shot < before.hauled:
            said = (
                f"tow {tow.no} is shot at {tow.shot:%H:%M}, before tow {before.no} is hauled at {before.hauled:%H:%M}"
            )
            yield _warning(spot(tow, "shot"), "tows-overlap", said, "see which time is wrong")


def _outside(trip: Trip, spot: Spot) -> Iterator[Problem]:
    docked = max((landing.docked for landing in trip.landings if landing.docked), default=None)
    for tow in trip.tows:
        if tow.shot is not None and trip.sailed is not None and tow.shot < trip.sailed:
            said = f"tow {tow.no} is shot before she sailed"
            yield _warning(spot(tow, "shot"), "tow-outside-trip", said, "see its date")
        elif docked is not None and (last := tow.hauled or tow.shot) is not None and last > docked:
            said = f"tow {tow.no} lies after she docked"
            yield _warning(spot(tow, "hauled", "shot"), "tow-outside-trip", said, "see its date")


def _towing_speeds(tows: Iterable[Tow], spot: Spot) -> Iterator[Problem]:
    for tow in tows:
        speed = tow.speed if tow.speed is not None else _by_positions(tow)
        if speed is None or SLOWEST_TOW_KN <= speed <= FASTEST_TOW_KN:
            continue
        how, key = ("as logged", "speed") if tow.speed is not None else ("by its positions and times", "from")
        said = f"tow {tow.no} goes {speed:.1f} kn {how}"
        yield _warning(spot(tow, key), "towing-speed", said, "see its times and positions")


def _by_positions(tow: Tow) -> float | None:
    track = track_nm(tow)
    if track is None or tow.shot is None or tow.hauled is None or tow.hauled <= tow.shot:
        return None
    return track / ((tow.hauled - tow.shot) / HOUR)


def _jumps(tows: Iterable[Tow], vessel: Vessel, spot: Spot) -> Iterator[Problem]:
    fastest = LEEWAY * (vessel.steaming_speed or STEAMING_KN)
    last: tuple[Position, datetime] | None = None
    for tow in tows:
        if last is not None and tow.start is not None and tow.shot is not None:
            hours = max((tow.shot - last[1]) / HOUR, 0.25)
            away = apart_nm(last[0], tow.start)
            if away > fastest * hours:
                said = f"tow {tow.no} begins {away:.0f} nm from where the one before ended, {hours:.1f} h later"
                yield _warning(spot(tow, "from"), "position-jump", said, "see both positions")
        last = _where_last(tow) or last


def _where_last(tow: Tow) -> tuple[Position, datetime] | None:
    if tow.end is not None and tow.hauled is not None:
        return tow.end, tow.hauled
    if tow.start is not None and tow.shot is not None:
        return tow.start, tow.shot
    return None


def _depth(tow: Tow) -> float | None:
    return tow.depth.mean if tow.depth is not None else None


def _catch(tow: Tow) -> float | None:
    if tow.kept is not CatchKept.KNOWN:
        return None
    weights = [amount.weight.kilograms for amount in (*tow.catch, *tow.undersize) if amount.weight is not None]
    return float(sum(weights, Decimal(0))) if weights else None


def _ten_times(
    tows: Iterable[Tow], value_of: Callable[[Tow], float | None], code: str, spot: Spot
) -> Iterator[Problem]:
    """Warn of a value ten times the middle one of five or more, or the usual value ten times it."""
    values = [(tow, value) for tow in tows if (value := value_of(tow)) is not None]
    if len(values) < ENOUGH:
        return
    usual = sorted(value for _, value in values)[len(values) // 2]
    for tow, value in values:
        if usual > 0 and value >= TEN_TIMES * usual:
            key = code.removesuffix("-odd")
            said = f"the {key} of tow {tow.no} is {value / usual:.0f} times the usual one of this trip"
            yield _warning(spot(tow, key, "undersize"), code, said, "see the figure and its unit")


def _ice_grew(readings: Iterable[Reading]) -> Iterator[Problem]:
    looks = sorted((r for r in readings if r.at is not None), key=lambda r: (r.at, r.place))
    left: Decimal | None = None
    for look in looks:
        taken = look.ice_taken_aboard is not None
        if look.ice_left is not None:
            if left is not None and look.ice_left > left and not taken:
                said = f"the ice left grew from {left:f} to {look.ice_left:f} kg with none taken aboard"
                yield _warning(look.place, "ice-grew", said, "see both readings")
            left = look.ice_left
        elif taken:
            left = None


def _long(trip: Trip) -> Iterator[Problem]:
    """Warn of the first thing that is logged months after the trip began; a year is most likely a slip."""
    lists: tuple[Iterable[Stowed | Reading | Weather | GearEvent | Fix], ...]
    lists = (trip.stowage, trip.readings, trip.weather, trip.gear, trip.passage)
    periods = (*trip.rest, *trip.all_hands, *trip.time_lost)
    moments = [
        *((moment, tow.place) for tow in trip.tows for moment in (tow.shot, tow.hauled)),
        *((part.at, part.place) for parts in lists for part in parts),
        *((moment, period.place) for period in periods for moment in (period.start, period.end)),
        *((moment, landing.place) for landing in trip.landings for moment in (landing.docked, landing.finished)),
    ]
    last = trip.begins + LONGEST_TRIP
    late = [(place, moment) for moment, place in moments if moment is not None and moment > last]
    if late:
        place, moment = min(late)
        said = f"{moment:%Y-%m-%d} lies {(moment - trip.begins) // DAY} days after the trip began on {trip.begins:%Y-%m-%d}"
        yield _warning(place, "trip-long", said, "see the years")
