"""The front page: who is at sea and when they were last heard of, the last landings, the season so far, the vessels."""

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import FleetFigures, GroupFigures
from logbook.model.ledger import Entry, Ledger
from logbook.model.names import fold_name
from logbook.render.charts import Chart
from logbook.render.clock import Clock, clock_of_offsets
from logbook.render.environment import environment
from logbook.render.files.paths import Listed, listed
from logbook.render.fleet_charts import (
    chief_species,
    grounds_chart,
    grounds_shown,
    landings_chart,
    month_parts,
    months_shown,
)
from logbook.render.frame import Frame, Site
from logbook.render.gather import TripLine, added, latest_landed, out_at_sea, trip_line, weeks_of
from logbook.render.links import FRONT

_LATEST = 8


class MonthRow(Struct, frozen=True, kw_only=True):
    """A month's landings in the table beside the chart."""

    month: str
    species: tuple[Decimal | None, ...]
    others: Decimal
    total: Decimal


class VesselRow(Struct, frozen=True, kw_only=True):
    """A vessel in the table of vessels, with its latest trip."""

    name: str
    figures: GroupFigures | None
    latest: Reckoned


class FrontPage(Struct, frozen=True, kw_only=True):
    """All that the front page shows."""

    frame: Frame
    clock: Clock
    troubles: int
    out: tuple[TripLine, ...]
    unlanded: tuple[TripLine, ...]
    landings: tuple[TripLine, ...]
    season: GroupFigures | None
    seasons: tuple[GroupFigures, ...]
    months: Chart | None
    chief: tuple[str, ...]
    month_rows: tuple[MonthRow, ...]
    grounds: Chart | None
    ground_rows: tuple[GroupFigures, ...]
    vessels: tuple[VesselRow, ...]
    species: tuple[str, ...]
    weeks: tuple[str, ...]
    trips: int
    files: tuple[Listed, ...]


def front_context(site: Site, ledger: Ledger, troubles: int, files: Iterable[str] = ()) -> FrontPage:
    """Return what the front page shows.

    Args:
        site: What all pages share.
        ledger: All trips.
        troubles: How many errors and warnings there are in the logs.
        files: Paths of those for other programs.
    """
    figures = ledger.fleet()
    seasons = tuple(sorted(figures.seasons.values(), key=lambda season: season.name, reverse=True))
    chief = chief_species(figures)
    unlanded = (one for one in ledger.entries if one.state == "landing not logged")
    return FrontPage(
        frame=Frame(site=site, path=FRONT, title=site.name),
        clock=clock_of_offsets(figures.offsets),
        troubles=troubles,
        out=_lines(ledger, out_at_sea(ledger.entries)),
        unlanded=_lines(ledger, sorted(unlanded, key=lambda one: (fold_name(one.vessel), one.begins, one.id))),
        landings=_lines(ledger, latest_landed(ledger.entries)[:_LATEST]),
        season=seasons[0] if seasons else None,
        seasons=seasons,
        months=landings_chart(figures),
        chief=chief,
        month_rows=_months(figures, chief),
        grounds=grounds_chart(figures),
        ground_rows=grounds_shown(figures),
        vessels=_vessels(ledger, figures.vessels),
        species=tuple(name for name in figures.species if name in site.species),
        weeks=weeks_of(ledger)[:_LATEST],
        trips=len(ledger.entries),
        files=listed(files),
    )


def _lines(ledger: Ledger, entries: Iterable[Entry]) -> tuple[TripLine, ...]:
    return tuple(map(trip_line, ledger.briefs(entry.id for entry in entries)))


def render_front(context: FrontPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/front.html").render(page=context, frame=context.frame)


def _months(figures: FleetFigures, chief: Sequence[str]) -> tuple[MonthRow, ...]:
    rows = []
    for name in months_shown(figures):
        species = figures.landed_by_month[name]
        of_chief, others = month_parts(species, chief)
        rows.append(MonthRow(month=name, species=of_chief, others=others, total=added(species.values()) or Decimal(0)))
    return tuple(rows)


def _vessels(ledger: Ledger, figures: Mapping[str, GroupFigures]) -> tuple[VesselRow, ...]:
    """Return every vessel that has a trip, by name."""
    names = sorted(ledger.vessels)
    latest = ledger.briefs(ledger.of_vessel(name)[-1].id for name in names)
    return tuple(
        VesselRow(name=name, figures=figures.get(name), latest=brief.trip)
        for name, brief in zip(names, latest, strict=True)
    )
