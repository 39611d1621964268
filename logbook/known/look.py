"""One log looked at, and read where it is not as it was; in this process or another."""

from pathlib import Path

from msgspec import Struct

from logbook.known.digest import digest
from logbook.model.entries import lean
from logbook.model.names import fold_name
from logbook.model.packed import packed
from logbook.model.placed import placed
from logbook.model.problem import Problem
from logbook.read.folder import fleet_in, open_file
from logbook.read.trip import read_trip
from logbook.reckon.head import head_of
from logbook.reckon.past import left_by
from logbook.reckon.rest import rested
from logbook.store.kept import squeezed
from logbook.store.trips import Part


class FleetFile(Struct, frozen=True, kw_only=True):
    """A fleet file that logs are read by.

    Attributes:
        data: Its bytes; None where there is none, or nothing of it can be read.
        shown: Its name.
        by: Short digest of it and of the logs folder's own fleet file.
    """

    data: bytes | None
    shown: str
    by: str


class Look(Struct, frozen=True, kw_only=True):
    """A log to be looked at.

    Attributes:
        path: Where it is.
        name: Its name within the logs folder.
        fleet: Which of the fleet files it is read by.
        stamp: What the system says of it; empty where that can't be relied on.
        known: Digest of what it was read from before.
    """

    path: str
    name: str
    fleet: int
    stamp: str
    known: bytes


class Read(Struct, frozen=True, kw_only=True):
    """What was read in a log.

    Attributes:
        content: Digest of its bytes and of the fleet files that it was read by; empty where it could not be opened.
        problems: What is wrong in it.
        vessel: Whose, with case folded; empty where no trip could be read.
        trip: Its trip, squeezed.
        rested: What it says of rest, packed.
        part: What the trip has to do with the vessel's others.
    """

    content: bytes
    problems: tuple[Problem, ...]
    vessel: str = ""
    trip: bytes = b""
    rested: bytes = b""
    part: Part | None = None


def read_one(fleets: tuple[FleetFile, ...], look: Look) -> Read | None:
    """Return what is read in a log; None where it is as it was."""
    data, problem = open_file(Path(look.path), look.name)
    if data is None:
        return Read(content=b"", problems=(problem,) if problem is not None else ())
    fleet = fleets[look.fleet]
    content = digest(fleet.by.encode(), data)
    if content == look.known:
        return None
    trip, problems = read_trip(data, look.name, fleet_in(fleet.data, fleet.shown)[0])
    if trip is None:
        return Read(content=content, problems=problems)
    bare, rest = packed(lean(trip)), packed(rested(trip))
    return Read(
        content=content,
        problems=problems,
        vessel=fold_name(trip.vessel.name),
        trip=squeezed(bare),
        rested=rest,
        part=Part(
            placed=placed(trip),
            left=left_by(trip),
            own=digest(bare, packed(problems)),
            typed=digest(data),
            rested=digest(rest),
            head=head_of(trip),
        ),
    )
