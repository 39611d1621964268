"""Small logs and fleets that the reader's tests share."""

from logbook.model.fleet import Fleet
from logbook.model.problem import Problem
from logbook.model.trip import Trip
from logbook.read.fleet import read_fleet
from logbook.read.trip import prepare, read_trip

FLEET = """\
fleet: Test Fleet
zone: UTC
currency: KRC
home port: Port Kerrin
waters: N W
units: {depth: fm, catch: basket, temperature: C}
measures:
  basket: {default: 40 kg, cod: 42 kg}
  box: 45 kg
vessels:
  - name: Solan Bright
    registration: KI 114
    steaming speed: 9.5 kn
    hold: {heat gain: 1.9 kW, pens: {P1: 2.4 t, P2: 2.4 t, S1: 2.4 t}}
    nets:
      - {name: rockhopper, side: starboard, doors: 720 kg, door spread: 62 m, wing spread: 17 m}
      - {name: flat net, side: port}
ports:
  - name: Port Kerrin
    at: 59 40.0N 012 10.0W
grounds:
  - {name: The Saddle, within: [58 30N 015 40W, 59 00N 014 50W]}
species:
  - {name: cod, also: [{codling: small}], grades: [large, medium, small]}
"""


def fleet(text: str = FLEET) -> Fleet:
    """Return a fleet whose file is clean."""
    read, problems = read_fleet(text.encode(), "fleet.yaml")
    assert problems == ()
    return read


def read(text: str, of: Fleet | None = None) -> tuple[Trip | None, tuple[Problem, ...]]:
    """Return what the reader makes of a log."""
    return read_trip(text.encode(), "trip.yaml", prepare(of if of is not None else fleet()))


def trip(text: str, of: Fleet | None = None) -> Trip:
    """Return the trip of a log of which something can be read."""
    made, _ = read(text, of)
    assert made is not None
    return made


def said(problems: tuple[Problem, ...]) -> list[str]:
    """Return problems as `line:column code`."""
    return [f"{problem.place.line}:{problem.place.column} {problem.code}" for problem in problems]


def codes(problems: tuple[Problem, ...]) -> list[str]:
    """Return the codes of problems in order."""
    return [problem.code for problem in problems]
