"""The command that writes the files for other programs without the pages: what it writes, and what it leaves alone."""

import sys
from pathlib import Path

import pytest
from frictionless import Package

from logbook.build import build
from logbook.cli.main import main
from logbook.export import export
from logbook.model.built import NoLogsError, PublishError
from logbook.model.edition import CREW, OFFICE
from logbook.publish.lock import LOCK
from logbook.publish.manifest import MANIFEST
from tests.render.files.data import AT_SEA, FLEET_OF_TWO, LANDED


@pytest.fixture
def logs(tmp_path: Path) -> Path:
    folder = tmp_path / "logs"
    folder.mkdir()
    (folder / "fleet.yaml").write_text(FLEET_OF_TWO)
    (folder / "landed.yaml").write_text(LANDED)
    (folder / "at-sea.yaml").write_text(AT_SEA)
    return folder


def tree(folder: Path) -> dict[str, bytes]:
    own = {LOCK, MANIFEST}
    files = (path for path in folder.rglob("*") if path.is_file() and path.name not in own)
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in files}


def run(monkeypatch: pytest.MonkeyPatch, *words: str | Path) -> int:
    monkeypatch.setattr(sys, "argv", ["logbook", *map(str, words)])
    with pytest.raises(SystemExit) as leaving:
        main()
    return int(leaving.value.code or 0)


def quiet(stage: str) -> None:
    assert stage


def test_the_command_writes_the_crews_files_and_says_so(
    logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    status = run(monkeypatch, "export", logs, tmp_path / "out")

    assert status == 0
    files = tree(tmp_path / "out")
    assert {
        "trips.csv",
        "datapackage.json",
        "landings.ics",
        "landings.atom",
        "trips/solan-bright-2026-03-04.json",
    } <= set(files)
    assert "sales.csv" not in files
    assert not any(path.endswith((".html", ".svg", ".css", ".js")) for path in files)
    assert Package(str(tmp_path / "out" / "datapackage.json")).validate().valid
    assert f"2 trips of 2 logs exported to {tmp_path / 'out'}: {len(files)} files" in capsys.readouterr().err


def test_an_edition_may_be_named(logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert run(monkeypatch, "export", logs, tmp_path / "out", "--edition", OFFICE) == 0
    assert {"sales.csv", "problems.csv", "tracks.geojson"} <= set(tree(tmp_path / "out"))


def test_the_files_are_those_of_the_archive_but_for_links_to_its_pages(logs: Path, tmp_path: Path) -> None:
    export(logs, tmp_path / "out", quiet, OFFICE)
    build(logs, tmp_path / "site", quiet, (OFFICE,))
    bare = tree(tmp_path / "out")
    beside = {
        path.removeprefix("files/"): content
        for path, content in tree(tmp_path / "site").items()
        if path.startswith("files/")
    }

    assert bare.keys() == beside.keys()
    assert [path for path in bare if bare[path] != beside[path]] == ["landings.atom"]
    assert b"<link" in beside["landings.atom"]
    assert b"<link" not in bare["landings.atom"]


def test_a_second_export_writes_what_changed_and_removes_what_the_edition_lacks(logs: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (out / "notes.txt").write_text("mine")
    export(logs, out, quiet, OFFICE)
    first = tree(out)
    again = export(logs, out, quiet, OFFICE).published[0][1]
    export(logs, out, quiet, CREW)

    assert (again.written, again.removed) == (0, 0)
    assert "sales.csv" in first
    assert "sales.csv" not in tree(out)
    assert tree(out)["notes.txt"] == b"mine"


def test_a_file_of_somebody_elses_is_not_written_over(
    logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "trips.csv").write_text("mine")

    assert run(monkeypatch, "export", logs, tmp_path / "out") == 3
    assert "not the archive's own file" in capsys.readouterr().err
    assert (tmp_path / "out" / "trips.csv").read_text() == "mine"


def test_an_archive_with_pages_is_not_turned_into_files(logs: Path, tmp_path: Path) -> None:
    build(logs, tmp_path / "site", quiet)
    before = tree(tmp_path / "site")

    with pytest.raises(PublishError, match="archive with pages stands"):
        export(logs, tmp_path / "site", quiet)
    assert tree(tmp_path / "site") == before


def test_no_logs_leave_earlier_files_as_they_stand(
    logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    export(logs, tmp_path / "out", quiet)
    before = tree(tmp_path / "out")
    (logs / "landed.yaml").unlink()
    (logs / "at-sea.yaml").unlink()

    with pytest.raises(NoLogsError):
        export(logs, tmp_path / "out", quiet)
    assert run(monkeypatch, "export", logs, tmp_path / "out") == 1
    assert "left as they stand" in capsys.readouterr().err
    assert tree(tmp_path / "out") == before


def test_an_error_in_a_log_is_told_and_the_rest_is_written(
    logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "at-sea.yaml").write_text(AT_SEA.replace("100 kg", "100 kgz"))

    assert run(monkeypatch, "export", logs, tmp_path / "out") == 1
    assert "mend 1 error above and export again" in capsys.readouterr().err
    assert "trips/ternbank-2026-03-10.json" in tree(tmp_path / "out")
