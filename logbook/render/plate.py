"""The plate that charts are drawn on: matplotlib, kept and used again, and SVG that is the same every time.

Making a figure and its axes costs more than drawing on them, so there is one of each, cleared after every
chart. Axes are never drawn; a chart brings its own few shapes and words. All shapes of a colour are one
path. Text stays text, in the reader's own typeface.
"""

import io
import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import Any, Literal

import matplotlib as mpl
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.backend_bases import RendererBase
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.figure import Figure
from matplotlib.font_manager import FontProperties
from matplotlib.lines import Line2D
from matplotlib.patches import PathPatch
from matplotlib.path import Path
from matplotlib.text import Text
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

_PIXELS = 72
_MOVE, _LINE, _CLOSE = int(Path.MOVETO), int(Path.LINETO), int(Path.CLOSEPOLY)
_BASELINE = 0.35
"""How far above the baseline the middle of a line of text lies, in heights of text."""
_SETTINGS: dict[Any, Any] = {
    "svg.fonttype": "none",
    "svg.hashsalt": "trawl-trip-logbook",
    "text.parse_math": False,
    "font.family": ["DejaVu Sans"],
    "hatch.linewidth": 1.1,
    "hatch.color": PAPER,
    "path.simplify": False,
}
_NO_METADATA = {"Creator": None, "Date": None, "Format": None, "Type": None}
_PROLOGUE = re.compile(rb"<\?xml.*?(?=<svg)", re.DOTALL)
_INCHES = re.compile(rb'\b(width|height)="([\d.]+)pt"')
_FONT = re.compile(rb'(<text style="[^">]*)\'DejaVu Sans\'')

Points = Sequence[tuple[float, float]]
Side = Literal["left", "center", "right"]


class Box(Struct, frozen=True, kw_only=True):
    """Where a panel lies on the plate, in pixels from its left and top edges."""

    left: float
    top: float
    width: float
    height: float


class Words(Text):
    """A line of text that is placed by its size alone, without being measured, which is most of the work."""

    def draw(self, renderer: RendererBase) -> None:
        """Write it."""
        x, y = self.get_transform().transform(self.get_unitless_position())
        down = y - _BASELINE * SIZE
        brush = renderer.new_gc()
        brush.set_foreground(self.get_color())
        height = renderer.get_canvas_width_height()[1]
        renderer.draw_text(brush, x, height - down, self.get_text(), self.get_fontproperties(), 0, False, self)  # noqa: FBT003 - matplotlib's order
        brush.restore()


class Panel:
    """A part of the plate with scales of its own."""

    def __init__(
        self, axes: Axes, keep: list[Artist], box: Box, across: tuple[float, float], up: tuple[float, float]
    ) -> None:
        """Take axes that have been put in their place; `across` and `up` are the ends of its scales."""
        self.axes = axes
        self.across = across
        self.up = up
        self.per_pixel_x = (across[1] - across[0]) / box.width
        self.per_pixel_y = (up[1] - up[0]) / box.height
        self._keep = keep

    def areas(self, shapes: Sequence[Points], colour: int, *, clip: bool = True) -> None:
        """Fill shapes with a colour of the palette and its hatch."""
        if shapes:
            made = PathPatch(
                joined(shapes, close=True),
                facecolor=PALETTE[colour],
                edgecolor=PAPER,
                linewidth=0.6,
                hatch=HATCHES[colour] or None,
                zorder=1,
            )
            self._add(made, clip=clip)

    def lines(
        self,
        paths: Sequence[Points],
        colour: str = RULE,
        width: float = 0.8,
        dashes: str = "solid",
        *,
        clip: bool = True,
    ) -> None:
        """Draw broken lines."""
        if paths:
            made = PathPatch(
                joined(paths, close=False),
                fill=False,
                edgecolor=colour,
                linewidth=width,
                linestyle=(0, (1, 3)) if dashes == "dotted" else dashes,
                capstyle="round",
                zorder=0 if colour == RULE else 2,
            )
            self._add(made, clip=clip)

    def marks(self, points: Points, sign: str, colour: str, size: float = 4.0) -> None:
        """Put a sign at points."""
        if points:
            made = Line2D(
                [x for x, _ in points],
                [y for _, y in points],
                linestyle="none",
                marker=sign,
                markersize=size,
                markerfacecolor=colour,
                markeredgecolor=colour,
                markeredgewidth=1.6 if sign == "x" else 0,
                zorder=3,
            )
            self._add(made)

    def write(
        self,
        x: float,
        y: float,
        words: str,
        *,
        across: Side = "left",
        colour: str = INK,
        bold: bool = False,
    ) -> None:
        """Write words at a point, `across` saying which part of them lies there, their middle by height."""
        made = Words(
            x,
            y,
            words,
            horizontalalignment=across,
            color=colour,
            fontproperties=_font(bold),
            zorder=5,
        )
        self._add(made, clip=False)

    def blank(self, places: Sequence[tuple[float, float, str, Side]]) -> None:
        """Make the ground behind words light: x, y, the words, and which part of them lies there."""
        shapes = []
        half = 0.62 * SIZE * self.per_pixel_y
        for x, y, words, across in places:
            wide = room(words) * self.per_pixel_x
            left = x - {"left": 0.0, "center": 0.5, "right": 1.0}[across] * wide
            shapes.append([(left, y - half), (left, y + half), (left + wide, y + half), (left + wide, y - half)])
        if shapes:
            made = PathPatch(joined(shapes, close=True), facecolor=PAPER, edgecolor="none", alpha=0.8, zorder=4)
            self._add(made)

    def _add(self, artist: Artist, *, clip: bool = True) -> None:
        self._keep.append(self.axes.add_artist(artist))
        artist.set_clip_on(clip)


class Plate:
    """A figure with two pairs of axes that is used again and again."""

    def __init__(self) -> None:
        """Make the figure; matplotlib is set as we need it, whatever this machine's own settings are."""
        mpl.rcdefaults()
        mpl.rcParams.update(_SETTINGS)
        self.figure = Figure(figsize=(6, 4), dpi=_PIXELS, facecolor=PAPER)
        self.canvas = FigureCanvasSVG(self.figure)
        self.axes = tuple(self.figure.add_axes((0.0, 0.0, 1.0, 1.0)) for _ in range(2))
        for axes in self.axes:
            axes.set_axis_off()
            axes.set_autoscale_on(False)
        self._size = (0, 0)
        self.artists: list[Artist] = []

    def begin(self, width: int, height: int) -> None:
        """Clear the plate and give it a size in pixels."""
        for artist in self.artists:
            artist.remove()
        self.artists.clear()
        for axes in self.axes:
            axes.set_visible(False)
        self._size = (width, height)
        self.figure.set_size_inches(width / _PIXELS, height / _PIXELS)

    def panel(self, number: int, box: Box, across: tuple[float, float], up: tuple[float, float]) -> Panel:
        """Return one of the plate's two panels, put in its place with its scales."""
        width, height = self._size
        axes = self.axes[number]
        bottom = height - box.top - box.height
        axes.set_position((box.left / width, bottom / height, box.width / width, box.height / height))
        axes.set_xlim(*across)
        axes.set_ylim(*up)
        axes.set_visible(True)
        return Panel(axes, self.artists, box, across, up)

    def svg(self) -> bytes:
        """Return what stands on the plate."""
        written = io.BytesIO()
        self.canvas.print_svg(written, metadata=_NO_METADATA)  # type: ignore[no-untyped-call]
        return _tidy(written.getvalue())


@lru_cache(maxsize=1)
def plate() -> Plate:
    """Return the one plate."""
    return Plate()


@lru_cache(maxsize=2)
def _font(bold: bool) -> FontProperties:  # noqa: FBT001 - there are these two
    return FontProperties(size=SIZE, weight="bold" if bold else "normal")


def joined(shapes: Sequence[Points], *, close: bool) -> Path:
    """Return many outlines or lines as one path."""
    corners: list[tuple[float, float]] = []
    codes: list[int] = []
    for shape in shapes:
        corners += shape
        codes += [_MOVE, *[_LINE] * (len(shape) - 1)]
        if close:
            corners.append(shape[0])
            codes.append(_CLOSE)
    return Path(corners, codes)


def _tidy(svg: bytes) -> bytes:
    """Return the SVG without the reference to its document type, sized in pixels and in the reader's own typeface."""
    bare = _INCHES.sub(rb'\1="\2"', _PROLOGUE.sub(b"", svg, count=1), count=2)
    return _FONT.sub(rb"\1system-ui, sans-serif", bare)


def room(words: str) -> float:
    """Return about how many pixels wide words are."""
    return len(words) * SIZE * 0.58


def key(panel: Panel, top: float, entries: Iterable[tuple[int, str]]) -> None:
    """Write the names of the colours in a row, `top` pixels above the panel."""
    y = panel.up[1] + top * panel.per_pixel_y
    x = panel.across[0]
    high, wide = 9 * panel.per_pixel_y, 14 * panel.per_pixel_x
    for colour, name in entries:
        swatch = [(x, y - high / 2), (x, y + high / 2), (x + wide, y + high / 2), (x + wide, y - high / 2)]
        panel.areas([swatch], colour, clip=False)
        panel.write(x + wide + 5 * panel.per_pixel_x, y, name)
        x += wide + (5 + room(name) + 14) * panel.per_pixel_x
