"""What a vessel's earlier trips leave behind that bears on the next one."""

from datetime import datetime

from msgspec import Struct, field

from logbook.model.named import ByName
from logbook.model.trip import Trip


class GearPast(Struct, frozen=True, kw_only=True):
    """A net's, the doors' or the warps' hours since it was changed, mended or lost.

    Attributes:
        towed_h: Hours towed since; None where no tow's hours are known.
        tows: Tows since.
        mended_at: When that was; None where no log says so.
    """

    towed_h: float | None = None
    tows: int = 0
    mended_at: datetime | None = None


class Past(Struct, frozen=True, kw_only=True):
    """What is known of a vessel before a trip.

    Attributes:
        trips: How many earlier trips there are.
        out_turn_over_hail: Species to the ratio of out-turn to hail on each earlier trip that tells both, in order of time.
        nets: By folded name.
        rigging: `doors` and `warps`.
        recent: The trips of the last week before this one, for rest.
    """

    trips: int = 0
    out_turn_over_hail: ByName[tuple[float, ...]] = field(default_factory=ByName)
    nets: ByName[GearPast] = field(default_factory=ByName)
    rigging: ByName[GearPast] = field(default_factory=ByName)
    recent: tuple[Trip, ...] = ()
