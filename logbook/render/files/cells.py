"""One cell of a table as text: exact numbers, moments with their offset, and texts that no spreadsheet takes for a formula."""

import json
import unicodedata
from datetime import datetime
from decimal import Decimal
from functools import lru_cache
from math import isfinite

Cell = str | bool | int | Decimal | float | datetime | tuple[str, ...] | tuple[int, ...] | None

PLACES = 4
"""Decimals of reckoned numbers: of an hour a third of a second; further ones tell one machine from another."""

GUARD = "'"

_STARTS_FORMULA = frozenset("=+-@\N{MINUS SIGN}")
_NEW_CELL = frozenset("\t\r\n")
_UNSEEN = frozenset({"Cc", "Cf", "Zs", "Zl", "Zp"})


def text_of(value: Cell, places: int = PLACES) -> str:  # noqa: PLR0911 - one line a kind of value
    """Return a value as it stands in a table; nothing where it is not known.

    Args:
        value: What people typed is told exactly; what was reckoned is rounded.
        places: Decimals of what was reckoned.
    """
    match value:  # the frequent ones first
        case str():
            return guarded(value)
        case None:
            return ""
        case float():
            return _rounded(value, places)
        case Decimal():
            return f"{value:f}" if value.is_finite() else ""
        case datetime():
            return value.isoformat("T", "seconds")
        case bool():
            return "true" if value else "false"
        case tuple():
            return _listed(value) if value else ""
    return str(value)


def _rounded(value: float, places: int) -> str:
    if not isfinite(value):
        return ""
    text = f"{value:.{places}f}".rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text


@lru_cache(maxsize=4096)
def _listed(values: tuple[str, ...] | tuple[int, ...]) -> str:
    return json.dumps(values, ensure_ascii=False)


@lru_cache(maxsize=4096)
def guarded(text: str) -> str:
    """Return a text with an apostrophe before it where a spreadsheet would take it for a formula.

    That is one which begins with a sign for a formula, also in its wide or small form, also behind spaces and signs that can't be
    seen, or with a sign that begins a new cell. One that begins with an apostrophe of its own gets another, so that whoever takes
    one apostrophe away has every text as it was typed.

    Source:
        CWE-1236, improper neutralization of formula elements in a CSV file.
    """
    return f"{GUARD}{text}" if _is_risky(text) else text


def _is_risky(text: str) -> bool:
    if not text:
        return False
    if text[0] in _NEW_CELL or text[0] == GUARD:
        return True
    first = next((sign for sign in text if unicodedata.category(sign) not in _UNSEEN), "")
    return unicodedata.normalize("NFKC", first)[:1] in _STARTS_FORMULA if first else False
