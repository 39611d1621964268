"""Positions moved elsewhere, typed as they were: with the same signs, as many figures, and the same faults.

The readable positions of a log are all moved by one step, so that they keep their distances from each other: doubts about speeds
and jumps hang on these. The step is made by chance and kept nowhere. Where a position can't be read its figures are replaced.
"""

import math
import re
from collections.abc import Iterable
from decimal import Decimal

from msgspec import Struct

from logbook.disguise.stand_ins import StandIns
from logbook.model.quantity import Position
from logbook.read.position import parse_position
from logbook.read.said import Said

_NUMBER = r"\d{1,6}(?:[.,]\d+)?"
_REST = rf"(?:[ ]?(?:[°º˚oø:'’′\-– ]|Â°|deg)[ ]?{_NUMBER})"
_END = r"[ ]?(?:Â?[°º˚ø'’′\"”″]){0,2}[ ]?"
_HALF_AFTER = rf"[+-]?{_NUMBER}{_REST}{{0,2}}{_END}[NSEWnsew](?![^\W_])"
_HALF_BEFORE = rf"(?<![^\W_])[NSEWnsew][ ]?{_NUMBER}{_REST}{{0,2}}{_END}"
_BETWEEN = r"(?:[ ]?[,;/][ ]?|[ ]?-[ ]|[ ]*)"
_FOUND = re.compile(
    rf"(?<![\w.:])(?:{_HALF_AFTER}{_BETWEEN}{_HALF_AFTER}|{_HALF_BEFORE}{_BETWEEN}{_HALF_BEFORE}"
    rf"|{_NUMBER}{_REST}{{1,2}}{_END}[NSEWnsew](?![^\W_])|\d{{4,6}}(?:\.\d+)?[ ]?[NSEW](?![^\W_])"
    rf"|[+-]?\d{{1,3}}\.\d{{2,}}[ ]?°?(?:[ ]?[,;/][ ]?|[ ])[+-]?\d{{1,3}}\.\d{{2,}}(?![\w.]))"
)
_PARTS = re.compile(_NUMBER)
_LETTER = re.compile(r"[NSEWnsew]")
_RUN_TOGETHER = re.compile(r"(\d{2,3})(\d{2}(?:\.\d+)?)")
_TRIES = 400
_NEAREST = math.radians(2.0)


class Step(Struct, frozen=True, kw_only=True):
    """How far and where all positions of a log are moved.

    Attributes:
        at: Latitude and longitude of the middle of them all.
        to: Where that is moved.
    """

    at: tuple[float, float]
    to: tuple[float, float]

    def moved(self, latitude: float, longitude: float) -> tuple[float, float]:
        """Return where a position comes to lie; east and west are stretched as the meridians lie closer or wider."""
        stretch = math.cos(math.radians(self.at[0])) / math.cos(math.radians(self.to[0]))
        return self.to[0] + latitude - self.at[0], self.to[1] + (longitude - self.at[1]) * stretch


def texts_of(line: str) -> Iterable[re.Match[str]]:
    """Give every part of a line that is meant for a position."""
    return _FOUND.finditer(line)


def step_for(positions: Iterable[Position], stand_ins: StandIns) -> Step | None:
    """Return a step for all positions of a log; None where they lie too far from each other to be moved together."""
    every = [(float(one.latitude), float(one.longitude)) for one in positions]
    if not every:
        return None
    at = (sum(one[0] for one in every) / len(every), sum(one[1] for one in every) / len(every))
    for _ in range(_TRIES):
        to = (
            math.copysign(stand_ins.chance.uniform(12, 70), at[0]),
            math.copysign(stand_ins.chance.uniform(12, 170 if abs(at[1]) >= 100 else 88), at[1]),  # noqa: PLR2004 - digits
        )
        step = Step(at=at, to=to)
        moved = [step.moved(*one) for one in every]
        if abs(math.radians(to[0] - at[0])) >= _NEAREST and all(map(_fits, every, moved)):
            return step
    return None


def _fits(was: tuple[float, float], now: tuple[float, float]) -> bool:
    """Tell whether a position can be typed with as many figures, in the same hemispheres."""
    same = was[0] * now[0] >= 0 and was[1] * now[1] >= 0
    return same and 10 <= abs(now[0]) < 80 and 10 <= abs(now[1]) < (178 if abs(was[1]) >= 100 else 98)  # noqa: PLR2004 - degrees


def retyped(text: str, step: Step | None, stand_ins: StandIns, waters: tuple[str, str] | None) -> str:
    """Return a position typed just so somewhere else, with the same faults.

    Args:
        text: As it was typed.
        step: How far readable ones are moved; None where each is moved alone.
        stand_ins: Where chance comes from.
        waters: Letters that are meant where none are typed.
    """
    said = parse_position(text, waters)
    if said.value is not None:
        where = float(said.value.latitude), float(said.value.longitude)
        for _ in range(_TRIES):
            here = step or Step(at=where, to=_anywhere(where, stand_ins))
            typed = _typed(text, here.moved(*where))
            if typed is not None and _faults(parse_position(typed, waters)) == _faults(said) and typed != text:
                return typed
            if step is not None:
                break
    for _ in range(_TRIES):
        typed = _PARTS.sub(lambda found: _alike(found[0], stand_ins), text)
        if typed != text and _faults(parse_position(typed, waters)) == _faults(said):
            return typed
    return _PARTS.sub(lambda found: stand_ins.figures(found[0]), text)


def _anywhere(where: tuple[float, float], stand_ins: StandIns) -> tuple[float, float]:
    chance = stand_ins.chance
    return math.copysign(chance.uniform(12, 70), where[0]), math.copysign(chance.uniform(12, 88), where[1])


def _faults(said: Said[Position]) -> tuple[bool, tuple[str, ...]]:
    return said.value is None, tuple(fault.code for fault in said.faults)


def _alike(number: str, stand_ins: StandIns) -> str:
    """Return other figures, on the same side of the bounds of degrees and minutes."""
    other = stand_ins.figures(number)
    for _ in range(20):
        bounds = [(float(one.replace(",", ".")) >= bound) for one in (number, other) for bound in (60, 90, 180)]
        if bounds[:3] == bounds[3:]:
            break
        other = stand_ins.figures(number)
    return other


def _typed(text: str, where: tuple[float, float]) -> str | None:
    """Return a position in the form that another was typed in; None where that form is not known."""
    numbers = list(_PARTS.finditer(text))
    letters = list(_LETTER.finditer(text))
    if letters and len(letters) == 2:  # noqa: PLR2004 - two halves
        cut = letters[1].start() if letters[0].start() < numbers[0].start() else letters[0].end()
    elif len(numbers) % 2 == 0 and numbers:
        cut = numbers[len(numbers) // 2].start()
    else:
        return None
    halves = [[one for one in numbers if (one.start() >= cut) == later] for later in (False, True)]
    order = where if not letters or letters[0][0] in "NSns" else (where[1], where[0])
    made = [_half([one[0] for one in half], degrees) for half, degrees in zip(halves, order, strict=True)]
    if None in made:
        return None
    typed, end = "", 0
    for one, other in zip(numbers, [part for half in made if half for part in half], strict=True):
        typed += text[end : one.start()] + other
        end = one.end()
    return typed + text[end:]


def _half(parts: list[str], degrees: float) -> list[str] | None:
    """Return the numbers of one coordinate in the form that others were typed in."""
    value = abs(degrees)
    together = _RUN_TOGETHER.fullmatch(parts[0]) if len(parts) == 1 else None
    if together is not None:
        made = _half([together[1], together[2]], degrees)
        return ["".join(made)] if made else None
    if not 1 <= len(parts) <= 3:  # noqa: PLR2004 - degrees, minutes, seconds
        return None
    last = parts[-1]
    mark = "," if "," in last else "."
    decimals = len(last.partition(mark)[2])
    units = 60 ** (len(parts) - 1) * 10**decimals
    whole = round(value * units)
    figures: list[str] = []
    for part in reversed(parts):
        per = 10**decimals if part is last and not figures else 1
        scale = (60 if len(figures) < len(parts) - 1 else 10**6) * per
        whole, here = divmod(whole, scale)
        width = len(part.replace(",", ".").partition(".")[0])
        digits = str(Decimal(here) / per) if per == 1 else f"{here // per}.{here % per:0{decimals}d}"
        digits = digits.replace(".", mark)
        figures.insert(0, digits.zfill(len(digits) + max(0, width - len(digits.partition(mark)[0]))))
    return figures
