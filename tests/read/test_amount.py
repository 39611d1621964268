"""Amounts of fish: counts, weights and states, in any order that people type them."""

import pytest

from logbook.model.species import State
from logbook.read.amount import Amounted, parse_amount
from logbook.read.said import Said
from tests.read.values import MEASURES, clean, read_with, refused


def amount(text: str, default_unit: str | None = None) -> Said[Amounted]:
    return parse_amount(text, MEASURES, species="haddock", default_unit=default_unit)


def parts(read: Amounted) -> tuple[int | None, float | None, str | None]:
    return read.count, float(read.weight.kilograms) if read.weight else None, read.state


@pytest.mark.parametrize(
    ("text", "count", "kilograms", "state"),
    [
        ("14 baskets", None, "560", None),
        ("1,2 t", None, "1200", None),
        ("2 fish 41 kg", 2, "41", None),
        ("2 fish, 41 kg", 2, "41", None),
        ("2fish 41kg", 2, "41", None),
        ("41 kg 2 fish", 2, "41", None),
        ("41 kg, 2 fish", 2, "41", None),
        ("41 kg (2 fish)", 2, "41", None),
        ("1 fish", 1, None, None),
        ("1 200 fish", 1200, None, None),
        ("0 fish", 0, None, None),
        ("620 lb whole", None, "281.2272694", "whole"),
        ("620 lb (whole)", None, "281.2272694", "whole"),
        ("14 baskets, gutted", None, "560", "gutted"),
        ("14 baskets Gutted and Headed", None, "560", "gutted and headed"),
        ("14 baskets headed and gutted", None, "560", "gutted and headed"),
        ("14 baskets headed", None, "560", "headed"),
        ("1,2 t wings", None, "1200", "wings"),
        ("3 boxes tails", None, "135", "tails"),
        ("3 boxes fillets", None, "135", "fillets"),
        ("3 boxes round", None, "135", "whole"),
        ("2 fish 41 kg gutted", 2, "41", "gutted"),
        ("41 kg 2 fish gutted", 2, "41", "gutted"),
        ("2 fish whole", 2, None, "whole"),
        ("none", None, "0", None),
        ("0", None, "0", None),
    ],
)
def test_an_amount_is_read(text: str, count: int | None, kilograms: str | None, state: str | None) -> None:
    expected = None if kilograms is None else float(kilograms)

    assert parts(clean(amount(text))) == (count, expected, state)


def test_every_state_is_read_by_its_own_name() -> None:
    assert [clean(amount(f"3 kg {state}")).state for state in State] == list(State)


def test_the_fleets_unit_stands_where_none_is_typed() -> None:
    assert parts(clean(amount("14", "basket"))) == (None, 560, None)
    assert parts(clean(amount("14 whole", "basket"))) == (None, 560, "whole")
    assert refused(amount("14 whole")) == ("no-unit", "write 14 kg or 14 baskets, whichever is meant")


@pytest.mark.parametrize(
    ("text", "state"),
    [
        ("14 baskets guted", "gutted"),
        ("14 baskets (filets)", "fillets"),
        ("14 baskets big ones", None),
        ("14 baskets of the very best that were seen", None),
    ],
)
def test_a_state_nobody_knows_is_told_and_the_weight_is_kept(text: str, state: str | None) -> None:
    assert parts(read_with(amount(text), "state-unknown")) == (None, 560, state)


def test_a_slip_in_a_state_is_seen_without_a_unit_or_weight_too() -> None:
    assert parts(read_with(amount("14 guted", "basket"), "state-unknown")) == (None, 560, "gutted")
    assert parts(read_with(amount("2 fish guted"), "state-unknown")) == (2, None, "gutted")


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("2.5 fish", "fish-count"),
        ("2,500 fish", "fish-count"),
        ("9999999 fish", "fish-count"),
        ("fish", "weight-unreadable"),
        ("whole", "weight-unreadable"),
        ("14 baskets 280 kg", "weight-unreadable"),
        ("14 baskets 3", "weight-unreadable"),
        ("14 baskts", "weight-unreadable"),
        ("14 xyz", "weight-unreadable"),
        ("2 fish 41", "no-unit"),
        ("-3 kg", "weight-negative"),
        ("", "weight-unreadable"),
    ],
)
def test_an_amount_that_can_not_be_used_is_refused(text: str, code: str) -> None:
    assert refused(amount(text))[0] == code


def test_about_is_noted_once() -> None:
    assert parts(read_with(amount("~14 baskets"), "approximate")) == (None, 560, None)
    assert parts(read_with(amount("about 2 fish"), "approximate")) == (2, None, None)
