"""Turned for home, landings in every form, prices and the settlement."""

from datetime import UTC, datetime

import pytest

from logbook.model.trip import Trip
from tests.read.logs import codes, read, trip

HEAD = "vessel: Solan Bright\nsailed: 2026-03-04 05:30, Port Kerrin\ntows:\n  - {shot: 18:10, hauled: 19:40}\n"


def at(text: str) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def of(text: str) -> Trip:
    return trip(HEAD + text)


def test_turned_for_home_may_name_a_position_a_ground_or_neither() -> None:
    by_position = of("turned for home: 20:15, 58 31.0N 015 40.0W\n").turned
    by_ground = of("turned for home: 20:15, The Saddle\n").turned
    bare = of("turned for home: 20:15\n").turned

    assert by_position is not None
    assert by_position.position is not None
    assert by_ground is not None
    assert by_ground.ground == "The Saddle"
    assert bare is not None
    assert (bare.at, bare.position, bare.ground) == (at("2026-03-04 20:15"), None, None)


@pytest.mark.parametrize("typed", ["2026-03-05 07:15, port kerrin", "[2026-03-05 07:15, port kerrin]"])
def test_a_landing_in_short_is_a_time_and_a_port(typed: str) -> None:
    (landing,) = of(f"landed: {typed}\n").landings

    assert (landing.docked, landing.port) == (at("2026-03-05 07:15"), "Port Kerrin")


def test_a_log_without_landed_has_no_landing_and_an_empty_one_neither() -> None:
    assert of("").landings == ()
    assert of("landed:\n").landings == ()


def test_two_landings_follow_each_other() -> None:
    first, second = of(
        "landed:\n  - {port: Port Kerrin, docked: 07:15, started landing: 08:00, finished landing: 12:00}\n"
        "  - {port: Sula Haven, docked: 18:00}\n"
    ).landings

    assert first.finished == at("2026-03-05 12:00")
    assert (second.port, second.docked) == ("Sula Haven", at("2026-03-05 18:00"))


def test_everyday_words_for_started_and_finished_are_the_same_keys() -> None:
    (landing,) = of("landed: {docked: 07:15, discharging: 08:00, discharged: 12:00}\n").landings

    assert (landing.started, landing.finished) == (at("2026-03-05 08:00"), at("2026-03-05 12:00"))


def test_an_out_turn_keeps_species_grades_pens_temperatures_and_quality() -> None:
    (landing,) = of(
        "landed:\n  docked: 07:15\n  out-turn:\n    cod: {large: 4120 kg, medium: 8740 kg}\n    haddock: 12 310 kg\n"
        "  pens: {P1: 2310 kg}\n  temperatures: {p1: 0.4 C, S1: 1.1}\n  quality: {cod: A, haddock: E}\n"
    ).landings

    assert [(o.species, o.grade, str(o.weight.kilograms)) for o in landing.out_turn if o.weight] == [
        ("cod", "large", "4120"),
        ("cod", "medium", "8740"),
        ("haddock", None, "12310"),
    ]
    assert landing.temperatures == (("P1", 0.4), ("S1", 1.1))
    assert landing.quality == (("cod", "A"), ("haddock", "E"))
    assert [(pen, str(weight.kilograms)) for pen, weight in landing.pens] == [("P1", "2310")]


def test_prices_may_be_single_by_grade_or_by_lot() -> None:
    (landing,) = of(
        "landed:\n  docked: 07:15\n  prices:\n    cod: {large: [2100 kg 3.90/kg, 2020 kg 3.75/kg], medium: 3.20/kg}\n"
        "    haddock: 140/box\n    ling: 600 kg 1.10/kg\n    saithe: KRC 1.50/kg\n"
    ).landings

    told = [
        (p.species, p.grade, str(p.weight.kilograms) if p.weight else None, str(p.price.money), p.price.per)
        for p in landing.prices
    ]
    assert told == [
        ("cod", "large", "2100", "3.90", "kg"),
        ("cod", "large", "2020", "3.75", "kg"),
        ("cod", "medium", None, "3.20", "kg"),
        ("haddock", None, None, "140", "box"),
        ("ling", None, "600", "1.10", "kg"),
        ("saithe", None, None, "1.50", "kg"),
    ]


def test_a_settlement_has_expenses_the_boats_part_and_shares() -> None:
    made = of(
        "settlement: {expenses: {fuel: 5200, ice: 900 KRC}, boat's share: 40 %, shares: {skipper: 1.5, deck: 1}}\n"
    ).settlement

    assert made is not None
    assert [(name, str(money)) for name, money in made.expenses] == [("fuel", "5200"), ("ice", "900")]
    assert str(made.boat_share) == "40"
    assert [(name, str(number)) for name, number in made.shares] == [("skipper", "1.5"), ("deck", "1")]


def test_what_cannot_be_read_of_a_landing_leaves_the_rest() -> None:
    made, problems = read(
        HEAD
        + "landed:\n  docked: sometime\n  port: Port Kerrin\n  out-turn: {cod: 12 pounds of it}\n  prices: {cod: dear}\n"
    )

    assert made is not None
    (landing,) = made.landings
    assert landing.docked is None
    assert landing.port == "Port Kerrin"
    assert landing.out_turn[0].weight is None
    assert {problem.severity for problem in problems} == {"error"}


@pytest.mark.parametrize(
    "text", ["landed: [[a, b]]\n", "settlement: soon\n", "landed:\n  - [x]\n", "watches: none of that\n"]
)
def test_a_wrong_shape_is_a_problem_and_never_a_crash(text: str) -> None:
    made, problems = read(HEAD + text)

    assert made is not None
    assert codes(problems)
