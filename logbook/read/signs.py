"""Signs and words for degrees, minutes, seconds and hemispheres: all that people and old code pages make of them.

Knows which sign stands for which; what the figures between them say is left to `position` and `measured`.
"""

import re

from logbook.read.forms import form
from logbook.read.number import tidied

_DEGREES = ("\u00c2\u00ba", "\u00c2°", "\u00cb\u0161", "\u00ba", "\u02da", "\u2218")
"""What stands for a degree sign; the first three are signs that were encoded twice."""

_MINUTES = ("\u00e2\u20ac\u00b2", "\u00e2\u20ac\u2122", "\u00c2\u00b4", "\u2032", "\u2018", "\u2019", "\u00b4")
_SECONDS = ("\u00e2\u20ac\u00b3", "\u2033", "\u201d", "\u201c")

_LOST_DEGREE = form(r"(?<=[0-9]) ?[\u00f8\u00d8\ufffd] ?(?=[0-9NSEWCF])", re.IGNORECASE)
"""A degree sign that came through a DOS code page, where it is the byte of an ø, or was lost on the way."""

_WORD = form("[a-z]{3}", re.IGNORECASE)
"""What every one of the words has; most positions have none of them."""

_WORDS = form(
    r"(?<![a-z])(?:(degrees?|degs?)|(minutes?|mins?)|(seconds?|secs?)|(north|south|east|west)|"
    r"(latitude|longitude|lat|long|lon))(?![a-z])\.?:?",
    re.IGNORECASE,
)


def degree_signs(text: str) -> str:
    """Return a text with one sign for degrees."""
    if text.isascii():
        return text
    for sign in _DEGREES:
        text = text.replace(sign, "°")
    return _LOST_DEGREE().sub("°", text)


def plain_signs(text: str) -> str:
    """Return a text with one sign each for degrees, minutes and seconds, and hemispheres as letters."""
    typed = degree_signs(text)
    if not typed.isascii():
        for sign in _MINUTES:
            typed = typed.replace(sign, "'")
        for sign in _SECONDS:
            typed = typed.replace(sign, '"')
    typed = tidied(typed.replace("`", "'").replace("''", '"'))
    return typed if _WORD().search(typed) is None else " ".join(_WORDS().sub(_word, typed).split())


def _word(match: re.Match[str]) -> str:
    degrees, minutes, seconds, hemisphere, _ = match.groups()
    if hemisphere:
        return str(hemisphere[0].upper())
    return "°" if degrees else "'" if minutes else '"' if seconds else " "
