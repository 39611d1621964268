"""What the gear went through: hours and mishaps of nets, doors and warps, and where gear came fast."""

from datetime import datetime

from msgspec import Struct

from logbook.model.basis import Basis
from logbook.model.quantity import Position


class NetFigures(Struct, frozen=True, kw_only=True):
    """One entry of `gear`: a net, or of `rigging`: the doors or the warps.

    Attributes:
        towed_h: Hours it was towed on this trip; None where no tow's hours are known.
        tows: How many tows it made.
        foul_tows: Of those, the foul ones.
        fasts: How many came fast; None where that is not shown.
        damage: What was damaged or lost, in the words of the log, tow by tow.
        time_lost_h: Hours that mending and changing it took, as logged with it; None where none was.
        towed_h_since_mended: Hours over the vessel's trips since it was changed, mended or lost; None as `towed_h`.
        tows_since_mended: Tows since then.
        mended_at: When that was; None where no log says so.
        basis: What it leaves out.
    """

    towed_h: float | None
    tows: int
    foul_tows: int
    fasts: int | None
    damage: tuple[str, ...]
    time_lost_h: float | None
    towed_h_since_mended: float | None
    tows_since_mended: int
    mended_at: datetime | None
    basis: Basis = ()


class FastMark(Struct, frozen=True, kw_only=True):
    """A place where gear came fast.

    Attributes:
        trip_id: On which trip.
        vessel: Whose gear.
        tow: Number of the tow.
        order: Its place among the tows of the trip, from 1.
        when: When it was hauled, else shot; None where neither is known.
        ground: Its ground.
        depth_m: Mean depth of the tow.
        what: rock, wreck, cable, ordnance or other words; empty where it is not told.
        at: The ship's position as typed; None where none was.
        track: The tow's positions from shot to hauled, where no position was typed; may be empty.
    """

    trip_id: str
    vessel: str
    tow: int
    order: int
    when: datetime | None
    ground: str | None
    depth_m: float | None
    what: str
    at: Position | None
    track: tuple[Position, ...] = ()
