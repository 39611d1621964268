"""Options and settings that all tests share."""

import pytest
from hypothesis import settings

settings.register_profile("steady", deadline=None, derandomize=True)
settings.load_profile("steady")


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add the option that accepts a changed golden archive."""
    parser.addoption("--update-golden", action="store_true", help="accept the archive as it is now")
