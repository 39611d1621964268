"""What a fleet's pages are made from: what each trip gives to them, and where it is asked for.

All trips of an archive need not be in memory at once: only a line of each is, by which the rest is found.
"""

from collections.abc import Iterable, Iterator
from datetime import datetime
from typing import Protocol

from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import Landed
from logbook.model.named import ByName
from logbook.model.tally import Days, Mishaps, Tally, TripSums


class Brief(Struct, frozen=True, kw_only=True):
    """A trip as lists of trips tell it.

    Attributes:
        trip: The trip without its tows, and without all else that only its own page tells.
        sums: Over the whole of it.
        landed: What it put ashore; None where it has not docked.
        offsets: Offset from UTC in seconds to how many times of its log have it.
    """

    trip: Reckoned
    sums: TripSums
    landed: Landed | None
    offsets: dict[int, int] = {}


class Share(Struct, frozen=True, kw_only=True):
    """What one trip gives to the pages and files of the whole fleet, as an edition shows it.

    Attributes:
        brief: The trip in lists.
        tally: Its sums.
        days: The same by ground and day.
        mishaps: What befell its gear.
        rows: Its pieces of files, by what they are pieces of.
    """

    brief: Brief
    tally: Tally
    days: Days
    mishaps: Mishaps
    rows: ByName[bytes]


class Entry(Struct, frozen=True, kw_only=True):
    """A trip's line among all of them.

    Attributes:
        id: Which trip.
        vessel: Her name.
        begins: When it began.
        docked: When she docked; None where she has not.
        last_word: The last moment that its log tells of.
        state: at sea, homeward, landed or landing not logged.
        season: The season of its docking, else of its last word.
        year: The calendar year of its docking, else of its last word, by which files are parted.
        file: Its log, by name from the logs folder.
        key: Digest of what it gives to pages of many trips; another for anything else.
    """

    id: str
    vessel: str
    begins: datetime
    docked: datetime | None
    last_word: datetime
    state: str
    season: str
    year: str
    file: str
    key: bytes


class Ledger(Protocol):
    """All trips of an edition, and what each gives to the pages of many."""

    entries: tuple[Entry, ...]
    """By when they began, then by id."""

    def briefs(self, ids: Iterable[str]) -> Iterator[Brief]:
        """Give trips as lists tell them, in the order asked for."""

    def whole(self, trip_id: str) -> Reckoned:
        """Return a trip with all that the edition shows of it."""

    def days(self, ids: Iterable[str]) -> Iterator[Days]:
        """Give what trips did day by day."""

    def mishaps(self) -> Iterator[Mishaps]:
        """Give what befell the gear, trip by trip, of those trips on which anything did."""

    def tally(self, vessel: str | None = None, season: str | None = None) -> Tally:
        """Return the sums over all trips, or those of a vessel, of a season, or both; `own` is told of a vessel alone."""

    def tally_key(self, vessel: str | None = None, season: str | None = None) -> bytes:
        """Return what changes exactly when one of those trips does."""

    def rows(self, name: str, year: str | None = None) -> Iterator[bytes]:
        """Give the pieces of a file, of every trip or those of a year, by when they began."""

    def rows_key(self, name: str, year: str | None = None) -> bytes:
        """Return what changes exactly when one of those pieces does."""
