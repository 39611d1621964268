"""The logs of a folder as they are now, beside what is known of them; what has changed is read and kept."""

import os
import time
from collections.abc import Collection, Iterator
from functools import partial
from pathlib import Path

from msgspec.structs import replace

from logbook.known.beside import beside_each, head_beside, key_of
from logbook.known.digest import digest
from logbook.known.look import FleetFile, Look, Read, read_one
from logbook.model.hands import Hands
from logbook.model.packed import packed
from logbook.model.problem import Problem
from logbook.model.seen import SETTLED_NS
from logbook.read.folder import FleetFiles, logs_below, nearest_fleet_file, root_fleet_file, shown_name
from logbook.store.store import Store, StoreError
from logbook.store.trips import Log, Trips, Wrong


class Logs:
    """The logs of a folder."""

    def __init__(self, logs: Path, store: Store) -> None:
        """Read the folder's fleet file, and look up which logs are known.

        Args:
            logs: The folder, or one log.
            store: What earlier builds knew of it.
        """
        self.known = Trips(store)
        self.found: list[Problem] = []
        """What is wrong with files and folders that are no logs, by their names as given."""
        self.above = shown_name(logs / "x").removesuffix("x") if logs.is_dir() else ""
        """What stands before the names of all logs, as they were given."""
        self._files = FleetFiles()
        self._root = root_fleet_file(logs)
        self.fleet = self._files.read(self._root).fleet
        self._logs = logs
        self._fleets: list[FleetFile] = []
        self._by_folder: dict[str, int] = {}
        self._by_file: dict[Path | None, int] = {}
        self._touched: set[str] = set()

    def bring_up_to_date(self, hands: Hands) -> None:
        """Read the logs that are not as they were, and find what bears on the trips of their vessels.

        Raises:
            OSError: The folder itself can't be listed.
        """
        looks = list(self._looks())
        for look, read in zip(looks, hands.map(partial(read_one, tuple(self._fleets)), looks), strict=True):
            self._take(look, read)
        self.found += self._files.problems
        names: dict[str, list[str]] = {}
        for log in self.known.logs.values():
            names.setdefault(log.vessel, []).append(log.log)
        names.pop("", None)
        for vessel in sorted({*names, *self.known.vessels}):
            own = sorted(names.get(vessel, ()))
            every = digest(*map(os.fsencode, own)) if own else b""
            if vessel in self._touched or self.known.vessels.get(vessel) != every:
                self._place(vessel, own)
                self.known.keep_vessel(vessel, every)

    def _looks(self) -> Iterator[Look]:
        """Give the logs that are not, or may not be, as they were; those that are gone are forgotten."""
        now = set()
        for within, path, seen in self._there():
            name = shown_name(Path(within)) if not within.isprintable() else within
            now.add(name)
            fleet = self._fleet_of(within)
            stamp = ""
            if seen is not None:
                stamp = f"{self._fleets[fleet].by}:{seen.st_size}:{seen.st_mtime_ns}:{seen.st_ino}"
            before = self.known.logs.get(name)
            if before is None or before.stamp != stamp or not stamp:
                settled = seen is not None and time.time_ns() - seen.st_mtime_ns > SETTLED_NS
                known = before.content if before is not None else b""
                yield Look(path=path, name=name, fleet=fleet, stamp=stamp if settled else "", known=known)
        for name in self.known.logs.keys() - now:
            self._forget(name)

    def _there(self) -> Iterator[tuple[str, str, os.stat_result | None]]:
        """Give each log's name within the folder, where it is, and what the system says of it."""
        where = str(self._logs)
        if self._logs.is_dir():
            for within, seen in logs_below(self._logs, self.found):
                yield within, f"{where}/{within}", seen
        else:
            try:
                yield where, where, self._logs.stat()
            except OSError:
                yield where, where, None

    def _fleet_of(self, within: str) -> int:
        """Return which fleet file a log is read by: the nearest, looked for once a folder."""
        folder = within.rpartition("/")[0]
        if folder not in self._by_folder:
            own = nearest_fleet_file(self._logs / within if self._logs.is_dir() else self._logs)
            if own not in self._by_file:
                self._by_file[own] = len(self._fleets)
                self._fleets.append(self._fleet_file(own))
            self._by_folder[folder] = self._by_file[own]
        return self._by_folder[folder]

    def _fleet_file(self, own: Path | None) -> FleetFile:
        data = self._files.data(own)  # what is wrong in it is told, whether its logs have changed or not
        both = (self._files.data(self._root), data)
        by = digest(*(b"" if one is None else b":" + one for one in both)).hex()[:16]
        return FleetFile(data=data, shown=shown_name(own) if own is not None else "", by=by)

    def _take(self, look: Look, read: Read | None) -> None:
        """Keep what was read in a log; of one that is as it was, what the system says of it."""
        if read is None:
            self.known.keep(replace(self.known.logs[look.name], stamp=look.stamp))
            return
        self._forget(look.name)
        log = Log(log=look.name, stamp=look.stamp if read.content else "", content=read.content, vessel=read.vessel)
        self.known.keep_wrong(look.name, Wrong(own=read.problems))
        if read.part is not None:
            self._touched.add(read.vessel)
            log = replace(log, begins=read.part.placed.begins.timestamp())
            self.known.keep_trip(look.name, read.vessel, read.trip, read.rested, read.part)
        self.known.keep(log)

    def _forget(self, name: str) -> None:
        if name in self.known.logs:
            self._touched.add(self.known.logs[name].vessel)
            self.known.forget(name)

    def _place(self, vessel: str, names: Collection[str]) -> None:
        """Find what bears on each trip of a vessel."""
        parts = self.known.parts(vessel)
        if parts.keys() != set(names):
            raise StoreError(f"not all is kept of {vessel}")
        fleet = fleet_digest(self)
        for part, near in beside_each(parts.values()):
            log = self.known.logs[part.placed.file]
            key = key_of(part, near, parts, fleet)
            if log.key == key:
                continue
            self.known.keep_beside(log.log, near)
            self.known.keep(replace(log, key=key, head=head_beside(part, near)))
            wrong = self.known.wrong(log.log)
            if wrong.clashes != near.clashes:
                self.known.keep_wrong(log.log, replace(wrong, clashes=near.clashes))


def fleet_digest(logs: Logs) -> bytes:
    """Return a digest of the fleet but for the name of its file."""
    return digest(packed(replace(logs.fleet, file="")))
