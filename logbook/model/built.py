"""What a build read and wrote."""

from pathlib import Path

from msgspec import Struct

from logbook.model.problem import Problem, Severity


class PublishError(Exception):
    """The archive could not be written; what stood there still stands."""


class NoLogsError(Exception):
    """The logs, or the fleet file, can't be read, and an archive stands that would be wiped or spoilt; it is left alone."""


class Published(Struct, frozen=True, kw_only=True):
    """What a build changed in one archive.

    Attributes:
        files: How many files the archive has.
        written: How many of them were written anew.
        removed: How many old ones were removed.
    """

    files: int
    written: int
    removed: int


class Built(Struct, frozen=True, kw_only=True):
    """What a build read and wrote.

    Attributes:
        logs: How many logs there are.
        trips: How many of them became trips.
        last_good: How many trips besides are shown as they were last read, since their logs can't be read now.
        problems: All that is wrong in them.
        published: What was written of each edition, in the order asked for, with the folder it went to.
    """

    logs: int
    trips: int
    last_good: int = 0
    problems: tuple[Problem, ...]
    published: tuple[tuple[Path, Published], ...]

    @property
    def errors(self) -> int:
        """Return how many problems are errors."""
        return sum(problem.severity is Severity.ERROR for problem in self.problems)
