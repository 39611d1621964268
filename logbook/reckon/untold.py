"""Which tows came up without the log telling all that was kept of them."""

from collections.abc import Sequence

from logbook.model.trip import CatchKept, Tow
from logbook.reckon.on_ice import may_be_aboard
from logbook.reckon.together import sorted_together, still_waiting

_TOLD = (CatchKept.KNOWN, CatchKept.NOTHING)


def untold(tows: Sequence[Tow]) -> tuple[int, ...]:
    """Return the places of the tows that came up, but of whose catch nothing or not all is told.

    Of tows sorted together that is all of them, where the last one's catch is not told or its gear is still down. Fish that
    was counted and not weighed is told.
    """
    aboard = may_be_aboard(tows)
    waiting = range(len(tows) - len(still_waiting(tows)), len(tows))
    together = [n for group in sorted_together(tows) if group and not _told(tows[group[-1]]) for n in group]
    return tuple(n for n in sorted({*waiting, *together}) if aboard[n])


def _told(tow: Tow) -> bool:
    return tow.kept in _TOLD and not tow.catch_gaps
