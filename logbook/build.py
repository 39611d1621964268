"""The four stages in order: read, reckon, render, publish."""

from collections.abc import Callable
from pathlib import Path

from msgspec import Struct

from logbook.model.problem import Problem, Severity
from logbook.publish.folder import Published, has_trips, publish
from logbook.read.folder import named_from, read_folder
from logbook.reckon.fleet import reckon_fleet
from logbook.reckon.trip import reckon_trips
from logbook.render.pages import render_archive


class Built(Struct, frozen=True, kw_only=True):
    """What a build read and wrote.

    Attributes:
        logs: How many logs there are.
        trips: How many of them became trips.
        problems: All that is wrong in them.
        published: What was written.
    """

    logs: int
    trips: int
    problems: tuple[Problem, ...]
    published: Published

    @property
    def errors(self) -> int:
        """Return how many problems are errors."""
        return sum(problem.severity is Severity.ERROR for problem in self.problems)


class NoLogsError(Exception):
    """There is no trip to publish, and an archive with trips that it would wipe."""


def build(logs: Path, site: Path, progress: Callable[[str], None]) -> Built:
    """Publish the archive of a logs folder.

    Args:
        logs: The folder of logs.
        site: The folder of the archive.
        progress: Told each stage as it begins.

    Returns:
        What was read and written.

    Raises:
        NoLogsError: No log in the folder could be read as a trip, and the archive has some; it is left as it stands.
        PublishError: The archive could not be written; what stood there still stands.
        OSError: The logs folder can't be listed.
    """
    progress("reading the logs")
    folder = read_folder(logs)
    if not folder.trips and has_trips(site):
        raise NoLogsError(f"no trip can be read in {logs}; the archive in {site} is left as it stands")
    shown = named_from(folder, logs)
    progress(f"reckoning {len(folder.trips)} trips")
    trips = reckon_trips(shown.trips, shown.fleet, shown.problems)
    figures = reckon_fleet(trips, shown.fleet)
    progress("drawing and writing the pages")
    pages = render_archive(shown.fleet, trips, figures, shown.problems)
    published = publish(pages, site)
    return Built(logs=folder.logs, trips=len(trips), problems=folder.problems, published=published)
