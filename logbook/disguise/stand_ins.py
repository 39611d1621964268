"""Stand-ins for words and figures: as long, capitals where capitals were, the same one for the same name; nobody can go back.

They are made by chance and kept nowhere.
"""

import re
import unicodedata
from random import Random

from logbook.disguise.vocabulary import WORD, fold_word

_PIECE = re.compile(rf"{WORD}|\d+")
_LETTERS = "qxzjvk"
"""Letters of stand-ins. No word, unit or point of the compass is made of these alone, and none lies one slip from one."""

_SINGLE = "qxzjvyubr"
"""Letters that stand in for initials; none of them is a unit or a point of the compass."""

_TRIES = 50
_DOUBLED = "ÃÂâË"


class StandIns:
    """What stands in for what in one log and its fleet file.

    Attributes:
        chance: Where stand-ins come from.
    """

    def __init__(self, chance: Random) -> None:
        """Begin with none."""
        self.chance = chance
        self._of: dict[str, str] = {}
        self._taken: set[str] = set()

    def words(self, text: str, *, figures: bool = True) -> str:
        """Return a name with its words, and its figures where that is wanted, replaced by those that always stand in."""
        return _PIECE.sub(lambda found: self._same(found[0], figures=figures), text)

    def afresh(self, text: str) -> str:
        """Return a text with letters and figures that stand in for these this once."""
        return "".join(self._letter(sign, _LETTERS) if sign.isalpha() else self._digit(sign) for sign in text)

    def figures(self, text: str) -> str:
        """Return a number with other digits; its dots, commas and leading noughts stay."""
        if not any(sign.isdigit() and unicodedata.digit(sign) for sign in text):
            return text
        for _ in range(_TRIES):
            other = "".join(
                self._digit(sign, least=1 if at == 0 and sign != "0" else 0)
                if not (sign == "0" and not text[:at].strip("0-+. "))
                else sign
                for at, sign in enumerate(text)
            )
            if other != text:
                return other
        return text

    def _same(self, piece: str, *, figures: bool) -> str:
        if piece.isdecimal():
            if not figures:
                return piece
        elif not piece.isalpha():
            bare = iter(
                self._same("".join(filter(str.isalpha, piece)), figures=figures) if any(map(str.isalpha, piece)) else ""
            )
            return "".join(next(bare) if sign.isalpha() else sign for sign in piece)
        key = unicodedata.normalize("NFC", fold_word(piece))
        other = self._of.get(key) or self._made(piece.casefold() if len(piece.casefold()) == len(piece) else piece, key)
        if len(other) != len(piece):
            return self.afresh(piece)
        return "".join(
            made.upper() if sign.isupper() and len(made.upper()) == 1 else made
            for sign, made in zip(piece, other, strict=True)
        )

    def _made(self, piece: str, key: str) -> str:
        """Make a stand-in, another for each word as far as there are letters enough."""
        letters = _SINGLE if len(piece) == 1 else _LETTERS
        for _ in range(_TRIES):
            other = self.figures(piece) if piece.isdecimal() else "".join(self._letter(sign, letters) for sign in piece)
            if other not in self._taken:
                break
        self._taken.add(other)
        self._of[key] = other
        return other

    def _letter(self, sign: str, letters: str) -> str:
        """Return a letter that stands in for one, of as many bytes and as wide."""
        if sign.isascii():
            made = self.chance.choice(letters)
            return made.upper() if sign.isupper() else made
        if sign in _DOUBLED or sign in "ªºµ":
            return sign
        size = len(sign.encode("utf-8", "surrogatepass"))
        wide = unicodedata.east_asian_width(sign) in {"W", "F"}
        plain = {2: "ø", 3: "魚" if wide else "ẟ", 4: "𐐨"}[size]
        return "Ø" if size == 2 and sign.isupper() else plain  # noqa: PLR2004 - bytes of UTF-8

    def _digit(self, sign: str, least: int = 0) -> str:
        """Return a digit that stands in for one, of the same script; any other sign as it is."""
        if not sign.isdigit():
            return sign
        nought = ord(sign) - unicodedata.digit(sign)
        if not chr(nought).isdigit():
            return sign
        return chr(nought + self.chance.randint(least, 9))
