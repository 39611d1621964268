"""How long builds take as a fleet's archive grows: `python -m tests.bench --trips 100 1000`.

Each row is one run of the command, with a cache of its own. What counts is how the rows compare: machines differ, and are shared. The
last column is the ratio of the wall time to that of the full build.
"""

import argparse
import os
import re
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from msgspec import Struct

from tests.browser.sizes import write_logs

ROOT = Path(__file__).parents[1]


class Run(Struct, frozen=True, kw_only=True):
    """A run of the command.

    Attributes:
        what: What was done before it.
        wall_s: How long it took.
        cpu_s: Processor time.
        peak_mb: The most memory it had.
        written: How many files it wrote.
    """

    what: str
    wall_s: float
    cpu_s: float
    peak_mb: float
    written: int


def runs(trips: int, folder: Path) -> Iterator[Run]:
    """Give the runs for a fleet of so many trips."""
    logs, site = folder / "logs", folder / "site"
    write_logs(logs, trips)
    yield _build("full build", logs, site)
    time.sleep(2)  # what changed a moment ago is hashed, not believed
    yield _build("nothing changed", logs, site)
    yield _build("nothing changed, again", logs, site)
    log = logs / "00003.yaml"
    log.write_text(
        re.sub(r"\b\d+ (?=(baskets?|box|boxes|kit|kg|lb|cwt|st)\b)", "7 ", log.read_text("utf-8"), count=1), "utf-8"
    )
    yield _build("one log changed", logs, site)
    fleet = logs / "fleet.yaml"
    fleet.write_text(fleet.read_text("utf-8").replace("ice days: 10", "ice days: 9"), "utf-8")
    yield _build("the fleet file changed", logs, site)


def _build(what: str, logs: Path, site: Path) -> Run:
    cache = logs.parent / "cache"
    environment = {**os.environ, "XDG_CACHE_HOME": str(cache), "LOCALAPPDATA": str(cache), "PYTHONPATH": str(ROOT)}
    told = logs.parent / "told.txt"
    began = time.monotonic()
    with told.open("w") as out:
        words = [sys.executable, "-m", "logbook", "build", str(logs), str(site), "--edition", "office"]
        child = os.posix_spawn(
            sys.executable, words, environment,
            file_actions=[(os.POSIX_SPAWN_DUP2, out.fileno(), 1), (os.POSIX_SPAWN_DUP2, out.fileno(), 2)],
        )  # fmt: skip
        _, status, used = os.wait4(child, 0)
    took = time.monotonic() - began
    text = told.read_text("utf-8")
    found = re.search(r"(\d+) written", text)
    if os.waitstatus_to_exitcode(status) not in (0, 1) or found is None:
        raise RuntimeError(text)
    return Run(
        what=what,
        wall_s=took,
        cpu_s=used.ru_utime + used.ru_stime,
        peak_mb=used.ru_maxrss / 1024,
        written=int(found[1]),
    )


def table(trips: int, made: list[Run]) -> Iterator[str]:
    """Give the lines of a table for README."""
    yield f"| {trips} trips | wall s | CPU s | peak MB | files written | to the full build |"
    yield "|---|---|---|---|---|---|"
    for run in made:
        ratio = run.wall_s / made[0].wall_s
        yield f"| {run.what} | {run.wall_s:.1f} | {run.cpu_s:.1f} | {run.peak_mb:.0f} | {run.written} | {ratio:.2f} |"


def main() -> int:
    """Print a table for each number of trips."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--trips", type=int, nargs="+", default=[100], help="how many trips; several give a table each")
    for trips in parser.parse_args().trips:
        with tempfile.TemporaryDirectory() as folder:
            print("\n".join(table(trips, list(runs(trips, Path(folder))))), flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main())
