"""The rest of the report for a terminal: out-turn, gear, weather, rest and money."""

from logbook.model.figures import Neighbours
from logbook.model.named import ByName
from logbook.model.past import Past
from logbook.reckon.out_turn import spread
from logbook.reckon.trip import reckon_trip
from logbook.render.plain_besides import besides, gear, money, out_turn, rest, weather
from tests.read.logs import fleet, trip
from tests.reckon.build import HEAD, figures

TOWS = "tows:\n  - {shot: 18:10, hauled: 19:40, net: rockhopper, wind: SW 6, catch: {cod: 1000 kg, ling: 5 kg}}\n"
LANDED = "landed: {docked: 2026-03-06 09:00, port: Sulvik, out-turn: {cod: 900 kg}, prices: {cod: 2.5/kg}}\n"


def columns(line: str) -> list[str]:
    return line.split()


def test_hail_and_out_turn_stand_side_by_side_and_say_where_nothing_is_expected() -> None:
    said = out_turn(figures(TOWS + LANDED))

    assert columns(said[1]) == ["cod", "1", "000", "900", "-100", "-10.0", "-", "-", "-"]
    assert columns(said[2]) == ["ling", "5", "-", "-", "-", "-", "-", "-"]
    assert " ".join(said[3:]) == (
        "No out-turn of cod, ling is expected: fewer than 5 of her earlier trips tell hail and scale."
    )


def test_what_is_expected_has_its_range() -> None:
    # By hand: the middle of 0.90 0.95 1.00 1.05 1.10 and the quartiles with both ends, times 1000 kg.
    past = Past(out_turn_over_hail=ByName([("cod", spread((0.9, 0.95, 1.0, 1.05, 1.1))), ("ling", spread((1.0,) * 5))]))
    said = out_turn(reckon_trip(trip(HEAD + TOWS), fleet(), Neighbours(past=past)))

    assert columns(said[1]) == ["cod", "1", "000", "-", "-", "-", "1", "000", "950", "1", "050"]
    assert len(said) == 3


def test_at_sea_with_few_earlier_trips_it_says_so_alone() -> None:
    assert " ".join(out_turn(figures(TOWS))) == (
        "No out-turn is expected: fewer than 5 of her earlier trips tell hail and scale."
    )
    assert out_turn(figures("")) == []


def test_the_rest_stands_where_there_is_any() -> None:
    made = figures(
        TOWS + LANDED + "time lost:\n  - {from: 20:00, to: 21:30, why: gear}\n  - {from: 22:00, to: 23:00}\n"
    )

    assert columns(gear(made)[1]) == ["rockhopper", "1.5", "1", "0", "1.5", "1"]
    assert gear(made)[-2:] == ["Lost 1.5 h: gear", "Lost 1.0 h: not told why"]
    assert [columns(line) for line in weather(made)[1:]] == [["force", "6", "1.5", "670"]]
    assert columns(money(made)[0]) == ["Gross", "2", "250.00"]
    assert rest(made) == []
    assert [part for part in besides(figures("")) if part] == []
