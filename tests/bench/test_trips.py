"""The bench's trips are plausible, read clean, and are always the same."""

import os
import subprocess
import sys
from collections import Counter
from itertools import pairwise
from pathlib import Path

import pytest
import yaml
from markdown_it import MarkdownIt

from logbook.model.problem import Severity
from logbook.read.folder import Folder, read_folder
from logbook.reckon.trip import reckon_trips
from tests.bench.fleet import GROUNDS, VESSELS
from tests.bench.logs import log, log_path, write_fleet
from tests.bench.pages import COLUMNS, page
from tests.bench.trips import TOWS, trip_of

TRIPS = 2 * len(VESSELS)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("bench")
    write_fleet(made / "logs", made / "pages", TRIPS, TOWS)
    return made


@pytest.fixture(scope="module")
def read(folder: Path) -> Folder:
    return read_folder(folder / "logs")


def test_all_logs_read_without_an_error_and_hardly_with_a_warning(read: Folder) -> None:
    counts = Counter(problem.severity for problem in read.problems)

    assert read.logs == len(read.trips) == TRIPS
    assert counts[Severity.ERROR] == 0
    assert counts[Severity.WARNING] <= TRIPS / 10


def test_a_trip_has_as_many_tows_species_and_remarks_as_the_bench_says(read: Folder) -> None:
    tows = [tow for trip in read.trips for tow in trip.tows]

    assert {len(trip.tows) for trip in read.trips} == {TOWS}
    assert {len({fish.species for fish in tow.catch}) for tow in tows} == set(range(3, 9))
    assert 0.77 < sum(bool(tow.remarks) for tow in tows) / len(tows) < 0.83


def test_tows_lie_on_the_grounds_that_the_sample_fleet_has(read: Folder) -> None:
    corners = {ground.name: ground.corners for ground in read.fleet.grounds}

    assert {ground.name for ground in GROUNDS} == set(corners)
    for tow in (tow for trip in read.trips for tow in trip.tows):
        (south, north), (west, east) = (
            sorted(getattr(corner, side) for corner in corners[tow.ground or ""]) for side in ("latitude", "longitude")
        )
        for at in (tow.start, tow.end):
            assert at is not None
            assert south <= at.latitude <= north
            assert west <= at.longitude <= east


def test_trips_of_a_vessel_follow_one_another_over_years() -> None:
    trips = [trip_of(number, tows=TOWS) for number in range(0, 40 * len(VESSELS), len(VESSELS))]

    assert len({trip.vessel for trip in trips}) == 1
    assert all(later.sailed > earlier.docked for later, earlier in pairwise(trips))
    assert (trips[0].sailed - trips[-1].sailed).days > 365


def test_half_of_the_logs_are_in_block_style_and_of_the_size_they_are_measured_with(folder: Path) -> None:
    # PyYAML's own reading of them, not ours: the layout counts as YAML has it.
    for number in range(TRIPS):
        text = log_path(folder / "logs", trip_of(number)).read_text("utf-8")
        nodes = yaml.compose(text, Loader=yaml.CBaseLoader)
        assert nodes is not None
        tows = next(value for key, value in nodes.value if key.value == "tows")
        in_flow_style = VESSELS.index(trip_of(number).vessel) % 2 == 1

        assert len(tows.value) == TOWS
        assert {tow.flow_style for tow in tows.value} == {in_flow_style}
        assert 28_000 < len(text) < 43_000


def test_ready_made_markdown_has_a_table_of_all_tows_and_says_what_the_program_reckons(read: Folder) -> None:
    # markdown-it-py: CommonMark 0.31 and the tables of GitHub Flavored Markdown.
    trip = trip_of(5)
    (kept,) = (
        one.figures.totals.kept_kg
        for one in reckon_trips(read.trips, read.fleet, read.problems)
        if (one.figures.trip.vessel, one.figures.trip.number) == (trip.vessel, str(trip.label))
    )

    shown = MarkdownIt("commonmark").enable("table").render(page(trip).split("---\n", 2)[2])

    assert shown.count("<tr>") == TOWS + 1
    assert shown.count("<td>") == TOWS * len(COLUMNS)
    assert f"Kept: {kept} kg" in shown


def test_a_trip_is_the_same_in_every_run() -> None:
    words = "import hashlib; from tests.bench.logs import log; from tests.bench.trips import trip_of; "
    words += "print(hashlib.sha256((log(trip_of(3)) + log(trip_of(4))).encode()).hexdigest())"
    told = {
        subprocess.run(
            [sys.executable, "-c", words],
            cwd=Path(__file__).parents[2],
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }

    assert len(told) == 1
    assert len(told.pop().strip()) == 64
    assert log(trip_of(3)) != log(trip_of(3 + len(VESSELS)))


def test_a_trip_is_the_same_however_many_there_are(folder: Path, tmp_path: Path) -> None:
    write_fleet(tmp_path / "logs", tmp_path / "pages", 3, TOWS)

    few = {path.relative_to(tmp_path): path.read_bytes() for path in tmp_path.rglob("*.*") if path.is_file()}
    assert len(few) == 3 + 3 + 1
    assert all((folder / path).read_bytes() == content for path, content in few.items())
