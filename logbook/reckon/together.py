"""Tows whose catches were sorted together: which tows' fish stands in which tow's catch."""

from collections.abc import Sequence

from logbook.model.trip import CatchKept, Tow

_NEXT = CatchKept.NEXT


def sorted_together(tows: Sequence[Tow]) -> tuple[tuple[int, ...], ...]:
    """Return for each tow the places in order of the tows whose fish is in its catch, its own last.

    A tow whose catch was sorted with the next one's has none; the tow after it has both.
    """
    groups: list[tuple[int, ...]] = []
    waiting: list[int] = []
    for n, tow in enumerate(tows):
        waiting.append(n)
        if tow.kept is _NEXT:
            groups.append(())
        else:
            groups.append(tuple(waiting))
            waiting = []
    return tuple(groups)


def still_waiting(tows: Sequence[Tow]) -> tuple[Tow, ...]:
    """Return the tows at the end that were to be sorted with a next one which is not there."""
    count = 0
    for tow in reversed(tows):
        if tow.kept is not _NEXT:
            break
        count += 1
    return tuple(tows[len(tows) - count :])
