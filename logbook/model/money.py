"""What a catch brought and how it was shared: exact sums in the fleet's currency."""

from decimal import Decimal

from msgspec import Struct

from logbook.model.named import ByName
from logbook.model.quantity import Money


class MoneyLine(Struct, frozen=True, kw_only=True):
    """One species, grade or lot that was sold.

    Attributes:
        species: Its name.
        grade: None where one price held for all.
        weight_kg: What was sold of it.
        price_per_kg: What a kilogram brought.
        value: Weight times price, rounded to the last coin.
    """

    species: str
    grade: str | None
    weight_kg: Decimal
    price_per_kg: Decimal
    value: Money


class MoneyFigures(Struct, frozen=True, kw_only=True):
    """The `money` section; None in a trip's figures where no price is logged.

    Attributes:
        lines: What was sold.
        unpriced: Species and grades landed for which no price is logged, as they are called.
        gross: Sum of the values.
        gross_per_day_at_sea: Over the days from sailing to docking.
        mean_price_per_kg: Gross over the weight that has a price.
        expenses: Name and sum.
        net: Gross less expenses; None where no expenses are logged.
        settlement: Who and how much, adding up to the net to the last coin; empty where no shares are given.
        fuel_litres_per_tonne: Fuel used for a tonne landed; None where it is not known.
    """

    lines: tuple[MoneyLine, ...]
    unpriced: tuple[str, ...]
    gross: Money
    gross_per_day_at_sea: Money | None
    mean_price_per_kg: Decimal | None
    expenses: ByName[Money]
    net: Money | None
    settlement: ByName[Money]
    fuel_litres_per_tonne: float | None
