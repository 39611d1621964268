"""Numbers as people type them: which digits, marks and signs are read, and what is said of the others.

Knows no unit and no kind of value; those who do hand in the words for their messages. Only ASCII digits are read, so
that nothing Python's own `int` and `float` would take (`1_000`, `1e3`, `nan`, Arabic digits) slips in as a figure.
"""

import re
import unicodedata
from collections.abc import Callable, Iterable
from decimal import Decimal
from typing import Any

from logbook.read.forms import form
from logbook.read.said import Fault, Said, doubtful, mended, wrong

CODES = frozenset(
    {
        "approximate",
        "comma-ambiguous",
        "comma-thousands",
        "count-unreadable",
        "dot-decimal",
        "number-marks",
        "number-unreadable",
        "out-of-range",
    }
)

FIGURE = r"(?:[0-9]+(?:[ '][0-9]{3}(?![0-9]))*(?:[.,][0-9]+)*|[.,][0-9]+)"
"""Digits with the marks people set between them; `figure` tells which of them are sound."""

_MAX_DIGITS = 15
_MAX_COUNT = 10**9
_MAX_HINTED = 60
_MAX_LISTED = 1000
_MAX_TEXT = 6_000

_MARKS = str.maketrans(
    dict.fromkeys("\u2010\u2011\u2012\u2013\u2014\u2212", "-")
    | dict.fromkeys("\u2019\u02bc", "'")
    | dict.fromkeys("\u200b\u200e\u200f\u2060\ufeff")
)
_BLANK = re.compile(r"(?:-+|\?+|~|null)?", re.IGNORECASE)
_NOTHING = frozenset({"none", "nil", "0"})
_ABOUT = form(r"(?:~|≈|(?:about|abt|approximately|approx|circa|ca)\b\.?)\s*(?=[0-9])", re.IGNORECASE)
_SOUND = form(r"([0-9]{1,3}(?:[ '][0-9]{3})+|[0-9]*)((?:[.,][0-9]+)*)")
_COMMA_THOUSANDS = form(r"[1-9][0-9]{0,2}((?:,[0-9]{3})+)(\.[0-9]+)?")
_DOT_THOUSANDS = form(r"[1-9][0-9]{0,2}\.[0-9]{3}")
_SIGNED = form(rf"([+-]?) ?({FIGURE})")
_NUMBERS = form(r"(?:[0-9]{1,9}(?: ?- ?[0-9]{1,9})?(?: and |, ?| |$))+", re.IGNORECASE)
_MINUS = form(r"^minus ?(?=[0-9])", re.IGNORECASE)
_UNDERSCORE = form(r"(?<=[0-9])_(?=[0-9])")
_EXPONENT = form(r"\b([0-9]+(?:\.[0-9]+)?)e\+?([0-9])\b", re.IGNORECASE)
_FRACTION = form(r"(?:\b([0-9]{1,4}) ?)?([½¼¾]|\b(?:1/2|1/4|3/4)\b)")
_PARTS = {"½": ".5", "1/2": ".5", "¼": ".25", "1/4": ".25", "¾": ".75", "3/4": ".75"}


def tidied(text: str) -> str:
    """Return a text with one kind of hyphen and apostrophe, single spaces between its words and none round it.

    A text far too long for any value ends in a mark that no value has.
    """
    if len(text) > _MAX_TEXT:
        text = f"{text[:_MAX_TEXT]}\ufffd"
    return " ".join((text if text.isascii() else text.translate(_MARKS)).split())


def quoted(text: str) -> str:
    """Return a text in quotes for a message: cut short where it is long, and fit to print."""
    text = text.strip()
    if len(text) > _MAX_HINTED:
        text = f"{text[: _MAX_HINTED - 20]}…"
    return "'" + "".join(c if c.isprintable() else "\ufffd" for c in text) + "'"


def plain(number: Decimal) -> str:
    """Return a number in plain digits, without an exponent and without noughts that say nothing."""
    digits = f"{number:f}"
    return digits.rstrip("0").rstrip(".") if "." in digits else digits


def is_blank(text: str) -> bool:
    """Tell whether a value is not written: nothing, `-`, `~`, `?` or `null`."""
    first = text[:1]
    if first.isalnum() and first not in "nN":
        return False  # nearly every value
    return _BLANK.fullmatch(tidied(text)) is not None


def is_nothing(text: str) -> bool:
    """Tell whether a value says that there was none: `none`, `nil` or `0`."""
    return text.strip().casefold() in _NOTHING


def exact(text: str, found: list[Fault]) -> str:
    """Return a figure without the `about` or `~` before it, which is noted."""
    said = _ABOUT().match(text)
    if said is None or len(text) > _MAX_HINTED or not text.isprintable():
        return text
    rest = text[said.end() :]
    shown = rest.rstrip(". ")
    found.append(mended("approximate", f"{quoted(text)} is read as {shown}", f"write {shown}"))
    return rest


def too_long(digits: str) -> Fault | None:
    """Return the fault of digits that go on and on, or None."""
    if len(digits) <= _MAX_DIGITS:
        return None
    return wrong("out-of-range", f"{quoted(digits)} has too many digits", "write the figure as it was read off")


def figure(
    typed: str, found: list[Fault], *, unit: str = "", thousands: bool = False, dots: bool = False
) -> Decimal | None:
    """Return the number that digits and marks stand for; None, with the reason found, where they are no sound number.

    Args:
        typed: What `FIGURE` matched.
        found: Faults so far.
        unit: Unit typed with it, for messages and hints.
        thousands: True for kilograms and pounds, where a comma before exactly three digits marks thousands.
        dots: True where a dot before exactly three digits wants a look too, though it is decimal; so with thousands.
    """
    endless = too_long(typed)
    if endless is not None:
        found.append(endless)
        return None
    if typed.isdigit():
        return Decimal(typed)
    sound = _SOUND().fullmatch(typed)
    if sound is None:
        found.append(_marks(f"{typed} {unit}", f"write {typed.replace(' ', '').replace(chr(39), '')} {unit}"))
        return None
    whole, tail = sound[1].replace(" ", "").replace("'", ""), sound[2]
    if not tail:
        return Decimal(whole)
    return _with_marks(whole + tail, found, unit, thousands, dots or thousands, whole != sound[1])


def _with_marks(
    bare: str,
    found: list[Fault],
    unit: str,
    thousands: bool,  # noqa: FBT001 - private
    dots: bool,  # noqa: FBT001
    grouped: bool,  # noqa: FBT001
) -> Decimal | None:
    """Return the number of digits with dots or commas among them, by the rules for both."""
    shown = f"{bare} {unit}".strip()
    comma = None if grouped else _COMMA_THOUSANDS().fullmatch(bare)
    if comma is not None:
        return _comma_thousands(bare, found, unit, sure=thousands or len(comma[1]) > len(",000") or bool(comma[2]))
    if bare.count(".") + bare.count(",") > 1:
        found.append(_marks(shown, ""))
        return None
    number = Decimal(bare.replace(",", "."))
    if dots and not grouped and _DOT_THOUSANDS().fullmatch(bare):
        meant = bare.replace(".", "")
        message = f"a dot is decimal, so '{shown}' is read as {plain(number)} {unit}".strip()
        found.append(doubtful("dot-decimal", message, f"if thousands were meant, write {meant} {unit}".strip()))
    return number


def _comma_thousands(bare: str, found: list[Fault], unit: str, *, sure: bool) -> Decimal | None:
    meant = bare.replace(",", "")
    shown = f"{bare} {unit}".strip()
    if sure:
        read = f"{meant} {unit}".strip()
        found.append(mended("comma-thousands", f"'{shown}' is read as {read}", f"write {read}"))
        return Decimal(meant)
    decimal = plain(Decimal(bare.replace(",", ".")))
    hint = f"write {meant} {unit}".rstrip() + f" or {decimal} {unit}".rstrip()
    found.append(wrong("comma-ambiguous", f"the comma in '{shown}' may mark thousands or decimals", hint))
    return None


def _marks(shown: str, hint: str) -> Fault:
    message = f"the marks between the digits of {quoted(shown)} are not sound"
    return wrong("number-marks", message, hint.strip() or "write the digits with one dot at most: 1200 or 1.2")


def meant(text: str) -> str:
    """Return a text with its numbers as they are to be typed; empty where nothing in it wants changing.

    Digits of other scripts, `1_000`, `1e3`, `minus 2` and fractions are put into plain digits.
    """
    if len(text) > _MAX_HINTED:
        return ""
    fixed = "".join(str(unicodedata.decimal(c)) if not c.isascii() and c.isdecimal() else c for c in text)
    fixed = _UNDERSCORE().sub("", _MINUS().sub("-", fixed))
    fixed = _EXPONENT().sub(lambda m: plain(Decimal(m[0].replace("+", ""))), fixed)
    fixed = _FRACTION().sub(lambda m: (m[1] or "0") + _PARTS[m[2]], fixed)
    return "" if fixed == text else fixed


def better(text: str, parse: Callable[[str], Said[Any]], otherwise: str) -> str:
    """Return a hint: the text as it is to be typed, where it would then be read, else the other words."""
    fixed = meant(text)
    return f"write {fixed}" if fixed and parse(fixed).value is not None else otherwise


def near(typed: str, words: Iterable[str]) -> str:
    """Return the known word nearest to what was typed; empty where none is near."""
    import difflib

    return next(iter(difflib.get_close_matches(typed[:40].casefold(), list(words), n=1, cutoff=0.7)), "")


def parse_count(text: str) -> Said[int]:
    """Return a whole number."""
    typed = tidied(text)
    if typed.isascii() and typed.isdigit() and len(typed) <= _MAX_DIGITS:
        return Said(int(typed)) if int(typed) <= _MAX_COUNT else _range(text)
    said = parse_number(text)
    if said.value is None:
        return Said(None, said.faults)
    if said.value != int(said.value):
        return Said(
            None, (wrong("count-unreadable", f"{quoted(text)} is no whole number", "write it without decimals"),)
        )
    return Said(int(said.value), said.faults) if 0 <= said.value <= _MAX_COUNT else _range(text)


def _range(text: str) -> Said[int]:
    fault = wrong(
        "out-of-range", f"{quoted(text)} is out of range for a count", f"write a number from 0 to {_MAX_COUNT}"
    )
    return Said(None, (fault,))


def parse_numbers(text: str) -> Said[tuple[int, ...]]:
    """Return whole numbers in the order typed, ranges counted out: `12-14, 16`."""
    numbers: list[int] = []
    for match in re.finditer(r"([0-9]{1,9})(?: ?- ?([0-9]{1,9}))?", tidied(text)):
        first, last = int(match[1]), int(match[2] or match[1])
        if not first <= last < first + _MAX_LISTED - len(numbers):
            break
        numbers.extend(range(first, last + 1))
    else:
        if _NUMBERS().fullmatch(tidied(text)):
            return Said(tuple(numbers))
    return Said(None, (wrong("count-unreadable", f"{quoted(text)} is no list of numbers", "write 12-14, or 12, 14"),))


def parse_number(text: str) -> Said[Decimal]:
    """Return a plain decimal number, with or without a sign."""
    found: list[Fault] = []
    match = _SIGNED().fullmatch(exact(tidied(text), found))
    if match is None:
        hint = better(tidied(text), parse_number, "write it in digits: 12 or 1.5")
        return Said(None, (wrong("number-unreadable", f"{quoted(text)} is no number", hint),))
    number = figure(match[2], found)
    if number is None:
        return Said(None, tuple(found))
    return Said(-number if match[1] == "-" else number, tuple(found))
