"""All that is made of one trip for an edition: its own files, and what it gives to the pages of many.

Nothing else of the archive is asked for, so that trips are made side by side.
"""

from collections.abc import Iterator, Mapping
from functools import partial

from msgspec import Struct

from logbook.build.ledger import kept_of
from logbook.known import Task, reckoned
from logbook.model.edition import Policy
from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.page import Draft, Drafts, Page
from logbook.publish.last_good import last_good_page
from logbook.reckon.landed import landed_of
from logbook.redact.scrub import scrubbed
from logbook.redact.trip import redact_trip
from logbook.render.files.paths import trip_file
from logbook.render.files.rows import trip_rows
from logbook.render.files.trip_json import trip_json
from logbook.render.frame import Site
from logbook.render.language import speaking, speech_of
from logbook.render.pages import trip_files
from logbook.store.shares import Kept


class TripWork(Struct, frozen=True, kw_only=True):
    """What is to be made of a trip.

    Attributes:
        task: The trip, to be reckoned.
        held: Whether nothing is to tell yet where its tows were.
        known: Its files that stand, with what each was made of.
    """

    task: Task
    held: bool
    known: Mapping[str, bytes]


class TripMade(Struct, frozen=True, kw_only=True):
    """What was made of a trip.

    Attributes:
        kept: What it gives to the pages of many.
        files: Its own files.
    """

    kept: Kept
    files: tuple[Page | Draft, ...]


class EditionOf(Struct, frozen=True, kw_only=True):
    """What is the same for all trips of an edition.

    Attributes:
        fleet: The fleet file, or what stands for it.
        policy: What the edition shows.
        site: What all pages share; with the species that have a page.
    """

    fleet: Fleet
    policy: Policy
    site: Site

    def __call__(self, work: TripWork) -> TripMade:
        """Return what is made of a trip."""
        trip = reckoned(work.task, self.fleet)
        with speaking(speech_of(self.fleet.language)):
            shown = self.shown(trip, held=work.held)
            drafts = Drafts(self.fleet.language, work.known)
            rows = trip_rows(shown, landed_of(shown, self.fleet), self.fleet, self.policy)
            return TripMade(
                kept=kept_of(shown, self.fleet, rows), files=tuple(self._files(shown, trip.log.file, drafts))
            )

    def shown(self, trip: Reckoned, *, held: bool) -> Reckoned:
        """Return a trip as the edition shows it: what it does not show is gone before anything is summed, rendered or kept."""
        return redact_trip(trip, self.policy, held=held)

    def files(self, task: Task, drafts: Drafts, *, held: bool) -> Iterator[Page | Draft]:
        """Give a trip's own files."""
        trip = reckoned(task, self.fleet)
        return self._files(self.shown(trip, held=held), trip.log.file, drafts)

    def _files(self, shown: Reckoned, log: str, drafts: Drafts) -> Iterator[Page | Draft]:
        yield from trip_files(shown, self.site, self.fleet, landed_of(shown, self.fleet), drafts)
        yield Page(path=trip_file(shown.figures.trip.id), content=trip_json(shown.figures))
        yield last_good_page(shown, log, partial(scrubbed, positions=True))  # where the logs stand is nobody's to know
