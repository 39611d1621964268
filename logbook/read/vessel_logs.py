"""The other logs of a vessel: found by their first keys, and read whole only where more is asked of them."""

import os
import re
from collections.abc import Iterable, Iterator
from pathlib import Path

from msgspec import Struct

from logbook.model.names import fold_name
from logbook.model.problem import Severity
from logbook.model.trip import Trip
from logbook.read.folder import FleetFiles, find_logs, nearest_fleet_file, open_file, read_log, shown_name
from logbook.read.trip import read_trip

_HEAD = re.compile(rb"(vessel|zone|sailed)[ \t]*:[ \t]+[^ \t#>|&*!]", re.IGNORECASE)
_ZONE = re.compile(rb"[?\"' \t]*zone", re.IGNORECASE)
"""A line that may give the zone, however it is typed: one that is passed over would put the sailing hours off."""


class VesselLog(Struct, frozen=True, kw_only=True):
    """Another log of the vessel.

    Attributes:
        path: Where it is.
        head: Its trip, as far as vessel and sailing tell.
    """

    path: Path
    head: Trip


def other_logs(log: Path, trip: Trip, fleets: FleetFiles) -> tuple[VesselLog, ...]:
    """Return the same vessel's other logs, in order of their names.

    Only the first keys of the logs are read, so that a fleet of many years costs little.

    Args:
        log: The log of the trip.
        trip: The trip.
        fleets: Fleet files read so far.
    """
    root = nearest_fleet_file(log)
    folder = root.parent if root is not None else log.parent
    heads = read_heads(folder if folder != Path() else Path(), fleets, but=log)
    return tuple(head for head in heads if fold_name(head.head.vessel.name) == fold_name(trip.vessel.name))


def read_heads(folder: Path, fleets: FleetFiles, *, but: Path | None = None) -> Iterator[VesselLog]:
    """Give the logs below a folder as far as vessel and sailing tell, in order of their names.

    Args:
        folder: The folder.
        fleets: Fleet files read so far.
        but: A log that is left out.
    """
    for path in find_logs(folder, []):
        head = None if but is not None and _same_file(path, but) else _read_head(path, fleets)
        if head is not None:
            yield VesselLog(path=path, head=head)


def read_earlier(others: Iterable[VesselLog], trip: Trip, fleets: FleetFiles) -> tuple[Trip, ...]:
    """Return the whole trips of the other logs that began before a trip, in order of time; what can't be read is left out."""
    earlier = [log for log in others if (log.head.begins, log.head.file) < (trip.begins, trip.file)]
    earlier.sort(key=lambda log: (log.head.begins, log.head.file))
    read = (read_log(log.path, fleets)[0] for log in earlier)
    return tuple(one for one in read if one is not None)


def _same_file(one: Path, other: Path) -> bool:
    return os.path.abspath(one) == os.path.abspath(other)  # noqa: PTH100 - resolve() would follow links


def _read_head(path: Path, fleets: FleetFiles) -> Trip | None:
    """Return a trip of the top-level lines for vessel, zone and sailing alone; of the whole log where they don't do."""
    data, _ = open_file(path, "")
    if data is None:
        return None
    wide = fleets.of(path)
    shown = shown_name(path)
    lines = data.splitlines()
    plain = [line for line in lines if _HEAD.match(line)]
    if all(_HEAD.match(line) for line in lines if _ZONE.match(line)):
        head, problems = read_trip(b"\n".join(plain), shown, wide)
        if head is not None and head.sailed is not None and not any(p.severity is Severity.ERROR for p in problems):
            return head
    return read_trip(data, shown, wide)[0]
