"""Sums over a trip, and what each of them leaves out."""

from collections.abc import Iterable, Sequence
from datetime import datetime
from decimal import Decimal
from itertools import pairwise

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.figures import Totals, TowFigures
from logbook.model.fleet import Hold
from logbook.model.quantity import DAY, HOUR
from logbook.model.trip import Tow, Trip
from logbook.reckon.catch import add
from logbook.reckon.gaps import incomplete, numbers


def add_floats(values: Iterable[float | None]) -> float | None:
    """Return the sum of the values that are known; None where none is."""
    known = [value for value in values if value is not None]
    return sum(known) if known else None


def reckon_totals(trip: Trip, left_out: Iterable[Tow], tows: Sequence[TowFigures], as_of: datetime) -> Totals:
    """Return the sums over a trip.

    Args:
        trip: The trip as it stood at `as_of`.
        left_out: Tows of a landed trip that are said to be later than its docking.
        tows: The figures of its tows, in order.
        as_of: Until when days at sea count.
    """
    kept = add(tow.kept_kg for tow in tows)
    shots = [tow.shot for tow in trip.tows if tow.shot is not None]
    hauls = [tow.hauled for tow in trip.tows if tow.hauled is not None]
    fishing = (max(hauls) - min(shots)) / DAY if shots and hauls and max(hauls) > min(shots) else None
    cycles = _cycles(trip.tows)
    assumed = [tow for tow in tows if tow.distance_by == "usual speed"]
    return Totals(
        tows=len(tows),
        foul_tows=sum(tow.foul for tow in tows),
        towed_h=add_floats(tow.duration_h for tow in tows),
        distance_nm=add_floats(tow.distance_nm for tow in tows),
        swept_doors_km2=add_floats(tow.swept_doors_km2 for tow in tows),
        swept_wings_km2=add_floats(tow.swept_wings_km2 for tow in tows),
        kept_kg=kept,
        put_back_kg=add(tow.put_back_kg for tow in tows),
        live_kg=add(tow.live_kg for tow in tows),
        kept_kg_per_h=catch_per_hour(tows),
        kept_kg_per_day=float(kept) / fishing if kept is not None and fishing else None,
        days_at_sea=(as_of - trip.sailed) / DAY if trip.sailed is not None and trip.sailed <= as_of else None,
        fishing_days=fishing,
        tows_per_day=len(tows) / fishing if fishing else None,
        mean_cycle_h=sum(cycles) / len(cycles) if cycles else None,
        hold_full_percent=_hold_full(trip, kept),
        incomplete=tuple(incomplete(trip, left_out, tows)),
        basis=_assumed_sums(assumed),
    )


def _assumed_sums(assumed: Sequence[TowFigures]) -> Basis:
    if not assumed:
        return ()
    words = reasons.USUAL_SPEED_OF.format(which=numbers(tow.no for tow in assumed))
    basis = [("distance_nm", words)]
    basis += [("swept_doors_km2", words)] if any(tow.swept_doors_km2 is not None for tow in assumed) else []
    basis += [("swept_wings_km2", words)] if any(tow.swept_wings_km2 is not None for tow in assumed) else []
    return tuple(basis)


def catch_per_hour(tows: Iterable[TowFigures]) -> float | None:
    """Return total kept over total hours, of the tows of which both are known; not a mean of ratios."""
    known = [(tow.kept_kg, tow.catch_h) for tow in tows if tow.kept_kg is not None and tow.catch_h]
    hours = sum(hours for _, hours in known if hours)
    return float(sum((kept for kept, _ in known if kept is not None), Decimal(0))) / hours if hours else None


def _cycles(tows: Iterable[Tow]) -> list[float]:
    """Return the hours from shot to next shot, where both are known."""
    return [
        (after.shot - before.shot) / HOUR
        for before, after in pairwise(tows)
        if before.shot is not None and after.shot is not None and after.shot >= before.shot
    ]


def room_kg(hold: Hold) -> float | None:
    """Return what the pens of a hold take; None where that of one is not known."""
    known = [capacity for _, capacity in hold.pens if capacity is not None]
    return float(sum(known, Decimal(0))) if known and len(known) == len(hold.pens) else None


def _hold_full(trip: Trip, kept: Decimal | None) -> float | None:
    room = room_kg(trip.vessel.hold)
    return float(kept) / room * 100 if kept is not None and room else None
