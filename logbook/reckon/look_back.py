"""The same place at the same time of other years: tows near by, what they kept, and fasts, for `logbook here`."""

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta
from itertools import pairwise
from math import cos, hypot, radians, sin, sqrt

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.figures import Reckoned
from logbook.model.look_back import FastNear, LookBack
from logbook.model.quantity import Position
from logbook.model.trip import Tow
from logbook.reckon.gear import fasts_of
from logbook.reckon.listed import Listed, best_of, grouped, kept_here, listed, species_of, summed
from logbook.reckon.of_ground import DayByDay, same_weeks, year_of

_EQUATOR_NM = 6378137 / 1852
_ECCENTRICITY_2 = 0.00669437999014
"""WGS84: the equator's radius in nautical miles, and the first eccentricity squared (NIMA TR8350.2)."""
_BEST = 8


def look_back(
    trips: Sequence[Reckoned], position: Position, at: datetime, *, weeks: float, within_nm: float
) -> LookBack:
    """Return what was caught near a place in the same weeks of any year, and the fasts near it.

    Args:
        trips: All trips.
        position: The place.
        at: The day of the year.
        weeks: How many weeks before and after that day.
        within_nm: How near a tow's track must lie, in nautical miles.
    """
    length = timedelta(weeks=weeks)
    tows = [one for one in listed(trips) if one.when is not None and year_of(one.when.date(), at, length) is not None]
    placed = [(one, track) for one in tows if (track := track_of(one.log))]
    near = [one for one, track in placed if away_nm(position, track) <= within_nm]
    return LookBack(
        position=position,
        at=at,
        weeks=weeks,
        within_nm=within_nm,
        by_year=same_weeks(_days(near), at, length),
        species=species_of(kept_here(near), summed(near)),
        tows=best_of(near, None, _BEST),
        fasts=tuple(_fasts(trips, position, within_nm)),
        basis=_left_out(len(tows) - len(placed)),
    )


def _days(tows: Iterable[Listed]) -> Iterable[DayByDay]:
    """Give the tows of each trip by day."""
    for own in grouped(tows, lambda one: one.trip.figures.trip.id).values():
        days = grouped(own, lambda one: one.when.toordinal() if one.when is not None else None)
        yield {day: summed(of_day) for day, of_day in days.items()}


def _left_out(tows: int) -> Basis:
    """Return what is said of tows that have no position."""
    if not tows:
        return ()
    words = reasons.WITHOUT_PLACELESS_TOW if tows == 1 else reasons.WITHOUT_PLACELESS_TOWS
    return (("by_year", words.format(n=tows)),)


def track_of(tow: Tow | None) -> tuple[Position, ...]:
    """Return where a tow led, as far as it is known."""
    if tow is None:
        return ()
    return tuple(place for place in (tow.start, *tow.via, tow.end) if place is not None)


def away_nm(position: Position, track: Sequence[Position]) -> float:
    """Return how far a place lies from the nearest part of a track of one position at least, in nautical miles.

    On a plane that touches the earth at the place: within two thousandths up to thirty miles, over the date line as well. It is what is near
    that is asked for.
    """
    points = [_plane(position, place) for place in track]
    if len(points) == 1:
        return hypot(*points[0])
    return min(_from_segment(a, b) for a, b in pairwise(points))


def _plane(origin: Position, place: Position) -> tuple[float, float]:
    """Return how far east and north of a place another lies, by Gauss's formulas for the middle latitude on WGS84."""
    apart = radians((place.longitude - origin.longitude + 180) % 360 - 180)
    middle = radians((place.latitude + origin.latitude) / 2)
    flat = 1 - _ECCENTRICITY_2 * sin(middle) ** 2
    east = apart * cos(middle) * _EQUATOR_NM / sqrt(flat)
    north = radians(place.latitude - origin.latitude) * _EQUATOR_NM * (1 - _ECCENTRICITY_2) / flat**1.5
    turn = (
        apart * sin(middle) / 2
    )  # meridians draw together; the way begins so much to the left of how it runs in the middle
    return east * cos(turn) - north * sin(turn), north * cos(turn) + east * sin(turn)


def _from_segment(a: tuple[float, float], b: tuple[float, float]) -> float:
    """Return how far the origin lies from a segment."""
    along = (b[0] - a[0], b[1] - a[1])
    length = along[0] ** 2 + along[1] ** 2
    part = 0.0 if not length else max(0.0, min(1.0, -(a[0] * along[0] + a[1] * along[1]) / length))
    return hypot(a[0] + part * along[0], a[1] + part * along[1])


def _fasts(trips: Iterable[Reckoned], position: Position, within_nm: float) -> Iterable[FastNear]:
    marks = (mark for trip in trips for mark in fasts_of(trip.log, trip.figures.trip.id))
    placed = [(mark, (mark.at,) if mark.at is not None else mark.track) for mark in marks]
    near = [FastNear(mark=mark, away_nm=away_nm(position, track)) for mark, track in placed if track]
    known = [one for one in near if one.away_nm <= within_nm]
    return sorted(known, key=lambda one: (one.away_nm, one.mark.trip_id, one.mark.tow))
