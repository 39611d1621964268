"""The events of the YAML parser to a tree of texts with places.

Texts only: no type is guessed, no tag, anchor or alias is followed, nothing recurses. What YAML takes in silence and
nobody meant (a key without its value, a text cut short by a comment) is reported here; what looks as if YAML had taken
it for something else makes the tree doubtful, and the log is then gone through line by line.
"""

import gc
import re
from collections.abc import Callable
from typing import Any

import yaml
from yaml import MappingEndEvent, MappingStartEvent, ScalarEvent, SequenceEndEvent, SequenceStartEvent

from logbook.read import explain
from logbook.read.explain import MAX_DEPTH, Why
from logbook.read.node import Lost, Mapping, Node, Scalar, Sequence
from logbook.read.report import Report
from logbook.read.silent import Silent

MAX_EVENTS = 200_000

MAX_ENTRIES = 2_000
"""Of one mapping or list: ten times the tows of the longest trips. Some of what is done with them takes the square of their number."""

CODES = frozenset({"too-much"})

LOADER: Callable[[str], Any] = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
"""libyaml's parser where there is one: the same events as the one in Python, fifteen times as fast."""

_COMMENT = re.compile(r" *#")


class Refused(Exception):  # noqa: N818 - no error of ours: it hands on where reading stopped
    """Something that a log may not hold.

    Attributes:
        line: Line it stands on, from 1.
        column: Column it stands at, from 1.
        why: What it is.
    """

    def __init__(self, event: Any, why: Why) -> None:  # noqa: ANN401 - events of PyYAML have no common type
        """Keep where and why."""
        super().__init__(why.message)
        self.line: int = event.start_mark.line + 1
        self.column: int = event.start_mark.column + 1
        self.why = why


class TooMuch(Refused):
    """More than a log can hold, where there is no sense in reading on."""


_TOO_MUCH = Why("too-much", "this file holds more than a log can, so none of it is read", "keep one trip a file")


HIDDEN = "\ue03f"
"""Stands for a question mark that YAML must not see; of the letters that are nobody's."""


class Swaps:
    """Stand-ins that were put into the text for what could not be read, by line and column from 1.

    Attributes:
        lost: Values and items that are lost.
        keyless: Keys of lines that show no key.
        texts: Texts that YAML would take for a sign of its own.
        moved: By line, how much further right its text stands than it was typed.
        hidden: True where question marks are hidden.
    """

    __slots__ = ("hidden", "keyless", "lost", "moved", "texts")

    def __init__(self) -> None:
        """Begin with none."""
        self.lost: dict[tuple[int, int], Lost] = {}
        self.keyless: dict[tuple[int, int], Lost] = {}
        self.texts: dict[tuple[int, int], str] = {}
        self.moved: dict[int, int] = {}
        self.hidden = False

    def __bool__(self) -> bool:
        """Tell whether there is any."""
        return bool(self.lost or self.keyless or self.texts or self.moved or self.hidden)


class Grower:
    """Makes one tree of one text."""

    def __init__(self, text: str, report: Report, text_keys: frozenset[str], swaps: Swaps | None = None) -> None:
        """Keep the text and what is to be told from it.

        Args:
            text: A log's text, lines ended by line feeds, without tabs.
            report: Takes what is wrong.
            text_keys: Folded keys whose values are free text or names.
            swaps: What stand-ins in the text stand for.
        """
        self.file = report.file
        self.silent = Silent(text, report, text_keys)
        self._text = text
        self._swaps = swaps or Swaps()
        self._swapped = bool(swaps)
        self._lines = text.split("\n") if "#" in text else []
        self._marked = "!" in text or "&" in text
        self._items: list[Any] = []
        self._stack: list[tuple[Any, list[Any]]] = []
        self._documents = 0

    @property
    def doubtful(self) -> bool:
        """Tell whether YAML may have taken something for what nobody meant."""
        return self.silent.doubtful

    def grow(self) -> Node | None:
        """Return the root, or None where the text holds nothing.

        Raises:
            yaml.YAMLError: The text is no YAML.
            Refused: The text holds what no log may hold; `TooMuch` where it is too much of anything.
        """
        loader = LOADER(self._text)
        collects = gc.isenabled()
        gc.disable()  # thousands of small objects that all stay alive: the collector would look at them in vain
        try:
            return self._root(loader.get_event)
        finally:
            if collects:
                gc.enable()
            loader.dispose()

    def _root(self, get: Callable[[], Any]) -> Node | None:
        top = items = self._items
        append = items.append
        file, swapped, marked, lines = self.file, self._swapped, self._marked, self._lines
        hashed = bool(lines)
        for _ in range(MAX_EVENTS):
            event: Any = get()
            kind = event.__class__
            if kind is not ScalarEvent:
                if event is None:
                    return top[0] if top else None
                items = self._structure(event)
                append = items.append
                continue
            if marked:
                _refuse_marked(event)
            start, end, style = event.start_mark, event.end_mark, event.style or ""
            node = Scalar(file, start.line + 1, start.column + 1, end.line + 1, event.value, style)
            if hashed and end.line < len(lines) and "#" in lines[end.line]:
                self._commented(node, end)
            if swapped:
                append(self._stood_for(node, end))
                continue
            if style:
                self._styled(node, end)
            append(node)
        raise TooMuch(event, _TOO_MUCH)

    def _structure(self, event: Any) -> list[Any]:  # noqa: ANN401 - events of PyYAML have no common type
        """Take an event that is no text; return the list that further nodes go into."""
        kind = event.__class__
        if kind is MappingStartEvent or kind is SequenceStartEvent:
            if self._marked:
                _refuse_marked(event)
            self._stack.append((event, self._items))
            self._items = []
            if len(self._stack) > MAX_DEPTH:
                raise Refused(event, explain.too_deep())
        elif kind is MappingEndEvent or kind is SequenceEndEvent:
            start, outer = self._stack.pop()
            mark = event.end_mark
            last = mark.line + 1 if mark.column > event.start_mark.column else 0
            flow = bool(start.flow_style)
            make = self._mapping if kind is MappingEndEvent else self._sequence
            node: Mapping | Sequence = make(start.start_mark, last, flow=flow)
            if flow:
                self._closed(node, mark)
            outer.append(node)
            self._items = outer
        elif kind is yaml.AliasEvent:
            raise Refused(event, explain.text_start("", "*"))
        else:
            self._document(event)
        return self._items

    def _document(self, event: Any) -> None:  # noqa: ANN401 - events of PyYAML have no common type
        if event.__class__ is yaml.DocumentStartEvent:
            self._documents += 1
            if self._documents > 1:
                raise Refused(event, explain.second_document(other=True))
        elif event.__class__ is yaml.DocumentEndEvent and event.explicit:
            self.silent.doubtful = True

    def _styled(self, node: Scalar, end: Any) -> None:  # noqa: ANN401 - marks of PyYAML have no common type
        if node.style == '"':
            self.silent.escapes(node)
        elif node.style in ("|", ">"):
            self.silent.block(node)
            if end.column == 0:
                node.end_line = max(node.line, node.end_line - 1)

    def _commented(self, node: Scalar, end: Any) -> None:  # noqa: ANN401 - marks of PyYAML have no common type
        found = _COMMENT.match(self._lines[end.line], end.column)
        if found is not None and node.style not in ("|", ">"):
            node.comment = found.end()
            self.silent.doubtful = self.silent.doubtful or node.comment == end.column + 1  # text right behind a quote

    def _stood_for(self, node: Scalar, end: Any) -> Node:  # noqa: ANN401 - marks of PyYAML have no common type
        """Return what a text stands for, where that was typed."""
        at = (node.line, node.column)
        lost = self._swaps.lost.get(at)
        if lost is not None:
            return lost
        node.value = self._swaps.texts.get(at, node.value)
        if self._swaps.hidden:
            node.value = node.value.replace(HIDDEN, "?")
        if at not in self._swaps.keyless:
            node.column = self._typed(*at)
            node.comment = node.comment and self._typed(end.line + 1, node.comment)
        if node.style:
            self._styled(node, end)
        return node

    def _typed(self, line: int, column: int) -> int:
        return max(1, column - self._swaps.moved.get(line, 0))

    def _mapping(self, mark: Any, last: int, *, flow: bool) -> Mapping:  # noqa: ANN401 - marks of PyYAML have no common type
        items = iter(self._items)
        entries = tuple(zip(items, items, strict=True))
        lost: tuple[Lost, ...] = ()
        line = mark.line + 1
        column = self._typed(line, mark.column + 1)
        last = max(last, entries[-1][1].end_line if entries else line)
        if len(entries) > MAX_ENTRIES or not _all_usual(entries):
            entries, lost = self._one_by_one(entries, flow=flow)
        return Mapping(self.file, line, column, last, entries, lost, flow)

    def _one_by_one(
        self, typed: tuple[tuple[Any, Any], ...], *, flow: bool
    ) -> tuple[tuple[tuple[Scalar, Node], ...], tuple[Lost, ...]]:
        """Return the entries of a mapping that has unusual ones, and what is lost of it."""
        entries: list[tuple[Scalar, Node]] = []
        lost: list[Lost] = []
        keyless = self._swaps.keyless
        for key, value in typed:
            if len(entries) >= MAX_ENTRIES:
                self._too_many(key)
                break
            if _all_usual(((key, value),)):
                entries.append((key, value))
            elif (key.line, key.column) in keyless:
                lost.append(keyless[key.line, key.column])
            else:
                self.silent.take(key, value, entries, lost, flow=flow)
        return tuple(entries), tuple(lost)

    def _sequence(self, mark: Any, last: int, *, flow: bool) -> Sequence:  # noqa: ANN401 - marks of PyYAML have no common type
        items = self._items
        if len(items) > MAX_ENTRIES:
            self._too_many(items[MAX_ENTRIES])
            del items[MAX_ENTRIES:]
        for item in items:
            if item.__class__ is Scalar and item.end_line != item.line:
                self.silent.item(item, mark.column, flow=flow)
        line = mark.line + 1
        column = self._typed(line, mark.column + 1)
        last = max(last, items[-1].end_line if items else line)
        return Sequence(self.file, line, column, last, tuple(items), flow=flow)

    def _too_many(self, node: Node) -> None:
        """Report the first entry of a mapping or list that is not read, as there are more than anyone types."""
        message = f"there are more than {MAX_ENTRIES} entries here; from this one on they are not read"
        self.silent.error(node, Why("too-much", message, "keep one trip a file"))

    def _closed(self, node: Mapping | Sequence, end: Any) -> None:  # noqa: ANN401 - marks of PyYAML have no common type
        """Look at brackets once the outermost closes: lines that they go on over, and what stands right behind."""
        above = self._stack[-1][0] if self._stack else None
        if above is not None and above.flow_style:
            return
        if node.end_line != node.line:
            self.silent.brackets(node, above.start_mark.column if above is not None else -1)
        if self._lines and self._lines[end.line][end.column : end.column + 1] == "#":
            self.silent.doubtful = True


def _all_usual(entries: tuple[tuple[Any, Any], ...]) -> bool:
    """Tell whether entries need no look, as nearly all: a key that begins with a letter, behind it a mapping or a text on its line."""
    for key, value in entries:
        if value.__class__ is Scalar:
            if value.end_line != key.line or not value.value or value.comment:
                return False
        elif value.__class__ is not Mapping:
            return False
        if key.__class__ is not Scalar or not key.value[:1].isalpha():
            return False
    return True


def _refuse_marked(event: Any) -> None:  # noqa: ANN401 - events of PyYAML have no common type
    """Refuse a tag or an anchor: no log needs one, and a text that begins with its sign would lose a word."""
    if event.tag is not None or event.anchor is not None:
        raise Refused(event, explain.text_start("", "&" if event.tag is None else "!"))
