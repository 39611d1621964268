"""Charts of weather, gear and money, as data."""

from collections.abc import Mapping, Sequence

from logbook.model.figures import Reckoned
from logbook.model.gear import NetFigures
from logbook.model.ledger import Kit
from logbook.render.charts import BROAD, SLIM, Bar, Bars, Chart, Columns, Part
from logbook.render.draw_sizes import bars_height
from logbook.render.fleet_charts import sailed_label
from logbook.render.gather import TripLine
from logbook.render.language import _
from logbook.render.links import fleet_chart, trip_chart, vessel_chart
from logbook.render.shown import fixed, hours_unit, many, one_line, plain

_HEIGHT = 300
_LABEL = 30
_LATEST = 24


def weather_chart(reckoned: Reckoned) -> Chart | None:
    """Return the hours towed in each force of wind, with the catch per hour above each; None where no wind is logged."""
    weather = reckoned.figures.weather
    if not weather.hours_by_force:
        return None
    rates = weather.kept_kg_per_h_by_force
    bars = tuple(
        Bar(label=force, parts=(Part(size=hours),), end=_rate(rates.get(force)))
        for force, hours in weather.hours_by_force.items()
    )
    most = max(weather.hours_by_force, key=lambda force: (weather.hours_by_force[force], int(force)))
    return Chart(
        path=trip_chart(reckoned.figures.trip.id, "weather"),
        alt=_("Hours towed by force of the wind: most in force {force}, {hours}.").format(
            force=most, hours=plain(hours_unit(weather.hours_by_force[most]))
        ),
        width=SLIM,
        height=_HEIGHT,
        drawing=Columns(unit=_("h towed in each force; kg/h above"), bars=bars),
    )


def _rate(rate: float | None) -> str:
    return fixed(rate) if rate is not None else ""


def gear_chart(kits: Mapping[str, Kit]) -> Chart | None:
    """Return the hours on every net, door and warp of the fleet since it was mended; None where none is known."""
    rows = [
        (f"{vessel}, {name}", net.towed_h_since_mended)
        for vessel, own in sorted(kits.items())
        for name, net in _parts(own.gear, own.rigging)
        if net.towed_h_since_mended
    ]
    if not rows:
        return None
    bars = tuple(
        Bar(label=one_line(name, _LABEL), parts=(Part(size=hours or 0.0),), end=fixed(hours or 0.0))
        for name, hours in rows
    )
    drawing = Bars(unit=_("h"), bars=bars)
    return Chart(
        path=fleet_chart("gear"),
        alt=_("Hours towed since each was changed or mended, of {parts}.").format(
            parts=many(len(rows), "net, door or warp", "nets, doors and warps")
        ),
        width=SLIM,
        height=bars_height(drawing),
        drawing=drawing,
    )


def _parts(gear: Mapping[str, NetFigures], rigging: Mapping[str, NetFigures]) -> Sequence[tuple[str, NetFigures]]:
    return (*gear.items(), *((_(name), part) for name, part in rigging.items()))


def gross_chart(name: str, lines: Sequence[TripLine]) -> Chart | None:
    """Return what a vessel's latest trips grossed, in order; None where no price is logged."""
    known = [
        (line.trip, line.trip.figures.money.gross)
        for line in lines
        if line.trip.figures.money is not None and line.trip.figures.money.gross is not None
    ][-_LATEST:]
    if not known:
        return None
    bars, years = [], None
    for trip, gross in known:
        began = trip.log.begins
        bars.append(
            Bar(
                label=sailed_label(began),
                parts=(Part(size=float(gross) / 1000),),
                end=fixed(gross / 1000),
                lead=began.year != years,
            )
        )
        years = began.year
    best = max(gross for _, gross in known)
    return Chart(
        path=vessel_chart(name, "gross"),
        alt=_("Gross of {trips}, by date sailed: the most {most}.").format(
            trips=many(len(known), "trip", "trips"), most=fixed(best, 2)
        ),
        width=BROAD,
        height=_HEIGHT,
        drawing=Columns(unit=_("thousands"), bars=tuple(bars)),
    )
