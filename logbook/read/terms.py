"""Values in a fleet's own terms: its units where none is typed, its measures, its waters and its money."""

from collections.abc import Mapping as Table
from functools import lru_cache

from logbook.model.fleet import Fleet, Measure
from logbook.model.quantity import Celsius, Kilograms, Knots, Litres, Metres, Position, Price, Span, Weight
from logbook.read.amount import Amounted, parse_amount
from logbook.read.fields import Found, error, items_of, take, texts_of
from logbook.read.measured import parse_depth, parse_fuel, parse_length, parse_speed, parse_temperature, parse_warp
from logbook.read.measures import Measures
from logbook.read.money import parse_lot, parse_price
from logbook.read.position import parse_pair, parse_position
from logbook.read.said import Said
from logbook.read.tree import Node, Scalar, Sequence
from logbook.read.weight import parse_weight

_KEPT = 4096
"""So many texts and what they say are kept: a log says `2 baskets` of cod fifty times, and a fleet's logs far more often."""


class Terms:
    """Parsers of single values that know the fleet's units, measures, waters and currency."""

    __slots__ = ("_units", "amount", "currency", "depth", "measures", "speed", "temperature", "us_gallons", "waters")

    def __init__(
        self,
        *,
        units: Table[str, str],
        measures: tuple[Measure, ...] = (),
        waters: tuple[str, str] | None = None,
        us_gallons: bool = False,
        currency: str | None = None,
    ) -> None:
        """Keep what values are read by."""
        self._units = units
        self.measures = Measures(measures)
        self.waters = waters
        self.us_gallons = us_gallons
        self.currency = currency
        self.amount = lru_cache(_KEPT)(self._amount)
        self.depth = lru_cache(_KEPT)(self._depth)
        self.speed = lru_cache(_KEPT)(self._speed)
        self.temperature = lru_cache(_KEPT)(self._temperature)

    @classmethod
    def of(cls, fleet: Fleet) -> "Terms":
        """Return the terms of a fleet."""
        return cls(
            units=dict(fleet.units),
            measures=fleet.measures,
            waters=fleet.waters,
            us_gallons=fleet.us_gallons,
            currency=fleet.currency,
        )

    def _depth(self, text: str) -> Said[Span]:
        """Return a depth."""
        return parse_depth(text, self._units.get("depth"))

    def warp(self, text: str) -> Said[Span]:
        """Return a length or a range of lengths, as of warp out."""
        return parse_warp(text, self._units.get("length"))

    def length(self, text: str) -> Said[Metres]:
        """Return a length."""
        return parse_length(text, self._units.get("length"))

    def _temperature(self, text: str) -> Said[Celsius]:
        """Return a temperature."""
        return parse_temperature(text, self._units.get("temperature"))

    def _speed(self, text: str) -> Said[Knots]:
        """Return a speed."""
        return parse_speed(text, self._units.get("speed"))

    def weight(self, text: str, species: str | None = None) -> Said[Weight]:
        """Return a weight, of a species where that bears on what a measure weighs."""
        return parse_weight(text, self.measures, species=species, default_unit=self._units.get("weight"))

    def _amount(self, text: str, species: str | None) -> Said[Amounted]:
        """Return an amount of fish."""
        return parse_amount(text, self.measures, species=species, default_unit=self._units.get("catch"))

    def fuel(self, text: str) -> Said[Litres | Weight]:
        """Return an amount of fuel."""
        return parse_fuel(text, self._units.get("fuel"), self.us_gallons, self.measures)

    def position(self, text: str) -> Said[Position]:
        """Return a position."""
        return parse_position(text, self.waters)

    def price(self, text: str, species: str) -> Said[Price]:
        """Return a price."""
        return parse_price(text, self.measures, species=species, currency=self.currency)

    def lot(self, text: str, species: str) -> Said[tuple[Weight, Price]]:
        """Return the weight and the price of a lot."""
        unit = self._units.get("weight")
        return parse_lot(text, self.measures, species=species, default_unit=unit, currency=self.currency)


def take_weight(node: Node | None, terms: Terms, found: Found) -> Kilograms | None:
    """Return a weight that is no catch, in kilograms."""
    weight = take(node, terms.weight, found, "a weight")
    return weight.kilograms if weight else None


def take_position(node: Node | None, terms: Terms, found: Found) -> Position | None:
    """Return a position typed in one piece, or as a list of latitude and longitude."""
    if node is None:
        return None
    if not isinstance(node, Sequence):
        return take(node, terms.position, found, "a position")
    parts = texts_of(node, found, "a position")
    if len(parts) != 2:  # noqa: PLR2004 - latitude and longitude
        hint = "write [58.8733, -15.1667]; in brackets a comma always separates"
        error(found, node.place, "position-unreadable", "a position in brackets has two parts", hint)
        return None
    first, second = parts
    return take(first, lambda text: parse_pair(text, second.value, terms.waters), found)


def take_positions(node: Node | None, terms: Terms, found: Found) -> tuple[Position, ...]:
    """Return the positions of a list; one that stands alone is a list of one."""
    if node is None:
        return ()
    nodes = (node,) if isinstance(node, Scalar) else items_of(node, found, "positions")
    taken = (take_position(item, terms, found) for item in nodes)
    return tuple(position for position in taken if position is not None)
