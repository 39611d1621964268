"""Sentences for what is wrong, and the line as it should be."""

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from logbook.read.explain import is_plain, of_yaml, quoted, ranges, shown, written
from tests.read.trees import library


@given(
    st.text(st.characters(codec="utf-8", exclude_categories=("C", "Zl", "Zp")), min_size=1, max_size=30).map(str.strip)
)
def test_a_text_in_quotes_is_read_as_it_was_typed(text: str) -> None:
    assert library(f"a: {quoted(text)}") == {"a": text}


@given(st.text(st.sampled_from("ab: #'\"-?[]{},&*!|>%@`~="), min_size=1, max_size=12))
def test_a_text_that_is_called_plain_needs_no_quotes(text: str) -> None:
    if is_plain(text):
        assert library(f"a: {text}") == {"a": text}


@pytest.mark.parametrize("text", ["", " a", "*a", "a: b", "a #b", "a:", "- a", "'a"])
def test_a_text_that_needs_quotes_is_not_called_plain(text: str) -> None:
    assert not is_plain(text)


def test_quotes_are_those_that_change_least() -> None:
    assert quoted("*a") == "'*a'"
    assert quoted("'twas") == '"\'twas"'
    assert quoted('\'a "b"') == "'''a \"b\"'"
    assert quoted("'a\\") == "'''a\\'"


def test_long_texts_are_cut_short() -> None:
    assert shown(" a ") == "a"
    assert shown("a" * 70) == "a" * 60 + " …"
    assert written("remarks: ", "x" * 90) == f"write `remarks: {'x' * 90}`"
    assert written("remarks: ", "x" * 92) == "put the whole text in single quotes"


def test_lines_are_listed_as_people_list_them() -> None:
    assert ranges([5]) == "5"
    assert ranges([5, 6, 7, 9, 11, 12]) == "5-7, 9, 11-12"


def test_what_yaml_says_is_placed_where_something_stands() -> None:
    lines = ["a: b", "", "c"]

    def at(line: int, column: int) -> yaml.Mark:
        return yaml.Mark("f", 0, line, column, None, 0)

    assert of_yaml(yaml.MarkedYAMLError(problem="x", problem_mark=at(2, 0)), lines)[:2] == (3, 1)
    assert of_yaml(yaml.MarkedYAMLError(problem="x", problem_mark=at(1, 3)), lines)[:2] == (1, 1)
    assert of_yaml(yaml.MarkedYAMLError(problem="x", problem_mark=at(7, 3)), lines)[:2] == (3, 4)
    assert of_yaml(yaml.MarkedYAMLError("a flow node", at(0, 3), "x", at(2, 0)), lines)[:2] == (1, 4)
    assert of_yaml(yaml.MarkedYAMLError("a block node", at(0, 3), "x", at(2, 0)), lines)[:2] == (3, 1)
    assert of_yaml(yaml.MarkedYAMLError("a node", at(0, 3), "x"), lines)[:2] == (1, 4)
    line, column, why = of_yaml(yaml.YAMLError("x"), lines)
    assert (line, column, why.code, why.message) == (1, 1, "line-unreadable", "YAML can't read 'a: b'")
