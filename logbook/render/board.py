"""The landing board for a shared screen: who lands when, the last word from each, last landings, the best haul; charts in turn.

One page for each chart; every page leads to the next by itself, by plain HTML, and so reads the archive anew.
"""

from collections.abc import Sequence
from datetime import datetime, timedelta

from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import FleetFigures
from logbook.model.places import TowMark
from logbook.render.charts import Chart
from logbook.render.clock import Clock, clock_of
from logbook.render.environment import environment
from logbook.render.frame import Frame, Site
from logbook.render.gather import TripLine, moments, trip_line
from logbook.render.links import board_page

SECONDS = 45
"""So long a page of the board stands."""
_OUT = ("homeward", "at sea")
_ROWS = 6
_LATEST = 4
_RECENT = timedelta(days=7)


class BoardRow(Struct, frozen=True, kw_only=True):
    """A vessel on the board.

    Attributes:
        trip: Her trip.
        docks: When she is expected; None where that can't be told.
        sails_again: When, where it was said.
    """

    trip: Reckoned
    docks: datetime | None
    sails_again: datetime | None


class BoardPage(Struct, frozen=True, kw_only=True):
    """One page of the board."""

    frame: Frame
    clock: Clock
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


def board_contexts(
    site: Site, trips: Sequence[Reckoned], figures: FleetFigures, charts: Sequence[Chart]
) -> tuple[BoardPage, ...]:
    """Return what each page of the board shows: the same board, with one of the charts in turn."""
    rows = _rows(trips)
    landed = {one.trip_id: one for one in figures.landed}
    by_id = {trip.figures.trip.id: trip for trip in trips}
    last = [by_id[one.trip_id] for one in figures.landed[: -_LATEST - 1 : -1]]
    latest = max((trip.figures.trip.last_word for trip in trips), default=None)
    shown: Sequence[Chart | None] = charts or (None,)
    return tuple(
        BoardPage(
            frame=Frame(site=site, path=board_page(number), title="Board"),
            clock=clock_of(moments([row.trip for row in rows] or trips)),
            number=number,
            pages=len(shown),
            after=board_page(number % len(shown) + 1),
            seconds=SECONDS,
            as_of=latest,
            rows=rows[:_ROWS],
            more=max(0, len(rows) - _ROWS),
            landings=tuple(trip_line(trip, landed[trip.figures.trip.id]) for trip in last),
            sailing=_sailing(trips),
            best=_best(trips, latest),
            chart=chart,
        )
        for number, chart in enumerate(shown, 1)
    )


def _rows(trips: Sequence[Reckoned]) -> tuple[BoardRow, ...]:
    """Return the vessels that are out in order of when they are expected, those that nobody can tell last."""
    out = [
        BoardRow(trip=trip, docks=trip.figures.landing.docked, sails_again=trip.log.sails_again)
        for trip in trips
        if trip.figures.trip.state in _OUT
    ]
    known = sorted((row for row in out if row.docks is not None), key=lambda row: (row.docks, row.trip.figures.trip.id))
    return (*known, *(row for row in out if row.docks is None))


def _sailing(trips: Sequence[Reckoned]) -> tuple[BoardRow, ...]:
    """Return the vessels that said when they sail again, of each its latest trip, unless it has sailed since."""
    rows = [
        BoardRow(trip=trip, docks=trip.figures.trip.docked, sails_again=trip.log.sails_again)
        for trip in trips
        if trip.log.sails_again is not None and trip.neighbours.next_sailed is None
    ]
    return tuple(sorted(rows, key=lambda row: (row.sails_again, row.trip.figures.trip.id)))[:_LATEST]


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
