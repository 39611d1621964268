"""Lists and mappings that are open while the lines of a log are read, and where the next line belongs."""


class Level:
    """A list or mapping that is open.

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


class Levels:
    """All that is open, the root first; it is never closed."""

    def __init__(self, levels: list[Level] | None = None) -> None:
        """Begin with nothing open, or with some levels."""
        self._levels = levels or []

    def __len__(self) -> int:
        """Return how deep the next line may stand."""
        return len(self._levels)

    def copy(self) -> "Levels":
        """Return the same levels, to try something out."""
        return Levels([level.copy() for level in self._levels])

    @property
    def top(self) -> Level:
        """Return the innermost."""
        return self._levels[-1]

    @property
    def above(self) -> Level:
        """Return the one round the innermost."""
        return self._levels[-2]

    def open(self, column: int, *, listed: bool) -> Level:
        """Open a list or mapping as the value of the last entry."""
        if self._levels:
            self.top.opens = False
        self._levels.append(Level(column, listed=listed))
        return self.top

    def close(self) -> None:
        """Close the innermost."""
        self._levels.pop()

    def close_to(self, target: Level) -> None:
        """Close all that is open within a level, whose last entry is then complete."""
        del self._levels[self._levels.index(target) + 1 :]
        target.opens = False

    def at_or_left(self, column: int) -> Level:
        """Return the innermost level that begins at a column or left of it, else the root."""
        return next((level for level in reversed(self._levels) if level.column <= column), self._levels[0])

    def reach(self, column: int) -> bool:
        """Tell whether anything is open further right than a column."""
        return any(level.column > column for level in self._levels)

    def list_at(self, column: int) -> Level | None:
        """Return the list whose items begin at a column, or None."""
        return next((level for level in self._levels if level.listed and level.column == column), None)

    def going_on(self, column: int, *, dash: bool) -> Level | None:
        """Return the mapping whose lines go on where the next line begins at a column, or None where none does.

        Args:
            column: Index the next line begins at.
            dash: True where it is an item of a list; then the mapping is the last item of that list.
        """
        for index, level in enumerate(self._levels):
            if level.column == column and level.listed == dash:
                inner = self._levels[index + 1 : index + 2]
                return level if not dash else next((each for each in inner if not each.listed), None)
        return None

    def fit(self, column: int, *, dash: bool) -> Level | None:
        """Open or close levels for a line.

        Args:
            column: Index its text begins at.
            dash: True where that is a dash.

        Returns:
            None where it fits; else the level that it was likely meant for.
        """
        keep = len(self._levels)
        while keep > 1 and self._levels[keep - 1].column > column:
            keep -= 1
        top = self._levels[keep - 1]
        innermost = keep == len(self._levels)
        if innermost and top.opens and (top.column < column or (top.column == column and dash and not top.listed)):
            self.open(column, listed=dash)
            return None
        if top.column == column and top.listed == dash:
            del self._levels[keep:]
            return None
        if top.column == column and top.listed and keep > 1 and self._levels[keep - 2].column == column:
            del self._levels[keep - 1 :]  # the list stood in the column of its own key
            return None
        return self._meant(keep, column, dash=dash)

    def _meant(self, keep: int, column: int, *, dash: bool) -> Level:
        """Return the level that a line out of line was likely meant for: the nearest one of its kind."""
        top = self._levels[keep - 1]
        alike = [level for level in self._levels[keep - 1 :] if level.listed == dash]
        if alike:
            return min(alike, key=lambda level: (abs(level.column - column), -level.column))
        if top.column == column or (top.listed and not dash):
            return top
        above = (level for level in reversed(self._levels[:keep]) if level.listed == dash)
        return next(above, top)
