"""Hail against out-turn, and how a vessel's hails lie beside the scale over its earlier trips.

The hail is the kept weight estimated aboard. A percentage is of the hail: whether a difference is within the law is for the rules
in force, which may name another base.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from decimal import Decimal

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.figures import SpeciesTotal
from logbook.model.fleet import Limits
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.out_turn import HailedGrade, HailedSpecies
from logbook.model.past import Past, Spread
from logbook.model.trip import OutTurn, Trip
from logbook.reckon.catch import NO_GRADE, add, key, kilograms, species_key
from logbook.reckon.gaps import numbers
from logbook.reckon.untold import untold

ENOUGH = 5
"""Earlier trips below which nothing is said of a vessel's hails."""


def reckon_out_turn(trip: Trip, catch: Mapping[str, SpeciesTotal], limits: Limits, past: Past) -> ByName[HailedSpecies]:
    """Return hail and out-turn of every species that was kept or landed, in the order of the catch.

    Args:
        trip: The trip as it stood.
        catch: What was kept, by species.
        limits: For the tolerance.
        past: For how the vessel's earlier hails lay beside the scale.
    """
    landed = weighed_species(trip)
    names = [name for name, total in catch.items() if total.kept_kg is not None or name in landed]
    names += [name for name in landed if name not in catch]
    gaps = _hail_gaps(trip)
    return ByName(
        (
            name,
            _species(
                catch.get(name), landed.get(name, ()), limits, past.out_turn_over_hail.get(name, Spread()), gaps(name)
            ),
        )
        for name in names
    )


def weighed_species(trip: Trip) -> dict[str, list[OutTurn]]:
    """Return the entries of all out-turns of a trip by species."""
    found: dict[str, list[OutTurn]] = {}
    for landing in trip.landings:
        for entry in landing.out_turn:
            found.setdefault(species_key(entry.species), []).append(entry)
    return found


def out_turn_over_hail(trip: Trip) -> dict[str, float]:
    """Return a trip's ratio of out-turn to hail for the species of which both are wholly known and the hail is not 0.

    A trip with a tow whose catch is not all told gives none: its hail is short by more than the eye.
    """
    ratios: dict[str, float] = {}
    gaps = _hail_gaps(trip)
    hailed = _hailed(trip)
    for name, entries in weighed_species(trip).items():
        hail, scale = add(hailed.get(name, ())), _weight(entries)
        if hail and scale is not None and not gaps(name) and not _unread(entries):
            ratios[name] = float(scale / hail)
    return ratios


def _hailed(trip: Trip) -> dict[str, list[Decimal | None]]:
    """Return the weights that were kept of each species."""
    weights: dict[str, list[Decimal | None]] = {}
    for tow in trip.tows:
        for amount in tow.catch:
            weights.setdefault(key(amount), []).append(kilograms(amount))
    return weights


def is_whole(hail: HailedSpecies) -> bool:
    """Tell whether neither hail nor out-turn leaves anything out."""
    return not any(name in {"hail_kg", "out_turn_kg"} for name, _ in hail.basis)


def _hail_gaps(trip: Trip) -> Callable[[str], tuple[str, ...]]:
    """Return what tells for a species what its hail leaves out, in words."""
    of_tows = [trip.tows[n].no for n in untold(trip.tows)]
    every: tuple[str, ...] = (reasons.WITHOUT_WHOLE_CATCH.format(which=numbers(of_tows)),) if of_tows else ()
    lost = len(trip.tows_lost)
    unread = reasons.WITHOUT_LOST_TOW if lost == 1 else reasons.WITHOUT_LOST_TOWS
    every += (unread.format(n=lost),) if lost else ()
    counted = {key(amount) for tow in trip.tows for amount in tow.catch if amount.weight is None}
    return lambda name: (*every, *((reasons.WITHOUT_COUNTED,) if name in counted else ()))


def _species(
    total: SpeciesTotal | None,
    entries: Sequence[OutTurn],
    limits: Limits,
    past: Spread,
    hail_gaps: Sequence[str],
) -> HailedSpecies:
    hail, scale = total.kept_kg if total is not None else None, _weight(entries)
    difference, percent = _difference(hail, scale)
    return HailedSpecies(
        hail_kg=hail,
        out_turn_kg=scale,
        difference_kg=difference,
        difference_percent=percent,
        within_tolerance=_within(hail, difference, limits),
        bias_percent=(past.middle - 1) * 100 if past.middle is not None else None,
        expected_out_turn_kg=_times(hail, past.middle),
        expected_low_kg=_times(hail, past.low),
        expected_high_kg=_times(hail, past.high),
        bias_trips=past.trips,
        grades=_grades(total, entries),
        basis=_basis(hail_gaps if hail is not None else (), _unread(entries), past.trips),
    )


def _basis(hail_gaps: Sequence[str], unread: int, trips: int) -> Basis:
    left_out = [("hail_kg", words) for words in hail_gaps]
    left_out += [("out_turn_kg", reasons.WITHOUT_ENTRIES.format(n=unread))] if unread else []
    few = trips < ENOUGH
    left_out += [("bias_percent", reasons.TOO_FEW_TRIPS.format(n=trips, enough=ENOUGH))] if few else []
    return tuple(left_out)


def _unread(entries: Iterable[OutTurn]) -> int:
    """Return how many entries have no weight that can be read."""
    return sum(entry.weight is None for entry in entries)


def _weight(entries: Iterable[OutTurn]) -> Decimal | None:
    return add(entry.weight.kilograms if entry.weight is not None else None for entry in entries)


def _difference(hail: Decimal | None, scale: Decimal | None) -> tuple[Decimal | None, float | None]:
    if hail is None or scale is None:
        return None, None
    return scale - hail, float((scale - hail) / hail * 100) if hail else None


def _within(hail: Decimal | None, difference: Decimal | None, limits: Limits) -> bool | None:
    """Tell whether a difference lies within the tolerance of the hail; exactly on the limit is within.

    Source:
        Regulation (EC) No 1224/2009 Art. 14 (10 %); that the base is the hail is this program's choice, and said.
    """
    if hail is None or difference is None:
        return None
    return abs(difference) * 100 <= limits.hail_tolerance * hail


def spread(ordered: Sequence[float]) -> Spread:
    """Return how the ratios of some trips lie; they are in order of size."""
    low, middle, high = _quarters(ordered)
    return Spread(trips=len(ordered), low=low, middle=middle, high=high)


def quartiles(ratios: Sequence[float]) -> tuple[float | None, float | None, float | None]:
    """Return the quartiles, ends included; None each for fewer than five."""
    return _quarters(sorted(ratios))


def _quarters(ordered: Sequence[float]) -> tuple[float | None, float | None, float | None]:
    if len(ordered) < ENOUGH:
        return None, None, None
    return _quarter(ordered, 1), _quarter(ordered, 2), _quarter(ordered, 3)


def _quarter(ordered: Sequence[float], n: int) -> float:
    """Return the n-th quartile, as `statistics.quantiles` has it, which takes a tenth of a build of one log to be loaded."""
    place, over = divmod(n * (len(ordered) - 1), 4)
    return (ordered[place] * (4 - over) + ordered[place + 1] * over) / 4


def _times(weight: Decimal | None, ratio: float | None) -> float | None:
    return float(weight) * ratio if weight is not None and ratio is not None else None


def _grades(total: SpeciesTotal | None, entries: Sequence[OutTurn]) -> ByName[HailedGrade]:
    """Return hail and out-turn by grade; empty where no grade was told."""
    hailed = {fold_name(grade): kept for grade, kept in total.grades.items()} if total is not None else {}
    scale: dict[str, list[OutTurn]] = {}
    for entry in entries:
        scale.setdefault(fold_name(entry.grade or NO_GRADE), []).append(entry)
    if not hailed and set(scale) <= {NO_GRADE}:
        return ByName()
    names = dict.fromkeys((*hailed, *scale))
    shown = {fold_name(grade): grade for grade in (total.grades if total is not None else ())}
    shown |= {name: parts[0].grade or NO_GRADE for name, parts in scale.items() if name not in shown}
    return ByName((shown[name], _grade(hailed.get(name), _weight(scale.get(name, ())))) for name in names)


def _grade(hail: Decimal | None, scale: Decimal | None) -> HailedGrade:
    difference, percent = _difference(hail, scale)
    return HailedGrade(hail_kg=hail, out_turn_kg=scale, difference_kg=difference, difference_percent=percent)
