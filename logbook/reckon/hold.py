"""What the hold was told to hold where, and how warm its pens were."""

from datetime import datetime

from logbook.model.names import fold_name
from logbook.model.trip import Trip
from logbook.reckon.curve import Curve
from logbook.reckon.together import sorted_together


def pen_curves(trip: Trip) -> dict[str, Curve]:
    """Return each pen's readings in order of time, by its folded name; of several at one moment the warmest counts."""
    readings: dict[str, dict[datetime, float]] = {}
    for reading in trip.readings:
        if reading.at is None:
            continue
        for pen, celsius in reading.temperatures:
            at = readings.setdefault(fold_name(pen), {})
            at[reading.at] = max(celsius, at.get(reading.at, celsius))
    return {pen: Curve(sorted(at.items())) for pen, at in readings.items()}


def pens_of_tows(trip: Trip) -> tuple[tuple[str, ...], ...]:
    """Return where each tow's fish lies: as the stowage tells it, else as the tow does; what was sorted together lies together.

    Of a tow that tells no pen either, fish can lie wherever the tally has fish that it names no tows of.
    """
    stowed: dict[int, list[str]] = {}
    for line in trip.stowage:
        for no in line.tows:
            stowed.setdefault(no, []).append(line.pen)
    anywhere = tuple(line.pen for line in trip.stowage if not line.tows)
    pens = [tuple(stowed.get(tow.no, tow.pens)) or anywhere for tow in trip.tows]
    for group in sorted_together(trip.tows):
        for n in group[:-1]:
            own = () if trip.tows[n].no not in stowed else pens[n]
            pens[n] = own or pens[group[-1]] or pens[n]
    return tuple(tuple(dict.fromkeys(names)) for names in pens)
