"""The landing board for a shared screen: who lands when, the last word from each, last landings, the best haul; charts in turn.

One page for each chart; every page leads to the next by itself, by plain HTML, and so reads the archive anew.
"""

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta

from msgspec import Struct
from msgspec.structs import replace

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import FleetFigures
from logbook.model.ledger import Brief, Ledger
from logbook.model.places import TowMark
from logbook.render.charts import Chart
from logbook.render.clock import Clock, clock_of_offsets
from logbook.render.environment import environment
from logbook.render.fleet_charts import grounds_chart, landings_chart
from logbook.render.frame import Frame, Site
from logbook.render.gather import TripLine, latest_landed, offsets_of, out_at_sea, trip_line
from logbook.render.language import _
from logbook.render.links import board_page, fleet_chart

SECONDS = 45
"""So long a page of the board stands."""
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


def board_contexts(site: Site, ledger: Ledger) -> tuple[BoardPage, ...]:
    """Return what each page of the board shows: the same board, with one of the charts in turn."""
    figures = ledger.fleet()
    out = tuple(ledger.briefs(entry.id for entry in out_at_sea(ledger.entries)))
    rows = _rows(out)
    size = _size(len(rows))
    shown: Sequence[tuple[Chart | None, str]] = _charts(figures, size) or ((None, ""),)
    listed = _LISTED[size]
    last = ledger.briefs(entry.id for entry in latest_landed(ledger.entries)[:listed])
    landings = tuple(map(trip_line, last))
    sailing = _sailing(ledger)[:listed]
    best = _best(ledger)
    return tuple(
        BoardPage(
            frame=Frame(site=site, path=board_page(number), title=_("Board")),
            clock=clock_of_offsets(offsets_of(out) if out else figures.offsets),
            size=size,
            number=number,
            pages=len(shown),
            after=board_page(number % len(shown) + 1),
            seconds=SECONDS,
            as_of=ledger.latest,
            rows=rows[:_ROWS],
            more=max(0, len(rows) - _ROWS),
            landings=landings,
            sailing=sailing,
            best=best,
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


def _rows(out: Iterable[Brief]) -> tuple[BoardRow, ...]:
    """Return the vessels that are out in order of when they are expected, those that nobody can tell last."""
    rows = [_row(one.trip, one.trip.figures.landing.docked) for one in out]
    known = sorted(
        (row for row in rows if row.docks is not None), key=lambda row: (row.docks, row.trip.figures.trip.id)
    )
    unknown = sorted((row for row in rows if row.docks is None), key=lambda row: row.trip.figures.trip.id)
    return (*known, *unknown)


def _row(trip: Reckoned, docks: datetime | None) -> BoardRow:
    sales = trip.figures.landing.sales
    return BoardRow(trip=trip, docks=docks, sails_again=trip.log.sails_again, sale=sales[0].at if sales else None)


def _size(rows: int) -> str:
    """Return how much of the board so many vessels take."""
    return "few" if rows <= _FEW else "some" if rows <= _SOME else "full"


def _sailing(ledger: Ledger) -> tuple[BoardRow, ...]:
    """Return the vessels that said when they sail again, unless they have, or that time lies before the last word of the archive."""
    last = (ledger.of_vessel(name)[-1].id for name in ledger.vessels)
    rows = [
        _row(one.trip, one.trip.figures.trip.docked)
        for one in ledger.briefs(last)
        if one.trip.log.sails_again is not None
        and one.trip.neighbours.next_sailed is None
        and ledger.latest is not None
        and one.trip.log.sails_again >= ledger.latest
    ]
    return tuple(sorted(rows, key=lambda row: (row.sails_again, row.trip.figures.trip.id)))


def _best(ledger: Ledger) -> TowMark | None:
    """Return the tow that kept most in the week before the last word of the archive."""
    latest = ledger.latest
    recent = [one.id for one in ledger.entries if latest is not None and latest - one.last_word <= _RECENT]
    found = [
        mark
        for trip in recent
        for mark in ledger.hauls(trip).tows
        if latest is not None and mark.when is not None and latest - mark.when <= _RECENT
    ]
    return max(found, key=lambda mark: (mark.kept_kg or 0, mark.trip_id, -mark.order), default=None)


def render_board(context: BoardPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/board.html").render(page=context, frame=context.frame)
