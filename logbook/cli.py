"""The `logbook` command: arguments, printing and exit status; what is done stands in the stages.

Exit status: 0 clean (warnings allowed), 1 errors in logs, 2 wrong usage, 3 could not write, 130 interrupted.
"""

import gc
import os
import sys
from collections.abc import Iterable
from datetime import UTC, datetime
from pathlib import Path
from typing import Self

import click

from logbook import __version__
from logbook.model.problem import Place, Problem, Severity
from logbook.model.trip import Trip

CLEAN, FAULTY_LOGS, WRONG_USAGE, NOT_WRITTEN, INTERRUPTED = 0, 1, 2, 3, 130

_COLOURS = {Severity.ERROR: "red", Severity.WARNING: "yellow", Severity.NOTE: "cyan"}

_LOG = click.Path(path_type=Path, exists=True)


class Failure(click.ClickException):
    """A message on standard error and an exit status."""

    def __init__(self, message: str, status: int) -> None:
        """Keep the message and the status to leave with."""
        super().__init__(message)
        self.status = status

    def show(self, file: object = None) -> None:  # noqa: ARG002 - standard error, whatever is asked
        """Print the message in the form of a problem without a place."""
        click.echo(f"logbook: error: {self.message}", err=True)


@click.group(context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(__version__, prog_name="logbook")
def commands() -> None:
    """Trip logs kept in any text editor: checked, reckoned and published as an archive.

    \b
    Examples:
      logbook check sample_logs              what is wrong in the logs, line by line
      logbook reckon LOG                     the figures of one trip
      logbook reckon LOG --json              the same for other programs
      logbook build sample_logs site         publish the archive; open site/index.html

    \b
    Exit status: 0 clean (warnings allowed), 1 errors in logs, 2 wrong usage, 3 could not write.
    """  # noqa: D301 - the escape keeps the lines of the help as they are


@commands.command()
@click.argument("paths", metavar="PATH...", nargs=-1, required=True, type=_LOG)
def check(paths: tuple[Path, ...]) -> None:
    """Say what is wrong in logs: every PATH may be a log, a fleet file or a folder of them.

    One line a problem, as FILE:LINE:COLUMN: SEVERITY: MESSAGE; HINT [CODE]. An error is a figure that can't be used, a
    warning one that is used but wants a look, a note something put right without loss.
    """
    from logbook.read.folder import FLEET_FILE, check_fleet_file, read_folder

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
    _print_problems(sorted(problems), err=False)
    errors = sum(problem.severity is Severity.ERROR for problem in problems)
    if logs or not problems:
        click.echo(_counted(problems, logs), err=True)
    sys.exit(FAULTY_LOGS if errors else CLEAN)


@commands.command()
@click.argument("log", metavar="LOG", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.option("--json", "as_json_text", is_flag=True, help="One JSON object, for other programs.")
@click.option("--at", "at_text", metavar="TIME", help="As things stood then, e.g. '2026-03-06 12:00'; or now.")
def reckon(log: Path, *, as_json_text: bool, at_text: str | None) -> None:
    """Reckon one trip: tows, catch, totals, how old the fish is, passage and landing.

    Figures are as of the docking where there is one, else --at TIME, else the last thing in the log; a TIME without an
    offset is in the log's zone. Exit status 1 if the log has errors; the figures leave out what they touch.
    """
    import json

    from logbook.read.folder import FleetFiles, read_log, read_vessel_heads
    from logbook.reckon.export import as_json
    from logbook.reckon.trip import neighbours_of, reckon_trip

    fleets = FleetFiles()
    trip, problems = read_log(log, fleets)
    problems = tuple(sorted({*problems, *fleets.problems}))
    if trip is None:
        _print_problems(problems, err=True)
        raise Failure(f"no trip can be read in {click.format_filename(log)}", FAULTY_LOGS)
    others = read_vessel_heads(log, trip, fleets)
    neighbours = neighbours_of((trip, *others))[trip.file]
    figures = reckon_trip(trip, fleets.of(log).fleet, neighbours, at=_moment(at_text, trip), problems=problems)
    if as_json_text:
        click.echo(json.dumps(as_json(figures), indent=2, ensure_ascii=False, allow_nan=False))
    else:
        from logbook.render.plain import plain_report

        click.echo(plain_report(trip, figures))
        _print_problems(problems, err=True)
    sys.exit(FAULTY_LOGS if any(p.severity is Severity.ERROR for p in problems) else CLEAN)


@commands.command()
@click.argument("logs", metavar="LOGS", type=click.Path(path_type=Path, exists=True, file_okay=False))
@click.argument("site", metavar="SITE", type=click.Path(path_type=Path, file_okay=False))
def build(logs: Path, site: Path) -> None:
    """Publish the archive of the logs folder LOGS in the folder SITE.

    All that can be read is published; exit status 1 if some log had an error. Nothing in SITE is deleted or written over
    but the archive's own files.
    """
    from logbook.build import NoLogsError
    from logbook.build import build as build_archive
    from logbook.publish.folder import PublishError

    try:
        with _Progress() as progress:
            built = build_archive(logs, site, progress)
    except NoLogsError as nothing:
        raise Failure(str(nothing), FAULTY_LOGS) from nothing
    except PublishError as fault:
        raise Failure(str(fault), NOT_WRITTEN) from fault
    _print_problems(built.problems, err=True)
    done = built.published
    click.echo(
        f"{_many(built.trips, 'trip')} of {_many(built.logs, 'log')} published in {click.format_filename(site)}: "
        f"{_many(done.files, 'file')}, {done.written} written, {done.removed} removed",
        err=True,
    )
    if built.errors:
        click.echo(f"mend {_many(built.errors, 'error')} above and build again", err=True)
    click.echo(f"open {click.format_filename(site / 'index.html')}", err=True)
    sys.exit(FAULTY_LOGS if built.errors else CLEAN)


def _moment(text: str | None, trip: Trip) -> datetime | None:
    """Return the moment of `--at`: `now`, or a date and time, in the log's zone where it has no offset."""
    from logbook.read.moment import parse_stamp
    from logbook.read.timeline import AFTER, Clock
    from logbook.read.zone import parse_zone

    if text is None:
        return None
    zone = parse_zone(trip.zone).value or parse_zone("UTC").value
    assert zone is not None  # noqa: S101 - UTC is always known
    if text.strip().casefold() == "now":
        return zone.local(datetime.now(UTC))
    found: list[Problem] = []
    place = Place(file="--at", line=1, column=1)
    timed = Clock(zone, found).read(parse_stamp(text), place, None, AFTER)
    if timed is None:
        said = found[-1] if found else None
        hint = said.hint if said and said.hint else "write '2026-03-06 12:00'"
        raise click.BadParameter(f"{said.message if said else text}; {hint}", param_hint="--at")
    return timed.moment


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


def _print_problems(problems: Iterable[Problem], *, err: bool) -> None:
    coloured = _colours_wanted(sys.stderr if err else sys.stdout)
    for problem in problems:
        line = str(problem)
        if coloured:
            word = f" {problem.severity}: "
            line = line.replace(
                word, f" {click.style(problem.severity, fg=_COLOURS[problem.severity], bold=True)}: ", 1
            )
        click.echo(line, err=err, color=coloured)


def _colours_wanted(stream: object) -> bool:
    """Tell whether to colour: on a terminal that can, unless NO_COLOR is set."""
    is_terminal = bool(getattr(stream, "isatty", lambda: False)())
    return is_terminal and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def _counted(problems: Iterable[Problem], logs: int) -> str:
    """Return the summary of a check with what to do next."""
    counts = dict.fromkeys(Severity, 0)
    files: set[str] = set()
    for problem in problems:
        counts[problem.severity] += 1
        files.add(problem.place.file)
    if not files:
        return f"{_many(logs, 'log')}: nothing wrong"
    words = ", ".join(_many(count, severity.value) for severity, count in counts.items() if count)
    said = f"{_many(logs, 'log')}: {words} in {_many(len(files), 'file')}"
    return f"{said}; mend the errors and check again" if counts[Severity.ERROR] else said


def _many(count: int, word: str) -> str:
    return f"{count} {word}" if count == 1 else f"{count} {word}s"


class _Progress:
    """One line on standard error that says how far a build is; nothing where that is no terminal."""

    def __init__(self) -> None:
        self._shown = _is_live_terminal()
        self._last = ""

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *exc: object) -> None:
        self("")

    def __call__(self, stage: str) -> None:
        """Show a stage in place of the one before."""
        if self._shown:
            sys.stderr.write(f"\r{stage.ljust(len(self._last))}" + ("" if stage else "\r"))
            sys.stderr.flush()
            self._last = stage


def _is_live_terminal() -> bool:
    return sys.stderr.isatty() and os.environ.get("TERM") != "dumb"


def main() -> None:
    """Run the command and leave with its exit status; no traceback for what a user can mend."""
    gc.set_threshold(100_000)  # records hold no cycles; looking for them costs more than reading a log
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")
    try:
        _run()
    except (click.Abort, KeyboardInterrupt):
        sys.exit(INTERRUPTED)
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(CLEAN)
    except OSError as fault:
        where = f"{fault.filename}: " if fault.filename else ""
        click.echo(f"logbook: error: {where}{fault.strerror or fault}", err=True)
        sys.exit(NOT_WRITTEN)


def _run() -> None:
    """Run the command; what it is told wrongly, and what fails in it, ends in a message and a status."""
    try:
        commands(prog_name="logbook", standalone_mode=False)
    except click.exceptions.NoArgsIsHelpError as asked:
        click.echo(asked.format_message(), err=True)
        sys.exit(WRONG_USAGE)
    except Failure as fault:
        fault.show()
        sys.exit(fault.status)
    except click.ClickException as misuse:
        misuse.show()
        sys.exit(misuse.exit_code)
    except click.exceptions.Exit as leaving:
        sys.exit(leaving.exit_code)
