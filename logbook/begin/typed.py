"""Names and texts as they must be typed to be read as the same names: in quotes where YAML would take them otherwise."""

import re

_PLAIN = re.compile(r"[^\W_][^:#\[\]{},&*!|>'\"%@`\\]*(?<! )")
"""Text that means itself wherever it stands, in brackets too."""
_SAID_OTHERWISE = frozenset({"null", "true", "false", "yes", "no", "on", "off", "none", "nil"})


def typed(text: str) -> str:
    """Return a name as it is typed."""
    if _PLAIN.fullmatch(text) and text.casefold() not in _SAID_OTHERWISE:
        return text
    return quoted(text)


def quoted(text: str) -> str:
    """Return a text in quotes, as it is typed."""
    return f'"{text}"' if '"' not in text and "\\" not in text else "'" + text.replace("'", "''") + "'"


def named(text: str) -> str:
    """Return a name as it was handed in, in one line and without signs that can't be printed; empty where nothing is left."""
    words = " ".join("".join(letter if letter.isprintable() else " " for letter in text).split())
    return words if any(letter.isalnum() for letter in words) else ""
