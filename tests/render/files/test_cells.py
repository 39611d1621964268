"""Cells of tables: numbers exact, moments with their offset, texts that no spreadsheet takes for a formula."""

import re
from datetime import datetime, timedelta, timezone
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.render.files.cells import Cell, guarded, text_of
from tests.render.files.data import NASTY

FORMULA = re.compile(r"[\s\x00-\x1f\x7f-\x9f\xa0\u200b-\u200f\u202a-\u202e\u2060\ufeff]*[=+\-@＝＋－＠]|[\t\r\n]")
"""CWE-1236 and its usual ways round: blanks, unseen signs and full-width signs before or in place of the sign."""


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (None, ""),
        ("", ""),
        (True, "true"),
        (False, "false"),
        (0, "0"),
        (-3, "-3"),
        (Decimal("100.50"), "100.50"),
        (Decimal("1E+3"), "1000"),
        (Decimal("0.1") + Decimal("0.2"), "0.3"),
        (Decimal("NaN"), ""),
        (0.1 + 0.2, "0.3"),
        (2 / 3, "0.6667"),
        (-0.00001, "0"),
        (1e21, "1000000000000000000000"),
        (100.0, "100"),
        (float("inf"), ""),
        (datetime(2026, 3, 4, 5, 30, 7, 9, tzinfo=timezone(timedelta(hours=1))), "2026-03-04T05:30:07+01:00"),
        ((), ""),
        (("=1", 'a"b'), '["=1", "a\\"b"]'),
        ("-1", "'-1"),
        ("a-1", "a-1"),
    ],
)
def test_a_cell_is_its_value_as_text(value: Cell, text: str) -> None:
    assert text_of(value) == text


def test_degrees_have_six_decimals() -> None:
    assert text_of(-15.1234567, 6) == "-15.123457"


@pytest.mark.parametrize("text", [text for text in NASTY if FORMULA.match(text)])
def test_a_formula_gets_an_apostrophe(text: str) -> None:
    assert guarded(text) == f"'{text}"


@pytest.mark.parametrize("text", ["", "cod", "7-8 baskets", "a=b", "(+1)", "“-”", "north–south", " cod", "5' 3\""])
def test_other_texts_stand_as_typed(text: str) -> None:
    assert guarded(text) == text


@given(st.one_of(st.text(), st.text(alphabet=" \t\r\n=+-@'＝＋－＠\ufeff\u200bab1")))
def test_no_text_is_a_formula_and_every_text_can_be_had_back(text: str) -> None:
    made = guarded(text)

    assert not FORMULA.match(made)
    assert made.removeprefix("'") == text
