"""The pages of a species and of a ground: where and when it is caught, what the ground gave and took."""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import TypeVar

from msgspec import Struct

from logbook.model.fleet_figures import GroupFigures
from logbook.model.gear import FastMark
from logbook.model.places import GroundFigures, Months, SpeciesFigures, TowMark
from logbook.render.charts import BROAD, SLIM, Bar, Bars, Chart, Columns, Part
from logbook.render.draw_sizes import bars_height
from logbook.render.environment import environment
from logbook.render.frame import Frame, Site
from logbook.render.gather import every_month
from logbook.render.language import _
from logbook.render.links import ground_page, place_chart, species_page
from logbook.render.shown import brief_month, fixed, month_name, one_line, plain, weight
from logbook.render.told import told

_Mark = TypeVar("_Mark", FastMark, TowMark)
_HEIGHT = 300
_MOST = 10
_LATEST = 24
_LABEL = 24
_MISHAPS = 150
"""Fasts on a ground's page, and tows with damage; all fasts stand under gear."""


class SpeciesPage(Struct, frozen=True, kw_only=True):
    """All that a species' page shows; `names` are those of the months, and the same short."""

    frame: Frame
    species: SpeciesFigures
    months: Chart | None
    landed: Chart | None
    grades: Chart | None
    by_grade: Mapping[str, Decimal]
    best_month: str
    names: tuple[tuple[str, str], ...]


class GroundPage(Struct, frozen=True, kw_only=True):
    """All that a ground's page shows."""

    frame: Frame
    ground: GroundFigures
    months: Chart | None
    species: Chart | None
    species_pages: frozenset[str]
    by_month: tuple[tuple[str, GroupFigures], ...]
    fasts: tuple[FastMark, ...]
    damage: tuple[TowMark, ...]


def species_context(site: Site, species: SpeciesFigures) -> SpeciesPage:
    """Return what a species' page shows."""
    known = [(rate, month) for month, rate in enumerate(species.by_month, 1) if rate]
    by_grade = {told(grade): kg for grade, kg in species.grades.items()}
    return SpeciesPage(
        frame=Frame(site=site, path=species_page(species.name), title=one_line(species.name, 60)),
        species=species,
        months=_months_chart(species_chart(species.name, "months"), species.name, species.by_month),
        landed=_landed_chart(species),
        grades=_bars(
            species_chart(species.name, "grades"), _("{name} by grade").format(name=species.name), "kg", by_grade
        ),
        by_grade=by_grade,
        best_month=month_name(max(known)[1]) if known else "",
        names=tuple((month_name(month), brief_month(month)) for month in range(1, 13)),
    )


def ground_context(site: Site, ground: GroundFigures, species: frozenset[str]) -> GroundPage:
    """Return what a ground's page shows; `species` are those that have a page."""
    rates = {month: group.kept_kg_per_h for month, group in ground.by_month}
    by_month = tuple(rates.get(month) for month in range(1, 13))
    kept = {one.name: one.kept_kg_per_h for one in ground.species[:_MOST] if one.kept_kg_per_h}
    return GroundPage(
        frame=Frame(site=site, path=ground_page(ground.name), title=one_line(ground.name, 60)),
        ground=ground,
        months=_months_chart(place_chart("grounds", ground.name, "months"), ground.name, by_month),
        species=_bars(
            place_chart("grounds", ground.name, "species"),
            _("Catch per hour on {name}").format(name=ground.name),
            _("kg/h"),
            kept,
        ),
        species_pages=species,
        by_month=tuple((month_name(month), group) for month, group in ground.by_month),
        fasts=_latest(ground.fasts),
        damage=_latest(ground.damage),
    )


def _latest(marks: Sequence[_Mark]) -> tuple[_Mark, ...]:
    """Return the latest of marks, in the order they stand in; all of them where they are not too many."""
    if len(marks) <= _MISHAPS:
        return tuple(marks)
    times = sorted(mark.when.timestamp() if mark.when is not None else 0.0 for mark in marks)
    since = times[-_MISHAPS]
    return tuple(mark for mark in marks if mark.when is not None and mark.when.timestamp() >= since)[-_MISHAPS:]


def species_chart(name: str, what: str) -> str:
    """Return the path of one of a species' charts."""
    return place_chart("species", name, what)


def _months_chart(path: str, name: str, rates: Months) -> Chart | None:
    """Return catch per hour by calendar month, over all years; None where nothing is known."""
    known = [(rate, month) for month, rate in enumerate(rates, 1) if rate is not None]
    if not known:
        return None
    bars = tuple(
        Bar(
            label=brief_month(month),
            parts=(Part(size=rate),) if rate else (),
            end=fixed(rate) if rate is not None else "?",
        )
        for month, rate in enumerate(rates, 1)
    )
    rate, best = max(known)
    words = _(
        "Catch per hour of {name} by month of all years, best in {month}, {rate} kg/h; a question mark is a month not fished."
    )
    return Chart(
        path=path,
        alt=words.format(name=one_line(name), month=month_name(best), rate=fixed(rate)),
        width=BROAD,
        height=_HEIGHT,
        drawing=Columns(unit=_("kg/h"), bars=bars),
    )


def _landed_chart(species: SpeciesFigures) -> Chart | None:
    """Return what was landed in the last months up to the last that saw any."""
    if not species.landed_by_month:
        return None
    landed = species.landed_by_month
    months = [(month, landed.get(month, Decimal(0))) for month in every_month(landed)[-_LATEST:]]
    bars, years = [], None
    for month, kg in months:
        year, _dash, number = month.partition("-")
        bars.append(
            Bar(label=f"{brief_month(int(number))} {year}", parts=(Part(size=float(kg) / 1000),), lead=year != years)
        )
        years = year
    total = sum((kg for _month, kg in months), Decimal(0))
    words = _("Landings of {name} by month: {weight} in the months shown.")
    return Chart(
        path=species_chart(species.name, "landed"),
        alt=words.format(name=one_line(species.name), weight=plain(weight(total))),
        width=BROAD,
        height=_HEIGHT,
        drawing=Columns(unit="t", bars=tuple(bars)),
    )


def _bars(path: str, what: str, unit: str, values: Mapping[str, float | Decimal]) -> Chart | None:
    shown = [(name, value) for name, value in values.items() if value][:_MOST]
    if not shown:
        return None
    bars = tuple(
        Bar(label=one_line(name, _LABEL), parts=(Part(size=float(value)),), end=fixed(value)) for name, value in shown
    )
    drawing = Bars(unit=unit, bars=bars)
    said = ", ".join(f"{one_line(name)} {fixed(value)} {unit}" for name, value in shown[:3])
    return Chart(
        path=path, alt=f"{one_line(what, 60)}: {said}.", width=SLIM, height=bars_height(drawing), drawing=drawing
    )


def render_species(context: SpeciesPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/species.html").render(page=context, frame=context.frame)


def render_ground(context: GroundPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/ground.html").render(page=context, frame=context.frame)
