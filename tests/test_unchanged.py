"""A build that meets everything as the last one left it is over before anything is loaded; any change ends that."""

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from unittest.mock import patch

import pytest

from logbook.build import archive, build, unchanged
from logbook.model.built import Built
from logbook.model.edition import CREW, OFFICE
from logbook.publish.manifest import MANIFEST
from logbook.store.store import place_of

LOG = """\
vessel: Auk
sailed: 2026-03-04 05:30, Port Kerrin
tows:
  - {shot: 18:10, hauled: 19:40, ground: The Saddle, catch: {haddock: 40 kg, oddfish: 3 kg}}
landed: {docked: 2026-03-06 21:15, port: Port Kerrin}
"""


@pytest.fixture(autouse=True)
def _logs_settle_at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """Have nobody wait until logs can be taken to be as they will stay."""
    monkeypatch.setattr(unchanged, "SETTLED_NS", -1)


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """Return a folder with a log, in a folder of logs, and its archive."""
    (tmp_path / "logs" / "2026").mkdir(parents=True)
    (tmp_path / "logs" / "2026" / "auk.yaml").write_text(LOG, "utf-8")
    built(tmp_path)
    return tmp_path


def built(place: Path, *, edition: str = OFFICE, every: bool = False) -> Built:
    return build(place / "logs", place / "site", lambda _: None, (edition,), every=every)


def at_once(place: Path, *, edition: str = OFFICE) -> bool:
    """Tell whether a build sees that it has nothing to do."""
    with patch.object(archive, "build_archive", wraps=archive.build_archive) as whole:
        built(place, edition=edition)
    return whole.call_count == 0


def test_the_last_words_are_said_again(place: Path) -> None:
    first = build(place / "logs", place / "other", lambda _: None, (OFFICE,))
    again = build(place / "logs", place / "other", lambda _: None, (OFFICE,))

    assert at_once(place)
    assert (again.logs, again.trips, again.problems) == (1, 1, first.problems)
    assert [problem.code for problem in again.problems] == ["species-unknown"]
    (_, done), (_, before) = again.published[0], first.published[0]
    assert (done.files, done.written, done.removed) == (before.files, 0, 0)


CHANGES: dict[str, Callable[[Path], object]] = {
    "a log is edited": lambda place: (place / "logs" / "2026" / "auk.yaml").write_text(LOG + "wants: ice\n", "utf-8"),
    "a log is saved again": lambda place: (place / "logs" / "2026" / "auk.yaml").write_text(LOG, "utf-8"),
    "a log comes": lambda place: (place / "logs" / "2026" / "auk-2.yaml").write_text(LOG, "utf-8"),
    "a log is renamed": lambda place: (place / "logs" / "2026" / "auk.yaml").rename(place / "logs" / "auk.yaml"),
    "a folder is renamed": lambda place: (place / "logs" / "2026").rename(place / "logs" / "of 2026"),
    "what is no log comes": lambda place: (place / "logs" / "auk.yaml.txt").write_text(LOG, "utf-8"),
    "a fleet file comes": lambda place: (place / "logs" / "fleet.yaml").write_text("fleet: Ours\n", "utf-8"),
    "a fleet file comes above": lambda place: (place / "fleet.yaml").write_text("fleet: Ours\n", "utf-8"),
    "nobody may read it": lambda place: (place / "logs" / "2026" / "auk.yaml").chmod(0o200),
    "a page is gone": lambda place: (place / "site" / "index.html").unlink(),
    "a page is spoilt": lambda place: (place / "site" / "vessels" / "auk.html").write_bytes(b"?"),
    "the list is gone": lambda place: (place / "site" / MANIFEST).unlink(),
    "the archive is gone": lambda place: (place / "site").rename(place / "elsewhere"),
    "the store is gone": lambda place: (place_of(place / "logs") or place).unlink(),
}


@pytest.mark.parametrize("change", CHANGES)
def test_any_change_is_met(place: Path, change: str) -> None:
    assert at_once(place)
    CHANGES[change](place)

    assert not at_once(place)


def test_another_edition_is_another_archive(place: Path) -> None:
    assert not at_once(place, edition=CREW)
    assert not at_once(place)


def test_every_file_is_looked_at_where_that_is_asked_for(place: Path) -> None:
    with patch.object(archive, "build_archive", wraps=archive.build_archive) as whole:
        built(place, every=True)
    assert whole.call_count == 1


def test_a_log_that_may_yet_change_unnoticed_is_looked_at_again(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(unchanged, "SETTLED_NS", 3_600_000_000_000)
    (place / "logs" / "2026" / "auk.yaml").write_text(LOG + "wants: ice\n", "utf-8")

    assert not at_once(place)
    assert not at_once(place)


def test_nothing_that_reads_reckons_or_renders_is_loaded(place: Path) -> None:
    code = (
        "import sys; from logbook.build import unchanged; unchanged.SETTLED_NS = -1; from logbook.cli.main import main\n"
        "try: main()\n"
        "finally: print(*sys.modules)"
    )
    words = ["build", str(place / "logs"), str(place / "site"), "--edition", OFFICE]
    done = subprocess.run(
        [sys.executable, "-c", code, *words], capture_output=True, text=True, env={**os.environ}, check=False
    )
    loaded = set(done.stdout.split())

    assert "0 written" in done.stderr + done.stdout
    assert not loaded & {
        "jinja2",
        "yaml",
        "markdown_it",
        "matplotlib",
        "geographiclib",
        "logbook.known",
        "logbook.render.pages",
    }
