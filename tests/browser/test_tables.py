"""Tables in a real browser: put in order and sifted by script, whole and of the same height without."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Opened = Callable[..., Any]
Shown = Any
"""A page or the browser, of a library that is only there where a browser is."""


def column(page: Shown, caption: str, number: int) -> list[str]:
    """Return the cells of a column as they stand, without rows that are sifted out."""
    return [
        str(text)
        for text in page.evaluate(
            """([id, at]) => [...document.getElementById(id).closest('table').tBodies].filter(b => !b.hidden)
                .flatMap(b => [...b.rows].filter(r => !r.hidden && !r.classList.contains('grade')))
                .map(r => r.cells[at].innerText.trim())""",
            [caption, number],
        )
    ]


def numbers(texts: list[str]) -> list[float]:
    return [
        float(text.replace("\u202f", "").removeprefix("est. ")) for text in texts if text and not text.startswith("–")
    ]


@pytest.fixture
def vessel(sites: Path, open_page: Opened) -> Shown:
    return open_page(sites / "crew" / "vessels" / "solan-bright.html", viewport={"width": 1280, "height": 900})


def sort(page: Shown, caption: str, name: str) -> Shown:
    button = page.locator(f"table:has(#{caption}) thead").get_by_role("button", name=f"Sort by {name}", exact=True)
    button.click(position={"x": 5, "y": button.bounding_box()["height"] - 6})
    return button.locator("..")


def test_numbers_are_sorted_as_numbers_largest_first_then_smallest_then_as_they_were(vessel: Shown) -> None:
    before = column(vessel, "trips-name", 4)
    head = sort(vessel, "trips-name", "Kept")
    down = column(vessel, "trips-name", 4)
    assert head.get_attribute("aria-sort") == "descending"
    assert numbers(down) == sorted(numbers(before), reverse=True)
    sort(vessel, "trips-name", "Kept")
    assert head.get_attribute("aria-sort") == "ascending"
    assert numbers(column(vessel, "trips-name", 4)) == sorted(numbers(before))
    sort(vessel, "trips-name", "Kept")

    assert head.get_attribute("aria-sort") is None
    assert column(vessel, "trips-name", 4) == before


def test_only_the_sorted_column_says_so_and_it_is_said_aloud(vessel: Shown) -> None:
    sort(vessel, "trips-name", "Kept")
    sort(vessel, "trips-name", "Tows")

    assert vessel.locator("[aria-sort]").count() == 1
    assert "Tows" in vessel.locator("body > [role=status]").inner_text()


def test_dates_are_sorted_as_dates(vessel: Shown) -> None:
    sort(vessel, "trips-name", "Trip")
    days = vessel.evaluate(
        "() => [...document.querySelectorAll('table:has(#trips-name) tbody th')].map(h => h.dataset.v)"
    )

    assert days == sorted(days)
    assert len(days) > 5


def test_thousands_and_what_is_not_known(sites: Path, open_page: Opened) -> None:
    page = open_page(sites / "crew" / "vessels" / "marrick.html")
    sort(page, "usual-name", "Usual trip")
    found = numbers(column(page, "usual-name", 2))

    assert found == sorted(found, reverse=True)
    assert found[0] > 1000


def test_a_species_keeps_its_grades_with_it(sites: Path, open_page: Opened) -> None:
    page = open_page(sites / "crew" / "trips" / "solan-bright-2026-10-06.html")
    owners = "() => [...document.querySelectorAll('table:has(#catch-name) tbody')].map(b => b.innerText.split(/\\s/)[0] + b.rows.length).sort()"
    before = page.evaluate(owners)
    sort(page, "catch-name", "Species and grade")
    names = column(page, "catch-name", 0)

    assert names == sorted(names, key=str.casefold)
    assert page.evaluate(owners) == before
    assert page.evaluate("() => document.querySelector('table:has(#catch-name)').lastElementChild.tagName") == "TFOOT"


def test_a_long_table_is_sifted_and_says_how_many_rows_are_left(sites: Path, open_page: Opened) -> None:
    page = open_page(sites / "office" / "gear.html")
    rows = len(column(page, "fasts-name", 0))
    field = page.locator("[data-sifts=fasts-name]")
    if rows <= 12:
        assert field.count() == 0
        return
    field.fill("ternbank")
    left = column(page, "fasts-name", 6)

    assert 0 < len(left) < rows
    assert all("Ternbank" in text for text in left)
    assert page.locator(".sift [role=status]").first.inner_text() == f"{len(left)} of {rows} rows"
    field.press("Escape")
    assert len(column(page, "fasts-name", 0)) == rows


@pytest.mark.parametrize(
    "kind", ["index.html", "vessels/solan-bright.html", "gear.html", "trips/solan-bright-2026-10-06.html"]
)
def test_scripts_move_nothing_when_they_come(sites: Path, open_page: Opened, kind: str) -> None:
    # Layout Instability (WICG): a page's cumulative layout shift is the sum of its shifts
    page = open_page(sites / "crew" / kind, viewport={"width": 1280, "height": 900})
    shifted = page.evaluate(
        """() => new Promise(done => { let sum = 0;
            new PerformanceObserver(list => { for (const e of list.getEntries()) sum += e.value; }).observe({type: 'layout-shift', buffered: true});
            setTimeout(() => done(sum), 300); })"""
    )

    assert shifted < 0.001


def test_heads_lead_to_how_it_is_reckoned_as_before(vessel: Shown) -> None:
    vessel.locator("table:has(#trips-name) thead a .label", has_text="Kept").click()
    vessel.wait_for_url("**/reckoning.html#kept")


def test_a_table_is_sorted_by_keyboard(vessel: Shown) -> None:
    button = vessel.locator("table:has(#trips-name) thead").get_by_role("button", name="Sort by Kept")
    button.focus()
    vessel.keyboard.press("Enter")

    assert button.locator("..").get_attribute("aria-sort") == "descending"
    assert vessel.evaluate("() => document.activeElement.getAttribute('aria-label')") == "Sort by Kept"


def test_paper_and_pages_without_scripts_have_no_buttons(sites: Path, open_page: Opened, vessel: Shown) -> None:
    vessel.emulate_media(media="print")
    assert vessel.locator(".sort:visible").count() == 0
    plain = open_page(sites / "crew" / "vessels" / "solan-bright.html", java_script_enabled=False)

    assert plain.locator(".sort, .sift:visible").count() == 0
    assert column_count(plain) == column_count(vessel)


def column_count(page: Shown) -> int:
    return int(page.locator("table.sortable td").count())
