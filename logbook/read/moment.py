"""Days and clock times as people type them: `2026-03-04 18:10`, `1810`, `Thu 5 March`.

Knows the forms and which days there are; on which day a bare time falls, and in which zone, is left to others.
"""

import re
from datetime import date, time, timedelta
from functools import lru_cache

from msgspec import Struct

from logbook.read.forms import form
from logbook.read.number import quoted, tidied
from logbook.read.said import Fault, Said, doubtful, mended, wrong

CODES = frozenset({"day-unreadable", "no-such-day", "no-such-time", "time-24", "time-style", "time-unreadable"})

_YEARS = range(1900, 2101)
_MAX_OFFSET = timedelta(hours=14)
_FORMS = "write 18:10, or 2026-03-04 18:10 with its date"

_COMMON = re.compile(r"(?:([0-9]{4})-([0-9]{2})-([0-9]{2})[ T])?([01][0-9]|2[0-3]):?([0-5][0-9])")
_DATED = form(r"([0-9]{4})[-/.]([0-9]{1,2})[-/.]([0-9]{1,2})(?:(?:,? |T)(.*))?", re.IGNORECASE)
_OFFSET = form(
    r"(.*?)(?: ?(z|utc|gmt)|(?: ?(\+)|(?: |(?<=:[0-9][0-9]))(-))([0-9]{1,2})(?::?([0-9]{2}))?)", re.IGNORECASE
)
_CLOCK = form(r"([0-9]{1,2}):([0-9]{2})(?::([0-9]{2}))?|([0-9]{2})([0-9]{2})")
_STYLED = form(r"([0-9]{1,2})(?:([.:h])([0-9]{2}))? ?(?:h|hrs?|hours?)? ?([ap])?\.?(m)?\.?", re.IGNORECASE)
_OTHER_ORDER = form(
    r"(?:(?P<hour2>[0-9]{1,2}):?(?P<minute2>[0-9]{2}),? )?"
    r"(?:(?P<one>[0-9]{1,2})[-/.](?P<other>[0-9]{1,2})[-/.](?P<last>[0-9]{4})|(?P<words>[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}|[a-z0-9., ]*[a-z][a-z0-9., ]*?))"
    r"(?:,? (?P<hour>[0-9]{1,2}):?(?P<minute>[0-9]{2}))?",
    re.IGNORECASE,
)
_RANGE = form(r"[0-9:.]+ ?- ?[0-9:.]+")

_MONTHS = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
]
WEEKDAYS = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]
_WORDED = form(
    r"(?:(?P<weekday>[a-z]{3,9})\.?,? )?(?:(?P<iso>[0-9]{4}-[0-9]{1,2}-[0-9]{1,2})|"
    r"(?:(?P<day>[0-9]{1,2})(?:st|nd|rd|th|\.)? ?(?P<month>[a-z]{3,9})|"
    r"(?P<month2>[a-z]{3,9}) (?P<day2>[0-9]{1,2})(?:st|nd|rd|th)?)"
    r"\.?(?:,? (?P<year>[0-9]{4}))?)",
    re.IGNORECASE,
)


class Stamp(Struct, frozen=True, kw_only=True):
    """A time as typed.

    Attributes:
        day: The date typed with it; None where it is a bare clock time.
        hour: 0 to 23.
        minute: 0 to 59.
        second: 0 to 59.
        offset: Distance from UTC typed with it; None where none was.
    """

    day: date | None
    hour: int
    minute: int
    second: int
    offset: timedelta | None


class DayLine(Struct, frozen=True, kw_only=True):
    """A day as typed, which may leave out its year.

    Attributes:
        year: None where none was typed.
        month: 1 to 12.
        day: 1 to 31; there is such a day in that month.
        weekday: Monday 0 to Sunday 6; None where none was typed. Whether it agrees is left to others.
    """

    year: int | None
    month: int
    day: int
    weekday: int | None


@lru_cache(maxsize=4096)
def parse_stamp(text: str) -> Said[Stamp]:
    """Return a time with or without its date and offset; 24:00 is an error, as its day is in doubt."""
    common = _COMMON.fullmatch(text)
    if common is not None and common[1] is None:
        return Said(Stamp(day=None, hour=int(common[4]), minute=int(common[5]), second=0, offset=None))
    if common is not None and int(common[1]) in _YEARS and _there_is(int(common[1]), int(common[2]), int(common[3])):
        written = date(int(common[1]), int(common[2]), int(common[3]))
        return Said(Stamp(day=written, hour=int(common[4]), minute=int(common[5]), second=0, offset=None))
    return _careful(text)


def _careful(text: str) -> Said[Stamp]:
    """Return a time of any form, or say what is wrong with it."""
    found: list[Fault] = []
    typed = tidied(text)
    day: date | None = None
    dated = _DATED().fullmatch(typed)
    if dated is not None:
        day = _day(text, int(dated[1]), int(dated[2]), int(dated[3]), found)
        if day is None:
            return Said(None, tuple(found))
        typed = dated[4] or ""
        if not typed:
            hint = f"write {day.isoformat()} 18:10"
            return Said(None, (wrong("time-unreadable", f"{quoted(text)} is a day without a time", hint),))
    clock, offset = _offset(text, typed, found, dated=dated is not None)
    read = None if found else _clock(text, clock, day, found)
    if read is None:
        return Said(None, tuple(found))
    return Said(Stamp(day=day, hour=read[0], minute=read[1], second=read[2], offset=offset), tuple(found))


def parse_clock(text: str) -> Said[time]:
    """Return a clock time without date or offset."""
    found: list[Fault] = []
    read = _clock(text, tidied(text), None, found)
    return Said(None if read is None else time(*read), tuple(found))


def _offset(text: str, typed: str, found: list[Fault], *, dated: bool) -> tuple[str, timedelta | None]:
    """Return the clock's part of a time, and the distance from UTC typed after it."""
    match = _OFFSET().fullmatch(typed)
    if match is None or not match[1] or (not dated and match[4] and " -" not in typed):
        return typed, None
    if match[2]:
        return match[1], timedelta(0)
    offset = timedelta(hours=int(match[5]), minutes=int(match[6] or 0))
    if offset > _MAX_OFFSET or int(match[6] or 0) > 59:  # noqa: PLR2004 - minutes of an hour
        found.append(
            wrong("time-unreadable", f"{quoted(text)} has no offset there is", "write one time, as 18:10 +01:00")
        )
    return match[1], -offset if match[4] else offset


def _clock(text: str, typed: str, day: date | None, found: list[Fault]) -> tuple[int, int, int] | None:
    """Return hour, minute and second; None, with the reason found, where there is no such time."""
    match = _CLOCK().fullmatch(typed)
    if match is None:
        return _styled(text, typed, day, found)
    hour, minute, second = int(match[1] or match[4]), int(match[2] or match[5]), int(match[3] or 0)
    return _checked(text, (hour, minute, second), day, found)


def _checked(
    text: str, clock: tuple[int, int, int], day: date | None, found: list[Fault]
) -> tuple[int, int, int] | None:
    hour, minute, second = clock
    if clock == (24, 0, 0):
        hint = (
            f"write {day + timedelta(days=1)} 00:00" if day and day.year < _YEARS[-1] else "write 00:00 of the next day"
        )
        found.append(wrong("time-24", f"{quoted(text)} leaves its day in doubt", hint))
        return None
    if hour > 23 or minute > 59 or second > 59:  # noqa: PLR2004 - the clock's own figures
        found.append(wrong("no-such-time", f"there is no such time as {quoted(text)}", "hours go to 23, minutes to 59"))
        return None
    return clock


def _styled(text: str, typed: str, day: date | None, found: list[Fault]) -> tuple[int, int, int] | None:
    """Return a clock time in another style than ours (`4.30`, `04h30`, `4:30 pm`), with the form to type."""
    match = _STYLED().fullmatch(typed)
    if match is None or bool(match[4]) != bool(match[5]) or not (match[3] or match[4]):
        found.append(wrong("time-unreadable", f"{quoted(text)} is no time", _hint(typed)))
        return None
    hour, minute = int(match[1]), int(match[3] or 0)
    half = (match[4] or "").casefold()
    if half and not 1 <= hour <= 12:  # noqa: PLR2004 - hours on a dial
        found.append(wrong("no-such-time", f"there is no such time as {quoted(text)}", "write it by 24 hours: 16:30"))
        return None
    if half:
        hour = hour % 12 + (12 if half == "p" else 0)
    read = _checked(text, (hour, minute, 0), day, found)
    if read is not None:
        say = doubtful if match[2] == "." and not half else mended
        found.append(
            say("time-style", f"{quoted(text)} is read as {hour:02}:{minute:02}", f"write {hour:02}:{minute:02}")
        )
    return read


def _hint(typed: str) -> str:
    """Return what to type in place of a text that is no time."""
    if typed.isascii() and typed.isdigit() and len(typed) <= 3:  # noqa: PLR2004 - one digit short of a time
        padded = f"{typed:>02}00" if len(typed) < 3 else f"0{typed}"  # noqa: PLR2004
        return f"write {padded[:2]}:{padded[2:]} if that is meant"
    if _RANGE().fullmatch(typed):
        return "write one time here"
    return _in_order(typed) or _FORMS


def _in_order(typed: str) -> str:
    """Return how to type a time whose date stands in another order: `4/3/2026 05:30`; empty where it is none."""
    match = _OTHER_ORDER().fullmatch(typed)
    if match is None:
        return ""
    clock = f"{match['hour'] or match['hour2']}:{match['minute'] or match['minute2']}"
    if match["last"]:
        day, month, year = int(match["one"]), int(match["other"]), int(match["last"])
        days = [
            (year, first, second) for first, second in ((month, day), (day, month)) if _there_is(year, first, second)
        ]
    else:
        line = parse_day(match["words"]).value
        days = [(line.year, line.month, line.day)] if line is not None and line.year is not None else []
    written = dict.fromkeys(f"{year:04}-{month:02}-{day:02} {clock:0>5}" for year, month, day in days)
    return (
        f"write {' or '.join(written)}, whichever is meant"
        if len(written) > 1
        else f"write {''.join(written)}"
        if written
        else ""
    )


def _day(text: str, year: int, month: int, day: int, found: list[Fault]) -> date | None:
    """Return a date, or None with the reason found."""
    if year not in _YEARS:
        found.append(wrong("no-such-day", f"{quoted(text)} is not in a year anyone fished", "look at the year"))
        return None
    if not _there_is(year, month, day):
        found.append(_no_such_day(text, year, month))
        return None
    return date(year, month, day)


def _there_is(year: int, month: int, day: int) -> bool:
    try:
        date(year, month, day)
    except ValueError:
        return False
    return True


def _no_such_day(text: str, year: int, month: int) -> Fault:
    from calendar import monthrange

    hint = "months go from 1 to 12"
    if 1 <= month <= len(_MONTHS):
        hint = f"{_MONTHS[month - 1].capitalize()} has {monthrange(year, month)[1]} days"
    return wrong("no-such-day", f"there is no such day as {quoted(text)}", hint)


def parse_day(text: str) -> Said[DayLine]:
    """Return a day: `2026-03-05`, `5 March`, `Thu 5 March`, `5 Mar 2026`."""
    typed = tidied(text)
    match = _WORDED().fullmatch(typed)
    weekday = None if match is None else named(match["weekday"], WEEKDAYS)
    if match is None or (match["weekday"] and weekday is None):
        return Said(None, (_no_day(text),))
    if match["iso"]:
        year, month, day = (int(part) for part in match["iso"].split("-"))
    else:
        named_month = named(match["month"] or match["month2"], _MONTHS)
        if named_month is None:
            return Said(None, (_no_day(text),))
        year, month, day = int(match["year"] or 0), named_month + 1, int(match["day"] or match["day2"])
    found: list[Fault] = []
    leap = 2024
    if _day(text, year if match["iso"] or match["year"] else leap, month, day, found) is None:
        return Said(None, tuple(found))
    return Said(DayLine(year=year or None, month=month, day=day, weekday=weekday))


def _no_day(text: str) -> Fault:
    return wrong("day-unreadable", f"{quoted(text)} is no day", "write 2026-03-05, 5 March or Thu 5 March")


def named(typed: str | None, names: list[str]) -> int | None:
    """Return which of some names a word of three letters or more begins, or None."""
    word = (typed or "").casefold()
    if len(word) < 3:  # noqa: PLR2004 - two letters may begin several names
        return None
    return next((n for n, name in enumerate(names) if name.startswith(word)), None)
