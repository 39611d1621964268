"""The logs folder: finds the logs and fleet files in it, opens them, and reads them all.

The only module of this stage that touches the disk. A file that can't be opened is a problem like any other.
"""

import os
import stat
from collections.abc import Iterator, Sequence
from datetime import datetime
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from logbook.model.fleet import Fleet
from logbook.model.names import fold_name
from logbook.model.problem import Place, Problem, Severity
from logbook.model.trip import Trip
from logbook.read.fleet import read_fleet
from logbook.read.trip import Fleetwide, prepare, read_trip

CODES = frozenset({"file-unreadable", "not-followed", "log-renamed", "logs-overlap", "same-trip"})

FLEET_FILE = "fleet.yaml"
_ENDINGS = (".yaml", ".yml")
_LEFT_BEHIND = ("~", ".bak", ".tmp", ".swp")


class Folder(Struct, frozen=True, kw_only=True):
    """All that was read below a folder.

    Attributes:
        fleet: Of the fleet file at its root, or what stands for it.
        trips: Every trip that could be placed in time, by vessel, then by when it began, then by file.
        problems: All that is wrong, in the order of files and lines.
        logs: How many logs there are, readable or not.
        unread: Names of logs of which nothing could be read as a trip.
    """

    fleet: Fleet
    trips: tuple[Trip, ...]
    problems: tuple[Problem, ...]
    logs: int
    unread: tuple[str, ...]


class FleetFiles:
    """The fleet files of the logs being read, each read once."""

    def __init__(self) -> None:
        """Begin with none read."""
        self._read: dict[Path | None, Fleetwide] = {None: prepare()}
        self.problems: list[Problem] = []

    def of(self, log: Path) -> Fleetwide:
        """Return the fleet of a log: of the nearest fleet file in its folder or above."""
        return self.read(nearest_fleet_file(log))

    def read(self, path: Path | None) -> Fleetwide:
        """Return the fleet of a fleet file; of none, one that any vessel's name will do for."""
        if path not in self._read:
            shown = shown_name(path) if path is not None else ""
            data, problem = open_file(path, shown) if path is not None else (None, None)
            if data is None:
                self.problems += [problem] if problem is not None else []
                self._read[path] = self._read[None]
            else:
                fleet, problems = read_fleet(data, shown)
                self.problems += problems
                self._read[path] = prepare(fleet)
        return self._read[path]


def nearest_fleet_file(log: Path) -> Path | None:
    """Return the fleet file in a log's folder or the nearest folder above, or None."""
    start = Path(os.path.abspath(log))  # noqa: PTH100 - resolve() would follow links
    for folder in start.parents:
        candidate = folder / FLEET_FILE
        if candidate.is_file():
            return _as_given(candidate, log)
    return None


def _as_given(found: Path, log: Path) -> Path:
    """Return a fleet file's path in the form the log's was given in, where it lies below the working folder."""
    if log.is_absolute():
        return found
    return Path(os.path.relpath(found))


def shown_name(path: Path) -> str:
    """Return a path as messages show it: with letters that can't be printed, and line breaks, escaped."""
    text = os.fsencode(path).decode("utf-8", "replace")
    return "".join(letter if letter.isprintable() else letter.encode("unicode_escape").decode() for letter in text)


def read_log(path: Path, fleets: FleetFiles) -> tuple[Trip | None, tuple[Problem, ...]]:
    """Return the trip of one log and what is wrong in it; the fleet file's problems stay with `fleets`."""
    shown = shown_name(path)
    wide = fleets.of(path)
    data, problem = open_file(path, shown)
    if data is None:
        return None, (problem,) if problem is not None else ()
    return read_trip(data, shown, wide)


def read_folder(path: Path) -> Folder:
    """Return everything below a logs folder, or the one log that the path names.

    Raises:
        OSError: The folder itself can't be listed.
    """
    fleets = FleetFiles()
    root = fleets.read(_root_fleet_file(path))
    found: list[Problem] = []
    logs = list(find_logs(path, found))
    trips: list[Trip] = []
    unread: list[str] = []
    for log in logs:
        trip, problems = read_log(log, fleets)
        found += problems
        if trip is None:
            unread.append(shown_name(log))
        else:
            trips.append(trip)
    trips.sort(key=lambda trip: (fold_name(trip.vessel.name), trip.begins, trip.file))
    found += fleets.problems
    found += across(trips)
    return Folder(
        fleet=root.fleet,
        trips=tuple(trips),
        problems=tuple(sorted(set(found))),
        logs=len(logs),
        unread=tuple(unread),
    )


def named_from(folder: Folder, path: Path) -> Folder:
    """Return what was read with its files named from the logs folder, so that pages tell nothing of where that stands.

    Args:
        folder: What was read.
        path: The logs folder, as it was given.
    """
    above = f"{shown_name(path)}/"

    def plain(problem: Problem) -> Problem:
        place = replace(problem.place, file=problem.place.file.removeprefix(above))
        return replace(problem, place=place, message=problem.message.replace(above, ""))

    return replace(
        folder,
        trips=tuple(replace(trip, file=trip.file.removeprefix(above)) for trip in folder.trips),
        problems=tuple(sorted(plain(problem) for problem in folder.problems)),
        unread=tuple(name.removeprefix(above) for name in folder.unread),
    )


def check_fleet_file(path: Path) -> tuple[Problem, ...]:
    """Return what is wrong in one fleet file."""
    fleets = FleetFiles()
    fleets.read(path)
    return tuple(sorted(fleets.problems))


def _root_fleet_file(path: Path) -> Path | None:
    if path.is_dir():
        return nearest_fleet_file(path / FLEET_FILE)
    return nearest_fleet_file(path)


def find_logs(path: Path, found: list[Problem]) -> Iterator[Path]:
    """Give the logs below a folder in order of their names; what looks like a log but is none is reported.

    Raises:
        OSError: The folder itself can't be listed.
    """
    if not path.is_dir():
        yield path
        return
    yield from _below(path, sorted(entry.name for entry in path.iterdir()), found)


def _below(folder: Path, names: Sequence[str], found: list[Problem]) -> Iterator[Path]:
    """Give the logs among the names of a folder, and below its folders; links are never followed."""
    for name in names:
        path = folder / name
        if name.startswith((".", "~$")) or name.casefold().endswith(_LEFT_BEHIND):
            continue
        try:
            mode = path.lstat().st_mode
        except OSError as fault:
            found.append(_unreadable(path, fault))
            continue
        like_log = name.casefold().endswith(_ENDINGS)
        if stat.S_ISDIR(mode):
            try:
                below = sorted(entry.name for entry in path.iterdir())
            except OSError as fault:
                found.append(_unreadable(path, fault))
                continue
            yield from _below(path, below, found)
        elif like_log and stat.S_ISREG(mode):
            if name.casefold() != FLEET_FILE:
                yield path
        elif like_log:
            found.append(
                _about(
                    path,
                    "not-followed",
                    "this is a link or a device, not a log; it is not read",
                    "put the log itself here",
                )
            )
        elif name.casefold().endswith((".yaml.txt", ".yml.txt")):
            found.append(
                _about(
                    path,
                    "log-renamed",
                    "this looks like a log, but its name ends in .txt, so it is not read",
                    f"rename it to {name[:-4]}",
                )
            )


def open_file(path: Path, shown: str) -> tuple[bytes | None, Problem | None]:
    """Return the bytes of a file, or what keeps it from being read."""
    try:
        return path.read_bytes(), None
    except OSError as fault:
        return None, _unreadable(path, fault, shown)


def _unreadable(path: Path, fault: OSError, shown: str | None = None) -> Problem:
    why = (fault.strerror or "it can't be opened").lower()
    place = Place(file=shown or shown_name(path), line=1, column=1)
    return Problem(
        place=place, severity=Severity.ERROR, code="file-unreadable", message=f"this file can't be read: {why}"
    )


def _about(path: Path, code: str, message: str, hint: str) -> Problem:
    place = Place(file=shown_name(path), line=1, column=1)
    return Problem(place=place, severity=Severity.WARNING, code=code, message=message, hint=hint)


def across(trips: Sequence[Trip]) -> Iterator[Problem]:
    """Give what is wrong between the logs of one vessel: the same trip twice, or two trips at once.

    Args:
        trips: By vessel, then by when they began.
    """
    last: Trip | None = None
    for trip in trips:
        if last is not None and fold_name(last.vessel.name) == fold_name(trip.vessel.name):
            if trip.sailed is not None and trip.sailed == last.sailed:
                yield _between(trip, last, "same-trip", "this is the same trip as", "keep one of the two")
            elif _ends(last) > trip.begins:
                yield _between(
                    trip, last, "logs-overlap", "this trip begins before the end of", "see the dates of both"
                )
        last = trip


def _ends(trip: Trip) -> datetime:
    """Return the last moment that a trip was certainly under way or landing."""
    moments = [moment for tow in trip.tows for moment in (tow.shot, tow.hauled) if moment is not None]
    moments += [landing.docked for landing in trip.landings if landing.docked is not None]
    return max(moments, default=trip.begins)


def _between(trip: Trip, other: Trip, code: str, message: str, hint: str) -> Problem:
    place = Place(file=trip.file, line=1, column=1)
    return Problem(place=place, severity=Severity.WARNING, code=code, message=f"{message} {other.file}", hint=hint)
