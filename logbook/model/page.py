"""What is published: files with their contents, and where in the archive they go."""

import hashlib
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Protocol

from msgspec import Struct

from logbook.model.packed import packed


class Page(Struct, frozen=True, kw_only=True):
    """One file of the archive.

    Attributes:
        path: Where it goes, relative to the archive, parts joined by `/`.
        content: Its bytes.
    """

    path: str
    content: bytes

    @property
    def size(self) -> int:
        """Return how many bytes there are."""
        return len(self.content)

    @property
    def digest(self) -> str:
        """Return their SHA-256 in hexadecimal."""
        return hashlib.sha256(self.content).hexdigest()


class Standing(Struct, frozen=True, kw_only=True):
    """One file of the archive that an earlier build made of the very same, and that is made again only where it no longer stands.

    Attributes:
        path: Where it goes.
        size: How many bytes it has.
        digest: Their SHA-256, in hexadecimal.
        make: Makes them.
    """

    path: str
    size: int
    digest: str
    make: Callable[[], bytes]


File = Page | Standing


class Draft(Struct, frozen=True, kw_only=True):
    """One of several files that are made together, which by itself may be of the same as before.

    Attributes:
        path: Where it goes.
        key: Digest of what it is made of.
        content: Its bytes; None where it is as it stands.
    """

    path: str
    key: bytes
    content: bytes | None


class Drafts:
    """Makes those of several files that are not of the same as before."""

    def __init__(self, language: str = "", known: Mapping[str, bytes] = {}) -> None:
        """Begin with the language and the keys of what stands, by path."""
        self.language, self.known = language, known

    def file(self, path: str, of: Sequence[object], make: Callable[[], bytes]) -> Draft:
        """Return a file; made now where what it is made of has changed.

        Args:
            path: Where it goes.
            of: Everything that its bytes depend on, but for the program and the language.
            make: Makes its bytes.
        """
        key = key_of(self.language, *of)
        return Draft(path=path, key=key, content=None if self.known.get(path) == key else make())


Make = Callable[[Drafts], Iterable[Page | Draft]]
"""Makes files together; what it takes from the drafts may be left as it stands."""


def key_of(*of: object) -> bytes:
    """Return a digest of records, by their kinds and all that is in them."""
    made = hashlib.sha256()
    for one in of:
        content = one if isinstance(one, bytes) else packed(one)
        made.update(f"{type(one).__name__}{len(content)}\0".encode())
        made.update(content)
    return made.digest()


def content_of(file: File) -> bytes:
    """Return the bytes of a file, made if need be."""
    return file.content if isinstance(file, Page) else file.make()


class Maker(Protocol):
    """Makes files of the archive, or knows that they were made before."""

    def file(self, path: str, of: Sequence[object], make: Callable[[], bytes]) -> File:
        """Return a file.

        Args:
            path: Where it goes.
            of: Everything that its bytes depend on, but for the program and the language.
            make: Makes its bytes.
        """

    def files(self, name: str, of: Sequence[object], make: Make) -> Iterable[File]:
        """Return files that are made together.

        Args:
            name: What they are known by; no other files of the archive are.
            of: Everything that they and which of them there are depends on, but for the program and the language.
            make: Makes them.
        """


class AtOnce:
    """Makes everything, whatever was made before."""

    def file(self, path: str, of: Sequence[object], make: Callable[[], bytes]) -> File:  # noqa: ARG002 - it remembers nothing
        """Return a file, made now."""
        return Page(path=path, content=make())

    def files(self, name: str, of: Sequence[object], make: Make) -> Iterable[File]:  # noqa: ARG002 - the same
        """Return files, made now."""
        return (Page(path=file.path, content=file.content or b"") for file in make(Drafts()))
