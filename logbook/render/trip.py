"""A trip's page: what is asked first, the tows, the catch, how old the fish is, passage and landing, words, doubts."""

from collections.abc import Iterable, Mapping
from datetime import datetime
from decimal import Decimal

from markupsafe import Markup
from msgspec import Struct

from logbook.model.figures import Reckoned, SpeciesTotal, TripFigures, moments_of
from logbook.model.fleet import Fleet
from logbook.model.fleet_figures import GroupFigures, Landed
from logbook.model.trip import OutTurn, Trip
from logbook.model.weather import WeatherFigures
from logbook.render.also import LoggedList, logged_lists, loose_ends
from logbook.render.chart_of_tows import TowChart, tow_chart
from logbook.render.charts import Chart
from logbook.render.clock import Clock, clock_of
from logbook.render.environment import environment
from logbook.render.facts import Fact, first_facts
from logbook.render.frame import Crumb, Frame, Site
from logbook.render.gather import added, by_weight, kept_species
from logbook.render.gear import GearRow, gear_rows
from logbook.render.hold import Hold, hold_of
from logbook.render.language import _
from logbook.render.links import trip_page, vessel_page
from logbook.render.marks import Notes, basis_of_species
from logbook.render.more_charts import weather_chart
from logbook.render.notes import note
from logbook.render.passage import Leg, legs
from logbook.render.rest_of_trip import HailRow, RestRow, WeatherTable, hail_rows, rest_rows, weather_tables
from logbook.render.shown import full_date, one_line
from logbook.render.tow_rows import Columns, Said, TowDay, TrackRow, said_of_tows, tow_days, track_rows
from logbook.render.trip_charts import age_chart, day_words, grades_chart, run_chart

_SHORT = 10
_FIXED_COLUMNS = 11
_COLUMNS = 4
_AGE_FIELDS = (
    "oldest_ice_days",
    "mean_ice_days",
    "oldest_equivalent_ice_days",
    "mean_equivalent_ice_days",
    "over_limit_kg",
)
"""Species with a column of their own in the table of tows."""


class SpeciesRow(Struct, frozen=True, kw_only=True):
    """A row of the table of the catch, and the rows of its grades."""

    name: str
    total: SpeciesTotal
    marks: Mapping[str, Markup]
    landed_kg: Decimal | None

    @property
    def kept(self) -> bool:
        """Tell whether any of it was kept."""
        return self.total.kept


class OutTurnRow(Struct, frozen=True, kw_only=True):
    """A line of an out-turn as logged."""

    species: str
    grade: str | None
    kilograms: Decimal | None


class TripPage(Struct, frozen=True, kw_only=True):
    """All that a trip's page shows."""

    frame: Frame
    log: Trip
    log_unread: bool
    figures: TripFigures
    previous_id: str | None
    next_id: str | None
    clock: Clock
    fathoms: bool
    facts: tuple[Fact, ...]
    chartlet: TowChart | None
    run: Chart | None
    grades: Chart | None
    age: Chart | None
    hold: Hold
    grounds: tuple[GroupFigures, ...]
    columns: tuple[str, ...]
    others: bool
    days: tuple[TowDay, ...]
    tracks: tuple[TrackRow, ...]
    tow_notes: Notes
    track_notes: Notes
    catch: tuple[SpeciesRow, ...]
    catch_notes: Notes
    out_turns: tuple[tuple[OutTurnRow, ...], ...]
    landed: Landed | None
    legs: tuple[Leg, ...]
    leg_notes: Notes
    head_notes: Notes
    remarks: Markup
    said: tuple[Said, ...]
    loose: tuple[tuple[str, str], ...]
    lists: tuple[LoggedList, ...]
    age_marks: Mapping[str, Markup]
    age_notes: Notes
    age_days: tuple[tuple[str, Decimal], ...]
    hailed: tuple[HailRow, ...]
    hail_notes: Notes
    tolerance: Decimal
    gear: tuple[GearRow, ...]
    gear_notes: Notes
    damage: tuple[tuple[str, tuple[str, ...]], ...]
    time_lost: tuple[tuple[str, float], ...]
    weather_tables: tuple[WeatherTable, ...]
    weather_notes: Notes
    weather_chart: Chart | None
    rest: tuple[RestRow, ...]
    rest_notes: Notes
    currency: str | None

    @property
    def heads(self) -> tuple[tuple[str, bool], ...]:
        """Return the names of the species with a column, and whether each is short enough not to be broken."""
        return tuple((name, len(name) <= _SHORT) for name in self.columns)

    @property
    def weather_told(self) -> bool:
        """Tell whether anything is known of weather or light."""
        return bool(self.weather_tables) or self.figures.weather.worst_force is not None

    @property
    def also(self) -> bool:
        """Tell whether anything else is in the log."""
        return bool(self.loose or self.lists)

    @property
    def span(self) -> int:
        """Return how many columns the table of tows has."""
        return _FIXED_COLUMNS + len(self.columns) + self.others

    @property
    def landed_kg(self) -> Decimal | None:
        """Return what was put ashore in all."""
        return added(self.landed.species.values()) if self.landed else None

    @property
    def others_kg(self) -> Decimal | None:
        """Return what was kept of the species without a column of their own."""
        return added(total.kept_kg for name, total in self.figures.catch.items() if name not in self.columns)


def trip_context(site: Site, fleet: Fleet, reckoned: Reckoned, landed: Landed | None) -> TripPage:
    """Return what the page of a trip shows."""
    log, figures = reckoned.log, reckoned.figures
    columns = kept_species(figures.catch)[:_COLUMNS]
    tow_notes, track_notes = Notes(), Notes()
    catch_notes, leg_notes, head_notes, age_notes = Notes(), Notes(), Notes(), Notes()
    hail_notes, gear_notes, weather_notes, rest_notes = Notes(), Notes(), Notes(), Notes()
    clock = clock_of(moments_of(reckoned), log.zone)
    fathoms = fleet.unit("depth") == "fm"
    days = tow_days(reckoned, Columns(species=columns, offset=clock.offset, fathoms=fathoms), tow_notes)
    frame = trip_frame(site, figures)
    return TripPage(
        frame=frame,
        log=log,
        log_unread=reckoned.log_unread,
        figures=figures,
        previous_id=reckoned.neighbours.previous_id,
        next_id=reckoned.neighbours.next_id,
        clock=clock,
        fathoms=fathoms,
        facts=first_facts(reckoned, landed, head_notes),
        chartlet=tow_chart(reckoned, fleet),
        run=run_chart(reckoned),
        grades=grades_chart(reckoned),
        age=age_chart(reckoned),
        hold=hold_of(reckoned),
        grounds=tuple(figures.grounds.values()),
        columns=columns,
        others=any(
            species.kept_kg is not None
            for tow in figures.tows
            for name, species in tow.catch.items()
            if name not in columns
        ),
        days=days,
        tracks=track_rows(reckoned, track_notes),
        tow_notes=tow_notes,
        track_notes=track_notes,
        catch=_species_rows(figures, landed, catch_notes),
        catch_notes=catch_notes,
        out_turns=tuple(_out_turn(landing.out_turn) for landing in log.landings),
        landed=landed,
        legs=legs(figures, leg_notes, reckoned.neighbours.next_sailed),
        leg_notes=leg_notes,
        head_notes=head_notes,
        remarks=note(log.remarks),
        said=said_of_tows(reckoned),
        loose=loose_ends(log, clock.offset),
        lists=logged_lists(log, clock.offset),
        age_marks=age_notes.marks(figures.age.basis, _AGE_FIELDS),
        age_notes=age_notes,
        hailed=hail_rows(figures, hail_notes),
        hail_notes=hail_notes,
        tolerance=fleet.limits.hail_tolerance,
        gear=gear_rows({**figures.gear, **{_(part): one for part, one in figures.rigging.items()}}, gear_notes),
        gear_notes=gear_notes,
        damage=tuple((name, net.damage) for name, net in figures.gear.items() if net.damage),
        time_lost=tuple(figures.time_lost_h.items()),
        weather_tables=weather_tables(figures.weather),
        weather_chart=weather_chart(reckoned),
        weather_notes=_weather_notes(figures.weather, weather_notes),
        rest=rest_rows(figures.rest, rest_notes),
        rest_notes=rest_notes,
        currency=fleet.currency,
        age_days=tuple((day_words(day), kept) for day, kept in figures.age.kept_kg_by_day.items()),
    )


def render_trip(context: TripPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/trip.html").render(page=context, frame=context.frame)


def trip_title(figures: TripFigures) -> str:
    """Return what a trip is called: the vessel, its number if it has one, else when it sailed."""
    head = figures.trip
    vessel = one_line(head.vessel, 60)
    return (
        _("{vessel}, trip {number}").format(vessel=vessel, number=one_line(head.number, 20))
        if head.number
        else f"{vessel}, {_date(head.sailed or head.as_of)}"
    )


def _date(moment: datetime) -> str:
    return full_date(moment.date())


def trip_frame(site: Site, figures: TripFigures) -> Frame:
    """Return the frame of a trip's page."""
    head = figures.trip
    return Frame(
        site=site,
        path=trip_page(head.id),
        title=trip_title(figures),
        crumbs=(Crumb(name=head.vessel, path=vessel_page(head.vessel)),),
    )


def _species_rows(figures: TripFigures, landed: Landed | None, notes: Notes) -> tuple[SpeciesRow, ...]:
    """Return a row for every species; how its live weight came about is told by its tows."""
    catch = figures.catch
    over_scale: Mapping[str, Decimal] = landed.species if landed and landed.weighed else {}
    rows = [
        SpeciesRow(
            name=name,
            total=catch[name],
            marks=notes.marks(basis_of_species(figures, name), ("kept_kg", "live_kg")),
            landed_kg=over_scale.get(name),
        )
        for name in by_weight(catch)
    ]
    return tuple(rows)


def _weather_notes(weather: WeatherFigures, notes: Notes) -> Notes:
    """Return the notes with what the hours by force leave out."""
    notes.marks(weather.basis, ("hours_by_force",))
    return notes


def _out_turn(lines: Iterable[OutTurn]) -> tuple[OutTurnRow, ...]:
    return tuple(
        OutTurnRow(species=line.species, grade=line.grade, kilograms=line.weight.kilograms if line.weight else None)
        for line in lines
    )
