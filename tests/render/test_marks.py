from msgspec.structs import replace

from logbook.model.named import ByName
from logbook.render.marks import Notes, basis_of_species
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


def test_several_ways_of_one_figure_are_one_sentence() -> None:
    trip = example.trip(tows=1)
    cod = trip.figures.tows[0].catch["cod"]
    tows = tuple(
        replace(trip.figures.tows[0], catch=ByName([("cod", replace(cod, basis=(("live_kg", words),)))]))
        for words in ("reckoned: × 1.17", "reckoned: × 1.70", "reckoned: × 1.17")
    )
    catch = ByName([("cod", replace(trip.figures.catch["cod"], basis=()))])

    basis = basis_of_species(replace(trip.figures, tows=tows, catch=catch), "cod")

    assert basis == (("live_kg", "reckoned: × 1.17 or reckoned: × 1.70"),)


def test_a_species_tells_how_the_live_weight_of_its_tows_came_about_each_way_once() -> None:
    trip = example.trip(tows=22)

    assert basis_of_species(trip.figures, "cod") == (
        ("live_kg", "assumed: usual state gutted"),
        ("kept_kg", "assumed: usual state gutted"),
    )
