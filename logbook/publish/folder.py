"""The archive's folder: the only place that writes. Everything is staged first and put in its place file by file.

A reader meets whole files only, and no link before what it leads to: files that no page leads to yet come first, then those
that are replaced, and what no page leads to any more goes last. Only files on the archive's own list are ever deleted or
written over.
"""

import errno
import hashlib
import os
import time
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path

from msgspec import Struct

from logbook.model.page import File, Page, content_of
from logbook.publish.lock import BusyError, alone
from logbook.publish.manifest import MANIFEST, Manifest, is_inside, manifest_text, read_manifest
from logbook.publish.staging import STAGING, Staging, behind_link, clear_aside, there

_FRONT = "index.html"
_GRACE_S = 1.0
"""How long what has gone stays: a page that was opened just before still finds its charts and what it leads to."""
_FULL = {errno.ENOSPC, errno.EDQUOT, errno.EFBIG}


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


def publish(files: Iterable[File], folder: Path) -> Published:
    """Put the files into the folder, so that a reader never meets a page cut short or a dead link.

    Args:
        files: Every file of the archive, in any order; paths are relative and stay inside the folder.
        folder: Where the archive stands; made where it is not there.

    Returns:
        What was changed.

    Raises:
        PublishError: The folder can't be written, holds a file of that name that is not the archive's, or another build
            is still busy after half a minute.
    """
    staged = {file.path: file for file in files}
    for path in staged:
        if not is_inside(path):
            raise PublishError(f"a page would stand outside the archive: {path!r}")
    if there(folder) and not folder.is_dir():
        raise PublishError(f"{folder} is a file or leads nowhere; name another place for the archive")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with alone(folder):
            return _replace_all(staged, folder)
    except BusyError as busy:
        raise PublishError(str(busy)) from busy
    except OSError as fault:
        raise PublishError(f"could not write the archive: {_told(fault)}") from fault


def _told(fault: OSError) -> str:
    where = f"{fault.filename}: " if fault.filename else ""
    room = "; make room and build again" if fault.errno in _FULL else ""
    return f"{where}{fault.strerror or fault}{room}"


def _replace_all(staged: dict[str, File], folder: Path) -> Published:
    """Write what changed, in an order in which no link is dead, then delete what the archive no longer has."""
    clear_aside(folder)
    before = read_manifest(folder)
    new = {path: _digest(file) for path, file in staged.items()}
    changed = [path for path in staged if path in before.unlinked or not _stands(folder / path, new[path])]
    gone = sorted(before.files.keys() - new.keys(), key=_order, reverse=True)
    if changed or before != Manifest(files=new):
        _check_places(folder, changed, before)
        with Staging(folder) as staging:
            parts = {}
            for path in changed:
                content = content_of(staged[path])
                new[path] = hashlib.sha256(content).hexdigest()
                parts[path] = staging.write(content, path)
            _put_all(parts, gone, new, before, staging)
    return Published(files=len(new), written=len(changed), removed=len(gone))


def _put_all(
    parts: dict[str, Path], gone: Sequence[str], new: dict[str, str], before: Manifest, staging: Staging
) -> None:
    """Move into place what is whole aside.

    The list names every file while it stands or may stand, so that a build cut short is finished by the next. What it calls
    unlinked may itself lead to what never came or is no more, and so the next build takes it away before anything else.
    """
    fresh = sorted((path for path in parts if path in before.unlinked or not staging.has(path)), key=_order)
    either = {**before.files, **new}
    lists = [manifest_text(either, fresh), manifest_text(either), manifest_text(either, gone), manifest_text(new)]
    first, linked, apart, last = (staging.write(text, MANIFEST) for text in lists)
    left = [path for path in gone if path not in before.unlinked and path.endswith(".html") and staging.holds(path)]
    ways_back = {path: staging.write(way_back(path), path) for path in left if _FRONT in new}
    for path in sorted(before.unlinked, key=_order, reverse=True):
        staging.remove(path)
    _place({MANIFEST: first}, staging)
    _place({path: parts[path] for path in fresh}, staging)
    _place({MANIFEST: linked}, staging)
    _place({path: parts[path] for path in sorted(parts.keys() - set(fresh), key=_order)}, staging)
    if gone:
        _place({MANIFEST: apart}, staging)
        _place(ways_back, staging)
        _take_away(gone, staging)
    _place({MANIFEST: last}, staging)


def _place(parts: Mapping[str, Path], staging: Staging) -> None:
    """Move files into place, and go on when the disk knows of it."""
    for path, part in parts.items():
        staging.place(part, path)
    staging.flush()


def way_back(path: str) -> bytes:
    """Return what stands in a page's place until it is taken away: it leads to nothing but the front page.

    Pages that have gone lead to each other, and who wanders among them would meet a dead link when they are deleted.
    """
    front = "../" * path.count("/") + _FRONT
    return (
        '<!DOCTYPE html>\n<html><head><meta charset="utf-8"><title>→</title>'
        f'<meta http-equiv="refresh" content="0; url={front}"></head>'
        f'<body><p><a href="{front}">→</a></p></body></html>\n'
    ).encode()


def _take_away(gone: Sequence[str], staging: Staging) -> None:
    """Delete files that no page leads to any more."""
    if any(staging.holds(path) for path in gone):
        time.sleep(_GRACE_S)
    for path in gone:
        staging.remove(path)
    staging.flush()


def _order(path: str) -> tuple[int, str]:
    """Return a path's place in the order of writing: what pages load before pages, and the front page last."""
    if not path.endswith(".html"):
        return 0, path
    if path == _FRONT:
        return 3, path
    return (1, path) if path.startswith("trips/") else (2, path)


def _digest(file: File) -> str:
    return hashlib.sha256(file.content).hexdigest() if isinstance(file, Page) else file.digest


def _stands(target: Path, digest: str) -> bool:
    """Tell whether a file stands there whole; its bytes are looked at, since a power cut leaves sizes and times right."""
    try:
        return not target.is_symlink() and hashlib.sha256(target.read_bytes()).hexdigest() == digest
    except (FileNotFoundError, NotADirectoryError, IsADirectoryError):
        return False


def _check_places(folder: Path, changed: Iterable[str], before: Manifest) -> None:
    """Raise an error where a file can't be put, before anything is written."""
    _check_folder(folder / STAGING, folder)
    folders = set()
    for path in changed:
        target = folder / path
        folders.add(target.parent)
        if target.is_dir() and not target.is_symlink():
            raise PublishError(f"{target} is a folder, and the archive has a file of that name; move it")
        if path not in before.files and there(target):
            known = "" if before.files else f" (no list of its files can be read in {MANIFEST})"
            raise PublishError(f"{target} is not the archive's own file{known}; move it, or build into another folder")
    for parent in sorted(folders):
        _check_folder(parent, folder)


def _check_folder(parent: Path, folder: Path) -> None:
    """Raise an error where a folder of the archive is a link or a file, or can't be written."""
    if parent != folder and (parent.is_symlink() or behind_link(folder, parent)):
        raise PublishError(f"{parent} is or leads through a link out of the archive; put a folder in its place")
    for one in (parent, *parent.parents):
        if one.is_dir():
            if not os.access(one, os.W_OK):
                raise PublishError(f"{one} can't be written to; see whose it is and whether it is locked")
            return
        if there(one):
            raise PublishError(f"{one} is a file, and the archive has a folder of that name; move it")
