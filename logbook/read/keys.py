"""The keys of logs and fleet files: one table that the reader, its suggestions and its documentation share.

A table says which keys a mapping may hold, what kind of value each takes, a sentence and an example. How a value is read
stands with the records it goes into.
"""

import unicodedata
from collections.abc import Iterable
from functools import cache

from msgspec import Struct


class Key(Struct, frozen=True, kw_only=True):
    """One key.

    Attributes:
        name: As it is spelled in the documentation.
        kind: Kind of value, as the documentation names it.
        about: One sentence.
        example: A value as someone would type it.
        required: True where the mapping makes no sense without it.
        variants: Other words for the same key.
    """

    name: str
    kind: str
    about: str
    example: str
    required: bool = False
    variants: tuple[str, ...] = ()


@cache
def fold_key(text: str) -> str:
    """Return a key as it is compared: lower case, with hyphens, underscores and runs of space as one space."""
    words = unicodedata.normalize("NFC", text).casefold().replace("-", " ").replace("_", " ")
    return " ".join(words.split())


def one_slip(typed: str, meant: str) -> bool:
    """Tell whether two words differ by one letter left out, put in, changed or swapped with its neighbour."""
    if abs(len(typed) - len(meant)) > 1 or typed == meant:
        return False
    start = 0
    for a, b in zip(typed, meant, strict=False):
        if a != b:
            break
        start += 1
    rest, other = typed[start:], meant[start:]
    return (
        rest[1:] == other[1:]
        or rest[1:] == other
        or rest == other[1:]
        or (rest[:2] == other[:2][::-1] and rest[2:] == other[2:])
    )


class Keys:
    """The keys one kind of mapping may hold.

    Attributes:
        what: What messages call the mapping.
        keys: All of them.
        required: Those it makes no sense without.
        by_fold: Each by its words, folded.
    """

    __slots__ = ("by_fold", "keys", "required", "what")

    def __init__(self, what: str, *keys: Key) -> None:
        """Keep the keys of a mapping that messages call `what`."""
        self.what = what
        self.keys = keys
        self.required = tuple(key for key in keys if key.required)
        self.by_fold = {fold_key(word): key for key in keys for word in (key.name, *key.variants)}

    def find(self, typed: str) -> Key | None:
        """Return the key typed, or None."""
        return self.by_fold.get(fold_key(typed))

    def slip(self, typed: str) -> Key | None:
        """Return the one key that lies within one slip of what was typed, or None where none or several do."""
        folded = fold_key(typed)
        near = {key.name: key for word, key in self.by_fold.items() if one_slip(folded, word)}
        return next(iter(near.values())) if len(near) == 1 else None

    def words(self) -> Iterable[str]:
        """Return every word that is a key here."""
        return self.by_fold


_REMARKS = Key(
    name="remarks",
    kind="Markdown",
    about="Free text; below `remarks: |` it may run over lines and hold any sign.",
    example="Good marks at the turn.",
    variants=("remark",),
)


def _at(about: str) -> Key:
    return Key(name="at", kind="time", about=about, example="2026-03-06 08:00", required=True)


# fmt: off
# One key a line, so that the table can be read as one.
TRIP = Keys(
    "a trip",
    Key(name="vessel", kind="name", about="A vessel of the fleet file, by name or registration.", example="Solan Bright", required=True),
    Key(name="trip", kind="name", about="The vessel's own number or label for the trip.", example="14"),
    Key(name="skipper", kind="name", about="Who has command.", example="M. Aldane"),
    Key(name="crew", kind="number or names", about="How many hands, or their names as a list.", example="11"),
    Key(name="zone", kind="zone", about="The log's time: UTC, an offset or an IANA zone.", example="UTC"),
    Key(name="sailed", kind="time, port", about="When she sailed and from where.", example="2026-03-04 05:30, Port Kerrin", required=True),
    Key(name="ice loaded", kind="weight", about="Ice loaded for the trip.", example="24 t"),
    Key(name="ice left at sailing", kind="weight", about="Ice still aboard from the trip before.", example="1.5 t"),
    Key(name="fuel loaded", kind="volume or weight", about="Fuel loaded for the trip.", example="9000 l"),
    Key(name="sea temperature", kind="temperature", about="Temperature of the sea at the surface, where a tow gives none.", example="8 C"),
    Key(name="deck temperature", kind="temperature", about="Temperature of the air on deck, where a tow gives none.", example="6 C"),
    Key(name="planned", kind="mapping", about="What was planned: days and catch.", example="{days: 6, catch: 40 t}"),
    Key(name="tows", kind="list", about="The tows in order, with `- day:` lines between them.", example="- 2015-2150, 98 fm, cod 9 baskets"),
    Key(name="stowage", kind="list", about="The fishroom's own tally.", example="- {at: 0130, pen: P2, tows: 12-13, fish: {cod: 22 boxes}}"),
    Key(name="readings", kind="list", about="Looks at the hold.", example="- {at: 12:00, ice left: 9 t}"),
    Key(name="weather", kind="list", about="Looks at the weather.", example="- {at: 06:00, wind: SW 6, sea: 5}"),
    Key(name="gear", kind="list", about="What was changed, mended, lost or measured.", example="- {at: 14:00, net: rockhopper, event: mended, took: 3 h}"),
    Key(name="time lost", kind="list", about="Time not fished, and why.", example="- {from: 02:00, to: 09:30, why: dodging}"),
    Key(name="rest", kind="list", about="Periods of rest of a hand or a watch.", example="- {who: A. Fell, from: 00:00, to: 06:00}"),
    Key(name="all hands", kind="list", about="When everyone was turned to.", example="- {from: 03:00, to: 05:00, why: big haul}"),
    Key(name="passage", kind="list", about="Fixes while steaming.", example="- {at: 11:00, position: 59 20.0N 013 00.0W}"),
    Key(name="watches", kind="mapping", about="The watch bill: hours on watch.", example="{port: 00-06 12-18, starboard: 06-12 18-24}"),
    Key(name="turned for home", kind="time, position or ground", about="When and where she turned for home.", example="2026-03-10 08:15, The Saddle"),
    Key(name="bound for", kind="name", about="The port she is bound for; else the one she sailed from.", example="Port Kerrin"),
    Key(name="wants", kind="words", about="What she wants on the quay: ice, fuel, gear, a berth.", example="24 t ice, 9000 l fuel"),
    Key(name="sails again", kind="time", about="When she sails again.", example="2026-03-11 14:00"),
    Key(name="landed", kind="mapping, list or time, port", about="The landing, or a list of them.", example="2026-03-10 21:15, Port Kerrin"),
    Key(name="settlement", kind="mapping", about="How the money was shared; office only.", example="{boat's share: 40 %}"),
    _REMARKS,
)

TOW = Keys(
    "a tow",
    Key(name="no", kind="number", about="Its number; by order where left out.", example="12"),
    Key(name="shot", kind="time", about="Towing begins: brakes on.", example="18:10", required=True),
    Key(name="hauled", kind="time", about="Heaving begins.", example="19:40"),
    Key(name="aboard", kind="time", about="Last bag aboard.", example="20:05"),
    Key(name="from", kind="position", about="Where the tow began.", example="58 52.4N 015 10.0W"),
    Key(name="to", kind="position", about="Where it ended.", example="58 48.1N 015 04.2W"),
    Key(name="via", kind="list of positions", about="Where it turned, in order.", example="[58 50.0N 015 09.0W]"),
    Key(name="side", kind="side", about="The side the gear is worked on: port, starboard or stern; carried on.", example="starboard"),
    Key(name="ground", kind="name", about="The ground it was made on; carried on.", example="The Saddle"),
    Key(name="bottom", kind="words", about="What the bottom was like.", example="hard, some weed"),
    Key(name="depth", kind="depth", about="Depth of water, or a range.", example="95-110 fm"),
    Key(name="warp", kind="length", about="Length of warp out.", example="300 fm"),
    Key(name="speed", kind="speed", about="Towing speed over the ground.", example="3.2 kn"),
    Key(name="net", kind="name", about="A net of the vessel's; carried on.", example="rockhopper"),
    Key(name="wind", kind="wind", about="Where it blows from and its Beaufort force.", example="SW 6"),
    Key(name="sea", kind="sea state", about="WMO sea state, 0 to 9.", example="5"),
    Key(name="sea temperature", kind="temperature", about="Temperature of the sea at the surface.", example="8 C"),
    Key(name="deck temperature", kind="temperature", about="Temperature of the air on deck.", example="6 C"),
    Key(name="catch", kind="catch", about="What was kept, by species and grade; `none`, or `with next`.", example="{cod: 14 baskets}"),
    Key(name="put back", kind="catch", about="What was not kept.", example="{skate: 3 baskets}", variants=("over the side", "discards")),
    Key(name="undersize", kind="catch", about="Kept, but under the legal size.", example="{haddock: 20 kg}"),
    Key(name="pen", kind="name or list of names", about="Where it lies; carried on; several share evenly.", example="P1", variants=("pens",)),
    Key(name="stowed", kind="time", about="When it was under ice.", example="20:45"),
    Key(name="ice", kind="weight", about="Ice laid with it.", example="0.4 t"),
    Key(name="damage", kind="words", about="What was damaged.", example="wing torn"),
    Key(name="fast", kind="yes, words or position", about="Gear came fast: yes, on what, or where.", example="wreck"),
    Key(name="gear lost", kind="words", about="What was lost.", example="cod end"),
    _REMARKS,
)

DAY = Keys("a day line", Key(name="day", kind="day", about="The day that the times below it begin on.", example="Thu 5 March", required=True))

PLANNED = Keys(
    "what was planned",
    Key(name="days", kind="number", about="Planned length of the trip in days.", example="6"),
    Key(name="catch", kind="weight", about="Planned catch.", example="40 t"),
)

STOWAGE = Keys(
    "a line of the stowage",
    _at("When it was laid."),
    Key(name="pen", kind="name", about="The pen it was laid in.", example="P2", required=True),
    Key(name="tows", kind="numbers", about="Numbers of the tows it came from.", example="12-13", variants=("tow",)),
    Key(name="fish", kind="catch", about="What was laid.", example="{haddock: {large: 22 boxes}}", required=True),
    Key(name="ice", kind="weight", about="Ice laid with it.", example="0.6 t"),
)

READING = Keys(
    "a reading",
    _at("When it was taken."),
    Key(name="pen", kind="name", about="The pen of a single temperature.", example="P1"),
    Key(name="temperature", kind="temperature", about="The temperature in that pen.", example="0.4 C"),
    Key(name="temperatures", kind="mapping", about="Pen and temperature of several.", example="{P1: 0.4 C, P2: 0.8 C}"),
    Key(name="ice left", kind="weight", about="Ice still loose to use.", example="9 t"),
    Key(name="ice taken aboard", kind="weight", about="Ice taken from ashore or another vessel.", example="4 t"),
    Key(name="re-iced", kind="mapping", about="Pen and ice moved there from the loose ice.", example="{P1: 0.3 t}"),
    Key(name="fuel left", kind="volume or weight", about="Fuel in the tanks.", example="5200 l"),
    _REMARKS,
)

WEATHER = Keys(
    "a look at the weather",
    _at("When it was."),
    Key(name="wind", kind="wind", about="Where it blows from and its Beaufort force.", example="SW 6"),
    Key(name="sea", kind="sea state", about="WMO sea state, 0 to 9.", example="5"),
    Key(name="swell", kind="words", about="Height and direction of the swell.", example="3 m from W"),
    Key(name="visibility", kind="words", about="How far one sees.", example="good"),
    Key(name="air temperature", kind="temperature", about="Temperature of the air.", example="4 C"),
    Key(name="pressure", kind="pressure", about="Pressure of the air.", example="1004 hPa", variants=("barometer",)),
    Key(name="icing", kind="icing", about="Icing on deck: none, light, moderate or severe.", example="light"),
    _REMARKS,
)

GEAR = Keys(
    "a gear entry",
    _at("When it was."),
    Key(name="net", kind="name", about="Which net.", example="rockhopper"),
    Key(name="doors", kind="name", about="Which doors.", example="old pair"),
    Key(name="warps", kind="name", about="Which warps.", example="starboard"),
    Key(name="item", kind="name", about="Anything else.", example="cod end"),
    Key(name="event", kind="gear event", about="What was done: changed, mended, lost or measured.", example="mended", required=True),
    Key(name="took", kind="duration", about="How long it took.", example="3 h"),
    _REMARKS,
)

_FROM = Key(name="from", kind="time", about="When it began.", example="02:00", required=True)
_TO = Key(name="to", kind="time", about="When it ended.", example="09:30", required=True)

TIME_LOST = Keys(
    "an entry of time lost",
    _FROM,
    _TO,
    Key(name="why", kind="words", about="The cause: dodging, gear, engine, ice, berth, shifting ground, or words.", example="dodging", required=True),
)
REST = Keys("a period of rest", Key(name="who", kind="name", about="A hand or a watch.", example="A. Fell", required=True), _FROM, _TO)
ALL_HANDS = Keys("an entry of all hands", _FROM, _TO, Key(name="why", kind="words", about="What they were turned to for.", example="big haul"))
PASSAGE = Keys(
    "a fix",
    _at("When it was."),
    Key(name="position", kind="position", about="Where the ship was.", example="59 20.0N 013 00.0W", required=True),
    _REMARKS,
)

LANDED = Keys(
    "a landing",
    Key(name="docked", kind="time", about="When she was alongside.", example="2026-03-10 21:15", required=True),
    Key(name="port", kind="name", about="Where she landed.", example="Port Kerrin"),
    Key(name="started landing", kind="time", about="Discharge begins.", example="22:00", variants=("discharging",)),
    Key(name="finished landing", kind="time", about="Discharge ends.", example="03:10", variants=("discharged",)),
    Key(name="out-turn", kind="weights", about="What the scale said, by species and grade.", example="{cod: {large: 4120 kg}}"),
    Key(name="pens", kind="mapping", about="Pen and weight as it was emptied.", example="{P1: 2310 kg}"),
    Key(name="temperatures", kind="mapping", about="Pen and temperature at the inspector's probe.", example="{P1: 0.4 C}"),
    Key(name="quality", kind="mapping", about="Species and the buyer's freshness grade, in the buyer's words.", example="{cod: A}"),
    Key(name="prices", kind="prices", about="What was paid, by species, grade or lot.", example="{haddock: 2.15/kg}"),
)

SETTLEMENT = Keys(
    "the settlement",
    Key(name="expenses", kind="mapping", about="Name and money.", example="{fuel: 5200, ice: 900}"),
    Key(name="boat's share", kind="percent", about="The boat's part of what is left.", example="40 %", variants=("boats share", "boat share")),
    Key(name="shares", kind="mapping", about="Name and number of shares.", example="{skipper: 1.5, deck: 1}"),
)

FLEET = Keys(
    "the fleet file",
    Key(name="fleet", kind="name", about="The fleet's name.", example="Kerrin Isles Trawl Co-operative"),
    Key(name="zone", kind="zone", about="Time of logs that name none.", example="UTC"),
    Key(name="currency", kind="name", about="Its money.", example="KRC"),
    Key(name="home port", kind="name", about="Where its vessels sail from.", example="Port Kerrin"),
    Key(name="waters", kind="hemispheres", about="Letters meant where a position has none.", example="N W"),
    Key(name="units", kind="mapping", about="Unit meant where none is typed.", example="{depth: fm, catch: basket}"),
    Key(name="limits", kind="mapping", about="What the fleet holds itself to.", example="{ice days: 10}"),
    Key(name="constants", kind="mapping", about="Physics that may be set.", example="{latent heat: 334 kJ/kg}"),
    Key(name="assumed", kind="mapping", about="What is filled in where a log says nothing.", example="{fish to ice: 2}"),
    Key(name="measures", kind="mapping", about="The fleet's own measures.", example="{basket: 40 kg, box: 45 kg}"),
    Key(name="vessels", kind="list", about="Its vessels.", example="- name: Solan Bright"),
    Key(name="ports", kind="list", about="Its ports.", example="- name: Port Kerrin"),
    Key(name="routes", kind="list", about="Ways home.", example="- {to: Port Kerrin, via: [59 20.0N 013 00.0W]}"),
    Key(name="grounds", kind="list", about="Its grounds.", example="- {name: The Saddle, within: [58 30N 015 40W, 59 00N 014 50W]}"),
    Key(name="species", kind="list", about="Species of its own, or put in place of the program's.", example="- {name: cod, also: [keeling]}"),
    Key(name="editions", kind="mapping", about="What the crew and the public see.", example="{crew: {positions: ground}}"),
    Key(name="season starts", kind="day", about="When the season begins, if not with the year.", example="1 September"),
    Key(name="language", kind="language", about="Language of the pages.", example="en"),
)

UNITS = Keys(
    "units",
    Key(name="depth", kind="unit", about="The unit of depths.", example="fm"),
    Key(name="length", kind="unit", about="The unit of warps and gear.", example="m"),
    Key(name="catch", kind="unit", about="The unit of catches; a measure of the fleet's own will do.", example="basket"),
    Key(name="weight", kind="unit", about="The unit of ice, out-turn and other weights.", example="kg"),
    Key(name="temperature", kind="unit", about="The unit of temperatures.", example="C"),
    Key(name="speed", kind="unit", about="The unit of speeds.", example="kn"),
    Key(name="fuel", kind="unit", about="The unit of fuel.", example="l"),
    Key(name="gallon", kind="gallon", about="Which gallon: imperial or US.", example="imperial"),
)
LIMITS = Keys(
    "limits",
    Key(name="ice days", kind="number", about="Equivalent days on ice that fish should not pass.", example="10"),
    Key(name="landing temperature", kind="temperature", about="Warmest at the inspector's probe.", example="2 C"),
    Key(name="hail tolerance", kind="percent", about="Allowed difference of out-turn from hail.", example="10 %"),
)
CONSTANTS = Keys(
    "constants",
    Key(name="specific heat", kind="specific heat", about="Specific heat of fish.", example="3.35 kJ/kgK"),
    Key(name="latent heat", kind="latent heat", about="Heat that melts ice.", example="334 kJ/kg"),
)
ASSUMED = Keys(
    "what is assumed",
    Key(name="fish to ice", kind="number", about="Kilograms of fish laid with one of ice.", example="2"),
    Key(name="pen temperature", kind="temperature", about="Temperature of a pen without a reading.", example="1 C"),
    Key(name="hours to stow", kind="number", about="Hours from hauled to under ice.", example="2"),
)
VESSEL = Keys(
    "a vessel",
    Key(name="name", kind="name", about="Its name.", example="Solan Bright", required=True),
    Key(name="registration", kind="name", about="Port letters and number.", example="KI 114"),
    Key(name="zone", kind="zone", about="Time of its logs, where not the fleet's.", example="UTC"),
    Key(name="length", kind="length", about="Length over all.", example="31 m"),
    Key(name="steaming speed", kind="speed", about="Her usual speed on passage.", example="9.5 kn"),
    Key(name="poor weather speed", kind="speed", about="Her usual speed on passage in poor weather.", example="6.5 kn"),
    Key(name="towing speed", kind="speed", about="Her usual speed while towing.", example="3.2 kn"),
    Key(name="ice capacity", kind="weight", about="Ice she can load.", example="30 t"),
    Key(name="hold", kind="mapping", about="Her fishroom.", example="{heat gain: 1.9 kW, pens: {P1: 2.4 t}}"),
    Key(name="nets", kind="list", about="Her nets.", example="- {name: rockhopper, door spread: 62 m}"),
)
HOLD = Keys(
    "a hold",
    Key(name="heat gain", kind="power", about="Heat that comes in through its sides.", example="1.9 kW"),
    Key(name="surface", kind="area", about="In place of heat gain: its surface.", example="72 m2"),
    Key(name="insulation", kind="heat passage", about="In place of heat gain: heat passed.", example="0.45 W/m2K"),
    Key(name="pens", kind="mapping", about="Pen and what it holds.", example="{P1: 2.4 t, S1: 2.4 t}"),
)
NET = Keys(
    "a net",
    Key(name="name", kind="name", about="What it is called.", example="rockhopper", required=True),
    Key(name="side", kind="side", about="Where it is worked: port, starboard or stern.", example="starboard"),
    Key(name="doors", kind="weight", about="Weight of a door.", example="720 kg"),
    Key(name="door spread", kind="length", about="Distance between the doors.", example="62 m"),
    Key(name="wing spread", kind="length", about="Distance between the wings.", example="17 m"),
    Key(name="headline", kind="length", about="Length of the headline.", example="24 m"),
    Key(name="mesh", kind="mesh", about="Mesh of the cod end.", example="120 mm"),
)
PORT = Keys(
    "a port",
    Key(name="name", kind="name", about="Its name.", example="Port Kerrin", required=True),
    Key(name="at", kind="position", about="Where it lies.", example="59 40.0N 012 10.0W"),
    Key(name="landing rate", kind="landing rate", about="Usual rate of discharge.", example="5 t/h"),
    Key(name="sale", kind="mapping", about="Its market.", example="{days: Mon-Fri, time: 07:00}"),
)
SALE = Keys(
    "a sale",
    Key(name="days", kind="weekdays", about="Days of sale.", example="Mon-Fri", required=True),
    Key(name="time", kind="clock time", about="When it begins, in the fleet's zone.", example="07:00", required=True),
    Key(name="all ashore before", kind="duration", about="How long before it the fish must be ashore.", example="3 h"),
    Key(name="none on", kind="list of days", about="Days without a sale.", example="[2026-04-03]"),
)
ROUTE = Keys(
    "a route",
    Key(name="to", kind="name", about="The port.", example="Port Kerrin", required=True),
    Key(name="via", kind="list of positions", about="In the order sailed towards it.", example="[59 20.0N 013 00.0W]", required=True),
)
GROUND = Keys(
    "a ground",
    Key(name="name", kind="name", about="Its name.", example="The Saddle", required=True),
    Key(name="within", kind="list of positions", about="Two corners of a box, or three or more of an outline.", example="[58 30N 015 40W, 59 00N 014 50W]"),
)
SPECIES = Keys(
    "a species",
    Key(name="name", kind="name", about="What it is called.", example="cod", required=True),
    Key(name="code", kind="name", about="FAO 3-alpha code.", example="COD"),
    Key(name="also", kind="list of names", about="Other names; `{codling: small}` for one that is a grade.", example="[keeling]"),
    Key(name="usual state", kind="state", about="How it is dressed where nothing is said.", example="gutted"),
    Key(name="grades", kind="list of names", about="Its size grades.", example="[large, medium, small]"),
    Key(name="factors", kind="mapping", about="State and factor to live weight, with their authority.", example="{gutted: 1.10, authority: Norway 2000}"),
)
EDITION = Keys(
    "an edition",
    Key(name="positions", kind="positions", about="How finely positions are shown: exact, rectangle or ground.", example="ground"),
    Key(name="fasts", kind="yes or no", about="Whether fasts are shown.", example="yes"),
    Key(name="after", kind="duration", about="How long positions are held back.", example="0 days"),
)
EDITIONS = Keys(
    "editions",
    Key(name="office", kind="mapping", about="What is shown to the office.", example="{positions: exact}"),
    Key(name="crew", kind="mapping", about="What is shown to the crew.", example="{positions: ground}"),
    Key(name="public", kind="mapping", about="What is shown to everybody.", example="{positions: rectangle}"),
)

# fmt: on

TEXT_KINDS = frozenset(
    {"name", "words", "Markdown", "number or names", "yes, words or position", "name or list of names"}
)
"""Kinds whose value is free text or a name, where a comment that cuts it short is worth a warning."""

TEXT_KEYS = frozenset(
    word
    for table in (
        TRIP,
        TOW,
        STOWAGE,
        READING,
        WEATHER,
        GEAR,
        TIME_LOST,
        REST,
        ALL_HANDS,
        LANDED,
        PASSAGE,
        FLEET,
        VESSEL,
        NET,
        PORT,
        GROUND,
        SPECIES,
    )
    for word in table.words()
    if (key := table.find(word)) is not None and key.kind in TEXT_KINDS
)
"""Folded keys whose values are free text or names."""
