"""The way home that is still ahead."""

import pytest
from pyproj import Geod

from logbook.reckon.as_of import until
from logbook.reckon.homeward import Passage, passage_ahead
from tests.read.logs import FLEET, fleet, trip
from tests.reckon.build import HEAD, moment

ROUTES = FLEET.replace(
    "grounds:",
    "routes:\n  - {to: port kerrin, via: [59 20.0N 013 00.0W]}\n  - {to: Port Kerrin, via: [57 00.0N 013 00.0W]}\n"
    "  - {to: Sulvik, via: [59 30N 013 00W]}\ngrounds:",
)
TOW = "tows:\n  - {shot: 16:30, hauled: 18:00, from: 58 48.0N 15 04.0W, to: 58 50.0N 15 04.0W}\n"
END, START = (58 + 50 / 60, -15 - 4 / 60), (58.8, -15 - 4 / 60)
VIA, KERRIN = (59 + 20 / 60, -13), (59 + 40 / 60, -12 - 10 / 60)


def nm(*points: tuple[float, float]) -> float:
    """Return a track's length by a reference library: pyproj (PROJ) on WGS84."""
    return float(Geod(ellps="WGS84").line_length([lon for _, lon in points], [lat for lat, _ in points]) / 1852)


def passage(text: str, file: str = FLEET, at: str = "2026-03-04 20:00") -> Passage:
    of = fleet(file)
    return passage_ahead(until(trip(HEAD + text, of), moment(at)), of, moment(at))


def test_it_leads_straight_to_a_port_without_routes_at_steaming_speed() -> None:
    made = passage(TOW)

    assert made.nautical_miles == pytest.approx(nm(END, KERRIN))
    assert made.hours == pytest.approx(nm(END, KERRIN) / 9.5)
    assert made.poor_hours == pytest.approx(nm(END, KERRIN) / 9.5 / 0.7)
    assert (made.leaves, made.straight, made.not_known) == (moment("2026-03-04 20:00"), True, "")


def test_it_leads_over_the_shortest_of_the_ports_routes() -> None:
    assert passage(TOW, ROUTES).nautical_miles == pytest.approx(nm(END, VIA, KERRIN))


def test_poor_weather_goes_by_the_vessels_own_speed_and_never_faster_than_fair() -> None:
    own = FLEET.replace("steaming speed: 9.5 kn", "steaming speed: 9.5 kn\n    poor weather speed: 5 kn")
    odd = FLEET.replace("steaming speed: 9.5 kn", "steaming speed: 9.5 kn\n    poor weather speed: 12 kn")

    assert passage(TOW, own).poor_hours == pytest.approx(nm(END, KERRIN) / 5)
    assert passage(TOW, odd).poor_hours == passage(TOW, odd).hours


def test_gear_still_down_is_where_it_was_shot() -> None:
    assert passage(TOW, at="2026-03-04 17:00").nautical_miles == pytest.approx(nm(START, KERRIN))


def test_the_last_position_counts_whatever_told_it() -> None:
    fix = "passage:\n  - {at: 2026-03-04 19:00, position: 59 00N 014 00W}\n  - {at: 19:30, remarks: none}\n"
    turned = "turned for home: 2026-03-04 19:00, 59 00N 014 30W\n"

    assert passage(TOW + fix).nautical_miles == pytest.approx(nm((59, -14), KERRIN))
    assert passage(TOW + fix + turned).nautical_miles == pytest.approx(nm((59, -14.5), KERRIN))


def test_she_left_when_she_turned_or_at_the_fix_after_it() -> None:
    turned = "turned for home: 2026-03-04 19:00, The Saddle\n"
    fix = "passage:\n  - {at: 2026-03-04 19:30, position: 59 00N 014 00W}\n"

    assert passage(TOW + turned).leaves == moment("2026-03-04 19:00")
    assert passage(TOW + turned).nautical_miles == pytest.approx(nm(END, KERRIN))
    assert passage(TOW + turned + fix).leaves == moment("2026-03-04 19:30")
    assert passage(turned).leaves == moment("2026-03-04 19:00")
    assert passage(TOW + "turned for home: sometime, The Saddle\n").leaves == moment("2026-03-04 20:00")


def test_on_passage_she_does_not_go_back_to_what_she_has_passed() -> None:
    turned = "turned for home: 2026-03-04 19:00, The Saddle\n"
    near = TOW + turned + "passage:\n  - {at: 2026-03-04 19:30, position: 59 30N 012 40W}\n"
    far = TOW + turned + "passage:\n  - {at: 2026-03-04 19:30, position: 59 00N 014 00W}\n"

    assert passage(near, ROUTES).nautical_miles == pytest.approx(nm((59.5, -12 - 40 / 60), KERRIN))
    assert passage(far, ROUTES).nautical_miles == pytest.approx(nm((59, -14), VIA, KERRIN))


def test_on_passage_she_still_has_to_round_what_lies_further_off_than_the_port() -> None:
    # Between her and the port lies land; the way leads round a headland that is further from the port than she is.
    headland = ROUTES.replace("[57 00.0N 013 00.0W]", "[60 40.0N 013 00.0W]").replace(
        "  - {to: port kerrin, via: [59 20.0N 013 00.0W]}\n", ""
    )
    turned = "turned for home: 2026-03-04 19:00, The Saddle\n"
    fix = "passage:\n  - {at: 2026-03-04 19:30, position: 59 30N 013 30W}\n"

    made = passage(TOW + turned + fix, headland)

    assert made.nautical_miles == pytest.approx(nm((59.5, -13.5), (60 + 40 / 60, -13), KERRIN))
    assert made.straight is False


def test_where_a_passage_began_that_nobody_knows_the_whole_way_is_ahead() -> None:
    turned = "turned for home: 2026-03-04 19:00, The Saddle\n"
    fix = "passage:\n  - {at: 2026-03-04 19:30, position: 59 30N 012 40W}\n"

    assert passage(turned + fix, ROUTES).nautical_miles == pytest.approx(nm((59.5, -12 - 40 / 60), VIA, KERRIN))


@pytest.mark.parametrize(
    ("text", "file", "why"),
    [
        ("", FLEET, "no position with a time is logged"),
        (TOW + "bound for: Elsewhere\n", FLEET, "the fleet file does not say where Elsewhere lies"),
        (TOW, FLEET.replace("    at: 59 40.0N 012 10.0W\n", ""), "the fleet file does not say where Port Kerrin lies"),
        (TOW, FLEET.replace("steaming speed: 9.5 kn", "length: 31 m"), "the steaming speed is not known"),
        (TOW, FLEET.replace("9.5 kn", "0.001 kn"), "the steaming speed is not known"),
    ],
)
def test_what_is_missing_is_said(text: str, file: str, why: str) -> None:
    made = passage(text, file)

    assert (made.hours, made.poor_hours, made.not_known) == (None, None, why)


def test_without_any_port_there_is_no_passage() -> None:
    of = fleet(FLEET.replace("home port: Port Kerrin\n", ""))
    log = trip("vessel: Solan Bright\nsailed: 2026-03-04 05:30\n" + TOW, of)

    assert passage_ahead(log, of, moment("2026-03-04 20:00")).not_known == "no port is known"
