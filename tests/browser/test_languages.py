"""Scripts in a language that counts, dates and writes decimals otherwise than English: its words and rules come from the page alone."""

import re
from collections.abc import Callable
from gettext import NullTranslations
from pathlib import Path
from typing import Any

import pytest

from logbook.model.edition import CREW
from logbook.render.language import MONTHS, Speech
from tests.untranslated import build_speaking

NAMES = [
    "stycznia",
    "lutego",
    "marca",
    "kwietnia",
    "maja",
    "czerwca",
    "lipca",
    "sierpnia",
    "września",
    "października",
    "listopada",
    "grudnia",
]
ONES = {
    **dict(zip(MONTHS, NAMES, strict=True)),
    "{trips}, {tows} in the logs": "w dziennikach: {trips}, {tows}",
    "Sort by {name}": "Sortuj: {name}",
    "foul tow": "hol z zaczepem",
}
IN_CONTEXT = {
    ("decimal mark", "."): ",",
    ("date", "{day} {month} {year}"): "{year}, {day}. {month}",
    ("date", "{day} {month}"): "{day}. {month}",
    ("days of one month", "{first} – {last} {month} {year}"): "{year}, {month} {first}.–{last}.",
    ("words that stand before the number of a trip", "trip"): "rejs rejsu",
}
COUNTED = {"trip": ("rejs", "rejsy", "rejsów"), "tow": ("hol", "hole", "holi")}

Opened = Callable[..., Any]


class Polish(NullTranslations):
    """A few phrases with Polish rules of number; the order of dates is nobody's, so that none can be right by chance."""

    def plural(self, number: int) -> int:
        """Return which form stands behind a number: one, few, many (Unicode CLDR, plural rules, pl)."""
        if number == 1:
            return 0
        return 1 if number % 10 in {2, 3, 4} and number % 100 not in {12, 13, 14} else 2

    def gettext(self, message: str) -> str:
        """Return a phrase, in English where none is given."""
        return ONES.get(message, message)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """Return a phrase said of a number."""
        forms = COUNTED.get(msgid1)
        return forms[self.plural(n)] if forms else super().ngettext(msgid1, msgid2, n)

    def pgettext(self, context: str, message: str) -> str:
        """Return a phrase of one of several meanings."""
        return IN_CONTEXT.get((context, message), message)


@pytest.fixture(scope="module")
def polish(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the sample archive for crews in that language."""
    folder = tmp_path_factory.mktemp("polish")
    build_speaking(Speech("pl", Polish()), folder, CREW)
    return folder


@pytest.fixture
def find(polish: Path, open_page: Opened) -> Any:  # noqa: ANN401 - of a library that is only there where a browser is
    page = open_page(polish / "find.html", viewport={"width": 1280, "height": 900})
    page.wait_for_function("() => /w dziennikach/.test(document.getElementById('find-status').textContent)")
    return page


def told(page: Any, words: str) -> str:  # noqa: ANN401 - the same
    page.locator("#find-words").fill(words)
    return str(page.locator("#find-status").inner_text())


@pytest.mark.parametrize(
    "words", ["", "haddock", "haddock marca", "cod hake", "rejsu 64", "redfish", "saithe maj", "ling"]
)
def test_words_behind_numbers_have_the_form_that_the_browser_knows_for_them(find: Any, words: str) -> None:  # noqa: ANN401
    # ECMA-402 Intl.PluralRules, with the rules of Unicode CLDR
    said = told(find, words)
    counts = re.findall(r"([\d\u202f]+) (rejs\w*|hol\w*)", said)

    assert counts
    for digits, word in counts:
        kind = find.evaluate("n => new Intl.PluralRules('pl').select(n)", int(digits.replace("\u202f", "")))
        assert word == COUNTED["trip" if word.startswith("rejs") else "tow"][["one", "few", "many"].index(kind)]


def test_a_month_is_known_by_its_name_there_and_dates_are_told_in_that_order(find: Any) -> None:  # noqa: ANN401
    told(find, "haddock marca")
    where = find.locator("#found-tows ~ ol .where").all_inner_texts()

    assert len(where) == 12
    assert all(re.match(r"\d{4}, \d{1,2}\. marca", text) for text in where)
    told(find, "solan trip marca")
    spans = find.locator("#found-trips ~ ol .where").all_inner_texts()
    assert any(re.search(r"\d{4}, marca \d{1,2}\.–\d{1,2}\.", text) for text in spans)


def test_a_trip_is_found_by_its_number_behind_any_of_the_words_for_it(find: Any) -> None:  # noqa: ANN401
    for word in ("rejs", "rejsu"):
        told(find, f"{word} 64")
        assert find.locator("#found-trips ~ ol li a").first.inner_text() == "Solan Bright, trip 64"


def test_words_that_the_archive_adds_to_what_was_said_are_found_in_its_language(find: Any) -> None:  # noqa: ANN401
    told(find, "zaczepem")

    assert find.locator("#found-tows ~ ol q mark").first.inner_text() == "zaczepem"


def test_figures_with_a_comma_are_sorted_as_figures(polish: Path, open_page: Opened) -> None:
    page = open_page(polish / "vessels" / "solan-bright.html", viewport={"width": 1280, "height": 900})
    button = page.locator("table:has(#trips-name) thead").get_by_role("button", name="Sortuj: Kept", exact=True)
    button.click(position={"x": 5, "y": button.bounding_box()["height"] - 6})
    cells = page.evaluate(
        "() => [...document.querySelectorAll('table:has(#trips-name) tbody tr')].map(r => r.cells[4].innerText.trim())"
    )
    shown = [float(cell.replace("\u202f", "").replace(",", ".")) for cell in cells if not cell.startswith("–")]

    assert sum("," in cell for cell in cells) > 5
    assert shown == sorted(shown, reverse=True)
