"""Ice that melts, by physics: published rules and worked examples."""

import pytest

from logbook.model.fleet import Constants, Hold
from logbook.reckon.melt import chilling_kg, heat_kw, hold_melt, melt_kg_per_h
from tests.read.logs import FLEET, fleet, trip
from tests.reckon.build import HEAD

KCAL_KJ = 4.1868
HANDBOOK = Constants(specific_heat=0.8 * KCAL_KJ, latent_heat=80 * KCAL_KJ)
"""0.8 kcal/(kg °C) and 80 kcal/kg (FAO Fisheries Technical Paper 331 ch. 3)."""


def test_a_tonne_of_fish_at_eight_degrees_takes_eighty_kilograms() -> None:
    # Worked from FAO Fisheries Technical Paper 331, equation 4: 1000 x 0.8 x 8 / 80.
    assert chilling_kg(1000, 8, HANDBOOK) == pytest.approx(80)
    assert chilling_kg(1000, 8, Constants()) == pytest.approx(80, abs=0.3)


@pytest.mark.parametrize(("celsius", "published"), [(30, 3.4), (25, 2.8), (20, 2.3), (15, 1.7), (10, 1.2), (5, 0.6)])
def test_ten_kilograms_of_fish_take_what_the_handbook_says(celsius: float, published: float) -> None:
    # Handbook table of ice for 10 kg of fish (second-hand), which goes by a specific heat of 0.9 kcal; 0.1 kg either way.
    handbook = Constants(specific_heat=0.9 * KCAL_KJ, latent_heat=80 * KCAL_KJ)

    assert chilling_kg(10, celsius, handbook) == pytest.approx(published, abs=0.1)


@pytest.mark.parametrize(("specific", "fish_kg"), [(0.88, 3.0), (0.83, 3.2), (0.78, 3.4)])
def test_a_kilogram_of_ice_brings_as_much_fish_from_thirty_degrees_to_nought(specific: float, fish_kg: float) -> None:
    # UNU Fisheries Training Programme, Ice and cooling: lean, semi-fat and fatty fish.
    of = Constants(specific_heat=specific * KCAL_KJ, latent_heat=80 * KCAL_KJ)

    assert 1 / chilling_kg(1, 30, of) == pytest.approx(fish_kg, abs=0.05)


def test_a_kilogram_of_ice_brings_three_of_water_from_twenty_five_degrees_to_nought() -> None:
    # UNU Fisheries Training Programme, Ice and cooling: about 3 kg; 3 x 25 x 1.0 / 80 is 0.94 kg of ice.
    water = Constants(specific_heat=1.0 * KCAL_KJ, latent_heat=80 * KCAL_KJ)

    assert chilling_kg(3, 25, water) == pytest.approx(0.94, abs=0.005)
    assert 1 / chilling_kg(1, 25, water) == pytest.approx(3, abs=0.25)


def test_fish_that_is_colder_than_ice_takes_none() -> None:
    assert chilling_kg(1000, -1, Constants()) == 0


def test_a_hold_melts_by_surface_insulation_and_warmth() -> None:
    # Worked from FAO Fisheries Technical Paper 436 ch. 7: 0.40 kcal/(m² h °C) over 60 m² and 10 °C are 240 kcal/h, 3 kg/h; in SI
    # 0.50 W/(m² K) over the same are 300 W, 77.6 kg a day.
    in_kcal = heat_kw(Hold(surface_m2=60, insulation_w_m2k=0.40 * KCAL_KJ / 3.6), 10)
    in_watts = heat_kw(Hold(surface_m2=60, insulation_w_m2k=0.50), 10)

    assert in_kcal is not None
    assert melt_kg_per_h(in_kcal, HANDBOOK) == pytest.approx(3)
    assert in_watts == pytest.approx(0.3)
    assert melt_kg_per_h(0.3, Constants()) * 24 == pytest.approx(77.6, abs=0.05)


def test_a_cold_sea_melts_nothing_and_an_unknown_hold_is_not_known() -> None:
    assert heat_kw(Hold(surface_m2=60, insulation_w_m2k=0.5), -1) == 0
    assert heat_kw(Hold(surface_m2=60), 10) is None
    assert heat_kw(Hold(insulation_w_m2k=0.5), 10) is None


BY_SURFACE = FLEET.replace("heat gain: 1.9 kW", "surface: 60 m2, insulation: 0.5 W/m2K")
ONE = "tows:\n  - {shot: 18:00, hauled: 19:00, sea temperature: 4 C}\n  - {shot: 20:00, hauled: 21:00, sea temperature: 8 C}\n"


@pytest.mark.parametrize(
    ("text", "celsius"),
    [("sea temperature: 12 C\n" + ONE, 12), (ONE, 6), ("sea temperature: 0 C\n" + ONE, 0), ("", 10)],
)
def test_the_sea_is_the_trips_else_the_tows_mean_else_assumed(text: str, celsius: float) -> None:
    log = trip(HEAD + text, fleet(BY_SURFACE))

    made = hold_melt(log, Constants())

    assert made.kg_per_h == pytest.approx(60 * 0.5 * celsius * 3.6 / 334)
    assert (dict(made.basis) != {}) == (text == "")


def test_a_known_heat_gain_needs_no_sea() -> None:
    made = hold_melt(trip(HEAD), Constants())

    assert (made.kg_per_h, made.basis) == (pytest.approx(1.9 * 3600 / 334), ())


def test_of_a_hold_nobody_knows_nothing_is_known() -> None:
    made = hold_melt(trip("vessel: Another\nsailed: 2026-03-04 05:30\n"), Constants())

    assert made.kg_per_h is None
