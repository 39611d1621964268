"""Small archives that the tests of the files share: logs as people type them, and texts that break careless programs."""

from collections.abc import Sequence
from functools import lru_cache

from msgspec.structs import replace

from logbook.model.edition import OFFICE
from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.named import ByName
from logbook.model.page import AtOnce, content_of
from logbook.model.problem import Place, Problem, Severity
from logbook.model.trip import Fast
from logbook.redact.policy import policy_of
from logbook.render.files.all import fleet_files
from tests.ledger import ledger_of, redacted
from tests.read.logs import FLEET, fleet
from tests.reckon.build import reckoned
from tests.render import example

LANDED = """\
vessel: Solan Bright
trip: 14
skipper: M. Aldane
sailed: 2026-03-04 05:30, Port Kerrin
ice loaded: 10 t
remarks: "=1+1, \\"quoted\\""
tows:
  - shot: 18:00
    hauled: 20:00
    from: 58 50N 015 10W
    to: 58 52N 015 12W
    via: [58 51N 015 14W]
    pens: [P1, S1]
    catch: {cod: {large: 100.5 kg, small: 63.1 kg}, saithe: 45 kg, halibut: 2 fish}
    undersize: {cod: 7 kg}
    put back: {skate: 30 kg}
    damage: wing torn
  - {shot: 21:00, hauled: 23:00, fast: rock, from: 58 53N 015 12W, catch: none}
  - {shot: 23:30, hauled: 01:00}
landed:
  port: Port Kerrin
  docked: 2026-03-06 08:00
  started landing: 09:00
  finished landing: 11:30
  out-turn: {cod: {large: 99 kg, small: 60 kg}, saithe: 45 kg}
  prices: {cod: {large: 3.9/kg, small: 2.05/kg}, saithe: 140/box}
"""
AT_SEA = """\
vessel: Ternbank
sailed: 2026-03-10 05:30, Port Kerrin
zone: +01:00
tows:
  - {shot: 18:00, hauled: 20:00, to: 58 50N 015 00W, catch: {cod: 100 kg}}
turned for home: 2026-03-11 06:00
"""
FLEET_OF_TWO = FLEET.replace("vessels:\n", "vessels:\n  - {name: Ternbank, steaming speed: 9 kn}\n")


@lru_cache(maxsize=1)
def two_trips() -> tuple[Reckoned, ...]:
    return reckoned(LANDED, AT_SEA, of=fleet(FLEET_OF_TWO))


def problem(text: str) -> Problem:
    place = Place(file=text, line=3, column=7)
    return Problem(place=place, severity=Severity.ERROR, code="weight-unreadable", message=text, hint=text)


def files(
    trips: Sequence[Reckoned] | None = None,
    edition: str = OFFICE,
    *,
    of: Fleet | None = None,
    problems: Sequence[Problem] = (),
    linked: bool = True,
) -> dict[str, bytes]:
    """Return the files of an edition by their paths."""
    of = of or fleet(FLEET_OF_TWO)
    policy = policy_of(edition, of)
    shown = redacted(two_trips() if trips is None else trips, policy)
    ledger = ledger_of(shown, of, policy)
    wrong = problems if policy.problems else ()
    pages = list(fleet_files(of, ledger, ledger.fasts(), wrong, policy, of.title, AtOnce(), linked=linked))
    assert len({page.path for page in pages}) == len(pages)
    return {page.path: content_of(page) for page in pages}


def trip_saying(text: str) -> Reckoned:
    """Return a trip that has a text everywhere a text can stand."""
    made = example.trip(replace(example.vessel(), name=text, registration=text), number=text, tows=2)
    tows = tuple(
        replace(tow, damage=text, gear_lost=text, bottom=text, remarks=text, fast=Fast(what=text, at=None))
        for tow in made.log.tows
    )
    figures = tuple(
        replace(
            tow,
            ground=text,
            net=text,
            pens=(text, text),
            catch=ByName(
                (text, replace(species, grades=ByName([(text, species.kept_kg)]))) for species in tow.catch.values()
            ),
        )
        for tow in made.figures.tows
    )
    return replace(
        made,
        log=replace(made.log, tows=tows, crew=(text, text), remarks=text, file=text),
        figures=replace(
            made.figures,
            trip=replace(made.figures.trip, vessel=text, number=text, skipper=text, port=text, sailed_from=text),
            tows=figures,
            totals=replace(made.figures.totals, incomplete=(text,)),
            landing=replace(made.figures.landing, port=text),
        ),
    )


def saying(text: str) -> dict[str, bytes]:
    """Return the office's files of a fleet with one such trip."""
    of = replace(example.fleet(), name=text, currency=text)
    return files((trip_saying(text),), of=of, problems=(problem(text),))


NASTY = (
    '=HYPERLINK("http://example.invalid","x")',
    "+1",
    "-1+1",
    "@SUM(A1)",
    "  \t =1",
    "\t=1",
    "\r=1",
    "\n=1",
    "\ufeff=1",
    "\u200b\u202e=1",
    "＝1+1",
    "＋1",
    "－1",
    "＠x",
    "﹢1",
    "'quoted",
    "''=1",
    'a "b" c',
    '"',
    "a,b;c\\d\\n",
    "two\nlines\r\nand\rmore",
    "trailing \\",
    "\x00\x07\x0b\x0c\x1b\x7f\x85",
    "\u2028\u2029",
    "🐟👩‍✈️ é ﬁ 鱈 Чайка",
    "שלום \u202eabc\u202c עולם",
    "<b>&amp;]]>",
    "x" * 500,
    "🐟" * 100,
    " leading and trailing ",
)
