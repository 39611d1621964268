"""Zones: names, offsets, and the nights on which clocks change, against the tz database."""

import zoneinfo
from datetime import UTC, date, datetime, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.read.zone import Zone, parse_zone, zones
from tests.read.values import clean, refused


def zone(text: str) -> Zone:
    return clean(parse_zone(text))


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("UTC", "UTC"),
        ("utc", "UTC"),
        ("Z", "UTC"),
        ("GMT", "UTC"),
        ("+01:00", "+01:00"),
        ("+1", "+01:00"),
        ("UTC+1", "+01:00"),
        ("UTC +01:00", "+01:00"),
        ("GMT-3", "-03:00"),
        ("\u221203:30", "-03:30"),
        ("Europe/Oslo", "Europe/Oslo"),
        ("europe/oslo", "Europe/Oslo"),
        ("EUROPE/OSLO ", "Europe/Oslo"),
        ("America/St_Johns", "America/St_Johns"),
        ("CET", "CET"),
    ],
)
def test_a_zone_is_read_in_its_usual_spelling(text: str, name: str) -> None:
    assert zone(text).name == name


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("Oslo", "write Europe/Oslo"),
        ("Europe/Olso", "did you mean Europe/Oslo?"),
        ("Reykavik", "did you mean Atlantic/Reykjavik?"),
        ("Etc/GMT-1", "its sign is the wrong way round; write +01:00 if that is meant"),
        ("Etc/GMT+10", "its sign is the wrong way round; write -10:00 if that is meant"),
        ("+15:00", "write +01:00"),
        ("+01:60", "write +01:00"),
        ("CET+1", "write UTC, an offset as +01:00, or a zone as Europe/Oslo"),
        ("EST5EDT", "write UTC, an offset as +01:00, or a zone as Europe/Oslo"),
        ("posixrules", "write UTC, an offset as +01:00, or a zone as Europe/Oslo"),
        ("Factory", "write UTC, an offset as +01:00, or a zone as Europe/Oslo"),
        ("../../etc/passwd", "write UTC, an offset as +01:00, or a zone as Europe/Oslo"),
        ("/abs", "write UTC, an offset as +01:00, or a zone as Europe/Oslo"),
        ("\0", "write UTC, an offset as +01:00, or a zone as Europe/Oslo"),
        ("", "write UTC, an offset as +01:00, or a zone as Europe/Oslo"),
        ("x" * 300, "write UTC, an offset as +01:00, or a zone as Europe/Oslo"),
    ],
)
def test_what_is_no_zone_is_refused_with_what_to_type(text: str, hint: str) -> None:
    assert refused(parse_zone(text)) == ("zone-unknown", hint)


def test_every_place_of_the_tz_database_is_known() -> None:
    places = {name for name in zoneinfo.available_timezones() if "/" in name and not name.startswith("Etc/")}

    assert places <= set(zones().values())
    assert set(zones().values()) <= zoneinfo.available_timezones()


# Summer time in the European Union begins and ends at 01:00 UTC on the last Sundays of March and October
# (Directive 2000/84/EC, Articles 2 and 3): 29 March and 25 October in 2026.
@pytest.mark.parametrize(
    ("day", "clock", "utc", "odd"),
    [
        (date(2026, 3, 4), (18, 10), "2026-03-04 17:10", ""),
        (date(2026, 7, 1), (18, 10), "2026-07-01 16:10", ""),
        (date(2026, 3, 29), (1, 59), "2026-03-29 00:59", ""),
        (date(2026, 3, 29), (2, 30), "2026-03-29 01:30", "never"),
        (date(2026, 3, 29), (3, 0), "2026-03-29 01:00", ""),
        (date(2026, 10, 25), (2, 30), "2026-10-25 00:30", "twice"),
        (date(2026, 10, 25), (3, 0), "2026-10-25 02:00", ""),
    ],
)
def test_clock_changes_are_told(day: date, clock: tuple[int, int], utc: str, odd: str) -> None:
    moment, said = zone("Europe/Oslo").at(day, *clock)

    assert moment == datetime.fromisoformat(utc).replace(tzinfo=UTC)
    assert (moment.hour, moment.minute) == clock
    assert said == odd
    assert isinstance(moment.tzinfo, timezone)


def test_a_fixed_offset_has_no_odd_nights() -> None:
    assert zone("+01:00").at(date(2026, 10, 25), 2, 30, 15) == (
        datetime(2026, 10, 25, 2, 30, 15, tzinfo=timezone(timedelta(hours=1))),
        "",
    )


def test_an_instant_is_shown_at_the_offset_of_its_day() -> None:
    summer = zone("Europe/Oslo").local(datetime(2026, 7, 1, 12, tzinfo=UTC))
    second = zone("Europe/Oslo").local(datetime(2026, 10, 25, 1, 30, tzinfo=UTC))

    assert summer.isoformat() == "2026-07-01T14:00:00+02:00"
    assert second.isoformat() == "2026-10-25T02:30:00+01:00"
    assert second.fold == 0
    assert isinstance(summer.tzinfo, timezone)


@given(st.datetimes(datetime(1950, 1, 1), datetime(2100, 1, 1)), st.sampled_from(["Europe/Oslo", "America/St_Johns"]))  # noqa: DTZ001 - naive
def test_a_moment_that_is_not_odd_is_the_one_the_standard_library_has(naive: datetime, name: str) -> None:
    naive = naive.replace(microsecond=0)

    moment, odd = zone(name).at(naive.date(), naive.hour, naive.minute, naive.second)

    if odd != "never":  # a moment that never was equals nothing in another zone
        assert moment == naive.replace(tzinfo=zoneinfo.ZoneInfo(name))
    assert odd or zone(name).local(moment.astimezone(UTC)) == moment
