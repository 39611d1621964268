"""Hours and catch by wind and light, the worst of the weather, and ice on deck as it was last looked at."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.weather import WeatherFigures
from tests.reckon.build import figures, moment

LATE = "2026-03-20 00:00"


def weather(text: str, at: str | None = None) -> WeatherFigures:
    return figures(text, at=at).weather


def tows(*lines: str) -> str:
    return "tows:\n" + "".join(f"  - {{{line}}}\n" for line in lines)


def looks(*lines: str) -> str:
    return "weather:\n" + "".join(f"  - {{{line}}}\n" for line in lines) if lines else ""


def test_hours_and_catch_stand_by_force() -> None:
    # By hand: 100 and 50 kg in two and one hours of force 6, 30 kg in one and a half of force 4.
    made = weather(
        tows(
            "shot: 18:00, hauled: 20:00, wind: SW 6, catch: {cod: 100 kg}",
            "shot: 21:00, hauled: 22:00, wind: W 6, catch: {cod: 50 kg}",
            "shot: 23:00, hauled: 00:30, wind: W 4, catch: {cod: 30 kg}",
        )
    )

    assert list(made.hours_by_force.items()) == [("4", 1.5), ("6", 3.0)]
    assert dict(made.kept_kg_per_h_by_force) == {"4": 20.0, "6": 50.0}
    assert (made.worst_force, made.basis) == (6, ())


def test_parts_by_force_add_up_to_the_hours_towed() -> None:
    text = tows(*(f"shot: {5 + n}:30, hauled: {6 + n}:{10 + n}, wind: N {n}" for n in range(13)))

    assert sum(weather(text).hours_by_force.values()) == pytest.approx(figures(text).totals.towed_h)


def test_a_tow_that_caught_nothing_counts_in_the_rate_and_one_whose_catch_is_not_known_does_not() -> None:
    made = weather(
        tows(
            "shot: 18:00, hauled: 19:00, wind: SW 6, catch: nil",
            "shot: 20:00, hauled: 21:00, wind: SW 6, catch: {cod: 50 kg}",
            "shot: 22:00, hauled: 23:00, wind: SW 6",
        )
    )

    assert (made.hours_by_force["6"], made.kept_kg_per_h_by_force["6"]) == (3.0, 25.0)


def test_tows_sorted_together_count_in_the_force_of_the_last() -> None:
    made = weather(
        tows(
            "shot: 18:00, hauled: 20:00, wind: SW 6, catch: with next",
            "shot: 21:00, hauled: 22:00, wind: SW 7, catch: {cod: 60 kg}",
        )
    )

    assert dict(made.hours_by_force) == {"6": 2.0, "7": 1.0}
    assert dict(made.kept_kg_per_h_by_force) == {"6": None, "7": 20.0}


@pytest.mark.parametrize("force", range(13))
def test_every_force_of_the_table_has_hours_of_its_own(force: int) -> None:
    # WMO No. 306, code table 1100: forces 0 (calm) to 12 (hurricane).
    made = weather(tows(f"shot: 18:00, hauled: 19:00, wind: N {force}"))

    assert dict(made.hours_by_force) == {str(force): 1.0}
    assert made.worst_force == force


def test_a_calm_is_force_nought_and_beyond_the_table_there_is_none() -> None:
    # WMO No. 306, code table 1100.
    assert dict(weather(tows("shot: 18:00, hauled: 19:00, wind: calm")).hours_by_force) == {"0": 1.0}
    assert weather(tows("shot: 18:00, hauled: 19:00, wind: N 13")) == WeatherFigures()


@pytest.mark.parametrize(("sea", "worst"), [*((str(code), code) for code in range(10)), ("10", None), ("5-6", 6)])
def test_the_worst_sea_is_a_code_of_the_table(sea: str, worst: int | None) -> None:
    # WMO No. 306, code table 3700: 0 (calm, glassy) to 9 (phenomenal).
    assert weather(looks(f"at: 18:00, sea: {sea}")).worst_sea == worst


def test_the_worst_is_of_tows_and_looks_whatever_its_time() -> None:
    made = weather(
        tows("shot: 18:00, hauled: 19:00, wind: SW 5-7, sea: 3") + looks("at: 27:99, wind: N 8", "at: 20:00, sea: 6")
    )

    assert (made.worst_force, made.worst_sea) == (8, 6)
    assert dict(made.hours_by_force) == {"7": 1.0}


def test_a_tows_own_wind_comes_before_that_of_the_last_look() -> None:
    made = weather(
        tows("shot: 18:00, hauled: 19:00, wind: SW 4", "shot: 20:00, hauled: 21:00")
        + looks("at: 17:00, wind: SW 7", "at: 20:15, wind: SW 8", "at: 20:30, sea: 6", "at: 20:31, wind: SW 9")
    )

    assert dict(made.hours_by_force) == {"4": 1.0, "8": 1.0}


def test_of_two_looks_of_one_time_the_later_typed_holds() -> None:
    made = weather(
        tows("shot: 18:00, hauled: 19:00") + looks("at: 2026-03-04 17:00, wind: N 8", "at: 2026-03-04 17:00, wind: N 5")
    )

    assert dict(made.hours_by_force) == {"5": 1.0}


@pytest.mark.parametrize(
    ("at", "force"),
    [("06:29", None), ("06:30", "7"), ("18:30", "7"), ("18:31", None), ("27:99", None)],
)
def test_a_look_tells_of_tows_after_it_for_twelve_hours(at: str, force: str | None) -> None:
    # Twelve hours are this program's setting. The tow's middle is at 18:30.
    made = weather(
        tows("shot: 18:00, hauled: 19:00", "shot: 20:00, hauled: 21:00, wind: N 3") + looks(f"at: {at}, wind: N 7")
    )

    assert dict(made.hours_by_force) == ({force: 1.0, "3": 1.0} if force else {"3": 1.0})
    assert dict(made.basis) == ({} if force else {"hours_by_force": "without tow 1, no wind"})


def test_where_no_wind_was_logged_there_are_no_forces() -> None:
    made = weather(tows("shot: 18:00, hauled: 19:00, catch: {cod: 1 kg}"))

    assert (dict(made.hours_by_force), made.worst_force, made.worst_sea, made.basis) == ({}, None, None, ())


def test_hours_that_are_not_known_are_not_nought() -> None:
    made = weather(
        tows(
            "hauled: 2026-03-04 19:00, wind: N 3, catch: {cod: 1 kg}",
            "shot: 20:00, hauled: 21:00, wind: N 4",
            "hauled: 2026-03-04 23:00, wind: N 4",
            "shot: 2026-03-05 01:00, wind: N 8",
        )
    )

    assert dict(made.hours_by_force) == {"4": 1.0}
    assert set(made.kept_kg_per_h_by_force) == {"4"}
    assert dict(made.basis)["hours_by_force"] == "without tows 1, 3, hours not known"
    assert made.worst_force == 8


def test_hours_and_catch_stand_by_light() -> None:
    # The sun at 59°N 15°W, 4 March: up at about 08:00 UTC, down at about 18:20 (almanac, from memory); test_light has sources.
    made = weather(
        tows(
            "shot: 2026-03-05 00:00, hauled: 02:00, from: 59 00N 015 00W, catch: {cod: 10 kg}",
            "shot: 12:00, hauled: 13:00, from: 59 00N 015 00W, catch: {cod: 40 kg}",
            "shot: 14:00, hauled: 15:00, catch: {cod: 7 kg}",
            "shot: 23:30, from: 59 00N 015 00W",
        )
    )

    assert dict(made.hours_by_light) == {"day": 1.0, "night": 2.0}
    assert dict(made.kept_kg_per_h_by_light) == {"day": 40.0, "night": 5.0}


def test_gear_down_in_the_only_night_has_no_hours_there() -> None:
    made = weather(tows("shot: 2026-03-05 00:00, from: 59 00N 015 00W, wind: N 5"))

    assert (dict(made.hours_by_light), dict(made.hours_by_force)) == ({}, {})


def icing(text: str, at: str = LATE) -> str | None:
    """Return the icing on deck of some looks at the weather, one a line."""
    return weather(looks(*text.splitlines()), at).icing_on_deck


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("", None),
        ("at: 2026-03-05 08:00, wind: N 8", None),
        ("at: 2026-03-05 08:00, icing: none", None),
        ("at: 2026-03-05 08:00, icing: Severe", "severe"),
        ("at: 2026-03-05 08:00, icing: light\nat: 2026-03-05 12:00, icing: moderate", "moderate"),
        ("at: 2026-03-05 08:00, icing: severe\nat: 2026-03-05 12:00, icing: none", None),
        ("at: 2026-03-05 08:00, icing: severe\nat: 2026-03-05 12:00, wind: N 8", "severe"),
        # whatever the order they were typed in
        ("at: 2026-03-05 12:00, icing: none\nat: 2026-03-05 08:00, icing: severe", None),
        ("at: 2026-03-05 12:00, icing: light\nat: 2026-03-05 08:00, icing: none", "light"),
        # of two of one time the later typed
        ("at: 2026-03-05 08:00, icing: none\nat: 2026-03-05 08:00, icing: severe", "severe"),
        ("at: 2026-03-05 08:00, icing: severe\nat: 2026-03-05 08:00, icing: none", None),
        # one whose time can't be read stands where it was typed
        ("at: 27:99, icing: severe", "severe"),
        ("at: 2026-03-05 08:00, icing: none\nat: 27:99, icing: severe", "severe"),
        ("at: 27:99, icing: severe\nat: 2026-03-05 08:00, icing: none", None),
        ("at: 2026-03-05 08:00, icing: slight\nat: 2026-03-05 07:00, icing: light", "light"),
    ],
)
def test_only_the_last_look_that_says_anything_of_icing_counts(text: str, found: str | None) -> None:
    assert icing(text) == found


def test_a_look_after_the_moment_does_not_count() -> None:
    text = "at: 2026-03-05 08:00, icing: none\nat: 2026-03-05 12:00, icing: severe\nat: 27:99, icing: light"

    assert icing(text, "2026-03-05 11:59") is None
    assert icing(text, "2026-03-05 12:00") == "light"
    assert icing("at: 2026-03-05 12:00, icing: severe", "2026-03-05 11:59") is None


@given(st.lists(st.sampled_from(("none", "light", "moderate", "severe")), min_size=1, max_size=20))
def test_any_order_of_looks_with_times_of_their_own_says_the_same(words: list[str]) -> None:
    text = [f"at: 2026-03-{5 + n // 24:02d} {n % 24:02d}:00, icing: {word}" for n, word in enumerate(words)]

    assert icing("\n".join(text)) == icing("\n".join(reversed(text))) == (None if words[-1] == "none" else words[-1])


def test_the_worst_icing_stays_when_the_deck_is_clear_again() -> None:
    made = weather(
        looks(
            "at: 2026-03-05 08:00, icing: moderate",
            "at: 2026-03-05 09:00, icing: severe",
            "at: 2026-03-05 12:00, icing: light",
        )
    )

    assert (made.icing, made.icing_on_deck) == ("severe", "light")
    assert made.icing_on_deck_at == moment("2026-03-05 12:00")
    assert weather(looks("at: 2026-03-05 08:00, icing: none")).icing == "none"
    assert weather(looks("at: 2026-03-05 08:00, wind: N 4")).icing is None
