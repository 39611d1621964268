"""What the other trips of a vessel say of each of hers: which was before and after, and what the earlier ones leave behind."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime
from itertools import groupby

from msgspec.structs import replace

from logbook.model.figures import Neighbours
from logbook.model.names import fold_name, slug
from logbook.model.past import Left, Rested
from logbook.model.placed import Placed, placed
from logbook.model.trip import Trip
from logbook.reckon.past import Behind, left_by
from logbook.reckon.rest import rested

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
    found: dict[str, Neighbours] = {}
    for own in _by_vessel(trips):
        found |= zip((trip.file for trip in own), in_a_row([placed(trip) for trip in own]), strict=True)
    return found


def in_a_row(own: Sequence[Placed]) -> Iterator[Neighbours]:
    """Give what is said of each of one vessel's trips, in order, by the others but for what they leave behind."""
    numbers = _numbers(own)
    ids = [trip_id(trip.vessel, trip.begins, number) for trip, number in zip(own, numbers, strict=True)]
    sailed = _next_sailed(own)
    for n in range(len(own)):
        yield Neighbours(
            number_that_day=numbers[n],
            previous_id=ids[n - 1] if n else None,
            next_id=ids[n + 1] if n + 1 < len(own) else None,
            next_sailed=sailed[n],
        )


def _by_vessel(trips: Iterable[Trip]) -> Iterator[list[Trip]]:
    ordered = sorted(trips, key=lambda trip: (fold_name(trip.vessel.name), trip.begins, trip.file))
    for _, own in groupby(ordered, key=lambda trip: fold_name(trip.vessel.name)):
        yield list(own)


def _next_sailed(own: Sequence[Placed]) -> list[datetime | None]:
    """Return for each trip of a vessel when she next sailed; two that began together are none later than the other."""
    found: list[datetime | None] = [None] * len(own)
    for n in range(len(own) - 2, -1, -1):
        later = own[n + 1]
        found[n] = (later.sailed or later.begins) if later.begins > own[n].begins else found[n + 1]
    return found


def _numbers(own: Sequence[Placed]) -> list[int]:
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
    found: dict[str, Neighbours] = {}
    for own in _by_vessel(trips):
        logs = {trip.file: rested(trip) for trip in own}
        near = beside([placed(trip) for trip in own], [left_by(trip) for trip in own])
        for trip, (one, recent) in zip(own, near, strict=True):
            found[trip.file] = with_rest(one, (logs[file] for file in recent))
    return found


def beside(own: Sequence[Placed], left: Sequence[Left]) -> Iterator[tuple[Neighbours, tuple[str, ...]]]:
    """Give what is said of each of one vessel's trips by the others but for her rest, and the logs that tell of that.

    Args:
        own: The trips in order.
        left: What each leaves behind.
    """
    behind = Behind()
    for near, trip in zip(in_a_row(own), left, strict=True):
        yield replace(near, past=behind.before(trip)), behind.recent(trip)
        behind.add(trip)


def with_rest(near: Neighbours, recent: Iterable[Rested]) -> Neighbours:
    """Return the same with her rest on the trips before."""
    return replace(near, past=replace(near.past, recent=tuple(recent)))
