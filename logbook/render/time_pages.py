"""The pages of a season and of a week: what was landed, by whom, and for a week who is due on which market."""

from collections import Counter
from collections.abc import Sequence
from datetime import date, datetime, timedelta
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import GroupFigures, Landed
from logbook.model.ledger import Brief, Entry, Ledger
from logbook.model.problem import Problem, Severity
from logbook.render.charts import Chart
from logbook.render.clock import Clock, clock_of_offsets
from logbook.render.environment import environment
from logbook.render.fleet_charts import month_columns
from logbook.render.frame import Frame, Site
from logbook.render.gather import TripLine, added, every_month, offsets_of, trip_line, week_of
from logbook.render.language import _
from logbook.render.links import place_chart, season_page, week_page

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


class Last(Struct, frozen=True, kw_only=True):
    """What the page of the last week shows besides.

    Attributes:
        out: The trips that are out.
        problems: Of all logs.
    """

    out: Sequence[Entry]
    problems: Sequence[Problem]


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


def season_context(
    site: Site, ledger: Ledger, group: GroupFigures, previous: str | None = None, later: str | None = None
) -> SeasonPage:
    """Return what the page of a season shows.

    Args:
        site: What all pages share.
        ledger: All trips.
        group: The season's sums.
        previous: The season before that has a page.
        later: The season after.
    """
    name = group.name
    briefs = tuple(ledger.briefs(entry.id for entry in ledger.of_season(name)))
    months: dict[str, list[Brief]] = {}
    for brief in sorted(briefs, key=_docked_month):
        months.setdefault(_docked_month(brief), []).append(brief)
    landed = [brief.landed for brief in briefs if brief.landed is not None]
    return SeasonPage(
        frame=Frame(site=site, path=season_page(name), title=_("Season {name}").format(name=name)),
        clock=clock_of_offsets(offsets_of(briefs)),
        group=group,
        trips=tuple(map(trip_line, sorted(briefs, key=_begun, reverse=True))),
        months=tuple(ledger.group(month, own) for month, own in months.items()),
        chart=month_columns(_by_month(landed), place_chart("seasons", name, "months"), name),
        species=_species(landed),
        weeks=tuple(dict.fromkeys(week_of(one.docked.date()) for one in landed)),
        previous=previous,
        next=later,
    )


def _docked_month(brief: Brief) -> str:
    return f"{brief.landed.docked:%Y-%m}" if brief.landed is not None else ""


def _begun(brief: Brief) -> tuple[datetime, str]:
    return brief.trip.log.begins, brief.trip.figures.trip.id


def _by_month(landed: Sequence[Landed]) -> dict[str, dict[str, Decimal]]:
    """Return what some landings came to by month and species, with the months between them that had none."""
    sums: dict[str, dict[str, Decimal]] = {month: {} for month in every_month(f"{one.docked:%Y-%m}" for one in landed)}
    for one in landed:
        own = sums[f"{one.docked:%Y-%m}"]
        for name, weight in one.species.items():
            own[name] = own.get(name, Decimal(0)) + weight
    return sums


def week_context(
    site: Site,
    ledger: Ledger,
    name: str,
    landed: Sequence[Entry],
    last: Last | None,
    previous: str | None = None,
    later: str | None = None,
) -> WeekPage:
    """Return what the page of a week shows.

    Args:
        site: What all pages share.
        ledger: All trips.
        name: The week.
        landed: The trips that docked in it, in order.
        last: Who is due and which logs are faulty, on the page of the last week alone.
        previous: The week before that has a page.
        later: The week after.
    """
    first = date.fromisocalendar(int(name[:4]), int(name[-2:]), 1)
    briefs = tuple(ledger.briefs(entry.id for entry in landed))
    out = tuple(ledger.briefs(entry.id for entry in last.out)) if last is not None else ()
    docked = [brief.landed for brief in briefs if brief.landed is not None]
    return WeekPage(
        frame=Frame(site=site, path=week_page(name), title=_week_title(name)),
        clock=clock_of_offsets(offsets_of((*briefs, *out))),
        name=name,
        first=first,
        last=first + timedelta(days=6),
        as_of=ledger.latest if last is not None else None,
        group=ledger.group(name, briefs) if briefs else None,
        landings=tuple(_landing(brief.landed, brief.trip) for brief in briefs if brief.landed is not None),
        species=_species(docked),
        due=_due([one.trip for one in out]),
        faulty=_faulty(last.problems) if last is not None else (),
        previous=previous,
        next=later,
    )


def _week_title(name: str) -> str:
    return _("Week {week} of {year}").format(week=int(name[-2:]), year=name[:4])


def _landing(landed: Landed, trip: Reckoned) -> DayLanded:
    heaviest = sorted(landed.species.items(), key=lambda one: (-one[1], one[0]))
    return DayLanded(landed=landed, trip=trip, total=added(landed.species.values()), chief=tuple(heaviest[:_CHIEF]))


def _species(landed: Sequence[Landed]) -> tuple[tuple[str, Decimal], ...]:
    sums: dict[str, Decimal] = {}
    for one in landed:
        for name, weight in one.species.items():
            sums[name] = sums.get(name, Decimal(0)) + weight
    return tuple(sorted(sums.items(), key=lambda one: (-one[1], one[0])))


def _due(out: Sequence[Reckoned]) -> tuple[Due, ...]:
    """Return the vessels that are out, by when they are expected; two on one sale are told."""
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
