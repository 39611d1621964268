"""What does not change from trip to trip: vessels, gear, ports, grounds, measures and limits."""

from datetime import date, time, timedelta
from decimal import Decimal

from msgspec import Struct, field

from logbook.model.names import fold_name
from logbook.model.quantity import (
    Celsius,
    Kilograms,
    Knots,
    Metres,
    Percent,
    Position,
)
from logbook.model.species import Species

FLEET_FILE = "fleet.yaml"
"""What a fleet file is called."""


class Net(Struct, frozen=True, kw_only=True):
    """A net and the doors it is towed with, as its vessel's entry has it.

    Attributes:
        name: As typed.
        side: port, starboard or stern, where it has one.
        doors: Weight of a door.
        door_spread: Distance between the doors.
        wing_spread: Distance between the wings.
        headline: Length of the headline.
        mesh_mm: Mesh of the cod end in millimetres.
    """

    name: str
    side: str | None = None
    doors: Kilograms | None = None
    door_spread: Metres | None = None
    wing_spread: Metres | None = None
    headline: Metres | None = None
    mesh_mm: float | None = None


class Hold(Struct, frozen=True, kw_only=True):
    """A fishroom.

    Attributes:
        heat_gain_kw: Heat that comes in through its sides, in kilowatts.
        surface_m2: Its surface in square metres.
        insulation_w_m2k: Heat passed by a square metre for each degree, in W/(m² K).
        pens: Name and what it holds of each pen, in the order typed; None where only named.
    """

    heat_gain_kw: float | None = None
    surface_m2: float | None = None
    insulation_w_m2k: float | None = None
    pens: tuple[tuple[str, Kilograms | None], ...] = ()


class Vessel(Struct, frozen=True, kw_only=True):
    """A vessel of the fleet.

    Attributes:
        name: As the fleet file has it.
        registration: Port letters and number.
        zone: The zone of its logs, where it is not the fleet's.
        length: Length over all.
        steaming_speed: Usual speed on passage.
        poor_weather_speed: Usual speed on passage in poor weather.
        towing_speed: Usual speed over the ground while towing.
        ice_capacity: Ice it can load.
        hold: Its fishroom.
        nets: Its nets.
        listed: False where the fleet file does not know the vessel.
    """

    name: str
    registration: str | None = None
    zone: str | None = None
    length: Metres | None = None
    steaming_speed: Knots | None = None
    poor_weather_speed: Knots | None = None
    towing_speed: Knots | None = None
    ice_capacity: Kilograms | None = None
    hold: Hold = field(default_factory=Hold)
    nets: tuple[Net, ...] = ()
    listed: bool = True

    def net(self, name: str | None) -> Net | None:
        """Return the net of that name whatever its case, or None."""
        if name is None:
            return None
        return next((n for n in self.nets if fold_name(n.name) == fold_name(name)), None)


class Sale(Struct, frozen=True, kw_only=True):
    """When fish is sold at a port.

    Attributes:
        days: Weekdays, Monday 0 to Sunday 6.
        time: Clock time the sale begins, in the fleet's zone.
        all_ashore_before: How long before it the discharge must be finished.
        none_on: Days without a sale.
    """

    days: tuple[int, ...]
    time: time
    all_ashore_before: timedelta
    none_on: tuple[date, ...] = ()


class Port(Struct, frozen=True, kw_only=True):
    """A port fish is landed at.

    Attributes:
        name: As the fleet file has it.
        at: Where it lies.
        landing_rate_kg_per_h: Usual rate of discharge.
        sale: Its market.
    """

    name: str
    at: Position | None = None
    landing_rate_kg_per_h: float | None = None
    sale: Sale | None = None


class Route(Struct, frozen=True, kw_only=True):
    """A way home.

    Attributes:
        to: The port's name.
        via: Positions in the order sailed towards the port.
    """

    to: str
    via: tuple[Position, ...]


class Ground(Struct, frozen=True, kw_only=True):
    """A fishing ground.

    Attributes:
        name: As the fleet file has it.
        corners: Two corners make a box between their parallels and meridians; three or more a polygon.
    """

    name: str
    corners: tuple[Position, ...] = ()


class Measure(Struct, frozen=True, kw_only=True):
    """A measure of the fleet's own: basket, box, kit.

    Attributes:
        name: In the singular, as the fleet file has it.
        default: What one weighs where the species has no figure of its own.
        by_species: Folded species name and weight, for those that have.
    """

    name: str
    default: Kilograms | None
    by_species: tuple[tuple[str, Kilograms], ...] = ()


class Limits(Struct, frozen=True, kw_only=True):
    """What the fleet holds itself to.

    Attributes:
        ice_days: Equivalent days on ice that fish should not pass (ten: common practice, no source).
        landing_temperature: Warmest at the inspector's probe.
        hail_tolerance: Allowed difference of out-turn from hail (10 %: Regulation (EC) 1224/2009 Art. 14).
    """

    ice_days: float = 10.0
    landing_temperature: Celsius = Celsius(2.0)
    hail_tolerance: Percent = Percent(Decimal(10))


class Constants(Struct, frozen=True, kw_only=True):
    """Physics the fleet may set.

    Attributes:
        specific_heat: Of fish, kJ/(kg K): 3.35, that is 0.8 kcal (FAO Fisheries Technical Paper 331).
        latent_heat: Of ice, kJ/kg: 334, that is 80 kcal (the same).
    """

    specific_heat: float = 3.35
    latent_heat: float = 334.0


class Assumed(Struct, frozen=True, kw_only=True):
    """What is filled in where a log says nothing, always on the safe side.

    Attributes:
        fish_to_ice: Kilograms of fish laid with one of ice (2: Torry Advisory Note 15).
        pen_temperature: Of a pen without a reading.
        to_stow: From hauled to under ice.
    """

    fish_to_ice: float = 2.0
    pen_temperature: Celsius = Celsius(1.0)
    to_stow: timedelta = timedelta(hours=2)


class Edition(Struct, frozen=True, kw_only=True):
    """What the fleet file says of one edition of the archive.

    Attributes:
        name: office, crew or public.
        positions: exact, rectangle or ground.
        fasts: Whether fasts are shown.
        after: How long positions are held back.
    """

    name: str
    positions: str | None = None
    fasts: bool | None = None
    after: timedelta | None = None


class Fleet(Struct, frozen=True, kw_only=True):
    """A fleet file, or what stands for it where there is none.

    Attributes:
        file: Name of the file; empty where there is none.
        name: The fleet's name; None where it has none.
        zone: Zone of its logs: `UTC`, an offset or an IANA name.
        currency: Name of its money.
        home_port: Name of the port its vessels sail from where a log names none.
        waters: Hemisphere letters for positions typed without them, as `("N", "W")`.
        us_gallons: True where a gallon is the US one.
        units: Kind of value and the unit meant where none is typed.
        limits: See there.
        constants: See there.
        assumed: See there.
        measures: Its own measures.
        vessels: Its vessels.
        ports: Its ports.
        routes: Ways home.
        grounds: Its grounds.
        species: The program's species with the fleet's own added or put in their place.
        editions: What it says of editions.
        editions_unread: True where it says more of them that can't be read.
        season_start: Month and day its season begins.
        language: Language of the pages, a BCP 47 tag.
    """

    file: str = ""
    name: str | None = None
    zone: str = "UTC"
    currency: str | None = None
    home_port: str | None = None
    waters: tuple[str, str] | None = None
    us_gallons: bool = False
    units: tuple[tuple[str, str], ...] = ()
    limits: Limits = field(default_factory=Limits)
    constants: Constants = field(default_factory=Constants)
    assumed: Assumed = field(default_factory=Assumed)
    measures: tuple[Measure, ...] = ()
    vessels: tuple[Vessel, ...] = ()
    ports: tuple[Port, ...] = ()
    routes: tuple[Route, ...] = ()
    grounds: tuple[Ground, ...] = ()
    species: tuple[Species, ...] = ()
    editions: tuple[Edition, ...] = ()
    editions_unread: bool = False
    season_start: tuple[int, int] = (1, 1)
    language: str = "en"

    @property
    def title(self) -> str:
        """Return what the fleet is called on pages and in files."""
        return self.name or "The fleet"

    def port(self, name: str | None) -> Port | None:
        """Return the port of that name whatever its case, or None."""
        if name is None:
            return None
        return next((p for p in self.ports if fold_name(p.name) == fold_name(name)), None)

    def unit(self, kind: str) -> str | None:
        """Return the unit meant for a kind of value where none is typed, or None."""
        return dict(self.units).get(kind)
