"""The fleet file: every key of it, and what goes wrong in it alone."""

from decimal import Decimal

import pytest

from logbook.model.problem import Problem
from logbook.model.species import State
from logbook.read.fleet import read_fleet
from tests.read.logs import FLEET, codes, fleet

WHOLE = """\
fleet: Kerrin Isles Trawl Co-operative
zone: +01:00
currency: KRC
home port: Port Kerrin
waters: N W
units: {depth: fm, catch: basket, temperature: C, gallon: US}
limits: {ice days: 9, landing temperature: 3 C, hail tolerance: 8 %}
constants: {specific heat: 3.5 kJ/kgK, latent heat: 330 kJ/kg}
assumed: {fish to ice: 1.8, pen temperature: 1.5 C, hours to stow: 1.5}
measures:
  basket: {default: 40 kg, cod: 42 kg}
  box: 45 kg
vessels:
  - name: Solan Bright
    registration: KI 114
    zone: UTC
    length: 31 m
    steaming speed: 9.5 kn
    poor weather speed: 6.5 kn
    towing speed: 3.2 kn
    ice capacity: 30 t
    hold: {surface: 72 m2, insulation: 0.45 W/m2K, pens: [P1, P2]}
    nets:
      - {name: rockhopper, side: starboard, doors: 720 kg, door spread: 62 m, wing spread: 17 m, headline: 24 m, mesh: 120 mm}
ports:
  - name: Port Kerrin
    at: 59 40.0N 012 10.0W
    landing rate: 5 t/h
    sale: {days: Mon-Fri, time: 07:00, all ashore before: 3 h, none on: [2026-04-03]}
routes:
  - {to: Port Kerrin, via: [59 20.0N 013 00.0W]}
grounds:
  - {name: The Saddle, within: [58 30N 015 40W, 59 00N 014 50W]}
species:
  - {name: cod, code: COD, also: [{codling: small}, keeling], usual state: gutted, grades: [large, medium, small]}
  - {name: halibut, factors: {gutted: 1.10, authority: Norway 2000}}
  - {name: rattail}
editions: {crew: {positions: ground, fasts: yes, after: 30 days}}
season starts: 1 September
language: nb
"""


def problems(text: str) -> tuple[Problem, ...]:
    return read_fleet(text.encode(), "fleet.yaml")[1]


def test_every_key_of_the_fleet_file_is_read() -> None:
    read = fleet(WHOLE)

    assert (read.name, read.zone, read.currency, read.home_port) == (
        "Kerrin Isles Trawl Co-operative",
        "+01:00",
        "KRC",
        "Port Kerrin",
    )
    assert (read.waters, read.us_gallons, read.season_start, read.language) == (("N", "W"), True, (9, 1), "nb")
    assert (read.limits.ice_days, read.limits.landing_temperature, read.limits.hail_tolerance) == (9.0, 3.0, Decimal(8))
    assert (read.constants.specific_heat, read.constants.latent_heat) == (3.5, 330.0)
    assert (read.assumed.fish_to_ice, read.assumed.pen_temperature, read.assumed.to_stow.total_seconds()) == (
        1.8,
        1.5,
        5400,
    )
    assert [(m.name, m.default, m.by_species) for m in read.measures] == [
        ("basket", 40, (("cod", 42),)),
        ("box", 45, ()),
    ]


def test_a_vessel_has_speeds_nets_and_a_hold() -> None:
    (vessel,) = fleet(WHOLE).vessels

    assert (vessel.registration, vessel.zone, vessel.length, vessel.ice_capacity) == ("KI 114", "UTC", 31.0, 30000)
    assert (vessel.steaming_speed, vessel.poor_weather_speed, vessel.towing_speed) == (9.5, 6.5, 3.2)
    assert (vessel.hold.surface_m2, vessel.hold.insulation_w_m2k, vessel.hold.pens) == (
        72.0,
        0.45,
        (("P1", None), ("P2", None)),
    )
    (net,) = vessel.nets
    assert (net.side, net.doors, net.door_spread, net.wing_spread, net.headline, net.mesh_mm) == (
        "starboard",
        720,
        62.0,
        17.0,
        24.0,
        120.0,
    )


def test_a_port_has_a_place_a_rate_and_a_sale() -> None:
    (port,) = fleet(WHOLE).ports

    assert port.landing_rate_kg_per_h == 5000
    assert port.sale is not None
    assert (port.sale.days, port.sale.time.isoformat(), port.sale.all_ashore_before.total_seconds()) == (
        (0, 1, 2, 3, 4),
        "07:00:00",
        10800,
    )
    assert [day.isoformat() for day in port.sale.none_on] == ["2026-04-03"]


def test_species_extend_the_programs_list_or_take_the_place_of_one() -> None:
    listed = fleet(WHOLE).species
    by_name = {species.name: species for species in listed}

    assert [species.name for species in listed].count("cod") == 1
    assert by_name["cod"].grades == ("large", "medium", "small")
    assert dict(by_name["cod"].factors)[State.GUTTED].value == Decimal("1.17")
    factor = dict(by_name["halibut"].factors)[State.GUTTED]
    assert (factor.value, factor.authority, factor.year) == (Decimal("1.10"), "Norway", 2000)
    assert by_name["rattail"].code is None
    assert len(listed) > 60


def test_editions_say_what_is_shown() -> None:
    (edition,) = fleet(WHOLE).editions

    assert (edition.name, edition.positions, edition.fasts) == ("crew", "ground", True)
    assert edition.after is not None
    assert edition.after.days == 30


@pytest.mark.parametrize(
    ("changed", "code"),
    [
        ("waters: W N", "waters-unreadable"),
        ("units: {depth: fathomes of it}", "unit-unknown"),
        ("units: {depths: fm}", "key-slip"),
        ("zone: CET+1", "zone-unknown"),
        ("vessels: [{registration: KI 1}]", "key-missing"),
        ("vessels: [{name: A}, {name: a}]", "name-twice"),
        ("grounds: [{name: G, within: [58 30N 015 40W]}]", "corners"),
        ("ports: [{name: P, sale: {days: Mon, time: 07:00, none on: [3 April]}}]", "sale-days"),
        ("season starts: 29 February", "season-start"),
        ("species: [{name: cod, factors: {gutted: 0.9, authority: X}}]", "factor-range"),
        ("species: [{name: cod, factors: {gutted: 1.2}}]", "factor-authority"),
        ("species: [{name: cod, factors: {boiled: 1.2, authority: X}}]", "state-unknown"),
        ("species: [{name: cod}, {name: Cod}]", "species-name-twice"),
        ("species: [{name: cod, also: [[a]]}]", "alias-unreadable"),
        ("hold: 3", "key-unknown"),
        ("limits: 3", "mapping-wanted"),
        ("vessels: Solan Bright", "list-wanted"),
    ],
)
def test_what_is_wrong_in_a_fleet_file_is_found(changed: str, code: str) -> None:
    assert code in codes(problems(changed + "\n"))


def test_a_fault_in_a_fleet_file_leaves_the_rest() -> None:
    read, found = read_fleet(FLEET.replace("steaming speed: 9.5 kn", "steaming speed: fast").encode(), "fleet.yaml")

    assert [vessel.name for vessel in read.vessels] == ["Solan Bright"]
    assert read.vessels[0].steaming_speed is None
    assert [problem.severity for problem in found] == ["error"]


def test_a_fleet_file_that_cannot_be_read_is_as_if_there_were_none() -> None:
    read, found = read_fleet(b"\0" * 40, "fleet.yaml")

    assert read.vessels == ()
    assert len(read.species) > 60
    assert [problem.severity for problem in found] == ["error"]


@pytest.mark.parametrize(
    ("text", "unread"),
    [
        ("editions: {crew: {fasts: no}}", False),
        ("limits: {ice days: x}\neditions: {crew: {fasts: no}}", False),
        ("editions: {crew: {after: 5 dys}}", True),
        ("editions: {crew: {fasts: perhaps}}", True),
        ("editions: {crew: {fasts: no", True),
        ("editions:\n  crew: {fasts: no\nports: []", True),
        ("editions: crew", True),
        ("editions:\n  - crew: {fasts: no}", True),
        ("editions: {crew: {}, crew: {fasts: no}}", True),
    ],
)
def test_that_what_is_said_of_editions_cannot_be_read_is_known(text: str, unread: bool) -> None:  # noqa: FBT001 - a case
    fleet, _ = read_fleet(f"fleet: Kerrin\n{text}\n".encode(), "fleet.yaml")
    assert fleet.editions_unread is unread
    wide, _ = read_fleet(f"\ufefffleet: Kerrin\n{text}\n".encode("utf-16-le"), "fleet.yaml")
    assert wide.editions_unread is unread
