"""Publish the archive of the logs folder LOGS in the folder SITE.

All that can be read is published; exit status 1 if some log had an error. Nothing in SITE is deleted or written over
but the archive's own files. What an edition does not show is in none of its files: the crew's has no money, rest,
hail margins or log problems, the public's no names, words or fasts besides. Several editions go to SITE/EDITION each.
"""

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path

from logbook.build import NoLogsError
from logbook.build import build as build_archive
from logbook.cli.say import FAULTY_LOGS, NOT_WRITTEN, Failure, Progress, many, print_problems, shown, status_of, tell
from logbook.cli.words import existing_folder
from logbook.model.edition import CREW, EDITIONS
from logbook.model.problem import Severity
from logbook.publish.folder import PublishError


def arguments(parser: ArgumentParser) -> None:
    """Add where the logs are and where the archive goes."""
    parser.add_argument("logs", metavar="LOGS", type=existing_folder, help="the folder of logs")
    parser.add_argument("site", metavar="SITE", type=Path, help="the folder of the archive; made where there is none")
    parser.add_argument(
        "--edition",
        dest="editions",
        metavar="EDITION",
        choices=EDITIONS,
        action="append",
        help="for whom: office, crew (where none is named) or public; may be given several times",
    )


def run(asked: Namespace) -> int:
    """Build, say what was done and what to do next, and return the exit status."""
    try:
        with Progress() as progress:
            built = build_archive(asked.logs, asked.site, progress, tuple(dict.fromkeys(asked.editions or (CREW,))))
    except NoLogsError as nothing:
        raise Failure(str(nothing), FAULTY_LOGS) from nothing
    except PublishError as fault:
        raise Failure(str(fault), NOT_WRITTEN) from fault
    told = [problem for problem in built.problems if problem.severity is not Severity.NOTE]
    print_problems(told, sys.stderr)
    if len(built.problems) > len(told):
        tell(f"{many(len(built.problems) - len(told), 'note')} besides: logbook check {shown(asked.logs)}")
    for place, done in built.published:
        tell(
            f"{many(built.trips, 'trip')} of {many(built.logs, 'log')} published in {shown(place)}: "
            f"{many(done.files, 'file')}, {done.written} written, {done.removed} removed"
        )
    if built.errors:
        tell(f"mend {many(built.errors, 'error')} above and build again")
    for place, _ in built.published:
        tell(f"open {shown(place / 'index.html')}")
    return status_of(built.problems)
