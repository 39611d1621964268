"""How high a chart of lying bars must be; known without loading what draws it."""

from logbook.render.charts import Bars

ROW = 30
"""Height of a bar with the room round it, in pixels."""

TOP, KEY_TOP, BOTTOM = 8, 32, 34


def bars_top(drawing: Bars) -> int:
    """Return how far down the bars begin, in pixels."""
    return KEY_TOP if drawing.key else TOP


def bars_height(drawing: Bars) -> int:
    """Return how high the chart must be, in pixels."""
    return bars_top(drawing) + ROW * len(drawing.bars) + BOTTOM
