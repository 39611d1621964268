"""Makes signs visible that nobody sees, that stand on others, or that would move a cursor or turn the direction of writing."""

import unicodedata
from collections.abc import Callable, Iterator

_BLANK = frozenset("\u115f\u1160\u2800\u3164\uffa0")
"""Letters that show as nothing."""

_MARKS = 2
"""Marks that may stand on one letter; a pile of them would cover the lines above."""


def visible(text: str, can_show: Callable[[str], bool] = str.isprintable) -> str:
    """Return text that is letters and nothing else: what is no letter is told by its number.

    Args:
        text: As it was typed.
        can_show: Tells whether the terminal has a sign.
    """
    return "".join(piece for piece, _ in pieces_of(text, can_show))


def pieces_of(text: str, can_show: Callable[[str], bool] = str.isprintable) -> Iterator[tuple[str, int]]:
    """Give what is shown for each sign and how many columns it takes."""
    marks = _MARKS  # one at the very beginning would stand on the frame
    for sign in text:
        if sign == "\t":
            told, width, marks = "<TAB>", 5, _MARKS
        elif unicodedata.category(sign) in {"Mn", "Me"} and marks < _MARKS and can_show(sign):
            told, width, marks = sign, 0, marks + 1
        elif _is_plain(sign) and can_show(sign):
            told, width, marks = sign, 2 if unicodedata.east_asian_width(sign) in {"W", "F"} else 1, 0
        else:
            told = f"<U+{ord(sign):04X}>"
            width, marks = len(told), _MARKS
        yield told, width


def _is_plain(sign: str) -> bool:
    return sign.isprintable() and sign not in _BLANK and unicodedata.category(sign) not in {"Mn", "Me"}
