"""Help and completion: every command has lines that its own arguments take, and real shells complete real words."""

import os
import re
import shlex
import shutil
import subprocess
from importlib import import_module
from pathlib import Path

import pytest

from logbook import __version__
from logbook.cli.completion import SHELLS, completion
from logbook.cli.examples import EXAMPLES
from logbook.cli.main import COMMANDS, HELP
from logbook.cli.words import parser_of
from tests.test_cli import run

ROOT = Path(__file__).parents[1]


def options_of(command: str) -> list[str]:
    parser = parser_of(command, "")
    import_module(f"logbook.cli.{command}").arguments(parser)
    return [*re.findall(r"(?<![\w-])--[a-z-]+", parser.format_usage()), "--help"]


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_lines_in_its_help_that_it_takes(
    command: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(ROOT)
    parser = parser_of(command, "")
    module = import_module(f"logbook.cli.{command}")
    module.arguments(parser)

    assert run(monkeypatch, command, "--help") == 0

    told = capsys.readouterr().out
    assert EXAMPLES[command]
    for line in EXAMPLES[command]:
        assert line in told
        words = shlex.split(line.partition(">")[0])
        assert words[:2] == ["logbook", command]
        parser.parse_args(words[2:])


def test_the_lines_of_the_first_help_are_taken_too(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    lines = [re.split(r" {3,}", line.strip())[0] for line in HELP.splitlines() if line.startswith("  logbook ")]
    log = "sample_logs/2026/solan-bright-64.yaml"

    assert len(lines) > 8
    for line in lines:
        _, command, *words = shlex.split(line.replace("LOG", log))
        parser = parser_of(command, "")
        import_module(f"logbook.cli.{command}").arguments(parser)
        parser.parse_args(words)


def test_the_version_is_told(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(monkeypatch, "--version") == 0
    assert capsys.readouterr().out == f"logbook {__version__}\n"


@pytest.mark.parametrize("shell", SHELLS)
def test_every_command_and_option_is_in_every_shells_text(shell: str) -> None:
    told = completion(shell)

    for command in COMMANDS:
        assert re.search(rf"\b{command}\b", told)
        for option in options_of(command):
            assert (f"-l {option[2:]}" if shell == "fish" else option) in told


def completed(*words: str, folder: Path) -> list[str]:
    """Return what a real bash offers for the last of the words, its files where the program offers none."""
    bash = shutil.which("bash")
    if bash is None:
        if os.environ.get("CI"):
            pytest.fail("bash is missing, and in CI it must not be")
        pytest.skip("bash is missing on this machine")
    script = (
        f"{completion('bash')}\nCOMP_WORDS=({' '.join(map(shlex.quote, words))})\nCOMP_CWORD=$((${{#COMP_WORDS[@]}}-1))\n"
        "_logbook\nprintf '%s\\n' \"${COMPREPLY[@]}\"\ncomplete -p logbook\n"
    )
    ended = subprocess.run([bash, "--norc", "-c", script], check=True, capture_output=True, text=True, cwd=folder)
    assert ended.stderr == ""
    *offered, asked = ended.stdout.splitlines()
    assert asked == "complete -o bashdefault -o default -F _logbook logbook"
    return [word for word in offered if word]


@pytest.mark.parametrize(
    ("words", "offered"),
    [
        (("logbook", "che"), ["check"]),
        (("logbook", "--v"), ["--version"]),
        (("logbook", "reckon", "--j"), ["--json"]),
        (("logbook", "build", "logs", "site", "--ed"), ["--edition"]),
        (("logbook", "build", "logs", "site", "--edition", ""), ["office", "crew", "public"]),
        (("logbook", "build", "logs", "site", "--edition", "c"), ["crew"]),
        (("logbook", "completion", "z"), ["zsh"]),
        (("logbook", "reckon", "LOG", "--at", ""), []),
        (("logbook", "check", ""), []),
    ],
)
def test_bash_completes_words(words: tuple[str, ...], offered: list[str], tmp_path: Path) -> None:
    assert completed(*words, folder=tmp_path) == offered


def test_fish_completes_words_where_it_is_there(tmp_path: Path) -> None:
    fish = shutil.which("fish")
    if fish is None:
        pytest.skip("fish is missing on this machine")
    text = tmp_path / "logbook.fish"
    text.write_text(completion("fish"))

    def offered(line: str) -> list[str]:
        ask = f"source {text}; complete -C {shlex.quote(line)}"
        ended = subprocess.run(
            [fish, "--no-config", "-c", ask], check=True, capture_output=True, text=True, cwd=tmp_path
        )
        return [word.partition("\t")[0] for word in ended.stdout.splitlines()]

    assert offered("logbook che") == ["check"]
    assert offered("logbook reckon --j") == ["--json"]
    assert offered("logbook build --edition c") == ["crew"]


@pytest.mark.parametrize("shell", ["zsh", "fish"])
def test_other_shells_take_the_text_where_they_are_there(shell: str, tmp_path: Path) -> None:
    program = shutil.which(shell)
    if program is None:
        pytest.skip(f"{shell} is missing on this machine")
    text = tmp_path / "completion"
    text.write_text(completion(shell))

    subprocess.run([program, "-n", str(text)], check=True, capture_output=True)
