"""How much rest was logged, against the least hours of a convention: reported, never judged."""

from datetime import datetime

from msgspec import Struct

from logbook.model.basis import Basis


class RestFigures(Struct, frozen=True, kw_only=True):
    """One entry of `rest`: a hand or a watch.

    Attributes:
        worst_24h_rest_h: Least rest in any 24 hours; None where no such window fits.
        worst_24h_from: When that window begins.
        worst_7d_rest_h: Least rest in any seven days; None where no such window fits.
        worst_7d_from: When that window begins.
        longest_unbroken_h: The longest rest without a break.
        periods_a_day: Mean number of periods of rest in 24 hours.
        c188_hours_met: False where a known limit of ILO C188 Art. 14 fails, else None where one is not known, else True.
        basis: What it was reckoned from where that is no record.
    """

    worst_24h_rest_h: float | None
    worst_24h_from: datetime | None
    worst_7d_rest_h: float | None
    worst_7d_from: datetime | None
    longest_unbroken_h: float | None
    periods_a_day: float | None
    c188_hours_met: bool | None
    basis: Basis = ()
