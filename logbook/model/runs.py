"""Numbers as runs, for telling many of them briefly."""

from collections.abc import Iterable


def runs_of(numbers: Iterable[int], dash: str) -> str:
    """Return numbers as a person lists them, in order and each once: `4`, `2-9, 12`; nothing where there are none.

    Args:
        numbers: In any order.
        dash: What stands between the ends of a run.
    """
    runs: list[list[int]] = []
    for number in sorted(set(numbers)):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(f"{run[0]}{dash}{run[-1]}" if len(run) > 1 else str(run[0]) for run in runs)
