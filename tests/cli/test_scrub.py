"""Scrubbing a log writes a copy and its fleet file beside it, never over anything, and says how far it is what the log is."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from logbook.read.folder import read_folder

SAMPLE = Path(__file__).parents[2] / "sample_logs"
LOG = "vessel: Solan Bright\nskipper: M. Aldane\nsailed: 2026-03-04 05:30\nskiper: x\ntows:\n  - 1810-1940, cod 2 baskts\n"


def scrub(*words: str | Path, cwd: Path) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "logbook", "scrub", *map(str, words)]
    return subprocess.run(command, cwd=cwd, capture_output=True, text=True, check=False)  # noqa: S603 - as a person does


@pytest.fixture
def logs(tmp_path: Path) -> Path:
    shutil.copy(SAMPLE / "fleet.yaml", tmp_path)
    (tmp_path / "trip.yaml").write_text(LOG)
    return tmp_path


def test_a_copy_is_written_that_no_folder_takes_for_a_log(logs: Path) -> None:
    done = scrub("trip.yaml", cwd=logs)

    assert done.returncode == 0
    assert done.stdout == ""
    assert "scrubbed-log.txt and scrubbed-log-fleet.txt written; 3 problems as in trip.yaml" in done.stderr
    assert "look it over before you send it" in done.stderr
    assert "Aldane" not in (logs / "scrubbed-log.txt").read_text()
    assert (logs / "trip.yaml").read_text() == LOG
    assert read_folder(logs).logs == 1


def test_the_copy_has_the_same_problems_read_with_the_copy_of_the_fleet_file(logs: Path, tmp_path: Path) -> None:
    away = tmp_path / "away"
    away.mkdir()
    scrub("trip.yaml", "-o", away / "log.yaml", cwd=logs)
    (away / "log-fleet.yaml").rename(away / "fleet.yaml")

    problems = read_folder(away / "log.yaml").problems

    wanted = read_folder(logs / "trip.yaml").problems
    assert [(p.place.line, p.code) for p in problems] == [(p.place.line, p.code) for p in wanted]


@pytest.mark.parametrize("there", ["scrubbed-log.txt", "scrubbed-log-fleet.txt"])
def test_nothing_is_written_over(logs: Path, there: str) -> None:
    (logs / there).write_text("mine")

    done = scrub("trip.yaml", cwd=logs)

    assert done.returncode == 3
    assert f"{there} is there already; name another with -o" in done.stderr
    assert (logs / there).read_text() == "mine"


def test_the_log_itself_is_not_written_over(logs: Path) -> None:
    assert scrub("trip.yaml", "-o", "trip.yaml", cwd=logs).returncode == 3
    assert (logs / "trip.yaml").read_text() == LOG


def test_a_fleet_file_alone_has_one_copy(logs: Path) -> None:
    done = scrub("fleet.yaml", cwd=logs)

    assert done.returncode == 0
    assert "Kerrin" not in (logs / "scrubbed-log.txt").read_text()
    assert not (logs / "scrubbed-log-fleet.txt").exists()


def test_a_log_without_a_fleet_file_has_one_copy(tmp_path: Path) -> None:
    (tmp_path / "trip.yaml").write_bytes(b"\xff\xfev\0e\0s\0\t\0:")

    assert scrub("trip.yaml", cwd=tmp_path).returncode == 0
    assert not (tmp_path / "scrubbed-log-fleet.txt").exists()


def test_what_is_not_there_is_wrong_usage(tmp_path: Path) -> None:
    assert scrub("trip.yaml", cwd=tmp_path).returncode == 2
    assert scrub(tmp_path, cwd=tmp_path).returncode == 2
