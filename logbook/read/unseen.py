"""Signs that no editor shows, or shows as something else: control characters, odd spaces and separators, marks.

Each is read as a space or left out, and said. Every line keeps its number, and every column its place but behind
invisible signs that are left out.
"""

import re
from collections.abc import Callable, Iterator

from logbook.read.forms import form
from logbook.read.report import Report

CODES = frozenset(
    {
        "control-character",
        "double-encoded",
        "invisible-character",
        "letters-lost",
        "line-separator",
        "notepad-log",
        "odd-space",
        "page-break",
    }
)

_ENOUGH_ENDS = 2
"""Odd separators in a file without other line ends, from which on they are its line ends."""

_MAX_TOLD = 20
"""Lines that are named one by one for each kind of sign; the rest of them are put right just so."""

_ODD = form(
    "[^\t\n\x20-\x7e\u00a1-\u00ac\u00ae-\u167f\u1681-\u1fff\u2010-\u2027\u2030-\u205e\u2070-\u2fff\u3001-\ufdcf"
    "\ufdf0-\ufefe\uff00-\ufffc\U00010000-\U0010ffff]"
)
"""Any sign that may want something done about it; one search over a log of plain letters finds none."""

_CONTROL = form("[\x00-\x08\x0b-\x1f\x7f-\x84\x86-\x9f\ufdd0-\ufdef\ufffe\uffff]")
_SEPARATOR = form("[\x85\u2028\u2029]")
_QUOTED = form(r"""(?:^|[:,\[{] *|- +)(?:'(?:[^']|'')*'|"(?:[^"\\]|\\.)*")""")
"""A text in quotes, where the end of a line means a space by YAML's own rule, and no separator can make a key."""
_INVISIBLE = form("[\u00ad\u200b\u200e\u200f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ufeff]")
_SPACES = "\u00a0\u1680" + "".join(map(chr, range(0x2000, 0x200B))) + "\u202f\u205f\u3000"
_TO_PLAIN = str.maketrans(dict.fromkeys(_SPACES, " "))
_ODD_SPACE = form(f"([ \t{_SPACES}]*(?:-[ \t{_SPACES}]+)*)(?:([^:#]*[^:#\\s]:)([ \t{_SPACES}]+))?")
"""Odd spaces where YAML wants plain ones: in the indentation, behind a dash, and behind the colon of a key."""

_DOUBLE = form(
    "Ã[\u0080-\u00bf\u0152-\u02dc\u2013-\u2122]|Â[\u00a0-\u00bf]|â€[\u0090-\u009f\u2018-\u2122\u0152-\u0178¦œ]|Ë[šœ]"
)
_DOUBLE_STARTS = "ÃÂâË"


def clean(text: str, report: Report) -> str:
    """Return text without the signs that no editor shows or that YAML takes for something else.

    Args:
        text: The text, lines ended by line feeds.
        report: Takes what was found.
    """
    if text.startswith(".LOG"):
        text = _without_log_mark(text, report)
    if any(start in text for start in _DOUBLE_STARTS):
        _say_doubled(text, report)
    if _ODD().search(text) is None:
        return text
    if "\n" not in text.rstrip():
        text = _ended_oddly(text, report)
    if "\ufffd" in text:
        place = _place(text, text.index("\ufffd"))
        report.warn(*place, "letters-lost", "a letter was lost here before the file was saved", "type it again")
    return "\n".join(_lines(text.split("\n"), report))


def _without_log_mark(text: str, report: Report) -> str:
    """Return text without the `.LOG` with which Notepad adds the time at each opening."""
    first, _, rest = text.partition("\n")
    if first.strip() != ".LOG":
        return text
    message = "'.LOG' is left out; it makes Notepad add the time at each opening"
    report.note(1, 1, "notepad-log", message, "take the line out")
    return f"\n{rest}"


def _ended_oddly(text: str, report: Report) -> str:
    """Return a text with line ends for the odd separators in it, where it has no others."""
    ends = list(_SEPARATOR().finditer(text))
    if len(ends) < _ENOUGH_ENDS:
        return text
    message = "the lines of this file end in a separator that few editors know; it is read as a line end"
    report.note(1, ends[0].start() + 1, "line-separator", message, "save the file with plain line ends")
    return _SEPARATOR().sub("\n", text)


def _say_doubled(text: str, report: Report) -> None:
    found = _DOUBLE().search(text)
    if found is not None:
        message = f"'{found[0]}' looks like a letter that was encoded twice"
        hint = "type the letter again, and save with encoding UTF-8"
        report.warn(*_place(text, found.start()), "double-encoded", message, hint)


def _place(text: str, index: int) -> tuple[int, int]:
    """Return line and column of a sign."""
    return text.count("\n", 0, index) + 1, index - text.rfind("\n", 0, index)


def _lines(lines: list[str], report: Report) -> Iterator[str]:
    told: dict[str, int] = {}

    def tell(code: str, number: int, index: int) -> None:
        told[code] = told.get(code, 0) + 1
        if told[code] <= _MAX_TOLD:
            add = report.warn if code == "control-character" else report.note
            add(number, index + 1, code, *_TOLD[code])

    for number, line in enumerate(lines, 1):
        yield line if _ODD().search(line) is None else _line(line, number, tell)


def _line(line: str, number: int, tell: Callable[[str, int, int], None]) -> str:
    if line[0] in "\x0b\x0c":
        tell("page-break", number, 0)
        line = line.lstrip("\x0b\x0c")
    if _SEPARATOR().search(line) is not None:
        line = _QUOTED().sub(lambda found: _SEPARATOR().sub(" ", found[0]), line)
    for code, pattern, instead in _STEPS:
        found = pattern().search(line)
        if found is not None:
            tell(code, number, found.start())
            line = pattern().sub(instead, line)
    plain = _ODD_SPACE().sub(_plain, line, count=1)
    if plain != line:
        tell("odd-space", number, next(index for index, sign in enumerate(plain) if sign != line[index]))
    return plain.rstrip(_SPACES)


def _plain(found: re.Match[str]) -> str:
    """Return the beginning of a line with plain spaces in place of odd ones."""
    begins, key, gap = (part or "" for part in found.groups())
    return f"{begins.translate(_TO_PLAIN)}{key}{gap.translate(_TO_PLAIN)}"


_STEPS = (
    ("control-character", _CONTROL, " "),
    ("line-separator", _SEPARATOR, " "),
    ("invisible-character", _INVISIBLE, ""),
)

_TOLD = {
    "control-character": ("a control character is read as a space", "take it out"),
    "line-separator": ("an odd line separator is read as a space", "type a space"),
    "page-break": ("the sign of a new page or of a gap for printers is left out", "take it out"),
    "invisible-character": ("an invisible character is left out", "type the word again"),
    "odd-space": ("an odd kind of space is read as a plain one", "type plain spaces"),
}
