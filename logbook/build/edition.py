"""One edition of an archive: what each trip gives to it, made where it has changed, and what is made of all of them."""

from collections.abc import Iterable, Iterator, Sequence
from functools import partial
from hashlib import sha256
from pathlib import Path

from msgspec import Struct

from logbook.build.ledger import StoredLedger, kept_of
from logbook.build.of_trip import EditionOf, TripWork
from logbook.build.parallel import Hands
from logbook.known import Reading
from logbook.model.built import Published
from logbook.model.edition import Policy
from logbook.model.figures import Reckoned
from logbook.model.page import AtOnce, Drafts, File, Make, Page, content_of, key_of
from logbook.publish.folder import publish
from logbook.read.folder import Folder as Told
from logbook.reckon.landed import landed_of
from logbook.redact.trip import is_held, redact_trip
from logbook.render.files.all import fleet_files
from logbook.render.files.paths import FILES, trip_file
from logbook.render.files.rows import trip_rows
from logbook.render.files.trip_json import trip_json
from logbook.render.language import speaking, speech_of
from logbook.render.links import trip_page
from logbook.render.pages import render_archive, site_of
from logbook.store.made import Made
from logbook.store.seen import StoredSeen
from logbook.store.shares import Shares
from logbook.store.store import Store


def publish_edition(
    reading: Reading, policy: Policy, place: Path, store: Store, hands: Hands, *, every: bool
) -> Published:
    """Publish an edition.

    Args:
        reading: What the logs tell.
        policy: What it shows.
        place: The folder that it goes to.
        store: What earlier builds left; brought up to date.
        hands: Who makes the trips.
        every: Whether the bytes of each file that stands are looked at.
    """
    fleet = reading.shown.fleet
    with speaking(speech_of(fleet.language)):
        made = Made(store, place, fleet.language)
        files = _Edition(reading, policy, Shares(store, place), made).files(hands)
        done = publish(files, place, StoredSeen(store, place), every=every)
    made.forget_others()
    return done


class _Work(Struct, frozen=True, kw_only=True):
    """A trip that is to be made.

    Attributes:
        log: Its log.
        share_key: Digest of what it gives to pages of many is made of.
        files_key: Digest of what its own files are made of.
        name: What those are known by.
    """

    log: str
    share_key: bytes
    files_key: bytes
    name: str


class _Edition:
    """The files of an edition."""

    def __init__(self, reading: Reading, policy: Policy, shares: Shares, made: Made) -> None:
        fleet = reading.shown.fleet
        self._reading, self._shares, self._made = reading, shares, made
        self._heads = {log: reading.head(log) for log in reading.names}
        self._logs = {head.id: log for log, head in self._heads.items()}
        self._latest = max((head.last_word for head in self._heads.values()), default=None)
        kept = {species for head in self._heads.values() for species in head.kept}
        self._of = EditionOf(fleet=fleet, policy=policy, site=site_of(fleet.title, policy, kept))
        self._alike = key_of(fleet, policy)

    def files(self, hands: Hands) -> Iterator[File]:
        """Give all files, those of trips first."""
        left: list[_Work] = []
        for log, head in self._heads.items():
            work = self._work(log)
            known, _ = self._shares.known.get(head.id, (b"", None))
            standing = self._made.standing(work.name, work.files_key, self._make(log))
            if standing is None or known != work.share_key:
                left.append(work)
            else:
                yield from standing
        if left:
            yield from self._trips(left, hands)
        self._shares.forget_others(self._logs)
        ledger = StoredLedger(self._shares)
        problems = self._reading.shown.problems if self._of.policy.problems else ()
        yield from render_archive(self._of.fleet, ledger, problems, self._of.site, self._made)

    def _work(self, log: str) -> _Work:
        head = self._heads[log]
        held = b"held" if self._held(log) else b""
        share = sha256(b"\0".join((self._reading.key(log), self._alike, held))).digest()
        species = "\0".join(sorted(self._of.site.species.intersection(head.caught)))
        files = self._made.key((share, species.encode()))
        return _Work(log=log, share_key=share, files_key=files, name=trip_page(head.id))

    def _trips(self, left: Sequence[_Work], hands: Hands) -> Iterator[File]:
        """Make trips anew, side by side."""
        works = (
            TripWork(
                task=self._reading.task(work.log),
                held=self._held(work.log),
                known=self._made.drafts(work.name).known,
            )
            for work in left
        )
        for work, done in zip(left, hands.map(self._of, works), strict=True):
            self._shares.keep(work.share_key, done.kept)
            yield from self._made.keep(work.name, work.files_key, done.files, self._make(work.log))

    def _held(self, log: str) -> bool:
        latest = self._latest
        return latest is not None and is_held(self._heads[log].last_word, latest, self._of.policy)

    def _make(self, log: str) -> Make:
        return partial(self._anew, log)

    def _anew(self, log: str, drafts: Drafts) -> Iterator[Page]:
        for file in self._of.files(self._reading.task(log), drafts, held=self._held(log)):
            yield Page(path=file.path, content=file.content or b"")


def publish_files(told: Told, trips: Iterable[Reckoned], policy: Policy, folder: Path, store: Store) -> Published:
    """Write an edition's files for other programs as they lie where no pages are.

    Args:
        told: What the logs told besides the trips.
        trips: All trips.
        policy: What the edition shows.
        folder: Where the files go.
        store: One for this run.
    """
    with speaking(speech_of(told.fleet.language)):
        return publish(_bare_files(told, tuple(trips), policy, Shares(store, folder)), folder)


def _bare_files(told: Told, trips: Sequence[Reckoned], policy: Policy, shares: Shares) -> Iterator[Page]:
    fleet = told.fleet
    latest = max((trip.figures.trip.last_word for trip in trips), default=None)
    for trip in trips:
        held = latest is not None and is_held(trip.figures.trip.last_word, latest, policy)
        shown = redact_trip(trip, policy, held=held)
        shares.keep(b"", kept_of(shown, fleet, trip_rows(shown, landed_of(shown, fleet), fleet, policy)))
        path = trip_file(shown.figures.trip.id).removeprefix(FILES)
        yield Page(path=path, content=trip_json(shown.figures))
    ledger = StoredLedger(shares)
    problems = told.problems if policy.problems else ()
    for file in fleet_files(fleet, ledger, ledger.fasts(), problems, policy, fleet.title, AtOnce(), linked=False):
        yield Page(path=file.path.removeprefix(FILES), content=content_of(file))
