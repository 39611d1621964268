"""Archives and what their pages show, made of logs as people type them."""

from collections.abc import Iterable, Iterator, Sequence

from logbook.build.ledger import StoredLedger
from logbook.model.edition import Policy
from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.page import AtOnce, Drafts, File, Page, content_of
from logbook.model.problem import Problem
from logbook.reckon.landed import landed_of
from logbook.redact.policy import policy_of
from logbook.render.files.paths import trip_file
from logbook.render.files.trip_json import trip_json
from logbook.render.frame import Site
from logbook.render.pages import render_archive, site_of, trip_files
from tests.ledger import ledger_of, redacted
from tests.read.logs import FLEET, fleet
from tests.reckon.build import reckoned

SALE = "    sale: {days: Mon-Fri, time: 07:00}\n"
BOATS = "".join(f"  - {{name: {name}, steaming speed: 9 kn}}\n" for name in ("Auk", "Fulmar", "Petrel"))
MARKETS = (
    FLEET.replace("ports:", f"{BOATS}ports:")
    .replace("at: 59 40.0N 012 10.0W\n", f"at: 59 40.0N 012 10.0W\n{SALE}")
    .replace("grounds:", f"  - name: Sulvik\n    at: 60 05.0N 012 25.0W\n{SALE}grounds:")
)
"""The fleet with markets at two ports, and vessels whose speed is known."""


def shown(*texts: str, of: Fleet | None = None, edition: str = "office") -> tuple[Site, StoredLedger]:
    """Return what all pages of an edition of some logs share, and their trips as it shows them."""
    of = of or fleet()
    policy = policy_of(edition, of)
    return site_and_ledger(of, redacted(reckoned(*texts, of=of), policy), policy)


def site_and_ledger(of: Fleet, trips: Iterable[Reckoned], policy: Policy) -> tuple[Site, StoredLedger]:
    """Return what all pages of an archive share, and its trips."""
    ledger = ledger_of(tuple(trips), of, policy)
    return site_of(of.name or "The fleet", policy, (one.name for one in ledger.species())), ledger


def archive_of(
    *texts: str, of: Fleet | None = None, edition: str = "office", problems: tuple[Problem, ...] = ()
) -> dict[str, bytes]:
    """Return every file of the archive of some logs, by its path; each path is there once."""
    of = of or fleet()
    policy = policy_of(edition, of)
    return files_of(of, redacted(reckoned(*texts, of=of), policy), policy, problems)


def files_of(
    of: Fleet, trips: Sequence[Reckoned], policy: Policy, problems: tuple[Problem, ...] = ()
) -> dict[str, bytes]:
    """Return every file of an archive of trips as an edition shows them, by its path; each path is there once."""
    site, ledger = site_and_ledger(of, trips, policy)
    files = [*_of_trips(of, site, trips), *render_archive(of, ledger, problems, site, AtOnce())]
    assert len({file.path for file in files}) == len(files)
    return {file.path: content_of(file) for file in files}


def _of_trips(of: Fleet, site: Site, trips: Iterable[Reckoned]) -> Iterator[File]:
    """Give the files of every trip, made as they are in a build."""
    for trip in trips:
        for file in trip_files(trip, site, of, landed_of(trip, of), Drafts()):
            assert file.content is not None
            yield Page(path=file.path, content=file.content)
        yield Page(path=trip_file(trip.figures.trip.id), content=trip_json(trip.figures))
