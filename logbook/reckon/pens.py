"""What lies in each pen of the hold, since when, and how warm it is."""

from collections.abc import Iterator, Sequence
from datetime import datetime
from decimal import Decimal

from msgspec import Struct

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.figures import PenFigures
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.quantity import DAY, HOUR
from logbook.model.trip import Trip
from logbook.reckon.catch import add, kilograms
from logbook.reckon.curve import Curve
from logbook.reckon.gaps import numbers
from logbook.reckon.hold import pen_curves
from logbook.reckon.on_ice import earliest_up, may_be_aboard, usual_stowing
from logbook.reckon.standing import Standing
from logbook.reckon.together import sorted_together

_GRAM = Decimal("0.001")


class _Share(Struct, frozen=True, kw_only=True):
    """A share of fish that lies in a pen; `hauled_by` is what was assumed of when it was hauled."""

    pen: str
    kept_kg: Decimal | None
    on_ice: datetime | None
    hauled: datetime | None
    hauled_by: str
    tows: tuple[int, ...]


def reckon_pens(now: Standing) -> ByName[PenFigures]:
    """Return what lies in each pen: the vessel's pens in order, then others as they were first named.

    Where the tally tells where a tow's fish lies, the tow's own pens don't count; where it names no tows, no tow's do.
    """
    trip = now.trip
    shares = [*_tallied(now), *_by_tows(now)]
    names: dict[str, str] = {}
    by_reading = [pen for reading in trip.readings for pen, _ in reading.temperatures]
    by_landing = [pen for landing in trip.landings for pen, _ in landing.pens]
    for pen in (*(pen for pen, _ in trip.vessel.hold.pens), *(one.pen for one in shares), *by_reading, *by_landing):
        names.setdefault(fold_name(pen), pen)
    names.pop("", None)
    placed = all(one.pen for one in shares)
    curves = pen_curves(trip)
    lying: dict[str, list[_Share]] = {}
    for one in shares:
        lying.setdefault(fold_name(one.pen), []).append(one)
    return ByName(
        [
            (name, _pen(folded, lying.get(folded, ()), curves.get(folded), now, placed=placed))
            for folded, name in names.items()
        ]
    )


def _tallied(now: Standing) -> Iterator[_Share]:
    """Give what the tally tells of: as old as the first tow in it, or as stowing usually takes where it names none."""
    up = _earliest_up(now)
    usual = usual_stowing(now.trip.tows, now.as_of)
    took = now.fleet.assumed.to_stow if usual is None else usual
    for line in now.trip.stowage:
        known = [up[no] for no in line.tows if no in up]
        before = line.at - took if line.at is not None else None
        yield _Share(
            pen=line.pen,
            kept_kg=add(map(kilograms, line.fish)),
            on_ice=line.at,
            hauled=min(known, default=before),
            hauled_by="" if known else reasons.HAULED_BEFORE_STOWED.format(hours=f"{took / HOUR:.2g}"),
            tows=line.tows,
        )


def _earliest_up(now: Standing) -> dict[int, datetime]:
    """Return when the first fish in each tow's catch came up, by the tow's number."""
    tows = now.trip.tows
    up: dict[int, datetime] = {}
    for n, group in enumerate(sorted_together(tows)):
        up[tows[n].no] = min(earliest_up(now.trip, m) for m in (*group, n))
    return up


def _by_tows(now: Standing) -> Iterator[_Share]:
    """Give the fish of the tows that the tally does not tell of, shared evenly over their pens; with no pen, under no name."""
    trip = now.trip
    listed = {no for line in trip.stowage for no in line.tows}
    if any(not line.tows for line in trip.stowage):
        return
    aboard = may_be_aboard(trip.tows)
    for group in sorted_together(trip.tows):
        if not group or now.tows[group[-1]].kept_kg == 0 or now.tows[group[-1]].no in listed:
            continue
        if not any(aboard[n] for n in group):
            continue
        tow = now.tows[group[-1]]
        up = min(earliest_up(trip, n) for n in group)
        early = any(trip.tows[n].hauled is None for n in group)
        pens = tow.pens or ("",)
        for pen, part in zip(pens, _evenly(tow.kept_kg, len(pens)), strict=True):
            yield _Share(
                pen=pen,
                kept_kg=part,
                on_ice=tow.on_ice,
                hauled=up,
                hauled_by=reasons.HAULED_EARLY if early else "",
                tows=tuple(now.tows[n].no for n in group),
            )


def _evenly(kept: Decimal | None, parts: int) -> list[Decimal | None]:
    """Return a weight in parts that are equal to the gram and add up to it exactly."""
    if kept is None:
        return [None] * parts
    each = (kept / parts).quantize(_GRAM)
    return [*([each] * (parts - 1)), kept - each * (parts - 1)]


def _pen(folded: str, shares: Sequence[_Share], curve: Curve | None, now: Standing, *, placed: bool) -> PenFigures:
    capacity = next((room for pen, room in now.trip.vessel.hold.pens if fold_name(pen) == folded), None)
    kept = add(share.kept_kg for share in shares)
    if not shares and placed:
        kept = Decimal(0)
    on_ice = [share.on_ice for share in shares if share.on_ice is not None]
    hauled = [share.hauled for share in shares if share.hauled is not None]
    return PenFigures(
        kept_kg=kept,
        capacity_kg=capacity,
        full_percent=float(kept / capacity * 100) if kept is not None and capacity else None,
        first_on_ice=min(on_ice, default=None),
        last_on_ice=max(on_ice, default=None),
        oldest_ice_days=(now.as_of - min(hauled)) / DAY if hauled else None,
        tows=tuple(dict.fromkeys(no for share in shares for no in share.tows)),
        temperature_c=curve.celsius[-1] if curve is not None else None,
        out_turn_kg=_out_turn(now.trip, folded),
        basis=_basis(shares),
    )


def _basis(shares: Sequence[_Share]) -> Basis:
    """Return what the weight leaves out and what the age assumes."""
    unknown = [no for share in shares if share.kept_kg is None for no in share.tows]
    some = unknown and any(share.kept_kg is not None for share in shares)
    left_out = (("kept_kg", reasons.WITHOUT_CATCH.format(which=numbers(unknown))),) if some else ()
    words = dict.fromkeys(share.hauled_by for share in shares if share.hauled_by and share.hauled is not None)
    return (*left_out, *((("oldest_ice_days", "; ".join(words)),) if words else ()))


def _out_turn(trip: Trip, folded: str) -> Decimal | None:
    return add(
        weight.kilograms for landing in trip.landings for pen, weight in landing.pens if fold_name(pen) == folded
    )
