"""A whole trip: tows, catch, totals, landing, states, as-of, and JSON; worked examples from published figures."""

import json
from datetime import UTC, datetime
from decimal import Decimal

import pytest
from msgspec.structs import replace
from pyproj import Geod

from logbook.model.export import as_json
from logbook.model.figures import Neighbours, TripFigures
from logbook.reckon.neighbours import neighbours_of, trip_id
from logbook.reckon.trip import reckon_trip, reckon_trips
from tests.read.logs import FLEET, fleet, read, trip
from tests.reckon.build import HEAD, figures

TOW_KEYS = [
    "no",
    "side",
    "ground",
    "net",
    "pens",
    "shot",
    "hauled",
    "on_ice",
    "duration_h",
    "distance_nm",
    "distance_by",
    "speed_kn",
    "swept_doors_km2",
    "swept_wings_km2",
    "depth_m",
    "warp_to_depth",
    "light",
    "rectangle",
    "catch",
    "kept_kg",
    "put_back_kg",
    "live_kg",
    "kept_kg_per_h",
    "kept_kg_per_km2",
    "foul",
    "ice_days",
    "equivalent_ice_days",
]
TRIP_KEYS = [
    "id",
    "vessel",
    "number",
    "skipper",
    "state",
    "sailed",
    "sailed_from",
    "turned_for_home",
    "docked",
    "port",
    "as_of",
    "last_word",
]
TOTAL_KEYS = [
    "tows",
    "foul_tows",
    "towed_h",
    "distance_nm",
    "swept_doors_km2",
    "swept_wings_km2",
    "kept_kg",
    "put_back_kg",
    "live_kg",
    "kept_kg_per_h",
    "kept_kg_per_day",
    "days_at_sea",
    "fishing_days",
    "tows_per_day",
    "mean_cycle_h",
    "incomplete",
]
AGE_KEYS = [
    "as_of",
    "limit_days",
    "oldest_ice_days",
    "mean_ice_days",
    "oldest_equivalent_ice_days",
    "mean_equivalent_ice_days",
    "kept_kg_by_day",
    "over_limit_kg",
]
LANDING_KEYS = [
    "port",
    "expected",
    "docked",
    "passage_nm",
    "passage_h",
    "landing_started",
    "landing_finished",
    "discharge_h",
    "discharge_kg_per_h",
    "steam_out_h",
    "steam_home_h",
    "turnaround_h",
    "landings",
]


def at(text: str) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def caught(catch: str) -> TripFigures:
    return figures(f"tows:\n  - {{shot: 18:10, hauled: 19:40, catch: {{{catch}}}}}\n")


@pytest.mark.parametrize(
    ("catch", "live"),
    [
        # Implementing Regulation (EU) No 404/2011 Annex XIII, worked by hand.
        ("cod: 1000 kg", "1170"),
        ("haddock: 250 kg gutted and headed", "365"),
        ("monk: 120 kg tails", "360"),
        ("skate: 80 kg wings", "167.2"),
        ("saithe: 340 kg gutted", "404.6"),
        ("hake: 415 kg gutted", "460.65"),
        ("cod: 620 lb whole", "281.2272694"),
    ],
)
def test_live_weight_is_product_weight_times_the_published_factor(catch: str, live: str) -> None:
    assert caught(catch).totals.live_kg == Decimal(live)


def test_a_whole_trip_of_published_factors_adds_up() -> None:
    # The same annex: 11 960 kg of product are 14 544.70 kg live.
    made = caught(
        "cod: 4200 kg, haddock: 3150 kg, saithe: 1875 kg, hake: 640 kg, anglerfish: 310 kg tails, plaice: 455 kg, "
        "lemon sole: 120 kg, skate: 230 kg wings, redfish: 980 kg whole"
    )

    assert made.totals.kept_kg == 11960
    assert made.totals.live_kg == Decimal("14544.70")


def test_a_species_without_a_factor_has_no_live_weight_and_is_named() -> None:
    made = caught("halibut: 41 kg gutted, cod: 100 kg")

    assert made.catch["halibut"].live_kg is None
    assert made.totals.live_kg == 117
    assert any(
        "halibut (gutted; the fleet file could state 1.10 (Norway 2000))" in words for words in made.totals.incomplete
    )


def test_swept_areas_are_distance_times_spread() -> None:
    # ICES survey practice: 30 min at 4.0 kn are 3704.0 m, and 0.29632 km² with doors 80 m, 0.07408 km² with wings 20 m.
    net = "{name: rockhopper, side: starboard, doors: 720 kg, door spread: 80 m, wing spread: 20 m}"
    other = fleet(
        FLEET.replace("{name: rockhopper, side: starboard, doors: 720 kg, door spread: 62 m, wing spread: 17 m}", net)
    )
    log = trip(
        HEAD + "tows:\n  - {shot: 18:00, hauled: 18:30, speed: 4.0 kn, net: rockhopper, catch: {cod: 74.08 kg}}\n",
        other,
    )

    (tow,) = reckon_trip(log, other).tows

    assert tow.distance_nm == pytest.approx(2)
    assert tow.swept_doors_km2 == pytest.approx(0.29632)
    assert tow.swept_wings_km2 == pytest.approx(0.07408)
    assert tow.kept_kg_per_km2 == pytest.approx(1000)
    assert (tow.distance_by, tow.speed_kn) == ("logged speed", 4.0)


def test_a_tow_by_headline_of_the_fao_manual() -> None:
    # FAO Fisheries Technical Paper 306/1 ch. 13 (second-hand): 3 h 25 min at 3.2 kn are 10.933 nm; with half of a 36 m headline
    # swept, 0.36447 km².
    net = "{name: rockhopper, side: starboard, doors: 720 kg, door spread: 62 m, wing spread: 18 m}"
    other = fleet(
        FLEET.replace("{name: rockhopper, side: starboard, doors: 720 kg, door spread: 62 m, wing spread: 17 m}", net)
    )
    log = trip(HEAD + "tows:\n  - {shot: 18:00, hauled: 21:25, speed: 3.2 kn, net: rockhopper}\n", other)

    (tow,) = reckon_trip(log, other).tows

    assert tow.distance_nm == pytest.approx(10.933, abs=5e-4)
    assert tow.swept_wings_km2 == pytest.approx(0.36447, abs=5e-6)


def test_the_usual_towing_speed_is_assumed_and_named() -> None:
    other = fleet(FLEET.replace("steaming speed: 9.5 kn", "steaming speed: 9.5 kn\n    towing speed: 3 kn"))
    made = reckon_trip(trip(HEAD + "tows:\n  - {shot: 18:00, hauled: 19:00, net: rockhopper}\n", other), other)

    assert (made.tows[0].distance_nm, made.tows[0].distance_by, made.tows[0].speed_kn) == (3, "usual speed", None)
    basis = as_json(made)["basis"]
    assert isinstance(basis, dict)
    assert basis["tows.0.distance_nm"] == "assumed: usual speed"
    assert "totals.distance_nm" in basis


def test_nothing_known_gives_nothing_out_not_nought() -> None:
    made = figures("tows:\n  - {shot: 18:10}\n")

    assert made.totals.kept_kg is None
    assert made.totals.towed_h is None
    assert made.totals.kept_kg_per_h is None
    assert made.tows[0].distance_nm is None
    assert made.totals.incomplete == ("tow 1: gear still down",)


def test_a_tow_that_caught_nothing_is_nought_and_counts_its_hours() -> None:
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 19:00, catch: none}\n  - {shot: 20:00, hauled: 21:00, catch: {cod: 100 kg}}\n"
    )

    assert made.tows[0].kept_kg == 0
    assert made.totals.kept_kg_per_h == pytest.approx(50)


def test_tows_sorted_together_share_their_hours_on_the_later_one() -> None:
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 19:00, catch: with next}\n  - {shot: 20:00, hauled: 21:00, catch: {cod: 100 kg}}\n"
    )

    assert [tow.kept_kg for tow in made.tows] == [None, 100]
    assert [tow.kept_kg_per_h for tow in made.tows] == [None, 50]
    assert made.totals.kept_kg_per_h == pytest.approx(50)


def test_a_sum_with_a_gap_is_the_sum_of_what_is_known_and_says_so() -> None:
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 19:00, catch: {cod: 100 kg}}\n  - {shot: 20:00, hauled: 21:00}\n"
        "  - {shot: 22:00, hauled: 23:00, catch: {cod: lots}}\n  - {shot: 00:00, hauled: 01:00, catch: {cod: 50 kg, haddock: 2 baskts}}\n"
        "  - {shot: 02:00, hauled: 03:00, catch: {halibut: 2 fish}}\n  - nonsense\n"
    )

    assert made.totals.kept_kg == 150
    assert made.tows[4].kept_kg is None
    assert "tow 2: catch not logged" in made.totals.incomplete
    assert "tow 3: catch can't be read" in made.totals.incomplete
    assert "tow 4: part of the catch can't be read" in made.totals.incomplete
    assert "tow 5: part of the catch counted, not weighed" in made.totals.incomplete
    assert any("line 9" in words for words in made.totals.incomplete)


def test_grades_undersize_and_shares_are_told_apart() -> None:
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 19:00, catch: {cod: {large: 60 kg, small: 20 kg}}, undersize: {haddock: 5 kg}, put back: {skate: 9 kg}}\n"
        "  - {shot: 20:00, hauled: 21:00, catch: {cod: 20 kg}}\n"
    )

    cod = made.catch["cod"]
    assert (cod.code, cod.kept_kg, cod.share_percent) == ("COD", 100, 100)
    assert dict(cod.grades) == {"large": 60, "small": 20, "ungraded": 20}
    assert (made.catch["haddock"].kept_kg, made.catch["haddock"].undersize_kg) == (None, 5)
    assert (made.totals.kept_kg, made.totals.put_back_kg) == (100, 9)


def test_foul_tows_are_those_that_came_fast_were_damaged_or_lost_gear() -> None:
    made = figures(
        "tows:\n  - 1800-1900, fast\n  - {shot: 20:00, damage: wing torn}\n  - {shot: 22:00, gear lost: cod end}\n  - {shot: 23:50, fast: no}\n"
    )

    assert [tow.foul for tow in made.tows] == [True, True, True, False]
    assert made.totals.foul_tows == 3


def test_fish_is_on_ice_when_stowed_else_after_the_trips_median_else_the_fleets() -> None:
    made = figures("tows:\n  - {shot: 18:00, hauled: 19:00, stowed: 20:00}\n  - {shot: 20:00, hauled: 21:00}\n")
    alone = figures("tows:\n  - {shot: 18:00, hauled: 19:00}\n")

    assert [tow.on_ice for tow in made.tows] == [at("2026-03-04 20:00"), at("2026-03-04 22:00")]
    assert alone.tows[0].on_ice == at("2026-03-04 21:00")
    assert dict(alone.tows[0].basis)["on_ice"].startswith("assumed: 2 h")


def test_positions_give_distance_speed_rectangle_and_light() -> None:
    made = figures(
        "tows:\n  - {shot: 12:00, hauled: 13:00, from: 58 48.0N 15 04.0W, to: 58 51.0N 15 04.0W, depth: 90-110 fm, warp: 300 fm}\n"
    )
    (tow,) = made.tows

    assert tow.distance_by == "positions"
    assert tow.distance_nm == pytest.approx(3.0066, abs=1e-3)
    assert tow.speed_kn == pytest.approx(3.0066, abs=1e-3)
    assert (tow.rectangle, tow.light, tow.warp_to_depth) == ("46D4", "day", pytest.approx(3))
    assert tow.depth_m == pytest.approx(182.88)


LANDED = (
    "tows:\n  - {shot: 16:30, hauled: 18:00, from: 58 48.0N 15 04.0W, to: 58 50.0N 15 04.0W, catch: {cod: 100 kg}}\n"
    "turned for home: 18:30, 58 50.0N 15 04.0W\npassage:\n  - {at: 2026-03-05 00:00, position: 59 20.0N 013 00.0W}\n"
    "landed:\n  port: Port Kerrin\n  docked: 2026-03-05 06:30\n  started landing: 07:00\n  finished landing: 09:00\n"
    "  out-turn: {cod: 110 kg}\n  temperatures: {P1: 0.4 C, P2: 2.4 C}\n"
)


def test_a_landing_tells_steaming_passage_discharge_turnaround_and_temperatures() -> None:
    made = reckon_trip(trip(HEAD + LANDED), fleet(), Neighbours(next_sailed=at("2026-03-05 21:00")))
    landing = made.landing

    assert (landing.expected, landing.port, landing.docked) == (False, "Port Kerrin", at("2026-03-05 06:30"))
    assert (landing.steam_out_h, landing.steam_home_h, landing.passage_h) == (11, 12, 12)
    assert (landing.discharge_h, landing.discharge_kg_per_h, landing.turnaround_h) == (2, 55, 12)
    # Reference library: pyproj (PROJ) on WGS84.
    expected = (
        Geod(ellps="WGS84").line_length([-15 - 4 / 60, -13, -12 - 10 / 60], [58 + 50 / 60, 59 + 20 / 60, 59 + 40 / 60])
        / 1852
    )
    assert landing.passage_nm == pytest.approx(expected, abs=1e-6)
    assert [(pen, probe.within_limit) for pen, probe in landing.temperatures.items()] == [("P1", True), ("P2", False)]
    assert made.trip.state == "landed"
    assert made.trip.as_of == at("2026-03-05 06:30")


def test_two_landings_are_listed_and_the_last_describes_the_trip() -> None:
    made = figures(
        "landed:\n  - {port: Port Kerrin, docked: 2026-03-05 06:30}\n  - {port: Sulvik, docked: 2026-03-05 18:00}\n"
    )

    assert [landing.port for landing in made.landing.landings] == ["Port Kerrin", "Sulvik"]
    assert made.landing.port == "Sulvik"
    assert made.trip.as_of == at("2026-03-05 18:00")


@pytest.mark.parametrize(
    ("text", "next_sailed", "state"),
    [
        ("", None, "at sea"),
        ("turned for home: 2026-03-06 08:00\n", None, "homeward"),
        ("turned for home: 2026-03-06 08:00\n", "2026-03-08 08:00", "landing not logged"),
        ("landed: 2026-03-07 08:00\n", None, "landed"),
        ("landed: sometime, Port Kerrin\n", None, "landed"),
    ],
)
def test_the_state_is_as_the_log_and_the_next_one_tell(text: str, next_sailed: str | None, state: str) -> None:
    neighbours = Neighbours(next_sailed=at(next_sailed) if next_sailed else None)

    assert reckon_trip(trip(HEAD + text), fleet(), neighbours).trip.state == state


def test_what_was_logged_later_does_not_count() -> None:
    log = trip(
        HEAD
        + "tows:\n  - {shot: 18:00, hauled: 19:00, stowed: 20:30, catch: {cod: 100 kg}}\n  - {shot: 20:00, hauled: 21:00, catch: {cod: 50 kg}}\n"
        "  - {shot: 22:00, hauled: 23:00, catch: {cod: 50 kg}}\nturned for home: 23:30\n"
    )
    made = reckon_trip(log, fleet(), at=at("2026-03-04 20:15"))

    assert [tow.kept_kg for tow in made.tows] == [100, None]
    assert made.trip.state == "at sea"
    assert made.trip.last_word == at("2026-03-04 20:00")
    assert "tow 2: gear still down" in made.totals.incomplete


def test_json_has_every_key_under_its_name_and_is_plain() -> None:
    made = as_json(reckon_trip(trip(HEAD + LANDED), fleet()))

    assert json.loads(json.dumps(made, allow_nan=False)) == made
    for section, keys in (("trip", TRIP_KEYS), ("totals", TOTAL_KEYS), ("age", AGE_KEYS), ("landing", LANDING_KEYS)):
        part = made[section]
        assert isinstance(part, dict)
        assert set(keys) <= set(part)
    tows = made["tows"]
    assert isinstance(tows, list)
    assert set(TOW_KEYS) <= set(tows[0])
    assert {"catch", "problems", "basis"} <= set(made)
    catch = made["catch"]
    assert isinstance(catch, dict)
    of_species = {"code", "kept", "kept_kg", "put_back_kg", "undersize_kg", "live_kg", "grades", "share_percent"}
    assert set(catch["cod"]) == of_species


def test_problems_are_told_in_json() -> None:
    log, problems = read(HEAD + "tows:\n  - {shot: 18:00, dept: 98 fm}\n")
    assert log is not None

    made = as_json(reckon_trip(log, fleet(), problems=problems))

    told = made["problems"]
    assert isinstance(told, list)
    assert (told[0]["file"], told[0]["line"], told[0]["severity"], told[0]["code"]) == (
        "trip.yaml",
        4,
        "warning",
        "key-slip",
    )


def test_ids_tell_a_second_trip_of_the_day_apart_whatever_the_order() -> None:
    texts = ["vessel: Solan Bright\nsailed: 2026-03-04 05:30\n", "vessel: solan bright\nsailed: 2026-03-04 18:30\n"]
    logs = [trip(text) for text in texts]
    first, second = (log for log in logs)
    first, second = replace(first, file="a.yaml"), replace(second, file="b.yaml")

    assert neighbours_of((first, second)) == neighbours_of((second, first))
    ids = [made.figures.trip.id for made in reckon_trips((second, first), fleet())]
    assert ids == ["solan-bright-2026-03-04", "solan-bright-2026-03-04-2"]
    assert trip_id("Solan Bright", at("2026-03-04 05:30")) == ids[0]


def test_the_pace_of_a_trip_is_told() -> None:
    made = figures("tows:\n  - 1800-1900, cod 100 kg\n  - 1930-2030, cod 100 kg\n  - 2100-2200, cod 100 kg\n")

    # A tow about every hour and a half: common practice, no source.
    assert made.totals.mean_cycle_h == pytest.approx(1.5)
    assert made.totals.fishing_days == pytest.approx(4 / 24)
    assert made.totals.kept_kg_per_day == pytest.approx(1800)
    assert made.totals.tows_per_day == pytest.approx(18)


def test_without_an_out_turn_the_ports_usual_rate_is_assumed() -> None:
    other = fleet(FLEET.replace("at: 59 40.0N 012 10.0W", "at: 59 40.0N 012 10.0W\n    landing rate: 5 t/h"))
    # Landing at about five tonnes an hour: common practice, no source.
    made = reckon_trip(trip(HEAD + "landed: 2026-03-05 06:30, Port Kerrin\n", other), other)

    assert made.landing.discharge_kg_per_h == 5000
    assert dict(made.landing.basis)["discharge_kg_per_h"] == "assumed: the port's usual rate"


def test_each_trip_gets_the_problems_of_its_own_log() -> None:
    log, problems = read(HEAD + "tows:\n  - {shot: 18:00, dept: 98 fm}\n")
    assert log is not None

    own, other = (
        reckon_trips((replace(log, file=name),), fleet(), problems)[0] for name in ("trip.yaml", "other.yaml")
    )

    assert own.figures.problems == problems
    assert other.figures.problems == ()


def test_a_copy_of_a_log_is_no_later_trip() -> None:
    log = trip(HEAD)
    copies = [replace(log, file=name) for name in ("a.yaml", "b.yaml")]

    neighbours = neighbours_of(copies)

    assert [neighbours[name].next_sailed for name in ("a.yaml", "b.yaml")] == [None, None]
    assert neighbours["a.yaml"].next_id == "solan-bright-2026-03-04-2"


def test_when_she_next_sailed_is_when_the_next_log_says_it() -> None:
    first = replace(trip(HEAD), file="a.yaml")
    later = replace(trip(HEAD.replace("03-04", "03-12")), file="b.yaml")

    assert neighbours_of((later, first))["a.yaml"].next_sailed == at("2026-03-12 05:30")
    assert neighbours_of((later, first))["b.yaml"].previous_id == "solan-bright-2026-03-04"
