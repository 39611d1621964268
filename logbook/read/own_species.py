"""The species entries of a fleet file: the program's own list, with the fleet's added or put in their place."""

import re
from decimal import Decimal

from msgspec.structs import replace

from logbook.model.names import fold_name
from logbook.model.species import Alias, Factor, Species, State
from logbook.read.fields import (
    Found,
    error,
    items_of,
    mappings_of,
    open_mapping,
    pairs_of,
    take,
    take_choice,
    take_text,
    take_words,
    warn,
)
from logbook.read.keys import SPECIES, fold_key
from logbook.read.number import parse_number
from logbook.read.tree import Lost, Mapping, Node, Scalar

CODES = frozenset({"factor-authority", "factor-range", "state-unknown", "alias-unreadable", "species-name-twice"})

_YEAR = re.compile(r"\s*\b([12]\d{3})\b\s*$", re.ASCII)
_STATES = tuple(State)
_FACTOR_MOST = Decimal(10)


def take_species(node: Node | None, listed: tuple[Species, ...], found: Found) -> tuple[Species, ...]:
    """Return the species a fleet goes by: its own entries first, then those of the program's list it leaves alone.

    An entry that has the name or code of one on the list takes its place and keeps what it doesn't say anew.

    Args:
        node: The list of the fleet file.
        listed: The program's own species.
        found: Problems so far.
    """
    by_name = {fold_name(name): species for species in listed for name in (species.name, species.code or species.name)}
    own: list[Species] = []
    replaced: set[str] = set()
    seen: dict[str, int] = {}
    for item in mappings_of(node, found, "the species"):
        entry = _entry(item, by_name, found)
        if entry is None:
            continue
        species, base = entry
        name = fold_name(species.name)
        if name in seen:
            error(
                found,
                item.place,
                "species-name-twice",
                f"{species.name} stands twice, first on line {seen[name]}; this one is not used",
            )
            continue
        seen[name] = item.line
        own.append(species)
        if base is not None:
            replaced.add(base.name)
    return tuple(own) + tuple(species for species in listed if species.name not in replaced)


def _entry(node: Mapping, by_name: dict[str, Species], found: Found) -> tuple[Species, Species | None] | None:
    """Return a fleet's species and the one of the list it takes the place of, if any."""
    fields = open_mapping(node, SPECIES, found)
    get = fields.get
    name = take_words(get("name"), found)
    if name is None:
        return None
    code = take_text(get("code"), found)
    base = by_name.get(fold_name(name)) or by_name.get(fold_name(code or name))
    start = (
        base
        if base is not None
        else Species(name=name, code=None, scientific=None, also=(), usual_state=None, factors=(), offered=())
    )
    state = take_choice(get("usual state"), tuple(str(s) for s in _STATES), found)
    factors = dict(start.factors) | dict(_factors(get("factors"), found))
    other_name = (
        (Alias(name=start.name, grade=None),) if base is not None and fold_name(base.name) != fold_name(name) else ()
    )
    species = replace(
        start,
        name=name,
        code=code.upper() if code else start.code,
        also=_aliases(get("also"), found) + other_name + start.also,
        usual_state=State(state) if state else start.usual_state,
        grades=_grades(get("grades"), found) or start.grades,
        factors=tuple(factors.items()),
    )
    return species, base


def _aliases(node: Node | None, found: Found) -> tuple[Alias, ...]:
    """Return other names; `{codling: small}` is one that carries a grade."""
    aliases: list[Alias] = []
    nodes = (node,) if isinstance(node, Scalar) else items_of(node, found, "other names")
    for item in nodes:
        if isinstance(item, Scalar):
            aliases.append(Alias(name=item.value.strip(), grade=None))
        elif isinstance(item, Mapping):
            for key, value in item.entries:
                aliases.append(Alias(name=key.value.strip(), grade=take_words(value, found)))
        elif not isinstance(item, Lost):
            hint = "write [keeling, {codling: small}]"
            error(found, item.place, "alias-unreadable", "a list stands where another name is wanted", hint)
    return tuple(aliases)


def _grades(node: Node | None, found: Found) -> tuple[str, ...]:
    nodes = (node,) if isinstance(node, Scalar) else items_of(node, found, "grades")
    taken = (take_text(item, found) for item in nodes)
    return tuple(grade for grade in taken if grade is not None)


def _factors(node: Node | None, found: Found) -> tuple[tuple[State, Factor], ...]:
    """Return states and factors; they stand with an authority, or a warning says that they should."""
    pairs = pairs_of(node, found, "factors")
    words = next((take_words(value, found) for key, value in pairs if fold_key(key.value) == "authority"), None)
    if pairs and node is not None and words is None:
        hint = "add `authority: Norway 2000`, or whose figures they are"
        warn(found, node.place, "factor-authority", "these factors name no authority", hint)
    year = _YEAR.search(words) if words else None
    authority = _YEAR.sub("", words) if words else "the fleet file"
    factors: list[tuple[State, Factor]] = []
    for key, value in pairs:
        if fold_key(key.value) == "authority":
            continue
        state = next((s for s in _STATES if fold_key(s) == fold_key(key.value)), None)
        if state is None:
            hint = f"a state is {', '.join(_STATES)}"
            error(found, key.place, "state-unknown", f"'{key.value}' is no state of fish", hint)
            continue
        number = take(value, parse_number, found, "a factor")
        if number is not None and not 1 <= number <= _FACTOR_MOST:
            hint = "a factor to live weight is 1 or more"
            error(found, value.place, "factor-range", f"{number} is no factor to live weight", hint)
        elif number is not None:
            factors.append((state, Factor(value=number, authority=authority, year=int(year[1]) if year else None)))
    return tuple(factors)
