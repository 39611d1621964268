"""How the lines of a log stand under one another, and every line that does not fit.

A log that YAML takes at once never comes here. One that it refuses is gone through line by line, as a person would read
it: which list or mapping a line belongs to by its indentation, its dash, its key, and what follows. What is wrong is
reported where it stands and set aside, so that one reading finds everything. What stands behind keys is left to
`behind`, lines out of line to `astray`, lines that are wrong as a whole to `layout`.
"""

from logbook.read import explain, layout
from logbook.read.astray import Astray
from logbook.read.behind import Behind
from logbook.read.draft import Draft
from logbook.read.explain import MAX_DEPTH, Why
from logbook.read.forms import form
from logbook.read.keyline import (
    COLON,
    DASH,
    TIMES,
    Keyed,
    has_value,
    indentation,
    is_known,
    key_of,
    key_typed_otherwise,
    looks_keyed,
    spaces,
)
from logbook.read.keys import fold_key
from logbook.read.levels import Level, Levels
from logbook.read.report import Report

_ODD_DASH = form(r"(?P<sign>[\u2010-\u2015\u2212\u2022\u00b7\u25aa*])(?= )|-(?=[^\W\d_]|[0-9]{1,2}:?[0-9]{2} ?-)")
_TIMED_KEY = form(r"[0-9]{1,2}:?[0-9]{2}\b[^:]*,")
_SIGNS = "*&!%@`|>"


class Outline:
    """Goes through the lines of a log and mends what YAML would stumble over.

    Attributes:
        levels: What is open where the next line begins.
        shape: How deep each line stood that stood in line.
    """

    def __init__(self, draft: Draft, text_keys: frozenset[str], levels: Levels | None = None) -> None:
        """Keep the lines.

        Args:
            draft: The lines, and what is set aside of them.
            text_keys: Folded keys whose values are free text or names.
            levels: What is open above the first line, where only some lines are looked at.
        """
        self.draft = draft
        self.lines = draft.lines
        self.text_keys = text_keys
        self.levels = levels or Levels()
        self.marks = layout.Marks(draft)
        self.behind = Behind(draft, text_keys)
        self.astray = Astray(draft, self.levels, self.behind)
        self.shape: list[int] = []

    def mend(self) -> None:
        """Go through all lines."""
        at = 0
        while at < len(self.lines) and not self.draft.full:
            at = self.take(at)
        self.marks.end()
        if self.draft.full:
            self.draft.blank(at, len(self.lines))

    def tried(self, end: int, lines: list[str]) -> tuple[int, tuple[int, ...]]:
        """Return how many lines would not fit, and how deep each would stand, if some lines were typed otherwise.

        Args:
            end: Index behind the lines that they are tried for.
            lines: What they would be.
        """
        draft = Draft([*lines, self.draft.below(end - 1)], Report(self.draft.report.file))
        trial = Outline(draft, self.text_keys, self.levels.copy())
        at = 0
        while at < len(draft.lines):
            at = trial.take(at)
        return trial.astray.misfits, tuple(trial.shape)

    def take(self, at: int) -> int:
        """Take the line at an index and all that belongs to its value; return the index behind them."""
        line = self.lines[at]
        text = line.lstrip(" \t")
        if not text or text[0] == "#":
            self.lines[at] = line.replace("\t", " ")
            return at + 1
        behind = self.marks.take(at, begun=bool(self.levels))
        if behind is not None:
            return behind
        if not self.levels:
            if text[0] in "[{":
                self.levels.open(0, listed=False)
                return self.behind.take(at, -1, len(line) - len(text), None)
            column = layout.root_column(self.lines, at)
            self.levels.open(column, listed=DASH.match(line, column) is not None)
        if "\t" in line:
            if "\t" in line[: len(line) - len(text)]:
                behind = layout.mend_tabs(self, at)
                if behind is not None:
                    return behind
            self.lines[at] = self.lines[at].replace("\t", " ")
        return self._entry(at, indentation(self.lines[at]))

    # Where a line belongs

    def _entry(self, at: int, column: int) -> int:
        line = self.lines[at]
        odd = _ODD_DASH().match(line, column)
        if odd is not None and self._means_dash(column, line):
            return self._odd_dash(at, column, odd["sign"])
        dash = DASH.match(line, column) is not None
        if not dash and self.levels.reach(column):
            keyed = key_of(line, column)
            if keyed is None and self.astray.is_cut_off(at, column):
                return self.astray.cut_off(at, column)
            target = self.astray.going_on(at, column, keyed) or self.levels.fit(column, dash=False)
            if target is not None and keyed is None:
                target = self.levels.list_at(column) or target
        else:
            target = self.levels.fit(column, dash=dash)
        if target is not None:
            return self.astray.misfit(at, column, target, dash=dash)
        self.shape.append(len(self.levels))
        return self._content(at, column)

    def _means_dash(self, column: int, line: str) -> bool:
        """Tell whether an odd dash at a column is meant for a list item."""
        level = self.levels.at_or_left(column)
        listed = level.opens or (level.listed and level.column == column)
        plainly = line[column] != "-" or TIMES.match(line, column + 1) or key_of(line, column + 1)
        return listed or bool(plainly)

    def _odd_dash(self, at: int, column: int, sign: str | None) -> int:
        """Take a line that begins with a dash of another kind, or with one without a space behind it."""
        text = self.lines[at][column + 1 :].lstrip(" ")
        self.draft.fault(at, column, explain.dash_odd(sign, text) if sign else explain.no_space_after_dash(text))
        end = self.draft.own(at, column)
        if indentation(self.draft.below(at)) == column + 1:
            for number in range(at + 1, end):
                self.draft.move(number, f" {self.lines[number]}")  # all of the item was typed without the space
        inner = self._column_below(at, column) or column + 2
        line = f"{' ' * column}-{' ' * (inner - column - 1)}{text}"
        self.draft.move(at, line)
        target = self.levels.fit(column, dash=True)
        if target is not None:
            return self.astray.misfit(at, column, target, dash=True, told=True)
        found = key_of(line, inner)
        if found is None:
            self.draft.lose(at, " " * column + "- ", end, inner)
            return end
        if not has_value(line, found.value):
            return self._content(at, column)
        level = self.levels.open(inner, listed=False)
        level.key, level.fresh = fold_key(found.key), False
        end = self.draft.own(at, inner)
        self.draft.lose(at, f"{line[:inner]}{found.key}: ", end, found.value)
        return end

    def _column_below(self, at: int, column: int) -> int | None:
        """Return the column of the line below where that is one of the same item, else None."""
        line = self.draft.below(at)
        below = indentation(line)
        return below if column + 1 < below and "\t" not in line and key_of(line, below) else None

    # What stands on a line

    def _content(self, at: int, column: int) -> int:
        line = self.lines[at]
        parent = -1
        while DASH.match(line, column):
            if parent >= 0 and len(self.levels) >= MAX_DEPTH:
                return self.behind.lose(at, parent, column, (at, column), explain.too_deep())
            level = self.levels.top if parent < 0 else self.levels.open(column, listed=True)
            level.fresh = False
            parent = column
            column += 1 + spaces(line, column + 1)
            level.opens = False
            if not has_value(line, column):
                return self._opened(at)
        found = key_of(line, column)
        if parent >= 0:
            return self._item(at, parent, column, found)
        return self._no_key(at, column) if found is None else self._keyed(at, column, found)

    def _item(self, at: int, parent: int, column: int, found: Keyed | None) -> int:
        """Take what stands behind a dash."""
        line = self.lines[at]
        if found is None:
            if self._is_entry(at, parent, column):
                self.levels.open(column, listed=False).fresh = False
                return self._no_key(at, column)
            return self.behind.take(at, parent, column, None)
        if _TIMED_KEY().match(found.key):
            colon = COLON.search(line, column)
            why = explain.colon_in_text(None, "- ", line[column:], free=True)
            return self.behind.lose(at, parent, column, (at, colon.start() if colon else column), why)
        self.levels.open(column, listed=False)
        return self._keyed(at, column, found)

    def _is_entry(self, at: int, parent: int, column: int) -> bool:
        """Tell whether an item without a key is meant to begin with one, as the line below it has one."""
        below = self.draft.below(at)
        deep = indentation(below)
        if deep <= parent or key_of(below, deep) is None:
            return False
        meant = key_typed_otherwise(self.lines[at], column, heads=True)
        return meant is not None and (bool(meant.sign) or is_known(meant.key))

    def _keyed(self, at: int, column: int, found: Keyed) -> int:
        level = self.levels.top
        level.fresh = False
        level.key = fold_key(found.key.strip("'\""))
        if len(self.levels) == 1:
            self.marks.keys.add(level.key)
        level.opens = False
        if found.key == "<<":
            return self._keyless(at, column, self.draft.own(at, column), explain.merge_key())
        if not has_value(self.lines[at], found.value):
            return self._opened(at)
        return self.behind.take(at, column, found.value, found.key)

    def _no_key(self, at: int, column: int) -> int:
        """Take a line that stands where a key is wanted and has none."""
        level = self.levels.top
        line = self.lines[at]
        if level.fresh and len(self.levels) > 1 and self._is_text(at, column, self.levels.above):
            self.levels.close()
            return self.behind.take(at, self.levels.top.column, column, self.levels.top.key or None)
        level.fresh = level.opens = False
        end = self.draft.own(at, column)
        if line.startswith((": ", "[", "{"), column):
            why = explain.key_empty() if line[column] == ":" else explain.key_not_text()
            return self._keyless(at, column, end, why)
        if line.startswith("? ", column) or line[column:] == "?":
            if end < len(self.lines) and self.lines[end].startswith(": ", column):
                end = self.draft.own(end, column)
            return self._keyless(at, column, end, explain.key_not_text())
        below = self.draft.below(at)
        deep = indentation(below)
        heads = deep > column or (deep == column and DASH.match(below, column) is not None)
        meant = key_typed_otherwise(line, column, heads=heads)
        if meant is None:
            text = line[column:].strip()
            why = (
                explain.text_start("", text)
                if text[0] in _SIGNS
                else explain.no_key(text, at + 1, self.draft.last_of(at, end))
            )
            return self._keyless(at, column, end, why)
        self.draft.fault(at, meant.at, meant.why)
        level.key = fold_key(meant.key)
        if meant.value:
            self.draft.lose(at, f"{line[:column]}{meant.key}: ", end, meant.begins)
            return end
        self.lines[at] = f"{line[:column]}{meant.key}:"
        return self._opened(at)

    def _keyless(self, at: int, column: int, end: int, why: Why) -> int:
        self.draft.fault(at, column, why)
        self.draft.lose_keyed(at, column, end)
        return end

    def _opened(self, at: int) -> int:
        """Note that the value of the last entry is yet to come; return the index of the line below."""
        self.levels.top.opens = True
        self.draft.last = None
        return at + 1

    def _is_text(self, at: int, column: int, above: Level) -> bool:
        """Tell whether a line below a key without a value is that value, and no entry of a mapping."""
        if above.listed or above.key in self.text_keys:
            return True
        if looks_keyed(self.lines[at], column):
            return False
        below = self.draft.below(at)
        return indentation(below) != column or key_of(below, column) is None
