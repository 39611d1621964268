from datetime import UTC, datetime, timedelta, timezone

from logbook.render.clock import clock_of

NOON = datetime(2026, 3, 5, 12, tzinfo=UTC)
EAST = NOON.astimezone(timezone(timedelta(hours=1)))


def test_one_clock_is_said_plainly() -> None:
    assert clock_of([NOON, NOON], "UTC").words == "Times are UTC."
    assert clock_of([EAST], "+01:00").words == "Times are UTC+01:00."


def test_a_zone_that_tells_more_than_its_offset_is_named() -> None:
    assert clock_of([NOON], "Europe/London").words == "Times are UTC (Europe/London)."


def test_the_clock_most_times_go_by_is_said_and_others_say_so() -> None:
    clock = clock_of([EAST, NOON, NOON])

    assert clock.offset == timedelta(0)
    assert clock.words == "Times are UTC; those by another clock say so."


def test_of_two_as_frequent_the_lesser_is_said_whatever_the_order() -> None:
    assert clock_of([EAST, NOON]) == clock_of([NOON, EAST])


def test_no_time_has_no_clock() -> None:
    assert clock_of([]).words == ""
