"""What a hail is made of: the skipper's own weights, and whose catch it leaves out."""

from decimal import Decimal

import pytest

from logbook.model.export import record_as_json
from logbook.model.hail import FISH, HailFigures
from logbook.reckon.hail import reckon_hail
from tests.read.logs import FLEET, fleet, trip
from tests.reckon.build import HEAD, figures, moment

TOWS = """\
tows:
  - {shot: 18:10, hauled: 19:40, catch: {cod: {large: 2 baskets, small: 1.5 baskets}, haddock: 3 boxes, ling: 3 fish}}
  - {shot: 20:10, hauled: 21:40, catch: {Cod: {LARGE: 0.5 basket, small: 12 kg}, haddock: 100 lb}}
"""


def hail(text: str, head: str = HEAD, *, at: str | None = None, next_sailed: str | None = None) -> HailFigures:
    return reckon_hail(trip(head + text), figures(text, head, at=at, next_sailed=next_sailed))


def told(made: HailFigures) -> list[tuple[str, str | None, str]]:
    """Return species, grade and the amounts as `2 basket + 12 kg`."""
    return [
        (fish.species, fish.grade, " + ".join(f"{amount.number} {amount.unit}" for amount in fish.amounts))
        for fish in made.kept
    ]


def test_weights_are_in_the_units_typed_by_species_and_grade() -> None:
    made = hail(TOWS)

    assert told(made) == [
        ("haddock", None, "3 box + 100 lb"),
        ("cod", "large", "2.5 basket"),
        ("cod", "small", "1.5 basket + 12 kg"),
        ("ling", None, f"3 {FISH}"),
    ]


def test_weights_in_kilograms_are_those_of_the_units() -> None:
    # International Yard and Pound Agreement 1959: 1 lb = 0.45359237 kg; a box of this fleet holds 45 kg, its basket of cod 42.
    kept = {(fish.species, fish.grade): fish.kept_kg for fish in hail(TOWS).kept}

    assert kept == {
        ("haddock", None): 3 * 45 + Decimal("45.359237"),
        ("cod", "large"): Decimal("2.5") * 42,
        ("cod", "small"): Decimal("1.5") * 42 + 12,
        ("ling", None): None,
    }
    assert hail(TOWS).kept_kg == sum((kg for kg in kept.values() if kg is not None), Decimal(0))


def test_undersize_fish_and_fish_put_back_are_not_hailed() -> None:
    made = hail(
        "tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 10 kg}, undersize: {cod: 3 kg, ling: 1 kg}, "
        "put back: {cod: 5 kg, skate: 1 box}}\n"
    )

    assert told(made) == [("cod", None, "10 kg")]
    assert made.kept_kg == 10


def test_a_hail_is_not_put_right_by_the_scale() -> None:
    # Regulation (EC) 1224/2009 art. 14: what is recorded is the master's estimate; the scale comes after.
    made = hail(
        "tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 2 baskets}}\n"
        "landed: {port: Port Kerrin, docked: 2026-03-05 09:00, out-turn: {cod: 97 kg}}\n"
    )

    assert told(made) == [("cod", None, "2 basket")]
    assert made.kept_kg == 84


def test_species_of_which_there_is_none_are_left_out() -> None:
    made = hail("tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 0 kg, ling: 0 fish, haddock: 3 kg}}\n")

    assert told(made) == [("haddock", None, "3 kg")]


def test_an_alias_that_carries_a_grade_is_the_species_with_the_grade() -> None:
    made = hail(
        "tows:\n  - {shot: 18:10, hauled: 19:40, catch: {codling: 2 baskets}}\n"
        "  - {shot: 20:10, hauled: 21:40, catch: {cod: {small: 1 basket}}}\n"
    )

    assert told(made) == [("cod", "small", "3 basket")]


def test_what_comes_later_than_the_moment_is_not_hailed() -> None:
    made = hail(TOWS, at="2026-03-04 21:00")

    assert [fish.species for fish in made.kept] == ["cod", "cod", "haddock", "ling"]
    assert made.kept_kg == 3 * 45 + Decimal("3.5") * 42
    assert made.as_of == moment("2026-03-04 21:00")
    assert made.not_known == ()


@pytest.mark.parametrize(
    ("tows", "left_out"),
    [
        ("- {shot: 18:10, hauled: 19:40}", (1,)),
        ("- {shot: 18:10, hauled: 19:40, catch: nil}", ()),
        ("- {shot: 18:10, hauled: 19:40, catch: {}}", ()),
        ("- {shot: 18:10, hauled: 19:40, catch: much}", (1,)),
        ("- {shot: 18:10, hauled: 19:40, catch: {cod: 1 kg, ling: plenty}}", (1,)),
        ("- {shot: 18:10, hauled: 19:40, catch: {cod: 3 fish}}", ()),
        ("- {shot: 18:10}", ()),
        ("- {shot: 18:10}\n  - {shot: 20:10, hauled: 21:00, catch: {cod: 1 kg}}", (1,)),
        ("- {shot: 18:10, catch: {cod: 1 kg}}\n  - {shot: 20:10}", ()),
        ("- {shot: 18:10, hauled: 19:40, catch: with next}", (1,)),
        ("- {shot: 18:10, hauled: 19:40, catch: with next}\n  - {shot: 20:10}", (1,)),
        ("- {shot: 18:10, hauled: 19:40, catch: with next}\n  - {shot: 20:10, hauled: 21:00}", (1, 2)),
        ("- {shot: 18:10, hauled: 19:40, catch: with next}\n  - {shot: 20:10, hauled: 21:00, catch: nil}", ()),
        ("- {shot: 18:10, hauled: 19:40, catch: {cod: 1 kg}}\n  - {shot: 20:10, hauled: 21:00}", (2,)),
    ],
)
def test_every_tow_whose_catch_is_not_all_told_is_named(tows: str, left_out: tuple[int, ...]) -> None:
    assert hail(f"tows:\n  {tows}\n").not_known == left_out


def test_tows_that_cannot_be_read_are_counted() -> None:
    made = hail("tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 1 kg}}\n  - 5\n  - gone\n")

    assert (made.unread, made.not_known) == (2, ())


def test_the_time_to_turn_counts_the_same_tows_as_not_known() -> None:
    text = "tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 1 kg}}\n  - {shot: 20:10, hauled: 21:00, catch: with next}\n  - {shot: 22:00}\n"

    assert hail(text).not_known == (2,)
    assert "without tow 2, catch not known" in dict(figures(text).landing.basis)["choices"]


def test_who_when_and_what_she_wants_are_as_logged() -> None:
    made = hail("wants: 12 t ice\nsails again: 2026-03-14 06:00\nbound for: Sulvik\n" + TOWS)

    assert (made.vessel, made.state, made.port, made.wants) == ("Solan Bright", "at sea", "Sulvik", "12 t ice")
    assert made.sails_again == moment("2026-03-14 06:00")
    assert (made.docked, made.expected) == (None, True)


def test_a_landed_trip_has_docked_where_it_landed() -> None:
    made = hail(TOWS + "landed: 2026-03-06 09:00, Sulvik\n")

    assert (made.state, made.port, made.docked, made.expected) == (
        "landed",
        "Sulvik",
        moment("2026-03-06 09:00"),
        False,
    )


def test_a_landing_not_logged_is_expected_at_no_time() -> None:
    made = hail(TOWS, next_sailed="2026-03-10 09:00")

    assert (made.state, made.docked, made.sale) == ("landing not logged", None, None)


def test_a_trip_without_tows_has_nothing_to_hail() -> None:
    made = hail("")

    assert (made.kept, made.kept_kg, made.oldest_ice_days, made.not_known) == ((), None, None, ())


def test_the_sale_is_the_first_that_can_be_made() -> None:
    # Worked by hand: 103.6 nm at 9.5 kn is 10.9 h, so from 23:00 on Wednesday she docks at 09:54 on Thursday; the sale is at 07:00.
    market = fleet(
        FLEET.replace("012 10.0W\n", "012 10.0W\n    landing rate: 5 t/h\n    sale: {days: Mon-Fri, time: 07:00}\n")
    )
    text = "tows:\n  - {shot: 18:10, hauled: 23:00, to: 58 52.2N 15 09.1W, catch: {cod: 1 kg}}\n"

    made = reckon_hail(trip(HEAD + text, market), figures(text, of=market))

    assert made.docked is not None
    assert f"{made.docked:%a %H:%M}" == "Thu 09:54"
    assert made.sale == moment("2026-03-06 07:00")


def test_as_json_every_number_is_one() -> None:
    made = record_as_json(hail(TOWS))

    assert made["kept"] == [
        {
            "species": "haddock",
            "grade": None,
            "amounts": [{"number": 3.0, "unit": "box"}, {"number": 100.0, "unit": "lb"}],
            "kept_kg": pytest.approx(180.359237),
        },
        {"species": "cod", "grade": "large", "amounts": [{"number": 2.5, "unit": "basket"}], "kept_kg": 105.0},
        {
            "species": "cod",
            "grade": "small",
            "amounts": [{"number": 1.5, "unit": "basket"}, {"number": 12.0, "unit": "kg"}],
            "kept_kg": 75.0,
        },
        {"species": "ling", "grade": None, "amounts": [{"number": 3.0, "unit": FISH}], "kept_kg": None},
    ]
