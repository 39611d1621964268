"""A table that keeps its order and can't be changed: what figures by species, pen or net stand in."""

from collections.abc import Iterable, Iterator, Mapping
from typing import TypeVar

T = TypeVar("T")


class ByName(Mapping[str, T]):
    """An ordered, frozen mapping from names to values.

    Two tables are equal where they hold the same pairs, whatever their order.
    """

    __slots__ = ("_pairs",)

    def __init__(self, pairs: Iterable[tuple[str, T]] = ()) -> None:
        """Keep the pairs in the order given; a later pair of the same name takes the place of the first."""
        self._pairs = dict(pairs)

    def __getitem__(self, name: str) -> T:
        """Return the value of that name; KeyError where there is none."""
        return self._pairs[name]

    def __iter__(self) -> Iterator[str]:
        """Go over the names in order."""
        return iter(self._pairs)

    def __len__(self) -> int:
        """Return how many names there are."""
        return len(self._pairs)

    def __hash__(self) -> int:
        """Hash what it holds, for records that are hashed."""
        return hash(frozenset(self._pairs.items()))

    def __repr__(self) -> str:
        """Return the pairs as a table."""
        return f"ByName({self._pairs!r})"
