"""Which files of an archive an earlier build made, and of what."""

import hashlib
import json
from collections.abc import Callable, Iterable
from functools import partial
from pathlib import Path

from logbook.model.packed import packed
from logbook.model.page import File, Page, Standing, content_of
from logbook.store.store import Store


class Made:
    """Makes the files of one archive, but for those that it made of the same before.

    What is kept is what each file was made of, as a digest, and size and digest of its bytes; the bytes themselves stand in the archive.
    """

    def __init__(self, store: Store, site: Path, language: str) -> None:
        """Look up what was made of this archive."""
        self._store, self._language, self._site = store, language, str(site.resolve())
        rows = store.rows("SELECT path, key, size, digest FROM file WHERE site = ?", self._site)
        self._known = {
            str(path): (key, size if isinstance(size, int) else 0, str(digest)) for path, key, size, digest in rows
        }
        rows = store.rows("SELECT name, key, paths FROM files WHERE site = ?", self._site)
        self._used: set[str] = set()
        self._together = {str(name): (key, _paths(paths)) for name, key, paths in rows}

    def file(self, path: str, of: tuple[object, ...], make: Callable[[], bytes]) -> File:
        """Return a file; made now where what it is made of has changed."""
        key = self._key(of)
        self._used.add(path)
        known, size, digest = self._known.get(path, (None, 0, ""))
        if known == _sealed(key, size, digest):
            return self._standing(path, make)
        page = Page(path=path, content=make())
        self._keep(page, key)
        return page

    def files(self, name: str, of: tuple[object, ...], make: Callable[[], Iterable[File]]) -> Iterable[File]:
        """Return files that are made together; made now where what they are made of has changed."""
        key = self._key(of)
        known, paths = self._together.get(name, (None, ()))
        if known == key and all(path in self._known for path in paths):
            self._used.update(paths)
            again = _Again(make)
            return [self._standing(path, partial(again, path)) for path in paths]
        files = tuple(make())
        for file in files:
            if isinstance(file, Page) and file.path not in self._used:
                self._used.add(file.path)
                self._keep(file, key)
        paths = tuple(file.path for file in files)
        self._together[name] = key, paths
        self._store.change("INSERT OR REPLACE INTO files VALUES (?, ?, ?, ?)", self._site, name, key, json.dumps(paths))
        return files

    def forget_others(self) -> None:
        """Forget what this archive no longer has."""
        for path in self._known.keys() - self._used:
            self._store.change("DELETE FROM file WHERE site = ? AND path = ?", self._site, path)
        for name, (_, paths) in self._together.items():
            if not self._used.issuperset(paths):
                self._store.change("DELETE FROM files WHERE site = ? AND name = ?", self._site, name)

    def _standing(self, path: str, make: Callable[[], bytes]) -> Standing:
        _, size, digest = self._known[path]
        return Standing(path=path, size=size, digest=digest, make=make)

    def _keep(self, page: Page, key: bytes) -> None:
        size, digest = page.size, page.digest
        made = _sealed(key, size, digest), size, digest
        self._known[page.path] = made
        self._store.change("INSERT OR REPLACE INTO file VALUES (?, ?, ?, ?, ?)", self._site, page.path, *made)

    def _key(self, of: tuple[object, ...]) -> bytes:
        made = hashlib.sha256(self._language.encode())
        for one in of:
            content = packed(one)
            made.update(f"{type(one).__name__}{len(content)}\0".encode())
            made.update(content)
        return made.digest()


class _Again:
    """Makes files that no longer stand, all of them once, when the first of them is asked for."""

    def __init__(self, make: Callable[[], Iterable[File]]) -> None:
        self._make = make
        self._files: dict[str, File] = {}

    def __call__(self, path: str) -> bytes:
        """Return the bytes of one of them."""
        if not self._files:
            self._files = {file.path: file for file in self._make()}
        return content_of(self._files[path])


def _sealed(key: bytes, size: int, digest: str) -> bytes:
    """Return a key that is good for nothing once size or digest beside it are not what they were."""
    return hashlib.sha256(key + f"{size} {digest}".encode()).digest()


def _paths(listed: object) -> tuple[str, ...]:
    try:
        return tuple(map(str, json.loads(str(listed))))
    except ValueError:
        return ("",)
