"""What is published: files with their contents, and where in the archive they go."""

from msgspec import Struct


class Page(Struct, frozen=True, kw_only=True):
    """One file of the archive.

    Attributes:
        path: Where it goes, relative to the archive, parts joined by `/`.
        content: Its bytes.
    """

    path: str
    content: bytes
