"""What each trip gives to the pages of many, as earlier builds of an archive left it, and sums over trips."""

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import TypeVar

from msgspec import Struct

from logbook.model.ledger import Entry
from logbook.model.packed import packed, packed_as_it_stands
from logbook.model.tally import Tally
from logbook.store.kept import record_of, sealed, squeezed, unsealed, unsqueezed
from logbook.store.store import Store, StoreError, name_of

T = TypeVar("T")

SCHEMA = """
CREATE TABLE IF NOT EXISTS entry(site TEXT, trip TEXT, key BLOB, entry BLOB, PRIMARY KEY (site, trip)) WITHOUT ROWID;
CREATE TABLE IF NOT EXISTS piece(site TEXT, name TEXT, trip TEXT, content BLOB, UNIQUE (site, name, trip));
CREATE INDEX IF NOT EXISTS piece_of_trip ON piece(site, trip);
CREATE TABLE IF NOT EXISTS tallied(site TEXT, name TEXT, key BLOB, tally BLOB, PRIMARY KEY (site, name)) WITHOUT ROWID;
"""


class Kept(Struct, frozen=True, kw_only=True):
    """What a trip gives to the pages of many as it was packed, ready to be kept.

    Attributes:
        entry: Its line among all trips.
        pieces: The parts of its share, and its pieces of files, by name.
    """

    entry: Entry
    pieces: Mapping[str, bytes]


class Shares:
    """The shares of the trips of one archive."""

    def __init__(self, store: Store, site: Path) -> None:
        """Look up which trips are known, and by what key each was made."""
        store.tables(SCHEMA)
        self._store, self._site = store, name_of(site)
        rows = store.rows("SELECT trip, key, entry FROM entry WHERE site = ?", self._site)
        self.known: dict[str, tuple[bytes, Entry]] = {
            trip: (key, record_of(unsealed(entry), Entry)) for trip, key, entry in rows
        }

    def keep(self, key: bytes, kept: Kept) -> None:
        """Keep a trip's share, in place of what there was of it."""
        entry = kept.entry
        if entry.id in self.known:
            self._forget_pieces(entry.id)
        self.known[entry.id] = key, entry
        row = (self._site, entry.id, key, sealed(packed(entry)))
        self._store.change("INSERT OR REPLACE INTO entry VALUES (?, ?, ?, ?)", *row)
        for name, content in kept.pieces.items():
            piece = squeezed(content)
            self._store.change("INSERT OR REPLACE INTO piece VALUES (?, ?, ?, ?)", self._site, name, entry.id, piece)

    def forget_others(self, trips: Iterable[str]) -> None:
        """Forget all but some trips."""
        for trip in self.known.keys() - set(trips):
            del self.known[trip]
            self._forget_pieces(trip)
            self._store.change("DELETE FROM entry WHERE site = ? AND trip = ?", self._site, trip)

    def _forget_pieces(self, trip: str) -> None:
        self._store.change("DELETE FROM piece WHERE site = ? AND trip = ?", self._site, trip)

    def piece(self, trip: str, name: str) -> bytes:
        """Return a piece that a trip gave."""
        question = "SELECT content FROM piece WHERE site = ? AND name = ? AND trip = ?"
        for (kept,) in self._store.rows(question, self._site, name, trip):
            return unsqueezed(kept)
        raise StoreError(f"nothing is kept of {trip}")

    def pieces(self, name: str) -> dict[str, bytes]:
        """Return a piece that every trip gave, by the trip's id."""
        question = "SELECT trip, content FROM piece WHERE site = ? AND name = ?"
        return {trip: unsqueezed(kept) for trip, kept in self._store.rows(question, self._site, name)}

    def part(self, trip: str, name: str, kind: type[T]) -> T:
        """Return a part of a trip's share: its `brief`, `tally`, `days`, `mishaps` or `kit`."""
        return record_of(self.piece(trip, name), kind)

    def parts(self, name: str, kind: type[T]) -> dict[str, T]:
        """Return a part of the share of every trip, by its id."""
        return {trip: record_of(content, kind) for trip, content in self.pieces(name).items()}

    def tally(self, name: str, key: bytes) -> Tally | None:
        """Return sums that were kept by a name; None where they were of other trips."""
        for known, kept in self._store.rows(
            "SELECT key, tally FROM tallied WHERE site = ? AND name = ?", self._site, name
        ):
            if known == key:
                return record_of(unsealed(kept), Tally)
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
