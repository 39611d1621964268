"""ICES statistical rectangles: the examples of the ICES page, and the grid's odd corners."""

import pytest

from logbook.model.quantity import Position
from logbook.reckon.rectangle import rectangle


@pytest.mark.parametrize(
    ("latitude", "longitude", "name"),
    [
        (54.0, 3.0, "37F3"),  # ICES, statistical rectangles: the page's own example
        (58.2, 10.55, "45G0"),  # the same
        (60.25, -3.50, "49E6"),  # the rest by the page's rule
        (64.10, -23.15, "57C6"),
        (57.10, -9.40, "43E0"),
        (51.50, -0.01, "32E9"),
        (51.50, 0.0, "32F0"),
        (71.50, 28.90, "72H8"),
        (71.50, 30.20, "72J0"),  # I is skipped
        (70.10, 41.0, "69K1"),
        (36.0, -44.0, "01A0"),
        (36.0, -40.0, "01B0"),  # A4 to A9 are not there
        (62.49, -20.01, "53C9"),
        (43.60, -66.30, None),
        (85.5, 0.0, None),
        (35.99, 0.0, None),
        (85.49, 68.4, "99M8"),
        (60.0, 68.5, None),
        (0.0, 180.0, None),
    ],
)
def test_a_position_lies_in_its_rectangle(latitude: float, longitude: float, name: str | None) -> None:
    assert rectangle(Position(latitude=latitude, longitude=longitude, typed="")) == name


def test_a_position_a_hair_off_a_line_stands_on_it() -> None:
    # The middle of two positions on one meridian comes out a rounding error beside it.
    for longitude in (-15.000000000000002, -15.0, -14.999999999999998):
        assert rectangle(Position(latitude=58.99999999999999, longitude=longitude, typed="")) == "47D5"
