"""How fast builds are as an archive grows, beside site generators: `python -m tests.bench --trips 100 1000 10000`.

Prints tables in Markdown; ratios count, since machines differ and are shared. Hugo and Eleventy are used where they are on the path,
MkDocs and Pelican where the Python that `--python` names has them; others are left out, and that is said. All files go to a folder
of the system's for temporary ones (`TMPDIR`), and are taken away: ten thousand trips need some gigabytes.
"""

import argparse
import os
import platform
import re
import sys
import tempfile
from collections.abc import Sequence
from pathlib import Path

from tests.bench.peers import Peer, peers
from tests.bench.runs import Bench, Run
from tests.bench.tables import Runs, told
from tests.bench.trips import TOWS

SLOW = ("MkDocs", "Pelican")
BETWEEN = re.compile(r"(<!-- the bench -->\n).*?(<!-- end -->)", re.DOTALL)


def main(words: Sequence[str] | None = None) -> int:
    """Measure, and print the tables."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    parser.add_argument("--trips", type=int, nargs="+", default=[100], help="how many trips; a column for each")
    parser.add_argument("--tows", type=int, default=TOWS, help="how many tows a trip has")
    parser.add_argument("--rounds", type=int, help="rounds of all; else 3 for up to 100 trips, 2 up to 1,000, 1 beyond")
    parser.add_argument(
        "--python", default=sys.executable, help="the Python that has MkDocs and Pelican; else this one"
    )
    parser.add_argument(
        "--slow-up-to", metavar="TRIPS", type=int, default=1000,
        help="leave MkDocs and Pelican out above so many trips (else 1000), since they take five minutes a build at 10,000",
    )  # fmt: skip
    parser.add_argument(
        "--into", type=Path, help="a file that gets the tables too, between <!-- the bench --> and <!-- end -->"
    )
    asked = parser.parse_args(words)
    found = list(peers(asked.python))
    there = [peer for peer in found if isinstance(peer, Peer)]
    versions = [f"{peer.name} {peer.version}" for peer in there]
    missing = [name for name in found if isinstance(name, str)]
    made: list[Run] = []
    for trips in sorted(set(asked.trips)):
        taking_part = [peer for peer in there if trips <= asked.slow_up_to or peer.name not in SLOW]
        with tempfile.TemporaryDirectory(prefix="bench-") as folder:
            bench = Bench(Path(folder), trips, asked.tows, taking_part)
            for run in bench.rounds(asked.rounds or _rounds(trips)):
                made.append(run)
                _tell(run)
        tables = f"{_machine()} {told(Runs(made), versions, missing)}\n"
        if asked.into:
            _write_into(asked.into, tables)
    print(tables)
    return 0


def _write_into(path: Path, tables: str) -> None:
    text = path.read_text("utf-8")
    path.write_text(BETWEEN.sub(lambda between: between[1] + tables + between[2], text), "utf-8")


def _rounds(trips: int) -> int:
    return 3 if trips <= 100 else 2 if trips <= 1000 else 1


def _tell(run: Run) -> None:
    used = run.used
    figures = f"{used.wall_s:8.2f} s {used.cpu_s:8.2f} s cpu {used.peak_mb:6.0f} MiB"
    print(f"{run.trips:6} trips {figures}  {run.who}: {run.work}", file=sys.stderr, flush=True)


def _machine() -> str:
    return f"Python {platform.python_version()}, {os.cpu_count()} processors."


if __name__ == "__main__":
    sys.exit(main())
