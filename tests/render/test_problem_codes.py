"""The page of problem codes has an entry for each, in editions that show problems, and each problem leads to its own."""

import re

from logbook.model.codes import ENTRIES
from logbook.render.links import PROBLEM_CODES, PROBLEMS, RECKONING
from tests.read.logs import read
from tests.render.archives import archive_of


def pages_of(text: str, edition: str = "office") -> dict[str, str]:
    """Return every page of the archive of one log."""
    files = archive_of(text, edition=edition, problems=read(text)[1] if edition == "office" else ())
    return {path: content.decode() for path, content in files.items() if path.endswith(".html")}


LOG = "vessel: Solan Bright\nsailed: 2026-03-04 05:30\ntows:\n  - 1810-1940, cod 2 baskets\n"


def test_every_code_has_its_place_on_the_page() -> None:
    page = pages_of(LOG)[PROBLEM_CODES]

    assert set(re.findall(r'<article class="entry" id="([a-z0-9-]+)">', page)) == set(ENTRIES)
    assert all(line.isprintable() for line in page.split("\n"))


def test_a_problem_leads_to_what_its_code_means() -> None:
    files = pages_of(LOG.replace("baskets", "baskts"))

    assert f'<a href="{PROBLEM_CODES}#weight-unreadable"><code>weight-unreadable</code></a>' in files[PROBLEMS]
    assert f'href="{PROBLEM_CODES}"' in files[PROBLEMS]
    assert f'href="{PROBLEM_CODES}"' in files[RECKONING]


def test_an_edition_without_problems_tells_of_no_codes() -> None:
    files = pages_of(LOG, edition="crew")

    assert PROBLEM_CODES not in files
    assert PROBLEM_CODES not in files[RECKONING]
