"""Plain text for terminals and messages."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.render import shown
from logbook.render.text import bare, dash, numbers_of, table, tow_numbers


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (shown.kilograms_unit(Decimal(12310)), "12 310 kg"),
        (shown.celsius_unit(-1.8), "-1.8 °C"),
        ("tows 1\N{EN DASH}4", "tows 1-4"),
        ("a\N{NO-BREAK SPACE}b", "a b"),
        (shown.missing(), "not known"),
        (shown.not_known(), "not known"),
    ],
)
def test_what_pages_show_is_told_in_signs_that_every_terminal_has(text: str, expected: str) -> None:
    assert bare(text) == expected
    # Windows code page 1252, and 437 of the first terminals
    assert bare(text).encode("cp1252").decode("cp1252") == expected
    assert bare(text).encode("cp437").decode("cp437") == expected


def test_a_cell_without_a_value_is_a_dash() -> None:
    assert (dash(shown.missing()), dash("12")) == ("-", "12")


@pytest.mark.parametrize(
    ("numbers", "said"),
    [((), ""), ((4,), "4"), ((2, 3), "2-3"), ((12, 2, 3, 4, 4, 9), "2-4, 9, 12"), ((1, 3, 5), "1, 3, 5")],
)
def test_numbers_are_listed_as_a_person_does(numbers: tuple[int, ...], said: str) -> None:
    assert numbers_of(numbers) == said


def test_one_tow_or_several() -> None:
    assert tow_numbers((4,)) == "tow 4"
    assert tow_numbers((4, 5)) == "tows 4-5"


@given(st.sets(st.integers(1, 300)))
def test_numbers_listed_are_all_there_and_no_other(numbers: set[int]) -> None:
    listed: set[int] = set()
    for part in filter(None, numbers_of(numbers).split(", ")):
        first, _, last = part.partition("-")
        listed.update(range(int(first), int(last or first) + 1))

    assert listed == numbers


def test_columns_of_a_table_line_up() -> None:
    assert table([("Tow", "kg"), ("1", "1 200"), ("12", "")], "<>") == ["Tow     kg", "1    1 200", "12"]
    assert table([], "<>") == []
