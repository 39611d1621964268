"""Lines of a log that stand out of line: which list or mapping they were likely meant for, and what they cost."""

from logbook.read import explain
from logbook.read.behind import Behind
from logbook.read.draft import Draft
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
)
from logbook.read.keys import fold_key
from logbook.read.levels import Level, Levels


class Astray:
    """Takes lines out of line.

    Attributes:
        misfits: How many there were.
    """

    def __init__(self, draft: Draft, levels: Levels, behind: Behind) -> None:
        """Keep the lines, what is open, and who takes values."""
        self.draft = draft
        self.lines = draft.lines
        self.levels = levels
        self.behind = behind
        self.misfits = 0

    def is_cut_off(self, at: int, column: int) -> bool:
        """Tell whether a line without a key, further left than the line above, is none that was meant to stand there."""
        line = self.lines[at]
        heads = indentation(self.draft.below(at)) > column
        if (not heads and COLON.search(line)) or TIMES.match(line, column):
            return False
        meant = key_typed_otherwise(line, column, heads=heads)
        return meant is None or not (meant.sign or is_known(meant.key))

    def cut_off(self, at: int, column: int) -> int:
        """Take a line that has no key and stands further left than the line above; return the index behind it.

        Where it has a colon it is an entry, perhaps the head of lines below it; else it seems to be the end of the line
        above, and costs the value that it was cut off from.
        """
        line = self.lines[at]
        top = self.levels.top
        colon = COLON.search(line)
        if colon is None:
            self.draft.fault(at, column, explain.stray(line))
            self.draft.blank(at, at + 1)
            if not top.opens:
                self.behind.lose_last(at + 1)
            elif indentation(self.draft.below(at)) <= top.column:
                self.draft.lose(at, " " * (top.column + 1), at + 1, column)
                top.opens = False
            return at + 1
        heads = colon.end() == len(line.rstrip())
        end = self.draft.own(at, max(column, indentation(self.draft.below(at)) - 1)) if heads else at + 1
        self.draft.fault(at, column, explain.no_key(line, at + 1, self.draft.last_of(at, end)))
        if top.listed or top.opens:
            self.draft.blank(at, end)
        else:
            self.draft.lose_keyless(at, top.column, end)
        return end

    def going_on(self, at: int, column: int, keyed: Keyed | None) -> Level | None:
        """Return the level a line was meant for that would fit further left, but for the line below it."""
        line = self.lines[at]
        below = self.draft.below(at)
        deep = indentation(below)
        if keyed is None or deep <= column or not has_value(line, keyed.value) or line[keyed.value] in "'\"[{|>":
            return None
        dash = DASH.match(below, deep) is not None
        return self.levels.going_on(deep, dash=dash) if dash or key_of(below, deep) else None

    def misfit(self, at: int, column: int, target: Level, *, dash: bool, told: bool = False) -> int:
        """Take a line that stands out of line, as one of the level it was likely meant for; return the index behind.

        Args:
            at: Index of the line.
            column: Index its text begins at.
            target: The level.
            dash: True for a list item.
            told: True where something else was reported of the line already.
        """
        self.misfits += 1
        line = self.lines[at]
        self.levels.close_to(target)
        wanted = target.column
        end = self.draft.own(at, max(column, wanted))
        if target.listed and not dash and column > wanted and not TIMES.match(line, column):
            end = self.draft.own(at, wanted)
            self.draft.fault(at, column, explain.key_below_item(line.strip(), at + 1, self.draft.last_of(at, end)))
            self.draft.blank(at, end)
            self.behind.lose_last(end)
            return end
        if target.listed:
            if not told:
                why = explain.indent(column + 1, wanted + 1) if dash else explain.no_dash(line)
                self.draft.fault(at, column, why)
            self.draft.lose(at, " " * wanted + "- ", end, column)
            return end
        if not told:
            why = explain.dash_among_keys() if dash else explain.indent(column + 1, wanted + 1)
            self.draft.fault(at, column, why)
        found = None if dash else key_of(line, column)
        if found is None:
            self.draft.lose_keyless(at, wanted, end)
            return end
        target.key = fold_key(found.key)
        if has_value(line, found.value):
            self.draft.lose(at, f"{' ' * wanted}{found.key}: ", end, found.value)
            return end
        self.draft.move(at, " " * wanted + line[column:])
        target.opens = True
        return at + 1
