"""The end of a trip: turned for home, landings and the settlement."""

from datetime import datetime

from logbook.model.quantity import Money, Percent, Weight
from logbook.model.trip import Landing, Settlement, Turned
from logbook.read.fields import Found, error, items_of, open_mapping, pairs_of, take, take_words
from logbook.read.fish import take_out_turn, take_prices
from logbook.read.forms import form
from logbook.read.keys import LANDED, SETTLEMENT
from logbook.read.known import Known, port_of
from logbook.read.lists import Lists
from logbook.read.measured import parse_percent
from logbook.read.moment import parse_stamp
from logbook.read.money import parse_money
from logbook.read.number import parse_number
from logbook.read.timeline import DOCKED, FINISHED, STARTED, TURNED, Clock, Rule, Timed
from logbook.read.tree import Lost, Mapping, Node, Scalar, Sequence

CODES = frozenset({"landing-unreadable"})

_DAY = form(r"\s*[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}\s*")
_CLOCK = form(r"\s*[0-9]{1,2}:?[0-9]{2}\b")


def take_time_and_words(
    node: Node | None, clock: Clock, anchor: datetime | None, rule: Rule, found: Found
) -> tuple[Timed | None, str | None]:
    """Return a time and the words after its comma: `2026-03-04 05:30, Port Kerrin`; either may be missing."""
    text = take_words(node, found)
    if text is None or node is None:
        return None, None
    first, comma, rest = text.partition(",")
    if _DAY().fullmatch(first) and _CLOCK().match(rest):
        clock_time, comma, rest = rest.partition(",")
        first = f"{first} {clock_time}"
    timed = clock.read(parse_stamp(first.strip()), node, anchor, rule)
    return timed, (rest.strip() or None) if comma else None


def take_turned(node: Node | None, known: Known, clock: Clock, anchor: datetime | None, found: Found) -> Turned | None:
    """Return when and where she turned for home; None where it is not written."""
    if node is None:
        return None
    timed, where = take_time_and_words(node, clock, anchor, TURNED, found)
    at = timed.moment if timed else None
    if where is None or not isinstance(node, Scalar):
        return Turned(at=at)
    said = known.terms.position(where)
    if said.value is not None:
        return Turned(at=at, position=said.value)
    return Turned(at=at, ground=where)


class Landings:
    """Reads the landings of one log."""

    def __init__(self, known: Known, clock: Clock, lists: Lists, found: Found) -> None:
        """Keep what they are read by."""
        self.known = known
        self.clock = clock
        self.lists = lists
        self.found = found

    def take(self, node: Node | None, anchor: datetime | None) -> tuple[Landing, ...]:
        """Return the landings: a mapping, a list of them, or in short `time, port`.

        Args:
            node: What `landed` holds.
            anchor: What a bare first docking comes after.
        """
        if isinstance(node, Scalar):
            return self._short(node, anchor)
        if isinstance(node, Sequence) and node.flow and all(isinstance(item, Scalar) for item in node.items):
            return self._short(node, anchor)
        landings: list[Landing] = []
        for item in items_of(node, self.found, "the landings"):
            landing: Landing | None
            if isinstance(item, Mapping):
                landing = self._landing(item, anchor)
            elif isinstance(item, Scalar):
                landing = next(iter(self._short(item, anchor)), None)
            else:
                if not isinstance(item, Lost):
                    hint = "write `docked: 21:15` and the other keys below it"
                    error(self.found, item.place, "landing-unreadable", "a list stands where a landing is wanted", hint)
                continue
            if landing is not None:
                landings.append(landing)
                anchor = landing.finished or landing.started or landing.docked or anchor
        return tuple(landings)

    def _short(self, node: Node, anchor: datetime | None) -> tuple[Landing, ...]:
        timed, port = take_time_and_words(node, self.clock, anchor, DOCKED, self.found)
        if take_words(node, []) is None:
            return ()
        docked = timed.moment if timed else None
        return (Landing(place=node.place, docked=docked, port=port_of(self.known.fleet, port, node, self.found)),)

    def _landing(self, node: Mapping, anchor: datetime | None) -> Landing:
        fields = open_mapping(node, LANDED, self.found)
        get = fields.get
        docked = _moment(self.clock.take(get("docked"), anchor, DOCKED))
        started = _moment(self.clock.take(get("started landing"), docked, STARTED))
        finished = _moment(self.clock.take(get("finished landing"), started or docked, FINISHED))
        return Landing(
            place=node.place,
            docked=docked,
            port=self.known.port(get("port"), self.found),
            started=started,
            finished=finished,
            out_turn=take_out_turn(get("out-turn"), self.known, self.found),
            pens=self._pens(get("pens")),
            temperatures=self.lists.pen_temperatures(get("temperatures")),
            quality=self._quality(get("quality")),
            prices=take_prices(get("prices"), self.known, self.found),
        )

    def _pens(self, node: Node | None) -> tuple[tuple[str, Weight], ...]:
        """Return pen and weight as each was emptied."""
        pens: list[tuple[str, Weight]] = []
        for key, value in pairs_of(node, self.found, "pens"):
            pen = self.known.pen(key, self.found)
            weight = take(value, self.known.terms.weight, self.found, "a weight")
            if pen is not None and weight is not None:
                pens.append((pen, weight))
        return tuple(pens)

    def _quality(self, node: Node | None) -> tuple[tuple[str, str], ...]:
        """Return species and the buyer's grade in the buyer's words."""
        grades: list[tuple[str, str]] = []
        for key, value in pairs_of(node, self.found, "quality"):
            called = self.known.call(key, self.found)
            words = take_words(value, self.found)
            if words is not None:
                grades.append((called.name, words))
        return tuple(grades)


def _moment(timed: Timed | None) -> datetime | None:
    return timed.moment if timed else None


def take_settlement(node: Node | None, known: Known, found: Found) -> Settlement | None:
    """Return how the money was shared; None where it is not written."""
    if not isinstance(node, Mapping):
        pairs_of(node, found, "the settlement")
        return None
    fields = open_mapping(node, SETTLEMENT, found)
    expenses: list[tuple[str, Money]] = []
    for key, value in pairs_of(fields.get("expenses"), found, "expenses"):
        money = take(value, lambda text: parse_money(text, known.terms.currency), found, "a sum of money")
        if money is not None:
            expenses.append((key.value.strip(), money))
    shares = []
    for key, value in pairs_of(fields.get("shares"), found, "shares"):
        number = take(value, parse_number, found, "a number of shares")
        if number is not None:
            shares.append((key.value.strip(), number))
    boat: Percent | None = take(fields.get("boat's share"), parse_percent, found, "a percentage")
    return Settlement(expenses=tuple(expenses), boat_share=boat, shares=tuple(shares))
