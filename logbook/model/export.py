"""Figures as one JSON object: the keys of the records, units in their names, numbers unrounded, money as texts."""

from datetime import datetime
from decimal import Decimal

from msgspec import Struct
from msgspec.structs import asdict

from logbook.model.figures import TripFigures
from logbook.model.money import MoneyFigures, MoneyLine
from logbook.model.named import ByName
from logbook.model.problem import Problem

_WEIGHED = frozenset({"weight_kg"})
"""What is no money among the exact numbers of the records of money."""

_SUMS = frozenset({"gross"})
"""What is money in any record."""

_AS_THEY_ARE = frozenset({type(None), str, bool, int, float})

_OF_MONEY = frozenset({MoneyFigures, MoneyLine})

_Ways = dict[str, list[str]]


def as_json(figures: TripFigures) -> dict[str, object]:
    """Return the figures of a trip as JSON takes them, with how they came about in `basis`.

    Weights and other numbers become JSON numbers, money a text with two decimals (`"31.37"`; a price that has more keeps
    them), moments ISO 8601 with their offset, tables by name objects.
    """
    return record_as_json(figures) | {"as_of": figures.trip.as_of.isoformat()}


def record_as_json(record: object) -> dict[str, object]:
    """Return any record of figures as JSON takes it, with how they came about in `basis`."""
    assert isinstance(record, Struct)  # noqa: S101 - every record is one
    ways: _Ways = {}
    made = _fields(record, "", ways)
    made["basis"] = {path: " or ".join(dict.fromkeys(words)) for path, words in ways.items()}
    return made


def _fields(record: Struct, path: str, ways: _Ways) -> dict[str, object]:
    """Return a record's fields by name.

    Args:
        record: The record.
        path: Where it stands, with a dot after each name; empty at the top.
        ways: Added to is how every figure came about that was neither plainly logged nor plainly reckoned, by its path.
    """
    of_money = type(record) in _OF_MONEY
    made: dict[str, object] = asdict(record)
    for name, words in made.pop("basis", ()):  # type: ignore[attr-defined] # a Basis
        ways.setdefault(f"{path}{name}", []).append(words)
    for name, value in made.items():
        if type(value) not in _AS_THEY_ARE:
            money = name in _SUMS or (of_money and name not in _WEIGHED)
            made[name] = _plain(value, path, name, ways, money=money)
    return made


def _plain(value: object, above: str, name: str, ways: _Ways, *, money: bool) -> object:
    """Return a value as JSON takes it; `money` says that the exact numbers in it are money."""
    if isinstance(value, Decimal):
        return _sum(value) if money else float(value)
    if isinstance(value, datetime):
        return value.isoformat()
    path = f"{above}{name}."
    if isinstance(value, tuple):
        return [
            part if type(part) in _AS_THEY_ARE else _plain(part, path, str(n), ways, money=money)
            for n, part in enumerate(value)
        ]
    if isinstance(value, ByName):
        return {
            key: part if type(part) in _AS_THEY_ARE else _plain(part, path, key, ways, money=money)
            for key, part in value.items()
        }
    if isinstance(value, Problem):
        return _problem(value)
    return _fields(value, path, ways) if isinstance(value, Struct) else value


def _problem(problem: Problem) -> dict[str, object]:
    return {
        "file": problem.place.file,
        "line": problem.place.line,
        "column": problem.place.column,
        "severity": str(problem.severity),
        "code": problem.code,
        "message": problem.message,
        "hint": problem.hint,
    }


def _sum(money: Decimal) -> str:
    """Return money with two decimals; a price that has more keeps them."""
    whole, _, decimals = f"{money:f}".partition(".")
    return f"{whole}.{decimals:0<2}"
