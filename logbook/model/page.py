"""What is published: files with their contents, and where in the archive they go."""

import hashlib
from collections.abc import Callable, Iterable
from typing import Protocol

from msgspec import Struct


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


def content_of(file: File) -> bytes:
    """Return the bytes of a file, made if need be."""
    return file.content if isinstance(file, Page) else file.make()


class Maker(Protocol):
    """Makes files of the archive, or knows that they were made before."""

    def file(self, path: str, of: tuple[object, ...], make: Callable[[], bytes]) -> File:
        """Return a file.

        Args:
            path: Where it goes.
            of: Everything that its bytes depend on, but for the program and the language.
            make: Makes its bytes.
        """

    def files(self, name: str, of: tuple[object, ...], make: Callable[[], Iterable[File]]) -> Iterable[File]:
        """Return files that are made together.

        Args:
            name: What they are known by; no other files of the archive are.
            of: Everything that they and which of them there are depends on, but for the program and the language.
            make: Makes them.
        """


class AtOnce:
    """Makes everything, whatever was made before."""

    def file(self, path: str, of: tuple[object, ...], make: Callable[[], bytes]) -> File:  # noqa: ARG002 - it remembers nothing
        """Return a file, made now."""
        return Page(path=path, content=make())

    def files(self, name: str, of: tuple[object, ...], make: Callable[[], Iterable[File]]) -> Iterable[File]:  # noqa: ARG002 - the same
        """Return files, made now."""
        return make()
