"""Ice on deck, as it was last looked at."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.reckon.icing import icing_on_deck
from tests.read.logs import trip
from tests.reckon.build import HEAD, moment

LATE = "2026-03-20 00:00"


def icing(looks: str, at: str = LATE) -> str | None:
    """Return the icing of some looks at the weather, one a line."""
    lines = "".join(f"  - {{{look}}}\n" for look in looks.splitlines())
    found = icing_on_deck(trip(f"{HEAD}weather:\n{lines}" if lines else HEAD), moment(at))
    return found.icing if found else None


@pytest.mark.parametrize(
    ("looks", "found"),
    [
        ("", None),
        ("at: 2026-03-05 08:00, wind: N 8", None),
        ("at: 2026-03-05 08:00, icing: none", None),
        ("at: 2026-03-05 08:00, icing: Severe", "severe"),
        ("at: 2026-03-05 08:00, icing: light\nat: 2026-03-05 12:00, icing: moderate", "moderate"),
        ("at: 2026-03-05 08:00, icing: severe\nat: 2026-03-05 12:00, icing: none", None),
        ("at: 2026-03-05 08:00, icing: severe\nat: 2026-03-05 12:00, wind: N 8", "severe"),
        # whatever the order they were typed in
        ("at: 2026-03-05 12:00, icing: none\nat: 2026-03-05 08:00, icing: severe", None),
        ("at: 2026-03-05 12:00, icing: light\nat: 2026-03-05 08:00, icing: none", "light"),
        # of two of one time the later typed
        ("at: 2026-03-05 08:00, icing: none\nat: 2026-03-05 08:00, icing: severe", "severe"),
        ("at: 2026-03-05 08:00, icing: severe\nat: 2026-03-05 08:00, icing: none", None),
        # one whose time can't be read stands where it was typed
        ("at: 27:99, icing: severe", "severe"),
        ("at: 2026-03-05 08:00, icing: none\nat: 27:99, icing: severe", "severe"),
        ("at: 27:99, icing: severe\nat: 2026-03-05 08:00, icing: none", None),
        ("at: 2026-03-05 08:00, icing: slight\nat: 2026-03-05 07:00, icing: light", "light"),
    ],
)
def test_only_the_last_look_that_says_anything_of_icing_counts(looks: str, found: str | None) -> None:
    assert icing(looks) == found


def test_a_look_after_the_moment_does_not_count() -> None:
    looks = "at: 2026-03-05 08:00, icing: none\nat: 2026-03-05 12:00, icing: severe\nat: 27:99, icing: light"

    assert icing(looks, "2026-03-05 11:59") is None
    assert icing(looks, "2026-03-05 12:00") == "light"
    assert icing("at: 2026-03-05 12:00, icing: severe", "2026-03-05 11:59") is None


@given(st.lists(st.sampled_from(("none", "light", "moderate", "severe")), min_size=1, max_size=20))
def test_any_order_of_looks_with_times_of_their_own_says_the_same(words: list[str]) -> None:
    looks = [f"at: 2026-03-{5 + n // 24:02d} {n % 24:02d}:00, icing: {word}" for n, word in enumerate(words)]

    assert icing("\n".join(looks)) == icing("\n".join(reversed(looks))) == (None if words[-1] == "none" else words[-1])
