"""How figures came about, told by small letters and the notes they lead to.

The head of a column says whether its figures are as a rule logged or reckoned. A figure that was carried
on, assumed or otherwise not plain has a letter beside it; the words stand in a list below the table.
"""

from collections.abc import Container, Iterator
from functools import cache

from markupsafe import Markup

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.figures import TripFigures
from logbook.model.language import N_
from logbook.render.language import _
from logbook.render.told import told

_LETTERS = "abcdefghijklmnopqrstuvwxyz"
_SPELT = {reasons.CARRIED: N_("carried on from the tow before")}
NO_MARK = Markup("")
"""Beside a figure that is plain."""

_NONE: dict[str, Markup] = {}


class Notes:
    """The notes of one table: words for each letter, in the order they are first needed."""

    __slots__ = ("_marks",)

    def __init__(self) -> None:
        """Begin with none."""
        self._marks: dict[str, Markup] = {}

    def marks(self, basis: Basis, shown: Container[str]) -> dict[str, Markup]:
        """Return the letter of every field that is not plain and is shown where these notes belong."""
        return {field: self.mark(words) for field, words in basis if field in shown} if basis else _NONE

    def mark(self, words: str) -> Markup:
        """Return the letter for some words, a new one where they are new."""
        if words not in self._marks:
            self._marks[words] = _mark(_letter(len(self._marks)))
        return self._marks[words]

    def __iter__(self) -> Iterator[tuple[str, str]]:
        """Go over letters and their words."""
        return iter([(_letter(place), _spelt(words)) for place, words in enumerate(self._marks)])

    def __len__(self) -> int:
        """Return how many there are."""
        return len(self._marks)


def basis_of_species(figures: TripFigures, name: str) -> Basis:
    """Return how a species' figures came about, over the trip and in its tows; several ways of one figure in one sentence."""
    caught = [tow.catch[name] for tow in figures.tows if name in tow.catch]
    of_tows = [pair for one in caught for pair in one.basis]
    ways: dict[str, dict[str, None]] = {}
    for field, words in (*figures.catch[name].basis, *of_tows):
        ways.setdefault(field, {})[words] = None
    return tuple((field, " or ".join(words)) for field, words in ways.items())


def _spelt(words: str) -> str:
    """Return words in the language of the page."""
    return _(_SPELT[words]) if words in _SPELT else told(words)


@cache
def _mark(letter: str) -> Markup:
    return Markup('<sup class="mark">{}</sup>').format(letter)


def _letter(number: int) -> str:
    """Return the letters in order: a to z, then aa, ab and so on."""
    more, last = divmod(number, len(_LETTERS))
    return (_letter(more - 1) if more else "") + _LETTERS[last]
