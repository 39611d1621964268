"""How the loose ice and the age of the fish went, from sailing to the moment of the figures and on to the end of landing."""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from msgspec import Struct

from logbook.model.course import AgeAt, Course, IceAt
from logbook.model.figures import TowFigures
from logbook.model.named import ByName
from logbook.model.quantity import HOUR
from logbook.reckon.as_of import last_landing
from logbook.reckon.ice import looks
from logbook.reckon.laid import all_laid
from logbook.reckon.melt import hold_melt
from logbook.reckon.standing import Standing

_ENOUGH = 5
_MOMENTS = 20
"""So many moments tell how fish aged."""

_TAKEN, _SEEN, _LAID = range(3)
"""What happens at one moment happens in this order: that is less ice."""


class _Event(Struct, frozen=True, order=True):
    """Something that happened to the ice: when, what and how much."""

    at: datetime
    kind: int
    kg: float


def reckon_course(now: Standing) -> Course:
    """Return how ice and age went until the moment of a trip's figures."""
    return Course(ice=tuple(_ice(now)), ages=tuple(_ages(now)), unusual=unusual(now.tows))


def unusual(tows: Sequence[TowFigures]) -> ByName[tuple[int, ...]]:
    """Return the tows whose speed or warp to depth lies far from most of the trip's: worth a look, not judged.

    Source:
        Tukey (1977), Exploratory Data Analysis (from memory): beyond one and a half times the quartiles' distance from them, of five
        values at least.
    """
    from statistics import quantiles  # noqa: PLC0415 - only pages ask for it, and it takes longer to load than a log to read

    found = {}
    for name, values in (
        ("speed_kn", [(n, tow.speed_kn) for n, tow in enumerate(tows, 1)]),
        ("warp_to_depth", [(n, tow.warp_to_depth) for n, tow in enumerate(tows, 1)]),
    ):
        known = [(n, value) for n, value in values if value is not None]
        if len(known) >= _ENOUGH:
            low, _, high = quantiles((value for _, value in known), n=4, method="inclusive")
            fence = 1.5 * (high - low)
            found[name] = tuple(n for n, value in known if not low - fence <= value <= high + fence)
    return ByName(found.items())


def _ice(now: Standing) -> Iterator[IceAt]:
    """Give the loose ice at every change of it; what was laid when nobody knows counts as laid last."""
    trip = now.trip
    begun = [float(kg) for kg in (trip.ice_loaded, trip.ice_left_at_sailing) if kg is not None]
    melt = hold_melt(trip, now.fleet.constants).kg_per_h or 0.0
    events = sorted(_events(now))
    left = sum(begun) if begun or not any(event.kind == _SEEN for event in events) else None
    if not begun and not any(event.kind in (_SEEN, _TAKEN) for event in events):
        return
    at = trip.sailed or trip.begins
    if left is not None:
        yield IceAt(at=at, left_kg=left)
    for event in (*events, _Event(now.as_of, _LAID, 0.0)):
        if left is not None:
            left -= melt * max(0.0, (event.at - at) / HOUR)
            yield IceAt(at=max(at, event.at), left_kg=max(0.0, left))
        at = max(at, event.at)
        left = _after(left, event)
        if left is not None:
            yield IceAt(at=at, left_kg=max(0.0, left), seen=event.kind == _SEEN)


def _after(left: float | None, event: _Event) -> float | None:
    """Return the loose ice after something happened to it; None as long as nothing is known of it."""
    if event.kind == _SEEN:
        return event.kg
    if left is None:
        return None
    return left + event.kg if event.kind == _TAKEN else left - event.kg


def _events(now: Standing) -> Iterator[_Event]:
    trip = now.trip
    for laid in all_laid(trip, now.tows, now.fleet.assumed.fish_to_ice, now.as_of).laid:
        yield _Event(laid.at or now.as_of, _LAID, laid.kg)
    for reading in trip.readings:
        if reading.ice_taken_aboard is not None:
            yield _Event(reading.at or trip.begins, _TAKEN, float(reading.ice_taken_aboard))
    for look in looks(trip.readings):
        yield _Event(look.at, _SEEN, look.left_kg)


def _ages(now: Standing) -> Iterator[AgeAt]:
    """Give the age of the fish that was aboard at moments from the first haul on."""
    if not now.lots:
        return
    hauled = [min([fish.hauled for fish in lot.fish]) for lot in now.lots]
    first = min(hauled)
    landing = last_landing(now.trip)
    last = max(now.as_of, landing.finished if landing is not None and landing.finished else now.as_of)
    step = (last - first) / _MOMENTS
    moments = [first + n * step for n in range(_MOMENTS + 1)] if step > timedelta(0) else []
    aboard: list[list[tuple[float | None, float]]] = [[] for _ in moments]
    for lot, since in zip(now.lots, hauled, strict=True):
        kept = float(lot.kept_kg) if lot.kept_kg is not None else None
        begin = bisect_left(moments, since)
        for at, days in zip(aboard[begin:], lot.ages(moments[begin:]), strict=True):
            at.append((kept, days))
    yield from map(_age_at, moments, aboard)


def _age_at(at: datetime, ages: Sequence[tuple[float | None, float]]) -> AgeAt:
    """Return the age of fish at a moment; each weight of it with its own age."""
    known = [(kept, days) for kept, days in ages if kept is not None]
    total = sum([kept for kept, _ in known])
    return AgeAt(
        at=at,
        oldest_days=max([days for _, days in ages]),
        mean_days=sum([kept * days for kept, days in known]) / total if total else None,
    )
