"""How things would stand at docking on turning now or later, as a table of the screen of `logbook aboard`."""

from datetime import datetime
from decimal import Decimal

from logbook.model.figures import Choice, TripFigures
from logbook.model.language import N_
from logbook.render import shown
from logbook.render.language import _, _c
from logbook.render.text import bare, dash, table

_BINDS = {"ice days": N_("too old"), "ice": N_("ice gone"), "hold": N_("hold full")}


def choices_table(figures: TripFigures) -> list[str]:
    """Return how things would stand at docking, on turning now or later, a line each."""
    options = figures.landing.choices
    if not options or options[0].docked is None:
        return []
    now, limit_days = options[0].turn, figures.age.limit_days
    return table([_heads(), *(_choice(choice, now, limit_days) for choice in options)], "<<<>>>>><<")


def _choice(choice: Choice, now: datetime, limit_days: float) -> tuple[str, ...]:
    later = round((choice.turn - now).total_seconds() / 3600)
    return (
        _("+{n} h").format(n=later) if later else _("now"),
        _brief(choice.turn),
        _brief(choice.docked),
        _tonnes(choice.kept_kg),
        "-" if choice.hold_full_percent is None else bare(shown.fixed(choice.hold_full_percent)),
        _tonnes(choice.ice_left_kg),
        days_or_dash(choice.oldest_equivalent_ice_days),
        _over(choice, limit_days),
        "-" if choice.sale is None else shown.brief_day(choice.sale),
        _(_BINDS[choice.bound_by]) if choice.bound_by in _BINDS else "",
    )


def _heads() -> tuple[str, ...]:
    """Return the heads of the table of choices."""
    return (
        _c("head of a narrow column", "Turn"),
        "",
        _c("head of a narrow column", "Docks"),
        _c("head of a narrow column", "Fish t"),
        _c("head of a narrow column", "Hold %"),
        _c("head of a narrow column", "Ice t"),
        _c("head of a narrow column", "Oldest"),
        _c("head of a narrow column", "Over t"),
        _c("head of a narrow column", "Sale"),
        _c("head of a narrow column", "Binds"),
    )


def _over(choice: Choice, limit_days: float) -> str:
    """Return the tonnes over the limit; a question mark where some fish is, but of no known weight."""
    if choice.over_limit_kg:
        return _tonnes(choice.over_limit_kg)
    if (choice.oldest_equivalent_ice_days or 0) > limit_days:
        return "?"
    return "-" if choice.over_limit_kg is None else _c("of the fish", "none")


def _brief(moment: datetime | None) -> str:
    """Return `Tue 18:17`, for what lies within a week."""
    return "-" if moment is None else f"{shown.weekday(moment)} {moment:%H:%M}"


def _tonnes(kilograms: Decimal | float | None) -> str:
    return "-" if kilograms is None else bare(shown.fixed(kilograms / 1000, 1))


def days_or_dash(days: float | None) -> str:
    """Return days with a decimal; a dash where they are not known."""
    return dash(shown.days(days))
