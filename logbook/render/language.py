"""The language that pages are in: its phrases, its decimal mark, its names of days and months, its alphabet.

Every phrase of our own stands in English in code or template, marked with one of the functions below, and is looked up in the
catalogue of the language in force. What people typed is never translated. Numbers, days and names that stand in a phrase are
named in braces, so that a translation may put them in another order.
"""

import re
import unicodedata
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from functools import cache, lru_cache
from gettext import GNUTranslations, NullTranslations
from importlib.resources import files

from logbook.model.language import ENGLISH, N_

MONTHS = (
    N_("January"),
    N_("February"),
    N_("March"),
    N_("April"),
    N_("May"),
    N_("June"),
    N_("July"),
    N_("August"),
    N_("September"),
    N_("October"),
    N_("November"),
    N_("December"),
)
WEEKDAYS = (
    N_("Monday"),
    N_("Tuesday"),
    N_("Wednesday"),
    N_("Thursday"),
    N_("Friday"),
    N_("Saturday"),
    N_("Sunday"),
)


class Speech:
    """A language as pages use it.

    Attributes:
        tag: Its language tag, BCP 47.
        catalogue: Its phrases.
        decimal: What stands before decimals.
        months: Names of the months within a date.
        brief_months: The same, short.
        weekdays: Names of the days within a date, Monday first.
        brief_weekdays: The same, short.
    """

    __slots__ = (
        "_letters",
        "_order",
        "brief_months",
        "brief_weekdays",
        "catalogue",
        "decimal",
        "months",
        "tag",
        "weekdays",
    )

    def __init__(self, tag: str, catalogue: NullTranslations) -> None:
        """Take out of the catalogue what is asked for most."""
        self.tag, self.catalogue = tag, catalogue
        self.decimal = catalogue.pgettext("decimal mark", ".")
        self.months = tuple(catalogue.gettext(name) for name in MONTHS)
        self.weekdays = tuple(catalogue.gettext(name) for name in WEEKDAYS)
        self.brief_months = _split(catalogue.gettext("Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec"))
        self.brief_weekdays = _split(catalogue.gettext("Mon Tue Wed Thu Fri Sat Sun"))
        alphabet = catalogue.pgettext(
            "alphabet, letters that count as one joined by =", "a b c d e f g h i j k l m n o p q r s t u v w x y z"
        )
        self._order = {letter: place for place, same in enumerate(alphabet.split()) for letter in same.split("=")}
        longest_first = sorted(self._order, key=len, reverse=True)
        self._letters = re.compile("|".join([*map(re.escape, longest_first), "."]), re.DOTALL)

    def place_in_alphabet(self, name: str) -> tuple[list[tuple[int, int, str]], str]:
        """Return what to sort names by, for people who look one up in a list.

        Accents count for nothing where the letter with one is no letter of the alphabet; numbers count by size and stand before
        letters, letters of other alphabets after them.
        """
        folded = unicodedata.normalize("NFC", name.casefold())
        known = "".join(one if one in self._order else _bare(one) for one in folded)
        parts = re.split(r"(\d+)", known)
        key = [
            part
            for place, run in enumerate(parts)
            for part in (self._spelt(run) if place % 2 == 0 else [(0, int(run), "")])
        ]
        return key, name

    def _spelt(self, run: str) -> list[tuple[int, int, str]]:
        found = self._letters.findall(run)
        return [
            (2, self._order[one], "") if one in self._order else (3 if one.isalpha() else 1, 0, one) for one in found
        ]


def _split(names: str) -> tuple[str, ...]:
    return tuple(names.split())


@lru_cache(maxsize=4096)
def _bare(letter: str) -> str:
    """Return a letter without its accents."""
    apart = unicodedata.normalize("NFKD", letter)
    return "".join(one for one in apart if not unicodedata.combining(one)) or letter


@cache
def speech_of(tag: str) -> Speech:
    """Return a language by its tag; English is what is in the code, the others have a catalogue beside this module.

    Raises:
        FileNotFoundError: There is no catalogue of that language.
    """
    if tag == ENGLISH:
        return Speech(tag, NullTranslations())
    with (files("logbook.render") / "phrases" / f"{tag}.mo").open("rb") as catalogue:
        return Speech(tag, GNUTranslations(catalogue))


_in_force: ContextVar[Speech] = ContextVar("language of the pages", default=speech_of(ENGLISH))  # noqa: B039 - never changed once made


def speech() -> Speech:
    """Return the language in force."""
    return _in_force.get()


@contextmanager
def speaking(language: Speech) -> Iterator[None]:
    """Have everything within shown in a language."""
    before = _in_force.set(language)
    try:
        yield
    finally:
        _in_force.reset(before)


def _(text: str) -> str:
    """Return a phrase in the language in force."""
    return speech().catalogue.gettext(text)


def chosen(word: str | None) -> str | None:
    """Return a word of a closed set, marked where the set is, in the language in force."""
    return word and _(word)


def _n(one: str, more: str, number: int) -> str:
    """Return a phrase in the language in force, as it is said of that number."""
    return speech().catalogue.ngettext(one, more, number)


def _c(context: str, text: str) -> str:
    """Return a phrase that means something else elsewhere, in the language in force."""
    return speech().catalogue.pgettext(context, text)
