"""The same pages from a plain static server and from the folder: they load nothing else, and their policy holds in both."""

import http.server
import re
import threading
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.browser.kinds import KINDS

Opened = Callable[..., Any]

SERVED = (*KINDS, "board-2.html")

WIDER = "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"
PICTURES = """async () => {
    document.querySelectorAll('img').forEach(i => { i.loading = 'eager'; });
    await Promise.all([...document.images].map(i => i.decode().catch(() => null)));
    return [...document.images].filter(i => !i.naturalWidth).map(i => i.src);
}"""
BROKEN = """async outside => {
    const broken = new Set();
    document.addEventListener('securitypolicyviolation', e => broken.add(e.effectiveDirective));
    const add = (tag, said, into = document.body) => into.append(Object.assign(document.createElement(tag), said));
    add('script', {textContent: 'window.ran = 1'});
    add('script', {src: outside + 'a.js'});
    add('style', {textContent: 'body { color: red }'});
    add('img', {src: outside + 'a.png'});
    add('iframe', {src: outside});
    add('object', {data: outside});
    add('link', {rel: 'stylesheet', href: outside + 'a.css'}, document.head);
    add('base', {href: outside}, document.head);
    document.body.setAttribute('onclick', 'window.ran = 2');
    document.body.click();
    await fetch(outside).catch(() => null);
    const form = Object.assign(document.createElement('form'), {action: outside, method: 'post'});
    document.body.append(form);
    form.submit();
    await new Promise(done => setTimeout(done, 300));
    return [window.ran ?? 0, [...broken].sort()];
}"""


@pytest.mark.parametrize("kind", SERVED)
@pytest.mark.parametrize(
    ("width", "height", "scheme"), [(390, 844, "light"), (1920, 1080, "dark")], ids=["phone", "1080p"]
)
def test_a_page_from_a_server_is_quiet_whole_and_fits(
    served: str, open_page: Opened, kind: str, width: int, height: int, scheme: str
) -> None:
    page = open_page(f"{served}/office/{kind}", color_scheme=scheme, viewport={"width": width, "height": height})

    assert page.locator("h1").count() == 1
    assert page.evaluate(WIDER) <= 0
    assert page.evaluate(PICTURES) == []


@pytest.mark.parametrize("kind", ["index.html", "trips/ternbank-2026-11-19.html", "find.html"])
def test_a_page_says_the_same_from_both(sites: Path, served: str, open_page: Opened, kind: str) -> None:
    texts = []
    for place in (sites / "public" / kind, f"{served}/public/{kind}"):
        page = open_page(place, viewport={"width": 1280, "height": 800})
        assert page.evaluate(PICTURES) == []
        texts.append(page.locator("main").inner_text())

    assert texts[0] == texts[1] != ""


@pytest.fixture
def elsewhere() -> Iterator[tuple[str, list[str]]]:
    """Return the address of another server, and what it has been asked for."""
    asked: list[str] = []

    class Noting(http.server.BaseHTTPRequestHandler):
        def handle_one_request(self) -> None:
            line = self.rfile.readline().decode("latin-1")
            asked.extend(
                [line] if line else []
            )  # Chromium opens a connection before it knows whether it will ask anything
            self.close_connection = True

    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Noting)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}/", asked
    server.shutdown()
    server.server_close()


@pytest.mark.parametrize("where", ["folder", "server"])
@pytest.mark.parametrize("kind", ["index.html", "find.html", "board.html"])
def test_the_policy_of_a_page_holds(
    sites: Path,
    served: str,
    browser: Any,  # noqa: ANN401 - the library is only there where a browser is
    elsewhere: tuple[str, list[str]],
    where: str,
    kind: str,
) -> None:
    # Content Security Policy Level 3 (W3C): what a page must not do is tried, and the browser says which directive forbade it
    page = browser.new_page()  # not the one that fails at what stands on the console
    page.goto((sites / "office" / kind).as_uri() if where == "folder" else f"{served}/office/{kind}")
    page.wait_for_load_state("load")
    ran, broken = page.evaluate(BROKEN, elsewhere[0])
    page.close()

    assert ran == 0
    assert broken == [
        "base-uri",
        "connect-src",
        "form-action",
        "frame-src",
        "img-src",
        "object-src",
        "script-src-attr",
        "script-src-elem",
        "style-src-elem",
    ]
    assert elsewhere[1] == []


def test_tables_are_sorted_on_a_page_from_a_server(served: str, open_page: Opened) -> None:
    page = open_page(f"{served}/crew/vessels/solan-bright.html", viewport={"width": 1280, "height": 900})
    button = page.locator("table:has(#trips-name) thead").get_by_role("button", name="Sort by Kept", exact=True)
    button.focus()
    page.keyboard.press("Enter")

    assert button.locator("..").get_attribute("aria-sort") == "descending"


def test_find_works_on_a_page_from_a_server(served: str, open_page: Opened) -> None:
    page = open_page(f"{served}/crew/find.html")
    page.locator("#find-words").press_sequentially("haddock march")
    page.wait_for_selector("#found-tows ~ ol li")
    page.locator("#found-tows ~ ol li a").first.click()
    page.wait_for_url(re.compile(r"/crew/trips/.*#tow-"))

    assert page.locator(f"[id='{page.url.split('#')[1]}']").count() == 1


def test_the_board_reads_itself_anew_and_turns_its_charts_from_a_server(served: str, open_page: Opened) -> None:
    page = open_page(f"{served}/crew/board.html", viewport={"width": 1920, "height": 1080})
    said = page.locator("meta[http-equiv=refresh]").get_attribute("content")
    target = re.search(r"url=(.+)", said or "", re.IGNORECASE)

    assert target is not None
    page.goto(f"{served}/crew/{target[1]}")
    assert page.locator("h1").count() == 1
