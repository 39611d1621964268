"""The stages in order: read, reckon, and for each edition redact, render, publish."""

from collections.abc import Callable, Iterable, Sequence
from contextlib import closing
from pathlib import Path
from typing import TypeVar

from msgspec import Struct

from logbook.edition import publish_edition, publish_files
from logbook.known import Reading, read_and_reckon
from logbook.model.edition import CREW, EDITIONS, Policy
from logbook.model.figures import Reckoned
from logbook.model.problem import Problem, Severity
from logbook.parallel import Hands
from logbook.publish.folder import Published, PublishError
from logbook.publish.last_good import read_last_good
from logbook.publish.manifest import has_pages, has_trips, published_trips
from logbook.read.folder import FLEET_FILE, Folder, named_from, read_folder, shown_name
from logbook.reckon.trip import reckon_trips
from logbook.redact.policy import policy_of
from logbook.store.store import Store, StoreError, open_store

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
    asked = _Asked(logs=logs, site=site, editions=tuple(editions), allow_empty=allow_empty)
    try:
        with open_store(logs) as store:
            return _build(asked, progress, store, Hands())
    except StoreError:
        with open_store(logs, outlasting=False) as store:
            return _build(asked, progress, store, Hands())


class _Asked(Struct, frozen=True, kw_only=True):
    """What is to be built.

    Attributes:
        logs: The folder of logs.
        site: The folder of the archive, or of the folders of several.
        editions: For whom.
        allow_empty: Whether an archive may lose all its trips.
    """

    logs: Path
    site: Path
    editions: tuple[str, ...]
    allow_empty: bool

    @property
    def places(self) -> tuple[tuple[str, Path], ...]:
        """Return each edition with the folder it goes to."""
        alone = len(self.editions) == 1
        return tuple((name, self.site if alone else self.site / name) for name in self.editions)


def _build(asked: _Asked, progress: Callable[[str], None], store: Store, hands: Hands) -> Built:
    logs = asked.logs
    progress("reading and reckoning the logs")
    reading = _listed(logs, lambda: read_and_reckon(logs, store, hands=hands))
    _keep_apart(asked.site, alone=len(asked.editions) == 1)
    _keep_fleet(reading.folder, logs, [place for _, place in asked.places])
    unread = _unread(reading.shown)
    last_good = [read_last_good(place, unread) for _, place in asked.places]
    if not reading.names and not asked.allow_empty:
        for (_, place), kept in zip(asked.places, last_good, strict=True):
            _keep_trips(logs, place, len(kept))
    published = []
    for (name, place), kept in zip(asked.places, last_good, strict=True):
        progress(f"drawing and writing the pages for the {name}")
        published.append(
            (place, _edition(logs, reading, kept, policy_of(name, reading.shown.fleet), place, store, hands))
        )
    return Built(
        logs=reading.folder.logs,
        trips=len(reading.names),
        last_good=max(map(len, last_good)),
        problems=reading.folder.problems,
        published=tuple(published),
    )


def _edition(
    logs: Path,
    reading: Reading,
    last_good: Sequence[Reckoned],
    policy: Policy,
    place: Path,
    store: Store,
    hands: Hands,
) -> Published:
    """Publish one edition; trips that are kept as last read bear on the figures of the vessel's others."""
    if not last_good:
        return publish_edition(reading, policy, place, store, hands)
    with closing(Store(None)) as apart:
        with_them = read_and_reckon(logs, apart, last_good, hands=hands)
        return publish_edition(with_them, policy, place, store, hands)


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
    with closing(Store(None)) as store:
        done = publish_files(shown, trips, policy_of(edition, shown.fleet), folder, store)
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


def _keep_apart(site: Path, *, alone: bool) -> None:
    """Refuse to have one archive within another: who is handed the outer folder would be handed both."""
    others = [site / name for name in EDITIONS] if alone else [site]
    within = next((place for place in others if has_trips(place)), None)
    if within is not None:
        raise PublishError(
            f"another archive stands in {within}, and whoever is given {site} would have both; "
            f"build into another folder, or move that one away"
        )
