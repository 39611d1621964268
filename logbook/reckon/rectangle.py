"""ICES statistical rectangles."""

from math import floor

from logbook.model.quantity import Position

_SOUTH, _NORTH, _WEST, _EAST = 36, 85.5, -44, 68.5
_CLOSE = 9
"""Decimals of a degree below which a position stands on a line: about a tenth of a millimetre."""
_COLUMNS = tuple(f"A{n}" for n in range(4)) + tuple(f"{letter}{n}" for letter in "BCDEFGHJKLM" for n in range(10))
"""A0 to A3, then ten for each letter; I is skipped."""


def rectangle(position: Position) -> str | None:
    """Return the rectangle a position lies in, as `47D5`; None outside the grid of 36°N to 85°30'N, 44°W to 68°30'E.

    A rectangle is half a degree by one degree, named by its south-west corner, closed on the south and the west.

    Source:
        ICES statistical rectangles; the edges are a convention of our own, the source states none.
    """
    latitude, longitude = round(position.latitude, _CLOSE), round(position.longitude, _CLOSE)
    if not (_SOUTH <= latitude < _NORTH and _WEST <= longitude < _EAST):
        return None
    row = floor((latitude - _SOUTH) * 2) + 1
    return f"{row:02}{_COLUMNS[floor(longitude) - _WEST]}"
