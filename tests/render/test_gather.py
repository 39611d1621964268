from decimal import Decimal

from msgspec.structs import replace

from logbook.model.fleet_figures import Landed
from logbook.model.named import ByName
from logbook.render.gather import added, by_weight, kept_species, logged_tows, trip_line
from tests.reckon.build import figures
from tests.render import example

KG = Decimal


def test_a_sum_leaves_out_what_is_not_known_and_is_unknown_where_nothing_is() -> None:
    assert added([KG(2), None, KG(3)]) == 5
    assert added([None]) is None
    assert added([]) is None


def test_species_stand_by_weight_those_not_weighed_last() -> None:
    assert by_weight(example.trip(tows=9).figures.catch) == ("haddock", "cod", "saithe", "ling", "skate")


def test_fish_only_put_back_or_only_undersize_was_not_kept_however_little_is_known_of_it() -> None:
    made = figures(
        "tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 1 kg, ling: 3 fish}, undersize: {saithe: 2 kg, plaice: 4 fish}, "
        "put back: {skate: 6 fish, dab: 3 kg}}\n"
    )

    assert set(made.catch) == {"cod", "ling", "saithe", "plaice", "skate", "dab"}
    assert kept_species(made.catch) == ("cod", "ling")


def test_fish_kept_in_one_tow_and_put_back_in_another_was_kept() -> None:
    made = figures(
        "tows:\n  - {shot: 18:10, hauled: 19:40, put back: {skate: 6 fish}}\n"
        "  - {shot: 20:10, hauled: 21:40, catch: {skate: 2 fish}}\n"
    )

    assert kept_species(made.catch) == ("skate",)
    assert [tow.catch["skate"].kept for tow in made.tows] == [False, True]


def test_tows_and_figures_are_matched_by_number_where_some_are_left_out() -> None:
    trip = example.trip(tows=4)
    short = replace(trip, figures=replace(trip.figures, tows=trip.figures.tows[1:3]))

    assert [(tow.no, figures.no) for tow, figures in logged_tows(short)] == [(2, 2), (3, 3)]


def test_a_trip_in_a_table_knows_whether_it_was_weighed() -> None:
    trip = example.trip(tows=2)
    docked = trip.figures.trip.docked
    assert docked
    landed = Landed(
        trip_id="x",
        vessel="y",
        docked=docked,
        season="2026",
        species=ByName([("cod", KG(5)), ("ling", KG(2))]),
        weighed=False,
    )

    assert trip_line(trip, landed).landed_kg == 7
    assert not trip_line(trip, landed).weighed
    assert trip_line(trip, None).landed_kg is None
