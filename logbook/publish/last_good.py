"""Each trip as it was last read, kept in the archive itself for when its log can no longer be read.

A trip's records are kept as the edition shows them, so that a file of these never tells more than the pages do. They are named
after the log, and each folder above it, by digests: what logs are called is the office's alone.
"""

import hashlib
import lzma
from collections.abc import Callable, Iterable
from pathlib import Path, PurePosixPath

import msgspec
from msgspec import Struct
from msgspec.structs import replace

from logbook.model.figures import Neighbours, Reckoned
from logbook.model.packed import packed, unpacked
from logbook.model.page import Page
from logbook.model.trip import without_entries
from logbook.publish.manifest import read_manifest

FOLDER = "last-good"
_ENDING = ".json.xz"
_FORMAT = 1
"""Raised when the records of the model change their meaning; what they are made of is checked when they are read."""
_MOST = 64_000_000
"""More than any log of two megabytes comes to."""
_MEMORY = 16_000_000
"""More than it takes to read what was made small as below."""
_DIGEST = 12
_HOW = (
    {
        "id": lzma.FILTER_LZMA2,
        "dict_size": 1 << 20,
        "lc": 3,
        "lp": 0,
        "pb": 0,
        "mode": lzma.MODE_FAST,
        "nice_len": 128,
        "mf": lzma.MF_HC4,
        "depth": 8,
    },
)
"""How trips are made small: nothing of it is left to what a version of the library takes for a good choice."""


class _Kept(Struct, frozen=True, kw_only=True):
    """What a file holds."""

    format: int
    trip: Reckoned


def last_good_page(trip: Reckoned, log: str, scrub: Callable[[Reckoned], Reckoned]) -> Page:
    """Return a file from which a later build can show a trip again.

    Args:
        trip: As the edition shows it.
        log: The name of its log within the logs folder.
        scrub: Takes out of a trip what nobody has to know.
    """
    return Page(path=f"{_place(log)}{_ENDING}", content=_content(trip, scrub))


def read_last_good(folder: Path, unread: Iterable[str]) -> tuple[Reckoned, ...]:
    """Return the trips of logs that can't be read now but could be at an earlier build, marked as such.

    Args:
        folder: Where the archive stands.
        unread: Names within the logs folder of logs, or folders of them, that are there but can't be read.
    """
    names = sorted(unread)
    files = read_manifest(folder).files if names else {}
    listed = sorted(path for path in files if path.startswith(f"{FOLDER}/"))
    found: dict[str, Reckoned] = {}
    for name in names if listed else ():
        place = _place(name)
        for path in listed:
            if path == f"{place}{_ENDING}" or path.startswith(f"{place}/"):
                trip = _read(folder / path)
                if trip is not None:
                    file = name if path == f"{place}{_ENDING}" else f"{name}/{PurePosixPath(path).stem}"
                    found[path] = replace(trip, log=replace(trip.log, file=file), log_unread=True)
    return tuple(found.values())


def _content(trip: Reckoned, scrub: Callable[[Reckoned], Reckoned]) -> bytes:
    kept = packed(_Kept(format=_FORMAT, trip=_bare(scrub(trip))))
    return lzma.compress(kept, lzma.FORMAT_XZ, lzma.CHECK_CRC32, filters=_HOW)


def _read(path: Path) -> Reckoned | None:
    """Return the trip of a file; None where it is damaged or of another version of the program."""
    try:
        reader = lzma.LZMADecompressor(lzma.FORMAT_XZ, _MEMORY)
        kept = unpacked(reader.decompress(path.read_bytes(), _MOST), _Kept)
    except (OSError, EOFError, lzma.LZMAError, ValueError, RecursionError, msgspec.MsgspecError):
        return None
    return kept.trip if reader.eof and kept.format == _FORMAT else None


def _place(name: str) -> str:
    """Return where the trip of a log is kept: a digest for each folder above it, and one for the log."""
    parts = PurePosixPath(name).parts
    paths = ["/".join(parts[: n + 1]) for n in range(len(parts))]
    digests = [hashlib.sha256(path.encode("utf-8", "surrogatepass")).hexdigest()[:_DIGEST] for path in paths]
    return "/".join([FOLDER, *digests])


def _bare(trip: Reckoned) -> Reckoned:
    """Return a trip without what is found anew: its neighbours, what is wrong in its log, and the species' entries."""
    return replace(
        trip,
        log=without_entries(replace(trip.log, file="")),
        figures=replace(trip.figures, problems=()),
        neighbours=Neighbours(),
        log_unread=False,
    )
