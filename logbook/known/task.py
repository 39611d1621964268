"""A trip to be reckoned, as it can be handed to another process."""

from msgspec import Struct
from msgspec.structs import replace

from logbook.model.entries import Lean, whole
from logbook.model.figures import Neighbours, Reckoned
from logbook.model.fleet import Fleet
from logbook.model.packed import unpacked
from logbook.model.past import Past
from logbook.model.problem import Problem
from logbook.model.trip import without_entries
from logbook.reckon.trip import as_it_was, reckon_among
from logbook.store.kept import record_of, unsqueezed


class Task(Struct, frozen=True, kw_only=True):
    """All that a trip's figures are reckoned from but for the fleet.

    Attributes:
        name: Its log.
        content: The trip, squeezed; where it is shown as it last was, that, packed.
        as_it_was: Whether it is.
        neighbours: What the vessel's other trips say of it.
        problems: What is wrong in its log.
    """

    name: str
    content: bytes
    as_it_was: bool = False
    neighbours: Neighbours
    problems: tuple[Problem, ...]


def reckoned(task: Task, fleet: Fleet) -> Reckoned:
    """Return a trip with its figures, without what only reckoning needed: the species' entries, and what earlier trips left.

    Raises:
        StoreError: What was kept of it is damaged.
    """
    if task.as_it_was:
        made = as_it_was(unpacked(task.content, Reckoned), task.neighbours, task.problems)
    else:
        made = reckon_among(whole(record_of(unsqueezed(task.content), Lean)), fleet, task.neighbours, task.problems)
    return replace(made, log=without_entries(made.log), neighbours=replace(made.neighbours, past=Past()))
