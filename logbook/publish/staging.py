"""Files written and flushed aside, and moved into their places in one step each once all of them are whole.

What is aside stands in a hidden folder of the archive, so that the step stays within one file system. Nothing of it is left
behind, whatever happens; what a killed build left there, the next takes away.
"""

import errno
import hashlib
import os
import re
import time
from collections.abc import Callable
from pathlib import Path
from types import TracebackType
from typing import IO, Self

from msgspec import Struct

from logbook.model.seen import Stamp, settled

STAGING = ".archive-staging"
_OURS = re.compile(r"\d+\.part")
_HELD = (5, 32, 33)
"""Windows: access denied, sharing violation, lock violation: a scanner, a reader or a copy has the file open."""
_PATIENCE_S = (0.05, 0.1, 0.2, 0.4, 0.8)
_TOGETHER = 64
"""So many files are flushed at a time: a disk takes those that are waiting in one go, and no system is short of open files."""
_THREADS = 8


class Part(Struct, frozen=True, kw_only=True):
    """A file aside.

    Attributes:
        name: What it is called there.
        digest: SHA-256 of its bytes, in hexadecimal.
        size: How many bytes it has.
        mtime_ns: When it was written, in nanoseconds.
    """

    name: str
    digest: str
    size: int
    mtime_ns: int

    def stamp(self, placed_ns: int) -> Stamp:
        """Return what is to be remembered of it, where it is put in its place at a given time."""
        return Stamp(digest=self.digest, size=self.size, mtime_ns=settled(self.mtime_ns, placed_ns))


class Staging:
    """A place aside for the files of one build."""

    def __init__(self, folder: Path) -> None:
        """Begin with nothing aside of the archive in a folder, no folders made and none changed."""
        self._folder = folder
        self._aside = folder / STAGING
        self._count = 0
        self._open: list[IO[bytes]] = []
        self._touched: set[Path] = set()
        self._made: list[Path] = []
        self._changed: set[Path] = set()

    def __enter__(self) -> Self:
        """Take away what a killed build left."""
        clear_aside(self._folder)
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Leave nothing aside, and where nothing was placed no new folders either."""
        for file in self._open:
            _try(file.close)
        clear_aside(self._folder)
        if not self._changed:
            for folder in reversed(self._made):
                _try(folder.rmdir)

    @property
    def made(self) -> set[str]:
        """Return the folders of the archive that were made, by their paths in it."""
        return {folder.relative_to(self._folder).as_posix() for folder in self._made}

    @property
    def changed(self) -> set[str]:
        """Return the folders in which something was put or taken away; "." for its own."""
        return {folder.relative_to(self._folder).as_posix() for folder in self._changed}

    def has(self, path: str) -> bool:
        """Tell whether anything stands at a place of the archive."""
        return there(self._folder / path)

    def holds(self, path: str) -> bool:
        """Tell whether a file that can be taken away stands at a place: not a folder, nor anything behind a link."""
        target = self._folder / path
        return there(target) and not behind_link(self._folder, target) and (target.is_symlink() or target.is_file())

    def write(self, content: bytes, path: str) -> Part:
        """Write what is to stand at a place, make the folder it goes to, and return where it is meanwhile."""
        if not self._count:
            self._aside.mkdir(exist_ok=True)
        self._make((self._folder / path).parent)
        self._count += 1
        name = f"{self._count}.part"
        file = (self._aside / name).open("xb")
        self._open.append(file)
        file.write(content)
        file.flush()
        written, digest = os.fstat(file.fileno()), hashlib.sha256(content).hexdigest()
        if len(self._open) == _TOGETHER:
            self.flush_parts()
        return Part(name=name, digest=digest, size=written.st_size, mtime_ns=written.st_mtime_ns)

    def flush_parts(self) -> None:
        """Have the disk know all that was written aside so far.

        The threads end with it: what makes the pages may start processes of its own, which should not be copied amid them.
        """
        from concurrent.futures import ThreadPoolExecutor  # noqa: PLC0415 - only where something is written

        with ThreadPoolExecutor(_THREADS) as threads:
            for _ in threads.map(os.fsync, [file.fileno() for file in self._open]):
                pass
        for file in self._open:
            file.close()
        self._open.clear()

    def place(self, part: Part, path: str) -> None:
        """Move a file to its place in one step; the folder may have been emptied and taken away since."""
        target, aside = self._folder / path, self._aside / part.name
        self._make(target.parent)
        patiently(lambda: aside.replace(target))
        self._change(target.parent)

    def remove(self, path: str) -> None:
        """Delete one of the archive's files, and its folders where they are now empty; what is behind a link stays."""
        target = self._folder / path
        if behind_link(self._folder, target) or (there(target) and not self.holds(path)):
            return
        patiently(lambda: target.unlink(missing_ok=True))
        self._change(target.parent)
        for parent in target.parents:
            if parent == self._folder or not _try(parent.rmdir):
                break
            self._touched.discard(parent)
            self._change(parent.parent)

    def flush(self) -> None:
        """Have the disk know every name that was given or taken away so far."""
        for folder in sorted(self._touched):
            flush_folder(folder)
        self._touched.clear()

    def _change(self, folder: Path) -> None:
        self._changed.add(folder)
        self._touched.add(folder)

    def _make(self, folder: Path) -> None:
        """Make a folder and those above it where they are not there yet."""
        missing = []
        while not folder.exists():
            missing.append(folder)
            folder = folder.parent
        for one in reversed(missing):
            one.mkdir()
            self._made.append(one)
            self._touched.add(one.parent)


def clear_aside(folder: Path) -> None:
    """Delete what a build left aside, and the place if it is then empty; anything else in it is not ours."""
    aside = folder / STAGING
    if aside.is_symlink() or not aside.is_dir():
        return
    for part in aside.iterdir():
        if _OURS.fullmatch(part.name):
            _try(part.unlink)
    _try(aside.rmdir)


def there(target: Path) -> bool:
    """Tell whether anything has that name, be it a link that leads nowhere."""
    return target.exists() or target.is_symlink()


def behind_link(folder: Path, target: Path) -> bool:
    """Tell whether a folder between the archive's and a file's is a link, so that the file stands elsewhere."""
    between = target.relative_to(folder).parents
    return any((folder / part).is_symlink() for part in between if part != Path())


def patiently(act: Callable[[], object]) -> None:
    """Do something to a file, again a few times where another program holds it open."""
    for pause in _PATIENCE_S:
        try:
            act()
        except PermissionError as fault:
            if getattr(fault, "winerror", None) not in _HELD:
                raise
            time.sleep(pause)
        else:
            return
    act()


def flush_folder(folder: Path) -> None:
    """Have the disk know the names in a folder, where the system can be asked to."""
    if not hasattr(os, "O_DIRECTORY"):
        return
    try:
        opened = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
    except FileNotFoundError:
        return
    try:
        os.fsync(opened)
    except OSError as fault:
        if fault.errno not in (errno.EINVAL, errno.ENOTSUP, errno.ENOSYS):
            raise
    finally:
        os.close(opened)


def _try(act: Callable[[], object]) -> bool:
    try:
        act()
    except OSError:
        return False
    return True
