"""Signs that no editor shows are read as spaces or left out, and said."""

import pytest

from logbook.read.report import Report
from logbook.read.unseen import clean
from tests.read.trees import HEAD, kept, read, told


def cleaned(text: str) -> tuple[str, list[str]]:
    report = Report("f")
    text = clean(text, report)
    return text, [f"{each.place.line}:{each.place.column} {each.severity} {each.code}" for each in report.problems]


# Unicode general category Cc and noncharacters (The Unicode Standard 23.1 and 23.7).
@pytest.mark.parametrize(
    "sign", ["\0", "\x07", "\x0b", "\x0c", "\x1a", "\x1b", "\x7f", "\x80", "\x9f", "\ufffe", "\ufdd0"]
)
def test_a_control_character_is_read_as_a_space(sign: str) -> None:
    assert cleaned(f"a: b\nnet{sign}torn\n") == ("a: b\nnet torn\n", ["2:4 warning control-character"])


# YAML 1.1, 4.2: these break lines; no editor at sea shows them as line ends.
@pytest.mark.parametrize("sign", ["\x85", "\u2028", "\u2029"])
def test_an_odd_separator_makes_no_new_line(sign: str) -> None:
    assert cleaned(f"remarks: torn{sign}depth\n") == ("remarks: torn depth\n", ["1:14 note line-separator"])
    assert told(HEAD + f"remarks: torn{sign}depth: 9 m\n") == ["3:14 line-separator", "3:20 colon-in-text"]


@pytest.mark.parametrize("sign", ["\u200b", "\ufeff", "\u2060", "\u00ad", "\u200e", "\u202a", "\u2066"])
def test_an_invisible_sign_is_left_out(sign: str) -> None:
    assert cleaned(f"ves{sign}sel: Pe{sign}trel\n") == ("vessel: Petrel\n", ["1:4 note invisible-character"])


def test_joiners_that_scripts_need_stay() -> None:
    assert cleaned("vessel: \u0646\u200c\u0627 👨\u200d🚀\n") == ("vessel: \u0646\u200c\u0627 👨\u200d🚀\n", [])


@pytest.mark.parametrize("space", ["\u00a0", "\u2003", "\u202f", "\u3000"])
def test_odd_spaces_where_yaml_wants_plain_ones_are_plain_ones(space: str) -> None:
    text = f"tows:\n{space} -{space}shot:{space}18:10\n"

    assert cleaned(text) == ("tows:\n  - shot: 18:10\n", ["2:1 note odd-space"])


def test_odd_spaces_within_a_text_stay() -> None:
    assert cleaned("cod: 12\u00a0310 kg\u00a0\n") == ("cod: 12\u00a0310 kg\n", [])


def test_each_kind_of_sign_is_told_for_twenty_lines() -> None:
    text = "a\x07b\n" * 30

    assert len(cleaned(text)[1]) == 20
    assert cleaned(text)[0] == "a b\n" * 30


def test_a_mark_of_notepad_is_left_out() -> None:
    assert told(f".LOG\r\n{HEAD}") == ["1:1 notepad-log"]
    assert kept(f".LOG\n{HEAD}") == kept(HEAD)
    assert told(f".LOGBOOK: x\n{HEAD}") == []


# What UTF-8 becomes when read as Windows-1252 and saved again, made here by Python's own codecs.
@pytest.mark.parametrize("sign", ["å", "ø", "°", "º", "’", "–", "…"])
def test_letters_encoded_twice_are_told(sign: str) -> None:
    doubled = sign.encode().decode("cp1252")

    assert cleaned(f"a: b\nc: 5{doubled}x\n") == (f"a: b\nc: 5{doubled}x\n", ["2:5 warning double-encoded"])


@pytest.mark.parametrize("name", ["Âme", "Ãngel", "São", "Ë", "â"])
def test_letters_that_only_look_alike_are_not(name: str) -> None:
    assert cleaned(f"vessel: {name}\n")[1] == []


def test_a_letter_that_was_lost_before_is_told() -> None:
    assert cleaned("a: b\nvessel: H\ufffdkon\n") == ("a: b\nvessel: H\ufffdkon\n", ["2:10 warning letters-lost"])


def test_lines_keep_their_numbers() -> None:
    root, _ = read("a: x\u2028y\x0bz\u0085\nvessel: Petrel\n")

    assert root is not None
    assert [key.line for key, _ in root.entries] == [1, 2]
