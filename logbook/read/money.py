"""Money as people type it: sums, prices (`3.90/kg`) and the lots fish is sold in (`2100 kg 3.90/kg`).

Knows the forms and the one currency of the fleet; nothing is changed from another currency.
"""

import re

from logbook.model.quantity import Money, Price, Weight
from logbook.read.forms import form
from logbook.read.measures import Measures
from logbook.read.number import FIGURE, better, figure, quoted, tidied
from logbook.read.said import Fault, Said, wrong
from logbook.read.weight import parse_weight

CODES = frozenset({"currency-other", "lot-unreadable", "money-negative", "money-unreadable", "price-unreadable"})

_MAX_MONEY = 10**10
_SUM = form(rf"([+-]?) ?({FIGURE})")
_PRICE = form(r"(.*?) ?(?:/|\bper\b) ?(.*)", re.DOTALL | re.IGNORECASE)
_LOT = form(rf"(.*?[^\W\d_]\.?)(?: (?:at )?|(?: ?@ ?))([+-]? ?{FIGURE} ?(?:/|per ).*)", re.DOTALL | re.IGNORECASE)
_OTHER = form(rf"([^\W\d_]+\.?|[^\w\s.,'+-])? ?([+-]? ?{FIGURE}) ?([^\W\d_]+\.?|[^\w\s.,'+-])?")


def parse_money(text: str, currency: str | None) -> Said[Money]:
    """Return a sum of money, typed with or without the fleet's currency."""
    found: list[Fault] = []
    money = _money(text, _without(tidied(text), currency), currency, found, dots=True)
    return Said(money, tuple(found))


def _money(shown: str, typed: str, currency: str | None, found: list[Fault], *, dots: bool) -> Money | None:
    """Return a sum without its currency; a dot before three digits wants a look in a sum, but not in a price."""
    match = _SUM().fullmatch(typed)
    if match is None:
        found.append(_no_money(shown, typed, currency))
        return None
    if match[1] == "-":
        found.append(wrong("money-negative", f"{quoted(shown)} is below nothing", "leave out the minus"))
        return None
    number = figure(match[2], found, dots=dots)
    if number is not None and number > _MAX_MONEY:
        found.append(wrong("money-unreadable", f"{quoted(shown)} is more than any fleet has", "look at the figure"))
        return None
    return None if number is None else Money(number)


def _no_money(shown: str, typed: str, currency: str | None) -> Fault:
    """Return what is wrong with a text that is no sum: another currency, or no number."""
    other = _OTHER().fullmatch(typed)
    if other is not None:
        ours = f"the fleet's money is {currency}" if currency else "the fleet file names no currency"
        hint = f"write the sum in {currency}" if currency else "leave the currency out, or name it there"
        return wrong("currency-other", f"{ours}, so {quoted(shown)} can't be used", hint)
    hint = better(typed, lambda fixed: parse_money(fixed, currency), "write a number, as 1200 or 12.50")
    return wrong("money-unreadable", f"{quoted(shown)} is no sum of money", hint)


def _without(typed: str, currency: str | None) -> str:
    """Return a text without the fleet's currency in it."""
    if not currency or typed.isdigit():
        return typed
    name = re.escape(currency.strip())
    rest = re.sub(rf"(?<![^\W\d_]){name}(?![^\W\d_])\.?", " ", typed, count=1, flags=re.IGNORECASE)
    return " ".join(rest.split())


def parse_price(text: str, measures: Measures, *, species: str | None, currency: str | None) -> Said[Price]:
    """Return a price: money for a weight, as `3.90/kg` or `140/box`."""
    match = _PRICE().fullmatch(_without(tidied(text), currency))
    if match is None:
        number = parse_money(text, currency).value
        if number is None:
            return Said(None, (_no_price(text),))
        hint = f"write {tidied(text)}/kg, or what else it is paid for"
        return Said(None, (wrong("no-unit", f"{quoted(text)} does not say what weight it is paid for", hint),))
    found: list[Fault] = []
    money = _money(text, match[1], currency, found, dots=False)
    per = measures.name(match[2].rstrip(". "))
    if per is None:
        found.append(_no_price(text))
        return Said(None, tuple(found))
    one = parse_weight(f"1 {per}", measures, species=species)
    found.extend(one.faults)
    if money is None or one.value is None:
        return Said(None, tuple(found))
    return Said(Price(money=money, per=per, per_kg=one.value.kilograms), tuple(found))


def _no_price(text: str) -> Fault:
    return wrong("price-unreadable", f"{quoted(text)} is no price", "write money for a weight, as 3.90/kg or 140/box")


def parse_lot(
    text: str, measures: Measures, *, species: str | None, default_unit: str | None, currency: str | None
) -> Said[tuple[Weight, Price]]:
    """Return a lot as it was sold: its weight and its price, as `2100 kg 3.90/kg`."""
    typed = _without(tidied(text), currency)
    match = _LOT().fullmatch(typed)
    if match is None:
        fault = wrong("lot-unreadable", f"{quoted(text)} is no lot", "write a weight and a price: 2100 kg 3.90/kg")
        return Said(None, (fault,))
    weight = parse_weight(match[1], measures, species=species, default_unit=default_unit)
    price = parse_price(match[2], measures, species=species, currency=currency)
    faults = weight.faults + price.faults
    if weight.value is None or price.value is None:
        return Said(None, faults)
    return Said((weight.value, price.value), faults)
