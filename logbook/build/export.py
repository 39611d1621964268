"""An edition's files for other programs, without its pages."""

from collections.abc import Callable
from contextlib import closing
from pathlib import Path

from logbook.build import keep_apart
from logbook.build.archive import keep_fleet, keep_trips, listed
from logbook.build.edition import publish_files
from logbook.model.built import Built, PublishError
from logbook.model.edition import CREW
from logbook.publish.manifest import has_pages
from logbook.read.folder import named_from, read_folder
from logbook.reckon.trip import reckon_trips
from logbook.redact.policy import policy_of
from logbook.store.store import Store


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
    read = listed(logs, lambda: read_folder(logs))
    keep_apart(folder, alone=True)
    if has_pages(folder):
        raise PublishError(f"an archive with pages stands in {folder} and has these files; export into another folder")
    keep_fleet(read, logs, [folder])
    if not read.trips and not allow_empty:
        keep_trips(logs, folder, 0)
    shown = named_from(read, logs)
    progress(f"reckoning {len(read.trips)} trips")
    trips = reckon_trips(shown.trips, shown.fleet, shown.problems)
    progress(f"writing the files for the {edition}")
    with closing(Store(None)) as store:
        done = publish_files(shown, trips, policy_of(edition, shown.fleet), folder, store)
    return Built(logs=read.logs, trips=len(trips), problems=read.problems, published=((folder, done),))
