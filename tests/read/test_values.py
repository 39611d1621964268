"""What holds for every parser of a value: it never raises, says why it refuses, and hints at what would be read."""

from collections.abc import Callable
from functools import partial
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.model.problem import Severity
from logbook.read import (
    amount,
    duration,
    hours,
    measured,
    moment,
    money,
    number,
    position,
    weight,
    wind,
    zone,
)
from logbook.read.said import Said
from tests.read.values import MEASURES

Parser = Callable[[str], Said[Any]]

PARSERS: dict[str, Parser] = {
    "count": number.parse_count,
    "number": number.parse_number,
    "numbers": number.parse_numbers,
    "weight": partial(weight.parse_weight, measures=MEASURES),
    "weight in baskets": partial(weight.parse_weight, measures=MEASURES, default_unit="basket"),
    "amount": partial(amount.parse_amount, measures=MEASURES, species="haddock", default_unit=None),
    "price": partial(money.parse_price, measures=MEASURES, species=None, currency="KRC"),
    "lot": partial(money.parse_lot, measures=MEASURES, species=None, default_unit=None, currency="KRC"),
    "money": partial(money.parse_money, currency="KRC"),
    "money of no name": partial(money.parse_money, currency=None),
    "position": position.parse_position,
    "position in waters": partial(position.parse_position, waters=("N", "W")),
    "pair": lambda text: position.parse_pair(text, "15 10.0W", None),
    "time": moment.parse_stamp,
    "clock": moment.parse_clock,
    "day": moment.parse_day,
    "zone": zone.parse_zone,
    "depth": measured.parse_depth,
    "warp": partial(measured.parse_warp, default_unit="fm"),
    "length": measured.parse_length,
    "mesh": measured.parse_mesh,
    "speed": measured.parse_speed,
    "distance": measured.parse_distance,
    "temperature": measured.parse_temperature,
    "percent": measured.parse_percent,
    "power": measured.parse_power,
    "area": measured.parse_area,
    "heat passage": measured.parse_heat_passage,
    "landing rate": measured.parse_landing_rate,
    "pressure": measured.parse_pressure,
    "specific heat": measured.parse_specific_heat,
    "latent heat": measured.parse_latent_heat,
    "fuel": lambda text: measured.parse_fuel(text, "l", us_gallons=False, measures=MEASURES),
    "duration": duration.parse_duration,
    "wind": wind.parse_wind,
    "sea": wind.parse_sea,
    "hours": hours.parse_hours,
    "weekdays": hours.parse_weekdays,
}

CODES = frozenset[str]().union(
    *(m.CODES for m in (amount, duration, hours, measured, moment, money, number, position, weight, wind, zone))
)

BY_CODE: dict[str, tuple[str, str]] = {
    "approximate": ("weight", "~14 baskets"),
    "comma-ambiguous": ("weight", "1,200 t"),
    "comma-thousands": ("weight", "1,200 kg"),
    "count-unreadable": ("count", "1.5"),
    "currency-other": ("money", "EUR 12"),
    "day-unreadable": ("day", "Thursday"),
    "dot-decimal": ("weight", "1.200 kg"),
    "duration-range": ("duration", "4000 days"),
    "duration-unreadable": ("duration", "1:20"),
    "fish-count": ("amount", "2.5 fish"),
    "hemisphere-missing": ("position", "58 52.4 015 10.0"),
    "hours-unreadable": ("hours", "06-06"),
    "lot-unreadable": ("lot", "2100 kg"),
    "measure-range": ("depth", "9000 m"),
    "measure-unreadable": ("depth", "deep"),
    "measure-without-weight": ("amount", "3 kits"),
    "money-negative": ("money", "-12"),
    "money-unreadable": ("money", "abc"),
    "no-such-day": ("time", "2026-02-30 18:40"),
    "no-such-time": ("time", "25:10"),
    "no-unit": ("depth", "98"),
    "number-marks": ("weight", "1.200.000 kg"),
    "number-unreadable": ("number", "nan"),
    "out-of-range": ("count", "99999999999"),
    "position-decimal": ("position", "58.52N 15.10W"),
    "position-minutes": ("position", "67 60.0 N 014 30.2 E"),
    "position-order": ("position", "015 10.0W 58 52.4N"),
    "position-range": ("position", "91 00.0 N 014 30.2 E"),
    "position-run-together": ("position", "5852.4N 015 10.0W"),
    "position-sign": ("position", "-58.87 N 15 W"),
    "position-uneven": ("position", "58 52.4N 15W"),
    "position-unreadable": ("position", "off Kerrin"),
    "price-unreadable": ("price", "3.90/pallet"),
    "sea-unreadable": ("sea", "choppy"),
    "state-unknown": ("amount", "14 baskets guted"),
    "time-24": ("time", "24:00"),
    "time-style": ("time", "4.30"),
    "time-unreadable": ("time", "noon"),
    "weekdays-unreadable": ("weekdays", "Foo"),
    "weight-negative": ("weight", "-40 kg"),
    "weight-range": ("weight", "99999999 kg"),
    "weight-unreadable": ("weight", "14 baskts"),
    "wind-no-force": ("wind", "SW"),
    "wind-range": ("wind", "SW 13"),
    "wind-unreadable": ("wind", "SW gale"),
    "zone-unknown": ("zone", "Oslo"),
}

# Pieces that values are made of, so that chance comes near to what the patterns look for.
PIECES = st.sampled_from(
    (
        *"0123456789.,-+/:°'\"~?%@()_e \u00a0\u2212\u00f8\u0663½",
        *(
            "1,200",
            "1 200",
            "58 52.4",
            "015 10.0",
            "2026-03-04",
            "18:10",
            "24:00",
            "00-06",
            "\x00",
            "\ud800",
            "\U0001f41f",
        ),
        *("kg", "t", "basket", "fish", "whole", "gutted", "KRC", "per", "fm", "m", "C", "gal", "l", "h", "min", "days"),
        *("N", "W", "E", "S", "SW", "calm", "Z", "UTC", "Europe/", "Oslo", "March", "Thu", "Mon", "pm"),
        *("minus", "about", "to", "and", "nan", "inf"),
    )
)
TEXTS = st.one_of(st.text(), st.lists(PIECES, max_size=8).map("".join), st.lists(PIECES, max_size=6).map(" ".join))


def check(said: Said[Any]) -> None:
    assert said.value is not None or any(fault.severity is Severity.ERROR for fault in said.faults)
    assert said.value is None or all(fault.severity is not Severity.ERROR for fault in said.faults)
    for fault in said.faults:
        assert fault.code in CODES
        for words in (fault.message, fault.hint):
            assert len(words) < 300
            assert words == words.strip()
            assert words.isprintable()
            assert not words.endswith(".")
        assert fault.message


@pytest.mark.parametrize("name", PARSERS)
def test_no_text_makes_a_parser_raise_or_refuse_without_a_reason(name: str) -> None:
    @settings(deadline=None, max_examples=60)
    @given(TEXTS)
    def any_text(text: str) -> None:
        check(PARSERS[name](text))

    any_text()


@pytest.mark.parametrize("name", PARSERS)
@pytest.mark.parametrize(
    "text",
    [
        *("", " ", "9" * 5000, "1 " * 5000, "1 234" + " 234" * 3000, "a " * 5000, "," * 9000, "'" * 9000, "a1" * 4000),
        *("58°" * 3000, "N" * 9000, "(" * 9000, "1e" * 4000, "-" * 9000, "1-" * 4000, "\ud800" * 100, "1/" * 4000),
    ],
    ids=lambda text: f"{len(text)} of {text[:4]!r}",
)
def test_a_text_without_end_is_refused(name: str, text: str) -> None:
    said = PARSERS[name](text)

    check(said)
    assert said.value is None


def test_every_code_has_a_case() -> None:
    assert set(BY_CODE) == CODES


@pytest.mark.parametrize("code", BY_CODE)
def test_a_code_is_found_where_its_case_has_it(code: str) -> None:
    name, text = BY_CODE[code]

    said = PARSERS[name](text)

    check(said)
    assert code in {fault.code for fault in said.faults}


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("weight", "1_000 kg"),
        ("weight", "14 baskts"),
        ("weight", "½ basket"),
        ("weight", "kg 40"),
        ("weight", "~14 baskets"),
        ("weight", "1,200 kg"),
        ("number", "1e3"),
        ("duration", "½ h"),
        ("depth", "98 fathms"),
        ("temperature", "minus 2 C"),
        ("wind", "SW gale"),
        ("wind", "SW 25 kn"),
        ("sea", "rough"),
        ("time", "4:30 pm"),
        ("time", "2026-03-02 24:00"),
        ("zone", "Oslo"),
        ("position in waters", "\uff15\uff18 52.4N 15 10.0W"),
    ],
)
def test_what_a_hint_says_to_write_is_read_without_a_word(name: str, text: str) -> None:
    (fault,) = PARSERS[name](text).faults

    said = PARSERS[name](fault.hint.removeprefix("write "))

    assert said.value is not None
    assert said.faults == ()


@pytest.mark.parametrize("blank", ["", "-", "--", "~", "?", "??", "null", "Null"])
@pytest.mark.parametrize("name", PARSERS)
def test_a_blank_is_no_value_of_any_kind(name: str, blank: str) -> None:
    """Our own rule, no source: so a value may be tried by its parser before anyone asks whether it is blank."""
    assert number.is_blank(blank)
    assert PARSERS[name](blank).value is None
