"""All that a logs folder tells: what is wrong in it at once, its trips one at a time.

A log bears on the figures of its vessel's others. How is found from small pieces of each, so that a change in one log asks for no
more than the trips whose figures it really changes.
"""

from collections.abc import Iterable, Iterator
from functools import cached_property
from pathlib import Path

from msgspec import Struct

from logbook.known.beside import beside_each, head_beside, key_of
from logbook.known.digest import digest
from logbook.known.logs import Logs, fleet_digest
from logbook.known.task import Task, reckoned
from logbook.model.figures import Reckoned
from logbook.model.hands import ONE, Hands
from logbook.model.names import fold_name
from logbook.model.packed import packed
from logbook.model.placed import Head, placed
from logbook.model.problem import Problem
from logbook.read.folder import Told, clash_problem, named_below, plainly
from logbook.reckon.head import head_in
from logbook.reckon.neighbours import with_rest
from logbook.reckon.past import left_by
from logbook.reckon.rest import rested
from logbook.store.store import Store
from logbook.store.trips import Beside, Part, Wrong


def read_and_reckon(logs: Path, store: Store, hands: Hands = ONE) -> "Reading":
    """Return all that a logs folder tells.

    Args:
        logs: The folder, or one log.
        store: What earlier builds knew of it; brought up to date.
        hands: Who reads the logs that have changed.

    Raises:
        OSError: The folder itself can't be listed.
        StoreError: What was kept is damaged.
    """
    of = Logs(logs, store)
    of.bring_up_to_date(hands)
    return Reading(of)


class _Placing(Struct, frozen=True, kw_only=True):
    """What bears on a trip beside others that can't be read at present, and the key to its figures."""

    near: Beside
    key: bytes
    head: Head


class Reading:
    """All that a logs folder tells.

    Attributes:
        names: Of the logs with a trip, from the logs folder, by vessel, then by when they began, then by name.
    """

    def __init__(self, of: Logs, last_good: Iterable[Reckoned] = ()) -> None:
        """Put in order what is known of the logs, and trips of logs that can't be read at present."""
        self._of, self._known = of, of.known
        self._kept = {one.log.file: one for one in last_good}
        self._placings: dict[str, _Placing] = {}
        vessels = {fold_name(one.log.vessel.name) for one in self._kept.values()}
        for vessel in sorted(vessels):
            self._placings |= self._placed(vessel)
        order = [(log.vessel, log.begins, log.log) for log in self._known.logs.values() if log.vessel]
        order += [
            (fold_name(one.log.vessel.name), one.log.begins.timestamp(), name) for name, one in self._kept.items()
        ]
        self.names = tuple(name for _, _, name in sorted(order))

    def with_last_good(self, last_good: Iterable[Reckoned]) -> "Reading":
        """Return the same with trips whose logs can't be read at present; the other trips see them as if their logs still read."""
        return Reading(self._of, last_good)

    @cached_property
    def folder(self) -> Told:
        """Return what the folder told, with files named as the folder was."""
        return self._told(self._of.above, self._of.found)

    @cached_property
    def shown(self) -> Told:
        """Return the same, with files named from the logs folder."""
        return self._told("", [plainly(problem, self._of.above) for problem in self._of.found])

    def key(self, name: str) -> bytes:
        """Return what changes exactly when the trip of a log does."""
        placing = self._placings.get(name)
        return placing.key if placing is not None else self._known.logs[name].key

    def head(self, name: str) -> Head:
        """Return the head of the trip of a log."""
        placing = self._placings.get(name)
        head = placing.head if placing is not None else self._known.logs[name].head
        assert head is not None  # noqa: S101 - a log of these names has a trip
        return head

    def task(self, name: str) -> Task:
        """Return what the trip of a log is reckoned from.

        Raises:
            StoreError: What was kept of it is damaged.
        """
        placing, kept = self._placings.get(name), self._kept.get(name)
        near = placing.near if placing is not None else self._known.beside(name)
        recent = (
            rested(self._kept[file].log) if file in self._kept else self._known.rested(file) for file in near.recent
        )
        return Task(
            name=name,
            content=packed(kept) if kept is not None else self._known.trip(name),
            as_it_was=kept is not None,
            neighbours=with_rest(near.neighbours, recent),
            problems=self._problems(name) if kept is not None else _problems(self._known.wrong(name)),
        )

    def trip(self, name: str) -> Reckoned:
        """Return the trip of a log with its figures, reckoned now.

        Raises:
            StoreError: What was kept of it is damaged.
        """
        return reckoned(self.task(name), self._of.fleet)

    def _problems(self, name: str) -> tuple[Problem, ...]:
        return tuple(problem for problem in self.shown.problems if problem.place.file == name)

    def _told(self, above: str, problems: Iterable[Problem]) -> Told:
        logs = self._known.logs
        every = [*problems, *(problem for _, wrong in self._known.every_wrong() for problem in _problems(wrong, above))]
        return Told(
            fleet=self._of.fleet,
            problems=tuple(sorted(set(every))),
            logs=len(logs),
            unread=tuple(sorted(f"{above}{name}" for name, log in logs.items() if not log.vessel)),
        )

    def _placed(self, vessel: str) -> Iterator[tuple[str, _Placing]]:
        """Give what bears on each trip of a vessel, some of whose logs can't be read at present."""
        kept = {name: one for name, one in self._kept.items() if fold_name(one.log.vessel.name) == vessel}
        parts = self._known.parts(vessel) | {name: self._part(one) for name, one in kept.items()}
        fleet = fleet_digest(self._of)
        for part, near in beside_each(parts.values(), kept):
            key, head = key_of(part, near, parts, fleet), head_beside(part, near)
            yield part.placed.file, _Placing(near=near, key=key, head=head)

    def _part(self, kept: Reckoned) -> Part:
        log = kept.log
        own = digest(packed(kept), packed(self._problems(log.file)))
        return Part(
            placed=placed(log),
            left=left_by(log),
            own=own,
            typed=b"",
            rested=digest(packed(rested(log))),
            head=head_in(kept),
        )


def _problems(wrong: Wrong, above: str = "") -> tuple[Problem, ...]:
    """Return what is wrong in a log, in order; `above` is what stands before the names of all logs."""
    own = (named_below(problem, above) for problem in wrong.own) if above else wrong.own
    return tuple(sorted({*own, *(clash_problem(clash, above) for clash in wrong.clashes)}))
