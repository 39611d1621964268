"""What is known of a vessel before her next trip: from the fleet file and from her earlier logs."""

import re
from pathlib import Path

from msgspec import Struct

from logbook.model.fleet import FLEET_FILE, Fleet, Vessel
from logbook.model.names import fold_name
from logbook.model.trip import Trip
from logbook.read.folder import FleetFiles, nearest_fleet_file, read_log
from logbook.read.keys import one_slip
from logbook.read.vessel_logs import VesselLog, read_heads

_LAST_NUMBER = re.compile(r"(\d+)(?!.*\d)", re.ASCII | re.DOTALL)
_SHORTEST_SLIP = 5
"""One letter more or less makes another of names as short as `Eva` and `Ela`."""


class Before(Struct, frozen=True, kw_only=True):
    """What is known.

    Attributes:
        vessel: Her entry in the fleet file, else one with her name alone.
        known: True where the fleet file or a log has her name.
        slip: What was typed, where it is a slip of the name it was taken for; empty where it is not.
        fleet: The fleet.
        fleet_file: Its file; None where there is none.
        last: Her latest log; None where she has none.
        last_file: That log.
        model: The log that a file name is modelled on, and its trip: her latest, else the fleet's latest.
    """

    vessel: Vessel
    known: bool
    slip: str
    fleet: Fleet
    fleet_file: Path | None
    last: Trip | None
    last_file: Path | None
    model: tuple[Path, Trip] | None

    @property
    def zone(self) -> str:
        """Return the zone her clocks go by: the last log's, else the vessel's, else the fleet's."""
        return self.last.zone if self.last is not None else self.vessel.zone or self.fleet.zone

    @property
    def usual_zone(self) -> str:
        """Return the zone of a log that names none."""
        return self.vessel.zone or self.fleet.zone

    @property
    def port(self) -> str | None:
        """Return the port she most likely sails from: where she last landed, else the home port, else as last time."""
        if self.last is None:
            return self.fleet.home_port
        landed = next((landing.port for landing in reversed(self.last.landings) if landing.port), None)
        return landed or self.last.bound_for or self.fleet.home_port or self.last.sailed_from

    @property
    def next_number(self) -> str | None:
        """Return the last trip's number and one; None where there was none or it holds no figure."""
        number = self.last.number if self.last is not None else None
        match = _LAST_NUMBER.search(number) if number else None
        if match is None or number is None:
            return None
        return f"{number[: match.start()]}{int(match[1]) + 1:0{len(match[1])}}{number[match.end() :]}"


def known_before(name: str, logs: Path) -> tuple[Before, FleetFiles]:
    """Return what is known of a vessel in a folder of logs, and the fleet files that were read.

    Args:
        name: As it was typed: a name, or a registration of the fleet file.
        logs: The folder.
    """
    fleets = FleetFiles()
    fleet_file = nearest_fleet_file(logs / FLEET_FILE)
    fleet = fleets.read(fleet_file).fleet
    heads = tuple(read_heads(logs, fleets))
    vessels = (*fleet.vessels, *(log.head.vessel for log in sorted(heads, key=_order, reverse=True)))
    found = _named(name, vessels)
    taken = found or _near(name, vessels)
    vessel = taken or Vessel(name=name, listed=False)
    own = [log for log in heads if fold_name(log.head.vessel.name) == fold_name(vessel.name)]
    latest = max(own, key=_order, default=None)
    last = read_log(latest.path, fleets)[0] if latest is not None else None
    pattern = latest or max(heads, key=_order, default=None)
    model = read_log(pattern.path, fleets)[0] if pattern is not None else None
    before = Before(
        vessel=vessel,
        known=taken is not None,
        slip=name if found is None and taken is not None else "",
        fleet=fleet,
        fleet_file=fleet_file,
        last=last,
        last_file=latest.path if latest is not None else None,
        model=(pattern.path, model) if pattern is not None and model is not None else None,
    )
    return before, fleets


def _order(log: VesselLog) -> tuple[object, str]:
    return log.head.begins, log.head.file


def _named(name: str, vessels: tuple[Vessel, ...]) -> Vessel | None:
    """Return the vessel of that name or registration, the fleet file's before those of logs."""
    folded = fold_name(name)
    named = (v for v in vessels if folded in (fold_name(v.name), fold_name(v.registration or v.name)))
    return next(named, None)


def _near(name: str, vessels: tuple[Vessel, ...]) -> Vessel | None:
    """Return the one vessel whose name lies within one slip of what was typed; None where none or several do."""
    folded = fold_name(name)
    near = {fold_name(v.name): v for v in reversed(vessels) if one_slip(folded, fold_name(v.name))}
    return next(iter(near.values())) if len(near) == 1 and len(folded) >= _SHORTEST_SLIP else None
