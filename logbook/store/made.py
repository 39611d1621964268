"""Which files of an archive an earlier build made, and of what."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial
from pathlib import Path

import msgspec
from msgspec import Struct

from logbook.model.packed import packed
from logbook.model.page import Draft, Drafts, File, Make, Page, Standing, key_of
from logbook.store.kept import sealed, unsealed
from logbook.store.store import Store, StoreError, name_of

SCHEMA = """
CREATE TABLE IF NOT EXISTS made(site TEXT, name TEXT, key BLOB, files BLOB, PRIMARY KEY (site, name)) WITHOUT ROWID;
"""


class _File(Struct, frozen=True, array_like=True):
    """A file that was made: where it stands, what it was made of as a digest, its size and the digest of its bytes."""

    path: str
    key: bytes
    size: int
    digest: str


_FILES = msgspec.json.Decoder(tuple[_File, ...])


class Made:
    """Makes the files of one archive, but for those that it made of the same before.

    What is kept is what files were made of, as a digest, and size and digest of their bytes; the bytes themselves stand in the archive.
    """

    def __init__(self, store: Store, site: Path, language: str) -> None:
        """Look up what was made of this archive."""
        store.tables(SCHEMA)
        self._store, self._language, self._site = store, language, name_of(site)
        rows = store.rows("SELECT name, key, files FROM made WHERE site = ?", self._site)
        self._known: dict[str, tuple[bytes, bytes]] = {name: (key, files) for name, key, files in rows}
        self._used: set[str] = set()

    def file(self, path: str, of: Sequence[object], make: Callable[[], bytes]) -> File:
        """Return a file; made now where what it is made of has changed."""
        (file,) = self.files(path, of, lambda _: [Page(path=path, content=make())])
        return file

    def files(self, name: str, of: Sequence[object], make: Make) -> Iterator[File]:
        """Give files that are made together; made now where what they are made of has changed."""
        key = self.key(of)
        standing = self.standing(name, key, make)
        yield from standing if standing is not None else self.keep(name, key, make(self.drafts(name)), make)

    def key(self, of: Sequence[object]) -> bytes:
        """Return a digest of what files are made of."""
        return key_of(self._language, *of)

    def standing(self, name: str, key: bytes, make: Make) -> Iterable[File] | None:
        """Return files as they were made; None where they were not, or of something else."""
        self._used.add(name)
        known, files = self._known.get(name, (b"", b""))
        if known != key:
            return None
        again = _Again(make)
        return [_standing(file, again) for file in _files(files)]

    def drafts(self, name: str) -> Drafts:
        """Return what knows the files of a bundle by what each was made of."""
        _, files = self._known.get(name, (b"", b""))
        return Drafts(self._language, {file.path: file.key for file in _files(files)} if files else {})

    def keep(
        self,
        name: str,
        key: bytes,
        files: Iterable[Page | Draft],
        make: Make,
    ) -> Iterator[File]:
        """Give files that were made now, and remember them; those that are as they stand are found where they do."""
        _, earlier = self._known.get(name, (b"", b""))
        before = {file.path: file for file in _files(earlier)} if earlier else {}
        again = _Again(make)
        kept = []
        for file in files:
            if file.content is None:
                kept.append(before[file.path])
                yield _standing(before[file.path], again)
            else:
                page = Page(path=file.path, content=file.content)
                of = file.key if isinstance(file, Draft) else b""
                kept.append(_File(file.path, of, page.size, page.digest))
                yield page
        row = (key, sealed(packed(tuple(kept))))
        self._known[name] = row
        self._store.change("INSERT OR REPLACE INTO made VALUES (?, ?, ?, ?)", self._site, name, *row)

    def forget_others(self) -> None:
        """Forget what this archive no longer has."""
        for name in self._known.keys() - self._used:
            self._store.change("DELETE FROM made WHERE site = ? AND name = ?", self._site, name)


def _files(kept: bytes) -> tuple[_File, ...]:
    try:
        return _FILES.decode(unsealed(kept))
    except msgspec.MsgspecError as fault:
        raise StoreError(str(fault)) from fault


def _standing(file: _File, again: "_Again") -> Standing:
    return Standing(path=file.path, size=file.size, digest=file.digest, make=partial(again, file.path))


class _Again:
    """Makes files that no longer stand, all of them once, when the first of them is asked for."""

    def __init__(self, make: Make) -> None:
        self._make = make
        self._files: dict[str, bytes] = {}

    def __call__(self, path: str) -> bytes:
        """Return the bytes of one of them."""
        if not self._files:
            self._files = {file.path: file.content or b"" for file in self._make(Drafts())}
        return self._files[path]
