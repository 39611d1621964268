"""A real browser for tests: the system's Chromium, silent; anything on its console, and any request outside the archive, is a failure.

On a developer's machine a missing browser is said and the tests are left out; in CI it is a failure.
"""

import os
import re
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from logbook.build import build
from logbook.model.edition import CREW, OFFICE, PUBLIC

ROOT = Path(__file__).parents[2]
AXE = ROOT / ".node-tools" / "node_modules" / "axe-core" / "axe.min.js"
CHROMIUM = next(
    (path for name in ("chromium", "chromium-browser", "google-chrome") if (path := shutil.which(name))), None
)
QUIET = ["--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1", "--disable-component-update"]


def missing(what: str) -> None:
    """Leave a test out for want of something; in CI that is a failure."""
    if os.environ.get("CI"):
        pytest.fail(f"{what} is missing, and in CI it must not be")
    pytest.skip(f"{what} is missing on this machine")


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    if CHROMIUM is None:
        missing("Chromium")
    playwright = (
        pytest.importorskip("playwright.sync_api")
        if not os.environ.get("CI")
        else __import__("playwright.sync_api").sync_api
    )
    with playwright.sync_playwright() as made:
        chromium = made.chromium.launch(executable_path=CHROMIUM, args=QUIET)
        yield chromium
        chromium.close()


@pytest.fixture(scope="session")
def axe() -> str:
    """Return the source of axe-core."""
    if not AXE.is_file():
        missing("axe-core")
    return AXE.read_text("utf-8")


@pytest.fixture(scope="session")
def sites(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the folder with the sample archive in all editions."""
    folder = tmp_path_factory.mktemp("sites")
    build(ROOT / "sample_logs", folder, lambda _: None, (OFFICE, CREW, PUBLIC))
    return folder


@pytest.fixture
def open_page(browser: Any) -> Iterator[Callable[..., Any]]:  # noqa: ANN401 - the library is only there where a browser is
    """Return a function that opens a file in a new context; what goes wrong in any of them fails the test at its end."""
    contexts: list[Any] = []
    wrong: list[str] = []

    def note(what: str, *, real: bool = True) -> None:
        if real:
            wrong.append(what)

    def refuse(route: Any) -> None:  # noqa: ANN401 - the same
        note(route.request.url)
        route.abort()

    def open_file(path: Path, fragment: str = "", **context: object) -> Any:  # noqa: ANN401 - the same
        made = browser.new_context(locale="en-GB", timezone_id="UTC", **context)
        contexts.append(made)
        made.route(re.compile(r"^(?!file:|data:|about:)"), refuse)
        page = made.new_page()
        page.on("console", lambda said: note(said.text, real=said.type in ("error", "warning")))
        page.on("pageerror", lambda fault: note(str(fault)))
        page.on("requestfailed", lambda request: note(request.url, real="ABORTED" not in str(request.failure)))
        page.goto(path.as_uri() + fragment)
        page.wait_for_load_state("load")
        return page

    yield open_file
    for made in contexts:
        made.close()
    assert wrong == []
