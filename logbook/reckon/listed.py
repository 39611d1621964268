"""All tows of some trips in one list, each with its trip and with what sums over places and seasons ask of it."""

from collections.abc import Callable, Hashable, Iterable, Iterator, Sequence
from datetime import datetime
from decimal import Decimal
from typing import TypeVar

from msgspec import Struct

from logbook.model.figures import Reckoned, TowFigures
from logbook.model.fleet_figures import GroupFigures
from logbook.model.places import SpeciesHere, TowMark
from logbook.model.trip import Tow
from logbook.reckon.catch import add
from logbook.reckon.groups import clean_tows, group_of_tows
from logbook.reckon.totals import add_floats

K = TypeVar("K", bound=Hashable)


class Listed(Struct, frozen=True, kw_only=True):
    """A tow in a list over many trips.

    Attributes:
        trip: Its trip.
        order: Its place among the tows of the trip, from 1.
        tow: Its figures.
        clean: False where it was foul, or its catch was sorted with that of one that was.
    """

    trip: Reckoned
    order: int
    tow: TowFigures
    clean: bool

    @property
    def when(self) -> datetime | None:
        """Return when it was shot, else hauled."""
        return self.tow.shot or self.tow.hauled

    @property
    def log(self) -> Tow | None:
        """Return the tow as it was typed; None where the list of tows and the figures differ."""
        tows = self.trip.log.tows
        return tows[self.order - 1] if len(tows) == len(self.trip.figures.tows) else None

    @property
    def known(self) -> bool:
        """Tell whether its catch and its hours are known."""
        return self.tow.kept_kg is not None and self.tow.catch_h is not None

    def mark(self, species: str | None = None, words: str = "") -> TowMark:
        """Return what leads to it, with what it kept of a species, or of all."""
        tow = self.tow
        caught = tow.catch.get(species) if species is not None else None
        kept = tow.kept_kg if species is None else caught.kept_kg if caught is not None else None
        return TowMark(
            trip_id=self.trip.figures.trip.id,
            vessel=self.trip.figures.trip.vessel,
            order=self.order,
            no=tow.no,
            when=self.when,
            ground=tow.ground,
            kept_kg=kept,
            kept_kg_per_h=float(kept) / tow.catch_h if kept is not None and tow.catch_h else None,
            words=words,
        )


def listed(trips: Iterable[Reckoned]) -> Iterator[Listed]:
    """Give every tow of some trips, in order of when those began."""
    for trip in sorted(trips, key=lambda trip: (trip.log.begins, trip.figures.trip.id)):
        clean = set(map(id, clean_tows(trip.figures.tows)))
        for order, tow in enumerate(trip.figures.tows, 1):
            yield Listed(trip=trip, order=order, tow=tow, clean=id(tow) in clean)


def grouped(tows: Iterable[Listed], key_of: Callable[[Listed], K | None]) -> dict[K, list[Listed]]:
    """Return tows by what they have in common; those that have none of it are left out."""
    groups: dict[K, list[Listed]] = {}
    for tow in tows:
        key = key_of(tow)
        if key is not None:
            groups.setdefault(key, []).append(tow)
    return groups


def summed(name: str, tows: Sequence[Listed]) -> GroupFigures:
    """Return the sums over some tows."""
    trips = len({tow.trip.figures.trip.id for tow in tows})
    return group_of_tows(name, trips, [one.tow for one in tows], [one.tow for one in tows if one.clean])


def rate_of(species: str, tows: Iterable[Listed]) -> float | None:
    """Return what was kept of a species over the hours of all tows whose catch is known; None where nothing is known."""
    known = [one.tow for one in tows if one.known]
    hours = add_floats(tow.catch_h for tow in known)
    if not hours:
        return None
    kept = add(tow.catch[species].kept_kg for tow in known if species in tow.catch)
    return float(kept or 0) / hours


def species_of(tows: Sequence[Listed]) -> tuple[SpeciesHere, ...]:
    """Return what some tows kept by species, most first."""
    kept: dict[str, Decimal] = {}
    for one in tows:
        for name, caught in one.tow.catch.items():
            if caught.kept_kg:
                kept[name] = kept.get(name, Decimal(0)) + caught.kept_kg
    clean = [one for one in tows if one.clean]
    made = [
        SpeciesHere(name=name, kept_kg=kg, kept_kg_per_h=rate_of(name, tows), kept_kg_per_h_clean=rate_of(name, clean))
        for name, kg in kept.items()
    ]
    return tuple(sorted(made, key=lambda one: (-one.kept_kg, one.name)))


def best_of(tows: Iterable[Listed], species: str | None, most: int) -> tuple[TowMark, ...]:
    """Return the tows that kept most for each hour, the best first."""
    marks = [one.mark(species) for one in tows if one.tow.catch_h]
    known = [mark for mark in marks if mark.kept_kg]
    known.sort(key=lambda mark: (-(mark.kept_kg_per_h or 0), mark.trip_id, mark.order))
    return tuple(known[:most])
