"""How much rest is logged for each hand or watch, beside the least hours of the Work in Fishing Convention.

It reports what the log says and no more: whether somebody was fit to work, which rules hold aboard and whether they were kept is
for the skipper, the flag state and the law. The convention's hours are for vessels that stay at sea for more than three days.
"""

from collections.abc import Iterable, Iterator, Sequence
from datetime import UTC, date, datetime, time, timedelta, timezone, tzinfo

from msgspec import Struct

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.past import Rested
from logbook.model.quantity import DAY, HOUR
from logbook.model.rest import RestFigures
from logbook.model.trip import Period, Trip
from logbook.reckon.as_of import last_landing
from logbook.reckon.sales import clocks
from logbook.reckon.stretches import Stretch, Stretches, Window, least_in, less, united, within

_WEEK = 7 * DAY
_IN_A_DAY = 10 * HOUR
"""Least rest in any 24 hours: ILO C188 (2007) Art. 14(1)(b)(i)."""
_IN_A_WEEK = 77 * HOUR
"""Least rest in any seven days: ILO C188 (2007) Art. 14(1)(b)(ii)."""

_LONGEST_BILL = 366 * DAY
"""A watch bill over more than this, by a slip in a year, would be watches by the hundred thousand that nobody stood."""

_Hours = list[tuple[float, float]]


class _Log(Struct, frozen=True, kw_only=True):
    """What one log says of rest.

    Attributes:
        told: All that it says.
        span: From sailing to the end of the last landing, or to the moment of the figures.
        names: Each hand or watch as first typed, by folded name.
        entries: Periods of rest, by folded name.
        bill: Hours on watch, by folded name.
    """

    told: Rested
    span: Stretch
    names: dict[str, str]
    entries: dict[str, list[Period]]
    bill: dict[str, _Hours]


class _Known(Struct, frozen=True, kw_only=True):
    """What is known of the rest of one hand or watch.

    Attributes:
        told: False where nothing that is said of it can be used.
        rest: When they rested.
        words: What it was reckoned from where that is no record, and what is left out.
        certain: False where they may have rested less.
    """

    told: bool
    rest: Stretches
    words: tuple[str, ...]
    certain: bool


def rest_until(trip: Trip) -> datetime | None:
    """Return the end of the last landing: finished, else docked; None where neither is logged."""
    last = last_landing(trip)
    return None if last is None else last.finished or last.docked


def rested(trip: Trip) -> Rested:
    """Return what a log says of rest."""
    return Rested(
        file=trip.file,
        zone=trip.zone,
        sailed=trip.sailed or trip.begins,
        until=rest_until(trip),
        rest=trip.rest,
        all_hands=trip.all_hands,
        watches=trip.watches,
    )


def reckon_rest(trip: Trip, as_of: datetime, earlier: Sequence[Rested] = ()) -> ByName[RestFigures]:
    """Return the rest of each hand and watch that the log tells of, by the name as first typed.

    Hours with no entry count as work. A watch of the watch bill that has no entries rests when it is off watch and not all
    hands are turned to.

    Args:
        trip: The trip. What it logs after the end of its last landing, or after `as_of` where there is none, does not count;
            rest logged while landing does, so a log that was cut at its docking lacks it.
        as_of: When the figures end, where no landing is logged.
        earlier: What the logs of the vessel's earlier trips say, in order of time. The seven days run on into them as far back
            as all time between two trips is logged as that hand's rest, or there is none.
    """
    told = rested(trip)
    log = _log(told, told.until or as_of)
    if not log.names:
        return ByName()
    logs = (log, *_week_before(log, earlier))
    return ByName((name, _figures(hand, logs)) for hand, name in log.names.items())


def _week_before(log: _Log, earlier: Sequence[Rested]) -> Iterator[_Log]:
    """Give the logs of the week before a trip sailed, the last first, up to one of which it is not known when it ended."""
    since = log.span[0] - _WEEK
    for told in reversed(earlier):
        if told.until is None or told.until <= since:
            return
        yield _log(told, told.until)


def _log(told: Rested, end: datetime) -> _Log:
    names: dict[str, str] = {}
    entries: dict[str, list[Period]] = {}
    bill: dict[str, _Hours] = {}
    for period in told.rest:
        entries.setdefault(_folded(period.words, names), []).append(period)
    for watch in told.watches:
        bill.setdefault(_folded(watch.name, names), []).extend(watch.hours)
    return _Log(told=told, span=(told.sailed, end), names=names, entries=entries, bill=bill)


def _folded(name: str, names: dict[str, str]) -> str:
    """Return a name as it is matched, and note how it was first typed; rest of nobody is nobody's."""
    folded = fold_name(name)
    if folded:
        names.setdefault(folded, name)
    return folded


def _figures(hand: str, logs: Sequence[_Log]) -> RestFigures:
    log = logs[0]
    own = _known(log, hand, log.span)
    if not own.told or log.span[1] <= log.span[0]:
        return _nothing(own)
    rest = within(own.rest, log.span)
    rules = clocks(log.told.zone)
    day = least_in(own.rest, DAY, log.span)
    known, since = _with_week_before(hand, own, logs)
    week = least_in(known.rest, _WEEK, (since, log.span[1]))
    return RestFigures(
        worst_24h_rest_h=day.held / HOUR if day else None,
        worst_24h_from=_by_clocks(day.start, rules) if day else None,
        worst_7d_rest_h=week.held / HOUR if week else None,
        worst_7d_from=_by_clocks(week.start, rules) if week else None,
        longest_unbroken_h=max((end - start for start, end in rest), default=timedelta(0)) / HOUR,
        periods_a_day=len(rest) / ((log.span[1] - log.span[0]) / DAY),
        c188_hours_met=_met(day, week, certain=own.certain and known.certain),
        basis=_basis(own, known, day, week),
    )


def _nothing(own: _Known) -> RestFigures:
    """Return figures of which none is known."""
    return RestFigures(
        worst_24h_rest_h=None,
        worst_24h_from=None,
        worst_7d_rest_h=None,
        worst_7d_from=None,
        longest_unbroken_h=None,
        periods_a_day=None,
        c188_hours_met=None,
        basis=(("c188_hours_met", "; ".join(own.words)),) if own.words else (),
    )


def _met(day: Window | None, week: Window | None, *, certain: bool) -> bool | None:
    """Tell whether both limits of the convention are kept; a window that may hold less rest still can't tell that it is."""
    windows = ((day, _IN_A_DAY), (week, _IN_A_WEEK))
    if any(window is not None and window.held < least for window, least in windows):
        return False
    return True if certain and day is not None and week is not None else None


def _basis(own: _Known, known: _Known, day: Window | None, week: Window | None) -> Basis:
    """Return the words for each figure that is known, and for whether the hours are met."""
    figures = (
        ("worst_24h_rest_h", own.words if day else ()),
        ("worst_7d_rest_h", known.words if week else ()),
        ("longest_unbroken_h", own.words),
        ("periods_a_day", own.words),
        ("c188_hours_met", known.words if week else own.words),
    )
    return tuple((name, "; ".join(words)) for name, words in figures if words)


def _with_week_before(hand: str, own: _Known, logs: Sequence[_Log]) -> tuple[_Known, datetime]:
    """Return what is known of a hand in this trip and the week before it, and since when all of that is logged."""
    sailed = logs[0].span[0]
    since = sailed - _WEEK
    known, reach = own, sailed
    for log in logs[1:]:
        before = _known(log, hand, (max(log.span[0], since), log.span[1]))
        rest = united((*before.rest, *known.rest))
        if not before.told or less((log.span[1], reach), rest):
            break
        words = tuple(dict.fromkeys((*known.words, *before.words)))
        known = _Known(told=True, rest=rest, words=words, certain=known.certain and before.certain)
        reach = log.span[0]
    return known, max(reach, since)


def _known(log: _Log, hand: str, span: Stretch) -> _Known:
    """Return what a log says of one hand or watch: the entries, which are the record, else the watch bill over a span."""
    entries = log.entries.get(hand, [])
    used = tuple(_used(entries))
    rest = united(used)
    words = _left_out(reasons.REST_LEFT_OUT, entries, span, log.told.file)
    hours = log.bill.get(hand)
    if hours is None or within(rest, log.span) or span[1] - span[0] > _LONGEST_BILL:
        return _Known(told=bool(used), rest=rest, words=words, certain=True)
    lost = _left_out(reasons.ALL_HANDS_LEFT_OUT, log.told.all_hands, span, log.told.file)
    off = _off_watch(hours, log.told, span)
    return _Known(told=True, rest=united((*rest, *off)), words=(reasons.WATCH_BILL, *words, *lost), certain=not lost)


def _used(periods: Iterable[Period]) -> Iterator[Stretch]:
    """Give the stretches of periods that have a beginning and an end."""
    for period in periods:
        if period.start is not None and period.end is not None:
            yield period.start, period.end


def _left_out(words: str, periods: Iterable[Period], span: Stretch, file: str) -> tuple[str, ...]:
    """Return words for each period that has no beginning or no end, if it may lie in a span."""
    return tuple(
        words.format(n=period.place.line, file=file)
        for period in periods
        if (period.start is None and (period.end is None or period.end > span[0]))
        or (period.start is not None and period.end is None and period.start < span[1])
    )


def _off_watch(hours: _Hours, told: Rested, span: Stretch) -> Stretches:
    """Return when a watch is off by the watch bill and not everyone is turned to."""
    return less(span, united((*_on_watch(hours, clocks(told.zone), span), *_used(told.all_hands))))


def _on_watch(hours: _Hours, rules: tzinfo, span: Stretch) -> Iterator[Stretch]:
    """Give the watches of every day that has part in a span, by the clocks of the log."""
    first, last = (moment.astimezone(rules).date() for moment in span)
    for n in range((last - first).days + 1):
        for start, end in hours:
            yield _at(first + n * DAY, start, rules), _at(first + n * DAY, end, rules)


def _at(day: date, hour: float, rules: tzinfo) -> datetime:
    """Return when clocks show an hour of a day: the earlier time where they show it twice, as everywhere in a log."""
    shown = datetime.combine(day, time(), tzinfo=rules) + timedelta(minutes=round(hour * 60))
    return shown.astimezone(UTC)


def _by_clocks(moment: datetime, rules: tzinfo) -> datetime:
    """Return a moment at the offset that the clocks of the log have then."""
    shown = moment.astimezone(rules)
    return shown.replace(tzinfo=timezone(shown.utcoffset() or timedelta(0)), fold=0)
