"""Sums over a trip, and what each of them leaves out."""

from collections.abc import Callable, Iterable, Sequence
from datetime import datetime
from decimal import Decimal
from itertools import pairwise

from logbook.model.figures import Basis, Totals, TowFigures
from logbook.model.quantity import DAY, HOUR
from logbook.model.trip import CatchKept, Tow, Trip
from logbook.reckon.catch import add, kilograms, without_factor


def add_floats(values: Iterable[float | None]) -> float | None:
    """Return the sum of the values that are known; None where none is."""
    known = [value for value in values if value is not None]
    return sum(known) if known else None


def numbers(tows: Iterable[int]) -> str:
    """Return tow numbers as a person writes them: `tow 4`, `tows 2, 5–8`."""
    runs: list[list[int]] = []
    for no in sorted(set(tows)):
        if runs and no == runs[-1][-1] + 1:
            runs[-1].append(no)
        else:
            runs.append([no])
    words = [f"{run[0]}–{run[-1]}" if len(run) > 1 else f"{run[0]}" for run in runs]
    several = len(runs) > 1 or len(runs[0]) > 1
    return f"{'tows' if several else 'tow'} {', '.join(words)}"


def reckon_totals(trip: Trip, tows: Sequence[TowFigures], as_of: datetime) -> Totals:
    """Return the sums over a trip.

    Args:
        trip: The trip as it stood at `as_of`.
        tows: The figures of its tows, in order.
        as_of: Until when days at sea count.
    """
    kept = add(tow.kept_kg for tow in tows)
    known_h = _known_hours(trip.tows, tows)
    shots = [tow.shot for tow in trip.tows if tow.shot is not None]
    hauls = [tow.hauled for tow in trip.tows if tow.hauled is not None]
    fishing = (max(hauls) - min(shots)) / DAY if shots and hauls and max(hauls) > min(shots) else None
    cycles = [(after - before) / HOUR for before, after in pairwise(shots)]
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
        kept_kg_per_h=float(kept) / known_h if kept is not None and known_h else None,
        kept_kg_per_day=float(kept) / fishing if kept is not None and fishing else None,
        days_at_sea=(as_of - trip.sailed) / DAY if trip.sailed is not None else None,
        fishing_days=fishing,
        tows_per_day=len(tows) / fishing if fishing else None,
        mean_cycle_h=sum(cycles) / len(cycles) if cycles else None,
        hold_full_percent=_hold_full(trip, kept),
        incomplete=tuple(_incomplete(trip, tows)),
        basis=_assumed_sums(assumed),
    )


def _assumed_sums(assumed: Sequence[TowFigures]) -> Basis:
    if not assumed:
        return ()
    words = f"assumed: usual speed for {numbers(tow.no for tow in assumed)}"
    basis = [("distance_nm", words)]
    basis += [("swept_doors_km2", words)] if any(tow.swept_doors_km2 is not None for tow in assumed) else []
    basis += [("swept_wings_km2", words)] if any(tow.swept_wings_km2 is not None for tow in assumed) else []
    return tuple(basis)


def _known_hours(log: Sequence[Tow], tows: Sequence[TowFigures]) -> float:
    """Return the hours of the tows whose catch is known; of those sorted with a known one, too."""
    hours = waiting = 0.0
    for tow, figures in zip(log, tows, strict=True):
        here = figures.duration_h or 0.0
        if tow.kept is CatchKept.NEXT:
            waiting += here
            continue
        if figures.kept_kg is not None:
            hours += here + waiting
        waiting = 0.0
    return hours


def _hold_full(trip: Trip, kept: Decimal | None) -> float | None:
    room = [capacity for _, capacity in trip.vessel.hold.pens]
    if kept is None or not room or any(capacity is None for capacity in room):
        return None
    whole = sum((capacity for capacity in room if capacity is not None), Decimal(0))
    return float(kept / whole * 100) if whole else None


def _incomplete(trip: Trip, tows: Sequence[TowFigures]) -> Iterable[str]:
    """Give what the sums leave out, and why."""
    if trip.tows_lost:
        lines = ", ".join(str(place.line) for place in trip.tows_lost)
        yield f"line {lines}: a tow that can't be read"

    def those(which: Callable[[Tow, TowFigures], bool]) -> list[int]:
        return [tow.no for tow, figures in zip(trip.tows, tows, strict=True) if which(tow, figures)]

    reasons: tuple[tuple[str, Callable[[Tow, TowFigures], bool]], ...] = (
        ("catch not logged", lambda tow, _: tow.kept is CatchKept.UNKNOWN and tow.hauled is not None),
        ("gear still down", lambda tow, _: tow.hauled is None and tow is trip.tows[-1] and not trip.landings),
        ("no hauled time", lambda tow, _: tow.hauled is None and not (tow is trip.tows[-1] and not trip.landings)),
        ("no shot time", lambda tow, _: tow.shot is None),
        ("catch can't be read", lambda tow, _: tow.kept is CatchKept.UNREADABLE),
        ("part of the catch can't be read", lambda tow, _: bool(tow.catch_gaps) and tow.kept is CatchKept.KNOWN),
        (
            "part of the catch counted, not weighed",
            lambda tow, _: any(kilograms(amount) is None for amount in tow.catch),
        ),
        ("no distance", lambda _, figures: figures.distance_nm is None),
    )
    for why, which in reasons:
        found = those(which)
        if found:
            yield f"{numbers(found)}: {why}"
    if trip.tows and trip.tows[-1].kept is CatchKept.NEXT:
        yield f"{numbers([trip.tows[-1].no])}: sorted with a next tow that is not there"
    missing = without_factor(trip.tows)
    if missing:
        yield f"live weight without {', '.join(missing)}: no published factor"
