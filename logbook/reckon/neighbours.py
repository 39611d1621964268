"""What the other trips of a vessel say of each of hers: which was before and after, and what the earlier ones leave behind."""

from collections.abc import Iterable, Mapping
from datetime import datetime
from itertools import groupby

from msgspec.structs import replace

from logbook.model.figures import Neighbours
from logbook.model.names import fold_name, slug
from logbook.model.trip import Trip
from logbook.reckon.past import NOTHING, after

ALONE = Neighbours()
"""A trip of which no other is known."""


def trip_id(vessel: str, begins: datetime, number_that_day: int = 1) -> str:
    """Return a trip's id: the vessel's slug and the date it sailed; a second trip that day gets `-2`."""
    first = f"{slug(vessel)}-{begins:%Y-%m-%d}"
    return first if number_that_day == 1 else f"{first}-{number_that_day}"


def neighbours_of(trips: Iterable[Trip]) -> Mapping[str, Neighbours]:
    """Return what the other trips of each trip's vessel say of it, by the trip's file.

    Args:
        trips: In any order; of one vessel or many.
    """
    ordered = sorted(trips, key=lambda trip: (fold_name(trip.vessel.name), trip.begins, trip.file))
    found: dict[str, Neighbours] = {}
    for _, group in groupby(ordered, key=lambda trip: fold_name(trip.vessel.name)):
        own = list(group)
        numbers = _numbers(own)
        ids = [trip_id(trip.vessel.name, trip.begins, number) for trip, number in zip(own, numbers, strict=True)]
        for n, trip in enumerate(own):
            last = n + 1 == len(own)
            later = [other.sailed or other.begins for other in own[n + 1 :] if other.begins > trip.begins]
            found[trip.file] = Neighbours(
                number_that_day=numbers[n],
                previous_id=ids[n - 1] if n else None,
                next_id=None if last else ids[n + 1],
                next_sailed=later[0] if later else None,
            )
    return found


def _numbers(own: list[Trip]) -> list[int]:
    """Return for each trip of a vessel which one of its day it is."""
    counts: dict[str, int] = {}
    numbers = []
    for trip in own:
        day = f"{trip.begins:%Y-%m-%d}"
        counts[day] = counts.get(day, 0) + 1
        numbers.append(counts[day])
    return numbers


def with_past(trips: Iterable[Trip]) -> Mapping[str, Neighbours]:
    """Return the same with what the earlier trips of each vessel leave behind, of trips whose whole logs are given."""
    known = sorted(trips, key=lambda trip: (fold_name(trip.vessel.name), trip.begins, trip.file))
    found = dict(neighbours_of(known))
    for _, own in groupby(known, key=lambda trip: fold_name(trip.vessel.name)):
        past = NOTHING
        for trip in own:
            found[trip.file] = replace(found[trip.file], past=past)
            past = after(past, trip)
    return found
