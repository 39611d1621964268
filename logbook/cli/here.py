"""Look back at a place: what was caught near it at this time of other years, and the fasts near it.

POSITION is typed as in a log, e.g. '58 52N 015 10W'. The logs are those of this folder; --logs names another. The time
of year is that of the last thing in any log, else --at. A tow or a fast without a position is not found. Not navigation.
"""

import json
from argparse import ArgumentParser, Namespace
from datetime import UTC, datetime
from pathlib import Path

from logbook.cli.say import WRONG_USAGE, Failure, in_language_of, shown, tell
from logbook.cli.words import existing_folder, moment_in
from logbook.model.fleet import FLEET_FILE
from logbook.read.folder import FleetFiles, nearest_fleet_file, read_folder
from logbook.read.number import parse_number
from logbook.reckon.look_back import look_back
from logbook.reckon.trip import reckon_trips

MOST_WEEKS, MOST_MILES = 26, 100


def arguments(parser: ArgumentParser) -> None:
    """Add the place, and how far to look."""
    parser.add_argument("position", metavar="POSITION", help="as in a log, e.g. '58 52N 015 10W'")
    parser.add_argument("--weeks", metavar="N", default="3", help="weeks before and after; 3 where none are given")
    parser.add_argument("--within", metavar="NM", default="3", help="miles round the place; 3 where none are given")
    parser.add_argument("--at", metavar="TIME", help="the time of year, e.g. '2026-03-06 12:00'; or now")
    parser.add_argument(
        "--logs", metavar="FOLDER", type=existing_folder, default=Path(), help="the folder of logs, if not this one"
    )
    parser.add_argument("--json", action="store_true", help="one JSON object, for other programs")


def run(asked: Namespace) -> int:
    """Print the look back and return the exit status."""
    wide = FleetFiles().read(nearest_fleet_file(asked.logs / FLEET_FILE))
    said = wide.terms.position(asked.position)
    if said.value is None:
        fault = said.faults[0]
        raise Failure(f"{fault.message}{f'; {fault.hint}' if fault.hint else ''}", WRONG_USAGE)
    folder = read_folder(asked.logs)
    if not folder.trips:
        raise Failure(f"there is no trip in {shown(asked.logs)}; name the folder of logs with --logs", WRONG_USAGE)
    trips = reckon_trips(folder.trips, folder.fleet)
    latest = max((trip.figures.trip.last_word for trip in trips), default=datetime.now(UTC))
    back = look_back(
        trips,
        said.value,
        moment_in(asked.at, wide.fleet.zone) or latest,
        weeks=_number("--weeks", asked.weeks, MOST_WEEKS),
        within_nm=_number("--within", asked.within.lower().removesuffix("nm"), MOST_MILES),
    )
    if asked.json:
        from logbook.model.export import record_as_json

        print(json.dumps(record_as_json(back), indent=2, ensure_ascii=False, allow_nan=False))
    else:
        from logbook.render.look_back import look_back_text

        with in_language_of(wide.fleet):
            print(look_back_text(back, asked.position.strip()))
    if folder.unread:
        left = (
            "1 log cannot be read and is"
            if len(folder.unread) == 1
            else f"{len(folder.unread)} logs cannot be read and are"
        )
        tell(f"{left} left out: logbook check {asked.logs}")
    return 0


def _number(option: str, text: str, most: int) -> float:
    """Return a number over nothing and no larger than makes sense."""
    said = parse_number(text)
    if said.value is None or not 0 < said.value <= most:
        raise Failure(f"{option}: '{text}' is no number from 0 to {most}", WRONG_USAGE)
    return float(said.value)
