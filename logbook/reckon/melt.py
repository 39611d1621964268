"""How much ice melts: through the sides of the hold, and in chilling fish."""

from msgspec import Struct

from logbook.model import reasons
from logbook.model.basis import Basis
from logbook.model.fleet import Constants, Hold
from logbook.model.trip import Trip

_SECONDS_AN_HOUR = 3600.0
ASSUMED_SEA_C = 10.0
"""Of the sea where no temperature is known; as for the deck."""


class HoldMelt(Struct, frozen=True, kw_only=True):
    """What a hold melts.

    Attributes:
        kg_per_h: Kilograms an hour; None where nothing is known of the hold.
        basis: What was assumed, under `hold_melt_kg`.
    """

    kg_per_h: float | None
    basis: Basis = ()


def melt_kg_per_h(kilowatts: float, constants: Constants) -> float:
    """Return the ice that a flow of heat melts in an hour.

    Source:
        FAO Fisheries Technical Paper 436 ch. 7: heat through the sides over the latent heat of ice.
    """
    return kilowatts * _SECONDS_AN_HOUR / constants.latent_heat


def chilling_kg(fish_kg: float, celsius: float, constants: Constants) -> float:
    """Return the ice that chills fish to 0 °C, by physics alone; 0 for fish that is colder.

    Source:
        FAO Fisheries Technical Paper 331 ch. 3: mass × specific heat × fall of temperature / latent heat.
    """
    return fish_kg * constants.specific_heat * max(celsius, 0.0) / constants.latent_heat


def heat_kw(hold: Hold, sea_c: float) -> float | None:
    """Return the heat that comes in: the hold's gain where that is known, else surface × insulation × degrees over 0."""
    if hold.heat_gain_kw is not None:
        return hold.heat_gain_kw
    if hold.surface_m2 is None or hold.insulation_w_m2k is None:
        return None
    return hold.surface_m2 * hold.insulation_w_m2k * max(sea_c, 0.0) / 1000


def hold_melt(trip: Trip, constants: Constants) -> HoldMelt:
    """Return what the hold melts on a trip, by its sea temperature, else the mean of its tows'."""
    hold = trip.vessel.hold
    tows = [float(tow.sea_temperature) for tow in trip.tows if tow.sea_temperature is not None]
    known = trip.sea_temperature if trip.sea_temperature is not None else sum(tows) / len(tows) if tows else None
    kilowatts = heat_kw(hold, ASSUMED_SEA_C if known is None else known)
    if kilowatts is None:
        return HoldMelt(kg_per_h=None)
    assumed = known is None and hold.heat_gain_kw is None
    words = reasons.SEA.format(degrees=f"{ASSUMED_SEA_C:g}")
    return HoldMelt(kg_per_h=melt_kg_per_h(kilowatts, constants), basis=(("hold_melt_kg", words),) if assumed else ())
