"""Publish the archive of the logs folder LOGS in the folder SITE.

All that can be read is published; exit status 1 if some log had an error. Nothing in SITE is deleted or written over
but the archive's own files. The trip of a log that can no longer be read stays as it was last read, and says so. Where no
trip can be read at all the archive is left as it stands (exit status 1), unless --allow-empty is given. What an edition does not show is in none of its files: the crew's has no money, rest,
hail margins or log problems, the public's no names, words or fasts besides. Several editions go to SITE/EDITION each.
"""

from argparse import ArgumentParser, Namespace
from pathlib import Path

from logbook.build import build as build_archive
from logbook.cli.publishing import add_allow_empty, carry_out
from logbook.cli.say import shown, status_of, tell
from logbook.cli.words import existing_folder
from logbook.model.edition import CREW, EDITIONS


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
    add_allow_empty(parser)


def run(asked: Namespace) -> int:
    """Build, say what was done and what to do next, and return the exit status."""
    editions = tuple(dict.fromkeys(asked.editions or (CREW,)))
    built = carry_out(
        lambda progress: build_archive(asked.logs, asked.site, progress, editions, allow_empty=asked.allow_empty),
        asked.logs,
        "published in",
        "build again",
    )
    for place, _ in built.published:
        tell(f"open {shown(place / 'index.html')}")
    return status_of(built.problems)
