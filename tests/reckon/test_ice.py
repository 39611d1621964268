"""Loose ice: loaded, laid, melted, seen; and how long it lasts."""

from datetime import timedelta
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.read.logs import FLEET, fleet
from tests.reckon.build import figures, moment

MELT = 1.9 * 3600 / 334
"""Kilograms an hour that 1.9 kW melt, by 334 kJ/kg."""

NO_HOLD = fleet(FLEET.replace("heat gain: 1.9 kW, ", ""))

TOWS = """\
ice loaded: 10 t
ice left at sailing: 500 kg
tows:
  - {shot: 10:00, hauled: 12:00, stowed: 13:00, catch: {cod: 1000 kg}, ice: 400 kg}
  - {shot: 14:00, hauled: 16:00, stowed: 17:00, catch: {cod: 1000 kg}}
"""


def test_what_is_left_is_loaded_less_laid_less_the_holds_melt() -> None:
    # Torry Advisory Note 15: 1 t of ice to 2 t of fish, where none was logged.
    ice = figures(TOWS).ice
    melted = MELT * 11.5

    assert (ice.loaded_kg, ice.laid_kg, ice.left_by) == (10500, 900, "reckoned")
    assert ice.hold_melt_kg == pytest.approx(melted)
    assert ice.left_kg == pytest.approx(10500 - 900 - melted)
    assert ice.fish_to_ice == pytest.approx(2000 / 900)
    assert dict(ice.basis)["laid_kg"] == "assumed: 1 kg of ice with 2 kg of fish for tow 2"
    assert dict(ice.basis)["left_kg"] == dict(ice.basis)["laid_kg"]


def test_an_unknown_hold_is_named_where_it_is_left_out() -> None:
    ice = figures(TOWS, of=NO_HOLD).ice

    assert (ice.hold_melt_kg, ice.left_kg) == (None, 9600)
    assert dict(ice.basis)["left_kg"].endswith("; hold melt not known, left out")


def test_a_look_restarts_it_and_is_logged_where_nothing_came_after_it() -> None:
    look = "readings:\n  - {at: 17:30, ice left: 9 t}\n"

    assert (figures(TOWS + look).ice.left_kg, figures(TOWS + look).ice.left_by) == (9000, "logged")
    later = figures(TOWS + look, at="2026-03-04 19:30").ice
    assert (later.left_kg, later.left_by) == (pytest.approx(9000 - 2 * MELT), "reckoned")
    still = figures(TOWS + look, at="2026-03-04 19:30", of=NO_HOLD).ice
    assert (still.left_kg, still.left_by) == (9000, "logged")


def test_what_came_after_a_look_counts_from_there() -> None:
    made = figures(
        TOWS
        + "readings:\n  - {at: 13:30, ice left: 8 t}\n  - {at: 18:00, ice taken aboard: 2 t, re-iced: {P1: 100 kg, P2: 50 kg}}\n",
        of=NO_HOLD,
    ).ice

    assert made.left_kg == 8000 - 500 + 2000 - 150
    assert made.loaded_kg == 12500
    assert made.laid_kg == 1050


def test_at_the_moment_of_a_look_laying_counts_after_it_and_taking_aboard_before_it() -> None:
    look = "readings:\n  - {at: 17:00, ice left: 8 t, ice taken aboard: 2 t, re-iced: {P1: 100 kg}}\n"

    assert figures(TOWS + look, of=NO_HOLD).ice.left_kg == 8000 - 500 - 100


def test_of_two_looks_at_one_moment_the_lesser_counts() -> None:
    looks = "readings:\n  - {at: 2026-03-04 18:00, ice left: 8 t}\n  - {at: 2026-03-04 18:00, ice left: 7 t}\n"

    assert figures(TOWS + looks).ice.left_kg == 7000


def test_it_never_falls_below_nothing() -> None:
    assert figures(TOWS.replace("10 t", "100 kg").replace("500 kg", "0 kg")).ice.left_kg == 0


def test_without_ice_logged_nothing_is_known_of_it_but_what_was_laid() -> None:
    ice = figures("tows:\n  - {shot: 10:00, hauled: 12:00, catch: {cod: 1000 kg}}\n").ice

    assert (ice.loaded_kg, ice.left_kg, ice.left_by, ice.lasts_until) == (None, None, None, None)
    assert ice.laid_kg == 500


def test_a_catch_not_known_is_named_and_leaves_laid_unknown_where_it_is_all() -> None:
    some = figures(TOWS + "  - {shot: 18:00, hauled: 19:00}\n").ice
    alone = figures("ice loaded: 1 t\ntows:\n  - {shot: 18:00, hauled: 19:00}\n").ice

    assert "without the ice of tow 3, catch not known" in dict(some.basis)["laid_kg"]
    assert (some.laid_kg, alone.laid_kg) == (900, None)
    assert "left_kg" in dict(alone.basis)


def test_before_the_first_tow_nothing_was_laid() -> None:
    ice = figures("ice loaded: 1 t\n").ice

    assert (ice.laid_kg, ice.left_kg, ice.fish_to_ice) == (0, 1000, None)


def test_tows_sorted_with_the_next_take_their_ice_with_it() -> None:
    ice = figures(TOWS.replace("{cod: 1000 kg}, ice: 400 kg", "with next")).ice

    assert (ice.laid_kg, dict(ice.basis)["laid_kg"]) == (500, "assumed: 1 kg of ice with 2 kg of fish for tow 2")


STOWAGE = "stowage:\n  - {at: 17:30, pen: P1, tows: 1-2, fish: {cod: 2000 kg}, ice: 0.7 t}\n"


def test_ice_by_the_tally_stands_for_that_of_its_tows() -> None:
    ice = figures(TOWS + STOWAGE).ice

    assert (ice.laid_kg, dict(ice.basis).get("laid_kg")) == (700, None)


def test_a_line_of_the_tally_without_ice_says_nothing_of_ice() -> None:
    assert figures(TOWS + STOWAGE.replace(", ice: 0.7 t", "")).ice.laid_kg == 900


@pytest.mark.parametrize(("fish", "laid"), [("{cod: 500 kg}", 1350), ("{cod: 5000 kg}", 1100), ("{cod: 4 fish}", 1600)])
def test_a_line_that_names_no_tow_stands_for_as_much_fish(fish: str, laid: float) -> None:
    # 400 kg with tow 1, 700 kg by the tally, and half a kilogram for each of the 1000 kg of tow 2 that the tally did not tell of.
    ice = figures(TOWS + STOWAGE.replace("tows: 1-2, fish: {cod: 2000 kg}", f"fish: {fish}")).ice

    assert ice.laid_kg == laid


def test_ice_of_a_line_without_a_time_counts_after_the_last_look() -> None:
    text = TOWS + STOWAGE.replace("17:30", "99:99") + "readings:\n  - {at: 2026-03-04 18:00, ice left: 8 t}\n"

    assert figures(text, of=NO_HOLD).ice.left_kg == 7300


def test_the_least_physics_asks_is_by_the_warmer_of_sea_and_deck() -> None:
    # FAO Fisheries Technical Paper 331 ch. 3: mass x 3.35 x fall / 334.
    made = figures(
        "sea temperature: 6 C\ntows:\n  - {shot: 10:00, hauled: 12:00, deck temperature: 8 C, catch: {cod: 1000 kg}}\n"
        "  - {shot: 14:00, hauled: 16:00, catch: {cod: 1000 kg}}\n"
    ).ice
    bare = figures("tows:\n  - {shot: 10:00, hauled: 12:00, catch: {cod: 1000 kg}}\n").ice
    part = figures(
        "tows:\n  - {shot: 10:00, hauled: 12:00, sea temperature: 8 C, catch: {cod: 1000 kg}}\n  - 1400-1600, cod 1000 kg\n  - 1800-1900\n"
    ).ice

    assert made.chilling_kg == pytest.approx(1000 * 3.35 * (8 + 6) / 334)
    assert bare.chilling_kg is None
    assert dict(part.basis)["chilling_kg"] == "without tow 2, no temperature"


def test_it_lasts_at_the_rate_between_the_last_two_looks() -> None:
    looks = "readings:\n  - {at: 08:00, ice left: 10 t}\n  - {at: 15:00, ice taken aboard: 1 t}\n  - {at: 18:00, ice left: 9 t}\n"

    # 2 t in 10 h: 9 t last 45 h.
    assert figures(TOWS + looks).ice.lasts_until == moment("2026-03-06 15:00")


@pytest.mark.parametrize("looks", ["", "readings:\n  - {at: 08:00, ice left: 9 t}\n  - {at: 18:00, ice left: 10 t}\n"])
def test_else_at_the_holds_melt_and_what_the_rate_of_catching_takes(looks: str) -> None:
    made = figures(TOWS + looks, at="2026-03-04 18:00")
    # 2000 kg in 6 h are 8000 kg a day; 1 kg of ice to 2 kg of fish, less than the trip's own.
    an_hour = MELT + 8000 / 24 / 2

    assert made.ice.lasts_until is not None
    hours = (made.ice.lasts_until - moment("2026-03-04 18:00")).total_seconds() / 3600
    assert hours == pytest.approx((made.ice.left_kg or 0) / an_hour, abs=1e-6)


def test_a_trip_that_lays_more_ice_than_usual_goes_on_so() -> None:
    made = figures(TOWS.replace("ice: 400 kg", "ice: 1000 kg"), at="2026-03-04 18:00", of=NO_HOLD)

    hours = ((made.ice.lasts_until or moment("2026-03-04")) - moment("2026-03-04 18:00")).total_seconds() / 3600
    assert hours == pytest.approx((10500 - 1500) / (8000 / 24 / (2000 / 1500)))


def test_homeward_only_the_hold_melts() -> None:
    looks = "readings:\n  - {at: 08:00, ice left: 10 t}\n  - {at: 18:00, ice left: 9 t}\n"
    melting = figures(TOWS + looks + "turned for home: 18:00\n").ice
    seen = figures(TOWS + looks + "  - {at: 23:00, ice left: 8.9 t}\nturned for home: 17:00\n").ice
    unread = figures(TOWS + looks + "turned for home: sometime, The Saddle\n").ice

    assert melting.lasts_until is not None
    hours = (melting.lasts_until - moment("2026-03-04 18:00")).total_seconds() / 3600
    assert hours == pytest.approx(9000 / MELT, abs=1e-6)
    # 100 kg in 5 h: 8900 kg last 445 h.
    assert seen.lasts_until == moment("2026-03-23 12:00")
    assert unread.lasts_until == melting.lasts_until


def test_where_nothing_takes_it_or_it_would_last_beyond_a_year_no_end_is_told() -> None:
    assert figures("ice loaded: 1 t\n", of=NO_HOLD).ice.lasts_until is None
    assert figures("ice loaded: 1 t\ntows:\n  - 1000-1100\n", of=NO_HOLD).ice.lasts_until is None
    assert figures("ice loaded: 900 t\nturned for home: 18:00\n").ice.lasts_until is None


def test_landed_there_is_no_looking_ahead() -> None:
    ice = figures(TOWS + "landed: 2026-03-05 06:00, Port Kerrin\n").ice

    assert ice.lasts_until is None
    assert "lasts_until" not in dict(ice.basis)
    assert ice.left_kg is not None


def test_without_a_sailing_the_hold_melts_since_the_first_thing_logged() -> None:
    head = "vessel: Solan Bright\nsailed: ?\nice loaded: 1 t\n"
    ice = figures("readings:\n  - {at: 2026-03-04 08:00}\nweather:\n  - {at: 2026-03-04 18:00}\n", head).ice

    assert ice.hold_melt_kg == pytest.approx(10 * MELT)


@given(loaded=st.decimals(0, 40, places=2), more=st.decimals(0, 10, places=2), seen=st.booleans())
@settings(max_examples=25)
def test_more_ice_is_never_shorter(*, loaded: Decimal, more: Decimal, seen: bool) -> None:
    def lasts(tonnes: Decimal) -> float:
        look = f"readings:\n  - {{at: 17:30, ice left: {tonnes} t}}\n" if seen else ""
        ice = figures(TOWS.replace("10 t", f"{tonnes} t") + look).ice
        return (ice.lasts_until or moment("2099-01-01")).timestamp()

    assert lasts(loaded) <= lasts(loaded + more)


def test_what_is_assumed_is_never_less_ice_laid_than_the_same_logged() -> None:
    assumed, logged = (figures(text).ice for text in (TOWS, TOWS.replace("kg}}\n", "kg}, ice: 500 kg}\n")))

    assert assumed.laid_kg == logged.laid_kg
    assert assumed.left_kg == pytest.approx(logged.left_kg)


def test_fish_with_no_hauled_time_took_ice_too() -> None:
    made = figures(TOWS + "  - {shot: 18:00, hauled: 99:99, catch: {cod: 600 kg}}\n", of=NO_HOLD).ice
    look = figures(
        TOWS
        + "  - {shot: 18:00, hauled: 99:99, catch: {cod: 600 kg}}\nreadings:\n  - {at: 2026-03-04 22:00, ice left: 8 t}\n",
        of=NO_HOLD,
    ).ice

    assert (made.laid_kg, made.left_kg) == (1200, 10500 - 1200)
    assert dict(made.basis)["laid_kg"].endswith("for tows 2–3")
    # Nobody knows that it was laid before the look: after it is less ice.
    assert look.left_kg == 7700


def test_fish_that_waits_for_a_next_tow_is_named() -> None:
    made = figures(TOWS + "  - {shot: 18:00, hauled: 19:00, catch: with next}\n").ice

    assert "without the ice of tow 3, catch not known" in dict(made.basis)["left_kg"]


def test_a_line_of_the_tally_without_ice_is_of_fish_that_took_some_where_others_tell_of_the_tow() -> None:
    more = STOWAGE + "  - {at: 18:00, pen: P2, tows: 1-2, fish: {cod: 300 kg}}\n"
    made = figures(TOWS + more).ice

    assert made.laid_kg == 700 + 150
    assert dict(made.basis)["laid_kg"] == "assumed: 1 kg of ice with 2 kg of fish for tows 1–2"


def test_ice_that_is_gone_is_gone_now_whatever_takes_it() -> None:
    none = "tows:\n  - {shot: 08:00, hauled: 10:00}\nreadings:\n  - {at: 2026-03-04 12:00, ice left: 0 kg}\n"

    assert figures(none, of=NO_HOLD).ice.lasts_until == moment("2026-03-04 12:00")


def test_looks_from_before_the_first_haul_say_nothing_of_what_fish_takes() -> None:
    early = "readings:\n  - {at: 06:00, ice left: 10.5 t}\n  - {at: 08:00, ice left: 10.4 t}\n"
    ice = figures(TOWS + early, at="2026-03-04 18:00").ice

    # Between them 50 kg an hour melted; the rate of catching lays 8000 / 24 / 2 an hour besides the hold's melt.
    assert ice.lasts_until is not None
    hours = (ice.lasts_until - moment("2026-03-04 18:00")).total_seconds() / 3600
    assert hours == pytest.approx((10400 - 900 - 10 * MELT) / (MELT + 8000 / 24 / 2), abs=1e-6)
    # Where they tell of more than that, it counts.
    fast = figures(TOWS + early.replace("10.5 t", "12 t"), at="2026-03-04 18:00").ice
    assert fast.lasts_until is not None
    assert fast.lasts_until - moment("2026-03-04 18:00") == timedelta(
        seconds=round((fast.left_kg or 0) / 800 * 3600, 6)
    )


def test_how_long_it_lasts_names_what_was_assumed_of_fish_to_come() -> None:
    iced = TOWS.replace("kg}}\n", "kg}, ice: 500 kg}\n")
    lavish = iced.replace("ice: 400 kg", "ice: 1000 kg")

    assert dict(figures(lavish).ice.basis) == {}
    assert dict(figures(lavish, of=NO_HOLD).ice.basis)["lasts_until"] == "hold melt not known, left out"
    sparing = figures(iced.replace("ice: 400 kg", "ice: 100 kg")).ice
    assert dict(sparing.basis) == {"lasts_until": "assumed: 1 kg of ice with 2 kg of fish to come"}
    assert dict(figures("ice loaded: 1 t\n").ice.basis) == {
        "lasts_until": "the rate of catching is not known, left out"
    }


def test_readings_after_docking_and_in_any_order_change_nothing() -> None:
    docked = "landed: 2026-03-05 06:00, Port Kerrin\n"
    one, other = "  - {at: 2026-03-04 08:00, ice left: 10 t}\n", "  - {at: 2026-03-04 18:00, ice left: 9 t}\n"
    late = "  - {at: 2026-03-05 09:00, ice left: 1 t, ice taken aboard: 3 t}\n"

    made = [
        figures(TOWS + "readings:\n" + lines + docked).ice for lines in (one + other, other + one, one + other + late)
    ]

    assert made[0] == made[1] == made[2]


@given(kept=st.integers(1, 5000), ice=st.integers(0, 5000))
@settings(max_examples=25)
def test_nothing_logged_never_lasts_longer_than_what_practice_lays_logged(*, kept: int, ice: int) -> None:
    # Torry Advisory Note 15: 1 t of ice to 2 t of fish; less ice than that logged with a tow lasts longer.
    text = f"ice loaded: 10 t\ntows:\n  - {{shot: 10:00, hauled: 12:00, stowed: 13:00, catch: {{cod: {kept} kg}}}}\n"
    assumed = figures(text).ice
    logged = figures(text.replace(" kg}}", f" kg}}, ice: {min(ice, kept // 2)} kg}}")).ice

    assert (assumed.left_kg or 0) <= (logged.left_kg or 0)
    assert assumed.lasts_until is not None
    assert logged.lasts_until is not None
    assert assumed.lasts_until <= logged.lasts_until
