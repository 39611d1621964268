"""The look back as a terminal shows it: what is dangerous first, gaps as gaps, no line broken by a name."""

from logbook.reckon.look_back import look_back
from logbook.render.look_back import look_back_text
from tests.reckon.build import moment, reckoned
from tests.reckon.test_look_back import HERE, A, B, C


def text(*texts: str, at: str = "2026-03-20 12:00", weeks: float = 3, within_nm: float = 3) -> str:
    return look_back_text(
        look_back(reckoned(*texts), HERE, moment(at), weeks=weeks, within_nm=within_nm), "58 52N 015 10W"
    )


def test_fasts_stand_first_with_how_far_off_they_are_and_what_they_do_not_tell() -> None:
    lines = text(A, B, C).splitlines()

    assert lines[0] == "FASTS NEAR THERE"
    assert lines[1].split()[:3] == ["0.5", "nm", "off"]
    assert "58°52.5′N" in lines[1]
    assert "not told what" in lines[1]
    assert any("track only" in line and "wreck" in line for line in lines[1:4])
    assert "Where no mark stands the ground may still be foul" in " ".join(lines)


def test_years_species_and_best_tows_follow_and_what_is_left_out_stands_last() -> None:
    made = text(A, B, C)

    assert "tows within 3 nm, 3 weeks before and after Fri 20 Mar of any year" in made
    assert made.index("Year") < made.index("Species") < made.index("Best tows")
    assert made.splitlines()[-1] == "Without 2 tows of those weeks that have no position"


def test_parts_of_miles_and_weeks_are_told() -> None:
    assert "within 2.5 nm, 0.5 weeks" in text(A, weeks=0.5, within_nm=2.5)


def test_nothing_near_is_said_and_is_no_clear_ground() -> None:
    made = text()

    assert "No tow is logged near there at that time of any year." in made
    assert "No fast is logged near there. That does not mean clear ground." in made


def test_a_name_of_many_lines_or_letters_breaks_no_table() -> None:
    long = "x" * 300
    made = text(A.replace("cod: 100 kg", f"{long}: 100 kg").replace("fast: 58", f"ground: '{long}', fast: 58"))

    assert max(len(line) for line in made.splitlines()) <= 120
    assert long not in made
