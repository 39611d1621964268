"""Names as they are matched, and the file names made of them."""

import re
import unicodedata
from collections.abc import Callable
from functools import lru_cache

_PLAIN = str.maketrans(
    {
        "ø": "o",
        "æ": "ae",
        "å": "a",
        "ö": "o",
        "ä": "a",
        "ü": "u",
        "ß": "ss",
        "ð": "d",
        "þ": "th",
        "ł": "l",
        "đ": "d",
        "œ": "oe",
    }
)
_RESERVED = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)(-|$)", re.ASCII)
"""Names that Windows keeps for devices."""
_PLAIN_NAME = re.compile(r"[a-z0-9]+(?: [a-z0-9]+)*", re.ASCII)
_LONGEST = 40
_DIGITS = 6


@lru_cache(maxsize=4096)
def fold_name(text: str) -> str:
    """Return a name as it is matched: NFC, whatever the case and the runs of spaces; hyphens count."""
    return " ".join(unicodedata.normalize("NFC", unicodedata.normalize("NFC", text).casefold()).split())


@lru_cache(maxsize=4096)
def slug(text: str) -> str:
    """Return a short file-name part that is safe everywhere, readable in any script and different for different names.

    Small letters and digits joined by hyphens; letters of the Latin script lose their marks, those of others stay as they are. Where
    that changes or shortens anything, six digits of a digest of the folded name follow, so that two names never share one.
    """
    return _slug(text, _readable)


def bare_slug(text: str) -> str:
    """Return the same in nothing but ASCII, for standards that know no other letters."""
    return _slug(text, _ascii)


def _slug(text: str, letters: Callable[[str], str]) -> str:
    import hashlib

    folded = fold_name(text)
    if _PLAIN_NAME.fullmatch(folded) and len(folded) <= _LONGEST and not _RESERVED.match(folded.replace(" ", "-")):
        return folded.replace(" ", "-")
    words = "-".join(letters(folded.translate(_PLAIN)).split())[:_LONGEST].strip("-")
    digest = hashlib.sha256(folded.encode("utf-8", "surrogatepass")).hexdigest()[:_DIGITS]
    return f"{words or 'v'}-{digest}"


def _ascii(folded: str) -> str:
    """Return the words of a name in ASCII letters and digits."""
    letters = unicodedata.normalize("NFKD", folded).encode("ascii", "ignore").decode().lower()
    return " ".join(re.findall(r"[a-z0-9]+", letters, re.ASCII))


def _readable(folded: str) -> str:
    """Return the words of a name in letters, marks and digits of any script, composed, so that every system spells them the same."""
    bare = re.sub(r"([a-z])[\u0300-\u036f]+", r"\1", unicodedata.normalize("NFKD", folded).casefold())
    composed = unicodedata.normalize("NFC", bare)
    words = "".join(sign if unicodedata.category(sign)[0] in "LMN" else " " for sign in composed).split()
    return " ".join(filter(None, (_without_loose_marks(word) for word in words)))


def _without_loose_marks(word: str) -> str:
    """Return a word without the marks that it begins with, which have no letter to stand on."""
    first = next((place for place, sign in enumerate(word) if unicodedata.category(sign)[0] != "M"), len(word))
    return word[first:]


def plural(name: str) -> str:
    """Return the English plural of a measure's name."""
    if name.endswith("y") and name[-2:-1] not in "aeiou":
        return f"{name[:-1]}ies"
    return f"{name}es" if name.endswith(("s", "x", "z", "ch", "sh")) else f"{name}s"
