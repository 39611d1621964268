"""What the commands print: problems, counts, complaints and progress, with colours where they are wanted."""

import os
import sys
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Self, TextIO

from logbook.model.fleet import Fleet
from logbook.model.problem import Problem, Severity

CLEAN, FAULTY_LOGS, WRONG_USAGE, NOT_WRITTEN, INTERRUPTED = 0, 1, 2, 3, 130

_COLOURS = {Severity.ERROR: 31, Severity.WARNING: 33, Severity.NOTE: 36}


class Failure(Exception):  # noqa: N818 - it may be wrong usage, or logs at fault
    """A message for standard error and an exit status."""

    def __init__(self, message: str, status: int) -> None:
        """Keep the message and the status to leave with."""
        super().__init__(message)
        self.status = status


def tell(line: str) -> None:
    """Say something about the work itself, beside its result."""
    print(line, file=sys.stderr)


def complain(message: str) -> None:
    """Say what went wrong, in the form of a problem without a place."""
    tell(f"logbook: error: {message}")


def print_problems(problems: Iterable[Problem], to: TextIO) -> None:
    """Print a line for each problem, the word of its severity coloured on a terminal."""
    coloured = colours_wanted(to)
    for problem in problems:
        print(problem_line(problem, coloured=coloured), file=to)


def print_explained(problems: Sequence[Problem], to: TextIO) -> None:
    """Print each problem as a line that programs can read, and below those of one line of a log the line itself, marked."""
    if not problems:
        return
    from logbook.cli.quote import WIDTH, Quotes, by_line, can_show

    coloured = colours_wanted(to)
    width = max(40, os.get_terminal_size(to.fileno()).columns) if to.isatty() else WIDTH
    quotes = Quotes(_bytes_of, width, can_show(to.encoding))
    for same in by_line(problems):
        for problem in same:
            print(problem_line(problem, coloured=coloured), file=to)
        for line in quotes.below(same):
            faint = coloured and not line.lstrip(" |").startswith("^")
            print(f"\x1b[2m{line}\x1b[0m" if faint else line, file=to)


def problem_line(problem: Problem, *, coloured: bool) -> str:
    """Return the line of a problem, without any sign that could play tricks on a terminal."""
    line = str(problem)
    if not line.isprintable():
        from logbook.model.visible import visible

        line = visible(line)
    if coloured:
        word = problem.severity.value
        line = line.replace(f" {word}: ", f" \x1b[1;{_COLOURS[problem.severity]}m{word}\x1b[0m: ", 1)
    return line


def _bytes_of(file: str) -> bytes:
    """Return the bytes of a file that has problems; none where it is no longer there."""
    try:
        return Path(file).read_bytes()
    except OSError:
        return b""


def status_of(problems: Iterable[Problem]) -> int:
    """Return the exit status that problems of logs ask for."""
    return FAULTY_LOGS if any(problem.severity is Severity.ERROR for problem in problems) else CLEAN


def shown(path: Path) -> str:
    """Return a path that can be printed, whatever bytes are in its name."""
    return str(path).encode("utf-8", "replace").decode("utf-8")


def many(count: int, word: str) -> str:
    """Return a count with its word."""
    return f"{count} {word}" if count == 1 else f"{count} {word}s"


def tell_faults(file: Path, problems: Sequence[Problem], what: str = "this log") -> None:
    """Say that figures leave something out or are in doubt, and how to see what."""
    counts = [(problems_of(problems, severity), severity) for severity in (Severity.ERROR, Severity.WARNING)]
    said = " and ".join(many(count, severity.value) for count, severity in counts if count)
    if said:
        tell(f"{said} in {what}: logbook check {shown(file)}")


def problems_of(problems: Sequence[Problem], severity: Severity) -> int:
    """Return how many problems are of one severity."""
    return sum(problem.severity is severity for problem in problems)


@contextmanager
def in_language_of(fleet: Fleet) -> Iterator[None]:
    """Have the answers of a command in the language of the fleet; messages about logs and usage are English throughout."""
    from logbook.render.language import speaking, speech_of

    with speaking(speech_of(fleet.language)):
        yield


def colours_wanted(stream: TextIO) -> bool:
    """Tell whether to colour: on a terminal that can, unless NO_COLOR is set."""
    return stream.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


class Progress:
    """One line on standard error that says how far the work is; nothing where that is no terminal."""

    def __init__(self) -> None:
        """Begin with nothing shown."""
        self._shown = sys.stderr.isatty() and os.environ.get("TERM") != "dumb"
        self._last = ""

    def __enter__(self) -> Self:
        """Return itself, to be told each stage."""
        return self

    def __exit__(self, *exc: object) -> None:
        """Clear the line."""
        self("")

    def __call__(self, stage: str) -> None:
        """Show a stage in place of the one before."""
        if self._shown:
            sys.stderr.write(f"\r{stage.ljust(len(self._last))}" + ("" if stage else "\r"))
            sys.stderr.flush()
            self._last = stage
