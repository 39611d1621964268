"""The bytes of a file to its lines and back, so that what is not touched comes back byte for byte, faults of encoding too."""

import re
from codecs import BOM_UTF8, BOM_UTF16_BE, BOM_UTF16_LE, BOM_UTF32_BE, BOM_UTF32_LE

from msgspec import Struct

_MARKS = (
    (BOM_UTF32_LE, "utf-32-le", 4),
    (BOM_UTF32_BE, "utf-32-be", 4),
    (BOM_UTF16_LE, "utf-16-le", 2),
    (BOM_UTF16_BE, "utf-16-be", 2),
)
_ENDS = re.compile(rb"(?<=\n)|(?<=\r)(?![\r\n])")
_ODD_ENDS = re.compile("(?<=[\u0085\u2028\u2029])")
_WIDE_ENDS = re.compile(r"(?<=\n)|(?<=\r)(?![\r\n])")


class Line(Struct, frozen=True, kw_only=True):
    """A line as it stands in a file.

    Attributes:
        text: Its letters, with what ends it.
        encoding: How they are bytes.
        errors: How bytes that are no letters there are kept.
    """

    text: str
    encoding: str
    errors: str

    def data(self, text: str) -> bytes:
        """Return other letters as bytes of the same kind."""
        return text.encode(self.encoding, self.errors)


class Opened(Struct, frozen=True, kw_only=True):
    """A file taken apart.

    Attributes:
        before: Bytes before its first letter.
        lines: Its lines.
        after: Bytes after its last letter.
    """

    before: bytes
    lines: tuple[Line, ...]
    after: bytes


def opened(data: bytes) -> Opened:
    """Return a file taken apart: `before`, the bytes of all lines and `after` are the file again."""
    for mark, encoding, width in _MARKS:
        if data.startswith(mark):
            return _wide(mark, data[len(mark) :], encoding, width)
    zeros, odd = data.rstrip(b"\0").count(0), data.rstrip(b"\0")[1::2].count(0)
    if zeros * 4 > len(data.rstrip(b"\0")) and max(odd, zeros - odd) * 10 >= zeros * 9:
        return _wide(b"", data, "utf-16-le" if odd * 2 > zeros else "utf-16-be", 2)
    before = BOM_UTF8 if data.startswith(BOM_UTF8) else b""
    body = data[len(before) :].rstrip(b"\x1a\0")
    lines = _parted(tuple(_narrow(line) for line in _ENDS.split(body)))
    return Opened(before=before, lines=lines, after=data[len(before) + len(body) :])


def _wide(before: bytes, data: bytes, encoding: str, width: int) -> Opened:
    whole = len(data) - len(data) % width
    text = data[:whole].decode(encoding, "surrogatepass")
    lines = _parted(
        tuple(Line(text=part, encoding=encoding, errors="surrogatepass") for part in _WIDE_ENDS.split(text))
    )
    return Opened(before=before, lines=lines, after=data[whole:])


def _parted(lines: tuple[Line, ...]) -> tuple[Line, ...]:
    """Return lines parted by odd separators too, where a file has no other ends of lines."""
    if len(lines) > 1:
        return lines
    return tuple(
        Line(text=part, encoding=line.encoding, errors=line.errors)
        for line in lines
        for part in _ODD_ENDS.split(line.text)
    )


def _narrow(line: bytes) -> Line:
    """Return a line of UTF-8, or of a code page: then every byte is kept as one sign, whichever page it was."""
    try:
        return Line(text=line.decode("utf-8"), encoding="utf-8", errors="strict")
    except UnicodeDecodeError as fault:
        if fault.reason == "unexpected end of data":
            return Line(text=line.decode("utf-8", "surrogateescape"), encoding="utf-8", errors="surrogateescape")
    return Line(text=line.decode("latin-1"), encoding="latin-1", errors="strict")
