"""Logs in which every text is hostile, in a real browser: nothing that was typed runs, loads or asks; all of it is read as it was typed."""

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.render.canaries import HOSTILE, every, expected, title, token

Opened = Callable[..., Any]

RAN = "() => [typeof window.canary, document.querySelectorAll('main script, main svg, main [onerror], main [onload]').length]"
SHOWN = """() => {
    document.querySelectorAll('details').forEach(d => { d.open = true; });
    return document.body.innerText;
}"""


def spaced(text: str) -> str:
    return re.sub(r"[ \t\n\r\f]+", " ", text)


def one_line(text: str) -> str:
    return " ".join(text.split())


@pytest.mark.parametrize("edition", ["office", "crew", "public"])
def test_nothing_that_was_typed_runs_and_all_of_it_is_shown(hostile: Path, open_page: Opened, edition: str) -> None:
    # The edition with everything is looked at whole, of the others every fifth page: they are made by the same templates.
    paths = sorted((hostile / edition).rglob("*.html"))[:: 1 if edition == "office" else 5]
    page = open_page(paths[0])
    shown = []
    for path in paths:
        page.goto(path.as_uri())
        assert page.evaluate(RAN) == ["undefined", 0], path.name
        shown.append(spaced(page.evaluate(SHOWN)))
    text = "\n".join(shown)

    assert spaced(title()) in text
    if edition == "office":
        missing = [
            (way, field)
            for way, field in every()
            if field != "bottom"
            and not any(spaced(one) in text for one in expected(way, field, markdown=field.endswith("remarks")))
        ]
        assert missing == []


def test_find_shows_what_was_typed_and_runs_none_of_it(hostile: Path, open_page: Opened) -> None:
    page = open_page(hostile / "office" / "find.html")
    page.wait_for_function("() => /tows in the logs/.test(document.getElementById('find-status').textContent)")
    for way in HOSTILE:
        page.locator("#find-words").fill(token(way, "damage"))
        page.wait_for_selector("#found-tows ~ ol li mark")
        answer = one_line(page.locator("#found-tows ~ ol li").first.inner_text())
        if way == "long":
            assert "W" * 60 in answer  # what is over long is told in part
            continue
        assert any(one_line(text) in answer for text in expected(way, "damage", markdown=True)), (way, answer)
        assert page.evaluate(RAN) == ["undefined", 0]
    for text in (*HOSTILE.values(), "(", "[a-", "\\", "$&", "__proto__", "constructor toString"):
        page.locator("#find-words").fill(text.replace("\n", " "))
        page.wait_for_timeout(20)
        assert page.evaluate(RAN) == ["undefined", 0]


def test_hostile_words_in_an_address_run_nothing(hostile: Path, open_page: Opened) -> None:
    for fragment in (
        "#q=%3Cimg%20src%3Dx%20onerror%3Dwindow.canary%3D1%3E",
        "#q=%E0%A4%A",
        "#q=%00",
        "#<script>window.canary=1</script>",
    ):
        page = open_page(hostile / "office" / "find.html", fragment=fragment)
        page.wait_for_timeout(100)
        assert page.evaluate(RAN) == ["undefined", 0]


def test_tables_of_hostile_texts_are_sorted_and_sifted(hostile: Path, open_page: Opened) -> None:
    page = open_page(hostile / "office" / "index.html")
    for button in page.locator("table.sortable thead button").all()[:12]:
        button.focus()
        page.keyboard.press("Enter")
    for field in page.locator("[data-sifts]").all():
        field.fill("<script>")
    assert page.evaluate(RAN) == ["undefined", 0]
