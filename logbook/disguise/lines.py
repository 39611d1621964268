"""What each part of a line is, as far as that can be told of a log that may not read: a name, free words, money, or of the trade.

Goes by keys, and by how far lines are set in below them. Where it is in doubt it takes a part for more private than it is.
"""

import re
from collections.abc import Iterator
from enum import Enum
from functools import cache

from msgspec import Struct

from logbook.disguise.vocabulary import UNSEEN, is_key, trade_words
from logbook.read.keys import fold_key, one_slip


class Kind(Enum):
    """What a part of a line is."""

    TRADE = "trade"
    NAME = "name"
    AFTER_TIME = "after time"
    FREE = "free"
    MONEY = "money"
    POSITION = "position"
    KEY = "key"
    AS_IT_IS = "as it is"


class Part(Struct, frozen=True, kw_only=True):
    """A part of a line.

    Attributes:
        start: Where it begins.
        end: Where it ends.
        kind: What it is.
    """

    start: int
    end: int
    kind: Kind


_KINDS = {
    **dict.fromkeys(
        (
            *("vessel", "trip", "skipper", "crew", "who", "port", "ground", "net", "pen", "bound for", "item", "name"),
            *("registration", "fleet", "home port", "authority"),
        ),
        Kind.NAME,
    ),
    **dict.fromkeys(("sailed", "landed", "turned for home"), Kind.AFTER_TIME),
    **dict.fromkeys(
        ("remarks", "remark", "damage", "gear lost", "wants", "quality", "bottom", "why"),
        Kind.FREE,
    ),
    **dict.fromkeys(("prices", "price", "expenses", "settlement", "shares", "boat's share"), Kind.MONEY),
    **dict.fromkeys(("from", "to", "via", "position", "within"), Kind.POSITION),
    **dict.fromkeys(("zone", "language", "currency", "waters"), Kind.AS_IT_IS),
}
_INHERITED = frozenset({Kind.FREE, Kind.MONEY, Kind.NAME})
_KEY = re.compile(
    r"(?:^[ \t]*(?:[-–—•][ \t]*)*|[{,\[][ \t]*)(?P<key>[^\s:{}\[\],#\"|>-][^:{}\[\],#\"|>]*?)[ \t]*[:：](?=[\s]|$)"
)
_ODD_KEY = re.compile(r"^[ \t]*(?:[-–—•][ \t]*)*(?P<key>[^:\s{\[–—•-][^:]{1,30}?)[ \t]*[:：](?=[\s]|$)")
"""A key at the beginning of a line, with whatever sign has got into it."""

_NO_COLON = re.compile(
    r"^[ \t]*(?:[-–—•][ \t]*)*(?P<key>" + "|".join(sorted(_KINDS, key=len, reverse=True)) + r")\b[ \t]*[=:：;]?[ \t]*",
    re.IGNORECASE,
)
_UNSEEN = re.compile(f"[{UNSEEN}]+")
_SET_IN = re.compile(r"[ \t]*")
_DASH = re.compile(r"[ \t]*[-–—•](?:[ \t]|$)")
_COMMENT = re.compile(r"(?:^|(?<=\s))#.*$", re.DOTALL)
_TEXT_BLOCK = re.compile(r"[|>][-+0-9]*\s*$")


class Reader:
    """Reads lines one after the other, and knows what they stand below."""

    def __init__(self) -> None:
        """Begin at the top of a file."""
        self._above: list[tuple[int, Kind]] = []

    def parts(self, line: str) -> Iterator[Part]:
        """Give the parts of a line, in order and without a gap."""
        found = _SET_IN.match(line)
        set_in = found.end() if found else 0
        if not line.strip():
            yield Part(start=0, end=len(line), kind=Kind.TRADE)
            return
        dashed = _DASH.match(line) is not None
        while self._above and (self._above[-1][0] > set_in or (self._above[-1][0] == set_in and not dashed)):
            self._above.pop()
        above = self._above[-1][1] if self._above else Kind.TRADE
        end = len(line)
        if above is not Kind.FREE:
            comment = _COMMENT.search(line)
            end = comment.start() if comment is not None else len(line)
        yield from self._of_entries(line, end, above)
        if end < len(line):
            yield Part(start=end, end=len(line), kind=Kind.FREE)

    def _of_entries(self, line: str, end: int, above: Kind) -> Iterator[Part]:
        """Give the parts of a line without its comment: before its first key, and each key with its value."""
        if above is Kind.FREE:
            yield Part(start=0, end=end, kind=Kind.FREE)
            return
        odd = _ODD_KEY.match(line, 0, end)
        first = [(odd.start("key"), odd.end(), odd["key"])] if odd is not None and is_key(odd["key"]) else []
        begins = first[0][1] if first else 0
        keys = first + [(one.start("key"), one.end(), one["key"]) for one in _KEY.finditer(line, begins, end)]
        if not keys:
            bare = _NO_COLON.match(line, 0, end)
            keys = [(bare.start("key"), bare.end(), bare["key"])] if bare is not None else []
        yield Part(start=0, end=keys[0][0] if keys else end, kind=above)
        for number, (start, begins, key) in enumerate(keys):
            until = keys[number + 1][0] if number + 1 < len(keys) else end
            kind = _kind_of(key)
            if kind is Kind.TRADE and above in _INHERITED:
                kind = above
            yield Part(start=start, end=begins, kind=Kind.NAME if above is Kind.NAME else Kind.KEY)
            yield Part(start=begins, end=until, kind=kind)
            if number == 0:
                inside = kind if kind in _INHERITED or _TEXT_BLOCK.search(line[begins:end]) else Kind.TRADE
                self._above.append((start, Kind.FREE if _TEXT_BLOCK.search(line[begins:end]) else inside))


@cache
def _kind_of(key: str) -> Kind:
    """Return what the value of a key is, also where there is a slip in the key."""
    folded = fold_key(_UNSEEN.sub("", key))
    if folded in _KINDS:
        return _KINDS[folded]
    if all(word in trade_words() for word in folded.split()):
        return Kind.TRADE
    return next((kind for known, kind in _KINDS.items() if one_slip(folded, known)), Kind.TRADE)
