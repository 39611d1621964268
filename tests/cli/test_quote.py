"""The line below a problem: marked under the right letters, safe for a terminal, and put right only where that is certain.

Widths of letters are checked against Unicode's own property (UAX #11, as Python's unicodedata has it).
"""

import unicodedata
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.cli.quote import Quotes, can_show, corrected, mark_of, mended
from logbook.model.problem import Place, Problem, Severity
from logbook.model.visible import visible
from logbook.read.source import typed
from logbook.read.trip import prepare, read_trip
from tests.read.logs import fleet
from tests.read.test_cases import cases

HEAD = "vessel: Solan Bright\nsailed: 2026-03-04 05:30\ntows:\n  - 1810-1940, cod 2 baskets\n"


def problem(column: int, message: str = "it is wrong", *, code: str = "weight-unreadable", line: int = 1) -> Problem:
    place = Place(file="trip.yaml", line=line, column=column)
    return Problem(place=place, severity=Severity.ERROR, code=code, message=message)


def below(text: str, *problems: Problem, width: int = 100, encoding: str = "utf-8") -> list[str]:
    """Return what stands below the problems of a line."""
    return list(Quotes(lambda _: text.encode(), width, can_show(encoding)).below(problems))


def columns(text: str) -> int:
    """Return how many columns a terminal gives a text, by Unicode's own width of each letter."""
    return sum(0 if unicodedata.combining(s) else 2 if unicodedata.east_asian_width(s) in "WF" else 1 for s in text)


@pytest.mark.parametrize(
    ("line", "before", "shown"),
    [
        ("cod: 3 bskts", "cod: ", "cod: "),
        ("\tcod: 3 bskts", "\tcod: ", "<TAB>cod: "),
        ("鱈鱈: 3 bskts", "鱈鱈: ", "鱈鱈: "),
        ("e\u0301e\u0301: 3 bskts", "e\u0301e\u0301: ", "e\u0301e\u0301: "),
        ("\u0301cod: 3 bskts", "\u0301cod: ", "<U+0301>cod: "),
        ("a\u0301\u0301\u0301\u0301: 3 bskts", "a\u0301\u0301\u0301\u0301: ", "a\u0301\u0301<U+0301><U+0301>: "),
        ("\x1b[2Jcod: 3 bskts", "\x1b[2Jcod: ", "<U+001B>[2Jcod: "),
        ("co\u202ed: 3 bskts", "cod: ", "co<U+202E>d: "),
        ("cod:\u00a03 bskts", "cod:\u00a0", "cod:<U+00A0>"),
        ("👩\u200d🚒: 3 bskts", "👩\u200d🚒: ", "👩<U+200D>🚒: "),
    ],
)
def test_the_mark_stands_below_the_letters_meant(line: str, before: str, shown: str) -> None:
    told, under = below(line, problem(len(before) + 1, "'3 bskts' is no weight"))

    assert told == f"   1 | {shown}3 bskts"
    assert under == f"     | {' ' * columns(shown)}^^^^^^^"


def test_a_place_behind_the_end_of_a_line_is_marked_there() -> None:
    assert below("cod:", problem(9)) == ["   1 | cod:", "     |     ^"]


@pytest.mark.parametrize("start", [0, 150, 299_000])
def test_of_a_line_without_end_the_part_around_the_place_is_shown(start: int) -> None:
    line = "x" * start + "3 bskts" + "y" * 1_000

    told, under = below(line, problem(start + 1, "'3 bskts' is no weight"), width=80)

    assert len(told) <= 80
    assert told.endswith(" ...")
    assert told[under.index("^") : under.rindex("^") + 1] == "3 bskts"


def test_places_far_apart_on_a_long_line_are_shown_each() -> None:
    line = "3 bskts" + "x" * 500 + "4 bskts"

    told = below(line, problem(1, "'3 bskts' is"), problem(508, "'4 bskts' is"), width=80)

    assert len(told) == 4
    assert "3 bskts" in told[0]
    assert "4 bskts" in told[2]


def test_a_part_of_a_line_is_marked_up_to_what_is_wrong_in_it() -> None:
    assert (
        below("1810-1940, cod 2 bskts, fast", problem(12, "'2 bskts' is no weight"))[1]
        == "     |            ^^^^^^^^^^^"
    )
    assert below("skipper: x, y", problem(10, "'y' is wrong"))[1] == "     |          ^"


def test_the_problems_of_one_line_share_it() -> None:
    told = below("a: 3 bskts, 4 bskts", problem(4, "'3 bskts' is"), problem(13, "'4 bskts' is"))

    assert told == ["   1 | a: 3 bskts, 4 bskts", "     |    ^^^^^^^  ^^^^^^^"]


def test_a_code_that_comes_again_and_again_has_its_first_lines_shown() -> None:
    quotes = Quotes(lambda _: b"x\n" * 60, 80, can_show("utf-8"))

    shown = [bool(list(quotes.below([problem(1, line=line)]))) for line in range(1, 61)]

    assert shown == [True] * 5 + [False] * 55


def test_a_terminal_of_an_old_code_page_is_told_the_numbers_of_letters_it_has_not() -> None:
    assert below("鱈å: 3", problem(5), encoding="cp1252")[0] == "   1 | <U+9C48>å: 3"


def test_what_is_about_the_file_shows_no_line() -> None:
    assert below("vessel: x", problem(1, code="no-tows")) == []


def test_a_file_that_has_gone_shows_no_line() -> None:
    assert list(Quotes(lambda _: b"", 80, can_show("utf-8")).below([problem(1)])) == []


@given(st.text())
def test_whatever_a_log_holds_a_terminal_is_handed_letters(text: str) -> None:
    told = visible(text)

    assert told.isprintable() or not told
    assert not any(unicodedata.category(sign) in {"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"} for sign in told)


@pytest.mark.parametrize("case", [case for case in cases() if not case.stem.startswith("fleet-")], ids=lambda c: c.stem)
def test_a_line_put_right_has_lost_its_problem(case: Path) -> None:
    data = case.read_bytes()
    lines = typed(data).split("\n")
    found = read_trip(data, "t", prepare(fleet()))[1]

    for each in found:
        line = lines[each.place.line - 1]
        better = corrected(line, each)
        if better is not None:
            again = [*lines[: each.place.line - 1], better, *lines[each.place.line :]]
            left = read_trip("\n".join(again).encode(), "t", prepare(fleet()))[1]
            assert (each.place.line, each.code, each.message) not in {(p.place.line, p.code, p.message) for p in left}
            assert better != line


@pytest.mark.parametrize(
    ("typed_line", "better"),
    [
        ("skiper: M. Aldane", "skipper: M. Aldane"),
        ("crew = 11", "crew: 11"),
        ("crew:11", "crew: 11"),
        ("ice loaded 24 t", "ice loaded: 24 t"),
        ("ice loaded: 12,310 kg", "ice loaded: 12310 kg"),
        ("skipper: ask Bob: A. Fell", "skipper: 'ask Bob: A. Fell'"),
        ("ice loaded: 24 loads", None),
        ("ice loaded: 1,200 t", None),
        ("colour: blue", None),
        ("crew = 11 # all told", None),
    ],
)
def test_a_line_is_put_right_where_that_is_certain(typed_line: str, better: str | None) -> None:
    found = [p for p in read_trip(f"{HEAD}{typed_line}\n".encode(), "t", prepare(fleet()))[1] if p.place.line == 5]

    assert found
    assert mended(typed_line, found) == better


def test_the_place_of_a_sign_that_is_left_out_is_where_it_was_typed() -> None:
    text = f"{HEAD}skipper: M. \u200bAl\u200bdane\nice loaded:\u200b\u200b 24 loads\n"
    lines = text.split("\n")
    found = read_trip(text.encode(), "t", prepare(fleet()))[1]

    starts = {p.code: lines[p.place.line - 1][mark_of(lines[p.place.line - 1], p).start :] for p in reversed(found)}

    assert starts["invisible-character"].startswith("\u200bAl")
    assert starts["weight-unreadable"] == "24 loads"
