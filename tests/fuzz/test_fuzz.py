"""Of any bytes the reader keeps its promises: it never raises, says where in the file, and ends soon; reckoning follows.

Hypothesis chooses what is changed, always the same way, so that a run in one place tells of all; longer runs are had
with `python -m tests.fuzz.mutate` and `tests/fuzz/atheris_read.py`.
"""

from random import Random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from logbook.read.trip import read_trip
from tests.fuzz.mutate import made, mutated, mutated_fleet, one, run, sound
from tests.fuzz.promises import STEPS, STEPS_A_BYTE, hold, hold_fleet, steps, wide

few = settings(max_examples=120, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
chances = st.randoms(use_true_random=False)


@few
@given(chances)
def test_a_changed_log_is_read_and_reckoned(chance: Random) -> None:
    hold(mutated(chance), wide())


@few
@given(chances)
def test_a_log_made_of_words_of_logs_is_read_and_reckoned(chance: Random) -> None:
    hold(made(chance), wide())


@few
@given(chances)
def test_a_changed_fleet_file_is_read_and_logs_by_it(chance: Random) -> None:
    hold_fleet(mutated_fleet(chance), sound()[0].encode())


@settings(few, max_examples=300)
@given(st.binary(max_size=400) | st.text(max_size=400).map(lambda text: text.encode("utf-8", "replace")))
def test_any_bytes_are_read(data: bytes) -> None:
    hold(data, wide())


@settings(few, max_examples=300)
@given(st.text("abc:-, \n\t'\"[]{}#?|>&*!%", max_size=80))
def test_any_order_of_the_signs_of_yaml_is_read(text: str) -> None:
    hold(f"vessel: Solan Bright\nsailed: 2026-03-04 05:30\ntows:\n{text}\n".encode(), wide())


@settings(few, max_examples=40)
@given(chances)
def test_the_work_is_bounded_by_how_long_a_log_is(chance: Random) -> None:
    data = mutated(chance)

    assert steps(lambda: read_trip(data, "trip.yaml", wide())) <= STEPS + STEPS_A_BYTE * len(data)


@pytest.mark.parametrize(
    "text",
    [
        "- " * 4_000,
        "[" * 8_000,
        "{a: " * 3_000,
        "? " * 4_000,
        "a: &a\n" * 1_500,
        "'" * 8_001,
        "x: 'a\n" * 1_500,
        "- [a\n" * 1_500,
        "a:\tb\n\t c\n" * 900,
        "a: b: c\n" * 1_000,
        "- 1810-1940, cod\n" * 500,
        "tows: [\n" + "{shot: 18:10,\n" * 600,
        "\n".join(f"{' ' * (n % 60)}k{n}: v" for n in range(400)),
    ],
    ids=lambda text: text[:8],
)
def test_the_work_is_bounded_for_what_is_typed_again_and_again(text: str) -> None:
    data = f"vessel: Solan Bright\nsailed: 2026-03-04 05:30\n{text}".encode()

    assert steps(lambda: read_trip(data, "trip.yaml", wide())) <= STEPS + STEPS_A_BYTE * len(data)


def test_the_long_run_counts_what_it_reads(capsys: pytest.CaptureFixture[str]) -> None:
    counts = run(range(60), seed=1)

    assert (counts["logs"], counts["broken promises"]) == (60, 0)
    assert counts["with a trip"] > 20
    assert "slowest" in capsys.readouterr().out


def test_a_log_can_be_had_again_by_its_number() -> None:
    assert one(7, 11)[:2] == one(7, 11)[:2]
    assert one(7, 11)[1] != one(7, 12)[1]
