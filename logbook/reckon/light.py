"""Day, twilight and night by the sun's altitude."""

from datetime import UTC, datetime

from logbook.model.quantity import Position

_NIGHT = -12.0


def light(position: Position, time: datetime) -> str:
    """Return `day` with the sun's centre at or above the true horizon, `night` with it lower than 12° below, else `twilight`.

    Source:
        The sun's altitude without refraction, by the astral library (NOAA's solar equations).
    """
    from astral import Observer  # noqa: PLC0415 - only where there are positions
    from astral.sun import elevation  # noqa: PLC0415

    observer = Observer(latitude=position.latitude, longitude=position.longitude)
    altitude = elevation(observer, time.astimezone(UTC), with_refraction=False)
    if altitude >= 0:
        return "day"
    return "twilight" if altitude >= _NIGHT else "night"
