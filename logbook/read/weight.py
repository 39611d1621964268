"""Weights as people type them: `14 baskets`, `12 310 kg`, `1,2 t`.

Knows the forms; what a basket weighs is handed in as `Measures`. Counts and states of fish stand in `amount`, money for
weights in `money`.
"""

import re
from decimal import Decimal

from msgspec import Struct

from logbook.model.names import plural
from logbook.model.quantity import Kilograms, Weight
from logbook.read.forms import form
from logbook.read.measures import THOUSANDS, Measures
from logbook.read.number import FIGURE, better, exact, figure, is_nothing, near, quoted, tidied, too_long
from logbook.read.said import Fault, Said, wrong

__all__ = ["CODES", "Measures", "parse_weight"]

CODES = frozenset({"measure-without-weight", "no-unit", "weight-negative", "weight-range", "weight-unreadable"})

_MAX_KG = 10_000_000
_MAX_TURNED = 30
_COMMON = re.compile(r"([0-9]{1,7}|[0-9]{1,6}\.[0-9]{1,2}) ?([A-Za-z]+)")
_GENERAL = form(rf"([+-]?) ?({FIGURE}) ?(.*)", re.DOTALL)
_BACKWARDS = form(rf"([^\W\d]+)\.? ?({FIGURE})")
_NO_UNITS = {
    "ton": "write t for tonnes of 1000 kg; a long ton is 20 cwt",
    "tons": "write t for tonnes of 1000 kg; a long ton is 20 cwt",
    "g": "write it in kg",
}


class _Asked(Struct, frozen=True, kw_only=True):
    """What was typed where a weight is wanted, and all that bears on its reading."""

    text: str
    measures: Measures
    species: str | None
    default_unit: str | None

    def again(self, text: str) -> Said[Weight]:
        """Read another text in place of this one."""
        return parse_weight(text, self.measures, species=self.species, default_unit=self.default_unit)

    def unreadable(self, why: str, hint: str) -> Fault:
        """Return the fault of a text that is no weight."""
        return wrong("weight-unreadable", f"{quoted(self.text)} is {why}", hint)


def parse_weight(
    text: str, measures: Measures, *, species: str | None = None, default_unit: str | None = None
) -> Said[Weight]:
    """Return a weight.

    Args:
        text: What was typed.
        measures: The fleet's units.
        species: Species weighed, for measures that differ by species.
        default_unit: Unit meant where none is typed; None where that is an error.
    """
    common = common_weight(text, measures, species)
    if common is not None:
        return Said(common)
    found: list[Fault] = []
    asked = _Asked(text=text, measures=measures, species=species, default_unit=default_unit)
    weight = _nothing(asked) if is_nothing(text) else _careful(asked, found)
    return Said(weight, tuple(found))


def common_weight(text: str, measures: Measures, species: str | None) -> Weight | None:
    """Return a weight of the form that most have, a number and a unit without any marks; else None."""
    match = _COMMON.fullmatch(text)
    unit = None if match is None else measures.name(match[2])
    each = None if unit is None else measures.unit(unit, species)
    if match is None or unit is None or each is None:
        return None
    number = Decimal(match[1])
    kilograms = Kilograms(number * each)
    return Weight(kilograms=kilograms, number=number, unit=unit) if kilograms <= _MAX_KG else None


def _nothing(asked: _Asked) -> Weight:
    """Return a weight of nothing: it needs no unit."""
    unit = asked.measures.name(asked.default_unit) if asked.default_unit else None
    return Weight(kilograms=Kilograms(Decimal(0)), number=Decimal(0), unit=unit or "kg")


def _careful(asked: _Asked, found: list[Fault]) -> Weight | None:
    """Return a weight of any form, or say what is wrong with it."""
    typed = exact(tidied(asked.text), found)
    match = _GENERAL().fullmatch(typed)
    if match is None:
        found.append(_no_number(asked, typed))
        return None
    sign, digits, words = match.groups()
    endless = too_long(digits)
    if endless is not None:
        found.append(endless)
        return None
    unit = asked.measures.name(words.rstrip(". ") if words else asked.default_unit or "")
    if unit is None:
        found.append(_no_such_unit(asked, digits, words) if words else _no_unit(asked, digits))
        return None
    if sign == "-":
        found.append(wrong("weight-negative", f"{quoted(asked.text)} is below nothing", f"write {typed[1:].strip()}"))
        return None
    number = figure(digits, found, unit=words or asked.measures.many(unit), thousands=unit in THOUSANDS)
    return None if number is None else _weighed(asked, number, unit, found)


def _weighed(asked: _Asked, number: Decimal, unit: str, found: list[Fault]) -> Weight | None:
    """Return so many of a unit as a weight, if the fleet knows what one weighs and a vessel could carry it."""
    each = asked.measures.unit(unit, asked.species)
    if each is None:
        of = f" of {asked.species}" if asked.species else ""
        message = f"the fleet file does not say what one {unit}{of} weighs"
        found.append(wrong("measure-without-weight", message, f"write kg here, or add `{unit}: 40 kg` to its measures"))
        return None
    if number * each > _MAX_KG:
        message = f"{quoted(asked.text)} is more than any vessel carries"
        found.append(wrong("weight-range", message, "look at the figure and its unit"))
        return None
    return Weight(kilograms=Kilograms(number * each), number=number, unit=unit)


def _no_unit(asked: _Asked, digits: str) -> Fault:
    own = "".join(f" or {digits} {plural(name)}" for name in asked.measures.own[:1])
    return wrong("no-unit", f"{quoted(asked.text)} has no unit", f"write {digits} kg{own}, whichever is meant")


def _no_such_unit(asked: _Asked, digits: str, words: str) -> Fault:
    """Return what is wrong with the words after a number."""
    if words.startswith(("-", "to ")):
        return asked.unreadable("a range", "write one weight")
    if any(c.isdecimal() for c in words) or not words[0].isalpha():
        return _no_number(asked, tidied(asked.text))
    known = near(words, asked.measures.words)
    hint = f"write {digits} {known}" if known else _forms(asked.measures)
    hint = _NO_UNITS.get(words.rstrip(".").casefold(), hint)
    return asked.unreadable(f"no weight: {quoted(words)} is no unit of weight", hint)


def _no_number(asked: _Asked, typed: str) -> Fault:
    """Return the fault of a text that is no number with a unit, with the right form where it can be told."""
    backwards = _BACKWARDS().fullmatch(typed)
    if backwards is not None and len(typed) <= _MAX_TURNED and asked.measures.name(backwards[1]):
        return asked.unreadable("no weight", f"write {backwards[2]} {backwards[1]}")
    return asked.unreadable("no weight", better(typed, asked.again, _forms(asked.measures)))


def _forms(measures: Measures) -> str:
    return f"write a number and a unit: {', '.join(('kg', 't', 'lb', 'st', 'cwt', *measures.own))}"
