"""Positions in free words, in every form that a log may have one; and what only looks like one."""

import pytest

from logbook.model.problem import Place
from logbook.model.trip import Fix, Tow
from logbook.redact.scrub import LEFT_OUT, scrubbed, without_positions

# The forms of a position that a log takes, as its documentation lists them.
POSITIONS = (
    "58 52.4N 015 10.0W",
    "58°52.4'N 15°10.0'W",
    "58-52.4N 15-10.0W",
    "N58 52.4 W015 10.0",
    "58 52 24N 15 10 00W",
    "58.8733 -15.1667",
    "58.8733 N, 15.1667 W",
    "58°52.4′N 015°10.0′W",
    "58 52,4 n, 15 10,0 w",
    "58 52.4, 15 10.0",
    "58 40N 15 10W",
    "58 52'24\"N",
    "58°52'",
)

OTHERS = (
    "",
    "Good marks at the turn",
    "SW 6 gale, 10 m swell",
    "S 5-6, later N 4",
    "wind N 6 10 kn",
    "95-110 fm",
    "2 fish 41 kg",
    "00-06 12-18",
    "2026-03-04 05:30 W of the bank",
    "3 12 nm east",
    "at 12 20 Eastern edge",
    "1.200 t, 3.400 t",
    "solan-bright-2026-03-04",
)


@pytest.mark.parametrize("typed", POSITIONS)
def test_a_position_is_left_out_of_words(typed: str) -> None:
    assert without_positions(f"wreck at {typed}; heave slack") == f"wreck at {LEFT_OUT}; heave slack"


@pytest.mark.parametrize("words", OTHERS)
def test_other_words_stay(words: str) -> None:
    assert without_positions(words) == words


def test_a_record_loses_positions_in_words_only_where_they_are_not_shown_and_names_of_files_and_lines_everywhere() -> (
    None
):
    place = Place(file="skipper.yaml", line=4, column=2)
    tow = Tow(no=1, place=place, remarks="foul at 58 52.4N 015 10.0W", catch_gaps=(place,))

    assert scrubbed(tow, positions=True).remarks == tow.remarks
    assert scrubbed(tow, positions=False).remarks == f"foul at {LEFT_OUT}"
    assert scrubbed(tow, positions=True).place == Place(file="", line=1, column=1)
    assert scrubbed(tow, positions=True).catch_gaps == (Place(file="", line=1, column=1),)


def test_a_record_without_either_stays_the_same() -> None:
    fix = Fix(place=Place(file="", line=1, column=1), at=None, position=None, remarks="fog")

    assert scrubbed(fix, positions=False) is fix
