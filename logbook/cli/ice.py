"""Say how much ice to take for a planned trip: by physics and by practice; the larger is advised.

The vessel's hold, the usual fish to ice and the units are those of the fleet file in this folder or the nearest one
above it; --logs names another folder. Exit status 1 if that file has errors.
"""

import json
from argparse import ArgumentParser, Namespace
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from logbook.cli.say import WRONG_USAGE, Failure, in_language_of, shown, status_of, tell_faults
from logbook.cli.words import existing_folder
from logbook.model.fleet import FLEET_FILE, Vessel
from logbook.model.names import fold_name
from logbook.read.fields import named_list
from logbook.read.folder import FleetFiles, nearest_fleet_file
from logbook.read.number import parse_number
from logbook.read.said import Said
from logbook.reckon.ice_to_take import ice_to_take

T = TypeVar("T")

MOST_DAYS = 60


def arguments(parser: ArgumentParser) -> None:
    """Add what is planned."""
    parser.add_argument("--vessel", metavar="NAME", required=True, help="a vessel of the fleet file")
    parser.add_argument("--days", metavar="N", required=True, help="days from sailing to docking")
    parser.add_argument("--catch", metavar="WEIGHT", required=True, help="fish to be kept, e.g. '40 t'")
    parser.add_argument("--sea", metavar="TEMPERATURE", required=True, help="of the sea, e.g. '8 C'")
    parser.add_argument(
        "--logs", metavar="FOLDER", type=existing_folder, default=Path(), help="where the fleet file is, if not here"
    )
    parser.add_argument("--json", action="store_true", help="one JSON object, for other programs")


def run(asked: Namespace) -> int:
    """Print the ice to take and return the exit status."""
    path = nearest_fleet_file(asked.logs / FLEET_FILE)
    if path is None:
        raise Failure(
            f"there is no {FLEET_FILE} in {shown(asked.logs)} or above it; name its folder with --logs", WRONG_USAGE
        )
    fleets = FleetFiles()
    wide = fleets.read(path)
    tell_faults(path, fleets.problems, "the fleet file")
    vessel = _vessel(asked.vessel, wide.fleet.vessels)
    days = _read("--days", asked.days, parse_number)
    if not 0 < days <= MOST_DAYS:
        raise Failure(f"--days: a trip takes up to {MOST_DAYS} days, not {asked.days}", WRONG_USAGE)
    ice = ice_to_take(
        vessel,
        wide.fleet,
        days=float(days),
        catch_kg=float(_read("--catch", asked.catch, wide.terms.weight).kilograms),
        sea_c=_read("--sea", asked.sea, wide.terms.temperature),
    )
    if asked.json:
        from logbook.model.export import record_as_json

        print(json.dumps({"vessel": vessel.name} | record_as_json(ice), indent=2, ensure_ascii=False, allow_nan=False))
    else:
        from logbook.render.ice_to_take import ice_text

        with in_language_of(wide.fleet):
            print(ice_text(vessel.name, ice))
    return status_of(fleets.problems)


def _vessel(typed: str, vessels: tuple[Vessel, ...]) -> Vessel:
    """Return the vessel of that name or registration."""
    for vessel in vessels:
        if fold_name(typed) in (fold_name(vessel.name), fold_name(vessel.registration or vessel.name)):
            return vessel
    names = named_list(vessel.name for vessel in vessels) if vessels else "none"
    raise Failure(f"--vessel: the fleet file has no vessel '{typed}'; it has {names}", WRONG_USAGE)


def _read(option: str, text: str, parse: Callable[[str], Said[T]]) -> T:
    """Return the value of an option; what can't be read is wrong usage."""
    said = parse(text)
    if said.value is None:
        fault = said.faults[0]
        raise Failure(f"{option}: {fault.message}{f'; {fault.hint}' if fault.hint else ''}", WRONG_USAGE)
    return said.value
