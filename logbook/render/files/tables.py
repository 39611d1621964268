"""The tables of an edition, and a table as comma-separated values.

Each table leaves out the columns that the edition does not have. Rows stand in an order of their own, whatever order the trips come in.
"""

import csv
import io
from collections.abc import Iterable, Sequence

from logbook.model.edition import Policy
from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.fleet_figures import FleetFigures
from logbook.model.language import N_
from logbook.model.problem import Problem
from logbook.render.files import of_landings, of_tows, of_trips
from logbook.render.files.columns import TEXT, WHOLE, Column, Row, Table, column, columns_of, fields_of, rows_of
from logbook.render.gather import begun
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


def tables_of(
    fleet: Fleet, trips: Iterable[Reckoned], figures: FleetFigures, problems: Iterable[Problem], policy: Policy
) -> tuple[Table, ...]:
    """Return the tables that an edition has.

    Args:
        fleet: For its currency.
        trips: All trips, in any order.
        figures: For what was landed.
        problems: Every problem of every file, in any order.
        policy: What the edition shows.
    """
    ordered = sorted(trips, key=begun)
    tows = tuple(of_tows.tow_rows(ordered))
    landed = {one.trip_id: one for one in figures.landed}
    lines = [of_trips.TripRow(trip=trip, landed=landed.get(trip.figures.trip.id)) for trip in ordered]

    def table(
        name: str,
        about: str,
        columns: Iterable[Column[Row]],
        records: Iterable[Row],
        key: Sequence[str] = (),
        parent: tuple[str, ...] = ("trips", "trip"),
    ) -> Table:
        chosen = columns_of(columns, policy)
        return Table(
            name=name,
            about=about,
            fields=fields_of(chosen, fleet.currency),
            rows=rows_of(chosen, records),
            key=tuple(key),
            parent=parent[0] if parent else None,
            parent_key=parent[1:],
        )

    made = [
        table("trips", _("One row a trip."), of_trips.COLUMNS, lines, ("trip",), parent=()),
        table("tows", _("One row a tow."), of_tows.TOWS, tows, ("trip", "tow_order")),
        table(
            "catches",
            _(
                "One row for each species and grade of a tow. What was put back or kept undersize stands in a row without a grade."
            ),
            of_tows.CATCHES,
            of_tows.catch_rows(tows),
            parent=("tows", "trip", "tow_order"),
        ),
        table(
            "landings",
            " ".join((_("One row for each landing that was made or is expected."), _(of_landings.NO_WATCH))),
            of_landings.LANDINGS,
            of_landings.landing_rows(ordered),
            ("trip", "landing"),
        ),
        table(
            "landed",
            _("One row for each species and grade put ashore."),
            of_landings.LANDED,
            of_landings.landed_rows(ordered),
        ),
    ]
    if policy.money:
        about = _("One row for each species, grade or lot that was sold.")
        made.append(table("sales", about, of_landings.SALES, of_landings.sold_rows(ordered)))
    if policy.problems:
        about = _("One row for each thing found wrong in a log.")
        made.append(table("problems", about, _PROBLEMS, sorted(set(problems)), parent=()))
    return tuple(made)


def csv_of(table: Table) -> bytes:
    """Return a table as comma-separated values.

    Source:
        RFC 4180: CRLF, a head, quotes doubled; UTF-8 (RFC 7111).
    """
    written = io.StringIO(newline="")
    writer = csv.writer(written, lineterminator="\r\n")
    writer.writerow([field.name for field in table.fields])
    writer.writerows(table.rows)
    return written.getvalue().encode("utf-8", "replace")
