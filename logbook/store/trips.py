"""Which logs an earlier build read, and the trips it reckoned from them."""

import hashlib
import zlib
from collections.abc import Iterable

import msgspec
from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.packed import packed, unpacked
from logbook.model.problem import Problem
from logbook.store.store import Store

SCHEMA = """
CREATE TABLE IF NOT EXISTS trip(log TEXT PRIMARY KEY, stamp TEXT, key BLOB, vessel TEXT, content BLOB, sum BLOB);
"""
_SWIFT = 1
"""How hard zlib tries: a row is read far more often than it is worth a millisecond to make smaller."""


class Log(Struct, frozen=True, kw_only=True):
    """A log as it was known.

    Attributes:
        stamp: What the system said of the file, without opening it; empty where that can't be relied on.
        key: Digest of all that it was read by.
        vessel: Whose, with case folded; empty where no trip could be read.
    """

    stamp: str
    key: bytes
    vessel: str


class Told(Struct, frozen=True, kw_only=True):
    """What a log told.

    Attributes:
        problems: All that was wrong in it.
        trip: Its trip with its figures; None where none could be read.
    """

    problems: tuple[Problem, ...]
    trip: Reckoned | None


class Trips:
    """The logs of a folder, as an earlier build knew them."""

    def __init__(self, store: Store) -> None:
        """Look up which logs are known."""
        store.tables(SCHEMA)
        self._store = store
        rows = store.rows("SELECT log, stamp, key, vessel FROM trip")
        self.logs = {
            str(log): Log(stamp=str(stamp), key=bytes(key), vessel=str(vessel))  # type: ignore[call-overload] # a blob
            for log, stamp, key, vessel in rows
        }

    def told(self, log: str) -> Told | None:
        """Return what a log told; None where that can't be known any more."""
        rows = tuple(self._store.rows("SELECT content, sum FROM trip WHERE log = ?", log))
        try:
            content, kept = rows[0]
            if hashlib.sha256(content).digest() != kept:  # type: ignore[arg-type] # a blob
                return None
            return unpacked(zlib.decompress(content), Told)  # type: ignore[arg-type] # the same
        except (IndexError, TypeError, zlib.error, RecursionError, msgspec.MsgspecError):
            return None

    def keep(self, name: str, log: Log, told: Told) -> None:
        """Keep what a log told."""
        content = zlib.compress(packed(told), _SWIFT)
        row = (name, log.stamp, log.key, log.vessel, content, hashlib.sha256(content).digest())
        self._store.change("INSERT OR REPLACE INTO trip VALUES (?, ?, ?, ?, ?, ?)", *row)

    def stamp(self, name: str, log: Log) -> None:
        """Keep what the system says of a log that tells what it told."""
        self._store.change("UPDATE trip SET stamp = ? WHERE log = ?", log.stamp, name)

    def forget(self, names: Iterable[str]) -> None:
        """Forget logs that are gone."""
        for name in names:
            self._store.change("DELETE FROM trip WHERE log = ?", name)


def unpacked_trip(content):
    return unpacked(content, Reckoned)
