"""A trip's figures as plain text, for a terminal: what `logbook reckon LOG` prints.

The rounding is that of the pages. Only signs that every terminal has are used for our own words.
"""

from collections.abc import Callable
from datetime import datetime

from logbook.model.basis import Basis
from logbook.model.figures import TowFigures, TripFigures
from logbook.model.language import N_
from logbook.model.trip import Trip
from logbook.render import shown
from logbook.render.clock import clock_of
from logbook.render.gather import by_weight
from logbook.render.language import _
from logbook.render.marks import Notes
from logbook.render.passage import legs
from logbook.render.plain_besides import besides, ice
from logbook.render.shown import one_line, plain
from logbook.render.text import bare, dash, table, tow_numbers, trip_name
from logbook.render.told import told


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
    sailed = _("Sailed {when} from {port}") if head.sailed_from else _("Sailed {when}")
    if head.docked:
        ends = _("Docked {when} at {port}") if head.port else _("Docked {when}")
        now = ends.format(when=shown.moment(head.docked, offset), port=head.port)
    else:
        now = _("Last word {when}; figures stand as of {as_of}").format(
            when=shown.moment(head.last_word, offset), as_of=shown.moment(head.as_of, offset)
        )
    return [
        f"{trip_name(head)} ({_(head.state)}), {head.id}",
        sailed.format(when=bare(shown.moment(head.sailed, offset)), port=head.sailed_from),
        now,
        clock.words,
    ]


def _moments(trip: Trip, figures: TripFigures) -> list[datetime]:
    head = figures.trip
    found = [trip.begins, head.sailed, head.docked, head.as_of, head.last_word]
    found += [moment for tow in figures.tows for moment in (tow.shot, tow.hauled)]
    return [moment for moment in found if moment is not None]


def _totals(figures: TripFigures) -> list[str]:
    totals = figures.totals
    weights = ((_("live weight {weight}"), totals.live_kg), (_("put back {weight}"), totals.put_back_kg))
    rows = (
        (
            _("Kept"),
            shown.weight(totals.kept_kg),
            [words.format(weight=shown.weight(kg)) for words, kg in weights if kg is not None],
        ),
        (
            _("Tows"),
            shown.count(totals.tows),
            [
                _("{n} foul").format(n=totals.foul_tows),
                _with(_("{hours} towed"), hours=shown.hours_unit(totals.towed_h)),
                _with(_("{miles} over the ground"), miles=shown.miles_unit(totals.distance_nm)),
            ],
        ),
        (
            _("Catch per hour"),
            shown.per_hour(totals.kept_kg_per_h),
            [_with(_("{weight} a day of fishing"), weight=shown.weight(totals.kept_kg_per_day))],
        ),
        (
            _("At sea"),
            shown.days_unit(totals.days_at_sea),
            [
                _with(_("{days} fishing"), days=shown.days_unit(totals.fishing_days)),
                _with(_("{n} tows a day"), n=shown.ratio(totals.tows_per_day)),
            ],
        ),
        (
            _("Swept"),
            shown.square_km_unit(totals.swept_doors_km2),
            [_("by the doors"), _with(_("{area} by the wings"), area=shown.square_km_unit(totals.swept_wings_km2))],
        ),
    )
    lines = table([(name, bare(value), bare(", ".join(filter(None, more)))) for name, value, more in rows], "<><")
    return lines + [_("Totals leave out {gap}").format(gap=told(gap)) for gap in totals.incomplete]


def _with(words: str, **values: str) -> str:
    """Return words with a value in them; nothing where it is not known."""
    unknown = any(plain(value) == _("not known") for value in values.values())
    return "" if unknown else words.format(**values)


_COLUMNS: tuple[tuple[str, str, Callable[[TowFigures], str]], ...] = (
    (N_("Tow"), ">", lambda tow: str(tow.no)),
    (N_("Shot"), "<", lambda tow: shown.brief(tow.shot, tow.shot.utcoffset() if tow.shot else None)),
    (N_("Hauled"), "<", lambda tow: shown.clock(tow.hauled, tow.hauled.utcoffset() if tow.hauled else None)),
    (N_("Towed"), ">", lambda tow: shown.hours_minutes(tow.duration_h)),
    (N_("Ground"), "<", lambda tow: one_line(tow.ground or "", 18)),
    ("m", ">", lambda tow: shown.metres(tow.depth_m)),
    (N_("nm"), ">", lambda tow: shown.miles(tow.distance_nm)),
    (N_("kn"), ">", lambda tow: shown.knots(tow.speed_kn)),
    (N_("Light"), "<", lambda tow: _(tow.light) if tow.light else ""),
    (N_("Rect."), "<", lambda tow: tow.rectangle or ""),
    (N_("Kept kg"), ">", lambda tow: shown.kilograms(tow.kept_kg)),
    (N_("kg/h"), ">", lambda tow: shown.kilograms(tow.kept_kg_per_h)),
    (N_("Days old"), ">", lambda tow: shown.days(tow.ice_days)),
    ("", "<", lambda tow: _("foul") if tow.foul else ""),
)


def _tows(figures: TripFigures) -> list[str]:
    if not figures.tows:
        return []
    heads = tuple(_(name) if len(name) > 1 else name for name, _side, _show in _COLUMNS)
    rows = [tuple(dash(show(tow)) for _name, _side, show in _COLUMNS) for tow in figures.tows]
    return table([heads, *rows], "".join(side for _name, side, _show in _COLUMNS))


def _catch(figures: TripFigures) -> list[str]:
    rows: list[tuple[str, ...]] = [(_("Species"), _("Kept kg"), "%", _("Live kg"), _("Undersize kg"), _("Put back kg"))]
    for name in by_weight(figures.catch):
        total = figures.catch[name]
        label = f"{one_line(name, 30)} {total.code}" if total.code else one_line(name, 30)
        weights = (total.live_kg, total.undersize_kg, total.put_back_kg)
        rows.append(
            (label, shown.kilograms(total.kept_kg), shown.percent(total.share_percent), *map(shown.kilograms, weights))
        )
        rows += [
            (f"  {one_line(told(grade), 28)}", shown.kilograms(kept), "", "", "", "")
            for grade, kept in total.grades.items()
        ]
    return table([tuple(dash(cell) for cell in row) for row in rows], "<>>>>>") if figures.catch else []


def _age(figures: TripFigures) -> list[str]:
    age = figures.age
    rows = (
        (_("Age of the fish, days"), _("by the clock"), _("as if kept at 0 °C")),
        (_("oldest"), dash(shown.days(age.oldest_ice_days)), dash(shown.days(age.oldest_equivalent_ice_days))),
        (_("mean, by weight"), dash(shown.days(age.mean_ice_days)), dash(shown.days(age.mean_equivalent_ice_days))),
        (_("limit"), "", dash(shown.days(age.limit_days))),
    )
    over = _("Over the limit: {weight}. Not a freshness grade.").format(
        weight=bare(shown.kilograms_unit(age.over_limit_kg))
    )
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
    lines = [f"{field}: {told(words)}" for basis in totals for field, words in basis]
    of_trip = ((f"{name} {field}", words) for name, total in figures.catch.items() for field, words in total.basis)
    lines += [f"{field}: {told(words)}" for field, words in of_trip if (field, words) not in found]
    lines += [f"{field}: {told(words)} ({tow_numbers(numbers)})" for (field, words), numbers in found.items()]
    return [_("Not plainly logged or reckoned:"), *(f"  {line}" for line in lines)] if lines else []
