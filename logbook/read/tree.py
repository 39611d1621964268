"""Bytes of a log to the tree of its texts, each with its place.

The one door to `source`, `events` and `salvage`. Keys and values mean nothing here: every scalar is the text as typed.
"""

from collections.abc import Callable

import yaml

from logbook.model.problem import Problem, Severity
from logbook.read.events import Grower, Refused, TooMuch
from logbook.read.forms import form
from logbook.read.node import Lost, Mapping, Node, Scalar, Sequence
from logbook.read.report import Report
from logbook.read.source import decode

__all__ = ["Lost", "Mapping", "Node", "Scalar", "Sequence", "read_tree", "repeated"]

CODES = frozenset({"no-keys", "no-log"})

_TAB = form(r"(?m)^ *\t[ \t]*[^ \t\n#]")


def read_tree(
    data: bytes, file: str, text_keys: frozenset[str] = frozenset()
) -> tuple[Mapping | None, tuple[Problem, ...]]:
    """Return the tree of a log and what is wrong with its bytes, its lines and its YAML; never raises.

    Args:
        data: The file's bytes.
        file: Its name, for messages.
        text_keys: Folded keys whose values are free text or names, where a comment that cuts them short is worth a
            warning.

    Returns:
        The mapping at the top, or None where nothing can be kept; and the problems in the order they stand.
    """
    report = Report(file)
    text = decode(data, report)
    root = _rooted(text, report, text_keys) if text is not None else None
    return root, tuple(sorted(set(report.problems)))


def repeated(mapping: Mapping, fold: Callable[[str], str]) -> tuple[tuple[Scalar, Scalar], ...]:
    """Return the keys that stand again in a mapping, each with the first one like it.

    Args:
        mapping: The mapping; it keeps all its entries, since only who knows its keys can say which are the same.
        fold: Makes keys that are the same equal.
    """
    first: dict[str, Scalar] = {}
    again: list[tuple[Scalar, Scalar]] = []
    for key, _ in mapping.entries:
        known = first.setdefault(fold(key.value), key)
        if known is not key:
            again.append((key, known))
    return tuple(again)


def _rooted(text: str, report: Report, text_keys: frozenset[str]) -> Mapping | None:
    """Return the mapping at the top of a text: at once where YAML takes it, else line by line."""
    try:
        root = _at_once(text, report, text_keys) or _line_by_line(text, report, text_keys)
    except TooMuch as fault:
        report.error(fault.line, fault.column, *fault.why)
        return None
    if isinstance(root, Mapping) and (root.entries or not root.lost):
        return root
    if root is None and not any(problem.severity is Severity.ERROR for problem in report.problems):
        report.error(
            1, 1, "no-log", "there is nothing in this file that could be read", "write each entry as `key: value`"
        )
    elif isinstance(root, Scalar | Sequence):
        what = "a list" if isinstance(root, Sequence) else "text"
        hint = "write `key: value`; the tows of a log stand below `tows:`"
        report.error(1, 1, "no-keys", f"{what} stands at the top, where keys are wanted", hint)
    return None


def _line_by_line(text: str, report: Report, text_keys: frozenset[str]) -> Node | None:
    """Return the root of what can be read of a text."""
    from logbook.read.salvage import salvage

    return salvage(text, report, text_keys)


def _at_once(text: str, report: Report, text_keys: frozenset[str]) -> Mapping | None:
    """Return the mapping at the top of a text that YAML takes and nobody doubts, else None."""
    if "\t" in text:
        if _TAB().search(text) is not None:
            return None
        text = text.replace("\t", " ")
    told = Report(report.file)
    grower = Grower(text, told, text_keys)
    try:
        root = grower.grow()
    except TooMuch:
        raise
    except (yaml.YAMLError, Refused):
        return None
    if grower.doubtful or not isinstance(root, Mapping):
        return None
    report.problems += told.problems
    return root
