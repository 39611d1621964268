"""Work spread over the processors of the machine; what comes out is the same with any number of them."""

import multiprocessing
import os
import signal
import sys
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from itertools import chain, islice
from typing import Any, TypeVar

A = TypeVar("A")
B = TypeVar("B")

_FEW = 16
"""So few pieces of work are done at once here: starting other processes would take longer."""
_AHEAD = 4
"""Pieces of work handed to each process before it asks for them, so that it never waits and few are in memory."""

_act: Callable[[Any], Any]


class Hands:
    """Some processes that do the same to many things."""

    def __init__(self, count: int | None = None) -> None:
        """Begin with as many as there are processors for this program; or with a number."""
        self.count = count or _processors()

    def map(self, function: Callable[[A], B], items: Iterable[A]) -> Iterator[B]:
        """Give what a function makes of things, in their order.

        Args:
            function: Pure; it and what it takes and gives can be pickled.
            items: Asked for one after another, few of them before their turn.
        """
        left = iter(items)
        first = list(islice(left, _FEW + 1))
        if self.count == 1 or len(first) <= _FEW:
            yield from map(function, chain(first, left))
            return
        with _context().Pool(self.count, _begin, (function,)) as pool:
            pending: deque[Any] = deque()
            for item in chain(first, left):
                pending.append(pool.apply_async(_done, (item,)))
                if len(pending) >= self.count * _AHEAD:
                    yield pending.popleft().get()
            while pending:
                yield pending.popleft().get()


def _processors() -> int:
    """Return how many processors this program may use."""
    try:
        return len(os.sched_getaffinity(0))
    except AttributeError:
        return os.cpu_count() or 1


def _context() -> Any:  # noqa: ANN401 - which class it is depends on the system
    """Return how processes are begun: as copies of this one where that is sound, since nothing is loaded again then."""
    return multiprocessing.get_context("fork" if sys.platform == "linux" else "spawn")


def _begin(function: Callable[[Any], Any]) -> None:
    """Prepare a process; what interrupts the program is for the first process to act on."""
    global _act  # noqa: PLW0603 - what a process does is the same all its life
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    _act = function


def _done(item: Any) -> Any:  # noqa: ANN401 - whatever the function takes
    return _act(item)
