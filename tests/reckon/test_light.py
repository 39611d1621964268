"""Day, twilight and night against the geometry of the equinox and the solstices."""

from datetime import UTC, datetime, timedelta
from math import asin, atan2, cos, degrees, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.quantity import Position
from logbook.reckon.light import light


@pytest.mark.parametrize(
    ("latitude", "longitude", "time", "expected"),
    [
        # Spherical astronomy: at the March equinox of 2026 (20 March, 14:46 UTC) the sun stands over the equator, so on the
        # equator at the meridian of Greenwich noon is overhead and midnight underfoot.
        (0.0, 0.0, "2026-03-20 12:00", "day"),
        (0.0, 0.0, "2026-03-20 00:00", "night"),
        (0.0, 0.0, "2026-03-20 18:30", "twilight"),
        (0.0, 0.0, "2026-03-20 19:30", "night"),
        # At the June solstice (declination 23.4 degrees) the midnight sun at 59 N is 90 - 59 - 23.4 = 7.6 degrees down.
        (59.0, -15.0, "2026-06-21 01:00", "twilight"),
        (59.0, -15.0, "2026-06-21 13:00", "day"),
        # At the December solstice noon at 59 N is 90 - 59 - 23.4 = 7.6 degrees up, and at 70 N 3.4 degrees down.
        (59.0, -15.0, "2026-12-21 13:00", "day"),
        (70.0, 0.0, "2026-12-21 12:00", "twilight"),
        (59.0, -15.0, "2026-12-21 01:00", "night"),
    ],
)
def test_light_follows_the_sun(latitude: float, longitude: float, time: str, expected: str) -> None:
    moment = datetime.fromisoformat(time).replace(tzinfo=UTC)

    assert light(Position(latitude=latitude, longitude=longitude, typed=""), moment) == expected


def altitude(latitude: float, longitude: float, time: datetime) -> float:
    """Return the sun's altitude by the low-precision formulas of the Astronomical Almanac (page C5; from memory), in degrees."""
    days = (time - datetime(2000, 1, 1, 12, tzinfo=UTC)) / timedelta(days=1)
    mean_longitude = 280.460 + 0.9856474 * days
    anomaly = radians(357.528 + 0.9856003 * days)
    ecliptic = radians(mean_longitude + 1.915 * sin(anomaly) + 0.020 * sin(2 * anomaly))
    obliquity = radians(23.439 - 0.0000004 * days)
    declination = asin(sin(obliquity) * sin(ecliptic))
    x, y = cos(ecliptic), cos(obliquity) * sin(ecliptic)
    ascension = degrees(atan2(y, x))
    sidereal = 280.46062 + 360.98564737 * days
    hour = radians((sidereal + longitude - ascension) % 360)
    here = radians(latitude)
    return degrees(asin(sin(here) * sin(declination) + cos(here) * cos(declination) * cos(hour)))


@given(
    st.floats(-75, 75),
    st.floats(-180, 180),
    st.integers(0, 20 * 365 * 24 * 60),
)
def test_light_is_as_an_independent_almanac_has_it(latitude: float, longitude: float, minutes: int) -> None:
    time = datetime(2015, 1, 1, tzinfo=UTC) + timedelta(minutes=minutes)
    expected = altitude(latitude, longitude, time)

    said = light(Position(latitude=latitude, longitude=longitude, typed=""), time)

    near = 0.05
    possible = {"day": expected > -near, "twilight": -12 - near < expected < near, "night": expected < -12 + near}
    assert possible[said]
