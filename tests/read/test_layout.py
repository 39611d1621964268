"""Tabs, drawn lines, fences, marks between documents, and blocks of text out of line."""

import pytest

from tests.read.trees import HEAD, LOST, kept, read, told, value

TOW = "tows:\n  - shot: 18:10\n    hauled: 19:40\n    catch:\n      cod: 3 boxes\n    pen: P1\ncrew: 4\n"


@pytest.mark.parametrize("width", [2, 4, 8])
def test_a_log_indented_with_tabs_is_read_as_if_with_spaces(width: int) -> None:
    deep = " " * width
    text = (
        f"tows:\n{deep}- day: 5 March\n{deep}- shot: 18:10\n{deep}  catch:\n{deep}{deep}{deep}cod: 3 boxes\ncrew: 4\n"
    )

    assert kept(HEAD + text.replace(deep, "\t")) == kept(HEAD + text)
    assert told(HEAD + text.replace(deep, "\t")) == ["4:1 tab-indent"]


def test_every_line_that_begins_with_a_tab_is_named_once() -> None:
    _, problems = read(HEAD + "tows:\n\t- shot: 18:10\n\n\t  # noted\n\t  hauled: 19:40\ncrew:\n\t- A. Fell\n")

    assert [problem.message for problem in problems] == ["lines 4, 7 begin with a tab", "line 9 begins with a tab"]
    assert {problem.hint for problem in problems} == {"indent with spaces only"}


def test_one_line_with_a_tab_finds_its_place_among_the_others() -> None:
    assert kept(HEAD + TOW.replace("    hauled", "\thauled")) == kept(HEAD + TOW)
    assert kept(HEAD + TOW.replace("      cod", "\tcod")) == kept(HEAD + TOW)


def test_a_dash_and_a_tab_are_read_as_the_editor_shows_them() -> None:
    assert kept(HEAD + "tows:\n\t-\tshot: 18:10\n\t\thauled: 19:40\n")["tows"] == [{"shot": "18:10", "hauled": "19:40"}]


def test_a_tab_that_may_belong_to_two_places_is_left_out_and_known() -> None:
    deep = "landed:\n    out-turn:\n        cod: 3 t\n\tport: X\n"

    assert kept(deep)["landed"] == {"out-turn": {"cod": "3 t", None: 1}}
    assert "not certain" in read(deep)[1][0].message
    assert kept("a:\n    b:\n        c:\n\tport: X\nd: e\n")["a"] == {"b": {"c": LOST}}
    assert kept("a:\n  - - b\n\t- c\nd: e\n")["a"] == [["b", LOST]]
    assert kept("a:\n    b: 1\n    c:\n        - d\n\te\n")["a"] == {"b": "1", "c": [LOST]}


def test_a_place_is_counted_in_characters_behind_a_tab_too() -> None:
    assert told("tows:\n\t- shot: *x\n") == ["2:1 tab-indent", "2:10 text-start"]
    assert told("tows:\n\t- [a, *x]\n") == ["2:1 tab-indent", "2:8 text-start"]
    assert told("a:\n\tskipper: A # x\n\tb: [#x]\n")[:2] == ["2:1 tab-indent", "2:13 comment-cuts-text"]


def test_any_other_tab_is_a_space() -> None:
    assert read("crew:\t4\nskipper:\tA.\tFell\t\n\t\n#\tx\nremarks: |\n  a\tb\n\t\n  c\n")[1] == ()
    assert kept("remarks: |\n  a\tb\n")["remarks"] == "a b\n"
    assert value("crew:\t4\n", "crew").place.column == 7
    assert kept('remarks: "a\n\tb"\ncrew: [A,\n\tB]\n') == {"remarks": "a b", "crew": ["A", "B"]}


def test_a_text_may_go_on_behind_a_tab() -> None:
    assert kept("remarks: one\n\ttwo\ncrew: 4\n") == {"remarks": "one two", "crew": "4"}
    assert told("remarks: one\n\ttwo\ncrew: 4\n") == ["2:1 tab-indent"]
    assert kept("a:\n  b: one\n\tc: two\n")["a"] == {"b": "one", "c": "two"}
    assert kept("a:\n          b: one\n\ttwo\nc: d\n")["c"] == "d"


def test_tabs_before_a_text_in_a_block_are_told() -> None:
    for tabs in ("\t", "\t\t"):
        assert kept(f"a:\n  remarks: |\n{tabs}one\n{tabs} two\n  crew: 4\n")["a"] == {
            "remarks": "one\n two\n",
            "crew": "4",
        }
    assert kept("remarks: |\n  one\n\ttwo\n")["remarks"] == "one\ntwo\n"
    assert kept("remarks: |\n       one\n\ttwo\n")["remarks"] == "one\n two\n"
    assert kept("remarks: |\n                one\n\ttwo\n")["remarks"] == "one\ntwo\n"


def test_a_block_with_tabs_goes_on_over_blank_lines_and_ends_with_the_next_key() -> None:
    text = "a:\n    remarks: |\n\t\tone\n\n\t\ttwo\tthree\n\tcrew: 4\n    pen: P1\n"

    assert kept(text)["a"] == {"remarks": "one\n\ntwo three\n", "crew": "4", "pen": "P1"}
    assert told(text) == ["3:1 tab-indent", "6:1 tab-indent"]
    assert kept("crew; 4\nremarks: |\n  one\ttwo\n")["remarks"] == "one two\n"


def test_a_tab_that_ends_a_block_begins_something_else() -> None:
    text = "a:\n    b:\n        remarks: |\n            one\n\tc: 4\nd: 5\n"

    assert kept(text)["d"] == "5"
    assert "5:1 tab-indent" in told(text)


def test_lines_of_a_block_are_lined_up() -> None:
    assert kept("remarks: |\n    one\n  two\n\n    three\n# four\ncrew: 4\n") == {
        "remarks": "one\ntwo\n\nthree\n",
        "crew": "4",
    }
    assert told("remarks: |2\n  one\n two\n") == ["3:2 text-indent"]
    assert kept("remarks: >-\n    one\n   two\n")["remarks"] == "one two"
    assert kept("a:\n  - |\n      one\n     two\n  - b\n")["a"] == ["one\ntwo\n", "b"]


def test_a_drawn_line_is_left_out() -> None:
    for line in ("----", "=====", "*****", "____", "--", ".."):
        assert told(f"{HEAD}{line}\ncrew: 4\n") == ["3:1 rule-line"]
        assert kept(f"{HEAD}{line}\ncrew: 4\n")["crew"] == "4"
    assert told(f"{HEAD}tows:\n  - 1810-1940\n  -----\n  - 2010-2140\n") == ["5:3 rule-line"]


def test_a_drawn_line_within_a_text_is_text() -> None:
    assert read("remarks: |\n  one\n  ---\n  ```\n  two\ncrew: 4\n")[1] == ()


def test_fences_of_a_message_are_named_together() -> None:
    _, problems = read(f"```yaml\n{HEAD}```\n")

    assert [problem.hint for problem in problems] == ["take lines 1, 4 out"]
    assert read(f"{HEAD}```\n")[1][0].hint == "take line 3 out"


def test_marks_of_joined_versions_keep_both() -> None:
    text = f"{HEAD}<<<<<<< a\ncrew: 4\n||||||| b\n=======\ncrew: 5\n>>>>>>> c\n=======\ntrip: 1\n"

    assert told(text) == ["3:1 merge-mark", "9:1 rule-line"]
    assert [key.value for key, _ in read(text)[0].entries[2:]] == ["crew", "crew", "trip"]  # type: ignore[union-attr]


def test_a_second_log_is_set_aside() -> None:
    text = f"---\n{HEAD}crew: 4\n--- # another\n{HEAD}crew: 5\n"

    assert kept(text) == kept(f"{HEAD}crew: 4\n")
    assert read(text)[1][0].message == "a second log begins here; it is not read"


def test_three_dashes_within_a_log_are_only_in_the_way() -> None:
    assert kept(f"{HEAD}---\ncrew: 4\n") == kept(f"{HEAD}crew: 4\n")
    assert told(f"{HEAD}---\n# end\n") == []
    assert told(f"# begin\n---\n{HEAD}---\n") == []


def test_three_dots_are_only_in_the_way() -> None:
    assert kept(f"{HEAD}...\ncrew: 4\n") == kept(f"{HEAD}crew: 4\n")
    assert told(f"{HEAD}...\n\n# end\n") == []


def test_a_first_line_out_of_line_costs_itself() -> None:
    assert kept("  a: 1\nb: 2\nc: 3\n") == {"a": LOST, "b": "2", "c": "3"}
    assert kept("a: 1\n  b: 2\n  c: 3\n") == {"a": LOST, "b": "2", "c": "3"}
    assert kept("a: 1\n  b: 2\n") == {"a": "1", "b": LOST}
    assert kept("  a: 1\n  c: 3\n  d: 4\nb: 2\n") == {"a": "1", "c": "3", "d": "4", "b": LOST}


def test_a_log_that_is_indented_as_a_whole_is_read() -> None:
    assert kept("  vessel: Petrel\n  crew; 4\n  tows:\n  - shot: 18:10\n") == {
        "vessel": "Petrel",
        "crew": LOST,
        "tows": [{"shot": "18:10"}],
    }
