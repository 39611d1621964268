"""One builder at a time: who comes second waits a while, and then says who is building.

The lock is the system's, and free again when its holder is killed; the note beside it is for people only.
"""

import os
import platform
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

LOCK = ".archive.lock"
BUILDER = ".archive.builder"
_WAIT_S = 30
_LONGEST = 200


class BusyError(Exception):
    """Another build has held the folder all the while."""


@contextmanager
def alone(folder: Path) -> Iterator[None]:
    """Have a folder to oneself.

    Raises:
        BusyError: Another build is still busy after half a minute; says which, where that is known.
        OSError: The lock can't be made.
    """
    from filelock import FileLock, Timeout  # noqa: PLC0415 - it takes as long to load as a build with nothing to do

    note = folder / BUILDER
    lock = FileLock(folder / LOCK)
    try:
        lock.acquire(timeout=_WAIT_S)
    except Timeout as busy:
        raise BusyError(f"another build{_said(note)} is writing {folder}; try again when it is done") from busy
    try:
        with suppress(OSError):
            note.unlink(missing_ok=True)  # a link there is not followed
            note.write_text(f"process {os.getpid()} on {platform.node() or 'a machine without a name'}", "utf-8")
        yield
    finally:
        with suppress(OSError):
            note.unlink()
        lock.release()


def _said(note: Path) -> str:
    """Return who is building, as the note has it; nothing where there is none."""
    try:
        said = note.read_text("utf-8")[:_LONGEST]
    except (OSError, ValueError):
        return ""
    return f" ({''.join(sign for sign in said if sign.isprintable())})" if said else ""
