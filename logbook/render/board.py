"""The landing board for a shared screen: who lands when, the last word from each, last landings, the best haul; charts in turn.

One page for each chart; every page leads to the next by itself, by plain HTML, and so reads the archive anew.
"""

from collections.abc import Sequence
from datetime import datetime, timedelta

from msgspec import Struct
from msgspec.structs import replace

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import FleetFigures
from logbook.model.places import TowMark
from logbook.render.charts import Chart
from logbook.render.clock import Clock, clock_of
from logbook.render.environment import environment
from logbook.render.fleet_charts import grounds_chart, landings_chart
from logbook.render.frame import Frame, Site
from logbook.render.gather import TripLine, moments, trip_line
from logbook.render.language import _
from logbook.render.links import board_page, fleet_chart

SECONDS = 45
"""So long a page of the board stands."""
_OUT = ("homeward", "at sea")
_ROWS = 6
_RECENT = timedelta(days=7)
_FEW, _SOME = 2, 4
_LISTED = {"few": 4, "some": 3, "full": 3}
"""How many landings and sailings there is room for."""
_LANDINGS = {"few": (620, 310), "some": (680, 263), "full": (760, 262)}
"""Width and height of the chart of landings."""
_GROUNDS = 6


class BoardRow(Struct, frozen=True, kw_only=True):
    """A vessel on the board.

    Attributes:
        trip: Her trip.
        docks: When she is expected; None where that can't be told.
        sails_again: When, where it was said.
        sale: The next sale that she can make; None where none can be told.
    """

    trip: Reckoned
    docks: datetime | None
    sails_again: datetime | None
    sale: datetime | None = None


class BoardPage(Struct, frozen=True, kw_only=True):
    """One page of the board.

    Attributes:
        size: How much of it the vessels that are out take, as a class of the style sheet: few, some or full.
        after: Path of the page that follows by itself.
        seconds: When it does.
        as_of: The last word of the archive.
        rows: Those that are out.
        more: How many more are out than there is room for.
        landings: The last ones, the latest first.
        sailing: Those that said when they sail again.
        best: The best haul of the week before the last word.
        chart: One of the fleet's charts.
        caption: What it shows.
    """

    frame: Frame
    clock: Clock
    size: str
    number: int
    pages: int
    after: str
    seconds: int
    as_of: datetime | None
    rows: tuple[BoardRow, ...]
    more: int
    landings: tuple[TripLine, ...]
    sailing: tuple[BoardRow, ...]
    best: TowMark | None
    chart: Chart | None
    caption: str


def board_contexts(site: Site, trips: Sequence[Reckoned], figures: FleetFigures) -> tuple[BoardPage, ...]:
    """Return what each page of the board shows: the same board, with one of the charts in turn."""
    rows = _rows(trips)
    landed = {one.trip_id: one for one in figures.landed}
    by_id = {trip.figures.trip.id: trip for trip in trips}
    last = [by_id[one.trip_id] for one in reversed(figures.landed[-_LISTED["few"] :])]
    latest = max((trip.figures.trip.last_word for trip in trips), default=None)
    size = _size(len(rows))
    shown: Sequence[tuple[Chart | None, str]] = _charts(figures, size) or ((None, ""),)
    listed = _LISTED[size]
    return tuple(
        BoardPage(
            frame=Frame(site=site, path=board_page(number), title=_("Board")),
            clock=clock_of(moments([row.trip for row in rows] or trips)),
            size=size,
            number=number,
            pages=len(shown),
            after=board_page(number % len(shown) + 1),
            seconds=SECONDS,
            as_of=latest,
            rows=rows[:_ROWS],
            more=max(0, len(rows) - _ROWS),
            landings=tuple(trip_line(trip, landed[trip.figures.trip.id]) for trip in last[:listed]),
            sailing=_sailing(trips, latest)[:listed],
            best=_best(trips, latest),
            chart=chart,
            caption=caption,
        )
        for number, (chart, caption) in enumerate(shown, 1)
    )


def _charts(figures: FleetFigures, size: str) -> tuple[tuple[Chart, str], ...]:
    """Return the charts with their captions, drawn to fill the room there is, so that their words are as large as can be."""
    landings, grounds = landings_chart(figures), grounds_chart(figures, "board-grounds", _GROUNDS)
    made = []
    if landings is not None:
        width, height = _LANDINGS[size]
        chart = replace(landings, path=fleet_chart("board-landings"), width=width, height=height)
        made.append((chart, _("Landings by month and species, tonnes")))
    if grounds is not None:
        made.append((grounds, _("Catch per hour by ground, kg/h")))
    return tuple(made)


def _rows(trips: Sequence[Reckoned]) -> tuple[BoardRow, ...]:
    """Return the vessels that are out in order of when they are expected, those that nobody can tell last."""
    out = [
        BoardRow(trip=trip, docks=trip.figures.landing.docked, sails_again=trip.log.sails_again, sale=_sale(trip))
        for trip in trips
        if trip.figures.trip.state in _OUT
    ]
    known = sorted((row for row in out if row.docks is not None), key=lambda row: (row.docks, row.trip.figures.trip.id))
    unknown = sorted((row for row in out if row.docks is None), key=lambda row: row.trip.figures.trip.id)
    return (*known, *unknown)


def _sale(trip: Reckoned) -> datetime | None:
    sales = trip.figures.landing.sales
    return sales[0].at if sales else None


def _size(rows: int) -> str:
    """Return how much of the board so many vessels take."""
    return "few" if rows <= _FEW else "some" if rows <= _SOME else "full"


def _sailing(trips: Sequence[Reckoned], latest: datetime | None) -> tuple[BoardRow, ...]:
    """Return the vessels that said when they sail again, unless they have, or that time lies before the last word of the archive."""
    rows = [
        BoardRow(trip=trip, docks=trip.figures.trip.docked, sails_again=trip.log.sails_again)
        for trip in trips
        if trip.log.sails_again is not None
        and trip.neighbours.next_sailed is None
        and latest is not None
        and trip.log.sails_again >= latest
    ]
    return tuple(sorted(rows, key=lambda row: (row.sails_again, row.trip.figures.trip.id)))


def _best(trips: Sequence[Reckoned], latest: datetime | None) -> TowMark | None:
    """Return the tow that kept most in the week before the last word of the archive."""
    found: list[TowMark] = []
    for trip in trips:
        for order, tow in enumerate(trip.figures.tows, 1):
            when = tow.hauled or tow.shot
            if tow.kept_kg and when is not None and latest is not None and latest - when <= _RECENT:
                found.append(
                    TowMark(
                        trip_id=trip.figures.trip.id,
                        vessel=trip.figures.trip.vessel,
                        order=order,
                        no=tow.no,
                        when=when,
                        ground=tow.ground,
                        kept_kg=tow.kept_kg,
                        kept_kg_per_h=tow.kept_kg_per_h,
                    )
                )
    return max(found, key=lambda mark: (mark.kept_kg or 0, mark.trip_id, -mark.order), default=None)


def render_board(context: BoardPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/board.html").render(page=context, frame=context.frame)
