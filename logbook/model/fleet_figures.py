"""Sums over many trips: of a vessel, a ground, a species, a month or the whole fleet."""

from datetime import datetime
from decimal import Decimal

from msgspec import Struct, field

from logbook.model.named import ByName
from logbook.model.quantity import Money


class GroupFigures(Struct, frozen=True, kw_only=True):
    """Sums over some trips or tows of the fleet: of a vessel, a ground, a species or a season.

    Attributes:
        name: What they have in common, as it is shown.
        trips: How many trips bear on it.
        days_at_sea: Days of those trips; None for a ground or a species.
        tows: Tows counted.
        foul_tows: Of those, the foul ones.
        towed_h: Hours towed.
        kept_kg: What was kept, where known.
        put_back_kg: What was put back, where known.
        live_kg: Live weight of what was kept, where known.
        kept_kg_per_h: Total kept over total hours of the tows whose catch is known.
        kept_kg_per_h_clean: The same without foul tows.
        hours_by_light: day, twilight and night to hours towed.
        kept_kg_per_h_by_light: The same for the catch.
        out_turn_kg: Over the scale, of those trips that were weighed; None for tows.
        mean_ice_days: Mean age at docking of the fish of landed trips, by weight; None for tows.
        gross: What the landed fish brought, where prices are logged; None for tows.
    """

    name: str
    trips: int
    days_at_sea: float | None
    tows: int
    foul_tows: int
    towed_h: float | None
    kept_kg: Decimal | None
    put_back_kg: Decimal | None
    live_kg: Decimal | None
    kept_kg_per_h: float | None
    kept_kg_per_h_clean: float | None
    hours_by_light: ByName[float] = field(default_factory=ByName)
    kept_kg_per_h_by_light: ByName[float | None] = field(default_factory=ByName)
    out_turn_kg: Decimal | None = None
    mean_ice_days: float | None = None
    gross: Money | None = None


class Usual(Struct, frozen=True, kw_only=True):
    """What a vessel keeps of a species.

    Attributes:
        name: The species.
        trips: On how many trips it was kept.
        kept_kg: In all.
        median_kg: On the middle one of those trips.
        most_kg: On the best of them.
        most_id: Which that was.
    """

    name: str
    trips: int
    kept_kg: Decimal
    median_kg: Decimal
    most_kg: Decimal
    most_id: str


class HailBias(Struct, frozen=True, kw_only=True):
    """How a vessel's out-turns of a species lay over her hails, in percent, over all her trips that tell both.

    Attributes:
        name: The species.
        trips: How many trips tell.
        median_percent: On the middle one; None for fewer than five.
        low_percent: At the lower quartile.
        high_percent: At the upper quartile.
    """

    name: str
    trips: int
    median_percent: float | None
    low_percent: float | None
    high_percent: float | None


class VesselFigures(Struct, frozen=True, kw_only=True):
    """What a vessel's page tells over all her trips.

    Attributes:
        grounds: By ground name, the most fished first.
        usual: By species, the most kept first.
        bias: By species, the most landed first.
        landed_by_year: Calendar year of docking to what she landed.
        best: Ids of the ended trips that kept most a day at sea, the best first.
        offsets: Offset from UTC in seconds to how many times of her logs have it.
    """

    grounds: ByName[GroupFigures] = field(default_factory=ByName)
    usual: tuple[Usual, ...] = ()
    bias: tuple[HailBias, ...] = ()
    landed_by_year: ByName[Decimal] = field(default_factory=ByName)
    best: tuple[str, ...] = ()
    offsets: dict[int, int] = {}


class Landed(Struct, frozen=True, kw_only=True):
    """What one trip put ashore.

    Attributes:
        trip_id: Which trip.
        vessel: Its vessel's name.
        docked: When.
        season: The season that it belongs to.
        species: Weight of each species.
        weighed: True where it is the out-turn over the scale, False where only the hail is known.
    """

    trip_id: str
    vessel: str
    docked: datetime
    season: str
    species: ByName[Decimal]
    weighed: bool


class FleetFigures(Struct, frozen=True, kw_only=True):
    """Sums over all trips of the archive.

    Attributes:
        vessels: By vessel name.
        grounds: By ground name, the most fished first; tows with no ground are left out.
        species: By species name, the heaviest first.
        seasons: By season, as `2026`; of trips that docked in it.
        landed_by_month: Month as `2026-03`, to species, to kilograms; months without a landing between two with one are there, empty.
        offsets: Offset from UTC in seconds to how many times of the logs have it.
    """

    vessels: ByName[GroupFigures]
    grounds: ByName[GroupFigures]
    species: ByName[GroupFigures]
    seasons: ByName[GroupFigures]
    landed_by_month: ByName[ByName[Decimal]]
    offsets: dict[int, int] = {}
