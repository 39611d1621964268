"""Lengths of time as people type them: `3 h`, `40 min`, `1 h 20 min`, `2 days`."""

import re
from datetime import timedelta
from decimal import Decimal

from logbook.read.forms import form
from logbook.read.number import FIGURE, better, exact, figure, quoted, tidied, too_long
from logbook.read.said import Fault, Said, wrong

CODES = frozenset({"duration-range", "duration-unreadable", "no-unit"})

_UNITS = {
    **dict.fromkeys(("d", "day", "days"), 24 * 60),
    **dict.fromkeys(("h", "hr", "hrs", "hour", "hours"), 60),
    **dict.fromkeys(("m", "min", "mins", "minute", "minutes"), 1),
}
"""Minutes in each unit of a length of time."""

_PIECE = form(rf"({FIGURE}) ?([a-z]+)?\.?(?: and |, ?| )?", re.IGNORECASE)
_BARE = form(FIGURE)
_LONGEST = 3660 * 24 * 60
"""In minutes: ten years."""


def parse_duration(text: str) -> Said[timedelta]:
    """Return a length of time: `3 h`, `40 min`, `1 h 20 min`, `2 days`."""
    found: list[Fault] = []
    typed = exact(tidied(text), found)
    if typed == "0":
        return Said(timedelta(0))
    if _BARE().fullmatch(typed):
        endless = too_long(typed)
        if endless is not None:
            return Said(None, (endless,))
        hint = f"write {typed} h or {typed} min, whichever is meant"
        return Said(None, (wrong("no-unit", f"{quoted(text)} has no unit", hint),))
    minutes = _minutes(text, typed, found)
    if minutes is None:
        return Said(None, tuple(found))
    if minutes > _LONGEST:
        return Said(
            None, (wrong("duration-range", f"{quoted(text)} is over ten years", "look at the figure and its unit"),)
        )
    return Said(timedelta(seconds=round(minutes * 60)), tuple(found))


def _minutes(text: str, typed: str, found: list[Fault]) -> Decimal | None:
    """Return the sum of days, hours and minutes, each at most once and the larger first."""
    total, at, last = Decimal(0), 0, _LONGEST
    while at < len(typed) or not at:
        piece = _PIECE().match(typed, at)
        each = 0 if piece is None else _UNITS.get((piece[2] or "min").casefold(), 0)
        if piece is None or not 0 < each < last or not (piece[2] or last == _UNITS["h"]):
            hint = better(typed, parse_duration, "write 3 h, 40 min, 1 h 20 min or 2 days")
            found.append(wrong("duration-unreadable", f"{quoted(text)} is no length of time", hint))
            return None
        number = figure(piece[1], found, unit=piece[2] or "min")
        if number is None:
            return None
        total, at, last = total + number * each, piece.end(), each
    return total
