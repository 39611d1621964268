"""Each tow: how long, how far, over what, with what catch, and how old its fish is."""

from collections.abc import Sequence
from datetime import datetime
from decimal import Decimal

from msgspec import Struct

from logbook.model import reasons
from logbook.model.figures import TowFigures
from logbook.model.trip import CatchKept, Tow, Trip
from logbook.reckon.age import Fish, tow_age
from logbook.reckon.catch import add, kilograms, live, reckon_catch
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
    towing = tuple(reckon_towing(tow, trip) for tow in trip.tows)
    return tuple(
        _tow(
            tow,
            towing[n],
            _caught(tow, [trip.tows[m] for m in group], [towing[m] for m in group]),
            iced[n],
            fish[n],
            as_of,
        )
        for n, (tow, group) in enumerate(zip(trip.tows, sorted_together(trip.tows), strict=True))
    )


class _Caught(Struct, frozen=True, kw_only=True):
    """What a tow kept, with the time and the bottom it took; of tows sorted together, on the last of them.

    Attributes:
        kept_kg: What was kept.
        hours: Time towing, of all that were sorted together; None where one is not known.
        area_km2: Swept between the wings, the same.
        sorted_with: Numbers of the tows sorted with it.
    """

    kept_kg: Decimal | None
    hours: float | None
    area_km2: float | None
    sorted_with: tuple[int, ...]

    def per(self, amount: float | None) -> float | None:
        """Return what was kept for one of an amount; None where either is not known."""
        return float(self.kept_kg) / amount if self.kept_kg is not None and amount else None


def _caught(tow: Tow, together: Sequence[Tow], towing: Sequence[Towing]) -> _Caught:
    return _Caught(
        kept_kg=_kept(tow),
        hours=_whole_sum([one.hours for one in towing]),
        area_km2=_whole_sum([one.wings_km2 for one in towing]),
        sorted_with=tuple(one.no for one in together[:-1]),
    )


def _whole_sum(values: Sequence[float | None]) -> float | None:
    known = [value for value in values if value is not None]
    return sum(known) if known and len(known) == len(values) else None


def _tow(tow: Tow, towing: Towing, caught: _Caught, iced: Iced, fish: Fish | None, as_of: datetime) -> TowFigures:
    place = middle_of(tow)
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
        catch=reckon_catch(tow),
        kept_kg=caught.kept_kg,
        put_back_kg=_put_back(tow),
        live_kg=_live(tow, caught.kept_kg),
        kept_kg_per_h=caught.per(caught.hours),
        kept_kg_per_km2=caught.per(caught.area_km2),
        foul=is_foul(tow),
        ice_days=age.days if age is not None else None,
        equivalent_ice_days=age.equivalent_days if age is not None else None,
        catch_h=caught.hours,
        sorted_with=caught.sorted_with,
        basis=tuple(basis),
    )


def _kept(tow: Tow) -> Decimal | None:
    """Return what was kept: 0 for a tow that caught nothing, None where the catch is not known."""
    if tow.kept is CatchKept.NOTHING:
        return Decimal(0)
    if tow.kept is not CatchKept.KNOWN:
        return None
    if not tow.catch and not tow.catch_gaps:
        return Decimal(0)
    return add(map(kilograms, tow.catch))


def _live(tow: Tow, kept_kg: Decimal | None) -> Decimal | None:
    return Decimal(0) if kept_kg == 0 else add(map(live, tow.catch))


def _put_back(tow: Tow) -> Decimal | None:
    if tow.put_back_kept is CatchKept.NOTHING:
        return Decimal(0)
    return add(map(kilograms, tow.put_back))
