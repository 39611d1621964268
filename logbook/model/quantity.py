"""One unit for each quantity, as a type, with the exact factors between the units people type.

What a person weighed is `Decimal`, so that a column added by hand gives the printed total; angles,
distances and temperatures are `float`; lengths of time are `timedelta`.
"""

from datetime import timedelta
from decimal import Decimal
from typing import NewType

from msgspec import Struct

Kilograms = NewType("Kilograms", Decimal)
"""A weight in kilograms, exactly as written."""

Metres = NewType("Metres", float)
"""A depth or a length in metres."""

NauticalMiles = NewType("NauticalMiles", float)
"""A distance in nautical miles of 1852 m."""

Knots = NewType("Knots", float)
"""A speed in nautical miles an hour."""

Celsius = NewType("Celsius", float)
"""A temperature in degrees Celsius."""

SquareKilometres = NewType("SquareKilometres", float)
"""An area in square kilometres."""

Litres = NewType("Litres", Decimal)
"""A volume in litres, exactly as written."""

Percent = NewType("Percent", Decimal)
"""A share in hundredths."""

Money = NewType("Money", Decimal)
"""A sum in the fleet's currency."""

POUND_KG = Decimal("0.45359237")
"""One avoirdupois pound in kilograms, exactly (NIST SP 811, 1959 agreement)."""

METRES_PER_NAUTICAL_MILE = 1852.0
"""Exactly (NIST SP 811)."""

METRES_PER_FATHOM = 1.8288
"""Six feet of 0.3048 m, exactly (NIST SP 811)."""

METRES_PER_FOOT = 0.3048
"""Exactly (NIST SP 811)."""


class Weight(Struct, frozen=True, kw_only=True):
    """A weight with the words it was typed in.

    Attributes:
        kilograms: The weight in our unit.
        number: The number typed.
        unit: The unit or measure typed, in its usual spelling: `kg`, `t`, `lb`, `basket`.
    """

    kilograms: Kilograms
    number: Decimal
    unit: str


class Span(Struct, frozen=True, kw_only=True):
    """A depth or length, alone or as a range.

    Attributes:
        least: The smaller end, in metres.
        most: The larger end, in metres; the same as `least` where one figure was typed.
        typed: What was typed.
    """

    least: Metres
    most: Metres
    typed: str

    @property
    def mean(self) -> Metres:
        """Return the mean of the two ends, in metres."""
        return Metres((self.least + self.most) / 2)


class Position(Struct, frozen=True, kw_only=True):
    """A place on WGS84.

    Attributes:
        latitude: Degrees, north positive, within ±90.
        longitude: Degrees, east positive, within ±180.
        typed: What was typed.
    """

    latitude: float
    longitude: float
    typed: str


class Wind(Struct, frozen=True, kw_only=True):
    """A wind as logged.

    Attributes:
        point: Compass point it blows from, as `SW`; empty in a calm or where none was typed.
        force: Beaufort force, 0 to 12 (WMO code table 1100); the higher where a range was typed.
        typed: What was typed.
    """

    point: str
    force: int
    typed: str


class Price(Struct, frozen=True, kw_only=True):
    """A price as money for a weight.

    Attributes:
        money: What is paid.
        per: Name of the weight it is paid for: `kg`, `box`.
        per_kg: Kilograms in one `per`.
    """

    money: Money
    per: str
    per_kg: Kilograms


HOUR = timedelta(hours=1)
"""One hour, to divide by."""

DAY = timedelta(days=1)
"""One day of 24 hours, to divide by."""
