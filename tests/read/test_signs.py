"""Signs for degrees, minutes and seconds, as old code pages and double encoding leave them."""

import pytest

from logbook.read.signs import degree_signs, plain_signs


@pytest.mark.parametrize("sign", ["°", "º", "˚", "∘"])
def test_a_degree_sign_is_read_even_where_it_was_encoded_twice(sign: str) -> None:
    # The wrong reading is made as it comes about: the bytes of UTF-8 taken for Windows-1252.
    twice = sign.encode().decode("cp1252", errors="ignore")

    assert degree_signs(f"58{sign}52") == "58°52"
    if sign != "∘":
        assert degree_signs(f"58{twice}52") == "58°52"


@pytest.mark.parametrize("sign", ["\u2032", "\u2019", "\u00b4"])
def test_a_minute_sign_is_read_even_where_it_was_encoded_twice(sign: str) -> None:
    assert plain_signs(f"52.4{sign}N") == "52.4'N"
    assert plain_signs(f"52.4{sign.encode().decode('cp1252')}N") == "52.4'N"


def test_a_second_sign_is_read_even_where_it_was_encoded_twice() -> None:
    assert plain_signs(f"24{chr(0x2033).encode().decode('cp1252')}N") == '24"N'


def test_a_degree_sign_of_a_dos_code_page_is_read_between_figures_only() -> None:
    sign = "°".encode("cp850").decode("cp1252")

    assert degree_signs(f"58{sign}52.4N") == "58°52.4N"
    assert degree_signs(f"8{sign}C") == "8°C"
    assert degree_signs("Ørnen") == "Ørnen"


def test_words_are_signs_too() -> None:
    assert plain_signs("Lat. 58 deg 52 mins 24 sec North") == "58 ° 52 ' 24 \" N"
    assert plain_signs("58`52''") == "58'52\""
