"""The lists of a log besides the tows: stowage, readings, weather, gear, stretches of time, fixes and the watch bill."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from logbook.model.language import N_
from logbook.model.quantity import Celsius, Kilograms
from logbook.model.trip import Fix, GearEvent, Period, Reading, Stowed, Watch, Weather
from logbook.read.duration import parse_duration
from logbook.read.fields import (
    Fields,
    Found,
    error,
    mappings_of,
    open_mapping,
    pairs_of,
    take,
    take_choice,
    take_remarks,
    take_words,
    texts_of,
)
from logbook.read.fish import take_catch
from logbook.read.hours import parse_hours
from logbook.read.keys import ALL_HANDS, GEAR, PASSAGE, READING, REST, STOWAGE, TIME_LOST, WEATHER, Keys
from logbook.read.known import Known
from logbook.read.measured import parse_pressure
from logbook.read.number import parse_numbers
from logbook.read.terms import take_position, take_weight
from logbook.read.timeline import AFTER, NOT_BEFORE, PERIOD_END, PERIOD_START, Clock, Timed, settle
from logbook.read.tree import Node
from logbook.read.wind import parse_sea, parse_wind

CODES = frozenset({"gear-part", "period-backwards", "reading-empty"})

ICING = (N_("none"), N_("light"), N_("moderate"), N_("severe"))
GEAR_EVENTS = (N_("changed"), N_("mended"), N_("lost"), N_("measured"))
GEAR_PARTS = (N_("net"), N_("doors"), N_("warps"), N_("item"))


class Lists:
    """Reads the lists of one log."""

    def __init__(self, known: Known, clock: Clock, sailed: datetime | None, found: Found) -> None:
        """Keep what the lists are read by.

        Args:
            known: Names to match against.
            clock: Puts times on their days.
            sailed: What a first bare time comes after; None where it is not known.
            found: Problems so far.
        """
        self.known = known
        self.clock = clock
        self.sailed = sailed
        self.found = found

    def stowage(self, node: Node | None) -> tuple[Stowed, ...]:
        """Return the fishroom's tally."""
        opened = list(self._opened(node, STOWAGE, "the stowage"))
        pens = [(self.known.pen(fields.get("pen"), self.found) or "",) for fields in opened]
        times = self._times([fields.get("at") for fields in opened], pens)
        return tuple(
            Stowed(
                place=fields.place,
                at=at,
                pen=pen,
                tows=self._tow_numbers(fields.get("tows")),
                fish=take_catch(fields.get("fish"), self.known, self.found).amounts,
                ice=take_weight(fields.get("ice"), self.known.terms, self.found),
            )
            for fields, (pen,), at in zip(opened, pens, times, strict=True)
            if pen
        )

    def readings(self, node: Node | None) -> tuple[Reading, ...]:
        """Return the looks at the hold."""
        opened = list(self._opened(node, READING, "the readings"))
        temperatures = [self._temperatures(fields) for fields in opened]
        times = self._times([f.get("at") for f in opened], [tuple(pen for pen, _ in t) for t in temperatures])
        return tuple(
            Reading(
                place=fields.place,
                at=at,
                temperatures=taken,
                ice_left=take_weight(fields.get("ice left"), self.known.terms, self.found),
                ice_taken_aboard=take_weight(fields.get("ice taken aboard"), self.known.terms, self.found),
                re_iced=self._re_iced(fields.get("re-iced")),
                fuel_left=take(fields.get("fuel left"), self.known.terms.fuel, self.found, "an amount of fuel"),
                remarks=take_remarks(fields.get("remarks"), self.found),
            )
            for fields, taken, at in zip(opened, temperatures, times, strict=True)
        )

    def weather(self, node: Node | None) -> tuple[Weather, ...]:
        """Return the looks at the weather."""
        opened = list(self._opened(node, WEATHER, "the weather"))
        times = self._times_after([fields.get("at") for fields in opened])
        return tuple(
            Weather(
                place=fields.place,
                at=at,
                wind=take(fields.get("wind"), parse_wind, self.found, "a wind"),
                sea=take(fields.get("sea"), parse_sea, self.found),
                swell=take_words(fields.get("swell"), self.found),
                visibility=take_words(fields.get("visibility"), self.found),
                air_temperature=take(fields.get("air temperature"), self.known.terms.temperature, self.found),
                pressure_hpa=take(fields.get("pressure"), parse_pressure, self.found),
                icing=take_choice(fields.get("icing"), ICING, self.found),
                remarks=take_remarks(fields.get("remarks"), self.found),
            )
            for fields, at in zip(opened, times, strict=True)
        )

    def gear(self, node: Node | None) -> tuple[GearEvent, ...]:
        """Return what was done to the gear; an entry that names no part is reported and left out."""
        opened = list(self._opened(node, GEAR, "the gear"))
        times = self._times_after([fields.get("at") for fields in opened])
        events: list[GearEvent] = []
        for fields, at in zip(opened, times, strict=True):
            part = next((name for name in GEAR_PARTS if name in fields), None)
            event = take_choice(fields.get("event"), GEAR_EVENTS, self.found)
            if part is None:
                hint = "name net, doors, warps or item"
                error(self.found, fields.place, "gear-part", "this gear entry names no part of the gear", hint)
            elif event is not None:
                name = (
                    self.known.net(fields.get(part), self.found)
                    if part == "net"
                    else take_words(fields.get(part), self.found)
                )
                took = take(fields.get("took"), parse_duration, self.found, "a length of time")
                remarks = take_remarks(fields.get("remarks"), self.found)
                events.append(
                    GearEvent(
                        place=fields.place, at=at, part=part, name=name or part, event=event, took=took, remarks=remarks
                    )
                )
        return tuple(events)

    def time_lost(self, node: Node | None) -> tuple[Period, ...]:
        """Return time not fished, and why."""
        return self._periods(node, TIME_LOST, "time lost", "why")

    def all_hands(self, node: Node | None) -> tuple[Period, ...]:
        """Return when everyone was turned to."""
        return self._periods(node, ALL_HANDS, "all hands", "why")

    def rest(self, node: Node | None) -> tuple[Period, ...]:
        """Return periods of rest; those of one hand follow each other, those of different hands may overlap."""
        return self._periods(node, REST, "the rest", "who", by_hand=True)

    def passage(self, node: Node | None) -> tuple[Fix, ...]:
        """Return the fixes while steaming."""
        opened = list(self._opened(node, PASSAGE, "the passage"))
        times = self._times_after([fields.get("at") for fields in opened])
        return tuple(
            Fix(
                place=fields.place,
                at=at,
                position=take_position(fields.get("position"), self.known.terms, self.found),
                remarks=take_remarks(fields.get("remarks"), self.found),
            )
            for fields, at in zip(opened, times, strict=True)
        )

    def watches(self, node: Node | None) -> tuple[Watch, ...]:
        """Return the watch bill."""
        bill: list[Watch] = []
        for key, value in pairs_of(node, self.found, "the watches"):
            spans = tuple(
                span
                for text in texts_of(value, self.found, "hours")
                for span in take(text, parse_hours, self.found, "hours as 00-06 12-18") or ()
            )
            if spans:
                bill.append(Watch(name=key.value.strip(), hours=spans))
        return tuple(bill)

    def _opened(self, node: Node | None, keys: Keys, wanted: str) -> Iterator[Fields]:
        for item in mappings_of(node, self.found, wanted):
            yield open_mapping(item, keys, self.found)

    def _times(self, nodes: list[Node | None], pens: Sequence[tuple[str, ...]]) -> list[datetime | None]:
        """Return moments, each not before the item above it and after the last one of any of its pens."""
        chain: list[Timed | None] = []
        above = self.sailed
        last: dict[str, datetime] = {}
        for node, names in zip(nodes, pens, strict=True):
            own = [last[name] for name in names if name in last]
            anchor, rule = above, NOT_BEFORE
            if own and (above is None or max(own) >= above):
                anchor, rule = max(own), AFTER
            timed = self.clock.take(node, anchor, rule)
            chain.append(timed)
            if timed is not None:
                above = timed.moment
                last.update(dict.fromkeys(names, timed.moment))
        return _standing(chain, self.found)

    def _times_after(self, nodes: list[Node | None]) -> list[datetime | None]:
        """Return moments, each after the item above it."""
        return self._times(nodes, [("",)] * len(nodes))

    def _periods(
        self, node: Node | None, keys: Keys, wanted: str, words: str, *, by_hand: bool = False
    ) -> tuple[Period, ...]:
        """Return stretches of time; a bare beginning is not before the item above and after the last one of its hand."""
        opened = list(self._opened(node, keys, wanted))
        chain: list[Timed | None] = []
        above = self.sailed
        last: dict[str, datetime] = {}
        texts = [take_words(fields.get(words), self.found) or "" for fields in opened]
        for fields, hand in zip(opened, texts, strict=True):
            ended = last.get(hand) if by_hand else None
            anchor = max((moment for moment in (above, ended) if moment is not None), default=None)
            start = self.clock.take(fields.get("from"), anchor, PERIOD_START)
            end = self.clock.take(fields.get("to"), start.moment if start else None, PERIOD_END)
            chain += (start, end)
            if start is not None and end is not None and end.moment < start.moment:
                hint = "see which of the two is wrong"
                error(self.found, end.place, "period-backwards", "this ends before it begins; it is not used", hint)
                chain[-1] = end = None
            if start is not None:
                above = start.moment if by_hand or end is None else end.moment
            if end is not None:
                last[hand] = end.moment
        moments = _standing(chain, self.found)
        return tuple(
            Period(place=fields.place, start=moments[2 * n], end=moments[2 * n + 1], words=texts[n])
            for n, fields in enumerate(opened)
        )

    def _temperatures(self, fields: Fields) -> tuple[tuple[str, Celsius], ...]:
        """Return pen and temperature of one reading, whichever way they were typed."""
        taken = list(self.pen_temperatures(fields.get("temperatures")))
        one = take(fields.get("temperature"), self.known.terms.temperature, self.found)
        pen = self.known.pen(fields.get("pen"), self.found)
        if one is not None and pen is not None:
            taken.append((pen, one))
        elif one is not None:
            hint = "add `pen: P1`, or write temperatures: {P1: 0.4 C}"
            error(self.found, fields.place, "reading-empty", "this temperature has no pen", hint)
        return tuple(taken)

    def pen_temperatures(self, node: Node | None) -> tuple[tuple[str, Celsius], ...]:
        """Return pen and temperature of a mapping."""
        taken: list[tuple[str, Celsius]] = []
        for key, value in pairs_of(node, self.found, "temperatures"):
            pen = self.known.pen(key, self.found)
            temperature = take(value, self.known.terms.temperature, self.found, "a temperature")
            if pen is not None and temperature is not None:
                taken.append((pen, temperature))
        return tuple(taken)

    def _re_iced(self, node: Node | None) -> tuple[tuple[str, Kilograms], ...]:
        """Return pen and weight of ice moved there."""
        taken: list[tuple[str, Kilograms]] = []
        for key, value in pairs_of(node, self.found, "re-iced"):
            pen = self.known.pen(key, self.found)
            weight = take_weight(value, self.known.terms, self.found)
            if pen is not None and weight is not None:
                taken.append((pen, weight))
        return tuple(taken)

    def _tow_numbers(self, node: Node | None) -> tuple[int, ...]:
        """Return the tows a line of stowage came from: `12-13`, `12, 14` or a list."""
        numbers: list[int] = []
        for text in texts_of(node, self.found, "tow numbers"):
            said = take(text, parse_numbers, self.found, "tow numbers")
            numbers += said if said is not None else ()
        return tuple(dict.fromkeys(numbers))


def _standing(chain: list[Timed | None], found: Found) -> list[datetime | None]:
    """Return the moments that stand, in order; None for each that doesn't."""
    stands = settle(chain, found)
    return [timed.moment if timed is not None and ok else None for timed, ok in zip(chain, stands, strict=True)]
