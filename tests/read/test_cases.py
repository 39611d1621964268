"""Every case file is a log or a fleet file whose comments say what must be found in it."""

import re
from pathlib import Path

import pytest

from logbook.read.fleet import read_fleet
from logbook.read.trip import prepare, read_trip
from tests.read.logs import fleet

CASES = Path(__file__).parents[1] / "cases" / "read"
EXPECT = re.compile(r"# expect (\d+):(\d+) ([a-z-]+)")


def cases() -> list[Path]:
    return sorted(CASES.glob("*.yaml"))


@pytest.mark.parametrize("case", cases(), ids=lambda case: case.stem)
def test_a_case_gives_the_problems_it_says(case: Path) -> None:
    data = case.read_bytes()
    expected = sorted(
        (int(line), int(column), code) for line, column, code in EXPECT.findall(data.decode("utf-8", "replace"))
    )

    if case.stem.startswith("fleet-"):
        problems = read_fleet(data, case.name)[1]
    else:
        trip, problems = read_trip(data, case.name, prepare(fleet()))
        assert trip is not None or "no-trip" in case.stem

    assert [(p.place.line, p.place.column, p.code) for p in problems] == expected
    assert all(p.message[0].islower() or not p.message[0].isalpha() for p in problems)
    assert not any(p.message.endswith(".") for p in problems)
