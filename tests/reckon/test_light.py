"""Day, twilight and night against the geometry of the equinox and the solstices."""

from datetime import UTC, datetime

import pytest

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
