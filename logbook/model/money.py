"""What a catch brought and how it was shared: exact sums in the fleet's currency."""

from decimal import Decimal

from msgspec import Struct

from logbook.model.named import ByName
from logbook.model.quantity import Money


class MoneyLine(Struct, frozen=True, kw_only=True):
    """One species, grade or lot that was sold.

    Attributes:
        species: Its name, as in the other figures.
        grade: None where one price held for all.
        weight_kg: What was sold of it.
        price_per_kg: What a kilogram brought; not rounded to the coin.
        value: Weight times the price as typed (for a box, for a kilogram), rounded to the last coin.
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
        unpriced: Species and grades landed for which no price is logged, as `large cod`; of several landings with the port, as
            `large cod (Sulvik)`. The gross leaves them out.
        unweighed: Species and grades with a price but no weight over the scale, named alike. The gross leaves them out.
        gross: Sum of the values; None where nothing sold has a weight.
        gross_per_day_at_sea: Over the days from sailing to docking.
        mean_price_per_kg: Gross over the weight that has a price; not rounded to the coin.
        expenses: Name and sum.
        net: Gross less expenses; None where no settlement is logged.
        settlement: Who and how much, adding up to the net to the last coin; empty where no shares are given.
        fuel_litres_per_tonne: Fuel used for a tonne over the scale; None where it is not known.
    """

    lines: tuple[MoneyLine, ...]
    unpriced: tuple[str, ...]
    unweighed: tuple[str, ...]
    gross: Money | None
    gross_per_day_at_sea: Money | None
    mean_price_per_kg: Decimal | None
    expenses: ByName[Money]
    net: Money | None
    settlement: ByName[Money]
    fuel_litres_per_tonne: float | None
