"""The whole archive as pages, from what was read and reckoned."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import partial
from itertools import groupby

from logbook.model.edition import Policy
from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.fleet_figures import FleetFigures, GroupFigures, Landed
from logbook.model.gear import FastMark
from logbook.model.ledger import Entry, Kit, Ledger
from logbook.model.named import ByName
from logbook.model.page import Draft, Drafts, File, Maker, Page, key_of
from logbook.model.places import GroundFigures, SpeciesFigures
from logbook.model.problem import Problem, Severity
from logbook.render.board import board_contexts, render_board
from logbook.render.charts import Chart
from logbook.render.environment import template_root
from logbook.render.files.all import fleet_files
from logbook.render.find import Counts, find_files
from logbook.render.frame import Site
from logbook.render.front import front_context, render_front
from logbook.render.gather import NOUGHT, out_at_sea, week_of, weeks_of
from logbook.render.gear import gear_contexts, render_gear
from logbook.render.guides import guide_pages
from logbook.render.links import (
    BOARD,
    FRONT,
    GEAR,
    PROBLEM_CODES,
    RECKONING,
    ground_page,
    numbered_page,
    season_page,
    species_page,
    vessel_page,
    week_page,
)
from logbook.render.place_pages import ground_context, render_ground, render_species, species_context
from logbook.render.problem_codes import codes_context, render_codes
from logbook.render.problems import FilePart, problem_parts, problems_context, render_problems
from logbook.render.reckoning import reckoning_context, render_reckoning
from logbook.render.static import script_files, style_file
from logbook.render.time_pages import Last, render_season, render_week, season_context, week_context
from logbook.render.trip import TripPage, render_trip, trip_context
from logbook.render.vessel import render_vessel, vessel_context

ICON = "icon.svg"

Made = Iterator[Page | Draft]


def site_of(name: str, policy: Policy, species: Iterable[str] = ()) -> Site:
    """Return what all pages of an archive share.

    Args:
        name: The fleet's name.
        policy: What the edition shows.
        species: Names of the species that have a page.
    """
    return Site(
        name=name,
        style=style_file().path,
        scripts=ByName((called, script.path) for called, script in script_files()),
        policy=policy,
        species=frozenset(species),
    )


def trip_files(trip: Reckoned, site: Site, fleet: Fleet, landed: Landed | None, drafts: Drafts) -> Made:
    """Give the page of a trip with its charts.

    Args:
        trip: With all that the edition shows of it.
        site: What all pages share; of its species only those bear on it that the trip caught.
        fleet: The fleet file, or what stands for it.
        landed: What the trip put ashore.
        drafts: Makes those of its charts that have changed.
    """
    context = trip_context(site, fleet, trip, landed)
    yield _page(context.frame.path, render_trip(context))
    yield from _drawn(drafts, _trip_charts(context))


def render_archive(
    fleet: Fleet, ledger: Ledger, problems: tuple[Problem, ...], site: Site, maker: Maker
) -> Iterator[File]:
    """Give every file of the archive but those of single trips: pages, charts, the style sheet and scripts, in no order that matters.

    Args:
        fleet: The fleet file, or what stands for it.
        ledger: All trips as the edition shows them.
        problems: Every problem of every file, those of the trips too; none in an edition that does not show them.
        site: What all pages share.
        maker: Makes the files, or knows that they were made before.
    """
    yield style_file()
    yield from (script for _, script in script_files())
    yield Page(path=ICON, content=(template_root() / "static" / ICON).read_bytes())
    files = []
    figures = ledger.fleet()
    for file in fleet_files(fleet, ledger, ledger.fasts(), problems, site.policy, site.name, maker):
        yield file
        files.append(file.path)
    every = ledger.key_of(ledger.entries)
    troubles = sum(problem.severity is not Severity.NOTE for problem in set(problems))
    front = (site, every, troubles, files)
    yield from maker.files(FRONT, front, partial(_front, site, ledger, troubles, files))
    yield from maker.files(BOARD, (site, every), partial(_board, site, ledger))
    yield from find_files(site, ledger, _counts(figures), tuple(figures.seasons), maker)
    for name, group in figures.vessels.items():
        of_her = ledger.key_of(ledger.of_vessel(name))
        yield from maker.files(vessel_page(name), (site, of_her), partial(_vessel, site, ledger, name, group))
    for species in ledger.species():
        yield from maker.files(species_page(species.name), (site, species), partial(_species, site, species))
    for ground in ledger.grounds():
        yield from maker.files(ground_page(ground.name), (site, ground), partial(_ground, site, ground))
    yield from _time_pages(site, ledger, problems, maker)
    yield from _lists(site, fleet, ledger, problems, maker)
    yield from maker.files(RECKONING, (site, fleet), partial(_reckoning, site, fleet))
    yield from maker.files("guides", (site,), lambda _: guide_pages(site))


def _counts(figures: FleetFigures) -> Counts:
    """Return what tells which names are offered for finding by touch."""
    return Counts(
        species=ByName((name, group.kept_kg or NOUGHT) for name, group in figures.species.items()),
        grounds=ByName((name, group.tows) for name, group in figures.grounds.items()),
        vessels=ByName((name, group.trips) for name, group in figures.vessels.items()),
    )


def _reckoning(site: Site, fleet: Fleet, _drafts: Drafts) -> Made:
    reckoning = reckoning_context(site, fleet)
    yield _page(reckoning.frame.path, render_reckoning(reckoning))


def _codes(site: Site, _drafts: Drafts) -> Made:
    codes = codes_context(site)
    yield _page(codes.frame.path, render_codes(codes))


def _front(site: Site, ledger: Ledger, troubles: int, files: Sequence[str], drafts: Drafts) -> Made:
    front = front_context(site, ledger, troubles, files)
    yield _page(front.frame.path, render_front(front))
    yield from _drawn(drafts, [front.months, front.grounds])


def _board(site: Site, ledger: Ledger, drafts: Drafts) -> Made:
    for board in board_contexts(site, ledger):
        yield _page(board.frame.path, render_board(board))
        yield from _drawn(drafts, [board.chart])


def _vessel(site: Site, ledger: Ledger, name: str, figures: GroupFigures, drafts: Drafts) -> Made:
    vessel = vessel_context(site, ledger, name, figures)
    yield _page(vessel.frame.path, render_vessel(vessel))
    yield from _drawn(drafts, [vessel.chart, vessel.gross])


def _species(site: Site, species: SpeciesFigures, drafts: Drafts) -> Made:
    context = species_context(site, species)
    yield _page(context.frame.path, render_species(context))
    yield from _drawn(drafts, [context.months, context.landed, context.grades])


def _ground(site: Site, ground: GroundFigures, drafts: Drafts) -> Made:
    context = ground_context(site, ground, site.species)
    yield _page(context.frame.path, render_ground(context))
    yield from _drawn(drafts, [context.months, context.species])


def _time_pages(site: Site, ledger: Ledger, problems: Sequence[Problem], maker: Maker) -> Iterator[File]:
    """Give the pages of every season and of every week with a landing, and of the week of the last word."""
    alike = key_of(site)  # once, for there are a thousand weeks in twenty years
    seasons = tuple(ledger.fleet().seasons.values())
    names = (None, *(season.name for season in seasons), None)
    for n, season in enumerate(seasons):
        beside = names[n], names[n + 2]
        of = (alike, ledger.key_of(ledger.of_season(season.name)), beside)
        yield from maker.files(season_page(season.name), of, partial(_season, site, ledger, season, *beside))
    docked = sorted((one.docked, one.id, one) for one in ledger.entries if one.docked is not None)
    landed = {name: [one for _, _, one in own] for name, own in groupby(docked, key=lambda one: week_of(one[0].date()))}
    weeks = (None, *reversed(weeks_of(ledger)), None)
    last = Last(out=tuple(out_at_sea(ledger.entries)), problems=problems)
    for n, week in enumerate(weeks[1:-1]):
        if week is not None:
            beside = weeks[n], weeks[n + 2]
            own, besides = landed.get(week, []), last if weeks[n + 2] is None else None
            of_last = (ledger.key_of(last.out), ledger.latest, last.problems) if besides is not None else ()
            made = partial(_week, site, ledger, week, own, besides, *beside)
            yield from maker.files(week_page(week), (alike, ledger.key_of(own), of_last, beside), made)


def _season(
    site: Site, ledger: Ledger, group: GroupFigures, previous: str | None, later: str | None, drafts: Drafts
) -> Made:
    season = season_context(site, ledger, group, previous, later)
    yield _page(season.frame.path, render_season(season))
    yield from _drawn(drafts, [season.chart])


def _week(
    site: Site,
    ledger: Ledger,
    name: str,
    landed: Sequence[Entry],
    last: Last | None,
    previous: str | None,
    later: str | None,
    _drafts: Drafts,
) -> Made:
    week = week_context(site, ledger, name, landed, last, previous, later)
    yield _page(week.frame.path, render_week(week))


def _lists(site: Site, fleet: Fleet, ledger: Ledger, problems: Sequence[Problem], maker: Maker) -> Iterator[File]:
    """Give the pages of gear, fasts and problems, of which an edition may have none, and a large archive several."""
    if site.policy.gear:
        kits = {name: ledger.kit(ledger.of_vessel(name)[-1].id) for name in ledger.vessels}
        fasts = ledger.fasts()
        of = (site, fleet, tuple(kits.items()), fasts)
        yield from maker.files(GEAR, of, lambda drafts: _gear(site, fleet, kits, fasts, drafts))
    if site.policy.problems:
        ids = {entry.file: entry for entry in ledger.entries}
        for part in problem_parts(problems):
            trips = [ids[file] for file, _, _ in part.files if file in ids]
            path = numbered_page(part.page.first, part.page.number)
            yield from maker.files(
                path, (site, part, ledger.key_of(trips)), partial(_problems, site, ledger, part, trips)
            )
        yield from maker.files(PROBLEM_CODES, (site,), partial(_codes, site))


def _gear(site: Site, fleet: Fleet, kits: Mapping[str, Kit], fasts: Sequence[FastMark], drafts: Drafts) -> Made:
    for gear in gear_contexts(site, fleet, kits, fasts):
        yield _page(gear.frame.path, render_gear(gear))
        yield from _drawn(drafts, [gear.chart, gear.hours])


def _problems(site: Site, ledger: Ledger, part: FilePart, trips: Sequence[Entry], _drafts: Drafts) -> Made:
    read = {brief.trip.log.file: brief.trip for brief in ledger.briefs(entry.id for entry in trips)}
    context = problems_context(site, part, read)
    yield _page(context.frame.path, render_problems(context))


def _page(path: str, html: str) -> Page:
    return Page(path=path, content=html.encode())


def _trip_charts(trip: TripPage) -> list[Chart | None]:
    hold = trip.hold
    chartlet = trip.chartlet.chart if trip.chartlet else None
    return [chartlet, trip.run, trip.grades, hold.plan, hold.ice, hold.ageing, trip.age, trip.weather_chart]


def _drawn(drafts: Drafts, charts: Iterable[Chart | None]) -> Made:
    """Give the charts there are as files, drawn anew only where what they show has changed."""
    for chart in charts:
        if chart is not None:
            yield drafts.file(chart.path, (type(chart.drawing).__name__, chart), partial(_draw, chart))


def _draw(chart: Chart) -> bytes:
    """Draw a chart; what draws is loaded with the first."""
    from logbook.render.draw import draw  # noqa: PLC0415 - matplotlib takes half a second to load

    return draw(chart)
