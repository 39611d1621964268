"""The logs folder: which files are logs, which fleet file is theirs, and what is wrong between logs."""

import os
from collections.abc import Iterator
from contextlib import AbstractContextManager
from pathlib import Path

import pytest

from logbook.model.problem import Problem
from logbook.read.folder import FleetFiles, check_fleet_file, read_folder, read_log, shown_name
from logbook.read.vessel_logs import other_logs
from tests.read.closed import close
from tests.read.logs import FLEET, codes

LOG = (
    "vessel: Solan Bright\nsailed: 2026-03-04 05:30\ntows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 2 baskets}}\n"
)
LATER = LOG.replace("03-04", "03-14")


@pytest.fixture
def logs(tmp_path: Path) -> Path:
    (tmp_path / "fleet.yaml").write_text(FLEET)
    return tmp_path


def test_logs_anywhere_below_the_folder_are_read_in_order(logs: Path) -> None:
    (logs / "2026").mkdir()
    (logs / "2026" / "b.yml").write_text(LATER)
    (logs / "A.YAML").write_text(LOG)

    folder = read_folder(logs)

    assert [Path(trip.file).name for trip in folder.trips] == ["A.YAML", "b.yml"]
    assert (folder.problems, folder.logs, folder.unread, folder.fleet.name) == ((), 2, (), "Test Fleet")


@pytest.mark.parametrize(
    "name",
    [".trip.yaml.swp", "._trip.yaml", "trip.yaml~", "~$trip.yaml", "trip.yaml.bak", "notes.txt", "trip.yaml.tmp"],
)
def test_what_editors_leave_behind_is_no_log(logs: Path, name: str) -> None:
    (logs / name).write_text("not: a log")

    assert read_folder(logs).logs == 0
    assert read_folder(logs).problems == ()


def test_a_log_that_an_editor_named_txt_is_told(logs: Path) -> None:
    (logs / "trip one.yaml.txt").write_text(LOG)

    (problem,) = read_folder(logs).problems

    assert problem.code == "log-renamed"
    assert problem.hint == "rename it to trip one.yaml"


def test_links_are_told_and_never_followed(logs: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    outside = tmp_path_factory.mktemp("outside") / "trip.yaml"
    outside.write_text(LOG)
    (logs / "trip.yaml").symlink_to(outside)

    folder = read_folder(logs)

    assert (folder.logs, codes(folder.problems)) == (0, ["not-followed"])


def test_a_log_that_cannot_be_opened_is_a_problem_and_the_others_stand(
    logs: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (logs / "a.yaml").write_text(LOG)
    (logs / "b.yaml").write_text(LATER)
    close("a.yaml", monkeypatch)
    folder = read_folder(logs)

    assert (len(folder.trips), len(folder.unread), codes(folder.problems)) == (1, 1, ["file-unreadable"])


def test_a_log_without_a_trip_in_it_leaves_the_others(logs: Path) -> None:
    (logs / "a.yaml").write_bytes(b"\x89PNG\r\n\x1a\n....")
    (logs / "b.yaml").write_text(LATER)

    folder = read_folder(logs)

    assert len(folder.trips) == 1
    assert [problem.severity for problem in folder.problems] == ["error"]


def test_the_same_trip_in_two_files_is_told_with_both_names(logs: Path) -> None:
    (logs / "trip.yaml").write_text(LOG)
    (logs / "trip - Copy.yaml").write_text(LOG)

    (problem,) = read_folder(logs).problems

    assert problem.code == "same-trip"
    assert "trip - Copy.yaml" in problem.message
    assert problem.place.file.endswith("trip.yaml")


def test_two_trips_of_one_vessel_at_once_are_told(logs: Path) -> None:
    (logs / "a.yaml").write_text(LOG + "landed: 2026-03-16 08:00\n")
    (logs / "b.yaml").write_text(LATER)

    assert codes(read_folder(logs).problems) == ["logs-overlap"]


def test_the_nearest_fleet_file_is_a_logs_own(logs: Path) -> None:
    (logs / "other").mkdir()
    (logs / "other" / "fleet.yaml").write_text("vessels: [{name: Ternbank}]\n")
    (logs / "other" / "trip.yaml").write_text("vessel: Ternbank\nsailed: 2026-03-04 05:30\ntows: [{shot: 18:10}]\n")

    folder = read_folder(logs)

    assert folder.problems == ()
    assert folder.trips[0].vessel.name == "Ternbank"


def test_without_a_fleet_file_any_vessel_will_do(tmp_path: Path) -> None:
    log = tmp_path / "trip.yaml"
    log.write_text(LOG.replace("2 baskets", "80 kg").replace("Solan Bright", "Anything"))

    trip, problems = read_log(log, FleetFiles())

    assert problems == ()
    assert trip is not None
    assert trip.vessel.name == "Anything"


def test_a_single_log_is_read_with_the_fleet_file_above_it(logs: Path) -> None:
    (logs / "deep").mkdir()
    (logs / "deep" / "trip.yaml").write_text(LOG)

    assert read_folder(logs / "deep" / "trip.yaml").fleet.name == "Test Fleet"


def test_the_vessels_other_trips_are_found_by_their_first_keys(logs: Path) -> None:
    (logs / "a.yaml").write_text(LOG)
    (logs / "b.yaml").write_text(LATER + "  - this line is broken: [\n")
    (logs / "c.yaml").write_text("vessel: Other\nsailed: 2026-03-01 05:30\n")
    (logs / "d.yaml").write_text("  vessel: KI 114\n  sailed: 2026-03-24 05:30\n")
    fleets = FleetFiles()
    trip, _ = read_log(logs / "a.yaml", fleets)
    assert trip is not None

    others = other_logs(logs / "a.yaml", trip, fleets)

    assert [Path(other.head.file).name for other in others] == ["b.yaml", "d.yaml"]


def test_a_fleet_file_is_checked_alone(logs: Path) -> None:
    (logs / "fleet.yaml").write_text(FLEET + "colour: blue\n")

    assert codes(check_fleet_file(logs / "fleet.yaml")) == ["key-unknown"]


def test_a_fleet_file_that_cannot_be_opened_is_a_problem(logs: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (logs / "a.yaml").write_text(LOG.replace("2 baskets", "80 kg"))
    close("fleet.yaml", monkeypatch)

    assert codes(read_folder(logs).problems) == ["file-unreadable"]


def test_names_that_cannot_be_printed_are_shown_escaped() -> None:
    assert shown_name(Path("a\nb.yaml")) == "a\\nb.yaml"
    assert shown_name(Path(os.fsdecode(b"bl\xe5st.yaml"))) == "bl\\xe5st.yaml"


def test_a_folder_that_cannot_be_listed_is_told_and_the_others_read(
    logs: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (logs / "closed").mkdir()
    (logs / "a.yaml").write_text(LOG)
    scandir = os.scandir

    def refuse(path: Path | os.DirEntry[str]) -> AbstractContextManager[Iterator[os.DirEntry[str]]]:
        if path.name == "closed":
            raise PermissionError(13, "Permission denied", os.fspath(path))
        return scandir(path)

    monkeypatch.setattr(os, "scandir", refuse)
    folder = read_folder(logs)

    assert (len(folder.trips), codes(folder.problems)) == (1, ["file-unreadable"])


def lone(folder: Path) -> Problem:
    """Return the one problem of a folder, which has no log and is read at once."""
    read = read_folder(folder)
    (problem,) = read.problems
    assert (read.logs, read.trips) == (0, ())
    return problem


def test_a_pipe_named_like_a_log_is_told_and_nobody_waits_for_it(logs: Path) -> None:
    os.mkfifo(logs / "trip.yaml")

    assert lone(logs).code == "not-followed"
    assert read_log(logs / "trip.yaml", FleetFiles())[1][0].message == (
        "this file can't be read: it is no file but a device, a pipe or the like"
    )


def test_an_endless_device_is_not_read() -> None:
    _, (problem,) = read_log(Path("/dev/zero"), FleetFiles())

    assert problem.code == "file-unreadable"


def test_no_more_of_a_file_is_read_than_shows_that_it_is_too_long(logs: Path) -> None:
    with (logs / "trip.yaml").open("wb") as file:
        file.truncate(10**12)  # a hole: it takes no room

    assert codes(read_folder(logs).problems) == ["file-too-big"]


def test_a_folder_named_like_a_log_is_told_and_not_gone_into(logs: Path) -> None:
    (logs / "trip.yaml").mkdir()
    (logs / "trip.yaml" / "trip.yaml").write_text(LOG)

    assert (lone(logs).code, lone(logs).place.file) == ("not-followed", str(logs / "trip.yaml"))


def test_a_link_to_a_folder_is_told_and_not_gone_into(logs: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    outside = tmp_path_factory.mktemp("outside")
    (outside / "trip.yaml").write_text(LOG)
    (logs / "2026").symlink_to(outside)
    (logs / "round").symlink_to(logs)
    (logs / "notes.txt").symlink_to(outside / "trip.yaml")

    assert codes(read_folder(logs).problems) == ["not-followed"] * 2


@pytest.mark.parametrize("name", [b"tr\nip.yaml", b"tr\rip.yml", b"bl\xe5st.yaml", b"20\n26", b"bl\xe5st"])
def test_a_name_that_nobody_could_read_is_told_and_passed_over(logs: Path, name: bytes) -> None:
    path = logs / os.fsdecode(name)
    if b"." in name:
        path.write_text(LOG)
    else:
        path.mkdir()
        (path / "trip.yaml").write_text(LOG)

    problem = lone(logs)

    assert (problem.code, problem.hint) == ("file-unreadable", "rename it")
    assert problem.place.file.isprintable()


def test_a_fleet_file_that_is_a_link_is_told_and_not_read(logs: Path) -> None:
    (logs / "fleet.yaml").rename(logs / "other.txt")
    (logs / "fleet.yaml").symlink_to(logs / "other.txt")

    assert lone(logs).code == "not-followed"
    assert read_folder(logs).fleet.name != "Test Fleet"


@pytest.mark.parametrize("name", ["Fleet.YAML", "fleet.yml", "fleet.yaml.txt"])
def test_a_fleet_file_of_another_name_is_told(logs: Path, name: str) -> None:
    (logs / "fleet.yaml").rename(logs / name)

    assert (lone(logs).code, lone(logs).hint) == ("log-renamed", "rename it to fleet.yaml")


@pytest.fixture
def deep(logs: Path) -> Iterator[Path]:
    """Give logs with folders 1500 deep, and take those away again from below: what tidies up after tests can't go so deep."""
    here = os.open(logs, os.O_RDONLY)
    for _ in range(1500):
        os.mkdir("d", dir_fd=here)
        below = os.open("d", os.O_RDONLY, dir_fd=here)
        os.close(here)
        here = below
    yield logs
    for _ in range(1500):
        above = os.open("..", os.O_RDONLY, dir_fd=here)
        os.close(here)
        os.rmdir("d", dir_fd=above)
        here = above
    os.close(here)


def test_folders_may_go_as_deep_as_the_system_lets_them(deep: Path) -> None:
    assert read_folder(deep).problems == ()
