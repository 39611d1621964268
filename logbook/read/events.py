"""The events of the YAML parser to a tree of texts with places.

Texts only: no type is guessed, no tag, anchor or alias is followed, nothing recurses. What YAML takes in silence and
nobody meant (a key without its value, a text cut off by a comment) is reported here.
"""

import gc
import re
from collections.abc import Callable
from typing import Any

import yaml

from logbook.read.keys import fold_key
from logbook.read.node import Lost, Mapping, Node, Scalar, Sequence
from logbook.read.report import Report

MAX_DEPTH = 20
MAX_EVENTS = 200_000

CODES = frozenset(
    {
        "alias",
        "comment-cuts-text",
        "escape-control",
        "key-no-value",
        "key-not-text",
        "merge-key",
        "tag",
        "too-deep",
        "too-much",
        "value-over-lines",
    }
)

LOADER: Callable[[str], Any] = getattr(yaml, "CBaseLoader", yaml.BaseLoader)


class Refused(Exception):  # noqa: N818 - no error of ours: it hands on where reading stopped
    """Something that a log may not hold."""

    def __init__(self, line: int, column: int, code: str, message: str, hint: str = "") -> None:
        """Keep where and why."""
        super().__init__(message)
        self.line = line
        self.column = column
        self.code = code
        self.message = message
        self.hint = hint


_CONTROL = re.compile("[\x00-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
_COMMENT = re.compile(r"[ \t]*#")
_REMARKS = frozenset({"remark", "remarks"})


class Swaps:
    """Stand-ins that were put into the text for what could not be read, by the place where they begin.

    Attributes:
        lost: Values and items that are lost.
        keyless: Keys of lines that show no key.
        texts: Texts that YAML would take for a sign of its own.
    """

    __slots__ = ("keyless", "lost", "texts")

    def __init__(self) -> None:
        """Begin with none."""
        self.lost: dict[tuple[int, int], Lost] = {}
        self.keyless: set[tuple[int, int]] = set()
        self.texts: dict[tuple[int, int], str] = {}


class Grower:
    """Makes one tree."""

    def __init__(self, text: str, report: Report, text_keys: frozenset[str], swaps: Swaps | None = None) -> None:
        """Keep the text and what is to be told from it.

        Args:
            text: A log's text, lines ended by line feeds.
            report: Takes what is wrong.
            text_keys: Folded keys whose values are free text or names.
            swaps: What stand-ins in the text stand for.
        """
        self.text = text
        self.file = report.file
        self.report = report
        self.text_keys = text_keys
        self.swaps = swaps or Swaps()
        self.doubtful = False
        self._lines = text.split("\n") if "#" in text else []

    def grow(self) -> Node | None:
        """Return the root, or None where the text holds nothing.

        Raises:
            yaml.YAMLError: The text is no YAML.
            Refused: The text holds what no log may hold.
        """
        loader = LOADER(self.text)
        collects = gc.isenabled()
        gc.disable()  # thousands of small objects that all stay alive: the collector would only look at them
        try:
            return self._root(loader.get_event)
        except RecursionError:
            raise Refused(1, 1, "too-deep", "this is nested too deeply") from None
        finally:
            if collects:
                gc.enable()
            loader.dispose()

    def _root(self, get: Callable[[], Any]) -> Node | None:
        top: list[Node] = []
        items = top
        stack: list[tuple[Any, list[Node]]] = []
        events = documents = 0
        while (event := get()) is not None:
            kind = event.__class__
            if kind is yaml.ScalarEvent:
                if event.tag is not None or event.anchor is not None:
                    raise _marked(event)
                items.append(self._scalar(event))
            elif kind is yaml.MappingStartEvent or kind is yaml.SequenceStartEvent:
                if event.tag is not None or event.anchor is not None:
                    raise _marked(event)
                stack.append((event, items))
                items = []
                if len(stack) > MAX_DEPTH:
                    raise _refused(event, "too-deep", f"this is nested more than {MAX_DEPTH} levels deep")
            elif kind is yaml.MappingEndEvent:
                start, outer = stack.pop()
                outer.append(self._mapping(start, event, items))
                items = outer
            elif kind is yaml.SequenceEndEvent:
                start, outer = stack.pop()
                outer.append(self._sequence(start, event, items))
                items = outer
            elif kind is yaml.DocumentEndEvent:
                self.doubtful = self.doubtful or bool(event.explicit)
            elif kind is yaml.AliasEvent:
                raise _refused(event, "alias", "text may not begin with '*' here", "put it in quotes")
            elif kind is yaml.DocumentStartEvent:
                documents += 1
                if documents > 1:
                    raise _refused(event, "second-document", "a second log begins here", "keep one trip a file")
            events += 1
            if events > MAX_EVENTS:
                raise _refused(event, "too-much", "this file holds more than a log can", "split it, one trip a file")
        return top[0] if top else None

    def _scalar(self, event: Any) -> Node:
        mark = event.start_mark
        line = mark.line + 1
        column = mark.column + 1
        at = (line, column)
        if at in self.swaps.lost:
            return self.swaps.lost[at]
        mark = event.end_mark
        end = mark.line + 1
        value = event.value
        style = event.style or ""
        comment = 0
        if style in "|>" and style:
            if mark.column == 0 and end > line:
                end -= 1
        elif self._lines and "#" in self._lines[end - 1]:
            found = _COMMENT.match(self._lines[end - 1], mark.column)
            comment = found.end() if found else 0
        if at in self.swaps.texts:
            value = self.swaps.texts[at]
        node = Scalar(self.file, line, column, end, value, style, comment)
        if style == '"' and _CONTROL.search(value):
            self._escaped(node)
        return node

    def _escaped(self, node: Scalar) -> None:
        found = _CONTROL.search(node.value)
        if found is None:
            return
        if set(_CONTROL.findall(node.value)) <= {"\n"} and node.end_line > node.line:
            return
        message = (
            "a backslash in double quotes made a control character of the letters behind it; it is read as a space"
        )
        self.report.warn(node.line, node.column, "escape-control", message, "use single quotes")
        node.value = _CONTROL.sub(" ", node.value)

    def _mapping(self, start: Any, end: Any, items: list[Node]) -> Mapping:
        flow = bool(start.flow_style)
        entries: list[tuple[Scalar, Node]] = []
        lost: list[Lost] = []
        for key, value in zip(items[::2], items[1::2], strict=True):
            if key.__class__ is not Scalar or not isinstance(key, Scalar):
                if not isinstance(key, Lost):
                    message = "a list or a mapping stands where a key is wanted"
                    self.report.error(key.line, key.column, "key-not-text", message, "write `key: value`")
                lost.append(Lost(self.file, key.line, key.column, value.end_line))
                continue
            if (key.line, key.column) in self.swaps.keyless:
                lost.append(Lost(self.file, key.line, key.column, value.end_line))
                continue
            if key.value == "<<":
                message = "'<<' is not for logs"
                self.report.error(key.line, key.column, "merge-key", message, "write the keys out")
                lost.append(Lost(self.file, key.line, key.column, value.end_line))
                continue
            if value.__class__ is Scalar:
                self._checked(key, value, flow=flow)
            entries.append((key, value))
        mark = start.start_mark
        return Mapping(
            self.file,
            mark.line + 1,
            mark.column + 1,
            _last_line(end, items),
            tuple(entries),
            tuple(lost),
            flow=flow,
        )

    def _checked(self, key: Scalar, value: Any, *, flow: bool) -> None:
        if value.end_line != value.line and not value.style and fold_key(key.value) not in _REMARKS:
            message = f"'{key.value}' runs over lines {value.line} to {value.end_line}: '{value.value}'"
            self.report.warn(value.line, value.column, "value-over-lines", message, "keep it on one line")
        if value.comment and fold_key(key.value) in self.text_keys:
            message = f"what stands behind '#' is not part of '{key.value}'"
            self.report.warn(value.end_line, value.comment, "comment-cuts-text", message, "put the text in quotes")
        if flow and not value.value and not value.style:
            message = f"'{key.value}' stands inside {{ }} without a value"
            self.report.error(key.line, key.column, "key-no-value", message, "write `key: value`")

    def _sequence(self, start: Any, end: Any, items: list[Node]) -> Sequence:
        mark = start.start_mark
        return Sequence(
            self.file,
            mark.line + 1,
            mark.column + 1,
            _last_line(end, items),
            tuple(items),
            flow=bool(start.flow_style),
        )


def _last_line(end: Any, items: list[Node]) -> int:
    last = items[-1].end_line if items else 0
    mark = end.start_mark
    return max(last, mark.line + 1) if end.end_mark.column > mark.column else last


def _refused(event: Any, code: str, message: str, hint: str = "") -> Refused:
    mark = event.start_mark
    return Refused(mark.line + 1, mark.column + 1, code, message, hint)


def _marked(event: Any) -> Refused:
    if event.tag is not None:
        return _refused(event, "tag", "text may not begin with '!' here", "put it in quotes")
    return _refused(event, "alias", "text may not begin with '&' here", "put it in quotes")
