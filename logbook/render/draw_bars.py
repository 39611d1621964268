"""Bars that lie one below the other, with their labels before and their figures after them."""

from logbook.render.charts import Bars, Chart
from logbook.render.draw_sizes import ROW, bars_top
from logbook.render.plate import MUTED, PALETTE, SIZE, Box, Label, Panel, Plate, Points, key, rectangle, room
from logbook.render.scale import round_ticks
from logbook.render.shown import fixed

_THICK = 0.34


def draw_bars(plate: Plate, chart: Chart, drawing: Bars) -> None:
    """Put lying bars on the plate."""
    longest = max((sum(part.size for part in bar.parts) for bar in drawing.bars), default=0.0)
    ticks = round_ticks(longest)
    left = 14 + max((room(bar.label) for bar in drawing.bars), default=0.0)
    right = 12 + max((room(bar.end) for bar in drawing.bars), default=0.0)
    box = Box(left=left, top=bars_top(drawing), width=chart.width - left - right, height=ROW * len(drawing.bars))
    most = (max(longest, ticks[-2]) or ticks[-1]) * 1.0001
    panel = plate.panel(box, (0.0, most), (float(len(drawing.bars)), 0.0))
    _grid(panel, [tick for tick in ticks if tick <= most], drawing)
    for colour, shapes in enumerate(_shapes(drawing)):
        panel.areas(shapes, colour)
    _write(panel, drawing)
    if drawing.key:
        key(panel, 16, drawing.key)


def _shapes(drawing: Bars) -> list[list[Points]]:
    """Return the outlines of the parts, one list for each colour."""
    made: list[list[Points]] = [[] for _ in PALETTE]
    for row, bar in enumerate(drawing.bars):
        start, middle = 0.0, row + 0.5
        for part in bar.parts:
            end = start + part.size
            made[part.colour].append(rectangle(start, middle + _THICK, end, middle - _THICK))
            start = end
    return made


def _grid(panel: Panel, ticks: list[float], drawing: Bars) -> None:
    low = panel.up[0]
    panel.lines([[(tick, 0.0), (tick, low)] for tick in ticks])
    below = low - 14 * panel.per_pixel_y
    for tick in ticks:
        panel.write(tick, below, fixed(tick, 1 if ticks[-1] < 3 else 0), across="center", colour=MUTED)  # noqa: PLR2004 - small scales need a decimal
    panel.write(-10 * panel.per_pixel_x, below, drawing.unit, across="right", colour=MUTED)


def _write(panel: Panel, drawing: Bars) -> None:
    named: list[Label] = []
    for row, bar in enumerate(drawing.bars):
        middle = row + 0.5
        panel.write(-8 * panel.per_pixel_x, middle, bar.label, across="right")
        start = 0.0
        for part in bar.parts:
            if part.words and room(part.words) + SIZE < part.size / panel.per_pixel_x:
                named.append(Label(x=start + part.size / 2, y=middle, words=part.words, across="center"))
            start += part.size
        panel.write(start + 6 * panel.per_pixel_x, middle, bar.end, bold=True)
    panel.write_over(named)
