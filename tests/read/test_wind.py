"""Wind and sea: points, forces, and the codes that stand for words and knots."""

import pytest

from logbook.read.wind import parse_sea, parse_wind
from tests.read.values import clean, refused


@pytest.mark.parametrize(
    ("text", "point", "force"),
    [
        ("SW 6", "SW", 6),
        ("sw 6", "SW", 6),
        ("SW6", "SW", 6),
        ("SW, 6", "SW", 6),
        ("SW F6", "SW", 6),
        ("SW force 6", "SW", 6),
        ("SW 6 Bft", "SW", 6),
        ("SSW 5-6", "SSW", 6),
        ("SSW 6-5", "SSW", 6),
        ("SW 5 to 6", "SW", 6),
        ("S.W. 6", "SW", 6),
        ("south-west 6", "SW", 6),
        ("West 4", "W", 4),
        ("north north east 4", "NNE", 4),
        ("calm", "", 0),
        ("Calm", "", 0),
        ("6", "", 6),
        ("force 6", "", 6),
        ("F6", "", 6),
        ("variable 2", "", 2),
        ("var. 2", "", 2),
        ("SW 0", "SW", 0),
        ("SW 12", "SW", 12),
    ],
)
def test_a_wind_is_a_point_and_a_force(text: str, point: str, force: int) -> None:
    wind = clean(parse_wind(text))

    assert (wind.point, wind.force, wind.typed) == (point, force, text)


@pytest.mark.parametrize(
    ("text", "code", "hint"),
    [
        ("SW", "wind-no-force", "write it with its Beaufort force: SW 6"),
        ("southwest", "wind-no-force", "write it with its Beaufort force: SW 6"),
        ("SW 13", "wind-range", "write the Beaufort force, 0 to 12"),
        ("6 SW", "wind-unreadable", "write SW 6"),
        ("SW 25 kn", "wind-unreadable", "write SW 6"),
        ("25 knots SW", "wind-unreadable", "write SW 6"),
        ("12 m/s", "wind-unreadable", "write 6"),
        ("6 XX", "wind-unreadable", "write a point and a force: SW 6, or calm"),
        ("XX 25 kn", "wind-unreadable", "write a point and a force: SW 6, or calm"),
        ("SW gale", "wind-unreadable", "write SW 8"),
        ("gale", "wind-unreadable", "write 8"),
        ("XX gale", "wind-unreadable", "write a point and a force: SW 6, or calm"),
        ("SW by W 6", "wind-unreadable", "write a point and a force: SW 6, or calm"),
        ("SW 6 gusting 8", "wind-unreadable", "write a point and a force: SW 6, or calm"),
        ("", "wind-unreadable", "write a point and a force: SW 6, or calm"),
        ("SW 99999", "wind-unreadable", "write a point and a force: SW 6, or calm"),
    ],
)
def test_what_is_no_wind_is_refused_with_what_to_type(text: str, code: str, hint: str) -> None:
    assert refused(parse_wind(text)) == (code, hint)


# WMO No. 306, Manual on Codes, code table 1100: force, name, least and greatest mean speed in whole knots.
BEAUFORT = (
    (1, "light air", 1, 3),
    (2, "light breeze", 4, 6),
    (3, "gentle breeze", 7, 10),
    (4, "moderate breeze", 11, 16),
    (5, "fresh breeze", 17, 21),
    (6, "strong breeze", 22, 27),
    (7, "near gale", 28, 33),
    (8, "gale", 34, 40),
    (9, "strong gale", 41, 47),
    (10, "storm", 48, 55),
    (11, "violent storm", 56, 63),
    (12, "hurricane", 64, 99),
)

# The same table in metres a second: least and greatest.
METRES_A_SECOND = (
    (0, "0", "0.2"),
    (1, "0.3", "1.5"),
    (2, "1.6", "3.3"),
    (3, "3.4", "5.4"),
    (4, "5.5", "7.9"),
    (5, "8.0", "10.7"),
    (6, "10.8", "13.8"),
    (7, "13.9", "17.1"),
    (8, "17.2", "20.7"),
    (9, "20.8", "24.4"),
    (10, "24.5", "28.4"),
    (11, "28.5", "32.6"),
    (12, "32.7", "99"),
)


@pytest.mark.parametrize(("force", "name", "least", "most"), BEAUFORT)
def test_words_and_knots_are_told_their_force(force: int, name: str, least: int, most: int) -> None:
    texts = (f"NW {name}", f"NW {least} kn", f"NW {most} knots")

    assert [refused(parse_wind(text))[1] for text in texts] == [f"write NW {force}"] * 3


@pytest.mark.parametrize(("force", "least", "most"), METRES_A_SECOND)
def test_metres_a_second_are_told_their_force(force: int, least: str, most: str) -> None:
    assert [refused(parse_wind(f"NW {speed} m/s"))[1] for speed in (least, most)] == [f"write NW {force}"] * 2


@pytest.mark.parametrize(
    ("text", "state"),
    [("0", 0), ("4", 4), ("9", 9), ("4-5", 5), ("4 to 5", 5), ("sea 4", 4), ("sea state 6", 6), ("state 6", 6)],
)
def test_a_state_of_sea_is_a_code(text: str, state: int) -> None:
    assert clean(parse_sea(text)) == state


# WMO No. 306, code table 3700.
@pytest.mark.parametrize(
    ("text", "code"),
    [("smooth", 2), ("slight", 3), ("moderate", 4), ("rough", 5), ("very rough", 6), ("high", 7), ("phenomenal", 9)],
)
def test_a_named_state_of_sea_is_told_its_code(text: str, code: int) -> None:
    assert refused(parse_sea(text)) == ("sea-unreadable", f"write {code}")


@pytest.mark.parametrize("text", ["10", "-1", "4.5", "choppy", "", "99999"])
def test_what_is_no_state_of_sea_is_refused(text: str) -> None:
    assert refused(parse_sea(text))[0] == "sea-unreadable"


def test_a_calm_sea_may_be_either_of_two() -> None:
    assert refused(parse_sea("calm"))[1] == "write 0 where it is like glass, 1 where it is rippled"
