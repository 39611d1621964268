"""Watches logs from a second window, and says in one line, with the time before it, what changed and what is wrong now.

It looks at names, sizes and times of files every second, which works on disks, memory sticks and network shares alike; news that
a system gives of its own accord does not come from a share. What editors do while they save is waited for: some write a new file
and put it in the old one's place, some empty the file and write it again, some leave copies of their own beside it.
"""

import os
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from datetime import datetime
from pathlib import Path
from typing import TextIO

from msgspec import Struct

from logbook.cli.say import many, print_explained
from logbook.model.problem import Problem, Severity
from logbook.read.folder import nearest_fleet_file, shown_name

EVERY = 1.0
"""Seconds from look to look."""

SETTLE = 0.3
"""Seconds that files must stay as they are before they are read."""

PATIENCE = 2.1
"""Seconds to wait for a file that has just gone, or become empty: an editor may be about to write it."""

LONGEST = 10.0
"""Seconds after which a file is read that never stays as it is."""

AGAIN = 30
"""Looks after which something is tried again that could not be done, though no log has changed."""

_ENDINGS = (".yaml", ".yml", ".yaml.txt", ".yml.txt")
_EDITORS_OWN = (".", "~$")

Looks = Mapping[str, tuple[int, int]]
"""Name of every file that is watched, with its size and the time of its last change."""


class Change(Struct, frozen=True, kw_only=True):
    """Something that happened to the files.

    Attributes:
        what: In words; empty where nothing did, and what failed is to be tried again.
        gone: Whether what is watched is not there now.
    """

    what: str
    gone: bool = False


def look_at(paths: Sequence[Path]) -> Looks | None:
    """Return what the logs and fleet files of some paths look like; None where one of the paths is not there.

    Args:
        paths: Logs, fleet files and folders of them.
    """
    seen: dict[str, tuple[int, int]] = {}
    for path in paths:
        if path.is_dir():
            try:
                _look_below(path, seen)
            except OSError:
                return None
        elif path.exists():
            _look(path, seen)
        else:
            return None
        fleet = nearest_fleet_file(path / "log" if path.is_dir() else path)
        if fleet is not None:
            _look(fleet, seen)
    return seen


def _look_below(folder: Path, seen: dict[str, tuple[int, int]]) -> None:
    with os.scandir(folder) as entries:
        for entry in entries:
            if entry.name.startswith(_EDITORS_OWN):
                continue
            if entry.is_dir(follow_symlinks=False):
                try:
                    _look_below(Path(entry.path), seen)
                except OSError:
                    seen[entry.path] = (0, 0)
            elif entry.name.casefold().endswith(_ENDINGS):
                _look(Path(entry.path), seen)


def _look(path: Path, seen: dict[str, tuple[int, int]]) -> None:
    try:
        found = path.lstat()
    except OSError:
        return  # it has gone since its name was read
    seen[str(path)] = (found.st_size, found.st_mtime_ns)


class Watch:
    """Gives every change of some files, once they have come to rest.

    Attributes:
        failed: Whether what was to be done after the last change could not be done; then it is to be tried again.
    """

    def __init__(self, look: Callable[[], Looks | None], sleep: Callable[[float], None] = time.sleep) -> None:
        """Keep how files are looked at and how time passes, and take the first look."""
        self._look, self._sleep = look, sleep
        self._known = look()
        self.failed = False

    def __iter__(self) -> Iterator[Change]:
        """Give each change; what happens while one is dealt with is the next."""
        idle = 0
        while True:
            self._sleep(EVERY)
            idle += 1
            now = self._look()
            if now != self._known:
                now = self._settled(now)
            if now != self._known:
                before, self._known, idle = self._known, now, 0
                yield Change(what=told(before, now), gone=now is None)
            elif self.failed and now is not None and idle >= AGAIN:
                idle = 0
                yield Change(what="")

    def _settled(self, now: Looks | None) -> Looks | None:
        """Return how the files look once they stay so."""
        waited = 0.0
        while waited < LONGEST:
            self._sleep(SETTLE)
            waited += SETTLE
            again = self._look()
            if again == now and (waited >= PATIENCE or not self._is_half_done(now)):
                break
            now = again
        return now

    def _is_half_done(self, now: Looks | None) -> bool:
        """Tell whether a file has gone or become empty, which may be the middle of saving it."""
        known = self._known or {}
        return now is None or any(name not in now or (size and not now[name][0]) for name, (size, _) in known.items())


def told(before: Looks | None, now: Looks | None) -> str:
    """Return in words what is different."""
    if now is None:
        return "the logs are not there; waiting for them"
    if before is None:
        return "the logs are back"
    kinds = (
        ("new", [name for name in now if name not in before]),
        ("gone", [name for name in before if name not in now]),
        ("changed", [name for name in now if name in before and now[name] != before[name]]),
    )
    return ", ".join(f"{_named(names)} {kind}" for kind, names in kinds if names)


def _named(names: Sequence[str]) -> str:
    first = shown_name(Path(Path(min(names)).name))
    return first if len(names) == 1 else f"{first} and {len(names) - 1} more"


class News:
    """Says what changed in one line, and below it what is wrong that was not wrong before."""

    def __init__(
        self,
        show: Callable[[Sequence[Problem], TextIO], None] = print_explained,
        now: Callable[[], datetime] = datetime.now,
    ) -> None:
        """Begin with nothing known to be wrong; keep how problems are shown, and the clock."""
        self._show, self._now = show, now
        self._known: Counter[tuple[str, str, str]] = Counter()

    def start(self, problems: Iterable[Problem]) -> None:
        """Take what has been told already."""
        self._known = Counter(map(_same, problems))

    def say(self, line: str) -> None:
        """Say something with the time before it."""
        print(f"{self._now():%H:%M:%S} {line}", flush=True)

    def tell(self, line: str, problems: Sequence[Problem]) -> None:
        """Say what changed and what is wrong, then each problem that is new.

        Args:
            line: What changed, and what was done.
            problems: All that is wrong now, in order.
        """
        now = Counter(map(_same, problems))
        fresh, mended = now - self._known, self._known - now
        new = [problem for problem in problems if _took(fresh, _same(problem))]
        self._known = now
        parts = [f"{len(new)} new"] if 0 < len(new) < len(problems) else []
        parts += [f"{mended.total()} mended"] if mended else []
        counted = f"; {', '.join(parts)}" if parts else ""
        self.say(f"{line}: {wrong(problems)}{counted}")
        self._show(new, sys.stdout)
        sys.stdout.flush()


def wrong(problems: Sequence[Problem]) -> str:
    """Return how much is wrong, in words."""
    counts = Counter(problem.severity for problem in problems)
    return (
        ", ".join(many(counts[severity], severity.value) for severity in Severity if counts[severity])
        or "nothing wrong"
    )


def _same(problem: Problem) -> tuple[str, str, str]:
    """Return what a problem is known by; its line is not, since that changes with every line above it."""
    return problem.place.file, problem.code, problem.message


def _took(left: Counter[tuple[str, str, str]], key: tuple[str, str, str]) -> bool:
    """Take one of a kind, and tell whether there was one."""
    left[key] -= 1
    return left[key] >= 0
