"""The store: a small database in the user's cache folder, one for each logs folder.

Nothing is told from it that could not be made anew from the logs. So whatever is wrong with it, it is as if it were empty; what
another version of the program, of Python or of a library left is never looked at.
"""

import hashlib
import os
import sqlite3
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from platformdirs import user_cache_path

_SCHEMA = """
CREATE TABLE about(program TEXT);
CREATE TABLE file(site TEXT, path TEXT, key BLOB, size INTEGER, digest TEXT, PRIMARY KEY (site, path)) WITHOUT ROWID;
CREATE TABLE files(site TEXT, name TEXT, key BLOB, paths TEXT, PRIMARY KEY (site, name)) WITHOUT ROWID;
CREATE TABLE trip(log TEXT PRIMARY KEY, stamp TEXT, key BLOB, vessel TEXT, content BLOB, sum BLOB);
"""
_LIBRARIES = (
    "matplotlib",
    "Jinja2",
    "markdown-it-py",
    "msgspec",
    "PyYAML",
    "geographiclib",
    "astral",
    "tzdata",
    "numpy",
)
_WAIT_S = 5.0


class Store:
    """An open store; every method does nothing, or finds nothing, once something was wrong with it."""

    def __init__(self, path: Path | None) -> None:
        """Open the database at a path, made where it is not there; with None, one that keeps nothing."""
        self._base = _opened(path) if path is not None else None

    def rows(self, question: str, *values: object) -> list[tuple[object, ...]]:
        """Return the rows of a question; none where the store can't answer."""
        if self._base is None:
            return []
        try:
            return self._base.execute(question, values).fetchall()
        except sqlite3.Error:
            self.close()
            return []

    def change(self, order: str, *values: object) -> None:
        """Change what is kept."""
        if self._base is not None:
            try:
                self._base.execute(order, values)
            except sqlite3.Error:
                self.close()

    def keep(self) -> None:
        """Have everything changed so far outlast this run."""
        if self._base is not None:
            try:
                self._base.commit()
            except sqlite3.Error:
                self.close()

    def close(self) -> None:
        """Close it; what was not kept is lost."""
        base, self._base = self._base, None
        if base is not None:
            with suppress(sqlite3.Error):
                base.close()


@contextmanager
def open_store(logs: Path) -> Iterator[Store]:
    """Give the store of a logs folder; what was changed in it is kept where no error ends its use."""
    store = Store(place_of(logs))
    try:
        yield store
        store.keep()
    finally:
        store.close()


def place_of(logs: Path) -> Path | None:
    """Return where the store of a logs folder lies; None where this user has no place for it."""
    try:
        name = hashlib.sha256(os.fsencode(logs.resolve())).hexdigest()[:20]
        return user_cache_path("trawl-trip-logbook", appauthor=False) / f"{name}.sqlite"
    except (OSError, RuntimeError):
        return None


@cache
def program() -> str:
    """Return a digest of all that makes an archive out of logs: the program, its templates, Python and the libraries."""
    made = hashlib.sha256(sys.version.encode())
    for name in _LIBRARIES:
        with suppress(PackageNotFoundError):
            made.update(f"{name}{version(name)}\0".encode())
    for folder in _parts():
        for path, content in sorted(_contents(folder, "")):
            made.update(f"{path}\0{len(content)}\0".encode())
            made.update(content)
    return made.hexdigest()


def _parts() -> Iterator[Traversable]:
    package = files("logbook")
    yield package
    beside = Path(__file__).resolve().parents[2] / "templates"
    if beside.is_dir() and not (package / "templates").is_dir():
        yield beside


def _contents(folder: Traversable, above: str) -> Iterator[tuple[str, bytes]]:
    for entry in folder.iterdir():
        name = f"{above}/{entry.name}"
        if entry.is_dir():
            if entry.name != "__pycache__":
                yield from _contents(entry, name)
        elif not entry.name.endswith(".pyc"):
            yield name, entry.read_bytes()


def _opened(path: Path) -> sqlite3.Connection | None:
    """Return an open database; one that is damaged is thrown away and begun anew."""
    for again in (True, False):
        try:
            path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)  # it holds what the logs hold
            base = sqlite3.connect(path, timeout=_WAIT_S)
            base.execute("PRAGMA synchronous=OFF")
            _begin(base)
        except (OSError, sqlite3.OperationalError):
            return None
        except sqlite3.DatabaseError:
            with suppress(OSError):
                path.unlink()
            if not again:
                return None
        else:
            return base
    return None


def _begin(base: sqlite3.Connection) -> None:
    """Make the tables anew in a database that is new, or that another version of the program has left."""
    base.execute("CREATE TABLE IF NOT EXISTS about(program TEXT)")
    if base.execute("SELECT program FROM about").fetchall() == [(program(),)]:
        return
    for (table,) in base.execute("SELECT name FROM sqlite_master WHERE type = 'table'").fetchall():
        base.execute(f'DROP TABLE "{table}"')
    base.executescript(_SCHEMA)
    base.execute("INSERT INTO about VALUES (?)", (program(),))
    base.commit()
