"""Publish the archive of a logs folder; where nothing has changed since the last time, that is seen before anything else is done."""

from collections.abc import Callable, Sequence
from pathlib import Path

from msgspec import Struct

from logbook.build.unchanged import LastBuild, look_at
from logbook.model.built import Built, PublishError
from logbook.model.edition import CREW, EDITIONS
from logbook.publish.manifest import has_trips
from logbook.store.store import Store, StoreError, open_store


class Asked(Struct, frozen=True, kw_only=True):
    """What is to be built.

    Attributes:
        logs: The folder of logs.
        site: The folder of the archive, or of the folders of several.
        editions: For whom.
        allow_empty: Whether an archive may lose all its trips.
        every: Whether the bytes of each file of the archive are looked at, also where nothing says that it has changed.
    """

    logs: Path
    site: Path
    editions: tuple[str, ...]
    allow_empty: bool
    every: bool

    @property
    def places(self) -> tuple[tuple[str, Path], ...]:
        """Return each edition with the folder it goes to."""
        alone = len(self.editions) == 1
        return tuple((name, self.site if alone else self.site / name) for name in self.editions)


def build(
    logs: Path,
    site: Path,
    progress: Callable[[str], None],
    editions: Sequence[str] = (CREW,),
    *,
    allow_empty: bool = False,
    every: bool = False,
) -> Built:
    """Publish the archive of a logs folder.

    Args:
        logs: The folder of logs.
        site: The folder of the archive; of several editions, the folder that each has its own folder in.
        progress: Told each stage as it begins.
        editions: office, crew or public; one at least, each once.
        allow_empty: Whether an archive may lose all its trips.
        every: Whether the bytes of each file of the archive are looked at, also where nothing says that it has changed.

    Returns:
        What was read and written.

    Raises:
        NoLogsError: No log in the folder could be read as a trip, or nothing of the fleet file, and the archive has trips; it is
            left as it stands.
        PublishError: The archive could not be written, or would stand within another; what stood there still stands.
    """
    asked = Asked(logs=logs, site=site, editions=tuple(editions), allow_empty=allow_empty, every=every)
    keep_apart(site, alone=len(asked.editions) == 1)
    try:
        with open_store(logs) as store:
            return _build(asked, progress, store)
    except StoreError:
        with open_store(logs, outlasting=False) as store:
            return _build(asked, progress, store)


def _build(asked: Asked, progress: Callable[[str], None], store: Store) -> Built:
    last, looks = LastBuild(store, asked.logs, asked.places), look_at(asked.logs)
    known = last.again(looks) if not asked.every else None
    if known is not None:
        return known
    from logbook.build.archive import build_archive  # noqa: PLC0415 - all that reads, reckons and renders takes long to load

    built = build_archive(asked, progress, store)
    last.keep(looks, built)
    return built


def keep_apart(site: Path, *, alone: bool) -> None:
    """Refuse to have one archive within another: who is handed the outer folder would be handed both."""
    others = [site / name for name in EDITIONS] if alone else [site]
    within = next((place for place in others if has_trips(place)), None)
    if within is not None:
        raise PublishError(
            f"another archive stands in {within}, and whoever is given {site} would have both; "
            f"build into another folder, or move that one away"
        )
