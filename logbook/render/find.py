"""The page "find": what a finger can choose from, where the script finds its data, and the latest trips for who has no scripts."""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from decimal import Decimal
from functools import partial

from msgspec import Struct
from msgspec.structs import replace

from logbook.model.ledger import Entry, Ledger
from logbook.model.named import ByName
from logbook.model.page import Drafts, File, Maker, Page
from logbook.render.environment import environment
from logbook.render.files.all import years_of
from logbook.render.files.rows import FIND_DATA
from logbook.render.find_index import Head, head_of, year_file
from logbook.render.frame import Frame, Site
from logbook.render.language import _, _n, speech
from logbook.render.links import FIND
from logbook.render.shown import month_names

_NUMBERS = 200
"""From there on only the last two digits of a number tell in which form words stand behind it."""

_MOST = 12
"""So many names of a kind can be chosen by touch; the others are typed."""

_LISTED = 400
"""So many trips stand in the page at most; of the others it tells where they do."""


_DIGITS = 8
"""So much of its digest is asked for with a file of data, so that a browser never takes an older one for it."""


class Counts(Struct, frozen=True, kw_only=True):
    """How much there is of what can be chosen by touch, over all trips.

    Attributes:
        species: Name to kilograms kept.
        grounds: Name to tows.
        vessels: Name to trips.
    """

    species: ByName[Decimal]
    grounds: ByName[int]
    vessels: ByName[int]


class Season(Struct, frozen=True, kw_only=True):
    """A season in the list of trips.

    Attributes:
        name: Its name.
        all: How many trips it has.
        trips: Those that are listed, the latest first.
    """

    name: str
    all: int
    trips: tuple[Head, ...]


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
        seasons: Trips of the latest seasons.
        whole: Whether these are all trips.
        earlier: Seasons whose pages have those that are not listed.
    """

    frame: Frame
    files: tuple[str, ...]
    months: tuple[str, ...]
    forms: Mapping[str, str]
    plural: str
    choices: tuple[Choice, ...]
    seasons: tuple[Season, ...]
    whole: bool
    earlier: tuple[str, ...]


def find_files(site: Site, ledger: Ledger, counts: Counts, seasons: Sequence[str], maker: Maker) -> Iterator[File]:
    """Give the page with its data, made anew only where something that it tells has changed.

    Args:
        site: What all pages share.
        ledger: All trips.
        counts: Over all of them.
        seasons: Names of the seasons that have a page.
        maker: Makes the files, or knows that they were made before.
    """
    data = []
    for year in years_of(ledger):
        for file in maker.files(f"find/{year}", (ledger.rows_key(FIND_DATA, year),), partial(_data, ledger, year)):
            data.append(f"{file.path}?{file.digest[:_DIGITS]}")
            yield file
    bare = replace(site, species=frozenset())
    told = (counts, tuple(seasons), tuple(data))

    def make() -> bytes:
        return render_find(find_context(bare, ledger, *told)).encode()

    yield maker.file(FIND, (bare, told, _listed(ledger.entries), len(ledger.entries)), make)


def _data(ledger: Ledger, year: str, _: Drafts) -> Iterator[Page]:
    yield year_file(year, ledger.rows(FIND_DATA, year))


def find_context(
    site: Site, ledger: Ledger, counts: Counts, seasons: Sequence[str], files: tuple[str, ...]
) -> FindPage:
    """Return what the page shows; `files` are the paths of its data, the latest first. See `find_files`."""
    listed = _listed(ledger.entries)
    whole = sum(shown for *_, shown in listed) == len(ledger.entries)
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
        choices=_choices(counts, years_of(ledger)),
        seasons=tuple(
            Season(name=year, all=trips, trips=_latest(ledger, year, shown)) for year, trips, shown in listed
        ),
        whole=whole,
        earlier=() if whole else _earlier(seasons, listed),
    )


def _listed(entries: Sequence[Entry]) -> tuple[tuple[str, int, int], ...]:
    """Return the latest years that together have no more trips than are listed, each with how many it has and how many of them are listed.

    That is all of them but where the latest year alone has more.
    """
    trips = Counter(entry.year for entry in entries)
    listed: list[tuple[str, int, int]] = []
    left = _LISTED
    for year in sorted(trips, reverse=True):
        if listed and trips[year] > left:
            break
        listed.append((year, trips[year], min(trips[year], left)))
        left -= trips[year]
    return tuple(listed)


def _latest(ledger: Ledger, year: str, most: int) -> tuple[Head, ...]:
    """Return the latest trips of a year, the last first."""
    data = tuple(ledger.rows(FIND_DATA, year))
    return tuple(head_of(trip) for trip in data[-most:][::-1])


def _earlier(seasons: Iterable[str], listed: Sequence[tuple[str, int, int]]) -> tuple[str, ...]:
    """Return the seasons that have trips which are not listed, the latest first; a season is named by the year it begins in."""
    year, trips, shown = listed[-1]
    last = year if shown < trips else f"{int(year) - 1:04}"
    return tuple(sorted((name for name in seasons if name[:4] <= last), reverse=True))


def render_find(context: FindPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/find.html").render(page=context, frame=context.frame)


def _choices(counts: Counts, years: Sequence[str]) -> tuple[Choice, ...]:
    """Return the words to choose from: the species most kept, the months, the grounds most fished, seasons and vessels."""
    kinds = (
        (_("Species"), _first(counts.species)),
        (_("Month"), month_names()),
        (_("Ground"), _first(counts.grounds)),
        (_("Vessel"), tuple(sorted(_first(counts.vessels), key=speech().place_in_alphabet))),
        (_("Season"), tuple(years)[:_MOST]),
    )
    return tuple(Choice(kind=kind, words=words) for kind, words in kinds if words)


def _first(counted: Mapping[str, Decimal | int]) -> tuple[str, ...]:
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
