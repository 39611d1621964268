"""The tables of an edition, and a table as comma-separated values.

Each table leaves out the columns that the edition does not have. Those with many rows a trip are parted by calendar year, so that no file
grows with the archive.
"""

import csv
import io
from collections.abc import Callable, Iterable, Sequence
from typing import Any, Generic

from msgspec import Struct

from logbook.model.edition import Policy
from logbook.model.language import N_
from logbook.model.problem import Problem
from logbook.render.files.columns import (
    TEXT,
    WHOLE,
    Column,
    Field,
    Row,
    Shown,
    column,
    columns_of,
    fields_of,
    money_shown,
    problems_shown,
    rows_of,
)
from logbook.render.files.of_landings import LANDED, LANDINGS, NO_WATCH, SALES, landed_rows, landing_rows, sold_rows
from logbook.render.files.of_tows import CATCHES, TOWS, catch_rows, tow_rows
from logbook.render.files.of_trips import COLUMNS, TripRow
from logbook.render.language import _

_PROBLEMS: tuple[Column[Problem], ...] = (
    column("file", TEXT, N_("File it stands in"), lambda row: row.place.file),
    column("line", WHOLE, N_("Line, from 1"), lambda row: row.place.line),
    column("column", WHOLE, N_("Column in characters, from 1"), lambda row: row.place.column),
    # For translators: what stands in the cells is English, whatever the language.
    column("severity", TEXT, N_("error, warning or note"), lambda row: str(row.severity)),
    column("code", TEXT, N_("Which rule"), lambda row: row.code),
    column("message", TEXT, N_("What was found"), lambda row: row.message),
    column("hint", TEXT, N_("What to type instead"), lambda row: row.hint),
)


class Table(Struct, frozen=True, kw_only=True):
    """A table of an edition.

    Attributes:
        name: Of its file.
        year: The calendar year that its trips belong to; None for one that has them all.
        about: What a row is.
        fields: Its columns.
        key: The columns that tell a row from all others; empty where none do.
        parent: The table that a row belongs to, by the columns that are named alike in both; None where it stands alone.
        parent_key: Those columns.
    """

    name: str
    year: str | None
    about: str
    fields: tuple[Field, ...]
    key: tuple[str, ...]
    parent: str | None = None
    parent_key: tuple[str, ...] = ()


class Kind(Struct, Generic[Row], frozen=True, kw_only=True):
    """What a table holds.

    Attributes:
        name: Of its file; of one that is parted, the year stands behind it.
        about: What a row is, in sentences.
        columns: Its columns, of which an edition may not have all.
        key: The columns that tell a row from all others; empty where none do.
        parent: The table that a row belongs to, with the columns that are named alike in both; empty where it stands alone.
        yearly: Whether each calendar year has a file of its own.
        shown: Which editions have it.
    """

    name: str
    about: tuple[str, ...]
    columns: tuple[Column[Row], ...]
    key: tuple[str, ...] = ()
    parent: tuple[str, ...] = ("trips", "trip")
    yearly: bool = True
    shown: Shown = lambda _policy: True

    def lines(self, records: Iterable[Row], policy: Policy) -> bytes:
        """Return records as lines of the table's file, without its head."""
        return csv_of(rows_of(columns_of(self.columns, policy), records))


class OfTrips(Kind[Row], Generic[Row], frozen=True, kw_only=True):
    """A table that each trip gives its rows to.

    Attributes:
        records: Gives what the rows of a trip are made from.
    """

    records: Callable[[TripRow], Iterable[Row]]


TABLES: tuple[OfTrips[Any], ...] = (
    OfTrips(
        name="trips",
        about=(N_("One row a trip."),),
        columns=COLUMNS,
        key=("trip",),
        parent=(),
        yearly=False,
        records=lambda row: (row,),
    ),
    OfTrips(
        name="tows",
        about=(N_("One row a tow."),),
        columns=TOWS,
        key=("trip", "tow_order"),
        records=lambda row: tow_rows((row.trip,)),
    ),
    OfTrips(
        name="catches",
        about=(
            N_(
                "One row for each species and grade of a tow. What was put back or kept undersize stands in a row without a grade."
            ),
        ),
        columns=CATCHES,
        parent=("tows", "trip", "tow_order"),
        records=lambda row: catch_rows(tow_rows((row.trip,))),
    ),
    OfTrips(
        name="landings",
        about=(N_("One row for each landing that was made or is expected."), NO_WATCH),
        columns=LANDINGS,
        key=("trip", "landing"),
        yearly=False,
        records=lambda row: landing_rows((row.trip,)),
    ),
    OfTrips(
        name="landed",
        about=(N_("One row for each species and grade put ashore."),),
        columns=LANDED,
        records=lambda row: landed_rows((row.trip,)),
    ),
    OfTrips(
        name="sales",
        about=(N_("One row for each species, grade or lot that was sold."),),
        columns=SALES,
        shown=money_shown,
        records=lambda row: sold_rows((row.trip,)),
    ),
)

PROBLEMS = Kind(
    name="problems",
    about=(N_("One row for each thing found wrong in a log."),),
    columns=_PROBLEMS,
    parent=(),
    yearly=False,
    shown=problems_shown,
)


def tables_of(kind: Kind[Any], years: Iterable[str], policy: Policy, currency: str | None) -> tuple[Table, ...]:
    """Return the tables of a kind that an edition has: one, or one for each of some years.

    Args:
        kind: What they hold.
        years: In the order that they come in.
        policy: What the edition shows.
        currency: The fleet's money.
    """
    if not kind.shown(policy):
        return ()
    about = " ".join(map(_, kind.about))
    fields = fields_of(columns_of(kind.columns, policy), currency)
    return tuple(
        Table(
            name=_named(kind.name, year),
            year=year,
            about=about,
            fields=fields,
            key=kind.key,
            parent=_named(kind.parent[0], year) if kind.parent else None,
            parent_key=kind.parent[1:],
        )
        for year in (years if kind.yearly else (None,))
    )


def _named(name: str, year: str | None) -> str:
    """Return the name of a table, with the year behind it where it is parted."""
    parted = any(kind.name == name and kind.yearly for kind in TABLES)
    return f"{name}-{year}" if parted else name


def head_of(table: Table) -> bytes:
    """Return the line that a table's file begins with: the names of its columns."""
    return csv_of([[field.name for field in table.fields]])


def csv_of(rows: Iterable[Sequence[str]]) -> bytes:
    """Return rows as comma-separated values.

    Source:
        RFC 4180: CRLF, a head, quotes doubled; UTF-8 (RFC 7111).
    """
    written = io.StringIO(newline="")
    csv.writer(written, lineterminator="\r\n").writerows(rows)
    return written.getvalue().encode("utf-8", "replace")
