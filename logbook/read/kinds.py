"""Kinds of measured figures: the units each may be typed in, their factors, and the bounds it makes sense between.

One table. How a figure with its unit is typed stands in `measured`.
"""

from collections.abc import Mapping
from decimal import Decimal
from typing import NamedTuple

from msgspec import Struct

_JOINERS = str.maketrans({"²": "2", "³": "3"} | dict.fromkeys("·*()^ .", ""))


class Unit(NamedTuple):
    """A unit: so many of it, less `zero`, times `times` and divided by `by`, are ours."""

    times: Decimal = Decimal(1)
    by: Decimal = Decimal(1)
    zero: Decimal = Decimal(0)


class Kind(Struct, frozen=True, kw_only=True):
    """A kind of figure.

    Attributes:
        name: For messages.
        units: Each unit by its usual spelling; the first is the one we keep.
        words: Every way a unit is typed, folded and without spaces, and its usual spelling.
        least: Smallest figure that makes sense, in our unit.
        most: Largest.
        thousands: True where figures run into thousands, so that a dot before three digits wants a look.
    """

    name: str
    units: Mapping[str, Unit]
    words: Mapping[str, str]
    least: Decimal
    most: Decimal
    thousands: bool = False

    @property
    def base(self) -> str:
        """Return the unit that bounds are told in."""
        return next(iter(self.units))

    @property
    def hint(self) -> str:
        """Return what to type: a number and one of the units."""
        return f"write a number and a unit: {', '.join(self.units)}"

    def unit(self, typed: str) -> str | None:
        """Return the usual spelling of a unit, or None where it is none of this kind."""
        return self.words.get(typed) or self.words.get(typed.translate(_JOINERS).casefold())

    def ours(self, number: Decimal, unit: str) -> Decimal:
        """Return so many of a unit in the unit we keep."""
        of = self.units[unit]
        return (number - of.zero) * of.times / of.by


def _unit(times: str = "1", by: str = "1", zero: str = "0") -> Unit:
    return Unit(Decimal(times), Decimal(by), Decimal(zero))


def _kind(name: str, least: str, most: str, *units: tuple[str, Unit, str], thousands: bool = False) -> Kind:
    """Return a kind from its units: usual spelling, factor, and other spellings with spaces between them."""
    words = {word: spelled for spelled, _, others in units for word in (spelled, spelled.casefold(), *others.split())}
    table = {spelled: unit for spelled, unit, _ in units}
    return Kind(name=name, units=table, words=words, least=Decimal(least), most=Decimal(most), thousands=thousands)


_ONE = _unit()
_METRE = ("m", _ONE, "metre metres meter meters mtr mtrs")
_FATHOM = ("fm", _unit("1.8288"), "fms fathom fathoms fath fths fth")
_FOOT = ("ft", _unit("0.3048"), "foot feet")
_LITRE = ("l", _ONE, "litre litres liter liters ltr ltrs")
_CUBIC_METRE = ("m3", _unit("1000"), "cbm")
_GALLON = ("gal", _unit("4.54609"), "gals gallon gallons impgal imperialgallon imperialgallons ukgal")
_US_GALLON = ("US gal", _unit("3.785411784"), "usgal usgals usgallon usgallons")

DEPTH = _kind("depth", "0", "6000", _METRE, _FATHOM, _FOOT, thousands=True)
"""Factors exact, here and below: NIST SP 811."""

LENGTH = _kind("length", "0", "6000", _METRE, _FATHOM, _FOOT, thousands=True)
MESH = _kind(
    "mesh size",
    "1",
    "2000",
    ("mm", _ONE, "millimetre millimetres millimeter millimeters"),
    ("cm", _unit("10"), "centimetre centimetres centimeter centimeters"),
    ("in", _unit("25.4"), "inch inches"),
)
SPEED = _kind("speed", "0", "40", ("kn", _ONE, "kt kts kns knot knots"))
DISTANCE = _kind(
    "distance",
    "0",
    "20000",
    ("nm", _ONE, "nmi mile miles nauticalmile nauticalmiles seamile seamiles"),
    ("km", _unit("1000", "1852"), "kilometre kilometres kilometer kilometers"),
)
TEMPERATURE = _kind(
    "temperature",
    "-60",
    "60",
    ("C", _ONE, "°c degc degreec degreesc celsius degreescelsius centigrade"),
    ("F", _unit("5", "9", "32"), "°f degf degreef degreesf fahrenheit degreesfahrenheit"),
)
VOLUME = _kind("volume", "0", "10000000", _LITRE, _CUBIC_METRE, _GALLON, _US_GALLON, thousands=True)
VOLUME_US = _kind(
    "volume",
    "0",
    "10000000",
    _LITRE,
    _CUBIC_METRE,
    ("gal", _unit("3.785411784"), "gals gallon gallons usgal usgals usgallon usgallons"),
    ("imp gal", _unit("4.54609"), "impgal imperialgallon imperialgallons ukgal"),
    thousands=True,
)
"""The same where the fleet file says that a gallon is the US one."""

PERCENT = _kind("percentage", "0", "100", ("%", _ONE, "percent percents pct pc"))
POWER = _kind(
    "power",
    "0",
    "1000",
    ("kW", _ONE, "kilowatt kilowatts"),
    ("W", _unit("1", "1000"), "watt watts"),
)
AREA = _kind("surface", "0", "100000", ("m2", _ONE, "sqm squaremetre squaremetres squaremeter squaremeters"))
HEAT_PASSAGE = _kind("passage of heat", "0", "100", ("W/m2K", _ONE, "w/m2/k w/m2c w/m2°c"))
LANDING_RATE = _kind(
    "landing rate",
    "1",
    "1000000",
    ("kg/h", _ONE, "kg/hr kg/hour kgperhour kganhour"),
    ("t/h", _unit("1000"), "t/hr t/hour tonnes/h tonnes/hour tperhour tanhour tonnesperhour tonnesanhour"),
)
PRESSURE = _kind(
    "pressure of the air", "850", "1100", ("hPa", _ONE, "hectopascal"), ("mb", _ONE, "mbar millibar millibars")
)
SPECIFIC_HEAT = _kind("specific heat", "0.1", "10", ("kJ/kgK", _ONE, "kj/kg/k kj/kgc kj/kg°c"))
LATENT_HEAT = _kind("latent heat", "1", "1000", ("kJ/kg", _ONE, ""))
