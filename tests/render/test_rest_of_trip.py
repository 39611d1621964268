"""Rows of hail and out-turn, weather and light, and rest."""

import pytest

from logbook.model.figures import Neighbours
from logbook.model.named import ByName
from logbook.model.past import Past
from logbook.model.weather import WeatherFigures
from logbook.reckon.out_turn import spread
from logbook.reckon.trip import reckon_trip
from logbook.render.marks import Notes
from logbook.render.rest_of_trip import hail_rows, rest_rows, weather_tables
from tests.read.logs import fleet, trip
from tests.reckon.build import HEAD, figures

TOWS = "tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 100 kg, ling: 5 kg}}\n"
LANDED = "landed: {docked: 2026-03-06 09:00, port: Sulvik, out-turn: {cod: 90 kg, monk: plenty}}\n"


def test_every_species_has_a_row_once_anything_went_over_the_scale() -> None:
    notes = Notes()
    rows = hail_rows(figures(TOWS + LANDED), notes)

    assert [(row.name, row.figures.hail_kg, row.figures.out_turn_kg) for row in rows] == [
        ("cod", 100, 90),
        ("ling", 5, None),
        ("monk", None, None),
    ]
    assert [sorted(row.marks) for row in rows] == [["bias_percent"], ["bias_percent"], ["bias_percent", "out_turn_kg"]]
    assert [words for _, words in notes] == [
        "not told: 0 of the 5 earlier trips that it takes",
        "without 1 of its entries, which can't be read",
    ]


def test_what_a_hail_leaves_out_has_a_letter_beside_it() -> None:
    notes = Notes()
    (row, *_) = hail_rows(figures(TOWS + "  - {shot: 20:00, hauled: 21:00}\n" + LANDED), notes)

    assert row.marks["hail_kg"] == '<sup class="mark">a</sup>'
    assert next(iter(notes)) == ("a", "without tow 2, whose catch is not all told")


def test_a_trip_at_sea_has_rows_only_where_earlier_hails_tell_something() -> None:
    past = Past(out_turn_over_hail=ByName([("cod", spread((0.9, 0.9, 0.9, 0.9, 0.9)))]))
    told = reckon_trip(trip(HEAD + TOWS), fleet(), Neighbours(past=past))

    assert hail_rows(figures(TOWS), Notes()) == ()
    assert [row.name for row in hail_rows(told, Notes())] == ["cod", "ling"]
    assert hail_rows(told, Notes())[0].figures.expected_out_turn_kg == pytest.approx(90)


def test_no_hail_has_no_rows() -> None:
    assert hail_rows(figures(""), Notes()) == ()


def test_tables_of_weather_are_those_that_have_rows() -> None:
    both = weather_tables(
        WeatherFigures(
            hours_by_force=ByName([("4", 2.0), ("10", 1.0)]),
            kept_kg_per_h_by_force=ByName([("4", 50.0), ("10", None)]),
            hours_by_light=ByName([("night", 3.0)]),
            kept_kg_per_h_by_light=ByName([("night", 33.0)]),
        )
    )

    assert [(table.entry, table.rows) for table in both] == [
        ("force", (("4", 2.0, 50.0), ("10", 1.0, None))),
        ("by-light", (("night", 3.0, 33.0),)),
    ]
    assert [table.entry for table in weather_tables(WeatherFigures(hours_by_light=ByName([("day", 1.0)])))] == [
        "by-light"
    ]
    assert weather_tables(WeatherFigures()) == ()


def test_rest_has_a_row_for_each_watch_and_says_what_it_comes_from() -> None:
    notes = Notes()
    rows = rest_rows(figures(f"watches: {{port: 00-06 12-18, starboard: 06-12 18-24}}\n{TOWS}").rest, notes)

    assert [row.name for row in rows] == ["port", "starboard"]
    assert all(row.mark for row in rows)
    assert any("from the watch bill, not a record" in words for _, words in notes)


def test_words_said_of_several_figures_of_a_hand_have_one_letter() -> None:
    rows = rest_rows(figures(f"watches: {{port: 00-06 12-18}}\n{TOWS}").rest, Notes())

    letters = str(rows[0].mark).replace("</sup>", "").split('<sup class="mark">')[1:]
    assert len(letters) == len(set(letters))


def test_where_no_rest_is_told_of_there_are_no_rows() -> None:
    assert rest_rows(figures(TOWS).rest, Notes()) == ()
