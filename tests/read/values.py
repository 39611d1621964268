"""What the tests of single values share."""

from decimal import Decimal
from typing import TypeVar

from logbook.model.fleet import Measure
from logbook.model.problem import Severity
from logbook.model.quantity import Kilograms
from logbook.read.measures import Measures
from logbook.read.said import Said

T = TypeVar("T")

MEASURES = Measures(
    (
        Measure(name="basket", default=Kilograms(Decimal(40)), by_species=(("cod", Kilograms(Decimal(42))),)),
        Measure(name="box", default=Kilograms(Decimal(45))),
        Measure(name="kit", default=None, by_species=(("cod", Kilograms(Decimal("63.5"))),)),
    )
)


def clean(said: Said[T]) -> T:
    """Return a value that was read with nothing to say about it."""
    assert said.faults == ()
    assert said.value is not None
    return said.value


def read_with(said: Said[T], code: str) -> T:
    """Return a value that was read with one warning or note."""
    assert said.value is not None
    assert [fault.code for fault in said.faults] == [code]
    assert said.faults[0].severity is not Severity.ERROR
    return said.value


def refused(said: Said[T]) -> tuple[str, str]:
    """Return the code and the hint of the one error that a value was refused with."""
    assert said.value is None
    assert [fault.severity for fault in said.faults] == [Severity.ERROR]
    return said.faults[0].code, said.faults[0].hint
