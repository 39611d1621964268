"""What is told of one problem code."""

from collections.abc import Iterator
from enum import StrEnum

from msgspec import Struct

from logbook.model.visible import visible

_WIDTH = 80
"""Signs of a line that are shown."""


class Where(StrEnum):
    """What a sample is a part of."""

    TOWS = "an item below tows: in a log"
    LOG = "in a log"
    WHOLE = "a whole log"
    FLEET = "in the fleet file"
    FILE = "about the file itself"


class Entry(Struct, frozen=True, kw_only=True):
    """One problem code, explained.

    Attributes:
        code: The code.
        where: What the samples are a part of; those about the file itself are in words.
        means: What is wrong, and how it usually comes about.
        read: What the reader did with it.
        bad: A sample that is told so.
        good: The same as it should be.
    """

    code: str
    where: Where
    means: str
    read: str
    bad: str
    good: str

    @property
    def in_words(self) -> bool:
        """Tell whether the samples are words about a file, not lines."""
        return self.where is Where.FILE

    def lines(self, sample: str) -> Iterator[str]:
        """Give the lines of a sample as they can be shown: without odd signs, and no longer than anyone reads."""
        for line in sample.split("\n"):
            shown = visible(line)
            yield shown if len(shown) <= _WIDTH else f"{shown[:_WIDTH]} ..."


class Chapter(Struct, frozen=True, kw_only=True):
    """Codes that belong together.

    Attributes:
        id: Its place on a page.
        title: What they are about.
        entries: In order of their codes.
    """

    id: str
    title: str
    entries: tuple[Entry, ...]


def explained(code: str, means: str, read: str, bad: str, good: str, where: Where = Where.LOG) -> Entry:
    """Return an entry, written as a row."""
    return Entry(code=code, where=where, means=means, read=read, bad=bad, good=good)
