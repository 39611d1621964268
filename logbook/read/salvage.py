"""Reads what can be read of a log that YAML refuses: goes through its lines first, then sets aside what is left over.

A line that can't be read costs its own item or key, the smallest around it by indentation; the rest is read again, so
that one reading finds every fault. The work is bounded: after a hundred faults the rest is given up, and said to be.
"""

import yaml

from logbook.read import explain
from logbook.read.draft import Draft
from logbook.read.events import Grower, Refused
from logbook.read.explain import Why
from logbook.read.keyline import has_value, indentation, key_of, spaces
from logbook.read.node import Node
from logbook.read.outline import Outline
from logbook.read.quotes import joined_escapes
from logbook.read.report import Report

MAX_WORK = 8_000_000
"""How many letters are given to the YAML parser again and again before the rest is given up."""


def salvage(text: str, report: Report, text_keys: frozenset[str]) -> Node | None:
    """Return the root of what can be read of a text; None where nothing can be.

    Args:
        text: The text, lines ended by line feeds.
        report: Takes what is wrong.
        text_keys: Folded keys whose values are free text or names.
    """
    draft = Draft((joined_escapes(text) if "\\u" in text else text).split("\n"), report)
    Outline(draft, text_keys).mend()
    work = 0
    touched: dict[int, int] = {}
    while True:
        told = Report(report.file)
        mended = "\n".join(draft.lines)
        line, column, why = 0, 0, explain.too_many()
        try:
            root = Grower(mended, told, text_keys, draft.swaps).grow()
        except yaml.YAMLError as fault:
            line, column, why = explain.of_yaml(fault, draft.lines)
        except Refused as fault:
            line, column, why = fault.line, fault.column, fault.why
        else:
            report.problems += told.problems
            return root
        work += len(mended)
        if touched.get(-1):
            return None
        if draft.full or work > MAX_WORK:
            draft.fault(line - 1, 0, explain.too_many())
            draft.blank(line - 1, len(draft.lines))
            touched[-1] = 1
        else:
            set_aside(draft, line - 1, column - 1, why, touched)


def set_aside(draft: Draft, at: int, column: int, why: Why, touched: dict[int, int]) -> None:
    """Set aside the smallest item round a line that YAML can't read.

    Args:
        draft: The log.
        at: Index of the line.
        column: Index of the sign where YAML stopped.
        why: What is wrong, for the report.
        touched: How often each line was set aside before, so that the next time it costs more.
    """
    lines = draft.lines
    while at > 0 and not lines[at].strip():
        at -= 1
    times = touched[at] = touched.get(at, 0) + 1
    if times == 1:
        draft.fault(at, column, why)
    begins = indentation(lines[at])
    end = at + 1
    while end < len(lines) and (not lines[end].strip() or indentation(lines[end]) > begins):
        end += 1
    inner = begins
    while lines[at].startswith("- ", inner):
        inner += 2 + spaces(lines[at], inner + 2)
    found = key_of(lines[at], inner)
    keyed = found is not None and has_value(lines[at], found.value)
    if keyed and found is not None and times == 1:
        draft.lose(at, f"{lines[at][:inner]}{found.key}: ", end, found.value)
    elif times > 1 + keyed:
        draft.blank(at, end)
    elif inner > begins:
        draft.lose(at, f"{' ' * begins}- ", end, begins)
    else:
        draft.lose_keyless(at, begins, end)
