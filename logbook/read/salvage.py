"""Reads what can be read of a log that YAML refuses: goes through its lines first, then sets aside what is left over.

A line that can't be read costs its own item or key, the smallest around it by indentation; the rest is read again, so
that one reading finds every fault. The work is bounded: after a hundred faults the rest is given up, and said to be.
"""

import yaml

from logbook.read import explain
from logbook.read.draft import Draft
from logbook.read.events import Grower, Refused, TooMuch
from logbook.read.explain import Why
from logbook.read.keyline import has_value, indentation, key_of, spaces
from logbook.read.layout import unquote
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

    Raises:
        TooMuch: The text holds more than a log can.
    """
    draft = Draft((joined_escapes(text) if "\\u" in text else text).split("\n"), report)
    if text.startswith(">") or "\n>" in text:
        unquote(draft)
    Outline(draft, text_keys).mend()
    left = MAX_WORK
    while any(draft.lines):
        told = Report(report.file)
        mended = "\n".join(draft.lines).replace("\t", " ")
        try:
            root = Grower(mended, told, text_keys, draft.swaps).grow()
        except TooMuch:
            raise
        except yaml.YAMLError as fault:
            line, column, why = explain.of_yaml(fault, draft.lines)
        except Refused as fault:
            line, column, why = fault.line, fault.column, fault.why
        else:
            report.problems += told.problems
            return root
        left -= len(mended)
        if left < -MAX_WORK:
            break
        if left > 0 and not draft.full:
            set_aside(draft, line - 1, column - 1, why)
        else:
            draft.give_up(line - 1)
            left = -MAX_WORK
    return None


def set_aside(draft: Draft, at: int, column: int, why: Why) -> None:
    """Set aside the smallest item round a line that YAML can't read.

    Args:
        draft: The log.
        at: Index of the line.
        column: Index of the sign where YAML stopped.
        why: What is wrong, for the report.
    """
    at = min(at, len(draft.lines) - 1)
    while at > 0 and not draft.lines[at]:
        at -= 1
    line = draft.lines[at]
    begins = indentation(line)
    end = draft.own(at, begins)
    if draft.has_stand_in(at):
        draft.blank(at, end)  # that was reported, and where not even a stand-in fits nothing does
        return
    draft.fault(at, column, why)
    inner = begins
    while line.startswith("- ", inner):
        inner += 2 + spaces(line, inner + 2)
    found = key_of(line, inner)
    if found is not None and has_value(line, found.value):
        draft.lose(at, f"{line[:inner]}{found.key}: ", end, found.value)
    elif inner > begins:
        draft.lose(at, f"{line[:begins]}- ", end, begins)
    else:
        draft.lose_keyless(at, begins, end)
