"""Amounts of fish as people type them: `14 baskets`, `2 fish 41 kg`, `620 lb whole`.

Knows counts of fish and the states they are weighed in; the weight between them is left to `weight`.
"""

import re
from dataclasses import dataclass

from logbook.model.quantity import Weight
from logbook.model.species import State
from logbook.read.measures import Measures
from logbook.read.number import FIGURE, exact, near, parse_number, quoted, tidied
from logbook.read.said import Fault, Said, doubtful, wrong
from logbook.read.weight import parse_weight

CODES = frozenset({"fish-count", "state-unknown"})

_MAX_FISH = 1_000_000
_COUNT = re.compile(rf"({FIGURE}) ?fish(?:es)?\b ?,? ?", re.IGNORECASE)
_COUNT_AFTER = re.compile(rf" ?[ ,] ?\(?({FIGURE}) ?fish(?:es)?\)?$", re.IGNORECASE)
_WEIGHED = re.compile(rf"([+-]? ?{FIGURE}) ?([^0-9]*)")

_STATES: dict[str, State] = {state.value: state for state in State} | {
    "round": State("whole"),
    "ungutted": State("whole"),
    "gutted & headed": State("gutted and headed"),
    "headed and gutted": State("gutted and headed"),
    "headed & gutted": State("gutted and headed"),
    "wing": State("wings"),
    "tail": State("tails"),
    "fillet": State("fillets"),
}
_STATE = re.compile(
    rf"(?:^|(?<=[\w.]) ?[ ,] ?| ?,? ?\()({'|'.join(sorted(_STATES, key=len, reverse=True))})\)?$", re.IGNORECASE
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Amounted:
    """An amount of fish.

    Attributes:
        count: How many fish, where they were counted.
        weight: What they weigh, where that is known.
        state: The state they were weighed in, where it was typed.
    """

    count: int | None
    weight: Weight | None
    state: State | None


def parse_amount(text: str, measures: Measures, *, species: str | None, default_unit: str | None) -> Said[Amounted]:
    """Return an amount of fish: a count, a weight or both, with the state it was weighed in.

    Args:
        text: What was typed.
        measures: The fleet's units.
        species: Species weighed, for measures that differ by species.
        default_unit: Unit meant where none is typed; None where that is an error.

    Returns:
        A count alone gives no weight; a state that is none of the known ones is left out with a warning.
    """
    found: list[Fault] = []
    weight_only = parse_weight(text, measures, species=species, default_unit=default_unit)
    if weight_only.value is not None:
        return Said(Amounted(count=None, weight=weight_only.value, state=None), weight_only.faults)
    typed = exact(tidied(text), found)
    count, rest = _count(typed, found)
    if any(fault.code == "fish-count" for fault in found):
        return Said(None, tuple(found))
    words, state = _state(rest, measures, found)
    if count is not None and not words:
        return Said(Amounted(count=count, weight=None, state=state), tuple(found))
    if words == typed:
        return Said(None, weight_only.faults)
    said = parse_weight(words or rest, measures, species=species, default_unit=default_unit)
    found.extend(said.faults)
    amount = None if said.value is None else Amounted(count=count, weight=said.value, state=state)
    return Said(amount, tuple(found))


def _count(typed: str, found: list[Fault]) -> tuple[int | None, str]:
    """Return the count of fish in an amount, and the rest of it."""
    match = _COUNT.match(typed)
    if match is not None:
        rest = typed[match.end() :]
    else:
        match = _COUNT_AFTER.search(typed)
        if match is None:
            return None, typed
        rest = typed[: match.start()]
    number = parse_number(match[1]).value
    if number is None or number != int(number) or number > _MAX_FISH:
        message = f"{quoted(match[0].strip(' ,'))} is no count of fish"
        found.append(wrong("fish-count", message, "write a whole number, as 2 fish 41 kg"))
        return None, rest
    return int(number), rest


def _state(rest: str, measures: Measures, found: list[Fault]) -> tuple[str, State | None]:
    """Return the weight's part of an amount, and the state typed after it."""
    match = _STATE.search(rest)
    if match is not None:
        return rest[: match.start()], _STATES[match[1].casefold()]
    weighed = _WEIGHED.fullmatch(rest)
    if weighed is None:
        return rest, None
    words = weighed[2].split(" ")
    for n in range(len(words) - 1, 0, -1):
        unit = " ".join(words[:n]).rstrip(" ,.")
        if measures.name(unit) is not None:
            return f"{weighed[1]} {unit}", _misspelt(" ".join(words[n:]), found)
    if near(weighed[2], _STATES):
        return weighed[1], _misspelt(weighed[2], found)
    return rest, None


def _misspelt(words: str, found: list[Fault]) -> State | None:
    """Return the state that some words come nearest to, with a warning either way."""
    known = near(words.strip("()"), _STATES)
    if known:
        found.append(doubtful("state-unknown", f"{quoted(words)} is read as {known}", f"write {known}"))
        return _STATES[known]
    message = f"{quoted(words)} is no state of fish and is left out"
    found.append(doubtful("state-unknown", message, f"write {', '.join(state.value for state in State)}, or nothing"))
    return None
