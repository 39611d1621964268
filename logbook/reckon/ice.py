"""The ice: what is still loose to use and how long it lasts, and apart from that the least that physics asks."""

from collections.abc import Iterable, Iterator
from datetime import datetime, timedelta

from msgspec import Struct

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.figures import Ice
from logbook.model.language import N_
from logbook.model.quantity import HOUR
from logbook.model.trip import Reading, Trip
from logbook.reckon.age import warmest
from logbook.reckon.gaps import numbers
from logbook.reckon.homeward import FOREVER
from logbook.reckon.laid import AllLaid, all_laid
from logbook.reckon.melt import HoldMelt, chilling_kg, hold_melt
from logbook.reckon.standing import Standing

_HOURS_A_DAY = 24.0


class IceState(Struct, frozen=True, kw_only=True):
    """The figures of the ice with what a look ahead needs besides.

    Attributes:
        ice: The figures.
        use_kg_per_h: How fast the loose ice goes; None where nothing tells it.
    """

    ice: Ice
    use_kg_per_h: float | None


class _Use(Struct, frozen=True, kw_only=True):
    """How fast the loose ice goes, None where nothing tells it; and what was assumed of it or left out."""

    kg_per_h: float | None
    words: tuple[str, ...] = ()


_NO_USE = _Use(kg_per_h=None)


class _Look(Struct, frozen=True, kw_only=True):
    """A logged look at the loose ice."""

    at: datetime
    left_kg: float


def reckon_ice(now: Standing) -> IceState:
    """Return the ice of a trip at a moment."""
    trip, fleet = now.trip, now.fleet
    laid = all_laid(trip, now.tows, fleet.assumed.fish_to_ice, now.as_of)
    melt = hold_melt(trip, fleet.constants)
    loaded = _loaded(trip)
    laid_kg = sum(one.kg for one in laid.laid) if laid.laid or not laid.left_out else None
    kept = now.totals.kept_kg
    fish_to_ice = float(kept) / laid_kg if kept and laid_kg else None
    left, left_by = _left(now, loaded, laid, melt)
    use = _use(now, melt, fish_to_ice) if now.at_sea else _NO_USE
    chilling, chilling_basis = _chilling(now)
    ice = Ice(
        loaded_kg=loaded,
        laid_kg=laid_kg,
        hold_melt_kg=_melted(melt, trip.sailed or trip.begins, now.as_of),
        left_kg=left,
        left_by=left_by,
        chilling_kg=chilling,
        lasts_until=_lasts_until(now.as_of, left, use.kg_per_h) if now.at_sea else None,
        fish_to_ice=fish_to_ice,
        basis=(*_basis(now, laid, melt, left_by, use), *chilling_basis),
    )
    return IceState(ice=ice, use_kg_per_h=use.kg_per_h)


def _loaded(trip: Trip) -> float | None:
    """Return ice loaded, left at sailing and taken aboard; None where none of it was logged."""
    taken = [reading.ice_taken_aboard for reading in trip.readings]
    known = [float(weight) for weight in (trip.ice_loaded, trip.ice_left_at_sailing, *taken) if weight is not None]
    return sum(known) if known else None


def _melted(melt: HoldMelt, since: datetime, until: datetime) -> float | None:
    return melt.kg_per_h * max(0.0, (until - since) / HOUR) if melt.kg_per_h is not None else None


def looks(readings: Iterable[Reading]) -> tuple[_Look, ...]:
    """Return the logged looks at the loose ice in order of time; of several at one moment the least counts."""
    at: dict[datetime, float] = {}
    for reading in readings:
        if reading.at is not None and reading.ice_left is not None:
            at[reading.at] = min(float(reading.ice_left), at.get(reading.at, float(reading.ice_left)))
    return tuple(_Look(at=time, left_kg=left) for time, left in sorted(at.items()))


def _left(now: Standing, loaded: float | None, laid: AllLaid, melt: HoldMelt) -> tuple[float | None, str | None]:
    """Return the loose ice and how it is known: by the last look where nothing came after it, else reckoned from there.

    What was laid at the moment of a look counts as laid after it, what was taken aboard then as seen by it: that is less ice.
    """
    seen = looks(now.trip.readings)
    if not seen:
        if loaded is None:
            return None, None
        melted = _melted(melt, now.trip.sailed or now.trip.begins, now.as_of) or 0.0
        return max(0.0, loaded - sum(one.kg for one in laid.laid) - melted), N_("reckoned")
    last = seen[-1]
    used = sum(one.kg for one in laid.laid if one.at is None or one.at >= last.at)
    taken = sum(_taken(now.trip.readings, last.at, None))
    melted = _melted(melt, last.at, now.as_of) or 0.0
    if not used and not taken and not melted:
        return last.left_kg, N_("logged")
    return max(0.0, last.left_kg + taken - used - melted), N_("reckoned")


def _taken(readings: Iterable[Reading], after: datetime, until: datetime | None) -> Iterator[float]:
    """Give the ice taken aboard after one moment and not after another."""
    for reading in readings:
        if reading.at is None or reading.ice_taken_aboard is None or reading.at <= after:
            continue
        if until is None or reading.at <= until:
            yield float(reading.ice_taken_aboard)


def _use(now: Standing, melt: HoldMelt, fish_to_ice: float | None) -> _Use:
    """Return how fast the loose ice goes: between the last two looks, else hold melt and laying at the rate of catching.

    Of one that is homeward, looks from before she turned say nothing: no more fish is coming. Of one that fishes, two looks
    between which no fish came up or was iced say nothing of what fish takes: it goes no slower than they tell, nor than reckoned.
    """
    seen = _seen_use(now)
    if seen is not None and (now.state == "homeward" or seen[1]):
        return _Use(kg_per_h=seen[0])
    made = _reckoned_use(now, melt, fish_to_ice)
    if seen is not None and seen[0] >= (made.kg_per_h or 0.0):
        return _Use(kg_per_h=seen[0])
    return made


def _seen_use(now: Standing) -> tuple[float, bool] | None:
    """Return the rate between the last two looks, and whether fish came up or was iced between; None where it did not fall."""
    seen = looks(now.trip.readings)
    if now.state == "homeward":
        turned = now.trip.turned.at if now.trip.turned is not None else None
        seen = tuple(look for look in seen if turned is not None and look.at >= turned)
    if not seen[1:]:
        return None
    before, last = seen[-2:]
    used = before.left_kg + sum(_taken(now.trip.readings, before.at, last.at)) - last.left_kg
    times = (time for tow in now.tows for time in (tow.hauled, tow.on_ice) if time is not None)
    fished = any(before.at <= time <= last.at for time in times)
    return (used / ((last.at - before.at) / HOUR), fished) if used > 0 else None


def _reckoned_use(now: Standing, melt: HoldMelt, fish_to_ice: float | None) -> _Use:
    """Return hold melt and laying: fish to come takes ice as the trip's has so far, or by practice where that is more."""
    catching = now.catching_kg_per_day
    assumed = now.fleet.assumed.fish_to_ice
    ratio = min(assumed, fish_to_ice) if fish_to_ice is not None else assumed
    parts = (melt.kg_per_h, catching / ratio / _HOURS_A_DAY if catching is not None else None)
    known = [part for part in parts if part is not None]
    words = (
        *([reasons.NO_RATE] if catching is None else []),
        *([reasons.FISH_TO_COME.format(fish=f"{ratio:g}")] if catching and ratio == assumed else []),
        *_hold_words(melt),
    )
    return _Use(kg_per_h=sum(known) if known else None, words=words)


def _hold_words(melt: HoldMelt) -> tuple[str, ...]:
    """Return what was assumed of the hold, or that it is left out."""
    if melt.kg_per_h is None:
        return (reasons.NO_HOLD_MELT,)
    return tuple(words for _, words in melt.basis)


def _lasts_until(as_of: datetime, left: float | None, use: float | None) -> datetime | None:
    if left == 0:
        return as_of
    if left is None or not use:
        return None
    hours = left / use
    return as_of + timedelta(hours=hours) if hours < FOREVER / HOUR else None


def _chilling(now: Standing) -> tuple[float | None, Basis]:
    """Return the ice that chilled what was kept, by physics alone, with what it leaves out."""
    told: list[float] = []
    left_out: list[int] = []
    for tow, figures in zip(now.trip.tows, now.tows, strict=True):
        celsius = warmest(tow, now.trip)
        if figures.kept_kg is not None and celsius is not None:
            told.append(chilling_kg(float(figures.kept_kg), celsius, now.fleet.constants))
        elif figures.kept_kg:
            left_out.append(tow.no)
    basis = (("chilling_kg", reasons.WITHOUT_TEMPERATURE.format(which=numbers(left_out))),) if told and left_out else ()
    return sum(told) if told else None, basis


def _basis(now: Standing, laid: AllLaid, melt: HoldMelt, left_by: str | None, use: _Use) -> Basis:
    """Return what was assumed of the ice laid and of the hold, and so of what is left and how long it lasts."""
    words = laid.words(now.fleet.assumed.fish_to_ice)
    left = [part for part in (words, *_hold_words(melt)) if part] if left_by == "reckoned" else []
    lasts = [*left, *use.words] if left_by is not None and now.at_sea else []
    pairs = (
        ("laid_kg", words),
        ("fish_to_ice", words),
        *melt.basis,
        ("left_kg", "; ".join(left)),
        ("lasts_until", "; ".join(dict.fromkeys(lasts))),
    )
    return tuple((name, words) for name, words in pairs if words)
