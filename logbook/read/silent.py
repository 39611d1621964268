"""What YAML takes in silence and nobody meant: texts cut short, keys without values, lines that swallow lines.

Some of it is certain and reported at once. Some of it only looks wrong; then the tree is doubtful, and the log is gone
through line by line.
"""

import re

from logbook.read import explain
from logbook.read.explain import Why
from logbook.read.forms import form
from logbook.read.keys import fold_key
from logbook.read.node import Lost, Mapping, Node, Scalar, Sequence
from logbook.read.report import Report

CODES = frozenset(
    {
        "comma-in-brackets",
        "comment-cuts-text",
        "escape-control",
        "value-over-lines",
    }
)

REMARKS = frozenset({"remark", "remarks"})
"""Folded keys whose texts may run over lines."""

ITEM = form(r"- |-?[0-9]{1,2}:?[0-9]{2} ?-")
"""What no line of an item begins with that is not an item itself: a dash, or the times of a tow."""

_CONTROL = form("[\x00-\x1f\x7f-\x9f\ufdd0-\ufdef\ufffe\uffff]")
_HALF = form("[\ud800-\udfff]")
_ODD_START = frozenset("-\u2010\u2011\u2012\u2013\u2014\u2015\u2212\u2022\u00b7\u25aa*")
_TIMED = form(r"[0-9]{1,2}:?[0-9]{2}\b.*,", re.DOTALL)
_TYPED_OTHERWISE = form(
    r"-\S|[\u2010-\u2015\u2212\u2022\u00b7\u25aa] |[^\W\d][^:;=\uff1a\n]*(?:[;=\uff1a]|(?:(?<![0-9]):|:(?![0-9]))(?!//)\S)"
)
_NO_SPACE = form(r"([^\W\d][^:]*)(?:(?<![0-9]):|:(?![0-9]))(\S.*)", re.DOTALL)
_NUMBER_NEXT = form(r"([^\W\d][^\d]{0,60}?) +([0-9].*)", re.DOTALL)
_CLOSERS = form(r"\s*[\]}][\]},\s]*(?:#.*)?")
_DIGIT = form("[0-9]")
_COMPLEX_KEY = form(r"(?m)^[ -]*\?(?=[ \n]|\Z)")
_TIGHT_COMMENT = form(r"[|>][-+0-9]*#")


class Silent:
    """Looks at what is unusual in one log.

    Attributes:
        doubtful: True once YAML may have taken something for what nobody meant.
    """

    def __init__(self, text: str, report: Report, text_keys: frozenset[str]) -> None:
        """Keep the text and what is to be told from it."""
        self.doubtful = (
            ":{" in text
            or ":[" in text
            or "\\'" in text  # which only one parser takes in double quotes
            or ("?" in text and _COMPLEX_KEY().search(text) is not None)
        )
        self._text = text
        self._report = report
        self._text_keys = text_keys
        self._split: list[str] | None = None

    def _lines(self, first: int, last: int) -> list[str]:
        """Return lines, both counted from 1 and the last one with them."""
        if self._split is None:
            self._split = self._text.split("\n")
        return self._split[first - 1 : last]

    def error(self, node: Node, why: Why) -> None:
        """Report what makes something useless."""
        self._report.error(node.line, node.column, *why)

    def block(self, node: Scalar) -> None:
        """Look at the sign that a block of text begins with; right behind it, only one parser takes a `#`."""
        line = self._lines(node.line, node.line)[0]
        self.doubtful = self.doubtful or _TIGHT_COMMENT().match(line, node.column - 1) is not None

    def escapes(self, node: Scalar) -> None:
        """Look at a text in double quotes; control characters that escapes made become spaces."""
        if _HALF().search(node.value):
            self.doubtful = True
            return
        made = set(_CONTROL().findall(node.value))
        if not made:
            return
        typed = "\n".join(self._lines(node.line, node.end_line))
        if made == {"\n"} and ("\\n" not in typed or self._text.lstrip().startswith("{")):
            return
        message = "a backslash in double quotes makes a control character of the letter behind it"
        self._report.warn(node.line, node.column, "escape-control", message, "use single quotes")
        node.value = _CONTROL().sub(lambda found: "\n" if found[0] == "\n" else " ", node.value)

    def take(self, key: Node, value: Node, entries: list[tuple[Scalar, Node]], lost: list[Lost], *, flow: bool) -> None:
        """Take an unusual entry of a mapping, into its entries or into what is lost of it."""
        gone = Lost(key.file, key.line, key.column, value.end_line)
        if not isinstance(key, Scalar):
            if not isinstance(key, Lost):
                self.error(key, explain.key_not_text())
                self.doubtful = True
            lost.append(gone)
        elif key.value == "<<" and not key.style:
            self.error(key, explain.merge_key())
            lost.append(gone)
        elif not key.value.strip():
            self.error(key, explain.key_empty())
            self.doubtful = True  # as it may be a lone question mark
            lost.append(gone)
        elif flow and isinstance(value, Scalar) and not value.value and not value.style:
            self._without_value(key, entries, lost)
        else:
            self._look(key, value, flow=flow)
            entries.append((key, value))

    def _without_value(self, key: Scalar, entries: list[tuple[Scalar, Node]], lost: list[Lost]) -> None:
        """Take a key inside brackets that has no value, for the usual causes."""
        text = key.value
        gone = Lost(key.file, key.line, key.column, key.end_line)
        if text[0] in "0123456789" and entries:
            before, spoilt = entries[-1]
            message = f"a comma inside brackets parts '{text}' from '{before.value}'"
            self.error(key, Why("comma-in-brackets", message, "write the number without a comma"))
            entries[-1] = (before, Lost(spoilt.file, spoilt.line, spoilt.column, key.end_line))
            lost.append(gone)
            return
        apart = _NO_SPACE().fullmatch(text) if not key.style else None
        number = _NUMBER_NEXT().fullmatch(text) if not key.style else None
        if apart is not None:
            self.error(key, explain.no_space_after_colon(":", apart[1], apart[2]))
            key = Scalar(key.file, key.line, key.column, key.end_line, apart[1].strip())
        elif number is not None:
            self.error(key, explain.no_colon("", number[1], number[2]))
            key = Scalar(key.file, key.line, key.column, key.end_line, number[1])
        else:
            self.error(key, explain.key_no_value(text))
            self.doubtful = True  # as the parsers differ about a colon right before a comma
        entries.append((key, gone))

    def _look(self, key: Scalar, value: Node, *, flow: bool) -> None:
        if not flow and not key.style and (key.value[0] in _ODD_START or _TIMED().match(key.value)):
            self.doubtful = True
        if isinstance(value, Scalar):
            self._text_of(key, value, flow=flow)
        elif isinstance(value, Sequence):
            self._cut_items(value, key.value)

    def _cut_items(self, value: Sequence, name: str) -> None:
        """Look for comments behind items: they cut names short, and the words at the end of a tow on one line."""
        named = fold_key(name) in self._text_keys
        for item in value.items:
            if isinstance(item, Scalar) and item.comment:
                last = item.value.rpartition(",")[2].strip()
                if named or (not value.flow and _DIGIT().search(last) is None):
                    self._cut(item, name if named else last)

    def _text_of(self, key: Scalar, value: Scalar, *, flow: bool) -> None:
        folded = fold_key(key.value)
        if value.comment and folded in self._text_keys:
            self._cut(value, key.value)
        if value.style in ("|", ">"):
            return
        if not value.style and value.line != key.line and value.value and folded not in self._text_keys:
            self.doubtful = self.doubtful or _TYPED_OTHERWISE().match(value.value) is not None
        if value.end_line == value.line:
            return
        if value.style:
            self._quotes(value, -1 if flow else key.column - 1)
        elif folded not in REMARKS:
            message = f"'{key.value}' runs over {value.end_line - value.line + 1} lines: '{explain.shown(value.value)}'"
            self._report.warn(value.line, value.column, "value-over-lines", message, "keep it on one line")
            self._fold(value)
            self._swallows(value)

    def _cut(self, value: Scalar, name: str) -> None:
        message = f"what stands behind '#' is no part of '{name}'"
        hint = "put the text in single quotes, or leave the # out"
        self._report.warn(value.end_line, value.comment, "comment-cuts-text", message, hint)

    def item(self, item: Scalar, parent: int, *, flow: bool) -> None:
        """Look at a text in a list that runs over lines.

        Args:
            item: The text.
            parent: Index of the dash, or of the bracket.
            flow: True inside brackets.
        """
        if item.style in ("|", ">"):
            return
        if item.style:
            self._quotes(item, -1 if flow else parent)
        elif not flow:
            message = f"this item runs over {item.end_line - item.line + 1} lines and is read as one"
            self._report.note(item.line, item.column, "value-over-lines", message, "keep it on one line")
            self._fold(item)
            self._swallows(item)

    def _fold(self, value: Scalar) -> None:
        """Note where the further lines of a text begin, from the last one back, as each ends what is left of it."""
        folds: list[tuple[int, int, int]] = []
        end = len(value.value)
        lines = enumerate(self._lines(value.line + 1, value.end_line), value.line + 1)
        for number, line in reversed(list(lines)):
            text = line.partition(" #")[0].strip()
            if not text:
                continue
            if not value.value.endswith(text, 0, end):
                return
            index = end - len(text)
            folds.append((index, number, _column(line) + 1))
            while index and value.value[index - 1] in " \n":
                index -= 1
            end = index
        value.folds = tuple(reversed(folds))

    def _swallows(self, value: Scalar) -> None:
        """Doubt a text that goes on over a line which begins like a list item."""
        further = self._lines(value.line + 1, value.end_line)
        self.doubtful = self.doubtful or any(ITEM().match(line.lstrip()) for line in further)

    def _quotes(self, value: Scalar, parent: int) -> None:
        """Doubt quotes that go on over lines which stand no deeper than what they belong to."""
        further = self._lines(value.line + 1, value.end_line)
        self.doubtful = self.doubtful or any(line.strip() and _column(line) <= parent for line in further)

    def brackets(self, node: Mapping | Sequence, parent: int) -> None:
        """Doubt brackets that go on over lines which stand no deeper than what they belong to."""
        further = self._lines(node.line + 1, node.end_line)
        self.doubtful = self.doubtful or any(
            line.strip() and _column(line) <= parent and _CLOSERS().fullmatch(line) is None for line in further
        )


def _column(line: str) -> int:
    return len(line) - len(line.lstrip(" "))
