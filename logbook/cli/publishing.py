"""What building and exporting share: carried out with progress, and told in the same words."""

import sys
from argparse import ArgumentParser
from collections.abc import Callable
from pathlib import Path

from logbook.cli.say import FAULTY_LOGS, NOT_WRITTEN, Failure, Progress, many, print_problems, shown, tell
from logbook.model.built import Built, NoLogsError, PublishError
from logbook.model.problem import Severity


def add_allow_empty(parser: ArgumentParser) -> None:
    """Let a command empty what it published, where that is wanted."""
    parser.add_argument(
        "--allow-empty",
        action="store_true",
        help="publish also where no trip can be read, and so take all trips out of what stands there",
    )


def carry_out(make: Callable[[Callable[[str], None]], Built], logs: Path, did: str, again: str) -> Built:
    """Build or export, and say what was wrong in the logs and what was written.

    Args:
        make: Does it; is handed what it tells each stage to.
        logs: The folder of logs.
        did: What was done with the trips: `published in`.
        again: What to do once errors are mended: `build again`.

    Raises:
        Failure: No trip can be read, or the folder could not be written.
    """
    try:
        with Progress() as progress:
            built = make(progress)
    except NoLogsError as nothing:
        raise Failure(str(nothing), FAULTY_LOGS) from nothing
    except PublishError as fault:
        raise Failure(str(fault), NOT_WRITTEN) from fault
    told = [problem for problem in built.problems if problem.severity is not Severity.NOTE]
    print_problems(told, sys.stderr)
    if len(built.problems) > len(told):
        tell(f"{many(len(built.problems) - len(told), 'note')} besides: logbook check {shown(logs)}")
    if built.last_good:
        trips = many(built.last_good, "trip")
        tell(f"{trips} besides as last read: mend the log, or take it away and the trip goes with it")
    for place, done in built.published:
        tell(
            f"{many(built.trips, 'trip')} of {many(built.logs, 'log')} {did} {shown(place)}: "
            f"{many(done.files, 'file')}, {done.written} written, {done.removed} removed"
        )
    if built.errors:
        tell(f"mend {many(built.errors, 'error')} above and {again}")
    return built
