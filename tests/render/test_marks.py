from dataclasses import replace

from logbook.render.marks import Notes, basis_of_age, basis_of_species
from tests.render import example


def test_each_way_a_figure_came_about_has_one_letter() -> None:
    notes = Notes()
    first = notes.marks((("distance_nm", "assumed: usual speed"), ("ground", "carried")), ("distance_nm", "ground"))
    second = notes.marks((("distance_nm", "assumed: usual speed"),), ("distance_nm",))

    assert first["distance_nm"] == second["distance_nm"] == '<sup class="mark">a</sup>'
    assert list(notes) == [("a", "assumed: usual speed"), ("b", "carried on from the tow before")]


def test_a_figure_that_is_not_shown_has_no_note() -> None:
    notes = Notes()

    assert notes.marks((("speed_kn", "carried"),), ("ground",)) == {}
    assert len(notes) == 0


def test_letters_go_on_after_z() -> None:
    notes = Notes()
    marks = [notes.mark(f"assumed: {number}") for number in range(28)]

    assert [str(mark)[18:-6] for mark in marks[-3:]] == ["z", "aa", "ab"]


def test_words_are_shown_as_typed() -> None:
    notes = Notes()
    notes.mark("assumed: <b>")

    assert list(notes) == [("a", "assumed: <b>")]


def test_a_figure_that_came_about_in_two_ways_has_two_letters() -> None:
    marks = Notes().marks((("live_kg", "reckoned: one way"), ("live_kg", "reckoned: another")), ("live_kg",))

    assert marks["live_kg"] == '<sup class="mark">a</sup><sup class="mark">b</sup>'


def test_a_species_tells_how_the_live_weight_of_its_tows_came_about_each_way_once() -> None:
    trip = example.trip(tows=22)

    assert basis_of_species(trip.figures, "cod") == (
        ("live_kg", "assumed: usual state gutted"),
        ("kept_kg", "assumed: usual state gutted"),
    )


def test_the_age_of_a_trip_tells_what_was_assumed_for_its_tows() -> None:
    trip = example.trip(tows=2)
    tows = tuple(replace(tow, basis=(("equivalent_ice_days", "assumed: 10 °C on deck"),)) for tow in trip.figures.tows)
    basis = basis_of_age(replace(trip.figures, tows=tows))

    assert basis[-2:] == (
        ("oldest_equivalent_ice_days", "assumed: 10 °C on deck"),
        ("mean_equivalent_ice_days", "assumed: 10 °C on deck"),
    )
