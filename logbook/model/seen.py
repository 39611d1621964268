"""What is remembered of an archive's files: how the last build left them, so that the next need not read them all."""

from collections.abc import Iterable, Mapping
from typing import Protocol

from msgspec import Struct

UNSURE = -1
"""In place of a time that can't be relied on; no file has it."""
SETTLED_NS = 2_000_000_000
"""What changed so short a time ago may change again without its time showing it."""


class Stamp(Struct, frozen=True, kw_only=True):
    """A file as it stood whole.

    Attributes:
        digest: SHA-256 of its bytes, in hexadecimal.
        size: How many bytes.
        mtime_ns: When it was last written, in nanoseconds; UNSURE where a later change might show the same time.
    """

    digest: str
    size: int
    mtime_ns: int


class Left(Struct, frozen=True, kw_only=True):
    """An archive as a build left it.

    Attributes:
        listed: SHA-256 of the archive's own list of its files, in hexadecimal.
        files: How many files stand on it.
        folders: Every folder that has some of them, relative to the archive, "" for its own; when anything last came into it, left it or
            was renamed in it, in nanoseconds, UNSURE where that can't be relied on.
    """

    listed: str
    files: int
    folders: Mapping[str, int]


class Seen(Protocol):
    """Remembers how the last build left an archive. What it has forgotten, or never knew, costs time only."""

    def left(self) -> Left | None:
        """Return what the last build left; None where that is not known."""

    def stamps(self, folder: str) -> Mapping[str, Stamp]:
        """Return the files of one folder, not of those below it, by their paths in the archive."""

    def keep(self, left: Left, stamps: Mapping[str, Stamp], gone: Iterable[str]) -> None:
        """Remember what a build left.

        Args:
            left: In place of what was remembered before.
            stamps: Files that are new, changed or not remembered so, by path; the others stay as they are remembered.
            gone: Paths of files that the archive no longer has.
        """


class Unseen:
    """Remembers nothing."""

    def left(self) -> Left | None:
        """Return None: nothing is known."""

    def stamps(self, folder: str) -> Mapping[str, Stamp]:  # noqa: ARG002 - it knows of none
        """Return nothing."""
        return {}

    def keep(self, left: Left, stamps: Mapping[str, Stamp], gone: Iterable[str]) -> None:
        """Forget it at once."""


def settled(mtime_ns: int, now_ns: int) -> int:
    """Return a file's time, or UNSURE where a change that comes now or later might leave it with the same."""
    return mtime_ns if now_ns - mtime_ns > SETTLED_NS else UNSURE
