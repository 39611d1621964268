"""What none of it is: the cautions, in one place, for the page that has them all and for wherever a figure needs one."""

from msgspec import Struct

from logbook.model.language import N_
from logbook.render.language import _


class Caution(Struct, frozen=True, kw_only=True):
    """A caution, in English; what shows it translates it.

    Attributes:
        head: What it is about, as a sentence of its own.
        words: The rest.
    """

    head: str
    words: str

    def told(self) -> str:
        """Return it as one paragraph in the language in force."""
        return f"{_(self.head)} {_(self.words)}"


OVERDUE = Caution(
    head=N_("Not a watch on any vessel."),
    words=N_(
        "What stands largest is when a vessel was last heard of; a time expected is reckoned from that word, in fair weather. A vessel that is overdue is a matter for the coastguard, not for these pages."
    ),
)
AGE = Caution(
    head=N_("Not a freshness grade and not a food-safety finding."),
    words=N_("Days old are days. Inspectors, the hygiene plan and local law decide about fish."),
)
HOLD = Caution(
    head=N_("Not stability."),
    words=N_("What lies in which pen is not advice on loading; the vessel's own stability booklet is."),
)
TURNING = Caution(
    head=N_("The latest time to turn is one in fair weather with nothing in hand."),
    words=N_("Weather, ship and crew come first."),
)
NAVIGATION = Caution(head=N_("Not navigation."), words=N_("Tracks, times and chartlets are drawn from what was typed."))
FAST = Caution(
    head=N_("A fast has the ship's position; the gear lay astern."),
    words=N_(
        "Where no mark stands the ground may still be foul. Heaving on a fast has capsized ships. A cable: don't heave, call its owner. Ordnance: don't bring it aboard, call the coastguard."
    ),
)
FOUL_AIR = Caution(
    head=N_("A hold, tank or slush well in which something has gone foul kills."),
    words=N_(
        "It may not smell. Nobody goes in until it is ventilated and tested. If someone lies down there, don't follow: raise the alarm; breathing apparatus only."
    ),
)
ICING = Caution(head=N_("Ice on deck capsizes ships."), words=N_("It is shown before anything else."))
STATUTORY = Caution(
    head=N_("Not the statutory logbook and not a record of rest."),
    words=N_("The skipper, the flag state and the law decide."),
)

CAUTIONS = (OVERDUE, AGE, HOLD, TURNING, NAVIGATION, FAST, FOUL_AIR, ICING, STATUTORY)
"""All of them, in the order they stand on the page."""

IN_SHORT = N_(
    "No clearance: not of stability (her booklet's), the state of the fish (the inspector's) or navigation. Times to turn "
    "are the latest in fair weather with nothing in hand; weather, ship and crew come first."
)
"""What stands below the answers of a command."""
