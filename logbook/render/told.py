"""Sentences that came with the figures, said in the language of the page.

Records hold them in English, with their values put in. Here is found which sentence of `model.reasons` a text was made from and
what stands in it, so that the same is said as a translation has it. Sentences that were strung together are told one by one.
"""

import re
from collections.abc import Callable, Mapping
from functools import cache, lru_cache

from logbook.model import reasons
from logbook.model.species import State
from logbook.render.language import _, speech

_NUMBER = r"-?\d[\d.e+-]*"
_COUNT = r"\d+"
_RUNS = r"\d[\d, –]*"
_STATE = "|".join(sorted((re.escape(state) for state in State), key=len, reverse=True))
_FACTOR = rf"{_NUMBER} \((?:[^()]|\([^()]*\))*\)"
_LOOKS = {
    "degrees": _NUMBER,
    "enough": _COUNT,
    "factor": _FACTOR,
    "factors": f"{_FACTOR}(?:, {_FACTOR})*",
    "fish": _NUMBER,
    "hours": _NUMBER,
    "lines": f"lines? {_RUNS}(?: and {_COUNT} more)?",
    "n": _COUNT,
    "nos": _RUNS,
    "part": _NUMBER,
    "states": f"(?:{_STATE})(?:, (?:{_STATE}))*",
    "which": f"tows? {_RUNS}",
}
"""What stands in a sentence, by its name there; all else is words: typed ones, or a sentence."""

_STATE_OF_SPECIES = re.compile(rf"\(({_STATE})(?:; (.*?\)))?\)")
"""A state behind a species, with a factor that is offered for it."""


def told(text: str) -> str:
    """Return what a sentence says, or several strung together, in the language in force; a text that is none as it is."""
    found = _found(text)
    if found is not None:
        sentence, values = found
        return _(sentence).format(**{name: _SHOWN.get(name, str)(value) for name, value in values})
    first, apart, rest = text.partition("; ")
    if apart:
        return f"{told(first)}; {told(rest)}"
    first, apart, rest = text.partition(" or ")
    if apart and is_known(first):
        return _("{this} or {that}").format(this=told(first), that=told(rest))
    return text


def is_known(text: str) -> bool:
    """Tell whether a text was made from the sentences of `model.reasons`, all of it."""
    if _found(text) is not None:
        return True
    return any(
        is_known(first) and is_known(rest)
        for first, apart, rest in (text.partition("; "), text.partition(" or "))
        if apart
    )


@lru_cache(maxsize=4096)
def _found(text: str) -> tuple[str, tuple[tuple[str, str], ...]] | None:
    """Return the sentence that a text was made from, in English, and what stands in it by its names there."""
    plain, patterns = _sentences()
    if text in plain:
        return text, ()
    for sentence, pattern in patterns:
        match = pattern.fullmatch(text)
        if match is not None and is_known(match.groupdict().get("why", reasons.CARRIED)):
            return sentence, tuple(match.groupdict().items())
    return None


@cache
def _sentences() -> tuple[frozenset[str], tuple[tuple[str, re.Pattern[str]], ...]]:
    """Return the sentences that hold nothing, and the others with what finds them; those that hold anything at all last."""
    every = reasons.every()
    holding = sorted((one for one in every if "{" in one), key=lambda one: not set(_names(one)) <= _LOOKS.keys())
    return frozenset(one for one in every if "{" not in one), tuple((one, _pattern(one)) for one in holding)


def _names(sentence: str) -> list[str]:
    return re.findall(r"\{(\w+)\}", sentence)


def _pattern(sentence: str) -> re.Pattern[str]:
    parts = re.split(r"\{(\w+)\}", sentence)
    made = (re.escape(part) if n % 2 == 0 else f"(?P<{part}>{_LOOKS.get(part, '.+')})" for n, part in enumerate(parts))
    return re.compile("".join(made), re.DOTALL)


def _number(text: str) -> str:
    return text.replace(".", speech().decimal)


def _factors(text: str) -> str:
    """Return factors with the decimal mark of the language; whose figures they are is a name."""
    return re.sub(r"(^|, )(\d+)\.(\d+ \()", rf"\g<1>\g<2>{speech().decimal}\g<3>", text)


def _states(text: str) -> str:
    return ", ".join(_(state) for state in text.split(", "))


def _species(text: str) -> str:
    """Return species as they were typed, with their states and factors that are offered."""
    return _STATE_OF_SPECIES.sub(lambda one: f"({_(one[1])}; {told(one[2])})" if one[2] else f"({_(one[1])})", text)


_SHOWN: Mapping[str, Callable[[str], str]] = {
    "degrees": _number,
    "factor": _factors,
    "factors": _factors,
    "fish": _number,
    "hours": _number,
    "lines": told,
    "part": _number,
    "species": _species,
    "states": _states,
    "which": told,
    "why": told,
}
"""How what stands in a sentence is shown, by its name there; all else stands as it is."""
