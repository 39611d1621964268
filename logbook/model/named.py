"""A table that keeps its order and can't be changed: what figures by species, pen or net stand in."""

from collections.abc import ItemsView, Iterable, Iterator, KeysView, Mapping, ValuesView
from typing import TypeVar, overload

T = TypeVar("T")
D = TypeVar("D")


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

    # What follows up to the length is there for speed alone: a mapping's own go by `__getitem__`, at five times the time.

    def __contains__(self, name: object) -> bool:
        """Tell whether there is a value of that name."""
        return name in self._pairs

    @overload
    def get(self, name: str, /) -> T | None: ...

    @overload
    def get(self, name: str, /, default: D) -> T | D: ...

    def get(self, name: str, /, default: D | None = None) -> T | D | None:
        """Return the value of that name, or the default."""
        return self._pairs.get(name, default)

    def keys(self) -> KeysView[str]:
        """Return the names in order."""
        return self._pairs.keys()

    def values(self) -> ValuesView[T]:
        """Return the values in order."""
        return self._pairs.values()

    def items(self) -> ItemsView[str, T]:
        """Return the pairs in order."""
        return self._pairs.items()

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
