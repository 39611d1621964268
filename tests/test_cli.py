"""The command as a person types it: what it prints, where, and the status it leaves with."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from logbook import __version__
from logbook.cli.main import main
from tests.read.logs import FLEET

LOG = (
    "vessel: Solan Bright\nsailed: 2026-03-04 05:30\ntows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 2 baskets}}\n"
)


@pytest.fixture
def logs(tmp_path: Path) -> Path:
    folder = tmp_path / "logs"
    folder.mkdir()
    (folder / "fleet.yaml").write_text(FLEET)
    (folder / "trip.yaml").write_text(LOG)
    return folder


def run(monkeypatch: pytest.MonkeyPatch, *words: str | Path) -> int:
    monkeypatch.setattr(sys, "argv", ["logbook", *map(str, words)])
    try:
        main()
    except SystemExit as leaving:
        return leaving.code if isinstance(leaving.code, int) else 0
    return 0


def test_a_clean_folder_is_clean(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, "check", logs) == 0

    said = capsys.readouterr()
    assert said.out == ""
    assert said.err == "1 log: nothing wrong\n"


def test_a_problem_is_one_line_with_place_severity_and_code(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "trip.yaml").write_text(LOG.replace("2 baskets", "2 baskts"))

    assert run(monkeypatch, "check", logs / "trip.yaml") == 1

    said = capsys.readouterr()
    assert said.out.startswith(f"{logs / 'trip.yaml'}:4:")
    assert ": error: " in said.out
    assert said.out.rstrip().endswith("]")
    assert "mend the errors and check again" in said.err


def test_warnings_alone_leave_with_nought(logs: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (logs / "trip.yaml").write_text(LOG.replace("shot", "shott"))

    assert run(monkeypatch, "check", logs) == 0


def test_a_fleet_file_may_be_checked_alone(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "fleet.yaml").write_text(FLEET + "colour: blue\n")

    assert run(monkeypatch, "check", logs / "fleet.yaml") == 1
    assert "key-unknown" in capsys.readouterr().out


def test_a_date_in_the_future_is_a_warning_of_check_alone(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "trip.yaml").write_text(LOG.replace("2026", "2099"))

    assert run(monkeypatch, "check", logs) == 0
    assert "[future]" in capsys.readouterr().out
    assert run(monkeypatch, "reckon", logs / "trip.yaml", "--json") == 0
    assert json.loads(capsys.readouterr().out)["problems"] == []


@pytest.mark.parametrize(
    "words",
    [
        (),
        ("chek",),
        ("check",),
        ("check", "nowhere"),
        ("reckon", "nowhere"),
        ("build", "nowhere", "x"),
        ("check", "--jsn", "."),
    ],
)
def test_wrong_usage_leaves_with_two(
    words: tuple[str, ...], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, *words) == 2
    assert capsys.readouterr().out == ""


def test_help_and_version_leave_with_nought(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, "--help") == 0
    shown = capsys.readouterr().out
    assert "Exit status" in shown
    assert "\n  logbook build sample_logs site " in shown
    assert run(monkeypatch, "--version") == 0
    assert __version__ in capsys.readouterr().out


def test_reckon_prints_one_json_object(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, "reckon", logs / "trip.yaml", "--json", "--at", "2026-03-05 07:40") == 0

    made = json.loads(capsys.readouterr().out)
    assert made["trip"]["as_of"] == "2026-03-05T07:40:00+00:00"
    assert made["age"]["oldest_ice_days"] == pytest.approx(0.5)
    assert made["trip"]["id"] == "solan-bright-2026-03-04"


def test_reckon_knows_the_vessels_later_log(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "later.yaml").write_text(LOG.replace("03-04", "03-14"))

    assert run(monkeypatch, "reckon", logs / "trip.yaml", "--json") == 0
    assert json.loads(capsys.readouterr().out)["trip"]["state"] == "landing not logged"


def test_reckon_prints_for_people_and_leaves_with_one_on_errors(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "trip.yaml").write_text(LOG + "  - {shot: 20:10, depth: deep}\n")

    assert run(monkeypatch, "reckon", logs / "trip.yaml") == 1

    said = capsys.readouterr()
    assert "Solan Bright" in said.out
    assert "error" in said.err


@pytest.mark.parametrize("time", ["soon", "07:40", "2026-02-30 10:00"])
def test_a_time_that_cannot_be_read_is_wrong_usage(logs: Path, time: str, monkeypatch: pytest.MonkeyPatch) -> None:
    assert run(monkeypatch, "reckon", logs / "trip.yaml", "--at", time) == 2


def test_now_is_the_machines_clock(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, "reckon", logs / "trip.yaml", "--json", "--at", "now") == 0
    assert json.loads(capsys.readouterr().out)["trip"]["as_of"] > "2026-03-05"


def test_a_log_without_a_trip_leaves_with_one(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "trip.yaml").write_bytes(b"\0" * 50)

    assert run(monkeypatch, "reckon", logs / "trip.yaml") == 1
    assert "no trip can be read" in capsys.readouterr().err


def test_build_publishes_what_can_be_read_and_says_what_to_do_next(
    logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "broken.yaml").write_bytes(b"\x89PNG\r\n\x1a\n")

    assert run(monkeypatch, "build", logs, tmp_path / "site") == 1

    said = capsys.readouterr()
    assert said.out == ""
    assert "1 trip of 2 logs published" in said.err
    assert "index.html" in said.err
    assert (tmp_path / "site" / "index.html").is_file()


def test_a_site_that_cannot_be_written_leaves_with_three(
    logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    site = tmp_path / "site"
    site.mkdir()
    (site / "index.html").write_text("mine")

    assert run(monkeypatch, "build", logs, site) == 3
    assert "not the archive's own file" in capsys.readouterr().err
    assert (site / "index.html").read_text() == "mine"


def test_logs_that_have_gone_wipe_no_archive(
    logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, "build", logs, tmp_path / "site") == 0
    (logs / "trip.yaml").unlink()

    assert run(monkeypatch, "build", logs, tmp_path / "site") == 1
    assert "left as it stands" in capsys.readouterr().err
    assert list((tmp_path / "site" / "trips").iterdir())


def test_check_loads_neither_charts_nor_pages(logs: Path) -> None:
    code = (
        "import sys; sys.argv = ['logbook', 'check', sys.argv[1]]\n"
        "from logbook.cli.main import main\n"
        "try:\n    main()\nexcept SystemExit:\n    pass\n"
        "print([name for name in ('matplotlib', 'numpy', 'jinja2', 'markdown_it', 'geographiclib', 'astral') if name in sys.modules])\n"
    )

    ended = subprocess.run([sys.executable, "-c", code, str(logs)], capture_output=True, text=True, check=True)

    assert ended.stdout == "[]\n"


def test_no_colour_where_it_is_not_wanted(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "trip.yaml").write_text(LOG.replace("shot", "shott"))
    monkeypatch.setenv("NO_COLOR", "1")
    monkeypatch.setattr(sys.stdout, "isatty", lambda: True, raising=False)

    run(monkeypatch, "check", logs)

    assert "\x1b" not in capsys.readouterr().out


def test_a_closed_pipe_is_no_traceback(logs: Path) -> None:
    (logs / "trip.yaml").write_text(LOG + "  - {shot: 20:10, depth: deep}\n" * 2000)
    command = f"{sys.executable} -m logbook check {logs} | head -n 1"

    ended = subprocess.run(
        ["bash", "-c", command], capture_output=True, text=True, check=True, cwd=Path(__file__).parents[1]
    )

    assert "Traceback" not in ended.stderr
