"""The same place at the same time of other years, and the fasts near it."""

from decimal import Decimal
from itertools import pairwise

import pytest
from geographiclib.geodesic import Geodesic
from hypothesis import example, given, settings
from hypothesis import strategies as st
from pyproj import Geod

from logbook.model.look_back import LookBack
from logbook.model.quantity import Position
from logbook.reckon.look_back import away_nm, look_back, track_of
from tests.reckon.build import moment, reckoned

KG = Decimal
HERE = Position(latitude=58 + 52 / 60, longitude=-(15 + 10 / 60), typed="58 52N 015 10W")
A = """\
vessel: Solan Bright
sailed: 2025-03-04 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 20:00, from: 58 52N 015 20W, to: 58 52N 015 00W, catch: {cod: 100 kg}}
  - {shot: 21:00, hauled: 23:00, from: 58 53N 015 10W, catch: {cod: 20 kg}, fast: 58 52.5N 015 10W}
  - {shot: 2025-03-05 01:00, hauled: 03:00, from: 59 10N 015 20W, to: 59 10N 015 00W, catch: {ling: 7 kg}}
  - {shot: 04:00, hauled: 06:00, ground: The Saddle, catch: {cod: 7 kg}}
"""
B = """\
vessel: Skerry Light
sailed: 2026-03-14 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 22:00, from: 58 52N 015 11W, catch: {cod: 80 kg}, fast: wreck}
  - {shot: 23:00, hauled: 2026-03-15 01:00, catch: {haddock: 6 kg}, fast: cable}
  - {shot: 02:00, hauled: 04:00, from: 58 52N 015 11W, to: 58 55N 015 11W, catch: {haddock: plenty}}
"""
C = """\
vessel: Skerry Light
sailed: 2025-07-14 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 22:00, from: 58 52N 015 10W, catch: {saithe: 80 kg}, fast: 58 54N 015 10W}
"""
ALL = reckoned(A, B, C)


def back(at: str = "2026-03-20 12:00", weeks: float = 3, within_nm: float = 3) -> LookBack:
    return look_back(ALL, HERE, moment(at), weeks=weeks, within_nm=within_nm)


def test_tows_whose_track_passes_near_are_found_year_by_year() -> None:
    made = back()

    assert [(year, one.tows) for year, one in made.by_year.items()] == [("2026", 2), ("2025", 2)]
    assert made.by_year["2025"].kept_kg_per_h == pytest.approx(120 / 4)
    assert made.by_year["2025"].kept_kg_per_h_clean == pytest.approx(100 / 2)
    assert [(one.name, one.kept_kg) for one in made.species] == [("cod", KG(200))]
    assert [mark.kept_kg_per_h for mark in made.tows] == pytest.approx([50, 20, 10])


def test_tows_that_have_no_position_are_told_of() -> None:
    assert back().basis == (("by_year", "without 2 tows of those weeks that have no position"),)
    assert look_back(ALL[-1:], HERE, moment("2026-03-20 12:00"), weeks=3, within_nm=3).basis == (
        ("by_year", "without 1 tow of those weeks that has no position"),
    )
    assert back("2026-07-15 12:00").basis == ()


def test_fasts_are_found_at_any_time_of_the_year_the_nearest_first() -> None:
    # A minute of latitude is a nautical mile within a hundredth; of longitude, half of one at 59 degrees north: cos 59° is 0.515
    made = back()

    assert [(near.mark.what, round(near.away_nm, 1)) for near in made.fasts] == [
        ("", 0.5),
        ("wreck", 0.5),
        ("", 2.0),
    ]
    assert made.fasts[0].mark.at is not None
    assert made.fasts[1].mark.at is None


def test_nearer_and_fewer_weeks_find_less() -> None:
    assert back(within_nm=0.4).fasts == ()
    assert list(back(weeks=1).by_year) == ["2026"]
    assert list(back("2026-09-20 12:00").by_year) == []


def test_no_trips_give_an_empty_look_back() -> None:
    made = look_back((), HERE, moment("2026-03-20 12:00"), weeks=3, within_nm=3)

    assert (list(made.by_year), made.species, made.tows, made.fasts, made.basis) == ([], (), (), (), ())


def test_no_log_has_no_track() -> None:
    assert track_of(None) == ()


ELLIPSOID, OTHER = Geodesic.WGS84, Geod(ellps="WGS84")
MILE = 1852.0


def place(latitude: float, longitude: float) -> Position:
    return Position(latitude=latitude, longitude=(longitude + 180) % 360 - 180, typed="")


def off(start: Position, bearing: float, miles: float) -> Position:
    there = ELLIPSOID.Direct(start.latitude, start.longitude, bearing, miles * MILE)
    return place(there["lat2"], there["lon2"])


def nearest(start: Position, track: tuple[Position, ...]) -> float:
    """Return the distance from the nearest of many points of a track's geodesics, after PROJ."""
    points = list(track)
    for a, b in pairwise(track):
        found = OTHER.npts(a.longitude, a.latitude, b.longitude, b.latitude, 2000)
        points += [place(latitude, longitude) for longitude, latitude in found]
    lengths = OTHER.inv(
        [start.longitude] * len(points),
        [start.latitude] * len(points),
        [one.longitude for one in points],
        [one.latitude for one in points],
    )[2]
    return float(min(lengths)) / MILE


@given(
    st.floats(-72, 72),
    st.floats(-180, 180),
    st.lists(st.tuples(st.floats(0, 360), st.floats(0, 15)), min_size=1, max_size=4),
)
@example(60.0, 179.99, [(90.0, 5.0), (0.0, 8.0)])
@example(65.0, 0.0, [(3.0, 15.0), (206.0, 15.0)])
@example(45.0, 0.0, [(14.0, 15.0), (205.0, 15.0)])
@example(60.0, -179.99, [(270.0, 5.0), (10.0, 8.0)])
@settings(max_examples=150, deadline=None)
def test_the_way_to_a_track_is_right_within_two_thousandths(
    latitude: float, longitude: float, ends: list[tuple[float, float]]
) -> None:
    # GeographicLib (Karney 2013) lays the points, PROJ measures; ten yards where the track lies under the keel
    here = place(latitude, longitude)
    track = tuple(off(here, bearing, miles) for bearing, miles in ends)

    assert away_nm(here, track) == pytest.approx(nearest(here, track), rel=0.002, abs=0.005)
