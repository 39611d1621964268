"""Ice on deck, as it was last looked at."""

from datetime import datetime

from logbook.model.trip import Trip, Weather


def icing_on_deck(trip: Trip, time: datetime) -> Weather | None:
    """Return the last look at the weather by a time that says anything of icing, where it says there is some; else None.

    A look whose own time is not known is taken to be of the time of the one typed before it. Of two of one time the later
    typed holds.
    """
    last, last_at, stands = None, trip.begins, trip.begins
    for look in trip.weather:
        stands = look.at or stands
        if look.icing is not None and stands <= time and (last is None or stands >= last_at):
            last, last_at = look, stands
    return last if last is not None and last.icing != "none" else None
