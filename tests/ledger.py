"""All trips of an edition for the pages of many, without logs and without a store that outlasts the test."""

from collections.abc import Sequence
from pathlib import Path

from logbook.ledger import StoredLedger, kept_of
from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.named import ByName
from logbook.store.shares import Shares
from logbook.store.store import Store


def ledger_of(trips: Sequence[Reckoned], fleet: Fleet | None = None) -> StoredLedger:
    """Return trips as pages of many ask for them."""
    shares = Shares(Store(None), Path("site"))
    for trip in trips:
        shares.keep(b"", kept_of(trip, fleet or Fleet(), ByName()))
    by_id = {trip.figures.trip.id: trip for trip in trips}
    return StoredLedger(shares, by_id.__getitem__)
