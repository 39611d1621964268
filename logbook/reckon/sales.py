"""The sales of a port that lie ahead."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta, timezone, tzinfo
from zoneinfo import ZoneInfo

from msgspec import Struct

from logbook.model.fleet import Sale
from logbook.model.quantity import DAY

_DAYS_AHEAD = 60
_OFFSET = len("+00:00")


class ComingSale(Struct, frozen=True, kw_only=True):
    """A sale that lies ahead.

    Attributes:
        at: When it begins, at the offset that the fleet's clocks have then.
        ashore_by: By when landing must be finished.
    """

    at: datetime
    ashore_by: datetime


def clocks(zone: str) -> tzinfo:
    """Return the rules of a zone as the fleet file has it: UTC, an offset as `+01:00`, or an IANA name."""
    if zone == "UTC":
        return UTC
    if zone[0] in "+-" and len(zone) == _OFFSET:
        size = timedelta(hours=int(zone[1:3]), minutes=int(zone[4:]))
        return timezone(-size if zone[0] == "-" else size)
    return ZoneInfo(zone)


def coming_sales(sale: Sale | None, zone: str, after: datetime) -> Iterator[ComingSale]:
    """Give the sales after a moment, in order; none where the port has no market.

    Args:
        sale: When the port's sales are.
        zone: The fleet's zone, whose clocks the time of sale is by.
        after: The moment.
    """
    if sale is None:
        return
    rules = clocks(zone)
    first = after.astimezone(rules).date()
    for ahead in range(_DAYS_AHEAD):
        day = first + ahead * DAY
        shown = datetime.combine(day, sale.time, tzinfo=rules)
        at = shown.replace(tzinfo=timezone(shown.utcoffset() or timedelta(0)))
        if day.weekday() in sale.days and day not in sale.none_on and at > after:
            yield ComingSale(at=at, ashore_by=at - sale.all_ashore_before)
