"""The stages in order: read, reckon, and for each edition redact, render, publish."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial
from pathlib import Path
from typing import TypeVar

from msgspec import Struct

from logbook.known import read_and_reckon
from logbook.model.edition import CREW, EDITIONS, Policy
from logbook.model.figures import Reckoned
from logbook.model.page import AtOnce, File, Maker, Page, content_of
from logbook.model.places import Places
from logbook.model.problem import Problem, Severity
from logbook.publish.folder import Published, PublishError, publish
from logbook.publish.last_good import last_good_pages, read_last_good
from logbook.publish.manifest import has_pages, has_trips, published_trips
from logbook.read.folder import FLEET_FILE, Folder, named_from, read_folder, shown_name
from logbook.reckon.fleet import reckon_fleet
from logbook.reckon.of_ground import reckon_grounds
from logbook.reckon.of_species import reckon_species
from logbook.reckon.trip import reckon_trips
from logbook.redact.policy import policy_of
from logbook.redact.scrub import scrubbed
from logbook.redact.trip import redact_trips
from logbook.render.files.all import data_files
from logbook.render.files.paths import FILES
from logbook.render.language import speaking, speech_of
from logbook.render.pages import render_archive
from logbook.store.made import Made
from logbook.store.store import Store, open_store

T = TypeVar("T")

_NOT_READ = frozenset({"file-unreadable", "not-followed"})
"""Problems of what is there and may be a log, or a folder of them, but could not be looked into."""


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


class NoLogsError(Exception):
    """The logs, or the fleet file, can't be read, and an archive stands that would be wiped or spoilt; it is left alone."""


class _Edition(Struct, frozen=True, kw_only=True):
    """An edition to be published.

    Attributes:
        name: office, crew or public.
        place: The folder it goes to.
        last_good: Trips whose logs can't be read at present, as the archive there has kept them.
    """

    name: str
    place: Path
    last_good: tuple[Reckoned, ...]


def build(
    logs: Path,
    site: Path,
    progress: Callable[[str], None],
    editions: Sequence[str] = (CREW,),
    *,
    allow_empty: bool = False,
) -> Built:
    """Publish the archive of a logs folder.

    Args:
        logs: The folder of logs.
        site: The folder of the archive; of several editions, the folder that each has its own folder in.
        progress: Told each stage as it begins.
        editions: office, crew or public; one at least, each once.
        allow_empty: Whether an archive may lose all its trips.

    Returns:
        What was read and written.

    Raises:
        NoLogsError: No log in the folder could be read as a trip, or nothing of the fleet file, and the archive has trips; it is
            left as it stands.
        PublishError: The archive could not be written, or would stand within another; what stood there still stands.
    """
    with open_store(logs) as store:
        return _build(logs, site, progress, editions, store, allow_empty=allow_empty)


def _build(
    logs: Path,
    site: Path,
    progress: Callable[[str], None],
    editions: Sequence[str],
    store: Store,
    *,
    allow_empty: bool,
) -> Built:
    progress("reading and reckoning the logs")
    reading = _listed(logs, lambda: read_and_reckon(logs, store))
    folder, shown, trips = reading.folder, reading.shown, reading.trips
    _keep_apart(site, alone=len(editions) == 1)
    places = [(name, site / name if len(editions) > 1 else site) for name in editions]
    _keep_fleet(folder, logs, [place for _, place in places])
    unread = _unread(shown)
    asked = [_Edition(name=name, place=place, last_good=read_last_good(place, unread)) for name, place in places]
    if not trips and not allow_empty:
        for edition in asked:
            _keep_trips(logs, edition.place, len(edition.last_good))
    published = []
    for edition in asked:
        progress(f"drawing and writing the pages for the {edition.name}")
        published.append((edition.place, _publish(shown, _with_last_good(logs, trips, edition), edition, store)))
    return Built(
        logs=folder.logs,
        trips=len(trips),
        last_good=max(len(edition.last_good) for edition in asked),
        problems=folder.problems,
        published=tuple(published),
    )


def export(
    logs: Path, folder: Path, progress: Callable[[str], None], edition: str = CREW, *, allow_empty: bool = False
) -> Built:
    """Write an edition's files for other programs without its pages.

    Args:
        logs: The folder of logs.
        folder: Where the files go.
        progress: Told each stage as it begins.
        edition: office, crew or public.
        allow_empty: Whether files with trips may be replaced by files without any.

    Returns:
        What was read and written.

    Raises:
        NoLogsError: No log could be read as a trip, or nothing of the fleet file, and the folder has files of trips; it is left
            as it stands.
        PublishError: The files could not be written, or an archive with pages stands there.
    """
    progress("reading the logs")
    read = _listed(logs, lambda: read_folder(logs))
    _keep_apart(folder, alone=True)
    if has_pages(folder):
        raise PublishError(f"an archive with pages stands in {folder} and has these files; export into another folder")
    _keep_fleet(read, logs, [folder])
    if not read.trips and not allow_empty:
        _keep_trips(logs, folder, 0)
    shown = named_from(read, logs)
    progress(f"reckoning {len(read.trips)} trips")
    trips = reckon_trips(shown.trips, shown.fleet, shown.problems)
    progress(f"writing the files for the {edition}")
    with speaking(speech_of(shown.fleet.language)):
        done = publish(_bare_files(shown, trips, edition), folder)
    return Built(logs=read.logs, trips=len(trips), problems=read.problems, published=((folder, done),))


def _listed(logs: Path, read: Callable[[], T]) -> T:
    """Return what is in the logs folder; one that can't be listed tells nothing, and so changes nothing."""
    try:
        return read()
    except OSError as fault:
        why = (fault.strerror or str(fault)).lower()
        raise NoLogsError(f"{logs} can't be listed: {why}; what was published is left as it stands") from fault


def _unread(shown: Folder) -> tuple[str, ...]:
    """Return the names of logs and folders that are there but tell no trip at present."""
    closed = (problem.place.file for problem in shown.problems if problem.code in _NOT_READ)
    return tuple(sorted({*shown.unread, *closed}))


def _keep_trips(logs: Path, place: Path, kept: int) -> None:
    """Refuse to take the trips out of what stands in a place, but for those that are kept as last read."""
    if len(published_trips(place)) > kept:
        raise NoLogsError(
            f"no trip can be read in {logs}; the files in {place} are left as they stand (--allow-empty takes them away)"
        )


def _keep_fleet(folder: Folder, logs: Path, places: Iterable[Path]) -> None:
    """Refuse to replace what was made by a fleet file by what is made without it, where the file is there but tells nothing.

    Without it vessels, ports and measures are not known, nor what the fleet does not want shown.
    """
    fleet = folder.fleet
    file = fleet.file or shown_name(logs / FLEET_FILE)
    told = (fleet.name, fleet.vessels, fleet.ports, fleet.grounds, fleet.measures, fleet.editions)
    if any(told) or not any(one.place.file == file and one.severity is Severity.ERROR for one in folder.problems):
        return
    for place in places:
        if published_trips(place):
            raise NoLogsError(
                f"nothing can be read of {file}; the files in {place} are left as they stand: mend it, or take it away"
            )


def _with_last_good(logs: Path, trips: tuple[Reckoned, ...], edition: _Edition) -> tuple[Reckoned, ...]:
    """Return all trips of an edition; those that are kept bear on the figures of the vessel's others, whose logs are read whole."""
    if not edition.last_good:
        return trips
    shown = named_from(read_folder(logs), logs)
    return reckon_trips(shown.trips, shown.fleet, shown.problems, edition.last_good)


def _bare_files(folder: Folder, trips: tuple[Reckoned, ...], edition: str) -> Iterator[Page]:
    """Give the files of an edition as they lie where no pages are."""
    policy = policy_of(edition, folder.fleet)
    shown = redact_trips(trips, policy)
    figures = reckon_fleet(shown, folder.fleet)
    problems = folder.problems if policy.problems else ()
    for page in data_files(folder.fleet, shown, figures, problems, policy, folder.fleet.title, AtOnce(), linked=False):
        yield Page(path=page.path.removeprefix(FILES), content=content_of(page))


def _keep_apart(site: Path, *, alone: bool) -> None:
    """Refuse to have one archive within another: who is handed the outer folder would be handed both."""
    others = [site / name for name in EDITIONS] if alone else [site]
    within = next((place for place in others if has_trips(place)), None)
    if within is not None:
        raise PublishError(
            f"another archive stands in {within}, and whoever is given {site} would have both; "
            f"build into another folder, or move that one away"
        )


def _publish(folder: Folder, trips: tuple[Reckoned, ...], edition: _Edition, store: Store) -> Published:
    """Publish one edition: what it does not show is taken out before anything is summed, rendered or kept."""
    policy = policy_of(edition.name, folder.fleet)
    shown = redact_trips(trips, policy)
    logs = {trip.figures.trip.id: trip.log.file for trip in trips}
    scrub = partial(scrubbed, positions=True)  # the office's too: where the logs stand is nobody's to know
    made = Made(store, edition.place, folder.fleet.language)
    with speaking(speech_of(folder.fleet.language)):
        files = [*_pages(folder, shown, policy, made), *last_good_pages(shown, logs, made, scrub)]
        done = publish(files, edition.place)
    made.forget_others()
    return done


def _pages(folder: Folder, shown: tuple[Reckoned, ...], policy: Policy, maker: Maker) -> Iterable[File]:
    """Give the pages of an edition and all that they lead to, from what it shows."""
    figures = reckon_fleet(shown, folder.fleet)
    problems = folder.problems if policy.problems else ()
    places = Places(species=reckon_species(shown, figures), grounds=reckon_grounds(shown, figures))
    return render_archive(folder.fleet, shown, figures, problems, policy, places, maker)
