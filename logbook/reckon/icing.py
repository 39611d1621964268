"""Ice on deck, as it was last looked at."""

from datetime import datetime

from logbook.model.trip import Trip, Weather
from logbook.reckon.as_of import until


def icing_on_deck(trip: Trip, time: datetime) -> Weather | None:
    """Return the last look at the weather by a time that says anything of icing, where it says there is some; else None.

    A look whose own time is not known stands where it was typed.
    """
    looks = [look for look in until(trip, time).weather if look.icing is not None]
    timed = [look for look in looks if look.at is not None]
    last = max(timed, key=lambda look: look.at or time) if timed else looks[-1] if looks else None
    return last if last is not None and last.icing != "none" else None
