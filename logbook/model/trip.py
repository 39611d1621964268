"""What a log says of one trip, as typed: nothing reckoned, nothing filled in.

`None` means "not written", which is not zero. Moments carry their offset. Collections are tuples in
the order typed.
"""

from datetime import datetime, timedelta
from decimal import Decimal
from enum import StrEnum

from msgspec import Struct
from msgspec.structs import replace

from logbook.model.fleet import Vessel
from logbook.model.problem import Place
from logbook.model.quantity import (
    Celsius,
    Kilograms,
    Knots,
    Litres,
    Money,
    Percent,
    Position,
    Price,
    Span,
    Weight,
    Wind,
)
from logbook.model.species import Species, State


class Amount(Struct, frozen=True, kw_only=True):
    """One amount of one species in one grade, as typed.

    Attributes:
        species: Name it goes by: the list's, or as typed where nobody knows it.
        known: The species' entry; None where nobody knows it.
        grade: Size grade as typed; None where none was given.
        weight: None where only a count was given or the amount could not be read.
        count: Number of fish, where given.
        state: How it was dressed: as typed, else the species' usual state, else None.
        state_typed: True where the state was typed.
        place: Where it stands.
    """

    species: str
    known: Species | None
    grade: str | None
    weight: Weight | None
    count: int | None
    state: State | None
    state_typed: bool
    place: Place


class CatchKept(StrEnum):
    """How much of a tow's catch a log tells.

    `KNOWN` has amounts (all of those that could be read), `NOTHING` is a tow that caught nothing, `NEXT` was sorted together
    with the next tow's, `UNKNOWN` was not written, `UNREADABLE` was written but could not be read.
    """

    KNOWN = "known"
    NOTHING = "nothing"
    NEXT = "with next"
    UNKNOWN = "unknown"
    UNREADABLE = "unreadable"


class Fast(Struct, frozen=True, kw_only=True):
    """Gear come fast.

    Attributes:
        what: Words for what it is: rock, wreck, cable, ordnance; empty where only `yes`.
        at: Ship's position, where typed.
    """

    what: str
    at: Position | None


class Tow(Struct, frozen=True, kw_only=True):
    """One tow.

    Attributes:
        no: Its number: as typed, else by order.
        place: Where its entry begins.
        one_line: True where it was typed on one line.
        shot: Towing begins (brakes on); None where it could not be read.
        hauled: Heaving begins.
        aboard: Last bag aboard.
        start: Position where the tow began.
        end: Position where it ended.
        via: Positions where it turned, in order.
        side: port, starboard or stern; given or carried on.
        ground: Name; given or carried on.
        net: Name; given or carried on.
        pens: Names of the pens it lies in; given or carried on.
        carried: Which of `side`, `ground`, `net`, `pens` were carried on from a tow before.
        bottom: Words.
        depth: Depth of water.
        warp: Length of warp out.
        speed: Over the ground, as logged.
        wind: The tow's own.
        sea: WMO sea state 0 to 9.
        sea_temperature: At the surface.
        deck_temperature: Of the air on deck.
        kept: How much of the catch the log tells.
        catch: What was kept, legal size; one entry per species and grade.
        undersize: Kept but under the legal size.
        put_back: What was not kept.
        put_back_kept: How much of what was put back the log tells.
        catch_gaps: Places of entries in `catch` or `undersize` that could not be read.
        stowed: When it was under ice.
        ice: Ice laid with it.
        damage: Words, where given.
        fast: Where gear came fast.
        gear_lost: Words, where given.
        remarks: Markdown, or the free words of a one-line tow; empty where none.
    """

    no: int
    place: Place
    one_line: bool = False
    shot: datetime | None = None
    hauled: datetime | None = None
    aboard: datetime | None = None
    start: Position | None = None
    end: Position | None = None
    via: tuple[Position, ...] = ()
    side: str | None = None
    ground: str | None = None
    net: str | None = None
    pens: tuple[str, ...] = ()
    carried: frozenset[str] = frozenset()
    bottom: str | None = None
    depth: Span | None = None
    warp: Span | None = None
    speed: Knots | None = None
    wind: Wind | None = None
    sea: int | None = None
    sea_temperature: Celsius | None = None
    deck_temperature: Celsius | None = None
    kept: CatchKept = CatchKept.UNKNOWN
    catch: tuple[Amount, ...] = ()
    undersize: tuple[Amount, ...] = ()
    put_back: tuple[Amount, ...] = ()
    put_back_kept: CatchKept = CatchKept.UNKNOWN
    catch_gaps: tuple[Place, ...] = ()
    stowed: datetime | None = None
    ice: Kilograms | None = None
    damage: str | None = None
    fast: Fast | None = None
    gear_lost: str | None = None
    remarks: str = ""


class Stowed(Struct, frozen=True, kw_only=True):
    """A line of the fishroom's own tally.

    Attributes:
        place: Where it stands.
        at: When.
        pen: Where it was laid.
        tows: Numbers of the tows it came from.
        fish: What was laid, one entry per species and grade.
        ice: Ice laid with it.
    """

    place: Place
    at: datetime | None
    pen: str
    tows: tuple[int, ...] = ()
    fish: tuple[Amount, ...] = ()
    ice: Kilograms | None = None


class Reading(Struct, frozen=True, kw_only=True):
    """A look at the hold.

    Attributes:
        place: Where it stands.
        at: When.
        temperatures: Pen and temperature.
        ice_left: Ice still loose to use.
        ice_taken_aboard: From ashore or another vessel.
        re_iced: Pen and ice moved there from the loose ice.
        fuel_left: Fuel still in the tanks; litres, or kilograms where a weight was typed.
        remarks: Markdown; empty where none.
    """

    place: Place
    at: datetime | None
    temperatures: tuple[tuple[str, Celsius], ...] = ()
    ice_left: Kilograms | None = None
    ice_taken_aboard: Kilograms | None = None
    re_iced: tuple[tuple[str, Kilograms], ...] = ()
    fuel_left: Litres | Weight | None = None
    remarks: str = ""


class Weather(Struct, frozen=True, kw_only=True):
    """A look at the weather.

    Attributes:
        place: Where it stands.
        at: When.
        wind: Point and force.
        sea: WMO sea state 0 to 9.
        swell: Words.
        visibility: Words.
        air_temperature: Of the air.
        pressure_hpa: In hectopascals.
        icing: On deck: none, light, moderate or severe.
        remarks: Markdown; empty where none.
    """

    place: Place
    at: datetime | None
    wind: Wind | None = None
    sea: int | None = None
    swell: str | None = None
    visibility: str | None = None
    air_temperature: Celsius | None = None
    pressure_hpa: float | None = None
    icing: str | None = None
    remarks: str = ""


class GearEvent(Struct, frozen=True, kw_only=True):
    """Something done to the gear.

    Attributes:
        place: Where it stands.
        at: When.
        part: net, doors, warps or item.
        name: Which one.
        event: changed, mended, lost or measured.
        took: How long it took.
        remarks: Markdown; empty where none.
    """

    place: Place
    at: datetime | None
    part: str
    name: str
    event: str
    took: timedelta | None = None
    remarks: str = ""


class Period(Struct, frozen=True, kw_only=True):
    """A stretch of time with what it was spent on.

    Attributes:
        place: Where it stands.
        start: When it began.
        end: When it ended.
        words: Why (time lost, all hands) or who (rest); empty where not given.
    """

    place: Place
    start: datetime | None
    end: datetime | None
    words: str = ""


class Watch(Struct, frozen=True, kw_only=True):
    """A watch of the watch bill.

    Attributes:
        name: As typed.
        hours: Start and end in hours of the clock, as `(0.0, 6.0)`; hours on watch.
    """

    name: str
    hours: tuple[tuple[float, float], ...]


class Fix(Struct, frozen=True, kw_only=True):
    """A fix while steaming.

    Attributes:
        place: Where it stands.
        at: When.
        position: Where the ship was.
        remarks: Markdown; empty where none.
    """

    place: Place
    at: datetime | None
    position: Position | None
    remarks: str = ""


class OutTurn(Struct, frozen=True, kw_only=True):
    """What the scale said of one species and grade.

    Attributes:
        species: Name it goes by.
        known: The species' entry; None where nobody knows it.
        grade: None where not told apart.
        weight: None where it could not be read.
        place: Where it stands.
    """

    species: str
    known: Species | None
    grade: str | None
    weight: Weight | None
    place: Place


class Lot(Struct, frozen=True, kw_only=True):
    """A price for one species and grade, or for one lot of it.

    Attributes:
        species: Name it goes by.
        grade: None where one price holds for all.
        weight: Weight of the lot; None where the price holds for what is left.
        price: Money for a weight.
        place: Where it stands.
    """

    species: str
    grade: str | None
    weight: Weight | None
    price: Price
    place: Place


class Landing(Struct, frozen=True, kw_only=True):
    """A landing as logged.

    Attributes:
        place: Where it stands.
        docked: When; None where it could not be read.
        port: Name as typed.
        started: Discharge begins.
        finished: Discharge ends.
        out_turn: Over the scale.
        pens: Pen and weight as it was emptied.
        temperatures: Pen and temperature at the inspector's probe.
        quality: Species name and the buyer's freshness grade in the buyer's words.
        prices: What was paid.
    """

    place: Place
    docked: datetime | None
    port: str | None = None
    started: datetime | None = None
    finished: datetime | None = None
    out_turn: tuple[OutTurn, ...] = ()
    pens: tuple[tuple[str, Weight], ...] = ()
    temperatures: tuple[tuple[str, Celsius], ...] = ()
    quality: tuple[tuple[str, str], ...] = ()
    prices: tuple[Lot, ...] = ()


class Settlement(Struct, frozen=True, kw_only=True):
    """How the gross is shared.

    Attributes:
        expenses: Name and money.
        boat_share: The boat's, in percent.
        shares: Name and number of shares.
    """

    expenses: tuple[tuple[str, Money], ...] = ()
    boat_share: Percent | None = None
    shares: tuple[tuple[str, Decimal], ...] = ()


class Turned(Struct, frozen=True, kw_only=True):
    """Turned for home.

    Attributes:
        at: When; None where it could not be read.
        position: Where, if a position was typed.
        ground: Where, if a ground was named.
    """

    at: datetime | None
    position: Position | None = None
    ground: str | None = None


class Trip(Struct, frozen=True, kw_only=True):
    """A log of one trip.

    Attributes:
        file: Name of the file it stands in.
        vessel: The vessel's entry; one of its own where the fleet file does not list it.
        number: The vessel's own number or label for the trip.
        skipper: Name.
        hands: How many aboard; the length of `crew` where names were given.
        crew: Names, where given.
        zone: Zone of the log's bare times, as typed or taken from vessel or fleet.
        begins: When the trip begins: sailed, else the first thing logged with a date.
        sailed: When; None where it could not be read.
        sailed_from: Port as typed.
        ice_loaded: At sailing.
        ice_left_at_sailing: Left aboard from before.
        fuel_loaded: Litres, or a weight where one was typed.
        sea_temperature: Where a tow gives none.
        deck_temperature: Where a tow gives none.
        planned_days: Planned length.
        planned_catch: Planned catch.
        tows: In the order typed.
        tows_lost: Places of tows that could not be read at all.
        stowage: The fishroom's tally.
        readings: Looks at the hold.
        weather: Looks at the weather.
        gear: What was done to the gear.
        time_lost: Time not fished and why.
        rest: Periods of rest.
        all_hands: When everyone was turned to.
        watches: The watch bill.
        passage: Fixes while steaming.
        turned: Turned for home.
        bound_for: Port.
        wants: Words for the quay.
        sails_again: When.
        landings: None is still at sea, or a landing not logged.
        settlement: Money shared.
        remarks: Markdown; empty where none.
    """

    file: str
    vessel: Vessel
    number: str | None = None
    skipper: str | None = None
    hands: int | None = None
    crew: tuple[str, ...] = ()
    zone: str = "UTC"
    begins: datetime
    sailed: datetime | None = None
    sailed_from: str | None = None
    ice_loaded: Kilograms | None = None
    ice_left_at_sailing: Kilograms | None = None
    fuel_loaded: Litres | Weight | None = None
    sea_temperature: Celsius | None = None
    deck_temperature: Celsius | None = None
    planned_days: float | None = None
    planned_catch: Kilograms | None = None
    tows: tuple[Tow, ...] = ()
    tows_lost: tuple[Place, ...] = ()
    stowage: tuple[Stowed, ...] = ()
    readings: tuple[Reading, ...] = ()
    weather: tuple[Weather, ...] = ()
    gear: tuple[GearEvent, ...] = ()
    time_lost: tuple[Period, ...] = ()
    rest: tuple[Period, ...] = ()
    all_hands: tuple[Period, ...] = ()
    watches: tuple[Watch, ...] = ()
    passage: tuple[Fix, ...] = ()
    turned: Turned | None = None
    bound_for: str | None = None
    wants: str | None = None
    sails_again: datetime | None = None
    landings: tuple[Landing, ...] = ()
    settlement: Settlement | None = None
    remarks: str = ""


def without_entries(log: Trip) -> Trip:
    """Return a log whose species are names alone; the rest of their entries is in the figures that were made by them."""
    landings = tuple(
        replace(landing, out_turn=tuple(replace(line, known=None) for line in landing.out_turn))
        for landing in log.landings
    )
    return replace(log, tows=tuple(_tow_without_entries(tow) for tow in log.tows), landings=landings)


def _tow_without_entries(tow: Tow) -> Tow:
    catch, put_back, undersize = (
        tuple(replace(amount, known=None) for amount in amounts) for amounts in (tow.catch, tow.put_back, tow.undersize)
    )
    return replace(tow, catch=catch, put_back=put_back, undersize=undersize)
