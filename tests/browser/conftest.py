"""A real browser for tests: the system's Chromium, silent; anything on its console, and any request outside the archive, is a failure.

Pages are opened from the folder, as from a memory stick, and from a plain static server. On a developer's machine a missing browser,
Node package or Java is said and the tests are left out; in CI it is a failure.
"""

import http.server
import os
import re
import shutil
import threading
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import Any

import pytest

from logbook.build import build
from logbook.model.edition import CREW, OFFICE, PUBLIC

ROOT = Path(__file__).parents[2]
NODE = ROOT / ".node-tools" / "node_modules"
AXE = NODE / "axe-core" / "axe.min.js"
VNU = NODE / "vnu-jar" / "build" / "dist" / "vnu.jar"
CHROMIUM = next(
    (path for name in ("chromium", "chromium-browser", "google-chrome") if (path := shutil.which(name))), None
)
QUIET = ["--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1", "--disable-component-update"]
_BAD = 400
"""HTTP status codes from here on are errors (RFC 9110, section 15)."""


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
def nu() -> tuple[str, ...]:
    """Return the command that runs the Nu HTML checker."""
    java = shutil.which("java")
    if java is None:
        missing("Java")
    if not VNU.is_file():
        missing("vnu-jar, the Nu HTML checker,")
    return (str(java), "-jar", str(VNU))


@pytest.fixture(scope="session")
def sites(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the folder with the sample archive in all editions."""
    folder = tmp_path_factory.mktemp("sites")
    build(ROOT / "sample_logs", folder, lambda _: None, (OFFICE, CREW, PUBLIC))
    return folder


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *said: object) -> None:
        """Say nothing."""


@pytest.fixture(scope="session")
def served(sites: Path) -> Iterator[str]:
    """Return the address of a plain static server of the same folder, without a slash at its end."""
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(sites)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()


def within(path: Path | str) -> str:
    """Return how the addresses of all files of an archive begin, from one of them."""
    if isinstance(path, str):
        return "/".join(path.split("/")[:4]) + "/"
    return next(folder for folder in path.parents if (folder / "index.html").is_file()).as_uri() + "/"


@pytest.fixture
def open_page(browser: Any) -> Iterator[Callable[..., Any]]:  # noqa: ANN401 - the library is only there where a browser is
    """Return a function that opens a page in a new context; what goes wrong in any of them fails the test at its end."""
    contexts: list[Any] = []
    wrong: list[str] = []

    def note(what: str, *, real: bool = True) -> None:
        if real:
            wrong.append(what)

    def refuse(route: Any) -> None:  # noqa: ANN401 - the same
        note(f"asked for, though not of the archive: {route.request.url}")
        route.abort()

    def shut(dialog: Any) -> None:  # noqa: ANN401 - the same
        note(f"a dialog: {dialog.message}")
        dialog.dismiss()

    def open_file(path: Path | str, fragment: str = "", **context: object) -> Any:  # noqa: ANN401 - the same
        made = browser.new_context(locale="en-GB", timezone_id="UTC", **context)
        contexts.append(made)
        made.route(re.compile(rf"^(?!{re.escape(within(path))}|data:|about:)"), refuse)
        page = made.new_page()
        page.on("console", lambda said: note(said.text, real=said.type in ("error", "warning")))
        page.on("pageerror", lambda fault: note(str(fault)))
        page.on("dialog", shut)
        page.on("requestfailed", lambda request: note(request.url, real="ABORTED" not in str(request.failure)))
        page.on("response", lambda answer: note(f"{answer.status} {answer.url}", real=answer.status >= _BAD))
        page.goto((path if isinstance(path, str) else path.as_uri()) + fragment)
        page.wait_for_load_state("load")
        return page

    yield open_file
    for made in contexts:
        made.close()
    assert wrong == []
