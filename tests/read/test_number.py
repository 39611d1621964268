"""Numbers: ASCII digits, marks for thousands and decimals, and everything Python would take and we don't."""

import re
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.read.number import (
    CODES,
    FIGURE,
    exact,
    figure,
    is_blank,
    is_nothing,
    meant,
    near,
    parse_count,
    parse_number,
    parse_numbers,
    plain,
    quoted,
    tidied,
    too_long,
)
from logbook.read.said import Fault
from tests.read.values import clean, read_with, refused


@pytest.mark.parametrize("text", ["", " ", "-", " - ", "--", "~", "?", "??", "null", "NULL", "\u2013", "\u00a0"])
def test_what_is_not_written_is_blank(text: str) -> None:
    assert is_blank(text)


@pytest.mark.parametrize("text", ["0", "none", "no", "-1", "n/a", "? kg"])
def test_a_word_or_a_nought_is_not_blank(text: str) -> None:
    assert not is_blank(text)


@pytest.mark.parametrize("text", ["none", "None", " nil ", "0"])
def test_a_catch_of_nothing_is_said_in_three_ways(text: str) -> None:
    assert is_nothing(text)


@pytest.mark.parametrize("text", ["", "0 kg", "00", "nothing much"])
def test_other_words_do_not_say_that_there_was_nothing(text: str) -> None:
    assert not is_nothing(text)


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("12", "12"),
        ("0123", "123"),
        ("1.5", "1.5"),
        (".5", "0.5"),
        (",5", "0.5"),
        ("2,5", "2.5"),
        ("+2", "2"),
        ("-2", "-2"),
        ("\u22122", "-2"),
        ("1 200", "1200"),
        ("1\u00a0200", "1200"),
        ("1\u202f200", "1200"),
        ("1'200", "1200"),
        ("1\u2019200", "1200"),
        ("12 310 450", "12310450"),
        ("1 200,5", "1200.5"),
        ("0,200", "0.2"),
        ("1200,500", "1200.5"),
    ],
)
def test_a_number_is_read(text: str, number: str) -> None:
    assert clean(parse_number(text)) == Decimal(number)


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("1_000", "write 1000"),
        ("1e3", "write 1000"),
        ("1.5e+2", "write 150"),
        ("\uff11\uff12", "write 12"),
        ("\u0663", "write 3"),
        ("minus 2", "write -2"),
        ("½", "write 0.5"),
        ("1/2", "write 0.5"),
        ("2½", "write 2.5"),
        ("2 3/4", "write 2.75"),
    ],
)
def test_a_number_in_another_style_is_refused_with_the_form_to_type(text: str, hint: str) -> None:
    assert refused(parse_number(text)) == ("number-unreadable", hint)


@pytest.mark.parametrize("text", ["", "nan", "inf", "-inf", "1e309", "0x10", "²", "a", "1 20", "1..2", "--1", "1_0x"])
def test_what_is_no_number_is_refused_without_guessing(text: str) -> None:
    assert refused(parse_number(text))[0] in {"number-unreadable", "number-marks"}
    assert refused(parse_number(text))[1].startswith("write ")


@pytest.mark.parametrize("text", ["1234 567", "1.200.000", "1,20,3", "1,200,3", "1.2,3", "1 200.5.5"])
def test_marks_that_make_no_sound_number_are_refused(text: str) -> None:
    assert refused(parse_number(text))[0] == "number-marks"


def test_a_comma_that_may_mark_either_is_refused_with_both_forms() -> None:
    assert refused(parse_number("1,200")) == ("comma-ambiguous", "write 1200 or 1.2")


@pytest.mark.parametrize("text", ["1,200,000", "1,200.5"])
def test_a_comma_that_can_only_mark_thousands_is_noted(text: str) -> None:
    assert read_with(parse_number(text), "comma-thousands") == Decimal(text.replace(",", ""))


def test_five_thousand_digits_are_out_of_range_and_no_crash() -> None:
    assert refused(parse_number("9" * 5000))[0] == "out-of-range"
    assert refused(parse_count("9" * 5000))[0] == "out-of-range"
    assert too_long("9" * 16) is not None
    assert too_long("9" * 15) is None


def test_about_is_read_past_with_a_note() -> None:
    found: list[Fault] = []

    assert [exact(text, found) for text in ("~14", "abt 14", "about 14", "ca. 14", "approx. 14")] == ["14"] * 5
    assert [fault.code for fault in found] == ["approximate"] * 5
    assert exact("about noon", found) == "about noon"
    assert exact("~" + "9" * 100, found) == "~" + "9" * 100
    assert len(found) == 5


@pytest.mark.parametrize(("text", "count"), [("11", 11), ("0", 0), ("0123", 123), ("1 200", 1200), ("3.0", 3)])
def test_a_count_is_read(text: str, count: int) -> None:
    assert clean(parse_count(text)) == count


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("1.5", "count-unreadable"),
        ("-3", "out-of-range"),
        ("99999999999", "out-of-range"),
        ("1 000 000 001", "out-of-range"),
        ("11 hands", "number-unreadable"),
        ("1,200", "comma-ambiguous"),
    ],
)
def test_what_is_no_count_is_refused(text: str, code: str) -> None:
    assert refused(parse_count(text))[0] == code


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("12", (12,)),
        ("12-14", (12, 13, 14)),
        ("12, 14", (12, 14)),
        ("12 and 14-15", (12, 14, 15)),
        ("9\u201310", (9, 10)),
    ],
)
def test_a_list_of_numbers_is_counted_out(text: str, numbers: tuple[int, ...]) -> None:
    assert clean(parse_numbers(text)) == numbers


@pytest.mark.parametrize("text", ["", "x", "14-12", "1-99999", "12-14 x", "12,,14", "9" * 30])
def test_a_list_that_can_not_be_counted_out_is_refused(text: str) -> None:
    assert refused(parse_numbers(text))[0] == "count-unreadable"


def test_a_long_text_ends_in_a_mark_that_no_value_has() -> None:
    assert tidied("9" * 7000).endswith("\ufffd")
    assert len(tidied("9" * 7000)) == 6001


def test_quotes_are_short_and_fit_to_print() -> None:
    assert quoted(" a\x07b\u202e ") == "'a\ufffdb\ufffd'"
    assert len(quoted("x" * 500)) == 43


def test_plain_digits_have_no_exponent_and_no_idle_noughts() -> None:
    assert [plain(Decimal(n)) for n in ("1200", "1.50", "1E+3", "0.0", "100")] == ["1200", "1.5", "1000", "0", "100"]


def test_nothing_is_meant_by_a_text_that_is_sound_or_long() -> None:
    assert meant("12") == ""
    assert meant("1_0" * 30) == ""


def test_the_nearest_word_is_found_or_none() -> None:
    assert near("Baskts", ["basket", "baskets", "box"]) == "baskets"
    assert near("xyz", ["basket"]) == ""


@given(st.integers(0, 10**12), st.sampled_from([" ", "\u00a0", "\u202f", "'"]))
def test_groups_of_three_are_the_number_they_were_made_of(number: int, mark: str) -> None:
    said = parse_number(f"{number:,}".replace(",", mark))

    assert said.value == number if len(f"{number:,}") <= 15 else said.faults[0].code == "out-of-range"


@given(st.decimals(min_value=-99999, max_value=99999, places=4))
def test_a_decimal_is_read_back_exactly(number: Decimal) -> None:
    assert parse_number(f"{number:f}").value == number


@given(st.from_regex(re.compile(FIGURE), fullmatch=True), st.sampled_from(["kg", "t"]))
def test_every_figure_is_a_number_or_a_fault(typed: str, unit: str) -> None:
    found: list[Fault] = []

    number = figure(typed, found, unit=unit, thousands=unit == "kg")

    assert (number is None) == any(fault.severity == "error" for fault in found)
    assert {fault.code for fault in found} <= CODES
