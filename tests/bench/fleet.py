"""The fleet of the bench: sixteen invented vessels of the Kerrin Isles on the grounds, ports and species of `sample_logs`."""

import re
from pathlib import Path

from msgspec import Struct

SAMPLE = Path(__file__).parents[2] / "sample_logs" / "fleet.yaml"
FLEET_FILE = "fleet.yaml"

VESSELS = (
    "Solan Bright", "Ternbank", "Marrick", "Kerrin Dawn", "Sulvik Lass", "Aldane Star", "Brae Maid", "Saddle Rose",
    "Mossy Lark", "Kirkwater", "Ledgewater", "Skarrin", "Holmrick", "Tarrick", "Ostrin Gold", "Velden",
)  # fmt: skip
PENS = tuple(f"{side}{number}" for number in range(1, 13) for side in "PS")
NETS = (("rockhopper", "starboard"), ("flat net", "port"))


class Ground(Struct, frozen=True, kw_only=True):
    """A ground of `sample_logs/fleet.yaml`, in degrees; west is negative.

    Attributes:
        name: Its name.
        south, west, north, east: Its corners, a mile or so inside those that the fleet file has.
        fathoms: How deep it mostly is.
    """

    name: str
    south: float
    west: float
    north: float
    east: float
    fathoms: int


GROUNDS = (
    Ground(name="The Saddle", south=58.52, west=-15.63, north=58.98, east=-14.87, fathoms=98),
    Ground(name="Long Brae", south=59.05, west=-15.47, north=59.45, east=-14.70, fathoms=84),
    Ground(name="Kirk Hole", south=58.52, west=-16.27, north=58.94, east=-15.72, fathoms=132),
    Ground(name="Mossy Flats", south=59.05, west=-16.27, north=59.45, east=-15.55, fathoms=72),
    Ground(name="East Ledge", south=58.55, west=-14.77, north=58.94, east=-14.10, fathoms=77),
)

PORTS = {"Port Kerrin": (59.667, -12.167), "Sulvik": (60.083, -12.417)}


class Kind(Struct, frozen=True, kw_only=True):
    """A species as it comes up here.

    Attributes:
        name: Its name.
        kg: What a middling tow has of it.
        grades: Its grades, largest first, where it is graded.
        state: How it is weighed, where that is not its usual state.
        price: What a kilogram fetches.
    """

    name: str
    kg: int
    grades: tuple[str, ...] = ()
    state: str = ""
    price: float


ALWAYS = (
    Kind(name="cod", kg=150, grades=("large", "medium", "small"), price=3.6),
    Kind(name="haddock", kg=160, grades=("large", "small"), price=2.1),
)
SOMETIMES = (
    Kind(name="saithe", kg=42, price=1.15),
    Kind(name="redfish", kg=24, price=1.45),
    Kind(name="ling", kg=20, price=1.5),
    Kind(name="plaice", kg=14, price=1.75),
    Kind(name="whiting", kg=18, price=0.9),
    Kind(name="wolffish", kg=16, price=1.7),
    Kind(name="monk", kg=6, state="tails", price=4.9),
    Kind(name="lemon sole", kg=7, price=4.2),
    Kind(name="halibut", kg=30, price=8.1),
    Kind(name="tusk", kg=15, price=1.2),
)
PUT_BACK = ("skate", "dogfish", "sculpin", "starry ray")


def basket_kg(species: str) -> int:
    """Return what a basket of a species weighs by the fleet file."""
    return 42 if species == "cod" else 40


def fleet_file() -> str:
    """Return the fleet file: that of `sample_logs` with the bench's vessels in place of its own."""
    head, _, rest = re.split(r"(?<=^vessels:\n)|(?=^ports:)", SAMPLE.read_text("utf-8"), maxsplit=2, flags=re.MULTILINE)
    return head + "".join(_vessel(number, name) for number, name in enumerate(VESSELS)) + "\n" + rest


def _vessel(number: int, name: str) -> str:
    pens = ", ".join(f"{pen}: 2.4 t" for pen in PENS)
    nets = "".join(
        f"      - {{name: {net}, side: {side}, doors: 720 kg, door spread: 62 m, wing spread: 17 m, headline: 24 m, mesh: 120 mm}}\n"
        for net, side in NETS
    )
    return (
        f"  - name: {name}\n    registration: KI {700 + number}\n    length: {27 + number % 5} m\n    steaming speed: 9.5 kn\n"
        f"    poor weather speed: 6.5 kn\n    towing speed: 3.2 kn\n    ice capacity: 30 t\n"
        f"    hold: {{heat gain: 1.9 kW, pens: {{{pens}}}}}\n    nets:\n{nets}"
    )
