"""Sums of trips add up to the same whatever is added to what first, and to what is found by adding up the tows one by one."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import timedelta
from decimal import Decimal
from fractions import Fraction
from random import Random
from statistics import median

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.figures import Reckoned, TowFigures
from logbook.model.fleet import Fleet
from logbook.model.fleet_figures import GroupFigures
from logbook.model.ledger import Share
from logbook.model.names import fold_name
from logbook.model.packed import packed, packed_as_it_stands, unpacked
from logbook.model.tally import Tally
from logbook.reckon.tally import BEST_OF_SPECIES, BEST_ON_GROUND, BEST_TRIPS, share_of, together
from logbook.render.clock import clock_of, clock_of_offsets
from tests.ledger import ledger_of
from tests.reckon.trips import VESSELS, some_trips
from tests.render import example

FLEET = Fleet(season_start=(9, 1))
NEAR = 1e-9
"""Times are rounded to the microsecond, of minutes at least."""


def tallies(trips: Sequence[Reckoned]) -> list[Tally]:
    return [share_of(trip, FLEET).tally for trip in trips]


def put_together(chance: Random, parts: Sequence[Tally], *, own: bool) -> Tally:
    """Return what some sums come to, put together in any groups, and groups of those, in any order."""
    left = chance.sample(parts, len(parts))
    while len(left) > 1:
        many = chance.randrange(1, len(left) + 1)
        left = [*left[many:], together(left[:many], own=own)]
        chance.shuffle(left)
    return together(left, own=own)


CHANCE = st.integers(0, 2**32 - 1).map(Random)


@given(CHANCE, some_trips(most=8))
@settings(max_examples=150)
def test_sums_do_not_depend_on_what_was_added_to_what_first(chance: Random, trips: tuple[Reckoned, ...]) -> None:
    parts = tallies(trips)

    assert put_together(chance, parts, own=False) == together(parts, own=False)


@given(CHANCE, some_trips(VESSELS[:2], most=8))
@settings(max_examples=100)
def test_nor_does_what_is_told_of_one_vessel_but_for_the_order_of_its_trips(
    chance: Random, trips: tuple[Reckoned, ...]
) -> None:
    parts = tallies(trips)
    made, usual = put_together(chance, parts, own=True), together(parts, own=True)

    assert replace(made, own=in_order(made)) == replace(usual, own=in_order(usual))


def in_order(tally: Tally) -> object:
    return replace(
        tally.own,
        kept={name: sorted(trips) for name, trips in tally.own.kept.items()},
        bias={name: sorted(percents) for name, percents in tally.own.bias.items()},
    )


def test_none_at_all_come_to_nothing() -> None:
    assert together([], own=True) == Tally() == together([Tally(), Tally()], own=False)


@given(some_trips(most=2))
@settings(max_examples=60)
def test_what_a_trip_gives_comes_back_from_bytes_as_it_was(trips: tuple[Reckoned, ...]) -> None:
    for trip in trips:
        share = share_of(trip, FLEET)
        for name in Share.__struct_fields__:
            part = getattr(share, name)
            assert unpacked(packed_as_it_stands(part), type(part)) == part


# What follows finds the same figures by adding up tows, in fractions of whole numbers.


def total(values: Iterable[Decimal | float | None]) -> Fraction | None:
    known = [Fraction(value) for value in values if value is not None]
    return sum(known, Fraction(0)) if known else None


def rate(tows: Iterable[TowFigures], kept: Callable[[TowFigures], Decimal | None]) -> float | None:
    """Return total kept over total hours, of the tows whose whole catch and its hours are known."""
    known = [tow for tow in tows if tow.kept_kg is not None and tow.catch_h]
    return float((total(map(kept, known)) or 0) / total(tow.catch_h for tow in known)) if known else None  # type: ignore[operator] # hours are known


def whole(tow: TowFigures) -> Decimal | None:
    return tow.kept_kg


def sound(trip: Reckoned) -> Iterator[TowFigures]:
    """Give the tows of a trip that were neither foul nor sorted with a foul one."""
    foul = [tow.no for tow in trip.figures.tows if tow.foul]
    return (tow for tow in trip.figures.tows if not any(no in foul for no in (tow.no, *tow.sorted_with)))


def near(value: Fraction | float | None) -> object:
    return value if value is None else pytest.approx(float(value), rel=NEAR)


def check_group(group: GroupFigures, tows: Sequence[TowFigures], clean: Sequence[TowFigures], trips: int) -> None:
    """See that sums are those of some tows."""
    assert (group.trips, group.tows, group.foul_tows) == (trips, len(tows), sum(tow.foul for tow in tows))
    assert group.kept_kg == total(tow.kept_kg for tow in tows)
    assert group.put_back_kg == total(tow.put_back_kg for tow in tows)
    assert group.live_kg == total(tow.live_kg for tow in tows)
    assert group.towed_h == near(total(tow.duration_h for tow in tows))
    assert group.kept_kg_per_h == near(rate(tows, whole))
    assert group.kept_kg_per_h_clean == near(rate(clean, whole))
    for light in ("day", "twilight", "night"):
        own = [tow for tow in tows if tow.light == light]
        assert group.hours_by_light.get(light) == near(total(tow.duration_h for tow in own))
        if light in group.hours_by_light:
            assert group.kept_kg_per_h_by_light[light] == near(rate(own, whole))


def check_trips(group: GroupFigures, trips: Sequence[Reckoned]) -> None:
    """See that sums are those of some whole trips."""
    every = [tow for trip in trips for tow in trip.figures.tows]
    check_group(group, every, [tow for trip in trips for tow in sound(trip)], len(trips))
    figures = [trip.figures for trip in trips]
    aged = [
        (Fraction(one.totals.kept_kg), Fraction(one.age.mean_ice_days))
        for one in figures
        if one.trip.docked and one.totals.kept_kg and one.age.mean_ice_days is not None
    ]
    weight = sum(kept for kept, _ in aged)
    assert group.days_at_sea == near(total(one.totals.days_at_sea for one in figures))
    assert group.out_turn_kg == total(hail.out_turn_kg for one in figures for hail in one.hail.values())
    assert group.gross == total(one.money.gross for one in figures if one.money is not None)
    assert group.mean_ice_days == (near(sum(kept * days for kept, days in aged) / weight) if weight else None)


@given(some_trips())
@settings(max_examples=100)
def test_a_vessel_and_a_season_have_the_sums_of_their_trips(trips: tuple[Reckoned, ...]) -> None:
    made = ledger_of(trips, FLEET).fleet()

    assert {fold_name(name) for name in made.vessels} == {fold_name(trip.figures.trip.vessel) for trip in trips}
    for name, group in made.vessels.items():
        check_trips(group, [trip for trip in trips if fold_name(trip.figures.trip.vessel) == fold_name(name)])
    docked = [trip for trip in trips if trip.figures.trip.docked]
    assert set(made.seasons) == {season_of(trip) for trip in docked}
    for name, group in made.seasons.items():
        check_trips(group, [trip for trip in docked if season_of(trip) == name])


def season_of(trip: Reckoned) -> str:
    """Return the season of a docking, by hand: it begins on 1 September."""
    docked = trip.figures.trip.docked
    assert docked
    first = docked.year if docked.month >= 9 else docked.year - 1
    return f"{first}–{first + 1 - 2000:02}"


@given(some_trips())
@settings(max_examples=100)
def test_a_ground_has_the_sums_of_its_tows_by_month_depth_and_year(trips: tuple[Reckoned, ...]) -> None:
    ledger = ledger_of(trips, FLEET)
    on: dict[str, list[tuple[Reckoned, TowFigures]]] = {}
    for trip in trips:
        for tow in trip.figures.tows:
            if tow.ground is not None:
                on.setdefault(fold_name(tow.ground), []).append((trip, tow))
    grounds = {fold_name(ground.name): ground for ground in ledger.grounds()}

    assert grounds.keys() == on.keys() == {fold_name(name) for name in ledger.fleet().grounds}
    for folded, ground in grounds.items():
        check_ground(ground.group, on[folded])
        by_month = [(tow.shot or tow.hauled) for _, tow in on[folded]]
        for month, group in ground.by_month:
            check_ground(
                group, [one for one, when in zip(on[folded], by_month, strict=True) if when and when.month == month]
            )
        for year, group in ground.by_year.items():
            check_ground(
                group, [one for one, when in zip(on[folded], by_month, strict=True) if when and str(when.year) == year]
            )
        for band, group in ground.by_depth.items():
            least = int(band.partition("–")[0])
            check_ground(
                group,
                [one for one in on[folded] if one[1].depth_m is not None and least <= one[1].depth_m < least + 50],
            )
        assert sum(group.tows for _, group in ground.by_month) == sum(when is not None for when in by_month)
        assert sum(group.tows for group in ground.by_year.values()) == sum(when is not None for when in by_month)
        assert sum(group.tows for group in ground.by_depth.values()) == sum(
            tow.depth_m is not None for _, tow in on[folded]
        )


@given(some_trips())
@settings(max_examples=100)
def test_a_ground_has_what_was_kept_there_of_each_species_and_what_befell_the_gear(trips: tuple[Reckoned, ...]) -> None:
    ledger = ledger_of(trips, FLEET)
    marks = [
        (trip, order, tow.ground, logged.damage, logged.fast, tow.hauled or tow.shot)
        for trip in sorted(trips, key=lambda trip: (trip.log.begins, trip.figures.trip.id))
        for order, (tow, logged) in enumerate(zip(trip.figures.tows, trip.log.tows, strict=True), 1)
    ]
    for ground in ledger.grounds():
        here = fold_name(ground.name)
        tows = [tow for trip in trips for tow in trip.figures.tows if tow.ground and fold_name(tow.ground) == here]
        clean = [tow for trip in trips for tow in sound(trip) if tow.ground and fold_name(tow.ground) == here]
        kept = {
            name: total(tow.catch[name].kept_kg for tow in tows if name in tow.catch)
            for tow in tows
            for name in tow.catch
        }
        assert {one.name: one.kept_kg for one in ground.species} == {name: kg for name, kg in kept.items() if kg}
        assert [one.kept_kg for one in ground.species] == sorted((one.kept_kg for one in ground.species), reverse=True)
        for one in ground.species:
            assert one.kept_kg_per_h == near(rate(tows, part_of(one.name)))
            assert one.kept_kg_per_h_clean == near(rate(clean, part_of(one.name)))
        of_here = [mark for mark in marks if mark[2] and fold_name(mark[2]) == here]
        assert [(mark.trip_id, mark.order, mark.words) for mark in ground.damage] == [
            (trip.figures.trip.id, order, damage) for trip, order, _, damage, _, _ in of_here if damage
        ]
        fasts = [
            (when is None, when and when.timestamp(), trip.figures.trip.id, order)
            for trip, order, _, _, fast, when in of_here
            if fast
        ]
        assert [(mark.trip_id, mark.order) for mark in ground.fasts] == [
            (trip, order) for _, _, trip, order in sorted(fasts)
        ]
    told = [(mark.trip_id, mark.order) for mark in ledger.fasts()]
    assert sorted(told) == sorted((trip.figures.trip.id, order) for trip, order, _, _, fast, _ in marks if fast)


def part_of(species: str) -> Callable[[TowFigures], Decimal | None]:
    """Return what tells what a tow kept of a species."""
    return lambda tow: tow.catch[species].kept_kg if species in tow.catch else None


@given(some_trips())
@settings(max_examples=100)
def test_the_same_weeks_of_a_ground_are_those_round_the_day_of_the_last_word(trips: tuple[Reckoned, ...]) -> None:
    ledger = ledger_of(trips, FLEET)
    latest = max((trip.figures.trip.last_word for trip in trips), default=None)
    for ground in ledger.grounds():
        assert latest is not None
        assert ground.weeks == (latest - timedelta(weeks=3), latest + timedelta(weeks=3))
        found: dict[int, list[tuple[Reckoned, TowFigures]]] = {}
        for trip in trips:
            for tow in trip.figures.tows:
                when = tow.shot or tow.hauled
                if when is not None and tow.ground is not None and fold_name(tow.ground) == fold_name(ground.name):
                    for year in range(2023, 2029):
                        # by hand: these archives never end on 29 February but of 2024, before which no trip of theirs begins
                        middle = latest.date().replace(year=year)
                        if abs(when.date() - middle) <= timedelta(weeks=3):
                            found.setdefault(year, []).append((trip, tow))
        assert len(ground.same_weeks) == len(found)
        for group, year in zip(ground.same_weeks.values(), sorted(found, reverse=True), strict=True):
            check_ground(group, found[year])


def check_ground(group: GroupFigures, tows: Sequence[tuple[Reckoned, TowFigures]]) -> None:
    clean = [tow for trip, tow in tows if any(tow is one for one in sound(trip))]
    check_group(group, [tow for _, tow in tows], clean, len({trip.figures.trip.id for trip, _ in tows}))
    assert (group.days_at_sea, group.out_turn_kg, group.gross) == (None, None, None)


@given(some_trips())
@settings(max_examples=100)
def test_a_species_has_the_sums_of_what_was_caught_of_it_over_the_hours_of_all_tows(
    trips: tuple[Reckoned, ...],
) -> None:
    made = ledger_of(trips, FLEET).fleet().species
    tows = [tow for trip in trips for tow in trip.figures.tows]

    assert set(made) == {name for trip in trips for name in trip.figures.catch}
    for name, group in made.items():
        caught = [tow for tow in tows if name in tow.catch]
        assert group.trips == sum(name in trip.figures.catch for trip in trips)
        assert (group.tows, group.foul_tows) == (len(caught), sum(tow.foul for tow in caught))
        assert group.kept_kg == total(tow.catch[name].kept_kg for tow in caught)
        assert group.live_kg == total(tow.catch[name].live_kg for tow in caught)
        assert group.put_back_kg == total(tow.catch[name].put_back_kg for tow in caught)
        assert group.towed_h == near(total(tow.duration_h for tow in caught))
        hails = [trip.figures.hail[name].out_turn_kg for trip in trips if name in trip.figures.hail]
        assert group.out_turn_kg == total(hails)
        assert group.kept_kg_per_h == near(species_rate(name, tows))
        assert group.kept_kg_per_h_clean == near(species_rate(name, [tow for trip in trips for tow in sound(trip)]))


def species_rate(name: str, tows: Sequence[TowFigures]) -> float | None:
    """Return what was kept of a species over the hours of all tows; None where none of it has a weight in any of them."""
    known = [tow for tow in tows if tow.kept_kg is not None and tow.catch_h]
    if not any(name in tow.catch and tow.catch[name].kept_kg is not None for tow in known):
        return None
    return rate(known, part_of(name))


@given(some_trips())
@settings(max_examples=100)
def test_months_and_grounds_of_a_species_are_over_all_tows_there_and_then(trips: tuple[Reckoned, ...]) -> None:
    tows = [tow for trip in trips for tow in trip.figures.tows]
    for species in ledger_of(trips, FLEET).species():
        kept = species.name
        for month, told in enumerate(species.by_month, 1):
            then = [tow for tow in tows if (when := tow.shot or tow.hauled) and when.month == month]
            assert told == near(rate(then, part_of(kept)))
        for ground, weight in species.kept_by_ground.items():
            there = [tow for tow in tows if tow.ground and fold_name(tow.ground) == fold_name(ground)]
            assert weight == total(tow.catch[kept].kept_kg for tow in there if kept in tow.catch)
        weighed = [(tow.catch[kept].kept_kg, tow) for tow in tows if kept in tow.catch and tow.catch[kept].kept_kg]
        assert {fold_name(name) for name in species.kept_by_ground} == {
            fold_name(tow.ground) for _, tow in weighed if tow.ground
        }
        fastest = sorted(
            (float(weight) / tow.catch_h for weight, tow in weighed if weight and tow.catch_h), reverse=True
        )
        assert [mark.kept_kg_per_h for mark in species.best] == pytest.approx(fastest[:BEST_OF_SPECIES])


@given(some_trips())
@settings(max_examples=60)
def test_landings_by_month_are_what_the_docked_trips_kept(trips: tuple[Reckoned, ...]) -> None:
    # These logs have no out-turn, so that landings are as hailed.
    made = ledger_of(trips, FLEET).fleet().landed_by_month
    landed: dict[tuple[str, str], Fraction] = {}
    for figures in (trip.figures for trip in trips):
        for name, one in figures.catch.items():
            if figures.trip.docked and one.kept_kg:
                place = (figures.trip.docked.strftime("%Y-%m"), name)
                landed[place] = landed.get(place, Fraction(0)) + Fraction(one.kept_kg)

    assert {(month, name): kg for month, species in made.items() for name, kg in species.items()} == landed
    assert list(made) == sorted(made)


@given(some_trips(VESSELS[:2]))
@settings(max_examples=60)
def test_a_vessels_usual_catch_and_best_trips_are_of_hers(trips: tuple[Reckoned, ...]) -> None:
    ledger = ledger_of(trips, FLEET)
    for name in ledger.vessels:
        made = ledger.vessel(name)
        for usual in made.usual:
            kept = [
                one.kept_kg for trip in trips if (one := trip.figures.catch.get(usual.name)) is not None and one.kept_kg
            ]
            assert (usual.trips, usual.kept_kg, usual.median_kg, usual.most_kg) == (
                len(kept), sum(kept), median(kept), max(kept)
            )  # fmt: skip
        ended = [
            (-trip.figures.totals.kept_kg_per_day, trip.figures.trip.id)
            for trip in trips
            if trip.figures.trip.docked and trip.figures.totals.kept_kg_per_day is not None
        ]
        assert made.best == tuple(trip for _, trip in sorted(ended)[:BEST_TRIPS])


@given(some_trips())
@settings(max_examples=60)
def test_a_clock_by_counted_offsets_is_that_of_all_times_of_the_logs(trips: tuple[Reckoned, ...]) -> None:
    times = [
        moment
        for trip in trips
        for moment in (
            trip.log.begins,
            trip.figures.trip.sailed,
            trip.figures.trip.docked,
            trip.figures.trip.last_word,
            trip.figures.trip.as_of,
            *(time for tow in trip.figures.tows for time in (tow.shot, tow.hauled)),
        )
        if moment is not None
    ]

    assert clock_of_offsets(ledger_of(trips, FLEET).fleet().offsets) == clock_of(times)


def test_the_best_on_a_ground_are_found_among_very_many() -> None:
    trips = tuple(
        replace(made, figures=replace(made.figures, trip=replace(made.figures.trip, id=f"trip-{n:02}")))
        for n, made in enumerate(example.trip(tows=40, richness=60 + n) for n in range(6))
    )
    rates = sorted(
        (
            (-float(tow.kept_kg) / tow.catch_h, trip.figures.trip.id, order)
            for trip in trips
            for order, tow in enumerate(trip.figures.tows, 1)
            if tow.ground == "The Saddle" and tow.kept_kg and tow.catch_h
        ),
    )
    (saddle,) = (ground for ground in ledger_of(trips, FLEET).grounds() if ground.name == "The Saddle")

    assert [(mark.trip_id, mark.order) for mark in saddle.best] == [
        (trip, order) for _, trip, order in rates[:BEST_ON_GROUND]
    ]


def test_what_is_kept_of_a_trip_in_lists_is_without_tows_and_the_same_each_time() -> None:
    trip = example.trip(tows=30)
    brief = share_of(trip, FLEET).brief

    assert (brief.trip.figures.tows, brief.trip.log.tows, brief.trip.course) == ((), (), type(trip.course)())
    assert brief.trip.figures.trip == trip.figures.trip
    assert brief.trip.figures.totals == trip.figures.totals
    assert packed_as_it_stands(brief) == packed_as_it_stands(share_of(example.trip(tows=30), FLEET).brief)
    assert len(packed_as_it_stands(brief)) < len(packed(trip)) / 10
