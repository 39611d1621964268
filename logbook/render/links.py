"""Where pages and charts lie in the archive, and relative links between them."""

import posixpath
from functools import lru_cache
from urllib.parse import quote

from logbook.model.names import slug

FRONT = "index.html"
RECKONING = "reckoning.html"
PROBLEMS = "problems.html"
PROBLEM_CODES = "problem-codes.html"
GEAR = "gear.html"
BOARD = "board.html"
FIND = "find.html"


def vessel_page(name: str) -> str:
    """Return the path of a vessel's page."""
    return f"vessels/{slug(name)}.html"


def guide_page(name: str) -> str:
    """Return the path of a guide."""
    return f"{name}.html"


def numbered_page(first: str, number: int) -> str:
    """Return the path of one of several pages that belong together, from 1; the first has the plain name."""
    return first if number == 1 else f"{first.removesuffix('.html')}-{number}.html"


def board_page(number: int) -> str:
    """Return the path of a page of the board, from 1."""
    return numbered_page(BOARD, number)


def species_page(name: str) -> str:
    """Return the path of a species' page."""
    return f"species/{slug(name)}.html"


def ground_page(name: str) -> str:
    """Return the path of a ground's page."""
    return f"grounds/{slug(name)}.html"


def season_page(name: str) -> str:
    """Return the path of a season's page."""
    return f"seasons/{slug(name.replace(chr(0x2013), chr(0x20)))}.html"


def week_page(name: str) -> str:
    """Return the path of a week's page."""
    return f"weeks/{name.lower()}.html"


def place_chart(kind: str, name: str, what: str) -> str:
    """Return the path of one of the charts of a species, a ground, a season or a week."""
    return f"charts/{kind}/{slug(name)}-{what}.svg"


def trip_page(trip_id: str) -> str:
    """Return the path of a trip's page."""
    return f"trips/{trip_id}.html"


def trip_chart(trip_id: str, what: str) -> str:
    """Return the path of one of a trip's charts."""
    return f"charts/trips/{trip_id}-{what}.svg"


def vessel_chart(name: str, what: str) -> str:
    """Return the path of one of a vessel's charts."""
    return f"charts/vessels/{slug(name)}-{what}.svg"


def fleet_chart(what: str) -> str:
    """Return the path of one of the fleet's charts."""
    return f"charts/fleet-{what}.svg"


def relative(start: str, target: str, fragment: str = "") -> str:
    """Return the link that leads from the page at `start` to the file at `target`, percent-encoded.

    Args:
        start: Path of the page the link stands on.
        target: Path of what it leads to; both relative to the archive.
        fragment: Id of a place on it; none where empty.
    """
    path = "" if start == target and fragment else _way(posixpath.dirname(start), target)
    return f"{path}#{quote(fragment)}" if fragment else path


@lru_cache(maxsize=4096)
def _way(folder: str, target: str) -> str:
    return quote(posixpath.relpath(target, folder or "."))
