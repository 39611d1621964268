"""Builds that are killed, read from, starved of disk and doubled; the same bytes whatever the machine is set to.

The counts of longer runs come from `python -m tests.publish.kills` and `python -m tests.publish.hot_readers`.
"""

import ctypes
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from filelock import FileLock

from logbook.publish.lock import LOCK
from logbook.publish.manifest import read_manifest
from logbook.publish.staging import STAGING
from tests.publish.hot_readers import hot_readers
from tests.publish.kills import kills
from tests.publish.states import ROOT, STATES, build_whole, builder, faults, files_of, whole_states, write_logs

resource = pytest.importorskip("resource", reason="limits and umasks are not known to this system")


def test_archives_of_killed_builds_are_whole() -> None:
    counts = kills(6, seed=20261126)

    assert counts["killed"] == 6
    assert (counts["broken archives"], counts["next builds that were not whole"]) == (0, 0)


def test_readers_meet_no_broken_view_while_the_archive_is_built() -> None:
    counts, broken = hot_readers(3, seed=20261126)

    assert broken == []
    assert counts["views"] > 50


def test_a_look_at_an_archive_tells_what_is_broken(tmp_path: Path) -> None:
    logs = write_logs(tmp_path / "logs")
    states = whole_states(tmp_path, logs)
    site = tmp_path / "site"
    (site / "trips" / "auk-2026-05-04.html").unlink()
    (site / "vessels" / "auk.html").write_text("<p>half a pa")

    told = list(faults(site, states.values()))

    assert "vessels/auk.html is of neither state" in told
    assert "index.html leads to trips/auk-2026-05-04.html, which is not there" in told


@pytest.fixture(scope="module")
def logs(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    return write_logs(tmp_path_factory.mktemp("states"))


def command(logs: Path, site: Path, **how: object) -> subprocess.CompletedProcess[str]:
    words = [sys.executable, "-m", "logbook", "build", str(logs), str(site)]
    return subprocess.run(words, cwd=ROOT, capture_output=True, text=True, check=False, **how)  # type: ignore[call-overload,no-any-return]


@pytest.mark.parametrize("most", [0, 3_000, 20_000])
def test_a_full_disk_is_a_clear_error_and_the_archive_stays_as_it_was(
    logs: dict[str, Path], tmp_path: Path, most: int
) -> None:
    # A limit on the size of files stands for the disk: a write beyond it fails (setrlimit, POSIX.1-2017: RLIMIT_FSIZE, EFBIG).
    site = tmp_path / "site"
    assert command(logs["first"], site).returncode == 0
    before = {path: path.read_bytes() for path in site.rglob("*") if path.is_file()}

    done = command(logs["second"], site, preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (most, most)))

    assert done.returncode == 3
    assert "logbook: error: could not write the archive" in done.stderr
    assert "make room and build again" in done.stderr
    assert "Traceback" not in done.stderr
    assert {path: path.read_bytes() for path in site.rglob("*") if path.is_file()} == before
    assert not (site / STAGING).exists()


def as_anybody() -> None:
    """Take from root the right to write anywhere (Linux: PR_CAPBSET_DROP, CAP_DAC_OVERRIDE); others have it not."""
    ctypes.CDLL(None).prctl(24, 1, 0, 0, 0)


@pytest.mark.skipif(sys.platform != "linux", reason="root may write anywhere elsewhere")
def test_a_target_that_may_not_be_written_is_a_clear_error(logs: dict[str, Path], tmp_path: Path) -> None:
    site = tmp_path / "site"
    assert command(logs["first"], site).returncode == 0
    before = files_of(site)
    folders = [tmp_path, site, site / "trips"]
    for folder in folders:
        folder.chmod(0o555)

    there = command(logs["second"], site, preexec_fn=as_anybody)
    new = command(logs["second"], tmp_path / "new", preexec_fn=as_anybody)
    site.chmod(0o755)
    below = command(logs["second"], site, preexec_fn=as_anybody)
    for folder in folders:
        folder.chmod(0o755)

    for done in (there, new, below):
        assert done.returncode == 3, done.stderr
        assert "logbook: error: " in done.stderr
        assert "Traceback" not in done.stderr
    assert "Permission denied" in there.stderr + new.stderr
    assert "trips can't be written to" in below.stderr
    assert files_of(site) == before


def test_of_two_builders_at_once_one_waits_and_the_archive_is_of_one_of_them(
    logs: dict[str, Path], tmp_path: Path
) -> None:
    states = whole_states(tmp_path, logs)
    site = tmp_path / "two"
    build_whole(logs["first"], site, 0)
    running = [builder(logs[state], site, 0, pace_s=0.005) for state in ("second", "second", "second")]
    for one in running:
        _, said = one.communicate()
        assert one.returncode in (0, 1), said.decode()

    assert files_of(site) == states["second"]
    assert list(faults(site, [states["second"]])) == []


def test_the_lock_of_a_killed_builder_holds_nobody_up(logs: dict[str, Path], tmp_path: Path) -> None:
    site = tmp_path / "site"
    site.mkdir()
    code = "import sys, time; from filelock import FileLock; FileLock(sys.argv[1]).acquire(); print('held', flush=True); time.sleep(60)"
    with subprocess.Popen([sys.executable, "-c", code, str(site / LOCK)], stdout=subprocess.PIPE) as holder:
        assert holder.stdout is not None
        assert holder.stdout.readline() == b"held\n"
        holder.kill()

    with FileLock(site / LOCK, timeout=0):
        pass
    build_whole(logs["first"], site)


def other_order(logs: Path) -> None:
    """Write the same files in another order, and much later."""
    for path in sorted(logs.iterdir(), reverse=True):
        text = path.read_bytes()
        path.unlink()
        path.write_bytes(text)
        os.utime(path, (1, 1))


SETTINGS: dict[str, Callable[[], dict[str, object]]] = {
    "locale": lambda: {"env": {**os.environ, "LC_ALL": "C.UTF-8", "LANG": "nb_NO.UTF-8"}},
    "no UTF-8": lambda: {"env": {**os.environ, "LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}},
    "zone": lambda: {"env": {**os.environ, "TZ": "Pacific/Chatham"}},
    "hash seed": lambda: {"env": {**os.environ, "PYTHONHASHSEED": "1234"}},
    "umask": lambda: {"umask": 0o077},
    "optimised": lambda: {"env": {**os.environ, "PYTHONOPTIMIZE": "1"}},
    "one processor": lambda: {"preexec_fn": lambda: os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})},
    "folder": dict,
}


@pytest.mark.parametrize("setting", SETTINGS)
def test_the_same_logs_give_the_same_bytes(logs: dict[str, Path], tmp_path: Path, setting: str) -> None:
    command(logs["second"], tmp_path / "one")
    copied = Path(shutil.copytree(logs["second"], tmp_path / "elsewhere" / "copied logs å"))
    other_order(copied)

    done = command(copied, tmp_path / "another", **SETTINGS[setting]())

    assert done.returncode == 1, done.stderr
    assert files_of(tmp_path / "another") == files_of(tmp_path / "one")
    assert read_manifest(tmp_path / "another") == read_manifest(tmp_path / "one")


def test_both_states_tell_of_all_that_comes_goes_and_breaks(logs: dict[str, Path], tmp_path: Path) -> None:
    first, second = whole_states(tmp_path, logs).values()

    assert list(STATES) == ["first", "second"]
    assert first.keys() - second.keys() >= {"trips/ternbank-2026-04-04.html", "vessels/ternbank.html"}
    assert second.keys() - first.keys() >= {"trips/auk-2026-05-04.html", "vessels/auk.html"}
    assert b"read at present" in second["trips/solan-bright-2026-03-04.html"]
