"""What a parser of one value answers: the value, if there is one, and what is wrong with the text."""

from typing import Generic, TypeVar

from msgspec import Struct

from logbook.model.problem import Severity

T_co = TypeVar("T_co", covariant=True)


class Fault(Struct, frozen=True, kw_only=True):
    """Something wrong in one value, before it is known where the value stands.

    Attributes:
        severity: How much it costs.
        code: Which rule.
        message: What was found.
        hint: What to type instead; empty where nothing better can be said.
        offset: How many characters into the value it is.
    """

    severity: Severity
    code: str
    message: str
    hint: str = ""
    offset: int = 0


class Said(Struct, Generic[T_co], frozen=True):
    """A value as read from its text.

    Attributes:
        value: None where it could not be read; then `faults` holds an error.
        faults: What is wrong with it, worst or not.
    """

    value: T_co | None
    faults: tuple[Fault, ...] = ()


def wrong(code: str, message: str, hint: str = "", offset: int = 0) -> Fault:
    """Return a fault that makes the value useless."""
    return Fault(severity=Severity.ERROR, code=code, message=message, hint=hint, offset=offset)


def doubtful(code: str, message: str, hint: str = "", offset: int = 0) -> Fault:
    """Return a fault of a value that is used but wants a look."""
    return Fault(severity=Severity.WARNING, code=code, message=message, hint=hint, offset=offset)


def mended(code: str, message: str, hint: str = "", offset: int = 0) -> Fault:
    """Return a fault that was put right without loss."""
    return Fault(severity=Severity.NOTE, code=code, message=message, hint=hint, offset=offset)
