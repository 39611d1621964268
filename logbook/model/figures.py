"""What is reckoned from a trip: records whose fields are the keys of `logbook reckon --json`.

Weights are `Decimal` kilograms, everything else measured is `float` in the unit its name ends in. A
figure whose inputs are missing is None, never 0. `basis` tells, for figures that were neither plainly
logged nor plainly reckoned, how they came about: field name and words such as `assumed: usual speed`
or `carried`.
"""

from datetime import datetime
from decimal import Decimal

from msgspec import Struct, field

from logbook.model.basis import Basis
from logbook.model.course import Course
from logbook.model.fleet_figures import GroupFigures
from logbook.model.gear import NetFigures
from logbook.model.money import MoneyFigures
from logbook.model.named import ByName
from logbook.model.out_turn import HailedSpecies
from logbook.model.past import Past
from logbook.model.problem import Problem
from logbook.model.rest import RestFigures
from logbook.model.trip import Trip
from logbook.model.weather import WeatherFigures


class Neighbours(Struct, frozen=True, kw_only=True):
    """What the vessel's other logs say that bears on a trip.

    Attributes:
        number_that_day: 1 for the vessel's first trip that sailed on that date, 2 for the second.
        previous_id: Id of the trip before, None where there is none.
        next_id: Id of the trip after, None where there is none.
        next_sailed: When the vessel next sailed; None where there is no later log.
        past: What her earlier trips leave behind for this one.
    """

    number_that_day: int = 1
    previous_id: str | None = None
    next_id: str | None = None
    next_sailed: datetime | None = None
    past: Past = Past()


class TripHead(Struct, frozen=True, kw_only=True):
    """The `trip` section: which trip it is and how it stands."""

    id: str
    vessel: str
    number: str | None
    skipper: str | None
    state: str
    sailed: datetime | None
    sailed_from: str | None
    turned_for_home: datetime | None
    docked: datetime | None
    port: str | None
    as_of: datetime
    last_word: datetime
    basis: Basis = ()


class SpeciesCatch(Struct, frozen=True, kw_only=True):
    """What one tow caught of one species; None where not known. `kept` says that some was kept, be it only counted."""

    kept_kg: Decimal | None
    put_back_kg: Decimal | None
    undersize_kg: Decimal | None
    live_kg: Decimal | None
    grades: ByName[Decimal | None]
    kept: bool = True
    basis: Basis = ()


class TowFigures(Struct, frozen=True, kw_only=True):
    """One entry of `tows`.

    Two fields more than the rates are made of: `catch_h`, the hours that the catch in `kept_kg` took, and `sorted_with`, the
    numbers of the tows before whose catch is in it.
    """

    no: int
    side: str | None
    ground: str | None
    net: str | None
    pens: tuple[str, ...]
    shot: datetime | None
    hauled: datetime | None
    on_ice: datetime | None
    duration_h: float | None
    distance_nm: float | None
    distance_by: str | None
    speed_kn: float | None
    swept_doors_km2: float | None
    swept_wings_km2: float | None
    depth_m: float | None
    warp_to_depth: float | None
    light: str | None
    rectangle: str | None
    catch: ByName[SpeciesCatch]
    kept_kg: Decimal | None
    put_back_kg: Decimal | None
    live_kg: Decimal | None
    kept_kg_per_h: float | None
    kept_kg_per_km2: float | None
    foul: bool
    ice_days: float | None
    equivalent_ice_days: float | None
    catch_h: float | None = None
    sorted_with: tuple[int, ...] = ()
    basis: Basis = ()


class SpeciesTotal(Struct, frozen=True, kw_only=True):
    """One entry of `catch`: a species over the trip. `kept` says that some was kept, be it only counted."""

    code: str | None
    kept_kg: Decimal | None
    put_back_kg: Decimal | None
    undersize_kg: Decimal | None
    live_kg: Decimal | None
    grades: ByName[Decimal | None]
    share_percent: float | None
    kept: bool = True
    basis: Basis = ()


class Totals(Struct, frozen=True, kw_only=True):
    """The `totals` section; `incomplete` names what a total leaves out and why."""

    tows: int
    foul_tows: int
    towed_h: float | None
    distance_nm: float | None
    swept_doors_km2: float | None
    swept_wings_km2: float | None
    kept_kg: Decimal | None
    put_back_kg: Decimal | None
    live_kg: Decimal | None
    kept_kg_per_h: float | None
    kept_kg_per_day: float | None
    days_at_sea: float | None
    fishing_days: float | None
    tows_per_day: float | None
    mean_cycle_h: float | None
    hold_full_percent: float | None
    incomplete: tuple[str, ...]
    basis: Basis = ()


class Age(Struct, frozen=True, kw_only=True):
    """The `age` section: how old the fish is."""

    as_of: datetime
    limit_days: float
    oldest_ice_days: float | None
    mean_ice_days: float | None
    oldest_equivalent_ice_days: float | None
    mean_equivalent_ice_days: float | None
    kept_kg_by_day: ByName[Decimal]
    over_limit_kg: Decimal | None
    basis: Basis = ()


class Ice(Struct, frozen=True, kw_only=True):
    """The `ice` section: loose ice left, and the least that physics asks."""

    loaded_kg: float | None = None
    laid_kg: float | None = None
    hold_melt_kg: float | None = None
    left_kg: float | None = None
    left_by: str | None = None
    chilling_kg: float | None = None
    lasts_until: datetime | None = None
    fish_to_ice: float | None = None
    basis: Basis = ()


class IceToTake(Struct, frozen=True, kw_only=True):
    """The ice to take for a planned trip: by physics, and by practice; the larger is advised.

    Attributes:
        days: Planned length.
        catch_kg: Planned catch.
        sea_temperature_c: Of the sea, and of the fish as it comes aboard.
        chilling_kg: Ice that chills the catch to 0 °C, by physics alone.
        hold_melt_kg: Ice that the hold melts in those days; None where nothing is known of it.
        theory_kg: Both, with the allowance.
        fish_to_ice: Fish laid with one of ice, by practice.
        practice_kg: Catch over that, and the hold's melt, with the allowance.
        allowance_percent: What is added to each.
        advised_kg: The larger of the two.
        capacity_kg: What the vessel can load; None where not known.
        over_capacity_kg: What is advised beyond that; 0 where it fits, None where not known.
        basis: What was assumed or left out.
    """

    days: float
    catch_kg: float
    sea_temperature_c: float
    chilling_kg: float
    hold_melt_kg: float | None
    theory_kg: float
    fish_to_ice: float
    practice_kg: float
    allowance_percent: float
    advised_kg: float
    capacity_kg: float | None
    over_capacity_kg: float | None
    basis: Basis = ()


class PenFigures(Struct, frozen=True, kw_only=True):
    """One entry of `pens`."""

    kept_kg: Decimal | None
    capacity_kg: Decimal | None
    full_percent: float | None
    first_on_ice: datetime | None
    last_on_ice: datetime | None
    oldest_ice_days: float | None
    tows: tuple[int, ...]
    temperature_c: float | None
    out_turn_kg: Decimal | None
    basis: Basis = ()


class SaleFigures(Struct, frozen=True, kw_only=True):
    """A sale that can be made: when it is, by when to be ashore and to turn."""

    at: datetime
    ashore_by: datetime
    turn_for_home_by: datetime | None
    oldest_equivalent_ice_days: float | None


class Choice(Struct, frozen=True, kw_only=True):
    """How things would stand on turning at one time."""

    turn: datetime
    docked: datetime | None
    kept_kg: float | None
    hold_full_percent: float | None
    ice_left_kg: float | None
    oldest_equivalent_ice_days: float | None
    over_limit_kg: float | None
    sale: datetime | None
    bound_by: str | None


class ProbeFigures(Struct, frozen=True, kw_only=True):
    """The inspector's probe in one pen, against the limit."""

    temperature_c: float
    within_limit: bool


class LandingFigures(Struct, frozen=True, kw_only=True):
    """The `landing` section: as it was, or as expected."""

    port: str | None
    expected: bool
    docked: datetime | None
    passage_nm: float | None
    passage_h: float | None
    landing_started: datetime | None
    landing_finished: datetime | None
    discharge_h: float | None
    discharge_kg_per_h: float | None
    steam_out_h: float | None
    steam_home_h: float | None
    turnaround_h: float | None
    temperatures: ByName[ProbeFigures]
    landings: tuple["LandingFigures", ...] = ()
    sales: tuple[SaleFigures, ...] = ()
    turn_for_home_by: datetime | None = None
    bound_by: str | None = None
    turn_for_home_by_poor_weather: datetime | None = None
    last_shot_by: datetime | None = None
    choices: tuple[Choice, ...] = ()
    basis: Basis = ()


class TripFigures(Struct, frozen=True, kw_only=True):
    """All that is reckoned for one trip."""

    trip: TripHead
    tows: tuple[TowFigures, ...]
    catch: ByName[SpeciesTotal]
    totals: Totals
    grounds: ByName[GroupFigures] = field(default_factory=ByName)
    ice: Ice = field(default_factory=Ice)
    age: Age
    pens: ByName[PenFigures] = field(default_factory=ByName)
    landing: LandingFigures
    hail: ByName[HailedSpecies] = field(default_factory=ByName)
    gear: ByName[NetFigures] = field(default_factory=ByName)
    rigging: ByName[NetFigures] = field(default_factory=ByName)
    time_lost_h: ByName[float] = field(default_factory=ByName)
    rest: ByName[RestFigures] = field(default_factory=ByName)
    weather: WeatherFigures = WeatherFigures()
    money: MoneyFigures | None = None
    problems: tuple[Problem, ...]


class Reckoned(Struct, frozen=True, kw_only=True):
    """A trip with its figures, as the pages get it.

    Attributes:
        log: What was typed.
        figures: What was reckoned from it.
        neighbours: What the vessel's other logs say.
        course: How ice and age went.
        log_unread: True where the log can't be read at present, and all this is as it last could be.
    """

    log: Trip
    figures: TripFigures
    neighbours: Neighbours
    course: Course = Course()
    log_unread: bool = False


def offset_s(moment: datetime) -> int:
    """Return a moment's offset from UTC in whole seconds."""
    offset = moment.utcoffset()
    return round(offset.total_seconds()) if offset is not None else 0


def moments_of(trip: Reckoned) -> list[datetime]:
    """Return the moments of a trip that tell which offset its log is kept in."""
    head = trip.figures.trip
    found = [trip.log.begins, head.sailed, head.docked, head.turned_for_home, head.last_word, head.as_of]
    found += [moment for tow in trip.figures.tows for moment in (tow.shot, tow.hauled)]
    return [moment for moment in found if moment is not None]
