"""The table of trips: one row each, as logged and as reckoned."""

from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import Landed
from logbook.model.language import N_
from logbook.render.files.columns import (
    CURRENCY,
    LIST,
    MOMENT,
    NUMBER,
    TEXT,
    TRUTH,
    WHOLE,
    Column,
    column,
    money_shown,
    problems_shown,
    put_back_shown,
    words_shown,
)
from logbook.render.gather import added


class TripRow(Struct, frozen=True, kw_only=True):
    """A trip with what it put ashore."""

    trip: Reckoned
    landed: Landed | None


_WHICH: tuple[Column[TripRow], ...] = (
    column("trip", TEXT, N_("Id of the trip: vessel and day of sailing"), lambda row: row.trip.figures.trip.id),
    column("vessel", TEXT, N_("Her name"), lambda row: row.trip.figures.trip.vessel),
    column("registration", TEXT, N_("Port letters and number"), lambda row: row.trip.log.vessel.registration),
    column("number", TEXT, N_("The vessel's own number or label for the trip"), lambda row: row.trip.figures.trip.number),
    column(
        "skipper",
        TEXT,
        N_("Name of the skipper"),
        lambda row: row.trip.figures.trip.skipper,
        shown=lambda policy: policy.skippers,
    ),
    column("crew", LIST, N_("Names aboard"), lambda row: row.trip.log.crew, shown=lambda policy: policy.crews),
    column("hands", WHOLE, N_("How many were aboard"), lambda row: row.trip.log.hands),
    # For translators: what stands in the cells is English, whatever the language.
    column("state", TEXT, N_("at sea, homeward, landed or landing not logged"), lambda row: row.trip.figures.trip.state),
    column("sailed", MOMENT, N_("When she sailed"), lambda row: row.trip.figures.trip.sailed),
    column("sailed_from", TEXT, N_("Port she sailed from"), lambda row: row.trip.figures.trip.sailed_from),
    column("turned_for_home", MOMENT, N_("When she turned for home"), lambda row: row.trip.figures.trip.turned_for_home),
    column("docked", MOMENT, N_("When she docked, at the last of her landings"), lambda row: row.trip.figures.trip.docked),
    column("port", TEXT, N_("Port she landed at, at the last of her landings"), lambda row: row.trip.figures.trip.port),
    column("last_word", MOMENT, N_("The last moment that her log tells of"), lambda row: row.trip.figures.trip.last_word),
    column(
        "as_of", MOMENT, N_("The moment that ages and ice are reckoned for"), lambda row: row.trip.figures.trip.as_of
    ),
)  # fmt: skip

_CATCH: tuple[Column[TripRow], ...] = (
    column("tows", WHOLE, N_("Tows made"), lambda row: row.trip.figures.totals.tows),
    column("foul_tows", WHOLE, N_("Of those, the foul ones"), lambda row: row.trip.figures.totals.foul_tows),
    column("towed_h", NUMBER, N_("Time towed"), lambda row: row.trip.figures.totals.towed_h, unit="h"),
    column("distance_nm", NUMBER, N_("Distance towed"), lambda row: row.trip.figures.totals.distance_nm, unit="nmi"),
    column(
        "swept_doors_km2",
        NUMBER,
        N_("Ground swept between the doors"),
        lambda row: row.trip.figures.totals.swept_doors_km2,
        unit="km2",
    ),
    column(
        "swept_wings_km2",
        NUMBER,
        N_("Ground swept between the wings"),
        lambda row: row.trip.figures.totals.swept_wings_km2,
        unit="km2",
    ),
    column(
        "kept_kg",
        NUMBER,
        N_("Marketable catch as estimated aboard, as dressed"),
        lambda row: row.trip.figures.totals.kept_kg,
        unit="kg",
    ),
    column(
        "put_back_kg",
        NUMBER,
        N_("Put back"),
        lambda row: row.trip.figures.totals.put_back_kg,
        unit="kg",
        shown=put_back_shown,
    ),
    column("live_kg", NUMBER, N_("Live weight of what was kept"), lambda row: row.trip.figures.totals.live_kg, unit="kg"),
    column(
        "landed_kg",
        NUMBER,
        N_("Put ashore: over the scale, else as estimated aboard"),
        lambda row: added(row.landed.species.values()) if row.landed else None,
        unit="kg",
    ),
    column(
        "landed_weighed",
        TRUTH,
        N_("true where what was put ashore went over the scale"),
        lambda row: row.landed.weighed if row.landed else None,
    ),
    column(
        "kept_kg_per_h",
        NUMBER,
        N_("Kept over time towed, of tows whose catch is known"),
        lambda row: row.trip.figures.totals.kept_kg_per_h,
        unit="kg/h",
    ),
    column(
        "incomplete", LIST, N_("What the sums leave out, and why"), lambda row: row.trip.figures.totals.incomplete
    ),
)  # fmt: skip

_HOLD: tuple[Column[TripRow], ...] = (
    column(
        "days_at_sea",
        NUMBER,
        N_("From sailing to docking, or to `as_of`"),
        lambda row: row.trip.figures.totals.days_at_sea,
        unit="d",
    ),
    column(
        "fishing_days", NUMBER, N_("From first shot to last haul"), lambda row: row.trip.figures.totals.fishing_days, unit="d"
    ),
    column(
        "hold_full_percent", NUMBER, N_("How full the hold was"), lambda row: row.trip.figures.totals.hold_full_percent, unit="%"
    ),
    column("ice_loaded_kg", NUMBER, N_("Ice taken"), lambda row: row.trip.figures.ice.loaded_kg, unit="kg"),
    column("ice_left_kg", NUMBER, N_("Loose ice left"), lambda row: row.trip.figures.ice.left_kg, unit="kg"),
    column(
        "oldest_ice_days", NUMBER, N_("Age on ice of the oldest fish"), lambda row: row.trip.figures.age.oldest_ice_days, unit="d"
    ),
    column(
        "mean_ice_days", NUMBER, N_("Mean age on ice, by weight"), lambda row: row.trip.figures.age.mean_ice_days, unit="d"
    ),
    column(
        "oldest_equivalent_ice_days",
        NUMBER,
        N_("Age of the oldest fish as if kept at 0 °C"),
        lambda row: row.trip.figures.age.oldest_equivalent_ice_days,
        unit="d",
    ),
    column(
        "worst_force", WHOLE, N_("Highest wind logged"), lambda row: row.trip.figures.weather.worst_force, unit="Beaufort"
    ),
)  # fmt: skip

_BESIDES: tuple[Column[TripRow], ...] = (
    column(
        "gross",
        NUMBER,
        N_("What the fish brought, of what has a price and a weight"),
        lambda row: row.trip.figures.money.gross if row.trip.figures.money else None,
        unit=CURRENCY,
        shown=money_shown,
    ),
    column(
        "net",
        NUMBER,
        N_("Gross less expenses"),
        lambda row: row.trip.figures.money.net if row.trip.figures.money else None,
        unit=CURRENCY,
        shown=money_shown,
    ),
    column(
        "remarks", TEXT, N_("Remarks, in Markdown as typed"), lambda row: row.trip.log.remarks, shown=words_shown
    ),
    column("file", TEXT, N_("File of the log"), lambda row: row.trip.log.file, shown=problems_shown),
)  # fmt: skip

COLUMNS = (*_WHICH, *_CATCH, *_HOLD, *_BESIDES)
