"""Every problem code is explained, and each explanation holds: its bad sample is told so, its good one reads clean."""

from datetime import UTC, datetime

import pytest

from logbook.cli.check import _future
from logbook.model.codes import CHAPTERS, ENTRIES, Entry, Where
from logbook.model.problem import Problem
from logbook.read.fleet import read_fleet
from logbook.read.trip import prepare, read_trip
from tests.read.logs import fleet
from tests.read.test_cases_codes import DECLARED

HEAD = "vessel: Solan Bright\nsailed: 2026-03-04 05:30\n"
TOWS = "tows:\n  - 1810-1940, cod 2 baskets\n"
ONLY_IN_CHECK = {"future"}
NOW = datetime(2026, 12, 1, tzinfo=UTC)

SAMPLED = [entry for entry in ENTRIES.values() if entry.where is not Where.FILE]


def whole(entry: Entry, sample: str) -> str:
    """Return the file that a sample is a part of."""
    if entry.where is Where.TOWS:
        return f"{HEAD}tows:\n" + "".join(f"  {line}\n" for line in sample.split("\n"))
    if entry.where is Where.LOG:
        return f"{HEAD}{sample}\n" if "tows:" in sample else f"{HEAD}{TOWS}{sample}\n"
    return f"{sample}\n"


def codes_of(entry: Entry, sample: str) -> set[str]:
    """Return the codes of all that the reader finds in a sample."""
    data = whole(entry, sample).encode()
    found: list[Problem]
    if entry.where is Where.FLEET:
        found = list(read_fleet(data, "fleet.yaml")[1])
    else:
        trip, problems = read_trip(data, "trip.yaml", prepare(fleet()))
        found = [*problems, *(_future([trip], NOW) if trip is not None else ())]
    return {problem.code for problem in found}


def test_every_code_is_explained_and_nothing_else() -> None:
    assert sorted(ENTRIES) == sorted(DECLARED | ONLY_IN_CHECK)


def test_no_code_is_explained_twice() -> None:
    listed = [entry.code for chapter in CHAPTERS for entry in chapter.entries]

    assert len(listed) == len(set(listed))
    assert all([*(e.code for e in c.entries)] == sorted(e.code for e in c.entries) for c in CHAPTERS)


@pytest.mark.parametrize("entry", SAMPLED, ids=lambda entry: entry.code)
def test_a_bad_sample_is_told_so(entry: Entry) -> None:
    assert entry.code in codes_of(entry, entry.bad)


@pytest.mark.parametrize("entry", SAMPLED, ids=lambda entry: entry.code)
def test_a_good_sample_reads_clean(entry: Entry) -> None:
    assert codes_of(entry, entry.good) == set()


@pytest.mark.parametrize("entry", ENTRIES.values(), ids=lambda entry: entry.code)
def test_an_explanation_is_in_whole_sentences(entry: Entry) -> None:
    for words in (entry.means, entry.read):
        assert words.endswith(".")
        assert words[0].isupper() or words.startswith(("<<", "24:00"))
    assert entry.bad != entry.good
