"""Collects what is wrong in one file, by line and column."""

from logbook.model.problem import Place, Problem, Severity

CODES = frozenset({"too-many-problems"})

MAX_PROBLEMS = 1000

_LONGEST = 600
"""Letters of a message; one that is longer quotes something endless, which is left out in the middle."""
_ENDING = 100


def on_a_line(text: str) -> str:
    """Return a message in signs that can be printed, on one line; it may quote whatever was typed."""
    if len(text) > _LONGEST:
        text = f"{text[: _LONGEST - _ENDING]} … {text[-_ENDING:]}"
    return (
        text
        if text.isprintable()
        else "".join(" " if c.isspace() else c if c.isprintable() else "\ufffd" for c in text)
    )


class Report:
    """The problems of one file so far.

    Attributes:
        file: The file's name.
        problems: What is wrong; no more than anyone reads, and then one that says so.
    """

    __slots__ = ("file", "problems")

    def __init__(self, file: str) -> None:
        """Begin with no problems."""
        self.file = file
        self.problems: list[Problem] = []

    def add(self, severity: Severity, line: int, column: int, code: str, message: str, hint: str = "") -> None:
        """Add a problem at a line and column, both from 1."""
        if len(self.problems) > MAX_PROBLEMS:
            return
        if len(self.problems) == MAX_PROBLEMS:
            severity, code = Severity.ERROR, "too-many-problems"
            message, hint = "there is more wrong in this file than is told", "put right what is told first"
        place = Place(file=self.file, line=line, column=column)
        message, hint = on_a_line(message), on_a_line(hint)
        self.problems.append(Problem(place=place, severity=severity, code=code, message=message, hint=hint))

    def error(self, line: int, column: int, code: str, message: str, hint: str = "") -> None:
        """Add a problem that makes something useless."""
        self.add(Severity.ERROR, line, column, code, message, hint)

    def warn(self, line: int, column: int, code: str, message: str, hint: str = "") -> None:
        """Add a problem of something that is used but wants a look."""
        self.add(Severity.WARNING, line, column, code, message, hint)

    def note(self, line: int, column: int, code: str, message: str, hint: str = "") -> None:
        """Add a problem that was put right without loss."""
        self.add(Severity.NOTE, line, column, code, message, hint)
