"""The hold as a plan of its pens: what is written in each, and a gauge of how full it is at its side."""

from logbook.render.charts import Chart, HoldPlan, PenBox
from logbook.render.draw_sizes import PEN_GAP, PEN_LINE, pen_height
from logbook.render.plate import INK, MUTED, Box, Panel, Plate, rectangle

_WIDEST = 150.0
_GAUGE = 7.0


def draw_hold(plate: Plate, chart: Chart, drawing: HoldPlan) -> None:
    """Put the pens on the plate."""
    box = Box(left=0, top=0, width=chart.width, height=chart.height)
    panel = plate.panel(box, (0.0, float(chart.width)), (0.0, float(chart.height)))
    most = max((len(row) for row in drawing.rows), default=1)
    wide = min(_WIDEST, (chart.width - PEN_GAP) / most - PEN_GAP)
    high = float(pen_height(drawing))
    outlines, gauges = [], []
    for down, row in enumerate(drawing.rows):
        top = chart.height - PEN_GAP - down * (high + PEN_GAP)
        for along, pen in enumerate(row):
            left = PEN_GAP + along * (wide + PEN_GAP)
            corners = rectangle(left, top - high, left + wide, top)
            outlines.append([*corners, corners[0]])
            if pen.full:
                gauges.append(rectangle(left, top - high, left + _GAUGE, top - high + high * min(pen.full, 1.0)))
            _write(panel, pen, left + _GAUGE + 6, top)
    panel.areas(gauges, 0)
    panel.lines(outlines, MUTED, 0.9)


def _write(panel: Panel, pen: PenBox, x: float, top: float) -> None:
    panel.write(x, top - PEN_LINE, pen.name, bold=True)
    for n, words in enumerate(pen.words, start=2):
        panel.write(x, top - n * PEN_LINE, words, colour=INK)
