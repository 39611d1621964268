"""What a vessel's earlier trips leave behind that bears on the next one, and what each of them leaves."""

from datetime import datetime

from msgspec import Struct, field

from logbook.model.named import ByName
from logbook.model.trip import Period, Watch


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


class Spread(Struct, frozen=True, kw_only=True):
    """How the ratios of out-turn to hail lie over some trips.

    Attributes:
        trips: How many of the trips tell both.
        low: The first quartile; None each where there are too few trips.
        middle: The median.
        high: The third quartile.
    """

    trips: int = 0
    low: float | None = None
    middle: float | None = None
    high: float | None = None


class Rested(Struct, frozen=True, kw_only=True):
    """What a log says of rest.

    Attributes:
        file: The log.
        zone: Of its clocks.
        sailed: When she sailed, else when the trip began.
        until: The end of the last landing; None where neither that nor a docking is logged.
        rest: Periods of rest.
        all_hands: When everyone was turned to.
        watches: The watch bill.
    """

    file: str
    zone: str
    sailed: datetime
    until: datetime | None
    rest: tuple[Period, ...]
    all_hands: tuple[Period, ...]
    watches: tuple[Watch, ...]


class Past(Struct, frozen=True, kw_only=True):
    """What is known of a vessel before a trip, as far as it bears on that trip.

    Attributes:
        out_turn_over_hail: How the ratios of her earlier trips lie, for each species of this one.
        nets: By folded name, those that this trip's log or fleet file tells of.
        rigging: `doors` and `warps`, where something was ever done to them.
        recent: The rest logged on the trips of the week before this one, in order of time.
    """

    out_turn_over_hail: ByName[Spread] = field(default_factory=ByName)
    nets: ByName[GearPast] = field(default_factory=ByName)
    rigging: ByName[GearPast] = field(default_factory=ByName)
    recent: tuple[Rested, ...] = ()


class GearLeft(Struct, frozen=True, kw_only=True):
    """What one trip adds to a net's, the doors' or the warps' hours.

    Attributes:
        hours: Of each tow since it was last changed, mended or lost on this trip, else of each tow of the trip; those that are known.
        tows: How many tows those are.
        mended_at: When it was; None where nothing of the kind was done on this trip.
    """

    hours: tuple[float, ...]
    tows: int
    mended_at: datetime | None = None


class Left(Struct, frozen=True, kw_only=True):
    """What one trip leaves behind for the vessel's later ones: small, so that a vessel's of all years can be looked through.

    Attributes:
        file: Its log.
        sailed: When she sailed, else when the trip began.
        until: The end of the last landing; None where neither that nor a docking is logged.
        rests: Whether its log tells of rest, so that the week before matters.
        species: All that it caught or landed.
        ratios: Species and ratio of out-turn to hail.
        nets: Folded name and what is added.
        rigging: The same of `doors` and `warps`.
        rigged: To which of these something was done.
    """

    file: str
    sailed: datetime
    until: datetime | None
    rests: bool = False
    species: tuple[str, ...] = ()
    ratios: tuple[tuple[str, float], ...] = ()
    nets: tuple[tuple[str, GearLeft], ...] = ()
    rigging: tuple[tuple[str, GearLeft], ...] = ()
    rigged: tuple[str, ...] = ()
