"""What is wrong in a log: where, how bad, which rule, and what to type instead."""

from enum import StrEnum

from msgspec import Struct

from logbook.model.language import N_


class Severity(StrEnum):
    """How much a problem costs.

    An error means that the figure can't be used, a warning that it is used but wants a look,
    a note that something was put right without loss.
    """

    ERROR = N_("error")
    WARNING = N_("warning")
    NOTE = N_("note")


class Place(Struct, frozen=True, kw_only=True, order=True):
    """Where something stands in a file.

    Attributes:
        file: The file's name as it was given.
        line: Line, counted from 1 as an editor counts; 1 where the whole file is meant.
        column: Column in characters, counted from 1.
    """

    file: str
    line: int
    column: int

    def __str__(self) -> str:
        """Return `file:line:column`."""
        return f"{self.file}:{self.line}:{self.column}"


class Problem(Struct, frozen=True, kw_only=True, order=True):
    """One thing wrong in a log, told to who typed it.

    Attributes:
        place: Where it stands.
        severity: How much it costs.
        code: Which rule, in lower-case words joined by hyphens: `weight-unreadable`.
        message: What was found, beginning in lower case and without a full stop.
        hint: What to type instead; empty where nothing better can be said.
    """

    place: Place
    severity: Severity
    code: str
    message: str
    hint: str = ""

    def __str__(self) -> str:
        """Return the line that `logbook check` prints."""
        said = f"{self.message}; {self.hint}" if self.hint else self.message
        return f"{self.place}: {self.severity}: {said} [{self.code}]"
