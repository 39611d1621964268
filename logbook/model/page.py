"""What is published: files with their contents, and where in the archive they go."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """One file of the archive.

    Attributes:
        path: Where it goes, relative to the archive, parts joined by `/`.
        content: Its bytes.
    """

    path: str
    content: bytes
