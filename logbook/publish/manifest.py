"""The archive's own list of its files: what a build may replace and delete, and nothing else ever."""

import hashlib
import json
from collections.abc import Iterable, Mapping
from json.encoder import encode_basestring_ascii
from pathlib import Path, PurePosixPath

import msgspec
from msgspec import Struct

MANIFEST = "archive-files.json"
_FORMAT = 1


class Manifest(Struct, frozen=True, kw_only=True):
    """What stands in the list.

    Attributes:
        files: Path of every file that is the archive's, with the SHA-256 of its content.
        unlinked: Paths among them that no page leads to yet, or any more: a build was about to put them there or take them away.
        digest: SHA-256 of the list itself, as it stands; empty where there is none.
    """

    files: Mapping[str, str] = {}
    unlinked: frozenset[str] = frozenset()
    digest: str = ""


def read_manifest(folder: Path) -> Manifest:
    """Return the list of the archive in a folder; an empty one where there is none that can be read."""
    try:
        text = (folder / MANIFEST).read_bytes()
    except OSError:
        return Manifest()
    own = hashlib.sha256(text).hexdigest()
    try:
        listed = msgspec.json.decode(text)
        files = {
            path: digest for path, digest in listed["files"].items() if isinstance(digest, str) and is_inside(path)
        }
        unlinked = frozenset(path for path in listed.get("unlinked", ()) if path in files)
    except (msgspec.MsgspecError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return Manifest(digest=own)
    return Manifest(files=files, unlinked=unlinked, digest=own)


def manifest_text(files: Mapping[str, str], unlinked: Iterable[str] = ()) -> bytes:
    """Return the list as it is written."""
    head: dict[str, object] = {"about": "the archive's own files; a build deletes no others", "format": _FORMAT}
    apart = sorted(unlinked)
    if apart:
        head["unlinked"] = apart
    opened = json.dumps(head, indent=1, ensure_ascii=True).removesuffix("\n}")
    # Line by line, since json.dumps takes three times as long for the hundred thousand files of a large archive.
    lines = ",\n".join(f'  {encode_basestring_ascii(path)}: "{files[path]}"' for path in sorted(files))
    listed = f"{{\n{lines}\n }}" if files else "{}"
    return f'{opened},\n "files": {listed}\n}}\n'.encode()


def is_inside(path: str) -> bool:
    """Tell whether a path names a file inside the archive, on every system, that is not the list itself.

    No part of it is empty or begins with a dot; the archive's lock and what stands aside do.
    """
    closed = f"/{path}/"
    return (
        "//" not in closed
        and "/." not in closed
        and "\\" not in closed
        and ":" not in closed
        and "\0" not in closed
        and path != MANIFEST
    )


def has_trips(folder: Path) -> bool:
    """Tell whether an archive with trips stands in the folder, with pages or without."""
    return any(path.startswith("trips/") for path in read_manifest(folder).files)


def has_pages(folder: Path) -> bool:
    """Tell whether an archive with pages stands in the folder."""
    return any(path.endswith(".html") for path in read_manifest(folder).files)


def published_trips(folder: Path) -> frozenset[str]:
    """Return the ids of the trips that the archive in a folder has pages of, or an export has files of."""
    names = (path.removeprefix("trips/") for path in read_manifest(folder).files if path.startswith("trips/"))
    return frozenset(PurePosixPath(name).stem for name in names if "/" not in name)
