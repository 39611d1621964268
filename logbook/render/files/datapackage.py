"""What the tables are: every column's type, unit and meaning, as a data package that other programs read."""

import json
import posixpath
from collections.abc import Iterable

from msgspec import Struct

from logbook.model.language import N_
from logbook.model.names import bare_slug
from logbook.render.cautions import AGE, NAVIGATION, STATUTORY
from logbook.render.files.columns import MOMENT, Field
from logbook.render.files.paths import table_file
from logbook.render.files.tables import Table
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


class Described(Struct, frozen=True, kw_only=True):
    """A table with what is known of its file.

    Attributes:
        table: The table.
        size: Bytes of the file.
        digest: Their SHA-256, in hexadecimal.
    """

    table: Table
    size: int
    digest: str


def datapackage_of(tables: Iterable[Described], name: str, edition: str) -> bytes:
    """Return the description of the tables, each on a line of its own.

    Args:
        tables: Each with what is known of its file.
        name: The fleet's name.
        edition: office, crew or public.

    Source:
        Data Package and Table Schema, version 1 (Frictionless Data); `unit` is a property of our own, which they allow.
    """
    head = {
        "profile": "tabular-data-package",
        "name": f"{bare_slug(name)}-{edition}",
        "title": _("{fleet}: trips, tows and landings ({edition})").format(fleet=name, edition=_(edition)),
        "description": "\n\n".join((*map(_, _NOTES), *(caution.told() for caution in (AGE, NAVIGATION, STATUTORY)))),
    }
    told = [f"{_text(key)}: {_text(value)}" for key, value in head.items()]
    resources = ",\n".join(_text(_resource(one)) for one in tables)
    made = ",\n".join((*told, f'"resources": [\n{resources}\n]'))
    return f"{{\n{made}\n}}\n".encode("utf-8", "replace")


def _text(value: object) -> str:
    return json.dumps(value, ensure_ascii=False)


def _resource(one: Described) -> dict[str, object]:
    return {
        "profile": "tabular-data-resource",
        "name": one.table.name,
        "description": one.table.about,
        "path": posixpath.basename(table_file(one.table.name)),
        "format": "csv",
        "mediatype": "text/csv",
        "encoding": "utf-8",
        "bytes": one.size,
        "hash": f"sha256:{one.digest}",
        "dialect": {"delimiter": ",", "lineTerminator": "\r\n", "quoteChar": '"', "doubleQuote": True, "header": True},
        "schema": _schema(one.table),
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
