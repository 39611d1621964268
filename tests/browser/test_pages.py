"""Every kind of page in a real browser: narrow, wide, dark, on paper, without scripts, by keyboard, and by axe-core's rules."""

import re
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

import pypdf
import pytest

from tests.browser.kinds import KINDS

Opened = Callable[..., Any]

BOARD = "board.html"

WIDER = "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"
TARGETS = """() => [...document.querySelectorAll('nav a, summary, button, input:not(label input)')]
    .filter(e => e.offsetParent && e.getBoundingClientRect().height < 24).map(e => e.textContent.slice(0, 40))"""
PICTURES = "() => [...document.images].filter(i => i.complete && !i.naturalWidth).map(i => i.src)"


def test_every_kind_of_page_is_among_those_tried(sites: Path) -> None:
    names = [path.relative_to(sites / "office").as_posix() for path in (sites / "office").rglob("*.html")]
    kinds = {re.sub(r"(?<=/).*|-\d+(?=\.)", "", name) for name in names}

    assert kinds == {re.sub(r"(?<=/).*", "", kind) for kind in KINDS}


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize(
    ("width", "height"), [(320, 568), (390, 844), (1280, 800), (1920, 1080)], ids=["320", "phone", "desk", "1080p"]
)
def test_no_page_is_wider_than_its_screen(sites: Path, open_page: Opened, kind: str, width: int, height: int) -> None:
    page = open_page(sites / "office" / kind, viewport={"width": width, "height": height})

    assert page.evaluate(WIDER) <= 0
    assert page.evaluate(TARGETS) == []
    assert page.evaluate(PICTURES) == []


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_page_keeps_the_rules_of_axe(sites: Path, open_page: Opened, axe: str, kind: str, scheme: str) -> None:
    # axe-core, with the rules of WCAG 2.2 A and AA. The board reads the archive anew by itself: that rule is left out there, by name.
    page = open_page(sites / "office" / kind, color_scheme=scheme, viewport={"width": 1280, "height": 800})
    page.evaluate(axe)
    rules = {"meta-refresh": {"enabled": False}} if kind == BOARD else {}
    found = page.evaluate(
        """async rules => (await axe.run(document, {preload: false, rules,
            runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']}))
            .violations.map(v => [v.id, v.nodes.slice(0, 3).map(n => n.target.join(' ')).join(' | ')])""",
        rules,
    )

    assert found == []


def test_the_board_fits_a_screen_of_1080_lines(sites: Path, open_page: Opened) -> None:
    for name in ("board.html", "board-2.html"):
        page = open_page(sites / "crew" / name, viewport={"width": 1920, "height": 1080})

        assert page.evaluate("() => document.documentElement.scrollHeight <= innerHeight")
        assert page.evaluate(
            "() => Math.max(...[...document.querySelectorAll('main *')].map(e => e.getBoundingClientRect().bottom)) <= innerHeight"
        )
        sizes = page.evaluate(
            "() => ['.out td.word time', '.out td:nth-child(3) time'].map(q => parseFloat(getComputedStyle(document.querySelector(q)).fontSize))"
        )
        assert sizes[0] > sizes[1] >= 24


@pytest.mark.parametrize("kind", KINDS)
def test_all_of_a_page_is_there_without_scripts(sites: Path, open_page: Opened, kind: str) -> None:
    with_scripts = open_page(sites / "crew" / kind) if (sites / "crew" / kind).exists() else None
    if with_scripts is None:
        return  # the crew has no such page
    without = open_page(sites / "crew" / kind, java_script_enabled=False)

    assert without.locator("h1").count() == 1
    assert without.locator("table").count() >= with_scripts.locator("table").count() - 1
    assert without.locator("main").inner_text().count(" ") > 20


@pytest.mark.parametrize("edition", ["office", "crew", "public"])
def test_every_edition_opens_without_a_sound(sites: Path, open_page: Opened, edition: str) -> None:
    for path in sorted((sites / edition).rglob("*.html"))[::7]:
        open_page(path)


MOVING = """() => document.getAnimations().length + [...document.querySelectorAll('*')].filter(e => {
    const s = getComputedStyle(e);
    return s.transitionDuration.split(', ').some(t => parseFloat(t)) || s.animationName != 'none' || s.scrollBehavior == 'smooth';
}).length"""


@pytest.mark.parametrize("kind", KINDS)
def test_forced_colours_and_still_pages(sites: Path, open_page: Opened, kind: str) -> None:
    # CSS Color Adjustment Level 1 (forced colours) and Media Queries Level 5 (prefers-reduced-motion), W3C
    page = open_page(sites / "office" / kind, forced_colors="active", reduced_motion="reduce")

    assert page.evaluate("() => matchMedia('(forced-colors: active)').matches")
    assert page.evaluate(WIDER) <= 0
    assert page.evaluate(MOVING) == 0
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    assert page.evaluate("() => getComputedStyle(document.activeElement).outlineStyle") != "none"


WALKED = """() => {
    const e = document.activeElement, s = getComputedStyle(e), r = e.getClientRects()[0];
    if (e == document.body || !r) return null;
    const x = r.left + Math.min(r.width, 12) / 2, y = Math.min(Math.max(r.top + r.height / 2, 4), innerHeight - 4);
    const top = document.elementFromPoint(x, y);
    const place = [...document.querySelectorAll('*')].indexOf(e);
    return {what: `${place} ${e.outerHTML.slice(0, 120)}`, marked: s.outlineStyle != 'none' && parseFloat(s.outlineWidth) >= 2,
        seen: !!top && (e.contains(top) || top.contains(e))};
}"""


@pytest.mark.parametrize("kind", KINDS)
def test_a_keyboard_walks_through_a_page_and_sees_where_it_is(sites: Path, open_page: Opened, kind: str) -> None:
    # WCAG 2.2: 2.1.2 No Keyboard Trap, 2.4.7 Focus Visible, 2.4.11 Focus Not Obscured
    page = open_page(sites / "office" / kind, reduced_motion="reduce", viewport={"width": 1280, "height": 800})
    walked = []
    for _ in range(40):
        page.keyboard.press("Tab")
        here = page.evaluate(WALKED)
        if here is None:
            break  # past the last of them
        walked.append(here)

    assert len(walked) >= 2
    assert [here["what"] for here in walked if not here["marked"]] == []
    assert [here["what"] for here in walked if not here["seen"]] == []
    assert all(a != b for a, b in pairwise(walked))


def test_a_keyboard_leads_to_a_trip_and_back(sites: Path, open_page: Opened) -> None:
    page = open_page(sites / "crew" / "index.html")
    page.keyboard.press("Tab")
    assert page.evaluate("() => document.activeElement.className") == "skip"
    page.keyboard.press("Enter")
    for _ in range(40):
        page.keyboard.press("Tab")
        if page.evaluate("() => document.activeElement.getAttribute('href') || ''").startswith("trips/"):
            break
    assert page.evaluate("() => getComputedStyle(document.activeElement).outlineStyle") != "none"
    page.keyboard.press("Enter")
    page.wait_for_url("**/trips/*.html")
    page.go_back(wait_until="commit")

    assert "index.html" in page.url


def test_the_crew_finds_where_haddock_did_well_in_march_in_three_touches(sites: Path, open_page: Opened) -> None:
    page = open_page(sites / "crew" / "index.html", has_touch=True, viewport={"width": 1280, "height": 800})
    page.locator("main a", has_text="haddock").first.tap()
    page.wait_for_url("**/species/haddock.html")
    row = page.locator("table", has_text="by ground and month").locator("tbody tr").first

    assert row.locator("td").nth(2).inner_text().strip() != ""  # March, of the ground with most of it
    page.locator("tbody th a", has_text="Kirk Hole").first.tap()
    page.wait_for_url("**/grounds/*.html")


CUT = """() => [...document.querySelectorAll('main *')].filter(e => {
    const s = getComputedStyle(e);
    return e.offsetParent && s.overflow != 'visible' && s.position != 'absolute' && e.scrollWidth > e.clientWidth + 1;
}).map(e => e.outerHTML.slice(0, 120))"""
ON_PAPER = {"width": 718, "height": 1000}
"""A4 less its margins, in CSS pixels: 190 mm at 96 to the inch."""


@pytest.mark.parametrize("kind", [kind for kind in KINDS if kind != BOARD])
def test_a_page_prints_black_on_white_with_nothing_cut(
    sites: Path, open_page: Opened, tmp_path: Path, kind: str
) -> None:
    page = open_page(sites / "office" / kind, color_scheme="dark", viewport=ON_PAPER)
    page.emulate_media(media="print", color_scheme="dark")
    assert page.evaluate("() => getComputedStyle(document.body).color") == "rgb(0, 0, 0)"
    assert page.evaluate(CUT) == []
    paper = tmp_path / "page.pdf"
    page.pdf(path=paper, prefer_css_page_size=True)

    printed = pypdf.PdfReader(paper).pages
    sizes = {tuple(sorted(round(float(side) / 72 * 25.4) for side in sheet.mediabox[2:])) for sheet in printed}
    assert sizes == {(210, 297)}  # ISO 216, A4


def test_a_trip_prints_every_tow_with_heads_repeated_and_pages_numbered(
    sites: Path, open_page: Opened, tmp_path: Path
) -> None:
    page = open_page(sites / "office" / "trips" / "solan-bright-2026-10-06.html")
    rows = page.evaluate(
        "() => [...document.querySelectorAll('tr[id^=tow-]')].map(r => [...r.cells].slice(0, 4).map(c => c.textContent).join(' '))"
    )
    paper = tmp_path / "trip.pdf"
    page.pdf(path=paper, prefer_css_page_size=True)
    sheets = [" ".join(sheet.extract_text().split()) for sheet in pypdf.PdfReader(paper).pages]
    table = [text for text in sheets if re.search(r"\b\d\d:\d\d \d\d:\d\d \d:\d\d\b", text)]

    assert all(text.startswith(f"{number} of {len(sheets)} ") for number, text in enumerate(sheets, 1))
    assert len(rows) == 94
    assert [row for row in rows if row not in " ".join(table)] == []
    assert len(table) > 2
    assert [text for text in table if "Tow logged Shot Hauled Towed h:min" not in text] == []
