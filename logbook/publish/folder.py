"""The archive's folder: the only place that writes. Everything is staged first and put in its place file by file.

A reader meets whole files only, and no link before what it leads to: files that no page leads to yet come first, then those
that are replaced, and what no page leads to any more goes last. Only files on the archive's own list are ever deleted or
written over. Files are taken one by one, and none is held once it stands aside.
"""

import errno
import os
import time
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path

from msgspec import Struct

from logbook.model.built import Published, PublishError
from logbook.model.page import File, content_of
from logbook.model.seen import Seen, Unseen
from logbook.publish.lock import BusyError, alone
from logbook.publish.manifest import MANIFEST, Manifest, is_inside, manifest_text, read_manifest
from logbook.publish.staging import STAGING, Part, Staging, behind_link, there
from logbook.publish.standing import StandingFiles

_FRONT = "index.html"
_GRACE_S = 1.0
"""How long what has gone stays: a page that was opened just before still finds its charts and what it leads to."""
_FULL = {errno.ENOSPC, errno.EDQUOT, errno.EFBIG}


def publish(files: Iterable[File], folder: Path, seen: Seen | None = None, *, every: bool = False) -> Published:
    """Put the files into the folder, so that a reader never meets a page cut short or a dead link.

    Args:
        files: Every file of the archive, in any order; paths are relative and stay inside the folder. They are taken one by one
            while no other build can write there; where that raises an error, the archive stays as it stands.
        folder: Where the archive stands; made where it is not there.
        seen: Remembers how the last build left this archive; without it, the bytes of each file that stands are looked at.
        every: Whether they are looked at in any case.

    Returns:
        What was changed.

    Raises:
        PublishError: The folder can't be written, holds a file of that name that is not the archive's, or another build
            is still busy after half a minute.
    """
    if there(folder) and not folder.is_dir():
        raise PublishError(f"{folder} is a file or leads nowhere; name another place for the archive")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with alone(folder):
            return _replace_all(files, folder, seen or Unseen(), read_manifest(folder), every=every)
    except BusyError as busy:
        raise PublishError(str(busy)) from busy
    except OSError as fault:
        raise PublishError(f"could not write the archive: {_told(fault)}") from fault


def _told(fault: OSError) -> str:
    where = f"{fault.filename}: " if fault.filename else ""
    room = "; make room and build again" if fault.errno in _FULL else ""
    return f"{where}{fault.strerror or fault}{room}"


class _Staged(Struct, frozen=True, kw_only=True):
    """The files that were handed in, once what does not stand already is aside.

    Attributes:
        digests: Of each, by path.
        parts: Those that are aside.
    """

    digests: dict[str, str]
    parts: dict[str, Part]


def _replace_all(files: Iterable[File], folder: Path, seen: Seen, before: Manifest, *, every: bool) -> Published:
    """Write what changed, in an order in which no link is dead, then delete what the archive no longer has."""
    standing = StandingFiles(folder, seen, before, every=every)
    listed = before.digest
    with Staging(folder) as staging:
        staged = _stage(files, folder, before, standing, staging)
        new, parts = staged.digests, staged.parts
        gone = sorted(before.files.keys() - new.keys(), key=_order, reverse=True)
        began, unmoved = time.time_ns(), standing.unmoved() | staging.made
        if parts or before.unlinked or new != before.files:
            listed = _put_all(staged, gone, before, staging)
    left = standing.left(listed, len(new), unmoved, staging.changed)
    placed = {path: part.stamp(began) for path, part in parts.items()}
    forgotten = standing.forgotten(new).union(gone)
    if standing.found or placed or forgotten or left != seen.left():
        seen.keep(left, {**standing.found, **placed}, forgotten)
    return Published(files=len(new), written=len(parts), removed=len(gone))


def _stage(files: Iterable[File], folder: Path, before: Manifest, standing: StandingFiles, staging: Staging) -> _Staged:
    """Write aside what does not stand already, one file at a time."""
    digests: dict[str, str] = {}
    parts: dict[str, Part] = {}
    checked: set[Path] = set()
    for file in files:
        path, digest = file.path, file.digest
        parts.pop(path, None)
        if not standing.whole(path, digest):
            if not is_inside(path):
                raise PublishError(f"a page would stand outside the archive: {path!r}")
            _check_place(folder, path, before, checked)
            parts[path] = part = staging.write(content_of(file), path)
            digest = part.digest
        known = before.files.get(path)
        digests[path] = known if known == digest and known is not None else digest  # not a second time in memory
    return _Staged(digests=digests, parts=parts)


def _put_all(staged: _Staged, gone: Sequence[str], before: Manifest, staging: Staging) -> str:
    """Move into place what is whole aside, and return the digest of the list.

    The list names every file while it stands or may stand, so that a build cut short is finished by the next. What it calls
    unlinked may itself lead to what never came or is no more, and so the next build takes it away before anything else.
    Where no file comes and none goes, the list that stands names them all.
    """
    new, parts = staged.digests, staged.parts
    fresh = sorted((path for path in parts if path in before.unlinked or not staging.has(path)), key=_order)
    either = {**before.files, **new} if fresh or gone else new
    last = staging.write(manifest_text(new), MANIFEST)
    coming = staging.write(manifest_text(either, fresh), MANIFEST) if fresh else last
    linked = staging.write(manifest_text(either), MANIFEST) if fresh and gone else last
    going = staging.write(manifest_text(either, gone), MANIFEST) if gone else last
    left = [path for path in gone if path not in before.unlinked and path.endswith(".html") and staging.holds(path)]
    ways_back = {path: staging.write(way_back(path), path) for path in left if _FRONT in new}
    staging.flush_parts()
    for path in sorted(before.unlinked, key=_order, reverse=True):
        staging.remove(path)
    if fresh:
        _place({MANIFEST: coming}, staging)
        _place({path: parts[path] for path in fresh}, staging)
        _place({MANIFEST: linked}, staging)
    _place({path: parts[path] for path in sorted(parts.keys() - set(fresh), key=_order)}, staging)
    if gone:
        _place({MANIFEST: going}, staging)
        _place(ways_back, staging)
        _take_away(gone, staging)
    if gone or not fresh:
        _place({MANIFEST: last}, staging)
    return last.digest


def _place(parts: Mapping[str, Part], staging: Staging) -> None:
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


def _check_place(folder: Path, path: str, before: Manifest, checked: set[Path]) -> None:
    """Raise an error where a file can't be put, before it is written aside; each folder is checked once."""
    target = folder / path
    if target.is_dir() and not target.is_symlink():
        raise PublishError(f"{target} is a folder, and the archive has a file of that name; move it")
    if path not in before.files and there(target):
        known = "" if before.files else f" (no list of its files can be read in {MANIFEST})"
        raise PublishError(f"{target} is not the archive's own file{known}; move it, or build into another folder")
    for parent in (folder / STAGING, target.parent):
        if parent not in checked:
            _check_folder(parent, folder)
            checked.add(parent)


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
