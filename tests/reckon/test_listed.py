"""Tows over many trips in one list, and sums over some of them."""

from collections.abc import Sequence
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.figures import Reckoned
from logbook.model.places import SpeciesHere
from logbook.model.tally import Rate
from logbook.reckon.listed import Listed, best_of, grouped, kept_here, listed, rate_of, species_of, summed
from logbook.reckon.sums import figures_of
from tests.reckon.build import reckoned

KG = Decimal
A = """\
vessel: Solan Bright
sailed: 2026-01-04 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 20:00, ground: The Saddle, catch: {cod: 100 kg, haddock: 20 kg}}
  - {shot: 21:00, hauled: 23:00, ground: The Saddle, catch: with next}
  - {shot: 2026-01-05 01:00, hauled: 03:00, ground: Odd Hole, catch: {cod: 20 kg}, fast: rock}
  - {shot: 04:00, hauled: 06:00, catch: none}
"""
B = """\
vessel: Skerry Light
sailed: 2026-03-04 05:30, Port Kerrin
tows:
  - {hauled: 2026-03-04 20:00, catch: {ling: 40 kg}}
  - {shot: 21:00, hauled: 23:00, ground: Odd Hole}
"""
ALL = tuple(listed(reckoned(A, B)))


def test_every_tow_is_there_with_its_trip_and_its_place_in_it() -> None:
    assert [(one.trip.figures.trip.vessel, one.order) for one in ALL] == [
        ("Solan Bright", 1),
        ("Solan Bright", 2),
        ("Solan Bright", 3),
        ("Solan Bright", 4),
        ("Skerry Light", 1),
        ("Skerry Light", 2),
    ]


def test_a_catch_sorted_with_a_foul_tow_is_not_clean() -> None:
    foul = tuple(
        listed(
            reckoned(
                A.replace("catch: with next", "catch: with next, fast: rock").replace(
                    ", fast: rock}\n  - {shot: 04", "}\n  - {shot: 04"
                )
            )
        )
    )

    assert [one.clean for one in ALL if one.rated] == [True, False, True]
    assert [one.clean for one in foul if one.rated] == [True, False, True]


def test_a_tow_of_no_known_shot_time_is_told_by_its_haul() -> None:
    when = ALL[4].when

    assert when is not None
    assert f"{when:%Y-%m-%d %H:%M}" == "2026-03-04 20:00"


def test_a_tow_leads_to_its_log_unless_the_log_has_other_tows() -> None:
    other = replace(ALL[0].trip, log=replace(ALL[0].trip.log, tows=ALL[0].trip.log.tows[1:]))

    assert ALL[0].log is ALL[0].trip.log.tows[0]
    assert replace(ALL[0], trip=other).log is None


def test_a_mark_tells_what_a_tow_kept_of_a_species_or_of_all() -> None:
    cod, every, ling = ALL[0].mark("cod"), ALL[0].mark(words="torn"), ALL[0].mark("ling")

    assert (cod.kept_kg, cod.kept_kg_per_h) == (KG(100), pytest.approx(50))
    assert (every.kept_kg, every.kept_kg_per_h, every.words) == (KG(120), pytest.approx(60), "torn")
    assert (ling.kept_kg, ling.kept_kg_per_h) == (None, None)
    assert (every.trip_id, every.order, every.ground) == (ALL[0].trip.figures.trip.id, 1, "The Saddle")


def test_a_tow_of_no_known_hours_has_a_weight_and_no_rate() -> None:
    mark = ALL[4].mark("ling")

    assert (mark.kept_kg, mark.kept_kg_per_h) == (KG(40), None)


def test_tows_that_have_none_of_it_are_in_no_group() -> None:
    made = grouped(ALL, lambda one: one.tow.ground)

    assert {name: len(tows) for name, tows in made.items()} == {"The Saddle": 2, "Odd Hole": 3}


def test_sums_tell_trips_tows_and_foul_ones() -> None:
    made = figures_of("all", summed(ALL))

    assert (made.name, made.trips, made.tows, made.foul_tows) == ("all", 2, 6, 1)
    assert made.kept_kg == KG(180)
    # by hand: 140 kg over four tows of two hours; clean are the first and the fourth
    assert made.kept_kg_per_h == pytest.approx(140 / 8)
    assert made.kept_kg_per_h_clean == pytest.approx(120 / 4)


def test_a_rate_is_total_over_total_with_the_tows_that_had_none() -> None:
    assert rates(ALL) == {
        "cod": pytest.approx(120 / 8),
        "haddock": pytest.approx(20 / 8),
        "ling": pytest.approx(0.0),
    }


def test_where_nothing_is_known_there_is_no_rate() -> None:
    assert rates(ALL[4:]) == {"ling": None}
    assert rate_of(KG(0), None) is None
    assert rate_of(KG(5), Rate(kept=KG(5), us=0)) is None


def rates(tows: Sequence[Listed]) -> dict[str, float | None]:
    """Return what was kept of each species for each hour."""
    return {one.name: one.kept_kg_per_h for one in species_in(tows)}


def species_in(tows: Sequence[Listed]) -> tuple[SpeciesHere, ...]:
    """Return what some tows kept by species."""
    return species_of(kept_here(tows), summed(tows))


def test_species_are_told_most_first_with_and_without_foul_tows() -> None:
    made = species_in(ALL)

    assert [(one.name, one.kept_kg) for one in made] == [("cod", KG(120)), ("ling", KG(40)), ("haddock", KG(20))]
    assert made[0].kept_kg_per_h == pytest.approx(120 / 8)
    assert made[0].kept_kg_per_h_clean == pytest.approx(100 / 4)


def test_the_best_are_those_that_kept_most_for_each_hour() -> None:
    made = best_of(ALL, "cod", 5)

    assert [(mark.order, mark.kept_kg_per_h) for mark in made] == [(1, pytest.approx(50)), (3, pytest.approx(5))]
    assert best_of(ALL, "cod", 1) == made[:1]
    assert best_of(ALL, "skate", 5) == ()


@given(st.permutations(ALL))
@settings(max_examples=10)
def test_the_order_of_tows_changes_no_list(tows: list[Listed]) -> None:
    assert species_in(tows) == species_in(ALL)
    assert best_of(tows, None, 5) == best_of(ALL, None, 5)


@given(st.permutations(reckoned(A, B)))
@settings(max_examples=2)
def test_the_species_add_up_to_the_whole(trips: list[Reckoned]) -> None:
    tows = tuple(listed(trips))

    assert sum((one.kept_kg for one in species_in(tows)), KG(0)) == summed(tows).kept
