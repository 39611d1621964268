"""Tows on one line: the same record as the long form, whatever the order of the parts."""

import pytest
from msgspec.structs import replace

from logbook.model.problem import Place
from logbook.model.quantity import POUND_KG
from logbook.model.trip import Amount, CatchKept, Tow
from tests.read.logs import codes, read, trip

HEAD = "vessel: Solan Bright\nsailed: 2026-03-04 05:30, Port Kerrin\ntows:\n"

LINE = "2015-2150, 98 fm, 58 48.0N 15 04.0W to 58 52.2N 15 09.1W, cod 9 baskets, haddock large 11 baskets, put back skate 1 basket"

LONG = """\
  - shot: 20:15
    hauled: 21:50
    depth: 98 fm
    from: 58 48.0N 15 04.0W
    to: 58 52.2N 15 09.1W
    catch:
      cod: 9 baskets
      haddock: {large: 11 baskets}
    put back:
      skate: 1 basket
"""


def plain(tow: Tow) -> Tow:
    """Return a tow without where it stands."""
    nowhere = Place(file="", line=1, column=1)

    def unplaced(amounts: tuple[Amount, ...]) -> tuple[Amount, ...]:
        return tuple(replace(amount, place=nowhere) for amount in amounts)

    return replace(
        tow,
        place=nowhere,
        one_line=False,
        catch=unplaced(tow.catch),
        put_back=unplaced(tow.put_back),
        undersize=unplaced(tow.undersize),
    )


def tow(line: str) -> Tow:
    (read_tow,) = trip(f"{HEAD}  - {line}\n").tows
    return read_tow


def test_a_line_makes_the_same_record_as_the_long_form() -> None:
    assert plain(tow(LINE)) == plain(trip(HEAD + LONG).tows[0])


def test_the_parts_may_stand_in_any_order() -> None:
    times, *parts = LINE.split(", ")

    assert plain(tow(", ".join((times, *reversed(parts))))) == plain(
        replace(tow(LINE), catch=tuple(reversed(tow(LINE).catch)))
    )


@pytest.mark.parametrize(
    "times", ["2015-2150", "20:15-21:50", "20:15 - 21:50", "2026-03-04 20:15-21:50", "2015 to 2150", "2015–2150"]
)
def test_the_times_may_be_typed_in_any_usual_way(times: str) -> None:
    read_tow = tow(f"{times}, cod 9 baskets")

    assert read_tow.shot is not None
    assert read_tow.hauled is not None
    assert (read_tow.shot.hour, read_tow.shot.minute, read_tow.hauled.hour, read_tow.hauled.minute) == (20, 15, 21, 50)


@pytest.mark.parametrize("times", ["2015-", "2015", "20:15 -"])
def test_a_line_with_one_time_is_gear_still_down(times: str) -> None:
    read_tow = tow(f"{times}, 98 fm")

    assert read_tow.shot is not None
    assert read_tow.hauled is None


def test_names_of_the_fleet_sides_pens_and_fasts_are_known_by_what_they_are() -> None:
    read_tow = tow("2015-2150, starboard, rockhopper, the saddle, P1, pen S1, 3.2 kn, fast")

    assert (read_tow.side, read_tow.net, read_tow.ground, read_tow.pens) == (
        "starboard",
        "rockhopper",
        "The Saddle",
        ("P1", "S1"),
    )
    assert read_tow.speed == 3.2
    assert read_tow.fast is not None
    assert read_tow.remarks == ""


def test_free_words_become_the_remarks_with_a_note() -> None:
    made, problems = read(f"{HEAD}  - 2015-2150, cod 9 baskets, fast, wing torn, good marks at the turn\n")

    assert made is not None
    assert made.tows[0].remarks == "wing torn, good marks at the turn"
    assert codes(problems) == ["tow-line-words"]
    assert problems[0].severity == "note"


@pytest.mark.parametrize("words", ["none", "nil", "no catch"])
def test_words_for_nothing_are_a_catch_of_nothing(words: str) -> None:
    assert tow(f"2015-2150, {words}").kept is CatchKept.NOTHING


def test_with_next_is_sorted_with_the_next_tow() -> None:
    assert tow("2015-2150, with next").kept is CatchKept.NEXT


def test_a_line_without_a_word_of_catch_is_a_catch_not_known() -> None:
    assert tow("2015-2150, 98 fm").kept is CatchKept.UNKNOWN


def test_a_decimal_comma_does_not_part_the_line() -> None:
    weights = [a.weight.kilograms for a in tow("2015-2150, cod 1,2 t, haddock 1,200 lb").catch if a.weight]

    assert weights == [1200, 1200 * POUND_KG]


def test_a_misspelt_species_keeps_its_weight_and_is_suggested() -> None:
    made, problems = read(f"{HEAD}  - 2015-2150, haddok 9 baskets\n")

    assert made is not None
    assert made.tows[0].catch[0].species == "haddok"
    assert codes(problems) == ["species-unknown"]
    assert "haddock" in problems[0].hint


def test_an_amount_that_cannot_be_read_is_an_error_at_its_part_and_a_gap() -> None:
    made, problems = read(f"{HEAD}  - 2015-2150, cod 9 baskts, haddock 2 boxes\n")

    assert made is not None
    assert [a.species for a in made.tows[0].catch] == ["haddock"]
    assert len(made.tows[0].catch_gaps) == 1
    assert problems[0].severity == "error"
    assert problems[0].place.line == 4
    assert problems[0].place.column >= 16


def test_a_species_twice_is_an_error() -> None:
    made, problems = read(f"{HEAD}  - 2015-2150, cod 9 baskets, cod 2 baskets\n")

    assert made is not None
    assert len(made.tows[0].catch) == 1
    assert codes(problems) == ["species-twice"]


def test_a_second_depth_or_position_is_an_error_and_not_used() -> None:
    _, problems = read(f"{HEAD}  - 2015-2150, 98 fm, 102 fm, 58 48N 15 04W, 58 52N 15 09W\n")

    assert codes(problems) == ["tow-line-twice", "tow-line-twice"]


def test_a_line_that_begins_with_no_time_is_an_error_and_the_others_stand() -> None:
    made, problems = read(f"{HEAD}  - cod 9 baskets, 2015-2150\n  - 2215-2350, cod 2 baskets\n")

    assert made is not None
    assert (len(made.tows), len(made.tows_lost)) == (1, 1)
    assert codes(problems) == ["tow-line-times"]


def test_a_track_may_turn_on_its_way() -> None:
    read_tow = tow("2015-2150, 58 48N 15 04W to 58 50N 15 06W to 58 52N 15 09W")

    assert len(read_tow.via) == 1
    assert read_tow.end is not None


def test_undersize_and_things_over_the_side_go_where_they_belong() -> None:
    read_tow = tow("2015-2150, undersize haddock 20 kg, over the side sculpin 1 basket, discards dogfish 5 kg")

    assert [a.species for a in read_tow.undersize] == ["haddock"]
    assert [a.species for a in read_tow.put_back] == ["sculpin", "dogfish"]
    assert read_tow.kept is CatchKept.KNOWN
