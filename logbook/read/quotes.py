"""Quotes in a log: where they close, and what is wrong in between.

Works on lines, sign by sign, as YAML does; knows nothing of what stands outside.
"""

import re

from msgspec import Struct, field

from logbook.read import explain
from logbook.read.explain import Why
from logbook.read.forms import form
from logbook.read.keyline import DASH, key_of

_ESCAPE = form(r"""[0abt\tnvfre "/\\N_LP]|x[0-9a-fA-F]{2}|u[0-9a-fA-F]{4}|U(?:0010|000[0-9a-fA-F])[0-9a-fA-F]{4}|$""")
_HALF = form(r"u[dD][89a-fA-F]|U0000[dD][89a-fA-F]")
_PAIR = form(r"\\u([dD][89abAB][0-9a-fA-F]{2})\\u([dD][c-fC-F][0-9a-fA-F]{2})")


class Fault(Struct):
    """Something wrong inside quotes or brackets.

    Attributes:
        line: Index of its line.
        column: Index of its sign.
        why: What it is.
        first: Index of the sign where what it spoils begins; -1 where it spoils the whole.
        last: Index behind the last sign of it.
    """

    line: int
    column: int
    why: Why
    first: int = -1
    last: int = -1


class Inside(Struct):
    """Where quotes or brackets end, and what is wrong with them.

    Attributes:
        line: Index of the line they end on.
        column: Index behind their last sign.
        closed: True where they were closed at all.
        faults: What is wrong with them.
        texts: Lone signs that stand for nothing written: index of line and sign.
        spare: Signs that say nothing and are best left out, in the same way.
        asked: Question marks within texts, in the same way; one of YAML's parsers takes them for its own.
    """

    line: int
    column: int
    closed: bool = True
    faults: list[Fault] = field(default_factory=list)
    texts: list[tuple[int, int]] = field(default_factory=list)
    spare: list[tuple[int, int]] = field(default_factory=list)
    asked: list[tuple[int, int]] = field(default_factory=list)

    @property
    def spoilt(self) -> Fault | None:
        """Return the first fault that spoils the whole."""
        return next((fault for fault in self.faults if fault.first < 0), None)


def joined_escapes(text: str) -> str:
    r"""Return a text whose letters written as two halves (`\ud83d\udc1f`) are the letters themselves."""
    return _PAIR().sub(_letter, text)


def _letter(match: re.Match[str]) -> str:
    high, low = (int(half, 16) for half in match.groups())
    return chr(0x10000 + ((high - 0xD800) << 10) + (low - 0xDC00))


def blanks(line: str) -> int:
    """Return how many spaces and tabs a line begins with."""
    return len(line) - len(line.lstrip(" \t"))


def is_entry(line: str) -> bool:
    """Tell whether a line looks like a key or an item, so that no text is meant to go on over it."""
    column = blanks(line)
    return DASH.match(line, column) is not None or key_of(line, column) is not None


def scan_quoted(lines: list[str], at: int, column: int, parent: int, lead: str = "") -> Inside:
    """Return where the quotes close that open here.

    Args:
        lines: Lines of the log.
        at: Index of the line.
        column: Index of the quote.
        parent: Column of what the text belongs to; lines that stand no deeper and look like entries are none of it.
        lead: What stands before it, for advice: a key with its colon, a dash, or nothing inside brackets.
    """
    sign, typed = lines[at][column], lines[at][column:]
    faults: list[Fault] = []
    number, index = at, column + 1
    while True:
        line = lines[number]
        end = _single(line, index) if sign == "'" else _double(line, index)
        if sign == '"' and not faults:
            faults += _wrong_escapes(line, index, len(line) if end < 0 else end, number, (lead, typed))
        if end >= 0:
            return Inside(number, end + 1, faults=faults)
        number += 1
        while number < len(lines) and not lines[number].strip():
            number += 1
        if number >= len(lines) or (blanks(lines[number]) <= parent and is_entry(lines[number])):
            why = explain.quote_open(sign, lead, typed[1:])
            return Inside(at, len(lines[at]), faults=[Fault(at, column, why)], closed=False)
        index = 0


def _single(line: str, index: int) -> int:
    """Return the index of the single quote that closes on a line, or -1; two of them are one in the text."""
    while (index := line.find("'", index)) >= 0:
        if line[index + 1 : index + 2] != "'":
            return index
        index += 2
    return -1


def _double(line: str, index: int) -> int:
    """Return the index of the double quote that closes on a line, or -1; a backslash takes the sign behind it."""
    while index < len(line):
        if line[index] == '"':
            return index
        index += 2 if line[index] == "\\" else 1
    return -1


def _wrong_escapes(line: str, index: int, end: int, number: int, advice: tuple[str, str]) -> list[Fault]:
    """Return the first backslash in double quotes that means nothing, as a list of at most one."""
    while 0 <= (index := line.find("\\", index)) < end:
        sign = line[index + 1 : index + 2]
        if _ESCAPE().match(line, index + 1) is None:
            return [Fault(number, index, explain.escape(sign, *advice))]
        if _HALF().match(line, index + 1):
            return [Fault(number, index, explain.half_letter())]
        index += 2
    return []
