"""Bare times put on their days: midnight, anchors, doubt, clock changes, written dates."""

from datetime import UTC, datetime

import pytest

from tests.read.logs import codes, read, said, trip

HEAD = "vessel: Solan Bright\nsailed: 2026-03-04 05:30, Port Kerrin\n"


def at(text: str) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def shots(text: str) -> list[tuple[datetime | None, datetime | None]]:
    return [(tow.shot, tow.hauled) for tow in trip(HEAD + text).tows]


def test_a_bare_time_is_the_first_such_time_not_before_its_anchor() -> None:
    assert shots("tows:\n  - {shot: 18:10, hauled: 19:40}\n  - {shot: 23:50, hauled: 01:20}\n") == [
        (at("2026-03-04 18:10"), at("2026-03-04 19:40")),
        (at("2026-03-04 23:50"), at("2026-03-05 01:20")),
    ]


def test_midnight_itself_belongs_to_the_new_day() -> None:
    assert shots("tows:\n  - {shot: 22:30, hauled: 0000}\n  - {shot: 00:00, hauled: 01:30}\n") == [
        (at("2026-03-04 22:30"), at("2026-03-05 00:00")),
        (at("2026-03-05 00:00"), at("2026-03-05 01:30")),
    ]


def test_a_shot_a_little_before_the_haul_stays_on_that_day_and_is_told() -> None:
    made, problems = read(HEAD + "tows:\n  - 1810-1940, cod 2 baskets\n  - 1930-2100, cod 2 baskets\n")

    assert made is not None
    assert made.tows[1].shot == at("2026-03-04 19:30")
    assert codes(problems) == ["tows-overlap"]


def test_the_first_shot_is_never_put_before_sailing() -> None:
    assert shots("tows:\n  - {shot: 04:30, hauled: 06:00}\n")[0][0] == at("2026-03-05 04:30")


def test_a_shot_long_after_the_haul_before_it_is_doubtful() -> None:
    made, problems = read(HEAD + "tows:\n  - 1810-1940, cod 2 baskets\n  - 0810-0940, cod 2 baskets\n")

    assert made is not None
    assert made.tows[1].shot == at("2026-03-05 08:10")
    assert said(problems) == ["5:5 time-doubtful"]


def test_a_haul_over_twelve_hours_on_is_an_error_and_anchors_nothing() -> None:
    made, problems = read(HEAD + "tows:\n  - {shot: 18:10, hauled: 17:40}\n  - {shot: 20:15, hauled: 21:45}\n")

    assert made is not None
    assert made.tows[0].hauled is None
    assert made.tows[1].shot == at("2026-03-04 20:15")
    assert codes(problems) == ["time-too-long"]


def test_a_day_line_settles_the_times_below_it() -> None:
    made, problems = read(
        HEAD + "tows:\n  - 1810-1940, cod 2 baskets\n  - day: Fri 6 March\n  - 0810-0940, cod 2 baskets\n"
    )

    assert made is not None
    assert problems == ()
    assert made.tows[1].shot == at("2026-03-06 08:10")


@pytest.mark.parametrize("line", ["2026-03-06", "6 March", "Fri 6 March", "6 Mar 2026"])
def test_every_form_of_a_day_line_is_read(line: str) -> None:
    assert shots(f"tows:\n  - day: {line}\n  - {{shot: 08:10}}\n")[0][0] == at("2026-03-06 08:10")


def test_a_weekday_that_disagrees_is_an_error_and_the_day_is_not_used() -> None:
    made, problems = read(
        HEAD + "tows:\n  - 1810-1940, cod 2 baskets\n  - day: Mon 6 March\n  - 2010-2140, cod 2 baskets\n"
    )

    assert made is not None
    assert codes(problems) == ["weekday-wrong"]
    assert made.tows[1].shot == at("2026-03-04 20:10")


def test_a_day_line_without_its_year_takes_the_nearest() -> None:
    text = "vessel: Solan Bright\nsailed: 2026-12-30 05:30\ntows:\n  - day: 2 January\n  - {shot: 08:10}\n"

    assert trip(text).tows[0].shot == at("2027-01-02 08:10")


def test_29_february_is_read_in_a_leap_year_and_refused_in_others() -> None:
    leap = trip(
        "vessel: Solan Bright\nsailed: 2024-02-28 20:00\ntows:\n  - {shot: 23:00, hauled: 00:30}\n  - day: 29 February\n  - {shot: 08:00}\n"
    )
    _, problems = read(
        "vessel: Solan Bright\nsailed: 2026-02-27 20:00\ntows:\n  - day: 29 February\n  - {shot: 08:00}\n"
    )

    assert leap.tows[0].hauled == at("2024-02-29 00:30")
    assert leap.tows[1].shot == at("2024-02-29 08:00")
    assert "no-such-day" in codes(problems)


def test_a_written_date_makes_a_later_bare_time_above_it_the_error() -> None:
    made, problems = read(
        HEAD
        + "tows:\n  - {shot: 18:10, hauled: 19:40}\n  - {shot: 15:00, hauled: 16:20}\n  - {shot: 2026-03-04 21:00, hauled: 22:30}\n"
    )

    assert made is not None
    assert [tow.shot for tow in made.tows] == [at("2026-03-04 18:10"), None, at("2026-03-04 21:00")]
    assert codes(problems).count("time-before-bare") == 2


def test_hauled_before_shot_with_both_dates_is_an_error() -> None:
    made, problems = read(HEAD + "tows:\n  - {shot: 2026-03-04 18:10, hauled: 2026-03-04 17:40}\n")

    assert made is not None
    assert made.tows[0].hauled is None
    assert codes(problems) == ["hauled-before-shot"]


def test_nothing_before_a_bare_time_is_an_error_that_asks_for_the_date() -> None:
    made, problems = read("vessel: Solan Bright\nsailed: 05:30\ntows:\n  - {shot: 2026-03-04 18:10}\n")

    assert made is not None
    assert made.sailed is None
    assert made.begins == at("2026-03-04 18:10")
    assert "time-no-anchor" in codes(problems)


def test_at_a_clock_change_the_earlier_reading_is_taken_with_a_warning() -> None:
    # Europe/Oslo, 25 October 2026: 02:30 comes twice (tz database).
    text = (
        "vessel: Solan Bright\nzone: Europe/Oslo\nsailed: 2026-10-24 20:00\ntows:\n  - {shot: 02:30, hauled: 04:00}\n"
    )
    made, problems = read(text)

    assert made is not None
    assert made.tows[0].shot == at("2026-10-25 00:30")
    assert made.tows[0].hauled == at("2026-10-25 03:00")
    assert codes(problems) == ["time-clock-change"]


def test_a_time_with_its_own_offset_is_that_moment() -> None:
    text = "vessel: Solan Bright\nzone: Europe/Oslo\nsailed: 2026-03-04 05:30\ntows:\n  - {shot: 18:10Z, hauled: 2026-03-04T19:40Z}\n"

    tow = trip(text).tows[0]

    assert (tow.shot, tow.hauled) == (at("2026-03-04 18:10"), at("2026-03-04 19:40"))
    assert tow.shot is not None
    assert tow.shot.isoformat() == "2026-03-04T19:10:00+01:00"


def test_turned_docked_and_landed_follow_each_other() -> None:
    made = trip(
        HEAD
        + "tows:\n  - {shot: 18:10, hauled: 19:40}\nturned for home: 20:15\nlanded:\n  port: Port Kerrin\n  docked: 07:15\n"
        "  started landing: 06:00\n  finished landing: 12:00\n"
    )

    landing = made.landings[0]
    assert made.turned is not None
    assert made.turned.at == at("2026-03-04 20:15")
    assert landing.docked == at("2026-03-05 07:15")
    assert landing.started is None  # 06:00 would be 23 h after docking: an error
    assert landing.finished == at("2026-03-05 12:00")


def test_readings_follow_the_item_above_and_the_last_one_of_the_same_pen() -> None:
    made = trip(
        HEAD
        + "readings:\n  - {at: 2026-03-06 08:00, temperatures: {P1: 0.4 C, P2: 0.8 C}}\n  - {at: 08:00, ice left: 9 t}\n"
        "  - {at: 08:00, pen: P1, temperature: 0.5 C}\n"
    )

    assert [reading.at for reading in made.readings] == [
        at("2026-03-06 08:00"),
        at("2026-03-06 08:00"),
        at("2026-03-07 08:00"),
    ]


def test_rest_of_two_hands_may_overlap_and_one_hands_periods_follow() -> None:
    made = trip(
        HEAD + "rest:\n  - {who: A. Fell, from: 06:00, to: 12:00}\n  - {who: B. Rime, from: 06:00, to: 11:00}\n"
        "  - {who: A. Fell, from: 12:00, to: 02:00}\n"
    )

    assert [(period.start, period.end) for period in made.rest] == [
        (at("2026-03-04 06:00"), at("2026-03-04 12:00")),
        (at("2026-03-04 06:00"), at("2026-03-04 11:00")),
        (at("2026-03-04 12:00"), at("2026-03-05 02:00")),
    ]


def test_weather_and_fixes_come_after_the_item_above() -> None:
    made = trip(HEAD + "weather:\n  - {at: 06:00, wind: SW 6}\n  - {at: 06:00, wind: W 5}\n")

    assert [look.at for look in made.weather] == [at("2026-03-04 06:00"), at("2026-03-05 06:00")]
