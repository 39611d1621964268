"""The guides are followed to the letter: every example reads clean, every command in them runs as it stands."""

import re
import shlex
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from logbook.cli.main import COMMANDS
from logbook.model.problem import Severity
from logbook.read.fleet import read_fleet
from logbook.read.trip import prepare, read_trip
from logbook.render.guides import GUIDES, guide_of

ROOT = Path(__file__).parents[1]
FOLDER = ROOT / "templates" / "guides"
SAMPLE = ROOT / "sample_logs"
FILES = sorted(FOLDER.rglob("*.md"))

_BLOCK = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
_TYPED = re.compile(r"`(logbook [^`]*)`")
_UNTRIED = ("schtasks", "S:\\", "--watch")
"""What can't be run here: another system's commands, and one that goes on until it is stopped."""


def blocks(file: Path, kind: str) -> list[str]:
    return [body for named, body in _BLOCK.findall(file.read_text("utf-8")) if named == kind]


def typed(file: Path) -> Iterator[str]:
    yield from (line for body in blocks(file, "sh") for line in body.splitlines() if line)
    yield from (line.split(maxsplit=5)[5] for body in blocks(file, "cron") for line in body.splitlines() if line)
    yield from _TYPED.findall(_BLOCK.sub("", file.read_text("utf-8")))


def test_every_guide_is_listed_and_every_listed_one_is_there() -> None:
    assert {file.stem for file in FILES if file.parent == FOLDER} == set(GUIDES)
    assert all(guide_of(name, "en").body for name in GUIDES)


@pytest.mark.parametrize("file", FILES, ids=lambda file: f"{file.parent.name}-{file.stem}")
def test_every_kind_of_block_is_one_that_is_tried(file: Path) -> None:
    assert {kind for kind, _ in _BLOCK.findall(file.read_text("utf-8"))} <= {"yaml", "sh", "cron"}
    assert file.read_text("utf-8").count("```") == 2 * len(_BLOCK.findall(file.read_text("utf-8")))


@pytest.mark.parametrize("file", FILES, ids=lambda file: f"{file.parent.name}-{file.stem}")
def test_every_example_reads_clean(file: Path) -> None:
    fleet, faults = read_fleet((SAMPLE / "fleet.yaml").read_bytes(), "fleet.yaml")
    assert not faults
    for body in blocks(file, "yaml"):
        if body.startswith("vessel:"):
            trip, problems = read_trip(body.encode(), "trip-14.yaml", prepare(fleet))
            assert all(problem.severity is Severity.NOTE for problem in problems)
            assert trip is not None
            assert len(trip.tows) == 3
        else:
            assert not read_fleet(body.encode(), "fleet.yaml")[1]


@pytest.mark.parametrize("file", FILES, ids=lambda file: f"{file.parent.name}-{file.stem}")
def test_every_command_runs_as_it_stands(file: Path, tmp_path: Path) -> None:
    examples = blocks(FOLDER / "keeping.md", "yaml")
    (tmp_path / "trip-14.yaml").write_text(examples[0], "utf-8")
    (tmp_path / "fleet.yaml").write_bytes((SAMPLE / "fleet.yaml").read_bytes())
    ran = 0
    for line in typed(file):
        if any(word in line for word in _UNTRIED):
            assert shlex.split(line.replace("\\", "/"))[1] in COMMANDS
            continue
        ended = subprocess.run(
            [sys.executable, "-m", *shlex.split(line)],
            cwd=tmp_path, env={"PYTHONPATH": str(ROOT), "PATH": ""}, capture_output=True, text=True, check=False,
        )  # fmt: skip
        assert ended.returncode == 0, (line, ended.stderr)
        ran += 1
    assert ran


def test_the_guide_of_keeping_a_log_has_what_a_log_can_hold() -> None:
    example = blocks(FOLDER / "keeping.md", "yaml")[0]
    assert {"vessel:", "sailed:", "tows:", "readings:", "gear:", "landed:", "put back", "fast", "pen:"} <= set(
        re.findall(r"put back|fast\b|[a-z]+:", example)
    )
