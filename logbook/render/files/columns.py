"""Tables as other programs read them: columns that say what they are, and the rows that an edition has."""

from collections.abc import Callable, Iterable, Sequence
from typing import Generic, TypeVar

from msgspec import Struct

from logbook.model.edition import EXACT, GROUND, Policy
from logbook.render.files.cells import PLACES, Cell, text_of
from logbook.render.language import _

Row = TypeVar("Row")
Shown = Callable[[Policy], bool]

TEXT, LIST, WHOLE, NUMBER, TRUTH, MOMENT = "string", "array", "integer", "number", "boolean", "datetime"
"""Types of fields, as Table Schema names them."""

CURRENCY = "currency"
"""Unit of money until the fleet's own takes its place."""


class Column(Struct, Generic[Row], frozen=True, kw_only=True):
    """A column of a table.

    Attributes:
        name: Its head.
        kind: Type of its cells.
        unit: Unit of its numbers; empty where they have none.
        about: What it is.
        value: A row's cell in it.
        shown: Which editions have it.
        places: Decimals of what was reckoned.
    """

    name: str
    kind: str
    unit: str
    about: str
    value: Callable[[Row], Cell]
    shown: Shown
    places: int


class Field(Struct, frozen=True, kw_only=True):
    """A column as it is told of beside the table; see `Column`."""

    name: str
    kind: str
    unit: str
    about: str


def column(
    name: str,
    kind: str,
    about: str,
    value: Callable[[Row], Cell],
    *,
    unit: str = "",
    shown: Shown = lambda _policy: True,
    places: int = PLACES,
) -> Column[Row]:
    """Return a column; see `Column`."""
    return Column(name=name, kind=kind, unit=unit, about=about, value=value, shown=shown, places=places)


def fields_of(columns: Iterable[Column[Row]], currency: str | None) -> tuple[Field, ...]:
    """Return what is told of columns, in the language in force, with the fleet's money for a unit."""
    return tuple(
        Field(
            name=one.name,
            kind=one.kind,
            about=_(one.about),
            unit=(currency or "") if one.unit == CURRENCY else one.unit,
        )
        for one in columns
    )


def columns_of(columns: Iterable[Column[Row]], policy: Policy) -> tuple[Column[Row], ...]:
    """Return the columns that an edition has."""
    return tuple(one for one in columns if one.shown(policy))


def rows_of(columns: Sequence[Column[Row]], records: Iterable[Row]) -> tuple[tuple[str, ...], ...]:
    """Return the cells of records as text."""
    every = tuple(records)
    cells = [["" if cell is None else text_of(cell, one.places) for cell in map(one.value, every)] for one in columns]
    return tuple(zip(*cells, strict=True))


def words_shown(policy: Policy) -> bool:
    """Tell whether an edition has what was said in free words."""
    return policy.words


def put_back_shown(policy: Policy) -> bool:
    """Tell whether an edition has what was put back or kept undersize."""
    return policy.put_back


def money_shown(policy: Policy) -> bool:
    """Tell whether an edition has prices and sums."""
    return policy.money


def margin_shown(policy: Policy) -> bool:
    """Tell whether an edition has how hails lie beside the scale."""
    return policy.margin


def problems_shown(policy: Policy) -> bool:
    """Tell whether an edition has the names of the logs' files."""
    return policy.problems


def positions_shown(policy: Policy) -> bool:
    """Tell whether an edition has exact positions of tows."""
    return policy.positions == EXACT


def rectangles_shown(policy: Policy) -> bool:
    """Tell whether an edition has the rectangles of tows."""
    return policy.positions != GROUND


def fasts_shown(policy: Policy) -> bool:
    """Tell whether an edition has where gear came fast."""
    return policy.fasts
