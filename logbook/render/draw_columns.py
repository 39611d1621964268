"""Bars that stand side by side."""

from logbook.render.charts import Bar, Chart, Columns
from logbook.render.plate import MUTED, PALETTE, SIZE, Box, Panel, Plate, Points, key, rectangle, room
from logbook.render.scale import round_ticks
from logbook.render.shown import fixed

_LEFT, _RIGHT, _TOP, _BOTTOM = 52, 10, 58, 44
_THICK = 0.36
_WIDEST = 28.0
"""Half the width of a bar at the most, in pixels."""


def draw_columns(plate: Plate, chart: Chart, drawing: Columns) -> None:
    """Put standing bars on the plate."""
    highest = max((sum(part.size for part in bar.parts) for bar in drawing.bars), default=0.0)
    ticks = round_ticks(highest)
    box = Box(left=_LEFT, top=_TOP, width=chart.width - _LEFT - _RIGHT, height=chart.height - _TOP - _BOTTOM)
    panel = plate.panel(box, (0.0, float(max(len(drawing.bars), 1))), (0.0, ticks[-1]))
    rule(panel, ticks, drawing.unit)
    stack(panel, drawing.bars, min(_THICK, _WIDEST * panel.per_pixel_x))
    _label(panel, drawing.bars)
    key(panel, 42, drawing.key)


def rule(panel: Panel, ticks: tuple[float, ...], unit: str) -> None:
    """Draw the lines of a scale that goes up, with their figures at the left and the unit above them."""
    left, right = panel.across
    panel.lines([[(left, tick), (right, tick)] for tick in ticks], clip=False)
    beside = left - 6 * panel.per_pixel_x
    places = 0 if ticks[1] == int(ticks[1]) else 1
    for tick in ticks:
        panel.write(beside, tick, fixed(tick, places), across="right", colour=MUTED)
    panel.write(left, ticks[-1] + 11 * panel.per_pixel_y, unit, colour=MUTED)


def stack(panel: Panel, bars: tuple[Bar, ...], thick: float) -> None:
    """Draw standing bars of stacked parts, one shape list for each colour."""
    shapes: list[list[Points]] = [[] for _ in PALETTE]
    for column, bar in enumerate(bars):
        low, middle = 0.0, column + 0.5
        for part in bar.parts:
            if part.size > 0:
                high = low + part.size
                shapes[part.colour].append(rectangle(middle - thick, low, middle + thick, high))
                low = high
    for colour, of_it in enumerate(shapes):
        panel.areas(of_it, colour)


def _label(panel: Panel, bars: tuple[Bar, ...]) -> None:
    """Write the labels below, as many as there is room for, in two lines where one has a space."""
    widest = max((max(room(word) for word in bar.label.split(" ")) for bar in bars), default=0.0)
    every = max(1, round((widest + SIZE) * panel.per_pixel_x + 0.499))
    for column, bar in enumerate(bars):
        if column % every == 0:
            first, _, second = bar.label.partition(" ")
            panel.write(column + 0.5, -12 * panel.per_pixel_y, first, across="center", colour=MUTED)
            if second and (column == 0 or any(one.lead for one in bars[column - every + 1 : column + 1])):
                panel.write(column + 0.5, -27 * panel.per_pixel_y, second, across="center", colour=MUTED)
        if bar.end and every == 1:
            high = sum(part.size for part in bar.parts)
            panel.write(column + 0.5, high + 8 * panel.per_pixel_y, bar.end, across="center")
