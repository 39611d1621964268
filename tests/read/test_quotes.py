"""Quotes: where they close, and which backslashes mean something."""

import string

import pytest
import yaml

from logbook.read.quotes import joined_escapes, scan_quoted
from tests.read.trees import HEAD, LOST, kept, library, told


def closing(text: str, parent: int = -1) -> tuple[int, int] | None:
    """Return line and index behind the quote that closes, or None where none does."""
    inside = scan_quoted(text.split("\n"), 0, 0, parent)
    return (inside.line, inside.column) if inside.closed else None


def test_quotes_close_where_yaml_closes_them() -> None:
    assert closing("'it''s' x") == (0, 7)
    assert closing("'' x") == (0, 2)
    assert closing("'a\\' b") == (0, 4)
    assert closing('"a \\" b" c') == (0, 8)
    assert closing('"a \\\\" b"') == (0, 6)
    assert closing("'a\n\n  b' c", parent=0) == (2, 4)
    assert closing("'a\nb' c", parent=0) == (1, 2)
    assert closing('"a\\\n  b"', parent=0) == (1, 4)


def test_quotes_do_not_close_behind_a_line_that_looks_like_an_entry() -> None:
    assert closing("'a\nb: c'", parent=0) is None
    assert closing("'a\n- c'", parent=0) is None
    assert closing("'a\n  b: c'", parent=0) == (1, 7)
    assert closing("'a\n\n") is None


# YAML 1.1, 5.6, as PyYAML's own scanner has it: the reference for which letters mean something behind a backslash.
@pytest.mark.parametrize("sign", sorted(set(string.printable) - set("\n\r\x0b\x0c")))
def test_the_same_backslashes_mean_something_as_to_the_library(sign: str) -> None:
    text = f'"\\{sign}0041 0041"'
    try:
        library(text)
    except yaml.YAMLError:
        sound = False
    else:
        sound = True

    assert (scan_quoted([text], 0, 0, -1).faults == []) is sound


@pytest.mark.parametrize(
    "escape", ["\\x4", "\\xg1", "\\u123", "\\U0011ffff", "\\U123", "\\ud83d", "\\uDC1F", "\\U0000d83d"]
)
def test_a_letter_has_to_be_written_in_full(escape: str) -> None:
    assert told(f'{HEAD}remarks: "a {escape}"\n') == ["3:13 escape"]


def test_a_letter_of_two_halves_is_one_letter() -> None:
    # RFC 8259, 7: the example of a letter beyond the basic plane, U+1D11E
    assert joined_escapes('"\\uD834\\uDD1E"') == '"\U0001d11e"'
    assert kept('{"remarks": "\\ud834\\udd1e"}') == {"remarks": "\U0001d11e"}
    assert kept('{"a": "\\ud834", "b": "c"}') == {"a": LOST, "b": "c"}


def test_only_the_first_wrong_backslash_is_told() -> None:
    assert told(f'{HEAD}remarks: "\\q \\z"\n') == ["3:11 escape"]
    assert told(f'{HEAD}remarks: "\\q\n  \\z"\n') == ["3:11 escape"]
