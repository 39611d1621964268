"""The plate that a chart is drawn on: matplotlib's SVG renderer, told what to draw in pixels.

A figure with axes finds out where everything lies and how large it is, artist by artist, over and over; a chart here knows
that already. So no figure is made: paths and words go straight to what figures are drawn with, in the order they are put.
All shapes of a colour are one path. Text stays text, in the reader's own typeface.
"""

import io
import re
from collections.abc import Iterable, Sequence
from functools import cache
from typing import Any, Literal

import matplotlib as mpl
import numpy as np
from matplotlib.backend_bases import GraphicsContextBase, RendererBase
from matplotlib.backends.backend_svg import RendererSVG
from matplotlib.colors import to_rgb, to_rgba
from matplotlib.font_manager import FontProperties
from matplotlib.path import Path
from matplotlib.text import Text
from matplotlib.transforms import Bbox, IdentityTransform
from msgspec import Struct

INK = "#1b2326"
MUTED = "#56636a"
RULE = "#d3dad9"
PAPER = "#ffffff"
BLUE, VERMILLION, GREEN, PURPLE, GREY = "#0072b2", "#d55e00", "#009e73", "#cc79a7", "#7a868c"

PALETTE = (BLUE, VERMILLION, GREEN, PURPLE, GREY)
"""Okabe and Ito (2008): those four that stand 3:1 against white and, turned dark by the style sheet, against the dark plate."""

HATCHES = ("", "////", "\\\\\\\\", "xxxx", "---")
"""What tells the colours apart where colour does not."""

SIZE = 12.0
"""Height of text in pixels."""

Points = Sequence[tuple[float, float]]
Side = Literal["left", "center", "right"]
Face = tuple[float, float, float] | tuple[float, float, float, float]
Dashes = Literal["dashed", "dotted"]

_DASHES: dict[Dashes, tuple[float, ...]] = {"dashed": (3.7, 1.6), "dotted": (1.0, 3.0)}
"""Lengths of dash and gap, in widths of the line."""
_SHARE = {"left": 0.0, "center": 0.5, "right": 1.0}
_BASELINE = 0.35
"""How far above the baseline the middle of a line of text lies, in heights of text."""
_PLACES = 2
"""To so many decimals of a pixel all is placed."""

_MOVE, _LINE, _CLOSE = int(Path.MOVETO), int(Path.LINETO), int(Path.CLOSEPOLY)
_IN_PIXELS = IdentityTransform()
_SETTINGS: dict[Any, Any] = {
    "svg.fonttype": "none",
    "svg.hashsalt": "trawl-trip-logbook",
    "font.family": ["DejaVu Sans"],
    "hatch.linewidth": 1.1,
    "path.simplify": False,
}
_NO_METADATA = {"Creator": None, "Date": None, "Format": None, "Type": None}
_TEXT = re.compile(
    r"<text style=\"((?:font-weight: \d+; )?)font-size: [^;]+; font-family: [^;]+; ([^\"]*)\""
    r"( x=\"\S+\" y=\"\S+\"(?= transform=\"rotate)|)(?: transform=\"rotate\(0 [^\"]*\")?"
)
_STYLE_ENDS = "}</style>"
_FONT_OF_ALL = f"}}text{{font: {SIZE:g}px system-ui, sans-serif}}</style>"


class Box(Struct, frozen=True, kw_only=True):
    """Where a panel lies on the plate, in pixels from its left and top edges."""

    left: float
    top: float
    width: float
    height: float


class Label(Struct, frozen=True, kw_only=True):
    """Words at a point of a panel.

    Attributes:
        x: In the panel's scale.
        y: The same; the middle of the words by height lies there.
        words: What is written.
        across: Which part of the words lies at the point.
        colour: As style sheets have it.
        bold: Whether they are.
    """

    x: float
    y: float
    words: str
    across: Side = "left"
    colour: str = INK
    bold: bool = False


class Panel:
    """A part of the plate with scales of its own; what is put on it lies over all that was put on the plate before."""

    def __init__(self, renderer: RendererBase, box: Box, across: tuple[float, float], up: tuple[float, float]) -> None:
        """Take what draws, where on the plate the panel lies, and the ends of its scales."""
        self.box = box
        self.across = across
        self.up = up
        self.per_pixel_x = (across[1] - across[0]) / box.width
        self.per_pixel_y = (up[1] - up[0]) / box.height
        self._renderer = renderer
        low = renderer.get_canvas_width_height()[1] - box.top - box.height
        self._edges = Bbox.from_bounds(box.left, low, box.width, box.height)
        self._begins = np.array((across[0], up[0]))
        self._per_pixel = np.array((self.per_pixel_x, self.per_pixel_y))
        self._corner = np.array((box.left, low))

    def areas(self, shapes: Sequence[Points], colour: int, *, clip: bool = True) -> None:
        """Fill shapes with a colour of the palette and its hatch."""
        pen = self._pen(PAPER, 0.6, clip=clip)
        if HATCHES[colour]:
            pen.set_hatch(HATCHES[colour])
            pen.set_hatch_color(to_rgba(PAPER))
        self._draw(shapes, pen, to_rgb(PALETTE[colour]))

    def lines(
        self,
        paths: Sequence[Points],
        colour: str = RULE,
        width: float = 0.8,
        dashes: Dashes | None = None,
        *,
        clip: bool = True,
    ) -> None:
        """Draw broken lines."""
        pen = self._pen(colour, width, clip=clip)
        pen.set_capstyle("round")
        if dashes:
            pen.set_dashes(0, [width * part for part in _DASHES[dashes]])
        self._draw(paths, pen)

    def dots(self, points: Points, colour: str, size: float) -> None:
        """Put a dot at points: a line with round ends that leads nowhere, as broad as the dot."""
        self.lines([[point, point] for point in points], colour, size)

    def crosses(self, points: Points, colour: str, size: float) -> None:
        """Put a cross at points."""
        wide, high = size / 2 * self.per_pixel_x, size / 2 * self.per_pixel_y
        strokes = [[(x - wide, y - rise), (x + wide, y + rise)] for x, y in points for rise in (high, -high)]
        self.lines(strokes, colour, 1.6)

    def write(
        self, x: float, y: float, words: str, *, across: Side = "left", colour: str = INK, bold: bool = False
    ) -> None:
        """Write words at a point, `across` saying which part of them lies there, their middle by height."""
        if words:
            right = round(self.box.left + (x - self.across[0]) / self.per_pixel_x, _PLACES)
            down = round(self.box.top + (self.up[1] - y) / self.per_pixel_y + _BASELINE * SIZE, _PLACES)
            at = _anchor(across) if across != "left" else None
            if at:
                at.set_x(right)
            self._renderer.draw_text(_ink(colour), right, down, words, _font(bold), 0, ismath=False, mtext=at)

    def write_over(self, labels: Sequence[Label]) -> None:
        """Write words over what is drawn, on a light ground of their own."""
        half = 0.62 * SIZE * self.per_pixel_y
        grounds = []
        for label in labels:
            wide = room(label.words) * self.per_pixel_x
            left = label.x - _SHARE[label.across] * wide
            grounds.append(rectangle(left, label.y - half, left + wide, label.y + half))
        self._draw(grounds, self._pen(PAPER, 0), (*to_rgb(PAPER), 0.8))
        for label in labels:
            self.write(label.x, label.y, label.words, across=label.across, colour=label.colour, bold=label.bold)

    def _pen(self, colour: str, width: float, *, clip: bool = True) -> GraphicsContextBase:
        pen = self._renderer.new_gc()
        pen.set_foreground(colour)
        pen.set_linewidth(width)
        if clip:
            pen.set_clip_rectangle(self._edges)
        return pen

    def _draw(self, shapes: Sequence[Points], pen: GraphicsContextBase, face: Face | None = None) -> None:
        """Draw lines, or closed shapes where they have a face."""
        if shapes:
            corners, codes = joined(shapes, close=face is not None)
            pixels = (np.array(corners) - self._begins) / self._per_pixel + self._corner
            self._renderer.draw_path(pen, Path(pixels.round(_PLACES), codes), _IN_PIXELS, face)


class Plate:
    """What a chart is drawn on, white, of a size in pixels."""

    def __init__(self, width: int, height: int) -> None:
        """Begin an empty one."""
        _settle()
        self.panels: list[Panel] = []
        self._written = io.StringIO()
        self._renderer = RendererSVG(width, height, self._written, metadata=_NO_METADATA)  # type: ignore[no-untyped-call]
        _whiten(self._renderer, width, height)

    def panel(self, box: Box, across: tuple[float, float], up: tuple[float, float]) -> Panel:
        """Return a part of the plate with scales of its own, `across` and `up` being their ends."""
        made = Panel(self._renderer, box, across, up)
        self.panels.append(made)
        return made

    def svg(self) -> bytes:
        """Return what stands on the plate, which is done with then."""
        self._renderer.finalize()  # type: ignore[no-untyped-call]
        return _tidy(self._written.getvalue()).encode()


def _whiten(renderer: RendererBase, width: int, height: int) -> None:
    pen = renderer.new_gc()
    pen.set_linewidth(0)
    renderer.draw_path(pen, Path(rectangle(0, 0, width, height)), _IN_PIXELS, to_rgb(PAPER))


@cache
def _settle() -> None:
    """Set matplotlib as we need it, whatever this machine's own settings are."""
    mpl.rcdefaults()
    mpl.rcParams.update(_SETTINGS)


@cache
def _font(bold: bool) -> FontProperties:  # noqa: FBT001 - there are these two
    return FontProperties(size=SIZE, weight="bold" if bold else "normal")


@cache
def _ink(colour: str) -> GraphicsContextBase:
    ink = GraphicsContextBase()
    ink.set_foreground(colour)
    return ink


@cache
def _anchor(across: Side) -> Text:
    """Return what tells the renderer which part of words lies where they are put."""
    return Text(horizontalalignment=across)


def rectangle(left: float, low: float, right: float, high: float) -> Points:
    """Return the corners of an upright rectangle."""
    return [(left, low), (left, high), (right, high), (right, low)]


def joined(shapes: Sequence[Points], *, close: bool) -> tuple[list[tuple[float, float]], list[int]]:
    """Return many outlines or lines as one path: its corners and what leads to each."""
    corners: list[tuple[float, float]] = []
    codes: list[int] = []
    for shape in shapes:
        corners += shape
        codes += [_MOVE, *[_LINE] * (len(shape) - 1)]
        if close:
            corners.append(shape[0])
            codes.append(_CLOSE)
    return corners, codes


def _tidy(svg: str) -> str:
    """Return the SVG without the reference to its document type, sized in pixels and in the reader's own typeface."""
    bare = svg[svg.index("<svg") :].replace('pt"', '"', 2).replace(_STYLE_ENDS, _FONT_OF_ALL, 1)
    return _TEXT.sub(r'<text style="\1\2"\3', bare)


def room(words: str) -> float:
    """Return about how many pixels wide words are."""
    return len(words) * SIZE * 0.58


def key(panel: Panel, top: float, entries: Iterable[tuple[int, str]]) -> None:
    """Write the names of the colours in a row, `top` pixels above the panel."""
    y = panel.up[1] + top * panel.per_pixel_y
    x = panel.across[0]
    half, wide = 4.5 * panel.per_pixel_y, 14 * panel.per_pixel_x
    for colour, name in entries:
        panel.areas([rectangle(x, y - half, x + wide, y + half)], colour, clip=False)
        panel.write(x + wide + 5 * panel.per_pixel_x, y, name)
        x += wide + (5 + room(name) + 14) * panel.per_pixel_x
