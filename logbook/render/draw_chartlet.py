"""A small chart of the tows: graticule, statistical rectangles, grounds, tracks and a scale. Not for navigation."""

from collections.abc import Iterator
from math import cos, floor, radians

from logbook.render.charts import Chart, Chartlet, Point
from logbook.render.language import _
from logbook.render.plate import BLUE, INK, MUTED, VERMILLION, Box, Label, Panel, Plate
from logbook.render.projection import BOTTOM, LEFT, RIGHT, TOP, northing
from logbook.render.scale import graticule, round_step
from logbook.render.shown import brief_number

_ROOM = 24
"""Pixels of an outline that must be seen for its name to be written."""

GRID = (-44.0, 68.5, 36.0, 85.5)
"""West, east, south and north ends of the ICES grid of statistical rectangles."""


def draw_chartlet(plate: Plate, chart: Chart, drawing: Chartlet) -> None:
    """Put the chartlet on the plate."""
    box = Box(left=LEFT, top=TOP, width=chart.width - LEFT - RIGHT, height=chart.height - TOP - BOTTOM)
    up = (northing(drawing.south), northing(drawing.north))
    panel = plate.panel(box, (drawing.west, drawing.east), up)
    _graticule(panel, drawing)
    _rectangles(panel, drawing)
    names = [*_of_rectangles(panel, drawing), *_outlines(panel, drawing), *_tracks(panel, drawing)]
    _scale(panel, drawing)
    panel.write_over(names)
    (west, east), (low, high) = panel.across, panel.up
    panel.lines([[(west, low), (east, low), (east, high), (west, high), (west, low)]], INK, 1.2)


def _up(points: tuple[Point, ...]) -> list[Point]:
    return [(longitude, northing(latitude)) for longitude, latitude in points]


def _graticule(panel: Panel, drawing: Chartlet) -> None:
    parallels = graticule(drawing.south, drawing.north, 6)
    meridians = graticule(drawing.west, drawing.east, 5)
    (west, east), (low, high) = panel.across, panel.up
    panel.lines([[(west, northing(lat)), (east, northing(lat))] for lat in parallels])
    panel.lines([[(lon, low), (lon, high)] for lon in meridians])
    for lat in parallels:
        panel.write(west - 6 * panel.per_pixel_x, northing(lat), whole_minutes(lat, "NS"), across="right", colour=MUTED)
    for lon in meridians:
        words = whole_minutes((lon + 180) % 360 - 180, "EW")
        panel.write(lon, low - 14 * panel.per_pixel_y, words, across="center", colour=MUTED)


def whole_minutes(angle: float, letters: str) -> str:
    """Return `58°50′N` for an angle of whole minutes."""
    minutes = round(abs(angle) * 60)
    return f"{minutes // 60}°{minutes % 60:02d}′{letters[0] if angle >= 0 else letters[1]}"


def _rectangles(panel: Panel, drawing: Chartlet) -> None:
    """Draw the edges of the statistical rectangles within."""
    west, east = max(drawing.west, GRID[0]), min(drawing.east, GRID[1])
    south, north = max(drawing.south, GRID[2]), min(drawing.north, GRID[3])
    if west < east and south < north:
        parallels = [half / 2 for half in range(floor(south * 2), floor(north * 2) + 1) if half / 2 >= south]
        meridians = [float(lon) for lon in range(floor(west), floor(east) + 1) if lon >= west]
        panel.lines([[(west, northing(lat)), (east, northing(lat))] for lat in parallels], MUTED, 1.1)
        panel.lines([[(lon, northing(south)), (lon, northing(north))] for lon in meridians], MUTED, 1.1)


def _of_rectangles(panel: Panel, drawing: Chartlet) -> Iterator[Label]:
    """Give the names of the statistical rectangles fished."""
    for name, (lon, lat) in drawing.rectangles:
        x = max(lon, drawing.west) + 6 * panel.per_pixel_x
        y = min(northing(lat + 0.5), panel.up[1]) - 11 * panel.per_pixel_y
        yield Label(x=x, y=y, words=name, colour=MUTED, bold=True)


def _outlines(panel: Panel, drawing: Chartlet) -> Iterator[Label]:
    """Draw the outlines of grounds and give their names, where there is room for them."""
    for outline in drawing.outlines:
        corners = _up(outline.corners)
        panel.lines([[*corners, corners[0]]], MUTED, 1.2, "dotted")
        if not _has_room(panel, corners):
            continue
        x = max(min(x for x, _ in corners), panel.across[0]) + 6 * panel.per_pixel_x
        y = max(min(y for _, y in corners), panel.up[0]) + 11 * panel.per_pixel_y
        yield Label(x=x, y=y, words=outline.name, colour=MUTED)


def _has_room(panel: Panel, corners: list[Point]) -> bool:
    """Tell whether enough of an outline lies on the chartlet to write its name in."""
    left, right = max(min(x for x, _ in corners), panel.across[0]), min(max(x for x, _ in corners), panel.across[1])
    low, high = max(min(y for _, y in corners), panel.up[0]), min(max(y for _, y in corners), panel.up[1])
    return right - left > _ROOM * panel.per_pixel_x and high - low > _ROOM * panel.per_pixel_y


def _tracks(panel: Panel, drawing: Chartlet) -> Iterator[Label]:
    """Draw the tows and give their numbers, of those that have one."""
    clean = [_up(track.points) for track in drawing.tracks if not track.foul]
    foul = [_up(track.points) for track in drawing.tracks if track.foul]
    panel.lines([points for points in clean if len(points) > 1], BLUE, 1.6)
    panel.lines([points for points in foul if len(points) > 1], VERMILLION, 1.6, "dashed")
    panel.dots([points[0] for points in clean], BLUE, 4.5)
    panel.dots([points[0] for points in foul], VERMILLION, 4.5)
    panel.crosses([points[-1] for points in foul], VERMILLION, 8)
    beside, above = 6 * panel.per_pixel_x, 7 * panel.per_pixel_y
    for track in drawing.tracks:
        if track.label:
            x, y = _up(track.points[:1])[0]
            yield Label(x=x + beside, y=y + above, words=track.label, bold=track.foul)


def _scale(panel: Panel, drawing: Chartlet) -> None:
    """Draw a length of whole sea miles, true at the middle latitude."""
    middle = (drawing.south + drawing.north) / 2
    per_mile = 1 / 60 / cos(radians(middle))
    span = panel.across[1] - panel.across[0]
    miles = round_step(span / per_mile / 4, 1)
    right = panel.across[1] - 14 * panel.per_pixel_x
    left, y = right - miles * per_mile, panel.up[0] + 12 * panel.per_pixel_y
    tick = 4 * panel.per_pixel_y
    panel.lines([[(left, y + tick), (left, y), (right, y), (right, y + tick)]], INK, 1.4)
    panel.write((left + right) / 2, y + 9 * panel.per_pixel_y, brief_number(miles, 2) + " " + _("nm"), across="center")
