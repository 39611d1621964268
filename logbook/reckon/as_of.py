"""What counts: the time figures are as of, the last word from the ship, and the trip without what came later."""

from collections.abc import Iterable, Iterator
from datetime import datetime

from msgspec.structs import replace

from logbook.model.trip import Landing, Period, Tow, Trip, Weather


def docked(trip: Trip) -> datetime | None:
    """Return when she docked for the last landing; None where that is not logged."""
    last = last_landing(trip)
    return last.docked if last is not None else None


def last_landing(trip: Trip) -> Landing | None:
    """Return the landing with the latest docking; where none has one, the last in the log; None where there is none."""
    logged = [landing for landing in trip.landings if landing.docked is not None]
    return max(logged, key=lambda landing: landing.docked or trip.begins) if logged else (trip.landings or (None,))[-1]


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


def last_word(trip: Trip, time: datetime) -> datetime:
    """Return the time of the last thing logged of a trip as it stood at a time; when it began, where that is all."""
    landed = docked(trip) is not None
    return max((moment for moment in moments(trip) if landed or moment <= time), default=trip.begins)


def as_of(trip: Trip, at: datetime | None) -> datetime:
    """Return the time figures are as of: the docking where there is one, else `at`, else the last thing in the log."""
    return docked(trip) or at or max(moments(trip))


def until(trip: Trip, time: datetime) -> Trip:
    """Return the trip as it stood at a time: what was logged later does not count, a tow not hauled by then is gear down.

    A stretch of time that was not over by then ends there. What belongs to a landing counts whenever it was logged. A tow
    hauled by then keeps the time it was stowed, be it later: its fish lay on deck until then at least.
    """
    turned = trip.turned
    if turned is not None and turned.at is not None and turned.at > time:
        turned = None

    def happened(at: datetime | None) -> bool:
        return at is None or at <= time

    return replace(
        trip,
        tows=tuple(_tows_until(trip.tows, time)),
        stowage=tuple(line for line in trip.stowage if happened(line.at)),
        readings=tuple(reading for reading in trip.readings if happened(reading.at)),
        weather=tuple(_looks_until(trip.weather, time)),
        gear=tuple(event for event in trip.gear if happened(event.at)),
        passage=tuple(fix for fix in trip.passage if happened(fix.at)),
        time_lost=_periods_until(trip.time_lost, time),
        rest=_periods_until(trip.rest, time),
        all_hands=_periods_until(trip.all_hands, time),
        turned=turned,
        landings=tuple(landing for landing in trip.landings if happened(landing.docked)),
    )


def _looks_until(looks: Iterable[Weather], time: datetime) -> Iterator[Weather]:
    """Give the looks at the weather by a time; one whose own is not known goes with the look typed before it."""
    stands = True
    for look in looks:
        stands = look.at <= time if look.at is not None else stands
        if stands:
            yield look


def _periods_until(periods: Iterable[Period], time: datetime) -> tuple[Period, ...]:
    begun = (period for period in periods if period.start is None or period.start <= time)
    return tuple(
        replace(period, end=time) if period.end is not None and period.end > time else period for period in begun
    )


def _tows_until(tows: Iterable[Tow], time: datetime) -> Iterator[Tow]:
    """Give the tows that had been shot; one whose times are not known goes with the tow before it, if that was hauled."""
    known = True
    for tow in tows:
        first = tow.shot or tow.hauled
        if first <= time if first is not None else known:
            yield _tow_until(tow, time)
        last = tow.hauled or first
        known = last <= time if last is not None else known


def _tow_until(tow: Tow, time: datetime) -> Tow:
    if tow.hauled is not None and tow.hauled > time:
        return Tow(
            no=tow.no,
            place=tow.place,
            one_line=tow.one_line,
            shot=tow.shot,
            start=tow.start,
            side=tow.side,
            ground=tow.ground,
            net=tow.net,
            carried=tow.carried - {"pens"},
            bottom=tow.bottom,
            depth=tow.depth,
            warp=tow.warp,
            speed=tow.speed,
            wind=tow.wind,
            sea=tow.sea,
            sea_temperature=tow.sea_temperature,
            deck_temperature=tow.deck_temperature,
        )
    return tow
