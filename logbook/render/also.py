"""What a log says beside tows, catch and landing, as typed: so that nothing typed is lost from its page."""

from collections.abc import Iterable
from datetime import datetime, timedelta

from msgspec import Struct

from logbook.model.quantity import Weight
from logbook.model.trip import Amount, GearEvent, Period, Trip, Watch
from logbook.render.language import _, _n
from logbook.render.notes import note
from logbook.render.shown import (
    brief,
    celsius_unit,
    fixed,
    hours_minutes,
    kilograms_unit,
    moment,
    position,
    took,
    weight,
)

Row = tuple[str, ...]


class LoggedList(Struct, frozen=True, kw_only=True):
    """A list of the log: its name, the heads of its columns, and rows of ready words."""

    name: str
    heads: tuple[str, ...]
    rows: tuple[Row, ...]


def loose_ends(log: Trip, offset: timedelta | None) -> tuple[tuple[str, str], ...]:
    """Return single things of a log that have no place of their own, with their names."""
    crew = ", ".join(log.crew)
    found: list[tuple[str, str | None]] = [
        (_("Crew"), crew or None),
        (_("Ice loaded"), None if log.ice_loaded is None else weight(log.ice_loaded)),
        (_("Ice left at sailing"), None if log.ice_left_at_sailing is None else weight(log.ice_left_at_sailing)),
        (_("Fuel loaded"), _fuel(log.fuel_loaded)),
        (_("Sea temperature"), None if log.sea_temperature is None else celsius_unit(log.sea_temperature)),
        (_("Deck temperature"), None if log.deck_temperature is None else celsius_unit(log.deck_temperature)),
        (_("Planned"), _planned(log)),
        (_("Watch bill"), _watches(log.watches)),
        (_("Bound for"), log.bound_for),
        (_("Wants on the quay"), log.wants),
        (_("Sails again"), moment(log.sails_again, offset) if log.sails_again else None),
        (_("Quality, in the buyer's words"), _pairs(pair for landing in log.landings for pair in landing.quality)),
        (
            _("Emptied by pen"),
            _pairs((pen, weight(held.kilograms)) for landing in log.landings for pen, held in landing.pens),
        ),
    ]
    return tuple((name, words) for name, words in found if words)


def logged_lists(log: Trip, offset: timedelta | None) -> tuple[LoggedList, ...]:
    """Return the lists of a log that have anything in them."""
    made = (
        LoggedList(
            name=_("Weather"),
            heads=(
                _("When"),
                _("Wind"),
                _("Sea"),
                _("Swell"),
                _("Visibility"),
                _("Air"),
                _("Pressure"),
                _("Icing"),
                _("Remarks"),
            ),
            rows=tuple(
                (
                    brief(one.at, offset),
                    one.wind.typed if one.wind else "",
                    str(one.sea) if one.sea is not None else "",
                    one.swell or "",
                    one.visibility or "",
                    celsius_unit(one.air_temperature) if one.air_temperature is not None else "",
                    f"{fixed(one.pressure_hpa)}\u202fhPa" if one.pressure_hpa is not None else "",
                    _(one.icing) if one.icing else "",
                    note(one.remarks),
                )
                for one in log.weather
            ),
        ),
        LoggedList(
            name=_("Readings of the hold"),
            heads=(
                _("When"),
                _("Temperatures"),
                _("Ice left"),
                _("Ice taken aboard"),
                _("Re-iced"),
                _("Fuel left"),
                _("Remarks"),
            ),
            rows=tuple(
                (
                    brief(one.at, offset),
                    _pairs((pen, celsius_unit(degrees)) for pen, degrees in one.temperatures),
                    weight(one.ice_left) if one.ice_left is not None else "",
                    weight(one.ice_taken_aboard) if one.ice_taken_aboard is not None else "",
                    _pairs((pen, weight(kilograms)) for pen, kilograms in one.re_iced),
                    _fuel(one.fuel_left) or "",
                    note(one.remarks),
                )
                for one in log.readings
            ),
        ),
        LoggedList(
            name=_("Fishroom tally"),
            heads=(_("When"), _("Pen"), _("Tows"), _("Fish"), _("Ice")),
            rows=tuple(
                (
                    brief(one.at, offset),
                    one.pen,
                    ", ".join(str(no) for no in one.tows),
                    _fish(one.fish),
                    weight(one.ice) if one.ice is not None else "",
                )
                for one in log.stowage
            ),
        ),
        LoggedList(
            name=_("Gear"),
            heads=(_("When"), _("What"), _("Done"), _("Took"), _("Remarks")),
            rows=tuple(
                (
                    brief(one.at, offset),
                    _gear_name(one),
                    _(one.event),
                    _("{hours} h").format(hours=took(one.took)) if one.took is not None else "",
                    note(one.remarks),
                )
                for one in log.gear
            ),
        ),
        LoggedList(
            name=_("Time lost"), heads=(_("From"), _("To"), _("Hours"), _("Why")), rows=_periods(log.time_lost, offset)
        ),
        LoggedList(
            name=_("All hands"), heads=(_("From"), _("To"), _("Hours"), _("Why")), rows=_periods(log.all_hands, offset)
        ),
        LoggedList(name=_("Rest"), heads=(_("From"), _("To"), _("Hours"), _("Who")), rows=_periods(log.rest, offset)),
        LoggedList(
            name=_("Fixes while steaming"),
            heads=(_("When"), _("Position"), _("Remarks")),
            rows=tuple((brief(fix.at, offset), position(fix.position), note(fix.remarks)) for fix in log.passage),
        ),
    )
    return tuple(_without_empty(one) for one in made if one.rows)


def _without_empty(whole: LoggedList) -> LoggedList:
    """Return a list without the columns that none of its rows has anything in."""
    kept = [column for column in range(len(whole.heads)) if any(row[column] for row in whole.rows)]
    rows = tuple(tuple(row[column] for column in kept) for row in whole.rows)
    return LoggedList(name=whole.name, heads=tuple(whole.heads[column] for column in kept), rows=rows)


def _periods(periods: Iterable[Period], offset: timedelta | None) -> tuple[Row, ...]:
    return tuple(
        (brief(one.start, offset), brief(one.end, offset), took(_between(one.start, one.end)), one.words)
        for one in periods
    )


def _gear_name(event: GearEvent) -> str:
    if event.part == "item":
        return event.name
    return _(event.part) if event.name == event.part else f"{_(event.part)} {event.name}".strip()


def _between(start: datetime | None, end: datetime | None) -> timedelta | None:
    return None if start is None or end is None else end - start


def _watches(watches: Iterable[Watch]) -> str:
    """Return the watch bill: `port 00:00–06:00, 12:00–18:00; starboard …`."""
    return "; ".join(
        f"{watch.name} {', '.join(f'{hours_minutes(start)}–{hours_minutes(end)}' for start, end in watch.hours)}"
        for watch in watches
    )


def _fish(fish: Iterable[Amount]) -> str:
    said = []
    for one in fish:
        name = f"{one.species} {one.grade}" if one.grade else one.species
        number = _n("{n} fish", "{n} fish", one.count).format(n=fixed(one.count)) if one.count is not None else ""
        kilograms = kilograms_unit(one.weight.kilograms) if one.weight else _("weight not known")
        said.append(f"{name} {number}, {kilograms}" if number else f"{name} {kilograms}")
    return ", ".join(said)


def _pairs(pairs: Iterable[tuple[str, str]]) -> str:
    return ", ".join(f"{name} {words}" for name, words in pairs)


def _fuel(fuel: object) -> str | None:
    if fuel is None:
        return None
    if isinstance(fuel, Weight):
        return weight(fuel.kilograms)
    return f"{fixed(fuel)}\u202fl"  # type: ignore[arg-type]


def _planned(log: Trip) -> str | None:
    said = []
    if log.planned_days is not None:
        said.append(_("{n} days").format(n=fixed(log.planned_days, 1)))
    if log.planned_catch is not None:
        said.append(weight(log.planned_catch))
    return ", ".join(said) or None
