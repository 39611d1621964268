"""Distance, speed, swept area, place and light of one tow."""

import pytest

from tests.reckon.build import figures


def one(parts: str) -> object:
    return figures(f"tows:\n  - {{shot: 12:00, {parts}}}\n").tows[0]


@pytest.mark.parametrize("parts", ["from: 58 48N 015 04W", "hauled: 13:00, to: 58 48N 015 04W"])
def test_where_one_end_is_known_that_is_its_place(parts: str) -> None:
    (tow,) = figures(f"tows:\n  - {{shot: 12:00, {parts}}}\n").tows

    assert (tow.rectangle, tow.light, tow.distance_nm) == ("46D4", "day", None)


def test_without_a_position_or_a_time_there_is_no_light() -> None:
    nowhere = figures("tows:\n  - {shot: 12:00, hauled: 13:00}\n").tows[0]
    never = figures("tows:\n  - {shot: 99:99, hauled: 2026-03-04 13:00, from: 58 48N 015 04W}\n").tows[0]

    assert nowhere.light is nowhere.rectangle is None
    assert never.light is None
    assert never.rectangle == "46D4"


def test_the_way_leads_through_every_turn() -> None:
    (tow,) = figures(
        "tows:\n  - {shot: 12:00, hauled: 14:00, from: 58 48N 015 04W, via: [58 51N 015 04W], to: 58 48N 015 04W}\n"
    ).tows

    # Twice three minutes of the meridian; a minute of latitude at 59 N is about 1857 m on WGS84.
    assert tow.distance_nm == pytest.approx(6 * 1857 / 1852, abs=0.005)
    assert tow.speed_kn == pytest.approx((tow.distance_nm or 0) / 2)


def test_hauled_before_it_was_shot_has_no_duration_and_is_named() -> None:
    made = figures("tows:\n  - {shot: 2026-03-04 12:00, hauled: 2026-03-04 11:00, speed: 3 kn, catch: {cod: 10 kg}}\n")

    assert made.tows[0].duration_h is made.tows[0].distance_nm is None
    assert made.totals.fishing_days is None


def test_warp_over_no_depth_is_no_ratio() -> None:
    assert figures("tows:\n  - {shot: 12:00, depth: 0 m, warp: 300 m}\n").tows[0].warp_to_depth is None
