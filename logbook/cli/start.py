"""Begin the log of a vessel's next trip, or with --fleet an empty folder of logs.

What is known is filled in from the fleet file and the vessel's earlier logs; a worked tow and the less usual keys stand below as
comments. Nothing that is there is ever overwritten. The logs are those of this folder; --logs names another.
"""

import os
from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from logbook.cli.say import CLEAN, NOT_WRITTEN, WRONG_USAGE, Failure, shown, tell, tell_faults
from logbook.cli.words import existing_folder
from logbook.model.fleet import FLEET_FILE

if TYPE_CHECKING:
    from logbook.begin.before import Before

READ_ME = "README.txt"
SCHEMAS = "schema"


def arguments(parser: ArgumentParser) -> None:
    """Add the vessel, and where the logs are."""
    parser.add_argument("vessel", metavar="VESSEL", nargs="?", help="her name, or her registration in the fleet file")
    where = parser.add_mutually_exclusive_group()
    where.add_argument(
        "--logs", metavar="FOLDER", type=existing_folder, default=Path(), help="the folder of logs, if not this one"
    )
    where.add_argument(
        "--fleet", metavar="FOLDER", type=Path, help="begin a folder of logs there, which is not there yet"
    )
    parser.add_argument("--trip", metavar="LABEL", help="the trip's number, if it is not one more than the last")


def run(asked: Namespace, now: datetime | None = None) -> int:
    """Write the log, or the folder, and return the exit status.

    Args:
        asked: What was typed.
        now: The moment it is; the machine's clock where it is not given.
    """
    from logbook.begin.fleet import MY_VESSEL
    from logbook.begin.typed import named
    from logbook.begin.write import AlreadyThereError

    moment = now or datetime.now(UTC)
    vessel = named(asked.vessel) if asked.vessel is not None else MY_VESSEL if asked.fleet is not None else ""
    label = named(asked.trip) if asked.trip is not None else None
    if not vessel:
        raise Failure("name the vessel, as in: logbook start 'Solan Bright'", WRONG_USAGE)
    if label == "":
        raise Failure(f"--trip: '{asked.trip}' is no label for a trip", WRONG_USAGE)
    try:
        if asked.fleet is not None:
            _folder(asked.fleet, vessel, label, moment, placeholder=asked.vessel is None)
        else:
            _log(asked.logs, vessel, label, moment)
    except AlreadyThereError as there:
        message = f"{shown(there.path)} is there already and stays as it is; nothing was written"
        raise Failure(message, NOT_WRITTEN) from None
    return CLEAN


def _log(logs: Path, name: str, label: str | None, now: datetime) -> Path:
    """Begin one log and return its path; say where it is, what it was filled in from and what is blank."""
    from logbook.begin.before import known_before
    from logbook.begin.name import Called, new_name
    from logbook.begin.trip import local_now, new_log
    from logbook.begin.write import put_down

    before, fleets = known_before(name, logs)
    if before.fleet_file is not None:
        tell_faults(before.fleet_file, fleets.problems, "the fleet file")
    _refuse_another_begun(before, label)
    number = label or before.next_number
    sailed = local_now(before.zone, now)
    path = new_name(Called(vessel=before.vessel, number=number, sailed=sailed), before.model, logs)
    log = new_log(before, number=number, sailed=sailed, schema=_schema_of(path, logs, before.fleet_file))
    put_down(path, log.text)
    for line in _remarks(before):
        tell(line)
    tell(f"wrote {shown(path)}: {', '.join(log.filled)} filled in; still blank: {', '.join(log.blank)}")
    tell(f"put the time of sailing right, write the tows below tows:, then: logbook check {_quoted(path)}")
    return path


def _refuse_another_begun(before: "Before", label: str | None) -> None:
    """Refuse a second log where the last was only just begun, most likely for this same trip."""
    last = before.last
    if label is None and last is not None and before.last_file is not None and not (last.tows or last.landings):
        message = f"{shown(before.last_file)} is begun and has no tows yet: keep that one, or give this one a number with --trip"
        raise Failure(message, NOT_WRITTEN)


def _remarks(before: "Before") -> Sequence[str]:
    """Return what wants a look, a line each."""
    said = []
    name = before.vessel.name
    if before.slip:
        said.append(f"'{before.slip}' is taken for {name}; if that is another vessel, write its name into the log")
    elif not before.known:
        hint = (
            f"; add it to the vessels of {shown(before.fleet_file)}"
            if before.fleet_file and before.fleet.vessels
            else ""
        )
        said.append(f"no log and no fleet file names '{name}'{hint}; nothing is known of her")
    elif before.fleet.vessels and not before.vessel.listed:
        said.append(f"the fleet file does not list {name}: only her earlier logs are gone by")
    if before.last is not None and before.last_file is not None and not before.last.landings:
        said.append(f"her last trip has no landing yet: {shown(before.last_file)}")
    return said


def _schema_of(log: Path, logs: Path, fleet_file: Path | None) -> str | None:
    """Return the path of the log's schema from the log's folder, as an editor wants it; None where there is none."""
    from logbook.begin.schema import TRIP_FILE

    roots = [logs, *([fleet_file.parent] if fleet_file is not None else [])]
    found = (at for root in roots for at in (root / SCHEMAS / TRIP_FILE, root / TRIP_FILE) if at.is_file())
    schema = next(found, None)
    if schema is None:
        return None
    path = os.path.relpath(schema, log.parent).replace(os.sep, "/")
    return path if path.startswith(".") else f"./{path}"


def _folder(folder: Path, name: str, label: str | None, now: datetime, *, placeholder: bool) -> None:
    """Begin a folder of logs: fleet file, words for people, schemas and the first log."""
    from logbook.begin.fleet import new_fleet_file, new_read_me
    from logbook.begin.schema import FLEET_FILE as FLEET_SCHEMA
    from logbook.begin.write import put_down
    from logbook.cli.schema import write_schemas

    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise Failure(f"{shown(folder)} is there and not empty; name a new folder", NOT_WRITTEN)
    put_down(folder / FLEET_FILE, new_fleet_file(name, f"./{SCHEMAS}/{FLEET_SCHEMA}"))
    write_schemas(folder / SCHEMAS)
    tell(f"wrote {shown(folder / FLEET_FILE)}: vessels, ports, grounds, and what a basket weighs; it says how")
    if placeholder:
        tell(f"she is called {name} there and in the first log until you write her name in both")
    log = _log(folder, name, label, now)
    put_down(folder / READ_ME, new_read_me(name, log.name))
    tell(f"wrote {shown(folder / READ_ME)}: what to do next, in plain words")


def _quoted(path: Path) -> str:
    """Return a path as it may be typed in a command."""
    text = shown(path)
    return f'"{text}"' if " " in text else text
