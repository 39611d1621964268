from logbook.render.marks import Notes


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
