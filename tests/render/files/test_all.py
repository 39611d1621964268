"""Files are made again only where a trip in them has changed, and are then the same as if all had been made."""

from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest
from msgspec.structs import replace

from logbook.build.ledger import StoredLedger
from logbook.model.edition import OFFICE
from logbook.model.figures import Reckoned
from logbook.model.page import AtOnce, Maker, Page, content_of
from logbook.redact.policy import policy_of
from logbook.render.files.all import fleet_files
from logbook.store.made import Made
from logbook.store.store import Store
from tests.ledger import ledger_of
from tests.render import example
from tests.render.files.data import problem

TRIPS = example.whole_fleet()[1]
OF = example.fleet()
POLICY = policy_of(OFFICE, OF)


def written_on(trips: Sequence[Reckoned]) -> tuple[Reckoned, ...]:
    """Return the trips, with another remark on the last of them: one of 2026."""
    *others, last = trips
    return (*others, replace(last, log=replace(last.log, remarks="Home by dark.")))


def made(ledger: StoredLedger, maker: Maker, *wrong: str) -> dict[str, bytes]:
    """Return the files, and see that those that stand say rightly how large they are."""
    found = {}
    problems = [problem(text) for text in wrong]
    for file in fleet_files(OF, ledger, ledger.fasts(), problems, POLICY, "Kerrin", maker):
        found[file.path] = content_of(file)
        page = Page(path=file.path, content=found[file.path])
        assert (file.size, file.digest) == (page.size, page.digest)
    return found


def ledger(trips: Sequence[Reckoned]) -> StoredLedger:
    return ledger_of(trips, OF, POLICY)


def test_known_or_not_the_bytes_are_the_same(tmp_path: Path) -> None:
    store = Store(None)
    made(ledger(TRIPS), Made(store, tmp_path, "en"), "a")
    later = written_on(TRIPS)

    assert made(ledger(later), Made(store, tmp_path, "en"), "b") == made(ledger(later), AtOnce(), "b")
    assert made(ledger(later[1:]), Made(store, tmp_path, "en")) == made(ledger(later[1:]), AtOnce())


def test_a_year_of_which_no_trip_changed_is_not_put_together(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    store = Store(None)
    list(made(ledger(TRIPS), Made(store, tmp_path, "en")))
    asked: list[tuple[str, str | None]] = []
    rows = StoredLedger.rows

    def watched(self: StoredLedger, name: str, year: str | None = None) -> Iterator[bytes]:
        asked.append((name, year))
        return rows(self, name, year)

    monkeypatch.setattr(StoredLedger, "rows", watched)
    later = ledger(written_on(TRIPS))
    for _ in fleet_files(OF, later, later.fasts(), (), POLICY, "Kerrin", Made(store, tmp_path, "en")):
        pass

    assert asked == [("trips", None)]
