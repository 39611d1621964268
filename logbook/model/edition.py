"""For whom an archive is published, and what they are shown."""

from datetime import timedelta

from msgspec import Struct

OFFICE, CREW, PUBLIC = "office", "crew", "public"
EDITIONS = (OFFICE, CREW, PUBLIC)

EXACT, RECTANGLE, GROUND = "exact", "rectangle", "ground"


class Policy(Struct, frozen=True, kw_only=True):
    """What an edition shows; what it does not show is in none of its files.

    Attributes:
        name: office, crew or public.
        money: Prices, gross, settlement.
        problems: What is wrong in the logs, and what their files are called.
        margin: How hails lie beside the scale.
        rest: Hours of rest, watches and when all hands were turned to.
        skippers: Names of skippers.
        crews: Names of everybody else aboard.
        words: Free text: remarks, damage, what a fast is, what is wanted on the quay.
        put_back: What was put back, and what was kept undersize.
        turning: The latest time to turn for home, and the choices.
        positions: exact, rectangle or ground.
        held_back: So long after a trip's last word nothing tells where its tows were.
        fasts: Where gear came fast.
    """

    name: str
    money: bool
    problems: bool
    margin: bool
    rest: bool
    skippers: bool
    crews: bool
    words: bool
    put_back: bool
    turning: bool
    positions: str
    held_back: timedelta
    fasts: bool

    @property
    def gear(self) -> bool:
        """Tell whether anything is shown of the gear over all trips."""
        return self.words or self.fasts
