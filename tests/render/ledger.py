"""All trips of a made-up archive, as the pages and files of many ask for them."""

from collections.abc import Iterable
from pathlib import Path

from logbook.ledger import StoredLedger, kept_of
from logbook.model.edition import Policy
from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.reckon.landed import landed_of
from logbook.render.files.rows import trip_rows
from logbook.store.shares import Shares
from logbook.store.store import Store


def ledger_of(trips: Iterable[Reckoned], fleet: Fleet, policy: Policy) -> StoredLedger:
    """Return the trips, as the edition shows them, in a store that is gone with the test."""
    shares = Shares(Store(None), Path("site"))
    known = {trip.figures.trip.id: trip for trip in trips}
    for trip in known.values():
        shares.keep(b"", kept_of(trip, fleet, trip_rows(trip, landed_of(trip, fleet), policy)))
    return StoredLedger(shares, known.__getitem__)
