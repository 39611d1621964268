"""What a skipper sends ashore: the fish in the units it was typed in, when she docks and what she wants."""

from datetime import datetime
from decimal import Decimal

from msgspec import Struct

FISH = "fish"
"""Unit of fish that were counted and not weighed."""


class Counted(Struct, frozen=True, kw_only=True):
    """So many of one unit.

    Attributes:
        number: As typed, added up.
        unit: The unit typed: `basket`, `kg`; `fish` for those that were counted and not weighed.
    """

    number: Decimal
    unit: str


class HailedFish(Struct, frozen=True, kw_only=True):
    """A species and grade of a hail.

    Attributes:
        species: Its name.
        grade: None where none was typed.
        amounts: One for each unit typed, in the order they came.
        kept_kg: What it weighs; None where it was only counted.
    """

    species: str
    grade: str | None
    amounts: tuple[Counted, ...]
    kept_kg: Decimal | None


class HailFigures(Struct, frozen=True, kw_only=True):
    """All that a hail says.

    Attributes:
        vessel: Her name.
        as_of: When it stands so.
        state: at sea, homeward, landed or landing not logged.
        port: Where she lands.
        docked: When she docked, or is expected to.
        expected: True until she has docked.
        kept: Fish by species and grade, most first.
        kept_kg: All that is known by weight; None where nothing is.
        oldest_ice_days: By the clock.
        mean_ice_days: By the clock, by weight.
        oldest_equivalent_ice_days: As if kept at 0 °C.
        sale: The next sale that can be made.
        wants: Words for the quay.
        sails_again: When.
        not_known: Numbers of the tows whose catch is not, or not wholly, known.
        unread: How many tows more the log has that can't be read at all.
    """

    vessel: str
    as_of: datetime
    state: str
    port: str | None
    docked: datetime | None
    expected: bool
    kept: tuple[HailedFish, ...]
    kept_kg: Decimal | None
    oldest_ice_days: float | None
    mean_ice_days: float | None
    oldest_equivalent_ice_days: float | None
    sale: datetime | None
    wants: str | None
    sails_again: datetime | None
    not_known: tuple[int, ...]
    unread: int = 0
