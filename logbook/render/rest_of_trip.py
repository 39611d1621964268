"""Rows of a trip's page beside tows, catch and hold: hail and out-turn, weather and light, rest."""

from collections.abc import Mapping

from markupsafe import Markup
from msgspec import Struct

from logbook.model.figures import TripFigures
from logbook.model.named import ByName
from logbook.model.out_turn import HailedSpecies
from logbook.model.rest import RestFigures
from logbook.model.weather import WeatherFigures
from logbook.render.language import _
from logbook.render.marks import Notes


class HailRow(Struct, frozen=True, kw_only=True):
    """A species in the table of hail and out-turn."""

    name: str
    figures: HailedSpecies
    marks: Mapping[str, Markup]


class WeatherTable(Struct, frozen=True, kw_only=True):
    """Hours and catch by force of wind, or by light."""

    caption: str
    head: str
    entry: str
    rows: tuple[tuple[str, float, float | None], ...]


class RestRow(Struct, frozen=True, kw_only=True):
    """A hand or a watch in the table of rest."""

    name: str
    figures: RestFigures
    mark: Markup


def hail_rows(figures: TripFigures, notes: Notes) -> tuple[HailRow, ...]:
    """Return a row for every species; none where nothing went over the scale and nothing is told of earlier hails."""
    told = any(one.out_turn_kg is not None or one.bias_percent is not None for one in figures.hail.values())
    if not told:
        return ()
    return tuple(
        HailRow(name=name, figures=one, marks=notes.marks(one.basis, ("hail_kg", "out_turn_kg", "bias_percent")))
        for name, one in figures.hail.items()
    )


def weather_tables(weather: WeatherFigures) -> tuple[WeatherTable, ...]:
    """Return the tables that have rows."""
    made = (
        WeatherTable(
            caption=_("By force of the wind"),
            head=_("Beaufort"),
            entry="force",
            rows=_rows(weather.hours_by_force, weather.kept_kg_per_h_by_force),
        ),
        WeatherTable(
            caption=_("By light"),
            head=_("Light"),
            entry="by-light",
            rows=_rows(weather.hours_by_light, weather.kept_kg_per_h_by_light),
        ),
    )
    return tuple(table for table in made if table.rows)


def _rows(hours: ByName[float], rates: ByName[float | None]) -> tuple[tuple[str, float, float | None], ...]:
    return tuple((name, towed, rates.get(name)) for name, towed in hours.items())


def rest_rows(rest: ByName[RestFigures], notes: Notes) -> tuple[RestRow, ...]:
    """Return a row for each hand and watch; what was left out or is no record stands in the notes."""
    return tuple(
        RestRow(name=name, figures=one, mark=Markup("").join(_marks(one, notes))) for name, one in rest.items()
    )


def _marks(rest: RestFigures, notes: Notes) -> tuple[Markup, ...]:
    """Return the letters of everything that is not plain, each once."""
    return tuple(dict.fromkeys(notes.mark(words) for _, words in rest.basis))
