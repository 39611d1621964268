"""Every problem code explained: what it means, a bad and a good line, what the reader did with it. Words only.

`logbook explain` and the archive's page of codes tell the same; a check of a log does not load it.
"""

from logbook.model.codes.entry import Chapter, Entry, Where
from logbook.model.codes.files import FILES, SIGNS
from logbook.model.codes.fleet_file import FLEET_FILE
from logbook.model.codes.keys import KEYS
from logbook.model.codes.lines import BRACKETS, LINES
from logbook.model.codes.names import NAMES
from logbook.model.codes.times import DOUBTS, TIMES
from logbook.model.codes.values import FIGURES, MONEY, POSITIONS

__all__ = ["CHAPTERS", "ENTRIES", "Chapter", "Entry", "Where"]

CHAPTERS = (LINES, BRACKETS, KEYS, TIMES, FIGURES, POSITIONS, NAMES, MONEY, DOUBTS, FLEET_FILE, FILES, SIGNS)
"""What is explained, what comes up most first."""

ENTRIES = {entry.code: entry for chapter in CHAPTERS for entry in chapter.entries}
"""Every entry by its code."""
