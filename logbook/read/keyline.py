"""One line of a log: the key it begins with, and all that people type in place of a colon and a space."""

import re
from collections.abc import Callable
from functools import cache
from typing import NamedTuple

from logbook.read import explain, keys
from logbook.read.explain import Why
from logbook.read.forms import form

DASH = re.compile(r"-(?= |$)")
COLON = re.compile(r":(?= |$)")

TIMES = re.compile(r"[0-9]{1,2}:?[0-9]{2} ?-")
"""What a tow on one line begins with."""

_QUOTED_KEY = form(r"""(?P<key>'(?:[^']|'')*'|"(?:[^"\\]|\\.)*")\s*:(?= |$)""")
_COMMENT = re.compile(r"(?:^| )#")
_SPACES = re.compile(" *")
_QUOTES = frozenset("'\"")
_NO_KEY = frozenset(("", *" #[]{},&*!|>%@`"))
_MAX_KEY = 1024
"""YAML takes no longer keys."""

_WORD = r"[^\W\d](?:[\w .'()/-]{0,60}?[\w.')])?"
_ODD_COLON = form(rf"(?P<key>{_WORD})\s*(?P<sign>[\uff1a\ufe55\u2236\ua789])\s*(?P<value>.*)")
_NO_SPACE = form(rf"(?P<key>{_WORD})(?P<sign>(?<![0-9]):|:(?![0-9]))(?!//)(?P<value>\S.*)")
_OTHER_SIGN = form(rf"(?P<key>{_WORD}) *(?P<sign>[;=])(?P<value>.*)")
_NUMBER_NEXT = form(r"(?P<key>[^\W\d][^\d:;=,]{0,40}?)(?P<sign>) +(?P<value>[0-9].*)")
_ONLY_WORDS = form(rf"(?P<key>{_WORD})(?P<sign>)(?P<value>)")


class Keyed(NamedTuple):
    """A key with its colon.

    Attributes:
        key: The key as it would be typed again.
        value: Index where the value begins, or of the end of the line.
    """

    key: str
    value: int


class Otherwise(NamedTuple):
    """A key with something else than a colon and a space behind it.

    Attributes:
        key: The key.
        sign: What was typed in place of a colon; empty where nothing was.
        value: The value; empty where none stands on the line.
        at: Index of what stands behind the key.
        begins: Index where the value begins.
        why: What is wrong.
    """

    key: str
    sign: str
    value: str
    at: int
    begins: int
    why: Why


def indentation(line: str) -> int:
    """Return how many spaces a line begins with."""
    return len(line) - len(line.lstrip(" "))


def spaces(line: str, column: int) -> int:
    """Return how many spaces stand at a sign of a line and behind it."""
    found = _SPACES.match(line, column)
    return found.end() - column if found else 0


def without_comment(text: str) -> str:
    """Return a text up to the comment behind it."""
    found = _COMMENT.search(text)
    return text[: found.start()] if found else text


def has_value(line: str, begins: int) -> bool:
    """Tell whether a value stands at an index of a line, and not a comment or nothing."""
    return begins < len(line) and line[begins] != "#"


def key_of(line: str, column: int) -> Keyed | None:
    """Return the key that begins at a sign of a line, or None where there is none."""
    first = line[column : column + 1]
    if first in _QUOTES:
        found = _QUOTED_KEY().match(line, column, column + _MAX_KEY)
        key = found["key"] if found else ""
        behind = found.end() if found else 0
    else:
        colon = None if first in _NO_KEY else COLON.search(line, column, column + _MAX_KEY)
        key = line[column : colon.start()].rstrip() if colon else ""
        behind = colon.end() if colon else 0
        if key in ("-", "?") or key.startswith(("- ", "? ")) or " #" in key or ":{" in key or ":[" in key:
            return None
    if not key:
        return None
    return Keyed(key, behind + spaces(line, behind))


_OTHERWISE: tuple[tuple[Callable[[], re.Pattern[str]], Callable[[str, str, str], Why]], ...] = (
    (_ODD_COLON, explain.colon_odd),
    (_NO_SPACE, explain.no_space_after_colon),
    (_OTHER_SIGN, explain.no_colon),
    (_NUMBER_NEXT, explain.no_colon),
    (_ONLY_WORDS, explain.no_colon),
)


@cache
def _known() -> frozenset[str]:
    """Return every word that is a key anywhere in a log or a fleet file."""
    tables = (table for table in vars(keys).values() if isinstance(table, keys.Keys))
    return frozenset(word for table in tables for word in table.words())


def is_known(key: str) -> bool:
    """Tell whether a word is a key somewhere."""
    return keys.fold_key(key) in _known()


def key_typed_otherwise(line: str, column: int, *, heads: bool) -> Otherwise | None:
    """Return the key that someone meant who typed no colon and space behind it, or None where none is plain to see.

    Args:
        line: The line.
        column: Index where its text begins.
        heads: True where the lines below may be its value, so that bare words may be a key.
    """
    text = without_comment(line[column:]).rstrip()
    for pattern, why in _OTHERWISE:
        found = pattern().fullmatch(text)
        if found is not None and (heads or pattern is not _ONLY_WORDS):
            key, sign, value = found["key"], found["sign"], found["value"].strip()
            at, begins = column + found.end("key"), column + found.start("value")
            return Otherwise(key, sign, value, at, begins, why(sign, key, value))
    return None


def looks_keyed(line: str, column: int) -> bool:
    """Tell whether a line has a sign that someone typed in place of a colon and a space."""
    return any(pattern().fullmatch(line, column) for pattern in (_ODD_COLON, _NO_SPACE, _OTHER_SIGN))
