"""The archive's own list of its files: what a build may replace and delete, and nothing else ever."""

import json
from collections.abc import Iterable, Mapping
from pathlib import Path, PurePosixPath

from msgspec import Struct

MANIFEST = "archive-files.json"
_FORMAT = 1


class Manifest(Struct, frozen=True, kw_only=True):
    """What stands in the list.

    Attributes:
        files: Path of every file that is the archive's, with the SHA-256 of its content.
        unlinked: Paths among them that no page leads to yet, or any more: a build was about to put them there or take them away.
    """

    files: Mapping[str, str] = {}
    unlinked: frozenset[str] = frozenset()


def read_manifest(folder: Path) -> Manifest:
    """Return the list of the archive in a folder; an empty one where there is none that can be read."""
    try:
        listed = json.loads((folder / MANIFEST).read_text("utf-8"))
        files = {
            path: digest for path, digest in listed["files"].items() if isinstance(digest, str) and is_inside(path)
        }
        unlinked = frozenset(path for path in listed.get("unlinked", ()) if path in files)
        return Manifest(files=files, unlinked=unlinked)
    except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return Manifest()


def manifest_text(files: Mapping[str, str], unlinked: Iterable[str] = ()) -> bytes:
    """Return the list as it is written."""
    listed: dict[str, object] = {"about": "the archive's own files; a build deletes no others", "format": _FORMAT}
    apart = sorted(unlinked)
    if apart:
        listed["unlinked"] = apart
    listed["files"] = dict(sorted(files.items()))
    return (json.dumps(listed, indent=1, ensure_ascii=True) + "\n").encode()


def is_inside(path: str) -> bool:
    """Tell whether a path names a file inside the archive, on every system, that is not the list itself."""
    parts = PurePosixPath(path).parts
    return (
        bool(parts)
        and path != MANIFEST
        and not path.startswith("/")
        and "\\" not in path
        and "\0" not in path
        and not any(part in ("..", ".") or ":" in part for part in parts)
    )


def has_trips(folder: Path) -> bool:
    """Tell whether an archive with trips stands in the folder, with pages or without."""
    return any(path.startswith("trips/") for path in read_manifest(folder).files)


def has_pages(folder: Path) -> bool:
    """Tell whether an archive with pages stands in the folder."""
    return any(path.endswith(".html") for path in read_manifest(folder).files)


def published_trips(folder: Path) -> frozenset[str]:
    """Return the ids of the trips that the archive in a folder has pages of, or an export has files of."""
    paths = map(PurePosixPath, read_manifest(folder).files)
    return frozenset(path.stem for path in paths if path.parent == PurePosixPath("trips"))
