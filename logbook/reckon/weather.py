"""Hours towed and catch per hour by the force of the wind and by light; the worst of it; ice on deck."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import datetime, timedelta

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.figures import TowFigures
from logbook.model.language import N_
from logbook.model.named import ByName
from logbook.model.trip import Tow, Trip, Weather
from logbook.model.weather import WeatherFigures
from logbook.reckon.gaps import numbers
from logbook.reckon.totals import add_floats, catch_per_hour

ICING = ("none", "light", "moderate", "severe")
LIGHTS = (N_("day"), N_("twilight"), N_("night"))
_LOOK_HOLDS = timedelta(hours=12)
"""So long a look at the weather tells of tows after it; a setting, not a figure from a source."""


def reckon_weather(trip: Trip, tows: Sequence[TowFigures]) -> WeatherFigures:
    """Return the weather and light of a trip.

    A tow's force is its own, else that of the last look at the weather before its middle, not over twelve hours old; of two
    looks of one time the later typed holds. Tows sorted together count in the force of the last of them.

    Args:
        trip: The trip as it stood.
        tows: The figures of its tows, in order.

    Source:
        Forces: WMO code table 1100; sea states: WMO code table 3700.
    """
    winds = _winds(trip.weather)
    forces = [_force(tow, winds) for tow in trip.tows]
    told = sorted({force for force in forces if force is not None})
    by_force = _timed({str(n): [tow for tow, own in zip(tows, forces, strict=True) if own == n] for n in told})
    by_light = by_light_of(tows)
    last = icing_on_deck(trip)
    return WeatherFigures(
        hours_by_force=ByName((force, hours) for force, (hours, _) in by_force.items()),
        kept_kg_per_h_by_force=ByName((force, catch_per_hour(own)) for force, (_, own) in by_force.items()),
        worst_force=_worst(
            (*trip.tows, *trip.weather), lambda look: look.wind.force if look.wind is not None else None
        ),
        worst_sea=_worst((*trip.tows, *trip.weather), lambda look: look.sea),
        icing=max((look.icing for look in trip.weather if look.icing is not None), key=ICING.index, default=None),
        icing_on_deck=last.icing if last is not None else None,
        icing_on_deck_at=last.at if last is not None else None,
        hours_by_light=ByName((light, hours) for light, (hours, _) in by_light.items()),
        kept_kg_per_h_by_light=ByName((light, catch_per_hour(own)) for light, (_, own) in by_light.items()),
        basis=_basis(tows, forces) if told else (),
    )


def by_light_of(tows: Sequence[TowFigures]) -> Mapping[str, tuple[float, list[TowFigures]]]:
    """Return day, twilight and night to hours towed in it and its tows; those of no known hours are left out."""
    return _timed({light: [tow for tow in tows if tow.light == light] for light in LIGHTS})


def _timed(groups: Mapping[str, list[TowFigures]]) -> Mapping[str, tuple[float, list[TowFigures]]]:
    """Return the groups of tows whose hours are known at least in part, with those hours."""
    hours = {name: add_floats(tow.duration_h for tow in own) for name, own in groups.items()}
    return {name: (sum_, groups[name]) for name, sum_ in hours.items() if sum_ is not None}


def _basis(tows: Sequence[TowFigures], forces: Sequence[int | None]) -> Basis:
    """Return which tows that were hauled the hours by force leave out, and why."""
    hauled = [(tow, force) for tow, force in zip(tows, forces, strict=True) if tow.hauled is not None]
    found = (
        (reasons.WITHOUT_WIND, [tow.no for tow, force in hauled if force is None]),
        (reasons.WITHOUT_HOURS, [tow.no for tow, force in hauled if force is not None and tow.duration_h is None]),
    )
    return tuple(("hours_by_force", why.format(which=numbers(left_out))) for why, left_out in found if left_out)


def _worst(looks: Iterable[Tow | Weather], of: Callable[[Tow | Weather], int | None]) -> int | None:
    return max((value for look in looks if (value := of(look)) is not None), default=None)


def _winds(looks: Iterable[Weather]) -> list[tuple[datetime, int, int]]:
    """Return the looks that tell the wind at a known time: when, in which order typed, and its force."""
    return [
        (look.at, n, look.wind.force) for n, look in enumerate(looks) if look.at is not None and look.wind is not None
    ]


def _force(tow: Tow, winds: Iterable[tuple[datetime, int, int]]) -> int | None:
    if tow.wind is not None:
        return tow.wind.force
    middle = _middle(tow)
    if middle is None:
        return None
    before = [look for look in winds if look[0] <= middle and middle - look[0] <= _LOOK_HOLDS]
    return max(before)[-1] if before else None


def _middle(tow: Tow) -> datetime | None:
    if tow.shot is None or tow.hauled is None:
        return tow.shot or tow.hauled
    return tow.shot + (tow.hauled - tow.shot) / 2


def icing_on_deck(trip: Trip) -> Weather | None:
    """Return the last look that says anything of icing, where it says there is some; else None.

    A look whose own time is not known is taken to be of the time of the one typed before it. Of two of one time the later
    typed holds.
    """
    last, last_at, stands = None, trip.begins, trip.begins
    for look in trip.weather:
        stands = look.at or stands
        if look.icing is not None and (last is None or stands >= last_at):
            last, last_at = look, stands
    return last if last is not None and last.icing != ICING[0] else None
