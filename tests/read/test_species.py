"""The program's species against the FAO's codes and the published conversion factors."""

from decimal import Decimal

import pytest

from logbook.model.names import fold_name
from logbook.model.species import State
from logbook.read.species import program_species

BY_CODE = {species.code: species for species in program_species()}

# FAO ASFIS list of species for fishery statistics purposes: 3-alpha code and scientific name.
ASFIS = {
    "COD": "Gadus morhua",
    "HAD": "Melanogrammus aeglefinus",
    "POK": "Pollachius virens",
    "HAL": "Hippoglossus hippoglossus",
    "LIN": "Molva molva",
    "USK": "Brosme brosme",
    "RED": "Sebastes spp",
    "PLE": "Pleuronectes platessa",
    "MON": "Lophius piscatorius",
    "ANF": "Lophiidae",
    "CAT": "Anarhichas spp",
    "CAA": "Anarhichas lupus",
    "SRX": "Rajiformes",
    "RAJ": "Rajidae",
    "DGS": "Squalus acanthias",
    "SCU": "Myoxocephalus spp",
    "GSK": "Somniosus microcephalus",
    "NEP": "Nephrops norvegicus",
}

# Commission Implementing Regulation (EU) No 404/2011, Annex XIII: factors of fresh fish.
ANNEX_XIII = [
    ("COD", State.GUTTED, "1.17"),
    ("COD", State.GUTTED_AND_HEADED, "1.70"),
    ("COD", State.HEADED, "1.38"),
    ("COD", State.FILLETS, "2.60"),
    ("HAD", State.GUTTED, "1.17"),
    ("HAD", State.GUTTED_AND_HEADED, "1.46"),
    ("POK", State.GUTTED, "1.19"),
    ("HKE", State.GUTTED, "1.11"),
    ("LIN", State.GUTTED, "1.14"),
    ("RED", State.GUTTED, "1.19"),
    ("ANF", State.TAILS, "3.00"),
    ("GHL", State.GUTTED, "1.08"),
    ("PLE", State.GUTTED, "1.07"),
    ("LEM", State.GUTTED, "1.05"),
    ("SRX", State.WINGS, "2.09"),
    ("DGS", State.GUTTED, "1.35"),
    ("HER", State.GUTTED, "1.12"),
    ("NEP", State.TAILS, "3.00"),
]


def test_there_are_at_least_sixty_species_with_a_code_each() -> None:
    assert len(BY_CODE) == len(program_species()) >= 60


@pytest.mark.parametrize(("code", "scientific"), ASFIS.items())
def test_codes_are_the_faos(code: str, scientific: str) -> None:
    assert BY_CODE[code].scientific == scientific


@pytest.mark.parametrize(("code", "state", "value"), ANNEX_XIII)
def test_factors_are_the_annexs(code: str, state: State, value: str) -> None:
    factor = BY_CODE[code].factor(state)

    assert factor is not None
    assert (factor.value, factor.authority, factor.year) == (Decimal(value), "EU", 2011)


@pytest.mark.parametrize(
    ("code", "state"), [("HAL", State.GUTTED), ("CAT", State.GUTTED), ("HKW", State.GUTTED), ("YEL", State.GUTTED)]
)
def test_a_factor_nobody_published_for_the_union_is_none_and_never_one(code: str, state: State) -> None:
    assert BY_CODE[code].factor(state) is None


def test_whole_fish_weighs_what_it_weighed_alive() -> None:
    for species in program_species():
        factor = species.factor(State.WHOLE)
        assert factor is not None
        assert factor.value == 1


def test_national_factors_are_offered_and_never_used_by_themselves() -> None:
    used = {str(factor.authority) for species in program_species() for _, factor in species.factors}
    offered = {factor.authority for species in program_species() for _, factor in species.offered}

    assert used == {"EU", "by definition"}
    assert offered == {"Norway", "Faroes", "Canada"}
    assert str(BY_CODE["HAL"].offered[0][1]) == "1.10 (Norway 2000)"


def test_no_name_means_two_species() -> None:
    owners: dict[str, str] = {}
    for species in program_species():
        for name in (species.name, species.code or "", *(alias.name for alias in species.also)):
            assert owners.setdefault(fold_name(name), species.name) == species.name, name
