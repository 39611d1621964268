"""Plain text for terminals and messages: signs that every one of them has, tables that line up."""

from collections.abc import Iterable, Sequence

from logbook.model.figures import TripHead
from logbook.model.runs import runs_of
from logbook.render import shown
from logbook.render.language import _, _n
from logbook.render.shown import plain

WIDTH = 80
"""Columns that every terminal has."""

_GAP = "  "
_PLAIN = str.maketrans({shown.THIN: " ", "\N{NO-BREAK SPACE}": " ", "\N{MINUS SIGN}": "-", "\N{EN DASH}": "-"})


def bare(text: str) -> str:
    """Return what is shown on pages in signs that every terminal has."""
    return plain(text).translate(_PLAIN)


def dash(text: str) -> str:
    """Return a cell of a table: a dash where nothing is known."""
    return "-" if text == shown.missing() else bare(text)


def numbers_of(numbers: Iterable[int]) -> str:
    """Return numbers as a person lists them: `4`, `2-9, 12`; nothing where there are none."""
    return runs_of(numbers, "-")


def tow_numbers(numbers: Sequence[int]) -> str:
    """Return `tow 4`, or `tows 2-9, 12`."""
    return _n("tow {numbers}", "tows {numbers}", len(numbers)).format(numbers=numbers_of(numbers))


def trip_name(head: TripHead) -> str:
    """Return which trip of which vessel it is."""
    if not head.number:
        return head.vessel
    return _("{vessel}, trip {number}").format(vessel=head.vessel, number=head.number)


def table(rows: Iterable[Sequence[str]], sides: str) -> list[str]:
    """Return rows as lines with columns that line up, to the left `<` or the right `>`."""
    every = list(rows)
    widths = [max((len(row[column]) for row in every), default=0) for column in range(len(sides))]
    return [
        _GAP.join(f"{cell:{side}{width}}" for cell, side, width in zip(row, sides, widths, strict=True)).rstrip()
        for row in every
    ]
