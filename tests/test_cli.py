"""The command as a person types it: what it prints, where, and the status it leaves with."""

import json
import os
import re
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
    told, line, marks = said.out.splitlines()
    assert ": error: " in told
    assert told.endswith("[weight-unreadable]")
    assert "2 baskts" in line
    assert line[marks.index("^") : marks.rindex("^") + 1] == "2 baskts"
    assert "mend the errors and check again" in said.err
    assert "logbook explain weight-unreadable" in said.err


def test_a_problem_is_one_line_and_nothing_else_where_that_is_wanted(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "trip.yaml").write_text(LOG.replace("2 baskets", "2 baskts"))

    assert run(monkeypatch, "check", "--brief", logs / "trip.yaml") == 1

    (told,) = capsys.readouterr().out.splitlines()
    assert told.endswith("[weight-unreadable]")


def test_a_log_plays_no_tricks_on_a_terminal(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "trip.yaml").write_text(LOG + '    "\\e]0;x\\a\\u202e": \x1b[2J\u202e\n')

    assert run(monkeypatch, "check", logs / "trip.yaml") == 1

    assert all(sign.isprintable() or sign == "\n" for sign in capsys.readouterr().out)


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
        ("aboard", "nowhere"),
        ("aboard", "."),
        ("hail", "nowhere"),
        ("hail",),
        ("ice",),
        ("ice", "--vessel"),
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


@pytest.mark.parametrize("command", ["reckon", "aboard", "hail"])
@pytest.mark.parametrize("time", ["soon", "07:40", "2026-02-30 10:00"])
def test_a_time_that_cannot_be_read_is_wrong_usage(
    logs: Path, command: str, time: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert run(monkeypatch, command, logs / "trip.yaml", "--at", time) == 2


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
    assert "left as they stand" in capsys.readouterr().err
    assert list((tmp_path / "site" / "trips").iterdir())


def test_an_archive_is_emptied_where_that_is_asked_for(
    logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("logbook.publish.folder._GRACE_S", 0)
    for command, page in (("build", "trips/solan-bright-2026-03-04.html"), ("export", "trips.csv")):
        (logs / "trip.yaml").write_text(LOG)
        assert run(monkeypatch, command, logs, tmp_path / command) == 0
        (logs / "trip.yaml").unlink()
        before = (tmp_path / command / page).read_bytes()

        assert run(monkeypatch, command, logs, tmp_path / command) == 1
        assert "--allow-empty takes them away" in capsys.readouterr().err
        assert (tmp_path / command / page).read_bytes() == before
        assert run(monkeypatch, command, logs, tmp_path / command, "--allow-empty") == 0

        assert "0 trips of 0 logs" in capsys.readouterr().err
        assert not list((tmp_path / command).rglob("solan-bright*"))


def test_a_logs_folder_that_can_not_be_listed_changes_nothing(
    logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, "build", logs, tmp_path / "site") == 0
    page = tmp_path / "site" / "trips" / "solan-bright-2026-03-04.html"

    def closed(folder: os.PathLike[str]) -> None:
        raise PermissionError(13, "Permission denied", os.fspath(folder))

    monkeypatch.setattr(os, "scandir", closed)

    assert run(monkeypatch, "build", logs, tmp_path / "site", "--allow-empty") == 1
    assert "can't be listed: permission denied" in capsys.readouterr().err
    assert page.exists()


def test_a_build_says_which_trips_are_as_last_read(
    logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "later.yaml").write_text(LOG.replace("03-04", "03-14"))
    assert run(monkeypatch, "build", logs, tmp_path / "site") == 0
    assert "as last read" not in capsys.readouterr().err
    (logs / "trip.yaml").write_text("quill: [\n")

    assert run(monkeypatch, "build", logs, tmp_path / "site") == 1

    said = capsys.readouterr().err
    assert "1 trip besides as last read: mend the log, or take it away and the trip goes with it" in said
    assert "1 trip of 2 logs published" in said


def test_check_loads_neither_charts_nor_pages(logs: Path) -> None:
    code = (
        "import sys; sys.argv = ['logbook', 'check', sys.argv[1]]\n"
        "from logbook.cli.main import main\n"
        "try:\n    main()\nexcept SystemExit:\n    pass\n"
        "print([name for name in ('matplotlib', 'numpy', 'jinja2', 'markdown_it', 'geographiclib', 'astral') if name in sys.modules])\n"
    )

    ended = subprocess.run([sys.executable, "-c", code, str(logs)], capture_output=True, text=True, check=True)

    assert ended.stdout == "[]\n"


def test_aboard_is_one_screen_as_of_the_moment(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, "aboard", logs / "trip.yaml", "--at", "2026-03-05 07:40") == 0

    said = capsys.readouterr()
    assert said.err == ""
    assert said.out.startswith(
        "Solan Bright: at sea\nLast word Wed 4 Mar 19:40; figures as of Thu 5 Mar 07:40. Times are UTC.\n\nFish    84 kg kept"
    )
    assert said.out.count("\n") <= 40


def test_aboard_for_other_programs_has_the_keys_of_reckon(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "trip.yaml").write_text(LOG + "weather:\n  - {at: 2026-03-04 20:00, icing: light}\n")

    assert run(monkeypatch, "aboard", logs / "trip.yaml", "--json") == 0
    made = json.loads(capsys.readouterr().out)
    assert run(monkeypatch, "reckon", logs / "trip.yaml", "--json") == 0
    reckoned = json.loads(capsys.readouterr().out)

    assert made.pop("icing_on_deck") == {"icing": "light", "at": "2026-03-04T20:00:00+00:00"}
    assert reckoned.pop("tows")
    assert made == {name: reckoned[name] for name in made}
    assert {"trip", "catch", "totals", "ice", "age", "pens", "landing", "problems", "basis", "as_of"} <= set(made)
    assert made["totals"]["kept_kg"] == 84


def test_hail_prints_the_message_alone(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, "hail", logs / "trip.yaml") == 0

    said = capsys.readouterr()
    assert said.err == ""
    assert said.out == (
        "SOLAN BRIGHT Wed 4 Mar 19:40 UTC. Docking at Port Kerrin: time not known. Kept: cod 2 baskets. "
        "Oldest 0.0 days (as if at 0 C: 0.0), mean 0.0.\n"
    )


def test_hail_for_other_programs_has_numbers_and_the_text(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, "hail", logs / "trip.yaml", "--json", "--at", "2026-03-05 07:40") == 0

    made = json.loads(capsys.readouterr().out)
    assert made["kept"] == [
        {"species": "cod", "grade": None, "amounts": [{"number": 2.0, "unit": "basket"}], "kept_kg": 84.0}
    ]
    assert (made["kept_kg"], made["oldest_ice_days"], made["not_known"]) == (84.0, 0.5, [])
    assert made["characters"] == len(made["text"])
    assert "Kept: cod 2 baskets. Oldest 0.5 days" in made["text"]


@pytest.mark.parametrize("command", ["aboard", "hail"])
def test_what_is_wrong_in_the_log_is_told_beside_the_answer(
    command: str, logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "trip.yaml").write_text(LOG.replace("cod: 2 baskets", "cod: 2 baskets, ling: plenty") + "skiper: A. N.\n")

    assert run(monkeypatch, command, logs / "trip.yaml") == 1

    said = capsys.readouterr()
    assert re.search(r"84 kg|without tow 1", said.out)
    assert said.err == f"1 error and 1 warning in this log: logbook check {logs / 'trip.yaml'}\n"


@pytest.mark.parametrize("command", ["aboard", "hail"])
def test_the_wheelhouses_answers_know_the_later_log(
    command: str, logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "later.yaml").write_text(LOG.replace("03-04", "03-14"))

    assert run(monkeypatch, command, logs / "trip.yaml") == 0
    assert "not logged" in capsys.readouterr().out


@pytest.mark.parametrize("command", ["aboard", "hail"])
@pytest.mark.parametrize("text", [LOG.partition("tows")[0], LOG.partition("tows")[0] + "tows:\n", b"\0" * 50])
def test_a_trip_without_tows_and_a_file_without_a_trip(
    command: str, text: str | bytes, logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "trip.yaml").write_bytes(text.encode() if isinstance(text, str) else text)

    for more in ((), ("--json",)):
        assert run(monkeypatch, command, logs / "trip.yaml", *more) == (0 if isinstance(text, str) else 1)
        said = capsys.readouterr()
        assert bool(said.out) == isinstance(text, str)
        assert "Traceback" not in said.err


ICE = ("ice", "--vessel", "Solan Bright", "--days", "7", "--catch", "40 t", "--sea", "8 C")


def ice(changed: str = "", to: str = "") -> tuple[str, ...]:
    """Return the words of the command, one option of it changed."""
    words = list(ICE)
    if changed:
        words[words.index(changed) + 1] = to
    return tuple(words)


def test_ice_is_worked_out_from_the_fleet_file_of_the_folder_or_above(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    # By hand: 40 t * 3.35 * 8 / 334 = 3209.6 kg (FAO 331), 1.9 kW * 604800 s / 334 = 3440.5 kg, with 20 % more 7980.1; by
    # practice 1 t of ice to 2 t of fish (Torry Advisory Note 15) and the hold's, with 20 % more 28128.6.
    (logs / "2026" / "spring").mkdir(parents=True)
    monkeypatch.chdir(logs / "2026" / "spring")

    assert run(monkeypatch, *ICE, "--json") == 0

    made = json.loads(capsys.readouterr().out)
    assert made["vessel"] == "Solan Bright"
    assert (made["days"], made["catch_kg"], made["sea_temperature_c"]) == (7.0, 40000.0, 8.0)
    assert made["chilling_kg"] == pytest.approx(3209.6, abs=0.05)
    assert made["hold_melt_kg"] == pytest.approx(3440.5, abs=0.05)
    assert made["theory_kg"] == pytest.approx(7980.1, abs=0.05)
    assert made["practice_kg"] == made["advised_kg"] == pytest.approx(28128.6, abs=0.05)
    assert (made["capacity_kg"], made["over_capacity_kg"], made["basis"]) == (None, None, {})


def test_ice_is_told_for_people_over_what_she_can_load(
    logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "fleet.yaml").write_text(FLEET.replace("    steaming", "    ice capacity: 25 t\n    steaming"))
    monkeypatch.chdir(tmp_path)

    assert run(monkeypatch, *ice("--vessel", "ki  114"), "--logs", logs) == 0

    said = capsys.readouterr()
    assert said.err == ""
    assert said.out.startswith("Solan Bright: take 28.1 t of ice\nfor 7 days, 40.0 t of fish, sea 8.0 °C\n")
    assert "THAT IS 3.13 t MORE than the 25.0 t she can load" in " ".join(said.out.split())


@pytest.mark.parametrize(
    ("option", "value", "hint"),
    [
        ("--vessel", "Nobody", "it has Solan Bright"),
        ("--days", "0", "up to 60 days"),
        ("--days", "-2", "up to 60 days"),
        ("--days", "61", "up to 60 days"),
        ("--days", "a week", "write it in digits"),
        ("--days", "nan", "write it in digits"),
        ("--catch", "40", "write 40 kg or 40 baskets"),
        ("--catch", "plenty", "write a number and a unit"),
        ("--catch", "40 tuns", "tuns"),
        ("--catch", "", "--catch"),
        ("--sea", "warm", "write a number and a unit"),
        ("--sea", "300 C", "between -60 and 60 C"),
        ("--sea", "", "--sea"),
    ],
)
def test_what_ice_cannot_read_is_wrong_usage_with_a_hint(
    option: str, value: str, hint: str, logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, *ice(option, value), "--logs", logs) == 2

    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.startswith(f"logbook: error: {option}: ")
    assert hint in said.err


def test_a_sea_below_nought_is_read(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, *ice("--sea", "-1.8 C"), "--logs", logs, "--json") == 0
    assert json.loads(capsys.readouterr().out)["sea_temperature_c"] == -1.8


def test_ice_needs_a_fleet_file_and_every_option(
    tmp_path: Path, logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)

    assert run(monkeypatch, *ICE) == 2
    assert "there is no fleet.yaml in . or above it; name its folder with --logs" in capsys.readouterr().err
    assert run(monkeypatch, *ICE, "--logs", "nowhere") == 2
    assert "there is no file or folder nowhere" in capsys.readouterr().err
    assert run(monkeypatch, *ICE[:-2], "--logs", logs) == 2
    assert "--sea" in capsys.readouterr().err


def test_what_is_wrong_in_the_fleet_file_is_told_with_the_ice(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "fleet.yaml").write_text(FLEET.replace("heat gain: 1.9 kW", "heat gain: much"))

    assert run(monkeypatch, *ICE, "--logs", logs) == 1

    said = capsys.readouterr()
    assert said.out.startswith("Solan Bright: take 24.0 t of ice\n")
    assert said.err == f"1 error in the fleet file: logbook check {logs / 'fleet.yaml'}\n"


def loaded(*words: str | Path, names: tuple[str, ...]) -> str:
    """Return which modules a command loads of those named, with every connection refused."""
    code = (
        "import socket, sys\n"
        "def refused(*a, **k):\n    raise AssertionError('the network was asked')\n"
        "socket.socket = socket.create_connection = socket.getaddrinfo = refused\n"
        "from logbook.cli.main import main\n"
        "try:\n    main()\nexcept SystemExit as leaving:\n    assert not leaving.code, leaving.code\n"
        f"print([name for name in {names} if name in sys.modules], file=sys.stderr)\n"
    )
    ended = subprocess.run(
        [sys.executable, "-c", code, *map(str, words)],
        capture_output=True,
        text=True,
        check=True,
        env=os.environ | {"PYTHONUTF8": "1"},
    )
    assert ended.stdout
    return ended.stderr.splitlines()[-1]


@pytest.mark.parametrize("command", [("aboard",), ("hail",), ICE])
def test_the_wheelhouses_answers_need_neither_charts_nor_pages_nor_a_network(
    command: tuple[str, ...], logs: Path
) -> None:
    words: tuple[str | Path, ...] = (*command, "--logs", logs) if command is ICE else (*command, logs / "trip.yaml")

    assert loaded(*words, names=("matplotlib", "numpy", "jinja2", "markdown_it", "astral", "urllib.request")) == "[]"


def test_a_terminal_of_an_old_code_page_has_every_answer(logs: Path) -> None:
    # Windows code page 1252
    for words in (("aboard", logs / "trip.yaml"), ("hail", logs / "trip.yaml"), (*ICE, "--logs", logs)):
        ended = subprocess.run(
            [sys.executable, "-m", "logbook", *map(str, words)],
            capture_output=True,
            check=True,
            cwd=Path(__file__).parents[1],
            env=os.environ | {"PYTHONIOENCODING": "cp1252", "PYTHONUTF8": "0"},
        )
        assert "\\u" not in ended.stdout.decode("cp1252")


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


NEAR = (
    "vessel: Solan Bright\nsailed: 2025-03-04 05:30\ntows:\n"
    "  - {shot: 18:10, hauled: 20:10, from: 58 52N 015 20W, to: 58 52N 015 00W, catch: {cod: 2 baskets}, fast: rock}\n"
)
HERE = ("here", "58 52N 015 10W")


def test_here_looks_back_at_a_place(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "near.yaml").write_text(NEAR)
    monkeypatch.chdir(logs)

    assert run(monkeypatch, *HERE) == 0
    said = capsys.readouterr()
    # The last word is of 4 March 2026; the tow of 2025 passes over the place, that of 2026 has no position
    assert "FASTS NEAR THERE" in said.out
    assert re.search(r"^2025 +1 ", said.out, re.MULTILINE)
    assert "Without 1 tow of those weeks that has no position" in said.out
    assert said.err == ""
    assert run(monkeypatch, *HERE, "--at", "2026-07-06 12:00", "--logs", logs) == 0
    assert "No tow is logged near there" in capsys.readouterr().out


def test_here_for_other_programs_is_one_object(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "near.yaml").write_text(NEAR)

    assert (
        run(
            monkeypatch, *HERE, "--logs", logs, "--json", "--within", "5 nm", "--weeks", "1", "--at", "2026-03-06 12:00"
        )
        == 0
    )

    made = json.loads(capsys.readouterr().out)
    assert (made["within_nm"], made["weeks"]) == (5, 1)
    assert list(made["by_year"]) == ["2025"]
    # 84 kg over two hours
    assert made["species"][0]["kept_kg_per_h"] == pytest.approx(42)
    assert made["fasts"][0]["away_nm"] == pytest.approx(0, abs=0.01)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("here",), "POSITION"),
        (("here", "somewhere"), "somewhere"),
        ((*HERE, "--within", "0"), "--within"),
        ((*HERE, "--within", "500"), "--within"),
        ((*HERE, "--within", "far"), "--within"),
        ((*HERE, "--weeks", "-1"), "--weeks"),
        ((*HERE, "--weeks", "27"), "--weeks"),
        ((*HERE, "--at", "soon"), "--at"),
        ((*HERE, "--logs", "nowhere"), "nowhere"),
    ],
)
def test_what_here_cannot_read_is_wrong_usage(
    words: tuple[str, ...],
    said: str,
    logs: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(logs)

    assert run(monkeypatch, *words) == 2
    assert said in capsys.readouterr().err


def test_here_without_a_log_says_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, *HERE, "--logs", tmp_path) == 2
    assert "name the folder of logs with --logs" in capsys.readouterr().err


def test_here_tells_of_logs_that_could_not_be_read(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (logs / "near.yaml").write_text(NEAR)
    (logs / "spoilt.yaml").write_bytes(b"\0" * 50)

    assert run(monkeypatch, *HERE, "--logs", logs) == 0
    said = capsys.readouterr()
    assert "FASTS NEAR THERE" in said.out
    assert said.err == f"1 log cannot be read and is left out: logbook check {logs}\n"
