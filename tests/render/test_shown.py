from datetime import UTC, date, datetime, timedelta, timezone
from decimal import ROUND_HALF_UP, Context, Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.quantity import Position
from logbook.render import shown
from logbook.render.shown import missing, not_known

EAST = timezone(timedelta(hours=1))
MARCH = datetime(2026, 3, 5, 4, 7, tzinfo=UTC)

CASES = (
    (shown.kilograms(Decimal(0)), "0"),
    (shown.kilograms(Decimal(12310)), "12 310"),
    (shown.kilograms(Decimal("999.5")), "1 000"),
    (shown.kilograms(Decimal("0.5")), "1"),
    (shown.kilograms(Decimal("-0.4")), "0"),
    (shown.kilograms(Decimal("-1234.5")), "−1 235"),
    (shown.kilograms(Decimal("1E+30")), "1 000 000 000 000 000 000 000 000 000 000"),
    (shown.kilograms_unit(Decimal(840)), "840 kg"),
    (shown.per_hour(312.49), "312 kg/h"),
    (shown.weight(Decimal(0)), "0 kg"),
    (shown.weight(Decimal("999.4")), "999 kg"),
    (shown.weight(Decimal(1000)), "1.00 t"),
    (shown.weight(Decimal(9999)), "10.00 t"),
    (shown.weight(Decimal(12310)), "12.3 t"),
    (shown.weight(24350.0), "24.4 t"),
    (shown.tonnes(Decimal(250)), "0.25"),
    (shown.tonnes(Decimal(1234567)), "1 234.6"),
    (shown.money(Decimal(0)), "0.00"),
    (shown.money(Decimal("0.005")), "0.01"),
    (shown.money(Decimal("-0.005")), "−0.01"),
    (shown.money(Decimal("-0.0049")), "0.00"),
    (shown.money(Decimal("2.345")), "2.35"),
    (shown.money(Decimal("1234567.895")), "1 234 567.90"),
    (shown.money(Decimal("1E+6")), "1 000 000.00"),
    (shown.money(Decimal("12345678901234567890123456789012.345")), "12 345 678 901 234 567 890 123 456 789 012.35"),
    (shown.thousand_pounds(Decimal(0)), "0"),
    (shown.thousand_pounds(Decimal("226.796184")), "0"),
    (shown.thousand_pounds(Decimal("226.796185")), "1"),
    (shown.thousand_pounds(Decimal(1000000)), "2 205"),
    (shown.hours(1.25), "1.3"),
    (shown.hours(0.05), "0.1"),
    (shown.hours_unit(12.66), "12.7 h"),
    (shown.hours_minutes(1.5), "1:30"),
    (shown.hours_minutes(0.0), "0:00"),
    (shown.hours_minutes(1.9999), "2:00"),
    (shown.hours_minutes(103.25), "103:15"),
    (shown.hours_minutes(-0.5), "−0:30"),
    (shown.took(timedelta(hours=2, minutes=15)), "2:15"),
    (shown.days(6.05), "6.1"),
    (shown.days_unit(10.0), "10.0 days"),
    (shown.miles(4.649), "4.6"),
    (shown.miles_unit(121.34), "121.3 nm"),
    (shown.knots(3.25), "3.3"),
    (shown.square_km(0.07408), "0.07"),
    (shown.percent(62.45), "62.5"),
    (shown.percent_unit(99.5), "100 %"),
    (shown.celsius(-0.04), "0.0"),
    (shown.celsius_unit(-1.2), "−1.2 °C"),
    (shown.metres(179.4), "179"),
    (shown.fathoms(182.88), "100"),
    (shown.ratio(2.94), "2.9"),
    (shown.count(1234), "1 234"),
    (shown.clock(MARCH, timedelta(0)), "04:07"),
    (shown.clock(MARCH.astimezone(EAST), timedelta(0)), "05:07 UTC+01:00"),
    (shown.clock(MARCH, None), "04:07 UTC"),
    (shown.moment(MARCH, timedelta(0)), "5 March 2026, 04:07"),
    (shown.brief(MARCH, timedelta(0)), "Thu 5 March 04:07"),
    (shown.day(date(2026, 3, 5)), "Thursday 5 March 2026"),
    (shown.brief_date(date(2026, 12, 31)), "31 Dec 2026"),
    (shown.month("2026-03"), "March 2026"),
    (shown.offset_words(timedelta(0)), "UTC"),
    (shown.offset_words(timedelta(hours=-3, minutes=-30)), "UTC-03:30"),
    (shown.offset_words(timedelta(hours=1)), "UTC+01:00"),
    (shown.position(Position(latitude=58.8733, longitude=-15.1667, typed="")), "58°52.4′N 015°10.0′W"),
    (shown.position(Position(latitude=-0.5, longitude=179.99999, typed="")), "00°30.0′S 180°00.0′E"),
    (shown.position(Position(latitude=59.9999, longitude=0.0, typed="")), "60°00.0′N 000°00.0′E"),
    (shown.many(1, "tow", "tows"), "1 tow"),
    (shown.many(0, "tow", "tows"), "0 tows"),
    (shown.many(2000, "entry", "entries"), "2 000 entries"),
    (shown.one_line(" Saddle,\n  north  side "), "Saddle, north side"),
    (shown.one_line("x" * 41), "x" * 39 + "…"),
    (shown.capital("at sea"), "At sea"),
    (shown.capital(""), ""),
    (shown.sentence("did you mean saithe?"), "Did you mean saithe?"),
    (shown.sentence("write a weight"), "Write a weight."),
    (shown.words("rock"), "rock"),
    (shown.plain(missing()), "not known"),
    (shown.plain(not_known()), "not known"),
    (shown.plain("6.1 days"), "6.1 days"),
)


@pytest.mark.parametrize(("found", "expected"), CASES)
def test_a_value_is_shown_as_people_write_it(found: str, expected: str) -> None:
    assert found.replace("\u202f", " ") == expected


@pytest.mark.parametrize(
    "show",
    [
        shown.kilograms, shown.hours, shown.days, shown.miles, shown.knots, shown.square_km, shown.percent, shown.celsius,
        shown.metres, shown.fathoms, shown.tonnes, shown.hours_minutes, shown.took, shown.clock, shown.moment, shown.brief,
        shown.day, shown.short_day, shown.full_date, shown.brief_date, shown.position, shown.words, shown.money, shown.thousand_pounds,
    ],
)  # fmt: skip
def test_what_is_missing_is_a_dash_with_words_never_nought(show: object) -> None:
    assert show(None) == missing()  # type: ignore[operator]
    assert "not known" in missing()
    assert "0" not in missing()


@pytest.mark.parametrize("show", [shown.weight, shown.kilograms_unit, shown.per_hour, shown.days_unit, shown.said])
def test_what_is_missing_by_itself_says_so_in_words(show: object) -> None:
    assert show(None) == not_known()  # type: ignore[operator]


def test_thousands_are_set_apart_by_a_space_that_does_not_break() -> None:
    assert shown.kilograms(Decimal(12310)) == "12\u202f310"


def test_a_fathom_is_six_feet() -> None:
    # NIST SP 811: 1 fathom = 6 ft = 1.8288 m (the international foot)
    assert shown.fathoms(1.8288 * 98) == "98"


def test_a_pound_is_that_of_the_agreement() -> None:
    # International Yard and Pound Agreement 1959: 1 lb = 0.45359237 kg.
    for thousands in (1, 12, 345):
        assert shown.thousand_pounds(Decimal("453.59237") * thousands) == str(thousands)


def test_weekdays_and_months_are_those_of_the_calendar() -> None:
    # the standard library's C locale names
    for number in range(400):
        when = date(2026, 1, 1) + timedelta(days=number)
        assert shown.day(when) == f"{when:%A} {when.day} {when:%B} {when.year}"


@given(
    value=st.floats(allow_nan=False, allow_infinity=False) | st.integers(-(10**7), 10**7).map(lambda n: n / 2000),
    places=st.integers(0, 4),
)
def test_a_number_rounds_as_it_is_written_half_away_from_nought(value: float, places: int) -> None:
    # Against the decimal module of the standard library, by the shortest text that means the number.
    exact = Decimal(repr(value)).quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP, Context(prec=400))
    text = f"{exact.copy_abs():,f}".replace(",", shown.THIN)

    assert shown.fixed(value, places) == (f"\u2212{text}" if exact < 0 else text)


@given(value=st.floats(-1e6, 1e6) | st.integers(-(10**6), 10**6).map(lambda n: n / 120))
def test_hours_are_rounded_to_the_minute_half_away_from_nought(value: float) -> None:
    minutes = int(Decimal(repr(value * 60)).quantize(Decimal(1), ROUND_HALF_UP))
    sign = "\u2212" if minutes < 0 else ""

    assert shown.hours_minutes(value) == f"{sign}{abs(minutes) // 60}:{abs(minutes) % 60:02d}"


@given(
    latitude=st.floats(-90, 90), longitude=st.floats(-180, 180) | st.integers(-216000, 216000).map(lambda n: n / 1200)
)
def test_a_position_is_rounded_to_a_tenth_of_a_minute(latitude: float, longitude: float) -> None:
    said = shown.position(Position(latitude=latitude, longitude=longitude, typed=""))

    for text, degrees in zip(said.split(), (latitude, longitude), strict=True):
        whole, rest = text[:-2].split("°")
        tenths = Decimal(repr(abs(degrees) * 600)).quantize(Decimal(1), ROUND_HALF_UP)
        assert int(whole) * 600 + Decimal(rest) * 10 == tenths
