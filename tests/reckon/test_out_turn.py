"""Hail against out-turn, and how a vessel's earlier hails lay beside the scale."""

from decimal import Decimal
from statistics import median, quantiles

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.figures import Neighbours
from logbook.model.fleet import Fleet, Limits
from logbook.model.named import ByName
from logbook.model.out_turn import HailedSpecies
from logbook.model.past import Past
from logbook.model.quantity import Percent
from logbook.reckon.hail import reckon_hail
from logbook.reckon.out_turn import ENOUGH, out_turn_over_hail, quartiles, spread
from logbook.reckon.trip import reckon_trip
from tests.read.logs import fleet, trip
from tests.reckon.build import HEAD, figures, reckoned

RATIOS = (0.9, 1.1, 0.95, 1.0, 0.8, 1.05)


def hailed(catch: str, out_turn: str | None = None, *, of: Fleet | None = None) -> ByName[HailedSpecies]:
    """Return the `hail` section of a trip of one tow."""
    landed = f"landed: {{docked: 2026-03-06 09:00, port: Sulvik, out-turn: {out_turn}}}\n" if out_turn else ""
    return figures(f"tows:\n  - {{shot: 18:10, hauled: 19:40, catch: {catch}}}\n{landed}", of=of).hail


def after(ratios: dict[str, tuple[float, ...]], catch: str = "{cod: 1000 kg}", landed: str = "") -> HailedSpecies:
    """Return cod of a trip whose vessel's earlier ones came to these ratios."""
    log = trip(f"{HEAD}tows:\n  - {{shot: 18:10, hauled: 19:40, catch: {catch}}}\n{landed}")
    past = Past(out_turn_over_hail=ByName((name, spread(sorted(found))) for name, found in ratios.items()))
    return reckon_trip(log, fleet(), Neighbours(past=past)).hail["cod"]


@pytest.mark.parametrize(
    ("hail", "landed", "percent", "verdict"),
    [
        ("10000", "10850", 8.5, True),
        ("10000", "11150", 11.5, False),
        ("500", "550", 10.0, True),
        ("500", "450", -10.0, True),
        ("500", "550.01", 10.002, False),
        ("1000", "905", -9.5, True),
        ("1000", "900", -10.0, True),
        ("1000", "899.99", -10.001, False),
        ("0.3", "0.33", 10.0, True),
    ],
)
def test_the_tolerance_is_of_the_hail_and_its_limit_lies_within(
    hail: str, landed: str, percent: float, verdict: object
) -> None:
    # Regulation (EC) No 1224/2009 Art. 14(3): 10 % for all species; the base is the hail, which is this program's choice.
    # Of the landed weight, 1000 kg hailed and 905 landed would be 10.5 %, and outside.
    cod = hailed(f"{{cod: {hail} kg}}", f"{{cod: {landed} kg}}")["cod"]

    assert cod.difference_kg == Decimal(landed) - Decimal(hail)
    assert cod.difference_percent == pytest.approx(percent)
    assert cod.within_tolerance is verdict


def test_the_tolerance_is_the_fleets_where_it_has_one() -> None:
    of = replace(fleet(), limits=Limits(hail_tolerance=Percent(Decimal("8.5"))))

    assert hailed("{cod: 1000 kg}", "{cod: 1085 kg}", of=of)["cod"].within_tolerance is True
    assert hailed("{cod: 1000 kg}", "{cod: 1085.1 kg}", of=of)["cod"].within_tolerance is False


def test_a_species_landed_but_not_hailed_and_one_hailed_but_not_landed() -> None:
    made = hailed("{cod: 100 kg, ling: 5 kg}", "{cod: 90 kg, monk: 12 kg}")

    assert list(made) == ["cod", "ling", "monk"]
    assert (made["ling"].hail_kg, made["ling"].out_turn_kg) == (5, None)
    assert (made["monk"].hail_kg, made["monk"].out_turn_kg) == (None, 12)
    for name in ("ling", "monk"):
        told = made[name]
        assert (told.difference_kg, told.difference_percent, told.within_tolerance) == (None, None, None)


def test_a_hail_of_nought_has_no_percentage_and_any_weight_over_the_scale_is_outside() -> None:
    cod = hailed("{cod: 0 kg}", "{cod: 1 kg}")["cod"]

    assert (cod.hail_kg, cod.difference_kg, cod.difference_percent, cod.within_tolerance) == (0, 1, None, False)
    assert hailed("{cod: 0 kg}", "{cod: 0 kg}")["cod"].within_tolerance is True


def test_fish_put_back_or_undersize_is_not_hailed() -> None:
    made = figures(
        "tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 10 kg}, undersize: {cod: 3 kg, ling: 1 kg}, put back: {skate: 5 kg}}\n"
    ).hail

    assert {name: one.hail_kg for name, one in made.items()} == {"cod": 10}


def test_several_landings_are_added_up() -> None:
    made = figures(
        "tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: {large: 60 kg, small: 40 kg}}}\n"
        "landed:\n"
        "  - {docked: 2026-03-05 09:00, port: Sulvik, out-turn: {cod: {large: 50 kg}}}\n"
        "  - {docked: 2026-03-06 09:00, port: Port Kerrin, out-turn: {COD: {large: 8 kg, small: 44 kg}}}\n"
    ).hail["cod"]

    assert (made.out_turn_kg, made.difference_kg) == (102, 2)
    assert {grade: (part.hail_kg, part.out_turn_kg) for grade, part in made.grades.items()} == {
        "large": (60, 58),
        "small": (40, 44),
    }
    assert made.grades["large"].difference_percent == pytest.approx(-10 / 3)


def test_an_entry_of_the_out_turn_that_cannot_be_read_is_left_out_and_said() -> None:
    made = hailed("{cod: 100 kg, ling: 9 kg}", "{cod: {large: 50 kg, small: plenty}, ling: plenty}")

    assert (made["cod"].out_turn_kg, made["ling"].out_turn_kg) == (50, None)
    for name in ("cod", "ling"):
        assert dict(made[name].basis)["out_turn_kg"] == "without 1 of its entries, which can't be read"


def test_grades_match_whatever_their_case_and_those_of_one_side_alone_are_told() -> None:
    grades = hailed("{cod: {large: 60 kg, medium: 30 kg}}", "{cod: {LARGE: 66 kg, small: 20 kg}}")["cod"].grades

    assert {grade: (part.hail_kg, part.out_turn_kg, part.difference_kg) for grade, part in grades.items()} == {
        "large": (60, 66, 6),
        "medium": (30, None, None),
        "small": (None, 20, None),
    }


@pytest.mark.parametrize(
    ("catch", "out_turn", "grades"),
    [
        ("{cod: 60 kg}", "{cod: 66 kg}", {}),
        ("{cod: 60 kg}", "{cod: {large: 66 kg}}", {"large": (None, 66)}),
        ("{cod: {large: 60 kg}}", "{cod: 66 kg}", {"large": (60, None), "ungraded": (None, 66)}),
    ],
)
def test_grades_are_told_where_either_side_has_them(
    catch: str, out_turn: str, grades: dict[str, tuple[int | None, int | None]]
) -> None:
    made = hailed(catch, out_turn)["cod"]

    assert {grade: (part.hail_kg, part.out_turn_kg) for grade, part in made.grades.items()} == grades
    assert (made.hail_kg, made.out_turn_kg) == (60, 66)


@given(st.lists(st.integers(0, 10**6), min_size=1, max_size=3), st.lists(st.integers(0, 10**6), min_size=1, max_size=3))
def test_grades_add_up_to_the_species(hails: list[int], scales: list[int]) -> None:
    names = ("large", "medium", "small")
    catch = ", ".join(f"{name}: {kg} kg" for name, kg in zip(names, hails, strict=False))
    scale = ", ".join(f"{name}: {kg} kg" for name, kg in zip(reversed(names), scales, strict=False))
    cod = hailed(f"{{cod: {{{catch}}}}}", f"{{cod: {{{scale}}}}}")["cod"]

    assert cod.hail_kg == sum(part.hail_kg or 0 for part in cod.grades.values()) == sum(hails)
    assert cod.out_turn_kg == sum(part.out_turn_kg or 0 for part in cod.grades.values()) == sum(scales)


@pytest.mark.parametrize(
    ("tows", "words"),
    [
        ("- {shot: 18:10, hauled: 19:40, catch: {cod: 90 kg}}\n  - {shot: 20:00, hauled: 21:00}", "without tow 2, whose catch is not all told"),
        ("- {shot: 18:10, hauled: 19:40, catch: {cod: 90 kg, ling: plenty}}", "without tow 1, whose catch is not all told"),
        ("- {shot: 18:10, hauled: 19:40, catch: {cod: 90 kg}}\n  - 7", "without 1 tow that can't be read"),
        ("- {shot: 18:10, hauled: 19:40, catch: {cod: {large: 90 kg, small: 3 fish}}}", "without fish that was counted, not weighed"),
        ("- {shot: 18:10, hauled: 19:40, catch: {cod: 90 kg, ling: 3 fish}}", None),
        ("- {shot: 18:10, hauled: 19:40, catch: {cod: 90 kg}}\n  - {shot: 20:00, hauled: 21:00, catch: nil}", None),
    ],
)  # fmt: skip
def test_a_hail_that_leaves_something_out_says_so_and_tells_nothing_of_later_hails(
    tows: str, words: str | None
) -> None:
    text = f"tows:\n  {tows}\nlanded: {{docked: 2026-03-06 09:00, port: Sulvik, out-turn: {{cod: 99 kg}}}}\n"

    assert dict(figures(text).hail["cod"].basis).get("hail_kg") == words
    assert out_turn_over_hail(trip(HEAD + text)) == ({} if words else {"cod": pytest.approx(1.1)})


@pytest.mark.parametrize("out_turn", ["{cod: {large: 50 kg, small: plenty}}", "{ling: 5 kg}", "{cod: plenty}"])
def test_an_out_turn_that_is_not_wholly_known_tells_nothing_of_later_hails(out_turn: str) -> None:
    text = "tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 90 kg}}\n"

    assert out_turn_over_hail(trip(f"{HEAD}{text}landed: {{docked: 2026-03-06 09:00, out-turn: {out_turn}}}\n")) == {}


def test_a_hail_of_nought_tells_nothing_of_later_hails() -> None:
    text = "tows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 0 kg}}\nlanded: {docked: 2026-03-06 09:00, out-turn: {cod: 3 kg}}\n"

    assert out_turn_over_hail(trip(HEAD + text)) == {}


def test_the_bias_on_a_worked_table() -> None:
    # By hand: sorted 0.80 0.90 0.95 1.00 1.05 1.10; the quartiles with both ends lie at places 2.25, 3.5 and 4.75:
    # 0.9125, 0.975 and 1.0375.
    cod = after({"cod": RATIOS})

    assert cod.bias_percent == pytest.approx(-2.5)
    assert cod.expected_out_turn_kg == pytest.approx(975)
    assert (cod.expected_low_kg, cod.expected_high_kg) == (pytest.approx(912.5), pytest.approx(1037.5))
    assert (cod.bias_trips, cod.basis) == (6, ())


@given(st.lists(st.floats(0.01, 100), min_size=ENOUGH, max_size=40))
def test_quartiles_are_those_of_a_reference_library(ratios: list[float]) -> None:
    # NumPy's percentile with its usual `linear` method: inclusive quartiles; the standard library's median.
    assert quartiles(ratios) == pytest.approx(tuple(np.percentile(ratios, [25, 50, 75])))
    assert quartiles(ratios)[1] == pytest.approx(median(ratios))
    assert quartiles(ratios) == tuple(quantiles(ratios, n=4, method="inclusive"))


@pytest.mark.parametrize("trips", range(ENOUGH))
def test_below_five_trips_nothing_is_told_and_that_is_said(trips: int) -> None:
    cod = after({"cod": RATIOS[:trips]} if trips else {})

    assert (cod.bias_percent, cod.expected_out_turn_kg, cod.expected_low_kg, cod.expected_high_kg) == (None,) * 4
    assert cod.bias_trips == trips
    assert dict(cod.basis)["bias_percent"] == f"not told: {trips} of the 5 earlier trips that it takes"


def test_five_trips_are_enough() -> None:
    # By hand: the third of 0.80 0.90 0.95 1.00 1.10, the second and the fourth.
    cod = after({"cod": RATIOS[:5]})

    assert cod.bias_percent == pytest.approx(-5)
    assert (cod.expected_low_kg, cod.expected_out_turn_kg, cod.expected_high_kg) == pytest.approx((900, 950, 1000))


def test_other_species_tell_nothing_of_this_one() -> None:
    assert after({"haddock": RATIOS}).bias_percent is None


def test_of_a_hail_that_is_not_known_nothing_is_expected() -> None:
    landed = "landed: {docked: 2026-03-06 09:00, port: Sulvik, out-turn: {cod: 99 kg}}\n"
    cod = after({"cod": RATIOS}, "{ling: 5 kg}", landed)

    assert (cod.hail_kg, cod.expected_out_turn_kg, cod.expected_low_kg) == (None, None, None)
    assert cod.bias_percent == pytest.approx(-2.5)


def month(number: int, hail: int, scale: int | None, vessel: str = "Solan Bright") -> str:
    """Return a whole log of that month of 2025."""
    landed = f"landed: {{docked: 2025-{number:02}-10 09:00, out-turn: {{cod: {scale} kg}}}}\n" if scale else ""
    return (
        f"vessel: {vessel}\nsailed: 2025-{number:02}-04 05:30, Port Kerrin\n"
        f"tows:\n  - {{shot: 18:10, hauled: 19:40, catch: {{cod: {hail} kg}}}}\n{landed}"
    )


def test_only_earlier_trips_of_the_same_vessel_tell() -> None:
    own = [month(n, 100, 100 + n) for n in range(1, 8)]
    others = [month(n, 100, 200, "Other") for n in range(1, 8)]
    made = reckoned(*reversed([*own, *others]))
    bias = [trip.figures.hail["cod"].bias_percent for trip in made if trip.figures.trip.vessel == "Solan Bright"]

    # By hand: before the sixth trip the middle of 1 to 5 %, before the seventh of 1 to 6 %.
    assert bias == [None] * 5 + [pytest.approx(3), pytest.approx(3.5)]
    assert [trip.figures.hail["cod"].bias_trips for trip in made] == [*range(7), *range(7)]


def test_trips_that_were_not_weighed_do_not_count() -> None:
    made = reckoned(*(month(n, 100, 110 if n % 2 else None) for n in range(1, 13)))

    assert [trip.figures.hail["cod"].bias_trips for trip in made] == [0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6]
    assert made[9].figures.hail["cod"].bias_percent == pytest.approx(10)


def test_the_hail_that_is_sent_is_not_put_right() -> None:
    log = trip(f"{HEAD}tows:\n  - {{shot: 18:10, hauled: 19:40, catch: {{cod: 1000 kg}}}}\n")
    past = Past(out_turn_over_hail=ByName([("cod", spread(sorted(RATIOS)))]))
    plain, told = reckon_trip(log, fleet()), reckon_trip(log, fleet(), Neighbours(past=past))

    assert told.hail["cod"].expected_out_turn_kg == pytest.approx(975)
    assert reckon_hail(log, told) == reckon_hail(log, plain)
    assert (told.hail["cod"].hail_kg, told.totals, told.catch) == (1000, plain.totals, plain.catch)


def test_no_tows_and_no_landing_have_no_hail() -> None:
    assert dict(figures("").hail) == {}
