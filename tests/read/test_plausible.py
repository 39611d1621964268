"""What is legal but suspicious: each a warning, the figure used all the same."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pyproj import Geod

from logbook.model.quantity import Position
from logbook.read.keys import one_slip
from logbook.read.plausible import apart_nm
from tests.read.logs import codes, read

HEAD = "vessel: Solan Bright\nsailed: 2026-03-04 05:30, Port Kerrin\ntows:\n"
FIVE = "".join(
    f"  - {{shot: {hour}:00, hauled: {hour}:50, depth: 98 fm, catch: {{cod: 100 kg}}}}\n" for hour in range(10, 15)
)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("  - {shot: 18:00, hauled: 19:00, speed: 7 kn}\n", "towing-speed"),
        ("  - {shot: 18:00, hauled: 19:00, from: 58 48N 15 04W, to: 58 48.5N 15 04W}\n", "towing-speed"),
        ("  - {shot: 18:00, hauled: 19:00, from: 58 48N 15 04W, to: 59 48N 15 04W}\n", "towing-speed"),
        (
            "  - {shot: 18:00, hauled: 19:00, from: 58 48N 15 04W, to: 58 51N 15 04W}\n  - {shot: 20:00, from: 59 48N 15 04W}\n",
            "position-jump",
        ),
        ("  - {shot: 18:00, from: 58 48N 15 04W}\n  - {shot: 20:00, from: 59 48N 15 04W}\n", "position-jump"),
        (FIVE + "  - {shot: 16:00, hauled: 16:50, depth: 980 fm}\n", "depth-odd"),
        (FIVE + "  - {shot: 16:00, hauled: 16:50, catch: {cod: 1000 kg}}\n", "catch-odd"),
        ("  - {shot: 2026-03-03 18:00}\n", "tow-outside-trip"),
        ("  - {shot: 18:00, hauled: 19:00}\nlanded: 2026-03-04 18:30\n", "tow-outside-trip"),
        ("  - {shot: 18:00}\nreadings:\n  - {at: 19:00, ice left: 9 t}\n  - {at: 21:00, ice left: 10 t}\n", "ice-grew"),
        ("landed: 2026-03-04 18:30\n", "no-tows"),
    ],
)
def test_what_is_suspicious_is_a_warning(text: str, code: str) -> None:
    made, problems = read(HEAD + text)

    assert made is not None
    assert code in codes(problems)
    assert {problem.severity for problem in problems if problem.code == code} == {"warning"}


def test_a_log_just_begun_has_no_tows_yet_and_that_is_no_cause_to_warn() -> None:
    _, problems = read(HEAD)

    assert [(problem.code, problem.severity) for problem in problems] == [("no-tows", "note")]


@pytest.mark.parametrize(
    "text",
    [
        FIVE,
        "  - {shot: 18:00}\nreadings:\n  - {at: 19:00, ice left: 9 t}\n  - {at: 20:00, ice taken aboard: 2 t}\n  - {at: 21:00, ice left: 10 t}\n",
        "  - {shot: 18:00, hauled: 19:00, from: 0 0.0N 179 59.0E, to: 0 0.0N 179 58.0W}\n",
    ],
)
def test_what_is_usual_is_not_told(text: str) -> None:
    assert codes(read(HEAD + text)[1]) == []


@given(st.floats(-80, 80), st.floats(-180, 180), st.floats(-1, 1), st.floats(-1, 1))
def test_the_distance_for_doubts_is_within_a_hundredth_of_the_ellipsoids(
    lat: float, lon: float, north: float, east: float
) -> None:
    # Reference library: pyproj (PROJ) on WGS84.
    a = Position(latitude=lat, longitude=lon, typed="")
    b = Position(latitude=lat + north, longitude=lon + east, typed="")
    expected = Geod(ellps="WGS84").inv(lon, lat, lon + east, lat + north)[2] / 1852

    assert apart_nm(a, b) == pytest.approx(expected, rel=0.01, abs=0.01)


@pytest.mark.parametrize(
    ("typed", "meant", "expected"),
    [
        ("dept", "depth", True),
        ("depthh", "depth", True),
        ("detph", "depth", True),
        ("dipth", "depth", True),
        ("depth", "depth", False),
        ("deh", "depth", False),
        ("dpeht", "depth", False),
    ],
)
def test_one_slip_is_a_letter_left_out_put_in_changed_or_swapped(typed: str, meant: str, *, expected: bool) -> None:
    assert one_slip(typed, meant) is expected
