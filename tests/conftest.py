"""Options and settings that all tests share."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings

from logbook.build import build
from logbook.model.edition import EDITIONS
from tests.render.canaries import plant

settings.register_profile("steady", deadline=None, derandomize=True)
settings.load_profile("steady")


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add the option that accepts a changed golden archive."""
    parser.addoption("--update-golden", action="store_true", help="accept the archive as it is now")


@pytest.fixture(autouse=True, scope="session")
def _own_cache(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Keep what builds leave behind for the next out of the cache of whoever runs the tests."""
    place = str(tmp_path_factory.mktemp("cache"))
    with pytest.MonkeyPatch.context() as patch:
        for name in ("XDG_CACHE_HOME", "LOCALAPPDATA"):
            patch.setenv(name, place)
        yield


@pytest.fixture(scope="session")
def hostile(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the folder of all editions of logs in which every text is hostile."""
    folder = tmp_path_factory.mktemp("hostile")
    build(plant(folder), folder / "sites", lambda _: None, EDITIONS)
    return folder / "sites"
