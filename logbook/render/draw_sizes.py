"""How high a chart of lying bars must be; known without loading what draws it."""

from logbook.render.charts import Bars, HoldPlan

ROW = 30
"""Height of a bar with the room round it, in pixels."""

TOP, KEY_TOP, BOTTOM = 8, 32, 34


def bars_top(drawing: Bars) -> int:
    """Return how far down the bars begin, in pixels."""
    return KEY_TOP if drawing.key else TOP


def bars_height(drawing: Bars) -> int:
    """Return how high the chart must be, in pixels."""
    return bars_top(drawing) + ROW * len(drawing.bars) + BOTTOM


PEN_GAP, PEN_HIGH, PEN_LINE = 8, 30, 16
"""Between pens; of a pen without its lines; of a line of words."""


def pen_height(drawing: HoldPlan) -> int:
    """Return how high a pen must be, in pixels."""
    return PEN_HIGH + PEN_LINE * max((len(pen.words) for row in drawing.rows for pen in row), default=0)


def hold_height(drawing: HoldPlan) -> int:
    """Return how high the chart must be, in pixels."""
    return len(drawing.rows) * (pen_height(drawing) + PEN_GAP) + PEN_GAP
