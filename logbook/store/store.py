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
from typing import Any

from platformdirs import user_cache_path

_ABOUT = "CREATE TABLE IF NOT EXISTS about(program TEXT)"
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
_FAULTS = (sqlite3.Error, OverflowError, UnicodeError)
"""What comes of a damaged database, whose messages may not even be text, or of a number that it has no room for."""


class StoreError(Exception):
    """Something is wrong with the store; what was made with its help so far must be made again without it."""


class Store:
    """An open store: one that outlasts this run where that can be, else one that is gone at its end."""

    def __init__(self, path: Path | None) -> None:
        """Open the database at a path, made where it is not there; with None, or where it can't be opened, a new one for this run."""
        self._base = (_opened(path) if path is not None else None) or _for_this_run()

    def tables(self, schema: str) -> None:
        """Make the tables of a schema where they are not there yet: statements that each end in a semicolon."""
        for statement in schema.split(";"):
            self.change(statement)

    def rows(self, question: str, *values: object) -> Iterator[Any]:
        """Give the rows of a question.

        Raises:
            StoreError: The store can't answer.
        """
        try:
            for row in self._base.execute(question, values):  # noqa: UP028 - a cursor must not be closed after its database
                yield row
        except _FAULTS as fault:
            raise StoreError(str(fault)) from fault

    def change(self, order: str, *values: object) -> None:
        """Change what is kept.

        Raises:
            StoreError: It can't be changed.
        """
        try:
            self._base.execute(order, values)
        except _FAULTS as fault:
            raise StoreError(str(fault)) from fault

    def keep(self) -> None:
        """Have everything changed so far outlast this run, where that can be."""
        with suppress(*_FAULTS):
            self._base.commit()

    def close(self) -> None:
        """Close it; what was not kept is lost."""
        with suppress(*_FAULTS):
            self._base.close()


@contextmanager
def open_store(logs: Path, *, outlasting: bool = True) -> Iterator[Store]:
    """Give the store of a logs folder; what was changed in it is kept where no error ends its use.

    Args:
        logs: The folder.
        outlasting: Whether it is the one that earlier runs left, and later ones find; else it begins empty, and so does the next one.
    """
    place = place_of(logs)
    if not outlasting and place is not None:
        with suppress(OSError):
            place.unlink(missing_ok=True)
    store = Store(place if outlasting else None)
    try:
        yield store
        store.keep()
    finally:
        store.close()


def name_of(place: Path) -> str:
    """Return what a folder is known by in the store, whatever letters the system lets its name have."""
    return os.fsencode(place.resolve()).decode("utf-8", "backslashreplace")


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
        except (sqlite3.DatabaseError, UnicodeError):
            with suppress(OSError):
                path.unlink()
            if not again:
                return None
        else:
            return base
    return None


def _for_this_run() -> sqlite3.Connection:
    base = sqlite3.connect("")
    _begin(base)
    return base


def _begin(base: sqlite3.Connection) -> None:
    """Empty a database that another version of the program has left."""
    base.execute(_ABOUT)
    if base.execute("SELECT program FROM about").fetchall() == [(program(),)]:
        return
    for (table,) in base.execute("SELECT name FROM sqlite_master WHERE type = 'table'").fetchall():
        base.execute(f'DROP TABLE "{table}"')
    base.execute(_ABOUT)
    base.execute("INSERT INTO about VALUES (?)", (program(),))
    base.commit()
