"""Lines over time, with the days below and what each line is where it ends."""

from logbook.render.charts import Chart, Line, Lines
from logbook.render.draw_columns import rule
from logbook.render.plate import INK, MUTED, PALETTE, RULE, SIZE, VERMILLION, Box, Panel, Plate, room
from logbook.render.scale import round_ticks

_LEFT, _TOP, _BOTTOM = 44, 30, 30
_LEAST_RIGHT = 20


def draw_lines(plate: Plate, chart: Chart, drawing: Lines) -> None:
    """Put lines over time on the plate."""
    words = [line.words for line in drawing.lines]
    right = max(_LEAST_RIGHT, *(room(said) + 14 for said in words)) if words else _LEAST_RIGHT
    highest = max((value for line in drawing.lines for _, value in line.points), default=0.0)
    ticks = round_ticks(max(highest, drawing.limit[0] if drawing.limit else 0.0))
    box = Box(left=_LEFT, top=_TOP, width=chart.width - _LEFT - right, height=chart.height - _TOP - _BOTTOM)
    panel = plate.panel(box, (0.0, max(drawing.hours, 1.0)), (0.0, ticks[-1]))
    rule(panel, ticks, drawing.unit)
    _days(panel, drawing)
    if drawing.limit is not None:
        _limit(panel, *drawing.limit)
    for line in drawing.lines:
        panel.lines([line.points], PALETTE[line.colour], 2.2, "dashed" if line.broken else None)
        panel.dots(line.marks, PALETTE[line.colour], 6.0)
    _ends(panel, drawing.lines)


def _days(panel: Panel, drawing: Lines) -> None:
    """Draw a line where a day begins and write its name, shortened to fit."""
    starts = [hours for hours, _ in drawing.days]
    ends = [*starts[1:], panel.across[1]]
    panel.lines([[(start, 0.0), (start, panel.up[1])] for start in starts if start > 0], RULE, 0.8, "dashed")
    for (start, name), end in zip(drawing.days, ends, strict=True):
        pixels = (end - start) / panel.per_pixel_x
        said = next((text for text in (name, name.partition(" ")[0], name[:1]) if room(text) + 4 <= pixels), "")
        panel.write((start + end) / 2, -14 * panel.per_pixel_y, said, across="center", colour=INK)


def _limit(panel: Panel, value: float, words: str) -> None:
    panel.lines([[(panel.across[0], value), (panel.across[1], value)]], VERMILLION, 1.4, "dashed", clip=False)
    panel.write(panel.across[0] + 4 * panel.per_pixel_x, value - 10 * panel.per_pixel_y, words, colour=MUTED)


def _ends(panel: Panel, lines: tuple[Line, ...]) -> None:
    """Write what each line is at its end, moved apart where two end close together."""
    ends = sorted((line.points[-1][1], line.points[-1][0], line.words) for line in lines if line.points)
    least = 1.3 * SIZE * panel.per_pixel_y
    low = -panel.up[1]
    for value, hours, words in ends:
        if hours < panel.across[1] - 1:
            panel.write(hours + 4 * panel.per_pixel_x, value + 11 * panel.per_pixel_y, words)
            continue
        low = max(value, low + least)
        panel.write(hours + 6 * panel.per_pixel_x, low, words)
