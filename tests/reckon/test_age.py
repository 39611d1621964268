"""How old fish is: the rate, the exact integral, and what is assumed."""

from datetime import UTC, datetime, timedelta
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.reckon.curve import Curve
from logbook.reckon.spoilage import linear_days, rate
from tests.reckon.build import figures, moment

START = datetime(2026, 3, 1, tzinfo=UTC)
TEMPERATURES = st.floats(-12, 15)


@pytest.mark.parametrize(
    ("celsius", "expected"),
    [
        (-2, 0.64),
        (-1, 0.81),
        (0, 1),
        (1, 1.21),
        (2, 1.44),
        (4, 1.96),
        (5, 2.25),
        (7, 2.89),
        (10, 4),
        (15, 6.25),
        (-10, 0),
        (-14, 0),
    ],
)
def test_the_rate_is_the_published_square(celsius: float, expected: float) -> None:
    # Huss (1995), FAO Fisheries Technical Paper 348; Olley and Ratkowsky: (1 + 0.1 T) squared.
    assert rate(celsius) == pytest.approx(expected)


@pytest.mark.parametrize(("celsius", "days"), [(4, 7), (7, 5)])
def test_fourteen_days_at_nought_are_as_many_as_observed_when_warmer(celsius: float, days: float) -> None:
    # Published observations of cod: about 14 days at 0, 7 at 4 and 5 at 7 degrees (second-hand).
    assert 14 / rate(celsius) == pytest.approx(days, abs=0.3)


def test_worked_examples_of_stretches() -> None:
    # Worked from the rate of Huss (1995), FAO Fisheries Technical Paper 348: 6 h at 8, 5 d at 0, 1 d at 2; and 4 h at 10, 8 h at 4, 6.5 d at 0.5.
    assert linear_days(8, 8, 0.25) + linear_days(0, 0, 5) + linear_days(2, 2, 1) == pytest.approx(7.25)
    assert linear_days(10, 10, 1 / 6) + linear_days(4, 4, 1 / 3) + linear_days(0.5, 0.5, 6.5) == pytest.approx(
        8.4863, abs=1e-4
    )


def test_a_linear_fall_is_integrated_exactly() -> None:
    # By the rate of Huss (1995), from 10 to 0 degrees in 12 h: (7/3) x 0.5 by calculus; the rate at the mean would give 1.125.
    assert linear_days(10, 0, 0.5) == pytest.approx(7 / 6)


def test_below_the_coldest_nothing_ages() -> None:
    assert linear_days(-20, -10, 3) == 0
    assert linear_days(-20, 0, 2) == pytest.approx(1 / 3)


@given(a=TEMPERATURES, b=TEMPERATURES, part=st.floats(0.01, 0.99))
def test_splitting_a_stretch_changes_nothing(a: float, b: float, part: float) -> None:
    middle = a + (b - a) * part

    assert linear_days(a, middle, part) + linear_days(middle, b, 1 - part) == pytest.approx(
        linear_days(a, b, 1), abs=1e-9
    )


@given(a=TEMPERATURES, b=TEMPERATURES, warmer=st.floats(0, 5))
def test_colder_is_never_older(a: float, b: float, warmer: float) -> None:
    assert linear_days(a, b, 1) <= linear_days(a + warmer, b + warmer, 1) + 1e-12


@given(st.lists(st.tuples(st.integers(0, 200), st.floats(-2, 15)), min_size=1, max_size=5, unique_by=lambda r: r[0]))
def test_a_curve_is_flat_outside_its_readings(readings: list[tuple[int, float]]) -> None:
    points = sorted((START + timedelta(hours=h), t) for h, t in readings)
    early, first, last = START - timedelta(days=2), points[0][0], points[-1][0]
    late = last + timedelta(days=3)
    curve = Curve(points)

    assert curve.days(early, (first,)) == [
        pytest.approx(rate(points[0][1]) * ((first - early) / timedelta(days=1))),
    ]
    assert curve.days(last, (last, late)) == [0, pytest.approx(rate(points[-1][1]) * 3)]
    assert curve.days(first, (early,)) == [0]


@given(
    st.lists(st.tuples(st.integers(0, 200), st.floats(-12, 15)), min_size=1, max_size=5, unique_by=lambda r: r[0]),
    st.lists(st.integers(-50, 250), min_size=3, max_size=3).map(sorted),
)
def test_a_stretch_along_a_curve_is_as_long_as_its_two_parts(
    readings: list[tuple[int, float]], hours: list[int]
) -> None:
    curve = Curve(sorted((START + timedelta(hours=h), t) for h, t in readings))
    start, middle, end = (START + timedelta(hours=h) for h in hours)

    to_middle, whole = curve.days(start, (middle, end))
    (from_middle,) = curve.days(middle, (end,))

    assert to_middle + from_middle == pytest.approx(whole, abs=1e-9)
    assert curve.days(start, (end,)) == [whole]


LOG = "tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 100 kg}, pen: P1, stowed: 20:40, deck temperature: 0 C}\n"


def test_at_a_logged_nought_equivalent_days_are_clock_days() -> None:
    made = figures(
        LOG + "readings:\n  - {at: 2026-03-05 19:40, temperatures: {P1: 0 C}}\nlanded: 2026-03-09 19:40, Port Kerrin\n"
    )

    assert made.age.oldest_ice_days == pytest.approx(5)
    assert made.age.oldest_equivalent_ice_days == pytest.approx(5)
    assert dict(made.tows[0].basis).get("equivalent_ice_days") is None


def test_without_readings_the_assumed_pen_temperature_is_named_and_older() -> None:
    made = figures(LOG + "landed: 2026-03-09 19:40, Port Kerrin\n")

    assert made.age.oldest_equivalent_ice_days == pytest.approx(1 / 24 + (5 - 1 / 24) * 1.21)
    assert "assumed: 1 °C in P1" in dict(made.tows[0].basis)["equivalent_ice_days"]


def test_readings_in_any_order_give_the_same_and_probes_are_no_readings() -> None:
    one = "readings:\n  - {at: 2026-03-05 08:00, temperatures: {P1: 2 C}}\n  - {at: 2026-03-07 08:00, temperatures: {P1: 0 C}}\n"
    other = "readings:\n  - {at: 2026-03-07 08:00, temperatures: {P1: 0 C}}\n  - {at: 2026-03-05 08:00, temperatures: {P1: 2 C}}\n"
    landed = "landed: {docked: 2026-03-09 19:40, temperatures: {P1: 9 C}}\n"

    assert figures(LOG + one + landed).age == figures(LOG + other + landed).age


def test_fish_in_several_pens_is_as_old_as_in_the_warmest() -> None:
    pens = LOG.replace("pen: P1", "pen: [P1, P2]")
    reading = "readings:\n  - {at: 2026-03-05 08:00, temperatures: {P1: 0 C, P2: 3 C}}\nlanded: 2026-03-09 19:40, Port Kerrin\n"

    assert figures(pens + reading).age.oldest_equivalent_ice_days == pytest.approx(1 / 24 + (5 - 1 / 24) * 1.69)


def test_a_temperature_outside_the_rule_is_doubtful() -> None:
    made = figures(
        LOG + "readings:\n  - {at: 2026-03-05 08:00, temperatures: {P1: -4 C}}\nlanded: 2026-03-09 19:40, Port Kerrin\n"
    )

    assert "doubtful" in dict(made.tows[0].basis)["equivalent_ice_days"]


def test_weights_are_told_by_day_and_over_the_limit() -> None:
    made = figures(
        LOG
        + "  - {shot: 2026-03-08 18:10, hauled: 19:40, catch: {cod: 300 kg}}\nlanded: 2026-03-16 19:40, Port Kerrin\n"
    )

    assert dict(made.age.kept_kg_by_day) == {"8": 300, "12": 100}
    # Well-iced fish is good for about ten days: common practice, no source.
    assert made.age.limit_days == 10
    assert made.age.over_limit_kg == 100
    assert made.age.mean_ice_days == pytest.approx(9)


def test_without_fish_there_is_no_age() -> None:
    made = figures("tows:\n  - {shot: 18:10, hauled: 19:40, catch: none}\n")

    assert made.age.oldest_ice_days is None
    assert made.age.over_limit_kg is None


def test_deck_temperatures_are_the_trips_or_assumed_where_a_tow_has_none() -> None:
    plain = LOG.replace(", deck temperature: 0 C", "")
    warm = figures("landed: 2026-03-04 20:40\n" + plain)
    trips = figures("sea temperature: 8 C\ndeck temperature: 4 C\nlanded: 2026-03-04 20:40\n" + plain)

    assert warm.age.oldest_equivalent_ice_days == pytest.approx(4 / 24)
    assert trips.age.oldest_equivalent_ice_days == pytest.approx(3.24 / 24)
    assert "10 °C" in dict(warm.tows[0].basis)["equivalent_ice_days"]
    assert dict(trips.tows[0].basis) == {}


def test_the_trips_temperature_stands_for_the_one_a_tow_does_not_give() -> None:
    made = figures("sea temperature: 8 C\nlanded: 2026-03-04 20:40\n" + LOG)

    assert made.age.oldest_equivalent_ice_days == pytest.approx(3.24 / 24)


def test_fish_of_a_tow_whose_catch_is_not_known_may_be_the_oldest() -> None:
    made = figures(
        "tows:\n  - {shot: 17:00, hauled: 18:00}\n  - {shot: 2026-03-05 17:00, hauled: 18:00, catch: {cod: 100 kg}}\nlanded: 2026-03-06 18:00\n"
    )

    assert (made.age.oldest_ice_days, made.age.mean_ice_days) == (2, 1)
    assert dict(made.age.basis)["oldest_ice_days"] == "assumed: there is fish of tows whose catch is not known"
    assert "assumed: 1 °C in pens without a reading" in dict(made.age.basis)["mean_equivalent_ice_days"]


def test_a_half_kept_log_still_tells_the_oldest() -> None:
    made = figures("tows:\n  - 1700-1800\n  - 1900-2000\nlanded: 2026-03-06 18:00\n")

    assert made.age.oldest_ice_days == 2
    assert (made.age.mean_ice_days, made.age.over_limit_kg, len(made.age.kept_kg_by_day)) == (None, None, 0)


LANDED = "landed: 2026-03-09 19:40, Port Kerrin\n"
READINGS = st.lists(st.tuples(st.integers(0, 150), st.integers(-30, 150)), max_size=5, unique_by=lambda r: r[0])


def read_so(readings: list[tuple[int, int]], warmer: int = 0) -> float:
    """Return how old the fish is by readings of hours after sailing and tenths of a degree."""
    lines = "".join(
        f"  - {{at: {START + timedelta(days=3, hours=hours):%Y-%m-%d %H:%M}, temperatures: {{P1: {(tenths + warmer) / 10} C}}}}\n"
        for hours, tenths in readings
    )
    return figures(LOG + ("readings:\n" + lines if lines else "") + LANDED).age.oldest_equivalent_ice_days or 0


@given(READINGS, st.randoms(use_true_random=False))
@settings(max_examples=20)
def test_any_order_of_readings_gives_the_same(readings: list[tuple[int, int]], chance: Random) -> None:
    shuffled = readings[:]
    chance.shuffle(shuffled)

    assert read_so(shuffled) == pytest.approx(read_so(readings))


@given(READINGS.filter(len), st.integers(0, 50))
@settings(max_examples=20)
def test_a_colder_pen_never_makes_older_fish(readings: list[tuple[int, int]], warmer: int) -> None:
    assert read_so(readings) <= read_so(readings, warmer) + 1e-12


def test_what_is_assumed_never_makes_fish_younger_than_the_same_logged() -> None:
    bare = LOG.replace(", deck temperature: 0 C", "").replace(", stowed: 20:40", "")
    logged = bare.replace("pen: P1", "pen: P1, stowed: 21:40, deck temperature: 10 C")
    readings = "readings:\n  - {at: 2026-03-05 08:00, temperatures: {P1: 1 C}}\n"

    assumed, known = (figures(text + LANDED).age.oldest_equivalent_ice_days for text in (bare, logged + readings))

    assert assumed == pytest.approx(known)


def test_a_reading_after_the_moment_does_not_count() -> None:
    log = (
        LOG
        + "readings:\n  - {at: 2026-03-05 08:00, temperatures: {P1: 0 C}}\n  - {at: 2026-03-09 08:00, temperatures: {P1: 9 C}}\n"
    )

    made = figures(log, at="2026-03-06 19:40")

    assert made.age.oldest_equivalent_ice_days == pytest.approx(2)


def test_a_doubtful_pen_is_named_for_the_trip_too() -> None:
    made = figures(LOG + "readings:\n  - {at: 2026-03-05 08:00, temperatures: {P1: 18 C}}\n" + LANDED)

    assert "P1 is outside" in dict(made.age.basis)["oldest_equivalent_ice_days"]


def test_fish_with_no_hauled_time_came_up_as_early_as_can_be() -> None:
    # Shot at 18:10; until it is stowed as usual it lies on deck, then at the pen's assumed temperature.
    one = "tows:\n  - {shot: 18:10, hauled: 99:99, catch: {cod: 100 kg}, deck temperature: 10 C}\n"
    made = figures(one, at="2026-03-09 18:10")
    known = figures(one.replace("99:99", "18:40"), at="2026-03-09 18:10")

    assert made.age.oldest_ice_days == pytest.approx(5)
    assert made.age.oldest_equivalent_ice_days == pytest.approx(4 * 2 / 24 + (5 - 2 / 24) * 1.21)
    assert (made.age.oldest_equivalent_ice_days or 0) > (known.age.oldest_equivalent_ice_days or 9)
    assert dict(made.age.basis)["oldest_ice_days"] == "assumed: hauled as early as can be, where no time is known"
    assert (made.tows[0].ice_days, made.tows[0].equivalent_ice_days, made.tows[0].on_ice) == (None, None, None)


def test_tows_of_which_only_the_shots_are_logged_have_fish_but_for_gear_still_down() -> None:
    made = figures("tows:\n  - {shot: 08:00}\n  - {shot: 12:00}\n", at="2026-03-05 08:00")

    assert made.age.oldest_ice_days == 1
    assert figures("tows:\n  - {shot: 08:00}\n", at="2026-03-05 08:00").age.oldest_ice_days is None


TOGETHER = """\
sea temperature: 10 C
tows:
  - {shot: 08:00, hauled: 10:00, catch: with next, pen: P1}
  - {shot: 12:00, hauled: 14:00, stowed: 18:00, pen: P2, catch: {cod: 1000 kg}}
readings:
  - {at: 20:00, temperatures: {P1: 0 C, P2: 4 C}}
"""


def test_what_was_sorted_with_a_next_tow_lay_on_deck_until_that_was_stowed_and_lies_with_it() -> None:
    made = figures(TOGETHER, at="2026-03-05 10:00")

    # Hauled at 10:00, eight hours on a deck of 10 degrees, then sixteen at the 4 degrees of the second tow's pen.
    assert made.age.oldest_equivalent_ice_days == pytest.approx(8 / 24 * 4 + 16 / 24 * 1.96)
    assert made.tows[0].on_ice == moment("2026-03-04 18:00")
    assert dict(made.tows[0].basis)["on_ice"] == "assumed: with tow 2, sorted together"


def test_what_waits_for_gear_still_down_to_be_sorted_with_it_lies_on_deck() -> None:
    made = figures(TOGETHER, at="2026-03-04 13:00")

    assert made.age.oldest_equivalent_ice_days == pytest.approx(3 / 24 * 4)


def test_fish_sorted_together_but_stowed_alone_is_as_logged() -> None:
    made = figures(TOGETHER.replace("with next, ", "with next, stowed: 11:00, "), at="2026-03-05 10:00")

    assert made.tows[0].on_ice == moment("2026-03-04 11:00")


def test_stowed_before_it_was_hauled_can_not_be_and_is_not_used() -> None:
    text = "tows:\n  - {shot: 08:00, hauled: 2026-03-04 10:00, stowed: 2026-03-04 09:00, catch: {cod: 100 kg}}\n"
    made = figures(text, at="2026-03-05 10:00")

    assert made.tows[0].on_ice == moment("2026-03-04 12:00")


def test_fish_of_which_no_pen_is_told_may_lie_wherever_the_tally_names_no_tows() -> None:
    made = figures(
        "tows:\n  - {shot: 08:00, hauled: 10:00, stowed: 10:00, catch: {cod: 1000 kg}}\n"
        "stowage:\n  - {at: 10:00, pen: P2, fish: {cod: 1000 kg}}\n"
        "readings:\n  - {at: 12:00, temperatures: {P2: 4 C}}\n",
        at="2026-03-05 10:00",
    )

    assert made.age.oldest_equivalent_ice_days == pytest.approx(1.96)


@pytest.mark.parametrize(("celsius", "in_ice"), [(1, 12.40), (2, 10.42), (4, 7.65), (5, 6.67), (10, 3.75)])
def test_fifteen_days_in_ice_are_as_many_as_worked_when_warmer(celsius: float, in_ice: float) -> None:
    # Torry Advisory Note 15: cod and haddock are edible for about 15 days in ice; by the relative rate of Huss (1995).
    assert 15 / rate(celsius) == pytest.approx(in_ice, abs=0.005)


@pytest.mark.parametrize(
    ("in_ice", "at_five", "at_ten", "at_fifteen"),
    [(6, 2.7, 1.5, 1.0), (10, 4.4, 2.5, 1.6), (14, 6.2, 3.5, 2.2), (18, 8, 4.5, 2.9)],
)
def test_fish_keeps_as_long_as_the_table_predicts(
    in_ice: float, at_five: float, at_ten: float, at_fifteen: float
) -> None:
    # Huss (1995), FAO Fisheries Technical Paper 348 ch. 6, predicted life at 5, 10 and 15 degrees; from memory.
    assert [in_ice / rate(celsius) for celsius in (5, 10, 15)] == [
        pytest.approx(days, abs=0.06) for days in (at_five, at_ten, at_fifteen)
    ]


@given(READINGS.filter(len), st.integers(1, 117 * 60))
@settings(max_examples=20)
def test_a_reading_that_says_what_was_known_anyway_changes_nothing(
    readings: list[tuple[int, int]], minutes: int
) -> None:
    def curve_at(more: tuple[tuple[datetime, float], ...]) -> float:
        points = sorted({**dict(more), **{START + timedelta(hours=h): t / 10 for h, t in readings}}.items())
        return Curve(points).days(START, (START + timedelta(days=6),))[0]

    own = tuple(sorted((START + timedelta(hours=h), t / 10) for h, t in readings))
    middle = START + timedelta(minutes=minutes)

    assert curve_at(((middle, Curve(own).at(middle)),)) == pytest.approx(curve_at(()), abs=1e-9)


def test_midnight_and_the_end_of_a_month_change_nothing() -> None:
    log = "vessel: Solan Bright\nsailed: 2028-02-28 05:30, Port Kerrin\n"
    made = figures(
        "tows:\n  - {shot: 22:10, hauled: 23:59, stowed: 2028-02-29 00:00, pen: P1, deck temperature: 0 C, catch: {cod: 1 kg}}\n"
        "readings:\n  - {at: 2028-02-29 00:00, temperatures: {P1: 0 C}}\n",
        log,
        at="2028-03-01 23:59",
    )

    # 2028 is a leap year.
    assert made.age.oldest_ice_days == 2
    assert made.age.oldest_equivalent_ice_days == pytest.approx(2)
    assert dict(made.age.kept_kg_by_day) == {"2": 1}
