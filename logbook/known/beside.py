"""What a vessel's logs have to say of each other's trips, found from small pieces of each."""

from collections.abc import Collection, Iterable, Iterator, Mapping

from msgspec.structs import replace

from logbook.known.digest import digest
from logbook.model.packed import packed
from logbook.model.placed import Clash, Head
from logbook.read.folder import across
from logbook.reckon.neighbours import beside, trip_id
from logbook.store.trips import Beside, Part


def beside_each(parts: Iterable[Part], as_they_were: Collection[str] = ()) -> Iterator[tuple[Part, Beside]]:
    """Give for each of one vessel's trips, in order, what bears on it.

    Args:
        parts: Of the trips, in any order.
        as_they_were: Logs among them that can't be read at present; nothing is told to be wrong between them and others.
    """
    own = sorted(parts, key=lambda part: part.placed.order)
    read = [part for part in own if part.placed.file not in as_they_were]
    clashes = _clashes(read)
    near = beside([part.placed for part in own], [part.left for part in own])
    for part, (neighbours, recent) in zip(own, near, strict=True):
        told = tuple(clashes.get(part.placed.file, ()))
        yield part, Beside(neighbours=neighbours, recent=recent, clashes=told)


def _clashes(own: Iterable[Part]) -> Mapping[str, list[Clash]]:
    """Return what is wrong between a vessel's logs, by the log it is told at."""
    same = {part.placed.file: part.typed for part in own}
    found: dict[str, list[Clash]] = {}
    for clash in across((part.placed for part in own), lambda one, other: same[one] == same[other]):
        found.setdefault(clash.file, []).append(clash)
    return found


def head_beside(part: Part, near: Beside) -> Head:
    """Return the head of a trip with its id."""
    at = part.placed
    return replace(part.head, id=trip_id(at.vessel, at.begins, near.neighbours.number_that_day))


def key_of(part: Part, near: Beside, parts: Mapping[str, Part], fleet: bytes) -> bytes:
    """Return what changes exactly when something does that a trip's figures hang on.

    Args:
        part: The trip's own.
        near: What bears on it.
        parts: Of all the vessel's trips, by log.
        fleet: Digest of the fleet.
    """
    return digest(fleet, part.own, packed(near), *(parts[file].rested for file in near.recent))
