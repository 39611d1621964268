"""The pages of species and grounds: sound whatever a ground is called, telling no more than the edition shows."""

import re

import pytest

from logbook.model.fleet import Fleet
from logbook.render.charts import Bars, Columns
from logbook.render.place_pages import (
    GroundPage,
    SpeciesPage,
    ground_context,
    render_ground,
    render_species,
    species_context,
)
from tests.read.logs import FLEET, fleet
from tests.render.archives import archive_of, shown
from tests.render.tags import Tags
from tests.render.test_pages import check

LOG = """\
vessel: Solan Bright
sailed: 2025-03-04 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 20:00, ground: The Saddle, depth: 60 fm, catch: {cod: {large: 60 kg, small: 40 kg}, haddock: 20.9 kg}}
  - {shot: 21:00, hauled: 23:00, ground: the  SADDLE, catch: {cod: 20 kg}, fast: canary-rock, damage: canary-torn, from: 58 52N 015 10W}
  - {shot: 2025-03-05 01:00, hauled: 03:00, ground: Odd Hole, catch: {ling: 2 kg}, fast: 58 44.4N 015 13.3W, gear lost: canary-lost}
landed: 2025-03-08 09:00, Port Kerrin
"""
LATER = LOG.replace("2025-03", "2025-06").replace("cod: 20 kg", "cod: 0 kg")


def species(*texts: str, name: str, edition: str = "crew") -> SpeciesPage:
    site, ledger = shown(*texts, edition=edition)
    return species_context(site, next(one for one in ledger.species() if one.name == name))


def ground(*texts: str, name: str = "The Saddle", edition: str = "crew", of: Fleet | None = None) -> GroundPage:
    site, ledger = shown(*texts, edition=edition, of=of)
    return ground_context(site, next(one for one in ledger.grounds() if one.name == name), site.species)


def test_a_species_page_tells_the_best_month_and_leads_to_grounds_and_tows() -> None:
    page = species(LOG, LATER, name="cod")
    html = render_species(page)

    assert page.best_month == "March"
    assert '<a href="../grounds/the-saddle.html"><bdi>The Saddle</bdi></a>' in html
    assert '<a href="../trips/solan-bright-2025-03-04.html#tow-1">' in html
    assert html.count("../grounds/the-saddle.html") >= 2


def test_a_month_not_fished_is_a_question_mark_and_one_without_it_is_nought() -> None:
    page = species(LOG, LATER.replace("cod: {large: 60 kg, small: 40 kg}, ", ""), name="cod")

    assert page.months is not None
    assert isinstance(page.months.drawing, Columns)
    assert [bar.end for bar in page.months.drawing.bars] == ["?", "?", "20", "?", "?", "0", *"??????"]


def test_months_without_a_landing_stand_between_those_with_one() -> None:
    page = species(LOG, LATER, name="cod")

    assert page.landed is not None
    assert isinstance(page.landed.drawing, Columns)
    assert [bar.label for bar in page.landed.drawing.bars] == ["Mar 2025", "Apr 2025", "May 2025", "Jun 2025"]
    assert [len(bar.parts) for bar in page.landed.drawing.bars] == [1, 1, 1, 1]


def test_what_is_not_landed_yet_says_so() -> None:
    html = render_species(species(LOG.partition("landed")[0], name="cod"))

    assert "None is landed yet by these logs." in html


def test_a_ground_page_tells_the_same_weeks_what_is_caught_and_what_the_gear_took() -> None:
    html = render_ground(ground(LOG, LATER))

    assert "The same weeks, year by year" in html
    assert "100–150 m" in html
    assert "canary-rock" in html
    assert "canary-torn" in html
    assert "No mark does not mean clear ground" in html


def test_the_chart_and_the_table_beside_it_round_alike() -> None:
    # 453.98 kg over two hours are 226.99 a hour; 0.9 over 2 are 0.45, which would be 0.5 and then 1 when rounded twice
    page = ground(
        "vessel: Solan Bright\nsailed: 2025-03-04 05:30\ntows:\n"
        "  - {shot: 18:00, hauled: 20:00, ground: The Saddle, catch: {cod: 452.9 kg, ling: 0.9 kg}}\n"
    )

    assert page.species is not None
    assert isinstance(page.species.drawing, Bars)
    shown_there = [bar.end for bar in page.species.drawing.bars]
    html = render_ground(page)
    for bar, one in zip(shown_there, page.ground.species, strict=True):
        row = re.search(rf'species/{one.name}\.html">.*?</tr>', html)
        assert row is not None
        assert f'<td class="n">{bar}</td>' in row[0]


@pytest.mark.parametrize(
    "name",
    [
        "<script>alert(1)</script>",
        "../../etc/passwd",
        "a/b\\c",
        "..",
        "con",
        "🐟🐟",
        "x" * 300,
        "Ħøð & 'Ææ' \"ß\"",
        "#tow-1?x=%2e",
    ],
)
def test_a_ground_and_a_species_may_be_called_anything(name: str) -> None:
    quoted = name.replace("'", "''")
    files = archive_of(
        f"vessel: Solan Bright\nsailed: 2025-03-04 05:30\ntows:\n"
        f"  - {{shot: 18:00, hauled: 20:00, ground: '{quoted}', fast: yes, damage: '{quoted}', catch: {{'{quoted}': 20 kg}}}}\n"
        f"landed: 2025-03-08 09:00, Port Kerrin\n"
    )

    check(files)
    assert all(re.fullmatch(r"[\w./-]+", path) and ".." not in path and len(path) < 90 for path in files)
    for path in (path for path in files if path.endswith(".html")):
        assert b"<script>alert" not in files[path]
    assert len([path for path in files if path.startswith("grounds/")]) == 1


def test_grounds_spelled_in_different_case_have_one_page_and_different_ones_their_own() -> None:
    log = LOG.replace("Odd Hole", "The-Saddle")
    files = archive_of(log)

    assert len([path for path in files if path.startswith("grounds/")]) == 2
    check(files)


def test_species_that_differ_only_in_what_case_folding_makes_alike_do_not_share_a_page() -> None:
    files = archive_of(LOG.replace("cod: 20 kg", "straß: 20 kg").replace("ling: 2 kg", "strass: 2 kg"))

    check(files)


@pytest.mark.parametrize("edition", ["crew", "public"])
def test_nothing_that_an_edition_withholds_comes_in_by_these_pages(edition: str) -> None:
    closed = fleet(FLEET + "editions: {crew: {fasts: no, positions: ground}}\n")
    files = archive_of(LOG, of=closed, edition=edition)
    told = b"".join(content for path, content in files.items() if path.startswith(("grounds/", "species/", "charts/")))

    assert b"58\xc2\xb044" not in told
    assert b"canary-rock" not in told
    if edition == "public":
        assert b"canary" not in told
        assert b">Fasts<" not in told
    check(files)


def test_positions_of_tows_that_are_held_back_name_no_ground() -> None:
    held = fleet(FLEET + "editions: {crew: {positions: ground, after: 60 days}}\n")
    files = archive_of(LOG, LOG.replace("2025-03", "2025-07").replace("The Saddle", "Secret"), of=held, edition="crew")

    assert not [path for path in files if "secret" in path]
    assert not [path for path in files if path.endswith((".html", ".svg")) and b"Secret" in files[path]]


def test_every_page_has_a_way_back() -> None:
    for path, content in archive_of(LOG).items():
        if path.endswith(".html"):
            links = [attrs.get("href", "") for tag, attrs in Tags(content.decode()).tags if tag == "a"]
            assert any(link.endswith("index.html") for link in links), path
