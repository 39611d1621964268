"""The landing of a trip that has not docked: when it is expected, and when to turn for it."""

from logbook.model.figures import Basis, LandingFigures
from logbook.model.named import ByName
from logbook.reckon.homeward import POOR_WEATHER, Passage, after, passage_ahead
from logbook.reckon.ice import IceState
from logbook.reckon.landing import destination, port_basis, steam_out
from logbook.reckon.standing import Standing
from logbook.reckon.turning import ahead_basis, choices, first_bound, last_shot_by, look_ahead, sales_ahead


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
    return LandingFigures(
        port=destination(trip, fleet),
        expected=True,
        docked=after(passage.leaves, passage.hours) if now.at_sea else None,
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
        sales=sales_ahead(ahead, port, fleet.zone, homeward=homeward) if now.at_sea else (),
        turn_for_home_by=turn_by,
        bound_by=bound_by,
        turn_for_home_by_poor_weather=poor_by,
        last_shot_by=last_shot_by(turn_by, [tow.duration_h for tow in now.tows]),
        choices=choices(ahead, port, fleet.zone) if turning else (),
        basis=(
            *port_basis(trip, fleet),
            *_passage_basis(now, passage),
            *((("discharge_kg_per_h", "assumed: the port's usual rate"),) if rate is not None else ()),
            *(ahead_basis(ahead) if turn_by is not None else ()),
        ),
    )


def _passage_basis(now: Standing, passage: Passage) -> Basis:
    """Return why the passage can't be told, or what speed was assumed for poor weather."""
    if not now.at_sea:
        return ()
    if passage.not_known:
        return (("docked", f"not known: {passage.not_known}"),)
    if now.state == "homeward" or now.trip.vessel.poor_weather_speed:
        return ()
    return (("turn_for_home_by_poor_weather", f"assumed: {POOR_WEATHER:g} of the steaming speed"),)
