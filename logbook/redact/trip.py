"""One trip without what an edition does not show: every field that tells of it is empty, in what was typed and in the figures."""

from collections.abc import Iterable, Sequence
from datetime import datetime

from msgspec.structs import replace

from logbook.model.basis import Basis
from logbook.model.edition import EXACT, GROUND, Policy
from logbook.model.figures import LandingFigures, Reckoned, TowFigures, TripFigures
from logbook.model.gear import NetFigures
from logbook.model.named import ByName
from logbook.model.out_turn import HailedGrade, HailedSpecies
from logbook.model.past import Past
from logbook.model.trip import CatchKept, Fast, Fix, Landing, Tow, Trip
from logbook.redact.scrub import scrubbed


def redact_trip(trip: Reckoned, policy: Policy, *, held: bool) -> Reckoned:
    """Return a trip as an edition shows it.

    Args:
        trip: With all that was read and reckoned.
        policy: What the edition shows.
        held: Whether nothing is to tell yet where its tows were; see `is_held`.
    """
    shown = replace(
        trip,
        log=_log(trip.log, policy, held=held),
        figures=_figures(trip.figures, policy, held=held),
        neighbours=replace(trip.neighbours, past=Past()),
    )
    return shown if policy.problems else scrubbed(shown, positions=policy.positions == EXACT and not held)


def is_held(last_word: datetime, latest: datetime, policy: Policy) -> bool:
    """Tell whether a trip is held back yet, by its last word and the latest word of the archive."""
    return latest - last_word < policy.held_back


def _log(log: Trip, policy: Policy, *, held: bool) -> Trip:
    log = replace(log, tows=tuple(_tow(tow, policy, held=held) for tow in log.tows))
    if not policy.money:
        log = replace(log, settlement=None, landings=tuple(replace(one, prices=()) for one in log.landings))
    if not policy.problems:
        log = replace(log, file="", tows_lost=())
    if not policy.rest:
        log = replace(log, rest=(), all_hands=(), watches=())
    if not policy.skippers:
        log = replace(log, skipper=None)
    if not policy.crews:
        log = replace(log, crew=())
    if held or policy.positions != EXACT:
        log = replace(
            log,
            passage=_without_places(log.passage),
            turned=replace(log.turned, position=None) if log.turned is not None else None,
        )
    if held and log.turned is not None:
        log = replace(log, turned=replace(log.turned, ground=None))
    return log if policy.words else _without_words(log)


def _without_places(passage: Iterable[Fix]) -> tuple[Fix, ...]:
    """Return what was remarked while steaming; a fix without a remark tells nothing but where she was."""
    return tuple(replace(fix, position=None) for fix in passage if fix.remarks.strip())


def _without_words(log: Trip) -> Trip:
    """Return a log without anything that was said in free words."""
    return replace(
        log,
        number=log.number if _is_number(log.number) else None,
        wants=None,
        remarks="",
        readings=tuple(replace(one, remarks="") for one in log.readings),
        weather=tuple(replace(one, remarks="", swell=None, visibility=None) for one in log.weather),
        gear=(),
        passage=tuple(replace(one, remarks="") for one in log.passage if one.position is not None),
        time_lost=(),
        all_hands=tuple(replace(one, words="") for one in log.all_hands),
        landings=tuple(_landing_without_words(one) for one in log.landings),
    )


def _is_number(label: str | None) -> bool:
    """Tell whether a trip's label says no more than which trip it is."""
    return label is not None and label.isascii() and label.isdigit()


def _landing_without_words(landing: Landing) -> Landing:
    return replace(landing, quality=())


def _tow(tow: Tow, policy: Policy, *, held: bool) -> Tow:
    if held or policy.positions != EXACT:
        tow = replace(tow, start=None, end=None, via=())
    if held:
        tow = replace(tow, ground=None, bottom=None, depth=None, warp=None)
    if tow.fast is not None:
        tow = replace(tow, fast=_fast(tow.fast, policy))
    if not policy.words:
        tow = replace(tow, damage=None, gear_lost=None, remarks="", bottom=None)
    if not policy.put_back:
        tow = replace(tow, put_back=(), put_back_kept=CatchKept.UNKNOWN, undersize=())
    return tow


def _fast(fast: Fast, policy: Policy) -> Fast | None:
    """Return a fast as it is shown: a hazard is everybody's aboard the fleet, so a position that was typed is not held back."""
    if not policy.fasts:
        return None
    return fast if policy.words else replace(fast, what="")


def _figures(figures: TripFigures, policy: Policy, *, held: bool) -> TripFigures:
    head = figures.trip if policy.skippers else replace(figures.trip, skipper=None)
    head = head if policy.words or _is_number(head.number) else replace(head, number=None)
    figures = replace(
        figures,
        trip=head,
        tows=tuple(_tow_figures(tow, policy, held=held) for tow in figures.tows),
        landing=_landing(figures.landing, policy, held=held),
        grounds=ByName() if held else figures.grounds,
    )
    if not policy.money:
        figures = replace(figures, money=None)
    if not policy.problems:
        figures = replace(
            figures, problems=(), totals=replace(figures.totals, incomplete=_gaps(figures.totals.incomplete))
        )
    if not policy.margin:
        figures = replace(figures, hail=ByName((name, _without_margin(one)) for name, one in figures.hail.items()))
    if not policy.rest:
        figures = replace(figures, rest=ByName())
    if not policy.fasts:
        figures = replace(figures, gear=_without_fasts(figures.gear), rigging=_without_fasts(figures.rigging))
    if not policy.words:
        figures = replace(figures, gear=ByName(), rigging=ByName(), time_lost_h=ByName())
    return figures if policy.put_back else _without_put_back(figures)


def _gaps(incomplete: Iterable[str]) -> tuple[str, ...]:
    """Return what sums leave out without the lines of the log; that something is left out is everybody's to know."""
    return tuple(gap.partition(": ")[2] if gap.startswith("line") else gap for gap in incomplete)


def _without_fasts(gear: ByName[NetFigures]) -> ByName[NetFigures]:
    return ByName((name, replace(one, fasts=None)) for name, one in gear.items())


def _tow_figures(tow: TowFigures, policy: Policy, *, held: bool) -> TowFigures:
    if held or policy.positions == GROUND:
        tow = replace(tow, rectangle=None, basis=_without(tow.basis, ("rectangle",)))
    if held:
        tow = replace(
            tow,
            ground=None,
            depth_m=None,
            warp_to_depth=None,
            basis=_without(tow.basis, ("ground", "depth_m", "warp_to_depth")),
        )
    if not policy.put_back:
        catch = {name: replace(one, put_back_kg=None, undersize_kg=None) for name, one in tow.catch.items()}
        kept = ByName((name, one) for name, one in catch.items() if one.kept)
        tow = replace(tow, put_back_kg=None, catch=kept, basis=_without(tow.basis, ("put_back_kg",)))
    return tow


def _without_put_back(figures: TripFigures) -> TripFigures:
    totals = figures.totals
    gaps = tuple(gap for gap in totals.incomplete if "put back" not in gap)
    catch = {name: replace(one, put_back_kg=None, undersize_kg=None) for name, one in figures.catch.items()}
    grounds = {name: replace(one, put_back_kg=None) for name, one in figures.grounds.items()}
    return replace(
        figures,
        catch=ByName((name, one) for name, one in catch.items() if one.kept),
        totals=replace(totals, put_back_kg=None, incomplete=gaps),
        grounds=ByName(grounds.items()),
    )


def _without_margin(one: HailedSpecies) -> HailedSpecies:
    """Return hail and out-turn alone."""
    return HailedSpecies(
        hail_kg=one.hail_kg,
        out_turn_kg=one.out_turn_kg,
        difference_kg=None,
        difference_percent=None,
        within_tolerance=None,
        bias_percent=None,
        expected_out_turn_kg=None,
        expected_low_kg=None,
        expected_high_kg=None,
        bias_trips=0,
        grades=ByName(
            (
                grade,
                HailedGrade(
                    hail_kg=part.hail_kg, out_turn_kg=part.out_turn_kg, difference_kg=None, difference_percent=None
                ),
            )
            for grade, part in one.grades.items()
        ),
        basis=_without(one.basis, ("bias_percent",)),
    )


def _landing(landing: LandingFigures, policy: Policy, *, held: bool) -> LandingFigures:
    if not policy.turning:
        hidden = ("turn_for_home_by", "bound_by", "turn_for_home_by_poor_weather", "last_shot_by")
        landing = replace(
            landing,
            turn_for_home_by=None,
            bound_by=None,
            turn_for_home_by_poor_weather=None,
            last_shot_by=None,
            choices=(),
            sales=tuple(replace(sale, turn_for_home_by=None) for sale in landing.sales),
            basis=_without(landing.basis, hidden),
        )
    if held or policy.positions != EXACT:
        landing = replace(landing, passage_nm=None, basis=_without(landing.basis, ("passage_nm",)))
    return replace(landing, landings=tuple(_landing(one, policy, held=held) for one in landing.landings))


def _without(basis: Basis, names: Sequence[str]) -> Basis:
    return tuple((name, words) for name, words in basis if name not in names)
