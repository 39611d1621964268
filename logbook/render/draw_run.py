"""Tows in order: what each brought up, and above it the running total."""

from logbook.render.charts import Chart, Run
from logbook.render.draw_columns import rule, stack
from logbook.render.language import _
from logbook.render.plate import BLUE, INK, MUTED, RULE, Box, Panel, Plate, key, room
from logbook.render.scale import round_ticks
from logbook.render.shown import fixed

_LEFT, _RIGHT = 56, 58
_TOTAL_TOP, _TOTAL_HIGH = 30, 92
_BARS_TOP, _BOTTOM = 186, 30
_LEAST_BARS = 20
"""Bars there is room for at the least, so that those of a short trip are not as wide as walls."""


def draw_run(plate: Plate, chart: Chart, drawing: Run) -> None:
    """Put the tows of a trip on the plate."""
    across = (0.0, float(max(len(drawing.bars), _LEAST_BARS)))
    wide = chart.width - _LEFT - _RIGHT
    so_far = [float(total) / 1000 for total in drawing.totals]
    ticks = round_ticks(so_far[-1] if so_far else 0.0, 3)
    box = Box(left=_LEFT, top=_TOTAL_TOP, width=wide, height=_TOTAL_HIGH)
    totals = plate.panel(box, across, (0.0, ticks[-1]))
    rule(totals, ticks, _("t, total"))
    _line(totals, so_far)

    highest = max((sum(part.size for part in bar.parts) for bar in drawing.bars), default=0.0)
    ticks = round_ticks(highest)
    box = Box(left=_LEFT, top=_BARS_TOP, width=wide, height=chart.height - _BARS_TOP - _BOTTOM)
    tows = plate.panel(box, across, (0.0, ticks[-1]))
    rule(tows, ticks, _("kg a tow"))
    _days(tows, drawing, (_BARS_TOP - _TOTAL_TOP) * tows.per_pixel_y)
    stack(tows, drawing.bars, 0.4)
    for column, bar in enumerate(drawing.bars):
        if bar.end:
            tows.write(column + 0.5, 8 * tows.per_pixel_y, bar.end, across="center", colour=MUTED)
    key(tows, 38, drawing.key)


def _line(panel: Panel, so_far: list[float]) -> None:
    """Draw the running total and write where it ends."""
    if not so_far:
        return
    points = [(0.0, 0.0)]
    for column, total in enumerate(so_far):
        points += [(column + 0.5, points[-1][1]), (column + 0.5, total)]
    points.append((float(len(so_far)), so_far[-1]))
    panel.lines([points], BLUE, 2.2)
    panel.write(len(so_far) + 5 * panel.per_pixel_x, so_far[-1], f"{fixed(so_far[-1], 1)} t", bold=True)


def _days(panel: Panel, drawing: Run, above: float) -> None:
    """Draw a line where a day begins and write its name, shortened to fit."""
    ends = [start for start, _ in drawing.days[1:]] + [len(drawing.bars)]
    top = panel.up[1] + above
    panel.lines(
        [[(float(start), 0.0), (float(start), top)] for start, _ in drawing.days[1:]], RULE, 0.8, "dashed", clip=False
    )
    for (start, name), end in zip(drawing.days, ends, strict=True):
        pixels = (end - start) / panel.per_pixel_x
        said = next((text for text in (name, name.partition(" ")[0], name[:1]) if room(text) + 4 <= pixels), "")
        panel.write((start + end) / 2, -14 * panel.per_pixel_y, said, across="center", colour=INK)
