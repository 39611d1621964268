"""The charts of the fleet and of a vessel, as data."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from decimal import Decimal

from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import FleetFigures, GroupFigures
from logbook.model.language import N_
from logbook.render.charts import BROAD, OTHERS, SLIM, Bar, Bars, Chart, Columns, Part
from logbook.render.draw_sizes import bars_height
from logbook.render.gather import NOUGHT, TripLine, added
from logbook.render.language import _, _c
from logbook.render.links import fleet_chart, vessel_chart
from logbook.render.shown import brief_date, brief_month, fixed, many, month, one_line, weight

_HEIGHT = 340
_COLOURS = 4
_MOST_MONTHS = 24
_MOST_GROUNDS = 12
_MOST_TRIPS = 30
_LABEL = 24
_LANDINGS = N_(
    "Landings by month and species, {first} to {last}: {all} in all, the most in {best}, {most}; chiefly {species}."
)
_LANDINGS_OF = N_(
    "Landings of {of} by month and species, {first} to {last}: {all} in all, the most in {best}, {most}; chiefly {species}."
)
NO_BREAK = "\N{NO-BREAK SPACE}"


def months_shown(figures: FleetFigures) -> tuple[str, ...]:
    """Return the last two years' months of landings, in order."""
    return tuple(figures.landed_by_month)[-_MOST_MONTHS:]


def chief_species(figures: FleetFigures) -> tuple[str, ...]:
    """Return the species landed most of in those months, most first, as many as there are colours."""
    return _chief(figures.landed_by_month[name] for name in months_shown(figures))


def _chief(months: Iterable[Mapping[str, Decimal]]) -> tuple[str, ...]:
    landed: dict[str, Decimal] = {}
    for of_month in months:
        for species, kilograms in of_month.items():
            landed[species] = landed.get(species, NOUGHT) + kilograms
    return tuple(sorted(landed, key=lambda name: (-landed[name], name)))[:_COLOURS]


def month_parts(species: Mapping[str, Decimal], chief: Sequence[str]) -> tuple[tuple[Decimal | None, ...], Decimal]:
    """Return what a month saw landed of each chief species (None for nothing) and of all others together."""
    others = sum((kilograms for name, kilograms in species.items() if name not in chief), NOUGHT)
    return tuple(species.get(name) for name in chief), others


def landings_chart(figures: FleetFigures) -> Chart | None:
    """Return landings by month and species; None where nothing was landed."""
    months = {name: figures.landed_by_month[name] for name in months_shown(figures)}
    return month_columns(months, fleet_chart("landings"), "")


def month_columns(months: Mapping[str, Mapping[str, Decimal]], path: str, of: str) -> Chart | None:
    """Return landings of some months, in order, by their chief species; None where there are none.

    Args:
        months: Month as `2026-03` to what was landed of each species.
        path: Where the chart goes.
        of: What they are the months of, for the words; empty for the fleet.
    """
    if not months:
        return None
    shown = tuple(months)
    chief = _chief(months.values())
    bars, totals = [], {}
    for place, name in enumerate(shown):
        species = months[name]
        of_chief, others = month_parts(species, chief)
        parts = [Part(size=_tonnes(kg), colour=colour) for colour, kg in enumerate(of_chief) if kg]
        if others:
            parts.append(Part(size=_tonnes(others), colour=OTHERS))
        year, _dash, number = name.partition("-")
        bars.append(
            Bar(label=f"{brief_month(int(number))} {year}", parts=tuple(parts), lead=place == 0 or number == "01")
        )
        totals[name] = sum(species.values(), NOUGHT)
    key = [(colour, one_line(name, _LABEL)) for colour, name in enumerate(chief)]
    best = max(totals, key=lambda name: (totals[name], name))
    return Chart(
        path=path,
        alt=_(_LANDINGS_OF if of else _LANDINGS).format(
            of=of,
            first=month(shown[0]),
            last=month(shown[-1]),
            all=weight(sum(totals.values(), NOUGHT)),
            best=month(best),
            most=weight(totals[best]),
            species=", ".join(one_line(name) for name in chief[:2]),
        ),
        width=BROAD,
        height=_HEIGHT,
        drawing=Columns(
            unit="t", bars=tuple(bars), key=(*key, (OTHERS, _("others"))) if _any_others(bars) else tuple(key)
        ),
    )


def _tonnes(kilograms: Decimal) -> float:
    return float(kilograms) / 1000


def grounds_shown(figures: FleetFigures) -> tuple[GroupFigures, ...]:
    """Return the grounds whose catch per hour is known, the best first."""
    known = [ground for ground in figures.grounds.values() if ground.kept_kg_per_h is not None]
    return tuple(sorted(known, key=lambda ground: (-(ground.kept_kg_per_h or 0), ground.name)))


def grounds_chart(figures: FleetFigures, what: str = "grounds", most: int = _MOST_GROUNDS) -> Chart | None:
    """Return catch per hour by ground; None where it is known of none.

    Args:
        figures: The fleet's.
        what: What its file is named for.
        most: So many grounds at the most.
    """
    grounds = grounds_shown(figures)[:most]
    if not grounds:
        return None
    bars: list[Bar] = []
    for ground in grounds:
        rate = ground.kept_kg_per_h or 0.0
        bars.append(Bar(label=one_line(ground.name, _LABEL), parts=(Part(size=rate),), end=fixed(rate)))
    drawing = Bars(unit=_("kg/h"), bars=tuple(bars))
    best = grounds[0]
    return Chart(
        path=fleet_chart(what),
        alt=_(
            "Catch per hour towed by ground: {ground} leads with {rate} kg/h over {tows}, of {grounds} shown."
        ).format(
            ground=one_line(best.name),
            rate=fixed(best.kept_kg_per_h or 0),
            tows=many(best.tows, "tow", "tows"),
            grounds=many(len(grounds), "ground", "grounds"),
        ),
        width=SLIM,
        height=bars_height(drawing),
        drawing=drawing,
    )


class KeptRow(Struct, frozen=True, kw_only=True):
    """What a trip kept of each of its vessel's chief species (None for nothing) and of all others."""

    trip: Reckoned
    species: tuple[Decimal | None, ...]
    others: Decimal | None


def _with_catch(lines: Sequence[TripLine]) -> list[Reckoned]:
    """Return the latest trips whose catch is known."""
    return [line.trip for line in lines if line.trip.figures.totals.kept_kg is not None][-_MOST_TRIPS:]


def kept_chief(lines: Sequence[TripLine]) -> tuple[str, ...]:
    """Return the species kept most of on the latest trips, most first, as many as there are colours."""
    kept: dict[str, Decimal] = {}
    for trip in _with_catch(lines):
        for name, species in trip.figures.catch.items():
            if species.kept_kg:
                kept[name] = kept.get(name, NOUGHT) + species.kept_kg
    return tuple(sorted(kept, key=lambda name: (-kept[name], name)))[:_COLOURS]


def kept_rows(lines: Sequence[TripLine]) -> tuple[KeptRow, ...]:
    """Return what the latest trips kept, by species, in order."""
    chief = kept_chief(lines)
    made = []
    for trip in _with_catch(lines):
        catch = trip.figures.catch
        of_chief = tuple(catch[name].kept_kg if name in catch else None for name in chief)
        others = added(species.kept_kg for name, species in catch.items() if name not in chief)
        made.append(KeptRow(trip=trip, species=of_chief, others=others))
    return tuple(made)


def vessel_trips_chart(name: str, lines: Sequence[TripLine]) -> Chart | None:
    """Return what a vessel's latest trips kept, in order; None where no trip's catch is known."""
    rows = kept_rows(lines)
    if not rows:
        return None
    chief = kept_chief(lines)
    bars, years = [], None
    for row in rows:
        began = row.trip.log.begins
        parts = [Part(size=_tonnes(kg), colour=colour) for colour, kg in enumerate(row.species) if kg]
        if row.others:
            parts.append(Part(size=_tonnes(row.others), colour=OTHERS))
        bars.append(Bar(label=sailed_label(began), parts=tuple(parts), lead=began.year != years))
        years = began.year
    best = max(rows, key=lambda row: (row.trip.figures.totals.kept_kg or NOUGHT, row.trip.log.begins))
    key = tuple((colour, one_line(one, _LABEL)) for colour, one in enumerate(chief))
    return Chart(
        path=vessel_chart(name, "trips"),
        alt=_("Kept on {trips} of {vessel}, by date sailed: the most on the trip begun {begun}, {most}.").format(
            trips=many(len(rows), "trip", "trips"),
            vessel=one_line(name),
            begun=brief_date(best.trip.log.begins),
            most=weight(best.trip.figures.totals.kept_kg),
        ),
        width=BROAD,
        height=_HEIGHT,
        drawing=Columns(unit="t", bars=tuple(bars), key=(*key, (OTHERS, _("others"))) if _any_others(bars) else key),
    )


def sailed_label(began: datetime) -> str:
    """Return the day a trip began for below its bar: the day and month in one line, the year in the next."""
    day = _c("date", "{day} {mon}").format(day=began.day, mon=brief_month(began.month))
    return f"{day.replace(' ', NO_BREAK)} {began.year}"


def _any_others(bars: Iterable[Bar]) -> bool:
    return any(part.colour == OTHERS for bar in bars for part in bar.parts)
