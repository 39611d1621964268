"""Words as the reader takes them, told to an editor as patterns: any case, with hyphens, underscores and spaces alike.

The patterns keep to what the regular expressions of JSON Schema, ECMAScript and Python share.
"""

import re
from collections.abc import Iterable

from logbook.read.keys import Key, fold_key

_BETWEEN = r"[\s_-]"
BLANK = r"^\s*(?:-+|\?+|~|[nN][uU][lL][lL])?\s*$"
"""A value that is as good as not written."""


def spellings(words: Iterable[str]) -> str:
    """Return a pattern for every way one of the words may be typed."""
    ways = dict.fromkeys(_typed(fold_key(word)) for word in words)
    return rf"^{_BETWEEN}*(?:{'|'.join(ways)}){_BETWEEN}*$"


def other_spellings(key: Key) -> str:
    """Return a pattern for every way a key may be typed but the documented one."""
    return (
        rf"^(?!{re.escape(key.name).replace(chr(92) + ' ', ' ').replace(chr(92) + '-', '-')}$){all_spellings(key)[1:]}"
    )


def all_spellings(key: Key) -> str:
    """Return a pattern for every way a key may be typed, its other words among them."""
    return spellings((key.name, *key.variants))


def _typed(folded: str) -> str:
    """Return the pattern of one word or some words."""
    parts = (f"{_BETWEEN}+" if letter == " " else _letter(letter) for letter in folded)
    return "".join(parts)


def _letter(letter: str) -> str:
    return f"[{letter}{letter.upper()}]" if letter.isalpha() else re.escape(letter)
