"""The landing of a trip that has not docked: when it is expected, and when to turn for it."""

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.figures import LandingFigures
from logbook.model.named import ByName
from logbook.reckon.age import assumed_of
from logbook.reckon.gaps import numbers
from logbook.reckon.homeward import FOREVER, POOR_WEATHER, Passage, after, passage_ahead
from logbook.reckon.ice import IceState
from logbook.reckon.landing import destination, port_basis, steam_out
from logbook.reckon.standing import Standing
from logbook.reckon.turning import (
    ICE,
    ICE_DAYS,
    Ahead,
    ahead_basis,
    choices,
    first_bound,
    last_shot_by,
    look_ahead,
    sales_ahead,
)


def expected_landing(now: Standing, ice: IceState) -> LandingFigures:
    """Return the landing that lies ahead, at the latest in fair weather with nothing in hand.

    The time to turn and the choices are those of a vessel that has not turned yet. Where the vessel has a later log the landing
    was not logged, and nothing is expected.

    Args:
        now: The trip at the moment.
        ice: Its ice.
    """
    trip, fleet = now.trip, now.fleet
    port = fleet.port(destination(trip, fleet))
    passage = passage_ahead(trip, fleet, now.as_of)
    ahead = look_ahead(now, ice, passage, port)
    homeward = now.state == "homeward"
    turning = now.state == "at sea"
    turn_by, bound_by = first_bound(ahead, passage.hours) if turning else (None, None)
    poor_by, _ = first_bound(ahead, passage.poor_hours) if turning else (None, None)
    rate = ahead.landing_rate
    sailed_home = after(passage.leaves, passage.hours)
    docked = max(sailed_home, now.as_of) if sailed_home is not None and now.at_sea else None
    sales = sales_ahead(ahead, port, fleet.zone, homeward=homeward) if now.at_sea else ()
    return LandingFigures(
        port=destination(trip, fleet),
        expected=True,
        docked=docked,
        passage_nm=passage.nautical_miles if now.at_sea else None,
        passage_h=passage.hours if now.at_sea else None,
        landing_started=None,
        landing_finished=None,
        discharge_h=ahead.aboard_kg / rate if rate and ahead.aboard_kg is not None and now.at_sea else None,
        discharge_kg_per_h=rate,
        steam_out_h=steam_out(trip),
        steam_home_h=None,
        turnaround_h=None,
        temperatures=ByName(),
        sales=sales,
        turn_for_home_by=turn_by,
        bound_by=bound_by,
        turn_for_home_by_poor_weather=poor_by,
        last_shot_by=last_shot_by(turn_by, [tow.duration_h for tow in now.tows]),
        choices=choices(ahead, port, fleet.zone) if turning else (),
        basis=(
            *port_basis(trip, fleet),
            *_passage_basis(now, passage),
            *((("docked", reasons.NOT_BEFORE_NOW),) if docked != sailed_home and docked else ()),
            *((("discharge_kg_per_h", reasons.PORT_RATE),) if rate is not None else ()),
            *(_turning_basis(now, ice, ahead, bound_by) if turning else ()),
            *((("sales", reasons.NO_DISCHARGE),) if sales and reasons.NO_DISCHARGE in ahead_basis(ahead) else ()),
        ),
    )


def _passage_basis(now: Standing, passage: Passage) -> Basis:
    """Return why the passage can't be told, or what way and what speed in poor weather were assumed."""
    if not now.at_sea:
        return ()
    straight = (("passage_nm", reasons.STRAIGHT),) if passage.straight else ()
    if passage.not_known:
        return (*straight, ("docked", reasons.NOT_KNOWN.format(why=passage.not_known)))
    if now.state == "homeward" or now.trip.vessel.poor_weather_speed:
        return straight
    return (*straight, ("turn_for_home_by_poor_weather", reasons.POOR_WEATHER_SPEED.format(part=f"{POOR_WEATHER:g}")))


def _turning_basis(now: Standing, ice: IceState, ahead: Ahead, bound_by: str | None) -> Basis:
    """Return what the time to turn leaves out, and what was assumed of that which binds it; of the choices where there is none."""
    without = [reasons.WITHOUT_CATCH.format(which=numbers(now.not_known))] if now.not_known else []
    assumed: list[str] = []
    if bound_by == ICE_DAYS:
        assumed = assumed_of(now.lots, now.as_of + FOREVER, now.fleet)
    if bound_by == ICE:
        assumed = [words for name, words in ice.ice.basis if name == "lasts_until"]
    words = dict.fromkeys((*without, *ahead_basis(ahead), *assumed))
    name = "choices" if ahead.passage.hours is None else "turn_for_home_by"
    return ((name, "; ".join(words)),) if words else ()
