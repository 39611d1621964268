"""Watching logs: changes are told once they have come to rest, however an editor saves, and nothing ends the watch but Ctrl-C."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from datetime import datetime
from pathlib import Path
from queue import Empty, Queue
from threading import Thread
from typing import TextIO

import pytest

from logbook.cli.watch import AGAIN, EVERY, LONGEST, Change, Looks, News, Watch, look_at, told
from logbook.model.problem import Place, Problem, Severity

ONE: Looks = {"logs/a.yaml": (10, 1)}
CHANGED: Looks = {"logs/a.yaml": (12, 2)}
EMPTY: Looks = {"logs/a.yaml": (0, 2)}
NONE: Looks = {}


class Disk:
    """A disk that looks in turn as it is told to, and then stays so; it ends the watch when enough time has gone."""

    def __init__(self, *looks: Looks | None, seconds: float = 60.0) -> None:
        self._looks, self._left = list(looks), seconds
        self.slept: list[float] = []

    def look(self) -> Looks | None:
        return self._looks.pop(0) if len(self._looks) > 1 else self._looks[0]

    def sleep(self, seconds: float) -> None:
        self.slept.append(seconds)
        self._left -= seconds
        if self._left < 0:
            raise KeyboardInterrupt


def seen(*looks: Looks | None, seconds: float = 60.0, failed: bool = False) -> list[Change]:
    """Return every change that a watch gives of a disk."""
    disk = Disk(*looks, seconds=seconds)
    watch = Watch(disk.look, disk.sleep)
    watch.failed = failed
    found: list[Change] = []
    with pytest.raises(KeyboardInterrupt):  # noqa: PT012 - it ends in the middle of the loop
        for change in watch:
            found += [change]
    return found


def test_nothing_is_told_while_nothing_changes() -> None:
    assert seen(ONE) == []


def test_a_change_is_told_once() -> None:
    assert seen(ONE, ONE, CHANGED) == [Change(what="a.yaml changed")]


@pytest.mark.parametrize("between", [EMPTY, NONE, None])
def test_an_editor_in_the_middle_of_saving_is_waited_for(between: Looks | None) -> None:
    assert seen(ONE, between, between, between, CHANGED) == [Change(what="a.yaml changed")]


def test_a_file_that_is_replaced_by_the_same_is_no_change() -> None:
    assert seen(ONE, NONE, ONE) == []


def test_a_file_that_grows_and_grows_is_read_at_last() -> None:
    grows: list[Looks] = [{"logs/a.yaml": (size, size)} for size in range(10, 500)]

    assert seen(*grows, seconds=LONGEST + 2 * EVERY)[:1] == [Change(what="a.yaml changed")]


def test_a_file_that_stays_away_or_empty_is_told_so() -> None:
    assert seen(ONE, NONE) == [Change(what="a.yaml gone")]
    assert seen(ONE, EMPTY) == [Change(what="a.yaml changed")]


def test_a_folder_that_goes_and_comes_back_is_told_so() -> None:
    assert [change.what for change in seen(ONE, *[None] * 30, ONE)] == [
        "the logs are not there; waiting for them",
        "the logs are back",
    ]


def test_what_failed_is_tried_again_though_nothing_changed() -> None:
    assert seen(ONE, failed=True, seconds=AGAIN * EVERY + 0.5) == [Change(what="")]
    assert seen(ONE, seconds=10 * AGAIN * EVERY) == []


@pytest.mark.parametrize(
    ("before", "now", "words"),
    [
        ({"d/a.yaml": (1, 1)}, {"d/a.yaml": (1, 1), "d/b.yaml": (1, 1)}, "b.yaml new"),
        ({"d/a.yaml": (1, 1)}, {"d/b.yaml": (1, 1)}, "b.yaml new, a.yaml gone"),
        ({"a": (1, 1), "b": (1, 1), "c": (1, 1)}, {"a": (2, 1), "b": (1, 2), "c": (2, 2)}, "a and 2 more changed"),
        ({"d/a\x1b.yaml": (1, 1)}, {"d/a\x1b.yaml": (2, 1)}, "a\\x1b.yaml changed"),
    ],
)
def test_what_changed_is_told_in_few_words(before: Looks, now: Looks, words: str) -> None:
    assert told(before, now) == words


def test_what_editors_leave_beside_a_log_is_not_looked_at(tmp_path: Path) -> None:
    for name in (".a.yaml.swp", ".#a.yaml", "a.yaml~", "a.yaml.bak", "~$a.yaml", "a.yaml.tmp", "4913", "notes.txt"):
        (tmp_path / name).write_text("x")
    (tmp_path / ".git").mkdir()
    (tmp_path / ".git" / "a.yaml").write_text("x")
    (tmp_path / "2026").mkdir()
    (tmp_path / "2026" / "a.yaml").write_text("x")
    (tmp_path / "fleet.yaml").write_text("x")

    found = look_at([tmp_path])

    assert found is not None
    assert {Path(name).relative_to(tmp_path).as_posix() for name in found} == {"2026/a.yaml", "fleet.yaml"}


def test_of_one_log_its_fleet_file_is_looked_at_too(tmp_path: Path) -> None:
    (tmp_path / "fleet.yaml").write_text("x")
    (tmp_path / "2026").mkdir()
    log = tmp_path / "2026" / "a.yaml"
    log.write_text("x")

    assert sorted(look_at([log]) or ()) == [str(log), str(tmp_path / "fleet.yaml")]
    assert sorted(look_at([log.parent]) or ()) == [str(log), str(tmp_path / "fleet.yaml")]
    log.unlink()
    assert look_at([log]) is None


def problem(line: int, message: str = "it is wrong") -> Problem:
    place = Place(file="a.yaml", line=line, column=1)
    return Problem(place=place, severity=Severity.ERROR, code="no-unit", message=message)


def news() -> News:
    def shown(problems: Sequence[Problem], to: TextIO) -> None:
        to.writelines(map(str, problems))

    return News(shown, lambda: datetime(2026, 3, 4, 18, 42, 10))  # noqa: DTZ001 - a clock on the wall


def test_what_is_new_is_shown_below_one_line_with_the_time(capsys: pytest.CaptureFixture[str]) -> None:
    tells = news()
    tells.tell("watching", [problem(3)])
    capsys.readouterr()

    tells.tell("a.yaml changed", [problem(4), problem(9, "that is wrong too")])
    assert capsys.readouterr().out == (
        "18:42:10 a.yaml changed: 2 errors; 1 new\na.yaml:9:1: error: that is wrong too [no-unit]"
    )

    tells.tell("a.yaml changed", [])
    assert capsys.readouterr().out.strip() == "18:42:10 a.yaml changed: nothing wrong; 2 mended"


LOG = "vessel: Solan Bright\nsailed: 2026-03-04 05:30\ntows:\n  - 1810-1940, cod 80 kg\n"
WRONG = LOG.replace("tows:", "crew: 11.5\ntows:")


def written(log: Path, text: str) -> None:
    """Save as most editors do: the file is emptied and written again."""
    with log.open("w") as file:
        file.flush()
        time.sleep(0.1)
        file.write(text)


def replaced(log: Path, text: str) -> None:
    """Save as editors do that write beside the file and put that in its place."""
    beside = log.with_name(f".{log.name}.new")
    beside.write_text(text)
    beside.replace(log)


def moved_away(log: Path, text: str) -> None:
    """Save as Vim does with a backup: the file is moved aside and written anew, with a swap file meanwhile."""
    swap, backup = log.with_name(f".{log.name}.swp"), log.with_name(f"{log.name}~")
    swap.write_text("b0VIM")
    log.replace(backup)
    time.sleep(0.1)
    log.write_text(text)
    swap.unlink()


def deleted_first(log: Path, text: str) -> None:
    """Save as some tools for shares do: the file is deleted, and after a while written."""
    log.unlink()
    time.sleep(0.4)
    log.write_text(text)


class Running:
    """The command in a window of its own, and the lines it says."""

    def __init__(self, *words: str | Path) -> None:
        self.process = subprocess.Popen(  # noqa: S603 - it runs the command as a person does
            [sys.executable, "-m", "logbook", *map(str, words)],
            stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, encoding="utf-8",
        )  # fmt: skip
        self._lines: Queue[str] = Queue()
        self._reader = Thread(target=self._read, daemon=True)
        self._reader.start()

    def _read(self) -> None:
        assert self.process.stdout is not None
        with self.process.stdout as told:
            for line in told:
                self._lines.put(line.rstrip("\n"))

    def until(self, words: str) -> list[str]:
        """Return the lines up to one that has some words in it."""
        lines: list[str] = []
        try:
            while not lines or words not in lines[-1]:
                lines.append(self._lines.get(timeout=20))
        except Empty:
            self.process.kill()
            self.end()
            pytest.fail(f"no line with {words!r} in {lines}")
        return lines

    def interrupt(self) -> int:
        """Press Ctrl-C and return the exit status."""
        self.process.send_signal(signal.SIGINT)
        return self.end()

    def end(self) -> int:
        """Wait for the end, and return the exit status."""
        status = self.process.wait(timeout=60)
        self._reader.join(timeout=60)
        return status


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is sent otherwise there")
@pytest.mark.parametrize("saved", [written, replaced, moved_away, deleted_first])
def test_every_way_of_saving_is_seen(tmp_path: Path, saved: Callable[[Path, str], None]) -> None:
    log = tmp_path / "trip.yaml"
    log.write_text(LOG)
    running = Running("check", "--watch", tmp_path)

    running.until("watching, Ctrl-C ends it: nothing wrong")
    saved(log, WRONG)
    lines = running.until("^")
    assert lines[0][8:] == " trip.yaml changed: 1 error"
    assert "[" in lines[1]
    saved(log, LOG)
    assert running.until("mended")[-1][8:] == " trip.yaml changed: nothing wrong; 1 mended"
    assert running.interrupt() == 130


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is sent otherwise there")
def test_a_build_goes_on_after_one_that_failed(tmp_path: Path) -> None:
    logs, site = tmp_path / "logs", tmp_path / "site"
    logs.mkdir()
    (logs / "trip.yaml").write_text(LOG)
    running = Running("build", "--watch", logs, site)

    running.until("watching")
    front = (site / "index.html").read_bytes()
    (logs / "trip.yaml").replace(tmp_path / "elsewhere.yaml")
    assert "not published" in running.until("trip.yaml gone")[-1]
    assert (site / "index.html").read_bytes() == front
    logs.rename(tmp_path / "away")
    running.until("the logs are not there; waiting for them; the archive stays as it is")
    (tmp_path / "away").rename(logs)
    running.until("the logs are back")
    (logs / "trip.yaml").write_text(LOG.replace("80 kg", "90 kg"))
    assert "published, " in running.until("trip.yaml new")[-1]
    assert (site / "index.html").read_bytes() != front
    assert running.interrupt() == 130
