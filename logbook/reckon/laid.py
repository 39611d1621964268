"""The ice laid with fish: as logged with the tows or by the tally, else as much as fish takes by practice."""

from collections.abc import Collection, Iterable, Iterator
from datetime import datetime

from msgspec import Struct

from logbook.model import reasons
from logbook.model.figures import TowFigures
from logbook.model.trip import CatchKept, Stowed, Trip
from logbook.reckon.gaps import numbers
from logbook.reckon.on_ice import may_be_aboard
from logbook.reckon.together import still_waiting


class Laid(Struct, frozen=True, kw_only=True):
    """Ice laid at a moment.

    Attributes:
        at: When; None where that is not known.
        kg: How much.
    """

    at: datetime | None
    kg: float


class AllLaid(Struct, frozen=True, kw_only=True):
    """All ice laid on a trip.

    Attributes:
        laid: Each time it was.
        assumed: Numbers of the tows for which it was assumed.
        left_out: Numbers of the tows for which neither ice nor catch is known.
    """

    laid: tuple[Laid, ...]
    assumed: tuple[int, ...]
    left_out: tuple[int, ...]

    def words(self, fish_to_ice: float) -> str:
        """Return what was assumed and left out; empty where nothing was."""
        parts = []
        if self.assumed:
            parts.append(reasons.FISH_TO_ICE.format(fish=f"{fish_to_ice:g}", which=numbers(self.assumed)))
        if self.left_out:
            parts.append(reasons.WITHOUT_ICE.format(which=numbers(self.left_out)))
        return "; ".join(parts)


def all_laid(trip: Trip, tows: Iterable[TowFigures], fish_to_ice: float, as_of: datetime) -> AllLaid:
    """Return the ice laid with every tow's fish and moved to it afterwards.

    Where the tally says what ice was laid with a tow's fish, its own `ice` does not count besides; a line without ice about a
    tow that others tell the ice of is fish that took ice too. What is still on deck counts
    as laid at `as_of`: it will need it.

    Args:
        trip: The trip as it stood.
        tows: The figures of its tows, in order.
        fish_to_ice: Fish laid with one of ice, where nothing was logged.
        as_of: The moment.
    """
    tallied = [line for line in trip.stowage if line.ice is not None]
    by_tally = {no for line in tallied for no in line.tows}
    bare = [line for line in trip.stowage if line.ice is None and line.tows and by_tally.issuperset(line.tows)]
    by_tows = _by_tows(trip, tows, by_tally, fish_to_ice, as_of)
    part = _not_tallied(tallied, [one.kg * fish_to_ice for _, one in by_tows.assumed])
    return AllLaid(
        laid=(
            *(Laid(at=line.at, kg=float(line.ice)) for line in tallied if line.ice is not None),
            *_re_iced(trip),
            *by_tows.logged,
            *(Laid(at=one.at, kg=one.kg * part) for _, one in by_tows.assumed),
            *(Laid(at=line.at, kg=_fish_kg([line]) / fish_to_ice) for line in bare),
        ),
        assumed=(*(no for no, _ in by_tows.assumed if part), *(no for line in bare for no in line.tows)),
        left_out=by_tows.left_out,
    )


class _ByTows(Struct, frozen=True, kw_only=True):
    """The ice of the tows that the tally does not tell the ice of: as logged, assumed by number, and who is left out."""

    logged: tuple[Laid, ...]
    assumed: tuple[tuple[int, Laid], ...]
    left_out: tuple[int, ...]


def _by_tows(
    trip: Trip, tows: Iterable[TowFigures], by_tally: Collection[int], fish_to_ice: float, as_of: datetime
) -> _ByTows:
    logged: list[Laid] = []
    assumed: list[tuple[int, Laid]] = []
    left_out: list[int] = []
    waiting = still_waiting(trip.tows)
    for tow, figures, aboard in zip(trip.tows, tows, may_be_aboard(trip.tows), strict=True):
        if not aboard or tow.no in by_tally:
            continue
        at = min(figures.on_ice, as_of) if figures.on_ice is not None else None
        if tow.ice is not None:
            logged.append(Laid(at=at, kg=float(tow.ice)))
        elif figures.kept_kg:
            assumed.append((tow.no, Laid(at=at, kg=float(figures.kept_kg) / fish_to_ice)))
        elif figures.kept_kg is None and (tow.kept is not CatchKept.NEXT or tow in waiting):
            left_out.append(tow.no)
    return _ByTows(logged=tuple(logged), assumed=tuple(assumed), left_out=tuple(left_out))


def _re_iced(trip: Trip) -> Iterator[Laid]:
    for reading in trip.readings:
        for _, weight in reading.re_iced:
            yield Laid(at=reading.at, kg=float(weight))


def _not_tallied(tallied: Iterable[Stowed], fish_kg: list[float]) -> float:
    """Return the part of some fish that lines of the tally which name no tow can't have been about."""
    told = _fish_kg(line for line in tallied if not line.tows)
    return max(0.0, 1 - told / sum(fish_kg)) if fish_kg else 1.0


def _fish_kg(lines: Iterable[Stowed]) -> float:
    return sum(float(fish.weight.kilograms) for line in lines for fish in line.fish if fish.weight is not None)
