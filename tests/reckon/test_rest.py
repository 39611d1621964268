"""Rest against ILO C188 (2007) Art. 14(1)(b), worked examples, and a count of every minute.

The convention's hours, as quoted at sramodulesonseafood.org, "1.1.6. Adequate Rest": for vessels that stay at sea for more than
three days, "minimum hours of rest shall not be less than: (i) ten hours in any 24-hour period; and (ii) 77 hours in any seven-day
period".
"""

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from itertools import accumulate
from operator import sub
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.named import ByName
from logbook.model.past import Rested
from logbook.model.problem import Place
from logbook.model.rest import RestFigures
from logbook.model.trip import Period, Trip, Watch
from logbook.reckon.rest import reckon_rest, rest_until, rested
from tests.read.logs import codes, read, trip
from tests.reckon.build import moment

DAY, HOUR, MINUTE = timedelta(days=1), timedelta(hours=1), timedelta(minutes=1)
BILL = "from the watch bill, not a record"
PLACE = Place(file="trip.yaml", line=1, column=1)
SAILED = moment("2026-02-25 00:00")


def stamp(at: datetime) -> str:
    return f"{at:%Y-%m-%d %H:%M}"


def log(text: str = "", *, sailed: str = "2026-02-25 00:00", landed: str | None = None, zone: str = "UTC") -> Trip:
    """Return the trip of a log in which nothing is wrong but that it has no tows."""
    landing = f"landed: {landed}, Port Kerrin\n" if landed else ""
    made, problems = read(f"vessel: Solan Bright\nzone: {zone}\nsailed: {sailed}, Port Kerrin\n{text}{landing}")
    assert made is not None
    assert codes(problems) == ["no-tows"]
    return made


def entries(*periods: str, who: str = "A. Fell") -> str:
    """Return the lines of one hand's rest: `2026-02-25 06:00 to 12:00`."""
    split = (period.split(" to ") for period in periods)
    return "".join(f"  - {{who: {who}, from: {start}, to: {end}}}\n" for start, end in split)


def daily(days: int, *hours: tuple[float, float]) -> str:
    """Return the lines of rest at the same hours, counted from midnight, of every day from sailing."""
    return "rest:\n" + entries(
        *(
            f"{stamp(SAILED + n * DAY + start * HOUR)} to {stamp(SAILED + n * DAY + end * HOUR)}"
            for n in range(days)
            for start, end in hours
        )
    )


def only(trip: Trip, as_of: str = "2026-06-01 00:00", earlier: Sequence[Trip] = ()) -> RestFigures:
    """Return the figures of the one hand of a trip."""
    (figures,) = reckon_rest(trip, moment(as_of), [rested(one) for one in earlier]).values()
    return figures


@pytest.mark.parametrize(
    ("hours", "day", "week", "met"),
    [
        # Worked by hand from the convention's two limits.
        pytest.param([(6, 12), (18, 24)], 12, 84, True, id="six on, six off"),
        pytest.param([(14, 24)], 10, 70, False, id="fourteen on, ten off: the week fails by 7 h"),
        pytest.param([(0, 3), (8, 11), (16, 20)], 10, 70, False, id="rest of 3, 3 and 4 h: the day passes"),
        pytest.param([(8, 12), (20, 24)], 8, 56, False, id="eight on, four off: 8 h a day"),
        # ILO C188 (2007) Art. 14(1)(b): "not less than" 77 hours, so 11 h a day are just enough.
        pytest.param([(0, 11)], 11, 77, True, id="just enough"),
        pytest.param([(0, 10.9)], 10.9, 76.3, False, id="six minutes a day too little"),
    ],
)
def test_a_week_of_the_same_days_is_measured_by_both_limits(
    hours: list[tuple[float, float]], day: float, week: float, *, met: bool
) -> None:
    figures = only(log(daily(7, *hours), landed="2026-03-04 00:00"))

    assert (figures.worst_24h_rest_h, figures.worst_7d_rest_h) == (day, pytest.approx(week))
    assert figures.c188_hours_met is met
    assert (figures.worst_24h_from, figures.worst_7d_from) == (SAILED, SAILED)
    assert figures.periods_a_day == len(hours)
    assert figures.basis == ()


@pytest.mark.parametrize(("minutes", "met"), [(0, None), (1, False)])
def test_ten_hours_in_a_day_pass_and_a_minute_less_fails(minutes: int, *, met: bool | None) -> None:
    # ILO C188 (2007) Art. 14(1)(b)(i): "not less than ten hours in any 24-hour period". Without a week the other limit is not known.
    rest = f"2026-02-25 06:00 to {stamp(SAILED + 16 * HOUR - minutes * MINUTE)}"

    assert only(log("rest:\n" + entries(rest), landed="2026-02-26 00:00")).c188_hours_met is met


def test_any_24_hours_are_those_that_run_over_midnight_too() -> None:
    # Worked by hand: rest from 00 to 10, the next from 01 of the next day. Each day by the calendar has ten hours; the 24 h from 01:00 have nine, and so have all to those from 10:00.
    figures = only(
        log("rest:\n" + entries("2026-02-25 00:00 to 10:00", "2026-02-26 01:00 to 11:00"), landed="2026-02-27 00:00")
    )

    assert (figures.worst_24h_rest_h, figures.worst_24h_from) == (9, moment("2026-02-25 01:00"))
    assert figures.c188_hours_met is False


def test_a_rest_over_midnight_and_the_end_of_a_month_is_one_rest() -> None:
    figures = only(log("rest:\n" + entries("2026-02-28 20:00 to 06:30"), landed="2026-03-02 00:00"))

    assert figures.longest_unbroken_h == 10.5
    assert figures.periods_a_day == pytest.approx(1 / 5)
    assert (figures.worst_24h_rest_h, figures.worst_24h_from) == (0, SAILED)


@pytest.mark.parametrize(
    ("sailed", "landed", "rest", "hours"),
    [
        # IANA tz database: Europe/Oslo goes from +01:00 to +02:00 on 29 March 2026 at 02:00 and back on 25 October 2026 at 03:00.
        ("2026-03-28 12:00", "2026-03-29 20:00", "2026-03-28 22:00 to 2026-03-29 06:00", 7),
        ("2026-10-24 12:00", "2026-10-25 20:00", "2026-10-24 22:00 to 2026-10-25 06:00", 9),
    ],
)
def test_rest_over_a_clock_change_is_as_long_as_it_was(sailed: str, landed: str, rest: str, hours: float) -> None:
    figures = only(log("rest:\n" + entries(rest), sailed=sailed, landed=landed, zone="Europe/Oslo"))

    assert figures.longest_unbroken_h == hours


def test_24_hours_over_a_clock_change_are_24_hours_and_shown_by_the_log_s_clocks() -> None:
    text = "rest:\n" + entries("2026-03-28 06:00 to 2026-03-29 04:00")
    figures = only(log(text, sailed="2026-03-28 06:00", landed="2026-03-29 09:00", zone="Europe/Oslo"))

    # From 08:00 to 09:00 of the next day by the clocks, an hour of which was skipped: 20 h by the clocks to 04:00, 19 in truth.
    assert figures.worst_24h_from is not None
    assert figures.worst_24h_from.isoformat() == "2026-03-28T08:00:00+01:00"
    assert figures.worst_24h_rest_h == 19


def test_the_worst_day_after_a_clock_change_has_the_new_offset() -> None:
    text = "rest:\n" + entries("2026-03-28 00:00 to 2026-03-29 12:00")
    figures = only(log(text, sailed="2026-03-28 00:00", landed="2026-03-31 00:00", zone="Europe/Oslo"))

    assert figures.worst_24h_from is not None
    assert figures.worst_24h_from.isoformat() == "2026-03-29T12:00:00+02:00"


def test_periods_that_overlap_or_touch_are_one() -> None:
    rest = entries(
        "2026-02-25 06:00 to 2026-02-25 10:00",
        "2026-02-25 09:00 to 2026-02-25 12:00",
        "2026-02-25 12:00 to 14:00",
        "2026-02-25 20:00 to 22:00",
    )
    figures = only(log("rest:\n" + rest, landed="2026-02-26 00:00"))

    assert figures.longest_unbroken_h == 8
    assert figures.worst_24h_rest_h == 10
    assert figures.periods_a_day == 2


def test_a_period_without_an_end_is_left_out_and_named() -> None:
    text = "rest:\n  - {who: Ann, from: 2026-02-25 06:00, to: ?}\n" + entries("2026-02-25 12:00 to 18:00", who="Ann")
    figures = only(
        trip("vessel: Solan Bright\nsailed: 2026-02-25 00:00\n" + text + "landed: 2026-02-26 00:00, Port Kerrin\n")
    )

    assert figures.worst_24h_rest_h == 6
    assert dict(figures.basis)["worst_24h_rest_h"] == "rest with no beginning or no end left out: line 4 of trip.yaml"
    assert dict(figures.basis).keys() == {"worst_24h_rest_h", "longest_unbroken_h", "periods_a_day", "c188_hours_met"}


def test_a_period_that_began_after_landing_is_not_missed() -> None:
    text = "vessel: Solan Bright\nsailed: 2026-02-25 00:00\nrest:\n" + entries("2026-02-25 12:00 to 18:00", who="Ann")
    after = "  - {who: Ann, from: 2026-02-26 06:00, to: ?}\nlanded: 2026-02-26 00:00, Port Kerrin\n"

    assert only(trip(text + after)).basis == ()


def test_of_a_hand_whose_periods_can_not_be_used_nothing_is_known() -> None:
    text = "vessel: Solan Bright\nsailed: 2026-02-25 00:00\nrest:\n  - {who: Ann, from: ?, to: 2026-02-25 12:00}\n"
    figures = only(trip(text + "landed: 2026-03-06 00:00, Port Kerrin\n"))

    assert figures.worst_24h_rest_h is figures.worst_7d_rest_h is figures.longest_unbroken_h is None
    assert figures.worst_24h_from is figures.worst_7d_from is figures.periods_a_day is figures.c188_hours_met is None
    assert dict(figures.basis) == {"c188_hours_met": "rest with no beginning or no end left out: line 4 of trip.yaml"}


def test_in_three_days_no_week_fits() -> None:
    figures = only(log(daily(3, (0, 12)), landed="2026-02-28 00:00"))

    assert (figures.worst_24h_rest_h, figures.worst_7d_rest_h, figures.worst_7d_from) == (12, None, None)
    assert figures.c188_hours_met is None


def test_in_a_few_hours_no_day_fits_and_at_sailing_nothing_is_known() -> None:
    sailed = log("rest:\n" + entries("2026-02-25 06:00 to 10:00"))
    short, none = only(sailed, "2026-02-25 12:00"), only(sailed, "2026-02-25 00:00")

    assert (short.worst_24h_rest_h, short.longest_unbroken_h, short.periods_a_day) == (None, 4, 2)
    assert (none.worst_24h_rest_h, none.longest_unbroken_h, none.periods_a_day) == (None, None, None)


def test_at_sea_the_figures_end_at_their_moment() -> None:
    figures = only(log("rest:\n" + entries("2026-02-25 20:00 to 2026-02-26 08:00")), "2026-02-26 02:00")

    assert figures.longest_unbroken_h == 6
    assert (figures.worst_24h_rest_h, figures.worst_24h_from) == (4, SAILED)


def test_landing_counts_until_it_was_finished() -> None:
    text = "rest:\n" + entries("2026-02-25 00:00 to 2026-02-26 00:00", "2026-02-26 20:00 to 22:00")
    landing = "landed: {port: Port Kerrin, docked: 2026-02-26 00:00, started landing: 12:00, finished landing: 23:00}\n"
    made = log(text + landing)
    figures = only(made)

    assert rest_until(made) == moment("2026-02-26 23:00")
    assert (figures.worst_24h_rest_h, figures.worst_24h_from) == (3, moment("2026-02-25 23:00"))


def test_hours_before_the_first_entry_count_as_work() -> None:
    figures = only(log("rest:\n" + entries("2026-02-27 00:00 to 2026-02-28 00:00"), landed="2026-02-28 00:00"))

    assert (figures.worst_24h_rest_h, figures.worst_24h_from) == (0, SAILED)


def test_a_name_is_matched_whatever_its_case_and_shown_as_first_typed() -> None:
    rest = entries("2026-02-25 06:00 to 10:00", who="A. FELL") + entries("2026-02-25 12:00 to 14:00", who="a.  fell")
    figures = reckon_rest(log("rest:\n" + rest, landed="2026-02-26 00:00"), SAILED)

    assert [*figures] == ["A. FELL"]
    assert [one.worst_24h_rest_h for one in figures.values()] == [6]


def test_rest_of_nobody_is_nobody_s() -> None:
    made = trip("vessel: Solan Bright\nsailed: 2026-02-25 00:00\nrest:\n  - {from: 2026-02-25 06:00, to: 12:00}\n")

    assert len(made.rest) == 1
    assert reckon_rest(made, moment("2026-02-26 00:00")) == ByName()


def test_a_log_without_rest_and_watches_tells_of_nobody() -> None:
    assert reckon_rest(log(landed="2026-02-26 00:00"), SAILED) == ByName()


# The watch bill.


def bill(text: str, **head: str) -> ByName[RestFigures]:
    return reckon_rest(log(text, **head), moment("2026-12-31 00:00"))


def test_off_watch_is_rest_by_the_watch_bill_and_says_so() -> None:
    # six on, six off for seven days: 12 h in 24, 84 h in seven days.
    figures = bill("watches: {port: 00-06 12-18, starboard: 06-12 18-24}\n", landed="2026-03-04 00:00")

    assert [*figures] == ["port", "starboard"]
    for watch in figures.values():
        assert (watch.worst_24h_rest_h, watch.worst_7d_rest_h, watch.longest_unbroken_h) == (12, 84, 6)
        assert watch.c188_hours_met is True
        assert {words for _, words in watch.basis} == {BILL}
        assert len(watch.basis) == 5


def test_all_hands_is_no_rest() -> None:
    figures = bill(
        "watches: {port: 00-06 12-18, starboard: 06-12 18-24}\n"
        "all hands:\n  - {from: 2026-02-25 05:00, to: 2026-02-25 09:30, why: wing torn}\n  - {from: 2026-02-25 09:00, to: 2026-02-25 10:00}\n",
        landed="2026-02-26 00:00",
    )

    assert (figures["port"].worst_24h_rest_h, figures["port"].longest_unbroken_h) == (8, 6)
    assert (figures["starboard"].worst_24h_rest_h, figures["starboard"].longest_unbroken_h) == (11, 6)


def test_all_hands_without_an_end_leaves_open_whether_the_hours_were_met() -> None:
    text = (
        "vessel: Solan Bright\nsailed: 2026-02-25 00:00\nwatches: {port: 00-06 12-18}\n"
        "all hands:\n  - {from: 2026-02-26 05:00, to: ?}\nlanded: 2026-03-06 00:00, Port Kerrin\n"
    )
    figures = only(trip(text))

    assert (figures.worst_24h_rest_h, figures.worst_7d_rest_h, figures.c188_hours_met) == (12, 84, None)
    assert dict(figures.basis)["c188_hours_met"] == (
        f"{BILL}; all hands with no beginning or no end left out: line 5 of trip.yaml"
    )


def test_a_watch_over_midnight_is_one_watch() -> None:
    (dog,) = bill("watches: {dog: 20-02}\n", landed="2026-03-04 00:00").values()

    assert (dog.longest_unbroken_h, dog.worst_24h_rest_h, dog.worst_7d_rest_h) == (18, 18, 126)


@pytest.mark.parametrize(
    ("day", "hours"),
    [
        # IANA tz database: clocks in Europe/Oslo skip 02 to 03 on 29 March 2026 and show it twice on 25 October 2026, so the
        # watch from 00 to 06 is five hours long, or seven; that much the other watch is off.
        ("2026-03-28", 6),
        ("2026-03-29", 5),
        ("2026-10-25", 7),
    ],
)
def test_the_watch_bill_goes_by_the_clock_when_clocks_change(day: str, hours: float) -> None:
    text = "watches: {port: 00-06 12-18, starboard: 06-12 18-24}\n"
    figures = bill(text, sailed=f"{day} 00:00", landed=f"{day} 10:00", zone="Europe/Oslo")

    assert {name: one.longest_unbroken_h for name, one in figures.items()} == {"port": 4, "starboard": hours}


@pytest.mark.parametrize(
    ("zone", "hours"), [("UTC", 6), ("+01:00", 5), ("-03:30", 9.5), ("Europe/Oslo", 4), ("America/St_Johns", 8.5)]
)
def test_the_watch_bill_is_by_the_clocks_of_the_log(zone: str, hours: float) -> None:
    # IANA tz database: in July +02:00 in Europe/Oslo and -02:30 in America/St_Johns. From 04:00 UTC it is that long to 10:00 there.
    made = replace(log("watches: {day: 10-24}\n", zone=zone), sailed=moment("2026-07-02 04:00"))
    figures = only(made, "2026-07-02 20:00")

    assert figures.longest_unbroken_h == hours


def test_entries_count_before_the_watch_bill() -> None:
    text = "watches: {Port: 00-06 12-18}\nrest:\n" + entries("2026-02-25 06:00 to 10:00", who="port")
    (figures,) = bill(text, landed="2026-02-26 00:00").values()

    assert (figures.worst_24h_rest_h, figures.basis) == (4, ())


def test_rest_before_sailing_leaves_the_watch_bill_of_the_trip_as_it_is() -> None:
    before = log("watches: {port: 10-24}\n", landed="2026-03-01 00:00")
    ashore = entries("2026-03-01 00:00 to 2026-03-02 00:00", who="port")
    text = f"watches: {{port: 12-24}}\nrest:\n{ashore}"
    figures = only(log(text, sailed="2026-03-02 00:00", landed="2026-03-06 00:00"), earlier=[before])

    # As with entries: four days of 10 h, one of 24 h, and 12 h of each of two.
    assert (figures.worst_24h_rest_h, figures.worst_7d_rest_h) == (12, 88)
    assert dict(figures.basis)["worst_7d_rest_h"] == BILL


def test_where_entries_can_not_be_used_the_watch_bill_is() -> None:
    text = "vessel: Solan Bright\nsailed: 2026-02-25 00:00\nwatches: {port: 00-06 12-18}\nrest:\n"
    figures = only(
        trip(text + "  - {who: Port, from: 2026-02-25 08:00, to: ?}\nlanded: 2026-02-26 00:00, Port Kerrin\n")
    )

    assert figures.worst_24h_rest_h == 12
    assert dict(figures.basis)["worst_24h_rest_h"] == (
        f"{BILL}; rest with no beginning or no end left out: line 5 of trip.yaml"
    )


# The week over several trips.


def first(*more: str, landed: str = "2026-03-01 00:00") -> Trip:
    """Return four days of which the first ten hours were rest."""
    rest = daily(4, (0, 10)) + entries(*more)
    return log(rest, landed=landed)


def second(*more: str, sailed: str = "2026-03-02 00:00") -> Trip:
    """Return four days from the second of March of which the first twelve hours were rest."""
    days = [f"2026-03-0{n} 00:00 to 2026-03-0{n} 12:00" for n in range(2, 6)]
    return log("rest:\n" + entries(*more, *days), sailed=sailed, landed="2026-03-06 00:00")


@pytest.mark.parametrize(
    ("before", "own"),
    [
        (["2026-03-01 00:00 to 2026-03-02 00:00"], []),
        (["2026-03-01 00:00 to 2026-03-01 13:00"], ["2026-03-01 13:00 to 2026-03-02 00:00"]),
    ],
)
def test_the_week_runs_on_over_two_trips_where_all_the_time_between_is_rest(before: list[str], own: list[str]) -> None:
    # By hand, of the windows at midnight: 24 Feb 25 is too early to end in the trip; from 25 Feb 00:00 to 4 March 00:00 there are
    # four days of 10 h, one of 24 h and two of 12 h: 88 h; each day later takes 10 h away and adds 12 h.
    figures = only(second(*own), earlier=[first(*before)])

    assert (figures.worst_7d_rest_h, figures.worst_24h_rest_h) == (88, 12)
    assert figures.worst_7d_from == moment("2026-02-25 00:00")
    assert figures.c188_hours_met is True


@pytest.mark.parametrize(
    "before",
    [
        pytest.param([first()], id="nothing between"),
        pytest.param([first("2026-03-01 00:00 to 2026-03-01 23:59")], id="a minute short"),
        pytest.param([first("2026-03-01 00:00 to 2026-03-02 00:00", landed="2026-02-28 23:00")], id="landed earlier"),
        pytest.param([log(daily(4, (0, 10)))], id="no landing"),
        pytest.param(
            [first("2026-03-01 00:00 to 2026-03-02 00:00"), log(sailed="2026-03-01 06:00")], id="no landing of the last"
        ),
        pytest.param([log("watches: {port: 00-06}\n", landed="2026-03-02 00:00")], id="another hand"),
        pytest.param([], id="no trip"),
    ],
)
def test_without_that_no_week_fits(before: list[Trip]) -> None:
    figures = only(second(), earlier=before)

    assert (figures.worst_7d_rest_h, figures.worst_7d_from, figures.c188_hours_met) == (None, None, None)


def test_trips_with_no_time_between_are_one_week() -> None:
    before = log(daily(5, (0, 10)), landed="2026-03-02 00:00")
    figures = only(second(), earlier=[before])

    # Five days of 10 h and two of 12 h.
    assert (figures.worst_7d_rest_h, figures.worst_7d_from) == (74, SAILED)
    assert (figures.worst_24h_rest_h, figures.c188_hours_met) == (12, False)


@pytest.mark.parametrize(
    ("ended", "week"),
    [
        # By hand: a day of 12 h rest after six days ashore, of which all is logged.
        ("2026-03-13 00:01", 6 * 24 + 12),
        # The trip before is no part of any seven days that end in this one.
        ("2026-03-13 00:00", None),
    ],
)
def test_the_week_runs_on_into_a_trip_that_ended_less_than_a_week_ago(ended: str, week: float | None) -> None:
    rest = "rest:\n" + entries("2026-03-20 00:00 to 2026-03-20 12:00")
    sailed = log(rest, sailed="2026-03-20 00:00", landed="2026-03-21 00:00")
    before = log("rest:\n" + entries("2026-03-12 00:00 to 2026-03-20 00:00"), landed=ended)

    assert only(sailed, earlier=[before]).worst_7d_rest_h == week


def test_the_watch_bill_of_a_trip_before_is_said_of_the_week_alone() -> None:
    before = log("watches: {a. fell: 10-24}\n", landed="2026-03-02 00:00")
    figures = only(second(), earlier=[before])

    assert figures.worst_7d_rest_h == 74
    assert dict(figures.basis) == {"worst_7d_rest_h": BILL, "c188_hours_met": BILL}


def test_a_trip_before_whose_rest_can_not_be_used_ends_the_week() -> None:
    text = "vessel: Solan Bright\nsailed: 2026-02-25 00:00\nrest:\n  - {who: A. Fell, from: 2026-02-25 08:00, to: ?}\n"
    before = trip(text + "landed: 2026-03-02 00:00, Port Kerrin\n")

    assert only(second(), earlier=[before]).worst_7d_rest_h is None


@pytest.mark.parametrize(
    ("from_", "to", "named"),
    [("2026-02-20 08:00", "?", True), ("?", "2026-02-25 08:00", True), ("?", "2026-02-22 08:00", False)],
)
def test_what_is_left_out_of_a_trip_before_is_named_if_it_may_lie_in_the_week(
    from_: str, to: str, *, named: bool
) -> None:
    text = (
        "vessel: Solan Bright\nsailed: 2026-02-20 00:00\nrest:\n" + f"  - {{who: A. Fell, from: {from_}, to: {to}}}\n"
    )
    rest = entries(*(f"{stamp(SAILED + n * DAY)} to {stamp(SAILED + n * DAY + 10 * HOUR)}" for n in range(-2, 5)))
    before = trip(text + rest + "landed: 2026-03-02 00:00, Port Kerrin\n")
    figures = only(second(), earlier=[before])

    assert figures.worst_7d_rest_h == 70
    assert ("worst_7d_rest_h" in dict(figures.basis)) is named
    assert "worst_24h_rest_h" not in dict(figures.basis)


def test_a_trip_that_was_still_landing_when_the_next_sailed_runs_on() -> None:
    before = log(daily(5, (0, 10)), landed="2026-03-02 06:00")

    assert only(second(), earlier=[before]).worst_7d_rest_h == 74


class Counted(Sequence[Rested]):
    """Rest of trips that counts how many of them were looked at."""

    def __init__(self, trips: list[Rested]) -> None:
        self.trips = trips
        self.looked = 0

    def __len__(self) -> int:
        return len(self.trips)

    def __getitem__(self, n: int) -> Rested:  # type: ignore[override]
        self.looked += 1
        return self.trips[n]


def test_only_the_trips_of_the_week_before_are_looked_at() -> None:
    january = log(
        "rest:\n" + entries("2026-01-01 06:00 to 12:00"), sailed="2026-01-01 00:00", landed="2026-01-02 00:00"
    )
    trips = Counted([*([rested(january)] * 1000), rested(first())])

    reckon_rest(second(), moment("2026-06-01 00:00"), trips)

    assert trips.looked == 2


# Any rest at all, against a count of every minute.

LENGTH = 9 * 24 * 60
minutes = st.integers(min_value=-600, max_value=LENGTH + 600)
pairs = st.lists(
    st.tuples(minutes, st.integers(0, 900)).map(lambda pair: (pair[0], sum(pair))), min_size=1, max_size=25
)


def trip_of(rest: Sequence[tuple[int, int]], length: int = LENGTH) -> Trip:
    """Return a trip of some minutes with one hand's rest, from minute to minute."""
    periods = tuple(
        Period(place=PLACE, start=SAILED + start * MINUTE, end=SAILED + end * MINUTE, words="Ann")
        for start, end in rest
    )
    base = log(landed=stamp(SAILED + length * MINUTE))
    return replace(base, rest=periods)


def mark(marks: bytearray, start: int, end: int, as_: int) -> None:
    """Mark the minutes from one to another, as far as there are any."""
    first, last = max(0, start), min(len(marks), end)
    if first < last:
        marks[first:last] = bytes([as_]) * (last - first)


def runs_of(marks: bytearray) -> list[int]:
    """Return how many minutes each rest has."""
    return [len(run) for run in marks.split(b"\0") if run]


def least(marks: bytearray, length: int) -> int | None:
    """Return the least minutes of rest in so many minutes on end; None where there are not so many."""
    sums = list(accumulate(marks, initial=0))
    return min(map(sub, sums[length:], sums), default=None)


def hours(count: int | None) -> float | None:
    return None if count is None else count / 60


@settings(deadline=None, max_examples=60)
@given(pairs, st.sampled_from([600, 24 * 60, 5000, 7 * 24 * 60, LENGTH]))
def test_the_worst_windows_are_those_that_a_count_of_every_minute_finds(
    rest: list[tuple[int, int]], length: int
) -> None:
    figures = only(trip_of(rest, length))

    resting = bytearray(length)
    for start, end in rest:
        mark(resting, start, end, 1)
    day, week = least(resting, 24 * 60), least(resting, 7 * 24 * 60)
    assert figures.worst_24h_rest_h == hours(day)
    assert figures.worst_7d_rest_h == hours(week)
    runs = runs_of(resting)
    assert figures.longest_unbroken_h == hours(max(runs, default=0))
    assert figures.periods_a_day == pytest.approx(len(runs) / (length / 24 / 60))
    fails = (day is not None and day < 10 * 60) or (week is not None and week < 77 * 60)
    assert figures.c188_hours_met is (False if fails else None if day is None or week is None else True)


@settings(deadline=None, max_examples=40)
@given(pairs, st.tuples(minutes, st.integers(1, 900)))
def test_more_rest_never_makes_the_worst_worse(rest: list[tuple[int, int]], more: tuple[int, int]) -> None:
    before, after = only(trip_of(rest)), only(trip_of([*rest, (more[0], sum(more))]))

    assert (after.worst_24h_rest_h or 0) >= (before.worst_24h_rest_h or 0)
    assert (after.worst_7d_rest_h or 0) >= (before.worst_7d_rest_h or 0)
    assert (after.longest_unbroken_h or 0) >= (before.longest_unbroken_h or 0)


@settings(deadline=None, max_examples=40)
@given(pairs.flatmap(lambda rest: st.tuples(st.just(rest), st.permutations(rest))))
def test_the_order_of_entries_changes_nothing(two: tuple[list[tuple[int, int]], list[tuple[int, int]]]) -> None:
    assert only(trip_of(two[0])) == only(trip_of(two[1]))


@settings(deadline=None, max_examples=40)
@given(pairs, st.integers(min_value=1, max_value=LENGTH - 1))
def test_one_trip_cut_in_two_with_no_time_between_has_the_same_weeks(rest: list[tuple[int, int]], cut: int) -> None:
    whole = only(trip_of(rest))
    parted = SAILED + cut * MINUTE
    both = replace(trip_of(rest), sailed=parted)
    halves = only(both, earlier=[trip_of(rest, cut)])

    assert halves.worst_7d_rest_h is not None
    assert whole.worst_7d_rest_h is not None
    assert halves.worst_7d_rest_h >= whole.worst_7d_rest_h
    if cut <= 7 * 24 * 60:
        assert halves.worst_7d_rest_h == whole.worst_7d_rest_h


bills = st.lists(st.booleans(), min_size=24, max_size=24)


def spans(on: Sequence[bool]) -> Iterator[tuple[float, float]]:
    return ((float(hour), hour + 1.0) for hour, is_on in enumerate(on) if is_on)


@settings(deadline=None, max_examples=40)
@given(
    bills,
    st.sampled_from(["2026-02-26 12:00", "2026-03-27 05:30", "2026-10-23 17:00"]),
    st.sampled_from(["UTC", "Europe/Oslo", "Atlantic/Azores", "America/St_Johns"]),
    st.lists(st.tuples(st.integers(0, 4 * 24 * 60), st.integers(0, 600)), max_size=3),
)
def test_the_watch_bill_is_what_the_clock_shows_at_every_minute(
    on: list[bool], sailed: str, zone: str, hands: list[tuple[int, int]]
) -> None:
    begins, length = moment(sailed), 4 * 24 * 60
    turned_to = tuple(
        Period(place=PLACE, start=begins + start * MINUTE, end=begins + (start + took) * MINUTE)
        for start, took in hands
    )
    base = replace(log(landed="2026-02-26 00:00"), zone=zone, sailed=begins, landings=())
    bill = (Watch(name="port", hours=tuple(spans(on))),)
    figures = only(replace(base, watches=bill, all_hands=turned_to), stamp(begins + length * MINUTE))

    rules = ZoneInfo(zone)
    clock = [(begins + n * MINUTE).astimezone(rules) for n in range(length)]
    resting = bytearray(not on[shown.hour] for shown in clock)
    for start, took in hands:
        mark(resting, start, start + took, 0)
    assert figures.worst_24h_rest_h == hours(least(resting, 24 * 60))
    assert figures.longest_unbroken_h == hours(max(runs_of(resting), default=0))


def test_a_watch_bill_is_not_carried_on_over_the_years_of_a_slip() -> None:
    made, problems = read(
        "vessel: Solan Bright\nsailed: 2026-02-25 00:00\nwatches: {port: 00-06 12-18}\nlanded: 2096-02-25 00:00\n"
    )
    assert made is not None
    assert "trip-long" in codes(problems)

    assert reckon_rest(made, moment("2096-02-25 00:00"))["port"].worst_24h_rest_h is None
