"""All trips of an edition for the pages of many, without logs and without a store that outlasts the test."""

from collections.abc import Iterable, Sequence
from pathlib import Path

from logbook.build.ledger import StoredLedger, kept_of
from logbook.model.edition import Policy
from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.named import ByName
from logbook.reckon.landed import landed_of
from logbook.redact.trip import is_held, redact_trip
from logbook.render.files.rows import trip_rows
from logbook.store.shares import Kept, Shares
from logbook.store.store import Store


def ledger_of(
    trips: Sequence[Reckoned], fleet: Fleet | None = None, policy: Policy | None = None, shares: Shares | None = None
) -> StoredLedger:
    """Return trips as pages of many ask for them.

    Args:
        trips: As the edition shows them.
        fleet: For when its season begins.
        policy: What the edition shows; with it there are pieces of files too.
        shares: Where they are kept; nowhere that outlasts the test, unless it is told.
    """
    shares = shares or Shares(Store(None), Path("site"))
    for trip in trips:
        shares.keep(b"", kept(trip, fleet, policy))
    return StoredLedger(shares)


def kept(trip: Reckoned, fleet: Fleet | None = None, policy: Policy | None = None) -> Kept:
    """Return what a trip gives to the pages of many, as it is kept."""
    fleet = fleet or Fleet()
    rows: ByName[bytes] = trip_rows(trip, landed_of(trip, fleet), fleet, policy) if policy is not None else ByName()
    return kept_of(trip, fleet, rows)


def redacted(trips: Iterable[Reckoned], policy: Policy) -> tuple[Reckoned, ...]:
    """Return all trips of an archive as an edition shows them."""
    every = tuple(trips)
    latest = max((trip.figures.trip.last_word for trip in every), default=None)
    return tuple(
        redact_trip(trip, policy, held=latest is not None and is_held(trip.figures.trip.last_word, latest, policy))
        for trip in every
    )
