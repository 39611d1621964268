"""Money: sums, prices and lots, in the one currency of the fleet."""

from decimal import Decimal

import pytest

from logbook.model.quantity import Price, Weight
from logbook.read.money import parse_lot, parse_money, parse_price
from logbook.read.said import Said
from tests.read.values import MEASURES, clean, read_with, refused


def price(text: str, currency: str | None = "KRC") -> Said[Price]:
    return parse_price(text, MEASURES, species="haddock", currency=currency)


def lot(text: str) -> Said[tuple[Weight, Price]]:
    return parse_lot(text, MEASURES, species="haddock", default_unit=None, currency="KRC")


@pytest.mark.parametrize(
    ("text", "money"),
    [
        ("1200", "1200"),
        ("12.50", "12.50"),
        ("12,50", "12.5"),
        ("1 234.50", "1234.5"),
        ("KRC 1200", "1200"),
        ("1200 krc", "1200"),
        ("1200KRC", "1200"),
        ("KRC. 1200", "1200"),
        ("0", "0"),
    ],
)
def test_a_sum_is_read_with_or_without_the_currency(text: str, money: str) -> None:
    assert clean(parse_money(text, "KRC")) == Decimal(money)


def test_a_currency_may_be_a_sign() -> None:
    assert [clean(parse_money(text, "£")) for text in ("£12", "12 £", "12")] == [12, 12, 12]


@pytest.mark.parametrize(("text", "code"), [("1,234.50", "comma-thousands"), ("1.200", "dot-decimal")])
def test_a_sum_is_read_by_the_rule_that_is_told(text: str, code: str) -> None:
    assert read_with(parse_money(text, "KRC"), code) == Decimal(text.replace(",", ""))


@pytest.mark.parametrize(
    ("text", "code", "hint"),
    [
        ("1,200", "comma-ambiguous", "write 1200 or 1.2"),
        ("-1200", "money-negative", "leave out the minus"),
        ("EUR 12", "currency-other", "write the sum in KRC"),
        ("12 €", "currency-other", "write the sum in KRC"),
        ("1e3", "money-unreadable", "write 1000"),
        ("abc", "money-unreadable", "write a number, as 1200 or 12.50"),
        ("", "money-unreadable", "write a number, as 1200 or 12.50"),
        ("99999999999", "money-unreadable", "look at the figure"),
        ("9" * 5000, "out-of-range", "write the figure as it was read off"),
    ],
)
def test_what_is_no_sum_is_refused(text: str, code: str, hint: str) -> None:
    assert refused(parse_money(text, "KRC")) == (code, hint)


def test_a_fleet_without_a_currency_takes_bare_numbers_only() -> None:
    assert clean(parse_money("12", None)) == 12
    assert refused(parse_money("£12", None)) == ("currency-other", "leave the currency out, or name it there")


@pytest.mark.parametrize(
    ("text", "money", "per", "kilograms"),
    [
        ("3.90/kg", "3.90", "kg", 1),
        ("3,90/kg", "3.90", "kg", 1),
        ("3.905/kg", "3.905", "kg", 1),
        ("3.90 / KG", "3.90", "kg", 1),
        ("3.90 per kg", "3.90", "kg", 1),
        ("140/box", "140", "box", 45),
        ("1 200/t", "1200", "t", 1000),
        ("KRC 3.90/kg", "3.90", "kg", 1),
        ("3.90 KRC/kg", "3.90", "kg", 1),
        ("3.90/kg KRC", "3.90", "kg", 1),
    ],
)
def test_a_price_is_money_for_a_weight(text: str, money: str, per: str, kilograms: int) -> None:
    read = clean(price(text))

    assert (read.money, read.per, read.per_kg) == (Decimal(money), per, Decimal(kilograms))


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("3.90", "no-unit"),
        ("x", "price-unreadable"),
        ("x/kg", "money-unreadable"),
        ("/kg", "money-unreadable"),
        ("3.90/", "price-unreadable"),
        ("3.90/pallet", "price-unreadable"),
        ("-3/kg", "money-negative"),
        ("EUR 3.90/kg", "currency-other"),
        ("1,200/t", "comma-ambiguous"),
        ("140/kit", "measure-without-weight"),
    ],
)
def test_what_is_no_price_is_refused(text: str, code: str) -> None:
    assert refused(price(text))[0] == code


@pytest.mark.parametrize(
    ("text", "kilograms", "money"),
    [
        ("2100 kg 3.90/kg", 2100, "3.90"),
        ("2100kg 3,90/kg", 2100, "3.90"),
        ("2100 kg at 3.90/kg", 2100, "3.90"),
        ("2100 kg @ 3.90/kg", 2100, "3.90"),
        ("2100 kg@3.90/kg", 2100, "3.90"),
        ("2100 kg KRC 3.90/kg", 2100, "3.90"),
        ("2100 kg 3.90 KRC/kg", 2100, "3.90"),
        ("2 100 kg 1 200/t", 2100, "1200"),
        ("42 boxes 140/box", 1890, "140"),
    ],
)
def test_a_lot_is_a_weight_and_its_price(text: str, kilograms: int, money: str) -> None:
    weight, of = clean(lot(text))

    assert weight.kilograms == kilograms
    assert of.money == Decimal(money)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("2100 kg", "lot-unreadable"),
        ("2100 3.90/kg", "lot-unreadable"),
        ("3.90/kg", "lot-unreadable"),
        ("2100 xyz 3.90/kg", "weight-unreadable"),
        ("2100 kg 3.90/pallet", "price-unreadable"),
    ],
)
def test_what_is_no_lot_is_refused(text: str, code: str) -> None:
    assert refused(lot(text))[0] == code
