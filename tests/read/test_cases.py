"""Every case file is a log or a fleet file whose comments say what must be found in it.

`# expect 3:9 weight-unreadable, error: '3 bskts' is no weight … write 3 baskets`: line and column, code, severity, and words
of the message and the hint in their order; ` … ` stands for words between them that are left out.
"""

import re
from pathlib import Path
from typing import NamedTuple

import pytest

from logbook.model.problem import Problem
from logbook.read.fleet import read_fleet
from logbook.read.trip import prepare, read_trip
from tests.read.logs import fleet

CASES = Path(__file__).parents[1] / "cases" / "read"

_EXPECT = re.compile(r"^# expect (\d+):(\d+) ([a-z0-9-]+), (error|warning|note): (.+)$", re.MULTILINE)


class Expected(NamedTuple):
    """A problem that must be found.

    Attributes:
        line: Line it stands on.
        column: Column it stands at.
        code: Its code.
        severity: How much it costs.
        words: Words of its message and hint.
    """

    line: int
    column: int
    code: str
    severity: str
    words: str


def cases() -> list[Path]:
    return sorted(CASES.glob("*.yaml"))


def expected(text: str) -> list[Expected]:
    """Return what the comments of a case say, in the order it stands."""
    found = [Expected(int(line), int(column), *rest) for line, column, *rest in _EXPECT.findall(text)]
    assert len(found) == text.count("# expect"), "a comment that begins with `# expect` is not of the form"
    return sorted(found)


def told(problems: tuple[Problem, ...]) -> list[Expected]:
    """Return problems in the form of a case, with all their words."""
    return sorted(
        Expected(p.place.line, p.place.column, p.code, str(p.severity), f"{p.message}; {p.hint}") for p in problems
    )


def assert_as_expected(problems: tuple[Problem, ...], text: str) -> None:
    """Assert that the problems are those that the comments of a case say, and are told in the fit form."""
    found, wanted = told(problems), expected(text)

    assert [each[:4] for each in found] == [each[:4] for each in wanted]
    for each, want in zip(found, wanted, strict=True):
        parts = want.words.split(" … ")
        assert re.search(".*".join(map(re.escape, parts)), each.words), f"{want} is not in {each.words}"
    log = _EXPECT.sub("", text)
    for problem in problems:
        name = problem.message.split(" ")[0]
        assert problem.message[0].islower() or not problem.message[0].isalpha() or name in log
        assert not problem.message.endswith(".")
        assert not problem.hint.endswith(".")


@pytest.mark.parametrize("case", cases(), ids=lambda case: case.stem)
def test_a_case_gives_the_problems_it_says(case: Path) -> None:
    data = case.read_bytes()

    if case.stem.startswith("fleet-"):
        problems = read_fleet(data, case.name)[1]
    else:
        trip, problems = read_trip(data, case.name, prepare(fleet()))
        assert (trip is None) == case.stem.startswith("no-trip")

    assert_as_expected(problems, data.decode("utf-8", "replace"))
