"""The bytes of a file to the letters they stand for: kinds of file, encodings, line ends, and what power cuts leave.

Knows what editors, old code pages and bad transfers do to a file. Every line keeps its number, as editors count them.
Signs that no editor shows are left to `unseen`, YAML to others.
"""

import re
from codecs import BOM_UTF8, BOM_UTF16_BE, BOM_UTF16_LE, BOM_UTF32_BE, BOM_UTF32_LE
from functools import cache

from logbook.read.forms import form
from logbook.read.report import Report
from logbook.read.unseen import clean

CODES = frozenset({"cut-short", "encoding", "file-empty", "file-too-big", "not-text", "zero-bytes", "zero-tail"})

MAX_BYTES = 2_000_000

_KINDS = (
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
    (b"II*\0", "a picture"),
    (b"MM\0*", "a picture"),
    (b"%PDF", "a PDF"),
    (b"PK\x03\x04", "a zip file, or a word processor's or spreadsheet's own file"),
    (b"\xd0\xcf\x11\xe0", "a word processor's or spreadsheet's own file"),
    (b"{\\rtf", "rich text"),
    (b"\x1f\x8b", "a compressed file"),
    (b"7z\xbc\xaf\x27\x1c", "a compressed file"),
    (b"Rar!", "a compressed file"),
    (b"BZh", "a compressed file"),
    (b"\xfd7zXZ", "a compressed file"),
    (b"SQLite format 3\0", "a database"),
    (b"\x7fELF", "a program"),
    (b"MZ\x90\0", "a program"),
    (b"<!doctype", "a web page"),
    (b"<html", "a web page"),
    (b"<?xml", "an XML file"),
)
"""First bytes of files that people rename by mistake, in lower case where they are letters of a page."""

_SAVE_AS_TEXT = "open it where it was made and save it as plain text, encoding UTF-8"
_CUT = "look whether its last entries are missing"

_PLAIN = b"\t\n\r" + bytes(range(0x20, 0x7F))
"""Bytes that are the same letters in every code page; a log of nothing else needs no look."""

_CONTROLS = bytes(set(range(1, 0x20)) - set(b"\t\n\r\x1a\x1b") | {0x7F})
_FEW = 5
_RETURNS = form(r"\r+\n?")


@cache
def _dos_signs() -> re.Pattern[bytes]:
    """Return the pattern of letters and degree signs of old DOS code pages, as far as Windows has others there."""
    return re.compile(rb"(?<=[0-9 ])\xf8 ?(?=[0-9NSEWCFnsewcf])|(?<=[A-Za-z])[\x80-\x91\x93-\xa5](?=[A-Za-z])")


def decode(data: bytes, report: Report) -> str | None:
    """Return the text of a file, its lines ended by one line feed each; None where there is none to read.

    Args:
        data: The file's bytes.
        report: Takes what is wrong with them.
    """
    if _is_hopeless(data, report):
        return None
    if not data.translate(None, _PLAIN) and not data.startswith(b".LOG"):
        return one_line_end(data.decode("ascii"))
    return clean(one_line_end(_letters(data, report)), report)


def typed(data: bytes) -> str:
    """Return the letters of a file just as they were typed, odd signs and all; nothing where there is no text to read."""
    report = Report("")
    return "" if _is_hopeless(data, report) else one_line_end(_letters(data, report))


def one_line_end(text: str) -> str:
    """Return text with one kind of line end, counted as editors count them; bad transfers put more returns before one."""
    if "\r" not in text:
        return text
    return _RETURNS().sub(lambda found: "\n" if found[0][-1] == "\n" else "\n" * len(found[0]), text)


def _is_hopeless(data: bytes, report: Report) -> bool:
    """Tell whether a file is no log at all, and say why."""
    if len(data) > MAX_BYTES:
        message = "this file is larger than 2 MB, so it is not read"
        report.error(1, 1, "file-too-big", message, "split it, one trip a file")
    elif not data.strip(b" \t\r\n\x1a" + BOM_UTF8):
        report.error(1, 1, "file-empty", "the file is empty", "look for a copy of it")
    elif not data.strip(b"\0"):
        message = "there are only zero bytes in it, as a power cut leaves them while a file is saved"
        report.error(1, 1, "zero-bytes", message, "look for a copy of it, or for the editor's own backup")
    else:
        kind = _kind(data)
        if not kind:
            return False
        report.error(1, 1, "not-text", f"this is no plain text but {kind}", _SAVE_AS_TEXT)
    return True


def _kind(data: bytes) -> str:
    """Return what kind of file it is; empty where it may be plain text."""
    begins = (data[:16], data[:32].lstrip().lower())
    for magic, kind in _KINDS:
        if begins[0].startswith(magic) or (magic.startswith(b"<") and begins[1].startswith(magic)):
            return kind
    controls = len(data) - len(data.translate(None, _CONTROLS))
    wide = data.startswith((BOM_UTF16_LE, BOM_UTF16_BE))
    return "a program's own file" if controls > max(_FEW, len(data) // 20) and not wide else ""


def _letters(data: bytes, report: Report) -> str:
    """Return the letters that the bytes stand for."""
    if data.startswith((BOM_UTF32_LE, BOM_UTF32_BE)):
        return _wide(data[4:], "utf-32-le" if data.startswith(BOM_UTF32_LE) else "utf-32-be", 4, report)
    if data.startswith((BOM_UTF16_LE, BOM_UTF16_BE)):
        return _wide(data[2:], "utf-16-le" if data.startswith(BOM_UTF16_LE) else "utf-16-be", 2, report)
    body = data.rstrip(b"\0")
    zeros, odd = body.count(0), body[1::2].count(0)
    if zeros * 4 > len(body) and max(odd, zeros - odd) * 10 >= zeros * 9:
        message = "the file is UTF-16 without the mark that says so"
        report.warn(1, 1, "encoding", message, "save it with encoding UTF-8")
        return _wide(data, "utf-16-le" if odd * 2 > zeros else "utf-16-be", 2, report)
    body = body.rstrip(b"\x1a\0")
    cut = data[len(body) :].count(0)
    body = body.removeprefix(BOM_UTF8)
    try:
        text = body.decode("utf-8")
    except UnicodeDecodeError as fault:
        text = _mixed(body, fault, report)
    if cut:
        _say_at_end(text, "zero-tail", _zeros(cut), report)
    return text


def _zeros(count: int) -> str:
    return f"the file ends in {count} zero bytes, as a power cut leaves them while a file is saved"


def _say_at_end(text: str, code: str, message: str, report: Report) -> None:
    """Warn of what a file ends with, at its last line."""
    lines = one_line_end(text)
    report.warn(lines.count("\n") + 1, len(lines) - lines.rfind("\n"), code, message, _CUT)


def _wide(data: bytes, encoding: str, width: int, report: Report) -> str:
    """Return text of two or four bytes a letter."""
    whole = data[: len(data) - len(data) % width]
    text = whole.decode(encoding, "replace").removeprefix("\ufeff")
    kept = text.rstrip("\0\x1a")
    zeros = text[len(kept) :].count("\0")
    if zeros:
        _say_at_end(kept, "zero-tail", _zeros(zeros * width), report)
    elif len(whole) != len(data):
        _say_at_end(kept, "cut-short", "the file is cut in the middle of a letter", report)
    return kept


def _mixed(body: bytes, fault: UnicodeDecodeError, report: Report) -> str:
    """Return text whose lines are UTF-8 where they can be, and Windows-1252 where not."""
    if fault.end == len(body) and fault.reason == "unexpected end of data":
        text = body[: fault.start].decode("utf-8")
        _say_at_end(text, "cut-short", "the file is cut in the middle of a letter", report)
        return text
    read: list[str] = []
    body = one_line_end(body.decode("latin-1")).encode("latin-1")
    first: tuple[int, int] | None = None
    count = 0
    for number, line in enumerate(body.split(b"\n"), 1):
        try:
            read.append(line.decode("utf-8"))
        except UnicodeDecodeError as here:
            count += 1
            first = first or (number, len(line[: here.start].decode("utf-8")) + 1)
            read.append(line.decode("cp1252", "replace"))
    where = "this line is" if count == 1 else f"this line and {count - 1} more are"
    message = f"{where} not UTF-8 and read as Windows-1252"
    if _dos_signs().search(body):
        message += "; it looks like an old DOS code page, so letters and degree signs may be wrong"
    report.warn(*(first or (1, 1)), "encoding", message, "save the file with encoding UTF-8")
    return "\n".join(read)
