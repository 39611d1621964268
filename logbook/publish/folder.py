"""The archive's folder: the only place that writes. Everything is staged first and put in its place file by file.

A reader meets whole files only, and no link before what it leads to: style and charts go first, trips next, the pages that
list them after those, deletions last. Only files on the archive's own list are ever deleted or written over.
"""

import hashlib
import json
import os
from collections.abc import Iterable
from pathlib import Path, PurePosixPath

from filelock import FileLock, Timeout
from msgspec import Struct

from logbook.model.page import Page

MANIFEST = "archive-files.json"
LOCK = ".archive.lock"
_FORMAT = 1
_PART = ".part"
_WAIT_S = 30


class PublishError(Exception):
    """The archive could not be written; what stood there still stands."""


class Published(Struct, frozen=True, kw_only=True):
    """What a build changed.

    Attributes:
        files: How many files the archive has.
        written: How many of them were written anew.
        removed: How many old ones were removed.
    """

    files: int
    written: int
    removed: int


def publish(pages: Iterable[Page], folder: Path) -> Published:
    """Put the pages into the folder, so that a reader never meets a page cut short or a dead link.

    Args:
        pages: Every file of the archive, in any order; paths are relative and stay inside the folder.
        folder: Where the archive stands; made where it is not there.

    Returns:
        What was changed.

    Raises:
        PublishError: The folder can't be written, holds a file of that name that is not the archive's, or another build
            is still busy after half a minute.
    """
    staged = {page.path: page.content for page in pages}
    for path in staged:
        _check_inside(path)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with FileLock(folder / LOCK, timeout=_WAIT_S):
            return _replace_all(staged, folder)
    except Timeout as busy:
        raise PublishError(f"another build is writing {folder}; try again when it is done") from busy
    except OSError as fault:
        where = f"{fault.filename}: " if fault.filename else ""
        raise PublishError(f"could not write the archive: {where}{fault.strerror or fault}") from fault


def has_trips(folder: Path) -> bool:
    """Tell whether an archive with trips stands in the folder."""
    return any(path.startswith("trips/") for path in _read_manifest(folder))


def has_pages(folder: Path) -> bool:
    """Tell whether an archive with pages stands in the folder."""
    return any(path.endswith(".html") for path in _read_manifest(folder))


def _check_inside(path: str) -> None:
    parts = PurePosixPath(path).parts
    if not parts or path.startswith("/") or "\\" in path or any(part in ("..", ".") or ":" in part for part in parts):
        raise PublishError(f"a page would stand outside the archive: {path!r}")


def _replace_all(staged: dict[str, bytes], folder: Path) -> Published:
    """Write what changed, in an order in which no link is dead, then delete what the archive no longer has."""
    old = _read_manifest(folder)
    new = {path: hashlib.sha256(content).hexdigest() for path, content in staged.items()}
    changed = [path for path in sorted(staged, key=_order) if not _stands(folder / path, staged[path])]
    for path in changed:
        target = folder / path
        if target.exists() and path not in old:
            raise PublishError(f"{target} is not the archive's own file; move it, or build into another folder")
    # The list grows before files come and shrinks after files go, so that a build cut short is finished by the next.
    if changed or new.keys() - old.keys():
        _write_manifest(folder, old | new)
    for path in changed:
        _put(folder / path, staged[path])
    gone = sorted(old.keys() - new.keys())
    for path in gone:
        _remove(folder, path)
    if gone or old != new:
        _flush()
        _write_manifest(folder, new)
    return Published(files=len(new), written=len(changed), removed=len(gone))


def _order(path: str) -> tuple[int, str]:
    """Return a path's place in the order of writing: what is linked to before what links to it."""
    if not path.endswith(".html"):
        return 0, path
    if path == "index.html":
        return 3, path
    return (1, path) if path.startswith("trips/") else (2, path)


def _stands(target: Path, content: bytes) -> bool:
    """Tell whether a file stands there whole; its bytes are compared, since a power cut leaves sizes and times right."""
    try:
        return target.stat().st_size == len(content) and target.read_bytes() == content
    except (FileNotFoundError, NotADirectoryError):
        return False


def _put(target: Path, content: bytes) -> None:
    """Write a file beside its place and move it there in one step."""
    target.parent.mkdir(parents=True, exist_ok=True)
    part = target.with_name(f".{target.name}{_PART}")
    with part.open("wb") as file:
        file.write(content)
        file.flush()
    part.replace(target)


def _remove(folder: Path, path: str) -> None:
    """Delete one of the archive's own files, and its folder where that is now empty."""
    target = folder / path
    target.unlink(missing_ok=True)
    for parent in PurePosixPath(path).parents:
        if parent == PurePosixPath("."):
            break
        try:
            (folder / parent).rmdir()
        except OSError:
            break


def _read_manifest(folder: Path) -> dict[str, str]:
    """Return the archive's own list of its files with their digests; empty where there is none that can be read."""
    try:
        listed = json.loads((folder / MANIFEST).read_text("utf-8"))
        files = listed["files"]
        return {path: digest for path, digest in files.items() if isinstance(digest, str) and _is_inside(path)}
    except (FileNotFoundError, ValueError, KeyError, TypeError, AttributeError):
        return {}


def _is_inside(path: str) -> bool:
    try:
        _check_inside(path)
    except PublishError:
        return False
    return True


def _write_manifest(folder: Path, files: dict[str, str]) -> None:
    listed = {
        "about": "the archive's own files; a build deletes no others",
        "format": _FORMAT,
        "files": dict(sorted(files.items())),
    }
    _put(folder / MANIFEST, (json.dumps(listed, indent=1, ensure_ascii=True) + "\n").encode())


def _flush() -> None:
    """Ask the system to put on disk what was written."""
    if hasattr(os, "sync"):
        os.sync()
