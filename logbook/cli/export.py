"""Write the files for other programs that the archive of LOGS has, without its pages, to the folder DIR.

CSV tables and what their columns are (datapackage.json), figures of each trip (JSON), tracks and fasts (GeoJSON, GPX), a
feed (Atom) and a calendar (iCalendar) of landings. What has many rows a trip has a file for each year. Exit status 1 if some log had an error. Nothing in DIR is deleted or
written over but the files of an earlier export, and nothing where no trip can be read (exit status 1), unless --allow-empty
is given. What an edition does not show is in none of them.
"""

from argparse import ArgumentParser, Namespace
from pathlib import Path

from logbook.build.export import export as export_files
from logbook.cli.publishing import add_allow_empty, carry_out
from logbook.cli.say import status_of
from logbook.cli.words import existing_folder
from logbook.model.edition import CREW, EDITIONS


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
    add_allow_empty(parser)


def run(asked: Namespace) -> int:
    """Export, say what was done, and return the exit status."""
    built = carry_out(
        lambda progress: export_files(asked.logs, asked.folder, progress, asked.edition, allow_empty=asked.allow_empty),
        asked.logs,
        "exported to",
        "export again",
    )
    return status_of(built.problems)
