"""When things happened: bare clock times put on their day by what came before them.

A bare time is the first such clock time not before its anchor. What the anchor is belongs to the caller; which times are
doubtful or impossible after it stands here, in one table of rules.
"""

from datetime import date, datetime, time, timedelta, timezone

from msgspec import Struct

from logbook.model.problem import Place
from logbook.model.quantity import DAY
from logbook.read.fields import Found, error, parsed, pass_on, take_text, text_place, warn
from logbook.read.moment import Stamp, parse_stamp
from logbook.read.said import Said
from logbook.read.tree import Node, Scalar
from logbook.read.zone import Zone

CODES = frozenset({"time-no-anchor", "time-doubtful", "time-too-long", "time-clock-change", "time-before-bare"})


class Rule(Struct, frozen=True, kw_only=True):
    """How far after its anchor a bare time may come out.

    Attributes:
        what: What the time is, for messages.
        doubt: Beyond this it is kept and reported as doubtful.
        refuse: Beyond this it is an error and not used; None where it never is.
        after: True where it must come after its anchor, not at it.
        back: How far before its anchor it may lie and still be of that day.
    """

    what: str
    doubt: timedelta = timedelta(hours=24)
    refuse: timedelta | None = None
    after: bool = False
    back: timedelta = timedelta(0)


_HALF_DAY = timedelta(hours=12)
_FROM_THE_DAY = (timedelta(0), DAY, 2 * DAY)
_FROM_THE_DAY_BEFORE = (-DAY, *_FROM_THE_DAY)

SAILED = Rule(what="sailed")
SHOT = Rule(what="shot", doubt=_HALF_DAY, back=timedelta(hours=2))
FIRST_SHOT = Rule(what="shot", doubt=timedelta(hours=72))
HAULED = Rule(what="hauled", refuse=_HALF_DAY)
ABOARD = Rule(what="aboard", refuse=_HALF_DAY)
STOWED = Rule(what="stowed", refuse=_HALF_DAY)
TURNED = Rule(what="turned for home")
DOCKED = Rule(what="docked", doubt=timedelta(hours=72))
STARTED = Rule(what="started landing", refuse=_HALF_DAY)
FINISHED = Rule(what="finished landing", refuse=_HALF_DAY)
SAILS_AGAIN = Rule(what="sails again", doubt=timedelta(hours=72))
PERIOD_START = Rule(what="from")
PERIOD_END = Rule(what="to")
NOT_BEFORE = Rule(what="at")
AFTER = Rule(what="at", after=True)


class Timed(Struct, frozen=True, kw_only=True):
    """A moment as typed.

    Attributes:
        moment: With the log's offset at that time.
        bare: True where no date was typed and none was given by a day line.
        place: Where it stands.
    """

    moment: datetime
    bare: bool
    place: Place


class Clock:
    """Puts the times of one log on its days."""

    __slots__ = ("found", "zone")

    def __init__(self, zone: Zone, found: Found) -> None:
        """Keep the log's zone and the list that problems go to."""
        self.zone = zone
        self.found = found

    def take(self, node: Node | None, anchor: datetime | None, rule: Rule, *, settled: bool = False) -> Timed | None:
        """Return the moment typed at a node; None, with the reason reported, where there is none to be had.

        Args:
            node: A scalar with a time.
            anchor: What a bare time comes after; None where nothing before it is known.
            rule: How far after.
            settled: True where a day line gives the date, so that no distance is in doubt.
        """
        if node is None:
            return None
        said = parse_stamp(node.value.strip()) if isinstance(node, Scalar) else None
        if said is None or said.value is None:  # seldom; a blank is no time
            text = take_text(node, self.found, "a time")
            if text is None:
                return None
            said = parsed(node, text, parse_stamp, self.found)
        return self.read(said, node, anchor, rule, settled=settled)

    def read(
        self, said: Said[Stamp], node: Node, anchor: datetime | None, rule: Rule, *, settled: bool = False
    ) -> Timed | None:
        """Return the moment of a time that was read at the beginning of a node's text, as `take` does."""
        if said.faults:
            pass_on(self.found, said.faults, node)
        place = text_place(node)
        stamp = said.value
        if stamp is None:
            return None
        if stamp.day is not None:
            return Timed(moment=self._on(stamp, stamp.day, place), bare=False, place=place)
        if anchor is None:
            error(
                self.found,
                place,
                "time-no-anchor",
                f"nothing before this '{rule.what}' tells its day",
                f"give the date: 2026-03-04 {stamp.hour:02}:{stamp.minute:02}",
            )
            return None
        moment = self._after(stamp, anchor, rule, place)
        return self._judged(Timed(moment=moment, bare=not settled, place=place), anchor, rule)

    def _on(self, stamp: Stamp, day: date, place: Place) -> datetime:
        """Return a stamp's moment on a day, in the log's offset; warn where the clock changes then."""
        moment, change = self._placed(stamp, day)
        if change:
            self._warn_of(change, stamp, place)
        return moment

    def _placed(self, stamp: Stamp, day: date) -> tuple[datetime, str]:
        """Return a stamp's moment on a day, in the log's offset, and what is odd about that time."""
        if stamp.offset is None:
            return self.zone.at(day, stamp.hour, stamp.minute, stamp.second)
        clock = time(stamp.hour, stamp.minute, stamp.second, tzinfo=timezone(stamp.offset))
        return self.zone.local(datetime.combine(day, clock)), ""

    def _warn_of(self, change: str, stamp: Stamp, place: Place) -> None:
        """Warn of a time that the clocks show twice or never."""
        said = "comes twice that night; the earlier is taken" if change == "twice" else "is skipped that night"
        warn(
            self.found,
            place,
            "time-clock-change",
            f"the clock changes: {stamp.hour:02}:{stamp.minute:02} {said}",
            "add the offset or Z to settle it",
        )

    def _after(self, stamp: Stamp, anchor: datetime, rule: Rule, place: Place) -> datetime:
        """Return the first such clock time not before the anchor, or a little before it where the rule lets it be."""
        here = self.zone.local(anchor) if stamp.offset is None else anchor.astimezone(timezone(stamp.offset))
        day = here.date()
        moment, change = anchor, ""
        for later in _FROM_THE_DAY_BEFORE if rule.back else _FROM_THE_DAY:
            moment, change = self._placed(stamp, day + later)
            if moment > anchor or (moment == anchor and not rule.after) or (moment < anchor <= moment + rule.back):
                break
        if change:
            self._warn_of(change, stamp, place)
        return moment

    def _judged(self, timed: Timed, anchor: datetime, rule: Rule) -> Timed | None:
        """Return the moment, or None where it lies too far after its anchor."""
        if not timed.bare:
            return timed
        late = timed.moment - anchor
        if late <= rule.doubt and rule.refuse is None:
            return timed
        hours = round(late.total_seconds() / 3600)
        if rule.refuse is not None and late > rule.refuse:
            error(
                self.found,
                timed.place,
                "time-too-long",
                f"this '{rule.what}' comes out {hours} h after what it follows, so it is not used",
                f"give the date if it is right: {timed.moment:%Y-%m-%d %H:%M}",
            )
            return None
        if late > rule.doubt:
            warn(
                self.found,
                timed.place,
                "time-doubtful",
                f"this '{rule.what}' comes out {hours} h after what it follows, on {timed.moment:%Y-%m-%d}",
                f"give the date: {timed.moment:%Y-%m-%d %H:%M}",
            )
        return timed


def settle(chain: list[Timed | None], found: Found) -> list[bool]:
    """Tell which moments of a chain stand: a bare one later than a written date that follows it is an error.

    Args:
        chain: Moments in the order typed; None where there is none.
        found: Problems so far.

    Returns:
        For each, False where it must not be used.
    """
    stands = [True] * len(chain)
    earliest: datetime | None = None
    for n in range(len(chain) - 1, -1, -1):
        timed = chain[n]
        if timed is None:
            continue
        if timed.bare:
            if earliest is not None and timed.moment > earliest:
                stands[n] = False
                error(
                    found,
                    timed.place,
                    "time-before-bare",
                    f"this time comes out at {timed.moment:%Y-%m-%d %H:%M}, after the date written below it, so it is not used",
                    "give its date",
                )
        elif earliest is None or timed.moment < earliest:
            earliest = timed.moment
    return stands
