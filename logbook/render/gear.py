"""The page of gear and fasts: hours on every net since it was mended, and every place where gear came fast."""

from collections.abc import Mapping, Sequence

from msgspec import Struct

from logbook.model.fleet import Fleet
from logbook.model.gear import FastMark, NetFigures
from logbook.model.ledger import Kit
from logbook.render.chartlet import HEIGHT, WIDTH, framed, near_and_far, points_of, unwrapped
from logbook.render.charts import Chart, Track
from logbook.render.environment import environment
from logbook.render.files.paths import FASTS_GEOJSON, FASTS_GPX
from logbook.render.frame import Frame, Site
from logbook.render.language import _, speech
from logbook.render.links import GEAR, fleet_chart, numbered_page
from logbook.render.marks import Notes
from logbook.render.more_charts import gear_chart
from logbook.render.paging import Pages, parted
from logbook.render.shown import many

_MOST = 500
"""Fasts on one page, and so on one chartlet: some fourteen elements each."""


class GearRow(Struct, frozen=True, kw_only=True):
    """A net, the doors or the warps of a vessel."""

    name: str
    figures: NetFigures
    mark: str


class VesselGear(Struct, frozen=True, kw_only=True):
    """The gear of a vessel after her last trip."""

    name: str
    rows: tuple[GearRow, ...]


class FastRow(Struct, frozen=True, kw_only=True):
    """A fast with the number that it has on the chartlet."""

    number: int
    mark: FastMark
    placed: bool


class GearPage(Struct, frozen=True, kw_only=True):
    """All that a page shows: the first has the latest fasts, and the gear; further ones have earlier fasts."""

    frame: Frame
    pages: Pages
    all_fasts: int
    vessels: tuple[VesselGear, ...]
    notes: Notes
    fasts: tuple[FastRow, ...]
    chart: Chart | None
    hours: Chart | None
    geojson: str
    gpx: str

    @property
    def placed(self) -> bool:
        """Tell whether any fast has a place, so that there are files of them."""
        return any(row.placed for row in self.fasts)


def gear_contexts(site: Site, fleet: Fleet, kits: Mapping[str, Kit], fasts: Sequence[FastMark]) -> tuple[GearPage, ...]:
    """Return what the pages show; one page unless there are very many fasts.

    Args:
        site: What all pages share.
        fleet: For the grounds on the chartlet.
        kits: Each vessel's gear after her last trip, by her name.
        fasts: Every fast, in order.
    """
    notes = Notes()
    vessels = [
        VesselGear(name=name, rows=gear_rows({**own.gear, **own.rigging}, notes))
        for name, own in sorted(kits.items(), key=lambda named: speech().place_in_alphabet(named[0]))
    ]
    rows = tuple(
        FastRow(number=n, mark=mark, placed=mark.at is not None or bool(mark.track)) for n, mark in enumerate(fasts, 1)
    )
    parts = [tuple(reversed(part)) for part in parted(reversed(rows), _MOST)]
    return tuple(
        GearPage(
            frame=Frame(site=site, path=numbered_page(GEAR, number), title=_("Gear and fasts")),
            pages=Pages(first=GEAR, number=number, count=len(parts)),
            all_fasts=len(rows),
            vessels=tuple(vessel for vessel in vessels if vessel.rows) if number == 1 else (),
            notes=notes,
            fasts=part,
            chart=_chart(part, fleet, number),
            hours=gear_chart(kits) if number == 1 else None,
            geojson=FASTS_GEOJSON,
            gpx=FASTS_GPX,
        )
        for number, part in enumerate(parts, 1)
    )


def gear_rows(gear: dict[str, NetFigures], notes: Notes) -> tuple[GearRow, ...]:
    """Return the rows of a table of gear; those that were never towed and never mended are left out."""
    return tuple(
        GearRow(
            name=name,
            figures=figures,
            mark=notes.marks(figures.basis, ("towed_h_since_mended",)).get("towed_h_since_mended", ""),
        )
        for name, figures in gear.items()
        if figures.tows_since_mended or figures.tows or figures.mended_at is not None
    )


def _chart(rows: tuple[FastRow, ...], fleet: Fleet, number: int) -> Chart | None:
    """Return the chartlet of all fasts of a page of which a place is known; None where there is none."""
    placed = [(row, points_of((row.mark.at,) if row.mark.at is not None else row.mark.track)) for row in rows]
    placed = [(row, points) for row, points in placed if points]
    if not placed:
        return None
    east = placed[0][1][0][0]
    whole = [unwrapped(points, east) for _, points in placed]
    near, far = near_and_far(whole)
    tracks = [Track(points=whole[n], foul=True, label=str(placed[n][0].number)) for n in near]
    return Chart(
        path=fleet_chart("fasts" if number == 1 else f"fasts-{number}"),
        alt=_alt(len(tracks), [placed[n][0].number for n in far]),
        width=WIDTH,
        height=HEIGHT,
        drawing=framed(tracks, fleet),
    )


def _alt(drawn: int, left_off: list[int]) -> str:
    places = many(drawn, "place", "places")
    if not left_off:
        return _("Chartlet of {places} where gear came fast, numbered as in the table.").format(places=places)
    words = _(
        "Chartlet of {places} where gear came fast, numbered as in the table; not on it, since far from the others: {numbers}."
    )
    return words.format(places=places, numbers=", ".join(map(str, left_off)))


def render_gear(context: GearPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/gear.html").render(page=context, frame=context.frame)
