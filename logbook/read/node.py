"""The tree of a log: texts, mappings and lists, each with the place where it was typed.

Knows nothing of keys, units or YAML. A log has thousands of nodes: they are compared as what they are, not by what they hold, and
the garbage collector need not know of them, since none holds one above it.
"""

from msgspec import Struct

from logbook.model.problem import Place


class Node(Struct, eq=False, gc=False):
    """Something typed in a log.

    Attributes:
        file: Name of the log.
        line: Line it begins on, from 1.
        column: Column it begins at, from 1.
        end_line: Line it ends on.
    """

    file: str
    line: int
    column: int
    end_line: int

    @property
    def place(self) -> Place:
        """Return where it begins."""
        return Place(file=self.file, line=self.line, column=self.column)


class Scalar(Node, eq=False, gc=False):
    """A text.

    Attributes:
        value: The text as typed, without its quotes.
        style: `'`, `"`, `|` or `>` where it stands in quotes or in a block of lines, else empty.
        comment: Column of the `#` of a comment behind it on its last line; 0 where there is none.
        folds: Where its further lines begin, where it runs over several without quotes: index in the text, line, column.
    """

    value: str
    style: str = ""
    comment: int = 0
    folds: tuple[tuple[int, int, int], ...] = ()

    def __repr__(self) -> str:
        """Return the text with its place."""
        return f"<{self.value!r} {self.line}:{self.column}>"


class Lost(Node, eq=False, gc=False):
    """Stands where an item or a value was set aside because it could not be read; that has been reported."""

    def __repr__(self) -> str:
        """Return that something is lost, with its place."""
        return f"<lost {self.line}:{self.column}>"


class Mapping(Node, eq=False, gc=False):
    """Keys with values, in the order they were typed; a key may stand twice.

    Attributes:
        entries: Keys and values.
        lost: Lines of it that could not be read and show no key; they have been reported.
        flow: True where it is typed inside `{ }`.
    """

    entries: tuple[tuple[Scalar, Node], ...]
    lost: tuple[Lost, ...] = ()
    flow: bool = False

    def __repr__(self) -> str:
        """Return the entries with their place."""
        return f"<mapping {self.line}:{self.column} {self.entries!r}>"


class Sequence(Node, eq=False, gc=False):
    """Items in the order they were typed.

    Attributes:
        items: The items.
        flow: True where it is typed inside `[ ]`.
    """

    items: tuple[Node, ...]
    flow: bool = False

    def __repr__(self) -> str:
        """Return the items with their place."""
        return f"<list {self.line}:{self.column} {self.items!r}>"
