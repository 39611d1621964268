"""The front page: who is at sea and when they were last heard of, the last landings, the season so far, the vessels."""

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import FleetFigures, GroupFigures
from logbook.render.charts import Chart
from logbook.render.clock import Clock, clock_of
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
from logbook.render.gather import TripLine, added, begun, moments, trip_line
from logbook.render.links import FRONT
from logbook.render.time_pages import week_of

_LATEST = 8
_OUT = ("homeward", "at sea")


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


def front_context(site: Site, trips: Sequence[Reckoned], figures: FleetFigures, files: Iterable[str] = ()) -> FrontPage:
    """Return what the front page shows; `files` are the paths of those for other programs."""
    landed = {one.trip_id: one for one in figures.landed}
    lines = [trip_line(trip, landed.get(trip.figures.trip.id)) for trip in trips]
    seasons = tuple(sorted(figures.seasons.values(), key=lambda season: season.name, reverse=True))
    chief = chief_species(figures)
    return FrontPage(
        frame=Frame(site=site, path=FRONT, title=site.name),
        clock=clock_of(moments(trips)),
        out=_out(lines),
        unlanded=tuple(line for line in lines if line.trip.figures.trip.state == "landing not logged"),
        landings=_latest(lines),
        season=seasons[0] if seasons else None,
        seasons=seasons,
        months=landings_chart(figures),
        chief=chief,
        month_rows=_months(figures, chief),
        grounds=grounds_chart(figures),
        ground_rows=grounds_shown(figures),
        vessels=_vessels(trips, figures.vessels),
        species=tuple(name for name in figures.species if name in site.species),
        weeks=_weeks(trips, figures),
        trips=len(trips),
        files=listed(files),
    )


def _weeks(trips: Sequence[Reckoned], figures: FleetFigures) -> tuple[str, ...]:
    """Return the latest weeks that have a page, the last first."""
    latest = max((trip.figures.trip.last_word for trip in trips), default=None)
    names = set(figures.weeks) | ({week_of(latest.date())} if latest is not None else set())
    return tuple(sorted(names, reverse=True)[:_LATEST])


def render_front(context: FrontPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/front.html").render(page=context, frame=context.frame)


def _out(lines: Iterable[TripLine]) -> tuple[TripLine, ...]:
    """Return the trips that are out, those homeward first, then by vessel."""
    out = [line for line in lines if line.trip.figures.trip.state in _OUT]
    return tuple(sorted(out, key=lambda line: (_OUT.index(line.trip.figures.trip.state), line.trip.figures.trip.id)))


def _latest(lines: Iterable[TripLine]) -> tuple[TripLine, ...]:
    """Return the last landings, the latest first."""
    docked = [(line.trip.figures.trip.docked, line.trip.figures.trip.id, line) for line in lines]
    known = [(when, name, line) for when, name, line in docked if when is not None]
    return tuple(line for _, _, line in sorted(known, key=lambda one: one[:2], reverse=True)[:_LATEST])


def _months(figures: FleetFigures, chief: Sequence[str]) -> tuple[MonthRow, ...]:
    rows = []
    for name in months_shown(figures):
        species = figures.landed_by_month[name]
        of_chief, others = month_parts(species, chief)
        rows.append(MonthRow(month=name, species=of_chief, others=others, total=added(species.values()) or Decimal(0)))
    return tuple(rows)


def _vessels(trips: Iterable[Reckoned], figures: Mapping[str, GroupFigures]) -> tuple[VesselRow, ...]:
    """Return every vessel that has a trip, by name."""
    latest: dict[str, Reckoned] = {}
    for trip in sorted(trips, key=begun):
        latest[trip.figures.trip.vessel] = trip
    return tuple(VesselRow(name=name, figures=figures.get(name), latest=latest[name]) for name in sorted(latest))
