"""Who does the same thing to many: the protocol of whatever spreads work over processes, and the one that spreads none."""

from collections.abc import Callable, Iterable, Iterator
from typing import Protocol, TypeVar

A = TypeVar("A")
B = TypeVar("B")


class Hands(Protocol):
    """Whatever does one thing to many, one after the other or in several processes at once."""

    def map(self, function: Callable[[A], B], items: Iterable[A]) -> Iterator[B]:
        """Give what a function makes of each item, in the order of the items.

        Args:
            function: One of a module, or a `functools.partial` of one, so that another process finds it.
            items: What can be sent to another process, as its results can be.
        """


class _One:
    """This process alone."""

    def map(self, function: Callable[[A], B], items: Iterable[A]) -> Iterator[B]:
        return map(function, items)


ONE: Hands = _One()
