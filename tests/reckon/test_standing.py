"""The rate of catching, and what is aboard."""

import pytest

from logbook.reckon.standing import last_day_kg
from tests.reckon.build import figures, moment

LOG = """\
tows:
  - {shot: 2026-03-05 00:00, hauled: 02:00, catch: {cod: 100 kg}}
  - {shot: 2026-03-07 00:00, hauled: 02:00, catch: {cod: 100 kg}}
  - {shot: 2026-03-08 00:00, hauled: 02:00, catch: {cod: 400 kg}}
  - {shot: 2026-03-08 10:00, hauled: 12:00, catch: {cod: 500 kg}}
  - {shot: 2026-03-08 12:30, hauled: 13:00}
"""


@pytest.mark.parametrize(
    ("at", "kg"),
    [
        ("2026-03-08 13:00", 900),
        ("2026-03-09 02:00", 500),
        ("2026-03-08 01:59", 100),
        ("2026-03-09 12:30", None),
        ("2026-03-12 12:00", None),
    ],
)
def test_the_last_day_is_of_the_tows_hauled_in_it(at: str, kg: float | None) -> None:
    assert last_day_kg(figures(LOG).tows, moment(at)) == kg


def test_the_rate_of_catching_is_the_greater_of_mean_and_last_day() -> None:
    of_pens = [figures(LOG, at=at).landing.choices[2].kept_kg or 0 for at in ("2026-03-08 13:00", "2026-03-07 03:00")]

    assert of_pens[0] == pytest.approx(1100 + 900)
    # 200 kg in 50 h from first shot to last haul are 96 a day; the last day brought 100.
    assert of_pens[1] == pytest.approx(200 + 100)
