"""What a logs folder tells, read and reckoned; of vessels none of whose logs has changed, as an earlier build knew it.

A log bears on the figures of its vessel's others, so a vessel's logs are read together or not at all.
"""

import hashlib
import time
from collections.abc import Iterable, Mapping
from datetime import datetime
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from logbook.model.figures import Reckoned
from logbook.model.names import fold_name
from logbook.model.past import Past
from logbook.model.problem import Problem
from logbook.model.trip import Trip, without_entries
from logbook.read.folder import (
    FleetFiles,
    Folder,
    across,
    find_logs,
    named_from,
    nearest_fleet_file,
    read_log,
    root_fleet_file,
    same_bytes,
    shown_name,
)
from logbook.reckon.trip import reckon_trips
from logbook.store.store import Store
from logbook.store.trips import Log, Told, Trips

_SETTLED_NS = 2_000_000_000
"""A file changed so short a time ago may change again without its time showing it."""


class Reading(Struct, frozen=True, kw_only=True):
    """All that a logs folder tells.

    Attributes:
        folder: What was read, with files named as the folder was; trips of unchanged vessels are not in it.
        shown: The same, with files named from the logs folder.
        trips: Every trip with its figures, by vessel, then by when they began.
    """

    folder: Folder
    shown: Folder
    trips: tuple[Reckoned, ...]


class _Logs:
    """The logs of a folder: as they are now, and as they were known."""

    def __init__(self, logs: Path, store: Store) -> None:
        self.found: list[Problem] = []
        self.paths = {shown_name(path): path for path in find_logs(logs, self.found)}
        self.fleets = FleetFiles()
        self.root = root_fleet_file(logs)
        self.fleet = self.fleets.read(self.root).fleet
        self.known = Trips(store)
        self.read: dict[str, tuple[Trip | None, tuple[Problem, ...]]] = {}
        self._digests: dict[Path | None, str] = {None: ""}
        self.now = {name: self._looked_at(name, path) for name, path in self.paths.items()}

    def _looked_at(self, name: str, path: Path) -> Log:
        """Return a log as it is now; opened only where the system can't tell that it is as it was."""
        own = nearest_fleet_file(path)
        self.fleets.read(own)  # what is wrong in it is told, whether its logs have changed or not
        by = f"{self._digest(self.root)}:{self._digest(own)}"
        before = self.known.logs.get(name)
        try:
            seen = path.stat()
            stamp = f"{by}:{seen.st_size}:{seen.st_mtime_ns}:{seen.st_ino}"
            if before is not None and before.stamp == stamp:
                return before
            key = hashlib.sha256(f"{by}:{name}\0".encode() + path.read_bytes()).digest()
        except OSError:
            return Log(stamp="", key=b"", vessel="")
        settled = time.time_ns() - seen.st_mtime_ns > _SETTLED_NS
        return Log(stamp=stamp if settled else "", key=key, vessel=before.vessel if before is not None else "")

    def _digest(self, fleet: Path | None) -> str:
        if fleet not in self._digests:
            try:
                self._digests[fleet] = hashlib.sha256(fleet.read_bytes()).hexdigest() if fleet is not None else ""
            except OSError:
                self._digests[fleet] = "unreadable"
        return self._digests[fleet]

    def take(self, names: Iterable[str]) -> None:
        """Read logs, and then all others of the vessels that they are or were of."""
        left = set(names) - self.read.keys()
        while left:
            for name in sorted(left):
                self.read[name] = read_log(self.paths[name], self.fleets)
            vessels = {fold_name(trip.vessel.name) for trip, _ in self.read.values() if trip is not None}
            vessels |= {self.known.logs[name].vessel for name in self.read if name in self.known.logs}
            left = {name for name, log in self.now.items() if log.vessel and log.vessel in vessels} - self.read.keys()

    @property
    def changed(self) -> set[str]:
        """Return the logs that are not as they were, and those of vessels one of whose logs is gone."""
        before = self.known.logs
        lost = {before[name].vessel for name in before.keys() - self.now.keys()}
        return {
            name
            for name, log in self.now.items()
            if not log.key or name not in before or before[name].key != log.key or (log.vessel and log.vessel in lost)
        }


def read_and_reckon(logs: Path, store: Store) -> Reading:
    """Return all that a logs folder tells.

    Args:
        logs: The folder, or one log.
        store: What earlier builds knew of it; brought up to date.

    Raises:
        OSError: The folder itself can't be listed.
    """
    of = _Logs(logs, store)
    of.take(of.changed)
    told = {name: of.known.told(name) for name in of.now.keys() - of.read.keys()}
    if None in told.values():
        of.take(of.now)
        told = {}
    before = {name: one for name, one in told.items() if one is not None}
    trips = sorted((trip for trip, _ in of.read.values() if trip is not None), key=_in_order)
    between = list(across(trips, lambda one, other: same_bytes(of.paths[one], of.paths[other])))
    problems = [*of.found, *of.fleets.problems, *between]
    problems += [problem for _, own in of.read.values() for problem in own]
    problems += [problem for one in before.values() for problem in one.problems]
    unread = [name for name, (trip, _) in of.read.items() if trip is None]
    unread += [name for name, one in before.items() if one.trip is None]
    folder = Folder(
        fleet=of.fleet,
        trips=tuple(trips),
        problems=tuple(sorted(set(problems))),
        logs=len(of.now),
        unread=tuple(sorted(unread)),
    )
    shown = named_from(folder, logs)
    names = {plain.file: trip.file for plain, trip in zip(shown.trips, trips, strict=True)}
    reckoned = {names[one.log.file]: _bare(one) for one in reckon_trips(shown.trips, shown.fleet, shown.problems)}
    _keep(of, reckoned, between)
    every = [*reckoned.values(), *(one.trip for one in before.values() if one.trip is not None)]
    return Reading(folder=folder, shown=shown, trips=tuple(sorted(every, key=lambda one: _in_order(one.log))))


def _in_order(trip: Trip) -> tuple[str, datetime, str]:
    return fold_name(trip.vessel.name), trip.begins, trip.file


def _bare(trip: Reckoned) -> Reckoned:
    """Return a trip without what only reckoning needed: the species' entries, and the vessel's earlier trips."""
    return replace(trip, log=without_entries(trip.log), neighbours=replace(trip.neighbours, past=Past()))


def _keep(of: _Logs, reckoned: Mapping[str, Reckoned], between: Iterable[Problem]) -> None:
    """Keep what was read for the next build."""
    of.known.forget(of.known.logs.keys() - of.now.keys())
    for name, (trip, problems) in of.read.items():
        own = tuple(problem for problem in between if problem.place.file == name)
        vessel = fold_name(trip.vessel.name) if trip is not None else ""
        told = Told(problems=(*problems, *own), trip=reckoned.get(name))
        of.known.keep(name, replace(of.now[name], vessel=vessel), told)
    for name in of.now.keys() - of.read.keys():
        if of.now[name].stamp != of.known.logs[name].stamp:
            of.known.stamp(name, of.now[name])


class Head(Struct, frozen=True, kw_only=True):
    id: str
    last_word: datetime
    caught: tuple[str, ...]
    kept: tuple[str, ...]


class Adapter:
    def __init__(self, reading):
        self.folder, self.shown = reading.folder, reading.shown
        self._t = {t.log.file: t for t in reading.trips}
        self.names = tuple(self._t)

    def head(self, name):
        t = self._t[name]
        c = t.figures.catch
        return Head(
            id=t.figures.trip.id,
            last_word=t.figures.trip.last_word,
            caught=tuple(c),
            kept=tuple(n for n, s in c.items() if s.kept_kg),
        )

    def key(self, name):
        return hashlib.sha256(self.content(name)).digest()

    def content(self, name):
        from logbook.model.packed import packed

        return packed(self._t[name])

    def trip(self, name):
        return self._t[name]


_old = read_and_reckon


def read_and_reckon(logs, store, last_good=(), hands=None):
    return Adapter(_old(logs, store))
