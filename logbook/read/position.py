"""Positions as people type them: degrees and minutes, degrees alone, or minutes and seconds, with any usual sign.

Knows hemispheres, their order and the bounds of the figures; whether a place makes sense is left to others.
"""

import re

from msgspec import Struct
from msgspec.structs import replace

from logbook.model.problem import Severity
from logbook.model.quantity import Position
from logbook.read.forms import form
from logbook.read.number import better, quoted
from logbook.read.said import Fault, Said, doubtful, mended, wrong
from logbook.read.signs import plain_signs

CODES = frozenset(
    {
        "hemisphere-missing",
        "position-decimal",
        "position-minutes",
        "position-order",
        "position-range",
        "position-run-together",
        "position-sign",
        "position-uneven",
        "position-unreadable",
    }
)

_MAX_DIGITS = 20
_MAX_PAIR = 100
_FORMS = "write degrees and minutes: 58 52.4N 015 10.0W"

_COMMON = re.compile(
    r"([0-8]?[0-9])[ °-]([0-5]?[0-9](?:\.[0-9]+)?)'? ?([NS]) ([01]?[0-9]?[0-9])[ °-]([0-5]?[0-9](?:\.[0-9]+)?)'? ?([EW])"
)

_NUMBER = r"[0-9]+(?:[.,][0-9]+)?"
_BODY = (
    rf"([+-]?) ?({_NUMBER})(?:(?: ?° ?| ?: ?| ?- ?| )({_NUMBER})(?:(?: ?' ?| ?: ?| ?- ?| )({_NUMBER}))?)? ?[°'\"]? ?"
)
_AFTER = form(rf"{_BODY}([NSEW])(?: - | ?[,;/]? ?){_BODY}([NSEW])?", re.IGNORECASE)
_BEFORE = form(rf"([NSEW]) ?{_BODY}(?:- |[,;/]? ?)([NSEW]) ?{_BODY}", re.IGNORECASE)
_HALF_AFTER = form(rf"{_BODY}([NSEW])?", re.IGNORECASE)
_HALF_BEFORE = form(rf"([NSEW]) ?{_BODY}", re.IGNORECASE)
_SIGNED = form(rf"([+-]?) ?({_NUMBER}) ?°?(?: ?[,;/] ?| )([+-]?) ?({_NUMBER}) ?°?")
_PARTS = form(_NUMBER)
_LETTERLESS = form(r"[0-9 .°'\":,;/-]+")
_RUN_TOGETHER = form(r"([0-9]{2,3})([0-9]{2}(?:\.[0-9]+)?)")


class _Half(Struct, frozen=True, kw_only=True):
    """One coordinate as typed.

    Attributes:
        sign: `+`, `-` or nothing.
        parts: Degrees, then minutes and seconds where they were typed.
        letter: N, S, E or W; empty where none was typed.
    """

    sign: str
    parts: tuple[str, ...]
    letter: str


def parse_position(text: str, waters: tuple[str, str] | None = None) -> Said[Position]:
    """Return a position.

    Args:
        text: What was typed, latitude first.
        waters: Hemisphere letters meant where none are typed, as `("N", "W")`; None where that is an error.
    """
    common = _COMMON.fullmatch(text)
    if common is not None:
        degrees, minutes, north, degrees_, minutes_, east = common.groups()
        latitude = int(degrees) + float(minutes) / 60
        longitude = int(degrees_) + float(minutes_) / 60
        if longitude <= 180:  # noqa: PLR2004 - degrees in half a turn
            return Said(
                Position(
                    latitude=latitude if north == "N" else 0.0 - latitude,
                    longitude=longitude if east == "E" else 0.0 - longitude,
                    typed=text,
                )
            )
    typed = plain_signs(text)
    halves = _halves(typed)
    if halves is None or any(len(part) > _MAX_DIGITS for half in halves for part in half.parts):
        return Said(None, (_unreadable(text, typed, waters),))
    return _placed(text.strip(), halves, waters)


def parse_pair(first: str, second: str, waters: tuple[str, str] | None = None) -> Said[Position]:
    """Return a position typed as a list of its two coordinates."""
    text = f"{first.strip()}, {second.strip()}"
    halves = _half(plain_signs(first)), _half(plain_signs(second))
    if halves[0] is None or halves[1] is None or len(text) > _MAX_PAIR:
        bad = first if halves[0] is None else second
        fault = wrong(
            "position-unreadable", f"{quoted(bad)} is no latitude or longitude", "write [58 52.4N, 015 10.0W]"
        )
        return Said(None, (fault,))
    return _placed(text, (halves[0], halves[1]), waters)


def _halves(typed: str) -> tuple[_Half, _Half] | None:
    """Return the two coordinates of a text, or None where they can't be told apart."""
    match = _AFTER().fullmatch(typed)
    if match is not None:
        groups = match.groups()
        return _made(groups[0:4], groups[4]), _made(groups[5:9], groups[9])
    match = _BEFORE().fullmatch(typed)
    if match is not None:
        groups = match.groups()
        return _made(groups[1:5], groups[0]), _made(groups[6:10], groups[5])
    match = _SIGNED().fullmatch(typed)
    if match is not None and (match[1] or match[3] or not match[2].isdigit()):
        return _made((match[1], match[2]), None), _made((match[3], match[4]), None)
    bare, letter = (typed[:-1], typed[-1:]) if typed[-1:].upper() in tuple("NSEW") else (typed, "")
    parts = _PARTS().findall(bare) if _LETTERLESS().fullmatch(bare) else []
    if len(parts) not in (4, 6):
        return None
    half = len(parts) // 2
    return _made(("", *parts[:half]), None), _made(("", *parts[half:]), letter)


def _half(typed: str) -> _Half | None:
    """Return one coordinate of a text."""
    match = _HALF_AFTER().fullmatch(typed)
    if match is not None:
        return _made(match.groups()[0:4], match[5])
    match = _HALF_BEFORE().fullmatch(typed)
    return None if match is None else _made(match.groups()[1:5], match[1])


def _made(groups: tuple[str | None, ...], letter: str | None) -> _Half:
    parts = tuple(part.replace(",", ".") for part in groups[1:] if part)
    return _Half(sign=groups[0] or "", parts=parts, letter=(letter or "").upper())


def _unreadable(text: str, typed: str, waters: tuple[str, str] | None) -> Fault:
    hint = better(typed, lambda fixed: parse_position(fixed, waters), _FORMS)
    return wrong("position-unreadable", f"{quoted(text)} is no position", hint)


def _placed(text: str, halves: tuple[_Half, _Half], waters: tuple[str, str] | None) -> Said[Position]:
    """Return the position of two coordinates, or say what is wrong with them."""
    found: list[Fault] = []
    first, second = halves
    if first.letter in ("E", "W") and second.letter in ("", "N", "S"):
        first, second = second, first
        found.append(mended("position-order", f"{quoted(text)} has the longitude first", "write the latitude first"))
    letters = _hemispheres(text, first, second, waters, found)
    if letters is None:
        return Said(None, tuple(found))
    first, second = _taken_apart(first, found), _taken_apart(second, found)
    latitude, longitude = _degrees(text, first, 90, found), _degrees(text, second, 180, found)
    if latitude is None or longitude is None:
        return Said(None, tuple(fault for fault in found if fault.severity is Severity.ERROR))
    found.extend(_doubts(text, first, second, letters))
    return Said(
        Position(
            latitude=0.0 - latitude if letters[0] == "S" else latitude,
            longitude=0.0 - longitude if letters[1] == "W" else longitude,
            typed=text,
        ),
        tuple(found),
    )


def _hemispheres(
    text: str, first: _Half, second: _Half, waters: tuple[str, str] | None, found: list[Fault]
) -> tuple[str, str] | None:
    """Return the letters of a latitude and a longitude: as typed, by their signs, or those of the fleet's waters."""
    if first.sign or second.sign:
        if first.letter or second.letter:
            found.append(
                wrong("position-sign", f"{quoted(text)} has signs and letters", "leave out the sign or the letter")
            )
            return None
        return ("S" if first.sign == "-" else "N", "W" if second.sign == "-" else "E")
    letters = (first.letter or (waters[0] if waters else ""), second.letter or (waters[1] if waters else ""))
    if "" in letters:
        shown = f"{_shown(first, letters[0] or 'N')} {_shown(second, letters[1] or 'W')}"
        hint = f"write {shown} if that is meant, or set `waters: N W` in the fleet file"
        found.append(wrong("hemisphere-missing", f"{quoted(text)} does not say N or S, E or W", hint))
        return None
    if letters[0] not in "NS" or letters[1] not in "EW":
        message = f"{quoted(text)} is not one latitude and one longitude"
        found.append(wrong("position-unreadable", message, _FORMS))
        return None
    return letters


def _degrees(text: str, half: _Half, most: int, found: list[Fault]) -> float | None:
    """Return a coordinate in degrees without its sign; None, with the reason found, where it is out of bounds."""
    parts = half.parts
    if any("." in part for part in parts[:-1]):
        message = f"{quoted(text)} has decimals before its last figure"
        found.append(wrong("position-unreadable", message, _FORMS))
        return None
    numbers = [float(part) for part in parts]
    if any(number >= 60 for number in numbers[1:]):  # noqa: PLR2004 - minutes in a degree
        what = "minutes" if numbers[1] >= 60 else "seconds"  # noqa: PLR2004
        found.append(wrong("position-minutes", f"{quoted(text)} has 60 or more {what}", f"{what} go from 0 to 59.9"))
        return None
    degrees = sum(number / 60.0**n for n, number in enumerate(numbers))
    if degrees > most:
        what = "latitude" if most == 90 else "longitude"  # noqa: PLR2004 - degrees from equator to pole
        found.append(wrong("position-range", f"{quoted(text)} has a {what} over {most} degrees", _FORMS))
        return None
    return degrees


def _shown(half: _Half, letter: str) -> str:
    return f"{' '.join(half.parts)}{letter}"


def _taken_apart(half: _Half, found: list[Fault]) -> _Half:
    """Return a coordinate with degrees and minutes that were run together taken apart; degrees never have four digits."""
    run = _RUN_TOGETHER().fullmatch(half.parts[0]) if len(half.parts) == 1 else None
    if run is None:
        return half
    message = f"{run[1]} degrees {run[2]} minutes are read from '{half.parts[0]}'"
    found.append(mended("position-run-together", message, f"write {run[1]} {run[2]}{half.letter}"))
    return replace(half, parts=(run[1], run[2]))


def _doubts(text: str, first: _Half, second: _Half, letters: tuple[str, str]) -> list[Fault]:
    """Return what wants a look in a position that was read: degrees that may be minutes, and minutes left out."""
    halves = (first, second)
    if all(_looks_like_minutes(half) for half in halves):
        shown = " ".join(
            f"{half.parts[0].replace('.', ' ')}{letter}" for half, letter in zip(halves, letters, strict=True)
        )
        message = f"{quoted(text)} is read as decimal degrees"
        return [doubtful("position-decimal", message, f"for degrees and minutes write {shown}")]
    whole = [len(half.parts) == 1 and half.parts[0].isdigit() for half in halves]
    if any(whole) and not all(whole):
        what = "latitude" if whole[0] else "longitude"
        return [doubtful("position-uneven", f"the {what} in {quoted(text)} has no minutes", "write 00 for none")]
    return []


def _looks_like_minutes(half: _Half) -> bool:
    """Tell whether decimal degrees could be degrees and whole minutes set apart by a dot."""
    _, _, decimals = half.parts[0].partition(".")
    return len(half.parts) == 1 and len(decimals) == len("59") and decimals < "60"
