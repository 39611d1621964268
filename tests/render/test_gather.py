from decimal import Decimal

import pytest
from msgspec.structs import replace

from logbook.model.figures import Landed
from logbook.model.named import ByName
from logbook.render.gather import added, by_ground, by_weight, logged_tows, trip_line, usual_catch
from tests.render import example

KG = Decimal


def test_a_sum_leaves_out_what_is_not_known_and_is_unknown_where_nothing_is() -> None:
    assert added([KG(2), None, KG(3)]) == 5
    assert added([None]) is None
    assert added([]) is None


def test_grounds_add_up_to_the_trip() -> None:
    trip = example.trip(tows=40)
    grounds = by_ground(trip.figures.tows)

    assert sum(ground.tows for ground in grounds) == 40
    assert added(ground.kept_kg for ground in grounds) == trip.figures.totals.kept_kg
    assert [ground.tows for ground in grounds] == sorted((ground.tows for ground in grounds), reverse=True)


def test_a_ground_rate_is_total_over_total_for_tows_whose_catch_is_known() -> None:
    tows = example.trip(tows=3).figures.tows
    made = (
        replace(tows[0], ground="G", kept_kg=KG(100), duration_h=1.0),
        replace(tows[1], ground="G", kept_kg=KG(500), duration_h=2.0),
        replace(tows[2], ground="G", kept_kg=None, duration_h=3.0),
    )

    assert by_ground(made)[0].kept_kg_per_h == pytest.approx(200.0)
    assert by_ground(made)[0].towed_h == pytest.approx(6.0)


def test_tows_without_a_ground_are_left_out() -> None:
    tows = example.trip(tows=2).figures.tows

    assert by_ground([replace(tow, ground=None) for tow in tows]) == ()


def test_the_usual_catch_is_the_middle_trip() -> None:
    trips = []
    for kept in (KG(10), KG(50), KG(30)):
        made = example.trip(tows=1)
        catch = ByName([("cod", replace(made.figures.catch["cod"], kept_kg=kept))])
        trips.append(replace(made, figures=replace(made.figures, catch=catch)))
    usual = usual_catch(trips)[0]

    assert (usual.name, usual.trips, usual.median_kg, usual.most_kg, usual.kept_kg) == (
        "cod",
        3,
        KG(30),
        KG(50),
        KG(90),
    )


def test_species_stand_by_weight_those_not_weighed_last() -> None:
    assert by_weight(example.trip(tows=9).figures.catch) == ("haddock", "cod", "saithe", "ling", "skate")


def test_tows_and_figures_are_matched_by_number_where_some_are_left_out() -> None:
    trip = example.trip(tows=4)
    short = replace(trip, figures=replace(trip.figures, tows=trip.figures.tows[1:3]))

    assert [(tow.no, figures.no) for tow, figures in logged_tows(short)] == [(2, 2), (3, 3)]


def test_a_trip_in_a_table_knows_whether_it_was_weighed() -> None:
    trip = example.trip(tows=2)
    docked = trip.figures.trip.docked
    assert docked
    landed = Landed(
        trip_id="x", vessel="y", docked=docked, species=ByName([("cod", KG(5)), ("ling", KG(2))]), weighed=False
    )

    assert trip_line(trip, landed).landed_kg == 7
    assert not trip_line(trip, landed).weighed
    assert trip_line(trip, None).landed_kg is None
