"""Day, twilight and night by the sun's altitude."""

from collections.abc import Callable
from datetime import UTC, datetime
from functools import cache
from typing import Any

from logbook.model.quantity import Position

_NIGHT = -12.0


@cache
def _sun() -> tuple[Callable[[float, float], Any], Callable[..., float]]:
    """Return what makes an observer of a latitude and a longitude, and what tells the sun's altitude there."""
    from astral import Observer  # noqa: PLC0415 - only where there are positions
    from astral.sun import elevation  # noqa: PLC0415

    return Observer, elevation


def light(position: Position, time: datetime) -> str:
    """Return `day` with the sun's centre at or above the true horizon, `night` with it lower than 12° below, else `twilight`.

    Source:
        The sun's altitude without refraction, by the astral library (NOAA's solar equations).
    """
    observer, elevation = _sun()
    altitude = elevation(observer(position.latitude, position.longitude), time.astimezone(UTC), with_refraction=False)
    if altitude >= 0:
        return "day"
    return "twilight" if altitude >= _NIGHT else "night"
