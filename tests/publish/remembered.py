"""A memory of archives that lasts as long as it is held."""

from collections.abc import Iterable, Mapping

from logbook.model.seen import Left, Stamp


class Remembered:
    """Remembers how the last build left an archive."""

    def __init__(self) -> None:
        """Begin with nothing."""
        self.rows: dict[str, Stamp] = {}
        self.kept = 0
        self._left: Left | None = None

    def left(self) -> Left | None:
        """Return what was kept last."""
        return self._left

    def stamps(self, folder: str) -> Mapping[str, Stamp]:
        """Return the files of a folder."""
        return {path: stamp for path, stamp in self.rows.items() if path.rpartition("/")[0] == folder}

    def keep(self, left: Left, stamps: Mapping[str, Stamp], gone: Iterable[str]) -> None:
        """Keep what a build left."""
        self.kept += 1
        self._left = left
        self.rows.update(stamps)
        for path in gone:
            self.rows.pop(path, None)
