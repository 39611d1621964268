"""Each tow: how long, how far, over what, with what catch, and how old its fish is."""

from collections.abc import Sequence
from datetime import datetime
from decimal import Decimal
from itertools import repeat

from msgspec import Struct

from logbook.model import reasons
from logbook.model.figures import SpeciesCatch, TowFigures
from logbook.model.named import ByName
from logbook.model.trip import CatchKept, Tow, Trip
from logbook.reckon.age import Fish, tow_age
from logbook.reckon.catch import add, kilograms, reckon_catch
from logbook.reckon.on_ice import Iced
from logbook.reckon.rectangle import rectangle
from logbook.reckon.together import sorted_together
from logbook.reckon.towing import Towing, light_of, middle_of, reckon_towing, warp_to_depth


def is_foul(tow: Tow) -> bool:
    """Tell whether gear came fast, was damaged or lost."""
    return tow.fast is not None or tow.damage is not None or tow.gear_lost is not None


def reckon_tows(
    trip: Trip, iced: Sequence[Iced], fish: Sequence[Fish | None], as_of: datetime
) -> tuple[TowFigures, ...]:
    """Return the figures of every tow, in order.

    Args:
        trip: The trip as it stood at `as_of`.
        iced: When each tow's fish was under ice.
        fish: What each tow's fish went through; None for one that was not hauled.
        as_of: The moment the fish's age is reckoned for.
    """
    tows = trip.tows
    towing = [reckon_towing(tow, trip) for tow in tows]
    effort = [_effort([tows[m] for m in group], [towing[m] for m in group]) for group in sorted_together(tows)]
    return tuple(map(_tow, tows, towing, effort, iced, fish, repeat(as_of)))


class _Effort(Struct, frozen=True, kw_only=True):
    """The time and the bottom that a tow's catch took; of tows sorted together, on the last of them.

    Attributes:
        hours: Time towing, of all that were sorted together; None where one is not known.
        area_km2: Swept between the wings, the same.
        sorted_with: Numbers of the tows sorted with it.
    """

    hours: float | None
    area_km2: float | None
    sorted_with: tuple[int, ...]


def _effort(together: Sequence[Tow], towing: Sequence[Towing]) -> _Effort:
    return _Effort(
        hours=_whole_sum([one.hours for one in towing]),
        area_km2=_whole_sum([one.wings_km2 for one in towing]),
        sorted_with=tuple([one.no for one in together[:-1]]),
    )


def _whole_sum(values: Sequence[float | None]) -> float | None:
    known = [value for value in values if value is not None]
    return sum(known) if known and len(known) == len(values) else None


def _per(kept_kg: Decimal | None, amount: float | None) -> float | None:
    """Return what was kept for one of an amount; None where either is not known."""
    return float(kept_kg) / amount if kept_kg is not None and amount else None


def _tow(tow: Tow, towing: Towing, effort: _Effort, iced: Iced, fish: Fish | None, as_of: datetime) -> TowFigures:
    place = middle_of(tow)
    catch = reckon_catch(tow)
    kept = _kept(tow, catch)
    age = tow_age(fish, as_of)
    basis = [(name, reasons.CARRIED) for name in sorted(tow.carried)]
    basis += [*iced.basis, *towing.basis, *(age.basis if age is not None else ())]
    return TowFigures(
        no=tow.no,
        side=tow.side,
        ground=tow.ground,
        net=tow.net,
        pens=tow.pens,
        shot=tow.shot,
        hauled=tow.hauled,
        on_ice=iced.at,
        duration_h=towing.hours,
        distance_nm=towing.distance_nm,
        distance_by=towing.distance_by,
        speed_kn=towing.speed_kn,
        swept_doors_km2=towing.doors_km2,
        swept_wings_km2=towing.wings_km2,
        depth_m=float(tow.depth.mean) if tow.depth is not None else None,
        warp_to_depth=warp_to_depth(tow),
        light=light_of(tow, place),
        rectangle=rectangle(place) if place is not None else None,
        catch=catch,
        kept_kg=kept,
        put_back_kg=_put_back(tow),
        live_kg=Decimal(0) if kept == 0 else add([one.live_kg for one in catch.values()]),
        kept_kg_per_h=_per(kept, effort.hours),
        kept_kg_per_km2=_per(kept, effort.area_km2),
        foul=is_foul(tow),
        ice_days=age.days if age is not None else None,
        equivalent_ice_days=age.equivalent_days if age is not None else None,
        catch_h=effort.hours,
        sorted_with=effort.sorted_with,
        basis=tuple(basis),
    )


def _kept(tow: Tow, catch: ByName[SpeciesCatch]) -> Decimal | None:
    """Return what was kept: 0 for a tow that caught nothing, None where the catch is not known."""
    if tow.kept is CatchKept.NOTHING:
        return Decimal(0)
    if tow.kept is not CatchKept.KNOWN:
        return None
    if not tow.catch and not tow.catch_gaps:
        return Decimal(0)
    return add([one.kept_kg for one in catch.values()])


def _put_back(tow: Tow) -> Decimal | None:
    if tow.put_back_kept is CatchKept.NOTHING:
        return Decimal(0)
    return add(map(kilograms, tow.put_back))
