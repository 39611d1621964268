"""Out-turn, money, gear, rest and weather, explained."""

from logbook.model.language import N_
from logbook.render.formulas.entry import LOGGED, RECKONED, Chapter, Entry

OUT_TURN = Chapter(
    id="of-the-out-turn",
    title=N_("Hail and out-turn"),
    entries=(
        Entry(
            id="hail",
            name=N_("Hail"),
            keys=("hail_kg", "bias_trips"),
            how=LOGGED,
            unit="kg",
            what=N_("The kept weight as it was estimated aboard, by species and grade."),
        ),
        Entry(
            id="difference",
            name=N_("Difference"),
            keys=("difference_kg", "difference_percent", "within_tolerance"),
            how=RECKONED,
            unit=N_("kg, % of the hail"),
            what=N_(
                "What the scale said less the hail, and that in percent of the hail. Whether it lies within the fleet file's tolerance, by default 10 %; exactly on the limit is within. The base here is the hail: base and margins are for the rules in force."
            ),
            formula=N_("(out-turn \u2212 hail) / hail \u00d7 100"),
            source=N_("Council Regulation (EC) No 1224/2009, Article 14 (10 %); it does not say of which of the two."),
        ),
        Entry(
            id="bias",
            name=N_("How her hails lie"),
            keys=("bias_percent", "expected_out_turn_kg", "expected_low_kg", "expected_high_kg"),
            how=RECKONED,
            unit="%, kg",
            what=N_(
                "How the vessel's out-turns of a species lay over her hails on her earlier landed trips, at the median, and what that makes of this trip's hail, with a range from the lower to the upper quartile. Only trips before this one; fewer than five say nothing. It is never put into the hail that is sent."
            ),
            formula=N_("(median of out-turn / hail \u2212 1) \u00d7 100; hail \u00d7 quartile"),
        ),
    ),
)
MONEY = Chapter(
    id="of-the-money",
    title=N_("Money"),
    entries=(
        Entry(
            id="gross",
            name=N_("Gross"),
            keys=("lines", "unpriced", "unweighed", "gross", "gross_per_day_at_sea", "mean_price_per_kg"),
            how=RECKONED,
            unit=N_("the fleet's currency"),
            what=N_(
                "Weight over the scale times the price that was logged for it, species by species, grade by grade, lot by lot, each value rounded to the last coin, halves away from nought; then added up. Fish without a price, and a price without a weight over the scale, are left out and named; nothing is guessed."
            ),
            formula=N_("\u03a3 weight \u00d7 price"),
            source=N_("Rounding as in Council Regulation (EC) No 1103/97, Article 5."),
        ),
        Entry(
            id="settlement",
            name=N_("Settlement"),
            keys=("expenses", "net", "settlement"),
            how=RECKONED,
            unit=N_("the fleet's currency"),
            what=N_(
                "Gross less the expenses logged; of that the boat's share first, the rest by the number of shares each has. The parts add up to the whole to the last coin: what rounding leaves goes to those who lost most by it."
            ),
            formula=N_("net = gross \u2212 expenses; part = net \u00d7 shares / all shares"),
        ),
        Entry(
            id="fuel",
            name=N_("Fuel for a tonne"),
            keys=("fuel_litres_per_tonne",),
            how=RECKONED,
            unit="l/t",
            what=N_(
                "Fuel loaded less what was left at or after the last haul, over the tonnes put ashore; where both were logged in litres."
            ),
            formula=N_("(loaded \u2212 left) / landed"),
        ),
    ),
)
GEAR = Chapter(
    id="of-the-gear",
    title=N_("Gear and fasts"),
    entries=(
        Entry(
            id="gear-since",
            name=N_("Hours since mended"),
            keys=("towed_h_since_mended", "tows_since_mended", "mended_at", "damage", "time_lost_h", "fasts"),
            how=RECKONED,
            unit=N_("hours"),
            what=N_(
                "Hours towed with a net, the doors or the warps over the vessel's trips since the log said that they were changed, mended or lost. Time lost is what the log says that mending took."
            ),
            formula=N_("\u03a3 (hauled \u2212 shot)"),
            assumed=N_("Of a vessel with one net, tows that name none were made with it."),
        ),
        Entry(
            id="fast",
            name=N_("Fast"),
            keys=("fast",),
            how=LOGGED,
            what=N_(
                "Where gear came fast: the ship's position where one was typed, else the track of the tow. The gear lay astern. Where no mark stands the ground may still be foul."
            ),
        ),
    ),
)
REST = Chapter(
    id="of-rest",
    title=N_("Rest"),
    entries=(
        Entry(
            id="rest",
            name=N_("Rest"),
            keys=(
                "worst_24h_rest_h",
                "worst_24h_from",
                "worst_7d_rest_h",
                "worst_7d_from",
                "longest_unbroken_h",
                "periods_a_day",
                "c188_hours_met",
            ),
            how=RECKONED,
            unit=N_("hours"),
            what=N_(
                "The least rest in any 24 hours and in any seven days, of every window that fits between sailing and the end of landing, not of calendar days. Hours with no entry count as work. From the watch bill, less the time of all hands, it is no record. It is reported, not judged: the skipper, the flag state and the law decide. The hours are for vessels out for more than three days."
            ),
            formula=N_("least rest in a rolling window; at least 10 h in 24 h and 77 h in 7 days"),
            source=N_("ILO Work in Fishing Convention, 2007 (No. 188), Article 14(1)(b)."),
        ),
    ),
)
WEATHER = Chapter(
    id="of-the-weather",
    title=N_("Weather and light"),
    entries=(
        Entry(
            id="force",
            name=N_("Wind force"),
            keys=("hours_by_force", "kept_kg_per_h_by_force", "worst_force", "worst_sea"),
            how=RECKONED,
            unit=N_("Beaufort"),
            what=N_(
                "A tow's own wind, else that of the last look at the weather before its middle, not over twelve hours old. Of two forces the higher counts. Catch per hour is the total kept over the total hours of the tows whose catch is known."
            ),
            source=N_("WMO No. 306, code tables 1100 (wind) and 3700 (sea)."),
        ),
        Entry(
            id="icing",
            name=N_("Ice on deck"),
            keys=("icing", "icing_on_deck", "icing_on_deck_at"),
            how=LOGGED,
            what=N_("The worst that was logged on the trip, and what the last look says. Ice on deck capsizes ships."),
        ),
        Entry(
            id="by-light",
            name=N_("By light"),
            keys=("hours_by_light", "kept_kg_per_h_by_light"),
            how=RECKONED,
            unit=N_("hours, kg/h"),
            what=N_(
                "Hours towed, and what was kept for each of them, in daylight, twilight and the dark, by the sun's altitude at the middle of a tow."
            ),
        ),
    ),
)
