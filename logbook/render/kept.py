"""Fish that was kept, as the answers of the wheelhouse tell it: weighed, counted, by species."""

from collections.abc import Sequence
from decimal import Decimal
from itertools import groupby

from logbook.model.hail import FISH, HailedFish
from logbook.model.language import N_
from logbook.model.names import fold_name
from logbook.model.reasons import UNGRADED
from logbook.render import shown
from logbook.render.language import _, _n, speech
from logbook.render.shown import one_line
from logbook.render.text import bare

_SPECIES = 5
TOO_FEW = N_("fewer than 5 of her earlier trips tell hail and scale")
"""Why no out-turn is expected."""


def known_kg(fish: Sequence[HailedFish]) -> Decimal | None:
    """Return what fish weighs as far as it was weighed; None where none of it was."""
    known = [one.kept_kg for one in fish if one.kept_kg is not None]
    return sum(known, Decimal(0)) if known else None


def counted(fish: Sequence[HailedFish]) -> str:
    """Return `12 fish` for those that were counted and not weighed; nothing where there are none."""
    count = sum(amount.number for one in fish for amount in one.amounts if amount.unit == FISH)
    return counted_fish(count) if count else ""


def counted_fish(count: Decimal | int) -> str:
    """Return `12 fish`."""
    return _n("{n} fish", "{n} fish", int(count)).format(n=figure(count))


def figure(number: Decimal | int) -> str:
    """Return a number as typed, without noughts at the end that say nothing."""
    text = f"{number:f}"
    return text.rstrip("0").rstrip(".").replace(".", speech().decimal) if "." in text else text


def by_species(kept: Sequence[HailedFish], indent: str) -> list[tuple[str, ...]]:
    """Return a row for each species, what is the least of it put together in one."""
    species = [tuple(parts) for _name, parts in groupby(kept, key=lambda fish: fold_name(fish.species))]
    named = species if len(species) <= _SPECIES + 1 else species[:_SPECIES]
    rest = [fish for parts in species[len(named) :] for fish in parts]
    rows = [
        (f"{indent}{one_line(parts[0].species, 18)}", _amount(parts, " kg"), one_line(_grades(parts), 44))
        for parts in named
    ]
    others = indent + _("{n} others").format(n=len(species) - len(named))
    return [*rows, *([(others, _amount(rest, " kg"), "")] if rest else [])]


def _grades(parts: Sequence[HailedFish]) -> str:
    if not any(fish.grade for fish in parts):
        return ""
    return ", ".join(f"{one_line(fish.grade or _(UNGRADED), 14)} {_amount([fish], '')}" for fish in parts)


def _amount(fish: Sequence[HailedFish], unit: str) -> str:
    """Return what fish weighs, and how many of it were only counted."""
    weight, count = known_kg(fish), counted(fish)
    parts = [f"{bare(shown.kilograms(weight))}{unit}"] if weight is not None else []
    return " + ".join([*parts, *([count] if count else [])])
