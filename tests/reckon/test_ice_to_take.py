"""Ice to take before sailing."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.export import record_as_json
from logbook.model.fleet import Assumed, Constants, Fleet, Hold, Vessel
from logbook.model.quantity import Kilograms
from logbook.reckon.ice_to_take import ice_to_take

VESSEL = Vessel(name="Any", hold=Hold(surface_m2=60, insulation_w_m2k=0.5), ice_capacity=Kilograms(Decimal(10000)))


def test_a_trip_by_physics_and_by_practice() -> None:
    # Worked from FAO Fisheries Technical Paper 331 ch. 3: 20 t at 8 degrees, c/L as 0.8/80, 9 days in a sea of 12 degrees over
    # a hold of 60 m² and 0.5 W/(m² K): chilling 1600.0, hold 838.1, with 20 % 2925.8. Here the sea is 12 for both, so chilling
    # is half as much again.
    of = Fleet(constants=Constants(specific_heat=3.34, latent_heat=334))
    made = ice_to_take(VESSEL, of, days=9, catch_kg=20000, sea_c=12)
    cooler = ice_to_take(VESSEL, of, days=9, catch_kg=20000, sea_c=8)

    assert cooler.chilling_kg == pytest.approx(1600.0)
    assert made.hold_melt_kg == pytest.approx(838.1, abs=0.05)
    assert made.theory_kg == pytest.approx((2400 + 838.1) * 1.2, abs=0.1)
    assert (cooler.chilling_kg + (made.hold_melt_kg or 0)) * 1.2 == pytest.approx(2925.8, abs=0.1)
    # Torry Advisory Note 15: about 1 t of ice to 2 t of fish.
    assert made.practice_kg == pytest.approx((10000 + 838.1) * 1.2, abs=0.1)
    assert made.advised_kg == made.practice_kg
    assert made.over_capacity_kg == pytest.approx(made.practice_kg - 10000)


def test_physics_is_advised_where_it_asks_for_more() -> None:
    of = Fleet(assumed=Assumed(fish_to_ice=100))

    made = ice_to_take(VESSEL, of, days=1, catch_kg=1000, sea_c=30, allowance_percent=0)

    assert made.advised_kg == made.theory_kg > made.practice_kg
    assert made.over_capacity_kg == 0


def test_an_unknown_hold_and_capacity_are_named_or_none() -> None:
    made = ice_to_take(Vessel(name="Any"), Fleet(), days=6, catch_kg=40000, sea_c=8)

    assert (made.hold_melt_kg, made.capacity_kg, made.over_capacity_kg) == (None, None, None)
    assert record_as_json(made)["basis"] == dict.fromkeys(
        ("theory_kg", "practice_kg", "advised_kg"), "hold melt not known, left out"
    )


@given(st.floats(0, 20), st.floats(0, 200000), st.floats(-2, 20), st.floats(0, 5))
def test_longer_fuller_and_warmer_never_takes_less(days: float, catch: float, sea: float, more: float) -> None:
    usual = ice_to_take(VESSEL, Fleet(), days=days, catch_kg=catch, sea_c=sea).advised_kg

    for other in (
        ice_to_take(VESSEL, Fleet(), days=days + more, catch_kg=catch, sea_c=sea),
        ice_to_take(VESSEL, Fleet(), days=days, catch_kg=catch * (1 + more), sea_c=sea),
        ice_to_take(VESSEL, Fleet(), days=days, catch_kg=catch, sea_c=sea + more),
        ice_to_take(
            VESSEL, replace(Fleet(), assumed=Assumed(fish_to_ice=2 / (1 + more))), days=days, catch_kg=catch, sea_c=sea
        ),
    ):
        assert other.advised_kg >= usual - 1e-6
