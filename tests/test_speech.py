"""Commands answer in the language of the fleet, down to the last word; what other programs read, and messages, stay English."""

import ast
import json
import re
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from logbook.cli.main import main
from logbook.render import language
from logbook.render.hail import MOST
from tests.untranslated import SAMPLE, made_up, typed_words

LOGS = sorted(file for file in SAMPLE.rglob("*.yaml") if file.name != "fleet.yaml")
SIGNS = re.compile(r"\b\w+_\w+\b|\b[\w-]+-\d{4}-\d\d-\d\d(?:-\d+)?\b|\b[A-Z]{3}\b")
"""Names of figures as JSON has them, ids of trips, codes of species."""

WORD = re.compile(r"[A-Za-z]{2,}")

Answer = Callable[..., str]


@pytest.fixture
def answer(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Answer:
    """Return what asks a command and gives what it prints, of fleets whose language is spelt in Cyrillic letters."""
    monkeypatch.setattr(language, "speech_of", lambda _tag: made_up())

    def ask(*words: str | Path) -> str:
        monkeypatch.setattr(sys, "argv", ["logbook", *map(str, words)])
        with pytest.raises(SystemExit):
            main()
        return capsys.readouterr().out

    return ask


def english(text: str) -> set[str]:
    """Return the words that are neither typed in the sample logs nor a sign every language has."""
    known = typed_words()
    return {word for word in WORD.findall(SIGNS.sub(" ", text)) if word.casefold() not in known}


@pytest.mark.parametrize("command", ["aboard", "hail", "reckon"])
def test_answers_about_a_trip_have_no_english_left(answer: Answer, command: str) -> None:
    said = [answer(command, log) for log in LOGS]

    assert all(re.search("[а-я]{3}", one) for one in said)
    assert english("\n".join(said)) == set()


def test_the_ice_to_take_and_the_look_back_have_no_english_left(answer: Answer) -> None:
    ice = ("ice", "--vessel", "Marrick", "--days", "9", "--sea", "8.5 C", "--logs", SAMPLE)
    said = [answer(*ice, "--catch", "40 t"), answer(*ice, "--catch", "400 t")]
    said.append(answer("here", "58 52N 015 10W", "--within", "50", "--logs", SAMPLE))

    assert all(re.search("[а-я]{3}", one) for one in said)
    assert english("\n".join(said)) == set()


@pytest.mark.parametrize("command", ["aboard", "reckon"])
def test_what_other_programs_read_is_english(answer: Answer, command: str) -> None:
    told = [answer(command, "--json", log) for log in LOGS]

    assert {json.loads(one)["trip"]["state"] for one in told} <= {"at sea", "homeward", "landed", "landing not logged"}
    assert not any(re.search("[а-я]", one) for one in told)


def test_problems_are_told_in_english(answer: Answer, tmp_path: Path) -> None:
    log = tmp_path / "trip.yaml"
    log.write_text("vessel: Solan Bright\nsailed: 2026-03-04 05:30\ntows:\n  - {shot: half past, hauled: 19:40}\n")

    assert ": error: " in answer("check", log)


def test_a_hail_has_room_in_every_language(answer: Answer) -> None:
    assert all(len(answer("hail", log).rstrip("\n")) <= MOST for log in LOGS)


def hidden(code: str) -> list[str]:
    """Return the phrases that are marked within an f-string, where the tools that gather phrases don't see them."""
    marks = {"_", "_n", "_c", "N_", "many"}
    return [
        ast.unparse(call)
        for whole in ast.walk(ast.parse(code))
        if isinstance(whole, ast.JoinedStr)
        for call in ast.walk(whole)
        if isinstance(call, ast.Call) and isinstance(call.func, ast.Name) and call.func.id in marks
        if any(isinstance(word, ast.Constant) and isinstance(word.value, str) for word in call.args)
    ]


def test_no_phrase_is_marked_where_it_can_not_be_gathered() -> None:
    assert hidden("f\"{n} {_('tows')}\"") == ["_('tows')"]
    files = (Path(language.__file__).parent).rglob("*.py")
    assert {file.name: hidden(file.read_text("utf-8")) for file in files if hidden(file.read_text("utf-8"))} == {}
