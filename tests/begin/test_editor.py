"""A real editor's helper, the YAML language server: a log just begun is clean in it, keys have their sentence, slips are marked.

It speaks the Language Server Protocol (3.17) over its standard streams. On a developer's machine a missing server is said and the
tests are left out; in CI it is a failure.
"""

import json
import os
import shutil
import subprocess
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from logbook.cli import start
from logbook.cli.words import parser_of

ROOT = Path(__file__).parents[2]
SERVER = ROOT / ".node-tools" / "node_modules" / "yaml-language-server" / "bin" / "yaml-language-server"
NOW = datetime(2026, 3, 4, 5, 30, tzinfo=UTC)
SETTINGS: dict[str, object] = {
    "validate": True,
    "hover": True,
    "completion": True,
    "schemaStore": {"enable": False},
    "schemas": {},
}


def missing(what: str) -> None:
    """Leave a test out for want of something; in CI that is a failure."""
    if os.environ.get("CI"):
        pytest.fail(f"{what} is missing, and in CI it must not be")
    pytest.skip(f"{what} is missing on this machine")


class Editor:
    """An editor as far as the server can tell."""

    def __init__(self, server: "subprocess.Popen[bytes]", root: Path) -> None:
        self.server = server
        self.told: dict[str, list[dict[str, Any]]] = {}
        self.asked = self.opened = 0
        self.uri = ""
        folder = {"uri": root.as_uri(), "name": "logs"}
        able = {"workspace": {"configuration": True}, "textDocument": {"hover": {"contentFormat": ["markdown"]}}}
        self.ask(
            "initialize",
            {"processId": None, "rootUri": root.as_uri(), "workspaceFolders": [folder], "capabilities": able},
        )
        self.say("initialized", {})
        self.say("workspace/didChangeConfiguration", {"settings": {"yaml": SETTINGS}})

    def say(self, method: str, params: object) -> None:
        self._send({"method": method, "params": params})

    def ask(self, method: str, params: object) -> Any:  # noqa: ANN401 - whatever the server answers
        self.asked += 1
        own = self.asked
        self._send({"id": own, "method": method, "params": params})
        return self._until(lambda message: message.get("id") == own and "method" not in message).get("result")

    def open(self, path: Path, text: str | None = None) -> list[str]:
        """Open a file, or another text in its place, and return what is marked in it."""
        self.opened += 1
        self.uri = uri = path.with_name(f"{self.opened}-{path.name}").as_uri()
        said = path.read_bytes().decode() if text is None else text
        self.say(
            "textDocument/didOpen", {"textDocument": {"uri": uri, "languageId": "yaml", "version": 1, "text": said}}
        )
        while uri not in self.told:
            self._until(lambda message: message.get("method") == "textDocument/publishDiagnostics")
        return [f"{mark['range']['start']['line'] + 1}: {mark['message']}" for mark in self.told[uri]]

    def hover(self, line: int, column: int) -> str:
        """Return what is told of the word at a place of the file opened last, both counted from 1."""
        at = {"textDocument": {"uri": self.uri}, "position": {"line": line - 1, "character": column - 1}}
        answer = self.ask("textDocument/hover", at)
        return str(answer["contents"]["value"]) if answer else ""

    def _send(self, message: dict[str, object]) -> None:
        body = json.dumps({"jsonrpc": "2.0"} | message).encode()
        assert self.server.stdin is not None
        self.server.stdin.write(b"Content-Length: %d\r\n\r\n" % len(body) + body)
        self.server.stdin.flush()

    def _until(self, wanted: Callable[[dict[str, Any]], bool]) -> dict[str, Any]:
        while True:
            message = self._receive()
            if message.get("method") == "workspace/configuration":
                answers = [SETTINGS if item.get("section") == "yaml" else {} for item in message["params"]["items"]]
                self._send({"id": message["id"], "result": answers})
            elif "id" in message and "method" in message:
                self._send({"id": message["id"], "result": None})
            elif message.get("method") == "textDocument/publishDiagnostics":
                self.told[message["params"]["uri"]] = message["params"]["diagnostics"]
            if wanted(message):
                return message

    def _receive(self) -> dict[str, Any]:
        stream = self.server.stdout
        assert stream is not None
        length = 0
        while (line := stream.readline()) not in (b"\r\n", b""):
            name, _, value = line.decode().partition(":")
            length = int(value) if name.lower() == "content-length" else length
        body = stream.read(length)
        assert body, "the language server has gone"
        read: dict[str, Any] = json.loads(body)
        return read


@pytest.fixture(scope="module")
def logs(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("kept") / "logs"
    parser = parser_of("start", "")
    start.arguments(parser)
    assert start.run(parser.parse_args(["--fleet", str(folder), "Solan Bright"]), NOW) == 0
    return folder


@pytest.fixture(scope="module")
def editor(logs: Path) -> Iterator[Editor]:
    node = shutil.which("node")
    if node is None or not SERVER.is_file():
        missing("the YAML language server")
    with subprocess.Popen(
        [str(node), str(SERVER), "--stdio"], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL
    ) as server:
        yield Editor(server, logs)
        server.kill()


def log_of(logs: Path) -> Path:
    return logs / "solan-bright-2026-03-04.yaml"


def test_what_is_begun_is_clean_in_an_editor(logs: Path, editor: Editor) -> None:
    assert editor.open(log_of(logs)) == []
    assert editor.open(logs / "fleet.yaml") == []


@pytest.mark.parametrize("key", ["vessel", "ice loaded", "sea temperature"])
def test_a_key_has_its_sentence_and_example_below_the_pointer(logs: Path, editor: Editor, key: str) -> None:
    log = log_of(logs)
    text = (
        log.read_text("utf-8")
        .replace("ice loaded:", "ice loaded: 24 t")
        .replace("sea temperature:", "sea temperature: 8 C")
    )
    editor.open(log, text)
    line = next(n for n, typed in enumerate(text.splitlines(), 1) if typed.startswith(f"{key}:"))

    told = editor.hover(line, 2)

    found = start_keys(key)
    assert found.about in told.replace("\\", "")
    assert found.example in told


def start_keys(name: str) -> Any:  # noqa: ANN401 - a key of the table
    from logbook.read.keys import TRIP  # noqa: PLC0415 - the table that the schema is made of

    return TRIP.find(name)


@pytest.mark.parametrize("typed", ["ICE LOADED: 24 t", "Ice_Loaded: 24 t", "remark: Good marks at the turn."])
def test_a_key_typed_otherwise_is_the_same_key(logs: Path, editor: Editor, typed: str) -> None:
    log = log_of(logs)
    text = log.read_text("utf-8").replace("ice loaded:", typed)

    assert editor.open(log, text) == []
    line = next(n for n, one in enumerate(text.splitlines(), 1) if one == typed)
    told = editor.hover(line, 2)
    assert start_keys(typed.partition(":")[0]).about.partition(";")[0] in told.replace("\\", "")


@pytest.mark.parametrize(
    ("typed", "marked"),
    [
        ("ice loded: 24 t", "ice loded"),
        ("ice loaded: plenty", "pattern"),
        ("ice loaded: 24 t\nside: port", "side"),
    ],
)
def test_what_is_wrong_is_marked_where_it_stands(logs: Path, editor: Editor, typed: str, marked: str) -> None:
    log = log_of(logs)
    text = log.read_text("utf-8").replace("ice loaded:", typed)
    line = next(n for n, one in enumerate(text.splitlines(), 1) if one == typed.splitlines()[-1])

    (told,) = editor.open(log, text)

    assert told.startswith(f"{line}: ")
    assert marked in told


def test_a_slip_within_a_tow_is_marked_and_its_keys_are_told(logs: Path, editor: Editor) -> None:
    log = log_of(logs)
    text = (
        log.read_text("utf-8")
        + "tows:\n  - day: 2026-03-05\n  - shot: 04:10\n    hauld: 05:40\n  - 0615-0745, cod 3 t\n"
    )
    text = text.replace("\ntows:\n#", "\n#", 1)
    lines = text.splitlines()

    told = editor.open(log, text)

    assert [one.partition(":")[0] for one in told] == [str(lines.index("    hauld: 05:40") + 1)]
    assert "Towing begins" in editor.hover(lines.index("  - shot: 04:10") + 1, 6)
