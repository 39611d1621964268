"""Brackets in a log: where they close, and what is wrong in between.

Works on lines, sign by sign, as YAML does; knows nothing of what stands outside.
"""

from logbook.read import explain
from logbook.read.explain import MAX_DEPTH, Why
from logbook.read.forms import form
from logbook.read.quotes import Fault, Inside, blanks, is_entry, scan_quoted

MAX_FAULTS = 100

_TEXT_END = form(r"[,\[\]{}]|$")
_TEXT_START = frozenset("*&!|>%@`?")
_AFTER_COLON = frozenset(("", " ", "\t", ",", "?", "[", "]", "{", "}"))


def scan_brackets(lines: list[str], at: int, column: int, parent: int) -> Inside:
    """Return where the bracket closes that opens here, and what is wrong in between.

    Args:
        lines: Lines of the log.
        at: Index of the line.
        column: Index of the bracket.
        parent: Column of what it belongs to; lines that stand no deeper and look like entries are none of it, unless
            the line above ends in a comma.
    """
    return _Brackets(lines, at, column, parent).scan()


class _Brackets:
    """Scans what stands in brackets.

    Between two commas there is nothing yet (`fresh`), a text without quotes (`plain`), or something that has ended.
    """

    def __init__(self, lines: list[str], at: int, column: int, parent: int) -> None:
        self.lines = lines
        self.number = at
        self.line = lines[at]
        self.index = column
        self.parent = parent
        self.open: list[tuple[str, int, int, int]] = []
        self.inside = Inside(at, column)
        self.state = "fresh"
        self.start = -1  # index where the text that goes on began; -1 where that was on a line above
        self.colons = 0
        self.commented = False

    def scan(self) -> Inside:
        """Return where the last bracket closes."""
        while not self._all_of_line():
            above = self.line
            self.number += 1
            while self.number < len(self.lines) and not self.lines[self.number].strip():
                self.number += 1
            if self.number == len(self.lines) or not self._goes_on(self.lines[self.number], above):
                sign, line, column, _ = self.open[-1]
                why = explain.bracket_open(sign, commented=self.commented)
                self.inside.faults.append(Fault(line, column, why))
                break
            self.line = self.lines[self.number]
            self.index = 0
            self.start = -1
        return self.inside

    def _goes_on(self, line: str, above: str) -> bool:
        """Tell whether what stands in brackets goes on with a line."""
        return blanks(line) > self.parent or above.rstrip().endswith((",", "[", "{")) or not is_entry(line)

    def _all_of_line(self) -> bool:
        """Go through one line; tell whether nothing is left to scan."""
        while self.index < len(self.line):  # which may be another one once quotes have led on
            sign = self.line[self.index]
            if sign in " \t":
                self.index += 1
            elif sign == "#" and (self.state != "plain" or self.line[self.index - 1 : self.index] in ("", " ", "\t")):
                self.commented = True
                if self.state == "plain":
                    self.state, self.colons = "ended", 1  # no text and no key goes on behind a comment
                break
            elif self._sign(sign):
                return True
        return False

    def _sign(self, sign: str) -> bool:
        """Take one sign; tell whether nothing is left to scan."""
        if sign in "[{]}":
            return self._opens(sign) if sign in "[{" else self._closes(sign)
        if sign == ":" and (self.state != "plain" or self.line[self.index + 1 : self.index + 2] in _AFTER_COLON):
            return self._colon()
        if sign == ",":
            return self._comma()
        if self.state != "plain":
            return self._begins(sign) if self.state == "fresh" else self._behind()
        if sign == "?":
            self.inside.asked.append((self.number, self.index))
        self.index += 1
        return False

    def _behind(self) -> bool:
        """Report what stands behind something that has ended."""
        return self._spoil(self.index, explain.text_behind(self.line[self.index :]))

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

    def _end(self) -> int:
        """Return the index behind the text that goes on here."""
        found = _TEXT_END().search(self.line, self.index)
        return found.start() if found else len(self.line)

    def _comma(self) -> bool:
        if self.state == "fresh" and not self.colons:
            if len(self.inside.spare) > MAX_FAULTS:
                return self._spoil(self.index, explain.too_many_inside())
            self.inside.spare.append((self.number, self.index))
        self.state, self.colons = "fresh", 0
        self.index += 1
        return False

    def _opens(self, sign: str) -> bool:
        if self.state == "plain":
            return self._bracket_in_text(sign)
        if self.state == "ended":
            return self._behind()
        self.open.append((sign, self.number, self.index, self.colons))
        if len(self.open) > MAX_DEPTH:
            _, self.number, column, _ = self.open[0]
            return self._spoil(column, explain.too_deep())
        self.state, self.colons = "fresh", 0
        self.index += 1
        return False

    def _bracket_in_text(self, sign: str) -> bool:
        """Lose a text with a bracket in it, up to the comma behind the bracket that closes."""
        depth = 0
        end = self.index
        while end < len(self.line):
            depth += (self.line[end] in "[{") - (self.line[end] in "]}")
            if depth < 0 or (depth == 0 and self.line[end] == ","):
                break
            end += 1
        if self.start < 0 or end == len(self.line):
            return self._spoil(self.index, explain.bracket_in_text(sign))
        return self._lose(self.index, self.start, end, explain.bracket_in_text(sign))

    def _closes(self, sign: str) -> bool:
        opened, _, _, self.colons = self.open.pop()
        if opened + sign not in ("[]", "{}"):
            return self._spoil(self.index, explain.bracket_other(sign))
        self.index += 1
        self.state = "ended"
        self.inside.line, self.inside.column = self.number, self.index
        return not self.open

    def _colon(self) -> bool:
        column = self.index
        if self.state == "fresh":
            return self._lose(column, column, self._end(), explain.key_empty())
        if self.state == "ended" and self.colons:
            return self._behind()
        if self.state == "plain" and self._key_spoilt(column):
            return bool(self.inside.spoilt)
        self.colons += 1
        self.state = "fresh"
        self.index = column + 1
        return False

    def _key_spoilt(self, column: int) -> bool:
        """Look at a key without quotes and what stands behind its colon; tell whether that has been reported."""
        key, rest = self.line[self.start : column], self.line[column + 1 :]
        if self.start < 0:
            self._spoil(blanks(self.line), explain.no_comma(self.line[:column], self.number))
        elif self.colons:
            end = self._end()
            self._lose(column, self.start, end, explain.colon_in_brackets(self.line[self.start : end]))
        elif rest.startswith(("[", "{")):
            self._spoil(column, explain.no_space_after_colon(":", key, rest))
        elif rest.startswith("?"):
            self._lose(column, self.start, self._end(), explain.no_space_after_colon(":", key, rest))
        elif rest.startswith((",", "]", "}")) and self.open[-1][0] == "[":
            self._lose(column, self.start, column + 1, explain.key_no_value(key))
        else:
            if rest.startswith((",", "]", "}")):
                self.inside.spare.append((self.number, column))  # the key is then reported for having no value
            return False
        return True

    def _begins(self, sign: str) -> bool:
        """Take the first sign of a text."""
        start = self.start = self.index
        if sign in "'\"":
            return self._quoted(sign)
        self.state = "plain"
        end = self._end()
        text = self.line[start:end].strip()
        if text in ("-", "?"):
            if len(self.inside.texts) > MAX_FAULTS:
                return self._spoil(start, explain.too_many_inside())
            self.inside.texts.append((self.number, start))
        elif sign in _TEXT_START or text.startswith(("- ", "-\t")):
            return self._lose(start, start, end, explain.text_start("", text))
        self.index += 1
        return False

    def _quoted(self, sign: str) -> bool:
        first = self.number
        quotes = scan_quoted(self.lines, first, self.start, self.parent)
        if not quotes.closed:
            self.inside.faults.append(quotes.faults[0])
            return True
        self.number, self.index, self.state = quotes.line, quotes.column, "ended"
        self.line = self.lines[self.number]
        rest = self.line[self.index :].lstrip()
        end, why = self.index, None
        if quotes.faults:
            column, why = quotes.faults[0].column, quotes.faults[0].why
        elif rest and rest[0] not in ",]}:#":
            end = self._end()
            start = self.start if self.number == first else 0
            column, why = self.index - 1, explain.quote_early(sign, self.index, "", self.line[start:end])
        if why is None:
            return False
        if self.number != first:
            return self._spoil(column, why)
        return self._lose(column, self.start, end, why)
