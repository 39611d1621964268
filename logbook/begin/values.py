"""What an editor is told of each kind of value: loosely, as the reader alone knows which units and words there are.

A value that looks wrong here is an error for the reader; one that looks right may still be one. A figure may stand as a number
or as text, and anything may be left blank.
"""

from logbook.begin.spelling import BLANK, spellings
from logbook.model.language import LANGUAGES
from logbook.model.species import State
from logbook.read.keys import Keys
from logbook.read.lists import GEAR_EVENTS, ICING
from logbook.read.tow import SIDES

Schema = dict[str, object]

_SCALAR = ["string", "number", "boolean", "null"]

TEXT: Schema = {"type": _SCALAR}
WORDS: Schema = {"type": [*_SCALAR, "array"], "items": TEXT}
"""Words; typed with commas in brackets they are joined again."""

FIGURE: Schema = {
    "type": ["string", "number", "null"],
    "pattern": rf"[0-9]|^\s*(?:none|nil|NONE|NIL|None|Nil)\s*$|{BLANK}",
}
"""Anything with a figure in it, or a word for nothing."""

FIGURES: Schema = {**FIGURE, "type": ["string", "number", "null", "array"], "items": FIGURE}
BLANK_ONLY: Schema = {"type": ["string", "null"], "pattern": BLANK}
_PAIR: Schema = {"type": "array", "items": FIGURE, "minItems": 2, "maxItems": 2}
POSITION: Schema = {
    **FIGURE,
    "type": ["string", "number", "null", "array"],
    "items": FIGURE,
    "minItems": 2,
    "maxItems": 2,
}
POSITIONS: Schema = {**FIGURES, "items": POSITION}


def choice(*words: str) -> Schema:
    """Return what is told of a closed list of words; YAML may take yes and no for truth values."""
    types = ["string", "null", "boolean"] if "no" in words else ["string", "null"]
    return {"type": types, "pattern": f"{spellings(words)}|{BLANK}"}


def pairs(value: Schema) -> Schema:
    """Return what is told of free names and their values."""
    return {"type": ["object", "string", "null"], "pattern": BLANK, "additionalProperties": value}


def mapping(keys: Keys) -> Schema:
    """Return what is told of a mapping with keys of its own."""
    return {**BLANK_ONLY, "type": ["object", "string", "null"], "if": {"type": "object"}, "then": reference(keys)}


def items(keys: Keys) -> Schema:
    """Return what is told of a list of mappings; one alone counts as a list of one."""
    return listed(mapping(keys), reference(keys))


def listed(item: Schema, alone: Schema) -> Schema:
    """Return what is told of a list."""
    types = ["array", "object", "string", "null"]
    return {"type": types, "pattern": BLANK, "items": item, "if": {"type": "object"}, "then": alone}


def reference(keys: Keys) -> Schema:
    """Return the reference to a mapping's definition."""
    return {"$ref": f"#/definitions/{keys.what.replace(' ', '-')}"}


def by_grade(value: Schema) -> Schema:
    """Return what is told of species with a value each, or a value for each of their grades."""
    types = value["type"]
    either = [*types, "object"] if isinstance(types, list) else types
    return pairs({**value, "type": either, "additionalProperties": value})


_CATCH: Schema = {
    **by_grade(FIGURE),
    "type": ["object", "string", "number", "null"],
    "pattern": f"{spellings(('none', 'nil', '0', 'with next'))}|{BLANK}",
    "minimum": 0,
    "maximum": 0,
}
_FIGURE_KINDS = (
    "number",
    "weight",
    "volume or weight",
    "temperature",
    "time",
    "depth",
    "length",
    "speed",
    "sea state",
    "pressure",
    "duration",
    "percent",
    "power",
    "area",
    "heat passage",
    "specific heat",
    "latent heat",
    "mesh",
    "landing rate",
    "clock time",
    "day",
)

KINDS: dict[str, Schema] = {
    **dict.fromkeys(_FIGURE_KINDS, FIGURE),
    **dict.fromkeys(("words", "Markdown", "name", "number or names", "zone", "unit", "hemispheres", "weekdays"), WORDS),
    "time, port": {**FIGURES, "items": TEXT},
    "time, position or ground": {**FIGURES, "items": TEXT},
    "numbers": FIGURES,
    "list of days": FIGURES,
    "position": POSITION,
    "list of positions": POSITIONS,
    "yes, words or position": {"type": [*_SCALAR, "array"], "items": FIGURE},
    "name or list of names": WORDS,
    "list of names": {"type": [*_SCALAR, "array", "object"], "items": {"type": [*_SCALAR, "object"]}},
    "wind": {**FIGURE, "pattern": rf"[0-9]|{spellings(('calm',))}|{BLANK}"},
    "catch": _CATCH,
    "weights": by_grade(FIGURE),
    "prices": by_grade(FIGURES),
    "side": choice(*SIDES),
    "icing": choice(*ICING),
    "gear event": choice(*GEAR_EVENTS),
    "gallon": choice("imperial", "US"),
    "state": choice(*(str(state) for state in State)),
    "positions": choice("exact", "rectangle", "ground"),
    "yes or no": choice("yes", "no"),
    "language": choice(*(word for tag, more in LANGUAGES.items() for word in (tag, *more))),
}
"""By the kind that the table of keys names; mappings and lists, whose insides differ, stand with their keys."""
