"""Stretches of time against a count of every minute."""

from datetime import datetime, timedelta
from itertools import accumulate, pairwise

from hypothesis import given
from hypothesis import strategies as st

from logbook.reckon.stretches import Stretch, Window, least_in, less, united, within
from tests.reckon.build import moment

START = moment("2026-02-27 21:00")
"""The days after it run over midnights and the end of a month."""
LENGTH = 600
MINUTE = timedelta(minutes=1)

minutes = st.integers(min_value=-60, max_value=LENGTH + 60)
stretches = st.lists(st.tuples(minutes, minutes), max_size=8)
spans = st.tuples(st.integers(0, LENGTH), st.integers(0, LENGTH))


def at(minute: int) -> datetime:
    return START + minute * MINUTE


def some(pairs: list[tuple[int, int]]) -> list[Stretch]:
    return [(at(start), at(end)) for start, end in pairs]


def covered(pairs: list[tuple[int, int]], first: int, last: int) -> list[bool]:
    """Tell of each minute from one to another whether any of some stretches has it."""
    return [any(start <= minute < end for start, end in pairs) for minute in range(first, last)]


def minutes_of(found: tuple[Stretch, ...], first: int, last: int) -> list[bool]:
    return [any(start <= at(minute) < end for start, end in found) for minute in range(first, last)]


@given(stretches)
def test_united_stretches_hold_the_same_minutes_and_do_not_touch(pairs: list[tuple[int, int]]) -> None:
    found = united(some(pairs))

    assert minutes_of(found, -60, LENGTH + 60) == covered(pairs, -60, LENGTH + 60)
    assert all(start < end for start, end in found)
    assert all(one[1] < other[0] for one, other in pairwise(found))


@given(stretches, spans)
def test_what_is_within_a_span_and_what_is_left_of_it_make_up_the_span(
    pairs: list[tuple[int, int]], span: tuple[int, int]
) -> None:
    taken, whole = united(some(pairs)), (at(span[0]), at(span[1]))

    inside, left = within(taken, whole), less(whole, taken)

    assert minutes_of(inside, *span) == covered(pairs, *span)
    assert minutes_of(left, *span) == [not one for one in covered(pairs, *span)]
    assert united((*inside, *left)) == united([whole])


@given(stretches, spans, st.integers(min_value=1, max_value=LENGTH))
def test_the_window_that_holds_least_is_the_first_of_all_windows_that_do(
    pairs: list[tuple[int, int]], span: tuple[int, int], length: int
) -> None:
    found = least_in(united(some(pairs)), length * MINUTE, (at(span[0]), at(span[1])))

    sums = list(accumulate(covered(pairs, *span), initial=0))
    counts = [sums[n + length] - sums[n] for n in range(len(sums) - length)]
    if not counts:
        assert found is None
        return
    least = min(counts)
    assert found == Window(start=at(span[0] + counts.index(least)), held=least * MINUTE)


def test_a_window_as_long_as_the_span_fits_once() -> None:
    span = (at(0), at(60))

    assert least_in(united([(at(-30), at(15))]), 60 * MINUTE, span) == Window(start=at(0), held=15 * MINUTE)
    assert least_in((), 61 * MINUTE, span) is None
