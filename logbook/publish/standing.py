"""Which files of an archive stand whole: by what is remembered of the last build, and by their bytes where that does not tell.

A folder has a time of its own, which changes when anything in it comes, goes or is renamed. Where it is as the last build left
it, the files in it stand as listed; where not, each is looked at; of an archive that is not large each is looked at always, so
that also what was written over in its place is found.
"""

import hashlib
import os
import stat
from collections.abc import Collection, Mapping
from pathlib import Path
from time import time_ns

from logbook.model.seen import SETTLED_NS, UNSURE, Left, Seen, Stamp, settled
from logbook.publish.manifest import MANIFEST, Manifest, is_inside
from logbook.publish.staging import STAGING, there

FEW = 10_000
"""So many files are looked at one by one, which takes some hundredths of a second."""
_BACK_NS = 5_000_000_000
"""More than twice what any disk rounds its times to: two seconds, on memory sticks."""


class StandingFiles:
    """The files of an archive, as a build meets them."""

    def __init__(self, folder: Path, seen: Seen, listed: Manifest, *, every: bool = False) -> None:
        """Look up what is remembered.

        Args:
            folder: Where the archive stands.
            seen: Remembers how the last build left it.
            listed: The archive's list.
            every: Whether the bytes of each file are looked at, whatever is remembered.
        """
        self._folder, self._seen, self._listed, self._every = folder, seen, listed, every
        left = seen.left()
        self._before = left.folders if left is not None and left.listed == listed.digest else {}
        self._each = every or len(listed.files) <= FEW
        self._times: dict[str, int | None] = {}
        self._closely: dict[str, bool] = {}
        self._remembered: dict[str, Mapping[str, Stamp]] = {}
        self.found: dict[str, Stamp] = {}

    def whole(self, path: str, digest: str) -> bool:
        """Tell whether a file that pages may lead to stands there with bytes of that digest."""
        within = path.rpartition("/")[0]
        closely = self._closely.get(within)
        if closely is None:
            closely = self._enter(within)
        return self._looked_at(path, within, digest) if closely else self._listed.files.get(path) == digest

    def _enter(self, within: str) -> bool:
        """Tell whether the files of a folder are to be looked at one by one."""
        self._times[within] = now = time_of(self._folder / within)
        unlinked = bool(self._listed.unlinked)
        self._closely[within] = closely = self._each or unlinked or not _is(now, self._before.get(within))
        if closely:
            self._remembered[within] = self._seen.stamps(within)
        return closely

    def _looked_at(self, path: str, within: str, digest: str) -> bool:
        if path in self._listed.unlinked or not is_inside(path):
            return False
        before = self._remembered[within].get(path)
        stamp = stamp_of(f"{self._folder}/{path}", digest, None if self._every else before)
        if stamp is not None and stamp != before:
            self.found[path] = stamp
        return stamp is not None

    def unmoved(self) -> set[str]:
        """Return the folders that nobody has changed since the first of their files was looked at."""
        return {within for within, began in self._times.items() if began == time_of(self._folder / within)}

    def left(self, listed: str, files: int, unmoved: Collection[str], changed: Collection[str]) -> Left:
        """Return how the archive is left, once all its files were asked for and those that did not stand were put in place.

        Args:
            listed: Digest of its list.
            files: How many it has.
            unmoved: Folders in which nobody else has changed anything before this build did.
            changed: Folders in which it did.
        """
        folders = {}
        for within, began in sorted(self._times.items()):
            now = time_of(self._folder / within)
            moved = now != began
            if within == "" or within not in unmoved or moved != (within in changed):
                # In its own folder the archive's lock comes and goes; one that stays when files come is on a disk that keeps no such times.
                folders[within] = UNSURE
            elif now is not None and now == self._before.get(within):
                folders[within] = now
            else:
                folders[within] = _put_back(self._folder / within)
        return Left(listed=listed, files=files, folders=folders)

    def forgotten(self, files: Collection[str]) -> set[str]:
        """Return paths that were remembered in folders that were looked at closely, and that are none of the files."""
        return {path for stamps in self._remembered.values() for path in stamps if path not in files}


def stands(folder: Path, seen: Seen) -> bool:
    """Tell whether the whole archive stands as the last build left it, so that a build of the same has nothing to do."""
    left = seen.left()
    if left is None or there(folder / STAGING) or _digest_of(folder / MANIFEST) != left.listed:
        return False
    each = left.files <= FEW
    closely = [within for within, time in left.folders.items() if each or not _is(time_of(folder / within), time)]
    stamps = {path: stamp for within in closely for path, stamp in seen.stamps(within).items()}
    return (not each or len(stamps) == left.files) and all(
        stamp_of(f"{folder}/{path}", stamp.digest, stamp) is not None for path, stamp in stamps.items()
    )


def stamp_of(path: str, digest: str, before: Stamp | None) -> Stamp | None:
    """Return what is to be remembered of a file; None where no file with bytes of that digest stands there.

    Args:
        path: Where it should stand.
        digest: Of the bytes it should have.
        before: What is remembered of it; where that tells, it is not opened.
    """
    try:
        found = os.lstat(path)
    except (FileNotFoundError, NotADirectoryError):
        return None
    if not stat.S_ISREG(found.st_mode):
        return None
    size, time = found.st_size, found.st_mtime_ns
    if before is not None and (before.digest, before.size, before.mtime_ns) == (digest, size, time):
        return before
    now = time_ns()
    if _digest_of(path) != digest:
        return None
    return Stamp(digest=digest, size=size, mtime_ns=settled(time, now))


def time_of(folder: Path) -> int | None:
    """Return when anything in a folder last came, went or was renamed, in nanoseconds; None where there is no such folder."""
    try:
        found = os.lstat(folder)
    except (FileNotFoundError, NotADirectoryError):
        return None
    return found.st_mtime_ns if stat.S_ISDIR(found.st_mode) else None


def _is(now: int | None, time: int | None) -> bool:
    return now is not None and now == time


def _put_back(folder: Path) -> int:
    """Give a folder an earlier time than it has, and return it; UNSURE where that can't be done.

    Whatever comes into it from now on, leaves it or is renamed in it gives it a later time, however coarse the clock of its disk is,
    and whatever ours says.
    """
    try:
        found = folder.stat()
        os.utime(folder, ns=(found.st_atime_ns, found.st_mtime_ns - _BACK_NS))
        time = folder.stat().st_mtime_ns
    except OSError:
        return UNSURE
    return time if found.st_mtime_ns - time > SETTLED_NS else UNSURE


def _digest_of(path: str | Path) -> str:
    """Return the SHA-256 of a file's bytes; nothing where there is no file."""
    try:
        with open(path, "rb") as file:  # noqa: PTH123 - a path's own way takes longer than the reading
            return hashlib.sha256(file.read()).hexdigest()
    except (FileNotFoundError, NotADirectoryError, IsADirectoryError):
        return ""
