"""Say what is wrong in logs: every PATH may be a log, a fleet file or a folder of them.

One line a problem, as FILE:LINE:COLUMN: SEVERITY: MESSAGE; HINT [CODE]. An error is a figure that can't be used, a
warning one that is used but wants a look, a note something put right without loss. Below it, set in by blanks, stands the
line of the log with the place marked, and below that, behind `so`, the line as it should be where that is certain.
"""

import sys
from argparse import ArgumentParser, Namespace
from collections import Counter
from collections.abc import Callable, Collection, Iterable, Sequence
from datetime import UTC, datetime
from pathlib import Path
from typing import NoReturn, TextIO

from logbook.cli.say import many, print_explained, print_problems, status_of, tell
from logbook.cli.words import existing
from logbook.model.fleet import FLEET_FILE
from logbook.model.problem import Place, Problem, Severity
from logbook.model.trip import Trip
from logbook.read.folder import check_fleet_file, read_folder


def arguments(parser: ArgumentParser) -> None:
    """Add what is to be checked."""
    parser.add_argument(
        "paths", metavar="PATH", nargs="+", type=existing, help="a log, a fleet file, or a folder of logs"
    )
    parser.add_argument("--brief", action="store_true", help="one line a problem and nothing else")
    parser.add_argument("--watch", action="store_true", help="check again each time a log is saved, until Ctrl-C")


def run(asked: Namespace) -> int:
    """Print the problems of all the paths, each once, and return the exit status."""
    show = print_problems if asked.brief else print_explained
    if asked.watch:
        _watch(asked.paths, show)
    problems, logs = _found(asked.paths)
    show(problems, sys.stdout)
    if logs or not problems:
        tell(_counted(problems, logs))
    return status_of(problems)


def _watch(paths: Sequence[Path], show: Callable[[Sequence[Problem], TextIO], None]) -> NoReturn:
    """Check, and again whenever a log changes, until interrupted."""
    from logbook.cli.watch import News, Watch, look_at

    news, watch = News(show), Watch(lambda: look_at(paths))
    news.tell("watching, Ctrl-C ends it", _found(paths)[0])
    for change in watch:
        try:
            if change.gone:
                news.say(change.what)
            else:
                news.tell(change.what, _found(paths)[0])
        except OSError as fault:
            news.say(f"{change.what}, but can't be read: {fault.strerror or fault}")
    raise AssertionError  # a watch has no end of its own


def _found(paths: Iterable[Path]) -> tuple[Sequence[Problem], int]:
    """Return all that is wrong in some paths, in order, and how many logs they hold."""
    problems: set[Problem] = set()
    logs = 0
    for path in paths:
        if path.name.casefold() == FLEET_FILE and path.is_file():
            problems.update(check_fleet_file(path))
            continue
        folder = read_folder(path)
        logs += folder.logs
        problems.update(folder.problems)
        problems.update(_future(folder.trips, datetime.now(UTC)))
    return sorted(problems), logs


def _future(trips: Iterable[Trip], now: datetime) -> Iterable[Problem]:
    """Give a warning for every trip with a moment in the future by the machine's clock."""
    for trip in trips:
        moments = [(tow.hauled or tow.shot, tow.place) for tow in trip.tows]
        moments += [(landing.finished or landing.docked, landing.place) for landing in trip.landings]
        moments.append((trip.sailed, Place(file=trip.file, line=1, column=1)))
        late = [(moment, place) for moment, place in moments if moment is not None and moment > now]
        if late:
            moment, place = min(late)
            yield Problem(
                place=place,
                severity=Severity.WARNING,
                code="future",
                message=f"{moment:%Y-%m-%d %H:%M} lies in the future by this machine's clock",
                hint="see the date, and the clock",
            )


def _counted(problems: Collection[Problem], logs: int) -> str:
    """Return the summary of a check with what to do next."""
    counts = Counter(problem.severity for problem in problems)
    files = {problem.place.file for problem in problems}
    if not files:
        return f"{many(logs, 'log')}: nothing wrong"
    words = ", ".join(many(counts[severity], severity.value) for severity in Severity if counts[severity])
    said = f"{many(logs, 'log')}: {words} in {many(len(files), 'file')}"
    if counts[Severity.ERROR]:
        said += "; mend the errors and check again"
    code = next(problem.code for problem in sorted(problems))
    return f"{said}\nlogbook explain {code} says what that code means, and so for each of the others"
