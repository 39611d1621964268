"""Lists that are too long for one page, on several: which entries stand on which, and the way from one to the next."""

from collections.abc import Callable, Iterable
from typing import TypeVar

from msgspec import Struct

from logbook.render.frame import Frame
from logbook.render.links import numbered_page

_One = TypeVar("_One")


class Pages(Struct, frozen=True, kw_only=True):
    """The pages of a list.

    Attributes:
        first: Path of the first of them.
        number: Which of them this one is, from 1.
        count: How many there are.
    """

    first: str
    number: int
    count: int

    def links(self, frame: Frame) -> tuple[tuple[int, str, bool], ...]:
        """Return of each page its number, the link to it, and whether it is this one; nothing where there is only one."""
        if self.count == 1:
            return ()
        every = range(1, self.count + 1)
        return tuple((number, frame.to(numbered_page(self.first, number)), number == self.number) for number in every)


def parted(entries: Iterable[_One], most: int, size: Callable[[_One], int] = lambda _: 1) -> list[list[_One]]:
    """Return entries in parts whose sizes add up to so much at most, one part at least; an entry that is larger has its own.

    Args:
        entries: In the order they stand in.
        most: How much a part holds.
        size: How much an entry is.
    """
    parts: list[list[_One]] = [[]]
    left = most
    for entry in entries:
        if parts[-1] and size(entry) > left:
            parts.append([])
            left = most
        parts[-1].append(entry)
        left -= size(entry)
    return parts
