"""What a log's names are matched against: the species, measures, gear, pens, ports and grounds of its fleet."""

from collections.abc import Iterable
from functools import lru_cache

from msgspec import Struct

from logbook.model.fleet import Fleet, Vessel
from logbook.model.names import fold_name
from logbook.model.problem import Place
from logbook.model.species import Species
from logbook.read.fields import MANY, Found, named_list, nearest, take_text, warn
from logbook.read.terms import Terms
from logbook.read.tree import Node, Scalar

CODES = frozenset(
    {
        "species-unknown",
        "grade-unknown",
        "net-unknown",
        "pen-unknown",
        "ground-unknown",
        "port-unknown",
    }
)


class Called(Struct, frozen=True, kw_only=True):
    """A species as it was called.

    Attributes:
        name: Name it goes by: the list's, or as typed where nobody knows it.
        known: The species' entry; None where nobody knows it.
        grade: Grade that the name itself carries, as `codling` is small cod.
    """

    name: str
    known: Species | None
    grade: str | None = None

    def spelled(self, grade: str) -> str | None:
        """Return a grade of the species as the fleet spells it, or None where it has no such grade."""
        return _one_of(self.known.grades, grade) if self.known else None


@lru_cache(maxsize=1024)
def _one_of(grades: tuple[str, ...], typed: str) -> str | None:
    folded = fold_name(typed)
    return next((grade for grade in grades if fold_name(grade) == folded), None)


class SpeciesIndex:
    """Species by every name, alias and code they go by."""

    __slots__ = ("_by_name", "names")

    def __init__(self, species: Iterable[Species]) -> None:
        """Index the species; the first to claim a name keeps it, and names come before aliases and codes."""
        self._by_name: dict[str, Called] = {}
        entries = tuple(species)
        for entry in entries:
            self._by_name.setdefault(fold_name(entry.name), Called(name=entry.name, known=entry))
        for entry in entries:
            for alias in entry.also:
                self._by_name.setdefault(fold_name(alias.name), Called(name=entry.name, known=entry, grade=alias.grade))
        for entry in entries:
            if entry.code is not None:
                self._by_name.setdefault(fold_name(entry.code), Called(name=entry.name, known=entry))
        self.names = tuple(self._by_name)

    def find(self, typed: str) -> Called | None:
        """Return the species of that name, alias or code, or None."""
        return self._by_name.get(typed) or self._by_name.get(fold_name(typed))

    def longest(self, words: list[str]) -> tuple[Called, int] | None:
        """Return the species that the first words name, and how many words that took; the longest name wins."""
        for count in range(len(words), 0, -1):
            called = self.find(" ".join(words[:count]))
            if called is not None:
                return called, count
        return None


class Names:
    """Names of one kind that a fleet has.

    Attributes:
        all: As the fleet spells them.
    """

    __slots__ = ("_by_fold", "_in_line", "all")

    def __init__(self, names: Iterable[str], *words: str) -> None:
        """Keep the names; of two that are the same when folded, the first is found.

        Args:
            names: As the fleet spells them.
            words: What may stand before such a name in a tow on one line, as `net` or `on`.
        """
        self.all = tuple(names)
        self._by_fold = {fold_name(name): name for name in reversed(self.all)}
        self._in_line: dict[str, str] = {}
        for name in self.all:
            folded = fold_name(name)
            for form in (folded, *(f"{word} {folded}" for word in words)):
                self._in_line.setdefault(form, name)

    def find(self, typed: str) -> str | None:
        """Return a name as the fleet spells it, or None."""
        return self._by_fold.get(fold_name(typed))

    def find_in_line(self, folded: str) -> str | None:
        """Return the name that a folded part of a tow's line says, alone or after a word for what it is; or None."""
        return self._in_line.get(folded)


class Known:
    """The names and terms one log is read by."""

    __slots__ = ("fleet", "grounds", "nets", "pens", "species", "terms", "vessel")

    def __init__(self, fleet: Fleet, species: SpeciesIndex, terms: Terms, vessel: Vessel) -> None:
        """Keep what the log is matched against."""
        self.fleet = fleet
        self.species = species
        self.terms = terms
        self.vessel = vessel
        self.nets = Names((net.name for net in vessel.nets), "net")
        self.pens = Names(name for name, _ in vessel.hold.pens)
        self.grounds = Names((ground.name for ground in fleet.grounds), "on", "ground")

    def call(self, node: Scalar, found: Found) -> Called:
        """Return the species a text names; an unknown one is a warning and goes by the name typed."""
        typed = node.value.strip()
        return self.species.find(typed) or self.unknown(node.place, typed, found)

    def unknown(self, place: Place, typed: str, found: Found) -> Called:
        """Return a species that nobody knows, with a warning; it goes by the name typed."""
        near = nearest(typed, self.species.names, fold_name) if len(found) < MANY else []
        hint = f"did you mean {named_list(near)}?" if near else "name it in the fleet file if it is right"
        warn(
            found, place, "species-unknown", f"no species is called '{typed}'; its weight is kept under that name", hint
        )
        return Called(name=typed, known=None)

    def grade(self, called: Called, node: Scalar, found: Found) -> str:
        """Return the grade that a text names in the fleet's spelling; one the species does not have is a warning."""
        typed = node.value.strip()
        return called.spelled(typed) or self.unknown_grade(called, node.place, typed, found)

    def unknown_grade(self, called: Called, place: Place, typed: str, found: Found) -> str:
        """Return a grade as it was typed, with a warning where the species has others."""
        grades = called.known.grades if called.known else ()
        if grades:
            hint = f"its grades are {', '.join(grades)}"
            warn(found, place, "grade-unknown", f"{called.name} has no grade '{typed}'", hint)
        return typed

    def net(self, node: Node | None, found: Found) -> str | None:
        """Return a net's name in the fleet's spelling; one the vessel does not have is a warning."""
        return _matched(node, self.nets, found, "net-unknown", f"{self.vessel.name} has no net")

    def pen(self, node: Node | None, found: Found) -> str | None:
        """Return a pen's name in the fleet's spelling; one the hold does not have is a warning."""
        return _matched(node, self.pens, found, "pen-unknown", f"{self.vessel.name}'s hold has no pen")

    def ground(self, node: Node | None, found: Found) -> str | None:
        """Return a ground's name in the fleet's spelling; a near miss is a warning, a new name is taken as it is."""
        return _matched(node, self.grounds, found, "ground-unknown", "no ground is called", near_only=True)

    def port(self, node: Node | None, found: Found) -> str | None:
        """Return a port's name in the fleet's spelling; a near miss is a warning, a new name is taken as it is."""
        return port_of(self.fleet, take_text(node, found, "a port"), node, found)


def port_of(fleet: Fleet, typed: str | None, node: Node | None, found: Found) -> str | None:
    """Return a port's name in the fleet's spelling; a near miss is a warning, a new name is taken as it is."""
    ports = Names(port.name for port in fleet.ports)
    return spelled(typed, node, ports, found, "port-unknown", "no port is called", near_only=True)


def _matched(
    node: Node | None, names: Names, found: Found, code: str, message: str, *, near_only: bool = False
) -> str | None:
    if node is None:
        return None
    typed = take_text(node, found, "a name")
    return spelled(typed, node, names, found, code, message, near_only=near_only)


def spelled(
    typed: str | None,
    node: Node | None,
    names: Names,
    found: Found,
    code: str,
    message: str,
    *,
    near_only: bool = False,
) -> str | None:
    """Return a name as the fleet spells it, or as typed where it is none of the fleet's; then warn if there is cause.

    Args:
        typed: The name; None gives None.
        node: Where it stands.
        names: The fleet's own.
        found: Problems so far.
        code: Of the warning.
        message: Of the warning, without the name.
        near_only: True where a name that is near none of the fleet's is no cause.
    """
    if typed is None or node is None:
        return None
    name = names.find(typed)
    if name is not None:
        return name
    near = nearest(typed, names.all, fold_name) if len(found) < MANY else []
    if names.all and (near or not near_only):
        hint = f"did you mean {named_list(near)}?" if near else f"the fleet file has {named_list(names.all)}"
        warn(found, node.place, code, f"{message} '{typed}'", hint)
    return typed
