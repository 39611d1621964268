"""What hides in every corner of a record: files and lines in the places of entries, and positions typed into free words.

Fields that tell where a tow was are emptied one by one elsewhere; here is what no field's name tells of.
"""

import re
from collections.abc import Callable
from datetime import datetime, timedelta
from decimal import Decimal
from enum import Enum
from functools import cache, lru_cache
from operator import is_
from typing import Any, NewType, TypeVar, get_args, get_origin, get_type_hints

from msgspec import Struct
from msgspec.structs import replace

from logbook.model.course import Course
from logbook.model.fleet import Vessel
from logbook.model.named import ByName
from logbook.model.problem import Place
from logbook.model.quantity import Position, Span, Weight, Wind
from logbook.model.species import Species
from logbook.model.trip import Fast

T = TypeVar("T")

LEFT_OUT = "[position left out]"

_NOWHERE = Place(file="", line=1, column=1)
_PRIMES = "\u2032\u2019\u00b4"
_APART = r"[\s,;/]+"

_AS_THEY_ARE = frozenset(
    {
        type(None),
        bool,
        int,
        float,
        Decimal,
        datetime,
        timedelta,
        Position,
        Wind,
        Weight,
        Span,
        Fast,
        Vessel,
        Species,
        Course,
    }
)
"""Kinds that hold nothing to be scrubbed: no words, or such as everybody is shown, or such as are shown or not by themselves."""

_Word = Callable[[str], str]


def scrubbed(record: T, *, positions: bool) -> T:
    """Return a record in which no place names its file or line, and where positions are not shown no words tell one.

    A fast keeps its words and its position, which are shown or not by themselves.

    Args:
        record: Any record of the model, or what records hold.
        positions: Whether positions may be shown.
    """
    made: T = _scrub(record, _as_it_is if positions else without_positions)
    return made


@lru_cache(maxsize=8192)
def without_positions(text: str) -> str:
    """Return words with every position in them replaced by the words that one was left out."""
    if not any(sign.isdigit() for sign in text):
        return text
    return _pattern().sub(LEFT_OUT, text)


def _as_it_is(text: str) -> str:
    return text


def _scrub(value: Any, word: _Word) -> Any:  # noqa: ANN401 - it goes through records of every kind
    """Return a value without what it should not tell; the same one where there is nothing of it in it."""
    kind = type(value)
    if kind is str:
        return word(value)
    if kind in _AS_THEY_ARE:
        return value
    if kind is tuple:
        # Most of what stands in tuples are words and what holds none: they cost no call of this.
        made = tuple(
            [
                word(one) if type(one) is str else one if type(one) in _AS_THEY_ARE else _scrub(one, word)
                for one in value
            ]
        )
        return value if all(map(is_, made, value)) else made
    if kind is ByName:
        names, held = tuple(map(word, value)), tuple([_scrub(one, word) for one in value.values()])
        same = all(map(is_, names, value)) and all(map(is_, held, value.values()))
        return value if same else ByName(zip(names, held, strict=True))
    if kind is Place:
        return value if value == _NOWHERE else _NOWHERE
    return _struct(value, word) if isinstance(value, Struct) else value


def _struct(record: Struct, word: _Word) -> Struct:
    changed = {}
    for name in _looked_at(type(record), words=word is not _as_it_is):
        old = getattr(record, name)
        # Most fields hold nothing, and a fleet's logs have millions of them: they cost no call.
        if type(old) in _AS_THEY_ARE or old == ():
            continue
        new = word(old) if type(old) is str else _scrub(old, word)
        if new is not old:
            changed[name] = new
    return replace(record, **changed) if changed else record


@cache
def _looked_at(kind: type[Struct], *, words: bool) -> tuple[str, ...]:
    """Return the fields of a kind of record in which there may be places, and where `words` are looked through, words."""
    return tuple(name for name, held in get_type_hints(kind).items() if _may_hold(held, (), words=words))


def _may_hold(kind: Any, within: tuple[type, ...], *, words: bool) -> bool:  # noqa: ANN401 - what stands behind a field's name
    """Tell whether there may be any in what a field holds; `within` are the kinds of record that it stands in."""
    if kind in _AS_THEY_ARE or kind is Ellipsis or kind in within:
        return False
    if kind is Place:
        return True
    if kind is str or (words and get_origin(kind) is ByName):
        return words
    if isinstance(kind, NewType):
        return _may_hold(kind.__supertype__, within, words=words)
    parts = get_args(kind)
    if isinstance(kind, type) and issubclass(kind, Struct):
        parts, within = tuple(get_type_hints(kind).values()), (*within, kind)
    return any(_may_hold(part, within, words=words) for part in parts) if parts else not _is_closed(kind)


def _is_closed(kind: object) -> bool:
    """Tell whether a kind is one of a closed set of words."""
    return isinstance(kind, type) and issubclass(kind, Enum)


@lru_cache(maxsize=1)
def _pattern() -> re.Pattern[str]:
    """Return what latitudes and longitudes look like in words.

    Degrees and minutes with a letter, with the sign of a degree, or two together with tenths of a minute; decimal degrees with a
    letter, or two together to three places.
    """
    before, after = r"(?<![^\W\d])[NSEW]", r"[NSEW](?![^\W\d])"
    tenths = r"[.,]\d+"
    minutes = rf"\d{{1,2}}(?:{tenths})?(?:\s*['{_PRIMES}])?"
    seconds = rf"\s*-?\s*\d{{1,2}}(?:{tenths})?\s*(?:[\"″”]|(?=\s*{after}))"
    parting = r"(?:\s*[°º]\s*|\s+|-)"
    typed = rf"\d{{2,3}}{parting}{minutes}(?:{seconds})?|\d{parting}\d{{1,2}}{tenths}"
    bare = rf"\d{{1,3}}(?:\s+|-)\d{{1,2}}{tenths}"
    decimal = r"[-+]?\d{1,3}\.\d{2,}(?:\s*°)?"
    exact = r"[-+]?\d{1,3}\.\d{3,}(?:\s*°)?"
    one = (
        rf"(?:{typed}|{decimal})\s*{after}|{before}\s*(?:{typed}|{decimal})(?![\d.])"
        rf"|\d{{1,3}}\s*°\s*{minutes}|{bare}{_APART}{bare}|{exact}{_APART}{exact}"
    )
    return re.compile(rf"(?<![\d.])(?:{one})(?:{_APART}(?:{one}))*", re.IGNORECASE)
