"""Bytes of a log to the tree of its texts, each with its place.

The one door to `source`, `events` and `salvage`. Keys and values mean nothing here: every scalar is the text as typed.
"""

import yaml

from logbook.model.problem import Problem
from logbook.read.events import Grower, Refused
from logbook.read.node import Lost, Mapping, Node, Scalar, Sequence
from logbook.read.report import Report
from logbook.read.source import decode

__all__ = ["Lost", "Mapping", "Node", "Scalar", "Sequence", "read_tree"]


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
    root: Node | None = None
    if text is not None:
        try:
            root = Grower(text.replace("\t", " "), report, text_keys).grow()
        except yaml.MarkedYAMLError as fault:
            mark = fault.problem_mark or fault.context_mark
            line, column = (mark.line + 1, mark.column + 1) if mark else (1, 1)
            report.error(line, column, "line-unreadable", "this line can't be read")
        except yaml.YAMLError:
            report.error(1, 1, "line-unreadable", "this file can't be read")
        except Refused as fault:
            report.error(fault.line, fault.column, fault.code, fault.message, fault.hint)
        else:
            if not isinstance(root, Mapping):
                report.error(1, 1, "no-keys", "there is no `key: value` in this file", "begin with `vessel: NAME`")
    problems = tuple(sorted(set(report.problems)))
    return (root if isinstance(root, Mapping) else None), problems
