"""All trips of an edition for the pages of many: what is known over them, put together from what each gave, kept from build to build."""

import hashlib
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, datetime
from functools import cached_property

from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.fleet_figures import FleetFigures, GroupFigures, VesselFigures
from logbook.model.gear import FastMark
from logbook.model.ledger import Brief, Entry, Kit, Share
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.packed import packed_as_it_stands
from logbook.model.places import GroundFigures, SpeciesFigures
from logbook.model.tally import Days, Hauls, Mishaps, Tally
from logbook.reckon.fleet import fasts_in_order, reckon_fleet, reckon_vessel
from logbook.reckon.landed import season
from logbook.reckon.of_ground import may_touch, reckon_grounds
from logbook.reckon.of_species import reckon_species
from logbook.reckon.sums import added_trips, figures_of_trips
from logbook.reckon.tally import share_of, together
from logbook.store.shares import Kept, Shares


def kept_of(trip: Reckoned, fleet: Fleet, rows: ByName[bytes]) -> Kept:
    """Return what a trip gives to the pages of many, ready to be kept.

    Args:
        trip: As the edition shows it.
        fleet: For when its season begins.
        rows: Its pieces of files.
    """
    share = share_of(trip, fleet)
    parts = {name: packed_as_it_stands(getattr(share, name)) for name in Share.__struct_fields__}
    head = trip.figures.trip
    ends = head.docked or head.last_word
    entry = Entry(
        id=head.id,
        vessel=head.vessel,
        begins=trip.log.begins,
        docked=head.docked,
        last_word=head.last_word,
        state=head.state,
        season=season(ends, fleet),
        year=f"{ends.year:04}",
        file=trip.log.file,
        species=tuple(trip.figures.catch),
        fished=_fished(share.days),
        key=hashlib.sha256(b"".join(hashlib.sha256(part).digest() for part in parts.values())).digest(),
        rows={name: hashlib.sha256(content).digest() for name, content in rows.items()},
    )
    return Kept(entry=entry, pieces={**parts, **{_of_file(name): content for name, content in rows.items()}})


def _of_file(name: str) -> str:
    """Return what a piece of a file is kept by."""
    return f"{name} in a file"


class StoredLedger:
    """The trips of an edition as the store has them."""

    def __init__(self, shares: Shares) -> None:
        """Begin with all trips that there are shares of."""
        self._shares = shares
        self.entries = tuple(sorted((entry for _, entry in shares.known.values()), key=_in_time))
        self.latest: datetime | None = max((entry.last_word for entry in self.entries), default=None)

    @cached_property
    def _of(self) -> dict[tuple[str, str], list[Entry]]:
        """Return the trips of each vessel's season."""
        found: dict[tuple[str, str], list[Entry]] = {}
        for entry in self.entries:
            found.setdefault((fold_name(entry.vessel), entry.season), []).append(entry)
        return found

    @cached_property
    def _of_year(self) -> dict[str, list[Entry]]:
        found: dict[str, list[Entry]] = {}
        for entry in self.entries:
            found.setdefault(entry.year, []).append(entry)
        return found

    @cached_property
    def vessels(self) -> dict[str, str]:
        """Return the vessels by name, each as she was first shown, with the folded name that her trips go by."""
        folded = {fold_name(entry.vessel): entry.vessel for entry in reversed(self.entries)}
        return {name: of for of, name in sorted(folded.items())}

    def key_of(self, entries: Iterable[Entry]) -> bytes:
        """Return a key that changes exactly when one of some trips does, or which they are."""
        made = hashlib.sha256()
        for entry in entries:
            made.update(entry.key)
        return made.digest()

    def briefs(self, ids: Iterable[str]) -> Iterator[Brief]:
        """Give trips as lists tell them, in the order asked for."""
        return (self._shares.part(trip, "brief", Brief) for trip in ids)

    def hauls(self, trip_id: str) -> Hauls:
        """Return the best hauls of a trip."""
        return self._shares.part(trip_id, "hauls", Hauls)

    def kit(self, trip_id: str) -> Kit:
        """Return a vessel and her gear after a trip."""
        return self._shares.part(trip_id, "kit", Kit)

    def group(self, name: str, briefs: Iterable[Brief]) -> GroupFigures:
        """Return the sums over some trips, one at least."""
        return figures_of_trips(name, added_trips([brief.sums for brief in briefs]))

    def _vessel_season(self, vessel: str, season_of: str) -> Tally:
        entries = self._of[vessel, season_of]
        parts = (self._shares.part(entry.id, "tally", Tally) for entry in entries)
        return self._tally(f"{vessel}\0{season_of}", entries, parts, own=True)

    def _vessel(self, vessel: str) -> Tally:
        seasons = sorted(season for of, season in self._of if of == vessel)
        entries = [entry for season in seasons for entry in self._of[vessel, season]]
        parts = (self._vessel_season(vessel, season) for season in seasons)
        return self._tally(f"{vessel}\0", entries, parts, own=True)

    def _season(self, season_of: str) -> Tally:
        vessels = sorted(vessel for vessel, of in self._of if of == season_of)
        entries = [entry for vessel in vessels for entry in self._of[vessel, season_of]]
        parts = (self._vessel_season(vessel, season_of) for vessel in vessels)
        return self._tally(f"\0{season_of}", entries, parts, own=False)

    @cached_property
    def _every(self) -> Tally:
        parts = (self._vessel(folded) for folded in self.vessels.values())
        return self._tally("\0", self.entries, parts, own=False)

    def _tally(self, name: str, entries: Sequence[Entry], parts: Iterable[Tally], *, own: bool) -> Tally:
        """Return sums over trips, as they were kept or put together from those over parts of them."""
        key = self.key_of(entries)
        found = self._shares.tally(name, key)
        if found is None:
            found = together(tuple(parts), own=own)
            self._shares.keep_tally(name, key, found)
        return found

    def fleet(self) -> FleetFigures:
        """Return the sums over all trips."""
        return self._fleet

    @cached_property
    def _fleet(self) -> FleetFigures:
        vessels = {name: self._vessel(folded).every for name, folded in self.vessels.items()}
        seasons = {name: self._season(name).docked for name in sorted({season for _, season in self._of})}
        return reckon_fleet(self._every, vessels, seasons)

    def vessel(self, name: str) -> VesselFigures:
        """Return what is known over all trips of a vessel."""
        return reckon_vessel(self._vessel(self.vessels[name]))

    def of_vessel(self, name: str) -> tuple[Entry, ...]:
        """Return a vessel's trips, by when they began."""
        own = (entry for (vessel, _), entries in self._of.items() if vessel == self.vessels[name] for entry in entries)
        return tuple(sorted(own, key=_in_time))

    def of_season(self, name: str) -> tuple[Entry, ...]:
        """Return the trips that docked in a season, by when they docked."""
        docked = [
            (entry.docked, entry.id, entry)
            for (_, season), entries in self._of.items()
            if season == name
            for entry in entries
            if entry.docked is not None
        ]
        return tuple(entry for _, _, entry in sorted(docked, key=lambda one: one[:2]))

    def species(self) -> Iterator[SpeciesFigures]:
        """Give what is known of every species that was ever kept, the heaviest first."""
        return reckon_species(self._every)

    def grounds(self) -> Iterator[GroundFigures]:
        """Give what is known of every ground that a tow names, the most fished first."""
        latest = self.latest
        near = [one for one in self.entries if latest and one.fished and may_touch(*one.fished, latest)]
        days = (self._shares.part(entry.id, "days", Days) for entry in near)
        return reckon_grounds(self._every, days, self._mishaps, latest)

    @cached_property
    def _fasts(self) -> tuple[FastMark, ...]:
        return fasts_in_order(self._mishaps)

    @cached_property
    def _mishaps(self) -> tuple[Mishaps, ...]:
        of = self._shares.parts("mishaps", Mishaps)
        return tuple(of[entry.id] for entry in self.entries if of[entry.id].fasts or of[entry.id].damage)

    def fasts(self) -> tuple[FastMark, ...]:
        """Return every place where gear came fast, in order of time; those whose time is not known last."""
        return self._fasts

    def rows(self, name: str, year: str | None = None) -> Iterator[bytes]:
        """Give the pieces of a file, of every trip or those of a year, by when they began."""
        kept = _of_file(name)
        if year is not None:
            yield from (self._shares.piece(entry.id, kept) for entry in self._of_year[year])
        else:
            pieces = self._shares.pieces(kept)
            yield from (pieces[entry.id] for entry in self.entries)

    def rows_key(self, name: str, year: str | None = None) -> bytes:
        """Return the key of those pieces."""
        of = [self._of_year[year]] if year is not None else self._of_year.values()
        return hashlib.sha256(b"".join((name.encode(), *(entry.rows[name] for own in of for entry in own)))).digest()


def _fished(days: Days) -> tuple[date, date] | None:
    """Return the first and the last day of some tows: a faulty log may have tows before its trip began."""
    every = [day for of_ground in days.grounds.values() for day in of_ground]
    return (date.fromordinal(min(every)), date.fromordinal(max(every))) if every else None


def _in_time(entry: Entry) -> tuple[datetime, str]:
    return entry.begins, entry.id
