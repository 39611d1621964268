"""The trip and the tows, explained."""

from logbook.model.language import N_
from logbook.render.formulas.entry import LOGGED, RECKONED, Chapter, Entry

TRIP = Chapter(
    id="of-the-trip",
    title=N_("The trip"),
    entries=(
        Entry(
            id="trip",
            name=N_("Trip"),
            keys=("id", "vessel", "number", "skipper", "sailed", "sailed_from", "turned_for_home"),
            how=LOGGED,
            what=N_(
                "A trip is one log. Its number or label is the vessel's own. Its name in this archive is the vessel and the date it sailed; a second trip on that date gets a 2."
            ),
        ),
        Entry(
            id="state",
            name=N_("State"),
            keys=("state",),
            how=RECKONED,
            what=N_(
                "At sea until the log says that she turned for home; then homeward; landed once it says when she docked. Where the vessel has a later log but this one has no landing, the landing was not logged."
            ),
        ),
        Entry(
            id="last-word",
            name=N_("Last word"),
            keys=("last_word", "as_of"),
            how=RECKONED,
            what=N_(
                "The time of the last thing in the log. Figures of a trip that has not docked stand as of then, so the same log always gives the same figures, whatever the day it is read on. Figures of a landed trip stand as of docking."
            ),
        ),
        Entry(
            id="days-at-sea",
            name=N_("Days at sea"),
            keys=("days_at_sea",),
            how=RECKONED,
            unit=N_("days of 24 h"),
            what=N_("From sailing to docking, or to the last word of a trip that has not docked."),
            formula=N_("(docked − sailed) / 24 h"),
        ),
        Entry(
            id="fishing-days",
            name=N_("Days fishing"),
            keys=("fishing_days", "tows_per_day", "mean_cycle_h"),
            how=RECKONED,
            unit=N_("days of 24 h"),
            what=N_(
                "From the first shot to the last haul. Tows a day are tows over days fishing; the cycle is the mean time from one shot to the next."
            ),
            formula=N_("(last hauled − first shot) / 24 h"),
        ),
    ),
)
TOW = Chapter(
    id="of-a-tow",
    title=N_("A tow"),
    entries=(
        Entry(
            id="tow",
            name=N_("Tow"),
            keys=("no", "side", "ground", "net", "pens", "shot", "hauled", "tows"),
            how=LOGGED,
            what=N_(
                "A tow begins when it is shot (brakes on) and ends when heaving begins. Side, net, ground and pen hold from tow to tow until the log gives another; a tow that goes by the one before it is marked as carried."
            ),
        ),
        Entry(
            id="towed",
            name=N_("Towed"),
            keys=("duration_h", "towed_h"),
            how=RECKONED,
            unit=N_("hours and minutes"),
            what=N_("Time towing. A trip's hours are the sum over the tows whose times are known."),
            formula=N_("hauled − shot"),
        ),
        Entry(
            id="distance",
            name=N_("Distance"),
            keys=("distance_nm", "distance_by"),
            how=RECKONED,
            unit=N_("nm of 1852 m"),
            what=N_(
                "Along the shortest line over the WGS84 ellipsoid from where the net was shot through every position where she turned to where heaving began. A curved tow is longer than that. Without positions, speed times time."
            ),
            formula=N_("sum of the geodesics between the positions, or speed × time towed"),
            assumed=N_("Where neither positions nor a speed were logged: the vessel's usual towing speed."),
            source=N_("Karney, C. F. F. (2013): Algorithms for geodesics. Journal of Geodesy 87, 43–55."),
        ),
        Entry(
            id="speed",
            name=N_("Speed"),
            keys=("speed_kn",),
            how=RECKONED,
            unit="kn",
            what=N_("Over the ground: distance by positions over time towed. Where there are no positions, as logged."),
            formula=N_("distance / time towed"),
        ),
        Entry(
            id="swept",
            name=N_("Swept area"),
            keys=("swept_doors_km2", "swept_wings_km2"),
            how=RECKONED,
            unit="km²",
            what=N_(
                "The ground that the gear passed over: between the doors and between the wings, two figures that should not be mixed. Both spreads are the net's, from the fleet file; they are not measured on each tow."
            ),
            formula=N_("distance × door spread; distance × wing spread"),
            source=N_(
                "Practice of the ICES trawl surveys (DATRAS swept area, WKSAE-DATRAS 2021); Sparre and Venema, FAO Fisheries Technical Paper 306/1, chapter 13."
            ),
        ),
        Entry(
            id="depth",
            name=N_("Depth"),
            keys=("depth_m", "warp_to_depth"),
            how=LOGGED,
            unit=N_("fm, m"),
            what=N_(
                "As logged; the middle of a range. A fathom is six feet, 1.8288 m exactly. Warp to depth is the length of warp out over the depth."
            ),
            formula=N_("(shallowest + deepest) / 2; warp / depth"),
            source=N_("NIST Special Publication 811 for the units."),
        ),
        Entry(
            id="light",
            name=N_("Light"),
            keys=("light",),
            how=RECKONED,
            what=N_(
                "Day, twilight or night at the middle of the tow, by the height of the sun's centre there: day above 0°, night below −12°, twilight between."
            ),
            source=N_(
                "The sun's place after Meeus, Astronomical Algorithms, as the library astral has it. The limits are a convention of this archive."
            ),
        ),
        Entry(
            id="rectangle",
            name=N_("Rectangle"),
            keys=("rectangle",),
            how=RECKONED,
            what=N_(
                "The ICES statistical rectangle, half a degree of latitude by one of longitude, that the middle of the tow lies in; where only its beginning is known, the beginning. None outside the grid."
            ),
            source=N_("ICES statistical rectangles."),
        ),
        Entry(
            id="foul",
            name=N_("Foul tow"),
            keys=("foul", "foul_tows"),
            how=LOGGED,
            what=N_(
                "A tow on which gear came fast, was damaged or lost. Rates over grounds are given with these tows and without."
            ),
        ),
    ),
)
