"""The plate that charts are drawn on: matplotlib, kept and used again, and SVG that is the same every time.

Making a figure and its axes costs more than drawing on them, so there is one of each, cleared after every
chart. Axes are never drawn; a chart brings its own few lines and labels. Text stays text.
"""

import io
import re
import warnings
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

import matplotlib as mpl
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.collections import LineCollection, PolyCollection
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.text import Text

INK = "#1b2326"
MUTED = "#56636a"
RULE = "#d3dad9"
PAPER = "#ffffff"
BLUE, VERMILLION, GREEN, PURPLE, GREY = "#0072b2", "#d55e00", "#009e73", "#cc79a7", "#7a868c"

PALETTE = (BLUE, VERMILLION, GREEN, PURPLE, GREY)
"""Okabe and Ito (2008): those four that stand 3:1 against white and, turned dark by the style sheet, against the dark plate."""

HATCHES = ("", "////", "....", "xxxx", "")
"""What tells the colours apart where colour does not."""

SIZE = 12.0
"""Height of text in CSS pixels."""

_PIXELS = 72
_SETTINGS = {
    "svg.fonttype": "none",
    "svg.hashsalt": "trawl-trip-logbook",
    "text.parse_math": False,
    "font.family": ["DejaVu Sans"],
    "hatch.linewidth": 0.9,
    "path.simplify": False,
}
_NO_METADATA = {"Creator": None, "Date": None, "Format": None, "Type": None}
_PROLOGUE = re.compile(rb"<\?xml.*?(?=<svg)", re.DOTALL)
_FONT = re.compile(rb"font-family: 'DejaVu Sans'|(?<=px )'DejaVu Sans'")


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """Where a panel lies on the plate, in pixels from its left and top edges."""

    left: float
    top: float
    width: float
    height: float


class Panel:
    """A part of the plate with scales of its own."""

    def __init__(self, axes: Axes, keep: list[Artist], box: Box, across: tuple[float, float], up: tuple[float, float]) -> None:
        """Take axes that have been put in their place; `across` and `up` are the ends of its scales."""
        self.axes = axes
        self.across = across
        self.up = up
        self.per_pixel_x = (across[1] - across[0]) / box.width
        self.per_pixel_y = (up[1] - up[0]) / box.height
        self._keep = keep

    def areas(self, shapes: Sequence[Sequence[tuple[float, float]]], colour: int) -> None:
        """Fill shapes with a colour of the palette and its hatch."""
        if not shapes:
            return
        made = PolyCollection(
            shapes,
            facecolors=PALETTE[colour],
            edgecolors=PAPER,
            linewidths=0.6,
            hatch=HATCHES[colour] or None,
        )
        self._add(self.axes.add_collection(made, autolim=False))

    def lines(
        self, paths: Sequence[Sequence[tuple[float, float]]], colour: str = RULE, width: float = 0.8, dashes: str = "solid"
    ) -> None:
        """Draw broken lines."""
        if not paths:
            return
        made = LineCollection(list(paths), colors=colour, linewidths=width, linestyles=dashes, capstyle="round")
        self._add(self.axes.add_collection(made, autolim=False))

    def marks(self, points: Sequence[tuple[float, float]], sign: str, colour: str, size: float = 4.0) -> None:
        """Put a sign at points."""
        if not points:
            return
        made = Line2D(
            [x for x, _ in points],
            [y for _, y in points],
            linestyle="none",
            marker=sign,
            markersize=size,
            markerfacecolor=colour,
            markeredgecolor=colour,
            markeredgewidth=1.6 if sign == "x" else 0,
        )
        self._add(self.axes.add_artist(made))

    def write(
        self,
        x: float,
        y: float,
        words: str,
        *,
        across: str = "left",
        up: str = "center",
        colour: str = INK,
        bold: bool = False,
        halo: bool = False,
    ) -> None:
        """Write words at a point, `across` and `up` saying which part of them lies there."""
        made = Text(
            x,
            y,
            words,
            horizontalalignment=across,
            verticalalignment=up,
            color=colour,
            fontsize=SIZE,
            fontweight="bold" if bold else "normal",
            parse_math=False,
            bbox={"facecolor": PAPER, "edgecolor": "none", "pad": 0.8, "alpha": 0.85} if halo else None,
        )
        made.set_clip_on(False)
        self._add(self.axes.add_artist(made))

    def _add(self, artist: Artist) -> None:
        self._keep.append(artist)


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
        with warnings.catch_warnings():
            warnings.filterwarnings("ignore", message="Glyph .* missing from font", category=UserWarning)
            self.canvas.print_svg(written, metadata=_NO_METADATA)
        return _tidy(written.getvalue())


@lru_cache(maxsize=1)
def plate() -> Plate:
    """Return the one plate."""
    return Plate()


def _tidy(svg: bytes) -> bytes:
    """Return the SVG without the reference to its document type and in the reader's own typeface."""
    bare = _PROLOGUE.sub(b"", svg, count=1)
    return _FONT.sub(lambda found: found.group().replace(b"'DejaVu Sans'", b"system-ui, sans-serif"), bare)


def room(words: str) -> float:
    """Return about how many pixels wide words are."""
    return len(words) * SIZE * 0.58


def key(panel: Panel, top: float, entries: Iterable[tuple[int, str]]) -> None:
    """Write the names of the colours in a row, `top` pixels above the panel."""
    y = panel.up[1] + top * panel.per_pixel_y
    x = panel.across[0]
    high, wide = 9 * panel.per_pixel_y, 14 * panel.per_pixel_x
    for colour, name in entries:
        panel.areas([[(x, y - high / 2), (x, y + high / 2), (x + wide, y + high / 2), (x + wide, y - high / 2)]], colour)
        panel.axes.collections[-1].set_clip_on(False)
        panel.write(x + wide + 5 * panel.per_pixel_x, y, name)
        x += wide + (5 + room(name) + 14) * panel.per_pixel_x
