"""How warm a place was, reading by reading, and how fast fish aged in it."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from datetime import datetime

from logbook.model.quantity import DAY
from logbook.reckon.spoilage import linear_days


class Curve:
    """Temperatures at moments in order, linear between them, flat before the first and after the last; one at least."""

    __slots__ = ("_times", "celsius")

    def __init__(self, points: Sequence[tuple[datetime, float]]) -> None:
        """Keep the points."""
        self._times = [time for time, _ in points]
        self.celsius = tuple([celsius for _, celsius in points])

    def at(self, time: datetime) -> float:
        """Return the temperature at a moment."""
        after = bisect_left(self._times, time)
        if after == 0:
            return self.celsius[0]
        if after == len(self._times):
            return self.celsius[-1]
        before, low, high = self._times[after - 1], self.celsius[after - 1], self.celsius[after]
        return low + (high - low) * ((time - before) / (self._times[after] - before))

    def days(self, start: datetime, ends: Iterable[datetime]) -> list[float]:
        """Return the equivalent days from a moment to each of others, those in order; 0 to one that is not after it."""
        points = self._times[bisect_right(self._times, start) :]
        aged, since, celsius, passed, last = 0.0, start, self.at(start), 0, len(points)
        found = []
        for end in ends:
            if end <= start:
                found.append(0.0)
                continue
            while passed < last and points[passed] < end:
                time = points[passed]
                warm = self.at(time)
                aged += linear_days(celsius, warm, (time - since) / DAY)
                since, celsius, passed = time, warm, passed + 1
            warm = self.celsius[-1] if passed == last else self.at(end)
            found.append(aged + linear_days(celsius, warm, (end - since) / DAY))
        return found
