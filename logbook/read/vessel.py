"""The vessels of a fleet file: their speeds, nets and holds."""

from logbook.model.fleet import Hold, Net, Vessel
from logbook.model.quantity import Kilograms
from logbook.read.fields import (
    Found,
    mappings_of,
    open_mapping,
    pairs_of,
    take,
    take_choice,
    take_text,
    take_words,
    texts_of,
)
from logbook.read.keys import HOLD, NET, VESSEL
from logbook.read.measured import parse_area, parse_heat_passage, parse_mesh, parse_power
from logbook.read.terms import Terms, take_weight
from logbook.read.tow import SIDES
from logbook.read.tree import Mapping, Node
from logbook.read.zone import parse_zone


def take_vessels(node: Node | None, terms: Terms, found: Found) -> tuple[Vessel, ...]:
    """Return the vessels; one without a name is reported and left out."""
    vessels = (_vessel(item, terms, found) for item in mappings_of(node, found, "the vessels"))
    return tuple(vessel for vessel in vessels if vessel is not None)


def _vessel(node: Mapping, terms: Terms, found: Found) -> Vessel | None:
    fields = open_mapping(node, VESSEL, found)
    get = fields.get
    name = take_words(get("name"), found)
    zone = take(get("zone"), parse_zone, found, "a zone")
    if name is None:
        return None
    return Vessel(
        name=name,
        registration=take_text(get("registration"), found),
        zone=zone.name if zone else None,
        length=take(get("length"), terms.length, found, "a length"),
        steaming_speed=take(get("steaming speed"), terms.speed, found, "a speed"),
        poor_weather_speed=take(get("poor weather speed"), terms.speed, found, "a speed"),
        towing_speed=take(get("towing speed"), terms.speed, found, "a speed"),
        ice_capacity=take_weight(get("ice capacity"), terms, found),
        hold=_hold(get("hold"), terms, found),
        nets=tuple(net for item in mappings_of(get("nets"), found, "the nets") if (net := _net(item, terms, found))),
    )


def _hold(node: Node | None, terms: Terms, found: Found) -> Hold:
    if not isinstance(node, Mapping):
        pairs_of(node, found, "the hold")
        return Hold()
    fields = open_mapping(node, HOLD, found)
    return Hold(
        heat_gain_kw=take(fields.get("heat gain"), parse_power, found, "a power"),
        surface_m2=take(fields.get("surface"), parse_area, found, "an area"),
        insulation_w_m2k=take(fields.get("insulation"), parse_heat_passage, found, "heat passed"),
        pens=_pens(fields.get("pens"), terms, found),
    )


def _pens(node: Node | None, terms: Terms, found: Found) -> tuple[tuple[str, Kilograms | None], ...]:
    """Return the pens and what each holds; a list names them alone."""
    if node is not None and not isinstance(node, Mapping):
        return tuple((text.value.strip(), None) for text in texts_of(node, found, "pens"))
    pens = pairs_of(node, found, "pens")
    return tuple((key.value.strip(), take_weight(value, terms, found)) for key, value in pens)


def _net(node: Mapping, terms: Terms, found: Found) -> Net | None:
    fields = open_mapping(node, NET, found)
    get = fields.get
    name = take_words(get("name"), found)
    if name is None:
        return None
    return Net(
        name=name,
        side=take_choice(get("side"), SIDES, found),
        doors=take_weight(get("doors"), terms, found),
        door_spread=take(get("door spread"), terms.length, found, "a length"),
        wing_spread=take(get("wing spread"), terms.length, found, "a length"),
        headline=take(get("headline"), terms.length, found, "a length"),
        mesh_mm=take(get("mesh"), parse_mesh, found, "a mesh size"),
    )
