"""What nets, doors and warps went through on a trip and since they were last changed or mended; time lost; fasts."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime

from msgspec import Struct

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.gear import FastMark, NetFigures
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.past import GearLeft, GearPast, Past
from logbook.model.quantity import HOUR
from logbook.model.trip import GearEvent, Period, Tow, Trip
from logbook.reckon.totals import add_floats
from logbook.reckon.towing import duration
from logbook.reckon.tows import is_foul

RIGGING = ("doors", "warps")
_ANEW = ("changed", "mended", "lost")
"""What is done to gear that its hours count anew from."""


class GearParts(Struct, frozen=True, kw_only=True):
    """The figures of the gear of one trip: nets by name, doors and warps."""

    nets: ByName[NetFigures]
    rigging: ByName[NetFigures]


def net_of(tow: Tow, trip: Trip) -> str | None:
    """Return the net of a tow in the fleet's spelling; the vessel's only one where none is named and it has but one."""
    if tow.net is not None:
        known = trip.vessel.net(tow.net)
        return known.name if known is not None else tow.net
    return trip.vessel.nets[0].name if len(trip.vessel.nets) == 1 else None


def reckon_gear(trip: Trip, past: Past) -> GearParts:
    """Return what the gear of a trip went through; `trip` as it stood, `past` for the hours before it.

    Nets of which the log or the fleet file tells; doors and warps where something was ever done to them.
    """
    whose = len(trip.vessel.nets) != 1 and any(
        event.part == "net" and _is_nameless(event) and event.event in _ANEW for event in trip.gear
    )
    nets = [
        (
            name,
            _figures(_tows_of(trip, folded), _net_events(trip, folded), past.nets.get(folded, GearPast()), whose=whose),
        )
        for folded, name in _nets(trip).items()
    ]
    rigging = [
        (part, _figures(trip.tows, _events(trip, part), past.rigging.get(part, GearPast()), whose=False))
        for part in RIGGING
        if _events(trip, part) or part in past.rigging
    ]
    return GearParts(nets=ByName(nets), rigging=ByName(rigging))


def left_of_nets(trip: Trip) -> Iterator[tuple[str, GearLeft]]:
    """Give what a trip adds to each of its nets, by folded name; `trip` as it stood."""
    for folded in _nets(trip):
        yield folded, _left(_tows_of(trip, folded), _net_events(trip, folded))


def left_of_rigging(trip: Trip) -> Iterator[tuple[str, GearLeft]]:
    """Give what a trip adds to doors and warps; `trip` as it stood."""
    for part in RIGGING:
        yield part, _left(trip.tows, _events(trip, part))


def rigged(trip: Trip) -> tuple[str, ...]:
    """Return to which of doors and warps something was done; `trip` as it stood."""
    return tuple(part for part in RIGGING if _events(trip, part))


def carried_on(before: GearPast, left: GearLeft) -> GearPast:
    """Return the hours of one part after a trip, of those before it and what the trip adds."""
    if left.mended_at is not None:
        before = GearPast(mended_at=left.mended_at)
    hours = add_floats((before.towed_h, *left.hours))
    return GearPast(towed_h=hours, tows=before.tows + left.tows, mended_at=before.mended_at)


def _nets(trip: Trip) -> dict[str, str]:
    """Return the nets that the log or the fleet file tells of, by folded name."""
    names: dict[str, str] = {}
    named = (event.name for event in trip.gear if event.part == "net" and not _is_nameless(event))
    for name in (*(net.name for net in trip.vessel.nets), *(net_of(tow, trip) for tow in trip.tows), *named):
        if name:
            names.setdefault(fold_name(name), name)
    return names


def _events(trip: Trip, part: str) -> tuple[GearEvent, ...]:
    return tuple(event for event in trip.gear if event.part == part)


def _left(tows: Sequence[Tow], events: Sequence[GearEvent]) -> GearLeft:
    last = max((event.at for event in events if event.event in _ANEW and event.at is not None), default=None)
    since = [tow for tow in tows if last is None or _after(tow, last)]
    known = tuple(hours for tow in since if (hours := _hours(tow)) is not None)
    return GearLeft(hours=known, tows=len(since), mended_at=last)


def _tows_of(trip: Trip, net: str) -> tuple[Tow, ...]:
    return tuple(tow for tow in trip.tows if fold_name(net_of(tow, trip) or "") == net)


def _is_nameless(event: GearEvent) -> bool:
    """Tell whether an event says of what part it is, but not which one."""
    return fold_name(event.name) in {"", event.part}


def _net_events(trip: Trip, name: str) -> tuple[GearEvent, ...]:
    """Return what was done to a net; of a vessel's only one, also what names none."""
    lone = [fold_name(net.name) for net in trip.vessel.nets] == [name]
    return tuple(
        event
        for event in trip.gear
        if event.part == "net" and (lone if _is_nameless(event) else fold_name(event.name) == name)
    )


def _figures(tows: Sequence[Tow], events: Sequence[GearEvent], before: GearPast, *, whose: bool) -> NetFigures:
    """Return the figures of one part.

    Args:
        tows: The trip's tows with it.
        events: What was done to it on the trip.
        before: What it comes with from earlier trips.
        whose: Whether something was mended of which nobody knows whether it was this.
    """
    now = carried_on(before, _left(tows, events))
    took = [event.took / HOUR for event in events if event.took is not None]
    return NetFigures(
        towed_h=add_floats(_hours(tow) for tow in tows),
        tows=len(tows),
        foul_tows=sum(is_foul(tow) for tow in tows),
        fasts=sum(tow.fast is not None for tow in tows),
        damage=tuple(words for tow in tows for words in (tow.damage, tow.gear_lost) if words),
        time_lost_h=sum(took) if took else None,
        towed_h_since_mended=now.towed_h,
        tows_since_mended=now.tows,
        mended_at=now.mended_at,
        basis=_basis(tows, events, now, whose=whose),
    )


def _basis(tows: Sequence[Tow], events: Sequence[GearEvent], now: GearPast, *, whose: bool) -> Basis:
    words = []
    if now.mended_at is None:
        words.append(reasons.NEVER_MENDED)
    if any(event.at is None and event.event in _ANEW for event in events):
        words.append(reasons.MENDED_AT_NO_TIME)
    if whose:
        words.append(reasons.MENDED_NO_NET)
    if any(_hours(tow) is None for tow in tows):
        words.append(reasons.NO_HOURS)
    return (("towed_h_since_mended", "; ".join(words)),) if words else ()


def _hours(tow: Tow) -> float | None:
    towed = duration(tow)
    return towed / HOUR if towed is not None else None


def _after(tow: Tow, moment: datetime) -> bool:
    """Tell whether a tow was shot no earlier than a moment; one of no known shot time, whether it was hauled after it."""
    if tow.shot is not None:
        return tow.shot >= moment
    return tow.hauled is not None and tow.hauled > moment


def time_lost(periods: Iterable[Period]) -> ByName[float]:
    """Return hours lost by reason, each reason as it was first typed; a stretch without an end is left out."""
    names: dict[str, str] = {}
    hours: dict[str, float] = {}
    for period in periods:
        if period.start is not None and period.end is not None and period.end >= period.start:
            folded = fold_name(period.words)
            names.setdefault(folded, period.words)
            hours[folded] = hours.get(folded, 0.0) + (period.end - period.start) / HOUR
    return ByName((names[folded], lost) for folded, lost in hours.items())


def fasts_of(trip: Trip, trip_id: str) -> Iterator[FastMark]:
    """Give every place where gear came fast on a trip: the ship's position where it was typed, else the tow's track."""
    for order, tow in enumerate(trip.tows, 1):
        if tow.fast is None:
            continue
        ends = (tow.start, *tow.via, tow.end)
        yield FastMark(
            trip_id=trip_id,
            vessel=trip.vessel.name,
            tow=tow.no,
            order=order,
            when=tow.hauled or tow.shot,
            ground=tow.ground,
            depth_m=float(tow.depth.mean) if tow.depth is not None else None,
            what=tow.fast.what,
            at=tow.fast.at,
            track=() if tow.fast.at is not None else tuple(place for place in ends if place is not None),
        )
