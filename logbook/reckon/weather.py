"""Hours towed and catch per hour by the force of the wind and by light; the worst of it; ice on deck."""

from collections.abc import Callable, Iterable, Sequence
from datetime import datetime, timedelta

from logbook.model.figures import TowFigures
from logbook.model.named import ByName
from logbook.model.trip import Tow, Trip, Weather
from logbook.model.weather import WeatherFigures
from logbook.reckon.gaps import numbers
from logbook.reckon.totals import add_floats, catch_per_hour

ICING = ("none", "light", "moderate", "severe")
LIGHTS = ("day", "twilight", "night")
_LOOK_HOLDS = timedelta(hours=12)
"""So long a look at the weather tells of tows after it; a setting, not a figure from a source."""


def reckon_weather(trip: Trip, tows: Sequence[TowFigures]) -> WeatherFigures:
    """Return the weather and light of a trip.

    A tow's force is its own, else that of the last look at the weather before its middle, not over twelve hours old. Tows sorted
    together count in the force of the last of them.

    Args:
        trip: The trip as it stood.
        tows: The figures of its tows, in order.

    Source:
        Forces: WMO code table 1100; sea states: WMO code table 3700.
    """
    forces = [_force(tow, trip.weather) for tow in trip.tows]
    told = sorted({force for force in forces if force is not None})
    by_force = {force: [tow for tow, own in zip(tows, forces, strict=True) if own == force] for force in told}
    by_light = {light: [tow for tow in tows if tow.light == light] for light in LIGHTS}
    unknown = [tow.no for tow, force in zip(trip.tows, forces, strict=True) if force is None and tow.hauled is not None]
    last = icing_on_deck(trip.weather)
    return WeatherFigures(
        hours_by_force=_hours({str(force): own for force, own in by_force.items()}),
        kept_kg_per_h_by_force=ByName((str(force), catch_per_hour(own)) for force, own in by_force.items()),
        worst_force=_worst(
            (*trip.tows, *trip.weather), lambda look: look.wind.force if look.wind is not None else None
        ),
        worst_sea=_worst((*trip.tows, *trip.weather), lambda look: look.sea),
        icing=max((look.icing for look in trip.weather if look.icing is not None), key=ICING.index, default=None),
        icing_on_deck=last.icing if last is not None else None,
        icing_on_deck_at=last.at if last is not None else None,
        hours_by_light=_hours({light: own for light, own in by_light.items() if own}),
        kept_kg_per_h_by_light=ByName((light, catch_per_hour(own)) for light, own in by_light.items() if own),
        basis=(("hours_by_force", f"without {numbers(unknown)}, no wind"),) if told and unknown else (),
    )


def _hours(tows: dict[str, list[TowFigures]]) -> ByName[float]:
    return ByName((name, add_floats(tow.duration_h for tow in own) or 0.0) for name, own in tows.items())


def _worst(looks: Iterable[Tow | Weather], of: Callable[[Tow | Weather], int | None]) -> int | None:
    return max((value for look in looks if (value := of(look)) is not None), default=None)


def _force(tow: Tow, looks: Sequence[Weather]) -> int | None:
    if tow.wind is not None:
        return tow.wind.force
    middle = _middle(tow)
    if middle is None:
        return None
    before = [
        (look.at, look.wind.force)
        for look in looks
        if look.at is not None and look.wind is not None and timedelta(0) <= middle - look.at <= _LOOK_HOLDS
    ]
    return max(before)[1] if before else None


def _middle(tow: Tow) -> datetime | None:
    if tow.shot is None or tow.hauled is None:
        return tow.shot or tow.hauled
    return tow.shot + (tow.hauled - tow.shot) / 2


def icing_on_deck(weather: Sequence[Weather]) -> Weather | None:
    """Return the last look that says anything of icing, where it says there is some; else None.

    A look whose own time is not known stands where it was typed, where no look has one.
    """
    looks = [look for look in weather if look.icing is not None]
    timed = [(look.at, n) for n, look in enumerate(looks) if look.at is not None]
    last = looks[max(timed)[1]] if timed else looks[-1] if looks else None
    return last if last is not None and last.icing != ICING[0] else None
