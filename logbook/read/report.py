"""Collects what is wrong in one file, by line and column."""

from logbook.model.problem import Place, Problem, Severity


class Report:
    """The problems of one file so far."""

    __slots__ = ("file", "problems")

    def __init__(self, file: str) -> None:
        """Begin with no problems."""
        self.file = file
        self.problems: list[Problem] = []

    def add(self, severity: Severity, line: int, column: int, code: str, message: str, hint: str = "") -> None:
        """Add a problem at a line and column, both from 1."""
        place = Place(file=self.file, line=line, column=column)
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
