"""Measured figures: depths and their ranges, lengths, speeds, temperatures, fuel and what the fleet file gives."""

from collections.abc import Callable
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.quantity import Litres, Span, Weight
from logbook.read.measured import (
    parse_area,
    parse_depth,
    parse_distance,
    parse_fuel,
    parse_heat_passage,
    parse_landing_rate,
    parse_latent_heat,
    parse_length,
    parse_mesh,
    parse_percent,
    parse_power,
    parse_pressure,
    parse_specific_heat,
    parse_speed,
    parse_temperature,
    parse_warp,
)
from logbook.read.said import Said
from tests.read.values import MEASURES, clean, read_with, refused


def ends(span: Span) -> tuple[float, float]:
    return round(span.least, 4), round(span.most, 4)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("98 fm", (179.2224, 179.2224)),
        ("98fm", (179.2224, 179.2224)),
        ("130 fathoms", (237.744, 237.744)),
        ("98 fm.", (179.2224, 179.2224)),
        ("590 ft", (179.832, 179.832)),
        ("240 m", (240, 240)),
        ("240,5 m", (240.5, 240.5)),
        ("0 m", (0, 0)),
        ("1 200 m", (1200, 1200)),
        ("95-110 fm", (173.736, 201.168)),
        ("95\u2013110 fm", (173.736, 201.168)),
        ("95 - 110 fm", (173.736, 201.168)),
        ("95 to 110 fm", (173.736, 201.168)),
        ("95/110 fm", (173.736, 201.168)),
        ("110-95 fm", (173.736, 201.168)),
        ("95fm-110fm", (173.736, 201.168)),
        ("95 fm to 200 m", (173.736, 200)),
    ],
)
def test_a_depth_is_one_figure_or_a_range(text: str, expected: tuple[float, float]) -> None:
    depth = clean(parse_depth(text))

    assert ends(depth) == expected
    assert depth.typed == text


@pytest.mark.parametrize(
    ("text", "code", "expected"),
    [
        ("~280 m", "approximate", (280, 280)),
        ("abt 240 m", "approximate", (240, 240)),
        ("abt 95-110 m", "approximate", (95, 110)),
        ("1.200 m", "dot-decimal", (1.2, 1.2)),
    ],
)
def test_a_depth_is_read_by_the_rule_that_is_told(text: str, code: str, expected: tuple[float, float]) -> None:
    assert ends(read_with(parse_depth(text), code)) == expected


def test_the_fleets_unit_stands_where_none_is_typed() -> None:
    assert ends(clean(parse_depth("98", "fm"))) == (179.2224, 179.2224)
    assert ends(clean(parse_depth("95-110", "fm"))) == (173.736, 201.168)
    assert clean(parse_temperature("8", "C")) == 8.0
    assert refused(parse_depth("98", "kg"))[0] == "no-unit"


@pytest.mark.parametrize(
    ("text", "code", "hint"),
    [
        ("0100", "no-unit", "write 0100 m or 0100 fm, whichever is meant"),
        ("95-110", "no-unit", "write 95-110 m or 95-110 fm, whichever is meant"),
        ("-240 m", "measure-range", "leave out the minus"),
        ("9000 m", "measure-range", "a depth lies between 0 and 6000 m"),
        ("95-9000 m", "measure-range", "a depth lies between 0 and 6000 m"),
        ("1,200 m", "comma-ambiguous", "write 1200 m or 1.2 m"),
        ("98 fathms", "measure-unreadable", "write 98 fm"),
        ("98 xx", "measure-unreadable", "write a number and a unit: m, fm, ft"),
        ("95-110 xx", "measure-unreadable", "write a number and a unit: m, fm, ft"),
        ("1_000 m", "measure-unreadable", "write 1000 m"),
        ("98 fm 110 fm", "measure-unreadable", "write a number and a unit: m, fm, ft"),
        ("deep", "measure-unreadable", "write a number and a unit: m, fm, ft"),
        ("", "measure-unreadable", "write a number and a unit: m, fm, ft"),
        ("nan m", "measure-unreadable", "write a number and a unit: m, fm, ft"),
        ("9" * 5000 + " m", "out-of-range", "write the figure as it was read off"),
    ],
)
def test_what_is_no_depth_is_refused_with_what_to_type(text: str, code: str, hint: str) -> None:
    assert refused(parse_depth(text)) == (code, hint)


def test_warp_is_told_as_a_length() -> None:
    assert ends(clean(parse_warp("300 fm"))) == (548.64, 548.64)
    assert refused(parse_warp("9000 m"))[1] == "a length lies between 0 and 6000 m"


@pytest.mark.parametrize(
    ("parse", "text", "expected"),
    [
        (parse_length, "31 m", 31),
        (parse_length, "17,5 m", 17.5),
        (parse_length, "100 ft", 30.48),
        (parse_mesh, "120 mm", 120),
        (parse_mesh, "12 cm", 120),
        (parse_mesh, "5 in", 127),
        (parse_speed, "9.5 kn", 9.5),
        (parse_speed, "3,2 knots", 3.2),
        (parse_distance, "12 nm", 12),
        (parse_distance, "1.852 km", 1),
        (parse_distance, "5 nautical miles", 5),
        (parse_temperature, "8 C", 8),
        (parse_temperature, "8C", 8),
        (parse_temperature, "8°C", 8),
        (parse_temperature, "8 °C", 8),
        (parse_temperature, "8\u00baC", 8),
        (parse_temperature, "8\u00f8C", 8),
        (parse_temperature, "8\u00c2°C", 8),
        (parse_temperature, "8 deg C", 8),
        (parse_temperature, "8 degrees Celsius", 8),
        (parse_temperature, "0,4 C", 0.4),
        (parse_temperature, "-1.8 C", -1.8),
        (parse_temperature, "\u22120.4 C", -0.4),
        (parse_temperature, "\u20130.4 C", -0.4),
        (parse_temperature, "- 0.4 C", -0.4),
        (parse_temperature, "+2 C", 2),
        (parse_temperature, "50 F", 10),
        (parse_percent, "10 %", 10),
        (parse_percent, "10%", 10),
        (parse_percent, "10 per cent", 10),
        (parse_power, "1.9 kW", 1.9),
        (parse_power, "1900 W", 1.9),
        (parse_area, "72 m2", 72),
        (parse_area, "72 m\u00b2", 72),
        (parse_heat_passage, "0.45 W/m2K", 0.45),
        (parse_heat_passage, "0.45 W/(m\u00b2 K)", 0.45),
        (parse_heat_passage, "0.45 W/m2\u00b7K", 0.45),
        (parse_landing_rate, "5 t/h", 5000),
        (parse_landing_rate, "5000 kg/h", 5000),
        (parse_landing_rate, "5 t per hour", 5000),
        (parse_pressure, "1013 hPa", 1013),
        (parse_pressure, "998.5 mb", 998.5),
        (parse_specific_heat, "3.35 kJ/kgK", 3.35),
        (parse_specific_heat, "3.35 kJ/(kg K)", 3.35),
        (parse_latent_heat, "334 kJ/kg", 334),
    ],
)
def test_a_figure_is_read_in_our_unit(parse: Callable[[str], Said[float]], text: str, expected: float) -> None:
    assert float(clean(parse(text))) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("parse", "text", "code"),
    [
        (parse_length, "31-32 m", "measure-unreadable"),
        (parse_mesh, "0 mm", "measure-range"),
        (parse_speed, "10 mph", "measure-unreadable"),
        (parse_speed, "50 kn", "measure-range"),
        (parse_distance, "5", "no-unit"),
        (parse_temperature, "8", "no-unit"),
        (parse_temperature, "200 C", "measure-range"),
        (parse_temperature, "8 K", "measure-unreadable"),
        (parse_temperature, "1,200 C", "comma-ambiguous"),
        (parse_percent, "10", "no-unit"),
        (parse_percent, "150 %", "measure-range"),
        (parse_pressure, "10 mb", "measure-range"),
        (parse_latent_heat, "334 kW", "measure-unreadable"),
    ],
)
def test_a_figure_that_can_not_be_used_is_refused(parse: Callable[[str], Said[float]], text: str, code: str) -> None:
    assert refused(parse(text))[0] == code


def test_a_worded_minus_is_refused_with_the_sign_to_type() -> None:
    assert refused(parse_temperature("minus 2 C"))[1] == "write -2 C"


def fuel(text: str, default_unit: str | None = None, *, us_gallons: bool = False) -> Said[Litres | Weight]:
    return parse_fuel(text, default_unit, us_gallons, MEASURES)


@pytest.mark.parametrize(
    ("text", "litres"),
    [
        ("12 000 l", "12000"),
        ("1200 L", "1200"),
        ("3 m3", "3000"),
        ("3 m\u00b3", "3000"),
        ("100 gal", "454.609"),
        ("100 imp gal", "454.609"),
        ("100 US gal", "378.5411784"),
    ],
)
def test_fuel_is_a_volume(text: str, litres: str) -> None:
    assert clean(fuel(text)) == Litres(Decimal(litres))


def test_a_gallon_is_the_us_one_where_the_fleet_says_so() -> None:
    assert str(clean(fuel("100 gal", us_gallons=True))) == "378.541178400"
    assert str(clean(fuel("100 imp gal", us_gallons=True))) == "454.60900"


def test_fuel_may_be_weighed() -> None:
    for weight in (clean(fuel("12 t")), clean(fuel("12", "t")), read_with(fuel("~12 t"), "approximate")):
        assert isinstance(weight, Weight)
        assert weight.kilograms == 12000


def test_fuel_without_a_unit_is_in_the_fleets() -> None:
    assert clean(fuel("100", "l")) == 100
    assert refused(fuel("100"))[0] == "no-unit"
    assert refused(fuel("1,200 l"))[0] == "comma-ambiguous"
    assert refused(fuel("x"))[0] == "measure-unreadable"
    assert refused(fuel("-3 t"))[0] == "weight-negative"


@given(st.decimals(min_value=0, max_value=3000, places=2), st.decimals(min_value=0, max_value=3000, places=2))
def test_a_range_is_read_back_in_order(one: Decimal, other: Decimal) -> None:
    depth = parse_depth(f"{one}-{other} m").value

    assert depth is not None
    assert (depth.least, depth.most) == (float(min(one, other)), float(max(one, other)))
