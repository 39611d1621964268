"""What stands behind a key or a dash: texts, quotes, brackets, blocks of text, and every sign that YAML stumbles over."""

import re

from logbook.read import explain, layout
from logbook.read.brackets import scan_brackets
from logbook.read.draft import Draft
from logbook.read.explain import Why
from logbook.read.forms import form
from logbook.read.keyline import COLON, DASH, indentation, key_of, without_comment
from logbook.read.keys import fold_key
from logbook.read.quotes import Inside, scan_quoted
from logbook.read.silent import ITEM, REMARKS

_HEADER = re.compile(r"[|>](?:[+-]?(?P<a>[1-9])?|(?P<b>[1-9])[+-]?)(?: +#.*| *)$")
_LONE = form(r"[-?](?= *$| +#)")
_SPARE = form(r"([ ,;\]}]+)(?:(?<= )#.*)?$")
_STARTS = frozenset("*&!%@`|>,]}")


class Behind:
    """Takes values of one log."""

    def __init__(self, draft: Draft, text_keys: frozenset[str]) -> None:
        """Keep the lines; arguments as of `Outline`."""
        self.draft = draft
        self.lines = draft.lines
        self.text_keys = text_keys

    def take(self, at: int, parent: int, column: int, key: str | None) -> int:
        """Take the value that begins at a sign of a line; return the index behind its last line.

        Args:
            at: Index of the line.
            parent: Column of its key or dash: further lines of it stand deeper.
            column: Index of its first sign.
            key: Its key; None for an item of a list.
        """
        self.draft.last = (at, column)
        line = self.lines[at]
        lead = f"{key}: " if key else "- "
        sign = line[column]
        if sign in "'\"":
            return self._enclosed(at, parent, column, lead, scan_quoted(self.lines, at, column, parent, lead))
        if sign in "[{":
            return self._enclosed(at, parent, column, lead, scan_brackets(self.lines, at, column, parent))
        header = _HEADER.match(line, column)
        if header is not None:
            given = header["a"] or header["b"]
            return layout.mend_block(self.draft, at, parent, parent + int(given) if given else None)
        if _LONE().match(line, column):
            self.draft.stand_for(at, column, sign)
            return at + 1
        text = line[column:]
        if sign in _STARTS or text.startswith(("- ", "? ", ": ")):
            return self.lose(at, parent, column, (at, column), explain.text_start(lead, text))
        return self._plain(at, parent, column, key)

    def lose(self, at: int, parent: int, column: int, blamed: tuple[int, int], why: Why) -> int:
        """Report a value and set it aside with the lines that belong to it; return the index behind them.

        Args:
            at: Index of its line.
            parent: Column of its key or dash.
            column: Index of its first sign.
            blamed: Indexes of the line and sign to blame.
            why: What is wrong.
        """
        self.draft.fault(*blamed, why)
        end = max(self.draft.own(at, parent), blamed[0] + 1)
        self.draft.lose(at, self.lines[at][:column], end, column)
        return end

    def lose_last(self, end: int) -> None:
        """Set aside the value taken last, as its end was cut off; that has been reported where it stands.

        Args:
            end: Index behind the lines that it is lost with.
        """
        if self.draft.last is not None:
            at, column = self.draft.last
            self.draft.lose(at, self.lines[at][:column], end, column)

    def _enclosed(self, at: int, parent: int, column: int, lead: str, inside: Inside) -> int:
        """Take a value in quotes or brackets."""
        spoilt = inside.spoilt
        if spoilt is not None:
            return self.lose(at, parent, column, (spoilt.line, spoilt.column), spoilt.why)
        self._drop_spare(inside.line, inside.column)
        rest = self.lines[inside.line][inside.column :]
        text = rest.strip()
        if text and not (text[0] == "#" and rest[0] == " "):
            typed, sign = self.lines[at][column:], self.lines[at][column]
            if sign in "[{":
                why = explain.bracket_early(sign, lead, typed)
            else:
                why = explain.quote_early(sign, inside.column, lead, typed)
            return self.lose(at, parent, column, (inside.line, inside.column - 1), why)
        for number in range(at, inside.line + 1):
            self.lines[number] = self.lines[number].replace("\t", " ")
        for fault in inside.faults:
            self.draft.fault(fault.line, fault.column, fault.why)
            self.draft.lose_within(fault.line, fault.first, fault.last)
        for number, index in inside.texts:
            self.draft.stand_for(number, index, self.lines[number][index])
        for number, index in inside.asked:
            self.draft.hide(number, index)
        for number, index in inside.spare:
            if self.lines[number][index] == ",":
                self.draft.note(number, index, explain.comma_twice())
            self.draft.put(number, index, " ")
        return inside.line + 1

    def _drop_spare(self, at: int, column: int) -> None:
        """Leave out commas, and brackets that close nothing, behind quotes or brackets where nothing else is; all are told."""
        spare = _SPARE().match(self.lines[at], column)
        for index in range(*spare.span(1)) if spare else ():
            sign = self.lines[at][index]
            if sign == " ":
                continue
            if sign in ",;":
                self.draft.note(at, index, explain.comma_twice())
            else:
                self.draft.fault(at, index, explain.bracket_spare(sign))
            self.draft.put(at, index, " ")

    def _plain(self, at: int, parent: int, column: int, key: str | None) -> int:
        """Take a text without quotes and the lines it goes on over."""
        line = self.lines[at]
        folded = fold_key(key.strip("'\"")) if key else ""
        text = without_comment(line[column:])
        colon = COLON.search(text)
        if colon is not None:
            lead = f"{key}: " if key else "- "
            why = explain.colon_in_text(key, lead, line[column:], free=not key or folded in self.text_keys)
            return self.lose(at, parent, column, (at, column + colon.start()), why)
        end = at + 1
        ended = len(text) < len(line) - column
        while not ended:
            number = self._next(end)
            line = self._text_on(number, parent) if number < len(self.lines) else ""
            begins = indentation(line)
            if not line or begins <= parent or line[begins] == "#":
                break
            text = without_comment(line)
            if folded in REMARKS:
                colon = COLON.search(text)
                if colon is not None:
                    typed = [self.lines[at][column:], *self.lines[at + 1 : number + 1]]
                    whole = " ".join(part.strip() for part in typed)
                    why = explain.colon_in_text(key, f"{key}: ", whole, free=True)
                    return self.lose(at, parent, column, (number, colon.start()), why)
            elif DASH.match(line, begins) or COLON.search(text) or (key is None and ITEM().match(line, begins)):
                break
            end = number + 1
            ended = len(text) < len(line)
        return end

    def _next(self, at: int) -> int:
        """Return the index of the next line with something on it, from an index on."""
        while at < len(self.lines) and not self.lines[at].strip():
            at += 1
        return at

    def _text_on(self, number: int, parent: int) -> str:
        """Return a line that a text may go on over, without tabs; empty where tabs leave that open."""
        line = self.lines[number]
        text = line.lstrip(" \t")
        if "\t" in line[: len(line) - len(text)]:
            if DASH.match(text) or key_of(text.replace("\t", " "), 0):
                return ""
            layout.mend_text_tabs(self.draft, number, parent)
            line = self.lines[number]
            if "\t" in line[: len(line) - len(text)]:
                return ""
        self.lines[number] = line.replace("\t", " ")
        return self.lines[number]
