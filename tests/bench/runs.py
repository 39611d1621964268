"""What is measured: rounds in which the program and each site generator in turn do the same work on the same trips.

In every other round they take their turns the other way round, so that a machine that slows down or is shared favours nobody.
"""

import os
import re
import shutil
import sys
import time
from collections.abc import Iterator, Sequence
from enum import StrEnum
from pathlib import Path

from msgspec import Struct

from logbook.model.edition import OFFICE
from tests.bench.fleet import FLEET_FILE
from tests.bench.logs import log_path, write_fleet
from tests.bench.measured import CommandError, Used, measured
from tests.bench.peers import CONTENT, Peer, set_up
from tests.bench.trips import trip_of

ROOT = Path(__file__).parents[2]
OURS = "logbook"
FLOOR = "python -c pass"
TIMES = 3
"""How often in a round what takes us little time is done."""

_AMOUNT = re.compile(r"(?<=large)(:? )(\d+) baskets?")
_FIRST_AMOUNT = 31
"""More than any that the bench has, so that it is seen where it was changed."""


class Work(StrEnum):
    """What is done."""

    FULL = "full build"
    NOTHING = "nothing changed"
    ONE = "one log changed"
    FLEET = "the fleet file changed"
    CHECK = "check of all logs"


class Run(Struct, frozen=True, kw_only=True):
    """A run of a command.

    Attributes:
        who: Whose.
        work: What it did.
        trips: Of how many trips.
        turn: In which round.
        used: What it took.
        files: How many files it wrote; None where it does not say.
    """

    who: str
    work: Work
    trips: int
    turn: int
    used: Used
    files: int | None = None


def settle() -> None:
    """Wait until what was written is on the disk, and old enough that a program need not look whether it changes just now."""
    os.sync()
    time.sleep(2)


class Bench:
    """A folder with a fleet's logs, the same trips in Markdown and all that is made of them."""

    def __init__(self, folder: Path, trips: int, tows: int, peers: Sequence[Peer]) -> None:
        self.folder, self.trips, self.peers = folder, trips, peers
        self.logs, self.site, self.theirs = folder / "logs", folder / "site", folder / "peers"
        self.cache = folder / "cache"
        write_fleet(self.logs, self.theirs / CONTENT, trips, tows)
        for peer in peers:
            set_up(peer, self.theirs)
        changed = trip_of(trips // 2, tows)
        self.changed_log = log_path(self.logs, changed)
        self.changed_page = self.theirs / CONTENT / f"{changed.name}.md"
        self.amount = _FIRST_AMOUNT

    def rounds(self, count: int) -> Iterator[Run]:
        """Give the runs of some rounds."""
        self._warm_up()
        for turn in range(count):
            makers = [self._ours(turn), *(self._of(peer, turn) for peer in self.peers)]
            for runs in makers if turn % 2 == 0 else reversed(makers):
                yield from runs

    def _warm_up(self) -> None:
        """Have the program used once, so that its first run ever, which lists the machine's fonts, is not measured."""
        write_fleet(self.folder / "one" / "logs", self.folder / "one" / CONTENT, 1, 1)
        self._logbook("build", self.folder / "one" / "logs", self.folder / "one" / "site")

    def _ours(self, turn: int) -> Iterator[Run]:
        for made in (self.site, self.cache):
            shutil.rmtree(made, ignore_errors=True)
        settle()
        yield self._build(Work.FULL, turn)
        settle()
        for _ in range(TIMES):
            floor = measured((sys.executable, "-c", "pass"), self.folder)
            yield Run(who=FLOOR, work=Work.NOTHING, trips=self.trips, turn=turn, used=floor)
            yield self._build(Work.NOTHING, turn)
        for _ in range(TIMES):
            self._change(self.changed_log)
            yield self._build(Work.ONE, turn)
        fleet = self.logs / FLEET_FILE
        days = f"ice days: {9 - turn % 2}"
        fleet.write_text(re.sub(r"ice days: \d+", days, fleet.read_text("utf-8"), count=1), "utf-8")
        yield self._build(Work.FLEET, turn)
        used = self._logbook("check", "--brief", self.logs)
        yield Run(who=OURS, work=Work.CHECK, trips=self.trips, turn=turn, used=used)

    def _build(self, work: Work, turn: int) -> Run:
        used = self._logbook("build", self.logs, self.site, "--edition", OFFICE)
        said = re.search(r"(\d+) trips? of .* files?, (\d+) written", used.told)
        if said is None or int(said[1]) != self.trips or (int(said[2]) == 0) != (work is Work.NOTHING):
            raise CommandError(f"{work}: not so many trips or files as there should be\n{used.told}")
        return Run(who=OURS, work=work, trips=self.trips, turn=turn, used=used, files=int(said[2]))

    def _logbook(self, *words: str | Path) -> Used:
        environment = {
            "PYTHONPATH": str(ROOT),
            "XDG_CACHE_HOME": str(self.cache),
            "MPLCONFIGDIR": str(self.folder / "fonts"),  # what matplotlib knows of them outlives the cache
        }
        return measured((sys.executable, "-m", "logbook", *map(str, words)), self.folder, environment)

    def _of(self, peer: Peer, turn: int) -> Iterator[Run]:
        """Give a generator's runs; what it made is taken away afterwards, since ten thousand pages are large."""
        settle()
        full = self._generate(peer, peer.full)
        yield Run(who=peer.name, work=Work.FULL, trips=self.trips, turn=turn, used=full)
        if peer.keeps:
            self._generate(peer, peer.again)  # fills what it keeps; not measured
        settle()
        for work in (Work.NOTHING, Work.ONE):
            if work is Work.ONE:
                self._change(self.changed_page)
            used = full if peer.again is None else self._generate(peer, peer.again)
            yield Run(who=peer.name, work=work, trips=self.trips, turn=turn, used=used)
        for made in filter(None, (peer.out, peer.keeps)):
            shutil.rmtree(self.theirs / made, ignore_errors=True)

    def _generate(self, peer: Peer, words: Sequence[str] | None) -> Used:
        used = measured(
            (*peer.start, *(words or ())), self.theirs, {"XDG_CACHE_HOME": str(self.folder / "their-cache")}
        )
        said = self.changed_page.read_text("utf-8")
        tows, pages = said.count("\n| ") - 2, self.theirs / peer.out
        name = self.changed_page.stem
        made = [path for path in (pages / f"{name}.html", pages / name / "index.html") if path.is_file()]
        text = made[0].read_text("utf-8") if made else ""
        if text.count("<tr") <= tows or sum(1 for _ in pages.rglob("*.html")) < self.trips:
            raise CommandError(f"{peer.name}: not {self.trips} pages, or no table of {tows} tows on one\n{used.told}")
        if _AMOUNT.findall(said) != _AMOUNT.findall(text):
            raise CommandError(f"{peer.name}: a page does not say what its text says\n{used.told}")
        return used

    def _change(self, path: Path) -> None:
        """Change an amount of fish to another than it ever was."""
        text = path.read_text("utf-8")
        path.write_text(_AMOUNT.sub(rf"\g<1>{self.amount} baskets", text, count=1), "utf-8")
        self.amount += 1
