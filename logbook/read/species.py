"""The program's own species list, read from the tables in `data`."""

import csv
from decimal import Decimal
from functools import cache
from pathlib import Path

from logbook.model.species import Alias, Factor, Species, State

_BY_DEFINITION = Factor(value=Decimal("1.00"), authority="by definition", year=None)
"""Whole fish weighs what it weighed alive."""


@cache
def program_species() -> tuple[Species, ...]:
    """Return the species the program brings, in the order of its list.

    Source:
        FAO ASFIS (codes, scientific names); Implementing Regulation (EU) No 404/2011 Annex XIII and FAO Fisheries Circular 847
        rev. 1 (factors), each factor with its authority and year.
    """
    factors: dict[tuple[str, str], list[tuple[State, Factor]]] = {}
    for row in _rows("factors.csv"):
        factor = Factor(value=Decimal(row["factor"]), authority=row["authority"], year=int(row["year"]))
        factors.setdefault((row["code"], row["used"]), []).append((State(row["state"]), factor))
    return tuple(
        _species(row, factors.get((row["code"], "default"), []), factors.get((row["code"], "offered"), []))
        for row in _rows("species.csv")
    )


def _rows(name: str) -> list[dict[str, str]]:
    text = (Path(__file__).parent / "data" / name).read_text("utf-8")
    return list(csv.DictReader(text.splitlines()))


def _species(row: dict[str, str], used: list[tuple[State, Factor]], offered: list[tuple[State, Factor]]) -> Species:
    known = dict([(State.WHOLE, _BY_DEFINITION), *used])
    return Species(
        name=row["name"],
        code=row["code"],
        scientific=row["scientific"],
        also=tuple(_alias(name) for name in row["also"].split("; ") if name),
        usual_state=State(row["usual_state"]),
        factors=tuple(known.items()),
        offered=tuple(offered),
    )


def _alias(text: str) -> Alias:
    name, _, grade = text.partition("=")
    return Alias(name=name, grade=grade or None)
