"""Figures as JSON: every key under its name, and plain values."""

import json
from decimal import Decimal

from msgspec.structs import replace

from logbook.model.export import as_json, record_as_json
from logbook.reckon.money import reckon_money
from tests.read.logs import FLEET, fleet, trip
from tests.reckon.build import HEAD, figures

MARKET = FLEET.replace(
    "    at: 59 40.0N 012 10.0W\n",
    "    at: 59 40.0N 012 10.0W\n    landing rate: 5 t/h\n    sale: {days: Mon-Fri, time: 07:00, all ashore before: 3 h}\n",
)
LOG = """\
ice loaded: 10 t
tows:
  - {shot: 18:00, hauled: 20:00, pen: P1, catch: {Cod: 100.5 kg}, to: 58 50N 015 00W}
"""

KEYS = {
    "ice": "loaded_kg laid_kg hold_melt_kg left_kg left_by chilling_kg lasts_until fish_to_ice",
    "landing": "port expected docked passage_nm passage_h landing_started landing_finished discharge_h discharge_kg_per_h "
    "steam_out_h steam_home_h turnaround_h landings sales turn_for_home_by bound_by turn_for_home_by_poor_weather "
    "last_shot_by choices temperatures",
}
PEN = "kept_kg capacity_kg full_percent first_on_ice last_on_ice oldest_ice_days tows temperature_c out_turn_kg"
SALE = "at ashore_by turn_for_home_by oldest_equivalent_ice_days"
CHOICE = "turn docked kept_kg hold_full_percent ice_left_kg oldest_equivalent_ice_days over_limit_kg sale bound_by"


def test_the_hold_and_the_way_home_have_every_key() -> None:
    made = json.loads(json.dumps(as_json(figures(LOG, of=fleet(MARKET))), allow_nan=False))

    for section, keys in KEYS.items():
        assert set(made[section]) == set(keys.split())
    assert {tuple(sorted(pen)) for pen in made["pens"].values()} == {tuple(sorted(PEN.split()))}
    assert [set(sale) for sale in made["landing"]["sales"]] == [set(SALE.split())] * 5
    assert [set(choice) for choice in made["landing"]["choices"]] == [set(CHOICE.split())] * 5
    assert "hold_full_percent" in made["totals"]


def test_values_are_plain() -> None:
    made = as_json(figures(LOG, of=fleet(MARKET)))

    assert made["as_of"] == "2026-03-04T20:00:00+00:00"
    text = json.dumps(made)
    assert '"cod"' in text
    assert '"Cod"' not in text

    def only_plain(value: object) -> bool:
        if isinstance(value, dict):
            return all(isinstance(key, str) and only_plain(part) for key, part in value.items())
        if isinstance(value, list):
            return all(only_plain(part) for part in value)
        return value is None or isinstance(value, str | int | float | bool)

    assert only_plain(made)


def test_how_figures_came_about_stands_under_their_paths() -> None:
    basis = as_json(figures(LOG, of=fleet(MARKET), at="2026-03-05 00:00"))["basis"]

    assert isinstance(basis, dict)
    assert {
        "tows.0.on_ice",
        "tows.0.equivalent_ice_days",
        "tows.0.catch.cod.live_kg",
        "catch.cod.live_kg",
        "ice.laid_kg",
        "ice.left_kg",
        "age.oldest_equivalent_ice_days",
        "landing.port",
    } <= set(basis)


SECTIONS = {
    "hail": "hail_kg out_turn_kg difference_kg difference_percent within_tolerance bias_percent expected_out_turn_kg "
    "expected_low_kg expected_high_kg",
    "gear": "towed_h tows foul_tows damage towed_h_since_mended",
    "rest": "worst_24h_rest_h worst_24h_from worst_7d_rest_h worst_7d_from longest_unbroken_h periods_a_day c188_hours_met",
}
WEATHER = "hours_by_force kept_kg_per_h_by_force worst_force icing"
MONEY = "lines gross gross_per_day_at_sea mean_price_per_kg expenses net settlement"
WHOLE = """\
watches: {port: 00-06 12-18, starboard: 06-12 18-24}
tows:
  - {shot: 18:00, hauled: 20:00, net: rockhopper, wind: SW 6, catch: {Cod: 100 kg}, damage: wing torn}
weather:
  - {at: 21:00, sea: 5, icing: light}
gear:
  - {at: 20:30, net: rockhopper, event: mended, took: 2 h}
time lost:
  - {from: 21:00, to: 22:30, why: gear}
landed: {docked: 2026-03-06 09:00, port: Port Kerrin, out-turn: {cod: 90 kg}, prices: {cod: 3.90/kg}}
"""


def test_hail_gear_rest_weather_money_and_time_lost_have_every_key() -> None:
    made = json.loads(json.dumps(as_json(figures(WHOLE)), allow_nan=False))

    assert (set(made["hail"]), set(made["rest"])) == ({"cod"}, {"port", "starboard"})
    assert {"rockhopper", "flat net"} == set(made["gear"])
    for section, keys in SECTIONS.items():
        assert all(set(keys.split()) <= set(entry) for entry in made[section].values())
    assert set(WEATHER.split()) <= set(made["weather"])
    assert set(MONEY.split()) <= set(made["money"])
    assert made["time_lost_h"] == {"gear": 1.5}


def test_hail_gear_weather_and_money_are_numbers_and_money_a_text() -> None:
    made = json.loads(json.dumps(as_json(figures(WHOLE))))

    assert made["hail"]["cod"]["difference_kg"] == -10.0
    assert made["hail"]["cod"]["within_tolerance"] is True
    assert made["hail"]["cod"]["bias_percent"] is None
    assert made["basis"]["hail.cod.bias_percent"].startswith("not told")
    assert made["gear"]["rockhopper"]["damage"] == ["wing torn"]
    assert (made["weather"]["hours_by_force"], made["weather"]["icing"]) == ({"6": 2.0}, "light")
    assert (made["money"]["gross"], made["money"]["net"]) == ("351.00", None)


def test_before_anything_is_logged_the_sections_are_there_and_empty() -> None:
    made = json.loads(json.dumps(as_json(figures(""))))

    assert (made["hail"], made["rest"], made["time_lost_h"], made["money"]) == ({}, {}, {}, None)
    assert {net["towed_h"] for net in made["gear"].values()} == {None}
    assert (made["weather"]["hours_by_force"], made["weather"]["worst_force"]) == ({}, None)


def test_the_gross_of_a_group_is_money() -> None:
    (group,) = figures(
        "tows:\n  - {shot: 18:00, hauled: 20:00, ground: The Saddle, catch: {cod: 100 kg}}\n"
    ).grounds.values()
    made = record_as_json(replace(group, gross=Decimal("31.5")))

    assert (made["gross"], made["kept_kg"]) == ("31.50", 100.0)
    assert record_as_json(group)["gross"] is None


def test_money_is_a_text_with_two_decimals_and_weights_beside_it_are_numbers() -> None:
    sold = "landed:\n  out-turn: {Cod: 100.5 kg, saithe: 45 kg}\n  prices: {cod: 3.9/kg, saithe: 140/box}\n"
    shared = "settlement: {expenses: {ice: 20}, boat's share: 50 %, shares: {deck: 1}}\n"
    made = record_as_json(reckon_money(trip(HEAD + sold + shared), 2.0))

    assert json.loads(json.dumps(made)) == {
        "lines": [
            {"species": "cod", "grade": None, "weight_kg": 100.5, "price_per_kg": "3.90", "value": "391.95"},
            {
                "species": "saithe",
                "grade": None,
                "weight_kg": 45,
                "price_per_kg": "3.11111111111111",
                "value": "140.00",
            },
        ],
        "unpriced": [],
        "unweighed": [],
        "gross": "531.95",
        "gross_per_day_at_sea": "265.98",
        "mean_price_per_kg": "3.65601374570447",
        "expenses": {"ice": "20.00"},
        "net": "511.95",
        "settlement": {"boat": "255.98", "deck": "255.97"},
        "fuel_litres_per_tonne": None,
        "basis": {},
    }
