"""Kill the builder at random moments, and look at the archive after each: `python -m tests.publish.kills --kills 100 --seed 1`."""

import argparse
import random
import subprocess
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

from logbook.publish.staging import STAGING
from tests.publish.states import STATES, build_whole, builder, faults, files_of, whole_states, write_logs

_GRACE_S = 0.02
_PACE_S = 0.002
_EARLY = 0.1
"""Share of the kills at any moment of the build; the others come once it has begun to write."""


def kills(count: int, seed: int) -> Counter[str]:
    """Return how many builds were killed, at which step, and how many archives were broken after it.

    Args:
        count: How many builds to kill.
        seed: Of the moments.
    """
    chance = random.Random(seed)
    counts: Counter[str] = Counter()
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        logs = write_logs(folder / "logs")
        states = whole_states(folder, logs)
        site = folder / "archive"
        build_whole(logs["first"], site, _GRACE_S)
        took, writing = _measured(builder(logs["second"], site, _GRACE_S, _PACE_S), site)
        now = "second"
        while counts["killed"] < count:
            target = next(state for state in STATES if state != now)
            early = chance.random() < _EARLY
            running = builder(logs[target], site, _GRACE_S, _PACE_S)
            _await_writing(running, site, early=early)
            time.sleep(chance.uniform(0, took if early else writing))
            running.kill()
            _, said = running.communicate()
            if running.returncode >= 0:
                assert b" published in " in said, said.decode()
                counts["done before the kill"] += 1
                now = target
                continue
            counts["killed"] += 1
            counts[f"  {_step(site, states[now], states[target])}"] += 1
            broken = list(faults(site, states.values()))
            counts["broken archives"] += bool(broken)
            for fault in broken:
                print(f"after kill {counts['killed']}: {fault}")
            now = chance.choice(list(STATES))
            build_whole(logs[now], site, _GRACE_S)
            ended = files_of(site) == states[now] and not list(faults(site, [states[now]]))
            counts["next builds that were not whole"] += not ended
    return counts


def _await_writing(running: subprocess.Popen[bytes], site: Path, *, early: bool) -> None:
    """Wait until a build has begun to write, or has ended."""
    while not early and running.poll() is None and not (site / STAGING).exists():
        time.sleep(0.0005)


def _measured(running: subprocess.Popen[bytes], site: Path) -> tuple[float, float]:
    """Return how many seconds a build takes, and how many of them it writes."""
    began = time.monotonic()
    _await_writing(running, site, early=False)
    wrote = time.monotonic()
    while running.poll() is None and (site / STAGING).exists():
        time.sleep(0.0005)
    ended = time.monotonic()
    running.communicate()
    return time.monotonic() - began, ended - wrote


def _step(site: Path, before: dict[str, bytes], target: dict[str, bytes]) -> str:
    """Return what the builder was at, by what stands there."""
    now = {path: content for path, content in files_of(site).items() if not path.startswith(f"{STAGING}/")}
    if now == before:
        return "before the first file was placed" if (site / STAGING).exists() else "before it wrote anything"
    if any(path not in now for path in target):
        return "while new files came"
    if any(now[path] != content for path, content in target.items()):
        return "while files were replaced"
    return "while files were taken away" if now != target else "after the last file"


def main() -> int:
    """Print the counts, and leave with 1 where an archive was broken."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--kills", type=int, default=100)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    counts = kills(asked.kills, asked.seed)
    for name, number in counts.items():
        print(f"{number:5} {name}")
    return int(bool(counts["broken archives"] or counts["next builds that were not whole"]))


if __name__ == "__main__":
    sys.exit(main())
