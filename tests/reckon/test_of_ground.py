"""What is known of each ground, and the same weeks of other years."""

from collections.abc import Sequence
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from logbook.model.figures import Reckoned
from logbook.model.places import GroundFigures
from logbook.reckon.of_ground import may_touch, same_weeks, year_of
from logbook.reckon.tally import share_of
from tests.ledger import ledger_of
from tests.read.logs import fleet
from tests.reckon.build import moment, reckoned

KG = Decimal
WEEKS = timedelta(weeks=3)
A = """\
vessel: Solan Bright
sailed: 2025-03-04 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 20:00, ground: The Saddle, depth: 60 fm, catch: {cod: 100 kg}}
  - {shot: 21:00, hauled: 23:00, ground: the  SADDLE, depth: 50 m, catch: {cod: 20 kg}, fast: rock, damage: wing torn}
  - {shot: 2025-03-05 01:00, hauled: 03:00, ground: Odd Hole, depth: 49.9 m, catch: none, gear lost: a marker}
"""
B = """\
vessel: Skerry Light
sailed: 2026-03-14 05:30, Port Kerrin
tows:
  - {shot: 18:00, hauled: 22:00, ground: The Saddle, depth: 100-110 m, catch: {cod: 80 kg}}
  - {shot: 23:00, hauled: 2026-03-15 01:00, ground: Long Brae, catch: {haddock: 6 kg}}
landed: 2026-03-20 23:30, Port Kerrin
"""
ALL = reckoned(A, B)


def of(trips: Sequence[Reckoned]) -> dict[str, GroundFigures]:
    return {one.name: one for one in ledger_of(trips, fleet()).grounds()}


def test_a_ground_is_one_whatever_its_case_and_the_most_fished_is_first() -> None:
    assert {name: one.group.tows for name, one in of(ALL).items()} == {"The Saddle": 3, "Long Brae": 1, "Odd Hole": 1}


def test_nothing_gives_nothing() -> None:
    assert of(()) == {}


def test_sums_by_month_depth_and_year_are_of_all_its_tows() -> None:
    saddle = of(ALL)["The Saddle"]

    assert [(month, one.tows, one.kept_kg) for month, one in saddle.by_month] == [(3, 3, KG(200))]
    assert [(year, one.tows) for year, one in saddle.by_year.items()] == [("2026", 1), ("2025", 2)]
    # 60 fathoms are 109.7 m (a fathom is 1.8288 m: International Hydrographic Organization S-32)
    assert [(band, one.tows) for band, one in saddle.by_depth.items()] == [("50–100 m", 1), ("100–150 m", 2)]
    assert list(of(ALL)["Odd Hole"].by_depth) == ["0–50 m"]


def test_what_is_caught_there_is_told_with_and_without_foul_tows() -> None:
    (cod,) = of(ALL)["The Saddle"].species

    assert cod.kept_kg_per_h == pytest.approx(200 / 8)
    assert cod.kept_kg_per_h_clean == pytest.approx(180 / 6)


def test_fasts_and_damage_are_those_of_the_ground_however_it_is_spelled() -> None:
    saddle, hole = of(ALL)["The Saddle"], of(ALL)["Odd Hole"]

    assert [mark.what for mark in saddle.fasts] == ["rock"]
    assert [mark.words for mark in saddle.damage] == ["wing torn"]
    assert hole.fasts == ()
    assert [mark.words for mark in hole.damage] == ["a marker"]


def test_the_same_weeks_are_those_round_the_last_word_of_the_archive() -> None:
    saddle = of(ALL)["The Saddle"]

    assert saddle.weeks == (moment("2026-02-27 23:30"), moment("2026-04-10 23:30"))
    assert [(year, one.tows) for year, one in saddle.same_weeks.items()] == [("2026", 1), ("2025", 2)]


@given(st.permutations(ALL))
@settings(max_examples=2)
def test_the_order_of_trips_changes_nothing(trips: list[Reckoned]) -> None:
    assert [repr(one) for one in of(trips).values()] == [repr(one) for one in of(ALL).values()]


@pytest.mark.parametrize(
    ("when", "at", "year"),
    [
        ("2026-03-20 12:00", "2026-03-20 12:00", 2026),
        ("2019-03-20 12:00", "2026-03-20 12:00", 2019),
        # whole days: the first and the last of them count in full
        ("2025-02-27 00:00", "2026-03-20 12:00", 2025),
        ("2025-02-26 23:59", "2026-03-20 12:00", None),
        ("2025-04-10 23:59", "2026-03-20 00:10", 2025),
        ("2025-04-11 00:00", "2026-03-20 23:50", None),
        # over the turn of the year a week belongs to the year that its middle lies in
        ("2025-12-20 12:00", "2026-01-05 12:00", 2026),
        ("2024-12-20 12:00", "2026-01-05 12:00", 2025),
        ("2026-01-10 12:00", "2026-12-25 12:00", 2025),
        # 29 February is the day after where there is none
        ("2023-03-22 12:00", "2024-02-29 12:00", 2023),
        ("2023-03-23 00:00", "2024-02-29 12:00", None),
        ("2023-02-08 00:00", "2024-02-29 12:00", 2023),
        ("2020-02-08 12:00", "2024-02-29 12:00", 2020),
        ("2020-02-07 12:00", "2024-02-29 12:00", None),
        ("0001-01-02 00:00", "9999-12-31 12:00", None),
        ("9999-12-30 00:00", "0001-01-02 00:00", None),
    ],
)
def test_the_weeks_of_a_day_are_the_same_in_every_year(when: str, at: str, year: int | None) -> None:
    # a calendar counted by hand
    assert year_of(moment(when).date(), moment(at), WEEKS) == year


def test_a_year_is_that_of_the_nearest_where_weeks_reach_over_all_of_it() -> None:
    half = timedelta(weeks=26)

    assert year_of(date(2025, 12, 20), moment("2026-06-25 12:00"), half) == 2025
    assert year_of(date(2025, 1, 2), moment("2026-06-25 12:00"), half) == 2025


def test_a_day_is_that_of_its_own_clock() -> None:
    # Half an hour past midnight of 11 April by a clock two hours ahead: 10 April by UTC, the last day of these weeks.
    log = "zone: UTC+02:00\nvessel: Solan Bright\nsailed: 2025-04-10 05:30\ntows:\n  - {shot: SHOT, hauled: 2025-04-11 03:00, ground: G}\n"
    (there,), (before,) = (
        [share_of(trip, fleet()).days.grounds["g"] for trip in reckoned(log.replace("SHOT", shot))]
        for shot in ("2025-04-11 00:30", "2025-04-10 23:30")
    )
    at = datetime(2026, 3, 20, 12, tzinfo=UTC)

    assert list(same_weeks([there], at)) == []
    assert list(same_weeks([before], at)) == ["2025"]


def test_without_a_moment_no_weeks_are_the_same() -> None:
    days = [days for trip in ALL for days in share_of(trip, fleet()).days.grounds.values()]

    assert list(same_weeks(days, None)) == []
    assert list(same_weeks(days, moment("2026-03-20 12:00"))) == ["2026", "2025"]


DAYS = st.dates(min_value=date(1, 1, 1), max_value=date(9999, 12, 31))
MOMENTS = DAYS.map(lambda day: datetime(day.year, day.month, day.day, 12, tzinfo=UTC))


@given(DAYS, st.integers(0, 800), st.integers(0, 800), MOMENTS, st.integers(0, 60))
@example(date(2025, 12, 30), 5, 3, datetime(2026, 1, 20, tzinfo=UTC), 3)
@example(date(2023, 2, 1), 60, 49, datetime(2024, 2, 29, tzinfo=UTC), 3)
@example(date(9999, 12, 20), 20, 0, datetime(2024, 1, 1, tzinfo=UTC), 3)
@example(date(1, 1, 1), 20, 0, datetime(2024, 12, 31, tzinfo=UTC), 3)
@settings(max_examples=400)
def test_a_trip_that_was_out_in_the_same_weeks_is_never_passed_over(
    first: date, length: int, after: int, at: datetime, weeks: int
) -> None:
    last = date.fromordinal(min(first.toordinal() + length, date.max.toordinal()))
    day = date.fromordinal(min(first.toordinal() + after % (length + 1), last.toordinal()))
    span = timedelta(weeks=weeks)

    assert year_of(day, at, span) is None or may_touch(first, last, at, span)


@given(DAYS, st.integers(0, 60), MOMENTS, st.integers(0, 4))
@settings(max_examples=200)
def test_one_is_looked_at_only_where_a_day_of_hers_is_of_these_weeks(
    first: date, length: int, at: datetime, weeks: int
) -> None:
    days = range(first.toordinal(), min(first.toordinal() + length, date.max.toordinal()) + 1)
    span = timedelta(weeks=weeks)
    found = [day for day in days if year_of(date.fromordinal(day), at, span) is not None]

    assert may_touch(first, date.fromordinal(days[-1]), at, span) is bool(found)


def test_a_tow_that_a_faulty_log_has_before_its_trip_began_is_found_in_these_weeks() -> None:
    early = reckoned(
        A.replace("2025-03-04", "2025-06-04")
        .replace("shot: 18:00", "shot: 2025-03-10 18:00")
        .replace("2025-03-05", "2025-06-05"),
        B,
    )
    saddle = of(early)["The Saddle"]

    assert [(year, one.tows) for year, one in saddle.same_weeks.items()] == [("2026", 1), ("2025", 2)]


def test_a_trip_far_from_these_weeks_is_passed_over() -> None:
    assert not may_touch(date(2025, 6, 1), date(2025, 11, 1), moment("2026-03-20 12:00"))
    assert may_touch(date(2025, 6, 1), date(2026, 4, 1), moment("2024-03-20 12:00"))


TURN = """\
vessel: Solan Bright
sailed: {year}-12-27 05:30, Port Kerrin
tows:
  - {{shot: 18:00, hauled: 20:00, ground: The Saddle, catch: {{cod: {kept} kg}}}}
  - {{shot: {after}-01-02 18:00, hauled: 20:00, ground: The Saddle, catch: {{cod: {kept} kg}}}}
"""


def test_weeks_over_the_turn_of_the_year_stay_together() -> None:
    trips = reckoned(*(TURN.format(year=year, after=year + 1, kept=kept) for year, kept in ((2023, 10), (2025, 90))))
    same = of(trips)["The Saddle"].same_weeks

    assert [(year, one.tows, one.kept_kg) for year, one in same.items()] == [
        ("2025–26", 2, KG(180)),
        ("2023–24", 2, KG(20)),
    ]
