"""Every sentence that tells how a figure came about or what a sum leaves out, as records hold it: in English, values in braces.

Whoever reckons a figure puts the values in; whoever shows it finds by the text which sentence it was, and says that in the language
of the page. Names in braces tell what stands there: `which` tows by number, `lines` of a log, `why` another of these sentences,
numbers, or names as they were typed.
"""

from logbook.model.language import N_

# Which tows, which lines.
TOW = N_("tow {nos}")
TOWS = N_("tows {nos}")
LINE = N_("line {nos}")
LINES = N_("lines {nos}")
LINES_AND_MORE = N_("lines {nos} and {n} more")

# What sums over a trip leave out.
OF_TOWS = N_("{which}: {why}")
OF_LINES = N_("{lines}: {why}")
TOW_NOT_READ = N_("a tow that can't be read")
TOWS_NOT_READ = N_("tows that can't be read")
AFTER_DOCKING = N_("later than the docking")
NO_CATCH = N_("catch not logged")
SORTED_WITH_UNKNOWN = N_("sorted with a tow whose catch is not known")
SORTED_WITH_NONE = N_("sorted with a next tow that is not there")
STILL_DOWN = N_("gear still down")
NO_HAULED = N_("no hauled time")
NO_SHOT = N_("no shot time")
HAULED_BEFORE_SHOT = N_("hauled before it was shot")
CATCH_NOT_READ = N_("catch can't be read")
CATCH_PART_NOT_READ = N_("part of the catch can't be read")
CATCH_PART_COUNTED = N_("part of the catch counted, not weighed")
NO_PUT_BACK = N_("put back not logged")
PUT_BACK_NOT_READ = N_("put back can't be read")
PUT_BACK_PART_COUNTED = N_("part of what was put back counted, not weighed")
NO_DISTANCE = N_("no distance")
NO_SPREAD = N_("no swept area, the spread of the net is not known")
NO_FACTOR = N_("live weight without {species}: no published factor")
FACTOR_OFFERED = N_("the fleet file could state {factor}")

# What one figure leaves out.
WITHOUT_CATCH = N_("without {which}, catch not known")
WITHOUT_WHOLE_CATCH = N_("without {which}, whose catch is not all told")
WITHOUT_ICE = N_("without the ice of {which}, catch not known")
WITHOUT_TEMPERATURE = N_("without {which}, no temperature")
WITHOUT_WIND = N_("without {which}, no wind")
WITHOUT_HOURS = N_("without {which}, hours not known")
WITHOUT_LOST_TOW = N_("without 1 tow that can't be read")
WITHOUT_LOST_TOWS = N_("without {n} tows that can't be read")
WITHOUT_COUNTED = N_("without fish that was counted, not weighed")
WITHOUT_ENTRIES = N_("without {n} of its entries, which can't be read")
WITHOUT_PLACELESS_TOW = N_("without 1 tow of those weeks that has no position")
WITHOUT_PLACELESS_TOWS = N_("without {n} tows of those weeks that have no position")
TOO_FEW_TRIPS = N_("not told: {n} of the {enough} earlier trips that it takes")
NO_RATE = N_("the rate of catching is not known, left out")
NO_DISCHARGE = N_("the time to discharge is not known, left out")
NO_ICE_TIME = N_("how long the ice lasts is not known, left out")
NO_ROOM = N_("what the hold takes is not known, left out")
NO_HOLD_MELT = N_("hold melt not known, left out")
NEVER_MENDED = N_("since the first log: none says that it was changed or mended")
MENDED_AT_NO_TIME = N_("a change or mending whose time is not known is left out")
MENDED_NO_NET = N_("a change or mending that names no net is left out")
NO_HOURS = N_("tows whose hours are not known are left out")
REST_LEFT_OUT = N_("rest with no beginning or no end left out: line {n} of {file}")
ALL_HANDS_LEFT_OUT = N_("all hands with no beginning or no end left out: line {n} of {file}")

# Why there is no passage home.
NOT_KNOWN = N_("not known: {why}")
NO_PORT = N_("no port is known")
NO_PLACE_OF_PORT = N_("the fleet file does not say where {port} lies")
NO_POSITION = N_("no position with a time is logged")
NO_SPEED = N_("the steaming speed is not known")

# What stands for the grade of fish that has none.
UNGRADED = N_("ungraded")

# What the vessel's own share goes by.
BOAT = N_("boat")

# What was assumed, carried on or otherwise come by.
CARRIED = N_("carried")
FROM_FACTORS = N_("reckoned: × {factors}")
USUAL_STATE = N_("usual state {states}")
USUAL_SPEED = N_("assumed: usual speed")
USUAL_SPEED_OF = N_("assumed: usual speed for {which}")
HOME_PORT = N_("assumed: the home port")
PORT_SAILED_FROM = N_("assumed: the port she sailed from")
PORT_RATE = N_("assumed: the port's usual rate")
STRAIGHT = N_("assumed: straight, no route to the port is known")
POOR_WEATHER_SPEED = N_("assumed: {part} of the steaming speed")
NOT_BEFORE_NOW = N_("assumed: not before these figures")
STILL_ON_DECK = N_("assumed: not before these figures, still on deck then")
STOWED_USUALLY = N_("assumed: {hours} h after hauling, the usual time for this fleet")
STOWED_BY_MEDIAN = N_("assumed: {hours} h after hauling, the trip's median time")
STOWED_WITH = N_("assumed: with tow {n}, sorted together")
HAULED_BEFORE_STOWED = N_("assumed: hauled {hours} h before it was stowed")
HAULED_EARLY = N_("assumed: hauled as early as can be, where no time is known")
UNDER_ICE = N_("assumed: when some of it was under ice")
FISH_NOT_KNOWN = N_("assumed: there is fish of tows whose catch is not known")
DECK = N_("assumed: {degrees} °C on deck")
HOLD = N_("assumed: {degrees} °C in the hold")
PENS = N_("assumed: {degrees} °C in pens without a reading")
PEN = N_("assumed: {degrees} °C in {pen}")
PEN_OUTSIDE = N_("doubtful: {pen} is outside -2 to 15 °C, where the rule holds")
SEA = N_("assumed: a sea of {degrees} °C")
FISH_TO_ICE = N_("assumed: 1 kg of ice with {fish} kg of fish for {which}")
FISH_TO_COME = N_("assumed: 1 kg of ice with {fish} kg of fish to come")
WATCH_BILL = N_("from the watch bill, not a record")


def every() -> tuple[str, ...]:
    """Return all the sentences, in the order they stand here."""
    return tuple(text for name, text in globals().items() if name.isupper() and isinstance(text, str))
