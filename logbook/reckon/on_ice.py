"""When each tow's fish came up and when it was under ice."""

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta

from msgspec import Struct
from msgspec.structs import replace

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.fleet import Fleet
from logbook.model.quantity import HOUR
from logbook.model.trip import CatchKept, Tow, Trip
from logbook.reckon.together import sorted_together


class Iced(Struct, frozen=True, kw_only=True):
    """When a tow's fish was under ice.

    Attributes:
        at: When; None where that can't be told.
        came_up: When it was hauled; where that is not known the earliest it can be. None where nothing came up.
        under: When it is taken to be under ice, not before it came up; None where nothing came up.
        basis: What was assumed.
    """

    at: datetime | None
    came_up: datetime | None
    under: datetime | None
    basis: Basis = ()


def usual_stowing(tows: Iterable[Tow], as_of: datetime) -> timedelta | None:
    """Return the median time from hauled to stowed of what was stowed by then; None where no tow tells it."""
    seconds = [
        (tow.stowed - tow.hauled).total_seconds()
        for tow in tows
        if tow.stowed is not None and tow.hauled is not None and tow.hauled <= tow.stowed <= as_of
    ]
    return timedelta(seconds=_median(seconds)) if seconds else None


def _median(values: Iterable[float]) -> float:
    """Return the median; the standard library's module for it takes longer to load than a log to read."""
    ordered = sorted(values)
    half = len(ordered) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2


def may_be_aboard(tows: Sequence[Tow]) -> tuple[bool, ...]:
    """Tell of every tow whether it came up, so that there may be fish of it: all but gear that is still down.

    One with no hauled time came up where its catch is told or another tow follows it.
    """
    last = len(tows) - 1
    return tuple(tow.hauled is not None or tow.kept is not CatchKept.UNKNOWN or n < last for n, tow in enumerate(tows))


def on_ice(trip: Trip, fleet: Fleet, as_of: datetime) -> tuple[Iced, ...]:
    """Return for every tow when its fish was under ice: stowed, else the trip's median time after hauling, else the fleet's.

    What was sorted with a next tow's lay on deck until that was stowed.

    Args:
        trip: The trip as it stood at `as_of`.
        fleet: For the time that is assumed.
        as_of: What was stowed later than that was still on deck then.
    """
    usual = usual_stowing(trip.tows, as_of)
    took = fleet.assumed.to_stow if usual is None else usual
    by = reasons.STOWED_USUALLY if usual is None else reasons.STOWED_BY_MEDIAN
    words = by.format(hours=f"{took / HOUR:.2g}")
    aboard = may_be_aboard(trip.tows)
    came_up = [earliest_up(trip, n) if up else None for n, up in enumerate(aboard)]
    iced = [_iced(tow, came, took, words, as_of) for tow, came in zip(trip.tows, came_up, strict=True)]
    return _with_the_last(trip.tows, iced, as_of)


def earliest_up(trip: Trip, place: int) -> datetime:
    """Return when a tow was hauled, else the earliest it can have been: its shot, else the last known time before it."""
    for n in range(place, -1, -1):
        known = trip.tows[n].hauled or trip.tows[n].shot
        if known is not None:
            return known
    return trip.begins


def _iced(tow: Tow, came_up: datetime | None, took: timedelta, words: str, as_of: datetime) -> Iced:
    if came_up is None:
        return Iced(at=None, came_up=None, under=None)
    stowed = tow.stowed if tow.stowed is not None and tow.stowed >= came_up else None
    if stowed is not None and stowed <= as_of:
        return Iced(at=stowed, came_up=came_up, under=stowed)
    assumed = came_up + took
    if tow.hauled is None:
        return Iced(at=None, came_up=came_up, under=assumed)
    if stowed is not None and assumed < as_of:
        return Iced(at=as_of, came_up=came_up, under=as_of, basis=(("on_ice", reasons.STILL_ON_DECK),))
    return Iced(at=assumed, came_up=came_up, under=assumed, basis=(("on_ice", words),))


def _with_the_last(tows: Sequence[Tow], iced: Sequence[Iced], as_of: datetime) -> tuple[Iced, ...]:
    """Return when fish was under ice, that of tows sorted together not before that of the last of them."""
    made = list(iced)
    for group in sorted_together(tows):
        for n in group[:-1]:
            made[n] = _until(iced[n], iced[group[-1]], tows[group[-1]].no, as_of)
    return tuple(made)


def _until(one: Iced, last: Iced, last_no: int, as_of: datetime) -> Iced:
    """Return when fish that was sorted with a later tow's was under ice; as logged where it was."""
    until = as_of if last.under is None else last.under
    logged = one.at is not None and not one.basis
    if logged or one.under is None or one.under >= until:
        return one
    if one.at is None:
        return replace(one, under=until)
    words = reasons.STILL_ON_DECK if last.under is None else reasons.STOWED_WITH.format(n=last_no)
    return replace(one, at=until, under=until, basis=(("on_ice", words),))
