"""Publish the archive of the logs folder LOGS in the folder SITE.

All that can be read is published; exit status 1 if some log had an error. Nothing in SITE is deleted or written over
but the archive's own files. The trip of a log that can no longer be read stays as it was last read, and says so. Where no
trip can be read at all the archive is left as it stands (exit status 1), unless --allow-empty is given. What an edition does not show is in none of its files: the crew's has no money, rest,
hail margins or log problems, the public's no names, words or fasts besides. Several editions go to SITE/EDITION each.
"""

from argparse import ArgumentParser, Namespace
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import NoReturn

from logbook.build import build as build_archive
from logbook.cli.publishing import add_allow_empty, carry_out
from logbook.cli.say import Failure, Progress, many, shown, status_of, tell
from logbook.cli.words import existing_folder
from logbook.model.built import Built, NoLogsError, PublishError
from logbook.model.edition import CREW, EDITIONS
from logbook.model.problem import Problem, Severity


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
    parser.add_argument(
        "--every-file",
        action="store_true",
        help="look at the bytes of every file of the archive, also where nothing says that it has changed",
    )
    parser.add_argument("--watch", action="store_true", help="build again each time a log is saved, until Ctrl-C")


def run(asked: Namespace) -> int:
    """Build, say what was done and what to do next, and return the exit status."""
    editions = tuple(dict.fromkeys(asked.editions or (CREW,)))

    def make(progress: Callable[[str], None]) -> Built:
        return build_archive(
            asked.logs, asked.site, progress, editions, allow_empty=asked.allow_empty, every=asked.every_file
        )

    if asked.watch:
        _watch(make, asked.logs)
    built = _first(make, asked.logs)
    return status_of(built.problems)


def _first(make: Callable[[Callable[[str], None]], Built], logs: Path) -> Built:
    """Build, and say all that is to be said of it."""
    built = carry_out(make, logs, "published in", "build again")
    for place, _ in built.published:
        tell(f"open {shown(place / 'index.html')}")
    return built


def _watch(make: Callable[[Callable[[str], None]], Built], logs: Path) -> NoReturn:
    """Build, and again whenever a log changes, until interrupted; where that fails the archive stays as it was."""
    from logbook.cli.watch import News, Watch, look_at

    news, watch = News(), Watch(lambda: look_at([logs]))
    try:
        news.start(_worth_telling(_first(make, logs)))
    except (Failure, OSError) as fault:
        watch.failed = True
        news.say(f"not published: {fault}")
    news.say("watching; Ctrl-C ends it")
    for change in watch:
        if change.gone:
            news.say(f"{change.what}; the archive stays as it is")
            continue
        what = f"{change.what}: " if change.what else ""
        try:
            with Progress() as progress:
                built = make(progress)
        except (NoLogsError, PublishError, OSError) as fault:
            if change.what:
                news.say(f"{what}not published: {fault}")
            watch.failed = True
        else:
            watch.failed = False
            written = sum(done.written for _, done in built.published)
            removed = sum(done.removed for _, done in built.published)
            files = f"{many(written, 'file')} written, {removed} removed"
            news.tell(f"{what}published, {files}", _worth_telling(built))
    raise AssertionError  # a watch has no end of its own


def _worth_telling(built: Built) -> Sequence[Problem]:
    """Return what is wrong in the logs, without notes, as a build tells it."""
    return [problem for problem in built.problems if problem.severity is not Severity.NOTE]
