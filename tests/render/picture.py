"""A chart read back from the SVG that is published: its words, and its shapes in the scales of its panels."""

import re
from xml.etree import ElementTree as ET

from msgspec import Struct

from logbook.render.charts import Chart
from logbook.render.draw import put
from logbook.render.plate import PALETTE, Panel

_SVG = "{http://www.w3.org/2000/svg}"
_CORNER = re.compile(r"([ML]) ([-\d.]+) ([-\d.]+)")
Outline = list[tuple[float, float]]


class Shapes(Struct, frozen=True, kw_only=True):
    """What was drawn at once.

    Attributes:
        style: As a style sheet has it.
        clipped: Whether it is kept within a panel.
        outlines: Corners in pixels from the left and the top.
    """

    style: dict[str, str]
    clipped: bool
    outlines: list[Outline]


class Picture:
    """A chart as it is published."""

    def __init__(self, chart: Chart) -> None:
        """Draw the chart and read what came of it."""
        plate = put(chart)
        self.panels = plate.panels
        drawn = ET.fromstring(plate.svg())  # noqa: S314 - our own
        self.words = [text.text or "" for text in drawn.iter(f"{_SVG}text")]
        self._hatches = {
            pattern.attrib["id"]: pattern[0].attrib["fill"]  # its ground, before its strokes
            for pattern in drawn.iter(f"{_SVG}pattern")
        }
        self.shapes = [_shapes(path) for path in drawn.findall(f"{_SVG}path")]

    def fill(self, shapes: Shapes) -> str:
        """Return the colour shapes are filled with, below any hatch; `none` for lines."""
        fill = shapes.style.get("fill", "none")
        hatched = re.fullmatch(r"url\(#(.*)\)", fill)
        return self._hatches[hatched[1]] if hatched else fill

    def boxes(self, colour: int, panel: int = 0) -> list[tuple[float, float, float, float]]:
        """Return left, low, right and high of every shape of a colour in a panel, in its scales."""
        of = self.panels[panel]
        return sorted(
            box([_scaled(of, corner) for corner in outline])
            for shapes in self.shapes
            if shapes.clipped and self.fill(shapes) == PALETTE[colour]
            for outline in shapes.outlines
            if all(_within(of, corner) for corner in outline)
        )

    def lines(self, colour: str, width: float, panel: int = 0) -> list[Outline]:
        """Return the lines of a colour and a width in a panel, in its scales."""
        of = self.panels[panel]
        return [
            [_scaled(of, corner) for corner in outline]
            for shapes in self.shapes
            if shapes.style.get("stroke") == colour and float(shapes.style.get("stroke-width", 1)) == width
            for outline in shapes.outlines
            if all(_within(of, corner) for corner in outline)
        ]


def _shapes(path: ET.Element) -> Shapes:
    outlines: list[Outline] = []
    for leads, x, y in _CORNER.findall(path.attrib["d"]):
        if leads == "M":
            outlines.append([])
        outlines[-1].append((float(x), float(y)))
    parts = (part.partition(": ") for part in path.attrib["style"].split("; "))
    return Shapes(
        style={name: value for name, _, value in parts}, clipped="clip-path" in path.attrib, outlines=outlines
    )


def _within(panel: Panel, corner: tuple[float, float]) -> bool:
    x, y = corner[0] - panel.box.left, corner[1] - panel.box.top
    return -1 < x < panel.box.width + 1 and -1 < y < panel.box.height + 1


def _scaled(panel: Panel, corner: tuple[float, float]) -> tuple[float, float]:
    x, y = corner[0] - panel.box.left, panel.box.top + panel.box.height - corner[1]
    return panel.across[0] + x * panel.per_pixel_x, panel.up[0] + y * panel.per_pixel_y


def box(corners: Outline) -> tuple[float, float, float, float]:
    """Return left, low, right and high of an outline."""
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    return min(xs), min(ys), max(xs), max(ys)
