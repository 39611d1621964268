"""What a fleet's pages are made from: what each trip gives to them, and where it is asked for.

All trips of an archive need not be in memory at once: only a line of each is, by which the rest is found.
"""

from collections.abc import Collection, Iterable, Iterator, Sequence
from datetime import date, datetime
from typing import Protocol

from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.fleet import Vessel
from logbook.model.fleet_figures import FleetFigures, GroupFigures, Landed, VesselFigures
from logbook.model.gear import FastMark, NetFigures
from logbook.model.named import ByName
from logbook.model.places import GroundFigures, SpeciesFigures
from logbook.model.tally import Days, Hauls, Mishaps, Tally, TripSums


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


class Kit(Struct, frozen=True, kw_only=True):
    """A vessel and her gear after a trip.

    Attributes:
        vessel: Her entry.
        gear: Her nets.
        rigging: Her doors and warps.
    """

    vessel: Vessel
    gear: ByName[NetFigures]
    rigging: ByName[NetFigures]


class Share(Struct, frozen=True, kw_only=True):
    """What one trip gives to the pages of many, as an edition shows it.

    Attributes:
        brief: The trip in lists.
        tally: Its sums.
        days: The same by ground and day.
        mishaps: What befell its gear.
        hauls: Those that were the best since then.
        kit: The vessel and her gear after it.
    """

    brief: Brief
    tally: Tally
    days: Days
    mishaps: Mishaps
    hauls: Hauls
    kit: Kit


class Entry(Struct, frozen=True, kw_only=True, array_like=True):
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
        file: Its log, by name from the logs folder; empty in an edition that does not tell.
        species: Names of what it caught.
        fished: The first and the last day of its tows on grounds, by their own clocks; None where it has none.
        key: Digest of what it gives to pages of many trips; another for anything else.
        rows: Digests of its pieces of files, by what they are pieces of.
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
    species: tuple[str, ...]
    fished: tuple[date, date] | None
    key: bytes
    rows: dict[str, bytes] = {}


class Ledger(Protocol):
    """All trips of an edition, and what is known over many of them.

    Every `key` changes exactly when one of the trips does that it is of.
    """

    @property
    def entries(self) -> Sequence[Entry]:
        """Return all trips, by when they began, then by id."""

    @property
    def latest(self) -> datetime | None:
        """Return the last word of the archive; None where it has no trip."""

    def key_of(self, entries: Iterable[Entry]) -> bytes:
        """Return the key of some trips."""

    def briefs(self, ids: Iterable[str]) -> Iterator[Brief]:
        """Give trips as lists tell them, in the order asked for."""

    def hauls(self, trip_id: str) -> Hauls:
        """Return the best hauls of a trip."""

    def kit(self, trip_id: str) -> Kit:
        """Return a vessel and her gear after a trip."""

    def group(self, name: str, briefs: Iterable[Brief]) -> GroupFigures:
        """Return the sums over some trips."""

    def fleet(self) -> FleetFigures:
        """Return the sums over all trips."""

    @property
    def vessels(self) -> Collection[str]:
        """Return the names of the vessels, in order, each as she was first shown."""

    def of_vessel(self, name: str) -> Sequence[Entry]:
        """Return a vessel's trips, by when they began."""

    def of_season(self, name: str) -> Sequence[Entry]:
        """Return the trips that docked in a season, by when they docked."""

    def vessel(self, name: str) -> VesselFigures:
        """Return what is known over all trips of a vessel."""

    def species(self) -> Iterator[SpeciesFigures]:
        """Give what is known of every species that was ever kept, the heaviest first."""

    def grounds(self) -> Iterator[GroundFigures]:
        """Give what is known of every ground that a tow names, the most fished first."""

    def fasts(self) -> tuple[FastMark, ...]:
        """Return every place where gear came fast, in order of time; those whose time is not known last."""

    def rows(self, name: str, year: str | None = None) -> Iterator[bytes]:
        """Give the pieces of a file, of every trip or those of a year, by when they began."""

    def rows_key(self, name: str, year: str | None = None) -> bytes:
        """Return the key of those pieces."""
