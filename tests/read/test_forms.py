"""Patterns are compiled once, when they are first needed."""

import re

from logbook.read.forms import form


def test_a_form_gives_the_same_pattern_each_time() -> None:
    word = form(r"[a-z]+", re.IGNORECASE)

    assert word() is word()
    assert word().fullmatch("Cod")
