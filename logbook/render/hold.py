"""The hold on a trip's page: its plan, its pens in figures, the ice and how the fish aged."""

from collections.abc import Mapping

from markupsafe import Markup
from msgspec import Struct

from logbook.model.course import AgeAt, IceAt
from logbook.model.figures import PenFigures, Reckoned
from logbook.render.charts import Chart
from logbook.render.hold_charts import ageing_chart, hold_chart, ice_chart
from logbook.render.language import _
from logbook.render.marks import NO_MARK, Notes
from logbook.render.shown import brief_day, clock, kilograms, ratio
from logbook.render.text import numbers_of

_EVERY_OTHER = 2


class PenRow(Struct, frozen=True, kw_only=True):
    """A pen in the table of pens."""

    name: str
    pen: PenFigures
    tows: str
    marks: Mapping[str, Markup]


class IceRow(Struct, frozen=True, kw_only=True):
    """A figure of the ice.

    Attributes:
        name: What it is.
        entry: Where it is explained.
        value: As it is shown.
        mark: Letter of how it came about.
        chief: True for the one that is asked for first.
    """

    name: str
    entry: str
    value: str
    mark: Markup = NO_MARK
    chief: bool = False


class Hold(Struct, frozen=True, kw_only=True):
    """All that a trip's page shows of its hold."""

    plan: Chart | None
    pens: tuple[PenRow, ...]
    pen_notes: Notes
    ice: Chart | None
    ice_rows: tuple[IceRow, ...]
    ice_notes: Notes
    looks: tuple[IceAt, ...]
    ageing: Chart | None
    ages: tuple[AgeAt, ...]

    @property
    def told(self) -> bool:
        """Tell whether anything is known of the hold."""
        return self.plan is not None or self.ice is not None

    @property
    def weighed(self) -> bool:
        """Tell whether what came out of the pens was weighed pen by pen."""
        return any(row.pen.out_turn_kg is not None for row in self.pens)


def hold_of(reckoned: Reckoned) -> Hold:
    """Return what a trip's page shows of its hold."""
    pen_notes, ice_notes = Notes(), Notes()
    course = reckoned.course
    return Hold(
        plan=hold_chart(reckoned),
        pens=tuple(
            PenRow(
                name=name,
                pen=pen,
                tows=numbers_of(pen.tows),
                marks=pen_notes.marks(pen.basis, ("kept_kg", "oldest_ice_days")),
            )
            for name, pen in reckoned.figures.pens.items()
        ),
        pen_notes=pen_notes,
        ice=ice_chart(reckoned),
        ice_rows=_ice_rows(reckoned, ice_notes),
        ice_notes=ice_notes,
        looks=tuple(one for one in course.ice if one.seen),
        ageing=ageing_chart(reckoned),
        ages=course.ages[::_EVERY_OTHER],
    )


def _ice_rows(reckoned: Reckoned, notes: Notes) -> tuple[IceRow, ...]:
    ice = reckoned.figures.ice
    marks = notes.marks(ice.basis, ("laid_kg", "hold_melt_kg", "left_kg", "chilling_kg", "lasts_until", "fish_to_ice"))
    rows = [
        IceRow(name=_("Loaded, and taken aboard"), entry="ice-left", value=kilograms(ice.loaded_kg)),
        IceRow(
            name=_("Laid with fish"), entry="ice-laid", value=kilograms(ice.laid_kg), mark=marks.get("laid_kg", NO_MARK)
        ),
        IceRow(
            name=_("Melted by the hold"),
            entry="hold-melt",
            value=kilograms(ice.hold_melt_kg),
            mark=marks.get("hold_melt_kg", NO_MARK),
        ),
        IceRow(
            name=_("Loose ice, {how}").format(how=_(ice.left_by)) if ice.left_by else _("Loose ice"),
            entry="ice-left",
            value=kilograms(ice.left_kg),
            mark=marks.get("left_kg", NO_MARK),
            chief=True,
        ),
        IceRow(
            name=_("Least by physics, to chill the fish"),
            entry="chilling",
            value=kilograms(ice.chilling_kg),
            mark=marks.get("chilling_kg", NO_MARK),
        ),
        IceRow(
            name=_("Fish to one of ice"),
            entry="ice-laid",
            value=ratio(ice.fish_to_ice),
            mark=marks.get("fish_to_ice", NO_MARK),
        ),
    ]
    if ice.lasts_until is not None:
        until = f"{brief_day(ice.lasts_until)} {clock(ice.lasts_until, ice.lasts_until.utcoffset())}"
        rows.append(
            IceRow(
                name=_("Lasts until"),
                entry="ice-lasts",
                value=until,
                mark=marks.get("lasts_until", NO_MARK),
                chief=True,
            )
        )
    return tuple(rows)
