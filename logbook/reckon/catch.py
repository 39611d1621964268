"""Catches by species and grade: product weight, and live weight by published factors."""

from collections.abc import Iterable
from decimal import Decimal

from logbook.model.figures import SpeciesCatch, SpeciesTotal
from logbook.model.named import ByName
from logbook.model.species import State
from logbook.model.trip import Amount, CatchKept, Tow

NO_GRADE = "ungraded"
"""What amounts go by that were given without a grade, where others of the species have one."""


def key(amount: Amount) -> str:
    """Return the name an amount's species has in figures: in lower case."""
    return amount.species.lower()


def add(weights: Iterable[Decimal | None]) -> Decimal | None:
    """Return the sum of the weights that are known; None where none is."""
    known = [weight for weight in weights if weight is not None]
    return sum(known, Decimal(0)) if known else None


def kilograms(amount: Amount) -> Decimal | None:
    """Return an amount's weight; None where only a count was given."""
    return amount.weight.kilograms if amount.weight is not None else None


def live(amount: Amount) -> Decimal | None:
    """Return an amount's live weight by the factor of its species and state; None where there is no such factor.

    Source:
        Implementing Regulation (EU) No 404/2011 Annex XIII, or the authority that the fleet file states.
    """
    weight = kilograms(amount)
    factor = amount.known.factor(amount.state) if amount.known is not None else None
    return weight * factor.value if weight is not None and factor is not None else None


def reckon_catch(tow: Tow) -> ByName[SpeciesCatch]:
    """Return what a tow caught, by species: what was kept, what was kept undersize, what was put back."""
    names = dict.fromkeys(key(amount) for amount in (*tow.catch, *tow.undersize, *tow.put_back))
    return ByName((name, _species(name, tow)) for name in names)


def _of(name: str, amounts: Iterable[Amount]) -> list[Amount]:
    return [amount for amount in amounts if key(amount) == name]


def _species(name: str, tow: Tow) -> SpeciesCatch:
    kept, undersize, put_back = (_of(name, amounts) for amounts in (tow.catch, tow.undersize, tow.put_back))
    factors = sorted({str(factor) for amount in kept if (factor := _factor(amount)) is not None})
    assumed = sorted({f"{a.state}" for a in kept if a.state is not None and not a.state_typed and live(a) is not None})
    words = f"reckoned: × {', '.join(factors)}" + (f"; usual state {', '.join(assumed)}" if assumed else "")
    return SpeciesCatch(
        kept_kg=add(map(kilograms, kept)),
        put_back_kg=add(map(kilograms, put_back)),
        undersize_kg=add(map(kilograms, undersize)),
        live_kg=add(map(live, kept)),
        grades=_grades(kept),
        basis=(("live_kg", words),) if factors else (),
    )


def _factor(amount: Amount) -> object | None:
    if amount.known is None or amount.weight is None or amount.state is State.WHOLE:
        return None
    return amount.known.factor(amount.state)


def _grades(kept: list[Amount]) -> ByName[Decimal | None]:
    """Return weights by grade; empty where no amount has one."""
    if not any(amount.grade for amount in kept):
        return ByName()
    names = dict.fromkeys(amount.grade or NO_GRADE for amount in kept)
    return ByName((name, add(kilograms(a) for a in kept if (a.grade or NO_GRADE) == name)) for name in names)


def without_factor(tows: Iterable[Tow]) -> tuple[str, ...]:
    """Return the species, with their states, whose kept weight has no live weight because no factor is known."""
    missing = {
        f"{key(amount)} ({_and_offered(amount)})" if amount.state else key(amount)
        for tow in tows
        for amount in tow.catch
        if amount.weight is not None and live(amount) is None
    }
    return tuple(sorted(missing))


def _and_offered(amount: Amount) -> str:
    """Return an amount's state, with a national factor that the fleet file could state, if there is one."""
    offers = amount.known.offered if amount.known else ()
    offered = next((factor for state, factor in offers if state == amount.state), None)
    return f"{amount.state}" if offered is None else f"{amount.state}; the fleet file could state {offered}"


def total_catch(
    caught: Iterable[ByName[SpeciesCatch]], kept_kg: Decimal | None, codes: dict[str, str | None]
) -> ByName[SpeciesTotal]:
    """Return the catch of all tows by species, the heaviest kept first, then by name.

    Args:
        caught: Each tow's catch.
        kept_kg: What was kept of all species, for the shares.
        codes: FAO code of each species' name.
    """
    tows = list(caught)
    names = {name for tow in tows for name in tow}
    totals = {name: _total([tow[name] for tow in tows if name in tow], kept_kg, codes.get(name)) for name in names}
    return ByName(sorted(totals.items(), key=lambda item: (-(item[1].kept_kg or Decimal(-1)), item[0])))


def _total(parts: list[SpeciesCatch], kept_kg: Decimal | None, code: str | None) -> SpeciesTotal:
    kept = add(part.kept_kg for part in parts)
    grades = dict.fromkeys(grade for part in parts for grade in part.grades)
    plain = add(part.kept_kg for part in parts if not part.grades)
    by_grade = {grade: add(part.grades.get(grade) for part in parts) for grade in grades}
    if grades and plain is not None:
        by_grade[NO_GRADE] = add((by_grade.get(NO_GRADE), plain))
    return SpeciesTotal(
        code=code,
        kept_kg=kept,
        put_back_kg=add(part.put_back_kg for part in parts),
        undersize_kg=add(part.undersize_kg for part in parts),
        live_kg=add(part.live_kg for part in parts),
        grades=ByName(by_grade.items()),
        share_percent=float(kept / kept_kg * 100) if kept is not None and kept_kg else None,
    )


def species_codes(tows: Iterable[Tow]) -> dict[str, str | None]:
    """Return the FAO code of every species in the tows by the name it has in figures."""
    amounts = (amount for tow in tows for amount in (*tow.catch, *tow.undersize, *tow.put_back))
    return {key(amount): amount.known.code if amount.known else None for amount in amounts}


def is_known(tow: Tow) -> bool:
    """Tell whether a log says what a tow caught, be it nothing."""
    return tow.kept in (CatchKept.KNOWN, CatchKept.NOTHING)
