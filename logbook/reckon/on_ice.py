"""When each tow's fish was under ice."""

from collections.abc import Iterable
from datetime import datetime, timedelta
from statistics import median

from msgspec import Struct

from logbook.model.figures import Basis
from logbook.model.fleet import Fleet
from logbook.model.quantity import HOUR
from logbook.model.trip import Tow, Trip


class Iced(Struct, frozen=True, kw_only=True):
    """When a tow's fish was under ice.

    Attributes:
        at: When; None where that can't be told.
        basis: What was assumed.
    """

    at: datetime | None
    basis: Basis = ()


def usual_stowing(tows: Iterable[Tow], as_of: datetime) -> timedelta | None:
    """Return the median time from hauled to stowed of what was stowed by then; None where no tow tells it."""
    seconds = [
        (tow.stowed - tow.hauled).total_seconds()
        for tow in tows
        if tow.stowed is not None and tow.hauled is not None and tow.hauled <= tow.stowed <= as_of
    ]
    return timedelta(seconds=median(seconds)) if seconds else None


def on_ice(trip: Trip, fleet: Fleet, as_of: datetime) -> tuple[Iced, ...]:
    """Return for every tow when its fish was under ice: stowed, else the trip's median time after hauling, else the fleet's.

    Args:
        trip: The trip as it stood at `as_of`.
        fleet: For the time that is assumed.
        as_of: What was stowed later than that was still on deck then.
    """
    usual = usual_stowing(trip.tows, as_of)
    took = fleet.assumed.to_stow if usual is None else usual
    whose = "the usual time for this fleet" if usual is None else "the trip's median time"
    words = f"assumed: {took / HOUR:.2g} h after hauling, {whose}"
    return tuple(_iced(tow, took, words, as_of) for tow in trip.tows)


def _iced(tow: Tow, took: timedelta, words: str, as_of: datetime) -> Iced:
    if tow.stowed is not None and tow.stowed <= as_of:
        return Iced(at=tow.stowed)
    if tow.hauled is None:
        return Iced(at=None)
    assumed = tow.hauled + took
    if tow.stowed is not None and assumed < as_of:
        return Iced(at=as_of, basis=(("on_ice", "assumed: not before these figures, still on deck then"),))
    return Iced(at=assumed, basis=(("on_ice", words),))
