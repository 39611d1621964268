"""Every file for other programs that an edition has of its whole fleet."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial

from logbook.model.edition import Policy
from logbook.model.fleet import Fleet
from logbook.model.gear import FastMark
from logbook.model.ledger import Entry, Ledger
from logbook.model.page import Drafts, File, Maker, Page
from logbook.model.problem import Problem
from logbook.render.files.atom import in_feed, landings_feed
from logbook.render.files.calendar import in_calendar, landings_calendar
from logbook.render.files.datapackage import Described, datapackage_of
from logbook.render.files.fasts import fasts_geojson, fasts_gpx, has_place
from logbook.render.files.of_trips import TripRow
from logbook.render.files.paths import (
    CALENDAR,
    DATAPACKAGE,
    FASTS_GEOJSON,
    FASTS_GPX,
    FEED,
    table_file,
    tracks_file,
)
from logbook.render.files.rows import EVENTS, TRACK_LINES
from logbook.render.files.tables import PROBLEMS, TABLES, Table, head_of, tables_of
from logbook.render.files.tracks import tracks_geojson


def fleet_files(
    fleet: Fleet,
    ledger: Ledger,
    marks: Sequence[FastMark],
    problems: Iterable[Problem],
    policy: Policy,
    name: str,
    maker: Maker,
    *,
    linked: bool = True,
) -> Iterator[File]:
    """Give every file for other programs but those of single trips.

    Args:
        fleet: The fleet file, or what stands for it.
        ledger: All trips as the edition shows them.
        marks: Where gear came fast, in the order of the file.
        problems: Every problem of every file, in any order.
        policy: What the edition shows; nothing else is in the records any more, and here no column is left for it.
        name: The fleet's name.
        maker: Makes the files, or knows that they were made before.
        linked: Whether the archive's pages stand beside the files, so that these may lead to them.
    """
    described = []
    for table, file in _tables(fleet, ledger, problems, policy, maker):
        described.append(Described(table=table, size=file.size, digest=file.digest))
        yield file
    about = (tuple(described), name, policy.name)
    yield maker.file(DATAPACKAGE, about, partial(datapackage_of, *about))
    for year in years_of(ledger):
        yield from _if_any(
            maker, tracks_file(year), (ledger.rows_key(TRACK_LINES, year),), partial(_tracks, ledger, year)
        )
    yield from _fasts(tuple(mark for mark in marks if has_place(mark)), name, maker)
    yield from _landings(ledger, policy, name, maker, linked=linked)


def years_of(ledger: Ledger) -> tuple[str, ...]:
    """Return the calendar years that have files of their own, the latest first."""
    return tuple(sorted({entry.year for entry in ledger.entries}, reverse=True))


def _tables(
    fleet: Fleet, ledger: Ledger, problems: Iterable[Problem], policy: Policy, maker: Maker
) -> Iterator[tuple[Table, File]]:
    """Give every table with its file; one of which no row has changed is not even put together."""
    years = years_of(ledger)
    for kind in TABLES:
        for table in tables_of(kind, years, policy, fleet.currency):
            head, key = head_of(table), ledger.rows_key(kind.name, table.year)
            make = partial(_joined, head, ledger, kind.name, table.year)
            yield table, maker.file(table_file(table.name), (head, key), make)
    wrong = tuple(sorted(set(problems)))
    for table in tables_of(PROBLEMS, (), policy, None):
        make = partial(_told, head_of(table), wrong, policy)
        yield table, maker.file(table_file(table.name), (head_of(table), wrong), make)


def _joined(head: bytes, ledger: Ledger, name: str, year: str | None) -> bytes:
    return b"".join((head, *ledger.rows(name, year)))


def _told(head: bytes, problems: Sequence[Problem], policy: Policy) -> bytes:
    return head + PROBLEMS.lines(problems, policy)


def _tracks(ledger: Ledger, year: str) -> bytes | None:
    return tracks_geojson(ledger.rows(TRACK_LINES, year))


def _fasts(marks: Sequence[FastMark], name: str, maker: Maker) -> Iterator[File]:
    if marks:
        yield maker.file(FASTS_GEOJSON, (marks,), partial(fasts_geojson, marks))
        yield maker.file(FASTS_GPX, (marks, name), partial(fasts_gpx, marks, name))


def _landings(ledger: Ledger, policy: Policy, name: str, maker: Maker, *, linked: bool) -> Iterator[File]:
    """Give the feed and the calendar, made from none but the trips that are in them."""
    latest = in_feed(ledger.entries)
    if latest:

        def feed() -> bytes:
            return landings_feed(_rows(ledger, latest), name, policy.name, linked=linked)

        yield maker.file(FEED, (ledger.key_of(latest), name, policy.name, linked), feed)
    if ledger.latest is not None:
        shown = in_calendar(ledger.entries, ledger.latest)
        ids = tuple(entry.id for entry in shown)
        keys = tuple(ledger.rows_key(EVENTS, year) for year in sorted({entry.year for entry in shown}))

        def calendar() -> bytes | None:
            return landings_calendar(_pieces(ledger, EVENTS, shown), name)

        yield from _if_any(maker, CALENDAR, (ids, keys, name), calendar)


def _pieces(ledger: Ledger, name: str, entries: Sequence[Entry]) -> list[bytes]:
    """Return the pieces of some trips; they are asked for by year, and come in the order of the trips."""
    found: dict[str, bytes] = {}
    for year in {entry.year for entry in entries}:
        own = (entry.id for entry in ledger.entries if entry.year == year)
        found.update(zip(own, ledger.rows(name, year), strict=True))
    return [found[entry.id] for entry in entries]


def _rows(ledger: Ledger, entries: Iterable[Entry]) -> list[TripRow]:
    briefs = ledger.briefs([entry.id for entry in entries])
    return [TripRow(trip=brief.trip, landed=brief.landed) for brief in briefs]


def _if_any(maker: Maker, path: str, of: tuple[object, ...], make: Callable[[], bytes | None]) -> Iterable[File]:
    """Give a file that is only there where there is something to be in it."""

    def made(_: Drafts) -> Iterator[Page]:
        content = make()
        if content is not None:
            yield Page(path=path, content=content)

    return maker.files(path, of, made)
