"""Names as they are matched, and the file names made of them."""

import re
import unicodedata
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
    """Return a short file-name part that is safe everywhere, readable and different for different names.

    Lower-case ASCII letters and digits joined by hyphens. Where that loses or shortens anything, six digits of a digest of the
    folded name follow, so that two names never share one.
    """
    import hashlib

    folded = fold_name(text)
    if _PLAIN_NAME.fullmatch(folded) and len(folded) <= _LONGEST and not _RESERVED.match(folded.replace(" ", "-")):
        return folded.replace(" ", "-")
    letters = unicodedata.normalize("NFKD", folded.translate(_PLAIN)).encode("ascii", "ignore").decode()
    words = "-".join(re.findall(r"[a-z0-9]+", letters.lower(), re.ASCII))[:_LONGEST].strip("-")
    digest = hashlib.sha256(folded.encode("utf-8", "surrogatepass")).hexdigest()[:_DIGITS]
    return f"{words or 'v'}-{digest}"


def plural(name: str) -> str:
    """Return the English plural of a measure's name."""
    if name.endswith("y") and name[-2:-1] not in "aeiou":
        return f"{name[:-1]}ies"
    return f"{name}es" if name.endswith(("s", "x", "z", "ch", "sh")) else f"{name}s"
