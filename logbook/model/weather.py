"""How the weather and the light were, and what was caught in them."""

from datetime import datetime

from msgspec import Struct, field

from logbook.model.basis import Basis
from logbook.model.named import ByName


class WeatherFigures(Struct, frozen=True, kw_only=True):
    """The `weather` section.

    Attributes:
        hours_by_force: Beaufort force to hours towed in it.
        kept_kg_per_h_by_force: Force to kept over hours of the tows whose catch is known.
        worst_force: The highest force logged; None where none was.
        worst_sea: The highest sea state logged; None where none was.
        icing: The worst icing on deck that was logged: none, light, moderate or severe; None where none was told of.
        icing_on_deck: What the last look that tells of icing says, where there is some; else None.
        icing_on_deck_at: When that was.
        hours_by_light: day, twilight and night to hours towed.
        kept_kg_per_h_by_light: The same for the catch.
        basis: What it leaves out.
    """

    hours_by_force: ByName[float] = field(default_factory=ByName)
    kept_kg_per_h_by_force: ByName[float | None] = field(default_factory=ByName)
    worst_force: int | None = None
    worst_sea: int | None = None
    icing: str | None = None
    icing_on_deck: str | None = None
    icing_on_deck_at: datetime | None = None
    hours_by_light: ByName[float] = field(default_factory=ByName)
    kept_kg_per_h_by_light: ByName[float | None] = field(default_factory=ByName)
    basis: Basis = ()
