"""Round steps for axes and graticules."""

from math import ceil, floor, log10

_STEPS = (1.0, 2.0, 2.5, 5.0, 10.0)

MINUTES = (1, 2, 5, 10, 15, 20, 30, 60, 120, 300, 600, 900, 1800)
"""Steps of a graticule, in minutes of arc."""


def round_step(most: float, about: int) -> float:
    """Return a round step that leads from 0 to `most` in about as many steps; 1 where there is nothing to span."""
    if most <= 0:
        return 1.0
    power = 10.0 ** floor(log10(most / about))
    return next(step * power for step in _STEPS if most / (step * power) <= about + 0.5 or step == _STEPS[-1])


def round_ticks(most: float, about: int = 4) -> tuple[float, ...]:
    """Return round values from 0 to at least `most`."""
    step = round_step(most, about)
    return tuple(step * number for number in range(ceil(most / step - 1e-9) + 1)) if most > 0 else (0.0, 1.0)


def graticule(low: float, high: float, most: int) -> tuple[float, ...]:
    """Return the degrees at which lines of a graticule lie between two, at most about so many of them."""
    span = (high - low) * 60
    step = next((minutes for minutes in MINUTES if span / minutes <= most), MINUTES[-1])
    first = ceil(low * 60 / step - 1e-9)
    last = floor(high * 60 / step + 1e-9)
    return tuple(number * step / 60 for number in range(first, last + 1))
