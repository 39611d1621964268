"""How warm a place was, reading by reading, and how fast fish aged in it."""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from datetime import datetime
from itertools import pairwise

from logbook.model.quantity import DAY
from logbook.reckon.spoilage import linear_days


class Curve:
    """Temperatures at moments in order, linear between them, flat before the first and after the last; one at least."""

    __slots__ = ("_days", "_times", "celsius")

    def __init__(self, points: Sequence[tuple[datetime, float]]) -> None:
        """Keep the points, with how much fish ages from each to the next."""
        self._times = [time for time, _ in points]
        self.celsius = tuple(celsius for _, celsius in points)
        self._days = [linear_days(self.at(a), self.at(b), (b - a) / DAY) for a, b in pairwise(self._times)]

    def at(self, time: datetime) -> float:
        """Return the temperature at a moment."""
        after = bisect_left(self._times, time)
        if after == 0:
            return self.celsius[0]
        if after == len(self._times):
            return self.celsius[-1]
        before, low, high = self._times[after - 1], self.celsius[after - 1], self.celsius[after]
        return low + (high - low) * ((time - before) / (self._times[after] - before))

    def days(self, start: datetime, end: datetime) -> float:
        """Return the equivalent days between two moments; 0 where the end is not after the start."""
        if end <= start:
            return 0.0
        times = self._times
        if start > times[-1]:
            return linear_days(self.celsius[-1], self.celsius[-1], (end - start) / DAY)
        first, beyond = bisect_right(times, start), bisect_left(times, end)
        if first >= beyond:
            return self._within(start, end)
        until, since = times[first], times[beyond - 1]
        return sum((self._within(start, until), *self._days[first : beyond - 1], self._within(since, end)))

    def _within(self, start: datetime, end: datetime) -> float:
        """Return the equivalent days of a stretch in which nobody looked."""
        return linear_days(self.at(start), self.at(end), (end - start) / DAY)
