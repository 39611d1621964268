"""Units of weight: the five everybody has, and the measures a fleet has of its own.

Knows what one of a unit weighs; how a weight is typed stands in `weight`.
"""

from collections.abc import Iterable
from decimal import Decimal

from logbook.model.fleet import Measure
from logbook.model.names import fold_name, plural
from logbook.model.quantity import POUND_KG

_STANDARD = {
    "kg": Decimal(1),
    "t": Decimal(1000),
    "lb": POUND_KG,
    "st": 14 * POUND_KG,
    "cwt": 112 * POUND_KG,
}
"""Kilograms in one, exactly (NIST SP 811; stone and long hundredweight: Torry Advisory Note 17)."""

_SPELLED = (
    ("kg", "kgs kilo kilos kilogram kilograms kilogramme kilogrammes"),
    ("t", "tonne tonnes"),
    ("lb", "lbs pound pounds"),
    ("st", "stone stones"),
    ("cwt", "cwts hundredweight hundredweights"),
)
_OTHER_SPELLINGS = {word: unit for unit, words in _SPELLED for word in words.split()}

THOUSANDS = frozenset({"kg", "lb"})
"""Units in which a comma before exactly three digits marks thousands."""


def _plurals(name: str) -> tuple[str, ...]:
    """Return the plurals people type of a name."""
    return (plural(name), f"{name}s", f"{name}es")


def _singulars(name: str) -> tuple[str, ...]:
    """Return the names a plural may be of, for measures that the fleet file names in the plural."""
    if name.endswith("ies"):
        return (f"{name[:-3]}y",)
    if name.endswith("es"):
        return (name[:-1], name[:-2])
    return (name[:-1],) if name.endswith("s") else ()


class Measures:
    """The units of weight that a fleet's logs may use, looked up by singular or plural whatever the case.

    The five standard abbreviations mean the same in every fleet; a measure of the fleet's own comes before the longer
    spellings (a fleet may have its own `stone`).
    """

    __slots__ = ("_names", "_species", "_weights")

    def __init__(self, measures: tuple[Measure, ...] = ()) -> None:
        """Set up the look-up of some measures."""
        self._names = {unit: unit for unit in _STANDARD}
        self._weights: dict[str, Decimal | None] = dict(_STANDARD)
        self._species: dict[tuple[str, str], Decimal] = {}
        for measure in measures:
            self._add(measure, (fold_name(measure.name),))
        for forms in (_plurals, _singulars):
            for measure in measures:
                self._add(measure, forms(fold_name(measure.name)))
        for word, unit in _OTHER_SPELLINGS.items():
            self._names.setdefault(word, unit)

    def _add(self, measure: Measure, words: Iterable[str]) -> None:
        for word in words:
            self._names.setdefault(word, measure.name)
        if measure.name not in self._weights:
            self._weights[measure.name] = measure.default
            self._species.update(((measure.name, species), kg) for species, kg in measure.by_species)

    @property
    def own(self) -> tuple[str, ...]:
        """Return the names of the fleet's own measures."""
        return tuple(name for name in self._weights if name not in _STANDARD)

    @property
    def words(self) -> tuple[str, ...]:
        """Return every word that is read as a unit, folded."""
        return tuple(self._names)

    def many(self, unit: str) -> str:
        """Return a unit as it stands after a number that is not one."""
        return unit if unit in _STANDARD else plural(unit)

    def name(self, typed: str) -> str | None:
        """Return the usual spelling of a unit, or None where it is no unit of weight."""
        name = self._names.get(typed)
        return name if name is not None else self._names.get(fold_name(typed))

    def unit(self, unit: str, species: str | None = None) -> Decimal | None:
        """Return the kilograms in one unit.

        Args:
            unit: A unit as typed.
            species: Name of the species weighed; None where it is none or not known.

        Returns:
            None where it is no unit, or a measure without a weight for that species.
        """
        name = self.name(unit)
        if name is None:
            return None
        if species is not None and self._species:
            own = self._species.get((name, fold_name(species)))
            if own is not None:
                return own
        return self._weights[name]
