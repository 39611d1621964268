"""Whether anything has changed at all since the last build: then nothing is read, and little of the program is even loaded."""

import hashlib
import os
import time
from collections.abc import Sequence
from pathlib import Path

from msgspec import Struct

from logbook.model.built import Built, Published
from logbook.model.fleet import FLEET_FILE
from logbook.model.packed import packed
from logbook.model.problem import Problem
from logbook.model.seen import SETTLED_NS
from logbook.publish.standing import stands
from logbook.store.kept import record_of, sealed, unsealed
from logbook.store.seen import StoredSeen
from logbook.store.store import Store, name_of

SCHEMA = """
CREATE TABLE IF NOT EXISTS built(places TEXT PRIMARY KEY, looks BLOB, told BLOB);
"""


class _Told(Struct, frozen=True, kw_only=True):
    """What the last build told, but for where the archives stand; and the digest of each one's list, since another may stand there by now."""

    logs: int
    trips: int
    last_good: int
    problems: tuple[Problem, ...]
    files: tuple[int, ...]
    lists: tuple[str, ...]


class Looks(Struct, frozen=True, kw_only=True):
    """What the system says of a folder of logs without any of them being opened.

    Attributes:
        digest: Of every name, size and time in it; another for any change.
        settled: Whether no change can have come so late that another might not show.
    """

    digest: bytes
    settled: bool


def look_at(logs: Path) -> Looks | None:
    """Return what a folder of logs, or one log, looks like; None where that can't be told."""
    seen, now = _Seen(), time.time_ns()
    try:
        if logs.is_dir():
            seen.all_below(str(logs))
        else:
            seen.one("", os.lstat(logs))
        for folder in Path(os.path.abspath(logs)).parents:  # noqa: PTH100 - resolve() would follow links
            above = folder / FLEET_FILE
            if os.path.lexists(above):
                seen.one(str(above), os.lstat(above))
    except OSError:
        return None
    return Looks(digest=seen.digest.digest(), settled=now - seen.latest_ns > SETTLED_NS)


class _Seen:
    """Gathers what the system says of files."""

    def __init__(self) -> None:
        self.digest = hashlib.sha256()
        self.latest_ns = 0

    def all_below(self, folder: str) -> None:
        """Look at all that is in a folder, and in the folders in it; links are not followed."""
        with os.scandir(folder) as entries:
            found = sorted(entries, key=lambda entry: entry.name)
        self.digest.update(f"{len(found)}\0".encode())
        for entry in found:
            self.one(entry.name, entry.stat(follow_symlinks=False))
            if entry.is_dir(follow_symlinks=False):
                self.all_below(entry.path)

    def one(self, name: str, found: os.stat_result) -> None:
        """Look at one file or folder."""
        told = f"{found.st_mode} {found.st_ino} {found.st_size} {found.st_mtime_ns} {found.st_ctime_ns}"
        self.digest.update(os.fsencode(name) + f"\0{told}\0".encode())
        self.latest_ns = max(self.latest_ns, found.st_mtime_ns, found.st_ctime_ns)


class LastBuild:
    """What the last build of the same archives from the same folder of logs told."""

    def __init__(self, store: Store, logs: Path, places: Sequence[tuple[str, Path]]) -> None:
        """Begin with where the logs are, and each edition with the folder that it goes to."""
        store.tables(SCHEMA)
        self._store, self._places = store, places
        as_given = os.fsencode(logs).decode("utf-8", "backslashreplace")  # problems are told by names that begin so
        self._name = "\0".join((as_given, *(f"{name}\0{name_of(place)}" for name, place in places)))

    def again(self, looks: Looks | None) -> Built | None:
        """Return what it told where logs and archives are just as it met and left them, so that there is nothing to do."""
        if looks is None:
            return None
        rows = self._store.rows("SELECT told FROM built WHERE places = ? AND looks = ?", self._name, looks.digest)
        for (kept,) in rows:
            told = record_of(unsealed(kept), _Told)
            if self._lists() == told.lists and all(stands(place, self._seen(place)) for _, place in self._places):
                done = (Published(files=files, written=0, removed=0) for files in told.files)
                return Built(
                    logs=told.logs,
                    trips=told.trips,
                    last_good=told.last_good,
                    problems=told.problems,
                    published=tuple((place, one) for (_, place), one in zip(self._places, done, strict=True)),
                )
        return None

    def _seen(self, place: Path) -> StoredSeen:
        return StoredSeen(self._store, place)

    def _lists(self) -> tuple[str, ...]:
        """Return the digests of the archives' lists, as they were left by whatever build was the last of each."""
        left = (self._seen(place).left() for _, place in self._places)
        return tuple(one.listed if one is not None else "" for one in left)

    def keep(self, looks: Looks | None, built: Built) -> None:
        """Remember what a build told that began when the logs looked so; not where one of them may yet change unnoticed."""
        if looks is None or not looks.settled:
            return
        told = _Told(
            logs=built.logs,
            trips=built.trips,
            last_good=built.last_good,
            problems=built.problems,
            files=tuple(done.files for _, done in built.published),
            lists=self._lists(),
        )
        self._store.change(
            "INSERT OR REPLACE INTO built VALUES (?, ?, ?)", self._name, looks.digest, sealed(packed(told))
        )
