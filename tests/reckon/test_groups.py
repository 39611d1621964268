"""Sums over groups of tows and trips."""

from collections.abc import Sequence
from decimal import Decimal

import pytest
from msgspec.structs import replace

from logbook.model.figures import TowFigures
from logbook.model.fleet_figures import GroupFigures
from logbook.model.named import ByName
from logbook.reckon.catch import add
from logbook.reckon.groups import by_ground
from logbook.reckon.sums import added_trips, figures_of_trips, sums_of_trip
from tests.ledger import ledger_of
from tests.reckon.build import HEAD, reckoned
from tests.render import example

KG = Decimal


def grounds_of(tows: Sequence[TowFigures]) -> tuple[GroupFigures, ...]:
    return tuple(by_ground(tows).values())


def test_grounds_add_up_to_the_trip() -> None:
    trip = example.trip(tows=40)
    grounds = grounds_of(trip.figures.tows)

    assert sum(ground.tows for ground in grounds) == 40
    assert add(ground.kept_kg for ground in grounds) == trip.figures.totals.kept_kg
    assert [ground.tows for ground in grounds] == sorted((ground.tows for ground in grounds), reverse=True)


def test_a_ground_rate_is_total_over_total_for_tows_whose_catch_is_known() -> None:
    tows = example.trip(tows=3).figures.tows
    made = (
        replace(tows[0], ground="G", kept_kg=KG(100), duration_h=1.0, catch_h=1.0),
        replace(tows[1], ground="G", kept_kg=KG(500), duration_h=2.0, catch_h=2.0),
        replace(tows[2], ground="G", kept_kg=None, duration_h=3.0),
    )

    assert grounds_of(made)[0].kept_kg_per_h == pytest.approx(200.0)
    assert grounds_of(made)[0].towed_h == pytest.approx(6.0)


def test_tows_without_a_ground_are_left_out() -> None:
    tows = example.trip(tows=2).figures.tows

    assert grounds_of([replace(tow, ground=None) for tow in tows]) == ()


def test_the_usual_catch_is_the_middle_trip() -> None:
    trips = []
    for kept in (KG(10), KG(50), KG(30)):
        made = example.trip(tows=1)
        catch = ByName([("cod", replace(made.figures.catch["cod"], kept_kg=kept))])
        trips.append(replace(made, figures=replace(made.figures, catch=catch)))
    trips = [
        replace(one, figures=replace(one.figures, trip=replace(one.figures.trip, id=str(n))))
        for n, one in enumerate(trips)
    ]
    usual = ledger_of(trips).vessel("Solan Bright").usual[0]

    assert (usual.name, usual.trips, usual.median_kg, usual.most_kg, usual.kept_kg) == (
        "cod",
        3,
        KG(30),
        KG(50),
        KG(90),
    )


def test_a_foul_tow_and_what_was_sorted_with_it_are_not_in_the_clean_rate() -> None:
    (trip,) = reckoned(
        HEAD + "tows:\n"
        "  - {shot: 18:00, hauled: 19:00, ground: G, catch: {cod: 100 kg}}\n"
        "  - {shot: 20:00, hauled: 21:00, ground: G, catch: with next, fast: rock}\n"
        "  - {shot: 22:00, hauled: 23:00, ground: G, catch: {cod: 20 kg}}\n"
    )
    (ground,) = grounds_of(trip.figures.tows)

    assert ground.kept_kg_per_h == pytest.approx(120 / 3)
    assert ground.kept_kg_per_h_clean == pytest.approx(100)
    assert ground.foul_tows == 1


def test_a_tow_hauled_early_or_with_gear_lost_counts_as_a_tow_with_no_catch() -> None:
    (trip,) = reckoned(
        HEAD + "tows:\n"
        "  - {shot: 18:00, hauled: 19:00, ground: G, catch: {cod: 100 kg}}\n"
        "  - {shot: 20:00, hauled: 20:30, ground: G, catch: none, gear lost: cod end}\n"
    )
    (ground,) = grounds_of(trip.figures.tows)

    assert (ground.tows, ground.foul_tows, ground.kept_kg) == (2, 1, KG(100))
    assert ground.kept_kg_per_h == pytest.approx(100 / 1.5)


def test_whole_trips_have_their_out_turn_and_the_mean_age_by_weight() -> None:
    trips = reckoned(
        HEAD + "tows:\n  - {shot: 18:00, hauled: 20:00, catch: {cod: 100 kg}}\n"
        "landed: {docked: 2026-03-05 20:00, port: Port Kerrin, out-turn: {cod: 90 kg}}\n",
        HEAD.replace("03-04", "03-14") + "tows:\n  - {shot: 18:00, hauled: 20:00, catch: {cod: 300 kg}}\n"
        "landed: {docked: 2026-03-16 20:00, port: Port Kerrin, out-turn: {cod: 310 kg}}\n",
    )
    group = figures_of_trips("both", added_trips([sums_of_trip(trip) for trip in trips]))

    assert group.out_turn_kg == 400
    assert group.mean_ice_days == pytest.approx((100 * 1 + 300 * 2) / 400)
    assert group.gross is None


def test_rates_by_light_are_of_their_own_hours() -> None:
    (trip,) = reckoned(
        HEAD + "tows:\n"
        "  - {shot: 12:00, hauled: 13:00, from: 58 50N 015 00W, ground: G, catch: {cod: 50 kg}}\n"
        "  - {shot: 23:00, hauled: 01:00, from: 58 50N 015 00W, ground: G, catch: {cod: 300 kg}}\n"
    )
    (ground,) = grounds_of(trip.figures.tows)

    assert dict(ground.hours_by_light) == {"day": 1.0, "night": 2.0}
    assert dict(ground.kept_kg_per_h_by_light) == {"day": pytest.approx(50), "night": pytest.approx(150)}
