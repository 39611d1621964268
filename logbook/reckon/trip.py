"""One trip, all its figures; and what the vessel's other trips say of it."""

from collections.abc import Iterable
from datetime import datetime

from msgspec.structs import replace

from logbook.model import reasons
from logbook.model.figures import Neighbours, Reckoned, TripFigures, TripHead
from logbook.model.fleet import Fleet
from logbook.model.language import N_
from logbook.model.names import fold_name
from logbook.model.problem import Problem
from logbook.model.trip import Tow, Trip
from logbook.reckon.age import fish_of, lots_of, reckon_age
from logbook.reckon.as_of import as_of as as_of_time
from logbook.reckon.as_of import docked, last_landing, last_word, until
from logbook.reckon.catch import species_codes, total_catch
from logbook.reckon.course import reckon_course
from logbook.reckon.expected import expected_landing
from logbook.reckon.gear import reckon_gear, time_lost
from logbook.reckon.groups import by_ground
from logbook.reckon.ice import reckon_ice
from logbook.reckon.landing import reckon_landing
from logbook.reckon.money import reckon_money
from logbook.reckon.neighbours import ALONE, trip_id, with_past
from logbook.reckon.on_ice import on_ice
from logbook.reckon.out_turn import reckon_out_turn
from logbook.reckon.pens import reckon_pens
from logbook.reckon.rest import reckon_rest
from logbook.reckon.standing import Standing
from logbook.reckon.totals import reckon_totals
from logbook.reckon.tows import reckon_tows
from logbook.reckon.weather import reckon_weather


def reckon_trip(
    trip: Trip,
    fleet: Fleet,
    neighbours: Neighbours = ALONE,
    at: datetime | None = None,
    problems: tuple[Problem, ...] = (),
) -> TripFigures:
    """Return all figures of a trip.

    Args:
        trip: The trip.
        fleet: Its fleet.
        neighbours: What the vessel's other trips say of it.
        at: As of when, for a trip that has not docked; else as of the last thing in the log.
        problems: What is wrong in its log.
    """
    return _figures(trip, stand(trip, fleet, neighbours, at), neighbours, problems)


def stand(trip: Trip, fleet: Fleet, neighbours: Neighbours = ALONE, at: datetime | None = None) -> Standing:
    """Return a trip as it stands at the docking where there is one, else at a time, else at the last thing in its log."""
    time = as_of_time(trip, at)
    stood = until(trip, time)
    return _standing(trip, stood, fleet, _state(stood, neighbours, at), time)


def _figures(log: Trip, now: Standing, neighbours: Neighbours, problems: tuple[Problem, ...]) -> TripFigures:
    """Return the figures of a trip; `log` is the whole of it, for the rest that was had while it was landed."""
    stood, tows, totals, fleet = now.trip, now.tows, now.totals, now.fleet
    ice = reckon_ice(now)
    last = last_landing(stood)
    catch = total_catch((tow.catch for tow in tows), totals.kept_kg, species_codes(stood.tows))
    gear = reckon_gear(stood, neighbours.past)
    return TripFigures(
        trip=_head(now, neighbours),
        tows=tows,
        catch=catch,
        totals=totals,
        grounds=by_ground(tows),
        ice=ice.ice,
        age=reckon_age(now.lots, now.as_of, fleet),
        pens=reckon_pens(now),
        landing=expected_landing(now, ice) if last is None else reckon_landing(stood, last, fleet, neighbours),
        hail=reckon_out_turn(stood, catch, fleet.limits, neighbours.past),
        gear=gear.nets,
        rigging=gear.rigging,
        time_lost_h=time_lost(stood.time_lost),
        rest=reckon_rest(log if docked(log) is not None else stood, now.as_of, neighbours.past.recent),
        weather=reckon_weather(stood, tows),
        money=reckon_money(stood, totals.days_at_sea),
        problems=problems,
    )


def _standing(trip: Trip, stood: Trip, fleet: Fleet, state: str, time: datetime) -> Standing:
    """Return a trip at a moment; `stood` is the trip as it stood then."""
    iced = on_ice(stood, fleet, time)
    fish = fish_of(stood, fleet, iced)
    tows = reckon_tows(stood, iced, fish, time)
    return Standing(
        trip=stood,
        fleet=fleet,
        as_of=time,
        state=state,
        tows=tows,
        totals=reckon_totals(stood, _too_late(trip, stood), tows, time),
        lots=lots_of(stood.tows, [tow.kept_kg for tow in tows], fish),
    )


def _too_late(trip: Trip, stood: Trip) -> tuple[Tow, ...]:
    """Return the tows that a landed trip's log has after its docking; what is left out by `--at` is none."""
    if docked(trip) is None:
        return ()
    whole = {(tow.place, tow.hauled) for tow in stood.tows}
    return tuple(tow for tow in trip.tows if (tow.place, tow.hauled) not in whole)


def _head(now: Standing, neighbours: Neighbours) -> TripHead:
    trip, fleet = now.trip, now.fleet
    last = last_landing(trip)
    return TripHead(
        id=trip_id(trip.vessel.name, trip.begins, neighbours.number_that_day),
        vessel=trip.vessel.name,
        number=trip.number,
        skipper=trip.skipper,
        state=now.state,
        sailed=trip.sailed,
        sailed_from=trip.sailed_from or fleet.home_port,
        turned_for_home=trip.turned.at if trip.turned else None,
        docked=docked(trip),
        port=last.port if last is not None else None,
        as_of=now.as_of,
        last_word=last_word(trip, now.as_of),
        basis=(("sailed_from", reasons.HOME_PORT),) if trip.sailed_from is None and fleet.home_port else (),
    )


def _state(trip: Trip, neighbours: Neighbours, at: datetime | None) -> str:
    if docked(trip) is not None:
        return N_("landed")
    sailed_again = neighbours.next_sailed
    if sailed_again is not None and (at is None or at >= sailed_again):
        return N_("landing not logged")
    if trip.landings:
        return "landed"
    return N_("homeward") if trip.turned is not None else N_("at sea")


def reckon_trips(
    trips: Iterable[Trip], fleet: Fleet, problems: Iterable[Problem] = (), last_good: Iterable[Reckoned] = ()
) -> tuple[Reckoned, ...]:
    """Return all trips of a fleet with their figures, by vessel, then by when they began.

    Args:
        trips: In any order.
        fleet: Their fleet.
        problems: Of all logs; each trip gets those of its own file.
        last_good: Trips whose logs can't be read at present, with the figures they had when they could be; the other trips see them
            as if their logs still read.
    """
    by_file: dict[str, list[Problem]] = {}
    for problem in problems:
        by_file.setdefault(problem.place.file, []).append(problem)
    known, kept = tuple(trips), tuple(last_good)
    neighbours = with_past((*known, *(one.log for one in kept)))

    def found(file: str) -> tuple[Neighbours, tuple[Problem, ...]]:
        return neighbours[file], tuple(sorted(by_file.get(file, ())))

    made = [reckon_among(trip, fleet, *found(trip.file)) for trip in known]
    made += [as_it_was(one, *found(one.log.file)) for one in kept]
    return tuple(sorted(made, key=lambda one: (fold_name(one.log.vessel.name), one.log.begins, one.log.file)))


def reckon_among(trip: Trip, fleet: Fleet, neighbours: Neighbours, problems: tuple[Problem, ...]) -> Reckoned:
    """Return a trip with its figures.

    Args:
        trip: The trip.
        fleet: Its fleet.
        neighbours: What the vessel's other trips say of it.
        problems: What is wrong in its log, in order.
    """
    now = stand(trip, fleet, neighbours)
    return Reckoned(
        log=trip, figures=_figures(trip, now, neighbours, problems), neighbours=neighbours, course=reckon_course(now)
    )


def as_it_was(trip: Reckoned, neighbours: Neighbours, problems: tuple[Problem, ...]) -> Reckoned:
    """Return a trip with the figures it had; only its place among the vessel's trips is found anew."""
    head = trip.figures.trip
    gone_again = neighbours.next_sailed is not None and head.state in ("at sea", "homeward")
    head = replace(
        head,
        id=trip_id(head.vessel, trip.log.begins, neighbours.number_that_day),
        state="landing not logged" if gone_again else head.state,
    )
    return replace(trip, figures=replace(trip.figures, trip=head, problems=problems), neighbours=neighbours)
