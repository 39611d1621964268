"""Every file for other programs that an edition has."""

from collections.abc import Iterator, Sequence
from functools import partial

from logbook.model.edition import Policy
from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.fleet_figures import FleetFigures
from logbook.model.page import File, Maker, Page
from logbook.model.problem import Problem
from logbook.render.files.atom import landings_feed
from logbook.render.files.calendar import landings_calendar
from logbook.render.files.datapackage import datapackage_of
from logbook.render.files.fasts import fasts_geojson, fasts_gpx, has_place
from logbook.render.files.paths import (
    CALENDAR,
    DATAPACKAGE,
    FASTS_GEOJSON,
    FASTS_GPX,
    FEED,
    TRACKS,
    table_file,
    trip_file,
)
from logbook.render.files.tables import csv_of, tables_of
from logbook.render.files.tracks import tracks_geojson
from logbook.render.files.trip_json import trip_json


def data_files(
    fleet: Fleet,
    trips: Sequence[Reckoned],
    figures: FleetFigures,
    problems: Sequence[Problem],
    policy: Policy,
    name: str,
    maker: Maker,
    *,
    linked: bool = True,
) -> Iterator[File]:
    """Give every file for other programs, the same bytes whatever order the trips come in.

    Args:
        fleet: The fleet file, or what stands for it.
        trips: All trips as the edition shows them.
        figures: Sums over them.
        problems: Every problem of every file.
        policy: What the edition shows; nothing else is in the records any more, and here no column is left for it.
        name: The fleet's name.
        maker: Makes the files, or knows that they were made before.
        linked: Whether the archive's pages stand beside the files, so that these may lead to them.
    """
    tables = [(table, csv_of(table)) for table in tables_of(fleet, trips, figures, problems, policy)]
    for table, content in tables:
        yield Page(path=table_file(table.name), content=content)
    yield Page(path=DATAPACKAGE, content=datapackage_of(tables, name, policy.name))
    marks = [mark for mark in figures.fasts if has_place(mark)]
    known = (
        (TRACKS, tracks_geojson(trips)),
        (FASTS_GEOJSON, fasts_geojson(marks) if marks else None),
        (FASTS_GPX, fasts_gpx(marks, name) if marks else None),
        (FEED, landings_feed(trips, figures.landed, name, policy.name, linked=linked)),
        (CALENDAR, landings_calendar(trips, name)),
    )
    for path, made in known:
        if made is not None:
            yield Page(path=path, content=made)
    for trip in trips:
        yield maker.file(trip_file(trip.figures.trip.id), (trip.figures,), partial(trip_json, trip.figures))
