"""What sums leave out, in words."""

import pytest

from logbook.reckon.gaps import numbers
from tests.read.logs import FLEET, fleet
from tests.reckon.build import figures


@pytest.mark.parametrize(
    ("tows", "words"),
    [
        ([4], "tow 4"),
        ([4, 5], "tows 4–5"),
        ([2, 5, 6, 8, 7, 7], "tows 2, 5–8"),
    ],
)
def test_tow_numbers_read_as_people_write_them(tows: list[int], words: str) -> None:
    assert numbers(tows) == words


def test_runs_of_tows_are_told_together() -> None:
    made = figures(
        "tows:\n  - 1800-1900, cod 1 basket\n" + "".join(f"  - {h:02}00-{h:02}45\n" for h in (19, 20, 21, 22))
    )

    assert made.totals.incomplete == ("tows 2–5: catch not logged",)


def test_put_back_is_a_gap_only_where_some_tows_tell_it() -> None:
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 19:00, catch: none, put back: {skate: 9 kg, cod: 2 fish}}\n"
        "  - {shot: 20:00, hauled: 21:00, catch: none}\n"
        "  - {shot: 22:00, hauled: 23:00, catch: none, put back: none}\n"
        "  - {shot: 23:30, hauled: 23:50, catch: none, put back: {skate: lots}}\n"
    )

    assert made.totals.put_back_kg == 9
    assert [tow.put_back_kg for tow in made.tows] == [9, None, 0, None]
    assert "tow 2: put back not logged" in made.totals.incomplete
    assert "tow 1: part of what was put back counted, not weighed" in made.totals.incomplete


def test_distance_and_area_are_gaps_where_others_have_them() -> None:
    of = fleet(FLEET.replace("steaming speed", "towing speed: 3 kn\n    steaming speed"))
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 19:00, catch: none, net: rockhopper}\n"
        "  - {shot: 20:00, catch: none}\n  - {shot: 22:00, hauled: 23:00, catch: none, net: flat net}\n",
        of=of,
    )

    assert "tow 2: no hauled time" in made.totals.incomplete
    assert "tow 2: no distance" in made.totals.incomplete
    assert "tow 3: no swept area, the spread of the net is not known" in made.totals.incomplete


def test_many_unreadable_tows_are_counted_not_listed() -> None:
    made = figures("tows:\n" + "  - what\n" * 11)

    assert made.totals.incomplete[0].startswith("lines 4, 5,")
    assert made.totals.incomplete[0].endswith("and 3 more: tows that can't be read")
