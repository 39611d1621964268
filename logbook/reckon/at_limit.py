"""When fish reaches an age as if kept at 0 °C: before the moment of the figures, or after it."""

from collections.abc import Sequence
from datetime import datetime, timedelta

from logbook.model.quantity import DAY
from logbook.reckon.age import Fish, Lot, equivalent_days
from logbook.reckon.curve import Curve
from logbook.reckon.homeward import FOREVER
from logbook.reckon.spoilage import rate

_A_MILLISECOND = timedelta(milliseconds=1)


def reaches(fish: Fish, limit_days: float, as_of: datetime) -> datetime | None:
    """Return when fish reaches an age as if kept at 0 °C; None where it does not within a year.

    Its pens stay as warm as they were last read.
    """
    if equivalent_days(fish, as_of) >= limit_days:
        return _reached(fish, limit_days, as_of)
    times = [_reaches_in(fish, curve, limit_days, as_of) for curve in fish.pens]
    return min((time for time in times if time is not None), default=None)


def _reached(fish: Fish, limit_days: float, by: datetime) -> datetime:
    """Return when fish that is past an age by a moment reached it, by halving the time it did so in."""
    low, high = fish.hauled, by
    while high - low > _A_MILLISECOND:
        middle = low + (high - low) / 2
        low, high = (low, middle) if equivalent_days(fish, middle) >= limit_days else (middle, high)
    return high


def _reaches_in(fish: Fish, curve: Curve, limit_days: float, as_of: datetime) -> datetime | None:
    """Return when fish reaches an age that it has not reached yet, by one of its pens."""
    iced = max(fish.iced, as_of)
    on_deck = rate(fish.deck_c) * ((min(fish.iced, as_of) - fish.hauled) / DAY)
    age = on_deck + curve.days(fish.iced, (as_of,))[0]
    age_iced = age + rate(fish.deck_c) * ((iced - as_of) / DAY)
    if age_iced >= limit_days:
        return _later(as_of, limit_days - age, rate(fish.deck_c))
    return _later(iced, limit_days - age_iced, rate(curve.at(iced)))


def _later(start: datetime, days: float, a_day: float) -> datetime | None:
    if not a_day or days / a_day >= FOREVER / DAY:
        return None
    return start + timedelta(days=days / a_day)


def first_at_limit(lots: Sequence[Lot], limit_days: float, as_of: datetime) -> datetime | None:
    """Return when the first fish reaches the limit; None where none does."""
    times = [reaches(fish, limit_days, as_of) for lot in lots for fish in lot.fish]
    return min((time for time in times if time is not None), default=None)
