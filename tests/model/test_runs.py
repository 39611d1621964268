"""Numbers told briefly."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.runs import runs_of


@pytest.mark.parametrize(
    ("numbers", "told"),
    [([], ""), ([4], "4"), ([2, 3], "2-3"), ([9, 2, 3, 3, 4, 12], "2-4, 9, 12"), ([1, 3, 5], "1, 3, 5")],
)
def test_runs_are_told_by_their_ends(numbers: list[int], told: str) -> None:
    assert runs_of(numbers, "-") == told


@given(st.lists(st.integers(0, 200)))
def test_what_is_told_is_every_number_once(numbers: list[int]) -> None:
    told = runs_of(numbers, "-")
    back: list[int] = []
    for part in told.split(", ") if told else []:
        first, _, last = part.partition("-")
        back += range(int(first), int(last or first) + 1)

    assert back == sorted(set(numbers))
