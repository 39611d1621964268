"""Sums over the fleet."""

from datetime import UTC, datetime
from decimal import Decimal

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import FleetFigures
from logbook.reckon.fleet import reckon_fleet, season
from tests.read.logs import FLEET, fleet
from tests.reckon.build import reckoned

A = """\
vessel: Solan Bright
sailed: 2026-01-04 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 20:00, ground: The Saddle, catch: {cod: 100 kg, haddock: 20 kg}, put back: {skate: 3 kg}}
  - {shot: 21:00, hauled: 23:00, ground: the saddle, catch: {cod: 20 kg}, fast: yes}
landed: {docked: 2026-01-10 09:00, port: Port Kerrin, out-turn: {cod: {large: 70 kg, small: 55 kg}, haddock: lots}}
"""
B = """\
vessel: solan bright
sailed: 2026-03-04 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 20:00, ground: Odd Hole, catch: with next}
  - {shot: 21:00, hauled: 23:00, ground: Odd Hole, catch: {haddock: 80 kg}}
  - {shot: 2026-03-05 01:00, hauled: 03:00, ground: Odd Hole, catch: with next, damage: wing}
  - {shot: 04:00, hauled: 06:00, ground: Odd Hole, catch: {haddock: 40 kg}}
  - {shot: 08:00, hauled: 09:00, pen: P1}
landed: 2026-03-10 09:00, Port Kerrin
"""
C = """\
vessel: Other
sailed: 2026-03-12 05:30, Port Kerrin
tows:
  - {shot: 10:00, hauled: 11:00}
  - {shot: 18:00, hauled: 20:00, ground: The Saddle, catch: none}
  - {shot: 21:00, ground: The Saddle}
"""
ALL = reckoned(A, B, C)


@given(st.permutations(ALL))
@settings(max_examples=6)
def test_the_order_of_trips_changes_nothing(trips: list[Reckoned]) -> None:
    made = reckon_fleet(trips, fleet())
    usual = reckon_fleet(ALL, fleet())

    assert made == usual
    assert list(made.species) == list(usual.species)
    assert list(made.vessels) == list(usual.vessels)


def test_a_vessel_is_one_whatever_the_case_and_has_its_days() -> None:
    made = reckon_fleet(ALL, fleet())

    own = made.vessels["Solan Bright"]
    assert (own.trips, own.tows, own.foul_tows, own.kept_kg) == (2, 7, 2, 260)
    assert own.days_at_sea == pytest.approx(12 + 7 / 24)


def test_catch_per_hour_is_total_over_total_of_what_is_known() -> None:
    made = reckon_fleet(ALL, fleet())

    # By hand: 140 kg in 4 h and 120 kg in 8 h; the last tow's catch is not known, its hour does not count.
    assert made.vessels["Solan Bright"].kept_kg_per_h == pytest.approx(260 / 12)
    # Without the fast of 20 kg in 2 h, and without the 40 kg in 4 h of which one tow was damaged.
    assert made.vessels["Solan Bright"].kept_kg_per_h_clean == pytest.approx((120 + 80) / (2 + 4))
    assert made.grounds["The Saddle"].kept_kg_per_h == pytest.approx(140 / 6)
    assert made.grounds["The Saddle"].kept_kg_per_h_clean == pytest.approx(120 / 4)
    assert made.grounds["Odd Hole"].days_at_sea is None


def test_a_species_rate_is_over_all_hours_with_a_known_catch() -> None:
    cod = reckon_fleet(ALL, fleet()).species["cod"]

    assert (cod.tows, cod.trips, cod.kept_kg, cod.towed_h) == (2, 1, 120, 4)
    assert cod.kept_kg_per_h == pytest.approx(120 / 14)
    assert cod.kept_kg_per_h_clean == pytest.approx(100 / 8)
    assert reckon_fleet(ALL, fleet()).species["skate"].kept_kg is None


def test_parts_add_up_to_the_whole() -> None:
    made = reckon_fleet(ALL, fleet())

    for figure in ("kept_kg", "put_back_kg", "live_kg"):
        vessels = sum(getattr(group, figure) or 0 for group in made.vessels.values())
        species = sum(getattr(group, figure) or 0 for group in made.species.values())
        assert vessels == species


def test_landings_are_as_weighed_else_as_hailed_by_month_without_holes() -> None:
    made = reckon_fleet(ALL, fleet())

    assert [(trip.weighed, dict(trip.species)) for trip in made.landed] == [
        (True, {"cod": Decimal(125)}),
        (False, {"haddock": Decimal(120)}),
    ]
    assert {month: dict(fish) for month, fish in made.landed_by_month.items()} == {
        "2026-01": {"cod": 125},
        "2026-02": {},
        "2026-03": {"haddock": 120},
    }
    assert list(made.seasons) == ["2026"]


def test_a_month_end_at_new_year_has_no_hole() -> None:
    trips = reckoned(A, A.replace("2026-01-04", "2025-11-04").replace("2026-01-10", "2025-11-10"))

    assert list(reckon_fleet(trips, fleet()).landed_by_month) == ["2025-11", "2025-12", "2026-01"]


def test_nothing_gives_nothing() -> None:
    made = reckon_fleet((), fleet())

    assert (len(made.vessels), len(made.species), made.landed, len(made.landed_by_month)) == (0, 0, (), 0)


@pytest.mark.parametrize(
    ("docked", "starts", "name"),
    [
        ("2026-01-01", (1, 1), "2026"),
        ("2025-12-31", (1, 1), "2025"),
        ("2026-08-31", (9, 1), "2025–26"),
        ("2026-09-01", (9, 1), "2026–27"),
        ("2099-09-01", (9, 1), "2099–00"),
    ],
)
def test_a_season_is_the_year_or_both_its_years(docked: str, starts: tuple[int, int], name: str) -> None:
    of = replace(fleet(FLEET), season_start=starts)

    assert season(datetime.fromisoformat(docked).replace(tzinfo=UTC), of) == name


def of(*logs: str) -> FleetFigures:
    return reckon_fleet(reckoned(*logs), fleet())


def log(sailed: str, docked: str | None, tows: str = "", landed: str = "", vessel: str = "Solan Bright") -> str:
    """Return a whole log; `tows` are its lines, `landed` what stands beside the docking."""
    end = f"landed: {{docked: {docked}, port: Port Kerrin{landed}}}\n" if docked else ""
    lines = "".join(f"  - {{{line}}}\n" for line in tows.splitlines())
    return f"vessel: {vessel}\nsailed: {sailed}, Port Kerrin\n" + (f"tows:\n{lines}" if lines else "") + end


@pytest.mark.parametrize(
    "docked",
    ["2020-12-31", "2021-01-03", "2021-01-04", "2024-12-30", "2025-12-28", "2025-12-29", "2026-01-01", "2027-01-01"],
)
def test_a_week_is_that_of_the_standard_and_a_month_that_of_the_calendar(docked: str) -> None:
    # ISO 8601 week dates, as the C library's strftime has them.
    day = datetime.fromisoformat(docked)
    made = of(log(f"{day.year - 1}-11-04 05:30", f"{docked} 09:00"))

    assert list(made.weeks) == [day.strftime("%G-W%V")]
    assert list(made.months) == [docked[:7]]


def test_weeks_months_and_seasons_are_of_docking_and_stand_in_order() -> None:
    made = of(
        log("2026-02-27 05:30", "2026-03-02 09:00", "shot: 18:00, hauled: 20:00, catch: {cod: 10 kg}"),
        log("2026-02-20 05:30", "2026-02-26 09:00", "shot: 18:00, hauled: 19:00, catch: {cod: 30 kg}"),
        log("2025-12-20 05:30", "2026-01-02 09:00", "shot: 18:00, hauled: 19:00, catch: {cod: 5 kg}"),
        log("2026-03-20 05:30", None, "shot: 18:00, hauled: 19:00, catch: {cod: 70 kg}"),
    )

    assert {name: group.kept_kg for name, group in made.weeks.items()} == {
        "2026-W01": 5,
        "2026-W09": 30,
        "2026-W10": 10,
    }
    assert {name: group.kept_kg for name, group in made.months.items()} == {"2026-01": 5, "2026-02": 30, "2026-03": 10}
    assert list(made.months) == ["2026-01", "2026-02", "2026-03"]
    assert list(made.weeks) == ["2026-W01", "2026-W09", "2026-W10"]
    assert (made.seasons["2026"].trips, made.seasons["2026"].kept_kg) == (3, 45)


def test_rectangles_are_those_of_the_tows() -> None:
    # ICES statistical rectangles: rows of half a degree from 36°N, columns of a degree from 44°W: 58°50'N 15°30'W is 46D4.
    made = of(
        log(
            "2026-03-04 05:30",
            "2026-03-08 09:00",
            "shot: 18:00, hauled: 20:00, from: 58 50N 015 30W, catch: {cod: 10 kg}\n"
            "shot: 21:00, hauled: 23:00, from: 58 50N 015 30W, fast: yes, catch: {cod: 2 kg}\n"
            "shot: 2026-03-05 01:00, hauled: 02:00, from: 59 10N 014 30W, catch: nil\n"
            "shot: 04:00, hauled: 05:00, catch: {cod: 99 kg}",
        )
    )

    assert {name: (group.tows, group.kept_kg) for name, group in made.rectangles.items()} == {
        "46D4": (2, 12),
        "47D5": (1, 0),
    }
    assert made.rectangles["46D4"].kept_kg_per_h == pytest.approx(3)
    assert made.rectangles["46D4"].kept_kg_per_h_clean == pytest.approx(5)


def test_light_has_hours_and_catch_of_its_own() -> None:
    night = "from: 58 50N 015 30W, catch: {cod: 30 kg}"
    made = of(
        log(
            "2026-03-04 05:30",
            "2026-03-08 09:00",
            f"shot: 2026-03-05 00:00, hauled: 02:00, {night}\nshot: 12:00, hauled: 13:00, {night}\nshot: 15:00, hauled: 16:00",
        )
    )

    group = made.vessels["Solan Bright"]
    assert dict(group.hours_by_light) == {"day": 1.0, "night": 2.0}
    assert dict(group.kept_kg_per_h_by_light) == {"day": 30.0, "night": 15.0}
    assert dict(made.species["cod"].kept_kg_per_h_by_light) == {"day": 30.0, "night": 15.0}


def test_gear_down_at_night_has_no_hours_there() -> None:
    made = of(log("2026-03-04 05:30", None, "shot: 2026-03-05 00:00, from: 58 50N 015 30W"))

    assert dict(made.vessels["Solan Bright"].hours_by_light) == {}


def test_out_turn_age_and_gross_are_of_the_trips_that_tell_them() -> None:
    made = of(
        log(
            "2026-01-04 06:00",
            "2026-01-06 20:00",
            "shot: 2026-01-04 18:00, hauled: 20:00, catch: {cod: 100 kg}",
            ", out-turn: {cod: 90 kg}, prices: {cod: 3.50/kg}",
        ),
        log("2026-02-04 06:00", "2026-02-05 20:00", "shot: 2026-02-04 18:00, hauled: 20:00, catch: {cod: 300 kg}"),
        log("2026-03-04 06:00", None, "shot: 2026-03-04 18:00, hauled: 20:00, catch: {cod: 900 kg}"),
    )

    own = made.vessels["Solan Bright"]
    assert (own.out_turn_kg, own.gross) == (90, 315)
    # By hand: 100 kg two days old and 300 kg a day old at docking; the fish still at sea does not count.
    assert own.mean_ice_days == pytest.approx((100 * 2 + 300 * 1) / 400)
    assert made.species["cod"].out_turn_kg == 90
    assert (made.months["2026-02"].out_turn_kg, made.months["2026-02"].gross) == (None, None)


def test_fasts_stand_in_order_of_time_those_of_no_known_time_last() -> None:
    made = of(
        log(
            "2026-03-04 05:30",
            None,
            "fast: yes\nshot: 2026-03-04 18:00, hauled: 20:00, fast: rock\nshot: 22:00, fast: wreck",
        ),
        log("2026-03-04 05:30", None, "shot: 2026-03-04 18:00, hauled: 19:00, fast: cable", vessel="Other"),
    )

    assert [(mark.vessel, mark.what) for mark in made.fasts] == [
        ("Other", "cable"),
        ("Solan Bright", "rock"),
        ("Solan Bright", "wreck"),
        ("Solan Bright", ""),
    ]


def weighed(month: int, scale: int, more: str = "") -> str:
    return log(
        f"2025-{month:02}-04 05:30",
        f"2025-{month:02}-08 09:00",
        f"shot: 18:00, hauled: 19:00, net: rockhopper, catch: {{cod: 100 kg}}{more}",
        f", out-turn: {{cod: {scale} kg}}",
    )


@given(st.lists(st.integers(50, 150), min_size=5, max_size=12))
@settings(max_examples=15, deadline=None)
def test_how_hails_lay_beside_the_scale_over_all_a_vessels_trips(scales: list[int]) -> None:
    # NumPy's percentile with its usual `linear` method: inclusive quartiles.
    (bias,) = of(*(weighed(n, scale) for n, scale in enumerate(scales, 1))).of_vessel["Solan Bright"].bias

    low, middle, high = np.percentile([scale - 100 for scale in scales], [25, 50, 75])
    assert (bias.name, bias.trips) == ("cod", len(scales))
    assert (bias.low_percent, bias.median_percent, bias.high_percent) == pytest.approx((low, middle, high))


def test_for_fewer_than_five_trips_nothing_is_told_of_hails() -> None:
    (bias,) = of(*(weighed(n, 90) for n in range(1, 5))).of_vessel["Solan Bright"].bias

    assert (bias.trips, bias.median_percent, bias.low_percent, bias.high_percent) == (4, None, None, None)


def test_a_trip_whose_hail_or_out_turn_is_not_wholly_known_tells_nothing_of_hails() -> None:
    short = weighed(6, 300, "}\n  - {shot: 20:00, hauled: 21:00")
    unread = weighed(7, 3).replace("cod: 3 kg", "cod: {large: 3 kg, small: plenty}")
    trips = [*(weighed(n, 110) for n in range(1, 6)), short, unread]

    (bias,) = of(*trips).of_vessel["Solan Bright"].bias
    assert (bias.trips, bias.median_percent) == (5, pytest.approx(10))
    assert reckoned(*trips)[-1].figures.hail["cod"].bias_trips == 5


def test_a_vessels_gear_is_as_after_her_last_trip() -> None:
    own = of(weighed(3, 90), weighed(1, 90), weighed(2, 90)).of_vessel["Solan Bright"]

    assert (own.gear["rockhopper"].towed_h, own.gear["rockhopper"].towed_h_since_mended) == (1.0, 3.0)
    assert dict(own.rigging) == {}


def test_what_a_vessel_landed_stands_by_year_of_docking() -> None:
    made = of(
        log("2025-12-28 05:30", "2026-01-02 09:00", "shot: 18:00, hauled: 19:00, catch: {cod: 10 kg}"),
        weighed(3, 90),
        weighed(4, 80),
    )

    assert dict(made.of_vessel["Solan Bright"].landed_by_year) == {"2025": 170, "2026": 10}


def test_a_vessel_in_two_spellings_goes_by_the_first() -> None:
    made = of(
        log("2026-02-04 05:30", None, "shot: 18:00, hauled: 19:00", vessel="FAR star"),
        log("2026-01-04 05:30", None, "shot: 18:00, hauled: 19:00", vessel="Far Star"),
    )

    assert {name: group.trips for name, group in made.vessels.items()} == {"Far Star": 2}
    assert list(made.of_vessel) == ["Far Star"]
