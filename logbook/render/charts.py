"""Charts as data: what is drawn, its words for those who don't see it, and its size; nothing of how.

A chart names the file it goes to. The drawing modules (`draw.py` and those it calls) make an SVG of it.
"""

from decimal import Decimal

from msgspec import Struct

BROAD, SLIM = 920, 480
"""Widths of charts, in CSS pixels."""

OTHERS = 4
"""Place in the palette of what is summed up as `others`: grey, after the four colours."""


class Part(Struct, frozen=True, kw_only=True):
    """A piece of a bar.

    Attributes:
        size: How long it is, in the chart's unit.
        colour: Place in the palette.
        words: What is written in it where there is room.
    """

    size: float
    colour: int = 0
    words: str = ""


class Bar(Struct, frozen=True, kw_only=True):
    """A bar with its label.

    Attributes:
        label: What stands before it.
        parts: Its pieces, from the axis on.
        end: What stands after it.
        lead: True where a new group begins with it.
    """

    label: str
    parts: tuple[Part, ...]
    end: str = ""
    lead: bool = False


class Bars(Struct, frozen=True, kw_only=True):
    """Bars that lie, one below the other.

    Attributes:
        unit: Unit of their length, as it is written.
        bars: From top to bottom.
        key: Names of the colours, in the palette's order; empty where the bars tell it themselves.
    """

    unit: str
    bars: tuple[Bar, ...]
    key: tuple[tuple[int, str], ...] = ()


class Columns(Struct, frozen=True, kw_only=True):
    """Bars that stand, one beside the other.

    Attributes:
        unit: Unit of their height, as it is written.
        bars: From left to right.
        key: Colour and name.
    """

    unit: str
    bars: tuple[Bar, ...]
    key: tuple[tuple[int, str], ...] = ()


class Run(Struct, frozen=True, kw_only=True):
    """Tows in order: each one's catch below, the running total above.

    Attributes:
        bars: One for each tow; its `end` is a sign where the catch is not known.
        totals: Kilograms so far, after each tow.
        days: Index of the first tow of a day, and the day's name.
        key: Colour and name.
    """

    bars: tuple[Bar, ...]
    totals: tuple[Decimal, ...]
    days: tuple[tuple[int, str], ...]
    key: tuple[tuple[int, str], ...]


class Line(Struct, frozen=True, kw_only=True):
    """A line of a chart over time.

    Attributes:
        points: Hours since the chart begins, and the value.
        colour: Place in the palette.
        words: Written where it ends.
        marks: Points where somebody looked.
        broken: True where it is drawn dashed.
    """

    points: tuple[tuple[float, float], ...]
    colour: int
    words: str
    marks: tuple[tuple[float, float], ...] = ()
    broken: bool = False


class Lines(Struct, frozen=True, kw_only=True):
    """Lines over time.

    Attributes:
        unit: Unit of the values, as it is written.
        hours: How long the time is.
        days: Hours at which a day begins, and its name.
        lines: What is drawn.
        limit: A value that is not to be passed, and its words; None where there is none.
    """

    unit: str
    hours: float
    days: tuple[tuple[float, str], ...]
    lines: tuple[Line, ...]
    limit: tuple[float, str] | None = None


class PenBox(Struct, frozen=True, kw_only=True):
    """A pen on the plan of the hold.

    Attributes:
        name: As the fleet file has it.
        words: Written in it, line by line.
        full: How full it is, 1 for full; None where that is not known.
    """

    name: str
    words: tuple[str, ...]
    full: float | None


class HoldPlan(Struct, frozen=True, kw_only=True):
    """The pens of a hold, row by row."""

    rows: tuple[tuple[PenBox, ...], ...]


Point = tuple[float, float]
"""Longitude and latitude in degrees."""


class Track(Struct, frozen=True, kw_only=True):
    """A tow on the chartlet.

    Attributes:
        points: From shot to hauled; a single one where only that is known.
        foul: True where gear came fast, was damaged or lost.
        label: Written beside its beginning; empty for none.
    """

    points: tuple[Point, ...]
    foul: bool
    label: str = ""


class Outline(Struct, frozen=True, kw_only=True):
    """A ground's outline.

    Attributes:
        name: As the fleet file has it.
        corners: Its corners in order.
    """

    name: str
    corners: tuple[Point, ...]


class Chartlet(Struct, frozen=True, kw_only=True):
    """Tows on a small chart.

    Attributes:
        west: Left edge, longitude in degrees.
        east: Right edge; more than 180 where the chart lies across that meridian.
        south: Lower edge, latitude in degrees.
        north: Upper edge.
        tracks: The tows.
        outlines: Grounds that lie within.
        rectangles: Name and south-west corner of the statistical rectangles fished.
    """

    west: float
    east: float
    south: float
    north: float
    tracks: tuple[Track, ...]
    outlines: tuple[Outline, ...] = ()
    rectangles: tuple[tuple[str, Point], ...] = ()


Drawing = Bars | Columns | Run | Lines | HoldPlan | Chartlet


class Chart(Struct, frozen=True, kw_only=True):
    """A chart of the archive.

    Attributes:
        path: Where it goes.
        alt: What it shows, in a sentence or two.
        width: In CSS pixels.
        height: The same.
        drawing: What is drawn.
    """

    path: str
    alt: str
    width: int
    height: int
    drawing: Drawing

    @property
    def form(self) -> str:
        """Return how much room it wants on a small screen: `broad`, `square` or `slim`."""
        if self.width >= BROAD:
            return "broad"
        return "square" if isinstance(self.drawing, Chartlet) else "slim"
