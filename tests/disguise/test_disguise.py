"""A disguised log has the same faults at the same lines, and nothing in it of whose it is.

Held to every case of the reader's, to the sample logs, and to these with a byte put in, left out or changed by chance. The words,
figures and places that must be gone are planted in each form that a log can hold them in.
"""

import math
import re
from pathlib import Path
from random import Random

import pytest

from logbook.disguise.bytes_and_lines import opened
from logbook.disguise.log import disguise, disguise_fleet, faults_of
from logbook.disguise.positions import retyped, step_for
from logbook.disguise.stand_ins import StandIns
from logbook.read.fleet import read_fleet
from logbook.read.position import parse_position
from logbook.read.trip import prepare, read_trip
from tests.read.logs import FLEET
from tests.read.test_cases import cases
from tests.read.test_cases_built import BUILT

SAMPLE = Path(__file__).parents[2] / "sample_logs"
LOGS = sorted(path for path in SAMPLE.rglob("*.yaml") if path.name != "fleet.yaml")
SAMPLE_FLEET = (SAMPLE / "fleet.yaml").read_bytes()
OF_LOGS = [case for case in cases() if not case.stem.startswith("fleet-")]
OF_FLEETS = [case for case in cases() if case.stem.startswith("fleet-")]


@pytest.mark.parametrize("case", OF_LOGS, ids=lambda case: case.stem)
def test_every_case_keeps_its_faults(case: Path) -> None:
    made = disguise(case.read_bytes(), FLEET.encode(), Random(1))

    assert made.other == ()
    assert made.fleet is not None
    assert faults_of(made.log, made.fleet) == faults_of(case.read_bytes(), FLEET.encode())


@pytest.mark.parametrize("case", OF_FLEETS, ids=lambda case: case.stem)
def test_every_case_of_a_fleet_file_keeps_its_faults(case: Path) -> None:
    assert disguise_fleet(case.read_bytes(), Random(1)).other == ()


@pytest.mark.parametrize("name", [name for name in BUILT if not name.startswith("too ")])
def test_files_that_no_editor_would_keep_keep_their_faults(name: str) -> None:
    assert disguise(BUILT[name][0], FLEET.encode(), Random(1)).other == ()


@pytest.mark.parametrize("log", LOGS, ids=lambda log: log.stem)
def test_a_sample_log_keeps_its_faults_lines_and_columns(log: Path) -> None:
    data = log.read_bytes()

    made = disguise(data, SAMPLE_FLEET, Random(2))

    assert made.other == ()
    assert [len(line) for line in made.log.decode().split("\n")] == [len(line) for line in data.decode().split("\n")]
    for name in ("Solan", "Ternbank", "Marrick", "Kerrin", "Sulvik", "Saddle"):
        assert name.casefold() not in made.log.decode().casefold()
        assert name.casefold() not in (made.fleet or b"").decode().casefold()


SPOILT = (b"\t", b":", b"'", b'"', b"[", b"}", b"#", b"\xe5", b"\0", b"- ", b"\n", b"\r", b"\xe2\x80\x8b", b"|")


def spoilt(data: bytes, chance: Random) -> bytes:
    """Return a log with one thing gone wrong."""
    at = chance.randrange(len(data))
    how = chance.randrange(4)
    if how == 0:
        return data[:at] + data[at + 1 :]
    if how == 1:
        return data[:at] + chance.choice(SPOILT) + data[at:]
    if how == 2:
        return data[:at] + bytes([chance.randrange(256)]) + data[at + 1 :]
    return data[:at]


@pytest.mark.parametrize("seed", range(200))
def test_a_spoilt_log_keeps_its_faults(seed: int) -> None:
    chance = Random(seed)
    data = spoilt(chance.choice(OF_LOGS + LOGS[:2]).read_bytes(), chance)

    assert disguise(data, FLEET.encode(), chance).other == ()


SECRETS = """\
vessel: Codfather Hunter
trip: KX-77
skipper: Bo Large
crew: [Ann Shotton, "Ola Nord-Mann", A. Haddocker]
sailed: 2026-03-04 05:30, Market Steenhaven
ice loaded: 24 t
tows:
  # Shotton had the watch, tel 4477612
  - shot: 18:10
    hauled: 19:40
    ground: Fast Bank
    from: 58 52.4N 015 10.0W
    to: 58°48.1'N 15°04.2'W
    net: zebratrawl
    catch: {cod: 14 baskets, haddock: 280 kg}
    damage: wing torn by Haddocker
    remarks: |
      Ask Shotton: sold 8123 KRC to Blackmoor, see 58 47.7N 015 33.3W.
      tows: none of it
  - 2015-2150, 98 fm, 58 48.0N 15 04.0W to 58 52.2N 15 09.1W, cod 9 baskets, Fast Bank, call Blackmoor 4477612
  - {shot: 23:10, from: [58.8733, -15.1667], to: N58 52.4 W015 10.0, remarks: Blackmoor again}
  - shot 0410 Haddocker said
rest:
  - {who: Ann Shotton, from: 2026-03-05 06:00, to: 12:00}
landed:
  port: Market Steenhaven
  docked: 2026-03-10 21:15
  prices:
    cod: {large: [2100 kg 3917/kg, 2020 kg 3753 KRC/kg], medium: 8123}
  quality: {cod: Blackmoor's best}
settlement:
  expenses: {fuel: 51977, Blackmoor: 8123 KRC}
  shares: {Ann Shotton: 1.5}
skipper = Bo Large
wants ice and Blackmoor
remarks: Haddocker. Codfather Hunter.
"""

GONE = (
    *("codfather", "hunter", "bo large", "shotton", "nord", "mann", "haddocker", "steenhaven", "market", "fast bank"),
    *("zebra", "blackmoor", "torn", "sold", "4477612", "8123", "3917", "3753", "51977", "kx-77"),
    *(
        "58 52.4",
        "58°48.1",
        "15°04.2",
        "58 47.7",
        "015 33.3",
        "58 48.0",
        "15 04.0",
        "58 52.2",
        "15 09.1",
        "58.8733",
        "15.1667",
    ),
)


@pytest.mark.parametrize("seed", range(20))
@pytest.mark.parametrize("encoding", ["utf-8", "utf-16"])
def test_what_says_whose_it_is_has_gone(seed: int, encoding: str) -> None:
    made = disguise(SECRETS.encode(encoding), FLEET.encode(), Random(seed))

    text = made.log.decode(encoding).casefold()
    assert [word for word in GONE if word in text] == []
    assert made.other == ()
    for kept in ("18:10", "cod: 14 baskets", "280 kg", "98 fm", "2026-03-10 21:15", "2100 kg", "2020 kg", "  - shot"):
        assert kept in text


@pytest.mark.parametrize("broken", ["vessel", "skipper", "tows", "prices"])
def test_it_has_gone_from_a_log_that_can_hardly_be_read_too(broken: str) -> None:
    data = SECRETS.replace(f"{broken}:", f"\t{broken}:[").encode()

    text = disguise(data, FLEET.encode(), Random(5)).log.decode().casefold()

    assert [word for word in GONE if word in text] == []


def test_it_has_gone_from_the_fleet_file() -> None:
    secret = FLEET.replace("Solan Bright", "Codfather Hunter").replace("The Saddle", "Fast Bank")
    made = disguise(SECRETS.encode(), secret.encode(), Random(4))

    assert made.fleet is not None
    text = made.fleet.decode().casefold()
    for word in ("codfather", "hunter", "fast bank", "kerrin", "ki 114", "rockhopper", "59 40.0", "012 10.0", "58 30n"):
        assert word not in text
    assert read_fleet(made.fleet, "f")[1] == ()


def test_the_same_name_has_the_same_stand_in() -> None:
    text = disguise(SECRETS.encode(), FLEET.encode(), Random(6)).log.decode()

    vessel = text.split("\n")[0].removeprefix("vessel: ")
    assert vessel in text.split("\n")[-2]
    ground = re.findall(r"ground: (.*)", text)[0]
    assert f", {ground}, " in text
    who = re.findall(r"who: ([^,]*),", text)[0]
    assert f"shares: {{{who}: " in text
    assert who in text.split("\n")[3]


def test_stand_ins_are_made_by_chance_and_differ_from_time_to_time() -> None:
    assert disguise(SECRETS.encode()).log != disguise(SECRETS.encode()).log


def test_positions_keep_their_distances() -> None:
    texts = ["58 52.4N 015 10.0W", "58 48.1N 015 04.2W", "59 40.0N 012 10.0W"]
    stand_ins = StandIns(Random(3))
    step = step_for([position for text in texts if (position := parse_position(text).value) is not None], stand_ins)

    moved = [retyped(text, step, stand_ins, None) for text in texts]

    assert step is not None
    assert not set(moved) & set(texts)
    for one, two in ((0, 1), (0, 2), (1, 2)):
        assert miles(moved[one], moved[two]) == pytest.approx(miles(texts[one], texts[two]), rel=0.05)


def miles(one: str, two: str) -> float:
    """Return how far two positions lie apart on a sphere, by the haversine formula (Sinnott 1984, from memory)."""
    a, b = parse_position(one).value, parse_position(two).value
    assert a is not None
    assert b is not None
    y1, x1, y2, x2 = (math.radians(float(v)) for v in (a.latitude, a.longitude, b.latitude, b.longitude))
    h = math.sin((y2 - y1) / 2) ** 2 + math.cos(y1) * math.cos(y2) * math.sin((x2 - x1) / 2) ** 2
    return 2 * 3440.065 * math.asin(math.sqrt(h))


@pytest.mark.parametrize(
    "data",
    [
        b"", b"\0" * 9, b"a\r\nb\rc\n", b"\xef\xbb\xbfa: \xc3\xa5\n\xe5\n", "a: å\n".encode("utf-16"), b"a\0b\0\n\0\0",
        "å\r\r\nb".encode("utf-16-le") + b"\0", b"a\0\0\x1a", b"a: \xc3", "\ud800x".encode("utf-16-le", "surrogatepass"),
        bytes(range(256)),
    ],
)  # fmt: skip
def test_a_file_taken_apart_can_be_put_together_again(data: bytes) -> None:
    file = opened(data)

    assert file.before + b"".join(line.data(line.text) for line in file.lines) + file.after == data


def test_line_ends_and_encodings_stay() -> None:
    data = b"\xef\xbb\xbfvessel: H\xc3\xa5kon\r\nskipper: H\xe5kon Nord\rcrew: 11\n\0\0"

    made = disguise(data, None, Random(1))

    assert made.other == ()
    assert made.log.startswith(b"\xef\xbb\xbfvessel: ")
    assert made.log.endswith(b"\rcrew: 11\n\0\0")
    assert b"\r\n" in made.log
    assert b"kon" not in made.log
    assert len(made.log) == len(data)


def test_a_clean_log_stays_clean_and_is_a_trip() -> None:
    made = disguise(
        b"vessel: Solan Bright\nsailed: 2026-03-04 05:30\ntows:\n  - 1810-1940, cod 2 baskets\n", FLEET.encode()
    )

    assert made.fleet is not None
    trip, problems = read_trip(made.log, "t", prepare(read_fleet(made.fleet, "f")[0]))
    assert problems == ()
    assert trip is not None
    assert trip.vessel.name != "Solan Bright"
