"""Work spread over processes: the same comes out in the same order, faults come out, and nothing is asked for long before its turn."""

import multiprocessing
import os
from collections.abc import Iterator
from itertools import count, islice

import pytest

from logbook.build.parallel import _AHEAD, _FEW, Hands


def squared(number: int) -> tuple[int, int]:
    return number, number * number


def told(number: int) -> tuple[int, int]:
    return number, os.getpid()


def uneven(number: int) -> int:
    """Take the longer the earlier it is asked for."""
    return sum(range(20_000 * (40 - number))) and number


class SpoiltError(Exception):
    """Something that only this test raises."""


def spoilt_at_30(number: int) -> int:
    if number == 30:
        raise SpoiltError(number)
    return number


@pytest.mark.parametrize("hands", [1, 2, 3])
@pytest.mark.parametrize("items", [0, 1, _FEW, _FEW + 1, 200])
def test_any_number_of_hands_gives_the_same_in_the_same_order(hands: int, items: int) -> None:
    assert list(Hands(hands).map(squared, range(items))) == [(n, n * n) for n in range(items)]


@pytest.mark.parametrize("hands", [1, 2, 3])
def test_what_takes_longer_does_not_lose_its_place(hands: int) -> None:
    assert list(Hands(hands).map(uneven, range(40))) == list(range(40))


@pytest.mark.parametrize("hands", [1, 2, 3])
def test_much_work_is_done_by_as_many_processes_as_there_are_hands(hands: int) -> None:
    done_by = {process for _, process in Hands(hands).map(told, range(200))}

    assert (done_by == {os.getpid()}) is (hands == 1)
    assert len(done_by) <= hands


def test_little_work_is_done_here() -> None:
    assert {process for _, process in Hands(3).map(told, range(_FEW))} == {os.getpid()}


@pytest.mark.parametrize("hands", [1, 2, 3])
def test_a_fault_comes_out_in_its_turn(hands: int) -> None:
    made = Hands(hands).map(spoilt_at_30, range(60))

    assert list(islice(made, 30)) == list(range(30))
    with pytest.raises(SpoiltError, match="30"):
        next(made)
    assert multiprocessing.active_children() == []


@pytest.mark.parametrize("hands", [1, 2, 3])
def test_a_fault_in_what_is_to_be_done_comes_out(hands: int) -> None:
    def items() -> Iterator[int]:
        yield from range(40)
        raise SpoiltError

    with pytest.raises(SpoiltError):
        list(Hands(hands).map(squared, items()))
    assert multiprocessing.active_children() == []


@pytest.mark.parametrize("hands", [1, 2, 3])
def test_things_are_asked_for_few_before_their_turn(hands: int) -> None:
    asked = 0

    def items() -> Iterator[int]:
        nonlocal asked
        for number in count():
            asked += 1
            yield number

    for turn, (number, _) in enumerate(islice(Hands(hands).map(squared, items()), 300)):
        assert number == turn
        assert asked <= max(_FEW + 1, turn + hands * _AHEAD)


@pytest.mark.parametrize("hands", [1, 2, 3])
def test_who_takes_no_more_leaves_no_process_behind(hands: int) -> None:
    made = Hands(hands).map(squared, range(1000))
    assert next(made) == (0, 0)
    made.close()  # type: ignore[attr-defined] # it is a generator

    assert multiprocessing.active_children() == []


def test_there_are_as_many_hands_as_processors_that_this_program_may_use(monkeypatch: pytest.MonkeyPatch) -> None:
    if hasattr(os, "sched_getaffinity"):
        assert Hands().count == len(os.sched_getaffinity(0))
        monkeypatch.delattr(os, "sched_getaffinity")
    monkeypatch.setattr(os, "cpu_count", lambda: 7)
    assert Hands().count == 7
    monkeypatch.setattr(os, "cpu_count", lambda: None)
    assert Hands().count == 1
