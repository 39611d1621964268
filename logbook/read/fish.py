"""Fish by species and grade: catches, stowage, out-turn and prices, as mappings of names to values."""

from functools import partial

from msgspec import Struct

from logbook.model.problem import Place
from logbook.model.trip import Amount, CatchKept, Lot, OutTurn
from logbook.read.amount import Amounted
from logbook.read.fields import Found, error, pairs_of, take, take_text
from logbook.read.keys import fold_key
from logbook.read.known import Called, Known
from logbook.read.number import is_blank, is_nothing
from logbook.read.tree import Lost, Mapping, Node, Scalar, Sequence

CODES = frozenset({"species-twice", "catch-unreadable"})

WITH_NEXT = "with next"


class Fish(Struct, frozen=True, kw_only=True):
    """A catch as read.

    Attributes:
        kept: How much of it the log tells.
        amounts: One per species and grade.
        gaps: Places of entries that could not be read.
    """

    kept: CatchKept
    amounts: tuple[Amount, ...] = ()
    gaps: tuple[Place, ...] = ()


NOT_WRITTEN = Fish(kept=CatchKept.UNKNOWN)


class _Entry(Struct, frozen=True, kw_only=True):
    """A species and grade with the node of its value."""

    called: Called
    grade: str | None
    key: Scalar
    value: Node


def take_catch(node: Node | None, known: Known, found: Found, *, may_be_next: bool = False) -> Fish:
    """Return the fish of a mapping of species to amounts, or of the words for none.

    `none`, `nil`, `0` and an empty mapping are a catch of nothing; an empty value is a catch not known.
    """
    if node is None:
        return NOT_WRITTEN
    if isinstance(node, Lost):
        return Fish(kept=CatchKept.UNREADABLE, gaps=(node.place,))
    if isinstance(node, Scalar):
        return _worded(node, found, may_be_next=may_be_next)
    if isinstance(node, Sequence):
        error(
            found,
            node.place,
            "catch-unreadable",
            "a list stands where a catch is wanted",
            "write {cod: 14 baskets, haddock: 280 kg}",
        )
        return Fish(kept=CatchKept.UNREADABLE, gaps=(node.place,))
    amounts: list[Amount] = []
    gaps = [lost.place for lost in node.lost] if isinstance(node, Mapping) and node.lost else []
    for entry in _entries(node, known, found, gaps):
        amount = _amount(entry, known, found)
        if amount is None:
            gaps.append(entry.value.place)
        else:
            amounts.append(amount)
    if not amounts:
        return Fish(kept=CatchKept.UNREADABLE, gaps=tuple(gaps)) if gaps else Fish(kept=CatchKept.NOTHING)
    return Fish(kept=CatchKept.KNOWN, amounts=tuple(amounts), gaps=tuple(gaps))


def _worded(node: Scalar, found: Found, *, may_be_next: bool) -> Fish:
    if is_blank(node.value):
        return NOT_WRITTEN
    if is_nothing(node.value):
        return Fish(kept=CatchKept.NOTHING)
    if may_be_next and fold_key(node.value) == WITH_NEXT:
        return Fish(kept=CatchKept.NEXT)
    error(
        found,
        node.place,
        "catch-unreadable",
        f"'{node.value.strip()}' is no catch",
        "write the species below it, as `cod: 14 baskets`; or none; or with next",
    )
    return Fish(kept=CatchKept.UNREADABLE, gaps=(node.place,))


def _entries(node: Node | None, known: Known, found: Found, gaps: list[Place]) -> list[_Entry]:
    """Return species and grades with their value nodes; a species and grade typed twice is an error and a gap."""
    entries: list[_Entry] = []
    first: dict[tuple[str, str | None], Scalar] = {}

    def add(called: Called, grade: str | None, key: Scalar, value: Node) -> None:
        name = (fold_key(called.name), fold_key(grade) if grade else None)
        same = first.setdefault(name, key)
        if same is key:
            entries.append(_Entry(called=called, grade=grade, key=key, value=value))
            return
        what = f"{grade} {called.name}" if grade else called.name
        error(
            found,
            key.place,
            "species-twice",
            f"{what} stands twice, first on line {same.line}; this one is not used",
            "add them up, or give them grades",
        )
        gaps.append(key.place)

    for key, value in pairs_of(node, found, "fish"):
        if isinstance(value, Scalar) and is_blank(value.value):
            continue  # as if the key were not there
        called = known.call(key, found)
        if isinstance(value, Mapping):
            for grade_key, grade_value in value.entries:
                if isinstance(grade_value, Scalar) and is_blank(grade_value.value):
                    continue
                add(called, known.grade(called, grade_key, found), grade_key, grade_value)
        else:
            add(called, called.grade, key, value)
    return entries


def _amount(entry: _Entry, known: Known, found: Found) -> Amount | None:
    """Return one amount; None where its value could not be read or is blank."""
    species = entry.called.name
    amounted = take(entry.value, lambda text: known.terms.amount(text, species), found, "an amount")
    if amounted is None:
        return None
    return as_amount(entry.called, entry.grade, amounted, entry.key.place)


def as_amount(called: Called, grade: str | None, amounted: Amounted, place: Place) -> Amount:
    """Return the record of an amount of a species; its state as typed, else the species' usual one."""
    usual = called.known.usual_state if called.known else None
    return Amount(
        species=called.name,
        known=called.known,
        grade=grade,
        weight=amounted.weight,
        count=amounted.count,
        state=amounted.state or usual,
        state_typed=amounted.state is not None,
        place=place,
    )


def take_out_turn(node: Node | None, known: Known, found: Found) -> tuple[OutTurn, ...]:
    """Return what the scale said; an entry that can't be read is kept without a weight."""
    if isinstance(node, Lost):
        return ()
    gaps: list[Place] = []
    weighed: list[OutTurn] = []
    for entry in _entries(node, known, found, gaps):
        species = entry.called.name
        weighed.append(
            OutTurn(
                species=species,
                known=entry.called.known,
                grade=entry.grade,
                weight=take(entry.value, partial(known.terms.weight, species=species), found, "a weight"),
                place=entry.key.place,
            )
        )
    return tuple(weighed)


def take_prices(node: Node | None, known: Known, found: Found) -> tuple[Lot, ...]:
    """Return prices by species and grade: one price, or a list of lots with a weight and a price each."""
    if isinstance(node, Lost):
        return ()
    gaps: list[Place] = []
    lots: list[Lot] = []
    for entry in _entries(node, known, found, gaps):
        texts = entry.value.items if isinstance(entry.value, Sequence) else (entry.value,)
        for text in texts:
            lot = _lot(entry, text, known, found, in_lots=isinstance(entry.value, Sequence))
            if lot is not None:
                lots.append(lot)
    return tuple(lots)


def _lot(entry: _Entry, node: Node, known: Known, found: Found, *, in_lots: bool) -> Lot | None:
    """Return one price or lot; a single value may be either."""
    text = take_text(node, found, "a price")
    if text is None:
        return None
    species = entry.called.name
    weight = None
    if in_lots or _is_lot(text, known.terms.currency or ""):
        lot = take(node, lambda typed: known.terms.lot(typed, species), found)
        if lot is None:
            return None
        weight, price = lot
    else:
        single = take(node, lambda typed: known.terms.price(typed, species), found)
        if single is None:
            return None
        price = single
    return Lot(species=species, grade=entry.grade, weight=weight, price=price, place=entry.key.place)


def _is_lot(text: str, currency: str) -> bool:
    """Tell whether a price stands after a weight: there is more than one figure before the stroke."""
    return sum(word[0].isdigit() for word in text.split("/", maxsplit=1)[0].replace(currency, " ").split()) > 1
