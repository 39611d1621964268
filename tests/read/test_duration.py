"""Lengths of time: days, hours and minutes, alone or together."""

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.read.duration import parse_duration
from tests.read.values import clean, read_with, refused


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("3 h", 180),
        ("3h", 180),
        ("3 hours", 180),
        ("40 min", 40),
        ("40 min.", 40),
        ("1 h 20 min", 80),
        ("1 h, 20 min", 80),
        ("1 h and 20 min", 80),
        ("1h20", 80),
        ("1 h 20", 80),
        ("1.5 h", 90),
        ("1,5 h", 90),
        ("2 days", 2880),
        ("1 d 2 h 3 min", 1563),
        ("0 days", 0),
        ("0", 0),
    ],
)
def test_a_length_of_time_is_read(text: str, minutes: int) -> None:
    assert clean(parse_duration(text)) == timedelta(minutes=minutes)


def test_about_is_noted() -> None:
    assert read_with(parse_duration("about 3 h"), "approximate") == timedelta(hours=3)


@pytest.mark.parametrize(
    ("text", "code", "hint"),
    [
        ("3", "no-unit", "write 3 h or 3 min, whichever is meant"),
        ("½ h", "duration-unreadable", "write 0.5 h"),
        ("20 min 1 h", "duration-unreadable", "write 3 h, 40 min, 1 h 20 min or 2 days"),
        ("1 h 2 h", "duration-unreadable", "write 3 h, 40 min, 1 h 20 min or 2 days"),
        ("2 days 5", "duration-unreadable", "write 3 h, 40 min, 1 h 20 min or 2 days"),
        ("1:20", "duration-unreadable", "write 3 h, 40 min, 1 h 20 min or 2 days"),
        ("3 weeks", "duration-unreadable", "write 3 h, 40 min, 1 h 20 min or 2 days"),
        ("-3 h", "duration-unreadable", "write 3 h, 40 min, 1 h 20 min or 2 days"),
        ("", "duration-unreadable", "write 3 h, 40 min, 1 h 20 min or 2 days"),
        ("4000 days", "duration-range", "look at the figure and its unit"),
        ("99999999999999 days", "duration-range", "look at the figure and its unit"),
        ("9" * 5000, "out-of-range", "write the figure as it was read off"),
        ("9" * 5000 + " h", "out-of-range", "write the figure as it was read off"),
        ("1,200 h", "comma-ambiguous", "write 1200 h or 1.2 h"),
        ("1 h 1,200", "comma-ambiguous", "write 1200 min or 1.2 min"),
    ],
)
def test_what_is_no_length_of_time_is_refused(text: str, code: str, hint: str) -> None:
    assert refused(parse_duration(text)) == (code, hint)


@given(st.integers(0, 300), st.integers(0, 23), st.integers(0, 59))
def test_days_hours_and_minutes_are_read_back(days: int, hours: int, minutes: int) -> None:
    assert parse_duration(f"{days} d {hours} h {minutes} min").value == timedelta(
        days=days, hours=hours, minutes=minutes
    )
