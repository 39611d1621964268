"""Wind and sea as people type them: `SW 6`, `SSW 5-6`, `calm`; sea state 0 to 9.

Knows the points of the compass and the codes of the World Meteorological Organization; words and knots are not read,
but the code that stands for them is told.
"""

import re
from bisect import bisect_right
from decimal import Decimal

from logbook.model.quantity import Wind
from logbook.read.forms import form
from logbook.read.number import quoted, tidied
from logbook.read.said import Fault, Said, wrong

CODES = frozenset({"sea-unreadable", "wind-no-force", "wind-range", "wind-unreadable"})

_POINTS = frozenset(
    ["N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"]
)
_VARIABLE = frozenset({"", "VARIABLE", "VAR", "VRB"})
_FORMS = "write a point and a force: SW 6, or calm"

_WIND = re.compile(
    r"(?P<point>(?!force|f ?[0-9]|bft|beaufort)[a-z][a-z.-]*(?: [a-z.-]+)*?)?,? ?"
    r"(?:(?:force|f|bft|beaufort) ?)?(?P<force>[0-9]{1,4})"
    r"(?: ?(?:-|/|to) ?(?P<higher>[0-9]{1,4}))?(?: ?(?:bft|beaufort))?",
    re.IGNORECASE,
)
_FORCE_FIRST = form(r"(?:force|f)? ?([0-9]{1,2}) ([a-z]+)", re.IGNORECASE)
_OTHER_SPEED = form(r"([a-z -]*?) ?([0-9]{1,3}(?:\.[0-9])?) ?(kn|kts?|knots?|m/s) ?([a-z]*)", re.IGNORECASE)
_WORDS = (("north", "N"), ("south", "S"), ("east", "E"), ("west", "W"), (".", ""), ("-", ""), (" ", ""))

_KNOTS = (1, 4, 7, 11, 17, 22, 28, 34, 41, 48, 56, 64)
"""Least whole knots of forces 1 to 12 (WMO No. 306, code table 1100)."""

_TENTHS = (3, 16, 34, 55, 80, 108, 139, 172, 208, 245, 285, 327)
"""Least tenths of a metre a second of the same."""

_NAMES = {
    "light air": 1,
    "light airs": 1,
    "light breeze": 2,
    "gentle breeze": 3,
    "moderate breeze": 4,
    "fresh breeze": 5,
    "strong breeze": 6,
    "near gale": 7,
    "gale": 8,
    "strong gale": 9,
    "storm": 10,
    "violent storm": 11,
    "hurricane": 12,
}
"""Names of the forces in the same table."""

_SEA = form(r"(?:sea ?)?(?:state ?)?([0-9]{1,4})(?: ?(?:-|/|to) ?([0-9]{1,4}))?", re.IGNORECASE)
_SEA_NAMES = {
    "glassy": "0",
    "calm": "0 where it is like glass, 1 where it is rippled",
    "rippled": "1",
    "smooth": "2",
    "slight": "3",
    "moderate": "4",
    "rough": "5",
    "very rough": "6",
    "high": "7",
    "very high": "8",
    "phenomenal": "9",
}
"""Names of the states of sea (WMO No. 306, code table 3700)."""


def parse_wind(text: str) -> Said[Wind]:
    """Return a wind; of two forces the higher counts, and a force alone has no point."""
    typed = tidied(text)
    if typed.casefold() == "calm":
        return Said(Wind(point="", force=0, typed=text.strip()))
    match = _WIND.fullmatch(typed)
    point = None if match is None else _point(match["point"] or "")
    if match is None or point is None:
        return Said(None, (_no_wind(text, typed),))
    force = max(int(match["force"]), int(match["higher"] or 0))
    if force > len(_KNOTS):
        return Said(
            None, (wrong("wind-range", f"{quoted(text)} is beyond force 12", "write the Beaufort force, 0 to 12"),)
        )
    return Said(Wind(point=point, force=force, typed=text.strip()))


def _point(typed: str) -> str | None:
    """Return a compass point as its letters; empty for none or a variable wind, None where there is no such point."""
    if typed.upper() in _POINTS:
        return typed.upper()
    word = typed.casefold()
    for long, short in _WORDS:
        word = word.replace(long, short)
    word = word.upper()
    return "" if word in _VARIABLE else word if word in _POINTS else None


def _no_wind(text: str, typed: str) -> Fault:
    """Return the fault of a text that is no wind, with the right form where it can be told."""
    if _point(typed):
        return wrong(
            "wind-no-force", f"{quoted(text)} has no force", f"write it with its Beaufort force: {_point(typed)} 6"
        )
    return wrong("wind-unreadable", f"{quoted(text)} is no wind", _wind_hint(typed))


def _wind_hint(typed: str) -> str:
    first = _FORCE_FIRST().fullmatch(typed)
    if first is not None and _point(first[2]):
        return f"write {_point(first[2])} {first[1]}"
    other = _OTHER_SPEED().fullmatch(typed)
    if other is not None:
        point = _point(other[1] or other[4])
        scale, each = (_TENTHS, 10) if other[3].casefold() == "m/s" else (_KNOTS, 1)
        force = bisect_right(scale, round(Decimal(other[2]) * each))
        return _FORMS if point is None else f"write {point} {force}".replace("  ", " ")
    head, _, tail = typed.partition(" ")
    for words, point in ((typed, ""), (tail, _point(head))):
        if point is not None and words.casefold() in _NAMES:
            return f"write {point} {_NAMES[words.casefold()]}".replace("  ", " ")
    return _FORMS


def parse_sea(text: str) -> Said[int]:
    """Return a state of sea, 0 to 9; of two the higher counts."""
    typed = tidied(text)
    match = _SEA().fullmatch(typed)
    if match is None:
        number = _SEA_NAMES.get(typed.casefold())
        hint = f"write {number}" if number else "write the state of the sea, 0 to 9"
        return Said(None, (wrong("sea-unreadable", f"{quoted(text)} is no state of sea", hint),))
    state = max(int(match[1]), int(match[2] or 0))
    if state > 9:  # noqa: PLR2004 - last code of the table
        return Said(None, (wrong("sea-unreadable", f"{quoted(text)} is no state of sea", "write 0 to 9"),))
    return Said(state)
