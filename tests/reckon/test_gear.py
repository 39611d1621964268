"""What nets, doors and warps went through, time lost, and where gear came fast."""

from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.model.gear import FastMark, NetFigures
from logbook.reckon.gear import fasts_of
from tests.read.logs import FLEET, fleet, trip
from tests.reckon.build import HEAD, figures, moment, reckoned

ONE_NET = fleet(FLEET.replace("      - {name: flat net, side: port}\n", ""))
TOWS = """\
tows:
  - {shot: 18:00, hauled: 20:00, net: rockhopper, catch: {cod: 10 kg}}
  - {shot: 21:00, hauled: 22:30, net: ROCKHOPPER, fast: rock, damage: belly torn}
  - {shot: 2026-03-05 00:00, hauled: 01:00, net: flat net, gear lost: one door}
  - {shot: 02:00, hauled: 05:00, net: rockhopper}
"""


def log(month: int, hours: int, gear: str = "", net: str = "rockhopper") -> str:
    """Return a whole log of a trip that towed so many hours from noon on the fourth of a month of 2025."""
    events = f"gear:\n{gear}" if gear else ""
    return (
        f"vessel: Solan Bright\nsailed: 2025-{month:02}-04 05:30, Port Kerrin\n"
        f"tows:\n  - {{shot: 12:00, hauled: {12 + hours}:00, net: {net}}}\n{events}"
        f"landed: 2025-{month:02}-08 09:00, Port Kerrin\n"
    )


def gear(event: str) -> str:
    return f"gear:\n  - {{{event}}}\n"


def test_hours_tows_and_mishaps_stand_by_net() -> None:
    made = figures(TOWS).gear

    rock, flat = made["rockhopper"], made["flat net"]
    assert list(made) == ["rockhopper", "flat net"]
    assert (rock.towed_h, rock.tows, rock.foul_tows, rock.fasts, rock.damage) == (6.5, 3, 1, 1, ("belly torn",))
    assert (flat.towed_h, flat.tows, flat.foul_tows, flat.fasts, flat.damage) == (1.0, 1, 1, 0, ("one door",))
    assert (rock.towed_h_since_mended, rock.tows_since_mended, rock.mended_at) == (6.5, 3, None)
    assert dict(rock.basis)["towed_h_since_mended"].startswith("since the first log")


@pytest.mark.parametrize("event", ["changed", "mended", "lost"])
def test_hours_count_anew_from_what_is_done_to_a_net(event: str) -> None:
    made = figures(TOWS + gear(f"at: 2026-03-04 23:00, net: rockhopper, event: {event}, took: 2 h")).gear

    rock = made["rockhopper"]
    assert (rock.towed_h, rock.towed_h_since_mended, rock.tows_since_mended) == (6.5, 3.0, 1)
    assert (rock.mended_at, rock.time_lost_h, rock.basis) == (moment("2026-03-04 23:00"), 2.0, ())
    assert (made["flat net"].towed_h_since_mended, made["flat net"].mended_at) == (1.0, None)


def test_measuring_a_net_makes_it_no_newer_but_takes_its_time() -> None:
    rock = figures(TOWS + gear("at: 2026-03-04 23:00, net: rockhopper, event: measured, took: 30 min")).gear[
        "rockhopper"
    ]

    assert (rock.towed_h_since_mended, rock.mended_at, rock.time_lost_h) == (6.5, None, 0.5)


@pytest.mark.parametrize(
    ("at", "hours", "tows"),
    [
        ("2026-03-04 17:59", 6.5, 3),
        ("2026-03-04 18:00", 6.5, 3),
        # in the middle of a tow: that tow was shot with the net as it was before
        ("2026-03-04 18:01", 4.5, 2),
        ("2026-03-04 20:00", 4.5, 2),
        ("2026-03-05 02:00", 3.0, 1),
        ("2026-03-05 03:00", None, 0),
        ("2026-03-05 05:00", None, 0),
    ],
)
def test_a_tow_counts_where_it_was_shot_no_earlier_than_the_mending(at: str, hours: float | None, tows: int) -> None:
    rock = figures(TOWS + gear(f"at: {at}, net: rockhopper, event: mended")).gear["rockhopper"]

    assert (rock.towed_h_since_mended, rock.tows_since_mended) == (hours, tows)
    assert rock.towed_h == 6.5


def test_of_several_changes_the_last_in_time_counts_whatever_the_order_typed() -> None:
    events = (
        "gear:\n  - {at: 2026-03-05 01:30, net: rockhopper, event: changed, took: 1 h}\n"
        "  - {at: 2026-03-04 20:30, net: rockhopper, event: mended, took: 30 min}\n"
    )
    rock = figures(TOWS + events).gear["rockhopper"]

    assert (rock.mended_at, rock.towed_h_since_mended, rock.time_lost_h) == (moment("2026-03-05 01:30"), 3.0, 1.5)


def test_an_event_without_a_time_is_left_out_and_said() -> None:
    made = figures(TOWS + gear("at: 27:99, net: rockhopper, event: mended, took: 1 h")).gear["rockhopper"]

    assert (made.towed_h_since_mended, made.mended_at, made.time_lost_h) == (6.5, None, 1.0)
    assert "a change or mending whose time is not known is left out" in dict(made.basis)["towed_h_since_mended"]


def test_tows_without_a_hauled_or_a_shot_time_count_without_hours_and_that_is_said() -> None:
    text = (
        "tows:\n  - {shot: 18:00, net: rockhopper}\n  - {shot: 20:00, hauled: 21:00, net: rockhopper}\n"
        "  - {hauled: 2026-03-04 23:00, net: rockhopper}\n"
    )
    made = figures(text).gear["rockhopper"]

    assert (made.towed_h, made.tows, made.towed_h_since_mended, made.tows_since_mended) == (1.0, 3, 1.0, 3)
    assert "tows whose hours are not known are left out" in dict(made.basis)["towed_h_since_mended"]


def test_a_net_of_which_no_hours_are_known_has_none() -> None:
    made = figures("tows:\n  - {shot: 18:00, net: rockhopper}\n").gear

    assert (made["rockhopper"].towed_h, made["rockhopper"].towed_h_since_mended) == (None, None)
    assert (made["flat net"].towed_h, made["flat net"].tows) == (None, 0)


def test_a_tow_hauled_as_the_net_was_mended_was_towed_before() -> None:
    text = "tows:\n  - {hauled: 2026-03-04 20:00, net: rockhopper}\n  - {hauled: 2026-03-04 23:00, net: rockhopper}\n"
    made = figures(text + gear("at: 2026-03-04 20:00, net: rockhopper, event: mended")).gear["rockhopper"]

    assert made.tows_since_mended == 1


def test_a_vessel_with_one_net_tows_it_where_none_is_named() -> None:
    made = figures("tows:\n  - {shot: 18:00, hauled: 20:00}\n", of=ONE_NET).gear

    assert {name: net.towed_h for name, net in made.items()} == {"rockhopper": 2.0}


def test_of_several_nets_none_is_guessed_where_none_is_named() -> None:
    made = figures("tows:\n  - {shot: 18:00, hauled: 20:00}\n").gear

    assert {name: net.towed_h for name, net in made.items()} == {"rockhopper": None, "flat net": None}


def test_a_mending_that_names_no_net_is_of_the_only_one() -> None:
    text = "tows:\n  - {shot: 18:00, hauled: 20:00}\n  - {shot: 22:00, hauled: 23:00}\n"
    made = figures(text + gear("at: 2026-03-04 21:00, net: , event: mended"), of=ONE_NET).gear

    assert {name: (net.towed_h_since_mended, net.mended_at) for name, net in made.items()} == {
        "rockhopper": (1.0, moment("2026-03-04 21:00"))
    }


def test_a_mending_that_names_none_of_several_nets_makes_no_net_of_its_own_and_is_said() -> None:
    made = figures(TOWS + gear("at: 2026-03-04 21:00, net: , event: mended")).gear

    assert list(made) == ["rockhopper", "flat net"]
    for net in made.values():
        assert net.mended_at is None
        assert "a change or mending that names no net is left out" in dict(net.basis)["towed_h_since_mended"]


def test_a_net_that_the_fleet_does_not_list_is_one_like_any_other() -> None:
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 20:00, net: borrowed}\n" + gear("at: 2026-03-04 21:00, net: Old, event: lost")
    ).gear

    assert (made["borrowed"].towed_h, made["Old"].tows) == (2.0, 0)
    assert made["Old"].mended_at == moment("2026-03-04 21:00")


def test_doors_and_warps_go_with_every_tow_once_something_was_done_to_them() -> None:
    made = figures(TOWS + gear("at: 2026-03-04 23:00, doors: port door, event: changed, took: 1 h"))

    assert list(made.rigging) == ["doors"]
    doors = made.rigging["doors"]
    assert (doors.towed_h, doors.tows, doors.foul_tows) == (7.5, 4, 2)
    assert (doors.towed_h_since_mended, doors.tows_since_mended, doors.time_lost_h) == (4.0, 2, 1.0)
    assert doors.mended_at == moment("2026-03-04 23:00")
    assert dict(figures(TOWS).rigging) == {}


def test_other_items_of_gear_are_no_net() -> None:
    made = figures(TOWS + gear("at: 2026-03-04 23:00, item: headline float, event: lost"))

    assert (list(made.gear), list(made.rigging)) == (["rockhopper", "flat net"], [])
    assert made.gear["rockhopper"].mended_at is None


def since(*texts: str) -> list[tuple[float | None, int]]:
    """Return hours and tows of the rockhopper since it was mended, trip by trip in order of time."""
    nets = [trip.figures.gear["rockhopper"] for trip in reckoned(*texts)]
    return [(net.towed_h_since_mended, net.tows_since_mended) for net in nets]


def test_hours_run_on_over_the_vessels_trips() -> None:
    mended = "  - {at: 2025-03-04 20:00, net: rockhopper, event: mended}\n"
    trips = [log(1, 2), log(2, 3), log(3, 4, mended), log(4, 5), log(5, 1, net="flat net"), log(6, 1)]

    assert since(*trips) == [(2.0, 1), (5.0, 2), (None, 0), (5.0, 1), (5.0, 1), (6.0, 2)]


def test_the_order_of_files_changes_nothing() -> None:
    mended = "  - {at: 2025-02-04 09:00, net: rockhopper, event: mended}\n  - {at: 2025-02-05 09:00, warps: both, event: changed}\n"
    trips = [log(1, 2), log(2, 3, mended), log(3, 4)]
    rigging = [[dict(trip.figures.rigging) for trip in reckoned(*order)] for order in permutations(trips)]

    assert {tuple(since(*order)) for order in permutations(trips)} == {((2.0, 1), (3.0, 1), (7.0, 2))}
    assert all(made == rigging[0] for made in rigging)
    assert [rig["warps"].towed_h_since_mended if rig else None for rig in rigging[0]] == [None, None, 4.0]


def test_another_vessels_net_of_the_same_name_is_another_net() -> None:
    other = log(2, 5).replace("Solan Bright", "Other")

    assert {
        trip.figures.trip.vessel: trip.figures.gear["rockhopper"].towed_h_since_mended
        for trip in reckoned(log(1, 2), other)
    } == {
        "Solan Bright": 2.0,
        "Other": 5.0,
    }


def test_a_mending_of_an_earlier_trip_stays_known() -> None:
    mended = "  - {at: 2025-01-04 20:00, net: rockhopper, event: mended, took: 2 h}\n"
    last = reckoned(log(1, 2, mended), log(2, 3))[-1].figures.gear["rockhopper"]

    assert (last.mended_at, last.towed_h_since_mended, last.time_lost_h) == (moment("2025-01-04 20:00"), 3.0, None)
    assert last.basis == ()


@given(st.lists(st.tuples(st.integers(1, 9), st.booleans()), min_size=1, max_size=6))
@settings(max_examples=25, deadline=None)
def test_hours_since_are_the_sum_over_the_trips_after_the_last_mending(trips: list[tuple[int, bool]]) -> None:
    mended = "  - {{at: 2025-{:02}-04 06:00, net: rockhopper, event: mended}}\n"
    made = since(*(log(n, hours, mended.format(n) if anew else "") for n, (hours, anew) in enumerate(trips, 1)))

    total = 0
    for (hours, anew), (told, _) in zip(trips, made, strict=True):
        total = hours if anew else total + hours
        assert told == total


@pytest.mark.parametrize("text", ["", "tows: []\n"])
def test_a_trip_without_tows_leaves_the_nets_as_they_were(text: str) -> None:
    assert {name: (net.tows, net.towed_h) for name, net in figures(text).gear.items()} == {
        "rockhopper": (0, None),
        "flat net": (0, None),
    }


def test_what_comes_later_than_the_moment_does_not_count() -> None:
    late = gear("at: 2026-03-05 06:00, net: rockhopper, event: mended")
    made: NetFigures = figures(TOWS + late, at="2026-03-04 22:00").gear["rockhopper"]

    assert (made.tows, made.towed_h, made.fasts, made.mended_at) == (2, 2.0, 0, None)


def test_time_lost_stands_by_reason_as_first_typed() -> None:
    made = figures(
        "time lost:\n  - {from: 06:00, to: 09:00, why: Dodging}\n  - {from: 10:00, to: 10:45, why: gear}\n"
        "  - {from: 23:00, to: 01:30, why: dodging}\n  - {from: 2026-03-05 05:00, why: engine}\n"
    ).time_lost_h

    assert list(made.items()) == [("Dodging", 5.5), ("gear", 0.75)]


def test_time_being_lost_counts_up_to_the_moment() -> None:
    text = "time lost:\n  - {from: 06:00, to: 09:00, why: ice}\n"

    assert dict(figures(text, at="2026-03-04 08:00").time_lost_h) == {"ice": 2.0}


def fasts(text: str) -> list[FastMark]:
    return list(fasts_of(trip(HEAD + text), "solan-bright-2026-03-04"))


def test_a_fast_is_where_the_ship_was_as_typed() -> None:
    (mark,) = fasts(
        "tows:\n  - {shot: 18:00, hauled: 19:00}\n  - {shot: 20:00, hauled: 21:00, ground: The Saddle, depth: 98-102 fm, "
        "from: 58 50N 015 00W, to: 58 55N 015 00W, fast: 58 52.5N 015 01.0W}\n"
    )

    # International yard and pound agreement 1959: a fathom is 1.8288 m.
    assert mark.depth_m == pytest.approx(100 * 1.8288)
    assert (mark.vessel, mark.trip_id, mark.tow, mark.order) == ("Solan Bright", "solan-bright-2026-03-04", 2, 2)
    assert (mark.when, mark.ground, mark.what, mark.track) == (moment("2026-03-04 21:00"), "The Saddle", "", ())
    assert mark.at is not None
    assert (mark.at.latitude, mark.at.longitude) == pytest.approx((58.875, -15 - 1 / 60))


def test_where_no_position_was_typed_the_track_stays_a_line() -> None:
    (mark,) = fasts(
        "tows:\n  - {shot: 20:00, hauled: 21:00, from: 58 50N 015 00W, via: [58 52N 015 30W], to: 58 55N 015 00W, fast: wreck}\n"
    )

    assert (mark.at, mark.what) == (None, "wreck")
    assert [(round(place.latitude, 4), place.longitude) for place in mark.track] == [
        (58.8333, -15.0),
        (58.8667, -15.5),
        (58.9167, -15.0),
    ]


def test_a_fast_of_which_nothing_but_that_it_was_is_known() -> None:
    (mark,) = fasts("tows:\n  - {fast: yes}\n")

    assert (mark.at, mark.track, mark.when, mark.ground, mark.depth_m, mark.what) == (None, (), None, None, None, "")


def test_no_fast_is_none() -> None:
    assert fasts("tows:\n  - {shot: 18:00, hauled: 19:00, fast: no, damage: wing, gear lost: float}\n") == []
