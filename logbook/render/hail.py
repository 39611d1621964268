"""The message that is sent ashore: short enough for a satellite text, and read aloud without a stumble.

What matters most stands first. Where it would be too long the fish says less and less, down to what all of it weighs; the
words for the quay are cut to what room that leaves, but never below a line and a half.
"""

from collections.abc import Iterator, Sequence
from datetime import datetime
from decimal import Decimal
from itertools import groupby

from logbook.model.hail import FISH, Counted, HailedFish, HailFigures
from logbook.model.language import ENGLISH
from logbook.model.names import fold_name, plural
from logbook.render.kept import counted, counted_fish, figure, known_kg
from logbook.render.language import _, _c, _n, speech
from logbook.render.shown import brief_day, fixed, many, offset_words
from logbook.render.text import bare, tow_numbers

MOST = 599
"""A hail stays under six hundred characters."""

_SHORT = frozenset({"kg", "t", "lb", "st", "cwt"})
_MOST_NAME = 30
_MOST_GRADE = 20
_MOST_WANTS = 120


def hail_text(hail: HailFigures) -> str:
    """Return the message as one paragraph of plain text of at most `MOST` characters."""
    wants = _wants(hail, _MOST_WANTS)
    room = MOST - len(_told(hail, "", wants)) - 1
    fish = next(said for said in _fish(hail) if len(said) <= room)
    return _told(hail, fish, _wants(hail, len(wants) + room - len(fish)))


def _told(hail: HailFigures, fish: str, wants: str) -> str:
    sale = _("Sale {when}.").format(when=_when(hail.sale)) if hail.sale is not None else ""
    again = _("Sails again {when}.").format(when=_when(hail.sails_again)) if hail.sails_again is not None else ""
    return " ".join(part for part in (_before(hail), fish, _age(hail), sale, wants, again) if part)


def _wants(hail: HailFigures, most: int) -> str:
    """Return the words for the quay as a sentence of at most so many signs; nothing where there are none."""
    words = _line(hail.wants or "").rstrip(". ")
    sentence = _("Wants {words}.").format(words=words)
    if not words or len(sentence) <= most:
        return sentence if words else ""
    return f"{sentence[: most - 3].rstrip()}..."


def _before(hail: HailFigures) -> str:
    return f"{_short(hail.vessel.upper(), _MOST_NAME)} {_when(hail.as_of)}. {_docking(hail)}"


def _docking(hail: HailFigures) -> str:
    port = _short(hail.port, _MOST_NAME) if hail.port else _c("some port", "port")
    if hail.state == "landing not logged":
        return _("Landing at {port} not logged.").format(port=port)
    if hail.docked is None:
        said = _("Docking at {port}: time not known.") if hail.expected else _("Docked {port}: time not known.")
        return said.format(port=port)
    if not hail.expected:
        said = _("Docked {port} {when}.")
    else:
        said = _("Expect {port} {when}.") if hail.state == "homeward" else _("Expect {port} {when} if turned now.")
    return said.format(port=port, when=_when(hail.docked))


def _age(hail: HailFigures) -> str:
    if hail.oldest_ice_days is None:
        return ""
    said = _("Oldest {days} days").format(days=bare(fixed(hail.oldest_ice_days, 1)))
    if hail.oldest_equivalent_ice_days is not None:
        as_if = bare(fixed(hail.oldest_equivalent_ice_days, 1))
        said = _("{oldest} (as if at 0 C: {days})").format(oldest=said, days=as_if)
    if hail.mean_ice_days is not None:
        said = _("{oldest}, mean {days}").format(oldest=said, days=bare(fixed(hail.mean_ice_days, 1)))
    return f"{said}."


def _fish(hail: HailFigures) -> Iterator[str]:
    """Give ways to tell what is aboard, each shorter than the one before."""
    full, short = _gaps(hail, tow_numbers(hail.not_known)), _gaps(hail, many(len(hail.not_known), "tow", "tows"))
    if not hail.kept:
        yield from _no_fish(hail, full, short)
        return
    species = [tuple(parts) for _name, parts in groupby(hail.kept, key=lambda fish: fold_name(fish.species))]
    named = "; ".join(_species(parts, graded=True) for parts in species)
    yield _kept(full, named)
    yield _kept(short, named)
    plain = [_species(parts, graded=False) for parts in species]
    yield _kept(short, "; ".join(plain))
    for count in range(len(plain) - 1, 0, -1):
        left = len(plain) - count
        rest = _n("{n} other species {weight}", "{n} other species {weight}", left).format(
            n=left, weight=_weighed([fish for parts in species[count:] for fish in parts])
        )
        yield _kept(short, "; ".join((*plain[:count], rest)))
    yield _kept(short, _weighed(hail.kept))


def _kept(gaps: str, fish: str) -> str:
    """Return what was kept as a sentence, with what it leaves out."""
    return (
        _("Kept (without {gaps}): {fish}.").format(gaps=gaps, fish=fish)
        if gaps
        else _("Kept: {fish}.").format(fish=fish)
    )


def _no_fish(hail: HailFigures, *gaps: str) -> Iterator[str]:
    """Give ways to tell that nothing was kept, as far as is known."""
    if not any(gaps):
        yield _("No catch logged.") if hail.kept_kg is None else _("No fish kept.")
        return
    for gap in gaps:
        yield _kept(gap, _("not known") if hail.kept_kg is None else _("no fish"))


def _gaps(hail: HailFigures, tows: str) -> str:
    """Return what the fish leaves out; nothing where it is whole."""
    if not hail.unread:
        return bare(tows) if hail.not_known else ""
    unread = _n("{n} tow that can't be read", "{n} tows that can't be read", hail.unread).format(n=fixed(hail.unread))
    return bare(_("{this} and {that}").format(this=tows, that=unread) if hail.not_known else unread)


def _weighed(fish: Sequence[HailedFish]) -> str:
    """Return what fish weighs, and how many of it were counted and not weighed."""
    known, count = known_kg(fish), counted(fish)
    parts = [f"{bare(fixed(known)).replace(' ', '')} kg"] if known is not None else []
    return " + ".join([*parts, *([count] if count else [])])


def _species(parts: Sequence[HailedFish], *, graded: bool) -> str:
    name = _short(parts[0].species, _MOST_NAME)
    if not graded:
        return f"{name} {_amounts([amount for fish in parts for amount in fish.amounts])}"
    said = [
        f"{_short(fish.grade, _MOST_GRADE)} {_amounts(fish.amounts)}" if fish.grade else _amounts(fish.amounts)
        for fish in parts
    ]
    return f"{name} {', '.join(said)}"


def _amounts(amounts: Sequence[Counted]) -> str:
    """Return amounts added up by unit: `61 baskets + 120 kg`."""
    units = dict.fromkeys(amount.unit for amount in amounts)
    return " + ".join(_counted(sum(one.number for one in amounts if one.unit == unit), unit) for unit in units)


def _counted(number: Decimal | int, unit: str) -> str:
    shown = figure(number)
    if unit == FISH:
        return counted_fish(number)
    # How words are put in the plural is known of English alone.
    return f"{shown} {unit if unit in _SHORT or shown == '1' or speech().tag != ENGLISH else plural(unit)}"


def _short(text: str, most: int) -> str:
    """Return words as typed on one line, cut with three dots: a sign beyond the plain ones halves what a message holds."""
    line = _line(text)
    return line if len(line) <= most else f"{line[: most - 3].rstrip()}..."


def _line(text: str) -> str:
    """Return words as typed on one line, without signs that can't be seen: those for the direction of script turn a line round."""
    return " ".join("".join(sign if sign.isprintable() else " " for sign in text).split())


def _when(moment: datetime) -> str:
    """Return `Tue 24 Nov 18:17 UTC`."""
    offset = moment.utcoffset()
    zone = offset_words(offset) if offset is not None else ""
    return f"{brief_day(moment)} {moment:%H:%M} {zone}".rstrip()
