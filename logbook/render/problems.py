"""The page of log problems: every problem of every log, with its line and what to type."""

from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct

from logbook.model.figures import Reckoned
from logbook.model.language import ENGLISH
from logbook.model.problem import Problem, Severity
from logbook.render.environment import environment
from logbook.render.frame import Frame, Site
from logbook.render.language import _, speech
from logbook.render.links import PROBLEMS, numbered_page
from logbook.render.paging import Pages, parted
from logbook.render.shown import many

_MOST = 1000
"""Problems on one page: some nine elements each."""


class FileProblems(Struct, frozen=True, kw_only=True):
    """The problems of one file.

    Attributes:
        file: Its name.
        anchor: Its place on the page.
        trip: The trip read from it; None for a fleet file or a log nothing could be read of.
        problems: In the order of lines.
    """

    file: str
    anchor: str
    trip: Reckoned | None
    problems: tuple[Problem, ...]


class ProblemsPage(Struct, frozen=True, kw_only=True):
    """All that the page shows.

    Attributes:
        frame: Its place in the archive.
        files: Those with problems that stand on it, the worst first.
        counts: How many of each kind there are on all pages, in words; without those that there are none of.
        faulty: How many files have any.
        pages: Which of the pages of problems it is.
    """

    frame: Frame
    files: tuple[FileProblems, ...]
    counts: tuple[str, ...]
    faulty: int
    pages: Pages

    @property
    def translated(self) -> bool:
        """Tell whether the page is in another language than its problems, which the checks tell in English."""
        return speech().tag != ENGLISH


class FilePart(Struct, frozen=True, kw_only=True):
    """Files with problems that stand on one page, each with its place there and its problems.

    Attributes:
        page: Which of the pages of problems it is.
        files: Name, place on the page, problems; the worst first.
        counts: How many problems of each kind there are on all pages, in words.
        faulty: How many files have any.
    """

    page: Pages
    files: tuple[tuple[str, str, tuple[Problem, ...]], ...]
    counts: tuple[str, ...]
    faulty: int


def problem_parts(problems: Iterable[Problem]) -> tuple[FilePart, ...]:
    """Return which problems stand on which page: files in order of name, worst first; one page unless there are very many problems."""
    grouped: dict[str, list[Problem]] = {}
    every = sorted(set(problems))
    for problem in every:
        grouped.setdefault(problem.place.file, []).append(problem)
    anchors = problem_anchors(grouped)
    files = [(file, anchors[file], tuple(found)) for file, found in grouped.items()]
    files.sort(key=lambda one: (_worst(one[2]), one[0]))
    parts = parted(files, _MOST, lambda file: len(file[2]))
    counts = _counted(every)
    return tuple(
        FilePart(
            page=Pages(first=PROBLEMS, number=number, count=len(parts)),
            files=tuple(part),
            counts=counts,
            faulty=len(files),
        )
        for number, part in enumerate(parts, 1)
    )


def problems_context(site: Site, part: FilePart, trips: Mapping[str, Reckoned]) -> ProblemsPage:
    """Return what a page shows.

    Args:
        site: What all pages share.
        part: Which problems.
        trips: Those read from these files, by name of the file.
    """
    return ProblemsPage(
        frame=Frame(site=site, path=numbered_page(PROBLEMS, part.page.number), title=_("Log problems")),
        files=tuple(
            FileProblems(file=file, anchor=anchor, trip=trips.get(file), problems=found)
            for file, anchor, found in part.files
        ),
        counts=part.counts,
        faulty=part.faulty,
        pages=part.page,
    )


def _counted(problems: Sequence[Problem]) -> tuple[str, ...]:
    """Return how many there are of each kind of which there are any, the worst kind first."""
    errors, warnings, notes = (sum(one.severity is severity for one in problems) for severity in Severity)
    said = (
        errors and many(errors, "error", "errors"),
        warnings and many(warnings, "warning", "warnings"),
        notes and many(notes, "note", "notes"),
    )
    return tuple(words for words in said if words)


def problem_anchors(files: Iterable[str]) -> Mapping[str, str]:
    """Return the place on the page of every file with problems."""
    return {file: f"file-{number}" for number, file in enumerate(sorted(set(files)), 1)}


def render_problems(context: ProblemsPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/problems.html").render(page=context, frame=context.frame)


def _worst(problems: Iterable[Problem]) -> int:
    order = tuple(Severity)
    return min(order.index(problem.severity) for problem in problems)
