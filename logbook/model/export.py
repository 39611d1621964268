"""Figures as one JSON object: the keys of the records, units in their names, numbers unrounded, money as texts."""

from collections.abc import Iterator, Mapping
from datetime import datetime
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import TripFigures
from logbook.model.money import MoneyFigures, MoneyLine
from logbook.model.problem import Problem

_WEIGHED = frozenset({"weight_kg"})
"""What is no money among the exact numbers of the records of money."""

_SUMS = frozenset({"gross"})
"""What is money in any record."""

_AS_THEY_ARE = frozenset({type(None), str, bool, int, float})


def as_json(figures: TripFigures) -> dict[str, object]:
    """Return the figures of a trip as JSON takes them, with how they came about in `basis`.

    Weights and other numbers become JSON numbers, money a text with two decimals (`"31.37"`; a price that has more keeps
    them), moments ISO 8601 with their offset, tables by name objects.
    """
    return record_as_json(figures) | {"as_of": figures.trip.as_of.isoformat()}


def record_as_json(record: object) -> dict[str, object]:
    """Return any record of figures as JSON takes it, with how they came about in `basis`."""
    made = _plain(record)
    assert isinstance(made, dict)  # noqa: S101 - a record becomes a dict
    basis: dict[str, list[str]] = {}
    for path, words in _basis(record, ""):
        basis.setdefault(path, []).append(words)
    made["basis"] = {path: " or ".join(dict.fromkeys(ways)) for path, ways in basis.items()}
    return made


def _plain(value: object, *, money: bool = False) -> object:  # noqa: PLR0911 - one line a kind of value
    """Return a value as JSON takes it; `money` says that the exact numbers in it are money."""
    if type(value) in _AS_THEY_ARE:
        return value
    if isinstance(value, Decimal):
        return _sum(value) if money else float(value)
    if isinstance(value, datetime):
        return value.isoformat()
    if isinstance(value, Problem):
        return {
            "file": value.place.file,
            "line": value.place.line,
            "column": value.place.column,
            "severity": str(value.severity),
            "code": value.code,
            "message": value.message,
            "hint": value.hint,
        }
    if isinstance(value, Struct):
        money = isinstance(value, MoneyFigures | MoneyLine)
        return {
            name: _plain(getattr(value, name), money=name in _SUMS or (money and name not in _WEIGHED))
            for name in value.__struct_fields__
            if name != "basis"
        }
    if isinstance(value, Mapping):
        return {name: _plain(part, money=money) for name, part in value.items()}
    if isinstance(value, tuple):
        return [_plain(part, money=money) for part in value]
    return value


def _sum(money: Decimal) -> str:
    """Return money with two decimals; a price that has more keeps them."""
    whole, _, decimals = f"{money:f}".partition(".")
    return f"{whole}.{decimals:0<2}"


def _basis(value: object, path: str) -> Iterator[tuple[str, str]]:
    """Give the path and words of every figure that was neither plainly logged nor plainly reckoned."""
    if isinstance(value, Mapping):
        for name, part in value.items():
            yield from _basis(part, f"{path}{name}.")
    elif isinstance(value, tuple):
        for n, part in enumerate(value):
            yield from _basis(part, f"{path}{n}.")
    elif isinstance(value, Struct):
        for name, words in getattr(value, "basis", ()):
            yield f"{path}{name}", words
        for name in value.__struct_fields__:
            part = getattr(value, name)
            if name != "basis" and type(part) not in _AS_THEY_ARE:
                yield from _basis(part, f"{path}{name}.")
