"""A trip's legs from the quay and back: what happened when, and how long it took."""

from collections.abc import Mapping
from datetime import datetime

from markupsafe import Markup
from msgspec import Struct

from logbook.model.figures import LandingFigures, TripFigures
from logbook.render.language import _
from logbook.render.marks import NO_MARK, Notes
from logbook.render.shown import days_unit, hours_unit, miles_unit, per_hour

_SHOWN = (
    "sailed_from",
    "steam_out_h",
    "steam_home_h",
    "docked",
    "passage_h",
    "passage_nm",
    "landing_started",
    "discharge_h",
    "discharge_kg_per_h",
)


class Leg(Struct, frozen=True, kw_only=True):
    """A turning point of a trip.

    Attributes:
        name: What happened.
        entry: Where it is explained.
        at: When.
        where: At which port; None where that is not told.
        took: What the stretch before it took, in words; empty where not known.
        mark: Letter of how it came about.
    """

    name: str
    entry: str
    at: datetime | None
    where: str | None = None
    took: str = ""
    mark: Markup = NO_MARK


def legs(figures: TripFigures, notes: Notes, next_sailed: datetime | None = None) -> tuple[Leg, ...]:
    """Return the turning points in order; those not reached are left out."""
    head, landing = figures.trip, figures.landing
    tows = figures.tows
    shots = [tow.shot for tow in tows if tow.shot]
    hauls = [tow.hauled for tow in tows if tow.hauled]
    fished = figures.totals.fishing_days
    marks, heads = notes.marks(landing.basis, _SHOWN), notes.marks(head.basis, _SHOWN)
    made = [
        Leg(name=_("Sailed"), entry="trip", at=head.sailed, where=head.sailed_from, mark=_mark(heads, "sailed_from")),
        Leg(
            name=_("First shot"),
            entry="steaming",
            at=min(shots, default=None),
            took=_took(_("steamed out {hours}"), landing.steam_out_h),
            mark=_mark(marks, "steam_out_h"),
        ),
        Leg(
            name=_("Last hauled"),
            entry="fishing-days",
            at=max(hauls, default=None),
            took=_("fished {days}").format(days=days_unit(fished)) if fished is not None else "",
        ),
        Leg(name=_("Turned for home"), entry="trip", at=head.turned_for_home),
        *_ends(landing, marks),
        Leg(
            name=_("Sailed again"),
            entry="discharge",
            at=next_sailed,
            took=_took(_("turned round in {hours}"), landing.turnaround_h),
        ),
    ]
    return tuple(leg for leg in made if leg.at is not None)


def _ends(landing: LandingFigures, marks: Mapping[str, Markup]) -> list[Leg]:
    """Return the docking and the landing, of each port where there were several."""
    if landing.landings:
        return [leg for one in landing.landings for leg in _ends(one, marks if one is landing.landings[-1] else {})]
    return [
        Leg(
            name=_("Expected to dock") if landing.expected else _("Docked"),
            entry="docked",
            at=landing.docked,
            where=landing.port,
            took=_passage(landing),
            mark=_mark(marks, "docked", "passage_h", "passage_nm", "steam_home_h"),
        ),
        Leg(
            name=_("Landing began"), entry="discharge", at=landing.landing_started, mark=_mark(marks, "landing_started")
        ),
        Leg(
            name=_("Landing finished"),
            entry="discharge",
            at=landing.landing_finished,
            took=_discharged(landing),
            mark=_mark(marks, "discharge_h", "discharge_kg_per_h"),
        ),
    ]


def _passage(landing: LandingFigures) -> str:
    said = [
        _took(_("passage {hours}"), landing.passage_h)
        if landing.expected
        else _took(_("steamed home {hours}"), landing.steam_home_h),
        miles_unit(landing.passage_nm) if landing.passage_nm is not None else "",
    ]
    return ", ".join(word for word in said if word)


def _discharged(landing: LandingFigures) -> str:
    if landing.discharge_h is None or landing.discharge_kg_per_h is None:
        return _took(_("discharged in {hours}"), landing.discharge_h)
    return _("discharged in {hours} at {rate}").format(
        hours=hours_unit(landing.discharge_h), rate=per_hour(landing.discharge_kg_per_h)
    )


def _took(phrase: str, hours: float | None) -> str:
    return phrase.format(hours=hours_unit(hours)) if hours is not None else ""


def _mark(marks: Mapping[str, Markup], *fields: str) -> Markup:
    return Markup("").join(marks[field] for field in fields if field in marks)
