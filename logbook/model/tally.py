"""Sums that add up exactly, whatever is added to what first: of a tow, a trip, a vessel's season, a fleet.

Times are whole microseconds and weights decimals, so that sums over parts of an archive add up to the same as sums over the whole of it,
to the last digit; no rate is in them, only what it is made of. Where nothing is known of something, nothing stands.
"""

from datetime import datetime
from decimal import Decimal

from msgspec import Struct

from logbook.model.gear import FastMark
from logbook.model.places import TowMark

NOUGHT = Decimal(0)
ALL, CLEAN = "all", "clean"
"""Names of the rates over all tows, and over those that were not foul, nor sorted with one that was."""


class Rate(Struct, frozen=True, array_like=True):
    """What a catch per hour is made of, of the tows of which both are known.

    Attributes:
        kept: Kilograms.
        us: Microseconds.
    """

    kept: Decimal = NOUGHT
    us: int = 0


class Sums(Struct, frozen=True, array_like=True):
    """Sums over some tows.

    Attributes:
        trips: Of how many trips they are.
        tows: How many they are.
        foul: How many of them were foul.
        kept: Kilograms kept.
        put_back: Kilograms put back.
        live: Live weight of what was kept.
        hours: "all", day, twilight and night to microseconds towed, as far as known.
        rates: "all", "clean", day, twilight and night to what the catch per hour is made of.
    """

    trips: int = 0
    tows: int = 0
    foul: int = 0
    kept: Decimal | None = None
    put_back: Decimal | None = None
    live: Decimal | None = None
    hours: dict[str, int] = {}
    rates: dict[str, Rate] = {}


class TripSums(Struct, frozen=True, array_like=True):
    """Sums over some whole trips.

    Attributes:
        sums: Of their tows.
        days_us: At sea, in microseconds.
        out_turn: Kilograms over the scale.
        aged_kg: Landed fish whose age is known.
        aged_kg_s: Each kilogram of it times its age in whole seconds.
        gross: What it brought.
    """

    sums: Sums = Sums()
    days_us: int | None = None
    out_turn: Decimal | None = None
    aged_kg: Decimal = NOUGHT
    aged_kg_s: Decimal = NOUGHT
    gross: Decimal | None = None


class KeptHere(Struct, frozen=True, array_like=True):
    """What a ground gave of a species.

    Attributes:
        kept: Kilograms.
        rated: That of the tows whose catch and hours are known.
        clean: That of those among them that were not foul.
        months: Calendar month to what is in `rated`.
    """

    kept: Decimal = NOUGHT
    rated: Decimal = NOUGHT
    clean: Decimal = NOUGHT
    months: dict[int, Decimal] = {}


class GroundTally(Struct, frozen=True, array_like=True):
    """Sums over the tows on a ground.

    Attributes:
        name: As the earliest trip spelled it.
        since: When that began, and its id.
        sums: Of all its tows.
        months: Of those by calendar month.
        bands: By band of depth, numbered from 0 m.
        years: By year of the tow.
        species: What they kept.
        best: Those that kept most for each hour, the best first.
    """

    name: str
    since: tuple[datetime, str]
    sums: Sums
    months: dict[int, Sums] = {}
    bands: dict[int, Sums] = {}
    years: dict[int, Sums] = {}
    species: dict[str, KeptHere] = {}
    best: tuple[TowMark, ...] = ()


class SpeciesTally(Struct, frozen=True, array_like=True):
    """Sums over what was caught of a species.

    Attributes:
        code: FAO 3-alpha code, where it has one.
        sums: Of the tows that had it; `rates` with what they kept of it.
        out_turn: Kilograms over the scale.
        months: Calendar month to what was kept in tows whose catch and hours are known.
        grades: Grade to kilograms kept of it.
        landed: Month as `2026-03` to kilograms put ashore.
        best: Tows that kept most of it for each hour, the best first.
    """

    code: str | None = None
    sums: Sums = Sums()
    out_turn: Decimal | None = None
    months: dict[int, Decimal] = {}
    grades: dict[str, Decimal] = {}
    landed: dict[str, Decimal] = {}
    best: tuple[TowMark, ...] = ()


class OwnTally(Struct, frozen=True, array_like=True):
    """What is told of a vessel alone, trip by trip.

    Attributes:
        kept: Species to kilograms kept on each trip that kept any, with the trip's id.
        bias: Species to how far the out-turn lay over the hail on each trip that tells, in percent.
        landed: Calendar year of docking to kilograms put ashore.
        best: The ended trips that kept most a day, the best first: kilograms a day, and which trip.
    """

    kept: dict[str, list[tuple[Decimal, str]]] = {}
    bias: dict[str, list[float]] = {}
    landed: dict[str, Decimal] = {}
    best: tuple[tuple[float, str], ...] = ()


class Tally(Struct, frozen=True, array_like=True):
    """All sums over some trips that the pages of a fleet ask for.

    Attributes:
        every: Of all of them.
        docked: Of those that docked.
        months: Calendar month to microseconds of tows whose catch and hours are known.
        grounds: By folded name.
        species: By name.
        landed: Month as `2026-03`, to species, to kilograms put ashore.
        offsets: Offset from UTC in seconds to how many times of their logs have it.
        own: What is told of one vessel; empty where they are of several.
    """

    every: TripSums = TripSums()
    docked: TripSums = TripSums()
    months: dict[int, int] = {}
    grounds: dict[str, GroundTally] = {}
    species: dict[str, SpeciesTally] = {}
    landed: dict[str, dict[str, Decimal]] = {}
    offsets: dict[int, int] = {}
    own: OwnTally = OwnTally()


class Days(Struct, frozen=True, array_like=True):
    """What a trip did on each ground day by day.

    Attributes:
        grounds: Folded name, to the day's number in the calendar that began in the year 1, to sums.
    """

    grounds: dict[str, dict[int, Sums]] = {}


class Hauls(Struct, frozen=True, array_like=True):
    """Tows of a trip that kept more than any after them: one of these is the best since whatever moment.

    Attributes:
        tows: In order of time.
    """

    tows: tuple[TowMark, ...] = ()


class Mishaps(Struct, frozen=True, array_like=True):
    """What befell the gear on a trip.

    Attributes:
        fasts: Where it came fast.
        damage: Tows whose gear was damaged or lost, with the words of the log.
    """

    fasts: tuple[FastMark, ...] = ()
    damage: tuple[TowMark, ...] = ()
