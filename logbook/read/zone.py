"""Time zones: UTC, fixed offsets and IANA names, and what their clocks show on a day.

Knows which zones there are; a name is looked up among the known ones before anything is opened by it.
"""

import re
from datetime import UTC, date, datetime, timedelta, timezone, tzinfo
from functools import cache

from msgspec import Struct

from logbook.read.forms import form
from logbook.read.number import near, quoted, tidied
from logbook.read.said import Fault, Said, wrong

CODES = frozenset({"zone-unknown"})

_UTC = frozenset({"utc", "z", "gmt", "ut", "zulu", "utc+0", "utc-0"})
_FIXED = form(r"(?:utc|gmt)? ?([+-])([0-9]{1,2})(?::?([0-9]{2}))?", re.IGNORECASE)
_TWO_CLOCKS = form(r"[a-z]{3}[0-9][a-z]{3}", re.IGNORECASE)
_REVERSED = form(r"etc/gmt([+-])([0-9]{1,2})", re.IGNORECASE)
_NO_PLACES = frozenset({"posixrules", "factory", "localtime"})
_MAX_OFFSET = timedelta(hours=14)
_FORMS = "write UTC, an offset as +01:00, or a zone as Europe/Oslo"


class Zone(Struct, frozen=True, kw_only=True):
    """A zone that clock times are kept in.

    Attributes:
        name: As typed, in the usual spelling where it is an IANA name.
        rules: What its clocks show.
    """

    name: str
    rules: tzinfo

    def at(self, day: date, hour: int, minute: int, second: int = 0) -> tuple[datetime, str]:
        """Return the moment its clocks show a time on a day, with a fixed offset, and what is odd about that time.

        Returns:
            The moment, and `twice` where the clocks show it twice (the earlier is taken), `never` where they skip it
            (it is read with the offset before the change), else nothing.
        """
        shown = datetime(day.year, day.month, day.day, hour, minute, second, tzinfo=self.rules)
        if self.rules.__class__ is timezone:
            return shown, ""
        first, again = _offset(shown), _offset(shown.replace(fold=1))
        odd = "" if first == again else "twice" if first > again else "never"
        return shown.replace(tzinfo=timezone(first)), odd

    def local(self, moment: datetime) -> datetime:
        """Return the same instant at the offset its clocks have then."""
        here = moment.astimezone(self.rules)
        if self.rules.__class__ is timezone:
            return here
        return here.replace(tzinfo=timezone(_offset(here)), fold=0)


def _offset(moment: datetime) -> timedelta:
    return moment.utcoffset() or timedelta(0)


def parse_zone(text: str) -> Said[Zone]:
    """Return a zone: `UTC`, an offset, or an IANA name whatever its case."""
    typed = tidied(text)
    if typed.casefold() in _UTC:
        return Said(Zone(name="UTC", rules=UTC))
    match = _FIXED().fullmatch(typed)
    if match is not None:
        return _fixed(text, match)
    name = None if _refusal(typed) else zones().get(typed.casefold())
    if name is None:
        return Said(None, (_unknown(text, typed),))
    return Said(Zone(name=name, rules=_rules(name)))


def _rules(name: str) -> tzinfo:
    from zoneinfo import ZoneInfo

    return ZoneInfo(name)


def _fixed(text: str, match: re.Match[str]) -> Said[Zone]:
    offset = timedelta(hours=int(match[2]), minutes=int(match[3] or 0))
    if offset > _MAX_OFFSET or int(match[3] or 0) > 59:  # noqa: PLR2004 - minutes of an hour
        return Said(None, (wrong("zone-unknown", f"{quoted(text)} is no offset any clock has", "write +01:00"),))
    name = f"{match[1]}{int(match[2]):02}:{match[3] or '00'}"
    return Said(Zone(name=name, rules=timezone(-offset if match[1] == "-" else offset)))


def _refusal(typed: str) -> str:
    """Return what to type in place of a name that is in the list of zones but says something else than it seems to."""
    reversed_sign = _REVERSED().fullmatch(typed)
    if reversed_sign is not None:
        sign = "-" if reversed_sign[1] == "+" else "+"
        return f"its sign is the wrong way round; write {sign}{int(reversed_sign[2]):02}:00 if that is meant"
    return _FORMS if _TWO_CLOCKS().fullmatch(typed) or typed.casefold() in _NO_PLACES else ""


def _unknown(text: str, typed: str) -> Fault:
    known = zones()
    hint = _refusal(typed)
    if not hint:
        place = by_place().get(typed.casefold())
        close = near(typed, known) or near(typed, by_place())
        hint = f"write {place}" if place else _FORMS
        if close and not place and not any(c.isdecimal() for c in typed):
            hint = f"did you mean {known.get(close) or by_place()[close]}?"
    return wrong("zone-unknown", f"{quoted(text)} is no time zone", hint)


@cache
def zones() -> dict[str, str]:
    """Return the IANA names of the tz database, by folded name."""
    import pkgutil

    listed = pkgutil.get_data("tzdata", "zones") or b""
    return {name.casefold(): name for name in listed.decode("ascii").split() if _refusal(name) == ""}


@cache
def by_place() -> dict[str, str]:
    """Return the IANA names by the folded place alone, for those who type `Oslo`."""
    return {folded.rpartition("/")[2]: name for folded, name in zones().items() if "/" in folded}
