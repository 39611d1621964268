"""What a command took is measured right, with all that it started."""

import json
import os
import signal
import subprocess
import sys
from pathlib import Path
from typing import NoReturn

import pytest

from tests.bench.measured import CommandError, measured

ROOT = Path(__file__).parents[2]

_MEASURING = """
import json, sys
from pathlib import Path
from tests.bench.measured import measured
used = measured((sys.executable, "-c", sys.argv[1]), Path(sys.argv[2]))
print(json.dumps([used.wall_s, used.cpu_s, used.peak_mb, used.told]))
"""


def of_small_process(words: str, folder: Path) -> tuple[float, float, float, str]:
    """Measure in a process of its own, since what is started is never told smaller than what starts it."""
    done = subprocess.run(
        [sys.executable, "-c", _MEASURING, words, str(folder)], cwd=ROOT, capture_output=True, text=True, check=True
    )
    wall, cpu, peak, told = json.loads(done.stdout)
    return wall, cpu, peak, told


@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="only Linux says what a process had at most")
def test_memory_is_what_the_system_says_of_the_process(tmp_path: Path) -> None:
    # VmHWM of proc_pid_status(5), in KiB: the peak resident set, which the process reads of itself.
    _, _, peak, told = of_small_process(
        "kept = b'x' * 80_000_000\nprint([line for line in open('/proc/self/status') if 'VmHWM' in line][0])", tmp_path
    )

    assert peak == pytest.approx(int(told.split()[1]) / 1024, rel=0.03)
    assert peak > 80_000_000 / 1024**2


def test_time_and_memory_of_a_process_that_it_started_count(tmp_path: Path) -> None:
    inner = "import time; kept = b'x' * 80_000_000\nwhile time.process_time() < 0.5: pass"
    wall, cpu, peak, _ = of_small_process(
        f"import subprocess, sys; subprocess.run([sys.executable, '-c', {inner!r}])", tmp_path
    )

    assert wall > 0.5
    assert cpu > 0.5
    assert peak > 80_000_000 / 1024**2


def test_waiting_is_no_processor_time(tmp_path: Path) -> None:
    used = measured((sys.executable, "-c", "import time; time.sleep(0.5)"), tmp_path)

    assert used.wall_s > 0.5
    assert used.cpu_s < 0.45


def test_a_command_that_fails_is_no_measure(tmp_path: Path) -> None:
    with pytest.raises(CommandError, match=r"status 3\n.*no such thing"):
        measured((sys.executable, "-c", "print('no such thing'); raise SystemExit(3)"), tmp_path)


def test_who_interrupts_the_measuring_ends_the_command_too(tmp_path: Path) -> None:
    def interrupted(*_: object) -> NoReturn:
        raise KeyboardInterrupt

    before = signal.signal(signal.SIGALRM, interrupted)
    signal.setitimer(signal.ITIMER_REAL, 2)
    try:
        with pytest.raises(KeyboardInterrupt):
            measured(
                (sys.executable, "-c", "import os, time; print(os.getpid(), flush=True); time.sleep(60)"), tmp_path
            )
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)

    with pytest.raises(ProcessLookupError):
        os.kill(int((tmp_path / "told.txt").read_text("utf-8")), 0)
