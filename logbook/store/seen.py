"""How the last build left an archive: its list, its folders, its files."""

from collections.abc import Iterable, Mapping
from pathlib import Path

from logbook.model.packed import packed
from logbook.model.seen import Left, Stamp
from logbook.store.kept import record_of, sealed, unsealed
from logbook.store.store import Store, name_of

SCHEMA = """
CREATE TABLE IF NOT EXISTS archive(site TEXT PRIMARY KEY, state BLOB);
CREATE TABLE IF NOT EXISTS stamp(site TEXT, folder TEXT, path TEXT, digest TEXT, size INTEGER, mtime_ns INTEGER,
  PRIMARY KEY (site, folder, path)) WITHOUT ROWID;
"""


class StoredSeen:
    """Remembers in the store how the last build left one archive."""

    def __init__(self, store: Store, site: Path) -> None:
        """Begin with what is remembered of the archive in a folder."""
        store.tables(SCHEMA)
        self._store, self._site = store, name_of(site)

    def left(self) -> Left | None:
        """Return what the last build left; None where that is not known."""
        for (kept,) in self._store.rows("SELECT state FROM archive WHERE site = ?", self._site):
            return record_of(unsealed(kept), Left)
        return None

    def stamps(self, folder: str) -> Mapping[str, Stamp]:
        """Return the files of one folder, by their paths in the archive."""
        question = "SELECT path, digest, size, mtime_ns FROM stamp WHERE site = ? AND folder = ?"
        return {
            path: Stamp(digest=digest, size=size, mtime_ns=time)
            for path, digest, size, time in self._store.rows(question, self._site, folder)
        }

    def keep(self, left: Left, stamps: Mapping[str, Stamp], gone: Iterable[str]) -> None:
        """Remember what a build left."""
        self._store.change("INSERT OR REPLACE INTO archive VALUES (?, ?)", self._site, sealed(packed(left)))
        for path in gone:
            self._store.change("DELETE FROM stamp WHERE site = ? AND folder = ? AND path = ?", *self._place(path))
        for path, stamp in stamps.items():
            row = (*self._place(path), stamp.digest, stamp.size, stamp.mtime_ns)
            self._store.change("INSERT OR REPLACE INTO stamp VALUES (?, ?, ?, ?, ?, ?)", *row)

    def _place(self, path: str) -> tuple[str, str, str]:
        return self._site, path.rpartition("/")[0], path
