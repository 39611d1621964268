"""Passages and landings as they were."""

import pytest
from pyproj import Geod

from tests.read.logs import FLEET, fleet
from tests.reckon.build import figures

TWO = FLEET.replace("grounds:", "  - {name: Sulvik, at: 60 05.0N 012 25.0W}\n  - {name: Nowhere}\ngrounds:")
TOW = "tows:\n  - {shot: 16:30, hauled: 18:00, from: 58 48.0N 15 04.0W, to: 58 50.0N 15 04.0W, catch: {cod: 100 kg}}\n"


def nm(*points: tuple[float, float]) -> float:
    """Return a track's length by a reference library: pyproj (PROJ) on WGS84."""
    return float(Geod(ellps="WGS84").line_length([lon for _, lon in points], [lat for lat, _ in points]) / 1852)


LAST = (58 + 50 / 60, -15 - 4 / 60)
KERRIN = (59 + 40 / 60, -12 - 10 / 60)
SULVIK = (60 + 5 / 60, -12 - 25 / 60)


def test_without_a_turn_the_passage_began_with_the_last_haul_where_it_ended() -> None:
    landing = figures(TOW + "landed: 2026-03-05 06:00, Port Kerrin\n").landing

    assert landing.passage_nm == pytest.approx(nm(LAST, KERRIN))
    assert (landing.passage_h, landing.steam_home_h) == (12, 12)


def test_a_second_landing_was_reached_from_the_first_port() -> None:
    made = figures(
        TOW
        + "passage:\n  - {at: 2026-03-05 07:00, position: 59 55N 012 20W}\n"
        + "landed:\n  - {port: Port Kerrin, docked: 2026-03-05 06:00}\n  - {port: Sulvik, docked: 2026-03-05 09:00}\n",
        of=fleet(TWO),
    )
    first, second = made.landing.landings

    assert first.passage_nm == pytest.approx(nm(LAST, KERRIN))
    assert second.passage_nm == pytest.approx(nm(KERRIN, (59 + 55 / 60, -12 - 20 / 60), SULVIK))
    assert (first.passage_h, second.passage_h) == (12, 3)


def test_a_tow_between_two_landings_belongs_to_the_second_passage() -> None:
    made = figures(
        TOW
        + "  - {shot: 2026-03-06 10:00, hauled: 12:00, from: 59 10N 14 00W}\n"
        + "landed:\n  - {port: Port Kerrin, docked: 2026-03-05 06:00, started landing: 07:00, finished landing: 10:00}\n"
        + "  - {port: Port Kerrin, docked: 2026-03-06 22:00}\n"
    )
    first, second = made.landing.landings

    assert (first.passage_h, second.passage_h) == (12, 10)
    assert second.passage_nm == pytest.approx(nm((59 + 10 / 60, -14), KERRIN))


@pytest.mark.parametrize("port", ["Nowhere", "Elsewhere"])
def test_a_passage_to_a_port_nobody_knows_has_hours_alone(port: str) -> None:
    landing = figures(TOW + f"landed: 2026-03-05 06:00, {port}\n", of=fleet(TWO)).landing

    assert (landing.passage_nm, landing.passage_h, landing.port) == (None, 12, port)


def test_a_second_landing_after_a_port_nobody_knows_has_hours_alone() -> None:
    made = figures(
        TOW
        + "landed:\n  - {port: Elsewhere, docked: 2026-03-05 06:00}\n  - {port: Sulvik, docked: 2026-03-05 09:00}\n",
        of=fleet(TWO),
    )

    assert (made.landing.passage_nm, made.landing.passage_h) == (None, 3)


def test_without_any_position_or_time_a_passage_can_not_be_told() -> None:
    made = figures("landed: 2026-03-05 06:00, Port Kerrin\n").landing

    assert (made.passage_nm, made.passage_h, made.steam_home_h, made.steam_out_h) == (None, None, None, None)


def test_a_landing_without_a_docking_tells_what_it_can() -> None:
    made = figures(TOW + "landed: {docked: sometime, port: Port Kerrin, out-turn: {cod: 90 kg}}\n")

    assert made.trip.state == "landed"
    assert (made.landing.docked, made.landing.passage_h) == (None, None)
    assert made.landing.passage_nm == pytest.approx(nm(LAST, KERRIN))


@pytest.mark.parametrize(
    ("head", "port", "words"),
    [
        ("sailed: 2026-03-04 05:30, Port Kerrin\nbound for: Sulvik\n", "Sulvik", None),
        ("sailed: 2026-03-04 05:30, Sulvik\n", "Sulvik", "assumed: the port she sailed from"),
        ("sailed: 2026-03-04 05:30\n", "Port Kerrin", "assumed: the home port"),
    ],
)
@pytest.mark.parametrize("landed", ["", "landed: 2026-03-05 06:00\n"])
def test_the_port_is_the_one_bound_for_else_sailed_from_else_home(
    head: str, port: str, words: str | None, landed: str
) -> None:
    landing = figures(TOW + landed, "vessel: Solan Bright\n" + head, of=fleet(TWO)).landing

    assert landing.port == port
    assert dict(landing.basis).get("port") == words


def test_without_a_home_port_there_may_be_no_port_at_all() -> None:
    of = fleet(FLEET.replace("home port: Port Kerrin\n", ""))

    landing = figures(TOW, "vessel: Solan Bright\nsailed: 2026-03-04 05:30\n", of=of).landing

    assert (landing.port, landing.docked) == (None, None)
    assert dict(landing.basis)["docked"] == "not known: no port is known"
    assert set(dict(landing.basis)) == {"docked", "choices"}


def test_an_out_turn_that_can_not_be_read_or_timed_gives_no_rate() -> None:
    unread = "landed: {docked: 2026-03-05 06:00, port: Port Kerrin, started landing: 07:00, finished landing: 09:00, out-turn: {cod: lots}}\n"

    assert figures(TOW + unread).landing.discharge_kg_per_h is None
    assert figures(TOW + unread.replace("lots", "90 kg")).landing.discharge_kg_per_h == 45
