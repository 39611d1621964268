"""What YAML takes in silence: comments that cut, escapes that make control characters, lines that swallow lines."""

import pytest

from tests.read.trees import HEAD, LOST, kept, read, told


def test_a_comment_that_cuts_a_text_short_is_told_where_it_begins() -> None:
    assert told("remarks: lost cod-end # 2 at the rock\n") == ["1:23 comment-cuts-text"]
    assert told("remarks: 'lost' # 2\n") == ["1:17 comment-cuts-text"]
    assert told("remarks: # all\n") == ["1:10 comment-cuts-text"]
    assert told("remarks: one\n  two # three\n") == ["2:7 comment-cuts-text"]
    assert told("crew: [A, B # C\n]\n") == ["1:13 comment-cuts-text"]


def test_an_ordinary_comment_is_not() -> None:
    assert told("depth: 240 m  # by sounder\nsailed: 2026-03-04 05:30 # UTC\n") == []
    assert told("skipper: net#2\n# x\nremarks: |\n  text # 3\n") == []
    assert told("catch: {cod: 3 boxes} # by eye\ntows: # none\n") == []
    assert told("tows:\n  - 1810-1940, cod 9 baskets # by eye\n  - 2010-2140, 90 fm # torn\n") == []


def test_words_at_the_end_of_a_tow_on_one_line_are_not_cut_in_silence() -> None:
    assert told("tows:\n  - 1810-1940, wing torn # badly\n") == ["2:26 comment-cuts-text"]


@pytest.mark.parametrize("text", ["'a'#b", '"a"#b', "[a]#b", "{a: b}#c", "|#", "|-#x\n  y"])
def test_no_comment_begins_right_behind_something(text: str) -> None:
    assert kept(f"{HEAD}trip: {text}\ncrew: 4\n") == {**kept(HEAD), "trip": LOST, "crew": "4"}


def test_escapes_that_make_control_characters_are_told() -> None:
    assert told('remarks: "C:\\new\\trips"\n') == ["1:10 escape-control"]
    assert kept('remarks: "C:\\new\\trips"\n') == {"remarks": "C:\new rips"}
    assert kept('remarks: "a\\0b\\ac\\e[31mred\\x9f\\u2028"\n') == {"remarks": "a b c [31mred \u2028"}
    assert told('remarks: "a\\nb"\n') == ["1:10 escape-control"]


def test_line_ends_that_were_meant_are_not() -> None:
    assert told('remarks: "one\n\n  two"\n') == []
    assert told('{"remarks": "one\\ntwo"}') == []
    assert told('remarks: "a \\"b\\" \\\\ \\u00e5"\n') == []


def test_a_value_over_lines_is_told_unless_it_is_remarks() -> None:
    assert told("depth: 240 m\n  by sounder\n") == ["1:8 value-over-lines"]
    assert read("depth: 240 m\n  by sounder\n")[1][0].message == "'depth' runs over 2 lines: '240 m by sounder'"
    assert told("Remarks: one\n  two\nremark: three\n  four\n") == []
    assert told("crew: [A.\n  Fell]\n") == []
    assert told('depth: "240\n  m"\nremarks: >\n  one\n  two\n') == []
    assert [str(problem.severity) for problem in read("tows:\n  - 1810-1940,\n    cod 3 boxes\n")[1]] == ["note"]


def test_a_line_that_swallows_an_item_is_seen() -> None:
    assert kept("tows:\n  - 1810-1940\n    - 2010-2140\n") == {"tows": ["1810-1940", LOST]}
    assert kept("depth: 90 fm\n  - 3\ncrew: 4\n") == {"depth": "90 fm", "crew": "4", None: 1}
    assert kept("tows:\n  - 1810-1940, cod\n    2010-2140, ling\n  - 2210-2340\n") == {
        "tows": ["1810-1940, cod", LOST, "2210-2340"]
    }
    assert kept("remarks: mend\n  - net\n  - oil\n") == {"remarks": "mend - net - oil"}


def test_quotes_and_brackets_that_swallow_lines_are_seen() -> None:
    assert kept("a: 'x\nb: y'\nc: 4\n") == {"a": LOST, "b": "y'", "c": "4"}
    assert kept("a: [x\nb: y]\nc: 4\n") == {"a": LOST, "b": "y]", "c": "4"}
    assert kept("a:\n  - 'x\n  - y'\nc: 4\n") == {"a": [LOST, "y'"], "c": "4"}
    assert kept("a:\n  - {b: 'x\n     y'}\n  - [c,\n  d]\n  - |\n   e\n  - 'f\n   g'\n")["a"] == [
        {"b": "x y"},
        ["c", "d"],
        "e\n",
        "f g",
    ]


def test_keys_that_are_no_words_are_lost() -> None:
    assert kept("? [a]\n: b\nc: d\n") == {"c": "d", None: 1}
    assert kept("{[a]: b, c: d}\n") == {"c": "d", None: 1}
    assert kept("{'': b, c: d}\n") == {"c": "d", None: 1}
    assert kept("<<: b\nc: d\n") == {"c": "d", None: 1}
    assert kept("'<<': b\nc: d\n") == {"<<": "b", "c": "d"}
    assert kept("? a\n: b\n? c\n") is None


def test_a_key_inside_brackets_wants_a_value() -> None:
    assert kept("catch: {cod, ling: 3 boxes}\n") == {"catch": {"cod": LOST, "ling": "3 boxes"}}
    assert kept("catch: {cod: , 'ling': ''}\n") == {"catch": {"cod": LOST, "ling": ""}}
    assert told("catch: {cod: , 'ling': ''}\n") == ["1:9 key-no-value"]
    assert kept("catch: {200, ling: 3 boxes}\n") == {"catch": {"200": LOST, "ling": "3 boxes"}}


def test_a_comma_in_a_number_spoils_the_number() -> None:
    text = "catch: {cod: 1,200, haddock: {large: 3,5 t}}\n"

    assert told(text) == ["1:16 comma-in-brackets", "1:40 comma-in-brackets"]
    assert kept(text) == {"catch": {"cod": LOST, None: 1, "haddock": {"large": LOST, None: 1}}}


def test_dashes_and_signs_that_yaml_takes_for_keys_and_texts_are_seen() -> None:
    assert told("-shot: 18:10\n") == ["1:1 no-space-after-dash"]
    assert told("catch:\n  cod=3 boxes\n") == ["2:6 no-colon"]
    assert told("catch:\n  cod：3 boxes\n") == ["2:6 colon-odd"]
    assert told("tows:\n  -1810-1940\n") == ["2:3 no-space-after-dash"]
    assert told("tows:\n  – 1810-1940\n") == ["2:3 dash-odd"]
    assert told("tows:\n  - 1810-1940, note: x\n") == ["2:20 colon-in-text"]
    assert told("catch:\n  see note at 18:10\nremarks:\n  a=b\n") == []
