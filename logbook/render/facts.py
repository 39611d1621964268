"""The few figures of a trip that a reader asks for first."""

from collections.abc import Mapping

from markupsafe import Markup
from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import Landed
from logbook.render.gather import added
from logbook.render.language import _, _n
from logbook.render.marks import NO_MARK, Notes
from logbook.render.shown import (
    days_unit,
    fixed,
    hours_unit,
    many,
    per_hour,
    weight,
)

_SHOWN = ("kept_kg", "days_at_sea", "kept_kg_per_h", "oldest_ice_days")


class Fact(Struct, frozen=True, kw_only=True):
    """A figure with its name.

    Attributes:
        name: What it is.
        entry: Where it is explained.
        value: As it is shown, with its unit.
        mark: Letter of how it came about; empty where it is plain.
        under: What is said beneath it, line by line.
    """

    name: str
    entry: str
    value: str
    mark: Markup = NO_MARK
    under: tuple[str, ...] = ()


def first_facts(reckoned: Reckoned, landed: Landed | None, notes: Notes) -> tuple[Fact, ...]:
    """Return the figures that stand at the top of a trip's page."""
    totals, age, head = reckoned.figures.totals, reckoned.figures.age, reckoned.figures.trip
    marks = notes.marks(totals.basis, _SHOWN)
    ages = notes.marks(age.basis, _SHOWN)
    facts = [
        Fact(
            name=_("Kept") if head.docked else _("Kept so far"),
            entry="kept",
            value=weight(totals.kept_kg),
            mark=_mark(marks, "kept_kg"),
            under=_lines(
                totals.live_kg and _("live weight {weight}").format(weight=weight(totals.live_kg)),
                totals.put_back_kg and _("put back {weight}").format(weight=weight(totals.put_back_kg)),
            ),
        )
    ]
    if landed is not None and landed.weighed:
        facts.append(Fact(name=_("Over the scale"), entry="landed", value=weight(added(landed.species.values()))))
    facts += [
        Fact(
            name=_("Days at sea"),
            entry="days-at-sea",
            value=days_unit(totals.days_at_sea),
            mark=_mark(marks, "days_at_sea"),
            under=_lines(
                totals.fishing_days is not None and _("{days} fishing").format(days=days_unit(totals.fishing_days))
            ),
        ),
        Fact(
            name=_("Tows"),
            entry="tow",
            value=fixed(totals.tows),
            under=_lines(
                _n("{n} foul", "{n} foul", totals.foul_tows).format(n=totals.foul_tows),
                totals.towed_h is not None and _("{hours} towed").format(hours=hours_unit(totals.towed_h)),
            ),
        ),
        Fact(
            name=_("Catch per hour"),
            entry="rate",
            value=per_hour(totals.kept_kg_per_h),
            mark=_mark(marks, "kept_kg_per_h"),
        ),
        Fact(
            name=_("Oldest fish at landing") if head.docked else _("Oldest fish aboard"),
            entry="age",
            value=days_unit(age.oldest_ice_days),
            mark=_mark(ages, "oldest_ice_days"),
            under=_lines(
                age.oldest_equivalent_ice_days is not None
                and _("{days} as if kept at 0\u00a0°C").format(days=days_unit(age.oldest_equivalent_ice_days)),
                _("limit {days}").format(days=many_days(age.limit_days)),
            ),
        ),
    ]
    return tuple(facts)


def many_days(number: float) -> str:
    """Return `10 days`, `7.5 days`, `1 day`."""
    return many(int(number), "day", "days") if number == int(number) else days_unit(number)


def _mark(marks: Mapping[str, Markup], field: str) -> Markup:
    return marks.get(field, NO_MARK)


def _lines(*lines: object) -> tuple[str, ...]:
    """Return those lines that have something to say."""
    return tuple(str(said) for said in lines if said)
