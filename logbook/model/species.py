"""Species of fish: what they are called, how they are dressed, and what that means in live weight."""

from decimal import Decimal
from enum import StrEnum

from msgspec import Struct

from logbook.model.language import N_


class State(StrEnum):
    """How fish is dressed when it is weighed."""

    WHOLE = N_("whole")
    GUTTED = N_("gutted")
    GUTTED_AND_HEADED = N_("gutted and headed")
    HEADED = N_("headed")
    WINGS = N_("wings")
    TAILS = N_("tails")
    FILLETS = N_("fillets")


class Factor(Struct, frozen=True, kw_only=True):
    """Live weight for one of product weight.

    Attributes:
        value: What product weight is multiplied by.
        authority: Whose figure it is.
        year: Of the rule or publication; None where there is none.
    """

    value: Decimal
    authority: str
    year: int | None

    def __str__(self) -> str:
        """Return the factor with its authority, as `1.17 (EU 2011)`."""
        source = self.authority if self.year is None else f"{self.authority} {self.year}"
        return f"{self.value!s} ({source})"


class Alias(Struct, frozen=True, kw_only=True):
    """Another name of a species.

    Attributes:
        name: The name.
        grade: The size grade it means, as `codling` is small cod; None where it is just a name.
    """

    name: str
    grade: str | None


class Species(Struct, frozen=True, kw_only=True):
    """A species or a group of them that is logged as one.

    Attributes:
        name: Everyday English name.
        code: FAO 3-alpha code.
        scientific: Scientific name.
        also: Other names.
        usual_state: How it is dressed where nothing is said.
        grades: Size grades, where the fleet has them.
        factors: State and factor to live weight.
        offered: Factors of national authorities, named in hints and never used by themselves.
    """

    name: str
    code: str | None
    scientific: str | None
    also: tuple[Alias, ...]
    usual_state: State | None
    grades: tuple[str, ...] = ()
    factors: tuple[tuple[State, Factor], ...]
    offered: tuple[tuple[State, Factor], ...]

    def factor(self, state: State | None) -> Factor | None:
        """Return the factor of a state; None where nobody has published one."""
        for of, factor in self.factors:
            if of == state:
                return factor
        return None
