"""Stretches of time: united, taken from each other, and the window that holds least of them.

Everything is reckoned in UTC, so that an hour is an hour whatever the clocks do.
"""

from bisect import bisect_right
from collections.abc import Iterable, Sequence
from datetime import UTC, datetime, timedelta
from itertools import accumulate

from msgspec import Struct

Stretch = tuple[datetime, datetime]
"""From one moment to another."""

Stretches = tuple[Stretch, ...]
"""In order, none empty, none touching the next."""


class Window(Struct, frozen=True, kw_only=True):
    """A window of time.

    Attributes:
        start: When it begins.
        held: How much of the stretches lies in it.
    """

    start: datetime
    held: timedelta


def united(stretches: Iterable[Stretch]) -> Stretches:
    """Return stretches in order, those that overlap or touch made one; what is empty or backwards is dropped."""
    joined: list[Stretch] = []
    for start, end in sorted((start.astimezone(UTC), end.astimezone(UTC)) for start, end in stretches if start < end):
        if joined and start <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(joined[-1][1], end))
        else:
            joined.append((start, end))
    return tuple(joined)


def within(stretches: Stretches, span: Stretch) -> Stretches:
    """Return what of stretches lies between two moments."""
    return united((max(start, span[0]), min(end, span[1])) for start, end in stretches)


def less(span: Stretch, taken: Stretches) -> Stretches:
    """Return what is left of a span when stretches are taken from it."""
    inside = within(taken, span)
    return united(zip((span[0], *(end for _, end in inside)), (*(start for start, _ in inside), span[1]), strict=True))


def least_in(stretches: Stretches, length: timedelta, span: Stretch) -> Window | None:
    """Return the window of a length that holds least of some stretches.

    What a window holds, taken as its beginning moves on, is made of straight pieces. It stops falling only where the window
    begins at the end of a stretch or ends at the beginning of one; so only those windows and the first and last can be it.

    Args:
        stretches: What is held.
        length: The window's length.
        span: The window lies within it.

    Returns:
        The window, the earliest where several hold as little; None where none fits.
    """
    first, last = span[0].astimezone(UTC), span[1].astimezone(UTC) - length
    if last < first:
        return None
    bends = {first, last, *(end for _, end in stretches), *(start - length for start, _ in stretches)}
    held = _Held(stretches)
    least, start = min((held.until(at + length) - held.until(at), at) for at in bends if first <= at <= last)
    return Window(start=start, held=least)


class _Held:
    """How much of some stretches came before a moment."""

    __slots__ = ("_before", "_starts", "_stretches")

    def __init__(self, stretches: Stretches) -> None:
        self._stretches = stretches
        self._starts: Sequence[datetime] = [start for start, _ in stretches]
        lengths = (end - start for start, end in stretches)
        self._before = list(accumulate(lengths, initial=timedelta(0)))

    def until(self, moment: datetime) -> timedelta:
        """Return the sum of what of the stretches lies before a moment."""
        n = bisect_right(self._starts, moment)
        if n == 0:
            return timedelta(0)
        start, end = self._stretches[n - 1]
        return self._before[n - 1] + min(moment, end) - start
