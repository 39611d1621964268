"""The page "find" in a real browser, opened from the folder: typing, folding, why, keys, touch, and without scripts."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Opened = Callable[..., Any]
Shown = Any
"""A page or the browser, of a library that is only there where a browser is."""

TOWS = "#found-tows ~ ol li"
TRIPS = "#found-trips ~ ol li"
FOCUSED = "() => document.activeElement.textContent"


def found(page: Shown, words: str) -> str:
    """Type words as a person does, and return what is said of the answers."""
    page.wait_for_function("() => /tows in the logs/.test(document.getElementById('find-status').textContent)")
    page.locator("#find-words").press_sequentially(words)
    return str(page.locator("#find-status").inner_text())


@pytest.fixture
def find(sites: Path, open_page: Opened) -> Shown:
    return open_page(sites / "crew" / "find.html", viewport={"width": 1280, "height": 900})


def test_a_species_and_a_month_give_the_best_tows_first_with_their_rate(find: Shown) -> None:
    said = found(find, "haddock march")
    weights = [
        int(text.replace("\u202f", ""))
        for text in find.locator(f"{TOWS} b").all_inner_texts()
        for text in [text.split("\u202f")[0]]
    ]

    assert "tows" in said
    assert len(weights) == 12
    assert weights == sorted(weights, reverse=True)
    assert all(
        "March" in text and "haddock" in text and "kg/h" in text for text in find.locator(TOWS).all_inner_texts()
    )


def test_the_words_of_a_question_may_come_in_any_order_and_as_people_ask(
    find: Shown, sites: Path, open_page: Opened
) -> None:
    first = found(find, "haddock march")
    for words in ("MARCH haddock", "Where did we do well on haddock in March", "haddo marc"):
        other = open_page(sites / "crew" / "find.html")
        assert found(other, words) == first
    tows = find.locator(f"{TOWS} a").all_inner_texts()
    assert other.locator(f"{TOWS} a").all_inner_texts() == tows


def test_an_answer_leads_to_its_tow(find: Shown) -> None:
    found(find, "haddock march")
    target = find.locator(f"{TOWS} a").first.get_attribute("href")
    find.locator(f"{TOWS} a").first.click()
    find.wait_for_url("**/trips/*.html#tow-*")

    assert find.url.endswith(target)
    assert find.locator(f"[id='{find.url.split('#')[1]}']").count() == 1


def test_the_way_back_leads_to_the_words_that_were_typed(find: Shown) -> None:
    found(find, "haddock march")
    find.locator(f"{TRIPS} a").first.click()
    find.wait_for_url("**/trips/*.html")
    find.go_back(wait_until="commit")
    find.wait_for_selector(TOWS)

    assert find.locator("#find-words").input_value() == "haddock march"


def test_every_answer_says_why(find: Shown) -> None:
    found(find, "aldane saddle")
    marks = [set(answer.locator("mark").all_inner_texts()) for answer in find.locator(TOWS).all()]

    assert marks
    assert all({"Aldane", "Saddle"} <= of_it for of_it in marks)


def test_words_in_remarks_and_damage_are_found_and_marked(find: Shown) -> None:
    found(find, "wing torn")

    assert find.locator(f"{TOWS} q").count() >= 1
    assert {mark.lower() for mark in find.locator(f"{TOWS} q mark").all_inner_texts()} == {"wing", "torn"}


@pytest.mark.parametrize("words", ["trip 64", "64", "solan 64"])
def test_a_trip_is_found_by_its_number(find: Shown, words: str) -> None:
    found(find, words)

    assert find.locator(f"{TRIPS} a").first.inner_text() == "Solan Bright, trip 64"


def test_a_tow_is_found_by_its_number(find: Shown) -> None:
    found(find, "solan trip 64 tow 12")

    assert find.locator(f"{TOWS} a").all_inner_texts() == ["Solan Bright, trip 64, tow 12"]


def test_a_day_is_found(find: Shown) -> None:
    found(find, "5 march 2026 cod")

    assert find.locator(TOWS).count() > 0
    assert all("5 March 2026" in text for text in find.locator(f"{TOWS} .where").all_inner_texts())


@pytest.mark.parametrize(
    ("typed", "logged"),
    [
        # Unicode Standard Annex #15 (NFD) for marks; ø, æ, ß and þ by the table of names that file names are made with
        ("skjaervoy", "Skjærvøy"),
        ("SKJÆRVØY", "Skjærvøy"),
        ("malaga", "Málaga"),
        ("strasse", "Straße"),
        ("thor", "Þór"),
        ("cafe", "cafe\u0301"),
    ],
)
def test_case_and_accents_are_folded(sites: Path, open_page: Opened, tmp_path: Path, typed: str, logged: str) -> None:
    page = open_page(with_name(sites, tmp_path, logged))
    found(page, typed)
    marked = "".join(page.locator(f"{TRIPS} a").first.locator("mark").all_inner_texts())

    assert page.locator(f"{TRIPS} a").first.inner_text().startswith(logged)
    assert marked.replace(" ", "") == logged.replace(" ", "")


def with_name(sites: Path, folder: Path, name: str) -> Path:
    """Return the page "find" of an archive in which a vessel has another name."""
    for part in (sites / "crew").iterdir():
        if part.is_file():
            (folder / part.name).write_bytes(part.read_bytes())
    (folder / "find").mkdir()
    for part in (sites / "crew" / "find").iterdir():
        (folder / "find" / part.name).write_text(part.read_text("ascii").replace('"Marrick"', f'"{name}"'), "utf-8")
    return folder / "find.html"


def test_texts_of_logs_never_become_elements(sites: Path, open_page: Opened, tmp_path: Path) -> None:
    page = open_page(with_name(sites, tmp_path, "<img src=x onerror=alert(1)><b>Bold"))
    found(page, "bold")

    assert page.locator(f"{TRIPS} img").count() == 0
    assert "<b>" in page.locator(f"{TRIPS} a").first.inner_text()


def test_a_word_that_is_nowhere_is_left_out_and_said(find: Shown) -> None:
    said = found(find, "haddock march zzyzx")

    assert "zzyzx" in said
    assert find.locator(TOWS).count() == 12
    find.locator("#find-words").fill("zzyzx")
    assert "Nothing" in find.locator("#find-status").inner_text()
    assert find.locator("#every-trip").is_hidden()


def test_arrows_walk_through_the_answers_enter_opens_and_escape_begins_again(find: Shown) -> None:
    found(find, "haddock march")
    titles = find.locator("#find-answers li a").all_inner_texts()
    for title in titles[:3]:
        find.keyboard.press("ArrowDown")
        assert find.evaluate(FOCUSED) == title
    find.keyboard.press("ArrowUp")
    assert find.evaluate(FOCUSED) == titles[1]
    find.keyboard.press("Escape")
    assert find.evaluate("() => document.activeElement.id") == "find-words"
    find.keyboard.press("Escape")
    assert find.locator("#find-words").input_value() == ""
    assert find.locator("#every-trip").is_visible()
    find.keyboard.type("haddock march")
    find.keyboard.press("Enter")
    find.wait_for_url("**/trips/*.html")


def test_a_slash_leads_there_from_any_page_unless_it_is_switched_off(sites: Path, open_page: Opened) -> None:
    page = open_page(sites / "crew" / "vessels" / "marrick.html")
    page.keyboard.press("/")
    page.wait_for_url("**/find.html*")
    assert page.evaluate("() => document.activeElement.id") == "find-words"
    page.keyboard.type("a/b")
    assert page.locator("#find-words").input_value() == "a/b"
    page.locator("#slash-key").uncheck()
    page.goto((sites / "crew" / "vessels" / "marrick.html").as_uri())
    page.keyboard.press("/")
    page.wait_for_timeout(200)

    assert page.url.endswith("marrick.html")


def test_three_touches_lead_to_the_answer(sites: Path, open_page: Opened) -> None:
    page = open_page(sites / "crew" / "index.html", has_touch=True, viewport={"width": 1280, "height": 800})
    page.locator("nav a", has_text="Find").tap()
    page.wait_for_url("**/find.html")
    page.locator(".chips button", has_text="haddock").tap()
    page.locator(".chips button", has_text="March").tap()

    assert page.locator("#find-words").input_value() == "haddock March"
    assert page.locator(TOWS).count() == 12
    assert page.locator(".chips [aria-pressed=true]").all_inner_texts() == ["haddock", "March"]
    page.locator(".chips button", has_text="April").tap()
    page.locator(".chips button", has_text="haddock").tap()
    assert page.locator("#find-words").input_value() == "April"


def test_a_finger_meets_what_it_touches(sites: Path, open_page: Opened) -> None:
    # WCAG 2.2, 2.5.5 Target Size (Enhanced): 44 CSS pixels
    page = open_page(
        sites / "crew" / "find.html",
        fragment="#q=haddock%20march",
        has_touch=True,
        viewport={"width": 390, "height": 844},
    )
    page.wait_for_selector(TOWS)
    small = page.evaluate(
        """() => [...document.querySelectorAll('#find-words, .chips button, .answers li, .answers .reach, #find summary')]
            .filter(e => e.offsetParent && e.getBoundingClientRect().height < 44).map(e => e.textContent)"""
    )

    assert small == []


def test_more_answers_come_on_demand(find: Shown) -> None:
    found(find, "haddock")
    find.locator("#found-tows ~ p button").click()

    assert find.locator(TOWS).count() == 42
    assert find.evaluate(FOCUSED) == find.locator(f"{TOWS} a").nth(12).inner_text()


def test_without_scripts_every_trip_stands_by_season(sites: Path, open_page: Opened) -> None:
    page = open_page(sites / "crew" / "find.html", java_script_enabled=False)
    page.locator("summary", has_text="2025").click()
    trips = {f"trips/{path.name}" for path in (sites / "crew" / "trips").glob("*.html")}

    assert page.locator("#find").is_hidden()
    assert page.locator("noscript").inner_text().startswith("Finding needs scripts")
    assert {link.get_attribute("href") for link in page.locator(".index a").all() if link.is_visible()} == trips


def test_nothing_but_files_of_the_archive_is_loaded(find: Shown, sites: Path) -> None:
    asked: list[str] = []
    find.on("request", lambda request: asked.append(request.url))
    find.reload()
    found(find, "haddock")

    assert {url for url in asked if not url.startswith((sites / "crew").as_uri() + "/")} == set()
    assert sum("/find/" in url for url in asked) == 2


def test_data_that_is_missing_are_told_of(sites: Path, open_page: Opened, tmp_path: Path, browser: Shown) -> None:
    place = with_name(sites, tmp_path, "Marrick")
    next((tmp_path / "find").glob("2025.*")).unlink()
    page = browser.new_page()  # not the one that fails at a failed request
    page.goto(place.as_uri())
    page.wait_for_function("() => /2025/.test(document.getElementById('find-status').textContent)")
    said = page.locator("#find-status").inner_text()
    page.locator("#find-words").fill("haddock march")

    assert "incomplete" in said
    assert page.locator(TOWS).count() == 12
    page.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_answers_keep_the_rules_of_axe(sites: Path, open_page: Opened, axe: str, scheme: str) -> None:
    # axe-core, with the rules of WCAG 2.2 A and AA
    page = open_page(sites / "crew" / "find.html", fragment="#q=aldane%20fast", color_scheme=scheme)
    page.wait_for_selector(TOWS)
    page.evaluate(axe)
    found_wrong = page.evaluate(
        """async () => (await axe.run(document, {preload: false,
            runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']}))
            .violations.map(v => [v.id, v.nodes.slice(0, 3).map(n => n.target.join(' ')).join(' | ')])"""
    )

    assert found_wrong == []
