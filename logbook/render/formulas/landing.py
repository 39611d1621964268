"""The passage and the landing, explained."""

from logbook.model.language import N_
from logbook.render.formulas.entry import LOGGED, RECKONED, Chapter, Entry

LANDING = Chapter(
    id="of-the-landing",
    title=N_("Passage and landing"),
    entries=(
        Entry(
            id="docked",
            name=N_("Docked"),
            keys=("docked", "port", "expected", "landing_started", "landing_finished", "landings"),
            how=LOGGED,
            what=N_(
                "As logged. Until then it is expected: from the last word, or from turning for home where that was logged, by the length of the passage. Weather is not in it."
            ),
            formula=N_("last word, or turned for home, + passage"),
        ),
        Entry(
            id="passage",
            name=N_("Passage"),
            keys=("passage_nm", "passage_h"),
            how=RECKONED,
            unit=N_("nm, hours"),
            what=N_(
                "From the last position logged through the shortest of the fleet file's routes to the port, or straight where it has none, at the vessel's steaming speed. Once docked: as it was sailed."
            ),
            formula=N_("sum of the geodesics / steaming speed"),
            source=N_("Karney (2013), as for distance."),
        ),
        Entry(
            id="steaming",
            name=N_("Steaming out and home"),
            keys=("steam_out_h", "steam_home_h"),
            how=RECKONED,
            unit=N_("hours"),
            what=N_(
                "Out: from sailing to the first shot. Home: from turning for home, or from the last haul where that was not logged, to docking."
            ),
            formula=N_("first shot − sailed; docked − turned for home"),
        ),
        Entry(
            id="discharge",
            name=N_("Discharge"),
            keys=("discharge_h", "discharge_kg_per_h", "turnaround_h"),
            how=RECKONED,
            unit=N_("hours, kg/h"),
            what=N_(
                "From the start to the end of landing, and what went ashore over that time. Turnaround is from the end of landing to the vessel's next sailing."
            ),
            formula=N_("landed / (finished − started)"),
            assumed=N_("Before landing: the port's usual rate from the fleet file."),
        ),
        Entry(
            id="landed",
            name=N_("Landed"),
            keys=("out_turn_kg",),
            how=LOGGED,
            unit="kg",
            what=N_(
                "Over the scale where the log has an out-turn. Where it has none, what was estimated aboard, said to be so."
            ),
        ),
        Entry(
            id="probe",
            name=N_("Temperature at landing"),
            keys=("temperatures",),
            how=LOGGED,
            unit="°C",
            what=N_(
                "At the inspector's probe, pen by pen, as logged, beside the fleet file's own limit. It is not a reading of the hold at sea and is not used to reckon age."
            ),
        ),
    ),
)

TURNING = Chapter(
    id="of-turning",
    title=N_("Turning for home"),
    entries=(
        Entry(
            id="turning",
            name=N_("Turn for home by"),
            keys=("turn_for_home_by", "bound_by", "turn_for_home_by_poor_weather", "last_shot_by"),
            how=RECKONED,
            what=N_(
                "The latest time to turn so that none of three things comes first: the first fish at the limit before all that will be aboard is ashore, the loose ice gone before docking, the hold full. In poor weather the same at the vessel's speed in it, else at 0.7 of her steaming speed. The last shot is a mean tow and half an hour before. It is the latest in fair weather with nothing in hand; weather, ship and crew come first."
            ),
            formula=N_("earliest of (limit reached − discharge − passage), (ice gone − passage), (hold full)"),
            assumed=N_("Fish goes on coming at the greater of the trip's mean per day and the last 24 hours."),
        ),
        Entry(
            id="sales",
            name=N_("Sales that can be made"),
            keys=("sales", "choices"),
            how=RECKONED,
            what=N_(
                "A sale can be made when all fish is ashore as long before it as the fleet file asks. On turning now or later: when she would dock, with how much fish and ice, how old the oldest would be, and which sale that makes."
            ),
            formula=N_("docked + aboard / rate of discharge ≤ sale − all ashore before"),
        ),
    ),
)
