"""How every figure is reckoned, as the archive tells its readers: words only, the reckoning is elsewhere.

The pages link to each entry by its id, from the head of the column or the name of the figure.
"""

from logbook.render.formulas.catch import CATCH, TOTALS
from logbook.render.formulas.entry import LOGGED, RECKONED, Chapter, Entry
from logbook.render.formulas.hold import AGE, ICE, PENS
from logbook.render.formulas.landing import LANDING, TURNING
from logbook.render.formulas.office import GEAR, MONEY, OUT_TURN, REST, WEATHER
from logbook.render.formulas.trip import TOW, TRIP

__all__ = ["CHAPTERS", "ENTRIES", "LOGGED", "RECKONED", "Chapter", "Entry"]

CHAPTERS = (TRIP, TOW, CATCH, ICE, PENS, AGE, LANDING, TURNING, OUT_TURN, MONEY, GEAR, REST, WEATHER, TOTALS)
"""What is explained, in the order it is read."""

ENTRIES = {entry.id: entry for chapter in CHAPTERS for entry in chapter.entries}
"""Every entry by its id."""
