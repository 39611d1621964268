"""Figures put side by side for pages: what is picked out, in which order."""

from datetime import UTC, datetime, timedelta
from decimal import Decimal

import pytest
from msgspec.structs import replace

from logbook.model.fleet_figures import Landed
from logbook.model.ledger import Entry
from logbook.model.named import ByName
from logbook.reckon.tally import share_of
from logbook.render.gather import (
    added,
    by_weight,
    every_month,
    kept_species,
    latest_landed,
    logged_tows,
    offsets_of,
    out_at_sea,
    trip_line,
)
from tests.reckon.build import figures
from tests.render import example

KG = Decimal
DAY = datetime(2026, 3, 4, 9, tzinfo=UTC)


def test_a_sum_leaves_out_what_is_not_known_and_is_unknown_where_nothing_is() -> None:
    assert added([KG(2), None, KG(3)]) == 5
    assert added([None]) is None
    assert added([]) is None


def test_species_stand_by_weight_those_not_weighed_last() -> None:
    assert by_weight(example.trip(tows=9).figures.catch) == ("haddock", "cod", "saithe", "ling", "skate")


def test_fish_only_put_back_or_only_undersize_was_not_kept_however_little_is_known_of_it() -> None:
    made = figures(
        "tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 1 kg, ling: 3 fish}, undersize: {saithe: 2 kg, plaice: 4 fish}, "
        "put back: {skate: 6 fish, dab: 3 kg}}\n"
    )

    assert set(made.catch) == {"cod", "ling", "saithe", "plaice", "skate", "dab"}
    assert kept_species(made.catch) == ("cod", "ling")


def test_fish_kept_in_one_tow_and_put_back_in_another_was_kept() -> None:
    made = figures(
        "tows:\n  - {shot: 18:10, hauled: 19:40, put back: {skate: 6 fish}}\n"
        "  - {shot: 20:10, hauled: 21:40, catch: {skate: 2 fish}}\n"
    )

    assert kept_species(made.catch) == ("skate",)
    assert [tow.catch["skate"].kept for tow in made.tows] == [False, True]


def test_tows_and_figures_are_matched_by_number_where_some_are_left_out() -> None:
    trip = example.trip(tows=4)
    short = replace(trip, figures=replace(trip.figures, tows=trip.figures.tows[1:3]))

    assert [(tow.no, figures.no) for tow, figures in logged_tows(short)] == [(2, 2), (3, 3)]


def test_a_trip_in_a_table_knows_whether_it_was_weighed() -> None:
    trip = example.trip(tows=2)
    docked = trip.figures.trip.docked
    assert docked
    landed = Landed(
        trip_id="x",
        vessel="y",
        docked=docked,
        season="2026",
        species=ByName([("cod", KG(5)), ("ling", KG(2))]),
        weighed=False,
    )
    brief = share_of(trip, example.fleet()).brief

    assert trip_line(replace(brief, landed=landed)).landed_kg == 7
    assert not trip_line(replace(brief, landed=landed)).weighed
    assert trip_line(replace(brief, landed=replace(landed, weighed=True))).weighed
    assert trip_line(replace(brief, landed=None)).landed_kg is None


def entry(vessel: str, state: str, docked: datetime | None = None) -> Entry:
    return Entry(
        id=f"{vessel}-1", vessel=vessel, begins=DAY, docked=docked, last_word=docked or DAY, state=state, season="2026", year="2026",
        file="", species=(), fished=None, key=b"",
    )  # fmt: skip


def test_those_homeward_stand_before_those_at_sea_and_nobody_else_is_out() -> None:
    some = [entry("c", "at sea"), entry("b", "landed"), entry("d", "homeward"), entry("a", "landing not logged")]

    assert [one.vessel for one in out_at_sea([*some, entry("a", "at sea")])] == ["d", "a", "c"]


def test_the_last_landing_is_the_first_and_two_at_one_time_stand_by_id() -> None:
    late = DAY + timedelta(hours=1)
    some = [entry("a", "landed", DAY), entry("b", "landed", late), entry("c", "landed", DAY), entry("d", "at sea")]

    assert [one.vessel for one in latest_landed(some)] == ["b", "c", "a"]


def test_times_are_counted_by_their_offset_over_all_trips() -> None:
    # Summer time by hand: an hour is 3600 seconds
    briefs = [
        replace(share_of(example.trip(tows=1), example.fleet()).brief, offsets=one)
        for one in ({0: 3, 3600: 1}, {3600: 4})
    ]

    assert dict(offsets_of(briefs)) == {0: 3, 3600: 5}
    assert dict(offsets_of([])) == {}


@pytest.mark.parametrize(
    ("some", "every"),
    [
        ([], []),
        (["2026-03"], ["2026-03"]),
        (["2026-02", "2025-11", "2026-02"], ["2025-11", "2025-12", "2026-01", "2026-02"]),
        (["2025-12", "2026-01"], ["2025-12", "2026-01"]),
        (["0999-12", "1000-01"], ["0999-12", "1000-01"]),
    ],
)
def test_months_stand_one_after_another_without_a_hole(some: list[str], every: list[str]) -> None:
    assert every_month(some) == every
