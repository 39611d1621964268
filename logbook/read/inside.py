"""What stands inside quotes and brackets: where it ends, and what is wrong in between.

Works on lines, sign by sign, as YAML does; knows nothing of what stands outside.
"""

import re
from dataclasses import dataclass, field

from logbook.read import explain
from logbook.read.explain import Why
from logbook.read.forms import form
from logbook.read.keyline import DASH, indentation, key_of

MAX_DEPTH = 20
MAX_FAULTS = 100

ESCAPES = frozenset('0abt\tnvfe "/\\N_LPxuU')
_HEX = {"x": 2, "u": 4, "U": 8}
_SURROGATE = form(r"\\u[dD][89a-fA-F][0-9a-fA-F]{2}")
_PAIR = form(r"\\u([dD][89abAB][0-9a-fA-F]{2})\\u([dD][c-fC-F][0-9a-fA-F]{2})")
_TOKEN_END = form(r"[,\[\]{}]|$")
_TEXT_START = frozenset("*&!|>%@`")
_AFTER_COLON = frozenset(("", " ", ",", "[", "]", "{", "}"))


@dataclass(slots=True)
class Fault:
    """Something wrong inside.

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


@dataclass(slots=True)
class Inside:
    """Where something ends, and what is wrong with it.

    Attributes:
        line: Index of the line it ends on.
        column: Index behind its last sign.
        faults: What is wrong with it.
        closed: True where it was closed at all.
        texts: Lone signs that stand for nothing written: index of line and sign.
        spare: Signs that say nothing and are best left out, in the same way.
    """

    line: int
    column: int
    closed: bool = True
    faults: list[Fault] = field(default_factory=list)
    texts: list[tuple[int, int]] = field(default_factory=list)
    spare: list[tuple[int, int]] = field(default_factory=list)

    @property
    def spoilt(self) -> Fault | None:
        """Return the first fault that spoils the whole."""
        return next((fault for fault in self.faults if fault.first < 0), None)


def joined_escapes(line: str) -> str:
    r"""Return a line whose letters written as two halves (`\ud83d\udc1f`) are the letters themselves."""
    return _PAIR().sub(_letter, line)


def _letter(match: re.Match[str]) -> str:
    high, low = (int(half, 16) for half in match.groups())
    return chr(0x10000 + ((high - 0xD800) << 10) + (low - 0xDC00))


def _is_entry(line: str) -> bool:
    """Tell whether a line looks like a key or an item, so that no text is meant to go on over it."""
    column = indentation(line)
    return DASH.match(line, column) is not None or key_of(line, column) is not None


def scan_quoted(lines: list[str], at: int, column: int, parent: int, lead: str = "") -> Inside:
    """Return where the quotes close that open here.

    Args:
        lines: Lines of the log.
        at: Index of the line.
        column: Index of the quote.
        parent: Column of what the text belongs to: lines further left that look like entries are none of its; -1 at the top.
        lead: What stands before it, for advice: a key with its colon, a dash, or nothing inside brackets.
    """
    sign = lines[at][column]
    typed = lines[at][column:]
    faults: list[Fault] = []
    number, index = at, column + 1
    while True:
        line = lines[number]
        found = _closing(line, index, sign, number, faults, (lead, typed))
        if found >= 0:
            return Inside(number, found + 1, faults=faults)
        number += 1
        while number < len(lines) and not lines[number].strip():
            number += 1
        if number >= len(lines) or (indentation(lines[number]) <= parent and _is_entry(lines[number])):
            why = explain.quote_open(sign, lead, typed[1:])
            return Inside(at, len(lines[at]), faults=[Fault(at, column, why)], closed=False)
        index = 0


def _closing(line: str, index: int, sign: str, number: int, faults: list[Fault], advice: tuple[str, str]) -> int:
    """Return the index of the quote that closes on this line, or -1."""
    if sign == "'":
        while (index := line.find("'", index)) >= 0:
            if line[index + 1 : index + 2] != "'":
                return index
            index += 2
        return -1
    while index < len(line):
        if line[index] == '"':
            return index
        if line[index] == "\\":
            _check_escape(line, index, number, faults, advice)
            index += 1
        index += 1
    return -1


def _check_escape(line: str, index: int, number: int, faults: list[Fault], advice: tuple[str, str]) -> None:
    if faults or index + 1 == len(line):
        return  # the first one spoils the text already
    sign = line[index + 1]
    width = _HEX.get(sign, 0)
    digits = line[index + 2 : index + 2 + width]
    sound = sign in ESCAPES and len(digits) == width and all(digit in "0123456789abcdefABCDEF" for digit in digits)
    if sound and sign == "U":
        sound = int(digits, 16) <= 0x10FFFF
    if not sound:
        faults.append(Fault(number, index, explain.escape(sign, *advice)))
    elif _SURROGATE().match(line, index):
        faults.append(Fault(number, index, explain.surrogate()))


class Brackets:
    """Scans what stands in brackets.

    Between two commas there is nothing yet (`fresh`), a text without quotes (`plain`), or something that has ended.
    """

    def __init__(self, lines: list[str], at: int, column: int, parent: int, lead: str = "") -> None:
        """Keep where the first bracket opens; arguments as of `scan_quoted`."""
        self.lines = lines
        self.number = at
        self.index = column
        self.parent = parent
        self.open: list[tuple[str, int, int]] = []
        self.inside = Inside(at, column)
        self.state = "fresh"
        self.start = -1  # index where the text that goes on began; -1 where that was on a line above
        self.colons = 0
        self.commented = False

    def scan(self) -> Inside:
        """Return where the last bracket closes."""
        while not self._line():
            above = self.lines[self.number]
            self.number += 1
            while self.number < len(self.lines) and not self.lines[self.number].strip():
                self.number += 1
            if self.number >= len(self.lines) or not self._goes_on(self.lines[self.number], above):
                sign, line, column = self.open[-1]
                self.inside.faults.append(Fault(line, column, explain.bracket_open(sign, commented=self.commented)))
                break
            self.index = 0
            self.start = -1
        return self.inside

    def _goes_on(self, line: str, above: str) -> bool:
        """Tell whether what stands in brackets goes on with a line."""
        inside = indentation(line) > self.parent or above.rstrip().endswith((",", "[", "{"))
        return inside or not _is_entry(line)

    def _line(self) -> bool:
        """Go through one line; tell whether nothing is left to scan."""
        while self.index < len(self.lines[self.number]):
            line = self.lines[self.number]
            sign = line[self.index]
            if sign == " ":
                self.index += 1
            elif sign == "#" and (self.state != "plain" or line[self.index - 1 : self.index] in ("", " ")):
                self.commented = True
                break
            elif self._sign(line, sign):
                return True
        return False

    def _sign(self, line: str, sign: str) -> bool:
        """Take one sign; tell whether nothing is left to scan."""
        if sign in "[{":
            return self._opens(line, sign)
        if sign in "]}":
            return self._closes(sign)
        if sign == ",":
            return self._comma()
        if sign == ":" and (self.state != "plain" or line[self.index + 1 : self.index + 2] in _AFTER_COLON):
            return self._colon(line)
        if self.state == "fresh":
            return self._begins(line, sign)
        if self.state == "ended":
            return self._spoil(self.index, explain.text_behind(line[self.index : self._end(line)]))
        self.index += 1
        return False

    def _comma(self) -> bool:
        if len(self.inside.spare) > MAX_FAULTS:
            return self._spoil(self.index, explain.too_many_inside())
        if self.state == "fresh" and not self.colons:
            self.inside.spare.append((self.number, self.index))
        self.state, self.colons = "fresh", 0
        self.index += 1
        return False

    def _spoil(self, column: int, why: Why) -> bool:
        """Report what spoils the whole."""
        self.inside.faults.append(Fault(self.number, column, why))
        return True

    def _lose(self, column: int, first: int, last: int, why: Why) -> bool:
        """Report what spoils one text only, and go on behind it."""
        if len(self.inside.faults) > MAX_FAULTS:
            return self._spoil(column, explain.too_many_inside())
        self.inside.faults.append(Fault(self.number, column, why, first, last))
        self.state = "ended"
        self.index = last
        return False

    def _end(self, line: str) -> int:
        """Return the index behind the text that goes on here."""
        found = _TOKEN_END().search(line, self.index)
        return found.start() if found else len(line)

    def _opens(self, line: str, sign: str) -> bool:
        if self.state == "plain":
            return self._bracket_in_text(line)
        if self.state == "ended":
            return self._spoil(self.index, explain.text_behind(line[self.index :]))
        self.open.append((sign, self.number, self.index))
        if len(self.open) > MAX_DEPTH:
            _, self.number, column = self.open[0]
            return self._spoil(column, explain.too_deep())
        self.state, self.colons = "fresh", 0
        self.index += 1
        return False

    def _bracket_in_text(self, line: str) -> bool:
        """Lose a text with a bracket in it, up to the comma behind the bracket that closes."""
        depth = 0
        end = self.index
        while end < len(line):
            depth += (line[end] in "[{") - (line[end] in "]}")
            if depth < 0 or (depth == 0 and line[end] == ","):
                break
            end += 1
        if self.start < 0 or end == len(line):
            return self._spoil(self.index, explain.bracket_in_text(line[self.index]))
        return self._lose(self.index, self.start, end, explain.bracket_in_text(line[self.index]))

    def _closes(self, sign: str) -> bool:
        opened = self.open.pop()[0]
        if opened + sign not in ("[]", "{}"):
            return self._spoil(self.index, explain.bracket_other(sign))
        self.index += 1
        self.state = "ended"
        if self.open:
            return False
        self.inside.line, self.inside.column = self.number, self.index
        return True

    def _colon(self, line: str) -> bool:
        column, after = self.index, line[self.index + 1 : self.index + 2]
        if self.state == "fresh":
            text = line[column : self._end(line)]
            return self._lose(column, column, column + len(text), explain.key_empty())
        if self.state == "plain" and self.start < 0:
            return self._spoil(indentation(line), explain.no_comma(line[:column], self.number))
        self.colons += 1
        if self.state == "plain" and self.colons > 1:
            end = self._end(line)
            return self._lose(column, self.start, end, explain.colon_in_brackets(line[self.start : end]))
        if self.state == "plain" and after in "[{" and after:
            return self._spoil(column, explain.no_space_after_colon(":", line[self.start : column], line[column + 1 :]))
        if self.state == "plain" and after in ",]}" and after:
            self.inside.spare.append((self.number, column))  # the key is then reported for having no value
        self.state = "fresh"
        self.index += 1
        return False

    def _begins(self, line: str, sign: str) -> bool:
        """Take the first sign of a text."""
        start = self.start = self.index
        if sign in "'\"":
            return self._quoted(sign)
        self.state = "plain"
        text = line[start : self._end(line)]
        if sign == "?" or (sign == "-" and text[1:2] in ("", " ")):
            if text.strip() != sign:
                return self._lose(start, start, start + len(text), explain.text_start("", text))
            if len(self.inside.texts) > MAX_FAULTS:
                return self._spoil(start, explain.too_many_inside())
            self.inside.texts.append((self.number, start))
        elif sign in _TEXT_START:
            return self._lose(start, start, start + len(text), explain.text_start("", text))
        self.index += 1
        return False

    def _quoted(self, sign: str) -> bool:
        first = self.number
        quotes = scan_quoted(self.lines, first, self.start, self.parent)
        if not quotes.closed:
            self.inside.faults.append(quotes.faults[0])
            return True
        self.number, self.index, self.state = quotes.line, quotes.column, "ended"
        line = self.lines[self.number]
        rest = line[self.index :].lstrip()
        end, why = self.index, None
        if quotes.faults:
            column, why = quotes.faults[0].column, quotes.faults[0].why
        elif rest and rest[0] not in ",]}:#":
            end = self._end(line)
            start = self.start if self.number == first else 0
            column, why = self.index - 1, explain.quote_early(sign, self.index, "", line[start:end])
        if why is None:
            return False
        if self.number != first:
            return self._spoil(column, why)
        return self._lose(column, self.start, end, why)


def scan_brackets(lines: list[str], at: int, column: int, parent: int, lead: str = "") -> Inside:
    """Return where the bracket closes that opens here, and what is wrong in between; arguments as of `scan_quoted`."""
    return Brackets(lines, at, column, parent).scan()
