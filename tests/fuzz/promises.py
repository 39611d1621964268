"""What the reader promises of any bytes whatever, checked on some: it ends, it says where, and what it read can be reckoned."""

import re
import sys
from collections.abc import Callable
from functools import cache
from pathlib import Path
from types import FrameType

from logbook.model.problem import Problem
from logbook.model.trip import Trip
from logbook.read.fleet import read_fleet
from logbook.read.report import MAX_PROBLEMS, Report
from logbook.read.source import MAX_BYTES, _letters, one_line_end
from logbook.read.trip import Fleetwide, prepare, read_trip
from logbook.reckon.neighbours import with_past
from logbook.reckon.trip import reckon_trip
from tests.read.logs import FLEET

SAMPLE_FLEET = (Path(__file__).parents[2] / "sample_logs" / "fleet.yaml").read_bytes()

STEPS = 120_000
STEPS_A_BYTE = 40
"""How many calls reading may take: some to begin with, as a hundred faults cost alike in short logs and long ones, and some
for each byte. Clean logs take four a byte."""


@cache
def wide(data: bytes = FLEET.encode()) -> Fleetwide:
    """Return the fleet of a fleet file, ready to read logs by."""
    return prepare(read_fleet(data, "fleet.yaml")[0])


def hold(data: bytes, fleet: Fleetwide) -> tuple[Trip | None, tuple[Problem, ...]]:
    """Read a log, and reckon it where there is a trip in it; raises where a promise is broken.

    Args:
        data: The log's bytes.
        fleet: The fleet it is read by.
    """
    trip, problems = read_trip(data, "trip.yaml", fleet)
    assert_told(problems, data)
    if trip is None:
        assert any(problem.severity == "error" for problem in problems), "no trip, and nobody is told why"
        return trip, problems
    near = with_past([trip])[trip.file]
    reckon_trip(trip, fleet.fleet, near, problems=problems)
    return trip, problems


def hold_fleet(data: bytes, log: bytes) -> tuple[Problem, ...]:
    """Read a fleet file, and a log by it; raises where a promise is broken."""
    fleet, problems = read_fleet(data, "fleet.yaml")
    assert_told(problems, data)
    hold(log, prepare(fleet))
    return problems


def assert_told(problems: tuple[Problem, ...], data: bytes) -> None:
    """Assert that problems are in order, stand within the file and are in words that fit on a line."""
    text = one_line_end(_letters(data, Report("")) if len(data) <= MAX_BYTES else "")
    lines = text.split("\n")
    if "\n" not in text.rstrip():  # then odd separators may end lines
        lines = [text] * len(re.split("[\n\x85\u2028\u2029]", text))
    assert list(problems) == sorted(problems)
    assert len(problems) <= 3 * MAX_PROBLEMS
    for problem in problems:
        line, column = problem.place.line, problem.place.column
        assert 1 <= line <= len(lines), f"there is no such line: {problem}"
        assert 1 <= column <= len(lines[line - 1]) + 1, f"there is no such column: {problem}"
        assert str(problem).isprintable(), f"this can't be printed: {problem!r}"
        assert len(problem.message) + len(problem.hint) <= 1_400, f"nobody reads this: {problem}"


def steps(call: Callable[[], object]) -> int:
    """Return how many functions a call calls, those written in C with them: a measure of work that no clock knows of."""
    count = 0

    def counted(_frame: FrameType, event: str, _arg: object) -> None:
        nonlocal count
        count += event in ("call", "c_call")

    before = sys.getprofile()
    sys.setprofile(counted)
    try:
        call()
    finally:
        sys.setprofile(before)
    return count
