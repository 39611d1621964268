"""A vessel's page: its trips, what it usually keeps, its best trips, its grounds, the vessel itself."""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.fleet import Vessel
from logbook.model.fleet_figures import FleetFigures, GroupFigures, HailBias, Landed, Usual, VesselFigures
from logbook.render.charts import Chart
from logbook.render.clock import Clock, clock_of
from logbook.render.environment import environment
from logbook.render.fleet_charts import KeptRow, kept_chief, kept_rows, vessel_trips_chart
from logbook.render.frame import Frame, Site
from logbook.render.gather import TripLine, begun, moments, trip_line
from logbook.render.gear import GearRow, gear_rows
from logbook.render.language import _
from logbook.render.links import vessel_page
from logbook.render.marks import Notes
from logbook.render.more_charts import gross_chart

_BEST = 3


class VesselPage(Struct, frozen=True, kw_only=True):
    """All that a vessel's page shows."""

    frame: Frame
    vessel: Vessel
    clock: Clock
    figures: GroupFigures | None
    trips: tuple[TripLine, ...]
    best: tuple[TripLine, ...]
    usual: tuple[Usual, ...]
    grounds: tuple[GroupFigures, ...]
    gear: tuple[GearRow, ...]
    gear_notes: Notes
    bias: tuple[HailBias, ...]
    landed_by_year: tuple[tuple[str, Decimal], ...]
    chart: Chart | None
    gross: Chart | None
    sold: tuple[TripLine, ...]
    chief: tuple[str, ...]
    kept_rows: tuple[KeptRow, ...]


def vessel_context(
    site: Site, trips: Sequence[Reckoned], figures: FleetFigures, landed: Mapping[str, Landed]
) -> VesselPage:
    """Return what the page of a vessel shows, from its trips, of which there is one at least."""
    in_order = sorted(trips, key=begun)
    vessel = in_order[-1].log.vessel
    name = in_order[-1].figures.trip.vessel
    gear_notes = Notes()
    of_her = figures.of_vessel.get(name, VesselFigures())
    lines = [trip_line(trip, landed.get(trip.figures.trip.id)) for trip in in_order]
    return VesselPage(
        frame=Frame(site=site, path=vessel_page(name), title=name),
        vessel=vessel,
        clock=clock_of(moments(in_order)),
        figures=figures.vessels.get(name),
        trips=tuple(reversed(lines)),
        best=_best(lines),
        usual=of_her.usual,
        grounds=tuple(of_her.grounds.values()),
        gear=gear_rows({**of_her.gear, **{_(part): one for part, one in of_her.rigging.items()}}, gear_notes),
        gear_notes=gear_notes,
        bias=of_her.bias,
        landed_by_year=tuple(of_her.landed_by_year.items()),
        chart=vessel_trips_chart(name, lines),
        gross=gross_chart(name, lines),
        sold=tuple(line for line in reversed(lines) if line.trip.figures.money is not None),
        chief=kept_chief(lines),
        kept_rows=tuple(reversed(kept_rows(lines))),
    )


def render_vessel(context: VesselPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/vessel.html").render(page=context, frame=context.frame)


def _best(lines: Sequence[TripLine]) -> tuple[TripLine, ...]:
    """Return the ended trips that kept most a day at sea, the best first."""
    rated = [(_per_day(line.trip), line) for line in lines if line.trip.figures.trip.docked is not None]
    known = [(rate, line) for rate, line in rated if rate is not None]
    known.sort(key=lambda one: (-one[0], one[1].trip.figures.trip.id))
    return tuple(line for _, line in known[:_BEST])


def _per_day(trip: Reckoned) -> float | None:
    return trip.figures.totals.kept_kg_per_day
