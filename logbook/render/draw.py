"""Charts drawn: each kind has its module; this one knows which."""

from typing import assert_never

from logbook.render.charts import Bars, Chart, Chartlet, Columns, HoldPlan, Lines, Run
from logbook.render.draw_bars import draw_bars
from logbook.render.draw_chartlet import draw_chartlet
from logbook.render.draw_columns import draw_columns
from logbook.render.draw_hold import draw_hold
from logbook.render.draw_lines import draw_lines
from logbook.render.draw_run import draw_run
from logbook.render.plate import Plate


def draw(chart: Chart) -> bytes:
    """Return a chart as SVG; the same chart gives the same bytes."""
    return put(chart).svg()


def put(chart: Chart) -> Plate:
    """Put a chart on a plate and return it."""
    on = Plate(chart.width, chart.height)
    match chart.drawing:
        case Bars() as drawing:
            draw_bars(on, chart, drawing)
        case Columns() as drawing:
            draw_columns(on, chart, drawing)
        case Run() as drawing:
            draw_run(on, chart, drawing)
        case Lines() as drawing:
            draw_lines(on, chart, drawing)
        case HoldPlan() as drawing:
            draw_hold(on, chart, drawing)
        case Chartlet() as drawing:
            draw_chartlet(on, chart, drawing)
        case _ as never:
            assert_never(never)
    return on
