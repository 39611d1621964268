"""The chartlet of a trip's tows, as data: what lies on it, how far it reaches and what is said of it."""

from collections.abc import Sequence
from math import floor

from msgspec import Struct

from logbook.model.figures import Reckoned, TowFigures
from logbook.model.fleet import Fleet
from logbook.model.trip import Tow
from logbook.render.chartlet import HEIGHT, WIDTH, framed, near_and_far, points_of, unwrapped
from logbook.render.charts import Chart, Point, Track
from logbook.render.gather import logged_tows
from logbook.render.language import _, _n
from logbook.render.links import trip_chart
from logbook.render.shown import many, one_line

_NAMED = 4
"""So many grounds are named."""


class TowChart(Struct, frozen=True, kw_only=True):
    """The chartlet with what is said beneath it.

    Attributes:
        chart: What is drawn.
        left_off: Numbers of tows that lie far from all others and are not on it.
        without: How many tows have no position.
        foul: How many tows on it were foul.
    """

    chart: Chart
    left_off: tuple[int, ...]
    without: int
    foul: int


def tow_chart(reckoned: Reckoned, fleet: Fleet) -> TowChart | None:
    """Return the chartlet of a trip; None where no tow has a position."""
    tows = logged_tows(reckoned)
    placed = [(tow, figures, points) for tow, figures in tows if (points := points_of((tow.start, *tow.via, tow.end)))]
    if not placed:
        return None
    east = placed[0][2][0][0]
    turned = [(tow, figures, unwrapped(points, east)) for tow, figures, points in placed]
    together, apart = near_and_far([points for _, _, points in turned])
    near, far = [turned[n] for n in together], [turned[n] for n in apart]
    labels = _labels([figures for _, figures, _ in near])
    tracks = [
        Track(points=points, foul=figures.foul, label=labels.get(n, "")) for n, (_, figures, points) in enumerate(near)
    ]
    drawing = framed(tracks, fleet, _rectangles(near))
    chart = Chart(
        path=trip_chart(reckoned.figures.trip.id, "chartlet"),
        alt=_words([figures for _, figures, _ in near]),
        width=WIDTH,
        height=HEIGHT,
        drawing=drawing,
    )
    foul = sum(figures.foul for _, figures, _ in near)
    return TowChart(
        chart=chart, left_off=tuple(figures.no for _, figures, _ in far), without=len(tows) - len(placed), foul=foul
    )


Placed = tuple[Tow, TowFigures, tuple[Point, ...]]


def _labels(tows: Sequence[TowFigures]) -> dict[int, str]:
    """Return which tows are numbered on the chartlet: the first of every day, the last, and foul ones."""
    named, seen = {}, None
    for place, tow in enumerate(tows):
        day = tow.shot.date() if tow.shot else seen
        if day != seen or tow.foul or place in {0, len(tows) - 1}:
            named[place] = str(tow.no)
        seen = day
    return named


def _rectangles(near: Sequence[Placed]) -> tuple[tuple[str, Point], ...]:
    """Return the statistical rectangles fished with their south-west corners."""
    found: dict[str, Point] = {}
    for tow, figures, _points in near:
        if figures.rectangle and tow.start and figures.rectangle not in found:
            end = tow.end or tow.start
            lon, lat = (tow.start.longitude + end.longitude) / 2, (tow.start.latitude + end.latitude) / 2
            found[figures.rectangle] = (float(floor(lon)), floor(lat * 2) / 2)
    return tuple(sorted(found.items()))


def _words(tows: Sequence[TowFigures]) -> str:
    grounds = sorted({one_line(tow.ground) for tow in tows if tow.ground})
    rectangles = sorted({tow.rectangle for tow in tows if tow.rectangle})
    foul = sum(tow.foul for tow in tows)
    said = _("Chartlet of {tows}").format(tows=many(len(tows), "tow", "tows"))
    if grounds:
        where = (
            _("{chartlet} on {grounds} and other grounds") if len(grounds) > _NAMED else _("{chartlet} on {grounds}")
        )
        said = where.format(chartlet=said, grounds=", ".join(grounds[:_NAMED]))
    if rectangles:
        within = _n("{chartlet}, in rectangle {names}", "{chartlet}, in rectangles {names}", len(rectangles))
        said = within.format(chartlet=said, names=", ".join(rectangles))
    return _("{chartlet}; {n} of them foul.").format(chartlet=said, n=foul) if foul else f"{said}."
