"""Hail against out-turn: what was estimated aboard beside what the scale said."""

from decimal import Decimal

from msgspec import Struct

from logbook.model.basis import Basis
from logbook.model.named import ByName


class HailedGrade(Struct, frozen=True, kw_only=True):
    """One grade; differences are out-turn less hail, percent of the hail."""

    hail_kg: Decimal | None
    out_turn_kg: Decimal | None
    difference_kg: Decimal | None
    difference_percent: float | None


class HailedSpecies(Struct, frozen=True, kw_only=True):
    """One entry of `hail`.

    Attributes:
        hail_kg: Kept weight as estimated aboard; None where it is not known.
        out_turn_kg: Over the scale; None where it was not weighed.
        difference_kg: Out-turn less hail.
        difference_percent: That, of the hail.
        within_tolerance: Whether it lies within the fleet's limit, which itself is within; None where one is not known.
        bias_percent: How the vessel's earlier out-turns of the species lay over its hails, at the median; None for fewer than five.
        expected_out_turn_kg: The hail put right by that.
        expected_low_kg: By the lower quartile.
        expected_high_kg: By the upper quartile.
        bias_trips: How many earlier trips tell.
        grades: The same by grade, where any has one.
        basis: What it leaves out.
    """

    hail_kg: Decimal | None
    out_turn_kg: Decimal | None
    difference_kg: Decimal | None
    difference_percent: float | None
    within_tolerance: bool | None
    bias_percent: float | None
    expected_out_turn_kg: float | None
    expected_low_kg: float | None
    expected_high_kg: float | None
    bias_trips: int
    grades: ByName[HailedGrade]
    basis: Basis = ()
