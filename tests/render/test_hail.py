"""The message that is sent ashore: always short enough, and nothing left out without a word."""

import json
import re
from datetime import UTC, datetime, timedelta, timezone
from decimal import Decimal

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.hail import FISH, Counted, HailedFish, HailFigures
from logbook.reckon.hail import reckon_hail
from logbook.render.hail import MOST, hail_text
from tests.read.logs import read, trip
from tests.reckon.build import HEAD, figures

THURSDAY = datetime(2026, 3, 5, 0, 10, tzinfo=UTC)


def fish(species: str, grade: str | None = None, weighs: str | None = None, /, **amounts: str) -> HailedFish:
    """Return fish of which so many of each unit were kept."""
    return HailedFish(
        species=species,
        grade=grade,
        amounts=tuple(Counted(number=Decimal(number), unit=unit) for unit, number in amounts.items()),
        kept_kg=Decimal(weighs) if weighs is not None else None,
    )


HAIL = HailFigures(
    vessel="Solan Bright",
    as_of=THURSDAY,
    state="at sea",
    port="Port Kerrin",
    docked=datetime(2026, 3, 5, 11, 4, tzinfo=UTC),
    expected=True,
    kept=(
        fish("cod", "large", "84", basket="2"),
        fish("cod", "small", "75", basket="1.50", kg="12"),
        fish("haddock", None, "45", box="1"),
        fish("ling", fish="3"),
    ),
    kept_kg=Decimal(204),
    oldest_ice_days=0.1875,
    mean_ice_days=0.1,
    oldest_equivalent_ice_days=0.459,
    sale=datetime(2026, 3, 6, 7, 0, tzinfo=UTC),
    wants="12 t ice,\n and a pilot.",
    sails_again=datetime(2026, 3, 14, 6, 0, tzinfo=UTC),
    not_known=(),
)


def test_a_hail_says_who_when_what_how_old_the_sale_and_what_she_wants() -> None:
    assert hail_text(HAIL) == (
        "SOLAN BRIGHT Thu 5 Mar 00:10 UTC. Expect Port Kerrin Thu 5 Mar 11:04 UTC if turned now. "
        "Kept: cod large 2 baskets, small 1.5 baskets + 12 kg; haddock 1 box; ling 3 fish. "
        "Oldest 0.2 days (as if at 0 C: 0.5), mean 0.1. Sale Fri 6 Mar 07:00 UTC. Wants 12 t ice, and a pilot. "
        "Sails again Sat 14 Mar 06:00 UTC."
    )


def test_what_is_not_known_is_left_out_or_said_to_be_so() -> None:
    bare = replace(
        HAIL,
        port=None,
        docked=None,
        kept=(),
        kept_kg=None,
        oldest_ice_days=None,
        mean_ice_days=None,
        oldest_equivalent_ice_days=None,
        sale=None,
        wants=None,
        sails_again=None,
    )

    assert hail_text(bare) == "SOLAN BRIGHT Thu 5 Mar 00:10 UTC. Docking at port: time not known. No catch logged."
    assert hail_text(replace(bare, kept_kg=Decimal(0))).endswith(" No fish kept.")
    assert hail_text(replace(bare, wants=" .. ")) == hail_text(bare)


def test_fish_that_nobody_weighed_has_an_age_but_no_mean() -> None:
    made = hail_text(replace(HAIL, kept=(fish("ling", fish="3"),), kept_kg=None, mean_ice_days=None))

    assert " Kept: ling 3 fish. Oldest 0.2 days (as if at 0 C: 0.5). Sale" in made


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({}, "Expect Port Kerrin Thu 5 Mar 11:04 UTC if turned now."),
        ({"state": "homeward"}, "Expect Port Kerrin Thu 5 Mar 11:04 UTC."),
        ({"state": "landed", "expected": False}, "Docked Port Kerrin Thu 5 Mar 11:04 UTC."),
        ({"state": "landed", "expected": False, "docked": None}, "Docked Port Kerrin: time not known."),
        ({"docked": None}, "Docking at Port Kerrin: time not known."),
        ({"docked": None, "state": "homeward"}, "Docking at Port Kerrin: time not known."),
        ({"docked": None, "state": "landing not logged"}, "Landing at Port Kerrin not logged."),
    ],
)
def test_the_docking_is_said_as_it_stands(changed: dict[str, object], said: str) -> None:
    assert hail_text(replace(HAIL, **changed)).startswith(f"SOLAN BRIGHT Thu 5 Mar 00:10 UTC. {said} Kept")


def test_every_time_has_its_own_offset() -> None:
    summer = timezone(timedelta(hours=1))
    said = hail_text(replace(HAIL, sale=datetime(2026, 3, 6, 7, 0, tzinfo=summer)))

    assert "Sale Fri 6 Mar 07:00 UTC+01:00." in said
    assert len(re.findall(r"\d\d:\d\d UTC", said)) == 4


def test_tows_whose_catch_is_not_known_are_named() -> None:
    assert "Kept (without tow 4): cod" in hail_text(replace(HAIL, not_known=(4,)))
    assert "Kept (without tows 2-4, 7): cod" in hail_text(replace(HAIL, not_known=(2, 3, 4, 7)))
    assert "Kept (without 1 tow that can't be read): cod" in hail_text(replace(HAIL, unread=1))
    assert "Kept (without tow 4 and 2 tows that can't be read): cod" in hail_text(
        replace(HAIL, not_known=(4,), unread=2)
    )


def test_no_fish_is_said_only_of_tows_whose_catch_is_known() -> None:
    none = replace(HAIL, kept=(), kept_kg=Decimal(0), not_known=(4,))

    assert " Kept (without tow 4): no fish. " in hail_text(none)
    assert " Kept (without tow 4): not known. " in hail_text(replace(none, kept_kg=None))


def test_many_tows_that_are_not_known_do_not_crowd_out_the_fish() -> None:
    said = hail_text(replace(HAIL, not_known=tuple(range(1, 400, 2))))

    assert (
        " Kept (without 200 tows): cod large 2 baskets, small 1.5 baskets + 12 kg; haddock 1 box; ling 3 fish. " in said
    )


def test_where_it_is_too_long_grades_go_first_then_the_lesser_species_then_all_but_the_weight() -> None:
    grades = replace(HAIL, kept=tuple(fish("cod", f"grade {n:02d}", "42", basket="1") for n in range(40)))
    species = replace(HAIL, kept=tuple(fish(f"species {n:02d}", None, "45.5", box="1") for n in range(40)))
    longest = replace(species, kept=tuple(fish(f"{n:030d}", None, "45", **{"u" * 400: "2"}) for n in range(40)))

    assert " Kept: cod 40 baskets. " in hail_text(grades)
    said = hail_text(species)
    named = said.count(" 1 box")
    assert re.search(rf"species 00 1 box; .*; {40 - named} other species {(40 - named) * 45.5 + 0.01:.0f} kg\. ", said)
    assert MOST - len(said) < len("species 00 1 box; ")
    assert " Kept: 1800 kg. " in hail_text(longest)


def test_fish_that_was_only_counted_is_in_the_rest_too() -> None:
    counted = tuple(fish(f"{n:030d}", fish="2") for n in range(40))
    weighed = tuple(fish(f"kind {n:030d}", None, "1.5", kg="1.5") for n in range(10))

    said = hail_text(replace(HAIL, kept=(*weighed, *counted), kept_kg=Decimal(15)))

    assert re.search(r"; \d+ other species [\d.]+ kg \+ 80 fish\. ", said)
    assert re.search(r"; \d+ other species \d+ fish\. ", hail_text(replace(HAIL, kept=counted, kept_kg=None)))


def test_words_for_the_quay_have_the_room_that_the_rest_leaves() -> None:
    words = "twelve tonnes of ice at the ice quay, eight thousand litres of fuel, a berth alongside, a diver for the propeller, two rockhopper bobbins and a splice for the port warp"
    long = replace(HAIL, wants=words)

    assert f"Wants {words}. " in hail_text(long)
    crowded = hail_text(replace(long, kept=tuple(fish(f"species {n:02d}", None, "45", box="1") for n in range(40))))
    assert "Wants twelve tonnes of ice at the ice quay, eight thousand litres of fuel" in crowded
    assert "... Sails again" in crowded
    assert "splice" not in crowded


def test_our_own_words_are_plain_signs() -> None:
    # ETSI TS 123 038: a sign outside the default alphabet halves what a text message holds; ASCII letters, digits and these
    # stops are all in it.
    said = hail_text(replace(HAIL, vessel="S" * 40, wants="w" * 700, not_known=tuple(range(1, 400, 2)), unread=3))

    assert re.fullmatch(r"[A-Za-z0-9 .,:;()+'-]+", said)
    assert said.startswith("S" * 27 + "... ")


ODD = st.text(st.characters(exclude_categories=["Cs"]), max_size=90) | st.sampled_from(("ΐ" * 60, "ß" * 60, "x " * 60))
AMOUNTS = st.tuples(
    st.decimals(0, 10**15, places=3), st.sampled_from(("kg", "t", "lb", "basket", "box", "long-liner's tub", FISH))
)
MOMENTS = st.datetimes(datetime(1970, 1, 1), datetime(2100, 1, 1)).map(  # noqa: DTZ001 - the zone comes with it
    lambda when: when.replace(tzinfo=timezone(timedelta(hours=-3, minutes=-30)))
)
KEPT = st.lists(
    st.builds(
        lambda species, grade, amounts, kg: HailedFish(
            species=species, grade=grade, amounts=tuple(Counted(number=n, unit=u) for n, u in amounts), kept_kg=kg
        ),
        ODD,
        st.none() | ODD,
        st.lists(AMOUNTS, min_size=1, max_size=6),
        st.none() | st.decimals(0, 10**15, places=3),
    ),
    max_size=60,
)
HAILS = st.builds(
    HailFigures,
    vessel=ODD,
    as_of=MOMENTS,
    state=st.sampled_from(("at sea", "homeward", "landed", "landing not logged")),
    port=st.none() | ODD,
    docked=st.none() | MOMENTS,
    expected=st.booleans(),
    kept=KEPT.map(tuple),
    kept_kg=st.none() | st.decimals(0, 10**15, places=3),
    oldest_ice_days=st.none() | st.floats(0, 40000),
    mean_ice_days=st.none() | st.floats(0, 40000),
    oldest_equivalent_ice_days=st.none() | st.floats(0, 2000000),
    sale=st.none() | MOMENTS,
    wants=st.none() | st.text(max_size=700),
    sails_again=st.none() | MOMENTS,
    not_known=st.lists(st.integers(1, 2000), max_size=300).map(tuple),
    unread=st.integers(0, 2000),
)


@given(HAILS)
@example(replace(HAIL, wants="w" * 119 + " " + "w" * 600, kept=(fish("x" * 400, None, "1", kg="1"),)))
@example(replace(HAIL, wants="w" * 117 + " " * 3 + "w" * 600, kept=(fish("x" * 400, None, "1", kg="1"),)))
def test_a_hail_is_one_line_under_six_hundred_signs_and_tells_of_the_fish(hail: HailFigures) -> None:
    said = hail_text(hail)

    assert len(said) < 600
    assert len(said.splitlines()) == 1
    assert said.isprintable()
    assert re.search(r"Kept( \(without .*\))?: |No catch logged\.|No fish kept\.", said)
    assert ("Sails again" in said) >= (hail.sails_again is not None)


NAMES = st.text(st.characters(exclude_categories=["Cs", "Cc", "Zl", "Zp"]), min_size=1, max_size=60)


@given(
    st.lists(st.tuples(NAMES, st.integers(1, 99), st.sampled_from(("baskets", "kg", "lb", "fish"))), max_size=12),
    st.text(max_size=700),
    st.integers(0, 8),
)
def test_whatever_the_log_its_hail_is_short(caught: list[tuple[str, int, str]], wants: str, gaps: int) -> None:
    tows = [f"{json.dumps(name, ensure_ascii=False)}: {number} {unit}" for name, number, unit in caught]
    log = (
        HEAD
        + f"wants: {json.dumps(wants)}\ntows:\n"
        + "".join(f"  - {{shot: 18:00, hauled: 18:30, catch: {{{fish}}}}}\n" for fish in tows)
        + "  - {shot: 18:00, hauled: 18:30}\n  - {shot: 18:00, hauled: 18:30, catch: nil}\n" * gaps
    )
    made, _ = read(log)
    if made is not None:
        said = hail_text(reckon_hail(made, figures(log, head="")))

        assert len(said) < 600
        assert len(said.splitlines()) == 1
        assert said.startswith("SOLAN BRIGHT ")


def test_a_log_whose_hail_is_worked_by_hand() -> None:
    # 103.6 nm by an inverse geodesic from the end of the tow to port, at 9.5 kn: 10 h 54 min.
    log = (
        "wants: ice\ntows:\n"
        "  - {shot: 18:10, hauled: 19:40, to: 58 52.2N 15 09.1W, catch: {cod: {large: 2 baskets}, ling: 3 fish}}\n"
        "  - {shot: 20:10, hauled: 21:40}\n"
    )

    said = hail_text(reckon_hail(trip(HEAD + log), figures(log, at="2026-03-05 00:10")))

    assert said == (
        "SOLAN BRIGHT Thu 5 Mar 00:10 UTC. Expect Port Kerrin Thu 5 Mar 11:04 UTC if turned now. "
        "Kept (without tow 2): cod large 2 baskets; ling 3 fish. Oldest 0.2 days (as if at 0 C: 0.5), mean 0.2. Wants ice."
    )
