"""A log to a trip: the whole of one file, every part read even where another can't be."""

import unicodedata
from datetime import datetime

from msgspec import Struct

from logbook.model.fleet import Fleet, Vessel
from logbook.model.names import fold_name
from logbook.model.problem import Problem
from logbook.model.quantity import DAY, Kilograms
from logbook.model.trip import Fix, GearEvent, Landing, Period, Reading, Stowed, Tow, Trip, Weather
from logbook.read.duration import parse_duration
from logbook.read.explain import second_document
from logbook.read.fields import (
    Found,
    error,
    named_list,
    nearest,
    open_mapping,
    pairs_of,
    take,
    take_remarks,
    take_text,
    take_words,
    texts_of,
    warn,
)
from logbook.read.keys import PLANNED, TEXT_KEYS, TRIP, fold_key
from logbook.read.known import Known, SpeciesIndex, port_of
from logbook.read.landing import Landings, take_settlement, take_time_and_words, take_turned
from logbook.read.lists import Lists
from logbook.read.number import parse_count, parse_number
from logbook.read.plausible import doubts
from logbook.read.species import program_species
from logbook.read.terms import Terms, take_weight
from logbook.read.timeline import SAILED, SAILS_AGAIN, Clock
from logbook.read.tow import take_tows
from logbook.read.tree import Mapping, Node, Sequence, read_tree
from logbook.read.zone import Zone, parse_zone

CODES = frozenset({"no-date", "vessel-unlisted"})

NO_VESSEL = "Vessel not named"
"""Name that a trip goes by whose log names no vessel."""


class Fleetwide(Struct, frozen=True, kw_only=True):
    """A fleet with what is made of it once for all its logs."""

    fleet: Fleet
    species: SpeciesIndex
    terms: Terms


def prepare(fleet: Fleet | None = None) -> Fleetwide:
    """Return a fleet ready to read logs by; without one, the program's own species and no measures."""
    if fleet is None:
        fleet = Fleet(species=program_species())
    return Fleetwide(fleet=fleet, species=SpeciesIndex(fleet.species), terms=Terms.of(fleet))


def read_trip(data: bytes, file: str, wide: Fleetwide) -> tuple[Trip | None, tuple[Problem, ...]]:
    """Return the trip of a log and everything that is wrong in it.

    Args:
        data: The file's bytes.
        file: Its name, for messages.
        wide: The fleet it is read by.

    Returns:
        The trip, or None where nothing of it can be placed in time; and the problems in the order they stand.
    """
    root, problems = read_tree(data, file, TEXT_KEYS)
    found: Found = list(problems)
    trip = _trip(root, file, wide, found) if root is not None else None
    return trip, tuple(sorted(set(found)))


def _trip(root: Mapping, file: str, wide: Fleetwide, found: Found) -> Trip | None:
    fields = open_mapping(_first_log(root, found), TRIP, found)
    get = fields.get
    vessel = _vessel(get("vessel"), wide.fleet, found)
    zone, zone_name = _zone(get("zone"), vessel, wide.fleet, found)
    known = Known(wide.fleet, wide.species, wide.terms, vessel)
    clock = Clock(zone, found)
    sailing, sailed_from = take_time_and_words(get("sailed"), clock, None, SAILED, found)
    sailed = sailing.moment if sailing else None
    tows = take_tows(get("tows"), known, clock, sailed, found)
    lists = Lists(known, clock, sailed, found)
    last_haul = max((tow.hauled for tow in tows.tows if tow.hauled), default=sailed)
    turned = take_turned(get("turned for home"), known, clock, last_haul, found)
    home = turned.at if turned and turned.at else last_haul
    landings = Landings(known, clock, lists, found).take(get("landed"), home)
    sails_again = clock.take(get("sails again"), _ashore(landings) or home, SAILS_AGAIN)
    hands, crew = _crew(get("crew"), found)
    planned_days, planned_catch = _planned(get("planned"), known, found)
    parts = _Parts(
        stowage=lists.stowage(get("stowage")),
        readings=lists.readings(get("readings")),
        weather=lists.weather(get("weather")),
        gear=lists.gear(get("gear")),
        time_lost=lists.time_lost(get("time lost")),
        rest=lists.rest(get("rest")),
        all_hands=lists.all_hands(get("all hands")),
        passage=lists.passage(get("passage")),
    )
    begins = sailed or _earliest(tows.tows, parts, landings)
    if begins is None:
        hint = "write `sailed: 2026-03-04 05:30, PORT`"
        error(found, root.place, "no-date", "nothing in this log tells its date, so the trip can't be placed", hint)
        return None
    trip = Trip(
        file=file,
        vessel=vessel,
        number=take_text(get("trip"), found),
        skipper=take_words(get("skipper"), found),
        hands=hands,
        crew=crew,
        zone=zone_name,
        begins=begins,
        sailed=sailed,
        sailed_from=port_of(wide.fleet, sailed_from, get("sailed"), found),
        ice_loaded=take_weight(get("ice loaded"), known.terms, found),
        ice_left_at_sailing=take_weight(get("ice left at sailing"), known.terms, found),
        fuel_loaded=take(get("fuel loaded"), known.terms.fuel, found, "an amount of fuel"),
        sea_temperature=take(get("sea temperature"), known.terms.temperature, found),
        deck_temperature=take(get("deck temperature"), known.terms.temperature, found),
        planned_days=planned_days,
        planned_catch=planned_catch,
        tows=tows.tows,
        tows_lost=tows.lost,
        stowage=parts.stowage,
        readings=parts.readings,
        weather=parts.weather,
        gear=parts.gear,
        time_lost=parts.time_lost,
        rest=parts.rest,
        all_hands=parts.all_hands,
        watches=lists.watches(get("watches")),
        passage=parts.passage,
        turned=turned,
        bound_for=known.port(get("bound for"), found),
        wants=take_words(get("wants"), found),
        sails_again=sails_again.moment if sails_again else None,
        landings=landings,
        settlement=take_settlement(get("settlement"), known, found) if "settlement" in fields else None,
        remarks=take_remarks(get("remarks"), found),
    )
    tows_key = fields.keys.get("tows")
    found += doubts(trip, tows_key.place if tows_key is not None else root.place, tows.spot)
    return trip


def _first_log(root: Mapping, found: Found) -> Mapping:
    """Return a log without another that was pasted behind it, of which nothing must get into this trip."""
    names = [fold_key(key.value) for key, _ in root.entries]
    heads = [[at for at, name in enumerate(names) if name == head] for head in ("vessel", "sailed", "tows")]
    again = [places[1] for places in heads if len(places) > 1]
    if len(again) <= 1:
        return root
    second = min(again)
    error(found, root.entries[second][0].place, *second_document(other=True))
    kept = root.entries[:second]
    return Mapping(root.file, root.line, root.column, kept[-1][1].end_line, kept, root.lost, flow=root.flow)


class _Parts(Struct, frozen=True, kw_only=True):
    """The lists of a log besides its tows."""

    stowage: tuple[Stowed, ...]
    readings: tuple[Reading, ...]
    weather: tuple[Weather, ...]
    gear: tuple[GearEvent, ...]
    time_lost: tuple[Period, ...]
    rest: tuple[Period, ...]
    all_hands: tuple[Period, ...]
    passage: tuple[Fix, ...]


def _earliest(tows: tuple[Tow, ...], parts: _Parts, landings: tuple[Landing, ...]) -> datetime | None:
    """Return the first moment of a log whose sailing is not known; None where no moment is."""
    periods = (*parts.time_lost, *parts.rest, *parts.all_hands)
    moments = (
        *(moment for tow in tows for moment in (tow.shot, tow.hauled)),
        *(line.at for line in parts.stowage),
        *(reading.at for reading in parts.readings),
        *(look.at for look in parts.weather),
        *(event.at for event in parts.gear),
        *(fix.at for fix in parts.passage),
        *(period.start for period in periods),
        *(landing.docked for landing in landings),
    )
    return min((moment for moment in moments if moment is not None), default=None)


def _ashore(landings: tuple[Landing, ...]) -> datetime | None:
    """Return the last thing known of the last landing."""
    if not landings:
        return None
    last = landings[-1]
    return last.finished or last.started or last.docked


def _vessel(node: Node | None, fleet: Fleet, found: Found) -> Vessel:
    """Return the vessel named, by name or registration; one the fleet file does not list is a warning."""
    typed = take_words(node, found)
    if typed is None or node is None:
        return Vessel(name=NO_VESSEL, listed=False)
    folded = fold_name(typed)
    for vessel in fleet.vessels:
        if folded in (fold_name(vessel.name), fold_name(vessel.registration or "")):
            return vessel
    if fleet.vessels:
        near = nearest(typed, [vessel.name for vessel in fleet.vessels], fold_name)
        hint = f"did you mean {named_list(near)}?" if near else "list it in the fleet file if it is right"
        warn(found, node.place, "vessel-unlisted", f"the fleet file lists no vessel '{typed}'", hint)
    return Vessel(name=unicodedata.normalize("NFC", typed), listed=not fleet.vessels)


def _zone(node: Node | None, vessel: Vessel, fleet: Fleet, found: Found) -> tuple[Zone, str]:
    """Return the log's zone and its name: its own, else the vessel's, else the fleet's, else UTC."""
    typed = take(node, parse_zone, found, "a zone")
    name = vessel.zone or fleet.zone
    if typed is not None:
        return typed, typed.name
    usual = parse_zone(name).value or parse_zone("UTC").value
    assert usual is not None  # noqa: S101 - UTC is always known
    return usual, usual.name


def _crew(node: Node | None, found: Found) -> tuple[int | None, tuple[str, ...]]:
    """Return how many hands, and their names where names were given."""
    if isinstance(node, Sequence):
        names = tuple(text.value.strip() for text in texts_of(node, found, "the crew"))
        return len(names) or None, names
    text = take_text(node, found)
    if text is None:
        return None, ()
    if text[0] in "-0123456789":
        return take(node, parse_count, found, "a number of hands"), ()
    names = tuple(name.strip() for name in text.split(",") if name.strip())
    return len(names), names


def _planned(node: Node | None, known: Known, found: Found) -> tuple[float | None, Kilograms | None]:
    """Return planned days and catch."""
    if not isinstance(node, Mapping):
        pairs_of(node, found, "planned")
        return None, None
    fields = open_mapping(node, PLANNED, found)
    days = take_text(fields.get("days"), found)
    length = None
    if days is not None and days.replace(".", "", 1).isdecimal():
        number = take(fields.get("days"), parse_number, found)
        length = float(number) if number is not None else None
    elif days is not None:
        stretch = take(fields.get("days"), parse_duration, found, "a number of days")
        length = stretch / DAY if stretch is not None else None
    return length, take_weight(fields.get("catch"), known.terms, found)
