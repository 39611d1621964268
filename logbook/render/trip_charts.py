"""The charts of a trip, as data: tow by tow, by species and grade, and how old the fish is."""

from collections.abc import Sequence
from decimal import Decimal

from logbook.model.figures import Reckoned, SpeciesTotal, TowFigures
from logbook.render.charts import BROAD, OTHERS, SLIM, Bar, Bars, Chart, Part, Run
from logbook.render.draw_sizes import bars_height
from logbook.render.gather import NOUGHT, by_weight, kept_species
from logbook.render.language import _
from logbook.render.links import trip_chart
from logbook.render.shown import days_unit, fixed, kilograms_unit, many, one_line, plain, short_day, weight
from logbook.render.told import told

RUN_HEIGHT = 430
_COLOURS = 4
_MOST_BARS = 10
_LABEL = 22
_NAMED = 3
"""So many species are named in words."""


def run_chart(reckoned: Reckoned) -> Chart | None:
    """Return the catch tow by tow with its running total; None for a trip without tows."""
    tows = reckoned.figures.tows
    if not tows:
        return None
    chief = kept_species(reckoned.figures.catch)[:_COLOURS]
    totals, so_far = [], NOUGHT
    for tow in tows:
        so_far += tow.kept_kg or NOUGHT
        totals.append(so_far)
    others = any(part.colour == OTHERS for tow in tows for part in _parts(tow, chief))
    names = [(colour, one_line(name, _LABEL)) for colour, name in enumerate(chief)]
    drawing = Run(
        bars=tuple(Bar(label=str(tow.no), parts=_parts(tow, chief), end=_sign(tow)) for tow in tows),
        totals=tuple(totals),
        days=_days(tows),
        key=(*names, (OTHERS, _("others"))) if others else tuple(names),
    )
    return Chart(
        path=trip_chart(reckoned.figures.trip.id, "tows"),
        alt=_run_words(tows, so_far),
        width=BROAD,
        height=RUN_HEIGHT,
        drawing=drawing,
    )


def _parts(tow: TowFigures, chief: Sequence[str]) -> tuple[Part, ...]:
    """Return a tow's catch in the colours of the chief species and grey for the others."""
    parts = [Part(size=_size(tow.catch[name].kept_kg), colour=chief.index(name)) for name in chief if name in tow.catch]
    rest = sum((tow.catch[name].kept_kg or NOUGHT for name in tow.catch if name not in chief), NOUGHT)
    return (*parts, Part(size=float(rest), colour=OTHERS)) if rest else tuple(parts)


def _size(weight_kg: Decimal | None) -> float:
    return float(weight_kg or 0)


def _sign(tow: TowFigures) -> str:
    return "?" if tow.kept_kg is None else ""


def _days(tows: Sequence[TowFigures]) -> tuple[tuple[int, str], ...]:
    """Return the place of the first tow of every day with the day's name."""
    made: list[tuple[int, str]] = []
    for place, tow in enumerate(tows):
        when = tow.shot or tow.hauled
        name = short_day(when.date()) if when else (made[-1][1] if made else "")
        if not made or made[-1][1] != name:
            made.append((place, name))
    return tuple(made)


def _run_words(tows: Sequence[TowFigures], total: Decimal) -> str:
    known = [tow for tow in tows if tow.kept_kg is not None]
    every = many(len(tows), "tow", "tows")
    if not known:
        return _("Catch tow by tow: {tows}, the catch of none of them known.").format(tows=every)
    best = max(known, key=lambda tow: (tow.kept_kg, -tow.no))
    gaps = len(tows) - len(known)
    said = (
        _("Catch tow by tow: {tows}, {kept} kept in all; the most in tow {no}, {most}; {gaps} not known.")
        if gaps
        else _("Catch tow by tow: {tows}, {kept} kept in all; the most in tow {no}, {most}.")
    )
    return said.format(
        tows=every,
        kept=weight(total),
        no=best.no,
        most=kilograms_unit(best.kept_kg),
        gaps=many(gaps, "tow", "tows"),
    )


def grades_chart(reckoned: Reckoned) -> Chart | None:
    """Return what was kept by species and grade; None where no weight is known."""
    catch = reckoned.figures.catch
    named = [name for name in by_weight(catch) if catch[name].kept_kg]
    if not named:
        return None
    shown, rest = (named, []) if len(named) <= _MOST_BARS else (named[: _MOST_BARS - 1], named[_MOST_BARS - 1 :])
    bars = [_grades(name, catch[name]) for name in shown]
    if rest:
        total = sum((catch[name].kept_kg or NOUGHT for name in rest), NOUGHT)
        bars.append(_bar(_("{n} more").format(n=len(rest)), (Part(size=float(total), colour=OTHERS),), total))
    drawing = Bars(unit="kg", bars=tuple(bars))
    said = ", ".join(f"{plain_name(name)} {kilograms_unit(catch[name].kept_kg)}" for name in named[:_NAMED])
    more = len(named) - _NAMED
    words = (
        _("Kept by species and grade: {species} and {more}.")
        if more > 0
        else _("Kept by species and grade: {species}.")
    )
    return Chart(
        path=trip_chart(reckoned.figures.trip.id, "species"),
        alt=words.format(species=said, more=many(more, "more species", "more species")),
        width=SLIM,
        height=bars_height(drawing),
        drawing=drawing,
    )


def plain_name(name: str) -> str:
    """Return a name fit for a sentence in an alternative text."""
    return one_line(name)


def _grades(name: str, species: SpeciesTotal) -> Bar:
    """Return a species' bar, its grades in order, what was not graded last and grey."""
    known = [(grade, kept) for grade, kept in species.grades.items() if kept]
    parts = [
        Part(size=float(kept), colour=place % _COLOURS, words=one_line(told(grade), _LABEL))
        for place, (grade, kept) in enumerate(known)
    ]
    total = species.kept_kg or NOUGHT
    ungraded = total - sum((kept for _, kept in known), NOUGHT)
    if ungraded > 0:
        parts.append(Part(size=float(ungraded), colour=OTHERS if known else 0, words=_("not graded") if known else ""))
    return _bar(one_line(name, _LABEL), tuple(parts), total)


def _bar(label: str, parts: tuple[Part, ...], total: Decimal) -> Bar:
    return Bar(label=label, parts=parts, end=fixed(total))


def age_chart(reckoned: Reckoned) -> Chart | None:
    """Return how much fish is how many days old, by the clock; None where no age is known."""
    age = reckoned.figures.age
    if not age.kept_kg_by_day or not any(age.kept_kg_by_day.values()):
        return None
    drawing = Bars(
        unit="kg",
        bars=tuple(_bar(day_words(day), (Part(size=float(kept)),), kept) for day, kept in age.kept_kg_by_day.items()),
    )
    words = (
        _("Age of the fish aboard, by the clock: the oldest {oldest}, {mean} on the mean.")
        if reckoned.figures.trip.docked is None
        else _("Age of the fish at landing, by the clock: the oldest {oldest}, {mean} on the mean.")
    )
    return Chart(
        path=trip_chart(reckoned.figures.trip.id, "age"),
        alt=words.format(oldest=plain(days_unit(age.oldest_ice_days)), mean=plain(days_unit(age.mean_ice_days))),
        width=SLIM,
        height=bars_height(drawing),
        drawing=drawing,
    )


def day_words(day: str) -> str:
    """Return `2 to 3 days` for the fish that is between two and three days old, known as `2`."""
    if day == "0":
        return _("under 1 day")
    return _("{day} to {next} days").format(day=day, next=int(day) + 1) if day.isdecimal() else day
