"""When to turn for home: what would happen first, the sales that can be made, and how things stand on turning later."""

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from itertools import islice

from msgspec import Struct

from logbook.model import reasons
from logbook.model.figures import Choice, SaleFigures
from logbook.model.fleet import Port
from logbook.model.language import N_
from logbook.model.quantity import HOUR
from logbook.reckon.age import Lot
from logbook.reckon.at_limit import first_at_limit
from logbook.reckon.homeward import FOREVER, Passage, after
from logbook.reckon.ice import IceState
from logbook.reckon.sales import ComingSale, coming_sales
from logbook.reckon.standing import Standing
from logbook.reckon.totals import room_kg

_HOURS_A_DAY = 24.0
_SALES = 5
_CHOICES_H = (0, 12, 24, 36, 48)
ICE_DAYS, ICE, HOLD = N_("ice days"), N_("ice"), N_("hold")
_HALF_AN_HOUR = timedelta(minutes=30)


class Ahead(Struct, frozen=True, kw_only=True):
    """What a look ahead goes by; hours count from the moment of the figures.

    Attributes:
        as_of: That moment.
        lots: The fish aboard.
        limit_days: Equivalent days that fish should not pass.
        aboard_kg: Fish aboard now; None where not known.
        per_h: Rate of catching, kg an hour; None where not known.
        landing_rate: Of the port, kg an hour; None where not known.
        room_kg: What the pens hold; None where not known.
        ice_left_kg: Loose ice.
        ice_use: How fast it goes, kg an hour.
        ice_lasts_h: How long it lasts; None where that can't be told.
        passage: The way home.
    """

    as_of: datetime
    lots: tuple[Lot, ...]
    limit_days: float
    aboard_kg: float | None
    per_h: float | None
    landing_rate: float | None
    room_kg: float | None
    ice_left_kg: float | None
    ice_use: float | None
    ice_lasts_h: float | None
    passage: Passage

    def kept_kg(self, hours: float) -> float | None:
        """Return the fish aboard after some hours of fishing; None where it is not known."""
        if self.aboard_kg is None or (self.per_h is None and hours):
            return None
        return self.aboard_kg + (self.per_h or 0.0) * hours

    def discharge_h(self, hours: float) -> float:
        """Return the time to discharge what will be aboard after some hours of fishing; 0 where it can't be told.

        Where the rate of catching is not known, of what is aboard now.
        """
        kept = self.kept_kg(hours)
        kept = self.aboard_kg if kept is None else kept
        return min(kept / self.landing_rate, FOREVER / HOUR) if kept is not None and self.landing_rate else 0.0


def look_ahead(now: Standing, ice: IceState, passage: Passage, port: Port | None) -> Ahead:
    """Return what a look ahead from a moment goes by."""
    per_day = now.catching_kg_per_day
    lasts = ice.ice.lasts_until
    return Ahead(
        as_of=now.as_of,
        lots=now.lots,
        limit_days=now.fleet.limits.ice_days,
        aboard_kg=now.aboard_kg,
        per_h=per_day / _HOURS_A_DAY if per_day is not None else None,
        landing_rate=port.landing_rate_kg_per_h if port is not None else None,
        room_kg=room_kg(now.trip.vessel.hold),
        ice_left_kg=ice.ice.left_kg,
        ice_use=ice.use_kg_per_h,
        ice_lasts_h=(lasts - now.as_of) / HOUR if lasts is not None else None,
        passage=passage,
    )


def latest_turn_h(ahead: Ahead, finished_h: float, passage_h: float) -> float:
    """Return after how many hours at the latest to turn, so that the discharge is finished in some hours.

    What is aboard then is more by the rate of catching; of a time that has passed, what is aboard now.
    """
    spare = finished_h - passage_h - ahead.discharge_h(0)
    if spare <= 0 or not ahead.landing_rate or ahead.aboard_kg is None:
        return spare
    return spare / (1 + (ahead.per_h or 0.0) / ahead.landing_rate)


def bounds(ahead: Ahead, passage_h: float) -> Iterator[tuple[float, str]]:
    """Give after how many hours at the latest to turn so that each thing does not happen first, and which thing it is.

    The first fish reaches the limit before the discharge is finished; the loose ice is gone before docking; the hold is full.
    """
    limit = first_at_limit(ahead.lots, ahead.limit_days, ahead.as_of)
    if limit is not None:
        yield latest_turn_h(ahead, (limit - ahead.as_of) / HOUR, passage_h), ICE_DAYS
    if ahead.ice_lasts_h is not None:
        yield ahead.ice_lasts_h - passage_h, ICE
    full = _full_h(ahead)
    if full is not None:
        yield full, HOLD


def _full_h(ahead: Ahead) -> float | None:
    """Return after how many hours the hold is full: none where it is now; None where that can't be told or takes a year."""
    if ahead.room_kg is None or ahead.aboard_kg is None:
        return None
    room = ahead.room_kg - ahead.aboard_kg
    if room <= 0:
        return 0.0
    return room / ahead.per_h if ahead.per_h and room / ahead.per_h < FOREVER / HOUR else None


def first_bound(ahead: Ahead, passage_h: float | None) -> tuple[datetime | None, str | None]:
    """Return the latest time to turn and what binds it; None where nothing does or the passage is not known."""
    if passage_h is None:
        return None, None
    hours, what = min(bounds(ahead, passage_h), default=(None, None))
    return after(ahead.as_of, hours), what


def last_shot_by(turn_by: datetime | None, durations_h: Sequence[float | None]) -> datetime | None:
    """Return the latest shot: a mean tow and half an hour before turning; None where no tow tells how long they are."""
    known = [hours for hours in durations_h if hours is not None]
    if turn_by is None or not known:
        return None
    return turn_by - timedelta(hours=sum(known) / len(known)) - _HALF_AN_HOUR


def oldest_at(lots: Sequence[Lot], time: datetime) -> float | None:
    """Return the age of the oldest fish at a moment, as if kept at 0 °C; None where there is no fish."""
    return max((lot.equivalent_days(time) for lot in lots), default=None)


def sales_ahead(ahead: Ahead, port: Port | None, zone: str, *, homeward: bool) -> tuple[SaleFigures, ...]:
    """Return the next sales that can be made: landing is finished early enough if she turns in time, or did turn."""
    hours = ahead.passage.hours
    if hours is None:
        return ()
    leaves = ahead.passage.leaves if homeward else ahead.as_of
    ready = max(ahead.as_of, leaves + timedelta(hours=hours)) + timedelta(hours=ahead.discharge_h(0))
    coming = coming_sales(port.sale if port is not None else None, zone, ahead.as_of)
    made = (sale for sale in coming if sale.ashore_by >= ready)
    return tuple(
        SaleFigures(
            at=sale.at,
            ashore_by=sale.ashore_by,
            turn_for_home_by=None if homeward else _turn_for(ahead, sale, hours),
            oldest_equivalent_ice_days=oldest_at(ahead.lots, sale.at),
        )
        for sale in islice(made, _SALES)
    )


def _turn_for(ahead: Ahead, sale: ComingSale, passage_h: float) -> datetime:
    hours = latest_turn_h(ahead, (sale.ashore_by - ahead.as_of) / HOUR, passage_h)
    return ahead.as_of + timedelta(hours=hours)


def choices(ahead: Ahead, port: Port | None, zone: str) -> tuple[Choice, ...]:
    """Return how things would stand at docking, on turning now or later.

    Where the passage is not known, what binds is what would happen before she turned.
    """
    bound = sorted(bounds(ahead, ahead.passage.hours or 0.0))
    return tuple(_choice(ahead, port, zone, float(wait), bound) for wait in _CHOICES_H)


def _choice(ahead: Ahead, port: Port | None, zone: str, wait: float, bound: Sequence[tuple[float, str]]) -> Choice:
    turn = ahead.as_of + timedelta(hours=wait)
    docked = after(turn, ahead.passage.hours)
    kept = ahead.kept_kg(wait)
    sale = None
    if docked is not None:
        ready = docked + timedelta(hours=ahead.discharge_h(wait))
        coming = coming_sales(port.sale if port is not None else None, zone, docked)
        sale = next((one.at for one in coming if one.ashore_by >= ready), None)
    return Choice(
        turn=turn,
        docked=docked,
        kept_kg=kept,
        hold_full_percent=kept / ahead.room_kg * 100 if kept is not None and ahead.room_kg else None,
        ice_left_kg=_ice_at(ahead, docked),
        oldest_equivalent_ice_days=oldest_at(ahead.lots, docked) if docked is not None else None,
        over_limit_kg=_over_limit(ahead, docked),
        sale=sale,
        bound_by=next((what for hours, what in bound if hours < wait), None),
    )


def _ice_at(ahead: Ahead, time: datetime | None) -> float | None:
    if ahead.ice_left_kg is None or ahead.ice_use is None or time is None:
        return None
    return max(0.0, ahead.ice_left_kg - ahead.ice_use * ((time - ahead.as_of) / HOUR))


def _over_limit(ahead: Ahead, time: datetime | None) -> float | None:
    known = [lot for lot in ahead.lots if lot.kept_kg is not None]
    if time is None or not known:
        return None
    return float(sum(lot.kept_kg or 0 for lot in known if lot.equivalent_days(time) > ahead.limit_days))


def ahead_basis(ahead: Ahead) -> tuple[str, ...]:
    """Return what a look ahead leaves out."""
    no_discharge = not ahead.landing_rate or ahead.aboard_kg is None
    return (
        *([reasons.NO_RATE] if ahead.per_h is None else []),
        *([reasons.NO_DISCHARGE] if no_discharge else []),
        *([reasons.NO_ICE_TIME] if ahead.ice_lasts_h is None else []),
        *([reasons.NO_ROOM] if ahead.room_kg is None else []),
    )
