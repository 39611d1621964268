"""The tree of a log: texts, mappings and lists, each with the place where it was typed.

Knows nothing of keys, units or YAML. Nodes are plain slotted classes, since a log has thousands of them.
"""

from logbook.model.problem import Place


class Node:
    """Something typed in a log.

    Attributes:
        file: Name of the log.
        line: Line it begins on, from 1.
        column: Column it begins at, from 1.
        end_line: Line it ends on.
    """

    __slots__ = ("column", "end_line", "file", "line")

    def __init__(self, file: str, line: int, column: int, end_line: int) -> None:
        """Keep where it stands."""
        self.file = file
        self.line = line
        self.column = column
        self.end_line = end_line

    @property
    def place(self) -> Place:
        """Return where it begins."""
        return Place(file=self.file, line=self.line, column=self.column)


class Scalar(Node):
    """A text.

    Attributes:
        value: The text as typed, without its quotes.
        style: `'`, `"`, `|` or `>` where it stands in quotes or in a block of lines, else empty.
        comment: Column of the `#` of a comment behind it on its last line; 0 where there is none.
        folds: Where its further lines begin, where it runs over several without quotes: index in the text, line, column.
    """

    __slots__ = ("comment", "folds", "style", "value")

    def __init__(
        self, file: str, line: int, column: int, end_line: int, value: str, style: str = "", comment: int = 0
    ) -> None:
        """Keep a text and where it stands."""
        self.file = file
        self.line = line
        self.column = column
        self.end_line = end_line
        self.value = value
        self.style = style
        self.comment = comment
        self.folds: tuple[tuple[int, int, int], ...] = ()

    def __repr__(self) -> str:
        """Return the text with its place."""
        return f"<{self.value!r} {self.line}:{self.column}>"


class Lost(Node):
    """Stands where an item or a value was set aside because it could not be read; that has been reported."""

    __slots__ = ()

    def __repr__(self) -> str:
        """Return that something is lost, with its place."""
        return f"<lost {self.line}:{self.column}>"


class Mapping(Node):
    """Keys with values, in the order they were typed; a key may stand twice.

    Attributes:
        entries: Keys and values.
        flow: True where it is typed inside `{ }`.
        lost: Lines of it that could not be read and show no key; they have been reported.
    """

    __slots__ = ("entries", "flow", "lost")

    def __init__(
        self,
        file: str,
        line: int,
        column: int,
        end_line: int,
        entries: tuple[tuple[Scalar, Node], ...],
        lost: tuple[Lost, ...] = (),
        *,
        flow: bool = False,
    ) -> None:
        """Keep entries and where they stand."""
        self.file = file
        self.line = line
        self.column = column
        self.end_line = end_line
        self.entries = entries
        self.flow = flow
        self.lost = lost

    def __repr__(self) -> str:
        """Return the entries with their place."""
        return f"<mapping {self.line}:{self.column} {self.entries!r}>"


class Sequence(Node):
    """Items in the order they were typed.

    Attributes:
        items: The items.
        flow: True where it is typed inside `[ ]`.
    """

    __slots__ = ("flow", "items")

    def __init__(
        self, file: str, line: int, column: int, end_line: int, items: tuple[Node, ...], *, flow: bool = False
    ) -> None:
        """Keep items and where they stand."""
        self.file = file
        self.line = line
        self.column = column
        self.end_line = end_line
        self.items = items
        self.flow = flow

    def __repr__(self) -> str:
        """Return the items with their place."""
        return f"<list {self.line}:{self.column} {self.items!r}>"
