"""A tow typed on one line: `2015-2150, 98 fm, 58 48.0N 15 04.0W to 58 52.2N 15 09.1W, cod 9 baskets, wing torn`.

The times come first; every other part is known by what it is, in any order. What is none of these becomes the remarks.
"""

import re

from msgspec import Struct, field

from logbook.model.names import fold_name
from logbook.model.problem import Place
from logbook.model.quantity import Knots, Position, Span
from logbook.model.trip import Amount, CatchKept, Fast
from logbook.read.amount import Amounted
from logbook.read.fields import Found, error, note, pass_on, place_in, text_place
from logbook.read.fish import as_amount
from logbook.read.forms import form
from logbook.read.known import Called, Known
from logbook.read.moment import Stamp, parse_stamp
from logbook.read.number import is_nothing
from logbook.read.said import Said
from logbook.read.tree import Scalar

CODES = frozenset({"tow-line-times", "tow-line-words", "tow-line-twice"})

_PART = form(r",(?!\d)")
"""A comma parts the line, but not inside a number such as `1,2 t`."""

_TIME = r"(?:\d{4}-\d\d?-\d\d?[ T])?\d{1,2}[:.]?\d\d(?::\d\d)?(?:\s*(?:Z|UTC))?"
_OFFSET = r"(?:\s*[+-]\d\d:\d\d)?"
_TIMES = tuple(
    form(rf"\s*({time})\s*(?:(?:-|–|—|to)\s*({time})?)?\s*(?:,|$)", re.ASCII | re.IGNORECASE)
    for time in (_TIME, _TIME + _OFFSET)
)
"""Two times; `20:15-21:50` is first of all a stretch of time, and only then a time with an offset."""

_DEPTH = form(r"[~\d][\d.,\s–-]*(?:fm|fms|fathoms?|m|metres?|ft|feet)\.?$", re.IGNORECASE)
_SPEED = form(r"\d+(?:[.,]\d+)?\s*(?:kn|kt|knots?)$", re.IGNORECASE)
_TO = form(r"\s+to\s+", re.IGNORECASE)
_POSITION = form(r"(?=.*\d)[\d\s°º˚'’′\"”″:.,NSEWnsew-]+$")
_FAST = form(
    r"(?:came )?fast(?: (?:on )?(?:an? )?(?P<what>rock|wreck|cable|ordnance|pipe|pipeline|boulder))?$", re.IGNORECASE
)
_AMOUNT = form(r"(?<![\w.])\d")
MAX_PARTS = 200
"""Of one line; nobody types so many."""
_INTO = {"put back ": "put_back", "over the side ": "put_back", "discards ": "put_back", "undersize ": "undersize"}
_INTO_WORDS = tuple(_INTO)
_NO_CATCH = ("no catch", "no fish", "none", "nil")


class Line(Struct, kw_only=True):
    """What a tow's line says, gathered part by part; `tow.py` makes the record of it.

    Attributes:
        place: Where it begins.
        shot: The first time.
        hauled: The second time; None where it is not there.
        lists: Amounts of `catch`, `put_back` and `undersize`.
        gaps: Places of amounts that could not be read.
        words: Parts that are none of the known ones.
        spots: Where some of the parts stand, by the keys they would have in a tow of several lines.
    """

    place: Place
    shot: Said[Stamp]
    hauled: Said[Stamp] | None
    depth: Span | None = None
    speed: Knots | None = None
    start: Position | None = None
    end: Position | None = None
    via: tuple[Position, ...] = ()
    side: str | None = None
    net: str | None = None
    pens: tuple[str, ...] = ()
    ground: str | None = None
    fast: Fast | None = None
    kept: CatchKept = CatchKept.UNKNOWN
    lists: dict[str, list[Amount]] = field(default_factory=lambda: {"catch": [], "put_back": [], "undersize": []})
    gaps: list[Place] = field(default_factory=list)
    words: list[str] = field(default_factory=list)
    spots: dict[str, Place] = field(default_factory=dict)


def read_line(node: Scalar, known: Known, found: Found) -> Line | None:
    """Return the parts of a one-line tow; None, with an error, where it does not begin with times.

    Args:
        node: The line.
        known: The names it is matched against.
        found: Problems so far.
    """
    text = node.value
    place = text_place(node)
    times = next((match for times_of in _TIMES if (match := times_of().match(text))), None)
    if times is None:
        error(
            found,
            place,
            "tow-line-times",
            "a tow on one line begins with its times",
            "write 2015-2150, then the rest after commas; or `shot: 20:15` with the other keys below it",
        )
        return None
    hauled = parse_stamp(times[2].strip()) if times[2] is not None else None
    line = Line(place=place, shot=parse_stamp(times[1].strip()), hauled=hauled)
    reader = _Parts(node, line, known, found)
    start = times.end()
    parts = _PART().split(text[start:], maxsplit=MAX_PARTS)
    if len(parts) > MAX_PARTS:
        message = f"this tow has more than {MAX_PARTS} parts; the rest of the line is not read"
        error(found, place, "too-much", message, "write the tow with a line for each key")
        parts.pop()
    for part in parts:
        words = part.strip()
        if words:
            reader.take(words, start + len(part) - len(part.lstrip()))
        start += len(part) + 1
    if line.words:
        note(found, place, "tow-line-words", f"'{', '.join(line.words)}' is kept as this tow's remarks")
    if line.kept is CatchKept.UNKNOWN:
        if line.lists["catch"] or line.lists["undersize"]:
            line.kept = CatchKept.KNOWN
        elif line.gaps:
            line.kept = CatchKept.UNREADABLE
    return line


class _Parts:
    """Takes the parts of one line, each for the first thing it can be."""

    def __init__(self, node: Scalar, line: Line, known: Known, found: Found) -> None:
        self.line = line
        self.known = known
        self.found = found
        self.place = line.place
        self.node = node
        self.index = 0
        self._readers = (self._plain, self._measured, self._track, self._name, self._fish)

    def take(self, words: str, index: int) -> None:
        """Take one part that begins at an index of the line."""
        self.index = index
        self.place = place_in(self.node, index)
        for reads in self._readers:
            if reads(words):
                return
        self.line.words.append(words)

    def _set(self, name: str, value: object, what: str) -> None:
        """Set something that a tow has once; a second is an error and not used."""
        if getattr(self.line, name) is not None:
            error(
                self.found, self.place, "tow-line-twice", f"a second {what} in this tow is not used", "keep one of them"
            )
            return
        setattr(self.line, name, value)

    def _plain(self, words: str) -> bool:
        """Take a side, a fast, or the words for no catch or one sorted with the next."""
        folded = fold_name(words)
        if folded in ("port", "starboard", "stern"):
            self._set("side", folded, "side")
        elif (fast := _FAST().match(folded)) is not None:
            self._set("fast", Fast(what=fast["what"] or "", at=None), "fast")
        elif folded == CatchKept.NEXT:
            self.line.kept = CatchKept.NEXT
        elif folded in _NO_CATCH:
            self.line.kept = CatchKept.NOTHING
        else:
            return False
        return True

    def _measured(self, words: str) -> bool:
        """Take a depth or a speed."""
        if _DEPTH().match(words):
            depth = self.known.terms.depth(words)
            pass_on(self.found, depth.faults, self.node, self.index)
            self._set("depth", depth.value, "depth")
            self.line.spots.setdefault("depth", self.place)
            return True
        if _SPEED().match(words):
            speed = self.known.terms.speed(words)
            pass_on(self.found, speed.faults, self.node, self.index)
            self._set("speed", speed.value, "speed")
            self.line.spots.setdefault("speed", self.place)
            return True
        return False

    def _track(self, words: str) -> bool:
        """Take a position, or several joined by `to`: where the tow began, turned and ended."""
        parts = _TO().split(words)
        if None in [_POSITION().match(part) for part in parts]:
            return False
        track = [self.known.terms.position(part) for part in parts]
        for said in track:
            pass_on(self.found, said.faults, self.node, self.index)
        if self.line.start is not None:
            hint = "join them: POSITION to POSITION"
            error(self.found, self.place, "tow-line-twice", "a second position in this tow is not used", hint)
            return True
        self.line.spots["from"] = self.place
        self.line.start = track[0].value
        if len(track) > 1:
            self.line.end = track[-1].value
            self.line.via = tuple(said.value for said in track[1:-1] if said.value is not None)
        return True

    def _name(self, words: str) -> bool:
        """Take a net, a pen or a ground of the fleet's by its name, alone or after the word for it."""
        folded = fold_name(words)
        net = self.known.nets.find_in_line(folded)
        if net is not None:
            self._set("net", net, "net")
            return True
        ground = self.known.grounds.find_in_line(folded)
        if ground is not None:
            self._set("ground", ground, "ground")
            return True
        pen = self.known.pens.find(folded.removeprefix("pen "))
        if pen is None and folded.startswith("pen ") and not self.known.pens.all:
            pen = words[len("pen ") :].strip()
        if pen is not None:
            self.line.pens += (pen,)
        return pen is not None

    def _fish(self, words: str) -> bool:
        """Take `species [grade] amount`: kept, put back or undersize."""
        into, rest = _destination(words)
        if into != "catch" and is_nothing(rest):
            return True
        digit = _AMOUNT().search(rest)
        if digit is None or digit.start() == 0:
            return False
        names, amount = rest[: digit.start()].split(), rest[digit.start() :]
        longest = self.known.species.longest(names)
        called, count = longest or (Called(name=" ".join(names), known=None), len(names))
        grade = " ".join(names[count:])
        said = self.known.terms.amount(amount, called.name)
        if into == "catch" and said.value is None and (longest is None or (grade and called.spelled(grade) is None)):
            return False  # words about a fish, not an amount of it
        if into == "catch" and longest is None and said.value is not None and said.value.weight is None:
            return False  # a count of something that is no fish
        if longest is None:
            called = self.known.unknown(self.place, called.name, self.found)
        self._add(into, called, grade, said)
        return True

    def _add(self, into: str, called: Called, grade: str, said: Said[Amounted]) -> None:
        """Add an amount to where it goes; one that can't be read, or stands there already, is a gap."""
        if said.faults:
            pass_on(self.found, said.faults, self.node, self.index)
        size = called.grade
        if grade:
            size = called.spelled(grade) or self.known.unknown_grade(called, self.place, grade, self.found)
        listed = self.line.lists[into]
        if any(amount.species == called.name and amount.grade == size for amount in listed):
            hint = "add them up"
            error(
                self.found,
                self.place,
                "species-twice",
                f"{called.name} stands twice in this tow; this one is not used",
                hint,
            )
        elif said.value is not None:
            listed.append(as_amount(called, size, said.value, self.place))
            self.line.spots.setdefault(into, self.place)
            return
        if into != "put_back":
            self.line.gaps.append(self.place)


def _destination(words: str) -> tuple[str, str]:
    """Return which list a part's fish goes to, and the part without the words that say so."""
    folded = words.casefold()
    if folded.startswith(_INTO_WORDS):
        for prefix, into in _INTO.items():
            if folded.startswith(prefix):
                return into, words[len(prefix) :].strip()
    return "catch", words
