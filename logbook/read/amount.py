"""Amounts of fish as people type them: `14 baskets`, `2 fish 41 kg`, `620 lb whole`.

Knows counts of fish and the states they are weighed in; the weight between them is left to `weight`.
"""

import re

from msgspec import Struct

from logbook.model.quantity import Weight
from logbook.model.species import State
from logbook.read.forms import form
from logbook.read.measures import Measures
from logbook.read.number import FIGURE, exact, near, parse_number, quoted, tidied
from logbook.read.said import Fault, Said, doubtful, wrong
from logbook.read.weight import common_weight, parse_weight

CODES = frozenset({"fish-count", "state-unknown"})

_MAX_FISH = 1_000_000
_MAX_TAIL = 40
_MAX_WORDS = 6
_COUNT = form(rf"({FIGURE}) ?fish(?:es)?\b ?,? ?", re.IGNORECASE)
_COUNT_AFTER = form(rf" ?[ ,] ?\(?({FIGURE}) ?fish(?:es)?\)?$", re.IGNORECASE)
_WEIGHED = form(rf"([+-]? ?{FIGURE}) ?([^0-9]*)")

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
_STATE = form(
    rf"(?:^|(?<=[\w.]) ?[ ,] ?| ?,? ?\()({'|'.join(sorted(_STATES, key=len, reverse=True))})\)?$", re.IGNORECASE
)


class Amounted(Struct, frozen=True, kw_only=True):
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
    common = common_weight(text, measures, species)
    if common is not None:
        return Said(Amounted(count=None, weight=common, state=None))
    found: list[Fault] = []
    before, rest = _count_before(exact(tidied(text), found))
    words, state = _state(rest, measures, found)
    after, words = (None, words) if before else _count_after(words)
    count = _whole(before or after, found)
    if count is None and (before or after):
        return Said(None, tuple(found))
    if count is not None and words and not any(c.isdecimal() for c in words):
        words, state = "", _misspelt(words, found)
    if count is not None and not words:
        return Said(Amounted(count=count, weight=None, state=state), tuple(found))
    said = parse_weight(words or rest, measures, species=species, default_unit=default_unit)
    amount = None if said.value is None else Amounted(count=count, weight=said.value, state=state)
    return Said(amount, (*found, *said.faults))


def _count_before(typed: str) -> tuple[str | None, str]:
    """Return the figure of a count that an amount begins with, and the rest."""
    match = _COUNT().match(typed)
    return (None, typed) if match is None else (match[1], typed[match.end() :])


def _count_after(typed: str) -> tuple[str | None, str]:
    """Return the figure of a count that an amount ends with, and what stands before it."""
    start = max(0, len(typed) - _MAX_TAIL)
    match = _COUNT_AFTER().search(typed, start)
    return (None, typed) if match is None else (match[1], typed[: match.start()])


def _whole(figure: str | None, found: list[Fault]) -> int | None:
    """Return a count of fish; None, with the reason found, where there is none or it is no whole number."""
    if figure is None:
        return None
    number = parse_number(figure).value
    if number is None or number != int(number) or number > _MAX_FISH:
        message = f"{quoted(figure)} is no count of fish"
        found.append(wrong("fish-count", message, "write a whole number, as 2 fish 41 kg"))
        return None
    return int(number)


def _state(rest: str, measures: Measures, found: list[Fault]) -> tuple[str, State | None]:
    """Return the weight's part of an amount, and the state typed after it."""
    match = _STATE().search(rest)
    if match is not None:
        return rest[: match.start()], _STATES[match[1].casefold()]
    weighed = _WEIGHED().fullmatch(rest)
    if weighed is None:
        return rest, None
    words = weighed[2].split(" ")
    for n in range(min(len(words) - 1, _MAX_WORDS), 0, -1):
        unit = " ".join(words[:n]).rstrip(" ,.")
        if measures.name(unit) is not None:
            return f"{weighed[1]} {unit}", _misspelt(" ".join(words[n:]), found)
    if measures.name(weighed[2]) is None and near(weighed[2], _STATES):
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
