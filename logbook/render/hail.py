"""The message that is sent ashore: short enough for a satellite text, and read aloud without a stumble.

What matters most stands first. Where it would be too long the fish says less and less, down to what all of it weighs; the
words for the quay are cut last.
"""

from collections.abc import Iterator, Sequence
from datetime import datetime
from itertools import groupby

from logbook.model.hail import Counted, HailedFish, HailFigures
from logbook.model.names import plural
from logbook.render.shown import brief_day, fixed, offset_words, one_line
from logbook.render.text import bare, tow_numbers

MOST = 599
"""A hail stays under six hundred characters."""

_SHORT = frozenset({"kg", "t", "lb", "st", "cwt", "fish"})
_MOST_NAME = 30
_MOST_WANTS = 120


def hail_text(hail: HailFigures) -> str:
    """Return the message as one paragraph of plain text of at most `MOST` characters."""
    before, after = _before(hail), _after(hail)
    room = MOST - len(before) - len(after) - 2
    fish = next((said for said in _fish(hail) if len(said) <= room), "")
    return " ".join(part for part in (before, fish, after) if part)


def _before(hail: HailFigures) -> str:
    vessel = one_line(hail.vessel, _MOST_NAME).upper()
    return f"{vessel} {_when(hail.as_of)}. {_docking(hail)}"


def _docking(hail: HailFigures) -> str:
    port = one_line(hail.port, _MOST_NAME) if hail.port else "port"
    if hail.docked is None:
        return f"Docking at {port}: time not known."
    if not hail.expected:
        return f"Docked {port} {_when(hail.docked)}."
    turned = "" if hail.state == "homeward" else " if turned now"
    return f"Expect {port} {_when(hail.docked)}{turned}."


def _after(hail: HailFigures) -> str:
    parts = [_age(hail)]
    if hail.sale is not None:
        parts.append(f"Sale {_when(hail.sale)}.")
    if hail.wants:
        parts.append(f"Wants {one_line(hail.wants, _MOST_WANTS).rstrip('.')}.")
    if hail.sails_again is not None:
        parts.append(f"Sails again {_when(hail.sails_again)}.")
    return " ".join(part for part in parts if part)


def _age(hail: HailFigures) -> str:
    if hail.oldest_ice_days is None or hail.mean_ice_days is None:
        return ""
    as_if = hail.oldest_equivalent_ice_days
    kept = f" (as if at 0 C: {bare(fixed(as_if, 1))})" if as_if is not None else ""
    return f"Oldest {bare(fixed(hail.oldest_ice_days, 1))} days{kept}, mean {bare(fixed(hail.mean_ice_days, 1))}."


def _fish(hail: HailFigures) -> Iterator[str]:
    """Give ways to tell what is aboard, each shorter than the one before."""
    if not hail.kept:
        yield "No fish kept." if hail.kept_kg == 0 else "Catch not known."
        return
    gaps = f" (without {tow_numbers(hail.not_known)})" if hail.not_known else ""
    species = [tuple(parts) for _, parts in groupby(hail.kept, key=lambda fish: fish.species)]
    named = [_species(parts, graded=True) for parts in species]
    yield f"Kept{gaps}: {'; '.join(named)}."
    plain = [_species(parts, graded=False) for parts in species]
    yield f"Kept{gaps}: {'; '.join(plain)}."
    for count in range(len(plain) - 1, 0, -1):
        rest = sum((fish.kept_kg or 0 for parts in species[count:] for fish in parts), start=0)
        yield f"Kept{gaps}: {'; '.join(plain[:count])}; {len(plain) - count} other species {_kilograms(rest)}."
    yield f"Kept{gaps}: {_kilograms(hail.kept_kg)}."


def _kilograms(weight: object) -> str:
    return "weight not known" if not weight else f"{bare(fixed(weight)).replace(' ', '')} kg"  # type: ignore[arg-type]


def _species(parts: Sequence[HailedFish], *, graded: bool) -> str:
    name = one_line(parts[0].species, _MOST_NAME)
    if not graded:
        return f"{name} {_amounts([amount for fish in parts for amount in fish.amounts])}"
    said = [
        f"{one_line(fish.grade, 20)} {_amounts(fish.amounts)}" if fish.grade else _amounts(fish.amounts)
        for fish in parts
    ]
    return f"{name} {', '.join(said)}"


def _amounts(amounts: Sequence[Counted]) -> str:
    """Return amounts added up by unit: `61 baskets + 120 kg`."""
    units = dict.fromkeys(amount.unit for amount in amounts)
    return " + ".join(_counted(sum(one.number for one in amounts if one.unit == unit), unit) for unit in units)


def _counted(number: object, unit: str) -> str:
    figure = f"{number:f}"
    figure = figure.rstrip("0").rstrip(".") if "." in figure else figure
    return f"{figure} {unit if unit in _SHORT or figure == '1' else plural(unit)}"


def _when(moment: datetime) -> str:
    """Return `Tue 24 Nov 18:17 UTC`."""
    offset = moment.utcoffset()
    zone = offset_words(offset) if offset is not None else ""
    return f"{brief_day(moment)} {moment:%H:%M} {zone}".rstrip()
