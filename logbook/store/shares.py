"""What each trip gives to the pages of many, as earlier builds of an archive left it, and sums over trips."""

import hashlib
from collections.abc import Iterable, Iterator, Mapping
from datetime import UTC
from pathlib import Path
from typing import TypeVar

import msgspec
from msgspec import Struct

from logbook.model.ledger import Entry, Share
from logbook.model.packed import packed, packed_as_it_stands, unpacked
from logbook.model.tally import Tally
from logbook.store.store import Store, StoreError, sealed, unsealed

T = TypeVar("T")

SCHEMA = """
CREATE TABLE IF NOT EXISTS share(site TEXT, trip TEXT, key BLOB, entry BLOB,
  brief BLOB, tally BLOB, days BLOB, mishaps BLOB, kit BLOB, PRIMARY KEY (site, trip)) WITHOUT ROWID;
CREATE TABLE IF NOT EXISTS piece(site TEXT, name TEXT, year TEXT, begins TEXT, trip TEXT, digest BLOB, content BLOB,
  PRIMARY KEY (site, name, year, begins, trip)) WITHOUT ROWID;
CREATE INDEX IF NOT EXISTS piece_of_trip ON piece(site, trip);
CREATE TABLE IF NOT EXISTS tallied(site TEXT, name TEXT, key BLOB, tally BLOB, PRIMARY KEY (site, name)) WITHOUT ROWID;
"""


class Kept(Struct, frozen=True, kw_only=True):
    """A trip's share as it was packed, ready to be kept.

    Attributes:
        entry: Its line among all trips.
        parts: The parts of its share, by name.
        rows: Its pieces of files, by name.
    """

    entry: Entry
    parts: Mapping[str, bytes]
    rows: Mapping[str, bytes]


class Shares:
    """The shares of the trips of one archive."""

    def __init__(self, store: Store, site: Path) -> None:
        """Look up which trips are known, and by what key each was made."""
        store.tables(SCHEMA)
        self._store, self._site = store, str(site.resolve())
        rows = store.rows("SELECT trip, key, entry FROM share WHERE site = ?", self._site)
        self.known: dict[str, tuple[bytes, Entry]] = {trip: (key, _record(entry, Entry)) for trip, key, entry in rows}

    def keep(self, key: bytes, kept: Kept) -> None:
        """Keep a trip's share, in place of what there was of it."""
        entry = kept.entry
        if entry.id in self.known:
            self._forget_pieces(entry.id)
        self.known[entry.id] = key, entry
        parts = [sealed(kept.parts[name]) for name in Share.__struct_fields__]
        row = (self._site, entry.id, key, sealed(packed(entry)), *parts)
        self._store.change("INSERT OR REPLACE INTO share VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)", *row)
        begins = entry.begins.astimezone(UTC).isoformat(timespec="microseconds")
        for name, content in kept.rows.items():
            digest = hashlib.sha256(content).digest()
            place = (self._site, name, entry.year, begins, entry.id)
            self._store.change("INSERT OR REPLACE INTO piece VALUES (?, ?, ?, ?, ?, ?, ?)", *place, digest, content)

    def forget_others(self, trips: Iterable[str]) -> None:
        """Forget all but some trips."""
        for trip in self.known.keys() - set(trips):
            del self.known[trip]
            self._forget_pieces(trip)
            self._store.change("DELETE FROM share WHERE site = ? AND trip = ?", self._site, trip)

    def _forget_pieces(self, trip: str) -> None:
        self._store.change("DELETE FROM piece WHERE site = ? AND trip = ?", self._site, trip)

    def part(self, trip: str, name: str, kind: type[T]) -> T:
        """Return a part of a trip's share: its `brief`, `tally`, `days`, `mishaps` or `kit`."""
        question = f"SELECT {name} FROM share WHERE site = ? AND trip = ?"  # noqa: S608 - the names are our own
        for (kept,) in self._store.rows(question, self._site, trip):
            return _record(kept, kind)
        raise StoreError(f"nothing is kept of {trip}")

    def parts(self, name: str, kind: type[T]) -> dict[str, T]:
        """Return a part of the share of every trip, by its id."""
        question = f"SELECT trip, {name} FROM share WHERE site = ?"  # noqa: S608 - the same
        return {trip: _record(kept, kind) for trip, kept in self._store.rows(question, self._site)}

    def rows(self, name: str, year: str | None = None) -> Iterator[bytes]:
        """Give the pieces of a file, of every trip or those of a year, by when they began."""
        for digest, content in self._pieces("digest, content", name, year):
            if hashlib.sha256(content).digest() != digest:
                raise StoreError("damaged")
            yield content

    def rows_key(self, name: str, year: str | None = None) -> bytes:
        """Return what changes exactly when one of those pieces does."""
        made = hashlib.sha256(name.encode())
        for trip, digest in self._pieces("trip, digest", name, year):
            made.update(f"{trip}\0".encode())
            made.update(digest)
        return made.digest()

    def _pieces(self, columns: str, name: str, year: str | None) -> Iterator[tuple[object, bytes]]:
        question = f"SELECT {columns} FROM piece WHERE site = ? AND name = ?"  # noqa: S608 - the same
        if year is None:
            return self._store.rows(f"{question} ORDER BY begins, trip", self._site, name)
        return self._store.rows(f"{question} AND year = ? ORDER BY begins, trip", self._site, name, year)

    def tally(self, name: str, key: bytes) -> Tally | None:
        """Return sums that were kept by a name; None where they were of other trips."""
        for known, kept in self._store.rows(
            "SELECT key, tally FROM tallied WHERE site = ? AND name = ?", self._site, name
        ):
            if known == key:
                return _record(kept, Tally)
        return None

    def keep_tally(self, name: str, key: bytes, tally: Tally) -> None:
        """Keep sums by a name."""
        self._store.change(
            "INSERT OR REPLACE INTO tallied VALUES (?, ?, ?, ?)",
            self._site,
            name,
            key,
            sealed(packed_as_it_stands(tally)),
        )


def _record(kept: object, kind: type[T]) -> T:
    try:
        return unpacked(unsealed(kept), kind)
    except (msgspec.MsgspecError, RecursionError) as fault:
        raise StoreError(str(fault)) from fault
