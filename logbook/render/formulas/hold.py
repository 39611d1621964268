"""The hold, explained: ice, pens, and how old the fish is."""

from logbook.model.language import N_
from logbook.render.formulas.entry import LOGGED, RECKONED, Chapter, Entry

AGE = Chapter(
    id="of-the-age",
    title=N_("Age of the fish"),
    entries=(
        Entry(
            id="age",
            name=N_("Days old"),
            keys=("ice_days", "oldest_ice_days", "mean_ice_days", "kept_kg_by_day"),
            how=RECKONED,
            unit=N_("days of 24 h"),
            what=N_(
                "By the clock, from hauling to docking (or to the last word of a trip that has not docked). The mean is weighted by what was kept."
            ),
            formula=N_("(docked − hauled) / 24 h"),
        ),
        Entry(
            id="equivalent-age",
            name=N_("Days old, as if kept at 0 °C"),
            keys=("equivalent_ice_days", "oldest_equivalent_ice_days", "mean_equivalent_ice_days", "on_ice"),
            how=RECKONED,
            unit=N_("days at 0 °C"),
            what=N_(
                "Fish ages faster where it is warmer. Each stretch of time counts by how fast it ages at its temperature, beside melting ice: on deck until it is under ice, then at the temperature of its pen. The rule is for fresh fish of temperate waters between about −2 and 15 °C."
            ),
            formula=N_("∫ (1 + 0.1 T)² dt, T in °C; 0 at −10 °C and below"),
            assumed=N_(
                "Deck: the higher of sea and deck temperature that were logged, else 10 °C. Under ice from when it was logged, else after the trip's usual time, else after the fleet file's hours. A pen without readings: the fleet file's pen temperature."
            ),
            source=N_(
                "Huss, H. H. (1995): Quality and quality changes in fresh fish, FAO Fisheries Technical Paper 348; Ratkowsky, Olley, McMeekin and Ball (1982), Journal of Bacteriology 149, 1–5."
            ),
        ),
        Entry(
            id="limit",
            name=N_("Limit"),
            keys=("limit_days", "over_limit_kg"),
            how=LOGGED,
            unit=N_("days at 0 °C"),
            what=N_(
                "The fleet's own, from its file; what is over it is told by days as if kept at 0 °C. Ten days, where the file says nothing, is common practice and has no source."
            ),
        ),
    ),
)

ICE = Chapter(
    id="of-the-ice",
    title=N_("Ice"),
    entries=(
        Entry(
            id="ice-left",
            name=N_("Loose ice"),
            keys=("left_kg", "left_by", "loaded_kg"),
            how=RECKONED,
            unit="kg",
            what=N_(
                "Ice that is still loose to use. It starts anew from each look at it that was logged; what was laid at the moment of a look counts as laid after it. Never under 0."
            ),
            formula=N_("loaded + left at sailing + taken aboard − laid − hold melt"),
        ),
        Entry(
            id="ice-laid",
            name=N_("Ice laid with fish"),
            keys=("laid_kg", "fish_to_ice"),
            how=LOGGED,
            unit="kg",
            what=N_(
                "Ice laid with fish, by the tows or the tally of the fishroom, and what was moved to it afterwards. Fish to ice is what was kept over what was laid."
            ),
            formula=N_("fish to ice = kept / laid"),
            assumed=N_("Where none was logged: 1 kg with every 2 kg of fish, unless the fleet file says otherwise."),
            source=N_("Torry Advisory Note 15 (one part of ice to two of fish)."),
        ),
        Entry(
            id="hold-melt",
            name=N_("Melted by the hold"),
            keys=("hold_melt_kg",),
            how=RECKONED,
            unit="kg",
            what=N_(
                "What the heat that comes in through the sides of the hold melts, from sailing on. The vessel's own heat gain where the fleet file has it, else its surface and insulation with the temperature of the sea."
            ),
            formula=N_("heat gain × time / 334 kJ/kg; heat gain = surface × insulation × degrees over 0"),
            assumed=N_("A sea of 10 °C where none was logged."),
            source=N_("FAO Fisheries Technical Paper 436, chapter 7."),
        ),
        Entry(
            id="chilling",
            name=N_("Least ice by physics"),
            keys=("chilling_kg",),
            how=RECKONED,
            unit="kg",
            what=N_(
                "The ice that it takes to chill the fish from the higher of sea and deck temperature to 0 °C and no more: the least that physics asks, not what anybody should lay."
            ),
            formula=N_("kept × 3.35 kJ/(kg K) × T / 334 kJ/kg"),
            source=N_("FAO Fisheries Technical Paper 331, chapter 3; both constants can be set in the fleet file."),
        ),
        Entry(
            id="ice-lasts",
            name=N_("Ice lasts until"),
            keys=("lasts_until",),
            how=RECKONED,
            what=N_(
                "When the loose ice would be gone: at the rate between the last two looks at it, else at what the hold melts and fish to come takes."
            ),
            formula=N_("now + loose ice / rate of use"),
        ),
        Entry(
            id="ice-to-take",
            name=N_("Ice to take"),
            keys=(
                "days",
                "catch_kg",
                "sea_temperature_c",
                "theory_kg",
                "practice_kg",
                "advised_kg",
                "capacity_kg",
                "over_capacity_kg",
                "allowance_percent",
            ),
            how=RECKONED,
            unit="kg",
            what=N_(
                "For a trip that is planned: by physics, the ice that chills the catch and that the hold melts; by practice, the ice that is laid with the catch and that the hold melts; each with an allowance. The larger is advised. An estimate for planning."
            ),
            formula=N_("by physics (chilling + hold melt) × 1.2; by practice (catch / fish to ice + hold melt) × 1.2"),
            source=N_(
                "FAO Fisheries Technical Paper 331, chapter 3; Torry Advisory Note 15. The allowance of 20 % is a setting and has no source."
            ),
        ),
    ),
)
PENS = Chapter(
    id="of-the-pens",
    title=N_("Pens"),
    entries=(
        Entry(
            id="pen",
            name=N_("Pen"),
            keys=("capacity_kg", "full_percent", "first_on_ice", "last_on_ice", "temperature_c"),
            how=RECKONED,
            what=N_(
                "What lies in a pen: by the fishroom's own tally where it is kept, else by the pen each tow's fish went to, shared evenly where it went to several. How full it is goes by the capacity in the fleet file. It says nothing of whether the ship is safe to load so: that is the stability booklet's."
            ),
            formula=N_("full = kept / capacity"),
        ),
    ),
)
