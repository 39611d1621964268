"""Sums over the fleet."""

from collections.abc import Sequence
from datetime import UTC, datetime
from decimal import Decimal

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import FleetFigures, VesselFigures
from logbook.reckon.landed import landed_of, season
from tests.ledger import ledger_of
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


def sums(trips: Sequence[Reckoned]) -> FleetFigures:
    return ledger_of(trips, fleet()).fleet()


@given(st.permutations(ALL))
@settings(max_examples=6)
def test_the_order_of_trips_changes_nothing(trips: list[Reckoned]) -> None:
    made = sums(trips)
    usual = sums(ALL)

    assert made == usual
    assert list(made.species) == list(usual.species)
    assert list(made.vessels) == list(usual.vessels)
    assert list(made.grounds) == list(usual.grounds)


def test_a_vessel_is_one_whatever_the_case_and_has_its_days() -> None:
    made = sums(ALL)

    own = made.vessels["Solan Bright"]
    assert (own.trips, own.tows, own.foul_tows, own.kept_kg) == (2, 7, 2, 260)
    assert own.days_at_sea == pytest.approx(12 + 7 / 24)


def test_catch_per_hour_is_total_over_total_of_what_is_known() -> None:
    made = sums(ALL)

    # By hand: 140 kg in 4 h and 120 kg in 8 h; the last tow's catch is not known, its hour does not count.
    assert made.vessels["Solan Bright"].kept_kg_per_h == pytest.approx(260 / 12)
    # Without the fast of 20 kg in 2 h, and without the 40 kg in 4 h of which one tow was damaged.
    assert made.vessels["Solan Bright"].kept_kg_per_h_clean == pytest.approx((120 + 80) / (2 + 4))
    assert made.grounds["The Saddle"].kept_kg_per_h == pytest.approx(140 / 6)
    assert made.grounds["The Saddle"].kept_kg_per_h_clean == pytest.approx(120 / 4)
    assert made.grounds["Odd Hole"].days_at_sea is None


def test_a_species_rate_is_over_all_hours_with_a_known_catch() -> None:
    cod = sums(ALL).species["cod"]

    assert (cod.tows, cod.trips, cod.kept_kg, cod.towed_h) == (2, 1, 120, 4)
    assert cod.kept_kg_per_h == pytest.approx(120 / 14)
    assert cod.kept_kg_per_h_clean == pytest.approx(100 / 8)
    assert sums(ALL).species["skate"].kept_kg is None


def test_parts_add_up_to_the_whole() -> None:
    made = sums(ALL)

    for figure in ("kept_kg", "put_back_kg", "live_kg"):
        vessels = sum(getattr(group, figure) or 0 for group in made.vessels.values())
        species = sum(getattr(group, figure) or 0 for group in made.species.values())
        assert vessels == species


def test_landings_are_as_weighed_else_as_hailed_by_month_without_holes() -> None:
    made = sums(ALL)
    landed = [landed_of(trip, fleet()) for trip in ALL]

    assert {(trip.docked.isoformat(), trip.weighed, *trip.species.items()) for trip in landed if trip is not None} == {
        ("2026-01-10T09:00:00+00:00", True, ("cod", Decimal(125))),
        ("2026-03-10T09:00:00+00:00", False, ("haddock", Decimal(120))),
    }
    assert landed.count(None) == 1
    assert {month: dict(fish) for month, fish in made.landed_by_month.items()} == {
        "2026-01": {"cod": 125},
        "2026-02": {},
        "2026-03": {"haddock": 120},
    }
    assert list(made.seasons) == ["2026"]


def test_a_month_end_at_new_year_has_no_hole() -> None:
    trips = reckoned(A, A.replace("2026-01-04", "2025-11-04").replace("2026-01-10", "2025-11-10"))

    assert list(sums(trips).landed_by_month) == ["2025-11", "2025-12", "2026-01"]


def test_nothing_gives_nothing() -> None:
    made = sums(())

    assert (len(made.vessels), len(made.species), len(made.grounds), len(made.landed_by_month)) == (0, 0, 0, 0)


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
    return sums(reckoned(*logs))


def vessel(*logs: str, name: str = "Solan Bright") -> VesselFigures:
    return ledger_of(reckoned(*logs), fleet()).vessel(name)


def log(sailed: str, docked: str | None, tows: str = "", landed: str = "", vessel: str = "Solan Bright") -> str:
    """Return a whole log; `tows` are its lines, `landed` what stands beside the docking."""
    end = f"landed: {{docked: {docked}, port: Port Kerrin{landed}}}\n" if docked else ""
    lines = "".join(f"  - {{{line}}}\n" for line in tows.splitlines())
    return f"vessel: {vessel}\nsailed: {sailed}, Port Kerrin\n" + (f"tows:\n{lines}" if lines else "") + end


def test_a_season_is_of_those_that_docked_in_it() -> None:
    made = of(
        log("2026-02-27 05:30", "2026-03-02 09:00", "shot: 18:00, hauled: 20:00, catch: {cod: 10 kg}"),
        log("2026-02-20 05:30", "2026-02-26 09:00", "shot: 18:00, hauled: 19:00, catch: {cod: 30 kg}"),
        log("2025-12-20 05:30", "2026-01-02 09:00", "shot: 18:00, hauled: 19:00, catch: {cod: 5 kg}"),
        log("2026-03-20 05:30", None, "shot: 18:00, hauled: 19:00, catch: {cod: 70 kg}"),
        log("2027-03-20 05:30", None, "shot: 18:00, hauled: 19:00, catch: {cod: 70 kg}"),
    )

    assert {name: (season.trips, season.kept_kg) for name, season in made.seasons.items()} == {"2026": (3, 45)}


def test_seasons_stand_in_order() -> None:
    made = of(*(log(f"{year}-02-20 05:30", f"{year}-02-26 09:00") for year in (2026, 2024, 2025)))

    assert list(made.seasons) == ["2024", "2025", "2026"]


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
    # Of the season only those that docked: the days of two trips, and no fish still at sea.
    assert (made.seasons["2026"].out_turn_kg, made.seasons["2026"].gross, made.seasons["2026"].kept_kg) == (
        90,
        315,
        400,
    )


def test_fasts_stand_in_order_of_time_those_of_no_known_time_last() -> None:
    made = reckoned(
        log(
            "2026-03-04 05:30",
            None,
            "fast: yes\nshot: 2026-03-04 18:00, hauled: 20:00, fast: rock\nshot: 22:00, fast: wreck",
        ),
        log("2026-03-04 05:30", None, "shot: 2026-03-04 18:00, hauled: 19:00, fast: cable", vessel="Other"),
    )

    assert [(mark.vessel, mark.what) for mark in ledger_of(made, fleet()).fasts()] == [
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
    (bias,) = vessel(*(weighed(n, scale) for n, scale in enumerate(scales, 1))).bias

    low, middle, high = np.percentile([scale - 100 for scale in scales], [25, 50, 75])
    assert (bias.name, bias.trips) == ("cod", len(scales))
    assert (bias.low_percent, bias.median_percent, bias.high_percent) == pytest.approx((low, middle, high))


def test_for_fewer_than_five_trips_nothing_is_told_of_hails() -> None:
    (bias,) = vessel(*(weighed(n, 90) for n in range(1, 5))).bias

    assert (bias.trips, bias.median_percent, bias.low_percent, bias.high_percent) == (4, None, None, None)


def test_a_trip_whose_hail_or_out_turn_is_not_wholly_known_tells_nothing_of_hails() -> None:
    short = weighed(6, 300, "}\n  - {shot: 20:00, hauled: 21:00")
    unread = weighed(7, 3).replace("cod: 3 kg", "cod: {large: 3 kg, small: plenty}")
    trips = [*(weighed(n, 110) for n in range(1, 6)), short, unread]

    (bias,) = vessel(*trips).bias
    assert (bias.trips, bias.median_percent) == (5, pytest.approx(10))
    assert reckoned(*trips)[-1].figures.hail["cod"].bias_trips == 5


def test_a_vessels_gear_is_as_after_her_last_trip() -> None:
    ledger = ledger_of(reckoned(weighed(3, 90), weighed(1, 90), weighed(2, 90)), fleet())
    own = ledger.kit(ledger.of_vessel("Solan Bright")[-1].id)

    assert (own.gear["rockhopper"].towed_h, own.gear["rockhopper"].towed_h_since_mended) == (1.0, 3.0)
    assert dict(own.rigging) == {}


def test_what_a_vessel_landed_stands_by_year_of_docking() -> None:
    made = vessel(
        log("2025-12-28 05:30", "2026-01-02 09:00", "shot: 18:00, hauled: 19:00, catch: {cod: 10 kg}"),
        weighed(3, 90),
        weighed(4, 80),
    )

    assert dict(made.landed_by_year) == {"2025": 170, "2026": 10}


def test_a_vessel_in_two_spellings_goes_by_the_first() -> None:
    made = ledger_of(
        reckoned(
            log("2026-02-04 05:30", None, "shot: 18:00, hauled: 19:00", vessel="FAR star"),
            log("2026-01-04 05:30", None, "shot: 18:00, hauled: 19:00", vessel="Far Star"),
        ),
        fleet(),
    )

    assert {name: group.trips for name, group in made.fleet().vessels.items()} == {"Far Star": 2}
    assert list(made.vessels) == ["Far Star"]
    assert [entry.vessel for entry in made.of_vessel("Far Star")] == ["Far Star", "FAR star"]


def test_the_best_trips_are_the_ended_ones_that_kept_most_a_day() -> None:
    def kept(month: int, kg: int, *, docked: bool = True) -> str:
        end = f"2026-{month:02}-06 05:30" if docked else None
        return log(f"2026-{month:02}-04 05:30", end, f"shot: 18:00, hauled: 19:00, catch: {{cod: {kg} kg}}")

    made = vessel(kept(1, 30), kept(2, 10), kept(3, 50), kept(4, 40), kept(5, 900, docked=False), kept(6, 40))

    assert made.best == ("solan-bright-2026-03-04", "solan-bright-2026-04-04", "solan-bright-2026-06-04")


def test_the_usual_catch_of_a_species_is_that_of_the_middle_trip_that_kept_any() -> None:
    def kept(month: int, catch: str) -> str:
        return log(f"2026-{month:02}-04 05:30", None, f"shot: 18:00, hauled: 19:00, catch: {{{catch}}}")

    made = vessel(
        kept(1, "cod: 10 kg, ling: 3 kg"),
        kept(2, "cod: 50 kg"),
        kept(3, "cod: 30 kg, ling: 0 kg"),
        kept(4, "ling: plenty"),
    )

    assert [(one.name, one.trips, one.median_kg, one.most_kg, one.most_id, one.kept_kg) for one in made.usual] == [
        ("cod", 3, 30, 50, "solan-bright-2026-02-04", 90),
        ("ling", 1, 3, 3, "solan-bright-2026-01-04", 3),
    ]


def test_what_is_told_of_a_vessel_is_of_her_alone() -> None:
    made = ledger_of(ALL, fleet())

    assert [one.name for one in made.vessel("Solan Bright").usual] == ["haddock", "cod"]
    assert made.vessel("Other").usual == ()
    assert dict(made.vessel("Other").landed_by_year) == {}
    assert list(made.vessel("Other").grounds) == ["The Saddle"]
    assert dict(made.vessel("Solan Bright").landed_by_year) == {"2026": 245}
