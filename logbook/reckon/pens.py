"""What lies in each pen of the hold, since when, and how warm it is."""

from collections.abc import Iterator, Sequence
from datetime import datetime
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import Basis, PenFigures
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.quantity import DAY
from logbook.model.trip import Trip
from logbook.reckon.catch import add, kilograms
from logbook.reckon.gaps import numbers
from logbook.reckon.hold import pen_curves
from logbook.reckon.standing import Standing
from logbook.reckon.together import sorted_together

_GRAM = Decimal("0.001")


class _Share(Struct, frozen=True, kw_only=True):
    """A share of fish that lies in a pen."""

    pen: str
    kept_kg: Decimal | None
    on_ice: datetime | None
    hauled: datetime | None
    tows: tuple[int, ...]


def reckon_pens(now: Standing) -> ByName[PenFigures]:
    """Return what lies in each pen: the vessel's pens in order, then others as they were first named.

    Where the tally tells where a tow's fish lies, the tow's own pens don't count; where it names no tows, no tow's do.
    """
    trip = now.trip
    shares = [*_tallied(trip), *_by_tows(now)]
    names: dict[str, str] = {}
    by_reading = [pen for reading in trip.readings for pen, _ in reading.temperatures]
    by_landing = [pen for landing in trip.landings for pen, _ in landing.pens]
    for pen in (*(pen for pen, _ in trip.vessel.hold.pens), *(one.pen for one in shares), *by_reading, *by_landing):
        names.setdefault(fold_name(pen), pen)
    names.pop("", None)
    placed = all(one.pen for one in shares)
    return ByName(
        (name, _pen(folded, [one for one in shares if fold_name(one.pen) == folded], now, placed=placed))
        for folded, name in names.items()
    )


def _tallied(trip: Trip) -> Iterator[_Share]:
    hauled = {tow.no: tow.hauled for tow in trip.tows}
    for line in trip.stowage:
        known = [time for time in (hauled.get(no) for no in line.tows) if time is not None]
        yield _Share(
            pen=line.pen,
            kept_kg=add(map(kilograms, line.fish)),
            on_ice=line.at,
            hauled=min(known, default=line.at),
            tows=line.tows,
        )


def _by_tows(now: Standing) -> Iterator[_Share]:
    """Give the fish of the tows that the tally does not tell of, shared evenly over their pens; with no pen, under no name."""
    trip = now.trip
    listed = {no for line in trip.stowage for no in line.tows}
    if any(not line.tows for line in trip.stowage):
        return
    for group in sorted_together(trip.tows):
        if not group or now.tows[group[-1]].kept_kg == 0 or now.tows[group[-1]].no in listed:
            continue
        tow = now.tows[group[-1]]
        times = [time for time in (now.tows[n].hauled for n in group) if time is not None]
        if not times:
            continue
        pens = tow.pens or ("",)
        every = tuple(now.tows[n].no for n in group)
        for pen, part in zip(pens, _evenly(tow.kept_kg, len(pens)), strict=True):
            yield _Share(pen=pen, kept_kg=part, on_ice=tow.on_ice, hauled=min(times), tows=every)


def _evenly(kept: Decimal | None, parts: int) -> list[Decimal | None]:
    """Return a weight in parts that are equal to the gram and add up to it exactly."""
    if kept is None:
        return [None] * parts
    each = (kept / parts).quantize(_GRAM)
    return [*([each] * (parts - 1)), kept - each * (parts - 1)]


def _pen(folded: str, shares: Sequence[_Share], now: Standing, *, placed: bool) -> PenFigures:
    capacity = next((room for pen, room in now.trip.vessel.hold.pens if fold_name(pen) == folded), None)
    kept = add(share.kept_kg for share in shares)
    if not shares and placed:
        kept = Decimal(0)
    on_ice = [share.on_ice for share in shares if share.on_ice is not None]
    hauled = [share.hauled for share in shares if share.hauled is not None]
    curve = pen_curves(now.trip).get(folded)
    return PenFigures(
        kept_kg=kept,
        capacity_kg=capacity,
        full_percent=float(kept / capacity * 100) if kept is not None and capacity else None,
        first_on_ice=min(on_ice, default=None),
        last_on_ice=max(on_ice, default=None),
        oldest_ice_days=(now.as_of - min(hauled)) / DAY if hauled else None,
        tows=tuple(dict.fromkeys(no for share in shares for no in share.tows)),
        temperature_c=curve[-1][1] if curve else None,
        out_turn_kg=_out_turn(now.trip, folded),
        basis=_left_out(shares),
    )


def _left_out(shares: Sequence[_Share]) -> Basis:
    unknown = [no for share in shares if share.kept_kg is None for no in share.tows]
    if not unknown or all(share.kept_kg is None for share in shares):
        return ()
    return (("kept_kg", f"without {numbers(unknown)}, catch not known"),)


def _out_turn(trip: Trip, folded: str) -> Decimal | None:
    return add(
        weight.kilograms for landing in trip.landings for pen, weight in landing.pens if fold_name(pen) == folded
    )
