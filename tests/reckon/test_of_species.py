"""What is known of each species: when, where, in which grades, and the best tows."""

from collections.abc import Sequence
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.model.figures import Reckoned
from logbook.model.places import SpeciesFigures
from tests.ledger import ledger_of
from tests.read.logs import fleet
from tests.reckon.build import reckoned

KG = Decimal
A = """\
vessel: Solan Bright
sailed: 2025-03-04 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 20:00, ground: The Saddle, catch: {cod: {large: 60 kg, small: 40 kg}, haddock: 20 kg}}
  - {shot: 21:00, hauled: 23:00, ground: the  SADDLE, catch: {cod: 20 kg}}
  - {shot: 2025-03-05 01:00, hauled: 03:00, ground: Odd Hole, catch: none}
landed: {docked: 2025-03-08 09:00, port: Port Kerrin, out-turn: {cod: 130 kg}}
"""
B = """\
vessel: Skerry Light
sailed: 2026-03-14 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 22:00, ground: The Saddle, catch: {cod: {small: 80 kg}}, put back: {skate: 4 kg}}
  - {shot: 23:00, hauled: 2026-03-15 01:00, ground: Long Brae, catch: {haddock: 6 kg}}
landed: 2026-03-31 23:30, Port Kerrin
"""
C = """\
vessel: Skerry Light
sailed: 2026-04-04 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 20:00, ground: The Saddle}
  - {shot: 21:00, hauled: 23:00, ground: Odd Hole, catch: {cod: 10 kg, haddock: plenty}}
"""
ALL = reckoned(A, B, C)


def of(trips: Sequence[Reckoned]) -> dict[str, SpeciesFigures]:
    return {one.name: one for one in ledger_of(trips, fleet()).species()}


def test_what_was_never_kept_has_no_page_and_the_heaviest_is_first() -> None:
    assert list(of(ALL)) == ["cod", "haddock"]


def test_nothing_gives_nothing() -> None:
    assert of(()) == {}


def test_a_code_is_that_of_the_species() -> None:
    # FAO ASFIS list of species: COD Gadus morhua, HAD Melanogrammus aeglefinus
    assert [one.code for one in of(ALL).values()] == ["COD", "HAD"]


def test_a_month_is_of_all_years_and_of_tows_that_had_none() -> None:
    cod = of(ALL)["cod"]

    # March by hand: 100 + 20 + 0 kg of 2025, 80 + 0 of 2026, over 2 + 2 + 2 + 4 + 2 hours
    assert cod.by_month[2] == pytest.approx(200 / 12)
    # April: the tow of no known catch is left out; the haddock of the other is not known, so neither is what it kept in all
    assert len(cod.by_month) == 12
    assert cod.by_month[0] is None


def test_a_ground_is_one_whatever_its_case() -> None:
    cod = of(ALL)["cod"]

    assert dict(cod.kept_by_ground.items()) == {"The Saddle": KG(200), "Odd Hole": KG(10)}
    assert list(cod.by_ground) == ["The Saddle", "Odd Hole"]
    assert cod.by_ground["The Saddle"][2] == pytest.approx(200 / 8)
    assert cod.by_ground["Odd Hole"][2] == pytest.approx(0.0)


def test_landings_are_over_the_scale_else_as_hailed_in_the_month_of_docking() -> None:
    assert dict(of(ALL)["cod"].landed_by_month.items()) == {"2025-03": KG(130), "2026-03": KG(80)}
    assert dict(of(ALL)["haddock"].landed_by_month.items()) == {"2026-03": KG(6)}


def test_grades_add_up_over_trips_the_heaviest_first() -> None:
    assert list(of(ALL)["cod"].grades.items())[:2] == [("small", KG(120)), ("large", KG(60))]


def test_the_best_tows_are_told_with_what_they_kept_of_it() -> None:
    best = of(ALL)["cod"].best

    assert [(mark.vessel, mark.kept_kg) for mark in best[:2]] == [("Solan Bright", KG(100)), ("Skerry Light", KG(80))]


@given(st.permutations(ALL))
@settings(max_examples=6)
def test_the_order_of_trips_changes_nothing(trips: list[Reckoned]) -> None:
    assert [repr(one) for one in of(trips).values()] == [repr(one) for one in of(ALL).values()]
