"""The tables of the bench in Markdown: first how we compare with others and with what we aim at, then what was measured."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import pairwise
from statistics import median

from tests.bench.runs import FLOOR, OURS, Run, Work

Take = Callable[[Run], float]


def wall(run: Run) -> float:
    """Return how long a run took."""
    return run.used.wall_s


def cpu(run: Run) -> float:
    """Return a run's processor time."""
    return run.used.cpu_s


def peak(run: Run) -> float:
    """Return a run's memory."""
    return run.used.peak_mb


class Runs:
    """All runs so far."""

    def __init__(self, runs: Iterable[Run]) -> None:
        self.all = tuple(runs)
        self.trips = tuple(sorted({run.trips for run in self.all}))
        self.peers = tuple(dict.fromkeys(run.who for run in self.all if run.who not in (OURS, FLOOR)))

    def of(self, who: str, work: Work, trips: int) -> list[Run]:
        """Return somebody's runs of one kind."""
        return [run for run in self.all if (run.who, run.work, run.trips) == (who, work, trips)]

    def median(self, take: Take, who: str, work: Work, trips: int) -> float | None:
        """Return the median of what somebody's runs of one kind took; None where there are none."""
        found = [take(run) for run in self.of(who, work, trips)]
        return median(found) if found else None

    def ratio(self, take: Take, who: str, work: Work, trips: int) -> float | None:
        """Return ours divided by somebody's: the median over the rounds, each round with itself; None where there are none."""
        ours, theirs = _by_turn(take, self.of(OURS, work, trips)), _by_turn(take, self.of(who, work, trips))
        ratios = [median(ours[turn]) / median(theirs[turn]) for turn in ours if turn in theirs]
        return median(ratios) if ratios else None


def _by_turn(take: Take, runs: Iterable[Run]) -> dict[int, list[float]]:
    turns: dict[int, list[float]] = {}
    for run in runs:
        turns.setdefault(run.turn, []).append(take(run))
    return turns


COMPARED: tuple[tuple[str, Take, Work, dict[int, str]], ...] = (
    ("full build, time", wall, Work.FULL, {1000: "0.7 of MkDocs and Pelican"}),
    ("full build, processor time", cpu, Work.FULL, {}),
    ("full build, memory", peak, Work.FULL, {10_000: "0.04 of Hugo, 0.1 of Eleventy"}),
    ("one log changed, time", wall, Work.ONE, {10_000: "0.033 of Hugo and Eleventy"}),
    ("one log changed, processor time", cpu, Work.ONE, {}),
    ("nothing changed, time", wall, Work.NOTHING, {}),
    ("nothing changed, processor time", cpu, Work.NOTHING, {}),
)
"""What is compared with the others, and what we aim to stay below with so many trips."""


def with_others(runs: Runs) -> Iterator[str]:
    """Give the lines of the table of ours divided by theirs."""
    yield from _header("ours ÷ theirs", "trips", *runs.peers, "aim, at most")
    for what, take, work, aims in COMPARED:
        for trips in runs.trips:
            ratios = (shown(runs.ratio(take, peer, work, trips)) for peer in runs.peers)
            yield _line(what, f"{trips:,}", *ratios, aims.get(trips, ""))


def alone(runs: Runs) -> Iterator[str]:
    """Give the lines of the table of what we aim at without others."""
    yield from _header("ours", *(f"{trips:,} trips" for trips in runs.trips), "aim")
    for what, aim, figures in (
        (
            f"nothing changed, time ÷ `{FLOOR}`",
            "at most 15 at 10,000",
            [_of_floor(runs, trips) for trips in runs.trips],
        ),
        ("full build, memory, MiB", "at most 300 at 10,000", [_memory(runs, trips) for trips in runs.trips]),
        ("full build, processor time a trip ÷ that one column before", "at most 1.2 at 10,000", _growth(runs)),
        ("check, logs a second of processor time", "at least 100", [_checked(runs, trips) for trips in runs.trips]),
    ):
        yield _line(what, *map(shown, figures), aim)


def _of_floor(runs: Runs, trips: int) -> float | None:
    return runs.ratio(wall, FLOOR, Work.NOTHING, trips)


def _memory(runs: Runs, trips: int) -> float | None:
    return runs.median(peak, OURS, Work.FULL, trips)


def _checked(runs: Runs, trips: int) -> float | None:
    used = runs.median(cpu, OURS, Work.CHECK, trips)
    return trips / used if used else None


def _growth(runs: Runs) -> list[float | None]:
    each = [(runs.median(cpu, OURS, Work.FULL, trips) or 0) / trips for trips in runs.trips]
    return [None, *(now / before if before else None for before, now in pairwise(each))]


def measured(runs: Runs) -> Iterator[str]:
    """Give the lines of the table of what was measured."""
    yield from _header(
        "ours", "trips", "s", "processor s", "MiB", "files written", *(f"{peer}, s" for peer in runs.peers)
    )
    for work in Work:
        for trips in runs.trips:
            if ours := runs.of(OURS, work, trips):
                took = (shown(runs.median(take, OURS, work, trips)) for take in (wall, cpu, peak))
                files = "" if ours[0].files is None else f"{max(run.files or 0 for run in ours):,}"
                theirs = (shown(runs.median(wall, peer, work, trips)) for peer in runs.peers)
                yield _line(work, f"{trips:,}", *took, files, *theirs)


def shown(figure: float | None) -> str:
    """Return a figure with two digits that count, whole from 10 on; nothing for None."""
    if figure is None:
        return ""
    if figure >= 9.95:
        return f"{figure:,.0f}"
    return f"{figure:#.2g}".rstrip(".")


def _header(*cells: str) -> Iterator[str]:
    yield _line(*cells)
    yield f"|{'---|' * len(cells)}"


def _line(*cells: str) -> str:
    return f"| {' | '.join(cells)} |"


def told(runs: Runs, versions: Sequence[str], missing: Sequence[str]) -> str:
    """Return the tables, with a line before them that says what was compared.

    Args:
        runs: All that was measured.
        versions: The generators that took part, with their versions.
        missing: Those that are not installed.
    """
    compared = f"Compared with {', '.join(versions)}." if versions else "Compared with no other."
    left_out = f" Not installed, so left out: {', '.join(missing)}." if missing else ""
    others = (*with_others(runs), "") if versions else ()
    return "\n".join((f"{compared}{left_out}", "", *others, *alone(runs), "", *measured(runs)))
