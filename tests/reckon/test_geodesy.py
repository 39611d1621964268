"""Distances on the ellipsoid against published values and another library."""

import pytest
from geographiclib.geodesic import Geodesic
from hypothesis import given
from hypothesis import strategies as st
from pyproj import Geod

from logbook.model.quantity import Position
from logbook.reckon.geodesy import middle, track_length


def at(latitude: float, longitude: float) -> Position:
    return Position(latitude=latitude, longitude=longitude, typed="")


@pytest.mark.parametrize(
    ("a", "b", "metres"),
    [
        # GeographicLib documentation: a published check of the inverse problem.
        ((-41.32, 174.81), (40.96, -5.50), 19_959_679.267),
        # WGS84 by an implementation of Karney (2013), good to 0.01 m.
        ((60.10, -3.50), (60.20, -3.25), 17_803.80),
        ((64.00, -23.50), (64.15, -23.10), 25_703.16),
        ((43.50, -66.30), (43.70, -66.30), 22_220.89),
        ((54.0, 3.0), (54.0, 4.0), 65_575.23),
        ((54.0, 3.0), (54.5, 3.0), 55_654.83),
        ((0.0, 0.0), (1.0, 0.0), 110_574.39),
        ((57.15, -2.08), (60.25, -3.50), 354_964.37),
    ],
)
def test_a_leg_is_as_long_as_published(a: tuple[float, float], b: tuple[float, float], metres: float) -> None:
    length = track_length((at(*a), at(*b)))

    assert length is not None
    assert length * 1852 == pytest.approx(metres, abs=0.01)


def test_a_tow_over_the_date_line_is_short() -> None:
    length = track_length((at(0, 179 + 59 / 60), at(0, -(179 + 58 / 60))))

    assert length == pytest.approx(3.005, abs=0.01)


def test_a_track_of_one_position_has_no_length() -> None:
    assert track_length((at(58, -15),)) is None


@given(st.lists(st.tuples(st.floats(-80, 80), st.floats(-180, 180)), min_size=2, max_size=4))
def test_a_track_is_as_long_as_another_library_has_it(points: list[tuple[float, float]]) -> None:
    # Reference library: pyproj (PROJ) on WGS84.
    expected = Geod(ellps="WGS84").line_length([lon for _, lon in points], [lat for lat, _ in points])

    length = track_length([at(*point) for point in points])

    assert length is not None
    assert length * 1852 == pytest.approx(expected, abs=1e-3)


def test_the_middle_lies_as_far_from_both_ends() -> None:
    a, b = at(58.8, -15.2), at(58.9, -15.0)
    half = middle(a, b)

    assert track_length((a, half)) == pytest.approx(track_length((half, b)), abs=0.001)


@given(st.floats(-80, 80), st.floats(-180, 180), st.floats(-0.5, 0.5), st.floats(-0.5, 0.5))
def test_the_middle_of_a_tow_is_that_of_its_geodesic(
    latitude: float, longitude: float, up: float, along: float
) -> None:
    # Reference library: geographiclib on WGS84.
    a, b = at(latitude, longitude), at(latitude + up, (longitude + along + 540) % 360 - 180)
    line = Geodesic.WGS84.InverseLine(a.latitude, a.longitude, b.latitude, b.longitude)
    point = line.Position(line.s13 / 2)

    away = track_length((middle(a, b), at(point["lat2"], point["lon2"])))

    assert away is not None
    assert away * 1852 < 2
