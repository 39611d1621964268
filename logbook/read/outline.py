"""How the lines of a log stand under one another, and every line that does not fit.

A log that YAML takes at once never comes here. One that it refuses is gone through line by line, as a person would read
it: which list or mapping a line belongs to by its indentation, its dash, its key, and what kind of value follows. What
is wrong is reported where it stands and set aside, so that one reading finds everything.
"""

import re
from typing import NamedTuple

from logbook.read import explain, layout
from logbook.read.explain import Why
from logbook.read.forms import form
from logbook.read.inside import Inside, indentation, scan_brackets, scan_quoted
from logbook.read.keys import fold_key
from logbook.read.report import Report
from logbook.read.silent import REMARKS
from logbook.read.draft import Draft

_DASH = re.compile(r"-(?= |$)")
_KEY = re.compile(r"(?P<key>(?:[^\s#\-?:\[\]{},&*!|>'\"%@`]|[-?:](?=\S))(?:[^#:]|:(?=\S)|(?<=\S)#)*?)\s*:(?= |$)")
_QUOTED_KEY = form(r"""(?P<key>'(?:[^']|'')*'|"(?:[^"\\]|\\.)*")\s*:(?= |$)""")
_COLON = form(r":(?= |$)")
_COMMENT = form(r"(?:^| )#")
_HEADER = re.compile(r"[|>](?:[+-]?(?P<a>[1-9])?|(?P<b>[1-9])[+-]?)(?: +#.*| *)$")
_LONE = form(r"[-?](?= *$| +#)")
_ODD_DASH = form(r"(?P<sign>[\u2010-\u2015\u2212\u2022\u00b7\u25aa*])(?= )|-(?=[A-Za-z]|[0-9]{1,2}:?[0-9]{2} ?-)")

_WORD = r"[^\W\d](?:[\w .'()/-]{0,60}?[\w.')])?"
_ODD_COLON = form(rf"(?P<key>{_WORD})\s*(?P<sign>[\uff1a\ufe55\u2236\ua789])\s*(?P<value>.*)")
_NO_SPACE = form(rf"(?P<key>{_WORD})(?P<sign>:)(?!//)(?P<value>\S.*)")
_OTHER_SIGN = form(rf"(?P<key>{_WORD}) *(?P<sign>[;=])(?P<value>.*)")
_NUMBER_NEXT = form(r"(?P<key>[^\W\d][^\d:;=,]{0,40}?)(?P<sign>) +(?P<value>[0-9].*)")
_ONLY_WORDS = form(rf"(?P<key>{_WORD})(?P<sign>)(?P<value>)")
_TIMED_KEY = form(r"[0-9]{1,2}:?[0-9]{2}\b")


class Level:
    """A list or mapping that is open while lines are read.

    Attributes:
        column: Index its lines begin at.
        listed: True for a list.
        opens: True while its last entry has no value yet, so that deeper lines may be it.
        fresh: True until it has an entry.
        key: Its last key, folded; empty in a list.
    """

    __slots__ = ("column", "fresh", "key", "listed", "opens")

    def __init__(self, column: int, *, listed: bool) -> None:
        """Begin with no entries."""
        self.column = column
        self.listed = listed
        self.opens = False
        self.fresh = True
        self.key = ""

    def copy(self) -> "Level":
        """Return one like it."""
        other = Level(self.column, listed=self.listed)
        other.opens, other.fresh, other.key = self.opens, self.fresh, self.key
        return other


class Keyed(NamedTuple):
    """A key with its colon.

    Attributes:
        key: The key as it would be typed again.
        value: Index where the value begins, or of the end of the line.
    """

    key: str
    value: int


def key_of(line: str, column: int) -> Keyed | None:
    """Return the key that begins at a sign of a line, or None where there is none."""
    pattern = _QUOTED_KEY() if line[column : column + 1] in ("'", '"') else _KEY
    found = pattern.match(line, column)
    if found is None:
        return None
    value = found.end()
    while value < len(line) and line[value] == " ":
        value += 1
    return Keyed(found["key"], value)


def without_comment(text: str) -> str:
    """Return a text up to the comment behind it."""
    found = _COMMENT().search(text)
    return text[: found.start()] if found else text


class Outline:
    """Goes through the lines of a log and mends what YAML would stumble over."""

    def __init__(self, draft: Draft, text_keys: frozenset[str], levels: list[Level] | None = None) -> None:
        """Keep the lines.

        Args:
            draft: The lines, and what is set aside of them.
            text_keys: Folded keys whose values are free text or names.
            levels: What is open above the first line, where only some lines are looked at.
        """
        self.draft = draft
        self.lines = draft.lines
        self.text_keys = text_keys
        self.levels = levels or []
        self.marks = layout.Marks(draft)
        self.misfits = 0
        self.shape: list[int] = []

    def mend(self) -> None:
        """Go through all lines."""
        at = 0
        while at < len(self.lines) and not self.draft.full:
            at = self.take(at)
        self.marks.end()
        if self.draft.full:
            self.draft.blank(at, len(self.lines))

    def tried(self, at: int, end: int, lines: list[str]) -> tuple[int, tuple[int, ...]]:
        """Return how many lines would not fit, and how deep each would stand, if some lines were typed like this."""
        below = next((line for line in self.lines[end:] if line.strip()), "")
        draft = Draft([*lines, below], Report(self.draft.report.file))
        trial = Outline(draft, self.text_keys, [level.copy() for level in self.levels])
        number = 0
        while number < len(draft.lines):
            number = trial.take(number)
        return trial.misfits, tuple(trial.shape)

    def take(self, at: int) -> int:
        """Take the line at an index and all that belongs to its value; return the index behind them."""
        line = self.lines[at]
        text = line.lstrip(" \t")
        if not text or text[0] == "#":
            if "\t" in line:
                self.lines[at] = line.replace("\t", " ")
            return at + 1
        behind = self.marks.take(at, begun=bool(self.levels))
        if behind is not None:
            return behind
        if not self.levels:
            begins = layout.root_column(self.lines, at)
            self.levels.append(
                Level(begins, listed=line.startswith("-", begins) and _DASH.match(line, begins) is not None)
            )
            if text[0] in "[{":
                return self._value(at, -1, len(line) - len(text), None)
        if "\t" in line:
            if "\t" in line[: len(line) - len(text)]:
                behind = layout.mend_tabs(self, at)
                if behind is not None:
                    return behind
            line = self.lines[at] = self.lines[at].replace("\t", " ")
        return self._entry(at, indentation(line)) if line.strip() else at + 1

    # Where a line belongs

    def _entry(self, at: int, column: int) -> int:
        line = self.lines[at]
        odd = _ODD_DASH().match(line, column)
        if odd is not None and self._takes_dash(column, line):
            return self._odd_dash(at, column, odd["sign"])
        dash = _DASH.match(line, column) is not None
        target = self._fit(column, dash=dash)
        if target is not None:
            return self._misfit(at, column, target, dash=dash)
        self.shape.append(len(self.levels))
        return self._content(at, column)

    def _takes_dash(self, column: int, line: str) -> bool:
        """Tell whether an odd dash at a column is meant for a list item."""
        top = next((level for level in reversed(self.levels) if level.column <= column), self.levels[0])
        listed = top.listed and top.column == column
        return listed or key_of(line, column + 1) is not None or line[column] != "-" or top.opens

    def _fit(self, column: int, *, dash: bool) -> Level | None:
        """Open or close levels for a line; return None, or the level it was likely meant for where it fits none."""
        keep = len(self.levels)
        while keep > 1 and self.levels[keep - 1].column > column:
            keep -= 1
        top = self.levels[keep - 1]
        closed = self.levels[keep:]
        if top.column == column:
            if top.listed == dash:
                del self.levels[keep:]
                return None
            if top.listed:
                if keep > 1 and self.levels[keep - 2].column == column:
                    del self.levels[keep - 1 :]
                    return None
                return next((level for level in closed if not level.listed), top)
            if top.opens and not closed:
                self._open(column, listed=True)
                return None
            return top
        if top.column < column and top.opens and not closed:
            self._open(column, listed=dash)
            return None
        return self._meant(keep, column, dash=dash)

    def _open(self, column: int, *, listed: bool) -> None:
        self.levels[-1].opens = False
        self.levels.append(Level(column, listed=listed))

    def _meant(self, keep: int, column: int, *, dash: bool) -> Level:
        """Return the level that a line out of line was likely meant for."""
        alike = [level for level in self.levels[keep - 1 :] if level.listed == dash]
        if alike:
            return min(alike, key=lambda level: (abs(level.column - column), -level.column))
        above = (level for level in reversed(self.levels[:keep]) if level.listed == dash)
        return next(above, self.levels[keep - 1])

    def _close_to(self, target: Level) -> None:
        del self.levels[self.levels.index(target) + 1 :]
        target.opens = False

    def _own(self, at: int, column: int) -> int:
        """Return the index behind the lines that belong to a line by their indentation."""
        end = at + 1
        while end < len(self.lines):
            line = self.lines[end]
            if line.strip() and indentation(line.expandtabs(8)) <= column:
                break
            end += 1
        return end

    # Lines out of line

    def _misfit(self, at: int, column: int, target: Level, *, dash: bool) -> int:
        self.misfits += 1
        line = self.lines[at]
        self._close_to(target)
        wanted = target.column
        end = self._own(at, max(column, wanted))
        if target.listed:
            why = explain.indent(column + 1, wanted + 1) if dash else explain.no_dash(line)
            self.draft.fault(at, column, why)
            self.draft.lose(at, " " * wanted + "- ", end, column)
            return end
        if dash:
            self.draft.fault(at, column, explain.dash_among_keys())
            self.draft.lose_keyless(at, wanted, end)
            return end
        self.draft.fault(at, column, explain.indent(column + 1, wanted + 1))
        found = key_of(line, column)
        if found is None:
            self.draft.lose_keyless(at, wanted, end)
            return end
        target.key = fold_key(found.key)
        if without_comment(line[found.value :]).strip():
            self.draft.lose(at, f"{' ' * wanted}{found.key}: ", end, found.value)
            return end
        self.lines[at] = " " * wanted + line[column:]
        target.opens = end > at + 1 and any(self.lines[number].strip() for number in range(at + 1, end))
        return at + 1

    def _odd_dash(self, at: int, column: int, sign: str | None) -> int:
        """Take a line that begins with a dash of another kind, or with one without a space behind it."""
        line = self.lines[at]
        text = line[column + 1 :].lstrip(" ")
        why = explain.dash_odd(sign, text) if sign else explain.no_space_after_dash(text)
        self.draft.fault(at, column, why)
        inner = self._column_below(at, column) or column + 2
        self.lines[at] = f"{' ' * column}-{' ' * (inner - column - 1)}{text}"
        if self._fit(column, dash=True) is not None:
            end = self._own(at, column)
            self.draft.lose_keyless(at, self.levels[-1].column, end)
            return end
        found = key_of(self.lines[at], inner)
        if found is None:
            end = self._own(at, column)
            self.draft.lose(at, " " * column + "- ", end, column)
            return end
        if without_comment(self.lines[at][found.value :]).strip():
            self.levels.append(Level(inner, listed=False))
            self.levels[-1].key = fold_key(found.key)
            end = self._own(at, inner)
            self.draft.lose(at, f"{self.lines[at][:inner]}{found.key}: ", end, found.value)
            return end
        return self._content(at, column)

    def _column_below(self, at: int, column: int) -> int | None:
        """Return the column of the line below where that is one of the same item, else None."""
        for line in self.lines[at + 1 :]:
            if line.strip():
                below = indentation(line)
                return below if column + 1 < below and "\t" not in line[:below] and key_of(line, below) else None
        return None

    # What stands on a line

    def _content(self, at: int, column: int) -> int:
        line = self.lines[at]
        dashed = False
        while _DASH.match(line, column):
            if dashed:
                self.levels.append(Level(column, listed=True))
            dashed = True
            level = self.levels[-1]
            level.fresh = False
            parent = column
            column += 1
            while column < len(line) and line[column] == " ":
                column += 1
            if column == len(line) or line[column] == "#":
                level.opens = True
                return at + 1
            level.opens = False
        found = key_of(line, column)
        if dashed:
            if found is None:
                return self._value(at, parent, column, None)
            if _TIMED_KEY().match(found.key) and "," in found.key:
                return self._colon_in_item(at, parent, column)
            self.levels.append(Level(column, listed=False))
        elif found is None:
            return self._no_key(at, column)
        return self._keyed(at, column, found)

    def _colon_in_item(self, at: int, parent: int, column: int) -> int:
        line = self.lines[at]
        colon = _COLON().search(line, column)
        text = line[column:]
        end = self._own(at, parent)
        self.draft.fault(at, colon.start() if colon else column, explain.colon_in_text(None, text, free=True))
        self.draft.lose(at, line[:column], end, column)
        return end

    def _keyed(self, at: int, column: int, found: Keyed) -> int:
        level = self.levels[-1]
        level.fresh = False
        level.key = fold_key(found.key.strip("'\""))
        if len(self.levels) == 1:
            self.marks.keys.add(level.key)
        if found.key == "<<":
            self.draft.fault(at, column, explain.merge_key())
            end = self._own(at, column)
            self.draft.lose(at, self.lines[at][:column] + "<<: ", end, found.value)
            return end
        line = self.lines[at]
        if found.value >= len(line) or line[found.value] == "#":
            level.opens = True
            return at + 1
        level.opens = False
        return self._value(at, column, found.value, found.key)

    def _no_key(self, at: int, column: int) -> int:
        """Take a line that stands where a key is wanted and has none."""
        level = self.levels[-1]
        line = self.lines[at]
        if level.fresh and len(self.levels) > 1 and self._is_text(at, column, self.levels[-2]):
            self.levels.pop()
            above = self.levels[-1]
            return self._value(at, above.column, column, above.key or None)
        level.fresh = level.opens = False
        if line.startswith(("? ", ": "), column):
            end = self._own(at, column)
            if end < len(self.lines) and self.lines[end].startswith(": ", column):
                end = self._own(end, column)
            self.draft.fault(at, column, explain.key_not_text())
            self.draft.lose_keyless(at, column, end)
            return end
        return self._typed_otherwise(at, column)

    def _is_text(self, at: int, column: int, above: Level) -> bool:
        """Tell whether a line below a key without a value is that value, and no entry of a mapping."""
        if above.listed or above.key in self.text_keys:
            return True
        line = self.lines[at]
        if (
            _NO_SPACE().fullmatch(line, column)
            or _ODD_COLON().fullmatch(line, column)
            or _OTHER_SIGN().fullmatch(line, column)
        ):
            return False
        after = next((text for text in self.lines[at + 1 :] if text.strip()), "")
        return indentation(after) != column or key_of(after, column) is None

    def _typed_otherwise(self, at: int, column: int) -> int:
        """Take a line whose key has something else than a colon and a space behind it."""
        line = self.lines[at]
        text = without_comment(line[column:]).rstrip()
        below = self._column_under(at)
        for pattern, why in _OTHERWISE:
            found = pattern().fullmatch(text)
            if found is None or (pattern is _ONLY_WORDS and below <= column and not self._listed_under(at, column)):
                continue
            key, sign, value = found["key"], found["sign"], found["value"].strip()
            self.draft.fault(at, column + found.end("key"), why(sign, key, value))
            self.levels[-1].key = fold_key(key)
            if not value:
                self.lines[at] = f"{' ' * column}{key}:"
                self.levels[-1].opens = True
                return at + 1
            end = self._own(at, column)
            self.draft.lose(at, f"{' ' * column}{key}: ", end, column + found.start("value"))
            return end
        end = self._own(at, column)
        sign = line[column]
        why_not = explain.text_start(None, text) if sign in "*&!%@`|>" else explain.no_key(text)
        self.draft.fault(at, column, why_not)
        self.draft.lose_keyless(at, column, end)
        return end

    def _column_under(self, at: int) -> int:
        """Return the column of the next line with something on it; -1 where there is none."""
        return next((indentation(line) for line in self.lines[at + 1 :] if line.strip()), -1)

    def _listed_under(self, at: int, column: int) -> bool:
        after = next((line for line in self.lines[at + 1 :] if line.strip()), "")
        return indentation(after) == column and _DASH.match(after, column) is not None

    # Values

    def _value(self, at: int, parent: int, column: int, key: str | None) -> int:
        """Take the value that begins at a sign of a line; return the index behind its last line.

        Args:
            at: Index of the line.
            parent: Column of its key or dash: further lines of it stand deeper.
            column: Index of its first sign.
            key: Its key; None for an item of a list.
        """
        line = self.lines[at]
        sign = line[column]
        if sign in "'\"":
            return self._enclosed(at, parent, column, key, scan_quoted(self.lines, at, column, parent, key))
        if sign in "[{":
            return self._enclosed(at, parent, column, key, scan_brackets(self.lines, at, column, parent, key))
        header = _HEADER.match(line, column)
        if header is not None:
            given = header["a"] or header["b"]
            return layout.mend_block(self, at, parent, parent + int(given) if given else None)
        if _LONE().match(line, column):
            self.draft.stand_for(at, column, sign)
            return at + 1
        text = line[column:]
        if sign in "*&!%@`|>,]}" or text.startswith(("- ", "? ", ": ")):
            return self._lost(at, parent, column, column, explain.text_start(key, text))
        return self._plain(at, parent, column, key)

    def _lost(self, at: int, parent: int, column: int, blamed: int, why: Why) -> int:
        """Report a value and set it aside with the lines that belong to it."""
        self.draft.fault(at, blamed, why)
        end = self._own(at, parent)
        self.draft.lose(at, self.lines[at][:column], end, column)
        return end

    def _enclosed(self, at: int, parent: int, column: int, key: str | None, inside: Inside) -> int:
        """Take a value in quotes or brackets."""
        spoilt = inside.spoilt
        if spoilt is None:
            rest = self.lines[inside.line][inside.column :]
            text = rest.strip()
            if text and not (text[0] == "#" and rest[0] == " "):
                typed = self.lines[at][column:]
                sign = self.lines[at][column]
                if sign in "[{":
                    why = explain.bracket_early(sign, key, typed)
                else:
                    why = explain.quote_early(sign, inside.column, key, typed)
                return self._lost_until(at, parent, column, (inside.line, inside.column - 1), why)
            for fault in inside.faults:
                self.draft.fault(fault.line, fault.column, fault.why)
                self.draft.lose_within(fault.line, fault.first, fault.last)
            for number, index in inside.texts:
                self.draft.stand_for(number, index, self.lines[number][index])
            return inside.line + 1
        return self._lost_until(at, parent, column, (spoilt.line, spoilt.column), spoilt.why)

    def _lost_until(self, at: int, parent: int, column: int, blamed: tuple[int, int], why: Why) -> int:
        self.draft.fault(*blamed, why)
        end = max(self._own(at, parent), blamed[0] + 1)
        self.draft.lose(at, self.lines[at][:column], end, column)
        return end

    def _plain(self, at: int, parent: int, column: int, key: str | None) -> int:
        """Take a text without quotes and the lines it goes on over."""
        line = self.lines[at]
        folded = fold_key(key) if key else ""
        text = without_comment(line[column:])
        colon = _COLON().search(text)
        if colon is not None:
            why = explain.colon_in_text(key, line[column:], free=not key or folded in self.text_keys)
            return self._lost(at, parent, column, column + colon.start(), why)
        end = at + 1
        while len(text) == len(self.lines[end - 1]) - (column if end == at + 1 else 0):
            number = end
            while number < len(self.lines) and not self.lines[number].strip():
                number += 1
            if number == len(self.lines):
                break
            line = self._text_on(number, parent)
            begins = indentation(line)
            if begins <= parent or line[begins] == "#":
                break
            text = without_comment(line)
            if folded in REMARKS:
                colon = _COLON().search(text)
                if colon is not None:
                    whole = " ".join(part.strip() for part in self.lines[at : number + 1])[
                        column - indentation(self.lines[at]) :
                    ]
                    why = explain.colon_in_text(key, whole, free=True)
                    return self._lost_until(at, parent, column, (number, colon.start()), why)
            elif _DASH.match(line, begins) or key_of(line, begins):
                break
            end = number + 1
        return end

    def _text_on(self, number: int, parent: int) -> str:
        """Return a line that a text may go on over, without tabs; empty where tabs leave that open."""
        line = self.lines[number]
        if "\t" not in line:
            return line
        text = line.lstrip(" \t")
        if "\t" in line[: len(line) - len(text)]:
            if _DASH.match(text) or key_of(text.replace("\t", " "), 0):
                return ""
            layout.mend_text_tabs(self, number, parent, None)
        if "\t" in self.lines[number][: -len(text)]:
            return ""
        self.lines[number] = self.lines[number].replace("\t", " ")
        return self.lines[number]


_OTHERWISE = (
    (_ODD_COLON, explain.colon_odd),
    (_NO_SPACE, lambda sign, key, value: explain.no_space_after_colon(key, value)),
    (_OTHER_SIGN, explain.no_colon),
    (_NUMBER_NEXT, explain.no_colon),
    (_ONLY_WORDS, explain.no_colon),
)
