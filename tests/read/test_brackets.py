"""What stands in brackets: where it ends, what is wrong, and what of it is spoilt."""

import pytest

from logbook.read.brackets import MAX_FAULTS, scan_brackets
from tests.read.trees import HEAD, LOST, kept, told


def scanned(text: str, parent: int = -1) -> tuple[int, int, list[tuple[int, int, str, bool]]]:
    """Return where brackets end, and faults as line, column, code and whether they spoil the whole."""
    inside = scan_brackets(text.split("\n"), 0, 0, parent)
    faults = [(fault.line, fault.column, fault.why.code, fault.first < 0) for fault in inside.faults]
    return inside.line, inside.column, faults


@pytest.mark.parametrize(
    "text",
    [
        "[]",
        "{}",
        "[a, b]",
        "{a: 1, b: [c, {d: e}]}",
        "[58 52.4N, 5' 3\"]",
        '{a: \'x, ]\', "b":"y\\"]"}',
        "[a b#c]",
        "[a:b, c-d, -1.5, x?y]",
        "['it''s']",
        "[a,]",
        "[[]]",
        "{a: http://x.y}",
        "[a\tb,\tc]",
    ],
)
def test_sound_brackets_end_where_they_close(text: str) -> None:
    assert scanned(f"{text} rest") == (0, len(text), [])


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("[a, b", (0, 0, "bracket-open", True)),
        ("{a: [b}", (0, 6, "bracket-open", True)),
        ("[a [b], c]", (0, 3, "bracket-early", False)),
        ("[a [b", (0, 3, "bracket-early", True)),
        ("[a [b] c", (0, 3, "bracket-early", True)),
        ("[[a] b]", (0, 5, "bracket-early", True)),
        ("[[a] [b]]", (0, 5, "bracket-early", True)),
        ("[[a]: b: c]", (0, 7, "colon-in-text", False)),
        ("{a: [b]: c}", (0, 7, "bracket-early", True)),
        ("['a' b]", (0, 3, "quote-early", False)),
        ("['a b]", (0, 1, "quote-open", True)),
        ('["\\q", b]', (0, 2, "escape", False)),
        ("[*a, b]", (0, 1, "text-start", False)),
        ("[- a, b]", (0, 1, "text-start", False)),
        ("[?a, b]", (0, 1, "text-start", False)),
        ("{: a}", (0, 1, "key-empty", False)),
        ("{a: b: c}", (0, 5, "colon-in-text", False)),
        ("{a:[b]}", (0, 2, "no-space-after-colon", True)),
        ("{a:?b}", (0, 2, "no-space-after-colon", False)),
        ("[a:, b]", (0, 2, "key-no-value", False)),
        ("[" * 21, (0, 0, "too-deep", True)),
    ],
)
def test_a_fault_stands_where_it_was_made(text: str, fault: tuple[int, int, str, bool]) -> None:
    assert scanned(text)[2] == [fault]


def test_brackets_may_go_on_over_lines() -> None:
    assert scanned("{a: 1,\n\n  b: [c,\n  d] # e, ]\n  }")[:2] == (4, 3)
    assert scanned("[a,\n b\n c]", parent=0) == (2, 3, [])
    assert scanned("['a\n  b', c]", parent=0) == (1, 8, [])
    assert scanned("{a: 1,\nb: 2}", parent=0) == (1, 5, [])
    assert scanned("[a\nb c]", parent=0) == (1, 4, [])


def test_brackets_end_before_a_line_that_looks_like_an_entry() -> None:
    assert scanned("[a\nb: c]", parent=0)[2] == [(0, 0, "bracket-open", True)]
    assert scanned("[a\n- c]", parent=0)[2] == [(0, 0, "bracket-open", True)]
    assert scanned("[a\n\n", parent=0)[2] == [(0, 0, "bracket-open", True)]


def test_a_comma_that_is_missing_at_the_end_of_a_line_is_asked_for() -> None:
    assert scanned("{a: 1\n  b: 2}")[2] == [(1, 2, "no-comma", True)]
    assert scanned("{a: 1,\n  b\n  c: 2}")[2] == [(2, 2, "no-comma", True)]


def test_no_text_goes_on_behind_a_comment() -> None:
    assert scanned("[a # b\n  c]")[2] == [(1, 2, "bracket-early", True)]
    assert scanned("[#a]")[2] == [(0, 0, "bracket-open", True)]


def test_quotes_that_go_on_over_lines_spoil_the_whole() -> None:
    assert scanned("['a\n  b' c]")[2] == [(1, 3, "quote-early", True)]
    assert scanned('["a\n  \\q"]')[2] == [(1, 2, "escape", True)]


@pytest.mark.parametrize("text", ["*a, ", "-, ", ",", "a: b: c, "])
def test_too_much_of_anything_spoils_the_whole(text: str) -> None:
    faults = scanned("{" + text * (MAX_FAULTS + 5) + "}")[2]

    assert faults[-1][2:] == ("too-many-faults", True)


def test_lone_signs_for_nothing_written_are_texts() -> None:
    assert kept(HEAD + "a: {b: -, c: ? , d: *}\n")["a"] == {"b": "-", "c": "?", "d": LOST}


def test_question_marks_within_texts_stay() -> None:
    assert kept(HEAD + "crew: [A. Fell?, B?d]\nfast: {a: *b}\n") == {
        **kept(HEAD),
        "crew": ["A. Fell?", "B?d"],
        "fast": {"a": LOST},
    }


def test_a_comma_too_many_is_left_out() -> None:
    text = HEAD + "crew: [A. Fell,, B. Moe]\n"

    assert told(text) == ["3:16 comma-twice"]
    assert kept(text)["crew"] == ["A. Fell", "B. Moe"]
