"""Units of measured figures, against published values and a reference library."""

from decimal import Decimal

import pint
import pytest

from logbook.read import kinds
from logbook.read.kinds import Kind


@pytest.mark.parametrize(
    ("kind", "unit", "ours"),
    [
        # NIST SP 811 (2008), appendix B.8. Foot 3.048 E-01 m, exactly; inch 2.54 E-02 m, exactly.
        (kinds.DEPTH, "ft", "0.3048"),
        (kinds.MESH, "in", "25.4"),
        # Six international feet; NIST Handbook 44, appendix C: 1 fathom = 6 feet.
        (kinds.DEPTH, "fm", "1.8288"),
        # NIST SP 811, B.8: gallon (Imperial) 4.546 09 L; gallon (U.S.) 3.785 412 L (231 cubic inches).
        (kinds.VOLUME, "gal", "4.54609"),
        (kinds.VOLUME, "US gal", "3.785411784"),
        (kinds.VOLUME_US, "gal", "3.785411784"),
        (kinds.VOLUME_US, "imp gal", "4.54609"),
        (kinds.VOLUME, "m3", "1000"),
        # SP 811, table 6 and 8: the bar is 1 E+05 Pa, so a millibar is a hectopascal.
        (kinds.PRESSURE, "mb", "1"),
        (kinds.LANDING_RATE, "t/h", "1000"),
        (kinds.POWER, "W", "0.001"),
    ],
)
def test_a_unit_is_worth_what_is_published(kind: Kind, unit: str, ours: str) -> None:
    assert kind.ours(Decimal(1), unit) == Decimal(ours)


# SP 811, B.8: degree Fahrenheit, t/°C = (t/°F - 32)/1.8; the fixed points and the one where both scales meet.
@pytest.mark.parametrize(("fahrenheit", "celsius"), [(32, 0), (212, 100), (-40, -40), (50, 10)])
def test_fahrenheit_meets_celsius_at_the_fixed_points(fahrenheit: int, celsius: int) -> None:
    assert kinds.TEMPERATURE.ours(Decimal(fahrenheit), "F") == celsius


def test_a_nautical_mile_is_1852_metres() -> None:
    # SP 811, B.8: mile, nautical 1.852 E+03 m, exactly.
    assert float(kinds.DISTANCE.ours(Decimal("1.852"), "km")) == 1.0


@pytest.mark.parametrize(
    ("kind", "unit", "name", "base"),
    [
        (kinds.DEPTH, "fm", "6 * foot", "metre"),
        (kinds.DEPTH, "ft", "foot", "metre"),
        (kinds.MESH, "in", "inch", "millimetre"),
        (kinds.VOLUME, "gal", "imperial_gallon", "litre"),
        (kinds.VOLUME_US, "gal", "US_liquid_gallon", "litre"),
        (kinds.DISTANCE, "km", "kilometer", "nautical_mile"),
        (kinds.SPEED, "kn", "knot", "nautical_mile / hour"),
        (kinds.PRESSURE, "mb", "millibar", "hectopascal"),
        (kinds.POWER, "W", "watt", "kilowatt"),
    ],
)
def test_a_unit_is_worth_what_pint_has(kind: Kind, unit: str, name: str, base: str) -> None:
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()

    expected: float = registry.Quantity(name).to(base).magnitude

    assert float(kind.ours(Decimal(1), unit)) == pytest.approx(expected, rel=1e-12)


def test_fahrenheit_is_what_pint_has() -> None:
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()

    for degrees in (-40.0, 28.4, 46.0, 98.6):
        expected = registry.Quantity(degrees, "degF").to("degC").magnitude
        assert float(kinds.TEMPERATURE.ours(Decimal(str(degrees)), "F")) == pytest.approx(expected, abs=1e-9)


def test_units_are_told_in_a_hint_and_the_first_is_ours() -> None:
    assert kinds.DEPTH.base == "m"
    assert kinds.DEPTH.hint == "write a number and a unit: m, fm, ft"
    assert kinds.DEPTH.unit("Fathoms") == "fm"
    assert kinds.DEPTH.unit("kg") is None
