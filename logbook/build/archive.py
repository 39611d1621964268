"""An archive from the logs: read, reckoned, and each edition of it published; what stands is not spoilt where the logs can't be read."""

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TypeVar

from logbook.build import Asked
from logbook.build.edition import publish_edition
from logbook.build.parallel import Hands
from logbook.known import read_and_reckon
from logbook.model.built import Built, NoLogsError
from logbook.model.fleet import FLEET_FILE
from logbook.model.problem import Severity
from logbook.publish.last_good import read_last_good
from logbook.publish.manifest import published_trips
from logbook.read.folder import Told, shown_name
from logbook.redact.policy import policy_of
from logbook.render.environment import compiled
from logbook.store.store import Store
from logbook.store.templates import StoredTemplates

T = TypeVar("T")

_NOT_READ = frozenset({"file-unreadable", "not-followed"})
"""Problems of what is there and may be a log, or a folder of them, but could not be looked into."""


def build_archive(asked: Asked, progress: Callable[[str], None], store: Store) -> Built:
    """Publish an archive.

    Args:
        asked: What is to be built.
        progress: Told each stage as it begins.
        store: What earlier builds left; brought up to date.

    Raises:
        NoLogsError: See `logbook.build`.
        PublishError: The same.
        StoreError: The store is damaged.
    """
    logs, hands = asked.logs, Hands()
    progress("reading and reckoning the logs")
    reading = listed(logs, lambda: read_and_reckon(logs, store, hands=hands))
    keep_fleet(reading.folder, logs, [place for _, place in asked.places])
    unread = unread_of(reading.shown)
    last_good = [read_last_good(place, unread) for _, place in asked.places]
    if not reading.names and not asked.allow_empty:
        for (_, place), kept in zip(asked.places, last_good, strict=True):
            keep_trips(logs, place, len(kept))
    templates = StoredTemplates(store)
    compiling = compiled(templates.kept())
    published = []
    for (name, place), kept in zip(asked.places, last_good, strict=True):
        progress(f"drawing and writing the pages for the {name}")
        policy = policy_of(name, reading.shown.fleet)
        beside = reading.with_last_good(kept) if kept else reading
        published.append((place, publish_edition(beside, policy, place, store, hands, every=asked.every)))
    templates.keep(compiling.new)
    return Built(
        logs=reading.folder.logs,
        trips=len(reading.names),
        last_good=max(map(len, last_good)),
        problems=reading.folder.problems,
        published=tuple(published),
    )


def listed(logs: Path, read: Callable[[], T]) -> T:
    """Return what is in the logs folder; one that can't be listed tells nothing, and so changes nothing."""
    try:
        return read()
    except OSError as fault:
        why = (fault.strerror or str(fault)).lower()
        raise NoLogsError(f"{logs} can't be listed: {why}; what was published is left as it stands") from fault


def unread_of(shown: Told) -> tuple[str, ...]:
    """Return the names of logs and folders that are there but tell no trip at present."""
    closed = (problem.place.file for problem in shown.problems if problem.code in _NOT_READ)
    return tuple(sorted({*shown.unread, *closed}))


def keep_trips(logs: Path, place: Path, kept: int) -> None:
    """Refuse to take the trips out of what stands in a place, but for those that are kept as last read."""
    if len(published_trips(place)) > kept:
        raise NoLogsError(
            f"no trip can be read in {logs}; the files in {place} are left as they stand (--allow-empty takes them away)"
        )


def keep_fleet(folder: Told, logs: Path, places: Iterable[Path]) -> None:
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
