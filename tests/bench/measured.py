"""Runs a command and says what it took: time, processor time and memory, of itself and all processes that it waited for."""

import os
import subprocess
import sys
import time
from collections.abc import Mapping, Sequence
from pathlib import Path

from msgspec import Struct


class Used(Struct, frozen=True, kw_only=True):
    """What a command took.

    Attributes:
        wall_s: How long it took.
        cpu_s: Processor time, its own and that of the processes it started and waited for.
        peak_mb: The most memory that the largest of these processes had in the machine at any time (resident set, with what it
            shares with others), in MiB. It is not less than what this process had when it started the command.
        told: What it printed.
    """

    wall_s: float
    cpu_s: float
    peak_mb: float
    told: str


class CommandError(Exception):
    """A command did not do what it was to do; has its words and what it printed."""


def measured(words: Sequence[str], folder: Path, environment: Mapping[str, str] | None = None) -> Used:
    """Run a command to its end.

    Args:
        words: The command and its arguments.
        folder: The folder to run it in; what it prints stands there in `told.txt` meanwhile.
        environment: What it finds in its environment beside what is there.

    Raises:
        CommandError: It left with a status other than 0.

    Source:
        The fields of `struct rusage` (getrusage(2), wait4(2)): of a process and its waited-for descendants the times are the sum
        and `ru_maxrss` that of the largest, in KiB on Linux and in bytes on macOS.
    """
    with (folder / "told.txt").open("w+", encoding="utf-8", errors="replace") as told:
        began = time.perf_counter()
        started = subprocess.Popen(
            words,
            cwd=folder,
            env={**os.environ, **(environment or {})},
            stdin=subprocess.DEVNULL,
            stdout=told,
            stderr=told,
        )
        try:
            _, status, used = os.wait4(started.pid, 0)
        except BaseException:
            started.terminate()  # who ends the bench ends what it measures
            started.wait()
            raise
        took = time.perf_counter() - began
        started.returncode = os.waitstatus_to_exitcode(status)
        told.seek(0)
        text = told.read()
    if started.returncode != 0:
        raise CommandError(f"{' '.join(words)}: status {started.returncode}\n{text}")
    return Used(
        wall_s=took,
        cpu_s=used.ru_utime + used.ru_stime,
        peak_mb=used.ru_maxrss / (1024 * 1024 if sys.platform == "darwin" else 1024),
        told=text,
    )
