"""Tows in the long form: what carries on, catches, fasts and numbers."""

import pytest

from logbook.model.quantity import Position
from logbook.model.trip import Amount, CatchKept, Tow
from tests.read.logs import codes, read, said, trip

HEAD = "vessel: Solan Bright\nsailed: 2026-03-04 05:30, Port Kerrin\n"


def tows(text: str) -> tuple[Tow, ...]:
    return trip(HEAD + "tows:\n" + text).tows


def weights(amounts: tuple[Amount, ...]) -> list[tuple[str, str | None, str | None]]:
    return [(a.species, a.grade, f"{a.weight.kilograms.normalize():f}" if a.weight else None) for a in amounts]


def near(position: Position | None) -> tuple[float, float] | None:
    return (round(position.latitude, 4), round(position.longitude, 4)) if position else None


def test_side_ground_net_and_pen_carry_on_until_another_is_given() -> None:
    first, second, third = tows(
        "  - {shot: 18:10, hauled: 19:40, side: starboard, ground: the saddle, net: Rockhopper, pen: p1}\n"
        "  - {shot: 20:10, hauled: 21:40}\n"
        "  - {shot: 22:10, hauled: 23:40, side: port, net: flat net, pen: [P1, P2]}\n"
    )

    assert (first.side, first.ground, first.net, first.pens) == ("starboard", "The Saddle", "rockhopper", ("P1",))
    assert (second.side, second.ground, second.net, second.pens) == ("starboard", "The Saddle", "rockhopper", ("P1",))
    assert second.carried == {"side", "ground", "net", "pens"}
    assert (third.side, third.net, third.pens, third.carried) == ("port", "flat net", ("P1", "P2"), {"ground"})


def test_a_catch_by_species_and_grade_keeps_units_counts_and_states() -> None:
    (tow,) = tows(
        "  - shot: 18:10\n    catch:\n      cod: 14 baskets\n      haddock: {large: 6 baskets, small: 280 kg}\n"
        "      halibut: 2 fish 41 kg\n      codling: 620 lb whole\n"
    )

    assert weights(tow.catch) == [
        ("cod", None, "588"),
        ("haddock", "large", "240"),
        ("haddock", "small", "280"),
        ("halibut", None, "41"),
        ("cod", "small", "281.2272694"),
    ]
    assert tow.catch[3].count == 2
    assert (tow.catch[4].state, tow.catch[4].state_typed) == ("whole", True)
    assert (tow.catch[0].state, tow.catch[0].state_typed) == ("gutted", False)


@pytest.mark.parametrize("words", ["none", "nil", "0", "{}", "None"])
def test_words_for_nothing_are_a_catch_of_nothing(words: str) -> None:
    assert tows(f"  - {{shot: 18:10, catch: {words}}}\n")[0].kept is CatchKept.NOTHING


@pytest.mark.parametrize("words", ["", " -", " ~", " ?", " null"])
def test_an_empty_catch_is_not_known(words: str) -> None:
    made, problems = read(HEAD + f"tows:\n  - shot: 18:10\n    catch:{words}\n")

    assert made is not None
    assert problems == ()
    assert made.tows[0].kept is CatchKept.UNKNOWN


def test_a_catch_sorted_with_the_next_is_neither_known_nor_nothing() -> None:
    assert tows("  - {shot: 18:10, catch: with next}\n")[0].kept is CatchKept.NEXT


def test_an_amount_that_cannot_be_read_leaves_the_others_and_a_gap() -> None:
    made, problems = read(HEAD + "tows:\n  - shot: 18:10\n    catch:\n      cod: 14 baskts\n      haddock: 280 kg\n")

    assert made is not None
    (tow,) = made.tows
    assert weights(tow.catch) == [("haddock", None, "280")]
    assert [place.line for place in tow.catch_gaps] == [6]
    assert [problem.severity for problem in problems] == ["error"]


def test_a_species_nobody_knows_keeps_its_weight_under_the_name_typed() -> None:
    made, problems = read(HEAD + "tows:\n  - shot: 18:10\n    catch:\n      haddok: 280 kg\n")

    assert made is not None
    assert weights(made.tows[0].catch) == [("haddok", None, "280")]
    assert made.tows[0].catch[0].known is None
    assert said(problems) == ["6:7 species-unknown"]
    assert "haddock" in problems[0].hint


def test_the_same_species_twice_by_case_or_alias_is_an_error_and_not_the_last_alone() -> None:
    made, problems = read(HEAD + "tows:\n  - shot: 18:10\n    catch:\n      cod: 100 kg\n      COD: 40 kg\n")

    assert made is not None
    assert weights(made.tows[0].catch) == [("cod", None, "100")]
    assert said(problems) == ["7:7 species-twice"]
    assert len(made.tows[0].catch_gaps) == 1


def test_undersize_alone_is_a_known_catch() -> None:
    (tow,) = tows("  - {shot: 18:10, undersize: {haddock: 20 kg}, put back: {skate: 3 baskets}}\n")

    assert tow.kept is CatchKept.KNOWN
    assert weights(tow.undersize) == [("haddock", None, "20")]
    assert weights(tow.put_back) == [("skate", None, "120")]


@pytest.mark.parametrize("key", ["over the side", "discards", "Put_Back", "PUT-BACK"])
def test_everyday_words_for_put_back_are_the_same_key(key: str) -> None:
    assert weights(tows(f"  - {{shot: 18:10, {key}: {{skate: 1 box}}}}\n")[0].put_back) == [("skate", None, "45")]


@pytest.mark.parametrize(
    ("typed", "expected"),
    [("yes", ("", None)), ("wreck", ("wreck", None)), ("58 52.4N 015 10.0W", ("", (58.8733, -15.1667))), ("no", None)],
)
def test_a_fast_is_yes_or_words_or_a_position(typed: str, expected: object) -> None:
    fast = tows(f"  - {{shot: 18:10, fast: {typed}}}\n")[0].fast

    assert (None if fast is None else (fast.what, near(fast.at))) == expected


def test_positions_may_be_lists_of_two_and_tracks_may_turn() -> None:
    (tow,) = tows(
        "  - shot: 18:10\n    from: [58.8733, -15.1667]\n    to: 58 48.1N 015 04.2W\n    via: [58 50N 015 09W, [58.82, -15.1]]\n"
    )

    assert near(tow.start) == (58.8733, -15.1667)
    assert [near(position) for position in tow.via] == [(58.8333, -15.15), (58.82, -15.1)]


def test_numbers_go_on_from_the_one_typed_and_a_double_is_told() -> None:
    made, problems = read(HEAD + "tows:\n  - {shot: 18:10, no: 4}\n  - {shot: 20:10}\n  - {shot: 22:10, no: 4}\n")

    assert made is not None
    assert [tow.no for tow in made.tows] == [4, 5, 4]
    assert codes(problems) == ["tow-number-twice"]


def test_a_species_at_the_level_of_the_tow_is_sent_below_catch() -> None:
    _, problems = read(HEAD + "tows:\n  - shot: 18:10\n    catch:\n    cod: 14 baskets\n")

    assert said(problems) == ["6:5 key-unknown"]
    assert problems[0].hint == "indent cod below catch"


def test_a_key_with_one_slip_is_read_with_a_warning_and_nothing_is_lost() -> None:
    made, problems = read(HEAD + "tows:\n  - {shot: 18:10, dept: 98 fm}\n")

    assert made is not None
    assert made.tows[0].depth is not None
    assert said(problems) == ["4:19 key-slip"]


def test_an_unknown_key_is_an_error_with_the_nearest_suggested() -> None:
    _, problems = read(HEAD + "tows:\n  - {shot: 18:10, depthh fm: 98 fm}\n")

    assert codes(problems) == ["key-unknown"]
    assert problems[0].severity == "error"


def test_a_dash_for_each_field_says_that_one_dash_begins_one_tow() -> None:
    _, problems = read(HEAD + "tows:\n  - shot: 18:10\n  - hauled: 19:40\n")

    assert said(problems)[0] == "5:5 key-missing"
    assert "one dash" in problems[0].hint


def test_an_empty_tow_is_left_out_with_a_warning() -> None:
    made, problems = read(HEAD + "tows:\n  - shot: 18:10\n  -\n")

    assert made is not None
    assert len(made.tows) == 1
    assert codes(problems) == ["item-empty"]


def test_a_tow_that_is_a_list_is_an_error_and_the_others_stand() -> None:
    made, problems = read(HEAD + "tows:\n  - [18:10, 19:40]\n  - shot: 20:10\n")

    assert made is not None
    assert (len(made.tows), len(made.tows_lost)) == (1, 1)
    assert codes(problems) == ["tow-unreadable"]
