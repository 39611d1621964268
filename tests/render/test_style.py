"""Contrast of the style sheet and of the charts, in light and dark, after the published formulas.

WCAG 2.2: relative luminance and contrast ratio (4.5 for text, 3 for marks). Filter Effects Module Level 1:
`invert` and the matrix of `hue-rotate`, which the style sheet turns charts dark with.
"""

import re
from itertools import product
from math import cos, pi, sin

import pytest

from logbook.render.environment import template_root
from logbook.render.plate import INK, MUTED, PALETTE, PAPER

CSS = (template_root() / "static" / "style.css").read_text("utf-8")
Colour = tuple[float, float, float]


def parsed(text: str) -> Colour:
    digits = text.lstrip("#")
    if len(digits) == 3:
        digits = "".join(letter * 2 for letter in digits)
    red, green, blue = (int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4))
    return red, green, blue


def luminance(colour: Colour) -> float:
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: Colour, other: Colour) -> float:
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def turned(colour: Colour) -> Colour:
    """Return a colour after the style sheet's filter for the dark."""
    found = re.search(r"filter: invert\(([\d.]+)\) hue-rotate\((\d+)deg\)", CSS)
    assert found
    amount, angle = float(found.group(1)), float(found.group(2)) * pi / 180
    red, green, blue = (part * (1 - 2 * amount) + amount for part in colour)
    c, s = cos(angle), sin(angle)
    return tuple(  # type: ignore[return-value]
        min(1.0, max(0.0, row[0] * red + row[1] * green + row[2] * blue))
        for row in (
            (0.213 + c * 0.787 - s * 0.213, 0.715 - c * 0.715 - s * 0.715, 0.072 - c * 0.072 + s * 0.928),
            (0.213 - c * 0.213 + s * 0.143, 0.715 + c * 0.285 + s * 0.140, 0.072 - c * 0.072 - s * 0.283),
            (0.213 - c * 0.213 - s * 0.787, 0.715 - c * 0.715 + s * 0.715, 0.072 + c * 0.928 + s * 0.072),
        )
    )


def themes() -> list[dict[str, Colour]]:
    blocks = re.findall(r":root \{(.*?)\}", CSS, re.DOTALL)
    found = [dict(re.findall(r"--(\w+): (#[0-9a-f]{3,6})", block)) for block in blocks]
    return [{name: parsed(colour) for name, colour in theme.items()} for theme in found]


def test_contrast_of_black_on_white_is_21() -> None:
    # WCAG 2.2, note to contrast ratio
    assert contrast(parsed("#000"), parsed("#fff")) == pytest.approx(21)


def test_there_is_a_theme_for_light_dark_and_paper() -> None:
    assert len(themes()) == 3


@pytest.mark.parametrize(("theme", "name"), list(product(range(3), ("ink", "soft", "accent"))))
def test_text_stands_out(theme: int, name: str) -> None:
    colours = themes()[theme]

    assert contrast(colours[name], colours["paper"]) >= 4.5
    assert contrast(colours[name], colours["raised"]) >= 4.5


@pytest.mark.parametrize("theme", range(3))
def test_focus_stands_out(theme: int) -> None:
    assert contrast(themes()[theme]["focus"], themes()[theme]["paper"]) >= 3


def test_the_dark_is_never_pure_white() -> None:
    dark = themes()[1]

    assert max(luminance(colour) for colour in dark.values()) < 0.8
    assert luminance(turned(parsed(INK))) < 0.8


@pytest.mark.parametrize("colour", PALETTE)
def test_marks_stand_out_on_the_plate_in_light_and_dark(colour: str) -> None:
    assert contrast(parsed(colour), parsed(PAPER)) >= 3
    assert contrast(turned(parsed(colour)), turned(parsed(PAPER))) >= 3


@pytest.mark.parametrize("colour", [INK, MUTED])
def test_words_stand_out_on_the_plate_in_light_and_dark(colour: str) -> None:
    assert contrast(parsed(colour), parsed(PAPER)) >= 4.5
    assert contrast(turned(parsed(colour)), turned(parsed(PAPER))) >= 4.5


def test_the_four_colours_are_published_ones() -> None:
    # Okabe and Ito (2008), Color Universal Design: blue 0,114,178; vermillion 213,94,0; bluish green 0,158,115; reddish purple 204,121,167
    published = [(0, 114, 178), (213, 94, 0), (0, 158, 115), (204, 121, 167)]

    assert [tuple(round(part * 255) for part in parsed(colour)) for colour in PALETTE[:4]] == published


def test_the_style_sheet_loads_nothing() -> None:
    assert "url(" not in CSS
    assert "@import" not in CSS
