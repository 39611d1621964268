"""What a landed catch brought, and how that was shared: the weights over the scale at the prices that were paid.

Without a price or without a weight nothing is guessed: the hail is never sold, and what is left out is named. Rounding and
sharing are in `coins`.
"""

from collections.abc import Iterable, Iterator, Sequence
from decimal import Decimal
from fractions import Fraction

from msgspec import Struct

from logbook.model import reasons
from logbook.model.money import MoneyFigures, MoneyLine
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.quantity import Money, Weight
from logbook.model.trip import Landing, Lot, OutTurn, Settlement, Trip
from logbook.reckon.catch import add, species_key
from logbook.reckon.coins import add_money, per, share_out, to_coin

BOAT = reasons.BOAT
"""What the boat's own share goes by in a settlement."""

_ANY = ""
"""The grade of what was weighed or priced without one."""
_KG_PER_TONNE = 1000


class _Sale(Struct, frozen=True, kw_only=True):
    """What one landing made of one species."""

    lines: tuple[MoneyLine, ...]
    unpriced: tuple[str, ...]
    unweighed: tuple[str, ...]


def reckon_money(trip: Trip, days_at_sea: float | None) -> MoneyFigures | None:
    """Return what a trip brought and how it was shared; None where no price is logged.

    Args:
        trip: The trip as it stood when its figures are as of.
        days_at_sea: From sailing to docking; None where not known.
    """
    if not any(_prices(landing) for landing in trip.landings):
        return None
    sales = [(landing, sale) for landing in trip.landings for sale in _sales(landing)]
    lines = tuple(line for _, sale in sales for line in sale.lines)
    gross = add_money(line.value for line in lines) if lines else None
    weight = add(line.weight_kg for line in lines)
    expenses = _by_name(trip.settlement.expenses if trip.settlement is not None else ())
    net = _net(gross, expenses) if trip.settlement is not None else None
    return MoneyFigures(
        lines=lines,
        unpriced=_named(trip, ((landing, sale.unpriced) for landing, sale in sales)),
        unweighed=_named(trip, ((landing, sale.unweighed) for landing, sale in sales)),
        gross=gross,
        gross_per_day_at_sea=_per_day(gross, days_at_sea),
        mean_price_per_kg=per(gross, weight) if gross is not None and weight else None,
        expenses=expenses,
        net=net,
        settlement=_settled(net, trip.settlement),
        fuel_litres_per_tonne=_fuel_per_tonne(trip),
    )


def _named(trip: Trip, left_out: Iterable[tuple[Landing, tuple[str, ...]]]) -> tuple[str, ...]:
    """Return what each landing leaves out; where there were several, with the port: the same fish may be sold at another."""
    several = len(trip.landings) > 1
    return tuple(
        dict.fromkeys(
            f"{name} ({landing.port})" if several and landing.port else name
            for landing, names in left_out
            for name in names
        )
    )


def _prices(landing: Landing) -> list[Lot]:
    """Return the prices of a landing; one for a measure that weighs nothing is none."""
    return [lot for lot in landing.prices if lot.price.per_kg > 0]


def _sales(landing: Landing) -> Iterator[_Sale]:
    """Give what was sold at a landing, species by species in the order of its prices."""
    species: dict[str, tuple[list[OutTurn], list[Lot]]] = {}
    for lot in _prices(landing):
        species.setdefault(species_key(lot.species), ([], []))[1].append(lot)
    for entry in landing.out_turn:
        species.setdefault(species_key(entry.species), ([], []))[0].append(entry)
    for entries, lots in species.values():
        yield _sale(entries, lots)


def _sale(entries: Sequence[OutTurn], prices: Sequence[Lot]) -> _Sale:
    """Return what was sold of one species at one landing.

    A lot with a weight stands as it was typed, be it more than the scale said. A price with no weight holds for what is left
    of its grade; one without a grade for what is left of the grades that have no such price of their own.
    """
    weighed = _weighed(entries)
    own = {_grade(price) for price in prices if price.weight is None} - {_ANY}
    left = _left(weighed, prices, own)
    lines: list[MoneyLine] = []
    unweighed: list[str] = []
    for price in prices:
        if price.weight is not None:
            lines.append(_line(price, price.weight.kilograms))
            continue
        held = _held(price, weighed, own)
        rest = add(left.pop(grade, None) for grade in held)
        if rest:
            lines.append(_line(price, rest))
        unweighed += [_called(entry) for entry in entries if _grade(entry) in held and weighed[_grade(entry)] is None]
        if not held and (price.grade or not weighed):
            unweighed.append(_called(price))
    return _Sale(lines=tuple(lines), unpriced=tuple(_unpriced(entries, prices, left)), unweighed=tuple(unweighed))


def _grade(named: OutTurn | Lot) -> str:
    """Return a grade as it is matched."""
    return fold_name(named.grade or _ANY)


def _called(named: OutTurn | Lot) -> str:
    """Return how a species and grade are called: `large cod`."""
    name = species_key(named.species)
    return f"{named.grade} {name}" if named.grade else name


def _line(lot: Lot, weight_kg: Decimal) -> MoneyLine:
    price = lot.price
    return MoneyLine(
        species=species_key(lot.species),
        grade=lot.grade,
        weight_kg=weight_kg,
        price_per_kg=per(price.money, price.per_kg),
        value=to_coin(Fraction(weight_kg) * Fraction(price.money) / Fraction(price.per_kg)),
    )


def _weighed(entries: Iterable[OutTurn]) -> dict[str, Decimal | None]:
    """Return what the scale said of each grade; None where it could not be read."""
    grades: dict[str, list[Decimal | None]] = {}
    for entry in entries:
        grades.setdefault(_grade(entry), []).append(entry.weight.kilograms if entry.weight is not None else None)
    return {grade: add(weights) for grade, weights in grades.items()}


def _left(weighed: dict[str, Decimal | None], prices: Iterable[Lot], own: set[str]) -> dict[str, Decimal]:
    """Return what is left of each weighed grade when the lots are taken out of it, never below 0."""
    left = {grade: weight for grade, weight in weighed.items() if weight is not None}
    for lot in sorted(prices, key=lambda lot: lot.grade is None):
        out = lot.weight.kilograms if lot.weight is not None else Decimal(0)
        for grade in _taken_from(_grade(lot), left, own):
            taken = min(out, left[grade])
            left[grade] -= taken
            out -= taken
    return left


def _taken_from(lot: str, left: dict[str, Decimal], own: set[str]) -> list[str]:
    """Return the weighed grades that a lot is taken out of, in order.

    A lot of one grade comes out of that grade, or out of what was weighed without a grade. A lot without a grade comes out of
    that first, then out of the grades that have no price of their own, then out of the others.
    """
    if lot == _ANY:
        return sorted(left, key=lambda grade: (grade != _ANY, grade in own))
    return [lot] if lot in left else [_ANY] * (_ANY in left)


def _held(price: Lot, weighed: Iterable[str], own: set[str]) -> list[str]:
    """Return the weighed grades that a price without a weight holds for."""
    if price.grade is not None:
        return [grade for grade in weighed if grade == _grade(price)]
    return [grade for grade in weighed if grade not in own]


def _unpriced(entries: Sequence[OutTurn], prices: Sequence[Lot], left: dict[str, Decimal]) -> Iterator[str]:
    """Give what was landed and is in no lot and under no price.

    Args:
        entries: What the scale said of one species.
        prices: Its lots and prices.
        left: Weight of each grade that is left after them.
    """
    any_grade = any(price.grade is None for price in prices)
    priced = {_grade(price) for price in prices}
    for entry in entries:
        if left.get(_grade(entry)):
            # Which grade the fish of a lot without a grade came out of can't be told.
            yield species_key(entry.species) if any_grade else _called(entry)
        elif entry.weight is None and not any_grade and _grade(entry) not in priced:
            yield _called(entry)


def _per_day(gross: Money | None, days_at_sea: float | None) -> Money | None:
    return to_coin(Fraction(gross) / Fraction(days_at_sea)) if gross is not None and days_at_sea else None


def _by_name(pairs: Iterable[tuple[str, Decimal]]) -> ByName[Money]:
    """Return sums by name to the coin; the same name twice, whatever its case, is added and spelt as it first was."""
    names: dict[str, str] = {}
    sums: dict[str, Decimal] = {}
    for name, money in pairs:
        folded = fold_name(name)
        names.setdefault(folded, name)
        sums[folded] = sums.get(folded, Decimal(0)) + money
    return ByName((name, to_coin(sums[folded])) for folded, name in names.items())


def _net(gross: Money | None, expenses: ByName[Money]) -> Money | None:
    """Return the gross less the expenses: all of it where there were none."""
    return Money(gross - add_money(expenses.values())) if gross is not None else None


def _settled(net: Money | None, settlement: Settlement | None) -> ByName[Money]:
    """Return who gets how much of the net: first the boat's percentage, then the rest by shares.

    Empty where the net is not known, where there are no shares to give the rest to, or where one is below nothing.
    """
    if net is None or settlement is None:
        return ByName()
    names, parts = [name for name, _ in settlement.shares], [part for _, part in settlement.shares]
    if not any(parts) or min(parts) < 0:
        return ByName()
    if settlement.boat_share is None:
        return _by_name(zip(names, share_out(net, parts), strict=True))
    boat = to_coin(Fraction(net) * Fraction(settlement.boat_share) / 100)
    rest = share_out(Money(net - boat), parts)
    return _by_name(zip((BOAT, *names), (boat, *rest), strict=True))


def _fuel_per_tonne(trip: Trip) -> float | None:
    """Return the litres of fuel used for a tonne over the scale: what was loaded less the last left once fishing was over.

    None where either is not logged in litres, where more was left than was loaded (so that there was some aboard before), or
    where a landing's weight is not known. Fuel aboard before loading is not in the log, and so not in the figure.
    """
    hauls = [tow.hauled for tow in trip.tows if tow.hauled is not None]
    readings = [
        (reading.at, reading.fuel_left)
        for reading in trip.readings
        if reading.fuel_left is not None and reading.at is not None and hauls and reading.at >= max(hauls)
    ]
    landed = _landed_kg(trip)
    if not readings or trip.fuel_loaded is None or not landed:
        return None
    _, left = max(readings, key=lambda reading: reading[0])
    if isinstance(left, Weight) or isinstance(trip.fuel_loaded, Weight) or left > trip.fuel_loaded:
        return None
    return float((trip.fuel_loaded - left) * _KG_PER_TONNE / landed)


def _landed_kg(trip: Trip) -> Decimal | None:
    """Return what the scale said of all landings; None where a weight is missing."""
    weights = [entry.weight for landing in trip.landings for entry in landing.out_turn]
    if any(weight is None for weight in weights) or not all(landing.out_turn for landing in trip.landings):
        return None
    return add(weight.kilograms for weight in weights if weight is not None)
