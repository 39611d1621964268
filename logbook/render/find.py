"""The page "find": what a finger can choose from, where the script finds its data, and every trip by season for who has no scripts."""

from collections import Counter
from collections.abc import Iterable, Sequence
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.page import Page
from logbook.render.environment import environment
from logbook.render.find_index import by_season, season_file
from logbook.render.frame import Frame, Site
from logbook.render.gather import TripLine, trip_line
from logbook.render.links import FIND
from logbook.render.shown import month_names

_MOST = 12
"""So many names of a kind can be chosen by touch; the others are typed."""


class Season(Struct, frozen=True, kw_only=True):
    """A season in the list of trips: its name, and its trips, the latest first."""

    name: str
    trips: tuple[TripLine, ...]


class Choice(Struct, frozen=True, kw_only=True):
    """Words of one kind that can be chosen by touch instead of typing them."""

    kind: str
    words: tuple[str, ...]


class FindPage(Struct, frozen=True, kw_only=True):
    """All that the page shows.

    Attributes:
        frame: Its place in the archive.
        files: The data that the script loads, the latest season first.
        months: Names of the months, which the script takes for such.
        choices: What can be chosen by touch.
        seasons: Every trip.
    """

    frame: Frame
    files: tuple[str, ...]
    months: tuple[str, ...]
    choices: tuple[Choice, ...]
    seasons: tuple[Season, ...]


def find_pages(site: Site, trips: Sequence[Reckoned]) -> tuple[Page, ...]:
    """Return the page with its data."""
    data = tuple(season_file(name, of_it) for name, of_it in by_season(trips))
    context = find_context(site, trips, tuple(page.path for page in data))
    return (*data, Page(path=FIND, content=render_find(context).encode()))


def find_context(site: Site, trips: Sequence[Reckoned], files: tuple[str, ...]) -> FindPage:
    """Return what the page shows."""
    seasons = tuple(
        Season(name=name, trips=tuple(trip_line(trip, None) for trip in of_it)) for name, of_it in by_season(trips)
    )
    return FindPage(
        frame=Frame(site=site, path=FIND, title="Find"),
        files=files,
        months=month_names(),
        choices=_choices(trips, [season.name for season in seasons]),
        seasons=seasons,
    )


def render_find(context: FindPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/find.html").render(page=context, frame=context.frame)


def _choices(trips: Iterable[Reckoned], seasons: Iterable[str]) -> tuple[Choice, ...]:
    """Return the words to choose from: the species most kept, the months, the grounds most fished, seasons and vessels."""
    species: Counter[str] = Counter()
    grounds: Counter[str] = Counter()
    vessels: Counter[str] = Counter()
    for trip in trips:
        vessels[trip.figures.trip.vessel] += 1
        grounds.update(tow.ground for tow in trip.figures.tows if tow.ground)
        for name, total in trip.figures.catch.items():
            species[name] += int(total.kept_kg or Decimal(0))
    kinds = (
        ("Species", _first(species)),
        ("Month", month_names()),
        ("Ground", _first(grounds)),
        ("Vessel", tuple(sorted(_first(vessels)))),
        ("Season", tuple(seasons)[:_MOST]),
    )
    return tuple(Choice(kind=kind, words=words) for kind, words in kinds if words)


def _first(counted: Counter[str]) -> tuple[str, ...]:
    """Return the names that count most, ties by name."""
    return tuple(sorted(counted, key=lambda name: (-counted[name], name))[:_MOST])
