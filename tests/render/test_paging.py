"""Lists too long for one page: nothing is lost between pages, each is of a size that an old laptop shows, and all lead to each other."""

from datetime import UTC, datetime, timedelta
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.edition import OFFICE
from logbook.model.gear import FastMark
from logbook.model.problem import Place, Problem, Severity
from logbook.redact.policy import policy_of
from logbook.render.gear import gear_contexts, render_gear
from logbook.render.pages import site_of
from logbook.render.paging import parted
from logbook.render.place_pages import _MISHAPS, _latest
from logbook.render.problems import ProblemsPage, problem_parts, problems_context, render_problems
from tests.read.logs import fleet

SITE = site_of("Test Fleet", policy_of(OFFICE, fleet()))
DAY = datetime(2020, 1, 1, tzinfo=UTC)


@given(st.lists(st.integers(min_value=1, max_value=30)), st.integers(min_value=1, max_value=20))
def test_parts_hold_everything_in_order_and_no_more_than_they_may(sizes: list[int], most: int) -> None:
    parts = parted(sizes, most, lambda size: size)

    assert [size for part in parts for size in part] == sizes
    assert all(sum(part) <= most or len(part) == 1 for part in parts)
    assert all(sum(a) + b[0] > most for a, b in pairwise(parts))


def problems(files: int, each: int) -> list[Problem]:
    return [
        Problem(
            place=Place(file=f"{file:04}.yaml", line=line, column=1),
            severity=Severity.NOTE,
            code="page-break",
            message="m",
            hint="h",
        )
        for file in range(files)
        for line in range(1, each + 1)
    ]


def problems_pages(found: list[Problem]) -> list[ProblemsPage]:
    return [problems_context(SITE, part, {}) for part in problem_parts(found)]


def test_very_many_problems_stand_on_several_pages() -> None:
    pages = problems_pages(problems(300, 9))
    texts = [render_problems(page) for page in pages]

    assert [page.frame.path for page in pages] == ["problems.html", "problems-2.html", "problems-3.html"]
    assert sum(len(file.problems) for page in pages for file in page.files) == 2700
    assert all("2\N{NARROW NO-BREAK SPACE}700 notes in 300 files" in text for text in texts)
    assert all(f'href="{page.frame.path}"' in text for text in texts for page in pages)
    assert all(text.count("<li") < 1100 for text in texts)


def test_few_problems_or_none_stand_on_one_page_without_links_to_others() -> None:
    for found in ([], problems(3, 3)):
        (page,) = problems_pages(found)
        assert "Page 1" not in render_problems(page)


def marks(count: int) -> tuple[FastMark, ...]:
    return tuple(
        FastMark(
            trip_id=f"auk-{number}", vessel="Auk", tow=1, order=1, when=DAY + timedelta(days=number), at=None, track=(),
            what="rock", ground="Long Brae", depth_m=None,
        )
        for number in range(count)
    )  # fmt: skip


def test_very_many_fasts_stand_on_several_pages_the_latest_on_the_first_under_their_numbers() -> None:
    pages = gear_contexts(SITE, fleet(), {}, marks(1203))

    assert [page.frame.path for page in pages] == ["gear.html", "gear-2.html", "gear-3.html"]
    assert [(page.fasts[0].number, page.fasts[-1].number) for page in pages] == [(704, 1203), (204, 703), (1, 203)]
    texts = [render_gear(page) for page in pages]
    assert "Here stand numbers 704 to 1203 of 1\N{NARROW NO-BREAK SPACE}203 fasts" in texts[0]
    assert ["Hours on the gear" in text for text in texts] == [True, False, False]
    assert all("Heaving on a fast has capsized ships" in text for text in texts)


def test_a_ground_shows_the_latest_of_its_fasts_and_those_without_a_time_only_where_there_are_few() -> None:
    many = marks(_MISHAPS + 40)
    untimed = replace(many[0], when=None)

    assert _latest(many) == many[40:]
    assert _latest(marks(5)) == marks(5)
    assert _latest((untimed, *marks(3))) == (untimed, *marks(3))
    assert _latest((untimed, *many)) == many[40:]
