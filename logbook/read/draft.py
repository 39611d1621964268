"""A log's lines while they are being mended: stand-ins for what is set aside, what they stand for, and how many.

Every stand-in keeps its line, so that places stay true. What is wrong with a line is found in `outline` and said in
`explain`.
"""

from logbook.read.events import HIDDEN, Swaps
from logbook.read.explain import Why, too_many
from logbook.read.keyline import indentation
from logbook.read.node import Lost
from logbook.read.report import Report

MAX_FAULTS = 100

STAND_IN = "x"
NO_KEY = "0"


class Draft:
    """A log's lines while they are being mended.

    Attributes:
        lines: The lines; what is set aside is replaced by a stand-in or blanked.
        swaps: What the stand-ins stand for.
        report: Takes what is wrong.
        faults: How many errors were reported.
        full: True once there were more than anyone reads.
        last: Index of the line and sign of the value that the line above ends with; None where it has none.
    """

    __slots__ = ("faults", "full", "last", "lines", "report", "swaps")

    def __init__(self, lines: list[str], report: Report) -> None:
        """Begin with nothing set aside."""
        self.lines = lines
        self.swaps = Swaps()
        self.report = report
        self.faults = 0
        self.full = False
        self.last: tuple[int, int] | None = None

    def fault(self, line: int, column: int, why: Why) -> None:
        """Report an error at a line and sign, both counted from 0."""
        self.faults += 1
        if self.faults > MAX_FAULTS and not self.full:
            self.full = True
            self.report.error(line + 1, 1, *too_many())
        if self.full:
            return
        self.report.error(line + 1, self.typed(line, column) + 1, *why)

    def give_up(self, at: int) -> None:
        """Give up all lines from an index on, and say so."""
        if not self.full:
            self.full = True
            self.report.error(at + 1, 1, *too_many())
        self.blank(at, len(self.lines))

    def has_stand_in(self, at: int) -> bool:
        """Tell whether something of a line was set aside before."""
        return any(line == at + 1 for line, _ in (*self.swaps.lost, *self.swaps.keyless))

    def note(self, line: int, column: int, why: Why) -> None:
        """Report something that was put right."""
        self.report.note(line + 1, self.typed(line, column) + 1, *why)

    def move(self, at: int, line: str) -> None:
        """Put a line in place of one that says the same but begins further left or right."""
        self.swaps.moved[at + 1] = self.swaps.moved.get(at + 1, 0) + len(line) - len(self.lines[at])
        self.lines[at] = line

    def _begin(self, at: int, column: int) -> None:
        """Note that what a line holds will begin at another column."""
        further = column - indentation(self.lines[at])
        if further:
            self.swaps.moved[at + 1] = self.swaps.moved.get(at + 1, 0) + further

    def typed(self, at: int, column: int) -> int:
        """Return the index at which a sign of a line was typed."""
        return max(0, column - self.swaps.moved.get(at + 1, 0))

    def blank(self, first: int, last: int) -> None:
        """Blank lines from the first to before the last."""
        for number in range(first, last):
            self.lines[number] = ""

    def below(self, at: int) -> str:
        """Return the next line with something on it; empty where there is none."""
        below = (self.lines[number] for number in range(at + 1, len(self.lines)))
        return next((line for line in below if line.strip()), "")

    def own(self, at: int, column: int) -> int:
        """Return the index behind the lines that belong to a line, as they stand deeper than a column."""
        end = at + 1
        while end < len(self.lines):
            line = self.lines[end]
            text = line.lstrip(" \t")
            if text and len(line[: len(line) - len(text)].expandtabs(8)) <= column:
                break
            end += 1
        return end

    def last_of(self, at: int, end: int) -> int:
        """Return the number of the last line with something on it, from an index on and before another."""
        while end > at + 1 and not self.lines[end - 1].strip():
            end -= 1
        return end

    def _gone(self, at: int, column: int, last: int) -> Lost:
        """Blank the lines behind one that is lost, and return what stands for all of them."""
        end = self.last_of(at, last)
        self.blank(at + 1, last)
        self.last = None
        return Lost(self.report.file, at + 1, self.typed(at, column) + 1, end)

    def lose(self, at: int, prefix: str, last: int, column: int) -> None:
        """Put a stand-in for a value or item behind a prefix, and blank the lines that belonged to it.

        Args:
            at: Index of its line.
            prefix: What stays before it.
            last: Index behind its last line.
            column: Index of the sign where it was typed.
        """
        self.swaps.lost[at + 1, len(prefix) + 1] = self._gone(at, column, last)
        self._begin(at, indentation(prefix))
        self.lines[at] = prefix + STAND_IN

    def lose_keyed(self, at: int, column: int, last: int) -> None:
        """Put a stand-in for an entry that begins at a sign of a line, perhaps behind a dash; its key is of no use."""
        self.swaps.keyless[at + 1, column + 1] = self._gone(at, column, last)
        self.lines[at] = f"{self.lines[at][:column]}{NO_KEY}: {STAND_IN}"

    def lose_keyless(self, at: int, indent: int, last: int) -> None:
        """Put a stand-in for an entry whose key is not plain to see."""
        self._begin(at, indent)
        self.lines[at] = " " * indent
        self.lose_keyed(at, indent, last)

    def lose_within(self, at: int, first: int, last: int) -> None:
        """Put a stand-in for one text inside brackets; everything else stays where it is."""
        line = self.lines[at]
        self.lines[at] = line[:first] + STAND_IN.ljust(last - first) + line[last:]
        self.swaps.lost[at + 1, first + 1] = Lost(self.report.file, at + 1, self.typed(at, first) + 1, at + 1)

    def stand_for(self, at: int, column: int, text: str) -> None:
        """Put a stand-in for a lone sign that YAML would take for its own."""
        self.put(at, column, STAND_IN)
        self.swaps.texts[at + 1, column + 1] = text

    def hide(self, at: int, column: int) -> None:
        """Hide a question mark within a text from YAML."""
        self.put(at, column, HIDDEN)
        self.swaps.hidden = True

    def put(self, at: int, column: int, sign: str) -> None:
        """Put another sign in place of one."""
        line = self.lines[at]
        self.lines[at] = f"{line[:column]}{sign}{line[column + 1 :]}"
