"""Kill the builder at random moments, and look at the archive after each: `python -m tests.publish.kills --kills 100 --seed 1`."""

import argparse
import random
import subprocess
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

from logbook.publish.manifest import MANIFEST
from logbook.publish.staging import STAGING
from tests.publish.states import STATES, build_whole, builder, faults, files_of, whole_states, write_logs

_GRACE_S = 0.02
_PACE_S = 0.002
_EARLY = 0.25
"""Share of the kills at any moment of the build; the others come once it puts files in their places."""


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
        before = _list_of(site)
        took, placing = _measured(builder(logs["second"], site, _GRACE_S, _PACE_S), site, before)
        now = "second"
        while counts["killed"] < count:
            target = next(state for state in STATES if state != now)
            early = chance.random() < _EARLY
            before = _list_of(site)
            running = builder(logs[target], site, _GRACE_S, _PACE_S)
            if not early:
                _await_placing(running, site, before)
            time.sleep(chance.uniform(0, took if early else placing))
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


def _list_of(site: Path) -> bytes:
    """Return the archive's own list, the first file that a build puts in place."""
    return (site / MANIFEST).read_bytes()


def _await_placing(running: subprocess.Popen[bytes], site: Path, before: bytes) -> None:
    """Wait until a build has begun to put files in their places, or has ended."""
    while running.poll() is None and _list_of(site) == before:
        time.sleep(0.0005)


def _measured(running: subprocess.Popen[bytes], site: Path, before: bytes) -> tuple[float, float]:
    """Return how many seconds a build takes, and how many of them it puts files in their places and takes others away."""
    began = time.monotonic()
    _await_placing(running, site, before)
    placed = time.monotonic()
    running.communicate()
    return time.monotonic() - began, time.monotonic() - placed


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
