"""Shows lines of a log below what is wrong in them, with the place marked, and as they should be where that is certain.

Loaded only where something is wrong. What a log holds must not reach the terminal as anything but letters: signs that nobody
sees, or that would move the cursor or turn the direction of writing, are shown by their numbers.
"""

import re
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from itertools import groupby

from msgspec import Struct

from logbook.model.problem import Problem
from logbook.model.visible import pieces_of, visible
from logbook.read.source import typed

WIDTH = 100
"""Columns that are used where no terminal says how many it has."""

OFTEN = 5
"""How many problems of one code have their lines shown; who has seen five knows the sixth."""

_NEAR = 2000
"""Signs on either side of a place that are looked at; some files are one line without end."""

_OF_THE_FILE = frozenset(
    {
        *("cut-short", "file-empty", "file-too-big", "file-unreadable", "log-renamed", "logs-overlap", "no-date"),
        *("no-keys", "no-log", "no-tows", "not-followed", "not-text", "same-trip", "too-many-problems", "too-much"),
        *("zero-bytes", "zero-tail"),
    }
)
"""Codes that are about no line."""

_ABOUT_ODD_SIGNS = frozenset({"double-encoded", "encoding", "invisible-character", "letters-lost"})
"""Codes whose columns count the signs that no editor shows; the reader leaves these out before it counts others."""

_UNCOUNTED = re.compile("[\u00ad\u200b\u200e\u200f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ufeff]")
_PARTED = re.compile(r"[,:{}\[\]]")
_READ_AS = re.compile(r"'(?P<was>.+?)' is read as ")
_WRITE = re.compile(r"write (?P<instead>[^`]+)")
_WRITE_LINE = re.compile(r"(?:use single quotes: )?write `(?P<line>.+)`")


class Mark(Struct, frozen=True, kw_only=True):
    """Where a problem stands on its line.

    Attributes:
        start: Index of the sign it begins at.
        length: How many signs it spans.
    """

    start: int
    length: int


def can_show(encoding: str | None) -> Callable[[str], bool]:
    """Return a function that tells whether a terminal of that encoding has a sign."""

    def shows(sign: str) -> bool:
        try:
            sign.encode(encoding or "ascii")
        except UnicodeEncodeError:
            return False
        return sign.isprintable()

    return shows


def quoted(
    line: str, number: int, marks: Sequence[Mark], width: int, shows: Callable[[str], bool]
) -> tuple[str, str, int]:
    """Return a line with its number, the line below it that marks the places, and how many of the places are in sight.

    Args:
        line: As it was typed.
        number: Its number.
        marks: Places on it, in order; the first is always in sight.
        width: Columns there are.
        shows: Tells whether the terminal has a sign.
    """
    gutter = max(4, len(str(number)) + 1)
    cut = max(0, marks[0].start - _NEAR)
    pieces = list(pieces_of(line[cut : cut + 2 * _NEAR], shows))
    first, last = _window(pieces, marks[0].start - cut, width - gutter - 3)
    begins, ends = cut + first, cut + last
    before, after = "... " if begins else "", " ..." if ends < len(line) else ""
    near = [mark for mark in marks if begins <= mark.start < ends or ends == len(line)]
    marked = {index for mark in near for index in range(mark.start, mark.start + mark.length)}
    under = "".join(
        ("^" if index in marked else " ") * columns for index, (_, columns) in enumerate(pieces[first:last], begins)
    )
    if any(mark.start >= len(line) for mark in near):
        under += "^"
    told = "".join(piece for piece, _ in pieces[first:last])
    shown = f"{number:>{gutter}} | {before}{told}{after}", f"{'':>{gutter}} | {' ' * len(before)}{under}".rstrip()
    return *shown, max(len(near), 1)


def _window(pieces: Sequence[tuple[str, int]], start: int, width: int) -> tuple[int, int]:
    """Return from where to where a line is shown: all of it, or as much around a place as there is room for."""
    if sum(columns for _, columns in pieces) <= width:
        return 0, len(pieces)
    room = max(width - 8, 20)
    first, ahead = min(start, len(pieces)), 0
    while first > 0 and ahead + pieces[first - 1][1] <= room // 3:
        first -= 1
        ahead += pieces[first][1]
    last, taken = first, 0
    while last < len(pieces) and taken + pieces[last][1] <= room:
        taken += pieces[last][1]
        last += 1
    return first, last


def mark_of(line: str, problem: Problem) -> Mark:
    """Return where a problem stands on its line as it was typed."""
    start = problem.place.column - 1
    if problem.code not in _ABOUT_ODD_SIGNS:
        start = _counted(line, start)
    start = min(start, len(line))
    for text in re.findall(r"'(.+?)'(?![\w])", problem.message):
        at = line.find(text, start)
        if at >= 0 and not _PARTED.search(line, start, at):
            return Mark(start=start, length=at + len(text) - start)
    return Mark(start=start, length=1)


def _counted(line: str, count: int) -> int:
    """Return the index of a sign by its count among those that the reader counts."""
    index = 0
    for found in _UNCOUNTED.finditer(line):
        if found.start() - index > count:
            break
        count -= found.start() - index
        index = found.end()
    return index + count


def corrected(line: str, problem: Problem) -> str | None:
    """Return the line as it should be; None where that is not certain.

    Certain is what the reader itself took a value for, and a line that has the same letters and figures in the same order.
    """
    start = mark_of(line, problem).start
    whole = _WRITE_LINE.fullmatch(problem.hint)
    if whole is not None:
        begins = re.match(r"\s*(?:- +)*", line)
        for at in (len(line) - len(line.lstrip()), begins.end() if begins else 0):
            if _same_letters(line[at:], whole["line"]):
                return line[:at] + whole["line"]
        return None
    read, write = _READ_AS.match(problem.message), _WRITE.fullmatch(problem.hint)
    was = read["was"] if read else ""
    if not was or write is None or not line.startswith(was, start):
        return None
    return line[:start] + write["instead"] + line[start + len(was) :]


def mended(line: str, problems: Sequence[Problem]) -> str | None:
    """Return a line with all put right that is certain; None where nothing is, or where one place has more wrong than that.

    Args:
        line: As it was typed.
        problems: All that is wrong on it, in order.
    """
    certain = [problem for problem in problems if corrected(line, problem) is not None]
    open_places = {problem.place for problem in problems if problem not in certain}
    better = line
    for problem in reversed(certain):
        if problem.place not in open_places:
            better = corrected(better, problem) or better
    return None if better == line else better


def _same_letters(one: str, other: str) -> bool:
    return [sign for sign in one if sign.isalnum()] == [sign for sign in other if sign.isalnum()]


class Quotes:
    """The lines of the files that have problems, each file read when its first line is asked for."""

    def __init__(self, opened: Callable[[str], bytes], width: int, shows: Callable[[str], bool]) -> None:
        """Begin with no file read.

        Args:
            opened: Gives the bytes of a file by the name that its problems have; nothing where it can't be read.
            width: Columns there are.
            shows: Tells whether the terminal has a sign.
        """
        self._opened, self._width, self._shows = opened, width, shows
        self._file, self._lines = "", [""]
        self._told: Counter[str] = Counter()

    def below(self, problems: Sequence[Problem]) -> Iterator[str]:
        """Give what stands below the problems of one line: the line with its places marked, and as it should be."""
        wanted = [problem for problem in problems if self._is_wanted(problem)]
        place = problems[0].place
        line = self._line(place.file, place.line) if wanted else None
        if line is None:
            return
        marks = sorted({mark.start: mark for mark in (mark_of(line, problem) for problem in wanted)}.items())
        left = [mark for _, mark in marks]
        while left:
            told, under, count = quoted(line, place.line, left, self._width, self._shows)
            yield from (told, under)
            left = left[count:]
        better = mended(line, problems)
        if better is not None and better != line and len(visible(better, self._shows)) <= self._width - 7:
            yield f"  so | {visible(better, self._shows)}"

    def _is_wanted(self, problem: Problem) -> bool:
        """Tell whether a problem is of a line, and its code has not been shown so often that it is known."""
        if problem.code in _OF_THE_FILE or (problem.place.line, problem.place.column, problem.code) in _OF_THE_TRIP:
            return False
        self._told[problem.code] += 1
        return self._told[problem.code] <= OFTEN

    def _line(self, file: str, number: int) -> str | None:
        if file != self._file:
            self._file, self._lines = file, typed(self._opened(file)).split("\n")
        return self._lines[number - 1] if number <= len(self._lines) and self._lines != [""] else None


_OF_THE_TRIP = frozenset({(1, 1, "key-missing"), (1, 1, "future")})
"""Places that stand for the whole of a log."""


def by_line(problems: Sequence[Problem]) -> Iterator[Sequence[Problem]]:
    """Give problems in the order they stand, those of one line together."""
    for _, same in groupby(problems, lambda problem: (problem.place.file, problem.place.line)):
        yield list(same)
