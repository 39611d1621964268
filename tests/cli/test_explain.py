"""Explaining a code: each has its page, of signs that a terminal can show, and what is no code is told with the nearest."""

import pytest

from logbook.cli import explain
from logbook.cli.explain import WIDTH, page
from logbook.cli.say import WRONG_USAGE, Failure
from logbook.cli.words import parser_of
from logbook.model.codes import ENTRIES, Entry


def run(*words: str) -> int:
    parser = parser_of("explain", explain.__doc__ or "")
    explain.arguments(parser)
    return explain.run(parser.parse_args(words))


@pytest.mark.parametrize("entry", ENTRIES.values(), ids=lambda entry: entry.code)
def test_every_code_has_a_page_a_terminal_can_show(entry: Entry) -> None:
    lines = list(page(entry))

    assert lines[0] == entry.code
    assert all(line.isprintable() for line in lines)
    assert all(len(line) <= WIDTH for line in lines)
    assert lines[-1]


def test_a_page_has_meaning_samples_and_what_was_done(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("[weight-unreadable]") == 0

    told = capsys.readouterr().out
    assert "- {shot: 18:10, catch: {cod: 3 bskts}}" in told
    assert "- {shot: 18:10, catch: {cod: 3 baskets}}" in told
    assert "What was done: It is not used" in told


def test_signs_that_nobody_sees_are_told_by_their_numbers(capsys: pytest.CaptureFixture[str]) -> None:
    run("invisible-character")

    assert "M. Al<U+200B>dane" in capsys.readouterr().out


def test_without_a_code_all_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert run() == 0

    told = capsys.readouterr().out.split("\n")
    assert {line.split()[0] for line in told if line.startswith("  ")} == set(ENTRIES)
    assert max(map(len, told)) <= WIDTH


def test_what_is_no_code_is_told_with_the_nearest() -> None:
    with pytest.raises(Failure, match="did you mean weight-unreadable") as told:
        run("weight-unreadble")
    assert told.value.status == WRONG_USAGE
