"""How every figure is reckoned, as the archive tells its readers: words only, the reckoning is elsewhere.

The pages link to each entry by its id, from the head of the column or the name of the figure.
"""

from msgspec import Struct

LOGGED, RECKONED = "logged", "reckoned"


class Entry(Struct, frozen=True, kw_only=True):
    """One figure explained.

    Attributes:
        id: Its place on the page, and its name in links.
        name: As it is called in tables.
        keys: Fields of the records it explains.
        how: Whether it is as a rule logged or reckoned.
        unit: Its unit; empty where it has none.
        what: What it is, and how it comes about.
        formula: The same in one line; empty where nothing is calculated.
        assumed: What is filled in where a log says nothing; empty where nothing is.
        source: Where formula or constant comes from; empty where it is plain arithmetic.
    """

    id: str
    name: str
    keys: tuple[str, ...]
    how: str
    what: str
    unit: str = ""
    formula: str = ""
    assumed: str = ""
    source: str = ""


class Chapter(Struct, frozen=True, kw_only=True):
    """Entries that belong together."""

    id: str
    title: str
    entries: tuple[Entry, ...]


CHAPTERS = (
    Chapter(
        id="of-the-trip",
        title="The trip",
        entries=(
            Entry(
                id="trip",
                name="Trip",
                keys=("id", "vessel", "number", "skipper", "sailed", "sailed_from", "turned_for_home"),
                how=LOGGED,
                what="A trip is one log. Its number or label is the vessel's own. Its name in this archive is the vessel and the date it sailed; a second trip on that date gets a 2.",
            ),
            Entry(
                id="state",
                name="State",
                keys=("state",),
                how=RECKONED,
                what="At sea until the log says that she turned for home; then homeward; landed once it says when she docked. Where the vessel has a later log but this one has no landing, the landing was not logged.",
            ),
            Entry(
                id="last-word",
                name="Last word",
                keys=("last_word", "as_of"),
                how=RECKONED,
                what="The time of the last thing in the log. Figures of a trip that has not docked stand as of then, so the same log always gives the same figures, whatever the day it is read on. Figures of a landed trip stand as of docking.",
            ),
            Entry(
                id="days-at-sea",
                name="Days at sea",
                keys=("days_at_sea",),
                how=RECKONED,
                unit="days of 24 h",
                what="From sailing to docking, or to the last word of a trip that has not docked.",
                formula="(docked − sailed) / 24 h",
            ),
            Entry(
                id="fishing-days",
                name="Days fishing",
                keys=("fishing_days", "tows_per_day", "mean_cycle_h"),
                how=RECKONED,
                unit="days of 24 h",
                what="From the first shot to the last haul. Tows a day are tows over days fishing; the cycle is the mean time from one shot to the next.",
                formula="(last hauled − first shot) / 24 h",
            ),
        ),
    ),
    Chapter(
        id="of-a-tow",
        title="A tow",
        entries=(
            Entry(
                id="tow",
                name="Tow",
                keys=("no", "side", "ground", "net", "pens", "shot", "hauled", "tows"),
                how=LOGGED,
                what="A tow begins when it is shot (brakes on) and ends when heaving begins. Side, net, ground and pen hold from tow to tow until the log gives another; a tow that goes by the one before it is marked as carried.",
            ),
            Entry(
                id="towed",
                name="Towed",
                keys=("duration_h", "towed_h"),
                how=RECKONED,
                unit="hours and minutes",
                what="Time towing. A trip's hours are the sum over the tows whose times are known.",
                formula="hauled − shot",
            ),
            Entry(
                id="distance",
                name="Distance",
                keys=("distance_nm", "distance_by"),
                how=RECKONED,
                unit="nm of 1852 m",
                what="Along the shortest line over the WGS84 ellipsoid from where the net was shot through every position where she turned to where heaving began. A curved tow is longer than that. Without positions, speed times time.",
                formula="sum of the geodesics between the positions, or speed × time towed",
                assumed="Where neither positions nor a speed were logged: the vessel's usual towing speed.",
                source="Karney, C. F. F. (2013): Algorithms for geodesics. Journal of Geodesy 87, 43–55.",
            ),
            Entry(
                id="speed",
                name="Speed",
                keys=("speed_kn",),
                how=RECKONED,
                unit="kn",
                what="Over the ground: distance by positions over time towed. Where there are no positions, as logged.",
                formula="distance / time towed",
            ),
            Entry(
                id="swept",
                name="Swept area",
                keys=("swept_doors_km2", "swept_wings_km2"),
                how=RECKONED,
                unit="km²",
                what="The ground that the gear passed over: between the doors and between the wings, two figures that should not be mixed. Both spreads are the net's, from the fleet file; they are not measured on each tow.",
                formula="distance × door spread; distance × wing spread",
                source="Practice of the ICES trawl surveys (DATRAS swept area, WKSAE-DATRAS 2021); Sparre and Venema, FAO Fisheries Technical Paper 306/1, chapter 13.",
            ),
            Entry(
                id="depth",
                name="Depth",
                keys=("depth_m", "warp_to_depth"),
                how=LOGGED,
                unit="fm, m",
                what="As logged; the middle of a range. A fathom is six feet, 1.8288 m exactly. Warp to depth is the length of warp out over the depth.",
                formula="(shallowest + deepest) / 2; warp / depth",
                source="NIST Special Publication 811 for the units.",
            ),
            Entry(
                id="light",
                name="Light",
                keys=("light",),
                how=RECKONED,
                what="Day, twilight or night at the middle of the tow, by the height of the sun's centre there: day above 0°, night below −12°, twilight between.",
                source="The sun's place after Meeus, Astronomical Algorithms, as the library astral has it. The limits are a convention of this archive.",
            ),
            Entry(
                id="rectangle",
                name="Rectangle",
                keys=("rectangle",),
                how=RECKONED,
                what="The ICES statistical rectangle, half a degree of latitude by one of longitude, that the middle of the tow lies in; where only its beginning is known, the beginning. None outside the grid.",
                source="ICES statistical rectangles.",
            ),
            Entry(
                id="foul",
                name="Foul tow",
                keys=("foul", "foul_tows"),
                how=LOGGED,
                what="A tow on which gear came fast, was damaged or lost. Rates over grounds are given with these tows and without.",
            ),
        ),
    ),
    Chapter(
        id="of-the-catch",
        title="The catch",
        entries=(
            Entry(
                id="kept",
                name="Kept",
                keys=("kept_kg", "undersize_kg", "grades", "catch", "code"),
                how=LOGGED,
                unit="kg, product weight",
                what="What was kept, in the state it was stowed in, as estimated aboard. Baskets, boxes and the like are turned into kilograms by the fleet file's own weights for them. A tow that caught nothing counts as 0; a tow whose catch was not written is not known and left out of totals, which then say so. A catch sorted together with the next tow's stands with that one.",
            ),
            Entry(
                id="put-back",
                name="Put back",
                keys=("put_back_kg",),
                how=LOGGED,
                unit="kg, whole",
                what="What went over the side, as estimated aboard.",
            ),
            Entry(
                id="live-weight",
                name="Live weight",
                keys=("live_kg",),
                how=RECKONED,
                unit="kg, as it left the water",
                what="Product weight times the factor for the species and how it was dressed. A species and state without a published factor has no live weight here; factor 1 is never put in its place.",
                formula="kept × conversion factor",
                assumed="Where the log does not say how fish was dressed: the species' usual state.",
                source="Commission Implementing Regulation (EU) No 404/2011, Annexes XIII to XV, unless the fleet file names another authority.",
            ),
            Entry(
                id="share",
                name="Share",
                keys=("share_percent",),
                how=RECKONED,
                unit="% of what was kept",
                what="The species' part of all that was kept and is known by weight.",
                formula="kept of the species / kept",
            ),
            Entry(
                id="rate",
                name="Catch per hour",
                keys=("kept_kg_per_h", "kept_kg_per_km2", "kept_kg_per_day", "catch_h", "sorted_with"),
                how=RECKONED,
                unit="kg/h",
                what="What was kept over the hours towed, for tows whose catch is known; over a trip or a ground, all of it over all the hours, not a mean of rates. Tows sorted together count together, on the later one. Per day is per 24 hours from first shot to last haul; per km² is between the wings.",
                formula="kept / time towed",
            ),
        ),
    ),
    Chapter(
        id="of-the-age",
        title="Age of the fish",
        entries=(
            Entry(
                id="age",
                name="Days old",
                keys=("ice_days", "oldest_ice_days", "mean_ice_days", "kept_kg_by_day"),
                how=RECKONED,
                unit="days of 24 h",
                what="By the clock, from hauling to docking (or to the last word of a trip that has not docked). The mean is weighted by what was kept.",
                formula="(docked − hauled) / 24 h",
            ),
            Entry(
                id="equivalent-age",
                name="Days old, as if kept at 0 °C",
                keys=("equivalent_ice_days", "oldest_equivalent_ice_days", "mean_equivalent_ice_days", "on_ice"),
                how=RECKONED,
                unit="days at 0 °C",
                what="Fish ages faster where it is warmer. Each stretch of time counts by how fast it ages at its temperature, beside melting ice: on deck until it is under ice, then at the temperature of its pen. The rule is for fresh fish of temperate waters between about −2 and 15 °C.",
                formula="∫ (1 + 0.1 T)² dt, T in °C; 0 at −10 °C and below",
                assumed="Deck: the higher of sea and deck temperature that were logged, else 10 °C. Under ice from when it was logged, else after the trip's usual time, else after the fleet file's hours. A pen without readings: the fleet file's pen temperature.",
                source="Huss, H. H. (1995): Quality and quality changes in fresh fish, FAO Fisheries Technical Paper 348; Ratkowsky, Olley, McMeekin and Ball (1982), Journal of Bacteriology 149, 1–5.",
            ),
            Entry(
                id="limit",
                name="Limit",
                keys=("limit_days", "over_limit_kg"),
                how=LOGGED,
                unit="days at 0 °C",
                what="The fleet's own, from its file; what is over it is told by days as if kept at 0 °C. Ten days, where the file says nothing, is common practice and has no source.",
            ),
        ),
    ),
    Chapter(
        id="of-the-landing",
        title="Passage and landing",
        entries=(
            Entry(
                id="docked",
                name="Docked",
                keys=("docked", "port", "expected", "landing_started", "landing_finished", "landings"),
                how=LOGGED,
                what="As logged. Until then it is expected: from the last word, or from turning for home where that was logged, by the length of the passage. Weather is not in it.",
                formula="last word, or turned for home, + passage",
            ),
            Entry(
                id="passage",
                name="Passage",
                keys=("passage_nm", "passage_h"),
                how=RECKONED,
                unit="nm, hours",
                what="From the last position logged through the shortest of the fleet file's routes to the port, or straight where it has none, at the vessel's steaming speed. Once docked: as it was sailed.",
                formula="sum of the geodesics / steaming speed",
                source="Karney (2013), as for distance.",
            ),
            Entry(
                id="steaming",
                name="Steaming out and home",
                keys=("steam_out_h", "steam_home_h"),
                how=RECKONED,
                unit="hours",
                what="Out: from sailing to the first shot. Home: from turning for home, or from the last haul where that was not logged, to docking.",
                formula="first shot − sailed; docked − turned for home",
            ),
            Entry(
                id="discharge",
                name="Discharge",
                keys=("discharge_h", "discharge_kg_per_h", "turnaround_h"),
                how=RECKONED,
                unit="hours, kg/h",
                what="From the start to the end of landing, and what went ashore over that time. Turnaround is from the end of landing to the vessel's next sailing.",
                formula="landed / (finished − started)",
                assumed="Before landing: the port's usual rate from the fleet file.",
            ),
            Entry(
                id="landed",
                name="Landed",
                keys=("out_turn_kg",),
                how=LOGGED,
                unit="kg",
                what="Over the scale where the log has an out-turn. Where it has none, what was estimated aboard, said to be so.",
            ),
            Entry(
                id="probe",
                name="Temperature at landing",
                keys=("temperatures",),
                how=LOGGED,
                unit="°C",
                what="At the inspector's probe, pen by pen, as logged, beside the fleet file's own limit. It is not a reading of the hold at sea and is not used to reckon age.",
            ),
        ),
    ),
    Chapter(
        id="of-totals",
        title="Totals",
        entries=(
            Entry(
                id="totals",
                name="Totals",
                keys=("hold_full_percent", "incomplete"),
                how=RECKONED,
                what="A total with a gap is the sum of what is known, and says what it leaves out. A total of nothing known is not known; it is never 0. Every figure is rounded for itself, at the end, so a column may differ from its total by what was rounded. Hold full is what was kept over what the pens can take.",
            ),
        ),
    ),
)
"""What is explained, in the order it is read."""

ENTRIES = {entry.id: entry for chapter in CHAPTERS for entry in chapter.entries}
"""Every entry by its id."""
