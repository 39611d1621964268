"""Mappings opened by their keys, and single values taken from nodes: every fault gets its place here."""

from collections.abc import Callable, Iterable
from operator import itemgetter
from typing import TypeVar

from logbook.model.problem import Place, Problem, Severity
from logbook.read.keys import TEXT_KINDS, TRIP, Key, Keys, fold_key
from logbook.read.number import is_blank, quoted
from logbook.read.report import on_a_line
from logbook.read.said import Fault, Said
from logbook.read.tree import Lost, Mapping, Node, Scalar, Sequence

T = TypeVar("T")

MANY = 300
"""Problems of one file, after which no nearest word is looked for any more: it takes long, and nobody reads so far."""

_ENDINGS = ",;."

Found = list[Problem]
"""The problems of one file so far; takers add to it."""

CODES = frozenset(
    {
        "key-unknown",
        "key-capitals",
        "key-slip",
        "line-left-out",
        "key-twice",
        "key-missing",
        "one-value",
        "sign-at-end",
        "list-wanted",
        "mapping-wanted",
        "item-empty",
        "word-unknown",
    }
)


def report(found: Found, place: Place, severity: Severity, code: str, message: str, hint: str = "") -> None:
    """Add a problem."""
    message, hint = on_a_line(message), on_a_line(hint)
    found.append(Problem(place=place, severity=severity, code=code, message=message, hint=hint))


def error(found: Found, place: Place, code: str, message: str, hint: str = "") -> None:
    """Add a problem that makes something useless."""
    report(found, place, Severity.ERROR, code, message, hint)


def warn(found: Found, place: Place, code: str, message: str, hint: str = "") -> None:
    """Add a problem of something that is used but wants a look."""
    report(found, place, Severity.WARNING, code, message, hint)


def note(found: Found, place: Place, code: str, message: str, hint: str = "") -> None:
    """Add a problem that was put right without loss."""
    report(found, place, Severity.NOTE, code, message, hint)


def pass_on(found: Found, faults: Iterable[Fault], node: Node, index: int = 0) -> None:
    """Add the faults of a value that begins at an index of a node's text."""
    for fault in faults:
        report(found, place_in(node, index + fault.offset), fault.severity, fault.code, fault.message, fault.hint)


def place_in(node: Node, index: int) -> Place:
    """Return where a sign of a value's text stands; where its line begins, if it is not certain where in it."""
    place = text_place(node)
    if node.end_line == node.line:
        return Place(file=place.file, line=place.line, column=place.column + index)
    from bisect import bisect_right

    folds = node.folds if isinstance(node, Scalar) else ()
    begun = bisect_right(folds, index, key=itemgetter(0))
    if begun:
        first, line, column = folds[begun - 1]
        return Place(file=place.file, line=line, column=column + index - first)
    return Place(file=place.file, line=place.line, column=place.column + (index if folds else 0))


def text_place(node: Node) -> Place:
    """Return where a value's text begins: past the quote where it has one."""
    quoted = isinstance(node, Scalar) and node.style in ("'", '"')
    return Place(file=node.file, line=node.line, column=node.column + (1 if quoted else 0))


def named_list(names: Iterable[str]) -> str:
    """Return names as a person lists them: `a, b or c`."""
    words = list(names)
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}"


def nearest(typed: str, words: Iterable[str], fold: Callable[[str], str] = fold_key) -> list[str]:
    """Return up to three of the words that come nearest to what was typed, best first."""
    import difflib

    by_fold = {fold(word): word for word in words}
    return [by_fold[near] for near in difflib.get_close_matches(fold(typed), list(by_fold), n=3, cutoff=0.7)]


def did_you_mean(typed: str, words: Iterable[str], found: Found) -> str:
    """Return a hint with the nearest words; empty where none is near."""
    near = nearest(typed, words) if len(found) < MANY else []
    return f"did you mean {named_list(near)}?" if near else ""


class Fields:
    """A mapping opened by its keys.

    Attributes:
        node: The mapping.
        nodes: Value of each key that is there, by the key's documented name; blanks are left out.
        keys: Each key as typed, by its documented name; those whose values are blank with them.
        get: Gives the value of a key by its name, or None where it is not there or blank.
    """

    __slots__ = ("get", "keys", "node", "nodes")

    def __init__(self, node: Mapping, nodes: dict[str, Node], keys: dict[str, Scalar]) -> None:
        """Keep the mapping and what was found in it."""
        self.node = node
        self.nodes = nodes
        self.keys = keys
        self.get: Callable[[str], Node | None] = nodes.get  # asked thirty times a tow

    def __contains__(self, name: str) -> bool:
        """Tell whether a key has a value."""
        return name in self.nodes

    @property
    def place(self) -> Place:
        """Return where the mapping begins."""
        return self.node.place


def open_mapping(node: Mapping, keys: Keys, found: Found, elsewhere: Callable[[str], str] | None = None) -> Fields:
    """Open a mapping by its keys and report every key that is unknown, doubled or missing.

    Args:
        node: The mapping.
        keys: The keys it may hold.
        found: Problems so far.
        elsewhere: Says what to do with an unknown key that makes sense somewhere else; empty where it doesn't.

    Returns:
        Its values by documented key name.
    """
    nodes: dict[str, Node] = {}
    first: dict[str, Scalar] = {}
    as_folded = keys.by_fold.get
    for key_node, value in node.entries:
        key = as_folded(key_node.value) or _key_of(key_node, keys, found, elsewhere)
        if key is None:
            continue
        if key.name in first:
            error(
                found,
                key_node.place,
                "key-twice",
                f"'{key_node.value}' stands twice in {keys.what}, first on line {first[key.name].line}; this one is not used",
                "keep one of them, or begin the next one with a dash"
                if key.required and keys is not TRIP
                else "keep one of them",
            )
            continue
        first[key.name] = key_node
        if not (isinstance(value, Scalar) and is_blank(value.value) and _says_nothing(value, key)):
            nodes[key.name] = value
    for key in keys.required:
        if key.name not in nodes:
            error(
                found, node.place, "key-missing", f"{keys.what} has no '{key.name}'", f"add `{key.name}: {key.example}`"
            )
    return Fields(node, nodes, first)


def _key_of(key_node: Scalar, keys: Keys, found: Found, elsewhere: Callable[[str], str] | None) -> Key | None:
    """Return the key a scalar stands for, read past one slip; None, with an error, where it is unknown."""
    typed = key_node.value
    key = keys.find(typed)
    if key is not None:
        if not typed.islower() and typed != key.name:
            _note_capitals(key_node, key, found)
        return key
    moved = elsewhere(typed) if elsewhere else ""
    key = None if moved else keys.slip(typed)
    if key is not None:
        warn(found, key_node.place, "key-slip", f"'{typed}' is read as '{key.name}'", f"write {key.name}")
        return key
    hint = (
        moved
        or did_you_mean(typed, keys.words(), found)
        or f"{keys.what} may have: {', '.join(k.name for k in keys.keys)}"
    )
    error(found, key_node.place, "key-unknown", f"unknown key '{typed}' in {keys.what}", hint)
    return None


def _note_capitals(key_node: Scalar, key: Key, found: Found) -> None:
    """Note a key typed with capitals, once a file."""
    typed = key_node.value
    if typed.lower() != typed and not any(problem.code == "key-capitals" for problem in found):
        message = f"'{typed}' is read as '{typed.lower()}', and so is every key with capitals"
        note(found, key_node.place, "key-capitals", message, f"write {key.name}")


def _says_nothing(blank: Scalar, key: Key) -> bool:
    """Tell whether a blank is as if it were not written; in quotes where a name or text is wanted it is one, whatever it is."""
    return not (blank.style and blank.value.strip() and key.kind in TEXT_KINDS)


def take_text(node: Node | None, found: Found, wanted: str = "one value") -> str | None:
    """Return a scalar's text without the spaces round it; None where it is missing, blank, lost or no single value."""
    if isinstance(node, Scalar):
        typed = node.value.strip()
        return None if is_blank(typed) and not (node.style and typed) else typed
    if node is None or isinstance(node, Lost):
        return None
    what = "a list stands" if isinstance(node, Sequence) else "keys and values stand"
    error(found, node.place, "one-value", f"{what} where {wanted} is wanted", f"write {wanted}")
    return None


def take(node: Node | None, parse: Callable[[str], Said[T]], found: Found, wanted: str = "one value") -> T | None:
    """Return a value read from a scalar by its parser; None, with the reason reported, where it can't be read."""
    if node is None:
        return None  # two of three keys of a tow
    said = parse(node.value.strip()) if isinstance(node, Scalar) else None
    if said is None or said.value is None:  # seldom; a blank is no value of any kind
        text = take_text(node, found, wanted)
        if text is None:
            return None
        said = parsed(node, text, parse, found)
    if said.faults:
        pass_on(found, said.faults, node)
    return said.value


def parsed(node: Node, text: str, parse: Callable[[str], Said[T]], found: Found) -> Said[T]:
    """Return what a parser makes of a text, or of what is left of one that has something behind it which it should not.

    That is a comma or full stop at its end, as in lists and sentences, or words on further lines; either is told.
    """
    said = parse(text)
    if said.value is not None:
        return said
    if text[-1] in _ENDINGS:
        bare = text.rstrip(_ENDINGS)
        less = parse(bare) if bare else said
        if less.value is not None:
            message = f"the '{text[len(bare) :]}' behind {quoted(bare)} is left out"
            note(found, text_place(node), "sign-at-end", message, "take it out")
            return less
    if isinstance(node, Scalar) and node.folds:
        head = text[: node.folds[0][0]].strip()
        rest = text[node.folds[0][0] :]
        first = parse(head) if not any(sign in "0123456789" for sign in rest) else said
        if first.value is not None:
            message = f"only the first of its lines is read, {quoted(head)}"
            warn(found, text_place(node), "line-left-out", message, "put the rest behind a # or below `remarks: |`")
            return first
    return said


def take_words(node: Node | None, found: Found) -> str | None:
    """Return free text; items of a list are joined by commas, so that words typed with commas in brackets are kept."""
    if node is None:
        return None
    if isinstance(node, Sequence):
        words = [text for item in node.items if (text := take_text(item, found)) is not None]
        return ", ".join(words) or None
    return take_text(node, found, "plain text")


def take_remarks(node: Node | None, found: Found) -> str:
    """Return Markdown as typed, without the blank lines round it; empty where there is none."""
    return (take_words(node, found) or "").strip()


def take_choice(node: Node | None, choices: tuple[str, ...], found: Found) -> str | None:
    """Return one word out of a closed list, whatever its case; None with a hint where it is none of them."""
    if node is None:
        return None
    text = take_text(node, found)
    if text is None:
        return None
    folded = fold_key(text)
    for choice in choices:
        if fold_key(choice) == folded:
            return choice
    hint = did_you_mean(text, choices, found) or f"write {named_list(choices)}"
    error(found, node.place, "word-unknown", f"'{text}' is none of {', '.join(choices)}", hint)
    return None


def items_of(node: Node | None, found: Found, wanted: str) -> tuple[Node, ...]:
    """Return the items of a list; an empty item is reported and left out, a single mapping counts as a list of one."""
    if node is None or isinstance(node, Lost):
        return ()
    if isinstance(node, Mapping):
        return (node,)
    if isinstance(node, Scalar):
        if not is_blank(node.value):
            error(
                found,
                node.place,
                "list-wanted",
                f"text stands where a list of {wanted} is wanted",
                "begin each item with a dash and a space",
            )
        return ()
    kept: list[Node] = []
    for item in node.items if isinstance(node, Sequence) else ():
        if isinstance(item, Scalar) and is_blank(item.value):
            warn(found, item.place, "item-empty", f"an empty item among {wanted} is left out", "remove the lone dash")
        else:
            kept.append(item)
    return tuple(kept)


def mappings_of(node: Node | None, found: Found, wanted: str) -> tuple[Mapping, ...]:
    """Return the items of a list that are mappings; others are reported."""
    kept: list[Mapping] = []
    for item in items_of(node, found, wanted):
        if isinstance(item, Mapping):
            kept.append(item)
        elif not isinstance(item, Lost):
            error(
                found,
                item.place,
                "mapping-wanted",
                f"this item of {wanted} has no keys",
                "write `key: value`, or {key: value, key: value}",
            )
    return tuple(kept)


def pairs_of(node: Node | None, found: Found, wanted: str) -> tuple[tuple[Scalar, Node], ...]:
    """Return the entries of a mapping with free names; anything else is reported. A name typed twice is an error."""
    if node is None or isinstance(node, Lost):
        return ()
    if not isinstance(node, Mapping):
        if not (isinstance(node, Scalar) and is_blank(node.value)):
            error(
                found,
                node.place,
                "mapping-wanted",
                f"{wanted} wants names and values",
                "write {name: value, name: value}",
            )
        return ()
    return node.entries


def texts_of(node: Node | None, found: Found, wanted: str) -> tuple[Scalar, ...]:
    """Return the texts of a list, or the one text that stands in its place."""
    if isinstance(node, Scalar):
        return () if is_blank(node.value) else (node,)
    kept: list[Scalar] = []
    for item in items_of(node, found, wanted):
        if isinstance(item, Scalar):
            kept.append(item)
        elif not isinstance(item, Lost):
            error(found, item.place, "one-value", f"an item of {wanted} is not a single value", "write one value")
    return tuple(kept)
