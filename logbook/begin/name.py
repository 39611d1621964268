"""A new log's file name, in the pattern of the logs that are there: `2025/solan-bright-64.yaml`, `KI114_2026-03-04.yml`.

What the pattern's log is called after (its vessel, number, date and year) is put in its place for the new trip; all else stays.
"""

import re
from datetime import datetime
from pathlib import Path

from msgspec import Struct

from logbook.model.fleet import Vessel
from logbook.model.names import fold_name, slug
from logbook.model.trip import Trip

_WORDS = re.compile(r"[^\W_]+")
_UNSAFE = re.compile(r'[<>:"/\\|?*\x00-\x1f]')


class Called(Struct, frozen=True, kw_only=True):
    """What a trip's file may be called after."""

    vessel: Vessel
    number: str | None
    sailed: datetime


def new_name(called: Called, model: tuple[Path, Trip] | None, logs: Path) -> Path:
    """Return the path of a new log.

    Args:
        called: What it is called after.
        model: The log whose name is the pattern, and its trip; None where there is no log yet.
        logs: The folder of logs.
    """
    if model is None:
        return logs / _plain(called)
    path, trip = model
    swaps = _swaps(trip, called)
    name = _swapped(path.stem, swaps) if swaps else path.stem
    folder = _folder(path.parent, logs, trip, called)
    if fold_name(name) == fold_name(path.stem):
        return folder / _plain(called, path.suffix)
    return folder / f"{_UNSAFE.sub('-', name)}{path.suffix}"


def _plain(called: Called, suffix: str = ".yaml") -> str:
    """Return a name made of the vessel's and the trip's number, or else its day."""
    number = slug(called.number) if called.number else f"{called.sailed:%Y-%m-%d}"
    return f"{slug(called.vessel.name)}-{number}{suffix}"


def _folder(folder: Path, logs: Path, trip: Trip, called: Called) -> Path:
    """Return the folder of the pattern, of the new trip's year where it is one of a year."""
    if folder == logs:
        return logs
    return folder.with_name(_swapped(folder.name, _days(trip.begins, called.sailed) + _vessels(trip, called)))


def _swaps(trip: Trip, called: Called) -> list[tuple[str, str]]:
    """Return patterns of what the old name may tell, and what the new one tells in its place."""
    swaps = _vessels(trip, called)
    swaps += _days(trip.begins, called.sailed)
    if trip.number and called.number:
        swaps.append((_numbered(trip.number), called.number))
    elif trip.number:
        swaps.append((_numbered(trip.number), f"{called.sailed:%Y-%m-%d}"))
    return swaps


def _numbered(number: str) -> str:
    return rf"(?<!\d)0*{re.escape(number.lstrip('0') or '0')}(?!\d)"


def _days(old: datetime, new: datetime) -> list[tuple[str, str]]:
    """Return the ways a day and its year are written in names, longest first."""
    return [(rf"(?<!\d){re.escape(f'{old:{way}}')}(?!\d)", f"{new:{way}}") for way in ("%Y-%m-%d", "%Y%m%d", "%Y")]


def _vessels(trip: Trip, called: Called) -> list[tuple[str, str]]:
    """Return how another vessel's name and registration are written, and this one's; nothing for the same vessel."""
    old, new = trip.vessel, called.vessel
    if fold_name(old.name) == fold_name(new.name):
        return []
    pairs = [(old.name, new.name), (old.registration, new.registration or new.name)]
    return [(_worded(a), b) for a, b in pairs if a and b and _WORDS.search(a)]


def _worded(name: str) -> str:
    """Return a pattern of a name's words with whatever joins them in a file name."""
    return rf"(?<![^\W_]){'[ _.-]*'.join(map(re.escape, _WORDS.findall(name)))}(?![^\W\d_])"


def _swapped(text: str, swaps: list[tuple[str, str]]) -> str:
    """Return a name with each thing it tells put in the new trip's words, all in one go; a number keeps its noughts."""
    groups = "|".join(f"({pattern})" for pattern, _ in swaps)
    if not groups:
        return text

    def put(match: re.Match[str]) -> str:
        new = swaps[(match.lastindex or 1) - 1][1]
        return _styled(match[0], new)

    return re.sub(groups, put, text, flags=re.IGNORECASE)


def _styled(old: str, new: str) -> str:
    """Return what is put in, in the style of what it takes the place of: noughts before a number, joints, capitals."""
    if old.isdigit():
        return new.zfill(len(old)) if new.isdigit() else new
    words = _WORDS.findall(new)
    if len(words) < 1 or not any(letter.isalpha() for letter in old):
        return new
    joint = next((letter for letter in old if letter in " _.-"), "-" if old.islower() else "")
    joined = joint.join(words)
    return joined.lower() if old.islower() else joined.upper() if old.isupper() else joined
