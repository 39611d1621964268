"""The logs folder: finds the logs and fleet files in it, opens them, and reads them all.

The only module of this stage that touches the disk. A file that can't be opened is a problem like any other.
"""

import os
import stat
from collections.abc import Callable, Iterable, Iterator
from functools import lru_cache
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from logbook.model.fleet import FLEET_FILE, Fleet
from logbook.model.names import fold_name
from logbook.model.placed import Clash, Placed, placed
from logbook.model.problem import Place, Problem, Severity
from logbook.model.trip import Trip
from logbook.read.fleet import read_fleet
from logbook.read.source import MAX_BYTES
from logbook.read.trip import Fleetwide, prepare, read_trip

CODES = frozenset({"file-unreadable", "not-followed", "log-renamed", "logs-overlap", "same-trip"})

_FLEET_NAMES = (FLEET_FILE, "fleet.yml")
_ENDINGS = (".yaml", ".yml")
_LEFT_BEHIND = ("~", ".bak", ".tmp", ".swp")


class Told(Struct, frozen=True, kw_only=True):
    """What a folder told, but for its trips.

    Attributes:
        fleet: Of the fleet file at its root, or what stands for it.
        problems: All that is wrong, in the order of files and lines.
        logs: How many logs there are, readable or not.
        unread: Names of logs of which nothing could be read as a trip.
    """

    fleet: Fleet
    problems: tuple[Problem, ...]
    logs: int
    unread: tuple[str, ...]


class Folder(Told, frozen=True, kw_only=True):
    """All that was read below a folder.

    Attributes:
        trips: Every trip that could be placed in time, by vessel, then by when it began, then by file.
    """

    trips: tuple[Trip, ...]


class FleetFiles:
    """The fleet files of the logs being read, each read once."""

    def __init__(self) -> None:
        """Begin with none read."""
        self._read: dict[Path | None, Fleetwide] = {None: fleet_in(None, "")[0]}
        self._data: dict[Path | None, bytes | None] = {}
        self.problems: list[Problem] = []

    def of(self, log: Path) -> Fleetwide:
        """Return the fleet of a log: of the nearest fleet file in its folder or above."""
        return self.read(nearest_fleet_file(log))

    def read(self, path: Path | None) -> Fleetwide:
        """Return the fleet of a fleet file; of none, one that any vessel's name will do for."""
        if path is not None and path not in self._read:
            shown = shown_name(path)
            self._data[path], problem = open_file(path, shown)
            self._read[path], problems = fleet_in(self._data[path], shown)
            self.problems += [problem] if problem is not None else []
            self.problems += problems
        return self._read[path]

    def data(self, path: Path | None) -> bytes | None:
        """Return what stands in a fleet file; None where nothing can be read of it."""
        self.read(path)
        return self._data.get(path)


@lru_cache(maxsize=8)
def fleet_in(data: bytes | None, shown: str) -> tuple[Fleetwide, tuple[Problem, ...]]:
    """Return the fleet of a fleet file's bytes, ready to read logs by, and what is wrong in it; without any, what stands for it."""
    if data is None:
        return prepare(), ()
    fleet, problems = read_fleet(data, shown)
    return prepare(fleet), problems


def nearest_fleet_file(log: Path) -> Path | None:
    """Return the fleet file in a log's folder or the nearest folder above, or None; a link is none."""
    start = Path(os.path.abspath(log))  # noqa: PTH100 - resolve() would follow links
    for folder in start.parents:
        candidate = folder / FLEET_FILE
        if _kind(candidate) == stat.S_IFREG:
            return _as_given(candidate, log)
    return None


def _kind(path: Path, *, follow: bool = False) -> int | None:
    """Return what kind of thing a path is, as `stat` has it; None where there is nothing, or nothing that can be seen."""
    try:
        return stat.S_IFMT(path.stat(follow_symlinks=follow).st_mode)
    except (OSError, ValueError):
        return None


def _as_given(found: Path, log: Path) -> Path:
    """Return a fleet file's path in the form the log's was given in, where it lies below the working folder."""
    if log.is_absolute():
        return found
    return Path(os.path.relpath(found))


def shown_name(path: Path) -> str:
    """Return a path as messages show it: with letters that can't be printed, and line breaks, escaped."""
    text = os.fsencode(path).decode("utf-8", "backslashreplace")
    if text.isprintable():
        return text
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
    root = fleets.read(root_fleet_file(path))
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
    paths = {shown_name(log): log for log in logs}
    clashes = across(map(placed, trips), lambda one, other: same_bytes(paths[one], paths[other]))
    found += map(clash_problem, clashes)
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
    return replace(
        folder,
        trips=tuple(replace(trip, file=trip.file.removeprefix(above)) for trip in folder.trips),
        problems=tuple(sorted(plainly(problem, above) for problem in folder.problems)),
        unread=tuple(name.removeprefix(above) for name in folder.unread),
    )


def plainly(problem: Problem, above: str) -> Problem:
    """Return a problem that does not tell what stands before the names of all logs."""
    place = replace(problem.place, file=problem.place.file.removeprefix(above))
    return replace(problem, place=place, message=problem.message.replace(above, ""))


def named_below(problem: Problem, above: str) -> Problem:
    """Return a problem with what stands before the names of all logs put before its file's."""
    place = problem.place
    return replace(problem, place=Place(file=f"{above}{place.file}", line=place.line, column=place.column))


def check_fleet_file(path: Path) -> tuple[Problem, ...]:
    """Return what is wrong in one fleet file."""
    fleets = FleetFiles()
    fleets.read(path)
    return tuple(sorted(fleets.problems))


def root_fleet_file(path: Path) -> Path | None:
    """Return the fleet file of a logs folder, or of one log."""
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
    yield from (path / name for name, _ in logs_below(path, found))


def logs_below(folder: Path, found: list[Problem]) -> Iterator[tuple[str, os.stat_result]]:
    """Give the logs below a folder by their names within it, in order, and what the system says of each; links are never followed.

    What looks like a log but is none is reported.

    Raises:
        OSError: The folder itself can't be listed.
    """
    left = [(entry.name, entry) for entry in _last_first(folder)]
    while left:
        within, entry = left.pop()
        name = entry.name.casefold()
        if name.startswith((".", "~$")) or name.endswith(_LEFT_BEHIND):
            continue
        try:
            seen = entry.stat(follow_symlinks=False)
            kind = stat.S_IFMT(seen.st_mode)
            like_log = name.endswith(_ENDINGS)
            if kind == stat.S_IFDIR and not like_log and not _unsayable(entry.name):
                left += [(f"{within}/{below.name}", below) for below in _last_first(entry)]
                continue
        except OSError as fault:
            found.append(_unreadable(folder / within, fault))
            continue
        if like_log and kind == stat.S_IFREG and name not in _FLEET_NAMES and not _unsayable(entry.name):
            yield within, seen  # a log like any other: of ten thousand no path is made
            continue
        problem = _no_log(Path(folder, within), kind, like_log=like_log)
        if problem is not None:
            found.append(problem)
        elif like_log and name != FLEET_FILE:
            yield within, seen


def _last_first(folder: Path | os.DirEntry[str]) -> list[os.DirEntry[str]]:
    with os.scandir(folder) as entries:
        return sorted(entries, key=lambda entry: entry.name, reverse=True)


def _no_log(path: Path, kind: int, *, like_log: bool) -> Problem | None:
    """Return why what looks like a log, or like a folder of logs, is none; None where it is one, or nothing like it."""
    if like_log or kind == stat.S_IFDIR:
        why = _unsayable(path.name)
        if why:
            return _unreadable(path, OSError(0, f"its name has {why}"), hint="rename it")
    if like_log and kind != stat.S_IFREG:
        if kind == stat.S_IFDIR:
            message = "this is a folder named like a log; what is in it is not read"
            return _about(path, "not-followed", message, "give the folder a name without the ending")
        message = "this is a link or a device, not a log; it is not read"
        return _about(path, "not-followed", message, "put the log itself here")
    if kind == stat.S_IFLNK and _kind(path, follow=True) == stat.S_IFDIR:
        message = "this is a link to a folder; what is in it is not read"
        return _about(path, "not-followed", message, "put the folder itself here")
    return _misnamed(path) if kind == stat.S_IFREG else None


def _misnamed(path: Path) -> Problem | None:
    """Return what is wrong with the name of a file that looks like a log or the fleet file; None where nothing is."""
    name = path.name.casefold()
    if name.endswith((".yaml.txt", ".yml.txt")):
        message = "this looks like a log, but its name ends in .txt, so it is not read"
        return _about(path, "log-renamed", message, f"rename it to {shown_name(Path(path.name[:-4]))}")
    if name in _FLEET_NAMES and _kind(path.with_name(FLEET_FILE)) is None:
        message = f"this looks like the fleet file, but is not named {FLEET_FILE}, so it is not read"
        return _about(path, "log-renamed", message, f"rename it to {FLEET_FILE}")
    return None


def _unsayable(name: str) -> str:
    """Return what a name holds that no message and no page can show; empty where it holds nothing of the kind."""
    if name.isprintable():
        return ""
    if "\n" in name or "\r" in name:
        return "a line break in it"
    return "letters in it that are no UTF-8" if any("\ud800" <= sign <= "\udfff" for sign in name) else ""


def open_file(path: Path, shown: str) -> tuple[bytes | None, Problem | None]:
    """Return the bytes of a file, no more of them than it takes to see that they are too many; or why not."""
    try:
        with open(path, "rb", opener=_at_once) as file:
            if stat.S_ISREG(os.fstat(file.fileno()).st_mode):
                return file.read(MAX_BYTES + 1), None
            why = OSError(0, "it is no file but a device, a pipe or the like")
    except OSError as fault:
        why = fault
    return None, _unreadable(path, why, shown)


def _at_once(path: str, flags: int) -> int:
    """Open a file without waiting, as a pipe would have us wait for whoever writes to it."""
    return os.open(path, flags | getattr(os, "O_NONBLOCK", 0))


def _unreadable(path: Path, fault: OSError, shown: str | None = None, hint: str = "") -> Problem:
    why = fault.strerror or "it can't be opened"
    return Problem(
        place=Place(file=shown or shown_name(path), line=1, column=1),
        severity=Severity.ERROR,
        code="file-unreadable",
        message=f"this file can't be read: {why[0].lower()}{why[1:]}",
        hint=hint,
    )


def _about(path: Path, code: str, message: str, hint: str) -> Problem:
    place = Place(file=shown_name(path), line=1, column=1)
    return Problem(place=place, severity=Severity.WARNING, code=code, message=message, hint=hint)


def same_bytes(one: Path, other: Path) -> bool:
    """Tell whether two files hold the same."""
    data, _ = open_file(one, "")
    return data == open_file(other, "")[0]


def across(trips: Iterable[Placed], alike: Callable[[str, str], bool]) -> Iterator[Clash]:
    """Give what is wrong between the logs of one vessel: the same trip twice, or two trips at once.

    A copy is told at the copy alone. Of two logs that differ either may be the one to keep, so both are told.

    Args:
        trips: By vessel, then by when they began.
        alike: Tells of two of their files whether they hold the same.
    """
    last: Placed | None = None
    for trip in trips:
        if last is not None and fold_name(last.vessel) == fold_name(trip.vessel):
            if trip.sailed is not None and trip.sailed == last.sailed:
                yield Clash(file=trip.file, other=last.file, code="same-trip")
                if not alike(trip.file, last.file):
                    yield Clash(file=last.file, other=trip.file, code="same-trip")
            elif last.ends > trip.begins:
                yield Clash(file=trip.file, other=last.file, code="logs-overlap")
        last = trip


def clash_problem(clash: Clash, above: str = "") -> Problem:
    """Return what is told of a clash; `above` is what stands before the names of both files."""
    same = clash.code == "same-trip"
    message = "this is the same trip as" if same else "this trip begins before the end of"
    return Problem(
        place=Place(file=f"{above}{clash.file}", line=1, column=1),
        severity=Severity.WARNING,
        code=clash.code,
        message=f"{message} {above}{clash.other}",
        hint="keep one of the two" if same else "see the dates of both",
    )
