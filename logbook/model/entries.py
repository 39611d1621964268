"""A log's species' entries, taken out of it to be kept once, and put back."""

from collections.abc import Callable, Iterator
from typing import TypeVar

from msgspec import Struct
from msgspec.structs import replace

from logbook.model.species import Species
from logbook.model.trip import Amount, OutTurn, Trip

Line = TypeVar("Line", Amount, OutTurn)


class Lean(Struct, frozen=True, kw_only=True):
    """A trip whose species' entries stand beside it, once each; within it they would be the larger part of it.

    Attributes:
        trip: The trip, its lines with names alone.
        entries: The entries of those names.
    """

    trip: Trip
    entries: tuple[Species, ...]


def lean(trip: Trip) -> Lean:
    """Return a trip with its species' entries beside it; one whose name stands for something else too stays where it is."""
    known = {line.species: line.known for line in _lines(trip) if line.known is not None}
    doubtful = {line.species for line in _lines(trip) if line.known is not known.get(line.species)}
    entries = {name: entry for name, entry in known.items() if name == entry.name and name not in doubtful}

    def bare(line: Line) -> Line:
        return replace(line, known=None) if line.species in entries else line

    return Lean(trip=_with_lines(trip, bare, bare), entries=tuple(entries.values()))


def whole(kept: Lean) -> Trip:
    """Return the trip with its entries where they belong."""
    entries = {entry.name: entry for entry in kept.entries}

    def known(line: Line) -> Line:
        return replace(line, known=entries[line.species]) if line.species in entries else line

    return _with_lines(kept.trip, known, known)


def _lines(trip: Trip) -> Iterator[Amount | OutTurn]:
    for tow in trip.tows:
        yield from (*tow.catch, *tow.undersize, *tow.put_back)
    for landing in trip.landings:
        yield from landing.out_turn


def _with_lines(trip: Trip, amount: Callable[[Amount], Amount], out_turn: Callable[[OutTurn], OutTurn]) -> Trip:
    """Return a trip with each line of its catches and out-turns changed."""
    tows = tuple(
        replace(
            tow,
            catch=tuple(map(amount, tow.catch)),
            undersize=tuple(map(amount, tow.undersize)),
            put_back=tuple(map(amount, tow.put_back)),
        )
        for tow in trip.tows
    )
    landings = tuple(replace(landing, out_turn=tuple(map(out_turn, landing.out_turn))) for landing in trip.landings)
    return replace(trip, tows=tows, landings=landings)
