"""Fasts as GeoJSON and GPX, read back by other people's libraries."""

import json
from datetime import UTC, datetime, timedelta, timezone
from itertools import pairwise
from xml.etree import ElementTree as ET

import geojson
import gpxpy
import pytest
from gpxpy.gpx import GPX
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.gear import FastMark
from logbook.model.quantity import Position
from logbook.render.cautions import FAST
from logbook.render.files.fasts import fasts_geojson, fasts_gpx

WHEN = datetime(2026, 3, 4, 21, 0, tzinfo=timezone(timedelta(hours=1)))
NAMESPACE = "{http://www.topografix.com/GPX/1/1}"
ODD = 'Ægir\'s <b>"hole"</b> & co\x00\x07\x1b\x0b\ufffe\ud800\u202e☠\U0001f41f'
READ = 'Ægir\'s <b>"hole"</b> & co\u202e☠\U0001f41f'


def at(longitude: float, latitude: float) -> Position:
    return Position(latitude=latitude, longitude=longitude, typed="")


def fast(
    *track: Position,
    typed: Position | None = None,
    what: str = "wreck",
    ground: str | None = "The Saddle",
    when: datetime | None = WHEN,
    depth_m: float | None = 182.88,
) -> FastMark:
    return FastMark(
        trip_id="solan-bright-2026-03-04",
        vessel="Solan Bright",
        tow=7,
        order=7,
        when=when,
        ground=ground,
        depth_m=depth_m,
        what=what,
        at=typed,
        track=track,
    )


TYPED = fast(typed=at(-15.0167, 58.875))
TRACK = fast(at(-15.0, 58.8), at(-15.5, 58.9), at(-15.0, 59.0), what="")
NOWHERE = fast(when=None, ground=None, depth_m=None)


def features(*marks: FastMark) -> list[dict[str, object]]:
    """Return the features of the file, once the library has found nothing wrong with any."""
    made = geojson.loads(fasts_geojson(marks))
    assert made.is_valid, made.errors()
    assert all(feature.is_valid and feature.geometry.is_valid for feature in made.features)
    plain = json.loads(fasts_geojson(marks))
    assert plain["type"] == "FeatureCollection"
    found: list[dict[str, object]] = plain["features"]
    return found


def geometry(*marks: FastMark) -> list[object]:
    return [feature["geometry"] for feature in features(*marks)]


def gpx(*marks: FastMark, name: str = "Test Fleet") -> GPX:
    return gpxpy.parse(fasts_gpx(marks, name))


def test_a_typed_position_is_a_point_longitude_first() -> None:
    # RFC 7946 section 3.1.1: easting before northing; section 4: WGS84 in decimal degrees.
    assert geometry(TYPED) == [{"type": "Point", "coordinates": [-15.0167, 58.875]}]


def test_a_track_stays_a_line() -> None:
    assert geometry(TRACK) == [{"type": "LineString", "coordinates": [[-15.0, 58.8], [-15.5, 58.9], [-15.0, 59.0]]}]


def test_fasts_without_a_place_are_left_out() -> None:
    assert geometry(NOWHERE) == []
    made = gpx(NOWHERE)
    assert (made.waypoints, made.tracks) == ([], [])


def test_a_feature_says_what_it_is_and_where_its_place_comes_from() -> None:
    told = [feature["properties"] for feature in features(TYPED, TRACK)]

    assert told[0] == {
        "what": "wreck",
        "vessel": "Solan Bright",
        "trip": "solan-bright-2026-03-04",
        "tow": 7,
        "when": "2026-03-04T21:00:00+01:00",
        "ground": "The Saddle",
        "depth_m": 182.88,
        "position": "of the ship, as typed",
        "caution": FAST.told(),
    }
    assert isinstance(told[1], dict)
    assert (told[1]["what"], told[1]["position"]) == ("fast", "none typed: the tow's track")


def test_one_end_of_a_tow_is_said_to_be_that_and_is_no_waypoint() -> None:
    one = fast(at(-15.0, 58.8))
    (feature,) = features(one)
    made = gpx(one)

    assert feature["geometry"] == {"type": "Point", "coordinates": [-15.0, 58.8]}
    assert isinstance(feature["properties"], dict)
    assert feature["properties"]["position"] == "none typed: one end of the tow"
    assert made.waypoints == []
    assert [len(segment.points) for track in made.tracks for segment in track.segments] == [1]


def test_a_track_over_the_date_line_is_cut_there() -> None:
    # RFC 7946 section 3.1.9: cut so that neither part crosses the antimeridian. By hand: half way from 179 to -179.
    assert geometry(fast(at(179.0, 10.0), at(-179.0, 12.0)), fast(at(-179.0, 12.0), at(179.0, 10.0))) == [
        {"type": "MultiLineString", "coordinates": [[[179.0, 10.0], [180.0, 11.0]], [[-180.0, 11.0], [-179.0, 12.0]]]},
        {"type": "MultiLineString", "coordinates": [[[-179.0, 12.0], [-180.0, 11.0]], [[180.0, 11.0], [179.0, 10.0]]]},
    ]


@pytest.mark.parametrize(
    ("track", "lines"),
    [
        # on the date line itself, under either sign
        (((180.0, 10.0), (-179.0, 12.0)), [[[-180.0, 10.0], [-179.0, 12.0]]]),
        (((-180.0, 10.0), (179.0, 12.0)), [[[180.0, 10.0], [179.0, 12.0]]]),
        (((179.0, 10.0), (-180.0, 12.0)), [[[179.0, 10.0], [180.0, 12.0]]]),
        (((179.0, 10.0), (180.0, 11.0), (-179.0, 12.0)), [[[179.0, 10.0], [180.0, 11.0]], [[-180.0, 11.0], [-179.0, 12.0]]]),
        (((-180.0, 10.0), (180.0, 12.0)), [[[180.0, 10.0], [180.0, 12.0]]]),
        # there and back
        (
            ((179.0, 0.0), (-179.0, 0.0), (179.0, 2.0)),
            [[[179.0, 0.0], [180.0, 0.0]], [[-180.0, 0.0], [-179.0, 0.0], [-180.0, 1.0]], [[180.0, 1.0], [179.0, 2.0]]],
        ),
    ],
)  # fmt: skip
def test_a_track_that_touches_the_date_line_has_no_piece_without_length(
    track: tuple[tuple[float, float], ...], lines: list[object]
) -> None:
    made = geometry(fast(*(at(*place) for place in track)))

    one = {"type": "LineString", "coordinates": lines[0]}
    assert made == [one if len(lines) == 1 else {"type": "MultiLineString", "coordinates": lines}]


PLACES = st.tuples(st.floats(-180, 180), st.floats(-90, 90))


@given(st.lists(PLACES, min_size=2, max_size=6))
def test_no_piece_crosses_the_date_line_and_none_is_lost(places: list[tuple[float, float]]) -> None:
    (made,) = geometry(fast(*(at(*place) for place in places)))

    assert isinstance(made, dict)
    lines = made["coordinates"] if made["type"] == "MultiLineString" else [made["coordinates"]]
    for line in lines:
        assert len(line) >= 2
        assert all(abs(a[0] - b[0]) <= 180 for a, b in pairwise(line))
        assert all(-180 <= lon <= 180 and -90 <= lat <= 90 for lon, lat in line)
    there = {(lon % 360, lat) for line in lines for lon, lat in line}
    assert {(round(lon, 6) % 360, round(lat, 6)) for lon, lat in places} <= there


def test_no_fasts_are_files_with_nothing_in_them() -> None:
    assert features() == []
    assert (gpx().waypoints, gpx().tracks, gpx().routes) == ([], [], [])


def test_waypoints_are_typed_positions_alone() -> None:
    # GPX 1.1 schema, parsed back by gpxpy.
    made = gpx(TRACK, TYPED, NOWHERE)

    (waypoint,) = made.waypoints
    assert (waypoint.latitude, waypoint.longitude) == (58.875, -15.0167)
    assert (waypoint.name, waypoint.time) == ("wreck", datetime(2026, 3, 4, 20, 0, tzinfo=UTC))
    assert waypoint.description == "Solan Bright, tow 7, The Saddle, 183 m; ship's position, the gear lay astern"
    (track,) = made.tracks
    assert [(point.latitude, point.longitude) for segment in track.segments for point in segment.points] == [
        (58.8, -15.0),
        (58.9, -15.5),
        (59.0, -15.0),
    ]
    assert (track.name, track.description) == (
        "fast",
        "Solan Bright, tow 7, The Saddle, 183 m; no position typed: the tow's track",
    )


def test_the_file_says_what_it_is_and_what_to_beware_of() -> None:
    made = gpx(TYPED)

    assert (made.version, made.name, made.description) == ("1.1", "Fasts, Test Fleet", FAST.told())
    assert made.schema_locations == []
    assert fasts_gpx([TYPED], "x").startswith(b'<?xml version="1.0" encoding="UTF-8"?>\n<gpx ')


def test_a_fast_of_which_little_is_known_is_a_waypoint_all_the_same() -> None:
    (waypoint,) = gpx(fast(typed=at(1.5, -2.5), what="", ground=None, when=None, depth_m=None)).waypoints

    assert (waypoint.name, waypoint.time) == ("fast", None)
    assert waypoint.description == "Solan Bright, tow 7; ship's position, the gear lay astern"


def test_odd_letters_come_through_and_those_that_xml_has_no_place_for_are_left_out() -> None:
    # XML 1.0 section 2.2 (Char): tab, line feed, carriage return, U+0020 to U+D7FF, U+E000 to U+FFFD, U+10000 and above.
    (waypoint,) = gpx(fast(typed=at(1.0, 2.0), what=ODD, ground=ODD), name=ODD).waypoints

    assert waypoint.name == READ
    assert READ in (waypoint.description or "")
    assert gpx(name=ODD).name == f"Fasts, {READ}"


@given(st.text(st.characters(exclude_categories=())))
def test_whatever_was_typed_both_files_can_be_read(words: str) -> None:
    marks = [fast(typed=at(1.0, 2.0), what=words, ground=words), fast(at(1.0, 2.0), at(2.0, 3.0), what=words)]

    assert len(gpx(*marks, name=words).waypoints) == 1
    assert len(features(*marks)) == 2


def test_json_has_every_letter_that_unicode_has() -> None:
    (feature,) = features(fast(typed=at(1.0, 2.0), what="Ægir\x00\u2028\ud800"))

    assert isinstance(feature["properties"], dict)
    assert feature["properties"]["what"] == "Ægir\x00\u2028?"


@given(PLACES)
def test_positions_are_within_what_the_schema_allows(place: tuple[float, float]) -> None:
    # GPX 1.1 schema: latitudeType -90 to 90; longitudeType from -180 to below 180.
    root = ET.fromstring(fasts_gpx([fast(typed=at(*place)), fast(at(*place), at(0, 0))], "x"))  # noqa: S314 - our own file
    points = [*root.iter(f"{NAMESPACE}wpt"), *root.iter(f"{NAMESPACE}trkpt")]

    assert len(points) == 3
    for point in points:
        assert -180 <= float(point.attrib["lon"]) < 180
        assert -90 <= float(point.attrib["lat"]) <= 90


@pytest.mark.parametrize(
    ("longitude", "written"),
    [(180.0, "-180.0000000"), (179.99999999, "-180.0000000"), (-180.0, "-180.0000000"), (179.9999999, "179.9999999")],
)
def test_the_date_line_is_west_in_gpx(longitude: float, written: str) -> None:
    # GPX 1.1 schema: longitudeType excludes 180.
    assert f'lon="{written}"'.encode() in fasts_gpx([fast(typed=at(longitude, 0.0))], "x")


def test_parts_stand_in_the_order_that_the_schema_asks_for() -> None:
    # GPX 1.1 schema, wptType: time before name before desc; gpxType: metadata, wpt, trk; trkType: name, desc, trkseg.
    root = ET.fromstring(fasts_gpx([TRACK, TYPED], "x"))  # noqa: S314 - our own file

    assert [child.tag.removeprefix(NAMESPACE) for child in root] == ["metadata", "wpt", "trk"]
    assert [child.tag.removeprefix(NAMESPACE) for child in root[1]] == ["time", "name", "desc"]
    assert [child.tag.removeprefix(NAMESPACE) for child in root[2]] == ["name", "desc", "trkseg"]
