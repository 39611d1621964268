"""How a trip's ice and the age of its fish went from sailing on, the lines of its charts; and which tows were unlike the others."""

from datetime import datetime

from msgspec import Struct, field

from logbook.model.named import ByName


class IceAt(Struct, frozen=True, kw_only=True):
    """Loose ice at a moment.

    Attributes:
        at: The moment.
        left_kg: What is left; never under 0.
        seen: True where somebody looked and wrote it down.
    """

    at: datetime
    left_kg: float
    seen: bool = False


class AgeAt(Struct, frozen=True, kw_only=True):
    """How old the fish is at a moment, in days as if kept at 0 °C.

    Attributes:
        at: The moment.
        oldest_days: Of the oldest.
        mean_days: By weight; None where no weight is known.
    """

    at: datetime
    oldest_days: float
    mean_days: float | None


class Course(Struct, frozen=True, kw_only=True):
    """Both, each in order of time.

    Attributes:
        ice: From sailing to the moment of the figures, with two points where ice was laid; empty where no ice is known.
        ages: From the first haul to the moment of the figures or the end of landing, whichever is later.
        unusual: Places of tows, from 1, whose figure lies far from most of the trip's, by the name of the figure.
    """

    ice: tuple[IceAt, ...] = ()
    ages: tuple[AgeAt, ...] = ()
    unusual: ByName[tuple[int, ...]] = field(default_factory=ByName)
