"""The whole archive as pages, from what was read and reckoned."""

import hashlib
from collections import defaultdict
from collections.abc import Iterable, Iterator

from logbook.model.edition import Policy
from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.fleet_figures import FleetFigures
from logbook.model.page import Page
from logbook.model.places import Places
from logbook.model.problem import Problem, Severity
from logbook.render.board import board_contexts, render_board
from logbook.render.charts import Chart
from logbook.render.environment import template_root
from logbook.render.fast_files import fasts_geojson, fasts_gpx
from logbook.render.frame import Site
from logbook.render.front import front_context, render_front
from logbook.render.gear import gear_context, render_gear
from logbook.render.links import FASTS_GEOJSON, FASTS_GPX
from logbook.render.place_pages import ground_context, render_ground, render_species, species_context
from logbook.render.problems import problems_context, render_problems
from logbook.render.reckoning import reckoning_context, render_reckoning
from logbook.render.time_pages import render_season, render_week, season_contexts, week_contexts
from logbook.render.trip import TripPage, render_trip, trip_context
from logbook.render.vessel import render_vessel, vessel_context

_DIGITS = 8
ICON = "icon.svg"


def render_archive(
    fleet: Fleet,
    trips: tuple[Reckoned, ...],
    figures: FleetFigures,
    problems: tuple[Problem, ...],
    policy: Policy,
    places: Places,
) -> Iterator[Page]:
    """Give every file of the archive: pages, charts and the style sheet, in no order that matters.

    Args:
        fleet: The fleet file, or what stands for it.
        trips: All trips with their figures.
        figures: Sums over them.
        problems: Every problem of every file, those of the trips too; none in an edition that does not show them.
        places: What is known of species and grounds.
        policy: What the edition shows; nothing else is in the records any more.
    """
    style = _style()
    yield style
    yield Page(path=ICON, content=(template_root() / "static" / ICON).read_bytes())
    site = _site(fleet, trips, problems, style.path, policy, places)
    landed = {one.trip_id: one for one in figures.landed}
    of_vessel: dict[str, list[Reckoned]] = defaultdict(list)
    for reckoned in trips:
        of_vessel[reckoned.figures.trip.vessel].append(reckoned)
        trip = trip_context(site, fleet, reckoned, landed.get(reckoned.figures.trip.id))
        yield _page(trip.frame.path, render_trip(trip))
        yield from _drawn(_trip_charts(trip))
    for name in sorted(of_vessel):
        vessel = vessel_context(site, of_vessel[name], figures, landed)
        yield _page(vessel.frame.path, render_vessel(vessel))
        yield from _drawn([vessel.chart, vessel.gross])
    front = front_context(site, trips, figures)
    yield _page(front.frame.path, render_front(front))
    yield from _drawn([front.months, front.grounds])
    for species in places.species:
        of_species = species_context(site, species)
        yield _page(of_species.frame.path, render_species(of_species))
        yield from _drawn([of_species.months, of_species.landed, of_species.grades])
    for ground in places.grounds:
        of_ground = ground_context(site, ground, site.species)
        yield _page(of_ground.frame.path, render_ground(of_ground))
        yield from _drawn([of_ground.months, of_ground.species])
    for season in season_contexts(site, trips, figures):
        yield _page(season.frame.path, render_season(season))
        yield from _drawn([season.chart])
    for week in week_contexts(site, trips, figures, problems):
        yield _page(week.frame.path, render_week(week))
    for board in board_contexts(site, trips, figures, [chart for chart in (front.months, front.grounds) if chart]):
        yield _page(board.frame.path, render_board(board))
    gear = gear_context(site, fleet, figures)
    yield _page(gear.frame.path, render_gear(gear))
    yield from _drawn([gear.chart, gear.hours])
    if gear.placed:
        yield Page(path=FASTS_GEOJSON, content=fasts_geojson(figures.fasts))
        yield Page(path=FASTS_GPX, content=fasts_gpx(figures.fasts, site.name))
    reckoning = reckoning_context(site, fleet)
    yield _page(reckoning.frame.path, render_reckoning(reckoning))
    if policy.problems:
        troubles = problems_context(site, trips, problems)
        yield _page(troubles.frame.path, render_problems(troubles))


def _site(
    fleet: Fleet, trips: Iterable[Reckoned], problems: Iterable[Problem], style: str, policy: Policy, places: Places
) -> Site:
    """Return what all pages share."""
    return Site(
        name=fleet.name or "The fleet",
        style=style,
        policy=policy,
        troubles=sum(problem.severity is not Severity.NOTE for problem in set(problems)),
        trips=frozenset(trip.figures.trip.id for trip in trips),
        species=frozenset(one.name for one in places.species),
    )


def _style() -> Page:
    """Return the style sheet, named for what is in it, so that a page and its style always belong together."""
    content = (template_root() / "static" / "style.css").read_bytes()
    return Page(path=f"style.{hashlib.sha256(content).hexdigest()[:_DIGITS]}.css", content=content)


def _page(path: str, html: str) -> Page:
    return Page(path=path, content=html.encode())


def _trip_charts(trip: TripPage) -> list[Chart | None]:
    hold = trip.hold
    chartlet = trip.chartlet.chart if trip.chartlet else None
    return [chartlet, trip.run, trip.grades, hold.plan, hold.ice, hold.ageing, trip.age, trip.weather_chart]


def _drawn(charts: Iterable[Chart | None]) -> Iterator[Page]:
    """Give the charts there are as files; what draws them is loaded with the first."""
    wanted = [chart for chart in charts if chart is not None]
    if wanted:
        from logbook.render.draw import draw  # noqa: PLC0415 - matplotlib takes half a second to load

        for chart in wanted:
            yield Page(path=chart.path, content=draw(chart))
