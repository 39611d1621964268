"""Lines that are wrong as a whole: drawn lines, fences, marks between documents, tabs, blocks of text out of line."""

import re
from typing import TYPE_CHECKING

from logbook.read import explain
from logbook.read.draft import Draft
from logbook.read.keyline import has_value, indentation, key_of
from logbook.read.keys import fold_key

if TYPE_CHECKING:
    from logbook.read.outline import Outline

TAB_WIDTHS = (2, 4, 8, 3)
"""How wide editors show a tab."""

_MAX_TRIED = 400
"""Lines that a width is tried on; who began with a tab of one width did not change it later."""

_MARK = re.compile(r"\s*(?:```|~~~|<<<<<<<|>>>>>>>|\|\|\|\|\|\|\||(?P<sign>[-=_*~.])(?P=sign)+\s*$)|---(?= )")
_LEAD = re.compile(r"[ \t]*(?:-[ \t]+)*")
_MAIL = re.compile(r"(?!>>>>>>>)(?:> ?)+")
_TOP_KEY = re.compile(r"([^\s#:-][^#:]*?)\s*:(?= |$)")


class Marks:
    """Takes lines that are no part of a log but marks around it."""

    def __init__(self, draft: Draft) -> None:
        """Begin without any."""
        self.draft = draft
        self.fences: list[int] = []
        self.joining = False
        self.keys: set[str] = set()

    def take(self, at: int, *, begun: bool) -> int | None:
        """Take a line if it is a mark; return the index behind all that goes with it, or None where it is none.

        Args:
            at: Index of the line.
            begun: True once the log has begun.
        """
        line = self.draft.lines[at]
        if _MARK.match(line) is None:
            return None
        text = line.strip()
        if text.startswith(("```", "~~~")):
            self.fences.append(at + 1)
        elif line.startswith(("<<<<<<<", ">>>>>>>", "|||||||")) or (self.joining and text == "======="):
            if not self.joining:
                self.draft.fault(at, 0, explain.merge_mark())
            self.joining = not line.startswith(">>>>>>>")
        elif line.startswith("---") and text[3:4] in ("", " "):
            return self._divided(at, begun=begun)
        elif line.rstrip() == "...":
            if self._goes_on(at):
                self.draft.fault(at, 0, explain.document_end())
        else:
            self.draft.note(at, indentation(line), explain.rule_line())
        self.draft.lines[at] = ""
        return at + 1

    def end(self) -> None:
        """Report the fences once all of them are known."""
        if self.fences:
            self.draft.fault(self.fences[0] - 1, 0, explain.code_fence(self.fences))

    def _goes_on(self, at: int) -> bool:
        return any(line.strip() and not line.lstrip().startswith("#") for line in self.draft.lines[at + 1 :])

    def _divided(self, at: int, *, begun: bool) -> int:
        """Take a line of three dashes: before a log, between two, or drawn within one."""
        lines = self.draft.lines
        if begun and self._goes_on(at):
            below = (_TOP_KEY.match(line) for line in lines[at + 1 :])
            other = any(found is not None and fold_key(found[1]) in self.keys for found in below)
            self.draft.fault(at, 0, explain.second_document(other=other))
            if other:
                self.draft.blank(at, len(lines))
                return len(lines)
        lines[at] = ""
        return at + 1


def unquote(draft: Draft) -> None:
    """Take away the signs that mail programs put before lines which they quote; no line of a log begins with one."""
    quoted = [at for at, line in enumerate(draft.lines) if _MAIL.match(line)]
    if not quoted:
        return
    tight = any(not line.startswith("> ") for line in (draft.lines[at] for at in quoted) if line.strip("> "))
    draft.fault(quoted[0], 0, explain.mail_quote([at + 1 for at in quoted]))
    for at in quoted:
        line = draft.lines[at].lstrip(">") if tight else _MAIL.sub("", draft.lines[at])
        draft.move(at, line)


def root_column(lines: list[str], at: int) -> int:
    """Return the column at which the keys of a log begin: that of its first line, unless the others say otherwise."""
    first = indentation(lines[at])
    keyed = [column for line in lines[at + 1 :] if key_of(line, column := indentation(line))]
    left = min(keyed, default=first)
    if left < first:
        return left if keyed.count(left) >= keyed.count(first) else first
    found = key_of(lines[at], first)
    alone = left > first and found is not None and has_value(lines[at], found.value)
    return left if found and alone and keyed.count(left) > 1 and lines[at][found.value] not in "'\"[{|>" else first


def mend_block(draft: Draft, at: int, parent: int, body: int | None) -> int:
    """Take the lines of a text below `|` or `>`; return the index behind them.

    Args:
        draft: The log.
        at: Index of the line with the sign.
        parent: Column of what the text belongs to.
        body: Column at which its lines begin, where that is typed.
    """
    lines = draft.lines
    number = at + 1
    width: int | None = None
    while number < len(lines):
        if not lines[number].strip():
            lines[number] = lines[number].replace("\t", " ") if body is not None else ""
            number += 1
            continue
        if "\t" in _indent_of(lines[number]):
            width = mend_text_tabs(draft, number, parent, body, width)
        line = lines[number]
        column = len(_indent_of(line))
        if column <= parent or "\t" in line[:column]:
            break
        lines[number] = line.replace("\t", " ")
        if body is None:
            body = column
        elif column < body:
            if line[column] == "#" and indentation(draft.below(number)) <= parent:
                break
            draft.fault(number, column, explain.text_indent(column + 1, body + 1))
            lines[number] = " " * body + lines[number][column:]
        number += 1
    return number


def mend_text_tabs(draft: Draft, at: int, parent: int, body: int | None = None, width: int | None = None) -> int | None:
    """Make spaces of the tabs before a run of lines of text.

    Args:
        draft: The log.
        at: Index of the first of the lines.
        parent: Column of what the text belongs to.
        body: Column at which its lines begin, as far as that is known.
        width: How wide tabs are, as far as that is known; else the first width that puts the lines below their key.

    Returns:
        How wide tabs are; None where none of the usual widths would do.
    """
    lines = draft.lines
    wanted = parent + 1 if body is None else body
    widths = TAB_WIDTHS if width is None else (width,)
    fitting = [each for each in widths if _depth(lines[at], each) > parent]
    if not fitting:
        return width
    width = next((each for each in fitting if _depth(lines[at], each) >= wanted), fitting[0])
    run: list[int] = []
    for number in range(at, run_end(lines, at)):
        if lines[number].strip():
            if _depth(lines[number], width) <= parent:
                break
            run.append(number + 1)
    draft.fault(at, 0, explain.tab_indent(run, kept=True))
    for number in run:
        draft.move(number - 1, _expanded(lines[number - 1], width))
    return width


def _indent_of(line: str) -> str:
    return line[: len(line) - len(line.lstrip(" \t"))]


def _depth(line: str, width: int) -> int:
    return len(_indent_of(line).expandtabs(width))


def _expanded(line: str, width: int) -> str:
    """Return a line whose indentation and dashes have spaces for tabs."""
    found = _LEAD.match(line)
    end = found.end() if found else 0
    return line[:end].expandtabs(width) + line[end:]


def run_end(lines: list[str], at: int) -> int:
    """Return the index behind the last of the lines from an index on that are indented by tabs."""
    end = at + 1
    for number in range(at + 1, len(lines)):
        if "\t" in _indent_of(lines[number]) and lines[number].strip():
            end = number + 1
        elif lines[number].strip():
            break
    return end


def mend_tabs(outline: "Outline", at: int) -> int | None:
    """Make spaces of the tabs before a run of lines, as wide as lets them stand under one another; else set them aside.

    Args:
        outline: The log, read up to the first of the lines.
        at: Index of the first of them.

    Returns:
        The index behind them where they are set aside, else None.
    """
    lines = outline.lines
    end = run_end(lines, at)
    run = [
        number + 1 for number in range(at, end) if lines[number].strip() and not lines[number].lstrip().startswith("#")
    ]
    some = min(end, at + _MAX_TRIED)
    tried = {width: outline.tried(some, [_expanded(line, width) for line in lines[at:some]]) for width in TAB_WIDTHS}
    least = min(misfits for misfits, _ in tried.values())
    fitting = [width for width in TAB_WIDTHS if tried[width][0] == least]
    width = fitting[0]
    certain = len({tried[each][1] for each in fitting}) == 1
    top = outline.levels.top
    if not certain and top.opens:
        deeper = [each for each in fitting if _depth(lines[at], each) > top.column]
        certain = len({tried[each][1] for each in deeper}) == 1
        width = deeper[0] if deeper else width
    outline.draft.fault(at, 0, explain.tab_indent(run, kept=certain))
    if certain:
        for number in range(at, end):
            outline.draft.move(number, _expanded(lines[number], width))
        return None
    outline.draft.blank(at, end)
    if top.opens:
        outline.draft.lose(at, " " * (top.column + 1), end, 0)
        top.opens = False
    elif top.listed:
        outline.draft.lose(at, f"{' ' * top.column}- ", end, 0)
    else:
        outline.draft.lose_keyless(at, top.column, end)
    return end
