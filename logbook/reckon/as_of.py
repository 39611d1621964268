"""What counts: the time figures are as of, the last word from the ship, and the trip without what came later."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime

from logbook.model.trip import CatchKept, Landing, Tow, Trip


def docked(trip: Trip) -> datetime | None:
    """Return when she docked for the last landing; None where that is not logged."""
    times = [landing.docked for landing in trip.landings if landing.docked is not None]
    return max(times, default=None)


def moments(trip: Trip) -> Iterator[datetime]:
    """Give every moment that was logged, in no order; what is planned is none."""
    for tow in trip.tows:
        yield from _known(tow.shot, tow.hauled, tow.aboard, tow.stowed)
    yield from _known(*(line.at for line in trip.stowage), *(reading.at for reading in trip.readings))
    yield from _known(*(look.at for look in trip.weather))
    yield from _known(*(event.at for event in trip.gear), *(fix.at for fix in trip.passage))
    for period in (*trip.time_lost, *trip.rest, *trip.all_hands):
        yield from _known(period.start, period.end)
    yield from _known(trip.begins, trip.turned.at if trip.turned else None)
    for landing in trip.landings:
        yield from _known(*_times(landing))


def _known(*times: datetime | None) -> Iterator[datetime]:
    return (time for time in times if time is not None)


def _times(landing: Landing) -> tuple[datetime | None, ...]:
    return landing.docked, landing.started, landing.finished


def as_of(trip: Trip, at: datetime | None) -> datetime:
    """Return the time figures are as of: the docking where there is one, else `at`, else the last thing in the log."""
    return docked(trip) or at or max(moments(trip))


def until(trip: Trip, time: datetime) -> Trip:
    """Return the trip as it stood at a time: what was logged later does not count, a tow not hauled by then is gear down.

    What belongs to a landing counts whenever it was logged.
    """
    turned = trip.turned
    if turned is not None and turned.at is not None and turned.at > time:
        turned = None

    def happened(at: datetime | None) -> bool:
        return at is None or at <= time

    return replace(
        trip,
        tows=tuple(_tow_until(tow, time) for tow in trip.tows if happened(tow.shot)),
        stowage=tuple(line for line in trip.stowage if happened(line.at)),
        readings=tuple(reading for reading in trip.readings if happened(reading.at)),
        weather=tuple(look for look in trip.weather if happened(look.at)),
        gear=tuple(event for event in trip.gear if happened(event.at)),
        passage=tuple(fix for fix in trip.passage if happened(fix.at)),
        time_lost=tuple(period for period in trip.time_lost if happened(period.start)),
        rest=tuple(period for period in trip.rest if happened(period.start)),
        all_hands=tuple(period for period in trip.all_hands if happened(period.start)),
        turned=turned,
        landings=tuple(landing for landing in trip.landings if happened(landing.docked)),
    )


def _tow_until(tow: Tow, time: datetime) -> Tow:
    if tow.hauled is not None and tow.hauled > time:
        return replace(
            tow,
            hauled=None,
            aboard=None,
            stowed=None,
            end=None,
            kept=CatchKept.UNKNOWN,
            catch=(),
            undersize=(),
            put_back=(),
            put_back_kept=CatchKept.UNKNOWN,
            catch_gaps=(),
        )
    if tow.stowed is not None and tow.stowed > time:
        return replace(tow, stowed=None)
    return tow
