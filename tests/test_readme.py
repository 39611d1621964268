"""README names every command and every option, and nothing that is not there."""

import re
from importlib import import_module
from pathlib import Path

import pytest

from logbook.cli.main import COMMANDS
from logbook.cli.words import parser_of

README = (Path(__file__).parents[1] / "README.md").read_text("utf-8")
ROWS = re.findall(r"^\| `logbook ([^`]+)` \|", README, re.MULTILINE)


def options(name: str) -> set[str]:
    command = import_module(f"logbook.cli.{name}")
    parser = parser_of(name, command.__doc__ or "")
    command.arguments(parser)
    return {word for action in parser._actions for word in action.option_strings[-1:]} - {"--help"}


@pytest.mark.parametrize("name", COMMANDS)
def test_a_command_stands_in_the_table_with_all_its_options(name: str) -> None:
    rows = " ".join(row for row in ROWS if row.split()[0] == name)
    named = set(re.findall(r"--?[a-z][a-z-]*", rows))
    said = {option for option in options(name) if option in rows or f"-{option.lstrip('-')[0]} " in rows}
    assert rows
    assert said == options(name), name
    assert {word for word in named if word.startswith("--")} <= options(name)


def test_the_table_has_no_command_that_is_not_there() -> None:
    assert {row.split()[0] for row in ROWS} == set(COMMANDS)
