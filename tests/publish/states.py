"""Two states of a small logs folder, and whether an archive on disk is whole: each file of one of the two, no link dead.

From the first to the second a trip goes, and its vessel with it; another vessel's first trip comes; a vessel gets a second trip, so
that pages new and old lead to each other; and a log can't be read any more. The first again takes all of that back.
"""

import json
import os
import subprocess
import sys
from collections.abc import Iterable, Iterator, Mapping
from html.parser import HTMLParser
from pathlib import Path, PurePosixPath
from urllib.parse import unquote, urljoin, urlsplit

from logbook.publish.folder import _GRACE_S, way_back
from logbook.publish.lock import BUILDER, LOCK
from logbook.publish.manifest import MANIFEST
from logbook.publish.staging import STAGING

ROOT = Path(__file__).parents[2]
SITE = "site"
_LINKS = ("href", "src", "data", "poster")

_FLEET = """\
fleet: Test Fleet
waters: N W
units: {depth: fm, catch: basket}
measures: {basket: 40 kg}
vessels:
  - {name: Solan Bright, steaming speed: 9.5 kn}
  - {name: Ternbank, steaming speed: 9 kn}
  - {name: Auk, steaming speed: 9 kn}
ports:
  - {name: Port Kerrin, at: 59 40.0N 012 10.0W}
"""
_LOG = """\
vessel: VESSEL
sailed: 2026-MONTH-04 05:30, Port Kerrin
tows:
  - {shot: 18:10, hauled: 19:40, ground: GROUND, from: 58 31.7N 015 21.3W, to: 58 33.9N 015 17.1W, catch: {cod: 12 baskets, SPECIES: 3 baskets}}
  - {shot: 20:30, hauled: 22:10, ground: GROUND, from: 58 34.7N 015 22.9W, to: 58 36.3N 015 18.7W, fast: yes, catch: {cod: 9 baskets}}
landed: {docked: 2026-MONTH-06 21:15, port: Port Kerrin, out-turn: {cod: 850 kg}}
"""


def _log(vessel: str, month: str, ground: str, species: str) -> str:
    pairs = {"VESSEL": vessel, "MONTH": month, "GROUND": ground, "SPECIES": species}
    text = _LOG
    for name, said in pairs.items():
        text = text.replace(name, said)
    return text


STATES: Mapping[str, Mapping[str, str]] = {
    "first": {
        "solan-1.yaml": _log("Solan Bright", "03", "The Saddle", "haddock"),
        "ternbank-1.yaml": _log("Ternbank", "04", "Outer Bank", "saithe"),
    },
    "second": {
        "solan-1.yaml": "no log: [\n",
        "solan-2.yaml": _log("Solan Bright", "04", "The Saddle", "ling"),
        "auk-1.yaml": _log("Auk", "05", "Auk's Hole", "haddock"),
    },
}


def write_logs(folder: Path) -> dict[str, Path]:
    """Write both states below a folder and return where each is."""
    for state, logs in STATES.items():
        (folder / state).mkdir(parents=True)
        (folder / state / "fleet.yaml").write_text(_FLEET)
        for name, text in logs.items():
            (folder / state / name).write_text(text)
    return {state: folder / state for state in STATES}


_DRIVER = """\
import time
from logbook.cli.main import main
from logbook.publish import folder, staging

def slowly(act):
    def slowed(*words):
        time.sleep(PACE)
        return act(*words)
    return slowed

folder._GRACE_S = GRACE
staging.Staging.place = slowly(staging.Staging.place)
staging.Staging.remove = slowly(staging.Staging.remove)
main()
"""
"""A build as the command does it, on a disk that is as slow as asked, so that it can be met at every file."""


def builder(logs: Path, site: Path, grace_s: float = _GRACE_S, pace_s: float = 0) -> subprocess.Popen[bytes]:
    """Start a build in a process of its own.

    Args:
        logs: The folder of logs.
        site: Where the archive stands.
        grace_s: How long what has gone stays.
        pace_s: How long each file takes to be placed or taken away.
    """
    code = _DRIVER.replace("PACE", str(pace_s)).replace("= GRACE", f"= {grace_s}")
    words = [sys.executable, "-c", code, "build", str(logs), str(site), "--edition", "office"]
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    return subprocess.Popen(words, cwd=ROOT, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)


def build_whole(logs: Path, site: Path, grace_s: float = _GRACE_S) -> None:
    """Build and see that the archive was written."""
    with builder(logs, site, grace_s) as running:
        _, said = running.communicate()
    # 1: a log that can't be read
    assert running.returncode in (0, 1), said.decode()
    assert b" published in " in said, said.decode()


def files_of(site: Path) -> dict[str, bytes]:
    """Return every file of an archive but its list and its lock."""
    paths = (path for path in site.rglob("*") if path.is_file() and path.name not in (LOCK, BUILDER, MANIFEST))
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in paths}


def whole_states(folder: Path, logs: Mapping[str, Path]) -> dict[str, dict[str, bytes]]:
    """Return the files of each state of the archive, the second built upon the first."""
    made = {}
    for state in STATES:
        build_whole(logs[state], folder / SITE, 0)
        made[state] = files_of(folder / SITE)
    return made


class _Links(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found += [value for name, value in attrs if name in _LINKS and value]


def links_of(path: str, page: bytes) -> list[str]:
    """Return the paths of what a page leads to and loads, each once."""
    parser = _Links()
    parser.feed(page.decode())
    parts = (urlsplit(link) for link in parser.found)
    inside = (part.path for part in parts if part.path and not part.scheme)
    return list(dict.fromkeys("/".join(PurePosixPath(unquote(urljoin(f"/{path}", link))).parts[1:]) for link in inside))


def faults(site: Path, states: Iterable[Mapping[str, bytes]]) -> Iterator[str]:
    """Give what is broken in an archive on disk, whatever moment its builder was killed at."""
    known = tuple(states)
    now = {path: content for path, content in files_of(site).items() if not path.startswith(f"{STAGING}/")}
    listed = json.loads((site / MANIFEST).read_text())
    unlinked = set(listed.get("unlinked", ()))
    if "index.html" not in now:
        yield "no front page"
    for path, content in sorted(now.items()):
        leads_back = path in unlinked and content == way_back(path)
        if not leads_back and content not in [state[path] for state in known if path in state]:
            yield f"{path} is of neither state"
        if path not in listed["files"]:
            yield f"{path} is on no list"
        if path.endswith(".html") and path not in unlinked:
            led = links_of(path, content)
            yield from (f"{path} leads to {link}, which is not there" for link in led if link not in now)
            yield from (f"{path} leads to {link}, called unlinked" for link in led if link in unlinked)
