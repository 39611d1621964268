"""Which clock the times of a page are told by, so that it is said once and not with every time."""

from collections import Counter
from collections.abc import Iterable, Mapping
from datetime import datetime, timedelta

from msgspec import Struct

from logbook.model.figures import offset_s
from logbook.render.language import _
from logbook.render.shown import offset_words


class Clock(Struct, frozen=True, kw_only=True):
    """The clock of a page.

    Attributes:
        offset: Offset from UTC that most of its times have; None where it has none.
        mixed: True where some have another, which then stands with them.
        zone: Name of the zone; empty where it says no more than the offset.
    """

    offset: timedelta | None
    mixed: bool
    zone: str = ""

    @property
    def words(self) -> str:
        """Return the sentence that says it; nothing where there is no time."""
        if self.offset is None:
            return ""
        named = f"{offset_words(self.offset)} ({self.zone})" if self.zone else offset_words(self.offset)
        said = _("Times are {clock}; those by another clock say so.") if self.mixed else _("Times are {clock}.")
        return said.format(clock=named)


def clock_of(moments: Iterable[datetime], zone: str = "") -> Clock:
    """Return the clock of some moments: the offset most of them have, the lesser of two that are as frequent."""
    return clock_of_offsets(Counter(map(offset_s, moments)), zone)


def clock_of_offsets(counted: Mapping[int, int], zone: str = "") -> Clock:
    """Return the clock of moments of which so many have which offset from UTC, in seconds."""
    if not counted:
        return Clock(offset=None, mixed=False, zone="")
    offset = timedelta(seconds=min(counted, key=lambda one: (-counted[one], one)))
    tells_more = zone and zone not in {offset_words(offset), offset_words(offset).removeprefix("UTC")}
    return Clock(offset=offset, mixed=len(counted) > 1, zone=zone if tells_more else "")
