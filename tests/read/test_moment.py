"""Days and clock times as typed: forms, offsets, other styles, and times there are not."""

from datetime import UTC, date, datetime, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.read.moment import DayLine, Stamp, parse_clock, parse_day, parse_stamp
from tests.read.values import clean, read_with, refused

DAY = date(2026, 3, 4)
HOUR = timedelta(hours=1)


def stamp(day: date | None, hour: int, minute: int, second: int = 0, offset: timedelta | None = None) -> Stamp:
    return Stamp(day=day, hour=hour, minute=minute, second=second, offset=offset)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("18:10", stamp(None, 18, 10)),
        ("1810", stamp(None, 18, 10)),
        ("0000", stamp(None, 0, 0)),
        ("6:30", stamp(None, 6, 30)),
        (" 06:30 ", stamp(None, 6, 30)),
        ("06:30:15", stamp(None, 6, 30, 15)),
        ("0430Z", stamp(None, 4, 30, 0, 0 * HOUR)),
        ("18:10 UTC", stamp(None, 18, 10, 0, 0 * HOUR)),
        ("18:10 +01:00", stamp(None, 18, 10, 0, HOUR)),
        ("18:10+0100", stamp(None, 18, 10, 0, HOUR)),
        ("18:10 -01:00", stamp(None, 18, 10, 0, -HOUR)),
        ("18:10 \u22121", stamp(None, 18, 10, 0, -HOUR)),
        ("2026-03-04 18:10", stamp(DAY, 18, 10)),
        ("2026-03-04T18:10", stamp(DAY, 18, 10)),
        ("2026-03-04  18:10", stamp(DAY, 18, 10)),
        ("2026-03-04 1810", stamp(DAY, 18, 10)),
        ("2026-03-04, 18:10", stamp(DAY, 18, 10)),
        ("2026-3-4 6:30", stamp(DAY, 6, 30)),
        ("2026/03/04 18:10", stamp(DAY, 18, 10)),
        ("2026-03-04T18:10Z", stamp(DAY, 18, 10, 0, 0 * HOUR)),
        ("2026-03-04t18:10:05z", stamp(DAY, 18, 10, 5, 0 * HOUR)),
        ("2026-03-04 18:10 +01:00", stamp(DAY, 18, 10, 0, HOUR)),
        ("2026-03-04T18:10-01:00", stamp(DAY, 18, 10, 0, -HOUR)),
        ("2026-03-04 18:10 +05:45", stamp(DAY, 18, 10, 0, timedelta(hours=5, minutes=45))),
    ],
)
def test_a_time_is_read(text: str, expected: Stamp) -> None:
    assert clean(parse_stamp(text)) == expected


@pytest.mark.parametrize(
    ("text", "clock", "severity"),
    [
        ("4.30", (4, 30), "warning"),
        ("16.30", (16, 30), "warning"),
        ("04h30", (4, 30), "note"),
        ("4:30 pm", (16, 30), "note"),
        ("4:30pm", (16, 30), "note"),
        ("4.30 p.m.", (16, 30), "note"),
        ("4 pm", (16, 0), "note"),
        ("12:30 am", (0, 30), "note"),
        ("12:30 pm", (12, 30), "note"),
        ("18:10 hrs", (18, 10), "note"),
    ],
)
def test_a_time_in_another_style_is_read_and_told(text: str, clock: tuple[int, int], severity: str) -> None:
    said = parse_stamp(text)
    read = read_with(said, "time-style")

    assert (read.hour, read.minute) == clock
    assert said.faults[0].severity == severity
    assert said.faults[0].hint == f"write {clock[0]:02}:{clock[1]:02}"


@pytest.mark.parametrize(
    ("text", "code", "hint"),
    [
        ("24:00", "time-24", "write 00:00 of the next day"),
        ("2400", "time-24", "write 00:00 of the next day"),
        ("2026-03-02 24:00", "time-24", "write 2026-03-03 00:00"),
        ("2026-12-31 24:00", "time-24", "write 2027-01-01 00:00"),
        ("2100-12-31 24:00", "time-24", "write 00:00 of the next day"),
        ("24.00", "time-24", "write 00:00 of the next day"),
        ("25:10", "no-such-time", "hours go to 23, minutes to 59"),
        ("24:01", "no-such-time", "hours go to 23, minutes to 59"),
        ("18:60", "no-such-time", "hours go to 23, minutes to 59"),
        ("06:30:60", "no-such-time", "hours go to 23, minutes to 59"),
        ("13:00 pm", "no-such-time", "write it by 24 hours: 16:30"),
        ("0:30 am", "no-such-time", "write it by 24 hours: 16:30"),
        ("2026-02-30 18:40", "no-such-day", "February has 28 days"),
        ("2025-02-29 18:40", "no-such-day", "February has 28 days"),
        ("2026-04-31 18:40", "no-such-day", "April has 30 days"),
        ("2026-13-04 18:40", "no-such-day", "months go from 1 to 12"),
        ("2026-00-04 18:40", "no-such-day", "months go from 1 to 12"),
        ("2026-03-00 18:40", "no-such-day", "March has 31 days"),
        ("0026-03-04 18:40", "no-such-day", "look at the year"),
        ("9999-12-31 18:40", "no-such-day", "look at the year"),
        ("2026-03-04", "time-unreadable", "write 2026-03-04 18:10"),
        ("810", "time-unreadable", "write 08:10 if that is meant"),
        ("18", "time-unreadable", "write 18:00 if that is meant"),
        ("9", "time-unreadable", "write 09:00 if that is meant"),
        ("18:10-19:40", "time-unreadable", "write one time here"),
        ("1810-1940", "time-unreadable", "write one time here"),
        ("1810-0145", "time-unreadable", "write one time here"),
        ("18:10 - 19:40", "time-unreadable", "write one time here"),
        ("18:10 +15:00", "time-unreadable", "write one time, as 18:10 +01:00"),
        ("18:10 +01:60", "time-unreadable", "write one time, as 18:10 +01:00"),
        ("", "time-unreadable", "write 18:10, or 2026-03-04 18:10 with its date"),
        ("noon", "time-unreadable", "write 18:10, or 2026-03-04 18:10 with its date"),
        ("4h", "time-unreadable", "write 18:10, or 2026-03-04 18:10 with its date"),
        ("4 m", "time-unreadable", "write 18:10, or 2026-03-04 18:10 with its date"),
        ("5 March 18:10", "time-unreadable", "write 18:10, or 2026-03-04 18:10 with its date"),
        ("04/03/2026 18:10", "time-unreadable", "write 2026-03-04 18:10 or 2026-04-03 18:10, whichever is meant"),
        ("\uff11\uff18:10", "time-unreadable", "write 18:10, or 2026-03-04 18:10 with its date"),
        ("Z", "time-unreadable", "write 18:10, or 2026-03-04 18:10 with its date"),
        ("9" * 5000, "time-unreadable", "write 18:10, or 2026-03-04 18:10 with its date"),
    ],
)
def test_what_is_no_time_is_refused_with_what_to_type(text: str, code: str, hint: str) -> None:
    assert refused(parse_stamp(text)) == (code, hint)


def test_a_clock_time_is_read_for_a_sale() -> None:
    assert [clean(parse_clock(text)) for text in ("07:00", "0700", "7:00")] == [time(7)] * 3
    assert refused(parse_clock("7"))[0] == "time-unreadable"
    assert refused(parse_clock("24:00"))[0] == "time-24"


def line(year: int | None, month: int, day: int, weekday: int | None = None) -> DayLine:
    return DayLine(year=year, month=month, day=day, weekday=weekday)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("2026-03-05", line(2026, 3, 5)),
        ("2026-3-5", line(2026, 3, 5)),
        ("Thu 2026-03-05", line(2026, 3, 5, 3)),
        ("5 March", line(None, 3, 5)),
        ("5 mar.", line(None, 3, 5)),
        ("5. March", line(None, 3, 5)),
        ("March 5", line(None, 3, 5)),
        ("Thu 5 March", line(None, 3, 5, 3)),
        ("Thurs. 5 March", line(None, 3, 5, 3)),
        ("Thursday, 5th March 2026", line(2026, 3, 5, 3)),
        ("Thu March 5th, 2026", line(2026, 3, 5, 3)),
        ("5 Mar 2026", line(2026, 3, 5)),
        ("1 Sept", line(None, 9, 1)),
        ("29 February", line(None, 2, 29)),
    ],
)
def test_a_day_is_read_with_or_without_its_year(text: str, expected: DayLine) -> None:
    assert clean(parse_day(text)) == expected


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("31 April", "no-such-day"),
        ("0 April", "no-such-day"),
        ("2026-02-30", "no-such-day"),
        ("29 Feb 2025", "no-such-day"),
        ("5 March 1026", "no-such-day"),
        ("Thursday", "day-unreadable"),
        ("Foo 5 March", "day-unreadable"),
        ("5 Foo", "day-unreadable"),
        ("5 Ma", "day-unreadable"),
        ("5 March 26", "day-unreadable"),
        ("5/3", "day-unreadable"),
        ("05.03.2026", "day-unreadable"),
        ("", "day-unreadable"),
    ],
)
def test_what_is_no_day_is_refused(text: str, code: str) -> None:
    assert refused(parse_day(text))[0] == code


@given(st.datetimes(datetime(1900, 1, 1), datetime(2100, 12, 31)), st.sampled_from(["T", " "]))  # noqa: DTZ001 - naive
def test_what_the_standard_library_writes_is_read_back(moment: datetime, sep: str) -> None:
    # ISO 8601 as Python's datetime writes it, with an offset too.
    moment = moment.replace(microsecond=0)

    assert parse_stamp(moment.isoformat(sep)).value == stamp(moment.date(), moment.hour, moment.minute, moment.second)
    assert parse_stamp(moment.replace(tzinfo=UTC).isoformat(sep)).value == stamp(
        moment.date(), moment.hour, moment.minute, moment.second, 0 * HOUR
    )


@given(st.dates(date(1900, 1, 1), date(2100, 12, 31)), st.sampled_from(["%A %d %B %Y", "%a %d %b %Y", "%a %Y-%m-%d"]))
def test_a_day_that_is_written_out_is_read_back(day: date, form: str) -> None:
    assert parse_day(day.strftime(form)).value == line(day.year, day.month, day.day, day.weekday())
