"""Weights: number and unit, thousands and decimals, and what to type instead of the rest."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.quantity import Kilograms, Weight
from logbook.read.weight import common_weight, parse_weight
from tests.read.values import MEASURES, clean, read_with, refused


@pytest.mark.parametrize(
    ("text", "kilograms"),
    [
        ("40 kg", "40"),
        ("40kg", "40"),
        ("40 KG", "40"),
        ("40 kg.", "40"),
        ("+40 kg", "40"),
        ("12 310 kg", "12310"),
        ("12\u00a0310 kg", "12310"),
        ("1'200 kg", "1200"),
        ("1.5 t", "1500"),
        ("1,2 t", "1200"),
        ("1.200 t", "1200"),
        ("0,200 t", "200"),
        (".5 t", "500"),
        ("0,500 kg", "0.5"),
        ("12,5 kg", "12.5"),
        ("1 200,5 kg", "1200.5"),
        ("620 lb", "281.2272694"),
        ("10 st", "63.5029318"),
        ("2 cwt", "101.60469088"),
        ("14 baskets", "560"),
        ("14 Boxes", "630"),
        ("0 kg", "0"),
        ("0", "0"),
        ("none", "0"),
        ("nil", "0"),
    ],
)
def test_a_weight_is_read(text: str, kilograms: str) -> None:
    assert clean(parse_weight(text, MEASURES)).kilograms == Decimal(kilograms)


def test_a_weight_keeps_the_words_it_was_typed_in() -> None:
    weight = clean(parse_weight("14 Baskets", MEASURES, species="cod"))

    assert weight == Weight(kilograms=Kilograms(Decimal(588)), number=Decimal(14), unit="basket")


def test_a_unit_that_is_not_typed_is_the_fleets_where_it_has_one() -> None:
    assert clean(parse_weight("14", MEASURES, default_unit="basket")).kilograms == 560
    assert clean(parse_weight("0", MEASURES, default_unit="basket")).unit == "basket"
    assert clean(parse_weight("0", MEASURES, default_unit="pallet")).unit == "kg"
    assert refused(parse_weight("14", MEASURES)) == ("no-unit", "write 14 kg or 14 baskets, whichever is meant")
    assert refused(parse_weight("14", MEASURES, default_unit="pallet"))[0] == "no-unit"


@pytest.mark.parametrize(
    ("text", "code", "kilograms"),
    [
        ("1,200 kg", "comma-thousands", "1200"),
        ("1,200 lb", "comma-thousands", "544.310844"),
        ("1,200,000 kg", "comma-thousands", "1200000"),
        ("1,200.5 t", "comma-thousands", "1200500"),
        ("1.200 kg", "dot-decimal", "1.2"),
        ("41.250 lb", "dot-decimal", "18.7106852625"),
        ("~14 baskets", "approximate", "560"),
        ("abt 280 kg", "approximate", "280"),
    ],
)
def test_a_weight_is_read_by_the_rule_that_is_told(text: str, code: str, kilograms: str) -> None:
    assert read_with(parse_weight(text, MEASURES), code).kilograms == Decimal(kilograms)


@pytest.mark.parametrize(
    ("text", "code", "hint"),
    [
        ("1,200 t", "comma-ambiguous", "write 1200 t or 1.2 t"),
        ("1,200 baskets", "comma-ambiguous", "write 1200 baskets or 1.2 baskets"),
        ("1234 567 kg", "number-marks", "write 1234567 kg"),
        ("1.200.000 kg", "number-marks", "write the digits with one dot at most: 1200 or 1.2"),
        ("1_000 kg", "weight-unreadable", "write 1000 kg"),
        ("1e3 kg", "weight-unreadable", "write 1000 kg"),
        ("½ basket", "weight-unreadable", "write 0.5 basket"),
        ("2 1/2 baskets", "weight-unreadable", "write 2.5 baskets"),
        ("\uff11\uff12 kg", "weight-unreadable", "write 12 kg"),
        ("kg 40", "weight-unreadable", "write 40 kg"),
        ("14 baskts", "weight-unreadable", "write 14 baskets"),
        ("4-5 baskets", "weight-unreadable", "write one weight"),
        ("4 to 5 baskets", "weight-unreadable", "write one weight"),
        ("500 g", "weight-unreadable", "write it in kg"),
        ("24 tons", "weight-unreadable", "write t for tonnes of 1000 kg; a long ton is 20 cwt"),
        ("-40 kg", "weight-negative", "write 40 kg"),
        ("- 40 kg", "weight-negative", "write 40 kg"),
        ("99999999 kg", "weight-range", "look at the figure and its unit"),
        ("99 999 999 kg", "weight-range", "look at the figure and its unit"),
    ],
)
def test_a_weight_that_can_not_be_used_says_what_to_type(text: str, code: str, hint: str) -> None:
    assert refused(parse_weight(text, MEASURES)) == (code, hint)


@pytest.mark.parametrize(
    "text", ["", "x", "nan kg", "inf", "1e309 kg", "14 xyz", "14 baskets + 2 boxes", "1 20 kg", "10 st 4 lb"]
)
def test_what_is_no_weight_is_told_the_units(text: str) -> None:
    assert refused(parse_weight(text, MEASURES)) == (
        "weight-unreadable",
        "write a number and a unit: kg, t, lb, st, cwt, basket, box, kit",
    )


def test_a_range_of_numbers_without_a_word_after_is_told_as_one() -> None:
    assert refused(parse_weight("4-5", MEASURES))[1] == "write one weight"


def test_a_measure_without_a_weight_for_the_species_is_refused() -> None:
    code, hint = refused(parse_weight("3 kit", MEASURES, species="haddock"))

    assert code == "measure-without-weight"
    assert "kit: 40 kg" in hint
    assert refused(parse_weight("3 kits", MEASURES))[0] == "measure-without-weight"
    assert clean(parse_weight("3 kits", MEASURES, species="cod")).kilograms == Decimal("190.5")


@pytest.mark.parametrize("text", ["9" * 5000, "9" * 5000 + " kg", "kg " + "9" * 5000])
def test_five_thousand_digits_are_refused(text: str) -> None:
    code, hint = refused(parse_weight(text, MEASURES))

    assert code in {"out-of-range", "weight-unreadable"}
    assert len(hint) < 100


def test_the_common_form_leaves_everything_else_to_the_careful_one() -> None:
    assert common_weight("40 kg", MEASURES, None) is not None
    assert [common_weight(text, MEASURES, None) for text in ("1,2 t", "4 xyz", "3 kit", "9999999 t")] == [None] * 4


@given(st.decimals(min_value=0, max_value=9999, places=3), st.sampled_from(["kg", "t", "lb", "st", "cwt", "box"]))
def test_a_weight_is_read_back_exactly_whatever_form_it_takes(number: Decimal, unit: str) -> None:
    weight = parse_weight(f"{number} {unit}", MEASURES).value

    assert weight is not None
    assert weight.number == number
    assert weight.kilograms == number * (MEASURES.unit(unit) or 0)
