"""Tows sorted together: their time, their bottom, their age."""

import pytest

from logbook.reckon.together import sorted_together, still_waiting
from tests.read.logs import FLEET, fleet, trip
from tests.reckon.build import HEAD, figures

THREE = """\
tows:
  - {shot: 18:00, hauled: 19:00, catch: with next}
  - {shot: 20:00, hauled: 21:00, catch: with next}
  - {shot: 22:00, hauled: 23:00, catch: {cod: 300 kg}}
"""


def test_several_in_a_row_go_to_the_last() -> None:
    tows = trip(HEAD + THREE).tows

    assert sorted_together(tows) == ((), (), (0, 1, 2))
    assert still_waiting(tows) == ()
    assert still_waiting(tows[:2]) == tows[:2]
    assert still_waiting(()) == ()


def test_the_rate_is_over_all_their_hours_and_the_fish_as_old_as_its_oldest() -> None:
    made = figures(THREE + "landed: 2026-03-09 19:00, Port Kerrin\n")

    assert [tow.kept_kg_per_h for tow in made.tows] == [None, None, pytest.approx(100)]
    assert made.tows[2].sorted_with == (1, 2)
    assert made.totals.kept_kg_per_h == pytest.approx(100)
    assert made.age.oldest_ice_days == made.age.mean_ice_days == pytest.approx(5)
    assert dict(made.age.kept_kg_by_day) == {"5": 300}


def test_the_bottom_they_swept_counts_together() -> None:
    of = fleet(FLEET.replace("steaming speed", "towing speed: 3 kn\n    steaming speed"))
    made = figures(THREE.replace("catch:", "net: rockhopper, catch:"), of=of)

    swept = sum(tow.swept_wings_km2 or 0 for tow in made.tows)
    assert made.tows[2].kept_kg_per_km2 == pytest.approx(300 / swept)


def test_where_one_time_is_not_known_there_is_no_rate() -> None:
    made = figures(THREE.replace("hauled: 21:00, ", ""))

    assert made.tows[2].kept_kg_per_h is None
    assert made.totals.kept_kg_per_h is None
    assert made.totals.kept_kg == 300


def test_tows_whose_next_is_not_there_or_not_known_are_named() -> None:
    waiting = figures(THREE.rsplit("  - ", 1)[0])
    unknown = figures(THREE.replace(", catch: {cod: 300 kg}", ""))

    assert waiting.totals.incomplete == ("tows 1–2: sorted with a next tow that is not there",)
    assert waiting.age.oldest_ice_days is not None
    assert "tows 1–2: sorted with a tow whose catch is not known" in unknown.totals.incomplete
    assert unknown.totals.kept_kg is None


def test_where_together_they_caught_nothing_there_is_no_fish() -> None:
    made = figures(THREE.replace("{cod: 300 kg}", "none"))

    assert made.age.oldest_ice_days is None
    assert made.totals.kept_kg == 0
