"""Units of weight, against published values and a reference library."""

from decimal import Decimal

import pint
import pytest

from logbook.model.fleet import Measure
from logbook.model.names import plural
from logbook.model.quantity import Kilograms
from logbook.read.measures import Measures
from tests.read.values import MEASURES


@pytest.mark.parametrize(
    ("unit", "kilograms"),
    [
        # NIST SP 811 (2008), appendix B.8 and footnote 22: pound (avoirdupois) 4.535 923 7 E-01 kg, exactly.
        ("lb", "0.45359237"),
        # NIST SP 811, B.8: ton, metric 1.0 E+03 kg, exactly.
        ("t", "1000"),
        # Torry Advisory Note 17: 14 lb to the stone, 112 lb to the hundredweight; times the pound above.
        ("st", "6.35029318"),
        ("cwt", "50.80234544"),
        ("kg", "1"),
    ],
)
def test_a_standard_unit_weighs_what_is_published(unit: str, kilograms: str) -> None:
    assert Measures().unit(unit) == Decimal(kilograms)


@pytest.mark.parametrize(
    ("unit", "name"),
    [("lb", "pound"), ("st", "stone"), ("cwt", "long_hundredweight"), ("t", "metric_ton"), ("kg", "kilogram")],
)
def test_a_standard_unit_weighs_what_pint_has(unit: str, name: str) -> None:
    registry: pint.UnitRegistry[Decimal] = pint.UnitRegistry(non_int_type=Decimal)

    expected = registry.Quantity(Decimal(1), name).to("kilogram").magnitude

    assert float(Measures().unit(unit) or 0) == pytest.approx(float(expected), rel=1e-12)


def test_twenty_hundredweight_are_a_long_ton() -> None:
    # Torry Advisory Note 17: 20 cwt; NIST SP 811, B.8: ton, long 1.016 047 E+03 kg.
    assert float(20 * (Measures().unit("cwt") or 0)) == pytest.approx(1016.047, abs=5e-4)


def test_sixteen_kits_of_ten_stone_are_a_long_ton() -> None:
    # Torry note on measures, https://www.fao.org/3/x5898e/x5898e01.htm
    assert 16 * 10 * (Measures().unit("st") or 0) == 20 * (Measures().unit("cwt") or 0)


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("KG", "kg"),
        ("kilos", "kg"),
        ("tonnes", "t"),
        ("lbs", "lb"),
        ("Baskets", "basket"),
        ("BASKET", "basket"),
        ("boxes", "box"),
        ("stone", "st"),
        ("pallet", None),
    ],
)
def test_a_unit_goes_by_its_plural_and_any_case(typed: str, name: str | None) -> None:
    assert MEASURES.name(typed) == name


def test_a_species_may_have_a_weight_of_its_own() -> None:
    assert MEASURES.unit("baskets", "Cod") == 42
    assert MEASURES.unit("baskets", "haddock") == 40
    assert MEASURES.unit("baskets") == 40
    assert MEASURES.unit("kit", "haddock") is None
    assert MEASURES.unit("kit", "cod") == Decimal("63.5")
    assert MEASURES.unit("pallet") is None


def test_a_measure_named_in_the_plural_goes_by_its_singular() -> None:
    names = ("baskets", "boxes", "trays", "berries", "sheep")
    measures = Measures(tuple(Measure(name=name, default=Kilograms(Decimal(40))) for name in names))

    singulars = ("basket", "box", "tray", "berry", "sheep")
    assert [measures.name(word) for word in singulars] == list(names)


def test_the_fleets_own_stone_comes_before_ours_but_its_kg_does_not() -> None:
    own = tuple(Measure(name=name, default=Kilograms(Decimal(8))) for name in ("stone", "kg"))

    assert Measures(own).unit("stone") == 8
    assert Measures(own).unit("st") == Decimal("6.35029318")
    assert Measures(own).unit("kg") == 1


def test_measures_know_their_words() -> None:
    assert MEASURES.own == ("basket", "box", "kit")
    assert {"kg", "basket", "boxes"} <= set(MEASURES.words)
    assert [MEASURES.many(unit) for unit in ("kg", "basket", "box")] == ["kg", "baskets", "boxes"]


@pytest.mark.parametrize(
    ("one", "many"), [("tray", "trays"), ("berry", "berries"), ("bush", "bushes"), ("kit", "kits")]
)
def test_plurals_are_english(one: str, many: str) -> None:
    assert plural(one) == many
