"""The schemas of logs and fleet files: they take what the reader takes, and refuse what is plainly wrong.

Checked by two implementations from outside: `jsonschema`, handed every scalar as text, and `check-jsonschema`, which reads
YAML 1.2 by itself, so that figures come as numbers.
"""

import json
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import jsonschema
import pytest

from logbook.begin import schema
from logbook.begin.example import instance
from logbook.begin.schema import INSIDE, as_text, fleet_schema, trip_schema
from logbook.begin.values import KINDS, Schema
from logbook.model.problem import Severity
from logbook.read import keys
from logbook.read.fleet import read_fleet
from logbook.read.keys import Key, Keys
from logbook.read.node import Mapping, Node, Scalar, Sequence
from logbook.read.tree import read_tree
from logbook.read.trip import prepare, read_trip
from tests.read.logs import FLEET

ROOT = Path(__file__).parents[2]
CASES = ROOT / "tests" / "cases" / "read"
PARTS = (*schema._TRIP_PARTS, *schema._FLEET_PARTS)
TRIP = jsonschema.Draft7Validator(trip_schema())
FLEETS = jsonschema.Draft7Validator(fleet_schema())
WIDE = prepare(read_fleet(FLEET.encode(), "fleet.yaml")[0])


def plain(node: Node) -> object:
    """Return what stands in a node, every scalar as the text that was typed."""
    if isinstance(node, Mapping):
        return {key.value: plain(value) for key, value in node.entries}
    if isinstance(node, Sequence):
        return [plain(item) for item in node.items]
    return node.value if isinstance(node, Scalar) else None


def tree(text: str) -> object:
    root, _ = read_tree(text.encode(), "log.yaml", frozenset())
    assert root is not None
    return plain(root)


def faults(text: str, validator: jsonschema.Draft7Validator = TRIP) -> list[str]:
    return sorted(f"{'/'.join(map(str, fault.path))}: {fault.message}" for fault in validator.iter_errors(tree(text)))


def good_cases() -> Iterator[tuple[Path, bool]]:
    """Give every case whose keys and figures the reader takes, and whether it is a fleet file."""
    for path in sorted(CASES.glob("*.yaml")):
        fleet = path.name.startswith("fleet-")
        data = path.read_bytes()
        _, problems = read_fleet(data, path.name) if fleet else read_trip(data, path.name, WIDE)
        if not any(problem.severity is Severity.ERROR or problem.code == "key-slip" for problem in problems):
            yield path, fleet


GOOD = tuple(good_cases())
SAMPLES = tuple(sorted((ROOT / "sample_logs").glob("*/*.yaml")))


def keys_of(part: Keys) -> Iterator[tuple[Keys, Key]]:
    return ((part, key) for key in part.keys)


@pytest.mark.parametrize("made", [trip_schema(), fleet_schema()], ids=["trip", "fleet"])
def test_it_is_sound_draft_07(made: Schema) -> None:
    jsonschema.Draft7Validator.check_schema(made)
    assert "/draft-07/" in str(made["$schema"])


def test_every_table_of_keys_is_in_one_of_the_two() -> None:
    tables = {value for value in vars(keys).values() if isinstance(value, Keys)}

    assert tables == set(PARTS)


@pytest.mark.parametrize(
    ("part", "key"),
    [both for part in PARTS for both in keys_of(part)],
    ids=lambda it: getattr(it, "name", it.__class__),
)
def test_every_key_has_a_sentence_and_an_example_that_it_takes_itself(part: Keys, key: Key) -> None:
    made = trip_schema() if part in schema._TRIP_PARTS else fleet_schema()
    told = schema._told(part, key)
    validator = jsonschema.Draft7Validator({**told, "definitions": made["definitions"]})

    assert len(key.about.split()) > 1
    assert key.about[0].isupper()
    assert key.about.endswith(".")
    assert ((part, key.name) in INSIDE) != (key.kind in KINDS)
    assert list(validator.iter_errors(instance(key))) == []


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_sample_log_is_taken(path: Path) -> None:
    assert faults(path.read_text("utf-8")) == []


def test_the_sample_fleet_file_is_taken() -> None:
    assert faults((ROOT / "sample_logs" / "fleet.yaml").read_text("utf-8"), FLEETS) == []


@pytest.mark.parametrize(("path", "fleet"), GOOD, ids=lambda it: getattr(it, "stem", ""))
def test_every_case_without_an_error_is_taken(path: Path, fleet: bool) -> None:  # noqa: FBT001 - of the case
    assert faults(path.read_bytes().decode("utf-8", "replace"), FLEETS if fleet else TRIP) == []


HEAD = "vessel: Solan Bright\nsailed: 2026-03-04 05:30\n"


@pytest.mark.parametrize(
    "typed",
    [
        "VESSEL: Solan Bright\nSailed : 2026-03-04 05:30\n",
        HEAD + "Ice_Loaded: 24 t\nSEA-TEMPERATURE: 8 C\n",
        HEAD + "ice   loaded: 24 t\ncrew : 11\ntrip: ~\nskipper: null\nzone: ?\n",
        HEAD + "wants: [24 t ice, fuel]\nlanded: 2026-03-10 21:15, Port Kerrin\n",
        HEAD + "landed: [2026-03-10 21:15, Port Kerrin]\n",
        HEAD + "landed:\n  - 2026-03-10 21:15, Port Kerrin\n  - {docked: 2026-03-11 09:00, discharging: 10:00}\n",
        HEAD + "tows:\n  - 1810\n  - Day: Thu 5 March\n  - {shot: 0010, over_the_side: {skate: 3 baskets}}\n",
        HEAD + "tows:\n  shot: 18:10\n  catch: none\n  fast: [58.87, -15.16]\n  side: STARBOARD\n",
        HEAD + "tows:\n  - {shot: 18:10, catch: With Next, from: [58.8733, -15.1667], via: 58 50N 15 10W}\n",
        HEAD + "readings: {at: 2026-03-06 08:00, re iced: {P1: 0.3 t}}\n",
    ],
)
def test_what_the_reader_takes_is_taken(typed: str) -> None:
    _, problems = read_trip(typed.encode(), "log.yaml", WIDE)

    assert [str(problem) for problem in problems if problem.severity is Severity.ERROR] == []
    assert faults(typed) == []


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("vessel: Solan Bright\n", "'sailed' is a required property"),
        (HEAD + "skiper: M. Aldane\n", "'skiper' does not match any of the regexes"),
        (HEAD + "colour: blue\n", "'colour' does not match any of the regexes"),
        (HEAD + "ice loaded: plenty\n", "'plenty' does not match"),
        (HEAD + "ice loaded: [24 t]\n", "is not of type"),
        (HEAD + "tows: none to speak of\n", "does not match"),
        (HEAD + "tows:\n  - after supper, cod 9 baskets\n", "does not match"),
        (HEAD + "tows:\n  - {shot: 18:10, cod: 9 baskets}\n", "'cod' does not match any of the regexes"),
        (HEAD + "tows:\n  - {hauled: 19:40}\n", "'shot' is a required property"),
        (HEAD + "tows:\n  - {shot: 18:10, side: larboard}\n", "does not match"),
        (HEAD + "tows:\n  - {shot: 18:10, catch: [cod, haddock]}\n", "is not of type"),
        (HEAD + "weather:\n  - calm all day\n", "does not match"),
        (HEAD + "planned: six days\n", "does not match"),
    ],
)
def test_what_is_plainly_wrong_is_refused(typed: str, told: str) -> None:
    _, problems = read_trip(typed.encode(), "log.yaml", WIDE)

    assert [problem for problem in problems if problem.severity is not Severity.NOTE and problem.code != "no-tows"]
    assert any(told in fault for fault in faults(typed))


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("vessels: Solan Bright\n", "does not match"),
        ("vessels:\n  - {registration: KI 9}\n", "'name' is a required property"),
        ("fleet: Case\nmeasure: {box: 45 kg}\n", "'measure' does not match any of the regexes"),
        ("editions: {crew: {fasts: perhaps}}\n", "does not match"),
    ],
)
def test_what_is_plainly_wrong_in_a_fleet_file_is_refused(typed: str, told: str) -> None:
    assert any(told in fault for fault in faults(typed, FLEETS))


def checked(folder: Path, made: Schema, *files: Path) -> subprocess.CompletedProcess[str]:
    """Run `check-jsonschema` as a fleet's own check would."""
    told = folder / "told.schema.json"
    told.write_text(as_text(made))
    command = [sys.executable, "-m", "check_jsonschema", "--schemafile", str(told), "--output-format", "json"]
    return subprocess.run([*command, *map(str, files)], check=False, capture_output=True, text=True)


@pytest.mark.parametrize("fleet", [False, True], ids=["logs", "fleet files"])
def test_a_reader_of_yaml_1_2_takes_all_that_is_yaml(tmp_path: Path, fleet: bool) -> None:  # noqa: FBT001 - of the case
    samples = [ROOT / "sample_logs" / "fleet.yaml"] if fleet else list(SAMPLES)
    files = samples + [path for path, of_fleet in GOOD if of_fleet is fleet]

    told = json.loads(checked(tmp_path, fleet_schema() if fleet else trip_schema(), *files).stdout)

    mended = {
        fault["filename"] for fault in told.get("parse_errors", ())
    }  # by our reader alone, which reads past bad YAML
    assert told["errors"] == []
    assert mended.isdisjoint(map(str, samples))
    assert len(mended) < len(files) / 4


def test_a_reader_of_yaml_1_2_refuses_what_is_wrong(tmp_path: Path) -> None:
    log = tmp_path / "log.yaml"
    log.write_text(HEAD + "tows:\n  - {shot: 1810, depht: 98 fm}\n")

    ended = checked(tmp_path, trip_schema(), log)

    assert ended.returncode == 1
    assert "depht" in ended.stdout


def test_the_text_is_the_same_every_time() -> None:
    assert as_text(trip_schema()) == as_text(trip_schema())
    assert as_text(trip_schema()).isascii()
    assert json.loads(as_text(fleet_schema())) == fleet_schema()
