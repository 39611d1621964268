"""The bytes of a file to lines of text: encodings, line ends, and signs that no editor shows.

Knows what editors, old code pages and power cuts do to a file. Whatever it changes keeps every line on its line, and
every column in its place but behind invisible signs that it takes out. YAML is left to others.
"""

import re
from codecs import BOM_UTF8, BOM_UTF16_BE, BOM_UTF16_LE, BOM_UTF32_BE, BOM_UTF32_LE
from collections.abc import Iterator

from logbook.read.forms import form
from logbook.read.report import Report

CODES = frozenset(
    {
        "control-character",
        "cut-short",
        "double-encoded",
        "encoding",
        "file-empty",
        "file-too-big",
        "invisible-character",
        "letters-lost",
        "line-separator",
        "not-text",
        "notepad-log",
        "odd-space",
        "zero-bytes",
        "zero-tail",
    }
)

MAX_BYTES = 2_000_000

_MAX_NAMED = 20
"""Lines that are named one by one; what is wrong with more of them is said once."""

_KINDS = (
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
    (b"BM\xff", "a picture"),
    (b"%PDF", "a PDF"),
    (b"PK\x03\x04", "a zip file, or a word processor's or spreadsheet's own file"),
    (b"\xd0\xcf\x11\xe0", "a word processor's or spreadsheet's own file"),
    (b"{\\rtf", "rich text"),
    (b"\x1f\x8b", "a compressed file"),
    (b"7z\xbc\xaf\x27\x1c", "a compressed file"),
    (b"BZh9", "a compressed file"),
    (b"\xfd7zXZ", "a compressed file"),
    (b"SQLite format 3\0", "a database"),
    (b"\x7fELF", "a program"),
    (b"<!DOCTYPE", "a web page"),
    (b"<!doctype", "a web page"),
    (b"<html", "a web page"),
    (b"<?xml", "an XML file"),
)
_SAVE_AS_TEXT = "open it where it was made and save it as plain text, encoding UTF-8"

_PLAIN = b"\t\n" + bytes(range(0x20, 0x7F))
"""Bytes that are letters of their own in any code page, and line feeds; a log of nothing else needs no look."""

_LINE = re.compile(rb"(?<=\n)|(?<=\r)(?!\n)")
_ODD = re.compile(
    "[^\t\n\x20-\x7e\u00a1-\u00ac\u00ae-\u1fff\u2010-\u2027\u2030-\u205e\u2070-\u2fff\u3001-\ufefe\uff00-\ufffc\U00010000-\U0010ffff]"
)
"""Any sign that may want something done about it; one search over a log of plain letters finds none."""

_CONTROL = form("[\x00-\x08\x0b-\x1f\x7f-\x84\x86-\x9f\ufdd0-\ufdef\ufffe\uffff]")
_SEPARATOR = form("[\x85\u2028\u2029]")
_INVISIBLE = form("[\u00ad\u200b\u200e\u200f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ufeff]")
_SPACES = "\u00a0\u1680" + "".join(map(chr, range(0x2000, 0x200B))) + "\u202f\u205f\u3000"
_ODD_SPACE = form(
    f"(?m)^(?=[ \t-]*[{_SPACES}])[ \t{_SPACES}]*(?:-[ \t{_SPACES}]+)*|^[^:#\n]*[^:#\n ]:[ \t]*[{_SPACES}]+"
)
_DOUBLE = form(
    "Ã[\u0080-\u00bf\u0152-\u02dc\u2013-\u2122]|Â[\u00a0-\u00bf]|â€[\u0090-\u009f\u2018-\u2122\u0152-\u0178¦œ]|Ë[šœ]"
)
_DOS_DEGREE = re.compile(rb"(?<=[0-9 ])\xf8 ?(?=[0-9NSEWCFnsewcf])")
_DOS_LETTER = re.compile(rb"(?<=[A-Za-z])[\x80-\x91\x93-\xa5](?=[A-Za-z])")


def decode(data: bytes, report: Report) -> str | None:
    """Return the text of a file, its lines ended by one line feed each; None where there is none to read.

    Args:
        data: The file's bytes.
        report: Takes what is wrong with them.
    """
    if _is_hopeless(data, report):
        return None
    if not data.translate(None, _PLAIN) and not data.startswith(b".LOG"):
        return data.decode("ascii")
    text = _one_line_end(_letters(data, report))
    if "\u00c2" in text or "\u00c3" in text or "\u00e2\u20ac" in text:
        _doubled(text, report)
    if text.startswith(".LOG"):
        text = _without_log_mark(text, report)
    if _ODD.search(text) is None:
        return text
    return _cleaned(text, report)


def _is_hopeless(data: bytes, report: Report) -> bool:
    """Tell whether a file is no log at all, and say why."""
    if len(data) > MAX_BYTES:
        size = f"{len(data) / 1_000_000:.1f} MB"
        report.error(1, 1, "file-too-big", f"this file has {size}; a log has 2 MB at most", "split it, one trip a file")
    elif not data.strip():
        report.error(1, 1, "file-empty", "the file is empty", "look for a copy of it")
    elif not data.strip(b"\0"):
        message = "there are only zero bytes in it, as a power cut leaves them while a file is saved"
        report.error(1, 1, "zero-bytes", message, "look for a copy of it, or for the editor's own backup")
    else:
        kind = next((kind for magic, kind in _KINDS if data.startswith(magic)), None)
        if kind is None:
            return False
        report.error(1, 1, "not-text", f"this is no plain text but {kind}", _SAVE_AS_TEXT)
    return True


def _letters(data: bytes, report: Report) -> str:
    """Return the letters that the bytes stand for."""
    if data.startswith((BOM_UTF32_LE, BOM_UTF32_BE)):
        return _wide(data[4:], "utf-32-le" if data.startswith(BOM_UTF32_LE) else "utf-32-be", 4, report)
    if data.startswith((BOM_UTF16_LE, BOM_UTF16_BE)):
        return _wide(data[2:], "utf-16-le" if data.startswith(BOM_UTF16_LE) else "utf-16-be", 2, report)
    body = data.rstrip(b"\0")
    zeros = body.count(0)
    if zeros * 4 > len(body):
        little = body[1::2].count(0) > body[0::2].count(0)
        message = "the file is UTF-16 without the mark that says so"
        report.warn(1, 1, "encoding", message, "save it with encoding UTF-8")
        return _wide(data, "utf-16-le" if little else "utf-16-be", 2, report)
    body = body.rstrip(b"\x1a\0")
    cut = data[len(body) :].count(0)
    if cut:
        line = _one_line_end(body.decode("latin-1")).count("\n") + 1
        message = f"the file ends in {cut} zero bytes, as a power cut leaves them while a file is saved"
        report.warn(line, 1, "zero-tail", message, "look whether its last entries are missing")
    body = body.removeprefix(BOM_UTF8)
    try:
        return body.decode("utf-8")
    except UnicodeDecodeError as fault:
        return _mixed(body, fault, report)


def _wide(data: bytes, encoding: str, width: int, report: Report) -> str:
    """Return text of two or four bytes a letter."""
    whole = data[: len(data) - len(data) % width]
    text = whole.decode(encoding, "replace").removeprefix("\ufeff")
    kept = text.rstrip("\0\x1a")
    zeros = text[len(kept) :].count("\0")
    line = _one_line_end(kept).count("\n") + 1
    if zeros:
        message = "the file ends in zero bytes, as a power cut leaves them while a file is saved"
        report.warn(line, 1, "zero-tail", message, "look whether its last entries are missing")
    elif len(whole) != len(data):
        column = len(kept) - kept.rfind("\n")
        report.warn(
            line, column, "cut-short", "the file is cut in the middle of a letter", "look whether its end is missing"
        )
    return kept


def _mixed(body: bytes, fault: UnicodeDecodeError, report: Report) -> str:
    """Return text whose lines are UTF-8 where they can be, and Windows-1252 where not."""
    if fault.end == len(body) and fault.reason == "unexpected end of data" and fault.start >= len(body) - 3:
        text = body[: fault.start].decode("utf-8")
        lines = _one_line_end(text)
        column = len(lines) - lines.rfind("\n")
        message = "the file is cut in the middle of a letter"
        report.warn(lines.count("\n") + 1, column, "cut-short", message, "look whether its end is missing")
        return text
    read: list[str] = []
    first: tuple[int, int] | None = None
    count = 0
    for number, line in enumerate(_LINE.split(body), 1):
        try:
            read.append(line.decode("utf-8"))
        except UnicodeDecodeError as here:
            count += 1
            first = first or (number, len(line[: here.start].decode("utf-8")) + 1)
            read.append(line.decode("cp1252", "replace"))
    _say_encoding(first or (1, 1), count, body, report)
    return "".join(read)


def _say_encoding(first: tuple[int, int], count: int, body: bytes, report: Report) -> None:
    where = "this line is" if count == 1 else f"this line and {count - 1} more are"
    message = f"{where} not UTF-8 and read as Windows-1252"
    hint = "save the file with encoding UTF-8"
    if _DOS_DEGREE.search(body) or _DOS_LETTER.search(body):
        message += "; it looks like an old DOS code page, so letters and degree signs may be wrong"
    report.warn(*first, "encoding", message, hint)


def _one_line_end(text: str) -> str:
    """Return text with one kind of line end, counted as editors count them."""
    if "\r" not in text:
        return text
    return text.replace("\r\r\n", "\n").replace("\r\n", "\n").replace("\r", "\n")


def _doubled(text: str, report: Report) -> None:
    """Say that letters were encoded twice."""
    found = _DOUBLE().search(text)
    if found is None:
        return
    line, column = _place(text, found.start())
    message = f"'{found[0]}' looks like a letter that was encoded twice"
    report.warn(line, column, "double-encoded", message, "type the letter again, and save with encoding UTF-8")


def _without_log_mark(text: str, report: Report) -> str:
    """Return text without the `.LOG` with which Notepad adds the time at each opening."""
    first, _, rest = text.partition("\n")
    if first.strip() != ".LOG":
        return text
    message = "'.LOG' is left out; it makes Notepad add the time at each opening"
    report.note(1, 1, "notepad-log", message, "take the line out")
    return f"\n{rest}"


def _place(text: str, index: int) -> tuple[int, int]:
    """Return line and column of a sign."""
    return text.count("\n", 0, index) + 1, index - text.rfind("\n", 0, index)


def _cleaned(text: str, report: Report) -> str:
    """Return text without the signs that no editor shows or that YAML takes for something else."""
    if "\ufffd" in text:
        place = _place(text, text.index("\ufffd"))
        message = "a letter was lost here before the file was saved"
        report.warn(*place, "letters-lost", message, "type it again")
    return "\n".join(_lines(text.split("\n"), report))


def _lines(lines: list[str], report: Report) -> Iterator[str]:
    told: dict[str, int] = {}

    def tell(code: str, number: int, column: int) -> None:
        told[code] = told.get(code, 0) + 1
        if told[code] <= _MAX_NAMED:
            _TELL[code](report, number, column)

    for number, line in enumerate(lines, 1):
        if _ODD.search(line) is None:
            yield line
            continue
        clean = line
        for code, pattern, instead in _STEPS:
            found = pattern().search(clean)
            if found is not None:
                tell(code, number, found.start() + 1)
                clean = pattern().sub(instead, clean)
        spaced = _ODD_SPACE().search(clean)
        if spaced is not None and not spaced[0].isascii():
            odd = next(index for index, sign in enumerate(spaced[0]) if sign.isspace() and not sign.isascii())
            tell("odd-space", number, odd + 1)
            plain = "".join(" " if sign.isspace() else sign for sign in spaced[0])
            clean = plain + clean[spaced.end() :]
        yield clean.rstrip(_SPACES)


_STEPS = (
    ("control-character", _CONTROL, " "),
    ("line-separator", _SEPARATOR, " "),
    ("invisible-character", _INVISIBLE, ""),
)


def _tell_control(report: Report, line: int, column: int) -> None:
    report.warn(line, column, "control-character", "a control character is read as a space", "take it out")


def _tell_separator(report: Report, line: int, column: int) -> None:
    report.note(line, column, "line-separator", "an odd line separator is read as a space", "type a space")


def _tell_invisible(report: Report, line: int, column: int) -> None:
    report.note(line, column, "invisible-character", "an invisible character is left out", "type the word again")


def _tell_space(report: Report, line: int, column: int) -> None:
    report.note(line, column, "odd-space", "an odd kind of space is read as a plain one", "type plain spaces")


_TELL = {
    "control-character": _tell_control,
    "line-separator": _tell_separator,
    "invisible-character": _tell_invisible,
    "odd-space": _tell_space,
}
