"""Files that nobody may open."""

import os
from pathlib import Path

import pytest


def close(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Make a file one that nobody may open, as the system says it; `chmod` would not do where tests run as root."""
    opened = os.open

    def refuse(path: str, flags: int, mode: int = 0o777, *, dir_fd: int | None = None) -> int:
        if Path(path).name == name:
            raise PermissionError(13, "Permission denied", path)
        return opened(path, flags, mode, dir_fd=dir_fd)

    monkeypatch.setattr(os, "open", refuse)
