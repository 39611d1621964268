"""What lies in each pen."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.read.logs import FLEET, fleet
from tests.reckon.build import figures, moment

TOWS = """\
tows:
  - {shot: 08:00, hauled: 09:00, stowed: 10:00, catch: {cod: 1200 kg}, pen: P1}
  - {shot: 10:00, hauled: 11:00, stowed: 12:30, catch: {cod: 1500 kg}, pen: p1}
  - {shot: 12:00, hauled: 13:00, stowed: 14:00, catch: {haddock: 100 kg}, pen: [P1, P2, Locker]}
"""
LANDED = "landed: {docked: 2026-03-06 09:00, port: Port Kerrin, pens: {P1: 2600 kg, p1: 100 kg, Slush: 40 kg}}\n"


def test_a_pen_tells_its_fish_its_age_and_how_full_it_is() -> None:
    made = figures(TOWS + "readings:\n  - {at: 15:00, temperatures: {P1: 0.4 C, tank: 3 C}}\n" + LANDED)
    pen = made.pens["P1"]

    assert float(pen.kept_kg or 0) == pytest.approx(1200 + 1500 + 100 / 3)
    # A pen over what it takes is told as it is.
    assert pen.full_percent == pytest.approx((2700 + 100 / 3) / 24)
    assert (pen.first_on_ice, pen.last_on_ice) == (moment("2026-03-04 10:00"), moment("2026-03-04 14:00"))
    assert (pen.oldest_ice_days, pen.tows, pen.temperature_c) == (2, (1, 2, 3), 0.4)
    assert (pen.capacity_kg, pen.out_turn_kg) == (2400, 2700)


def test_pens_stand_in_the_vessels_order_then_as_they_were_named() -> None:
    made = figures(TOWS + "readings:\n  - {at: 15:00, temperatures: {tank: 3 C}}\n" + LANDED)

    assert list(made.pens) == ["P1", "P2", "S1", "Locker", "tank", "Slush"]
    assert (made.pens["Locker"].capacity_kg, made.pens["Locker"].full_percent) == (None, None)
    assert made.pens["Slush"].out_turn_kg == 40


def test_a_pen_never_fished_into_is_empty_where_all_fish_has_its_place_else_not_known() -> None:
    sure, unsure = figures(TOWS), figures(TOWS + "  - {shot: 14:00, hauled: 15:00, catch: {cod: 10 kg}, pen: '-'}\n")

    assert (sure.pens["S1"].kept_kg, sure.pens["S1"].full_percent, sure.pens["S1"].oldest_ice_days) == (0, 0, None)
    assert unsure.pens["S1"].kept_kg is not None


def test_fish_with_no_pen_is_in_none() -> None:
    made = figures("tows:\n  - {shot: 08:00, hauled: 09:00, catch: {cod: 1200 kg}}\n")

    assert [pen.kept_kg for pen in made.pens.values()] == [None, None, None]


def test_a_catch_not_known_is_named_and_is_none_where_it_is_all() -> None:
    made = figures(
        "tows:\n  - {shot: 08:00, hauled: 09:00, catch: {cod: 1200 kg}, pen: P1}\n  - {shot: 10:00, hauled: 11:00}\n"
        "  - {shot: 12:00, hauled: 13:00, pen: P2}\n  - {shot: 14:00, hauled: 15:00, pen: S1, catch: none}\n"
    )

    assert dict(made.pens["P1"].basis) == {"kept_kg": "without tow 2, catch not known"}
    assert (made.pens["P2"].kept_kg, made.pens["P2"].tows, made.pens["P2"].basis) == (None, (3,), ())
    assert (made.pens["S1"].kept_kg, made.pens["S1"].tows) == (0, ())


def test_gear_still_down_lies_nowhere() -> None:
    made = figures(TOWS + "  - {shot: 14:00, pen: S1}\n")

    assert (made.pens["S1"].tows, made.pens["S1"].kept_kg) == ((), 0)


@pytest.mark.parametrize("hauled", ["", "hauled: 99:99, "])
def test_fish_of_a_tow_with_no_hauled_time_lies_in_its_pen_and_came_up_as_early_as_can_be(hauled: str) -> None:
    made = figures(TOWS + f"  - {{shot: 14:00, {hauled}pen: S1, catch: {{cod: 3 kg}}}}\n", at="2026-03-05 14:00")
    pen = made.pens["S1"]

    assert (pen.tows, pen.kept_kg, pen.oldest_ice_days) == ((4,), 3, 1)
    assert dict(pen.basis) == {"oldest_ice_days": "assumed: hauled as early as can be, where no time is known"}
    assert sum(one.kept_kg or 0 for one in made.pens.values()) == made.totals.kept_kg


def test_a_pen_is_full_at_what_a_handbook_stows_in_it() -> None:
    # J. H. Merritt (second-hand, after Papanikolaou's Table 5.1): gutted cod in bulk with ice, 510 kg/m3 with an allowance for
    # the hold's structure; a pen of 2.0 x 1.5 x 1.2 m is 3.6 m3, and takes 1836 kg.
    of = fleet(FLEET.replace("P1: 2.4 t", f"P1: {3.6 * 510:.0f} kg"))
    made = figures("tows:\n  - {shot: 08:00, hauled: 09:00, catch: {cod: 1836 kg}, pen: P1}\n", of=of)

    assert made.pens["P1"].full_percent == pytest.approx(100)


def test_tows_sorted_together_lie_where_the_last_does_and_are_as_old_as_the_first() -> None:
    made = figures(TOWS.replace("{cod: 1200 kg}, pen: P1", "with next, pen: P2") + LANDED)

    assert (made.pens["P1"].tows, made.pens["P1"].oldest_ice_days) == ((1, 2, 3), 2)
    assert made.pens["P2"].tows == (3,)


TALLY = "stowage:\n  - {at: 12:45, pen: S1, tows: 1-2, fish: {cod: 40 boxes}}\n"


def test_the_tally_not_the_tow_says_what_lies_where() -> None:
    made = figures(TOWS + TALLY + LANDED)
    pen = made.pens["S1"]

    assert (pen.kept_kg, pen.tows, pen.oldest_ice_days) == (1800, (1, 2), 2)
    assert pen.first_on_ice == moment("2026-03-04 12:45")
    assert made.pens["P1"].tows == (3,)


def test_a_tally_that_names_no_tows_says_it_for_all() -> None:
    made = figures(TOWS + TALLY.replace("tows: 1-2, ", "") + LANDED)

    assert (made.pens["S1"].kept_kg, made.pens["S1"].tows) == (1800, ())
    # Stowed 44.25 h ago, and hauled an hour before that, as the trip's tows mostly were.
    assert made.pens["S1"].oldest_ice_days == pytest.approx(45.25 / 24)
    assert dict(made.pens["S1"].basis) == {"oldest_ice_days": "assumed: hauled 1 h before it was stowed"}
    assert made.pens["P1"].kept_kg == 0


def test_the_tally_of_a_tow_is_as_old_as_what_was_sorted_with_it() -> None:
    made = figures(TOWS.replace("{cod: 1200 kg}, pen: P1", "with next") + TALLY.replace("1-2", "2") + LANDED)

    assert made.pens["S1"].oldest_ice_days == 2


def test_a_line_of_the_tally_with_a_count_alone_is_a_weight_not_known() -> None:
    made = figures(TOWS + TALLY.replace("40 boxes", "12 fish"))

    assert (made.pens["S1"].kept_kg, made.pens["S1"].tows) == (None, (1, 2))


@given(
    st.lists(
        st.tuples(st.integers(0, 9999), st.sets(st.sampled_from(["P1", "P2", "S1"]), min_size=1)),
        min_size=1,
        max_size=5,
    )
)
@settings(max_examples=25)
def test_pens_add_up_to_what_was_kept(tows: list[tuple[int, set[str]]]) -> None:
    lines = "".join(
        f"  - {{shot: {6 + 3 * n:02}:00, hauled: {8 + 3 * n:02}:00, catch: {{cod: {kg} kg}}, pen: [{', '.join(sorted(pens))}]}}\n"
        for n, (kg, pens) in enumerate(tows)
    )
    made = figures("tows:\n" + lines)

    assert sum((pen.kept_kg or Decimal(0) for pen in made.pens.values()), Decimal(0)) == made.totals.kept_kg
