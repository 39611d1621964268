"""`logbook start`: what it writes is read without an error or a warning, and nothing that is there is ever touched."""

import re
import sys
import threading
from datetime import UTC, datetime
from pathlib import Path

import pytest

from logbook.begin.write import AlreadyThereError, put_down
from logbook.build import build
from logbook.cli import start
from logbook.cli.say import NOT_WRITTEN, WRONG_USAGE, Failure
from logbook.cli.words import parser_of
from logbook.model.edition import OFFICE
from logbook.model.problem import Problem, Severity
from logbook.model.trip import Trip
from logbook.read.folder import check_fleet_file, read_folder
from logbook.read.keys import FLEET, TRIP, VESSEL
from tests.read.logs import FLEET as FLEET_TEXT

NOW = datetime(2026, 4, 2, 20, 15, 42, tzinfo=UTC)
LAST = (
    "vessel: Solan Bright\ntrip: 14\nskipper: M. Aldane\ncrew: 11\nsailed: 2026-03-04 05:30, Port Kerrin\ntows:\n"
    "  - 2026-03-05 1810-1940, cod 9 baskets\nlanded: 2026-03-10 21:15, Sulvik\n"
)


@pytest.fixture
def logs(tmp_path: Path) -> Path:
    folder = tmp_path / "logs"
    (folder / "2026").mkdir(parents=True)
    (folder / "fleet.yaml").write_text(FLEET_TEXT)
    (folder / "2026" / "solan-bright-14.yaml").write_text(LAST)
    return folder


def begin(*words: str | Path, now: datetime = NOW) -> int:
    parser = parser_of("start", "")
    start.arguments(parser)
    return start.run(parser.parse_args([str(word) for word in words]), now)


def worse_than_notes(folder: Path) -> list[str]:
    problems: tuple[Problem, ...] = read_folder(folder).problems
    return [str(problem) for problem in problems if problem.severity is not Severity.NOTE]


def new(logs: Path, before: set[Path]) -> Path:
    (made,) = set(logs.rglob("*.yaml")) - before
    return made


def began(logs: Path, *words: str | Path) -> tuple[Path, Trip]:
    """Begin a log and return it with its trip."""
    before = set(logs.rglob("*.yaml"))
    assert begin(*words, "--logs", logs) == 0
    path = new(logs, before)
    (made,) = (trip for trip in read_folder(logs).trips if Path(trip.file) == path)
    return path, made


def used(text: str) -> str:
    """Return a text with every comment that is a line to use put to use."""
    lines = [re.sub(r"^#(?=\w|  )", "", line) for line in text.splitlines()]
    return "\n".join(lines) + "\n"


def test_what_is_known_is_filled_in(logs: Path) -> None:
    path, made = began(logs, "solan  bright")

    assert path == logs / "2026" / "solan-bright-15.yaml"
    assert (made.vessel.name, made.number, made.sailed_from) == ("Solan Bright", "15", "Sulvik")
    assert made.sailed == datetime(2026, 4, 2, 20, 15, tzinfo=UTC)
    assert (made.skipper, made.ice_loaded, made.tows) == (None, None, ())
    text = path.read_text("utf-8")
    for told in (
        "rockhopper (starboard), flat net (port)",
        "P1, P2, S1",
        "The Saddle",
        "#skipper: M. Aldane",
        "#crew: 11",
    ):
        assert told in text


def test_it_reads_without_a_warning_and_is_published(logs: Path, tmp_path: Path) -> None:
    began(logs, "Solan Bright")

    assert worse_than_notes(logs) == []
    build(logs, tmp_path / "site", lambda _: None, (OFFICE,))
    assert (tmp_path / "site" / "index.html").is_file()


def test_its_lines_end_as_old_notepad_wants_them(logs: Path) -> None:
    path, _ = began(logs, "Solan Bright")
    data = path.read_bytes()

    assert data.count(b"\r\n") == data.count(b"\n") == data.count(b"\r") > 20
    assert max(map(len, data.decode().splitlines())) <= 100


def test_every_key_of_a_log_stands_in_it(logs: Path) -> None:
    text = began(logs, "Solan Bright")[0].read_text("utf-8")

    for key in TRIP.keys:
        assert f"\n{key.name}:" in text or f"\n#{key.name}:" in text


@pytest.mark.parametrize("vessel", ["Solan Bright", "Ocean Quest"])
def test_every_line_put_to_use_reads_clean(logs: Path, vessel: str) -> None:
    text = FLEET_TEXT.replace("vessels:\n", "vessels:\n  - name: Ocean Quest\n")
    (logs / "fleet.yaml").write_text(text)
    path, _ = began(logs, vessel)

    path.write_text(used(path.read_text("utf-8")))

    assert worse_than_notes(logs) == []
    (made,) = (trip for trip in read_folder(logs).trips if Path(trip.file) == path)
    assert [tow.shot is not None and tow.hauled is not None for tow in made.tows] == [True, True]
    assert made.tows[0].catch and made.tows[1].catch and made.landings and made.readings  # noqa: PT018 - one question


def test_the_years_folder_and_the_year_in_it_go_with_the_trip(logs: Path) -> None:
    before = set(logs.rglob("*.yaml"))
    begin("Solan Bright", "--logs", logs, now=datetime(2027, 1, 3, tzinfo=UTC))

    assert new(logs, before) == logs / "2027" / "solan-bright-15.yaml"


@pytest.mark.parametrize(
    ("model", "made"),
    [
        ("SolanBright_014.yml", "SolanBright_015.yml"),
        ("KI114 2026-03-04.yaml", "KI114 2026-04-02.yaml"),
        ("20260304.yaml", "20260402.yaml"),
        ("trip 14.YAML", "trip 15.YAML"),
        ("march.yaml", "solan-bright-15.yaml"),
    ],
)
def test_the_name_follows_the_fleets_own_pattern(logs: Path, model: str, made: str) -> None:
    (logs / "2026" / "solan-bright-14.yaml").rename(logs / model)

    begin("Solan Bright", "--logs", logs)

    assert (logs / made).is_file()


def test_another_vessels_log_is_the_pattern_for_one_without(logs: Path) -> None:
    (logs / "fleet.yaml").write_text(
        FLEET_TEXT.replace("vessels:\n", "vessels:\n  - {name: Ternbank, registration: KI 61}\n")
    )

    path, made = began(logs, "KI 61", "--trip", "209")

    assert path == logs / "2026" / "ternbank-209.yaml"
    assert made.vessel.name == "Ternbank"


def test_a_slip_of_the_name_is_said_and_taken_for_the_vessel(logs: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _, made = began(logs, "Solan Brihgt")

    assert made.vessel.name == "Solan Bright"
    assert "'Solan Brihgt' is taken for Solan Bright" in capsys.readouterr().err


def test_a_vessel_nobody_knows_gets_a_log_that_says_what_is_blank(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path, made = began(tmp_path, 'Ocean: #1 "Quest"')

    assert made.vessel.name == 'Ocean: #1 "Quest"'
    assert worse_than_notes(tmp_path) == []
    said = capsys.readouterr().err
    assert "nothing is known of her" in said
    assert "still blank: trip, ice loaded" in said
    assert path.parent == tmp_path


def test_the_fleet_file_is_named_where_it_does_not_list_her(logs: Path, capsys: pytest.CaptureFixture[str]) -> None:
    began(logs, "Ocean Quest")

    assert "add it to the vessels of" in capsys.readouterr().err


def test_a_zone_of_her_last_log_goes_on(logs: Path) -> None:
    (logs / "2026" / "solan-bright-14.yaml").write_text(LAST + 'zone: "+01:00"\n')

    path, made = began(logs, "Solan Bright")

    assert made.zone == "+01:00"
    assert "sailed: 2026-04-02 21:15, Sulvik" in path.read_text("utf-8")


def test_nothing_there_is_overwritten(logs: Path) -> None:
    there = logs / "2026" / "solan-bright-15.yaml"
    there.write_text("mine")

    with pytest.raises(Failure, match="is there already and stays as it is") as failure:
        begin("Solan Bright", "--logs", logs)

    assert failure.value.status == NOT_WRITTEN
    assert there.read_text() == "mine"


def test_a_second_start_keeps_to_the_log_that_is_begun(logs: Path) -> None:
    path, _ = began(logs, "Solan Bright")
    text = path.read_bytes()

    with pytest.raises(Failure, match="is begun and has no tows yet"):
        begin("Solan Bright", "--logs", logs)

    assert path.read_bytes() == text
    assert began(logs, "Solan Bright", "--trip", "16")[0].name == "solan-bright-16.yaml"


def test_of_two_at_once_one_writes_and_the_other_is_told(tmp_path: Path) -> None:
    path = tmp_path / "trip.yaml"
    gate = threading.Barrier(4)
    there: list[bool] = []

    def put(n: int) -> None:
        gate.wait()
        try:
            put_down(path, f"{n}\n" * 2000)
        except AlreadyThereError:
            there.append(True)

    threads = [threading.Thread(target=put, args=(n,)) for n in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert len(there) == 3
    assert len(set(path.read_text().split())) == 1
    assert len(path.read_text().split()) == 2000


def test_what_can_not_be_written_whole_is_not_left_half(tmp_path: Path) -> None:
    path = tmp_path / "trip.yaml"

    with pytest.raises(UnicodeEncodeError):
        put_down(path, "vessel: \ud800\n")

    assert not path.exists()


@pytest.mark.parametrize("words", [[], ["-"], [" \n"], ["Solan Bright", "--trip", "~"]])
def test_what_names_nothing_is_wrong_usage(logs: Path, words: list[str]) -> None:
    with pytest.raises(Failure) as failure:
        begin(*words[:1], *(["--logs", str(logs)]), *words[1:])

    assert failure.value.status == WRONG_USAGE


def test_an_empty_folder_begins_clean_and_its_pages_are_made(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "logs"

    assert begin("--fleet", folder, "Solan Bright") == 0

    assert worse_than_notes(folder) == []
    names = sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file())
    assert names == [
        "README.txt",
        "fleet.yaml",
        "schema/fleet.schema.json",
        "schema/trip.schema.json",
        "solan-bright-2026-04-02.yaml",
    ]
    first = (folder / names[-1]).read_text("utf-8").splitlines()[0]
    assert first == "# yaml-language-server: $schema=./schema/trip.schema.json"
    assert names[-1] in (folder / "README.txt").read_text("utf-8")
    build(folder, tmp_path / "site", lambda _: None, (OFFICE,))
    assert (tmp_path / "site" / "index.html").is_file()


def test_every_line_of_a_new_fleet_file_put_to_use_reads_clean(tmp_path: Path) -> None:
    folder = tmp_path / "logs"
    begin("--fleet", folder, "Solan Bright")
    fleet = folder / "fleet.yaml"
    text = fleet.read_text("utf-8")

    fleet.write_text(used(text))

    assert [str(problem) for problem in check_fleet_file(fleet)] == []
    for key in (*FLEET.keys, *VESSEL.keys):
        assert f"\n{key.name}:" in text or f"{key.name}:" in text
    (vessel,) = read_folder(folder).fleet.vessels
    assert vessel.nets and vessel.hold.pens and vessel.ice_capacity  # noqa: PT018 - one question


def test_a_folder_that_holds_something_is_left_alone(logs: Path) -> None:
    with pytest.raises(Failure, match="not empty"):
        begin("--fleet", logs)

    assert (logs / "fleet.yaml").read_text() == FLEET_TEXT


def test_a_vessel_may_be_named_later(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    begin("--fleet", tmp_path / "logs")

    assert "she is called My Vessel" in capsys.readouterr().err
    assert worse_than_notes(tmp_path / "logs") == []


def test_the_next_log_knows_where_the_schemas_lie(tmp_path: Path) -> None:
    folder = tmp_path / "logs"
    begin("--fleet", folder, "Solan Bright")
    (folder / "2026").mkdir()
    (folder / "solan-bright-2026-04-02.yaml").unlink()
    (folder / "2026" / "solan-bright-14.yaml").write_text(LAST.replace("9 baskets", "9 kg"))

    path, _ = began(folder, "Solan Bright")

    assert path.read_text("utf-8").startswith("# yaml-language-server: $schema=../schema/trip.schema.json\n")


def test_the_command_ends_with_a_message_and_its_status(
    logs: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from logbook.cli.main import main  # noqa: PLC0415 - as it is typed

    monkeypatch.setattr(sys, "argv", ["logbook", "start", "--fleet", str(logs)])
    with pytest.raises(SystemExit) as leaving:
        main()

    assert leaving.value.code == NOT_WRITTEN
    assert "name a new folder" in capsys.readouterr().err
