"""Each tow: how long, how far, over what, with what catch, and how old its fish is."""

from collections.abc import Iterable
from datetime import datetime, timedelta
from decimal import Decimal
from statistics import median

from logbook.model.figures import TowFigures
from logbook.model.fleet import Fleet
from logbook.model.quantity import HOUR, METRES_PER_NAUTICAL_MILE, Metres, Position
from logbook.model.trip import CatchKept, Tow, Trip
from logbook.reckon.age import pen_curves, pens_of_tows, tow_age
from logbook.reckon.catch import add, is_known, kilograms, live, reckon_catch
from logbook.reckon.geodesy import middle, track_length
from logbook.reckon.light import light
from logbook.reckon.rectangle import rectangle

_CARRIED = {"side": "side", "ground": "ground", "net": "net", "pens": "pens"}


def duration(tow: Tow) -> timedelta | None:
    """Return how long a tow was towing: from shot to hauled."""
    return tow.hauled - tow.shot if tow.shot is not None and tow.hauled is not None else None


def is_foul(tow: Tow) -> bool:
    """Tell whether gear came fast, was damaged or lost."""
    return tow.fast is not None or tow.damage is not None or tow.gear_lost is not None


def usual_stowing(tows: Iterable[Tow]) -> timedelta | None:
    """Return the trip's median time from hauled to stowed; None where no tow tells it."""
    times = [tow.stowed - tow.hauled for tow in tows if tow.stowed is not None and tow.hauled is not None]
    return timedelta(seconds=median(time.total_seconds() for time in times)) if times else None


def reckon_tows(trip: Trip, fleet: Fleet, as_of: datetime) -> tuple[TowFigures, ...]:
    """Return the figures of every tow, in order.

    Args:
        trip: The trip as it stood at `as_of`.
        fleet: Its fleet.
        as_of: The moment the fish's age is reckoned for.
    """
    usual = usual_stowing(trip.tows)
    curves = pen_curves(trip)
    pens = pens_of_tows(trip)
    figures: list[TowFigures] = []
    waiting: timedelta | None = timedelta(0)
    waiting_km2: float | None = 0.0
    for tow in trip.tows:
        basis: dict[str, str] = {_CARRIED[name]: "carried" for name in sorted(tow.carried)}
        on_ice = _on_ice(tow, usual, fleet, basis)
        towed = duration(tow)
        distance, distance_by = _distance(tow, trip, towed, basis)
        net = trip.vessel.net(tow.net)
        doors = _swept(distance, net.door_spread if net else None)
        wings = _swept(distance, net.wing_spread if net else None)
        _assume_area(basis, doors, wings, distance_by)
        kept = _kept(tow)
        hours = towed + waiting if towed is not None and waiting is not None else None
        area = wings + waiting_km2 if wings is not None and waiting_km2 is not None else None
        place = _middle(tow)
        age = tow_age(tow, on_ice, trip, fleet, curves, as_of, pens[tow.no]) if on_ice is not None else None
        basis |= dict(age.basis) if age is not None else {}
        figures.append(
            TowFigures(
                no=tow.no,
                side=tow.side,
                ground=tow.ground,
                net=tow.net,
                pens=tow.pens,
                shot=tow.shot,
                hauled=tow.hauled,
                on_ice=on_ice,
                duration_h=towed / HOUR if towed is not None else None,
                distance_nm=distance,
                distance_by=distance_by,
                speed_kn=_speed(tow, towed, distance, distance_by),
                swept_doors_km2=doors,
                swept_wings_km2=wings,
                depth_m=float(tow.depth.mean) if tow.depth is not None else None,
                warp_to_depth=_ratio(tow),
                light=_light(place, tow, towed),
                rectangle=rectangle(place) if place is not None else None,
                catch=reckon_catch(tow),
                kept_kg=kept,
                put_back_kg=_put_back(tow),
                live_kg=_live(tow),
                kept_kg_per_h=float(kept) / (hours / HOUR) if kept is not None and hours else None,
                kept_kg_per_km2=float(kept) / area if kept is not None and area else None,
                foul=is_foul(tow),
                ice_days=age.days if age is not None else None,
                equivalent_ice_days=age.equivalent_days if age is not None else None,
                basis=tuple(basis.items()),
            )
        )
        if tow.kept is CatchKept.NEXT:
            waiting, waiting_km2 = hours, area
        else:
            waiting, waiting_km2 = timedelta(0), 0.0
    return tuple(figures)


def _on_ice(tow: Tow, usual: timedelta | None, fleet: Fleet, basis: dict[str, str]) -> datetime | None:
    if tow.stowed is not None or tow.hauled is None:
        return tow.stowed
    took = fleet.assumed.to_stow if usual is None else usual
    words = "the usual time for this fleet" if usual is None else "the trip's median time"
    basis["on_ice"] = f"assumed: {took / HOUR:.2g} h after hauling, {words}"
    return tow.hauled + took


def _distance(tow: Tow, trip: Trip, towed: timedelta | None, basis: dict[str, str]) -> tuple[float | None, str | None]:
    """Return how far the gear was towed in nautical miles, and what that was reckoned by."""
    if tow.start is not None and tow.end is not None:
        return track_length((tow.start, *tow.via, tow.end)), "positions"
    if towed is None:
        return None, None
    if tow.speed is not None:
        return tow.speed * (towed / HOUR), "logged speed"
    if trip.vessel.towing_speed is not None:
        basis["distance_nm"] = "assumed: usual speed"
        return trip.vessel.towing_speed * (towed / HOUR), "usual speed"
    return None, None


def _speed(tow: Tow, towed: timedelta | None, distance: float | None, distance_by: str | None) -> float | None:
    if distance_by == "positions" and distance is not None and towed:
        return distance / (towed / HOUR)
    return tow.speed


def _swept(distance: float | None, spread: Metres | None) -> float | None:
    """Return a swept area in km²: distance × spread, as on ICES bottom trawl surveys."""
    if distance is None or spread is None:
        return None
    return distance * METRES_PER_NAUTICAL_MILE * spread / 1e6


def _assume_area(basis: dict[str, str], doors: float | None, wings: float | None, distance_by: str | None) -> None:
    if distance_by == "usual speed":
        basis |= {
            n: "assumed: usual speed"
            for n, v in (("swept_doors_km2", doors), ("swept_wings_km2", wings))
            if v is not None
        }


def _ratio(tow: Tow) -> float | None:
    if tow.warp is None or tow.depth is None or not tow.depth.mean:
        return None
    return tow.warp.mean / tow.depth.mean


def _middle(tow: Tow) -> Position | None:
    if tow.start is not None and tow.end is not None:
        return middle(tow.start, tow.end)
    return tow.start


def _light(place: Position | None, tow: Tow, towed: timedelta | None) -> str | None:
    if place is None or tow.shot is None:
        return None
    return light(place, tow.shot + (towed or timedelta(0)) / 2)


def _kept(tow: Tow) -> Decimal | None:
    """Return what was kept: 0 for a tow that caught nothing, None where the catch is not known."""
    if tow.kept is CatchKept.NOTHING:
        return Decimal(0)
    if tow.kept is not CatchKept.KNOWN:
        return None
    if not tow.catch and not tow.catch_gaps:
        return Decimal(0)
    return add(map(kilograms, tow.catch))


def _live(tow: Tow) -> Decimal | None:
    if is_known(tow) and _kept(tow) == 0:
        return Decimal(0)
    return add(map(live, tow.catch))


def _put_back(tow: Tow) -> Decimal | None:
    if tow.put_back_kept is CatchKept.NOTHING:
        return Decimal(0)
    return add(map(kilograms, tow.put_back))
