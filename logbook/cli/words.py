"""The words after a command: paths that must be there, and moments."""

import sys
from argparse import ArgumentParser, ArgumentTypeError, RawDescriptionHelpFormatter
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from typing import NoReturn

from logbook.cli.say import WRONG_USAGE, Failure, complain
from logbook.model.problem import Problem
from logbook.model.trip import Trip


class Words(ArgumentParser):
    """The arguments of one command; what is typed wrongly is told in one line and by the exit status."""

    def format_help(self) -> str:
        """Return the help, with a few lines as people type them."""
        from logbook.cli.examples import examples_of

        self.epilog = examples_of(self.prog.rpartition(" ")[2])
        return super().format_help()

    def error(self, message: str) -> NoReturn:
        """Say what is wrong and where help is, and leave."""
        complain(f"{message}; {self.prog} --help says more")
        sys.exit(WRONG_USAGE)


_HELP = partial(RawDescriptionHelpFormatter, width=100)
"""A set width: to ask the terminal for its own costs two milliseconds even where no help is shown."""


def parser_of(name: str, said: str) -> Words:
    """Return the parser of a command, which says of it what its module says."""
    return Words(
        prog=f"logbook {name}",
        description=said.strip(),
        formatter_class=_HELP,
        allow_abbrev=False,
    )


def existing(text: str) -> Path:
    """Return the path of a file or folder that is there."""
    path = Path(text)
    if not path.exists():
        raise ArgumentTypeError(f"there is no file or folder {text}")
    return path


def existing_file(text: str) -> Path:
    """Return the path of a file that is there."""
    path = existing(text)
    if path.is_dir():
        raise ArgumentTypeError(f"{text} is a folder; name one log")
    return path


def existing_folder(text: str) -> Path:
    """Return the path of a folder that is there."""
    path = existing(text)
    if not path.is_dir():
        raise ArgumentTypeError(f"{text} is no folder")
    return path


def add_log(parser: ArgumentParser) -> None:
    """Give a command the log that it is about, and the moment that its figures are of."""
    parser.add_argument("log", metavar="LOG", type=existing_file, help="the log of the trip")
    parser.add_argument("--json", action="store_true", help="one JSON object, for other programs")
    parser.add_argument("--at", metavar="TIME", help="as things stood then, e.g. '2026-03-06 12:00'; or now")


def moment(text: str | None, trip: Trip) -> datetime | None:
    """Return the moment of `--at`: `now`, or a date and time, in the log's zone where it has no offset."""
    return moment_in(text, trip.zone)


def moment_in(text: str | None, zone_name: str) -> datetime | None:
    """Return the moment of `--at`, in a zone where it has no offset."""
    from logbook.read.moment import parse_stamp
    from logbook.read.node import Scalar
    from logbook.read.timeline import AFTER, Clock
    from logbook.read.zone import parse_zone

    if text is None:
        return None
    zone = parse_zone(zone_name).value or parse_zone("UTC").value
    assert zone is not None  # noqa: S101 - UTC is always known
    if text.strip().casefold() == "now":
        return zone.local(datetime.now(UTC))
    found: list[Problem] = []
    timed = Clock(zone, found).read(parse_stamp(text), Scalar("--at", 1, 1, 1, text), None, AFTER)
    if timed is None:
        said = found[-1] if found else None
        hint = said.hint if said and said.hint else "write '2026-03-06 12:00'"
        raise Failure(f"--at: {said.message if said else text}; {hint}", WRONG_USAGE)
    return timed.moment
