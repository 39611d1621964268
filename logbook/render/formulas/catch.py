"""The catch and the totals, explained."""

from logbook.model.language import N_
from logbook.render.formulas.entry import LOGGED, RECKONED, Chapter, Entry

CATCH = Chapter(
    id="of-the-catch",
    title=N_("The catch"),
    entries=(
        Entry(
            id="kept",
            name=N_("Kept"),
            keys=("kept_kg", "kept", "undersize_kg", "grades", "catch", "code"),
            how=LOGGED,
            unit=N_("kg, product weight"),
            what=N_(
                "What was kept, in the state it was stowed in, as estimated aboard. Baskets, boxes and the like are turned into kilograms by the fleet file's own weights for them. A tow that caught nothing counts as 0; a tow whose catch was not written is not known and left out of totals, which then say so. A catch sorted together with the next tow's stands with that one."
            ),
        ),
        Entry(
            id="put-back",
            name=N_("Put back"),
            keys=("put_back_kg",),
            how=LOGGED,
            unit=N_("kg, whole"),
            what=N_("What went over the side, as estimated aboard."),
        ),
        Entry(
            id="live-weight",
            name=N_("Live weight"),
            keys=("live_kg",),
            how=RECKONED,
            unit=N_("kg, as it left the water"),
            what=N_(
                "Product weight times the factor for the species and how it was dressed. A species and state without a published factor has no live weight here; factor 1 is never put in its place."
            ),
            formula=N_("kept × conversion factor"),
            assumed=N_("Where the log does not say how fish was dressed: the species' usual state."),
            source=N_(
                "Commission Implementing Regulation (EU) No 404/2011, Annexes XIII to XV, unless the fleet file names another authority."
            ),
        ),
        Entry(
            id="share",
            name=N_("Share"),
            keys=("share_percent",),
            how=RECKONED,
            unit=N_("% of what was kept"),
            what=N_("The species' part of all that was kept and is known by weight."),
            formula=N_("kept of the species / kept"),
        ),
        Entry(
            id="rate",
            name=N_("Catch per hour"),
            keys=("kept_kg_per_h", "kept_kg_per_km2", "kept_kg_per_day", "catch_h", "sorted_with"),
            how=RECKONED,
            unit="kg/h",
            what=N_(
                "What was kept over the hours towed, for tows whose catch is known; over a trip or a ground, all of it over all the hours, not a mean of rates. Tows sorted together count together, on the later one. Per day is per 24 hours from first shot to last haul; per km² is between the wings."
            ),
            formula=N_("kept / time towed"),
        ),
    ),
)
TOTALS = Chapter(
    id="of-totals",
    title=N_("Totals"),
    entries=(
        Entry(
            id="totals",
            name=N_("Totals"),
            keys=("hold_full_percent", "incomplete"),
            how=RECKONED,
            what=N_(
                "A total with a gap is the sum of what is known, and says what it leaves out. A total of nothing known is not known; it is never 0. Every figure is rounded for itself, at the end, so a column may differ from its total by what was rounded. Hold full is what was kept over what the pens can take."
            ),
        ),
    ),
)
