"""How a trip stands at a moment: what the figures of the hold and of the way home are made from."""

from collections.abc import Sequence
from datetime import datetime
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import Totals, TowFigures
from logbook.model.fleet import Fleet
from logbook.model.quantity import DAY
from logbook.model.trip import Tow, Trip
from logbook.reckon.age import Lot
from logbook.reckon.catch import kilograms
from logbook.reckon.untold import untold


class Standing(Struct, frozen=True, kw_only=True):
    """A trip at a moment.

    Attributes:
        trip: The trip as it stood.
        fleet: Its fleet.
        as_of: The moment.
        state: at sea, homeward, landed or landing not logged.
        tows: The figures of its tows, in order.
        totals: The sums over them.
        lots: The fish aboard, or that may be aboard.
    """

    trip: Trip
    fleet: Fleet
    as_of: datetime
    state: str
    tows: tuple[TowFigures, ...]
    totals: Totals
    lots: tuple[Lot, ...]

    @property
    def at_sea(self) -> bool:
        """Tell whether she is still out, so that there is something ahead to reckon."""
        return self.state in ("at sea", "homeward")

    @property
    def aboard_kg(self) -> float | None:
        """Return the fish aboard as far as it is known; 0 before the first haul, None where no catch is known."""
        if self.totals.kept_kg is not None:
            return float(self.totals.kept_kg)
        return None if self.not_known else 0.0

    @property
    def not_known(self) -> tuple[int, ...]:
        """Return the numbers of the tows that came up, but of whose catch the weight is not known or not all of it."""
        tows, not_told = self.trip.tows, untold(self.trip.tows)
        return tuple(tow.no for n, tow in enumerate(tows) if n in not_told or _counted(tow))

    @property
    def catching_kg_per_day(self) -> float | None:
        """Return the rate of catching for a look ahead: the greater of the trip's mean and the last 24 hours.

        0 for one that is homeward, None where no catch is known.
        """
        if self.state == "homeward":
            return 0.0
        rates = (self.totals.kept_kg_per_day, last_day_kg(self.tows, self.as_of))
        return max((rate for rate in rates if rate is not None), default=None)


def _counted(tow: Tow) -> bool:
    """Tell whether some of a catch was counted and not weighed."""
    return any(kilograms(fish) is None for fish in tow.catch)


def last_day_kg(tows: Sequence[TowFigures], as_of: datetime) -> float | None:
    """Return what was kept of the tows hauled in the last 24 hours; None where none of them has a known catch."""
    kept = [
        tow.kept_kg
        for tow in tows
        if tow.kept_kg is not None and tow.hauled is not None and as_of - DAY < tow.hauled <= as_of
    ]
    return float(sum(kept, Decimal(0))) if kept else None
