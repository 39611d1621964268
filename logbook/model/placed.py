"""Where a trip has its place among its vessel's, and where two of them are at odds."""

from datetime import datetime

from msgspec import Struct

from logbook.model.names import fold_name
from logbook.model.trip import Trip


class Placed(Struct, frozen=True, kw_only=True):
    """As much of a trip as its place among its vessel's trips hangs on.

    Attributes:
        file: Its log.
        vessel: The vessel's name.
        begins: When it begins.
        sailed: When she sailed; None where it could not be read.
        ends: The last moment that it was certainly under way or landing.
    """

    file: str
    vessel: str
    begins: datetime
    sailed: datetime | None
    ends: datetime

    @property
    def order(self) -> tuple[str, datetime, str]:
        """Return what trips are put in order by: by vessel, then by when they began, then by file."""
        return fold_name(self.vessel), self.begins, self.file


class Head(Struct, frozen=True, kw_only=True, array_like=True):
    """As much of a trip's figures as is asked of all trips at once.

    Attributes:
        id: Its id.
        last_word: The time of the last thing logged.
        caught: Species that were caught, in alphabetical order.
        kept: Those of which a weight was kept.
    """

    id: str
    last_word: datetime
    caught: tuple[str, ...]
    kept: tuple[str, ...]


class Clash(Struct, frozen=True, kw_only=True):
    """What is wrong between two logs of one vessel, told at one of them.

    Attributes:
        file: The log it is told at.
        other: The other log.
        code: Which rule.
    """

    file: str
    other: str
    code: str


def placed(trip: Trip) -> Placed:
    """Return where a trip has its place."""
    moments = [moment for tow in trip.tows for moment in (tow.shot, tow.hauled) if moment is not None]
    moments += [landing.docked for landing in trip.landings if landing.docked is not None]
    return Placed(
        file=trip.file,
        vessel=trip.vessel.name,
        begins=trip.begins,
        sailed=trip.sailed,
        ends=max(moments, default=trip.begins),
    )
