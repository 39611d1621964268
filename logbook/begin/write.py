"""Puts new files down and never touches one that is there: each is made only where nothing has its name."""

import contextlib
from pathlib import Path


class AlreadyThereError(Exception):
    """There is a file of that name, and it stays as it is."""

    def __init__(self, path: Path) -> None:
        """Keep the file's path."""
        super().__init__(str(path))
        self.path = path


def put_down(path: Path, text: str) -> None:
    """Write a new file, with the line ends that every Windows editor knows.

    Args:
        path: Where; its folder is made where it is not there.
        text: Its text, with plain line feeds.

    Raises:
        AlreadyThereError: Something has that name already.
        OSError: It can't be written; no half of it is left.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        file = path.open("x", encoding="utf-8", newline="\r\n")
    except FileExistsError:
        raise AlreadyThereError(path) from None
    try:
        with file:
            file.write(text)
    except BaseException:
        with contextlib.suppress(OSError):
            path.unlink()
        raise
