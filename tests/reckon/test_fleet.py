"""Sums over the fleet."""

from datetime import UTC, datetime
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.figures import Reckoned
from logbook.reckon.fleet import reckon_fleet, season
from tests.read.logs import FLEET, fleet
from tests.reckon.build import reckoned

A = """\
vessel: Solan Bright
sailed: 2026-01-04 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 20:00, ground: The Saddle, catch: {cod: 100 kg, haddock: 20 kg}, put back: {skate: 3 kg}}
  - {shot: 21:00, hauled: 23:00, ground: the saddle, catch: {cod: 20 kg}, fast: yes}
landed: {docked: 2026-01-10 09:00, port: Port Kerrin, out-turn: {cod: {large: 70 kg, small: 55 kg}, haddock: lots}}
"""
B = """\
vessel: solan bright
sailed: 2026-03-04 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 20:00, ground: Odd Hole, catch: with next}
  - {shot: 21:00, hauled: 23:00, ground: Odd Hole, catch: {haddock: 80 kg}}
  - {shot: 2026-03-05 01:00, hauled: 03:00, ground: Odd Hole, catch: with next, damage: wing}
  - {shot: 04:00, hauled: 06:00, ground: Odd Hole, catch: {haddock: 40 kg}}
  - {shot: 08:00, hauled: 09:00, pen: P1}
landed: 2026-03-10 09:00, Port Kerrin
"""
C = """\
vessel: Other
sailed: 2026-03-12 05:30, Port Kerrin
tows:
  - {shot: 10:00, hauled: 11:00}
  - {shot: 18:00, hauled: 20:00, ground: The Saddle, catch: none}
  - {shot: 21:00, ground: The Saddle}
"""
ALL = reckoned(A, B, C)


@given(st.permutations(ALL))
@settings(max_examples=6)
def test_the_order_of_trips_changes_nothing(trips: list[Reckoned]) -> None:
    made = reckon_fleet(trips, fleet())
    usual = reckon_fleet(ALL, fleet())

    assert made == usual
    assert list(made.species) == list(usual.species)
    assert list(made.vessels) == list(usual.vessels)


def test_a_vessel_is_one_whatever_the_case_and_has_its_days() -> None:
    made = reckon_fleet(ALL, fleet())

    own = made.vessels["Solan Bright"]
    assert (own.trips, own.tows, own.foul_tows, own.kept_kg) == (2, 7, 2, 260)
    assert own.days_at_sea == pytest.approx(12 + 7 / 24)


def test_catch_per_hour_is_total_over_total_of_what_is_known() -> None:
    made = reckon_fleet(ALL, fleet())

    # By hand: 140 kg in 4 h and 120 kg in 8 h; the last tow's catch is not known, its hour does not count.
    assert made.vessels["Solan Bright"].kept_kg_per_h == pytest.approx(260 / 12)
    # Without the fast of 20 kg in 2 h, and without the 40 kg in 4 h of which one tow was damaged.
    assert made.vessels["Solan Bright"].kept_kg_per_h_clean == pytest.approx((120 + 80) / (2 + 4))
    assert made.grounds["The Saddle"].kept_kg_per_h == pytest.approx(140 / 6)
    assert made.grounds["The Saddle"].kept_kg_per_h_clean == pytest.approx(120 / 4)
    assert made.grounds["Odd Hole"].days_at_sea is None


def test_a_species_rate_is_over_all_hours_with_a_known_catch() -> None:
    cod = reckon_fleet(ALL, fleet()).species["cod"]

    assert (cod.tows, cod.trips, cod.kept_kg, cod.towed_h) == (2, 1, 120, 4)
    assert cod.kept_kg_per_h == pytest.approx(120 / 14)
    assert cod.kept_kg_per_h_clean == pytest.approx(100 / 8)
    assert reckon_fleet(ALL, fleet()).species["skate"].kept_kg is None


def test_parts_add_up_to_the_whole() -> None:
    made = reckon_fleet(ALL, fleet())

    for figure in ("kept_kg", "put_back_kg", "live_kg"):
        vessels = sum(getattr(group, figure) or 0 for group in made.vessels.values())
        species = sum(getattr(group, figure) or 0 for group in made.species.values())
        assert vessels == species


def test_landings_are_as_weighed_else_as_hailed_by_month_without_holes() -> None:
    made = reckon_fleet(ALL, fleet())

    assert [(trip.weighed, dict(trip.species)) for trip in made.landed] == [
        (True, {"cod": Decimal(125)}),
        (False, {"haddock": Decimal(120)}),
    ]
    assert {month: dict(fish) for month, fish in made.landed_by_month.items()} == {
        "2026-01": {"cod": 125},
        "2026-02": {},
        "2026-03": {"haddock": 120},
    }
    assert list(made.seasons) == ["2026"]


def test_a_month_end_at_new_year_has_no_hole() -> None:
    trips = reckoned(A, A.replace("2026-01-04", "2025-11-04").replace("2026-01-10", "2025-11-10"))

    assert list(reckon_fleet(trips, fleet()).landed_by_month) == ["2025-11", "2025-12", "2026-01"]


def test_nothing_gives_nothing() -> None:
    made = reckon_fleet((), fleet())

    assert (len(made.vessels), len(made.species), made.landed, len(made.landed_by_month)) == (0, 0, (), 0)


@pytest.mark.parametrize(
    ("docked", "starts", "name"),
    [
        ("2026-01-01", (1, 1), "2026"),
        ("2025-12-31", (1, 1), "2025"),
        ("2026-08-31", (9, 1), "2025–26"),
        ("2026-09-01", (9, 1), "2026–27"),
        ("2099-09-01", (9, 1), "2099–00"),
    ],
)
def test_a_season_is_the_year_or_both_its_years(docked: str, starts: tuple[int, int], name: str) -> None:
    of = replace(fleet(FLEET), season_start=starts)

    assert season(datetime.fromisoformat(docked).replace(tzinfo=UTC), of) == name
