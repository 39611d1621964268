"""The stages in order: read, reckon, and for each edition redact, render, publish."""

from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from msgspec import Struct

from logbook.model.edition import CREW, EDITIONS
from logbook.model.figures import Reckoned
from logbook.model.page import Page
from logbook.model.places import Places
from logbook.model.problem import Problem, Severity
from logbook.publish.folder import Published, PublishError, has_pages, has_trips, publish
from logbook.read.folder import Folder, named_from, read_folder
from logbook.reckon.fleet import reckon_fleet
from logbook.reckon.of_ground import reckon_grounds
from logbook.reckon.of_species import reckon_species
from logbook.reckon.trip import reckon_trips
from logbook.redact.policy import policy_of
from logbook.redact.trip import redact_trips
from logbook.render.files.all import data_files
from logbook.render.files.paths import FILES
from logbook.render.language import speaking, speech_of
from logbook.render.pages import render_archive


class Built(Struct, frozen=True, kw_only=True):
    """What a build read and wrote.

    Attributes:
        logs: How many logs there are.
        trips: How many of them became trips.
        problems: All that is wrong in them.
        published: What was written of each edition, in the order asked for, with the folder it went to.
    """

    logs: int
    trips: int
    problems: tuple[Problem, ...]
    published: tuple[tuple[Path, Published], ...]

    @property
    def errors(self) -> int:
        """Return how many problems are errors."""
        return sum(problem.severity is Severity.ERROR for problem in self.problems)


class NoLogsError(Exception):
    """There is no trip to publish, and an archive with trips that it would wipe."""


def build(logs: Path, site: Path, progress: Callable[[str], None], editions: Sequence[str] = (CREW,)) -> Built:
    """Publish the archive of a logs folder.

    Args:
        logs: The folder of logs.
        site: The folder of the archive; of several editions, the folder that each has its own folder in.
        progress: Told each stage as it begins.
        editions: office, crew or public; one at least, each once.

    Returns:
        What was read and written.

    Raises:
        NoLogsError: No log in the folder could be read as a trip, and the archive has some; it is left as it stands.
        PublishError: The archive could not be written, or would stand within another; what stood there still stands.
        OSError: The logs folder can't be listed.
    """
    progress("reading the logs")
    folder = read_folder(logs)
    places = [(name, site / name if len(editions) > 1 else site) for name in editions]
    _keep_apart(site, alone=len(editions) == 1)
    full = next((place for _, place in places if has_trips(place)), None)
    if not folder.trips and full is not None:
        raise NoLogsError(f"no trip can be read in {logs}; the archive in {full} is left as it stands")
    shown = named_from(folder, logs)
    progress(f"reckoning {len(folder.trips)} trips")
    trips = reckon_trips(shown.trips, shown.fleet, shown.problems)
    published = []
    for name, place in places:
        progress(f"drawing and writing the pages for the {name}")
        published.append((place, _publish(shown, trips, name, place)))
    return Built(logs=folder.logs, trips=len(trips), problems=folder.problems, published=tuple(published))


def export(logs: Path, folder: Path, progress: Callable[[str], None], edition: str = CREW) -> Built:
    """Write an edition's files for other programs without its pages.

    Args:
        logs: The folder of logs.
        folder: Where the files go.
        progress: Told each stage as it begins.
        edition: office, crew or public.

    Returns:
        What was read and written.

    Raises:
        NoLogsError: No log could be read as a trip, and the folder has files of some; it is left as it stands.
        PublishError: The files could not be written, or an archive with pages stands there.
        OSError: The logs folder can't be listed.
    """
    progress("reading the logs")
    read = read_folder(logs)
    _keep_apart(folder, alone=True)
    if has_pages(folder):
        raise PublishError(f"an archive with pages stands in {folder} and has these files; export into another folder")
    if not read.trips and has_trips(folder):
        raise NoLogsError(f"no trip can be read in {logs}; the files in {folder} are left as they stand")
    shown = named_from(read, logs)
    progress(f"reckoning {len(read.trips)} trips")
    trips = reckon_trips(shown.trips, shown.fleet, shown.problems)
    progress(f"writing the files for the {edition}")
    with speaking(speech_of(shown.fleet.language)):
        done = publish(_bare_files(shown, trips, edition), folder)
    return Built(logs=read.logs, trips=len(trips), problems=read.problems, published=((folder, done),))


def _bare_files(folder: Folder, trips: tuple[Reckoned, ...], edition: str) -> Iterator[Page]:
    """Give the files of an edition as they lie where no pages are."""
    policy = policy_of(edition, folder.fleet)
    shown = redact_trips(trips, policy)
    figures = reckon_fleet(shown, folder.fleet)
    problems = folder.problems if policy.problems else ()
    for page in data_files(folder.fleet, shown, figures, problems, policy, folder.fleet.title, linked=False):
        yield Page(path=page.path.removeprefix(FILES), content=page.content)


def _keep_apart(site: Path, *, alone: bool) -> None:
    """Refuse to have one archive within another: who is handed the outer folder would be handed both."""
    others = [site / name for name in EDITIONS] if alone else [site]
    within = next((place for place in others if has_trips(place)), None)
    if within is not None:
        raise PublishError(
            f"another archive stands in {within}, and whoever is given {site} would have both; "
            f"build into another folder, or move that one away"
        )


def _publish(folder: Folder, trips: tuple[Reckoned, ...], edition: str, place: Path) -> Published:
    """Publish one edition: what it does not show is taken out before anything is summed or rendered."""
    policy = policy_of(edition, folder.fleet)
    shown = redact_trips(trips, policy)
    figures = reckon_fleet(shown, folder.fleet)
    problems = folder.problems if policy.problems else ()
    places = Places(species=reckon_species(shown, figures), grounds=reckon_grounds(shown, figures))
    with speaking(speech_of(folder.fleet.language)):
        return publish(render_archive(folder.fleet, shown, figures, problems, policy, places), place)
