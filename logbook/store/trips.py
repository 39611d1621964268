"""Which logs an earlier build read, what they told, and what bears on each of their trips.

Of every log a line is in memory. All else is asked for: small pieces of a vessel's logs together, whole trips one by one.
"""

from collections.abc import Iterator
from typing import TypeVar

from msgspec import Struct

from logbook.model.figures import Neighbours
from logbook.model.packed import packed
from logbook.model.past import Left, Rested
from logbook.model.placed import Clash, Head, Placed
from logbook.model.problem import Problem
from logbook.store.kept import record_of, sealed, unsealed
from logbook.store.store import Store, StoreError

SCHEMA = """
CREATE TABLE IF NOT EXISTS log(log TEXT PRIMARY KEY, line BLOB);
CREATE TABLE IF NOT EXISTS vessel(vessel TEXT PRIMARY KEY, line BLOB);
CREATE TABLE IF NOT EXISTS wrong(log TEXT PRIMARY KEY, line BLOB);
CREATE TABLE IF NOT EXISTS trip(log TEXT PRIMARY KEY, content BLOB, rested BLOB);
CREATE TABLE IF NOT EXISTS part(log TEXT PRIMARY KEY, vessel TEXT, content BLOB);
CREATE TABLE IF NOT EXISTS beside(log TEXT PRIMARY KEY, content BLOB);
CREATE INDEX IF NOT EXISTS part_of_vessel ON part(vessel);
"""
_TABLES = ("log", "wrong", "trip", "part", "beside")

T = TypeVar("T")


class Log(Struct, frozen=True, kw_only=True, array_like=True):
    """A log as it was known.

    Attributes:
        log: Its name within the logs folder.
        stamp: What the system said of the file, without opening it; empty where that can't be relied on.
        content: Digest of its bytes and of the fleet files that it was read by; empty where it could not be opened.
        vessel: Whose, with case folded; empty where no trip could be read.
        begins: When its trip begins, in seconds of the epoch.
        key: Digest of all that its trip's figures hang on.
        head: Of its trip.
    """

    log: str
    stamp: str
    content: bytes
    vessel: str = ""
    begins: float = 0.0
    key: bytes = b""
    head: Head | None = None


class Part(Struct, frozen=True, kw_only=True):
    """What a log's trip has to do with the vessel's others.

    Attributes:
        placed: Its place among them.
        left: What it leaves behind.
        own: Digests of all that its figures hang on in the log itself.
        typed: Digest of the log's bytes.
        rested: Digest of what it says of rest.
        head: Of the trip, but for its id.
    """

    placed: Placed
    left: Left
    own: bytes
    typed: bytes
    rested: bytes
    head: Head


class Beside(Struct, frozen=True, kw_only=True):
    """What the vessel's other logs have to say of a trip.

    Attributes:
        neighbours: All but her rest on the trips before.
        recent: The logs that tell of that.
        clashes: What is wrong between this log and others.
    """

    neighbours: Neighbours
    recent: tuple[str, ...]
    clashes: tuple[Clash, ...]


class Wrong(Struct, frozen=True, kw_only=True):
    """What is wrong in a log.

    Attributes:
        own: In the log itself.
        clashes: Between it and others.
    """

    own: tuple[Problem, ...] = ()
    clashes: tuple[Clash, ...] = ()


class Trips:
    """The logs of a folder, as they are known."""

    def __init__(self, store: Store) -> None:
        """Look up which logs are known."""
        store.tables(SCHEMA)
        self._store = store
        lines = (record_of(unsealed(kept), Log) for (kept,) in store.rows("SELECT line FROM log"))
        self.logs = {line.log: line for line in lines}
        self.vessels = {str(vessel): unsealed(kept) for vessel, kept in store.rows("SELECT vessel, line FROM vessel")}

    def keep(self, log: Log) -> None:
        """Keep the line of a log."""
        self.logs[log.log] = log
        self._store.change("INSERT OR REPLACE INTO log VALUES (?, ?)", log.log, sealed(packed(log)))

    def keep_vessel(self, vessel: str, names: bytes) -> None:
        """Keep a digest of the names of all logs of a vessel, once it is known what bears on each; empty where there are none left."""
        if names:
            self._store.change("INSERT OR REPLACE INTO vessel VALUES (?, ?)", vessel, sealed(names))
        else:
            self._store.change("DELETE FROM vessel WHERE vessel = ?", vessel)

    def keep_wrong(self, log: str, wrong: Wrong) -> None:
        """Keep what is wrong in a log."""
        if wrong == Wrong():
            self._store.change("DELETE FROM wrong WHERE log = ?", log)
        else:
            self._store.change("INSERT OR REPLACE INTO wrong VALUES (?, ?)", log, sealed(packed(wrong)))

    def keep_trip(self, log: str, vessel: str, trip: bytes, rested: bytes, part: Part) -> None:
        """Keep the trip of a log, squeezed and packed, what it says of rest, packed, and what it has to do with others."""
        self._store.change("INSERT OR REPLACE INTO trip VALUES (?, ?, ?)", log, sealed(trip), sealed(rested))
        self._store.change("INSERT OR REPLACE INTO part VALUES (?, ?, ?)", log, vessel, sealed(packed(part)))

    def keep_beside(self, log: str, beside: Beside) -> None:
        """Keep what bears on the trip of a log."""
        self._store.change("INSERT OR REPLACE INTO beside VALUES (?, ?)", log, sealed(packed(beside)))

    def forget(self, log: str) -> None:
        """Forget a log that is gone."""
        del self.logs[log]
        for table in _TABLES:
            self._store.change(f"DELETE FROM {table} WHERE log = ?", log)  # noqa: S608 - the names are our own

    def wrong(self, log: str) -> Wrong:
        """Return what is wrong in a log."""
        for (kept,) in self._store.rows("SELECT line FROM wrong WHERE log = ?", log):
            return record_of(unsealed(kept), Wrong)
        return Wrong()

    def every_wrong(self) -> Iterator[tuple[str, Wrong]]:
        """Give what is wrong in all logs in which something is, by their names."""
        rows = self._store.rows("SELECT log, line FROM wrong ORDER BY log")
        return ((str(log), record_of(unsealed(kept), Wrong)) for log, kept in rows)

    def parts(self, vessel: str) -> dict[str, Part]:
        """Return what each trip of a vessel has to do with the others, by the name of its log."""
        rows = self._store.rows("SELECT log, content FROM part WHERE vessel = ?", vessel)
        parts = {str(log): record_of(unsealed(kept), Part) for log, kept in rows}
        if any(part.placed.file != log for log, part in parts.items()):
            raise StoreError("damaged")
        return parts

    def trip(self, log: str) -> bytes:
        """Return the trip of a log, squeezed and packed."""
        return unsealed(self._one("SELECT content FROM trip WHERE log = ?", log))

    def rested(self, log: str) -> Rested:
        """Return what a log says of rest."""
        return record_of(unsealed(self._one("SELECT rested FROM trip WHERE log = ?", log)), Rested)

    def beside(self, log: str) -> Beside:
        """Return what bears on the trip of a log."""
        return record_of(unsealed(self._one("SELECT content FROM beside WHERE log = ?", log)), Beside)

    def _one(self, question: str, log: str) -> object:
        for (kept,) in self._store.rows(question, log):
            return kept
        raise StoreError(f"nothing is kept of {log}")
