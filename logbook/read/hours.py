"""Hours of the day and days of the week as people type them: `00-06 12-18`, `Mon-Fri`.

Knows the forms; what is done in those hours and on those days is left to others.
"""

import re
from itertools import pairwise

from logbook.read.forms import form
from logbook.read.moment import WEEKDAYS, named
from logbook.read.number import quoted, tidied
from logbook.read.said import Said, wrong

CODES = frozenset({"hours-unreadable", "weekdays-unreadable"})

Spans = tuple[tuple[float, float], ...]
"""Hours from and to, each within 0 and 24, the first before the second."""

_CLOCK = r"([0-9]{1,2})(?:[:.]?([0-9]{2}))?"
_SPAN = form(rf"{_CLOCK} ?(?:-|to) ?{_CLOCK}(?: and |, ?|; ?| )?", re.IGNORECASE)
_DAYS = form(r"([a-z]+)\.?(?: ?(-)|( to))? ?(?:(?:,|and) ?)?", re.IGNORECASE)
_DAY = 24.0
_EVERY_DAY = frozenset({"daily", "every day"})


def parse_hours(text: str) -> Said[Spans]:
    """Return spans of hours in the order typed; one over midnight is cut in two there."""
    typed = tidied(text)
    spans: list[tuple[float, float]] = []
    at = 0
    while at < len(typed):
        match = _SPAN().match(typed, at)
        cut = None if match is None else _cut(match)
        if match is None or not cut:
            return _no_hours(text)
        spans.extend(cut)
        at = match.end()
    ordered = sorted(spans)
    if not spans or any(second[0] < first[1] for first, second in pairwise(ordered)):
        return _no_hours(text)
    return Said(tuple(spans))


def _cut(match: re.Match[str]) -> list[tuple[float, float]]:
    """Return a span as one or two that do not cross midnight; nothing where there are no such hours."""
    start = int(match[1]) + int(match[2] or 0) / 60
    end = int(match[3]) + int(match[4] or 0) / 60
    if start >= _DAY or end > _DAY or start == end or any(int(match[n] or 0) > 59 for n in (2, 4)):  # noqa: PLR2004
        return []
    if start < end:
        return [(start, end)]
    return [(start, _DAY), (0.0, end)] if end > 0 else [(start, _DAY)]


def _no_hours(text: str) -> Said[Spans]:
    hint = "write spans of hours that do not overlap: 00-06 12-18"
    return Said(None, (wrong("hours-unreadable", f"{quoted(text)} is no bill of hours", hint),))


def parse_weekdays(text: str) -> Said[tuple[int, ...]]:
    """Return weekdays, Monday 0 to Sunday 6, in the order of the week: `Mon-Fri`, `Mon Wed Fri`, `daily`."""
    typed = tidied(text)
    if typed.casefold() in _EVERY_DAY:
        return Said(tuple(range(7)))
    days: set[int] = set()
    at, since = 0, None
    while at < len(typed):
        match = _DAYS().match(typed, at)
        day = None if match is None else _weekday(match[1])
        if match is None or day is None:
            return _no_days(text)
        days.update({day} if since is None else {(since + n) % 7 for n in range((day - since) % 7 + 1)})
        at, since = match.end(), day if match[2] or match[3] else None
    return Said(tuple(sorted(days))) if days and since is None else _no_days(text)


def _weekday(word: str) -> int | None:
    """Return a weekday by its name or the first letters of it; `Mondays` is one too."""
    day = named(word, WEEKDAYS)
    return named(word[:-1], WEEKDAYS) if day is None and word[-1:] in ("s", "S") else day


def _no_days(text: str) -> Said[tuple[int, ...]]:
    hint = "write Mon-Fri, or Mon Wed Fri"
    return Said(None, (wrong("weekdays-unreadable", f"{quoted(text)} is no list of weekdays", hint),))
