"""The page "find": what a finger can choose from, where the script finds its data, and every trip by season for who has no scripts."""

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.page import Page
from logbook.render.environment import environment
from logbook.render.find_index import by_season, season_file
from logbook.render.frame import Frame, Site
from logbook.render.gather import TripLine, trip_line
from logbook.render.language import _, _n, speech
from logbook.render.links import FIND
from logbook.render.shown import month_names

_NUMBERS = 200
"""From there on only the last two digits of a number tell in which form words stand behind it."""

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
        months: Names of the months as they stand in dates, which the script takes for such.
        forms: What is said of a number of trips or tows, in every form that the language has, with a stroke between.
        plural: Which form, from 0, each number from 0 to 199 takes, a digit each; larger ones go by their last two digits. Empty
            where one takes the first and all else the second.
        choices: What can be chosen by touch.
        seasons: Every trip.
    """

    frame: Frame
    files: tuple[str, ...]
    months: tuple[str, ...]
    forms: Mapping[str, str]
    plural: str
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
        frame=Frame(site=site, path=FIND, title=_("Find")),
        files=files,
        months=speech().months,
        forms={
            "trips": _forms(lambda number: _n("trip", "trips", number)),
            "tows": _forms(lambda number: _n("tow", "tows", number)),
            "of": _forms(lambda number: _n("{n} of {m} tow", "{n} of {m} tows", number)),
        },
        plural=_plural(),
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
        (_("Species"), _first(species)),
        (_("Month"), month_names()),
        (_("Ground"), _first(grounds)),
        (_("Vessel"), tuple(sorted(_first(vessels), key=speech().place_in_alphabet))),
        (_("Season"), tuple(seasons)[:_MOST]),
    )
    return tuple(Choice(kind=kind, words=words) for kind, words in kinds if words)


def _first(counted: Counter[str]) -> tuple[str, ...]:
    """Return the names that count most, ties by name."""
    return tuple(sorted(counted, key=lambda name: (-counted[name], name))[:_MOST])


def _form_of(number: int) -> int:
    """Return which form of words, from 0, stands behind a number in the language in force, as its catalogue has it."""
    rule: Callable[[int], int] = getattr(speech().catalogue, "plural", lambda number: int(number != 1))
    return rule(number)


def _forms(said: Callable[[int], str]) -> str:
    """Return what is said of a number in every form of the language in force."""
    forms = {_form_of(number): said(number) for number in range(_NUMBERS)}
    return "|".join(forms[form] for form in sorted(forms))


def _plural() -> str:
    """Return which form each number takes; nothing where it is as in English."""
    forms = [_form_of(number) for number in range(_NUMBERS)]
    places = {form: place for place, form in enumerate(sorted(set(forms)))}
    told = "".join(str(places[form]) for form in forms)
    return "" if told == "".join("0" if number == 1 else "1" for number in range(_NUMBERS)) else told
