"""Follow links while the archive changes, from disk and over HTTP: `python -m tests.publish.hot_readers --builds 30`.

A reader opens a page, then at once all that it loads and some of what it leads to, and goes on from one of those. A view is
broken where the page is of neither state, or something that it leads to or loads is not there or of neither state.
"""

import argparse
import random
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Mapping
from functools import partial
from http.client import HTTPConnection
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Event, Thread
from urllib.parse import quote

from logbook.publish.folder import _GRACE_S, way_back
from tests.publish.states import STATES, build_whole, links_of, whole_states, write_logs

_FOLLOWED = 6
_TRAIL = 12
"""Pages until a reader begins at the front page again."""

Open = Callable[[str], bytes | None]


class Reader(Thread):
    """Goes from page to page until told to stop."""

    def __init__(self, name: str, open_: Open, known: Mapping[str, set[bytes]], seed: int) -> None:
        """Begin with nothing seen."""
        super().__init__(name=name, daemon=True)
        self.counts: Counter[str] = Counter()
        self.broken: list[str] = []
        self.stop = Event()
        self._open, self._known = open_, known
        self._chance = random.Random(seed)

    def run(self) -> None:
        """Read until stopped; a reader that fails has met something broken too."""
        try:
            while not self.stop.is_set():
                path: str | None = "index.html"
                for _ in range(_TRAIL):
                    if path is None or self.stop.is_set():
                        break
                    path = self._view(path)
        except Exception as fault:  # noqa: BLE001 - it is told with the rest
            self.broken.append(f"{self.name} stopped: {fault!r}")

    def _view(self, path: str) -> str | None:
        """Look at a page and at what it leads to, and return where to go on."""
        opened = time.monotonic()
        page = self._read(path, "followed")
        if page is None:
            return None
        self.counts["views"] += 1
        led = links_of(path, page)
        loaded = [link for link in led if not link.endswith(".html")]
        pages = [link for link in led if link.endswith(".html")]
        for link in (*loaded, *self._chance.sample(pages, min(_FOLLOWED, len(pages)))):
            if time.monotonic() - opened > _GRACE_S / 2:
                self.counts["views not followed further, for want of time"] += 1
                return None
            self._read(link, f"led to by {path}")
        # The page that is gone on from is opened while this one is fresh.
        return self._chance.choice(pages) if pages and time.monotonic() - opened < _GRACE_S / 2 else None

    def _read(self, path: str, why: str) -> bytes | None:
        content = self._open(path)
        self.counts["files opened"] += 1
        if content is None:
            self.broken.append(f"{self.name}: {path}, {why}, is not there")
        elif content not in self._known.get(path, ()):
            self.broken.append(f"{self.name}: {path}, {why}, is of neither state ({len(content)} bytes)")
        return content


def hot_readers(builds: int, seed: int) -> tuple[Counter[str], list[str]]:
    """Return what readers saw in all while the archive was built over and over, and what of it was broken.

    Args:
        builds: How many times it is built, from one state to the other and back.
        seed: Of the ways that readers go.
    """
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        logs = write_logs(folder / "logs")
        states = whole_states(folder, logs)
        known: dict[str, set[bytes]] = {}

        def gone_somewhere(path: str) -> bool:
            return not all(path in files for files in states.values())

        for files in states.values():
            for path, content in files.items():
                known.setdefault(path, {way_back(path)} if gone_somewhere(path) else set()).add(content)
        site = folder / "archive"
        build_whole(logs["first"], site)
        server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(site)))
        Thread(target=server.serve_forever, daemon=True).start()
        port = server.server_address[1]
        ways: list[tuple[str, Open]] = [("disk", partial(_from_disk, site)), ("http", partial(_over_http, int(port)))]
        readers = [Reader(f"{name} {n}", way, known, seed + n) for n in (1, 2) for name, way in ways]
        for reader in readers:
            reader.start()
        for n in range(builds):
            build_whole(logs[list(STATES)[(n + 1) % 2]], site)
        for reader in readers:
            reader.stop.set()
        for reader in readers:
            reader.join()
        server.shutdown()
        server.server_close()
    counts: Counter[str] = Counter({"builds": builds})
    for reader in readers:
        counts.update(reader.counts)
    return counts, [line for reader in readers for line in reader.broken]


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 - its name where it is overridden
        """Say nothing."""


def _from_disk(site: Path, path: str) -> bytes | None:
    try:
        return (site / path).read_bytes()
    except FileNotFoundError:
        return None


def _over_http(port: int, path: str) -> bytes | None:
    connection = HTTPConnection("127.0.0.1", port, timeout=30)
    try:
        connection.request("GET", f"/{quote(path)}")
        answer = connection.getresponse()
        content = answer.read()
        return content if answer.status == 200 else None
    finally:
        connection.close()


def main() -> int:
    """Print the counts, and leave with 1 where a view was broken."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--builds", type=int, default=30)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    counts, broken = hot_readers(asked.builds, asked.seed)
    for line in broken:
        print(line)
    for name, number in counts.items():
        print(f"{number:7} {name}")
    print(f"{len(broken):7} broken views")
    return int(bool(broken))


if __name__ == "__main__":
    sys.exit(main())
