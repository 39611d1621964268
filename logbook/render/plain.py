"""A trip's figures as plain text, for a terminal: what `logbook reckon LOG` prints.

The rounding is that of the pages. Only signs that every terminal has are used for our own words.
"""

from collections.abc import Callable
from datetime import datetime

from logbook.model.basis import Basis
from logbook.model.figures import TowFigures, TripFigures
from logbook.model.trip import Trip
from logbook.render import shown
from logbook.render.clock import clock_of
from logbook.render.gather import by_weight
from logbook.render.marks import Notes
from logbook.render.passage import legs
from logbook.render.plain_besides import besides, ice
from logbook.render.shown import one_line, plain
from logbook.render.text import bare, dash, table, tow_numbers


def plain_report(trip: Trip, figures: TripFigures) -> str:
    """Return the figures of a trip as a person reads them, without a line's end after the last line."""
    parts = (
        _head(trip, figures),
        _totals(figures),
        _tows(figures),
        _catch(figures),
        ice(figures),
        _age(figures),
        _passage(figures),
        *besides(figures),
        _came_about(figures),
    )
    return "\n\n".join("\n".join(part) for part in parts if part)


def _head(trip: Trip, figures: TripFigures) -> list[str]:
    head = figures.trip
    clock = clock_of(_moments(trip, figures), trip.zone)
    offset = clock.offset
    name = f"{head.vessel}, trip {head.number}" if head.number else head.vessel
    lines = [f"{name} ({head.state}), {head.id}"]
    sailed = f"Sailed {bare(shown.moment(head.sailed, offset))}"
    lines.append(f"{sailed} from {head.sailed_from}" if head.sailed_from else sailed)
    if head.docked:
        docked = f"Docked {shown.moment(head.docked, offset)}"
        lines.append(f"{docked} at {head.port}" if head.port else docked)
    else:
        lines.append(
            f"Last word {shown.moment(head.last_word, offset)}; figures stand as of {shown.moment(head.as_of, offset)}"
        )
    lines.append(clock.words)
    return lines


def _moments(trip: Trip, figures: TripFigures) -> list[datetime]:
    head = figures.trip
    found = [trip.begins, head.sailed, head.docked, head.as_of, head.last_word]
    found += [moment for tow in figures.tows for moment in (tow.shot, tow.hauled)]
    return [moment for moment in found if moment is not None]


def _totals(figures: TripFigures) -> list[str]:
    totals = figures.totals
    weights = (("live weight", totals.live_kg), ("put back", totals.put_back_kg))
    rows = (
        (
            "Kept",
            shown.weight(totals.kept_kg),
            [f"{name} {shown.weight(kg)}" for name, kg in weights if kg is not None],
        ),
        (
            "Tows",
            shown.count(totals.tows),
            [
                f"{totals.foul_tows} foul",
                _with(shown.hours_unit(totals.towed_h), "towed"),
                _with(shown.miles_unit(totals.distance_nm), "over the ground"),
            ],
        ),
        (
            "Catch per hour",
            shown.per_hour(totals.kept_kg_per_h),
            [_with(shown.weight(totals.kept_kg_per_day), "a day of fishing")],
        ),
        (
            "At sea",
            shown.days_unit(totals.days_at_sea),
            [
                _with(shown.days_unit(totals.fishing_days), "fishing"),
                _with(shown.ratio(totals.tows_per_day), "tows a day"),
            ],
        ),
        (
            "Swept",
            shown.square_km_unit(totals.swept_doors_km2),
            ["by the doors", _with(shown.square_km_unit(totals.swept_wings_km2), "by the wings")],
        ),
    )
    lines = table([(name, bare(value), bare(", ".join(filter(None, more)))) for name, value, more in rows], "<><")
    return lines + [f"Totals leave out {gap}" for gap in totals.incomplete]


def _with(value: str, words: str) -> str:
    """Return a value with words after it; nothing where it is not known."""
    return "" if plain(value) == "not known" else f"{value} {words}"


_COLUMNS: tuple[tuple[str, str, Callable[[TowFigures], str]], ...] = (
    ("Tow", ">", lambda tow: str(tow.no)),
    ("Shot", "<", lambda tow: shown.brief(tow.shot, tow.shot.utcoffset() if tow.shot else None)),
    ("Hauled", "<", lambda tow: shown.clock(tow.hauled, tow.hauled.utcoffset() if tow.hauled else None)),
    ("Towed", ">", lambda tow: shown.hours_minutes(tow.duration_h)),
    ("Ground", "<", lambda tow: one_line(tow.ground or "", 18)),
    ("m", ">", lambda tow: shown.metres(tow.depth_m)),
    ("nm", ">", lambda tow: shown.miles(tow.distance_nm)),
    ("kn", ">", lambda tow: shown.knots(tow.speed_kn)),
    ("Light", "<", lambda tow: tow.light or ""),
    ("Rect.", "<", lambda tow: tow.rectangle or ""),
    ("Kept kg", ">", lambda tow: shown.kilograms(tow.kept_kg)),
    ("kg/h", ">", lambda tow: shown.kilograms(tow.kept_kg_per_h)),
    ("Days old", ">", lambda tow: shown.days(tow.ice_days)),
    ("", "<", lambda tow: "foul" if tow.foul else ""),
)


def _tows(figures: TripFigures) -> list[str]:
    if not figures.tows:
        return []
    heads = tuple(name for name, _, _ in _COLUMNS)
    rows = [tuple(dash(show(tow)) for _, _, show in _COLUMNS) for tow in figures.tows]
    return table([heads, *rows], "".join(side for _, side, _ in _COLUMNS))


def _catch(figures: TripFigures) -> list[str]:
    rows: list[tuple[str, ...]] = [("Species", "Kept kg", "%", "Live kg", "Undersize kg", "Put back kg")]
    for name in by_weight(figures.catch):
        total = figures.catch[name]
        label = f"{one_line(name, 30)} {total.code}" if total.code else one_line(name, 30)
        weights = (total.live_kg, total.undersize_kg, total.put_back_kg)
        rows.append(
            (label, shown.kilograms(total.kept_kg), shown.percent(total.share_percent), *map(shown.kilograms, weights))
        )
        rows += [
            (f"  {one_line(grade, 28)}", shown.kilograms(kept), "", "", "", "") for grade, kept in total.grades.items()
        ]
    return table([tuple(dash(cell) for cell in row) for row in rows], "<>>>>>") if figures.catch else []


def _age(figures: TripFigures) -> list[str]:
    age = figures.age
    rows = (
        ("Age of the fish, days", "by the clock", "as if kept at 0 \N{DEGREE SIGN}C"),
        ("oldest", dash(shown.days(age.oldest_ice_days)), dash(shown.days(age.oldest_equivalent_ice_days))),
        ("mean, by weight", dash(shown.days(age.mean_ice_days)), dash(shown.days(age.mean_equivalent_ice_days))),
        ("limit", "", dash(shown.days(age.limit_days))),
    )
    over = f"Over the limit: {bare(shown.kilograms_unit(age.over_limit_kg))}. Not a freshness grade."
    return [*table(rows, "<>>"), over]


def _passage(figures: TripFigures) -> list[str]:
    rows = [
        (leg.name, bare(shown.brief(leg.at, leg.at.utcoffset() if leg.at else None)), leg.where or "", bare(leg.took))
        for leg in legs(figures, Notes())
    ]
    return table(rows, "<<<<") if rows else []


def _came_about(figures: TripFigures) -> list[str]:
    """Return what was carried or assumed: the words, the figure, and for tows their numbers."""
    found: dict[tuple[str, str], list[int]] = {}
    for tow in figures.tows:
        species = ((f"{name} {field}", words) for name, caught in tow.catch.items() for field, words in caught.basis)
        for field, words in (*tow.basis, *species):
            found.setdefault((field, words), []).append(tow.no)
    totals: tuple[Basis, ...] = (
        figures.trip.basis,
        figures.totals.basis,
        figures.ice.basis,
        figures.age.basis,
        figures.landing.basis,
        figures.weather.basis,
    )
    lines = [f"{field}: {words}" for basis in totals for field, words in basis]
    told = {f"{field}: {words}" for field, words in found}
    of_trip = (f"{name} {field}: {words}" for name, total in figures.catch.items() for field, words in total.basis)
    lines += [line for line in of_trip if line not in told]
    lines += [f"{field}: {words} ({tow_numbers(numbers)})" for (field, words), numbers in found.items()]
    return ["Not plainly logged or reckoned:", *(f"  {line}" for line in lines)] if lines else []
