"""Every kind of page in a real browser: narrow, wide, dark, on paper, without scripts, by keyboard, and by axe-core's rules."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Opened = Callable[..., Any]

KINDS = (
    "index.html",
    "trips/solan-bright-2026-10-06.html",
    "trips/ternbank-2026-11-19.html",
    "vessels/solan-bright.html",
    "species/haddock.html",
    "grounds/the-saddle.html",
    "seasons/2025.html",
    "weeks/2026-w48.html",
    "gear.html",
    "reckoning.html",
    "problems.html",
    "board.html",
    "find.html",
)
BOARD = "board.html"

WIDER = "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"
TARGETS = """() => [...document.querySelectorAll('nav a, summary, button, input:not(label input)')]
    .filter(e => e.offsetParent && e.getBoundingClientRect().height < 24).map(e => e.textContent.slice(0, 40))"""
PICTURES = "() => [...document.images].filter(i => i.complete && !i.naturalWidth).map(i => i.src)"


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
    assert without.locator("main a").count() > 0


@pytest.mark.parametrize("edition", ["office", "crew", "public"])
def test_every_edition_opens_without_a_sound(sites: Path, open_page: Opened, edition: str) -> None:
    for path in sorted((sites / edition).rglob("*.html"))[::7]:
        open_page(path)


def test_forced_colours_and_still_pages(sites: Path, open_page: Opened) -> None:
    for kind in ("index.html", "trips/solan-bright-2026-10-06.html", "board.html"):
        page = open_page(sites / "crew" / kind, forced_colors="active", reduced_motion="reduce")
        assert page.evaluate(WIDER) <= 0


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


def test_a_trip_prints_on_a4_with_nothing_cut(sites: Path, open_page: Opened, tmp_path: Path) -> None:
    page = open_page(sites / "office" / "trips" / "solan-bright-2026-10-06.html")
    page.emulate_media(media="print")
    paper = tmp_path / "trip.pdf"
    page.pdf(path=paper, prefer_css_page_size=True, format="A4")

    assert paper.stat().st_size > 50_000
    assert page.evaluate("() => getComputedStyle(document.body).color") == "rgb(0, 0, 0)"
