"""Trips that could have been: where she towed, for how long, what came up. Always the same ones for the same seed.

Trip 0 is the latest; the others go back from it, vessel by vessel, eleven days apart, for as many years as it takes. A trip is
the same however many there are.
"""

from datetime import datetime, timedelta
from math import cos, hypot, pi, radians, sin
from random import Random

from msgspec import Struct

from tests.bench import fleet, phrases
from tests.bench.fleet import ALWAYS, GROUNDS, NETS, PENS, PORTS, PUT_BACK, SOMETIMES, VESSELS, Ground, Kind

TOWS = 96
SEED = 20261126
STEAMING_KN = 8.0
"""Somewhat less than she makes, since she does not go straight."""
SHIFT = 0.02
"""The chance that she goes to another ground after a tow: twice in a trip."""
TOWS_A_PEN = 4

_CYCLE = timedelta(days=11)
_LAST_SAILS = datetime(2025, 12, 20, 6, 0)  # noqa: DTZ001 - a log's own time, which has no zone
_SKIPPERS = ("M. Aldane", "S. Hale", "J. Orrin", "T. Varrick", "R. Teale", "E. Brannoch", "H. Ostley", "K. Moar")
_DAMAGE = ("wing torn", "belly torn", "cod end chafed", "headline parted")
_FAST = ("yes", "rock", "wreck")
_LABEL_OF_LATEST = 2000


class Fish(Struct, frozen=True, kw_only=True):
    """Some fish of a tow, as it was written.

    Attributes:
        species: Which.
        grade: Its grade, or nothing.
        amount: How much, with its unit.
        kg: The same in kilograms.
    """

    species: str
    grade: str
    amount: str
    kg: int


class Tow(Struct, frozen=True, kw_only=True):
    """A tow; what is empty was not written.

    Attributes:
        no: Its number.
        shot, hauled: When.
        side, ground, net: Only where they differ from the tow before.
        start, end: Where, as written.
        fathoms: How deep.
        catch, put_back: What came up.
        pen: Where it went, where that is another than before.
        damage, fast, remarks: What was noted.
    """

    no: int
    shot: datetime
    hauled: datetime
    side: str
    ground: str
    net: str
    start: str
    end: str
    fathoms: int
    catch: tuple[Fish, ...]
    put_back: tuple[Fish, ...]
    pen: str
    damage: str
    fast: str
    remarks: str


class Trip(Struct, frozen=True, kw_only=True):
    """A trip, from quay to quay.

    Attributes:
        number: Its number in the bench, from 0.
        vessel, label, skipper, port: Who, which of hers, and where from and to.
        sailed, turned, docked: When.
        turned_at: Where she turned for home.
        tows: Her tows.
        ice: Tonnes of ice loaded.
        remarks: What was noted.
    """

    number: int
    vessel: str
    label: int
    skipper: str
    port: str
    sailed: datetime
    turned: datetime
    docked: datetime
    turned_at: str
    tows: tuple[Tow, ...]
    ice: int
    remarks: str

    @property
    def name(self) -> str:
        """What its file is called, without what a file's name ends in."""
        return f"{self.vessel.lower().replace(' ', '-')}-{self.label}"


def trip_of(number: int, tows: int = TOWS) -> Trip:
    """Return one of the bench's trips.

    Args:
        number: Which, from 0.
        tows: How many tows it has, 1 or more.
    """
    chance = Random(f"{SEED}/{number}")
    back, vessel = divmod(number, len(VESSELS))
    sailed = _LAST_SAILS - _CYCLE * back - _CYCLE * vessel / len(VESSELS) + minutes(chance.randrange(0, 600, 5))
    sailed = sailed.replace(minute=sailed.minute // 5 * 5, second=0, microsecond=0)
    port = "Sulvik" if vessel % 4 == 3 else "Port Kerrin"
    towing = _Towing(chance, sailed, PORTS[port])
    made = tuple(towing.next(no) for no in range(1, tows + 1))
    turned = towing.now + minutes(20)
    return Trip(
        number=number,
        vessel=VESSELS[vessel],
        label=_LABEL_OF_LATEST - back,
        skipper=_SKIPPERS[(vessel + back // 9) % len(_SKIPPERS)],
        port=port,
        sailed=sailed,
        turned=turned,
        docked=turned + _steaming(towing.at, PORTS[port]),
        turned_at=position(towing.at),
        tows=made,
        ice=chance.randint(24, 28),
        remarks=phrases.of_trip(chance),
    )


class _Towing:
    """A vessel at work: where she is and what the time is."""

    def __init__(self, chance: Random, sailed: datetime, port: tuple[float, float]) -> None:
        self.chance = chance
        self.ground = chance.choice(GROUNDS)
        self.at = self._somewhere()
        self.now = sailed + _steaming(port, self.at)
        self.shifted = True
        self.richness = chance.uniform(0.7, 1.2)

    def next(self, no: int) -> Tow:
        """Make a tow, and be where it ended."""
        chance, ground, began, shot = self.chance, self.ground, self.at, self.now
        hauled = shot + minutes(chance.randrange(60, 95, 5))
        self.at = self._end((hauled - shot) / timedelta(hours=1) * chance.uniform(2.9, 3.4))
        fathoms = ground.fathoms + chance.randint(-9, 9)
        net, side = NETS[chance.random() < 0.3] if self.shifted else ("", "")
        tow = Tow(
            no=no,
            shot=shot,
            hauled=hauled,
            side=side,
            ground=ground.name if self.shifted else "",
            net=net,
            start=position(began),
            end=position(self.at),
            fathoms=fathoms,
            catch=self._catch(),
            put_back=self._put_back(),
            pen=PENS[(no - 1) // TOWS_A_PEN % len(PENS)] if no % TOWS_A_PEN == 1 else "",
            damage=chance.choice(_DAMAGE) if chance.random() < 0.03 else "",
            fast=chance.choice(_FAST) if chance.random() < 0.015 else "",
            remarks=phrases.of_tow(chance, fathoms) if chance.random() < 0.8 else "",
        )
        self._go_on(hauled)
        return tow

    def _go_on(self, hauled: datetime) -> None:
        self.shifted = self.chance.random() < SHIFT
        self.now = hauled + minutes(self.chance.randrange(10, 20, 5))
        if self.shifted:
            self.ground = self.chance.choice([ground for ground in GROUNDS if ground != self.ground])
            there = self._somewhere()
            self.now += _steaming(self.at, there)
            self.at = there

    def _somewhere(self) -> tuple[float, float]:
        ground = self.ground
        return self.chance.uniform(ground.south, ground.north), self.chance.uniform(ground.west, ground.east)

    def _end(self, miles: float) -> tuple[float, float]:
        latitude, longitude = self.at
        while True:
            heading = self.chance.uniform(0, 2 * pi)
            north = latitude + miles / 60 * cos(heading)
            east = longitude + miles / 60 * sin(heading) / cos(radians(latitude))
            if _within(self.ground, north, east):
                return north, east

    def _catch(self) -> tuple[Fish, ...]:
        chance = self.chance
        richness = self.richness * chance.choice((0.5, 0.7, 0.8, 0.9, 1.0, 1.1, 1.3, 1.6))
        kinds = (*ALWAYS, *chance.sample(SOMETIMES, chance.randint(1, 6)))
        return tuple(
            fish for kind in kinds for fish in _fish(chance, kind, kind.kg * richness * chance.uniform(0.7, 1.3))
        )

    def _put_back(self) -> tuple[Fish, ...]:
        kinds = self.chance.sample(PUT_BACK, self.chance.choice((0, 0, 1, 2)))
        return tuple(_in_baskets(species, "", self.chance.randint(1, 3)) for species in kinds)


def _fish(chance: Random, kind: Kind, kg: float) -> list[Fish]:
    """Return some fish as it is written: graded in baskets, large ones by number, others by weight."""
    if kind.grades:
        share = kg / len(kind.grades) / fleet.basket_kg(kind.name)
        return [_in_baskets(kind.name, grade, max(1, round(share * chance.uniform(0.5, 1.5)))) for grade in kind.grades]
    weight = max(2, round(kg))
    if kind.name == "halibut":
        count = 1 + weight // 40
        return [Fish(species=kind.name, grade="", amount=f"{count} fish {weight} kg", kg=weight)]
    return [Fish(species=kind.name, grade="", amount=f"{weight} kg {kind.state}".rstrip(), kg=weight)]


def _in_baskets(species: str, grade: str, count: int) -> Fish:
    amount = f"{count} basket{'s' if count > 1 else ''}"
    return Fish(species=species, grade=grade, amount=amount, kg=count * fleet.basket_kg(species))


def _within(ground: Ground, latitude: float, longitude: float) -> bool:
    return ground.south <= latitude <= ground.north and ground.west <= longitude <= ground.east


def _steaming(a: tuple[float, float], b: tuple[float, float]) -> timedelta:
    """Return how long she steams between two places, in steps of five minutes, over a plane: near enough to be plausible."""
    miles = 60 * hypot(a[0] - b[0], (a[1] - b[1]) * cos(radians((a[0] + b[0]) / 2)))
    return minutes(10 + 5 * round(miles / STEAMING_KN * 12))


def position(at: tuple[float, float]) -> str:
    """Return a position north and west as it is written: `58 52.4N 015 10.0W`."""
    north, west = round(at[0] * 600), round(-at[1] * 600)
    return f"{north // 600:02} {north % 600 / 10:04.1f}N {west // 600:03} {west % 600 / 10:04.1f}W"


def minutes(count: int) -> timedelta:
    """Return so many minutes."""
    return timedelta(minutes=count)
