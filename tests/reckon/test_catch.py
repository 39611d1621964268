"""Catches by species and grade, and live weights."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from logbook.model.export import as_json
from tests.reckon.build import figures


def test_a_weight_not_known_is_none_and_grades_say_which() -> None:
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 19:00, catch: {halibut: 2 fish, cod: {large: 60 kg, small: 3 fish}}}\n"
    )

    assert made.catch["halibut"].kept_kg is None
    assert made.catch["halibut"].share_percent is None
    assert dict(made.tows[0].catch["cod"].grades) == {"large": 60, "small": None}
    assert made.totals.kept_kg == 60
    assert list(made.catch) == ["cod", "halibut"]


def test_names_and_grades_that_differ_in_case_alone_are_one() -> None:
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 19:00, catch: {Blobfish: {Big: 10 kg, small: 1 kg}}}\n"
        "  - {shot: 20:00, hauled: 21:00, catch: {blob fish: 5 kg, BLOBFISH: {big: 20 kg}}}\n"
    )

    assert dict(made.catch["blobfish"].grades) == {"Big": 30, "small": 1}
    assert made.catch["blobfish"].live_kg is None
    assert made.catch["blob fish"].kept_kg == 5
    assert any("blobfish" in words for words in made.totals.incomplete)


def test_what_has_no_grade_beside_what_has_is_ungraded_so_that_grades_add_up() -> None:
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 19:00, catch: {cod: {large: 60 kg}}}\n  - {shot: 20:00, hauled: 21:00, catch: {cod: 7 kg}}\n"
        "  - {shot: 22:00, hauled: 23:00, catch: {cod: 3 fish}}\n"
    )

    assert dict(made.catch["cod"].grades) == {"large": 60, "ungraded": 7}


def test_species_known_by_other_names_and_codes_are_one() -> None:
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 19:00, catch: {codling: 10 kg, COD: 20 kg}}\n  - 2000-2100, Atlantic cod 5 kg\n"
    )

    assert made.catch["cod"].kept_kg == 35


def test_how_live_weight_came_about_names_factor_authority_year_and_usual_state() -> None:
    made = figures(
        "tows:\n  - 1800-1900, cod 10 kg\n  - {shot: 20:00, hauled: 21:00, catch: {cod: 10 kg gutted and headed}}\n"
        "  - {shot: 22:00, hauled: 23:00, catch: {cod: 10 kg whole}}\n"
    )
    basis = as_json(made)["basis"]

    assert isinstance(basis, dict)
    assert basis["tows.0.catch.cod.live_kg"] == "reckoned: × 1.17 (EU 2011); usual state gutted"
    assert basis["catch.cod.live_kg"].startswith(
        "reckoned: × 1.17 (EU 2011); usual state gutted or reckoned: × 1.70 (EU 2011)"
    )
    assert made.tows[2].live_kg == 10


def test_put_back_and_undersize_stand_beside_what_was_kept() -> None:
    made = figures(
        "tows:\n  - {shot: 18:00, hauled: 19:00, catch: {cod: 100 kg}, undersize: {cod: 7 kg}, put back: {cod: 9 kg, skate: 1 kg}}\n"
    )

    cod = made.catch["cod"]
    assert (cod.kept_kg, cod.undersize_kg, cod.put_back_kg) == (100, 7, 9)
    assert (made.totals.kept_kg, made.totals.put_back_kg, made.totals.live_kg) == (100, 10, 117)
    assert made.catch["skate"].kept_kg is None


def test_where_all_that_was_kept_is_undersize_nothing_else_was() -> None:
    made = figures("tows:\n  - {shot: 18:00, hauled: 19:00, undersize: {cod: 7 kg}}\n")

    assert (made.totals.kept_kg, made.catch["cod"].undersize_kg, made.catch["cod"].kept_kg) == (0, 7, None)


WEIGHTS = st.lists(
    st.tuples(st.sampled_from(["cod", "haddock", "saithe", "plaice"]), st.integers(0, 99999)), min_size=1, max_size=8
)


@given(WEIGHTS)
def test_the_sum_of_parts_is_the_whole(weights: list[tuple[str, int]]) -> None:
    lines = "".join(
        f"  - {{shot: 2026-03-0{4 + n // 4} {n % 4 * 5:02}:00, hauled: {n % 4 * 5 + 2:02}:00, catch: {{{fish}: {grams / 100} kg}}}}\n"
        for n, (fish, grams) in enumerate(weights)
    )
    made = figures("tows:\n" + lines, "vessel: Solan Bright\nsailed: 2026-03-03 05:30\n")

    whole = sum((Decimal(grams) / 100 for _, grams in weights), Decimal(0))
    assert made.totals.kept_kg == whole
    assert sum(tow.kept_kg or 0 for tow in made.tows) == whole
    assert sum(total.kept_kg or 0 for total in made.catch.values()) == whole
    assert sum(made.age.kept_kg_by_day.values()) == whole
    assert made.totals.live_kg == sum(total.live_kg or 0 for total in made.catch.values())
