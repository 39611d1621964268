"""The calendar of landings, read by icalendar and held against what RFC 5545 asks of its lines."""

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st
from icalendar import Calendar, Event
from msgspec.structs import replace

from logbook.render.files.calendar import escaped, folded
from tests.reckon.build import reckoned
from tests.render.files.data import AT_SEA, LANDED, NASTY, files, saying, two_trips

TWO_PORTS = LANDED.replace(
    "landed:\n  port: Port Kerrin\n  docked: 2026-03-06 08:00\n",
    "landed:\n- port: Sulvik\n  docked: 2026-03-05 20:00\n- port: Port Kerrin\n  docked: 2026-03-06 08:00\n",
)


def read(content: bytes) -> Calendar:
    calendar = Calendar.from_ical(content)
    assert isinstance(calendar, Calendar)
    assert calendar.errors == []
    assert all(event.errors == [] for event in calendar.events)
    return calendar


def events(content: bytes) -> list[Event]:
    return list(read(content).events)


def check_lines(content: bytes) -> None:
    """Hold lines against RFC 5545 section 3.1: CRLF, 75 octets, no control characters, no letter cut in two."""
    assert content.endswith(b"\r\n")
    lines = content.removesuffix(b"\r\n").split(b"\r\n")
    assert all(0 < len(line) <= 75 for line in lines)
    for line in lines:
        assert all(sign == "\t" or (sign >= " " and sign != "\x7f") for sign in line.decode("utf-8"))


def test_landings_made_and_expected_are_events() -> None:
    content = files()["files/landings.ics"]
    check_lines(content)
    made, expected = events(content)

    assert made["SUMMARY"] == "Solan Bright landed at Port Kerrin"
    assert made["LOCATION"] == "Port Kerrin"
    assert made["STATUS"] == "CONFIRMED"
    assert made.start == datetime(2026, 3, 6, 8, tzinfo=UTC)
    assert made.end == datetime(2026, 3, 6, 11, 30, tzinfo=UTC)
    assert expected["SUMMARY"] == "Ternbank expected at Port Kerrin"
    assert expected["STATUS"] == "TENTATIVE"
    assert "Last word from her 11 March 2026, 06:00 UTC+01:00" in str(expected["DESCRIPTION"])
    assert "the coastguard's" in str(expected["DESCRIPTION"])


def test_every_event_and_the_calendar_have_what_the_standard_asks() -> None:
    # RFC 5545 sections 3.6 (PRODID, VERSION) and 3.6.1 (UID, DTSTAMP, DTSTART); times in UTC by section 3.3.5, form 2.
    content = files()["files/landings.ics"]
    calendar = read(content)

    assert calendar["VERSION"] == "2.0"
    assert calendar["PRODID"]
    for event in calendar.events:
        assert {"UID", "DTSTAMP", "DTSTART", "SUMMARY"} <= set(event)
    times = [line for line in content.split(b"\r\n") if line.startswith(b"DT")]
    assert len(times) == 5
    assert all(line.endswith(b"Z") for line in times)
    assert len({event["UID"] for event in calendar.events}) == 2


def test_the_stamp_is_the_logs_last_word_and_no_clocks() -> None:
    made, expected = events(files()["files/landings.ics"])

    assert datetime(2026, 3, 6, 11, 30, tzinfo=UTC) == made.DTSTAMP
    assert datetime(2026, 3, 11, 5, tzinfo=UTC) == expected.DTSTAMP


def test_an_expected_landing_that_is_made_stays_the_same_event() -> None:
    (expected,) = events(files(two_trips()[1:])["files/landings.ics"])
    docked = AT_SEA + "landed: {port: Port Kerrin, docked: 2026-03-11 22:00}\n"
    (made,) = events(files(reckoned(docked))["files/landings.ics"])

    assert expected["UID"] == made["UID"]
    assert expected["STATUS"] != made["STATUS"]
    assert made.DTSTAMP > expected.DTSTAMP


def test_each_of_several_landings_is_an_event() -> None:
    first, second = events(files(reckoned(TWO_PORTS))["files/landings.ics"])

    assert (first["LOCATION"], second["LOCATION"]) == ("Sulvik", "Port Kerrin")
    assert first["UID"] != second["UID"]


def test_landings_of_long_ago_are_left_out_and_what_is_expected_never_is() -> None:
    # The last word of the archive is on 11 March 2026 at 05:00 UTC, on Ternbank's trip; 400 days before that is 4 February 2025.
    landed, at_sea = two_trips()
    expected = "Ternbank expected at Port Kerrin"

    def told(docked: datetime) -> list[str]:
        head = replace(landed.figures.trip, docked=docked, last_word=docked)
        landing = replace(landed.figures.landing, docked=docked, landing_finished=None)
        old = replace(landed, figures=replace(landed.figures, trip=head, landing=landing))
        return [str(event["SUMMARY"]) for event in events(files((old, at_sea))["files/landings.ics"])]

    assert told(datetime(2025, 2, 4, 5, tzinfo=UTC)) == ["Solan Bright landed at Port Kerrin", expected]
    assert told(datetime(2025, 2, 4, 4, 59, tzinfo=UTC)) == [expected]


def test_a_discharge_that_ends_before_it_begins_is_no_end() -> None:
    (trip,) = two_trips()[:1]
    landing = replace(trip.figures.landing, landing_finished=trip.figures.landing.docked)
    (event,) = events(files((replace(trip, figures=replace(trip.figures, landing=landing)),))["files/landings.ics"])

    assert "DTEND" not in event


def test_no_landing_is_no_calendar() -> None:
    assert "files/landings.ics" not in files(())


def shown(text: str) -> str:
    """Return a text as a calendar can hold it: line breaks of one kind, no control characters but the tab."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n")
    return "".join(sign for sign in lines if sign in "\t\n" or not (sign < " " or "\x7f" <= sign <= "\x9f"))


@pytest.mark.parametrize("text", NASTY)
def test_any_text_that_a_calendar_can_hold_comes_back_as_typed(text: str) -> None:
    content = saying(text)["files/landings.ics"]
    check_lines(content)
    (event,) = events(content)

    assert event["LOCATION"] == shown(text)
    assert event["SUMMARY"] == f"{shown(text)} landed at {shown(text)}"


@given(st.text())
def test_any_other_text_comes_back_from_its_lines(text: str) -> None:
    content = folded(f"SUMMARY:{escaped(text)}")
    check_lines(content)
    event = Event.from_ical(b"BEGIN:VEVENT\r\n" + content + b"END:VEVENT\r\n")

    assert event["SUMMARY"] == shown(text)


@pytest.mark.parametrize("letter", ["x", "é", "鱈", "🐟"])
def test_lines_are_as_long_as_they_may_be_and_no_letter_is_cut(letter: str) -> None:
    content = folded(letter * 200)
    lines = content.removesuffix(b"\r\n").split(b"\r\n ")

    assert b"".join(lines).decode() == letter * 200
    assert all(len(line) + (n > 0) > 75 - len(letter.encode()) for n, line in enumerate(lines[:-1]))
    check_lines(content)
