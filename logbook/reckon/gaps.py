"""What the sums over a trip leave out, and why, in words."""

from collections.abc import Callable, Iterable, Iterator, Sequence

from logbook.model import reasons
from logbook.model.figures import TowFigures
from logbook.model.problem import Place
from logbook.model.runs import runs_of
from logbook.model.trip import CatchKept, Tow, Trip
from logbook.reckon.catch import kilograms, without_factor
from logbook.reckon.together import sorted_together, still_waiting

_LINES_SHOWN = 8

_Which = Callable[[Tow, TowFigures], bool]


def numbers(tows: Iterable[int]) -> str:
    """Return tow numbers as a person writes them: `tow 4`, `tows 2, 5–8`; one at least."""
    known = set(tows)
    return (reasons.TOWS if len(known) > 1 else reasons.TOW).format(nos=runs_of(known, "–"))


def incomplete(trip: Trip, left_out: Iterable[Tow], tows: Sequence[TowFigures]) -> Iterator[str]:
    """Give what the sums leave out, and why.

    Args:
        trip: The trip as it stood.
        left_out: Tows of a landed trip that are said to be later than its docking.
        tows: The figures of its tows, in order.
    """
    if trip.tows_lost:
        why = reasons.TOW_NOT_READ if len(trip.tows_lost) == 1 else reasons.TOWS_NOT_READ
        yield reasons.OF_LINES.format(lines=_lines(trip.tows_lost), why=why)
    late = [tow.no for tow in left_out]
    if late:
        yield reasons.OF_TOWS.format(which=numbers(late), why=reasons.AFTER_DOCKING)
    for why, which in _reasons(trip, tows):
        found = [tow.no for tow, figures in zip(trip.tows, tows, strict=True) if which(tow, figures)]
        if found:
            yield reasons.OF_TOWS.format(which=numbers(found), why=why)
    missing = without_factor(trip.tows)
    if missing:
        yield reasons.NO_FACTOR.format(species=", ".join(missing))


def _lines(places: Sequence[Place]) -> str:
    shown = ", ".join(str(place.line) for place in places[:_LINES_SHOWN])
    if len(places) > _LINES_SHOWN:
        return reasons.LINES_AND_MORE.format(nos=shown, n=len(places) - _LINES_SHOWN)
    return (reasons.LINE if len(places) == 1 else reasons.LINES).format(nos=shown)


def _reasons(trip: Trip, tows: Sequence[TowFigures]) -> tuple[tuple[str, _Which], ...]:
    """Return each reason to leave something out, and which tows it holds for."""
    last = trip.tows[-1] if trip.tows and not trip.landings else None
    waiting = still_waiting(trip.tows)
    lost = _lost_together(trip.tows)
    put_back = any(figures.put_back_kg is not None for figures in tows)
    distance = any(figures.distance_nm is not None for figures in tows)
    doors = any(figures.swept_doors_km2 is not None for figures in tows)
    return (
        (reasons.NO_CATCH, lambda tow, _: tow.kept is CatchKept.UNKNOWN and not (tow.hauled is None and tow is last)),
        (reasons.SORTED_WITH_UNKNOWN, lambda tow, _: tow in lost),
        (reasons.SORTED_WITH_NONE, lambda tow, _: tow in waiting),
        (reasons.STILL_DOWN, lambda tow, _: tow.hauled is None and tow is last),
        (reasons.NO_HAULED, lambda tow, _: tow.hauled is None and tow is not last),
        (reasons.NO_SHOT, lambda tow, _: tow.shot is None),
        (reasons.HAULED_BEFORE_SHOT, lambda tow, figures: figures.duration_h is None and _both(tow)),
        (reasons.CATCH_NOT_READ, lambda tow, _: tow.kept is CatchKept.UNREADABLE),
        (reasons.CATCH_PART_NOT_READ, lambda tow, _: bool(tow.catch_gaps) and tow.kept is CatchKept.KNOWN),
        (reasons.CATCH_PART_COUNTED, lambda tow, _: any(kilograms(fish) is None for fish in tow.catch)),
        (reasons.NO_PUT_BACK, lambda tow, _: put_back and tow.put_back_kept is CatchKept.UNKNOWN),
        (reasons.PUT_BACK_NOT_READ, lambda tow, _: tow.put_back_kept is CatchKept.UNREADABLE),
        (
            reasons.PUT_BACK_PART_COUNTED,
            lambda tow, _: any(kilograms(fish) is None for fish in tow.put_back),
        ),
        (reasons.NO_DISTANCE, lambda tow, figures: distance and figures.distance_nm is None and tow is not last),
        (
            reasons.NO_SPREAD,
            lambda _, figures: doors and figures.distance_nm is not None and figures.swept_doors_km2 is None,
        ),
    )


def _both(tow: Tow) -> bool:
    return tow.shot is not None and tow.hauled is not None


def _lost_together(tows: Sequence[Tow]) -> tuple[Tow, ...]:
    """Return the tows sorted with a later one of which the log does not say what it caught."""
    known = (CatchKept.KNOWN, CatchKept.NOTHING)
    return tuple(
        tows[n] for group in sorted_together(tows) if group and tows[group[-1]].kept not in known for n in group[:-1]
    )
