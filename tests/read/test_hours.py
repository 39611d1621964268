"""Hours of the day and days of the week."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.read.hours import Spans, parse_hours, parse_weekdays
from tests.read.values import clean, refused


@pytest.mark.parametrize(
    ("text", "spans"),
    [
        ("00-06 12-18", ((0, 6), (12, 18))),
        ("06-12, 18-24", ((6, 12), (18, 24))),
        ("06-12 and 18-24", ((6, 12), (18, 24))),
        ("0-6", ((0, 6),)),
        ("0600-1230", ((6, 12.5),)),
        ("06:00 - 12:30", ((6, 12.5),)),
        ("06\u201312", ((6, 12),)),
        ("06 to 12", ((6, 12),)),
        ("18-00", ((18, 24),)),
        ("22-02", ((22, 24), (0, 2))),
        ("00-24", ((0, 24),)),
    ],
)
def test_hours_are_spans_within_a_day(text: str, spans: Spans) -> None:
    assert clean(parse_hours(text)) == spans


@pytest.mark.parametrize(
    "text", ["", "x", "06", "06-06", "24-06", "06-25", "06:60-12", "06-12:75", "06-12 10-14", "22-02 01-03", "06-12x"]
)
def test_what_are_no_hours_is_refused(text: str) -> None:
    assert refused(parse_hours(text)) == (
        "hours-unreadable",
        "write spans of hours that do not overlap: 00-06 12-18",
    )


@pytest.mark.parametrize(
    ("text", "days"),
    [
        ("Mon-Fri", (0, 1, 2, 3, 4)),
        ("Monday to Friday", (0, 1, 2, 3, 4)),
        ("mon\u2013fri", (0, 1, 2, 3, 4)),
        ("Mon Wed Fri", (0, 2, 4)),
        ("Fri, Wed and Mon", (0, 2, 4)),
        ("Mon.-Wed. Fri.", (0, 1, 2, 4)),
        ("Fri-Mon", (0, 4, 5, 6)),
        ("Sat-Sat", (5,)),
        ("Mondays", (0,)),
        ("Tues, Thurs", (1, 3)),
        ("daily", (0, 1, 2, 3, 4, 5, 6)),
        ("every day", (0, 1, 2, 3, 4, 5, 6)),
    ],
)
def test_weekdays_are_read_in_the_order_of_the_week(text: str, days: tuple[int, ...]) -> None:
    assert clean(parse_weekdays(text)) == days


@pytest.mark.parametrize("text", ["", "Mon-", "-Fri", "Mo", "Foo", "Mon 3", "weekdays"])
def test_what_are_no_weekdays_is_refused(text: str) -> None:
    assert refused(parse_weekdays(text)) == ("weekdays-unreadable", "write Mon-Fri, or Mon Wed Fri")


@given(st.integers(0, 23), st.integers(1, 24))
def test_no_span_leaves_the_day_or_changes_its_length(start: int, end: int) -> None:
    spans = parse_hours(f"{start:02}-{end:02}").value

    if start == end:
        assert spans is None
    else:
        assert spans is not None
        assert all(0 <= first < last <= 24 for first, last in spans)
        assert sum(last - first for first, last in spans) == (end - start) % 24 or 24
