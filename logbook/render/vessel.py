"""A vessel's page: its trips, what it usually keeps, its best trips, its grounds, the vessel itself."""

from decimal import Decimal

from msgspec import Struct

from logbook.model.fleet import Vessel
from logbook.model.fleet_figures import GroupFigures, HailBias, Usual
from logbook.model.ledger import Ledger
from logbook.render.charts import Chart
from logbook.render.clock import Clock, clock_of_offsets
from logbook.render.environment import environment
from logbook.render.fleet_charts import KeptRow, kept_chief, kept_rows, vessel_trips_chart
from logbook.render.frame import Frame, Site
from logbook.render.gather import TripLine, trip_line
from logbook.render.gear import GearRow, gear_rows
from logbook.render.language import _
from logbook.render.links import vessel_page
from logbook.render.marks import Notes
from logbook.render.more_charts import gross_chart

_MOST = 200
"""Trips in the list of a vessel's page, the latest; earlier ones are found under their seasons."""


class VesselPage(Struct, frozen=True, kw_only=True):
    """All that a vessel's page shows: the latest trips, and the seasons that earlier ones docked in."""

    frame: Frame
    vessel: Vessel
    clock: Clock
    figures: GroupFigures | None
    all_trips: int
    trips: tuple[TripLine, ...]
    earlier: tuple[str, ...]
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


def vessel_context(site: Site, ledger: Ledger, name: str, figures: GroupFigures) -> VesselPage:
    """Return what the page of a vessel shows.

    Args:
        site: What all pages share.
        ledger: All trips.
        name: Which vessel.
        figures: The sums over her trips.
    """
    entries = ledger.of_vessel(name)
    shown, earlier = entries[-_MOST:], entries[:-_MOST]
    of_her, kit = ledger.vessel(name), ledger.kit(entries[-1].id)
    gear_notes = Notes()
    lines = [trip_line(brief) for brief in ledger.briefs(entry.id for entry in shown)]
    return VesselPage(
        frame=Frame(site=site, path=vessel_page(name), title=name),
        vessel=kit.vessel,
        clock=clock_of_offsets(of_her.offsets),
        figures=figures,
        all_trips=len(entries),
        trips=tuple(reversed(lines)),
        earlier=tuple(sorted({one.season for one in earlier if one.docked is not None}, reverse=True)),
        best=tuple(map(trip_line, ledger.briefs(of_her.best))),
        usual=of_her.usual,
        grounds=tuple(of_her.grounds.values()),
        gear=gear_rows({**kit.gear, **{_(part): one for part, one in kit.rigging.items()}}, gear_notes),
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
