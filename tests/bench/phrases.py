"""What skippers of the bench note down: put together by chance, in plain words and a little Markdown; invented."""

from random import Random

_FIRST = (
    "Good marks at the turn", "Thin showing under the ship", "Clean ground all the way", "Stones in the bag again",
    "Two boats working to the north", "Tide running hard at the turn", "Marks lifted off the bottom at daylight",
    "Slack water and quiet fishing", "Hauled early for the weather", "Fish mostly small here",
    "Best of the *large* came from the deep end", "Doors came up bright", "A bit of weed in the wings",
    "Kept to the hundred fathom line", "Followed the edge round", "Steady feed on the sounder",
    "Bag spilled a little at the rail", "Nothing showing but fish in the cod end", "Old track from last year",
    "Turned short of the *rough* patch", "Wind against the tide", "Heavy swell from the west",
    "Watch changed while towing", "Gulls on the bag before it broke the surface", "Washed decks and gutted dry",
    "Hard bottom for the last mile", "Mud in the chafers", "Warps marked new and even",
    "Seals about the net", "Full moon and poor by night",
)  # fmt: skip
_THEN = (
    "same again next", "will try deeper", "going back over it", "worth remembering in *spring*", "left it after this one",
    "crew gutting till the next haul", "no damage", "shot away at once", "ice going well", "pen levelled and topped",
    "haddock running large", "cod soft from the depth", "more saithe than last time", "kept off the wreck by a mile",
    "shifted half a mile east", "one hand seasick", "glass falling", "glass steady", "fog after midnight", "clear and cold",
)  # fmt: skip
_TRIP = (
    "Lost half a day dodging south of the Saddle.", "A quiet trip with no gear lost.", "Ice held well to the end.",
    "Best fishing was on the last two days.", "Hands worked well, *one new*.", "Sounder needs looking at ashore.",
    "Home early for the Thursday sale.", "Would go back to the same edge at this time of year.",
)  # fmt: skip


def of_tow(chance: Random, fathoms: int) -> str:
    """Return what was noted of a tow."""
    said = chance.choice(_FIRST)
    if chance.random() < 0.3:
        said += f" at {fathoms} fm"
    if chance.random() < 0.5:
        said += f" and {chance.choice(_THEN)}"
    return said + "."


def of_trip(chance: Random) -> str:
    """Return what was noted of a trip."""
    return " ".join(chance.sample(_TRIP, 3))
