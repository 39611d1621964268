"""The pages of a season and of a week: what was landed, by whom, and for a week who is due on which market."""

from collections import Counter
from collections.abc import Sequence
from datetime import date, datetime, timedelta
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import FleetFigures, GroupFigures, Landed
from logbook.model.problem import Problem, Severity
from logbook.render.charts import Chart
from logbook.render.clock import Clock, clock_of
from logbook.render.environment import environment
from logbook.render.fleet_charts import month_columns
from logbook.render.frame import Frame, Site
from logbook.render.gather import TripLine, added, begun, moments, trip_line
from logbook.render.language import _
from logbook.render.links import place_chart, season_page, week_page

_OUT = ("homeward", "at sea")
_CHIEF = 4


class SeasonPage(Struct, frozen=True, kw_only=True):
    """All that a season's page shows."""

    frame: Frame
    clock: Clock
    group: GroupFigures
    trips: tuple[TripLine, ...]
    months: tuple[GroupFigures, ...]
    chart: Chart | None
    species: tuple[tuple[str, Decimal], ...]
    weeks: tuple[str, ...]
    previous: str | None
    next: str | None


class DayLanded(Struct, frozen=True, kw_only=True):
    """What one vessel landed on one day of a week."""

    landed: Landed
    trip: Reckoned
    total: Decimal | None
    chief: tuple[tuple[str, Decimal], ...]


class Due(Struct, frozen=True, kw_only=True):
    """A vessel that is out: when she is expected, and on which market.

    Attributes:
        trip: Her trip.
        sale: The next sale that she can make; None where none can be told.
        shared: True where another vessel is due on the same sale of the same port.
    """

    trip: Reckoned
    sale: datetime | None
    shared: bool


class WeekPage(Struct, frozen=True, kw_only=True):
    """All that a week's page shows."""

    frame: Frame
    clock: Clock
    name: str
    first: date
    last: date
    as_of: datetime | None
    group: GroupFigures | None
    landings: tuple[DayLanded, ...]
    species: tuple[tuple[str, Decimal], ...]
    due: tuple[Due, ...]
    faulty: tuple[tuple[str, int, int], ...]
    previous: str | None
    next: str | None


def season_contexts(site: Site, trips: Sequence[Reckoned], figures: FleetFigures) -> tuple[SeasonPage, ...]:
    """Return what the page of every season shows."""
    names = list(figures.seasons)
    of_trip = {one.trip_id: one for one in figures.landed}
    by_id = {trip.figures.trip.id: trip for trip in trips}
    landed: dict[str, list[Landed]] = {name: [] for name in names}
    for one in figures.landed:
        landed[one.season].append(one)
    made = []
    for n, name in enumerate(names):
        own = [by_id[one.trip_id] for one in landed[name]]
        weeks = dict.fromkeys(week_of(one.docked.date()) for one in landed[name])
        made.append(
            SeasonPage(
                frame=Frame(site=site, path=season_page(name), title=_("Season {name}").format(name=name)),
                clock=clock_of(moments(own)),
                group=figures.seasons[name],
                trips=tuple(
                    trip_line(trip, of_trip.get(trip.figures.trip.id)) for trip in sorted(own, key=begun, reverse=True)
                ),
                months=tuple(figures.months_of_season[name].values()),
                chart=month_columns(_by_month(landed[name], figures), place_chart("seasons", name, "months"), name),
                species=_species(landed[name]),
                weeks=tuple(weeks),
                previous=names[n - 1] if n else None,
                next=names[n + 1] if n + 1 < len(names) else None,
            )
        )
    return tuple(made)


def _by_month(landed: Sequence[Landed], figures: FleetFigures) -> dict[str, dict[str, Decimal]]:
    """Return what some landings came to by month and species, with the months between them that had none."""
    own = [f"{one.docked:%Y-%m}" for one in landed]
    sums: dict[str, dict[str, Decimal]] = {
        month: {} for month in figures.landed_by_month if own and own[0] <= month <= own[-1]
    }
    for month, one in zip(own, landed, strict=True):
        for name, weight in one.species.items():
            sums[month][name] = sums[month].get(name, Decimal(0)) + weight
    return sums


def week_contexts(
    site: Site, trips: Sequence[Reckoned], figures: FleetFigures, problems: Sequence[Problem]
) -> tuple[WeekPage, ...]:
    """Return what the page of every week with a landing shows, and of the week of the last word; that one has who is due."""
    latest = max((trip.figures.trip.last_word for trip in trips), default=None)
    names = set(figures.weeks) | ({week_of(latest.date())} if latest is not None else set())
    ordered = sorted(names)
    by_id = {trip.figures.trip.id: trip for trip in trips}
    landed: dict[str, list[Landed]] = {name: [] for name in ordered}
    for one in figures.landed:
        landed[week_of(one.docked.date())].append(one)
    made = []
    for n, name in enumerate(ordered):
        last = n + 1 == len(ordered)
        first = date.fromisocalendar(int(name[:4]), int(name[-2:]), 1)
        own = [by_id[one.trip_id] for one in landed[name]]
        due = _due(trips) if last else ()
        made.append(
            WeekPage(
                frame=Frame(site=site, path=week_page(name), title=_week_title(name)),
                clock=clock_of(moments([*own, *(one.trip for one in due)])),
                name=name,
                first=first,
                last=first + timedelta(days=6),
                as_of=latest,
                group=figures.weeks.get(name),
                landings=tuple(_landing(one, by_id[one.trip_id]) for one in landed[name]),
                species=_species(landed[name]),
                due=due,
                faulty=_faulty(problems) if last else (),
                previous=ordered[n - 1] if n else None,
                next=ordered[n + 1] if not last else None,
            )
        )
    return tuple(made)


def _week_title(name: str) -> str:
    return _("Week {week} of {year}").format(week=int(name[-2:]), year=name[:4])


def week_of(day: date) -> str:
    """Return the ISO week of a day, as `2026-W10`."""
    year, week, _weekday = day.isocalendar()
    return f"{year}-W{week:02}"


def _landing(landed: Landed, trip: Reckoned) -> DayLanded:
    heaviest = sorted(landed.species.items(), key=lambda one: (-one[1], one[0]))
    return DayLanded(landed=landed, trip=trip, total=added(landed.species.values()), chief=tuple(heaviest[:_CHIEF]))


def _species(landed: Sequence[Landed]) -> tuple[tuple[str, Decimal], ...]:
    sums: dict[str, Decimal] = {}
    for one in landed:
        for name, weight in one.species.items():
            sums[name] = sums.get(name, Decimal(0)) + weight
    return tuple(sorted(sums.items(), key=lambda one: (-one[1], one[0])))


def _due(trips: Sequence[Reckoned]) -> tuple[Due, ...]:
    """Return the vessels that are out, by when they are expected; two on one sale are told."""
    out = [trip for trip in trips if trip.figures.trip.state in _OUT]
    sales = Counter((trip.figures.landing.port, _sale(trip)) for trip in out)
    made = [
        Due(
            trip=trip,
            sale=(sale := _sale(trip)),
            shared=sale is not None and sales[trip.figures.landing.port, sale] > 1,
        )
        for trip in out
    ]
    return tuple(sorted(made, key=_expected))


def _expected(due: Due) -> tuple[bool, float, str]:
    docked = due.trip.figures.landing.docked
    return docked is None, docked.timestamp() if docked is not None else 0.0, due.trip.figures.trip.id


def _sale(trip: Reckoned) -> datetime | None:
    sales = trip.figures.landing.sales
    return sales[0].at if sales else None


def _faulty(problems: Sequence[Problem]) -> tuple[tuple[str, int, int], ...]:
    """Return the logs with errors or warnings, and how many of each."""
    counts: dict[str, Counter[Severity]] = {}
    for problem in set(problems):
        counts.setdefault(problem.place.file, Counter())[problem.severity] += 1
    rows = [(file, count[Severity.ERROR], count[Severity.WARNING]) for file, count in sorted(counts.items())]
    return tuple(row for row in rows if row[1] or row[2])


def render_season(context: SeasonPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/season.html").render(page=context, frame=context.frame)


def render_week(context: WeekPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/week.html").render(page=context, frame=context.frame)
