"""The ice to take for a planned trip, by physics and by practice."""

from logbook.model import reasons
from logbook.model.figures import IceToTake
from logbook.model.fleet import Fleet, Vessel
from logbook.reckon.melt import chilling_kg, heat_kw, melt_kg_per_h

_HOURS_A_DAY = 24.0
ALLOWANCE_PERCENT = 20.0
"""For losses and for longer trips; a setting, not a figure from a source."""


def ice_to_take(
    vessel: Vessel,
    fleet: Fleet,
    *,
    days: float,
    catch_kg: float,
    sea_c: float,
    allowance_percent: float = ALLOWANCE_PERCENT,
) -> IceToTake:
    """Return the ice to take: what physics asks and what practice lays, each with an allowance; the larger is advised.

    Args:
        vessel: For the heat its hold takes in and the ice it can load.
        fleet: For constants and the usual fish to ice.
        days: Planned length in days of 24 hours.
        catch_kg: Planned catch.
        sea_c: Temperature of the sea in degrees Celsius.
        allowance_percent: What is added for losses and delays.

    Source:
        FAO Fisheries Technical Paper 331 ch. 3 (chilling, holding and an allowance); fish to ice by Torry Advisory Note 15.
    """
    kilowatts = heat_kw(vessel.hold, sea_c)
    melt = melt_kg_per_h(kilowatts, fleet.constants) * days * _HOURS_A_DAY if kilowatts is not None else None
    chilling = chilling_kg(catch_kg, sea_c, fleet.constants)
    ratio = fleet.assumed.fish_to_ice
    more = 1 + allowance_percent / 100
    theory = (chilling + (melt or 0.0)) * more
    practice = (catch_kg / ratio + (melt or 0.0)) * more
    advised = max(theory, practice)
    capacity = float(vessel.ice_capacity) if vessel.ice_capacity is not None else None
    missing = () if melt is not None else ("theory_kg", "practice_kg", "advised_kg")
    return IceToTake(
        days=days,
        catch_kg=catch_kg,
        sea_temperature_c=sea_c,
        chilling_kg=chilling,
        hold_melt_kg=melt,
        theory_kg=theory,
        fish_to_ice=ratio,
        practice_kg=practice,
        allowance_percent=allowance_percent,
        advised_kg=advised,
        capacity_kg=capacity,
        over_capacity_kg=max(0.0, advised - capacity) if capacity is not None else None,
        basis=tuple((name, reasons.NO_HOLD_MELT) for name in missing),
    )
