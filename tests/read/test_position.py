"""Positions: one place typed in every way, hemispheres, bounds, and slips that would put a vessel on dry land."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from logbook.model.quantity import Position
from logbook.read.position import parse_pair, parse_position
from logbook.read.said import Said
from tests.read.values import clean, read_with, refused

WATERS = ("N", "W")


def place(position: Position) -> tuple[float, float]:
    return round(position.latitude, 6), round(position.longitude, 6)


@pytest.mark.parametrize(
    "text",
    [
        "58 52.4N 015 10.0W",
        "58 52.4N 15 10.0W",
        "58 52.4 N 015 10.0 W",
        "58 52.4n  015 10.0w",
        "58 52.4N, 015 10.0W",
        "58 52.4N/015 10.0W",
        "58 52.4N; 015 10.0W",
        "58 52.4N - 015 10.0W",
        "N58 52.4 - W015 10.0",
        "58 52,4N 015 10,0W",
        "58 52,4N, 015 10,0W",
        "58-52.4N 15-10.0W",
        "58\u201352.4N 15\u201310.0W",
        "58:52.4N 15:10.0W",
        "58°52.4'N 15°10.0'W",
        "58° 52.4' N 15° 10.0' W",
        "58\u00ba52.4\u2019N 15\u02da10.0\u2032W",
        "58\u00f852.4N 015\u00f810.0W",
        "58\u00c2°52.4'N 15\u00c2°10.0'W",
        "58\ufffd52.4N 15\ufffd10.0W",
        "58 deg 52.4 min N 15 deg. 10.0 min. W",
        "58deg52.4'N 15deg10.0'W",
        "N58 52.4 W015 10.0",
        "N 58 52.4, W 015 10.0",
        "N 58° 52.4' W 015° 10.0'",
        "Lat 58 52.4N Long 015 10.0W",
        "Latitude: 58 52.4 North, longitude: 015 10.0 West",
        "58 52 24N 15 10 00W",
        "58-52-24N 15-10-00W",
        "58:52:24N 15:10:00W",
        "58°52'24\"N 15°10'00\"W",
        "58°52'24''N 15°10'00''W",
        "58\u00b052\u203224\u2033N 15\u00b010\u203200\u2033W",
        "58\u00b052\u201924\u201dN 15\u00b010\u201900\u201dW",
        "58 deg 52 min 24 sec N 15 deg 10 min 00 sec W",
    ],
)
def test_one_place_is_read_from_every_form(text: str) -> None:
    position = clean(parse_position(text))

    # 52.4' are 52.4/60 degrees and 24" are 24/3600, by the definition of both (NIST SP 811, table 6).
    assert place(position) == (58.873333, -15.166667)
    assert position.typed == text


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("58.8733 -15.1667", (58.8733, -15.1667)),
        ("58.8733, -15.1667", (58.8733, -15.1667)),
        ("58.8733,-15.1667", (58.8733, -15.1667)),
        ("+58.8733 -015.1667", (58.8733, -15.1667)),
        ("58,8733 -15,1667", (58.8733, -15.1667)),
        ("58,8733, -15,1667", (58.8733, -15.1667)),
        ("58.8733° \u221215.1667°", (58.8733, -15.1667)),
        ("-33.9 18.4", (-33.9, 18.4)),
        ("58.8733 N, 15.1667 W", (58.8733, -15.1667)),
        ("58,8733N 15,1667W", (58.8733, -15.1667)),
        ("58N 15W", (58, -15)),
        ("58 30N 015 40E", (58.5, 15.666667)),
        ("33 54.0S 018 24.0E", (-33.9, 18.4)),
        ("90 00N 180 00W", (90, -180)),
        ("0 00.0S 0 00.0W", (0, 0)),
    ],
)
def test_degrees_are_read(text: str, expected: tuple[float, float]) -> None:
    assert place(clean(parse_position(text))) == expected


def test_nought_degrees_south_are_no_negative_nought() -> None:
    assert [str(clean(parse_position(text)).latitude) for text in ("0 00.0S 0 00.0W", "00S 00W")] == ["0.0", "0.0"]


@pytest.mark.parametrize(
    "text", ["58 52.4 015 10.0", "58 52.4N 015 10.0", "58 52.4 015 10.0W", "58 52 24 15 10 00", "58°52.4' 15°10.0'"]
)
def test_a_missing_hemisphere_is_the_waters_or_an_error(text: str) -> None:
    assert place(clean(parse_position(text, WATERS))) == (58.873333, -15.166667)
    assert refused(parse_position(text))[0] == "hemisphere-missing"


def test_decimal_degrees_without_signs_or_letters_lie_in_the_fleets_waters() -> None:
    assert place(clean(parse_position("58.8733 15.1667", WATERS))) == (58.8733, -15.1667)
    assert place(clean(parse_position("58.8733 -15.1667", WATERS))) == (58.8733, -15.1667)
    code, hint = refused(parse_position("58.8733 15.1667"))
    assert code == "hemisphere-missing"
    assert hint == "write 58.8733N 15.1667W if that is meant, or set `waters: N W` in the fleet file"


@pytest.mark.parametrize("text", ["015 10.0W 58 52.4N", "W015 10.0 N58 52.4", "015 10.0W, 58 52.4N"])
def test_longitude_first_is_read_by_its_letter(text: str) -> None:
    assert place(read_with(parse_position(text), "position-order")) == (58.873333, -15.166667)


def test_degrees_that_may_be_minutes_want_a_look() -> None:
    said = parse_position("58.52N 15.10W")

    assert place(read_with(said, "position-decimal")) == (58.52, -15.1)
    assert said.faults[0].hint == "for degrees and minutes write 58 52N 15 10W"
    assert clean(parse_position("58.75N 15.10W")) is not None


def test_figures_run_together_are_taken_apart_with_a_note() -> None:
    said = parse_position("5852.4N 01510.0W")

    assert said.value is not None
    assert place(said.value) == (58.873333, -15.166667)
    assert [fault.code for fault in said.faults] == ["position-run-together"] * 2
    assert said.faults[0].hint == "write 58 52.4N"
    assert place(read_with(parse_position("0052.4N 001 10.0W"), "position-run-together")) == (0.873333, -1.166667)


@pytest.mark.parametrize("text", ["58 52.4N 15W", "58N 15 10.0W", "58.8733N 15W"])
def test_one_coordinate_without_minutes_wants_a_look(text: str) -> None:
    assert read_with(parse_position(text), "position-uneven") is not None


@pytest.mark.parametrize(
    ("text", "codes"),
    [
        ("67 60.0 N 014 30.2 E", ["position-minutes"]),
        ("67 12.0 N 014 30 60 E", ["position-minutes"]),
        ("58 52.4N 15 99.0W", ["position-minutes"]),
        ("91 00.0 N 181 00.0 E", ["position-range", "position-range"]),
        ("90 00.1N 015 10.0W", ["position-range"]),
        ("58 52.4N 180 00.1W", ["position-range"]),
        ("58 52.4N 185 10.0W", ["position-range"]),
        ("95.5 -15.1667", ["position-range"]),
        ("999999N 15W", ["position-range"]),
        ("9999N 15W", ["position-minutes"]),
        ("58.5 52.4N 15 10.0W", ["position-unreadable"]),
        ("58 52.4N 58 10.0N", ["position-unreadable"]),
        ("58 52.4W 15 10.0W", ["position-unreadable"]),
        ("-58.87 N 15 W", ["position-sign"]),
        ("58.87 N -15.1 W", ["position-sign"]),
        ("58.52.4N 15.10.0W", ["position-unreadable"]),
        ("58 52.4N 015 10.0W (buoy)", ["position-unreadable"]),
        ("off Kerrin", ["position-unreadable"]),
        ("58 52.4", ["position-unreadable"]),
        ("58 15", ["position-unreadable"]),
        ("58 52 4 15 10", ["position-unreadable"]),
        ("58.8733,15.1667,4", ["position-unreadable"]),
        ("", ["position-unreadable"]),
        ("1" * 5000 + "N 15W", ["position-unreadable"]),
        ("1 " * 3000, ["position-unreadable"]),
    ],
)
def test_a_position_that_can_not_be_is_refused(text: str, codes: list[str]) -> None:
    said = parse_position(text)

    assert said.value is None
    assert [fault.code for fault in said.faults] == codes


def test_digits_of_another_script_are_refused_with_the_form_to_type() -> None:
    assert refused(parse_position("\uff15\uff18 52.4N 15 10.0W"))[1] == "write 58 52.4N 15 10.0W"


def pair(first: str, second: str) -> Said[Position]:
    return parse_pair(first, second, None)


@pytest.mark.parametrize(
    ("first", "second", "expected"),
    [
        ("67.2067 N", "14.5033 E", (67.2067, 14.5033)),
        ("67.2067", "-14.5033", (67.2067, -14.5033)),
        ("58 52.4N", "015 10.0W", (58.873333, -15.166667)),
        ("N58 52.4", "W015 10.0", (58.873333, -15.166667)),
        ("58°52'24\"N", "15°10'00\"W", (58.873333, -15.166667)),
    ],
)
def test_a_list_of_the_two_is_a_position(first: str, second: str, expected: tuple[float, float]) -> None:
    position = clean(pair(first, second))

    assert place(position) == expected
    assert position.typed == f"{first}, {second}"


def test_a_list_without_hemispheres_lies_in_the_fleets_waters() -> None:
    assert place(clean(parse_pair("67.2067", "14.5033", WATERS))) == (67.2067, -14.5033)
    assert refused(pair("67.2067", "14.5033"))[0] == "hemisphere-missing"


@pytest.mark.parametrize(("first", "second"), [("x", "15W"), ("58N", "x"), ("1" * 200 + "N", "15W"), ("", "")])
def test_a_list_of_anything_else_is_refused(first: str, second: str) -> None:
    assert refused(pair(first, second))[0] == "position-unreadable"


@given(
    st.integers(0, 89),
    st.integers(0, 599),
    st.integers(0, 179),
    st.integers(0, 599),
    st.sampled_from("NS"),
    st.sampled_from("EW"),
    st.sampled_from(["{} {:04.1f}{} {:03} {:04.1f}{}", "{}°{}'{}, {}°{}'{}", "{}-{:04.1f} {} {}-{:04.1f} {}"]),
)
def test_degrees_and_minutes_are_read_back(
    degrees: int, tenths: int, degrees_: int, tenths_: int, north: str, east: str, form: str
) -> None:
    position = parse_position(form.format(degrees, tenths / 10, north, degrees_, tenths_ / 10, east)).value

    assert position is not None
    assert abs(position.latitude) == pytest.approx(degrees + tenths / 600)
    assert abs(position.longitude) == pytest.approx(degrees_ + tenths_ / 600)
    assert position.latitude <= 0 if north == "S" else position.latitude >= 0
    assert position.longitude <= 0 if east == "W" else position.longitude >= 0


@given(st.floats(-90, 90), st.floats(-180, 180))
def test_signed_degrees_are_read_back(latitude: float, longitude: float) -> None:
    assume(latitude < 0 or longitude < 0)
    position = parse_position(f"{latitude:.5f} {longitude:.5f}").value

    if position is not None:
        assert position.latitude == pytest.approx(latitude, abs=1e-5)
        assert position.longitude == pytest.approx(longitude, abs=1e-5)
    else:
        assert f"{latitude:.5f}{longitude:.5f}".count("-") == 0
