"""What a trip gives to the pages of a fleet, and what the sums of many come to together.

The same comes out whatever is added to what first: so sums over a vessel's season are kept, and those over the fleet put together from them.
"""

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from decimal import Decimal

from msgspec.structs import replace

from logbook.model.figures import Neighbours, Reckoned, TripFigures, moments_of, offset_s
from logbook.model.fleet import Fleet, Vessel
from logbook.model.fleet_figures import Landed
from logbook.model.ledger import Brief, Kit, Share
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.places import TowMark
from logbook.model.tally import (
    ALL,
    CLEAN,
    NOUGHT,
    Days,
    GroundTally,
    Hauls,
    KeptHere,
    Mishaps,
    OwnTally,
    Rate,
    SpeciesTally,
    Sums,
    Tally,
)
from logbook.model.trip import Trip
from logbook.model.weather import WeatherFigures
from logbook.reckon.catch import add
from logbook.reckon.gear import fasts_of
from logbook.reckon.landed import landed_of, month_of
from logbook.reckon.listed import (
    Listed,
    best_first,
    best_of,
    damage_of,
    grouped,
    kept_by_month,
    kept_here,
    listed,
    month_of_tow,
    summed,
)
from logbook.reckon.out_turn import is_whole
from logbook.reckon.sums import added, added_by, added_trips, gathered, microseconds, sums_of_trip, weights
from logbook.reckon.weather import LIGHTS

BEST_ON_GROUND, BEST_OF_SPECIES, BEST_TRIPS = 12, 15, 3
BAND_M = 50


def share_of(trip: Reckoned, fleet: Fleet) -> Share:
    """Return what a trip gives to the pages of many."""
    landed = landed_of(trip, fleet)
    tows = tuple(listed([trip]))
    figures = trip.figures
    brief = Brief(
        trip=_in_lists(trip),
        sums=sums_of_trip(trip),
        landed=landed,
        offsets=dict(Counter(map(offset_s, moments_of(trip)))),
    )
    return Share(
        brief=brief,
        tally=_tally(trip, tows, brief),
        days=_days(tows),
        mishaps=Mishaps(fasts=tuple(fasts_of(trip.log, figures.trip.id)), damage=tuple(damage_of(tows))),
        hauls=_hauls(tows),
        kit=Kit(vessel=trip.log.vessel, gear=figures.gear, rigging=figures.rigging),
    )


def _hauls(tows: Iterable[Listed]) -> Hauls:
    """Return the tows that kept as much as any hauled after them, by when they were hauled, else shot."""
    placed = [(one.tow.hauled or one.tow.shot, one) for one in tows if one.tow.kept_kg]
    known = sorted(((when, -one.order, one) for when, one in placed if when is not None), key=lambda one: one[:2])
    best: list[TowMark] = []
    for when, _, one in reversed(known):
        mark = replace(one.mark(), when=when, kept_kg_per_h=one.tow.kept_kg_per_h)
        if not best or (mark.kept_kg or 0) >= (best[-1].kept_kg or 0):
            best.append(mark)
    return Hauls(tows=tuple(reversed(best)))


def _in_lists(trip: Reckoned) -> Reckoned:
    """Return a trip without its tows and all else that only its own page tells."""
    log, figures = trip.log, trip.figures
    return Reckoned(
        log=Trip(
            file=log.file,
            vessel=Vessel(name=log.vessel.name, registration=log.vessel.registration, listed=log.vessel.listed),
            number=log.number,
            skipper=log.skipper,
            begins=log.begins,
            sailed=log.sailed,
            bound_for=log.bound_for,
            wants=log.wants,
            sails_again=log.sails_again,
        ),
        figures=TripFigures(
            trip=figures.trip,
            tows=(),
            catch=ByName((name, replace(one, grades=ByName())) for name, one in figures.catch.items()),
            totals=figures.totals,
            ice=figures.ice,
            age=figures.age,
            landing=replace(figures.landing, choices=()),
            money=replace(figures.money, lines=()) if figures.money is not None else None,
            weather=WeatherFigures(icing_on_deck=figures.weather.icing_on_deck),
            problems=(),
        ),
        neighbours=replace(trip.neighbours, past=Neighbours().past),
        log_unread=trip.log_unread,
    )


def _tally(trip: Reckoned, tows: Sequence[Listed], brief: Brief) -> Tally:
    months: Counter[int] = Counter()
    for one in tows:
        if one.rated and one.when is not None:
            months[one.when.month] += microseconds(one.tow.catch_h or 0)
    grounds = grouped(tows, lambda one: fold_name(one.tow.ground) if one.tow.ground is not None else None)
    landed = brief.landed
    return Tally(
        every=brief.sums,
        docked=brief.sums if trip.figures.trip.docked is not None else Tally().docked,
        months=dict(months),
        grounds={folded: _ground(own, trip) for folded, own in grounds.items()},
        species={name: _species(name, trip, tows, landed) for name in trip.figures.catch},
        landed={month_of(landed.docked): dict(landed.species.items())} if landed is not None else {},
        offsets=brief.offsets,
        own=_own(trip, landed),
    )


def _own(trip: Reckoned, landed: Landed | None) -> OwnTally:
    figures = trip.figures
    a_day = figures.totals.kept_kg_per_day
    return OwnTally(
        kept={name: [(one.kept_kg, figures.trip.id)] for name, one in figures.catch.items() if one.kept_kg},
        bias={
            name: [hail.difference_percent]
            for name, hail in figures.hail.items()
            if hail.difference_percent is not None and is_whole(hail)
        },
        landed={str(landed.docked.year): sum(landed.species.values(), NOUGHT)} if landed is not None else {},
        best=((a_day, figures.trip.id),) if figures.trip.docked is not None and a_day is not None else (),
    )


def _ground(tows: Sequence[Listed], trip: Reckoned) -> GroundTally:
    sums = summed(tows)

    def by(name_of: Callable[[Listed], int | None]) -> dict[int, Sums]:
        parts = grouped(tows, name_of)
        return {name: sums if len(own) == len(tows) else summed(own) for name, own in parts.items()}

    return GroundTally(
        name=tows[0].tow.ground or "",
        since=(trip.log.begins, trip.figures.trip.id),
        sums=sums,
        months=by(month_of_tow),
        bands=by(lambda one: int(one.tow.depth_m // BAND_M) if one.tow.depth_m is not None else None),
        years=by(lambda one: one.when.year if one.when is not None else None),
        species=kept_here(tows),
        best=best_of(tows, None, BEST_ON_GROUND),
    )


def _species(name: str, trip: Reckoned, tows: Sequence[Listed], landed: Landed | None) -> SpeciesTally:
    total, hail = trip.figures.catch[name], trip.figures.hail.get(name)
    own = [(one.tow.catch[name], one) for one in tows if name in one.tow.catch]
    hours = [one.tow.duration_h for _, one in own if one.tow.duration_h is not None]
    rates: dict[str, Decimal] = {}
    for caught, one in own:
        if one.rated and caught.kept_kg is not None:
            for of in (ALL, *((CLEAN,) if one.clean else ()), *((one.tow.light,) if one.tow.light in LIGHTS else ())):
                rates[of] = rates.get(of, NOUGHT) + caught.kept_kg
    weight = landed.species.get(name) if landed is not None else None
    return SpeciesTally(
        code=total.code,
        sums=Sums(
            trips=1,
            tows=len(own),
            foul=sum(one.tow.foul for _, one in own),
            kept=add(caught.kept_kg for caught, _ in own),
            put_back=add(caught.put_back_kg for caught, _ in own),
            live=add(caught.live_kg for caught, _ in own),
            hours={ALL: sum(map(microseconds, hours))} if hours else {},
            rates={of: Rate(kept=kg) for of, kg in rates.items()},
        ),
        out_turn=hail.out_turn_kg if hail is not None else None,
        months=kept_by_month((caught.kept_kg, one) for caught, one in own if caught.kept_kg),
        grades={grade: kept for grade, kept in total.grades.items() if kept is not None},
        landed={month_of(landed.docked): weight} if landed is not None and weight else {},
        best=best_of((one for _, one in own), name, BEST_OF_SPECIES),
    )


def _days(tows: Iterable[Listed]) -> Days:
    grounds: dict[str, dict[int, Sums]] = {}
    placed = grouped(tows, _ground_and_day)
    for (ground, day), own in placed.items():
        grounds.setdefault(ground, {})[day] = summed(own)
    return Days(grounds=grounds)


def _ground_and_day(one: Listed) -> tuple[str, int] | None:
    if one.tow.ground is None or one.when is None:
        return None
    return fold_name(one.tow.ground), one.when.toordinal()


def together(tallies: Sequence[Tally], *, own: bool) -> Tally:
    """Return what tallies of different trips come to.

    Args:
        tallies: In any order.
        own: Whether all of them are one vessel's, so that what is told of one alone holds.
    """
    if not tallies:
        return Tally()
    return Tally(
        every=added_trips([one.every for one in tallies]),
        docked=added_trips([one.docked for one in tallies]),
        months=_counted(one.months for one in tallies),
        grounds={folded: _grounds(parts) for folded, parts in gathered(one.grounds for one in tallies).items()},
        species={name: _of_species(parts) for name, parts in gathered(one.species for one in tallies).items()},
        landed={month: weights(parts) for month, parts in gathered(one.landed for one in tallies).items()},
        offsets=_counted(one.offsets for one in tallies),
        own=_owns([one.own for one in tallies]) if own else OwnTally(),
    )


def _counted(parts: Iterable[Mapping[int, int]]) -> dict[int, int]:
    return {name: sum(own) for name, own in gathered(parts).items()}


def _owns(parts: Sequence[OwnTally]) -> OwnTally:
    return OwnTally(
        kept={name: [one for own in lists for one in own] for name, lists in gathered(p.kept for p in parts).items()},
        bias={name: [one for own in lists for one in own] for name, lists in gathered(p.bias for p in parts).items()},
        landed=weights(part.landed for part in parts),
        best=tuple(
            sorted((one for part in parts for one in part.best), key=lambda one: (-one[0], one[1]))[:BEST_TRIPS]
        ),
    )


def _grounds(parts: Sequence[GroundTally]) -> GroundTally:
    first = min(parts, key=lambda part: part.since)
    return GroundTally(
        name=first.name,
        since=first.since,
        sums=added([part.sums for part in parts]),
        months=added_by(part.months for part in parts),
        bands=added_by(part.bands for part in parts),
        years=added_by(part.years for part in parts),
        species={name: _kept(own) for name, own in gathered(part.species for part in parts).items()},
        best=best_first((mark for part in parts for mark in part.best), BEST_ON_GROUND),
    )


def _kept(parts: Sequence[KeptHere]) -> KeptHere:
    return KeptHere(
        kept=sum((part.kept for part in parts), NOUGHT),
        rated=sum((part.rated for part in parts), NOUGHT),
        clean=sum((part.clean for part in parts), NOUGHT),
        months=weights(part.months for part in parts),
    )


def _of_species(parts: Sequence[SpeciesTally]) -> SpeciesTally:
    return SpeciesTally(
        code=max((part.code for part in parts if part.code is not None), default=None),
        sums=added([part.sums for part in parts]),
        out_turn=add(part.out_turn for part in parts),
        months=weights(part.months for part in parts),
        grades=weights(part.grades for part in parts),
        landed=weights(part.landed for part in parts),
        best=best_first((mark for part in parts for mark in part.best), BEST_OF_SPECIES),
    )
