"""Measured figures as people type them: depths, lengths, speeds, temperatures and the rest.

Knows how a figure with its unit is typed; which units there are and between what bounds a figure makes sense stands in
`kinds`. Weights, money, positions and winds have modules of their own.
"""

import re
from decimal import Decimal

from logbook.model.quantity import Celsius, Knots, Litres, Metres, NauticalMiles, Percent, Span, Weight
from logbook.read import kinds
from logbook.read.forms import form
from logbook.read.kinds import Kind
from logbook.read.measures import Measures
from logbook.read.number import FIGURE, better, exact, figure, near, plain, quoted, tidied, too_long
from logbook.read.said import Fault, Said, wrong
from logbook.read.signs import degree_signs
from logbook.read.weight import parse_weight

CODES = frozenset({"measure-range", "measure-unreadable", "no-unit"})

_COMMON = re.compile(r"(-?[0-9]{1,9}(?:\.[0-9]{1,2})?) ?([A-Za-z/0-9%]+)")
_GENERAL = form(rf"([+-]?) ?({FIGURE}) ?(.*)", re.DOTALL)
_RANGE = form(rf"({FIGURE}) ?([^\W\d_]+\.?)? ?(?:-|to|/) ?({FIGURE}) ?(.*)", re.DOTALL | re.IGNORECASE)
_MAX_SHOWN = 40


def _measure(text: str, kind: Kind, default_unit: str | None) -> Said[Decimal]:
    """Return a figure in the unit that its kind is kept in."""
    common = _COMMON.fullmatch(text)
    if common is not None:
        unit = kind.words.get(common[2])
        if unit is not None:
            amount = kind.ours(Decimal(common[1]), unit)
            if kind.least <= amount <= kind.most:
                return Said(amount)
    found: list[Fault] = []
    return Said(_careful(text, kind, default_unit, found), tuple(found))


def _careful(text: str, kind: Kind, default_unit: str | None, found: list[Fault]) -> Decimal | None:
    """Return a figure of any form, or say what is wrong with it."""
    typed = exact(tidied(text), found)
    match = _GENERAL().fullmatch(typed)
    if match is None:
        found.append(_unreadable(text, typed, kind, default_unit))
        return None
    endless = too_long(match[2])
    if endless is not None:
        found.append(endless)
        return None
    unit = _unit(text, match[2], match[3], kind, default_unit, found)
    number = None if unit is None else figure(match[2], found, unit=unit, dots=kind.thousands)
    if unit is None or number is None:
        return None
    return _in_bounds(text, kind.ours(-number if match[1] == "-" else number, unit), kind, found)


def _unit(text: str, digits: str, words: str, kind: Kind, default_unit: str | None, found: list[Fault]) -> str | None:
    """Return the unit meant; None, with the reason found, where it is missing or none of its kind."""
    unit = kind.unit(words or default_unit or "")
    if unit is None and not words:
        units = [f"{digits} {unit}" for unit in list(kind.units)[:2]]
        hint = f"write {' or '.join(units)}" + (", whichever is meant" if len(units) > 1 else "")
        found.append(wrong("no-unit", f"{quoted(text)} has no unit", hint))
    elif unit is None and any(c.isdecimal() for c in words[:1] + words[1:].partition("/")[0]):
        found.append(_unreadable(text, tidied(text), kind, default_unit))
    elif unit is None:
        known = near(words, kind.words)
        hint = f"write {digits} {kind.words[known]}" if known else kind.hint
        found.append(
            wrong("measure-unreadable", f"{quoted(text)} is no {kind.name}: {quoted(words)} is no unit of it", hint)
        )
    return unit


def _unreadable(text: str, typed: str, kind: Kind, default_unit: str | None) -> Fault:
    hint = better(typed, lambda fixed: _measure(fixed, kind, default_unit), kind.hint)
    return wrong("measure-unreadable", f"{quoted(text)} is no {kind.name}", hint)


def _in_bounds(text: str, amount: Decimal, kind: Kind, found: list[Fault]) -> Decimal | None:
    if kind.least <= amount <= kind.most:
        return amount
    message = f"{quoted(text)} is out of bounds for a {kind.name}"
    if amount < 0 <= kind.least:
        found.append(wrong("measure-range", message, "leave out the minus"))
        return None
    hint = f"a {kind.name} lies between {plain(kind.least)} and {plain(kind.most)} {kind.base}"
    found.append(wrong("measure-range", message, hint.rstrip()))
    return None


def parse_depth(text: str, default_unit: str | None = None) -> Said[Span]:
    """Return a depth: one figure or a range, as `98 fm` or `95-110 fm`."""
    return _spanned(text, kinds.DEPTH, default_unit)


def parse_warp(text: str, default_unit: str | None = None) -> Said[Span]:
    """Return a length of warp: one figure or a range."""
    return _spanned(text, kinds.LENGTH, default_unit)


def _spanned(text: str, kind: Kind, default_unit: str | None) -> Said[Span]:
    """Return one figure or a range."""
    found: list[Fault] = []
    match = _RANGE().fullmatch(exact(tidied(text), found))
    if match is None:
        one = _measure(text, kind, default_unit)
        return Said(None if one.value is None else _span(text, one.value, one.value), one.faults)
    units = match[2] or match[4] or default_unit, match[4] or match[2] or default_unit
    if units[0] is None or units[1] is None:
        figures = f"{match[1]}-{match[3]}"[:_MAX_SHOWN]
        hint = f"write {figures} m or {figures} fm, whichever is meant"
        return Said(None, (wrong("no-unit", f"{quoted(text)} has no unit", hint),))
    ends = _measure(f"{match[1]} {units[0]}", kind, None), _measure(f"{match[3]} {units[1]}", kind, None)
    found.extend(ends[0].faults or ends[1].faults)
    if ends[0].value is None or ends[1].value is None:
        return Said(None, tuple(found))
    return Said(_span(text, ends[0].value, ends[1].value), tuple(found))


def _span(text: str, one: Decimal, other: Decimal) -> Span:
    return Span(least=Metres(float(min(one, other))), most=Metres(float(max(one, other))), typed=text.strip())


def _float(text: str, kind: Kind, default_unit: str | None) -> Said[float]:
    said = _measure(text, kind, default_unit)
    return Said(None if said.value is None else float(said.value), said.faults)


def parse_length(text: str, default_unit: str | None = None) -> Said[Metres]:
    """Return one length."""
    said = _float(text, kinds.LENGTH, default_unit)
    return Said(None if said.value is None else Metres(said.value), said.faults)


def parse_mesh(text: str, default_unit: str | None = None) -> Said[float]:
    """Return a mesh size in millimetres."""
    return _float(text, kinds.MESH, default_unit)


def parse_speed(text: str, default_unit: str | None = None) -> Said[Knots]:
    """Return a speed."""
    said = _float(text, kinds.SPEED, default_unit)
    return Said(None if said.value is None else Knots(said.value), said.faults)


def parse_distance(text: str, default_unit: str | None = None) -> Said[NauticalMiles]:
    """Return a distance."""
    said = _float(text, kinds.DISTANCE, default_unit)
    return Said(None if said.value is None else NauticalMiles(said.value), said.faults)


def parse_temperature(text: str, default_unit: str | None = None) -> Said[Celsius]:
    """Return a temperature."""
    said = _float(degree_signs(text), kinds.TEMPERATURE, default_unit)
    return Said(None if said.value is None else Celsius(said.value), said.faults)


def parse_percent(text: str, default_unit: str | None = None) -> Said[Percent]:
    """Return a share in hundredths."""
    said = _measure(text, kinds.PERCENT, default_unit)
    return Said(None if said.value is None else Percent(said.value), said.faults)


def parse_power(text: str, default_unit: str | None = None) -> Said[float]:
    """Return a power in kilowatts."""
    return _float(text, kinds.POWER, default_unit)


def parse_area(text: str, default_unit: str | None = None) -> Said[float]:
    """Return an area in square metres."""
    return _float(text, kinds.AREA, default_unit)


def parse_heat_passage(text: str, default_unit: str | None = None) -> Said[float]:
    """Return the heat that passes a square metre for each degree, in W/(m² K)."""
    return _float(text, kinds.HEAT_PASSAGE, default_unit)


def parse_landing_rate(text: str, default_unit: str | None = None) -> Said[float]:
    """Return a rate of discharge in kilograms an hour."""
    return _float(text, kinds.LANDING_RATE, default_unit)


def parse_pressure(text: str, default_unit: str | None = None) -> Said[float]:
    """Return a pressure of the air in hectopascals."""
    return _float(text, kinds.PRESSURE, default_unit)


def parse_specific_heat(text: str, default_unit: str | None = None) -> Said[float]:
    """Return a specific heat in kJ/(kg K)."""
    return _float(text, kinds.SPECIFIC_HEAT, default_unit)


def parse_latent_heat(text: str, default_unit: str | None = None) -> Said[float]:
    """Return a latent heat in kJ/kg."""
    return _float(text, kinds.LATENT_HEAT, default_unit)


def parse_fuel(
    text: str,
    default_unit: str | None,
    us_gallons: bool,  # noqa: FBT001 - the caller's fleet says which
    measures: Measures,
) -> Said[Litres | Weight]:
    """Return an amount of fuel: a volume, or a weight where that is what was typed."""
    kind = kinds.VOLUME_US if us_gallons else kinds.VOLUME
    match = _GENERAL().fullmatch(exact(tidied(text), []))
    unit = (match[3] if match else "") or default_unit or ""
    if measures.name(unit.rstrip(". ")) is not None:
        weight = parse_weight(text, measures, default_unit=default_unit)
        return Said(weight.value, weight.faults)
    said = _measure(text, kind, default_unit)
    return Said(None if said.value is None else Litres(said.value), said.faults)
