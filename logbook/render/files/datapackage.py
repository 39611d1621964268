"""What the tables are: every column's type, unit and meaning, as a data package that other programs read."""

import hashlib
import json
import posixpath
from collections.abc import Iterable

from logbook.model.language import N_
from logbook.model.names import bare_slug
from logbook.render.cautions import AGE, NAVIGATION, STATUTORY
from logbook.render.files.columns import MOMENT, Field, Table
from logbook.render.files.paths import table_file
from logbook.render.language import _

_GUARD = N_(
    "A text that a spreadsheet would take for a formula, or that begins with an apostrophe, has an apostrophe more before it: "
    "without that one it is as it was typed."
)
_NOTES = (
    N_(
        "Empty cells are not known or not in this edition, never nought. Times carry their offset from UTC. Lists are JSON."
    ),
    _GUARD,
    N_("Weights are as typed; what was reckoned is rounded to four decimals."),
)


def datapackage_of(tables: Iterable[tuple[Table, bytes]], name: str, edition: str) -> bytes:
    """Return the description of the tables, each with its file's bytes.

    Args:
        tables: Each with its bytes.
        name: The fleet's name.
        edition: office, crew or public.

    Source:
        Data Package and Table Schema, version 1 (Frictionless Data); `unit` is a property of our own, which they allow.
    """
    made = {
        "profile": "tabular-data-package",
        "name": f"{bare_slug(name)}-{edition}",
        "title": _("{fleet}: trips, tows and landings ({edition})").format(fleet=name, edition=_(edition)),
        "description": "\n\n".join((*map(_, _NOTES), *(caution.told() for caution in (AGE, NAVIGATION, STATUTORY)))),
        "resources": [_resource(table, content) for table, content in tables],
    }
    return (json.dumps(made, ensure_ascii=False, indent=1) + "\n").encode("utf-8", "replace")


def _resource(table: Table, content: bytes) -> dict[str, object]:
    return {
        "profile": "tabular-data-resource",
        "name": table.name,
        "description": table.about,
        "path": posixpath.basename(table_file(table.name)),
        "format": "csv",
        "mediatype": "text/csv",
        "encoding": "utf-8",
        "bytes": len(content),
        "hash": f"sha256:{hashlib.sha256(content).hexdigest()}",
        "dialect": {"delimiter": ",", "lineTerminator": "\r\n", "quoteChar": '"', "doubleQuote": True, "header": True},
        "schema": _schema(table),
    }


def _schema(table: Table) -> dict[str, object]:
    made: dict[str, object] = {"fields": [_field(field) for field in table.fields], "missingValues": [""]}
    if table.key:
        made["primaryKey"] = list(table.key)
    if table.parent is not None:
        here = list(table.parent_key)
        made["foreignKeys"] = [{"fields": here, "reference": {"resource": table.parent, "fields": here}}]
    return made


def _field(field: Field) -> dict[str, str]:
    made = {"name": field.name, "type": field.kind, "description": field.about}
    if field.kind == MOMENT:
        made["format"] = "%Y-%m-%dT%H:%M:%S%z"
    if field.unit:
        made["unit"] = field.unit
    return made
