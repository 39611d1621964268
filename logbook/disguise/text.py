"""The lines of a log with stand-ins for names, free words, positions and money."""

import re
from collections.abc import Callable, Container, Iterable

from logbook.disguise.lines import Kind, Part, Reader
from logbook.disguise.positions import Step, retyped, texts_of
from logbook.disguise.stand_ins import StandIns
from logbook.disguise.vocabulary import LONG, WORD, Vocabulary, fold_word, is_key, words_of

_WORD = re.compile(WORD)
_PIECE = re.compile(rf"{WORD}|\d+")
_ESCAPE = re.compile(r"\\(?:x[0-9A-Fa-f]{2}|u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}|.)|Ã[^\sA-Za-z]|Â[^\sA-Za-z]|â€.|Ë.")
"""Signs that must stay together: those of double quotes, and letters that were encoded twice."""

_NOT_WRITTEN = frozenset({"", "-", "~", "?", "null", "none", "nil", "yes", "no", "with next"})
_HOLD = re.compile(r"[A-Za-z]{0,2}\d{1,2}")
_TIME = re.compile(r"\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[:.h]\d{2}|(?<![\d.])\d{3,4}(?![\d.])")
_NAMES_IN = re.compile(r"[^,\[\]{}\"]+")
_MONEY = re.compile(
    r"\d[\d.,]*(?:[ \u00a0\u202f]\d{3})*(?=\s*(?:/|per\b|each\b))|[£€$]\s?\d[\d.,]*|\d[\d.,]*\s?[£€$]"
    r"|\b[A-Z]{3}\s?\d[\d.,]*|\d[\d.,]*(?=\s?[A-Z]{3}\b)"
)
_NUMBER = re.compile(r"\d[\d.,]*")
_WEIGHED = re.compile(r"\s*(?:kgs?|t|lbs?|st|cwt|tonnes?|box(?:es)?|baskets?|kits?|%)\b", re.IGNORECASE)
_SHORT = 2
_LISTED = re.compile(r"[^,\[\]{}]+")


class Disguise:
    """Writes lines over with stand-ins.

    Attributes:
        stand_ins: What stands in for what.
    """

    def __init__(self, stand_ins: StandIns, vocabulary: Vocabulary, waters: tuple[str, str] | None = None) -> None:
        """Begin with no names known.

        Args:
            stand_ins: What stands in for what.
            vocabulary: The words that are kept.
            waters: Letters that positions mean where none are typed.
        """
        self.stand_ins = stand_ins
        self._vocabulary, self._waters = vocabulary, waters
        self._words: set[str] = set()
        self._phrases: set[tuple[str, ...]] = set()
        self._of_phrases: re.Pattern[str] | None = None
        self._least = LONG

    def learn(self, lines: Iterable[str]) -> None:
        """Take the names out of the places where names stand, to know them wherever they come again."""
        reader = Reader()
        for line in lines:
            for part in reader.parts(line):
                text = line[part.start : part.end]
                if part.kind is Kind.AFTER_TIME:
                    text = text.partition(",")[2]
                if part.kind in {Kind.NAME, Kind.AFTER_TIME}:
                    for name in _NAMES_IN.findall(text):
                        self._learn(name)
        phrases = sorted(self._phrases, key=len, reverse=True)
        spelt = "|".join(r"[\s_-]+".join(map(re.escape, phrase)) for phrase in phrases)
        self._of_phrases = re.compile(rf"(?<!\w)(?:{spelt})(?!\w)", re.IGNORECASE) if spelt else None

    def _learn(self, name: str) -> None:
        words = tuple(words_of(name))
        self._words.update(word for word in words if len(word) > 1 and not self._vocabulary.knows(word))
        if len(words) > 1 and len(re.findall(r"[^\W_]+", name)) == len(words):
            self._phrases.add(words)

    def written_over(self, lines: Iterable[str], step: Step | None, mild: Container[int] = ()) -> list[str]:
        """Return the lines with stand-ins, in their order.

        Args:
            lines: As they were typed, with what ends them.
            step: How far positions are moved together; None where each is moved alone.
            mild: Numbers of lines whose fault is in a short word, so that these are kept where they are nearly of the trade.
        """
        reader, made = Reader(), []
        for number, line in enumerate(lines, 1):
            self._least = _SHORT if number in mild else LONG
            made.append("".join(self._part(line, part, step) for part in reader.parts(line)))
        return made

    def _part(self, line: str, part: Part, step: Step | None) -> str:
        text = line[part.start : part.end]
        if part.kind is Kind.AS_IT_IS or not text.strip():
            return text
        if part.kind is Kind.FREE:
            return self._around(text, self._free)
        where = list(texts_of(text))
        if part.kind is Kind.POSITION and not where and not _TIME.search(text):
            return self._around(text, self._figures_and_words)
        made, end = "", 0
        for one in where:
            made += self._around(text[end : one.start()], self._of_kind(part.kind, begins=end == 0))
            made += retyped(one[0], step, self.stand_ins, self._waters)
            end = one.end()
        return made + self._around(text[end:], self._of_kind(part.kind, begins=end == 0))

    def _of_kind(self, kind: Kind, *, begins: bool) -> Callable[[str], str]:
        """Return what writes a part of some kind over."""
        if kind is Kind.AFTER_TIME:
            return self._after_time if begins else self._name
        return {Kind.NAME: self._name, Kind.MONEY: self._money, Kind.KEY: self._key}.get(kind, self._trade)

    def _around(self, text: str, write: Callable[[str], str]) -> str:
        """Write a text over but for the signs that must stay together."""
        made, end = "", 0
        for kept in _ESCAPE.finditer(text) if "\\" in text or not text.isascii() else ():
            made += write(text[end : kept.start()]) + kept[0]
            end = kept.end()
        return made + write(text[end:])

    def _free(self, text: str) -> str:
        """Write free words over: names as everywhere, all else afresh."""
        if text.strip().casefold() in _NOT_WRITTEN:
            return text
        return _PIECE.sub(
            lambda found: (
                self.stand_ins.words(found[0])
                if fold_word(found[0]) in self._words
                else self.stand_ins.figures(found[0])
                if found[0].isdigit()
                else self.stand_ins.afresh(found[0])
            ),
            text,
        )

    def _name(self, text: str) -> str:
        """Write names over; numbers and the numbers of pens stay, and so do words of the trade that stand alone."""

        def one(found: re.Match[str]) -> str:
            name = found[0]
            bare = name.strip(" '\t\r\n")
            if bare.casefold() in _NOT_WRITTEN or _HOLD.fullmatch(bare) or not any(map(str.isalpha, bare)):
                return name
            if self._vocabulary.knows(bare):
                return name
            return self.stand_ins.words(name)

        return _NAMES_IN.sub(one, text)

    def _key(self, text: str) -> str:
        """Write a key over unless it is one of a log, or one slip away from that."""
        key, colon, rest = text.partition(":")
        if is_key(key) and fold_word(key.strip()) not in self._words:
            return text
        return self._item(key) + colon + rest

    def _after_time(self, text: str) -> str:
        """Write over what follows a time and a comma."""
        time, comma, name = text.partition(",")
        return self._trade(time) + comma + self._name(name)

    def _money(self, text: str) -> str:
        """Write over all figures but those that are weighed."""
        made = _NUMBER.sub(
            lambda found: found[0] if _WEIGHED.match(text, found.end()) else self.stand_ins.figures(found[0]), text
        )
        return self._words_of_trade(made)

    def _figures_and_words(self, text: str) -> str:
        """Write over what stands where a position belongs and is none."""
        return self._words_of_trade(_NUMBER.sub(lambda found: self.stand_ins.figures(found[0]), text))

    def _trade(self, text: str) -> str:
        """Write over what is no word of the trade, and figures that stand with nothing that is."""
        text = _MONEY.sub(lambda found: self._priced(found[0]), text)
        return _LISTED.sub(lambda found: self._item(found[0]), text)

    def _priced(self, text: str) -> str:
        return _NUMBER.sub(lambda found: self.stand_ins.figures(found[0]), text)

    def _item(self, text: str) -> str:
        """Write over one of several things set off by commas."""
        words = _WORD.findall(text)
        if (
            words
            and not any(map(self._kept, words))
            and not _TIME.search(text)
            and not _HOLD.fullmatch(text.strip(" :\t\r\n'"))
        ):
            text = _PIECE.sub(lambda found: self.stand_ins.figures(found[0]) if found[0].isdigit() else found[0], text)
        return self._words_of_trade(text)

    def _words_of_trade(self, text: str) -> str:
        """Write over names that are known, and words that are not of the trade."""
        made, end = "", 0
        for name in self._of_phrases.finditer(text) if self._of_phrases is not None else ():
            made += self._single_words(text[end : name.start()]) + self.stand_ins.words(name[0])
            end = name.end()
        return made + self._single_words(text[end:])

    def _single_words(self, text: str) -> str:
        def one(found: re.Match[str]) -> str:
            word = found[0]
            of_pen = len(word) == 1 and word.isascii() and text[found.end() : found.end() + 1].isdigit()
            return word if of_pen or self._kept(word) else self.stand_ins.words(word)

        return _WORD.sub(one, text)

    def _kept(self, word: str) -> bool:
        return fold_word(word) not in self._words and self._vocabulary.nearly_knows(word, self._least)
