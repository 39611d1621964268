"""A log and its fleet file disguised, and held against what they were: the same codes must be given at the same lines."""

from collections import Counter
from collections.abc import Callable
from random import Random, SystemRandom

from msgspec import Struct

from logbook.disguise.bytes_and_lines import Opened, opened
from logbook.disguise.positions import Step, step_for, texts_of
from logbook.disguise.stand_ins import StandIns
from logbook.disguise.text import Disguise
from logbook.disguise.vocabulary import Vocabulary
from logbook.model.fleet import Fleet
from logbook.model.problem import Problem
from logbook.read.fleet import read_fleet
from logbook.read.position import parse_position
from logbook.read.source import typed
from logbook.read.trip import prepare, read_trip

_TRIES = 16
"""How often other stand-ins are tried where some change what is wrong."""

_HEADS = (4, 8, 16, 32)
"""Bytes by which a file that is no text is known."""

Faults = Counter[tuple[int, str]]
"""Line and code of all that is wrong in a file, and how often."""


class Disguised(Struct, frozen=True, kw_only=True):
    """A log and its fleet file with stand-ins.

    Attributes:
        log: The log's bytes.
        fleet: The fleet file's; None where there is none.
        faults: How many problems the log has.
        other: Line and code of problems that the copy has and the log has not, or the other way about; mostly none.
    """

    log: bytes
    fleet: bytes | None
    faults: int
    other: tuple[tuple[int, str], ...]


def disguise(log: bytes, fleet: bytes | None = None, chance: Random | None = None) -> Disguised:
    """Return a log with stand-ins for all that says whose it is.

    Args:
        log: The log's bytes.
        fleet: Its fleet file's bytes; None where it has none.
        chance: Where stand-ins come from; the system's own where None.
    """
    wanted = faults_of(log, fleet)

    def tried(mild: frozenset[int]) -> Disguised:
        made, fleet_made = _written_over(log, fleet, chance or SystemRandom(), mild)
        return Disguised(
            log=made, fleet=fleet_made, faults=wanted.total(), other=_other(wanted, faults_of(made, fleet_made))
        )

    return _best(tried)


def disguise_fleet(fleet: bytes, chance: Random | None = None) -> Disguised:
    """Return a fleet file with stand-ins for all that says whose it is."""
    wanted = _counted(read_fleet(fleet, "fleet.yaml")[1])

    def tried(mild: frozenset[int]) -> Disguised:
        made = _written_over(fleet, None, chance or SystemRandom(), mild)[0]
        found = _counted(read_fleet(made, "fleet.yaml")[1])
        return Disguised(log=made, fleet=None, faults=wanted.total(), other=_other(wanted, found))

    return _best(tried)


def _best(tried: Callable[[frozenset[int]], Disguised]) -> Disguised:
    """Return the first try that keeps all faults, else the one that keeps most; lines that lose theirs are treated milder."""
    best = tried(frozenset())
    for number in range(_TRIES):
        if not best.other:
            break
        again = tried(frozenset(line for line, _ in best.other) if number % 2 else frozenset())
        best = again if len(again.other) < len(best.other) else best
    return best


def _other(wanted: Faults, found: Faults) -> tuple[tuple[int, str], ...]:
    return tuple(sorted(((found - wanted) + (wanted - found)).elements()))


def faults_of(log: bytes, fleet: bytes | None) -> Faults:
    """Return line and code of all that the reader finds in a log."""
    wide = prepare(read_fleet(fleet, "fleet.yaml")[0]) if fleet is not None else prepare()
    return _counted(read_trip(log, "log.yaml", wide)[1])


def _counted(problems: tuple[Problem, ...]) -> Faults:
    return Counter((problem.place.line, problem.code) for problem in problems)


def _written_over(log: bytes, fleet: bytes | None, chance: Random, mild: frozenset[int]) -> tuple[bytes, bytes | None]:
    known: Fleet | None = read_fleet(fleet, "fleet.yaml")[0] if fleet is not None else None
    waters = known.waters if known is not None else None
    stand_ins = StandIns(chance)
    disguise_of = Disguise(stand_ins, Vocabulary(known), waters)
    log_file, fleet_file = _text_of(log), _text_of(fleet) if fleet is not None else None
    files = [file for file in (fleet_file, log_file) if file is not None]
    disguise_of.learn(line.text for file in files for line in file.lines)
    fleet_made = _put_together(fleet_file, disguise_of, None) if fleet_file is not None else None
    if log_file is None:
        return _no_text(log, fleet), fleet_made
    found = (parse_position(text[0], waters).value for line in log_file.lines for text in texts_of(line.text))
    step = step_for([one for one in found if one is not None], stand_ins)
    return _put_together(log_file, disguise_of, step, mild), fleet_made


def _text_of(data: bytes) -> Opened | None:
    """Return a file taken apart; None where there is no text in it."""
    return opened(data) if typed(data) else None


def _put_together(file: Opened, disguise_of: Disguise, step: Step | None, mild: frozenset[int] = frozenset()) -> bytes:
    lines = disguise_of.written_over((line.text for line in file.lines), step, mild)
    body = b"".join(line.data(text) for line, text in zip(file.lines, lines, strict=True))
    return file.before + body + file.after


def _no_text(data: bytes, fleet: bytes | None) -> bytes:
    """Return a file that is no text with nothing left of it but what it is known by."""
    rest = bytes(sign if sign < 0x20 or sign == 0x7F else 0x78 for sign in data)  # noqa: PLR2004 - controls stay
    made = data
    for head in _HEADS:
        made = data[:head] + rest[head:]
        if faults_of(made, fleet) == faults_of(data, fleet):
            return made
    return made
