"""Catches by species and grade: product weight, and live weight by published factors."""

from collections.abc import Iterable
from decimal import Decimal
from functools import lru_cache

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.figures import SpeciesCatch, SpeciesTotal
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.species import Factor, State
from logbook.model.trip import Amount, Tow

NO_GRADE = reasons.UNGRADED
"""What amounts go by that were given without a grade, where others of the species have one."""
_NOTHING = Decimal(0)
_WHOLE = State.WHOLE
_UNGRADED: ByName[Decimal | None] = ByName()


@lru_cache(maxsize=4096)
def species_key(name: str) -> str:
    """Return the name a species has in figures: as names are matched, so that two species never share a page."""
    return fold_name(name)


def key(amount: Amount) -> str:
    """Return the name an amount's species has in figures."""
    return species_key(amount.species)


def add(weights: Iterable[Decimal | None]) -> Decimal | None:
    """Return the sum of the weights that are known; None where none is."""
    total, known = _NOTHING, False
    for weight in weights:
        if weight is not None:
            total += weight
            known = True
    return total if known else None


def kilograms(amount: Amount) -> Decimal | None:
    """Return an amount's weight; None where only a count was given."""
    return amount.weight.kilograms if amount.weight is not None else None


def _factor(amount: Amount) -> Factor | None:
    """Return the factor that an amount's live weight is reckoned by; None where there is none.

    Source:
        Implementing Regulation (EU) No 404/2011 Annex XIII, or the authority that the fleet file states.
    """
    return amount.known.factor(amount.state) if amount.known is not None else None


def reckon_catch(tow: Tow) -> ByName[SpeciesCatch]:
    """Return what a tow caught, by species: what was kept, what was kept undersize, what was put back."""
    fate: dict[str, tuple[list[Amount], list[Amount], list[Amount]]] = {}
    for n, amounts in enumerate((tow.catch, tow.undersize, tow.put_back)):
        for amount in amounts:
            fate.setdefault(species_key(amount.species), ([], [], []))[n].append(amount)
    return ByName([(name, _species(*amounts)) for name, amounts in fate.items()])


def _species(kept: list[Amount], undersize: list[Amount], put_back: list[Amount]) -> SpeciesCatch:
    grades: list[str | None] = []
    weights: list[Decimal | None] = []
    lives: list[Decimal] = []
    factors: list[str] = []
    assumed: list[State] = []
    for amount in kept:
        weight, state = kilograms(amount), amount.state
        grades.append(amount.grade)
        weights.append(weight)
        factor = _factor(amount)
        if weight is None or factor is None or state is None:
            continue
        lives.append(weight * factor.value)
        if state is not _WHOLE:
            factors.append(str(factor))
        if not amount.state_typed:
            assumed.append(state)
    return SpeciesCatch(
        kept_kg=add(weights),
        put_back_kg=add(map(kilograms, put_back)) if put_back else None,
        undersize_kg=add(map(kilograms, undersize)) if undersize else None,
        live_kg=add(lives),
        grades=_grades(grades, weights),
        kept=bool(kept),
        basis=_reckoned_by(tuple(factors), tuple(assumed)) if factors else (),
    )


@lru_cache(maxsize=4096)
def _reckoned_by(factors: tuple[str, ...], assumed: tuple[State, ...]) -> Basis:
    """Return how a live weight was reckoned: by which factors, and of fish in which states that nobody typed."""
    words = [reasons.FROM_FACTORS.format(factors=", ".join(sorted(set(factors))))]
    words += [reasons.USUAL_STATE.format(states=", ".join(sorted({*assumed})))] if assumed else []
    return (("live_kg", "; ".join(words)),)


def _grades(grades: list[str | None], weights: list[Decimal | None]) -> ByName[Decimal | None]:
    """Return weights by grade; empty where none has one."""
    return _added(zip(grades, weights, strict=True)) if any(grades) else _UNGRADED


def _added(weights: Iterable[tuple[str | None, Decimal | None]]) -> ByName[Decimal | None]:
    """Return the sums of weights by grade; grades match whatever their case and are spelt as they first were."""
    parts: dict[str, tuple[str, list[Decimal | None]]] = {}
    for grade, weight in weights:
        shown = grade or NO_GRADE
        parts.setdefault(fold_name(shown), (shown, []))[1].append(weight)
    return ByName([(shown, add(own)) for shown, own in parts.values()])


def without_factor(tows: Iterable[Tow]) -> tuple[str, ...]:
    """Return the species, with their states, whose kept weight has no live weight because no factor is known."""
    missing = {
        f"{key(amount)} ({_and_offered(amount)})" if amount.state else key(amount)
        for tow in tows
        for amount in tow.catch
        if amount.weight is not None and _factor(amount) is None
    }
    return tuple(sorted(missing))


def _and_offered(amount: Amount) -> str:
    """Return an amount's state, with a national factor that the fleet file could state, if there is one."""
    offers = amount.known.offered if amount.known else ()
    offered = next((factor for state, factor in offers if state == amount.state), None)
    return f"{amount.state}" if offered is None else f"{amount.state}; {reasons.FACTOR_OFFERED.format(factor=offered)}"


def total_catch(
    caught: Iterable[ByName[SpeciesCatch]], kept_kg: Decimal | None, codes: dict[str, str | None]
) -> ByName[SpeciesTotal]:
    """Return the catch of all tows by species, the heaviest kept first, then by name.

    Args:
        caught: Each tow's catch.
        kept_kg: What was kept of all species, for the shares.
        codes: FAO code of each species' name.
    """
    parts: dict[str, list[SpeciesCatch]] = {}
    for tow in caught:
        for name, part in tow.items():
            parts.setdefault(name, []).append(part)
    totals = {name: _total(own, kept_kg, codes.get(name)) for name, own in parts.items()}
    return ByName(sorted(totals.items(), key=_heaviest))


def _heaviest(item: tuple[str, SpeciesTotal]) -> tuple[Decimal, str]:
    name, total = item
    return (Decimal(1) if total.kept_kg is None else -total.kept_kg), name


def _total(parts: list[SpeciesCatch], kept_kg: Decimal | None, code: str | None) -> SpeciesTotal:
    kept = add([part.kept_kg for part in parts])
    graded = [pair for part in parts for pair in part.grades.items()]
    plain = [(NO_GRADE, part.kept_kg) for part in parts if not part.grades and part.kept_kg is not None]
    ways = dict.fromkeys([way for part in parts for way in part.basis])
    return SpeciesTotal(
        code=code,
        kept_kg=kept,
        put_back_kg=add([part.put_back_kg for part in parts]),
        undersize_kg=add([part.undersize_kg for part in parts]),
        live_kg=add([part.live_kg for part in parts]),
        grades=_added([*graded, *plain]) if graded else ByName(),
        share_percent=float(kept / kept_kg * 100) if kept is not None and kept_kg else None,
        kept=any(part.kept for part in parts),
        basis=tuple(ways),
    )


def species_codes(tows: Iterable[Tow]) -> dict[str, str | None]:
    """Return the FAO code of every species in the tows by the name it has in figures."""
    known = {
        amount.species: amount.known
        for tow in tows
        for amounts in (tow.catch, tow.undersize, tow.put_back)
        for amount in amounts
    }
    return {species_key(name): entry.code if entry is not None else None for name, entry in known.items()}
