"""Write the files for other programs that the archive of LOGS has, without its pages, to the folder DIR.

CSV tables and what their columns are (datapackage.json), figures of each trip (JSON), tracks and fasts (GeoJSON, GPX), a
feed (Atom) and a calendar (iCalendar) of landings. Exit status 1 if some log had an error. Nothing in DIR is deleted or
written over but the files of an earlier export. What an edition does not show is in none of them.
"""

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path

from logbook.build import NoLogsError
from logbook.build import export as export_files
from logbook.cli.say import FAULTY_LOGS, NOT_WRITTEN, Failure, Progress, many, print_problems, shown, status_of, tell
from logbook.cli.words import existing_folder
from logbook.model.edition import CREW, EDITIONS
from logbook.publish.folder import PublishError


def arguments(parser: ArgumentParser) -> None:
    """Add where the logs are and where the files go."""
    parser.add_argument("logs", metavar="LOGS", type=existing_folder, help="the folder of logs")
    parser.add_argument("folder", metavar="DIR", type=Path, help="the folder of the files; made where there is none")
    parser.add_argument(
        "--edition",
        metavar="EDITION",
        choices=EDITIONS,
        default=CREW,
        help="for whom: office, crew (where none is named) or public",
    )


def run(asked: Namespace) -> int:
    """Export, say what was done, and return the exit status."""
    try:
        with Progress() as progress:
            built = export_files(asked.logs, asked.folder, progress, asked.edition)
    except NoLogsError as nothing:
        raise Failure(str(nothing), FAULTY_LOGS) from nothing
    except PublishError as fault:
        raise Failure(str(fault), NOT_WRITTEN) from fault
    print_problems(built.problems, sys.stderr)
    for place, done in built.published:
        tell(
            f"{many(built.trips, 'trip')} of {many(built.logs, 'log')} exported to {shown(place)}: "
            f"{many(done.files, 'file')}, {done.written} written, {done.removed} removed"
        )
    if built.errors:
        tell(f"mend {many(built.errors, 'error')} above and export again")
    return status_of(built.problems)
