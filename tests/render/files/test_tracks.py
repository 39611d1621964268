"""Tracks of tows, read by geojson, and figures of trips as JSON."""

import json

import geojson
import pytest
from msgspec.structs import replace

from logbook.model.edition import CREW, EDITIONS, PUBLIC
from logbook.model.export import as_json
from logbook.model.quantity import Position
from logbook.redact.policy import policy_of
from logbook.render.files.paths import listed
from logbook.render.files.trip_json import trip_json
from tests.ledger import redacted
from tests.read.logs import fleet
from tests.render import example
from tests.render.files.data import FLEET_OF_TWO, NASTY, files, problem, saying, trip_saying, two_trips

TRACKS = "files/tracks-2026.geojson"


def features(content: bytes) -> list[geojson.Feature]:
    made = geojson.loads(content)
    assert made.is_valid, made.errors()
    assert all(feature.is_valid and feature.geometry.is_valid for feature in made.features)
    found: list[geojson.Feature] = made.features
    return found


def test_a_tow_is_a_line_through_its_positions_longitude_first() -> None:
    # 58° 50′ N is 58.833333°, 15° 14′ W is -15.233333°; RFC 7946 section 3.1.1.
    first, second, third = features(files()[TRACKS])

    assert first.geometry == {
        "type": "LineString",
        "coordinates": [[-15.166667, 58.833333], [-15.233333, 58.85], [-15.2, 58.866667]],
    }
    assert first.id == "solan-bright-2026-03-04/1"
    assert first.properties["kept_kg"] == 208.6
    assert first.properties["track"] == "straight between the positions typed"
    assert second.geometry == {"type": "Point", "coordinates": [-15.2, 58.883333]}
    assert third.properties["vessel"] == "Ternbank"
    assert third.properties["shot"] == "2026-03-10T18:00:00+01:00"


def test_a_track_over_the_date_line_is_cut_there() -> None:
    trip = two_trips()[0]
    west = Position(latitude=-10.0, longitude=-179.5, typed="")
    east = Position(latitude=-11.0, longitude=179.5, typed="")
    tow = replace(trip.log.tows[0], start=east, via=(), end=west)
    moved = replace(trip, log=replace(trip.log, tows=(tow, *trip.log.tows[1:])))

    # RFC 7946 section 3.1.9.
    assert features(files((moved,))[TRACKS])[0].geometry == {
        "type": "MultiLineString",
        "coordinates": [[[179.5, -11.0], [180.0, -10.5]], [[-180.0, -10.5], [-179.5, -10.0]]],
    }


@pytest.mark.parametrize("edition", [CREW, PUBLIC])
def test_an_edition_without_positions_has_no_tracks(edition: str) -> None:
    assert TRACKS not in files(edition=edition)


@pytest.mark.parametrize("edition", EDITIONS)
def test_figures_of_a_trip_stand_under_the_keys_that_reckon_prints(edition: str) -> None:
    of = fleet(FLEET_OF_TWO)
    for trip in redacted(two_trips(), policy_of(edition, of)):
        told = json.loads(trip_json(trip.figures))
        assert told == json.loads(json.dumps(as_json(trip.figures)))
        assert set(told) == set(as_json(two_trips()[0].figures))


@pytest.mark.parametrize("text", NASTY)
def test_any_text_comes_back_as_typed(text: str) -> None:
    made = saying(text)
    told = json.loads(trip_json(trip_saying(text).figures))

    assert told["trip"]["vessel"] == told["landing"]["port"] == text
    assert set(told["tows"][0]["catch"]) == {text}
    for feature in features(made[TRACKS]):
        assert feature.properties["ground"] == text


def test_the_files_of_the_whole_fleet_are_told_of() -> None:
    paths = files(example.whole_fleet()[1], of=example.fleet(), problems=(problem("x"),))
    kinds = listed(paths)
    told = [path for kind in kinds for path in (kind.first, *(path for _, path in kind.earlier))]

    assert sorted(told) == sorted(paths)
    assert all(kind.about for kind in kinds)
    assert next((kind.first, kind.earlier) for kind in kinds if kind.parted) == (
        "files/tows-2026.csv",
        (("2025", "files/tows-2025.csv"),),
    )


def test_a_years_files_have_the_trips_that_ended_in_it() -> None:
    trips = example.whole_fleet()[1]
    made = files(trips, of=example.fleet())
    by_year: dict[str, set[str]] = {}
    for trip in trips:
        head = trip.figures.trip
        by_year.setdefault(str((head.docked or head.last_word).year), set()).add(head.id)

    assert len(by_year) == 2
    for year, ids in by_year.items():
        told = features(made[f"files/tracks-{year}.geojson"])
        assert {feature.properties["trip"] for feature in told} == ids
