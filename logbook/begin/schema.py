"""JSON Schemas (draft-07) of logs and fleet files, made from the one table of keys that the reader goes by.

Editors that know JSON Schema offer the keys, say what each means and mark what is wrong. A key may be typed in any way the
reader takes it; one that is a slip of the pen is marked, as the reader warns of it too.
"""

import json
from urllib.parse import quote

from logbook.begin.example import instance
from logbook.begin.spelling import all_spellings, other_spellings
from logbook.begin.values import (
    BLANK_ONLY,
    FIGURE,
    FIGURES,
    KINDS,
    TEXT,
    WORDS,
    Schema,
    items,
    listed,
    mapping,
    pairs,
    reference,
)
from logbook.read import keys
from logbook.read.keys import Key, Keys

TRIP_FILE, FLEET_FILE = "trip.schema.json", "fleet.schema.json"

_TRIP_PARTS = (
    keys.TRIP,
    keys.TOW,
    keys.DAY,
    keys.PLANNED,
    keys.STOWAGE,
    keys.READING,
    keys.WEATHER,
    keys.GEAR,
    keys.TIME_LOST,
    keys.REST,
    keys.ALL_HANDS,
    keys.PASSAGE,
    keys.LANDED,
    keys.SETTLEMENT,
)
_FLEET_PARTS = (
    keys.FLEET,
    keys.UNITS,
    keys.LIMITS,
    keys.CONSTANTS,
    keys.ASSUMED,
    keys.VESSEL,
    keys.HOLD,
    keys.NET,
    keys.PORT,
    keys.SALE,
    keys.ROUTE,
    keys.GROUND,
    keys.SPECIES,
    keys.EDITIONS,
    keys.EDITION,
)

_ONE_LINE_TOW: Schema = {
    "type": ["string", "number", "null"],
    "pattern": r"^\s*[0-9]|^\s*(?:-+|\?+|~)?\s*$",
    "patternErrorMessage": "a tow on one line begins with its times: 2015-2150, 98 fm, cod 9 baskets",
}
_ONLY_A_DAY: Schema = {
    "minProperties": 1,
    "maxProperties": 1,
    "propertyNames": {"pattern": all_spellings(keys.DAY.keys[0])},
}
_TOW: Schema = {
    "if": {"type": "object"},
    "then": {"if": _ONLY_A_DAY, "then": reference(keys.DAY), "else": reference(keys.TOW)},
    "else": _ONE_LINE_TOW,
}
_LANDING: Schema = {
    "if": {"type": "object"},
    "then": reference(keys.LANDED),
    "else": {"type": ["string", "number", "null"]},
}
_ONE_OR_BY_SPECIES: Schema = {**FIGURE, "type": ["string", "number", "null", "object"], "additionalProperties": FIGURE}

INSIDE: dict[tuple[Keys, str], Schema] = {
    (keys.TRIP, "planned"): mapping(keys.PLANNED),
    (keys.TRIP, "tows"): listed(_TOW, _TOW),
    (keys.TRIP, "stowage"): items(keys.STOWAGE),
    (keys.TRIP, "readings"): items(keys.READING),
    (keys.TRIP, "weather"): items(keys.WEATHER),
    (keys.TRIP, "gear"): items(keys.GEAR),
    (keys.TRIP, "time lost"): items(keys.TIME_LOST),
    (keys.TRIP, "rest"): items(keys.REST),
    (keys.TRIP, "all hands"): items(keys.ALL_HANDS),
    (keys.TRIP, "passage"): items(keys.PASSAGE),
    (keys.TRIP, "watches"): pairs(FIGURES),
    (keys.TRIP, "landed"): {
        "type": ["object", "array", "string", "null"],
        "items": _LANDING,
        "if": {"type": "object"},
        "then": reference(keys.LANDED),
    },
    (keys.TRIP, "settlement"): mapping(keys.SETTLEMENT),
    (keys.READING, "temperatures"): pairs(FIGURE),
    (keys.READING, "re-iced"): pairs(FIGURE),
    (keys.LANDED, "pens"): pairs(FIGURE),
    (keys.LANDED, "temperatures"): pairs(FIGURE),
    (keys.LANDED, "quality"): pairs(WORDS),
    (keys.SETTLEMENT, "expenses"): pairs(FIGURE),
    (keys.SETTLEMENT, "shares"): pairs(FIGURE),
    (keys.FLEET, "units"): mapping(keys.UNITS),
    (keys.FLEET, "limits"): mapping(keys.LIMITS),
    (keys.FLEET, "constants"): mapping(keys.CONSTANTS),
    (keys.FLEET, "assumed"): mapping(keys.ASSUMED),
    (keys.FLEET, "measures"): pairs(_ONE_OR_BY_SPECIES),
    (keys.FLEET, "vessels"): items(keys.VESSEL),
    (keys.FLEET, "ports"): items(keys.PORT),
    (keys.FLEET, "routes"): items(keys.ROUTE),
    (keys.FLEET, "grounds"): items(keys.GROUND),
    (keys.FLEET, "species"): items(keys.SPECIES),
    (keys.FLEET, "editions"): mapping(keys.EDITIONS),
    (keys.VESSEL, "hold"): mapping(keys.HOLD),
    (keys.VESSEL, "nets"): items(keys.NET),
    (keys.HOLD, "pens"): {
        **WORDS,
        "type": ["object", "array", "string", "number", "null"],
        "additionalProperties": FIGURE,
    },
    (keys.PORT, "sale"): mapping(keys.SALE),
    (keys.SPECIES, "factors"): pairs(TEXT),
    (keys.EDITIONS, "office"): mapping(keys.EDITION),
    (keys.EDITIONS, "crew"): mapping(keys.EDITION),
    (keys.EDITIONS, "public"): mapping(keys.EDITION),
}
"""What is told of the values of those keys whose insides are mappings and lists of their own."""


def trip_schema() -> Schema:
    """Return the schema of a log."""
    return _schema("A trawler's trip log", _TRIP_PARTS)


def fleet_schema() -> Schema:
    """Return the schema of a fleet file."""
    return _schema("A fleet file of trawlers' trip logs", _FLEET_PARTS)


def as_text(schema: Schema) -> str:
    """Return a schema as the text of its file."""
    return json.dumps(schema, indent=1, ensure_ascii=True) + "\n"


def _schema(title: str, parts: tuple[Keys, ...]) -> Schema:
    return {
        "$schema": "http://json-schema.org/draft-07/schema#",
        "title": title,
        "allOf": [reference(parts[0])],
        "definitions": {str(reference(part)["$ref"]).rpartition("/")[2]: _definition(part) for part in parts},
    }


def _definition(part: Keys) -> Schema:
    """Return the schema of a mapping: its keys as documented, each other way to type them, and none besides."""
    told = {key.name: _told(part, key) for key in part.keys}
    required = [_wanted(key) for key in part.required]
    return {
        "type": "object",
        "properties": told,
        "patternProperties": {other_spellings(key): _same_as(part, key) for key in part.keys},
        "additionalProperties": False,
        **({"allOf": required} if required else {}),
    }


def _same_as(part: Keys, key: Key) -> Schema:
    """Return the reference to what is told of a key as documented."""
    return {"$ref": f"{reference(part)['$ref']}/properties/{quote(key.name)}"}


def _wanted(key: Key) -> Schema:
    """Return what asks for a key where no way of typing it is there."""
    return {
        "if": {"propertyNames": {"not": {"pattern": all_spellings(key)}}},
        "then": {"required": [key.name]},
    }


def _told(part: Keys, key: Key) -> Schema:
    """Return what an editor is told of one key: its sentence, examples and the look of its values."""
    value = INSIDE.get((part, key.name)) or KINDS.get(key.kind) or BLANK_ONLY
    return {"title": key.name, "description": key.about, "examples": [instance(key)], **value}
