"""A landing that lies ahead: when to turn, what binds, the sales, and how things stand on turning later.

Worked by hand for a ship 95 nm from port at 9.5 kn, so ten hours of steam, but for the last metres.
"""

from datetime import datetime, timedelta

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from logbook.model.figures import TripFigures
from logbook.model.fleet import Fleet
from tests.read.logs import FLEET, fleet
from tests.reckon.build import figures, moment

MARKET = FLEET.replace(
    "    at: 59 40.0N 012 10.0W\n",
    "    at: 59 40.0N 012 10.0W\n    landing rate: 5 t/h\n"
    "    sale: {days: Mon-Fri, time: 07:00, all ashore before: 3 h, none on: [2026-03-06]}\n",
)
OF = fleet(MARKET)
AT = "2026-03-05 12:00"
"""A Thursday."""
TOWS = """\
ice loaded: 5 t
tows:
  - {shot: 2026-03-04 20:00, hauled: 21:00, stowed: 22:00, deck temperature: 0 C, pen: P1, catch: {cod: 1000 kg}, to: 58 41.5N 014 34.5W}
  - {shot: 2026-03-05 10:00, hauled: 11:00, stowed: 11:30, deck temperature: 0 C, pen: P1, catch: {cod: 1000 kg}, from: 58 41.5N 014 34.5W, to: 58 41.5N 014 34.5W}
readings:
  - {at: 2026-03-05 12:00, temperatures: {P1: 0 C}}
"""


def made(text: str = TOWS, of: Fleet = OF, at: str = AT) -> TripFigures:
    return figures(text, of=of, at=at)


def hours(moment_: datetime | None, since: str = AT) -> float:
    assert moment_ is not None
    return (moment_ - moment(since)) / timedelta(hours=1)


PASSAGE = made().landing.passage_h or 0
A_DAY = 2000 / (15 / 24)
"""Rate of catching: 2000 kg in the fifteen hours from first shot to last haul."""
MELT = 1.9 * 3600 / 334


def test_docking_is_expected_after_the_passage_from_now() -> None:
    landing = made().landing

    assert (landing.expected, landing.port) == (True, "Port Kerrin")
    assert landing.passage_nm == pytest.approx(PASSAGE * 9.5)
    assert hours(landing.docked) == pytest.approx(PASSAGE, abs=1e-6)
    assert (landing.discharge_h, landing.discharge_kg_per_h) == (0.4, 5000)


def test_the_ice_binds_where_it_is_gone_first() -> None:
    landing = made().landing
    lasts = (5000 - 1000 - MELT * 30.5) / (MELT + A_DAY / 24 / 2)

    assert landing.bound_by == "ice"
    assert hours(landing.turn_for_home_by) == pytest.approx(lasts - PASSAGE, abs=1e-3)


def test_the_hold_binds_where_it_is_full_first() -> None:
    # The pens take 7.2 t and 2 t are aboard: 5.2 t more at the rate of catching.
    landing = made(TOWS.replace("5 t", "60 t")).landing

    assert landing.bound_by == "hold"
    assert hours(landing.turn_for_home_by) == pytest.approx(5200 / (A_DAY / 24), abs=1e-6)


def test_the_first_fish_binds_where_it_is_at_the_limit_first() -> None:
    of = fleet(MARKET.replace("P1: 2.4 t, P2: 2.4 t, S1: 2.4 t", "P1: 24 t, P2: 24 t, S1: 24 t"))
    landing = made(TOWS.replace("5 t", "60 t"), of).landing

    # At 0 degrees the first fish, hauled at 21:00, is ten days old 225 h from now; by then passage and discharge of all that
    # is aboard must be over.
    turn = hours(landing.turn_for_home_by)
    assert landing.bound_by == "ice days"
    assert turn + PASSAGE + (2000 + A_DAY / 24 * turn) / 5000 == pytest.approx(225, abs=1e-6)


def test_fish_past_the_limit_already_should_have_been_turned_with_before() -> None:
    late = made(TOWS.replace("5 t", "60 t"), fleet(MARKET.replace("measures:", "limits: {ice days: 0.1}\nmeasures:")))

    assert late.landing.bound_by == "ice days"
    # It reached 0.1 days, 2.4 h, at 23:24, 12.6 h ago; 0.4 h would discharge what is aboard.
    assert hours(late.landing.turn_for_home_by) == pytest.approx(-12.6 - PASSAGE - 0.4, abs=1e-6)
    assert [choice.over_limit_kg for choice in late.landing.choices[:1]] == [2000]
    assert {choice.bound_by for choice in late.landing.choices} == {"ice days"}


def test_in_poor_weather_she_turns_earlier_and_the_last_shot_is_before_either() -> None:
    landing = made().landing

    assert hours(landing.turn_for_home_by_poor_weather) == pytest.approx(
        hours(landing.turn_for_home_by) - PASSAGE / 0.7 + PASSAGE, abs=1e-6
    )
    assert dict(landing.basis)["turn_for_home_by_poor_weather"] == "assumed: 0.7 of the steaming speed"
    # A mean tow of one hour and half an hour more.
    assert hours(landing.last_shot_by) == pytest.approx(hours(landing.turn_for_home_by) - 1.5, abs=1e-6)


def test_choices_tell_how_things_stand_at_docking() -> None:
    now, later, *_, last = made().landing.choices

    assert [hours(choice.turn) for choice in made().landing.choices] == [0, 12, 24, 36, 48]
    assert later.kept_kg == pytest.approx(2000 + A_DAY / 2)
    assert later.hold_full_percent == pytest.approx((2000 + A_DAY / 2) / 72)
    assert hours(later.docked) == pytest.approx(12 + PASSAGE, abs=1e-6)
    assert later.oldest_equivalent_ice_days == pytest.approx((15 + 12 + PASSAGE) / 24, abs=1e-6)
    assert now.ice_left_kg == pytest.approx((made().ice.left_kg or 0) - PASSAGE * (MELT + A_DAY / 48), abs=0.01)
    assert (now.bound_by, last.bound_by, last.ice_left_kg) == (None, "ice", 0)
    assert now.over_limit_kg == 0


def test_sales_that_can_be_made_leave_out_holidays_and_say_when_to_turn() -> None:
    sales = made().landing.sales

    # Friday 6 March has none; Monday's can be made, with all ashore by 04:00.
    assert [sale.at for sale in sales[:2]] == [moment("2026-03-09 07:00"), moment("2026-03-10 07:00")]
    assert len(sales) == 5
    assert sales[0].ashore_by == moment("2026-03-09 04:00")
    turn = hours(sales[0].turn_for_home_by)
    assert turn + PASSAGE + (2000 + A_DAY / 24 * turn) / 5000 == pytest.approx(88, abs=1e-6)
    assert sales[0].oldest_equivalent_ice_days == pytest.approx((15 + 91) / 24)
    assert made().landing.choices[0].sale == moment("2026-03-09 07:00")


def test_a_sale_that_can_not_be_made_is_left_out() -> None:
    # Ten hours of steam and 0.4 h of discharge from 17:00 are past 03:00.
    sale = made(of=fleet(MARKET.replace("2026-03-06", "2026-04-03")), at="2026-03-05 18:00").landing.sales[0]

    assert sale.at == moment("2026-03-09 07:00")


HOMEWARD = TOWS + "turned for home: 2026-03-05 11:30, 58 41.5N 014 34.5W\n"


def test_homeward_there_is_nothing_to_choose_but_sales_to_make() -> None:
    landing = made(HOMEWARD).landing

    assert hours(landing.docked) == pytest.approx(PASSAGE - 0.5, abs=1e-6)
    assert (landing.turn_for_home_by, landing.bound_by, landing.last_shot_by) == (None, None, None)
    assert (landing.turn_for_home_by_poor_weather, landing.choices) == (None, ())
    assert [sale.turn_for_home_by for sale in landing.sales] == [None] * 5
    assert landing.sales[0].at == moment("2026-03-09 07:00")


def test_overdue_she_is_not_expected_before_the_moment_and_makes_no_sale_that_is_too_near() -> None:
    # Ten hours of steam from 11:30 are over at 21:30; at 03:50 all of Friday's fish would have to be ashore in ten minutes.
    of = fleet(MARKET.replace("2026-03-06", "2026-04-03"))
    landing = made(HOMEWARD, of, at="2026-03-06 03:50").landing

    assert landing.docked == moment("2026-03-06 03:50")
    assert dict(landing.basis)["docked"] == "assumed: not before these figures"
    assert landing.sales[0].at == moment("2026-03-09 07:00")


def test_a_hold_that_is_full_binds_now_whatever_the_rate_of_catching() -> None:
    # The one tow with fish has no hauled time and nothing tells how long fishing took, so no rate is known.
    full = "passage:\n  - {at: 2026-03-04 20:00, position: 58 41.5N 014 34.5W}\ntows:\n  - {shot: 2026-03-04 10:00, catch: {cod: 8 t}}\n"
    landing = made(full).landing

    assert (landing.turn_for_home_by, landing.bound_by) == (moment(AT), "hold")
    assert "the rate of catching is not known, left out" in dict(landing.basis)["turn_for_home_by"]
    # A sale can be missed by what is aboard already: 1.6 h to discharge.
    assert landing.discharge_h == 1.6


def test_when_fish_reached_the_limit_is_by_the_readings_it_has() -> None:
    # A day at 0 degrees after an hour on deck at 0, limit half a day; since then the pen has warmed to 10.
    of = fleet(MARKET.replace("measures:", "limits: {ice days: 0.25}\nmeasures:"))
    warm = TOWS.replace(
        "  - {at: 2026-03-05 12:00, temperatures: {P1: 0 C}}\n",
        "  - {at: 2026-03-05 11:00, temperatures: {P1: 0 C}}\n  - {at: 2026-03-05 12:00, temperatures: {P1: 10 C}}\n",
    ).replace("5 t", "60 t")

    # Hauled at 21:00, it was a quarter of a day old at 03:00, nine hours ago.
    assert hours(made(warm, of).landing.turn_for_home_by) == pytest.approx(-9 - PASSAGE - 0.4, abs=1e-5)


def test_a_landing_that_was_not_logged_is_not_expected_any_more() -> None:
    landing = figures(HOMEWARD, of=OF, next_sailed="2026-03-12 06:00").landing

    assert (landing.expected, landing.docked, landing.passage_h, landing.sales, landing.choices) == (
        True,
        None,
        None,
        (),
        (),
    )


def test_with_no_port_known_everything_else_is_told() -> None:
    landing = made(TOWS + "bound for: Elsewhere\n").landing

    assert (landing.port, landing.docked, landing.turn_for_home_by, landing.sales) == ("Elsewhere", None, None, ())
    assert dict(landing.basis)["docked"] == "not known: the fleet file does not say where Elsewhere lies"
    later = landing.choices[1]
    assert (later.docked, later.sale, later.oldest_equivalent_ice_days, later.over_limit_kg) == (None, None, None, None)
    assert later.kept_kg == pytest.approx(2000 + A_DAY / 2)
    # Of what binds, what happens before she would turn is known all the same: the ice is gone in 39 h.
    assert [choice.bound_by for choice in landing.choices] == [None, None, None, None, "ice"]


def test_a_trip_with_nothing_logged_but_tows_names_what_it_leaves_out() -> None:
    bare = "tows:\n  - {shot: 2026-03-04 20:00, hauled: 21:00, to: 58 41.5N 014 34.5W}\n"
    landing = made(
        bare, fleet(FLEET.replace("hold: {heat gain: 1.9 kW, pens: {P1: 2.4 t, P2: 2.4 t, S1: 2.4 t}}", "length: 31 m"))
    ).landing

    assert landing.bound_by == "ice days"
    assert dict(landing.basis)["turn_for_home_by"] == (
        "without tow 1, catch not known; the rate of catching is not known, left out; "
        "the time to discharge is not known, left out; how long the ice lasts is not known, left out; "
        "what the hold takes is not known, left out; assumed: when some of it was under ice; assumed: 10 °C on deck; "
        "assumed: 1 °C in pens without a reading"
    )
    assert dict(landing.basis)["passage_nm"] == "assumed: straight, no route to the port is known"
    # Two hours on a deck of 10 degrees are a third of a day, then at 1 degree a day is 1.21: all assumed.
    limit = 2 + (10 - 4 * 2 / 24) / 1.21 * 24
    assert hours(landing.turn_for_home_by, "2026-03-04 21:00") == pytest.approx(limit - PASSAGE, abs=1e-6)
    assert [choice.kept_kg for choice in landing.choices] == [None] * 5
    assert landing.discharge_h is None


def test_fish_still_on_deck_ages_there_until_it_is_iced() -> None:
    of = fleet(MARKET.replace("measures:", "limits: {ice days: 0.25}\nmeasures:"))
    one = "tows:\n  - {shot: 2026-03-05 10:00, hauled: 12:00, deck temperature: 10 C, to: 58 41.5N 014 34.5W}\n"

    # At 10 degrees a day is four: a quarter of a day is reached in 1.5 h, before the two hours that stowing takes.
    deck = made(one, of).landing
    assert hours(deck.turn_for_home_by) == pytest.approx(1.5 - PASSAGE, abs=1e-6)


@pytest.mark.parametrize(("limit", "binds"), [("0.1", "ice days"), ("10", "hold")])
def test_frozen_fish_does_not_age_any_more(limit: str, binds: str) -> None:
    of = fleet(MARKET.replace("measures:", f"limits: {{ice days: {limit}}}\nmeasures:"))
    frozen = TOWS.replace("{P1: 0 C}", "{P1: -12 C}").replace("5 t", "60 t").replace("stowed: 22:00", "stowed: 23:59")

    assert made(frozen, of).landing.bound_by == binds


def test_just_sailed_nothing_binds_but_the_ice() -> None:
    landing = made("ice loaded: 6 t\npassage:\n  - {at: 2026-03-04 20:00, position: 58 41.5N 014 34.5W}\n").landing

    assert landing.bound_by == "ice"
    assert landing.discharge_h == 0
    assert [choice.oldest_equivalent_ice_days for choice in landing.choices] == [None] * 5
    assert landing.last_shot_by is None


def test_where_nothing_binds_no_time_is_told() -> None:
    of = fleet(
        FLEET.replace("hold: {heat gain: 1.9 kW, pens: {P1: 2.4 t, P2: 2.4 t, S1: 2.4 t}}", "poor weather speed: 6 kn")
    )
    landing = made("passage:\n  - {at: 2026-03-04 20:00, position: 58 41.5N 014 34.5W}\n", of).landing

    assert (landing.turn_for_home_by, landing.bound_by, landing.turn_for_home_by_poor_weather) == (None, None, None)
    assert set(dict(landing.basis)) == {"port", "passage_nm", "turn_for_home_by"}
    assert "how long the ice lasts is not known, left out" in dict(landing.basis)["turn_for_home_by"]


def test_rates_beyond_all_reason_do_not_overflow() -> None:
    slow = fleet(MARKET.replace("5 t/h", "0.001 t/h"))
    little = TOWS.replace("1000 kg", "0.001 kg").replace("5 t", "900 t")

    assert made(of=slow).landing.bound_by == "ice days"
    assert made(little).landing.bound_by == "ice days"


@given(warmer=st.integers(0, 120), colder=st.integers(0, 120))
@settings(max_examples=15)
def test_a_colder_pen_never_turns_her_earlier(*, warmer: int, colder: int) -> None:
    low, high = sorted((warmer, colder))
    times = [
        made(TOWS.replace("{P1: 0 C}", f"{{P1: {tenths / 10} C}}").replace("5 t", "60 t")).landing.turn_for_home_by
        for tenths in (low, high)
    ]

    assert times[0] is not None
    assert times[1] is not None
    assert times[0] >= times[1]


@given(st.integers(0, 80), st.integers(0, 80))
@settings(max_examples=15)
def test_more_ice_never_turns_her_earlier(one: int, other: int) -> None:
    low, high = (made(TOWS.replace("5 t", f"{t} t")).landing.turn_for_home_by for t in sorted((one, other)))

    assert low is not None
    assert high is not None
    assert low <= high


def broken(text: str, of: Fleet, turn: datetime) -> set[str]:
    """Return what happens first on turning at a moment, by the figures themselves as of the end of the discharge."""
    now = made(text, of)
    assert now.landing.passage_h is not None
    assert now.totals.kept_kg is not None
    per_h = max(now.totals.kept_kg_per_day or 0, sum(float(tow.kept_kg or 0) for tow in now.tows)) / 24
    aboard = float(now.totals.kept_kg) + per_h * hours(turn)
    docked = turn + timedelta(hours=now.landing.passage_h)
    finished = docked + timedelta(hours=aboard / 5000)
    then = made(text, of, at=f"{finished:%Y-%m-%d %H:%M:%S.%f}")
    found = set()
    if (then.age.oldest_equivalent_ice_days or 0) > then.age.limit_days:
        found.add("ice days")
    if now.ice.lasts_until is not None and now.ice.lasts_until < docked:
        found.add("ice")
    if aboard > sum(float(pen.capacity_kg or 0) for pen in now.pens.values()):
        found.add("hold")
    return found


@given(
    ice=st.integers(2, 90),
    pen=st.integers(0, 60),
    limit=st.integers(4, 15),
    room=st.integers(2, 40),
    more=st.integers(10, 3000),
)
@settings(max_examples=40)
def test_a_minute_later_breaks_what_binds_and_a_minute_earlier_nothing(
    *, ice: int, pen: int, limit: int, room: int, more: int
) -> None:
    of = fleet(
        MARKET.replace("measures:", f"limits: {{ice days: {limit}}}\nmeasures:").replace("P1: 2.4 t", f"P1: {room} t")
    )
    text = (
        TOWS.replace("5 t", f"{ice} t")
        .replace("{P1: 0 C}", f"{{P1: {pen / 10} C}}")
        .replace("1000 kg", f"{more} kg", 1)
    )
    landing = made(text, of).landing
    turn = landing.turn_for_home_by
    assert turn is not None
    assume(turn > moment(AT))

    assert landing.bound_by in broken(text, of, turn + timedelta(minutes=1))
    assert broken(text, of, turn - timedelta(minutes=1)) == set()
