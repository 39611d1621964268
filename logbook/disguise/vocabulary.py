"""The words that a disguised log keeps: those of the format and the trade, which say nothing of whose log it is."""

import re
from collections.abc import Iterable, Iterator
from functools import cache

from logbook.model.fleet import Fleet
from logbook.model.species import Species
from logbook.read import keys
from logbook.read.keys import Keys, fold_key, one_slip
from logbook.read.species import program_species

UNSEEN = "\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ufeff"
"""Signs within words that no editor shows; a set for patterns."""

WORD = rf"[^\W\d_]+(?:[{UNSEEN}]+[^\W\d_]+)*"
"""A word as a pattern."""

_WORD = re.compile(WORD)
_UNSEEN = re.compile(f"[{UNSEEN}]+")
LONG = 5
"""Letters of a word that is kept though it has a slip: it is what the fault is about."""

_PLAIN = """
kg kgs kilo kilos kilogram kilograms t tonne tonnes ton tons lb lbs pound pounds st stone cwt g
fm fms fathom fathoms m metre metres meter meters ft foot feet mm kn knot knots kt kts nm mile miles km
l litre litres liter liters gal gallon gallons c f k h hr hrs hour hours min mins minute minutes d day days week weeks
kw w j kj kgk hpa mb mbar basket baskets box boxes kit kits bag bags fish
whole gutted headed wings wing tails tail fillets fillet and
large medium small
port starboard stern yes no none nil null true false calm variable fast rock wreck cable ordnance
changed mended lost measured doors door warps warp item
light moderate severe dodging gear engine ice berth shifting ground weather
with next to from via about approx at per in on by minus plus
january february march april may june july august september october november december
jan feb mar apr jun jul aug sep sept oct nov dec
monday tuesday wednesday thursday friday saturday sunday mon tue tues wed thu thur thurs fri sat sun
am pm a p z utc gmt noon midnight
n e s w ne se sw nw nne ene ese sse ssw wsw wnw nnw north east south west
authority exact rectangle office crew public default us imperial
yaml yml log
"""


def words_of(text: str) -> Iterator[str]:
    """Give the words of a text, as they are compared."""
    return map(fold_word, _WORD.findall(text))


def fold_word(word: str) -> str:
    """Return a word as it is compared: in lower case, and without signs that no editor shows."""
    return _UNSEEN.sub("", word).casefold()


@cache
def trade_words() -> frozenset[str]:
    """Return the words of the format, its units and the program's own species."""
    tables = [table for table in vars(keys).values() if isinstance(table, Keys)]
    found = set(_PLAIN.split())
    for table in tables:
        found.update(word for text in table.words() for word in words_of(text))
    found.update(_of_species(program_species()))
    return frozenset(found)


def _of_species(species: Iterable[Species]) -> Iterator[str]:
    for one in species:
        for name in (one.name, one.code or "", *(alias.name for alias in one.also)):
            yield from words_of(name)


@cache
def _keys() -> frozenset[str]:
    """Return every key there is, as keys are compared."""
    return frozenset(word for table in vars(keys).values() if isinstance(table, Keys) for word in table.words())


def is_key(text: str) -> bool:
    """Tell whether a text is a key, or would be with one slip less; signs that no editor shows count as the reader counts them."""
    seen = _UNSEEN.sub("", text)
    folded = fold_key("".join(sign if sign.isprintable() else " " for sign in seen))
    return folded in _keys() or any(one_slip(folded, key) for key in _keys())


class Vocabulary:
    """The words that are kept in one log."""

    def __init__(self, fleet: Fleet | None = None) -> None:
        """Begin with the words of the trade, and the fleet's own measures and money."""
        own = [measure.name for measure in fleet.measures] if fleet is not None else []
        own += [fleet.currency] if fleet is not None and fleet.currency else []
        self._known = trade_words() | {word for name in own for word in words_of(name)}

    def knows(self, word: str) -> bool:
        """Tell whether a word is kept."""
        return fold_word(word) in self._known

    def nearly_knows(self, word: str, least: int = LONG) -> bool:
        """Tell whether a word is kept, or has so many letters and is one slip away from one that is."""
        folded = fold_word(word)
        if folded in self._known:
            return True
        return len(folded) >= least and any(len(one) >= least and one_slip(folded, one) for one in self._known)
