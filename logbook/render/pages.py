"""The whole archive as pages, from what was read and reckoned."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from functools import partial

from msgspec.structs import replace

from logbook.model.edition import Policy
from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.fleet_figures import FleetFigures, Landed
from logbook.model.named import ByName
from logbook.model.page import File, Maker, Page
from logbook.model.places import Places
from logbook.model.problem import Problem, Severity
from logbook.render.board import board_contexts, render_board
from logbook.render.charts import Chart
from logbook.render.environment import template_root
from logbook.render.files.all import data_files
from logbook.render.find import find_pages
from logbook.render.frame import Site
from logbook.render.front import front_context, render_front
from logbook.render.gear import gear_contexts, render_gear
from logbook.render.guides import guide_pages
from logbook.render.links import trip_page
from logbook.render.place_pages import ground_context, render_ground, render_species, species_context
from logbook.render.problem_codes import codes_context, render_codes
from logbook.render.problems import problems_contexts, render_problems
from logbook.render.reckoning import reckoning_context, render_reckoning
from logbook.render.static import script_files, style_file
from logbook.render.time_pages import render_season, render_week, season_contexts, week_contexts
from logbook.render.trip import TripPage, render_trip, trip_context
from logbook.render.vessel import render_vessel, vessel_context

ICON = "icon.svg"


def render_archive(
    fleet: Fleet,
    trips: tuple[Reckoned, ...],
    figures: FleetFigures,
    problems: tuple[Problem, ...],
    policy: Policy,
    places: Places,
    maker: Maker,
) -> Iterator[File]:
    """Give every file of the archive: pages, charts, the style sheet and scripts, in no order that matters.

    Args:
        fleet: The fleet file, or what stands for it.
        trips: All trips with their figures.
        figures: Sums over them.
        problems: Every problem of every file, those of the trips too; none in an edition that does not show them.
        places: What is known of species and grounds.
        policy: What the edition shows; nothing else is in the records any more.
        maker: Makes the files, or knows that they were made before.
    """
    style, scripts = style_file(), script_files()
    yield style
    yield from (script for _, script in scripts)
    yield Page(path=ICON, content=(template_root() / "static" / ICON).read_bytes())
    site = Site(
        name=fleet.title,
        style=style.path,
        scripts=ByName((name, script.path) for name, script in scripts),
        policy=policy,
        troubles=sum(problem.severity is not Severity.NOTE for problem in set(problems)),
        trips=frozenset(trip.figures.trip.id for trip in trips),
        species=frozenset(one.name for one in places.species),
    )
    landed = {one.trip_id: one for one in figures.landed}
    of_vessel: dict[str, list[Reckoned]] = defaultdict(list)
    for reckoned in trips:
        of_vessel[reckoned.figures.trip.vessel].append(reckoned)
        yield from _trip_files(site, fleet, reckoned, landed.get(reckoned.figures.trip.id), maker)
    for name in sorted(of_vessel):
        vessel = vessel_context(site, of_vessel[name], figures, landed)
        yield _page(vessel.frame.path, render_vessel(vessel))
        yield from _drawn(maker, [vessel.chart, vessel.gross])
    files = []
    for file in data_files(fleet, trips, figures, problems, policy, site.name, maker):
        yield file
        files.append(file.path)
    front = front_context(site, trips, figures, files)
    yield _page(front.frame.path, render_front(front))
    yield from _drawn(maker, [front.months, front.grounds])
    for species in places.species:
        of_species = species_context(site, species)
        yield _page(of_species.frame.path, render_species(of_species))
        yield from _drawn(maker, [of_species.months, of_species.landed, of_species.grades])
    for ground in places.grounds:
        of_ground = ground_context(site, ground, site.species)
        yield _page(of_ground.frame.path, render_ground(of_ground))
        yield from _drawn(maker, [of_ground.months, of_ground.species])
    for season in season_contexts(site, trips, figures):
        yield _page(season.frame.path, render_season(season))
        yield from _drawn(maker, [season.chart])
    for week in week_contexts(site, trips, figures, problems):
        yield _page(week.frame.path, render_week(week))
    for board in board_contexts(site, trips, figures):
        yield _page(board.frame.path, render_board(board))
        yield from _drawn(maker, [board.chart])
    yield from find_pages(site, trips)
    yield from _lists(site, fleet, trips, figures, problems, maker)
    reckoning = reckoning_context(site, fleet)
    yield _page(reckoning.frame.path, render_reckoning(reckoning))
    yield from guide_pages(site)


def _lists(
    site: Site,
    fleet: Fleet,
    trips: tuple[Reckoned, ...],
    figures: FleetFigures,
    problems: tuple[Problem, ...],
    maker: Maker,
) -> Iterator[File]:
    """Give the pages of gear, fasts and problems, of which an edition may have none, and a large archive several."""
    if site.policy.gear:
        for gear in gear_contexts(site, fleet, figures):
            yield _page(gear.frame.path, render_gear(gear))
            yield from _drawn(maker, [gear.chart, gear.hours])
    if site.policy.problems:
        for troubles in problems_contexts(site, trips, problems):
            yield _page(troubles.frame.path, render_problems(troubles))
        codes = codes_context(site)
        yield _page(codes.frame.path, render_codes(codes))


def _page(path: str, html: str) -> Page:
    return Page(path=path, content=html.encode())


def _trip_files(site: Site, fleet: Fleet, trip: Reckoned, landed: Landed | None, maker: Maker) -> Iterable[File]:
    """Give the page of a trip with its charts; made anew only where something that it tells has changed."""
    beside = {trip.neighbours.previous_id, trip.neighbours.next_id}
    alone = replace(site, troubles=0, trips=site.trips & beside, species=site.species & trip.figures.catch.keys())

    def make() -> Iterator[File]:
        context = trip_context(alone, fleet, trip, landed)
        yield _page(context.frame.path, render_trip(context))
        yield from _drawn(maker, _trip_charts(context))

    return maker.files(trip_page(trip.figures.trip.id), (alone, fleet, trip, landed), make)


def _trip_charts(trip: TripPage) -> list[Chart | None]:
    hold = trip.hold
    chartlet = trip.chartlet.chart if trip.chartlet else None
    return [chartlet, trip.run, trip.grades, hold.plan, hold.ice, hold.ageing, trip.age, trip.weather_chart]


def _drawn(maker: Maker, charts: Iterable[Chart | None]) -> Iterator[File]:
    """Give the charts there are as files, drawn anew only where what they show has changed."""
    for chart in charts:
        if chart is not None:
            yield maker.file(chart.path, (type(chart.drawing).__name__, chart), partial(_draw, chart))


def _draw(chart: Chart) -> bytes:
    """Draw a chart; what draws is loaded with the first."""
    from logbook.render.draw import draw  # noqa: PLC0415 - matplotlib takes half a second to load

    return draw(chart)
