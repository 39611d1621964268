"""All tows of some trips in one list, each with its trip and with what sums over places and seasons ask of it."""

from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping
from datetime import datetime
from decimal import Decimal
from typing import TypeVar

from msgspec import Struct

from logbook.model.figures import Reckoned, TowFigures
from logbook.model.places import SpeciesHere, TowMark
from logbook.model.tally import ALL, CLEAN, NOUGHT, KeptHere, Rate, Sums
from logbook.model.trip import Tow
from logbook.reckon.sums import HOUR_US, clean_tows, sums_of

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
    def rated(self) -> bool:
        """Tell whether its catch and the hours that it took are known."""
        return self.tow.kept_kg is not None and bool(self.tow.catch_h)

    def kept(self, species: str | None = None) -> Decimal | None:
        """Return what it kept of a species, or of all."""
        if species is None:
            return self.tow.kept_kg
        caught = self.tow.catch.get(species)
        return caught.kept_kg if caught is not None else None

    def mark(self, species: str | None = None, words: str = "") -> TowMark:
        """Return what leads to it, with what it kept of a species, or of all."""
        tow, kept = self.tow, self.kept(species)
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
        clean = clean_tows(trip.figures.tows)
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


def month_of_tow(one: Listed) -> int | None:
    """Return the calendar month of a tow; None where it is not known."""
    return one.when.month if one.when is not None else None


def summed(tows: Iterable[Listed]) -> Sums:
    """Return the sums over some tows."""
    own = tuple(tows)
    trips = len({one.trip.figures.trip.id for one in own})
    return sums_of([one.tow for one in own], frozenset(id(one.tow) for one in own if one.clean), trips)


def kept_here(tows: Iterable[Listed]) -> dict[str, KeptHere]:
    """Return what some tows kept by species, of those that they kept any of."""
    kept: dict[str, list[tuple[Decimal, Listed]]] = {}
    for one in tows:
        for name, caught in one.tow.catch.items():
            if caught.kept_kg:
                kept.setdefault(name, []).append((caught.kept_kg, one))
    return {
        name: KeptHere(
            kept=sum((kg for kg, _ in own), NOUGHT),
            rated=sum((kg for kg, one in own if one.rated), NOUGHT),
            clean=sum((kg for kg, one in own if one.rated and one.clean), NOUGHT),
            months=kept_by_month(own),
        )
        for name, own in kept.items()
    }


def kept_by_month(kept: Iterable[tuple[Decimal, Listed]]) -> dict[int, Decimal]:
    """Return what was kept in tows whose catch and hours are known by calendar month."""
    months: dict[int, Decimal] = {}
    for kg, one in kept:
        if one.rated and one.when is not None:
            months[one.when.month] = months.get(one.when.month, NOUGHT) + kg
    return months


def species_of(kept: Mapping[str, KeptHere], sums: Sums) -> tuple[SpeciesHere, ...]:
    """Return what some tows kept by species, most first; rates are over all of them whose catch and hours are known."""
    made = [
        SpeciesHere(
            name=name,
            kept_kg=here.kept,
            kept_kg_per_h=rate_of(here.rated, sums.rates.get(ALL)),
            kept_kg_per_h_clean=rate_of(here.clean, sums.rates.get(CLEAN)),
        )
        for name, here in kept.items()
    ]
    return tuple(sorted(made, key=lambda one: (-one.kept_kg, one.name)))


def rate_of(kept: Decimal, over: Rate | None) -> float | None:
    """Return what was kept of a species over the hours of all tows whose catch is known; None where nothing is known."""
    return float(kept) / (over.us / HOUR_US) if over is not None and over.us else None


def best_of(tows: Iterable[Listed], species: str | None, most: int) -> tuple[TowMark, ...]:
    """Return the tows that kept most for each hour, the best first."""
    rated = []
    for one in tows:
        kept, hours = one.kept(species), one.tow.catch_h
        if kept and hours:
            rated.append((-(float(kept) / hours), one.trip.figures.trip.id, one.order, one))
    return tuple(one.mark(species) for *_, one in sorted(rated, key=lambda one: one[:3])[:most])


def best_first(marks: Iterable[TowMark], most: int) -> tuple[TowMark, ...]:
    """Return the first of marks, by what they kept for each hour."""
    return tuple(sorted(marks, key=lambda mark: (-(mark.kept_kg_per_h or 0), mark.trip_id, mark.order))[:most])


def damage_of(tows: Iterable[Listed]) -> Iterator[TowMark]:
    """Give the tows whose gear was damaged or lost, with the words of the log."""
    for one in tows:
        log = one.log
        words = "; ".join(said for said in (log.damage, log.gear_lost) if said) if log is not None else ""
        if words:
            yield one.mark(words=words)
