"""The list of tows: long form and one line, day lines between them, and what carries on from tow to tow."""

from collections.abc import Callable
from datetime import date, datetime

from msgspec import Struct, field
from msgspec.structs import replace

from logbook.model.language import N_
from logbook.model.problem import Place
from logbook.model.quantity import DAY
from logbook.model.trip import CatchKept, Fast, Tow
from logbook.read.fields import (
    Fields,
    Found,
    error,
    items_of,
    open_mapping,
    take,
    take_choice,
    take_remarks,
    take_text,
    take_words,
    texts_of,
    warn,
)
from logbook.read.fish import take_catch
from logbook.read.keys import DAY as DAY_KEYS
from logbook.read.keys import TOW, fold_key
from logbook.read.known import Known
from logbook.read.moment import DayLine, parse_day
from logbook.read.number import parse_count
from logbook.read.terms import take_position, take_positions, take_weight
from logbook.read.timeline import ABOARD, FIRST_SHOT, HAULED, SHOT, STOWED, Clock, Timed, settle
from logbook.read.towline import Line, read_line
from logbook.read.tree import Lost, Mapping, Node, Scalar, Sequence
from logbook.read.wind import parse_sea, parse_wind

CODES = frozenset({"weekday-wrong", "day-unreadable", "tow-number-twice", "tow-unreadable", "hauled-before-shot"})

SIDES = (N_("port"), N_("starboard"), N_("stern"))
_CARRIED = ("side", "ground", "net", "pens")


class Tows(Struct, frozen=True, kw_only=True):
    """The tows of a log.

    Attributes:
        tows: In the order typed.
        lost: Places of tows that could not be read at all.
        sources: What each tow was read from, by its place.
    """

    tows: tuple[Tow, ...] = ()
    lost: tuple[Place, ...] = ()
    sources: dict[Place, Fields | Line] = field(default_factory=dict)

    def spot(self, tow: Tow, *keys: str) -> Place:
        """Return where the first of some keys of a tow that it has was typed; where the tow was, if it has none."""
        source = self.sources.get(tow.place)
        if isinstance(source, Line):
            return next((source.spots[key] for key in keys if key in source.spots), tow.place)
        nodes = (source.get(key) for key in keys) if source is not None else ()
        return next((node.place for node in nodes if node is not None), tow.place)


class _Draft(Struct, kw_only=True):
    """A tow whose times are being settled."""

    source: Fields | Line
    place: Place
    shot: Timed | None
    hauled: Timed | None


def take_tows(node: Node | None, known: Known, clock: Clock, sailed: datetime | None, found: Found) -> Tows:
    """Return the tows of a log.

    Args:
        node: The list.
        known: The names it is matched against.
        clock: Puts times on their days.
        sailed: What the first bare time comes after; None where it is not known.
        found: Problems so far.
    """
    drafts, lost = _drafts(node, known, clock, sailed, found)
    chain = [timed for draft in drafts for timed in (draft.shot, draft.hauled)]
    stands = settle(chain, found)
    for n, draft in enumerate(drafts):
        if not stands[2 * n]:
            draft.shot = None
        if not stands[2 * n + 1]:
            draft.hauled = None
    tows = [_tow(draft, known, clock, found) for draft in drafts]
    sources = {draft.place: draft.source for draft in drafts}
    return Tows(tows=_carry_on(tows, _numbers(tows, drafts, found)), lost=tuple(lost), sources=sources)


def _drafts(
    node: Node | None, known: Known, clock: Clock, sailed: datetime | None, found: Found
) -> tuple[list[_Draft], list[Place]]:
    """Return the tows with their shot and hauled times, and the places of those that can't be read."""
    drafts: list[_Draft] = []
    lost: list[Place] = []
    anchor = sailed
    rule = FIRST_SHOT
    settled = False
    for item in items_of(node, found, "the tows"):
        if isinstance(item, Mapping) and _is_day_line(item):
            midnight = _day_line(item, clock, anchor, found)
            if midnight is not None:
                anchor, settled = midnight, True
            continue
        draft = _draft(item, known, clock, anchor, found, first=rule is FIRST_SHOT, settled=settled)
        if draft is None:
            lost.append(item.place)
            continue
        drafts.append(draft)
        last = draft.hauled or draft.shot
        if last is not None:
            anchor, rule, settled = last.moment, SHOT, False
    return drafts, lost


def _draft(
    item: Node, known: Known, clock: Clock, anchor: datetime | None, found: Found, *, first: bool, settled: bool
) -> _Draft | None:
    """Return one tow with its times; None where the item is no tow."""
    rule = FIRST_SHOT if first or settled else SHOT
    if isinstance(item, Mapping):
        fields = _opened(item, known, found)
        shot = clock.take(fields.get("shot"), anchor, rule, settled=settled)
        hauled = clock.take(fields.get("hauled"), shot.moment if shot else None, HAULED)
        return _Draft(source=fields, place=item.place, shot=shot, hauled=_in_order(shot, hauled, found))
    if isinstance(item, Scalar):
        line = read_line(item, known, found)
        if line is None:
            return None
        shot = clock.read(line.shot, item, anchor, rule, settled=settled)
        hauled = clock.read(line.hauled, item, shot.moment if shot else None, HAULED) if line.hauled else None
        return _Draft(source=line, place=item.place, shot=shot, hauled=_in_order(shot, hauled, found))
    if not isinstance(item, Lost):
        error(
            found,
            item.place,
            "tow-unreadable",
            "a list stands where a tow is wanted",
            "begin a tow with `- shot: 18:10`",
        )
    return None


def _opened(item: Mapping, known: Known, found: Found) -> Fields:
    """Open a tow; one that has a single key and no shot was most likely meant to go on with the tow above it."""
    before = len(found)
    fields = open_mapping(item, TOW, found, _below_catch(known))
    if len(item.entries) == 1 and "shot" not in fields:
        key = item.entries[0][0].value
        lone = [problem for problem in found[before:] if problem.code == "key-missing"]
        for problem in lone:
            found.remove(problem)
            message = f"this tow has only '{key}'"
            error(
                found,
                problem.place,
                problem.code,
                message,
                "one dash begins one tow: leave the dash off and indent it below `- shot`",
            )
    return fields


def _in_order(shot: Timed | None, hauled: Timed | None, found: Found) -> Timed | None:
    """Return the hauled time; None, with an error, where it lies before the shot."""
    if shot is None or hauled is None or hauled.moment >= shot.moment:
        return hauled
    error(
        found,
        hauled.place,
        "hauled-before-shot",
        f"hauled {hauled.moment:%Y-%m-%d %H:%M} lies before shot {shot.moment:%Y-%m-%d %H:%M} on line {shot.place.line}; it is not used",
        "see which of the two is wrong",
    )
    return None


def _below_catch(known: Known) -> Callable[[str], str]:
    """Return what says of an unknown key of a tow that it is a species and belongs below `catch`."""

    def elsewhere(typed: str) -> str:
        return f"indent {typed} below catch" if known.species.find(typed) else ""

    return elsewhere


def _is_day_line(item: Mapping) -> bool:
    return len(item.entries) == 1 and fold_key(item.entries[0][0].value) == "day"


def _day_line(item: Mapping, clock: Clock, anchor: datetime | None, found: Found) -> datetime | None:
    """Return the midnight a day line begins at; None where it can't be used."""
    node = open_mapping(item, DAY_KEYS, found).get("day")
    line = take(node, parse_day, found, "a day")
    if line is None or node is None:
        return None
    year = line.year if line.year is not None else _year(line, clock, anchor)
    if year is None:
        error(
            found,
            node.place,
            "day-unreadable",
            "nothing before this day tells its year",
            "write it with its year: 2026-03-05",
        )
        return None
    day = _on(line, year)
    if day is None:
        error(found, node.place, "no-such-day", f"there is no such day in {year}", "see the date")
        return None
    if line.weekday is not None and day.weekday() != line.weekday:
        hint = f"{day:%Y-%m-%d} is a {day:%A}"
        error(found, node.place, "weekday-wrong", "the weekday and the date disagree, so this day is not used", hint)
        return None
    return clock.zone.at(day, 0, 0, 0)[0]


def _year(line: DayLine, clock: Clock, anchor: datetime | None) -> int | None:
    """Return the year that puts the day nearest to what came before it, the later of two as near."""
    if anchor is None:
        return None
    near = clock.zone.local(anchor).date()
    days = [(year, _on(line, year)) for year in (near.year - 1, near.year, near.year + 1)]
    known = [(abs((day - near) / DAY), -year) for year, day in days if day is not None]
    return -min(known)[1] if known else near.year


def _on(line: DayLine, year: int) -> date | None:
    """Return the day of a year; None for 29 February where there is none."""
    try:
        return date(year, line.month, line.day)
    except ValueError:
        return None


def _tow(draft: _Draft, known: Known, clock: Clock, found: Found) -> Tow:
    if isinstance(draft.source, Line):
        return _from_line(draft, draft.source)
    return _from_fields(draft, draft.source, known, clock, found)


def _from_line(draft: _Draft, line: Line) -> Tow:
    put_back = tuple(line.lists["put_back"])
    return Tow(
        no=0,
        place=draft.place,
        one_line=True,
        shot=draft.shot.moment if draft.shot else None,
        hauled=draft.hauled.moment if draft.hauled else None,
        start=line.start,
        end=line.end,
        via=line.via,
        side=line.side,
        ground=line.ground,
        net=line.net,
        pens=line.pens,
        depth=line.depth,
        speed=line.speed,
        kept=line.kept,
        catch=tuple(line.lists["catch"]),
        undersize=tuple(line.lists["undersize"]),
        put_back=put_back,
        put_back_kept=CatchKept.KNOWN if put_back else CatchKept.UNKNOWN,
        catch_gaps=tuple(line.gaps),
        fast=line.fast,
        remarks=", ".join(line.words),
    )


def _from_fields(draft: _Draft, fields: Fields, known: Known, clock: Clock, found: Found) -> Tow:
    get = fields.get
    catch = take_catch(get("catch"), known, found, may_be_next=True)
    undersize = take_catch(get("undersize"), known, found)
    put_back = take_catch(get("put back"), known, found)
    kept = CatchKept.KNOWN if catch.kept is CatchKept.UNKNOWN and undersize.amounts else catch.kept
    hauled = draft.hauled.moment if draft.hauled else None
    aboard = clock.take(get("aboard"), hauled, ABOARD) if "aboard" in fields else None
    stowed = clock.take(get("stowed"), hauled, STOWED) if "stowed" in fields else None
    return Tow(
        no=take(get("no"), parse_count, found) or 0,
        place=draft.place,
        shot=draft.shot.moment if draft.shot else None,
        hauled=hauled,
        aboard=aboard.moment if aboard else None,
        start=take_position(get("from"), known.terms, found),
        end=take_position(get("to"), known.terms, found),
        via=take_positions(get("via"), known.terms, found),
        side=take_choice(get("side"), SIDES, found),
        ground=known.ground(get("ground"), found),
        net=known.net(get("net"), found),
        pens=_pens(get("pen"), known, found),
        bottom=take_words(get("bottom"), found),
        depth=take(get("depth"), known.terms.depth, found, "a depth"),
        warp=take(get("warp"), known.terms.warp, found, "a length"),
        speed=take(get("speed"), known.terms.speed, found, "a speed"),
        wind=take(get("wind"), parse_wind, found, "a wind"),
        sea=take(get("sea"), parse_sea, found),
        sea_temperature=take(get("sea temperature"), known.terms.temperature, found),
        deck_temperature=take(get("deck temperature"), known.terms.temperature, found),
        kept=kept,
        catch=catch.amounts,
        undersize=undersize.amounts,
        put_back=put_back.amounts,
        put_back_kept=put_back.kept,
        catch_gaps=catch.gaps + undersize.gaps,
        stowed=stowed.moment if stowed else None,
        ice=take_weight(get("ice"), known.terms, found),
        damage=_unless_no(get("damage"), found),
        fast=_fast(get("fast"), known, found),
        gear_lost=_unless_no(get("gear lost"), found),
        remarks=take_remarks(get("remarks"), found),
    )


def _pens(node: Node | None, known: Known, found: Found) -> tuple[str, ...]:
    """Return the pens a tow lies in: one, or a list of them."""
    if node is None:
        return ()
    pens = (known.pen(item, found) for item in texts_of(node, found, "pens"))
    return tuple(dict.fromkeys(pen for pen in pens if pen is not None))


def _unless_no(node: Node | None, found: Found) -> str | None:
    """Return words; None for `no` and `none`, which say that there was nothing."""
    if node is None:
        return None
    words = take_words(node, found)
    return None if words is None or fold_key(words) in ("no", "none", "nil") else words


def _fast(node: Node | None, known: Known, found: Found) -> Fast | None:
    """Return where gear came fast: `yes`, words for what it is, or a position."""
    if isinstance(node, Sequence):
        at = take_position(node, known.terms, found)
        return Fast(what="", at=at)
    text = take_text(node, found, "yes, words or a position")
    if text is None or fold_key(text) in ("no", "none", "nil"):
        return None
    if fold_key(text) == "yes":
        return Fast(what="", at=None)
    said = known.terms.position(text)
    if said.value is not None:
        take(node, known.terms.position, found)
        return Fast(what="", at=said.value)
    return Fast(what=text, at=None)


def _numbers(tows: list[Tow], drafts: list[_Draft], found: Found) -> list[int]:
    """Return the numbers of the tows: as typed, else one more than the tow before."""
    numbers: list[int] = []
    first: dict[int, int] = {}
    last = 0
    for tow, draft in zip(tows, drafts, strict=True):
        no = tow.no or last + 1
        if no in first:
            hint = "number them by order, or leave the numbers out"
            warn(found, draft.place, "tow-number-twice", f"tow {no} stands twice, first on line {first[no]}", hint)
        first.setdefault(no, draft.place.line)
        last = no
        numbers.append(no)
    return numbers


def _carry_on(tows: list[Tow], numbers: list[int]) -> tuple[Tow, ...]:
    """Return the tows with their numbers, and with side, ground, net and pens carried on from the tow before where none was given."""
    carried: list[Tow] = []
    last: dict[str, object] = dict.fromkeys(_CARRIED)
    for tow, no in zip(tows, numbers, strict=True):
        own = {name: getattr(tow, name) for name in _CARRIED}
        missing = {name: last[name] for name, value in own.items() if not value and last[name]}
        last = own | missing
        carried.append(replace(tow, no=no, carried=frozenset(missing), **missing))
    return tuple(carried)
