"""The pages of seasons and weeks: what belongs to which, who is due and on which market."""

import re
from datetime import date

import pytest

from logbook.model.fleet import Fleet
from logbook.model.problem import Problem, Severity
from logbook.render.time_pages import (
    SeasonPage,
    WeekPage,
    render_season,
    render_week,
    season_contexts,
    week_contexts,
    week_of,
)
from tests.read.logs import FLEET, fleet
from tests.reckon.build import moment
from tests.render.archives import MARKETS, archive_of, shown
from tests.render.example import problem
from tests.render.test_pages import check

SPLIT = fleet("season starts: 15 September\n" + FLEET)


def landed(docked: str, kept: int = 100, vessel: str = "Solan Bright", more: str = "") -> str:
    return (
        f"vessel: {vessel}\nsailed: {date.fromisoformat(docked[:10]).replace(day=1)} 05:30, Port Kerrin\n"
        f"tows:\n  - {{shot: 18:00, hauled: 20:00, ground: The Saddle, catch: {{cod: {kept} kg}}}}\n"
        f"landed: {{docked: {docked}, port: Port Kerrin{more}}}\n"
    )


def out(vessel: str, port: str = "Port Kerrin", more: str = "") -> str:
    return (
        f"vessel: {vessel}\nsailed: 2026-03-14 05:30, {port}\n"
        "tows:\n  - {shot: 18:00, hauled: 20:00, from: 58 49.4N 015 01.7W, to: 58 46.0N 015 07.6W, catch: {cod: 40 kg}}\n"
        f"{more}"
    )


def seasons(*texts: str, of: Fleet | None = None) -> tuple[SeasonPage, ...]:
    site, trips, figures, _ = shown(*texts, of=of)
    return season_contexts(site, trips, figures)


def weeks(
    *texts: str, of: Fleet | None = None, problems: tuple[Problem, ...] = (), edition: str = "office"
) -> tuple[WeekPage, ...]:
    site, trips, figures, _ = shown(*texts, of=of, edition=edition)
    return week_contexts(site, trips, figures, problems)


# ISO 8601:2004 3.2.2: week 01 has the year's first Thursday. Dates of its own examples and of leap years.
@pytest.mark.parametrize(
    ("day", "week"),
    [
        ("2005-01-01", "2004-W53"),
        ("2005-01-02", "2004-W53"),
        ("2005-12-31", "2005-W52"),
        ("2007-01-01", "2007-W01"),
        ("2008-12-29", "2009-W01"),
        ("2010-01-03", "2009-W53"),
        ("2020-12-31", "2020-W53"),
        ("2021-01-03", "2020-W53"),
        ("2021-01-04", "2021-W01"),
        ("2026-03-10", "2026-W11"),
    ],
)
def test_a_week_is_the_iso_week_of_the_day(day: str, week: str) -> None:
    assert week_of(date.fromisoformat(day)) == week


def test_a_landing_stands_on_the_page_of_the_week_it_docked_in() -> None:
    made = weeks(
        landed("2020-12-31 23:59"), landed("2021-01-03 12:00", vessel="B"), landed("2021-01-04 00:00", vessel="C")
    )

    assert [(page.name, page.first, page.last) for page in made] == [
        ("2020-W53", date(2020, 12, 28), date(2021, 1, 3)),
        ("2021-W01", date(2021, 1, 4), date(2021, 1, 10)),
    ]
    assert [[one.landed.vessel for one in page.landings] for page in made] == [["Solan Bright", "B"], ["C"]]
    assert [page.frame.path for page in made] == ["weeks/2020-w53.html", "weeks/2021-w01.html"]
    assert "<h1>Week 53 of 2020</h1>" in render_week(made[0])


def test_weeks_lead_to_one_another() -> None:
    first, last = weeks(landed("2020-12-31 23:59"), landed("2021-01-04 00:00", vessel="C"))

    assert (first.previous, first.next) == (None, "2021-W01")
    assert (last.previous, last.next) == ("2020-W53", None)


def test_the_week_of_the_last_word_has_who_is_due_in_order() -> None:
    made = weeks(landed("2026-03-04 09:00", vessel="C"), out("Skua", port="Nowhere"), out("Auk"), of=fleet(MARKETS))

    assert [page.name for page in made] == ["2026-W10", "2026-W11"]
    assert made[0].due == ()
    assert [due.trip.figures.trip.vessel for due in made[1].due] == ["Auk", "Skua"]
    assert made[1].due[1].trip.figures.landing.docked is None


def test_two_on_one_sale_are_flagged_but_not_those_at_another_port() -> None:
    of = fleet(MARKETS)
    home = "bound for: Sulvik\n"
    (last,) = weeks(out("Auk"), out("Fulmar"), out("Petrel", more=home), of=of)
    html = render_week(last)

    assert {due.sale for due in last.due} == {moment("2026-03-16 07:00")}
    assert {due.trip.figures.trip.vessel: due.shared for due in last.due} == {
        "Auk": True,
        "Fulmar": True,
        "Petrel": False,
    }
    assert html.count("another vessel too") == 2


def test_expected_times_may_be_marked_as_passed_and_are_told_as_of_the_last_word() -> None:
    (last,) = weeks(out("Solan Bright", more="wants: 20 t ice\nsails again: 2026-03-16 18:00\n"))
    html = render_week(last)

    assert re.search(r'<time datetime="2026-03-15T\d\d:\d\d\+00:00" data-late="passed, no later word">', html)
    assert "as of Sat 14 Mar 20:00" in html
    assert '<td class="heard"><b>Sat 14 Mar 20:00</b></td>' in html
    assert "20 t ice" in html
    assert "sails again Mon 16 Mar 18:00" in html
    assert "coastguard" in html
    assert re.search(r'<script src="\.\./board\.[0-9a-f]{8}\.js" defer></script>', html)


def test_logs_with_errors_and_warnings_are_counted_once_and_notes_are_not() -> None:
    wrong = (
        problem(3),
        problem(3),
        problem(4, Severity.ERROR),
        problem(5, Severity.NOTE),
        problem(1, Severity.NOTE, file="b.yaml"),
    )
    (last,) = weeks(landed("2026-03-04 09:00"), problems=wrong)

    assert last.faulty == (("solan/trip-14.yaml", 1, 1),)
    assert '<a href="../problems.html">' in render_week(last)


def test_a_landing_is_over_the_scale_or_estimated() -> None:
    (only,) = weeks(
        landed("2026-03-04 09:00", more=", out-turn: {cod: 90 kg}"), landed("2026-03-05 09:00", vessel="B", kept=70)
    )
    html = render_week(only)

    assert [(str(one.total), one.landed.weighed) for one in only.landings] == [("90", True), ("70", False)]
    assert html.count('<span class="said">est.</span>') == 1
    assert [(name, str(kg)) for name, kg in only.species] == [("cod", "160")]


def test_without_trips_there_is_no_week_and_no_season() -> None:
    assert weeks() == ()
    assert seasons() == ()


def test_a_trip_belongs_to_the_season_it_docked_in_and_seasons_lead_to_one_another() -> None:
    first, last = seasons(landed("2025-12-31 23:59"), landed("2026-01-01 00:00", vessel="B"))

    assert [page.group.name for page in (first, last)] == ["2025", "2026"]
    assert (first.previous, first.next, last.previous, last.next) == (None, "2026", "2025", None)
    assert 'href="2026.html" rel="next"' in render_season(first)
    assert last.weeks == ("2026-W01",)


def test_a_season_that_starts_elsewhere_is_of_two_years_and_its_months_are_its_own() -> None:
    first, last = seasons(
        landed("2025-09-14 09:00", 10),
        landed("2025-09-15 09:00", 200, "B"),
        landed("2026-01-05 09:00", 30, "C"),
        of=SPLIT,
    )

    assert [page.frame.path for page in (first, last)] == ["seasons/2024-25.html", "seasons/2025-26.html"]
    assert [[(month.name, str(month.kept_kg)) for month in page.months] for page in (first, last)] == [
        [("2025-09", "10")],
        [("2025-09", "200"), ("2026-01", "30")],
    ]
    assert "Season <bdi>2025–26</bdi>" in render_season(last)


def test_the_chart_of_a_season_has_every_month_and_no_other_seasons_fish() -> None:
    _, last = seasons(
        landed("2025-09-14 09:00", 10),
        landed("2025-09-15 09:00", 200, "B"),
        landed("2026-01-05 09:00", 30, "C"),
        of=SPLIT,
    )

    assert last.chart is not None
    bars = last.chart.drawing.bars  # type: ignore[union-attr]
    assert [bar.label.split()[0] for bar in bars] == ["Sep", "Oct", "Nov", "Dec", "Jan"]
    assert [sum(part.size for part in bar.parts) for bar in bars] == [0.2, 0, 0, 0, 0.03]


def test_the_archive_of_an_odd_season_is_sound() -> None:
    check(archive_of(landed("2025-09-14 09:00"), landed("2025-09-15 09:00", 200, "B"), out("A"), of=SPLIT))


def test_no_words_of_a_log_come_into_the_weeks_of_the_public() -> None:
    log = out("A", more="wants: canary-wants\nremarks: canary\nskipper: Canary\n")
    told = "".join(render_week(page) for page in weeks(log, edition="public", problems=()))

    assert "anary" not in told
    assert "problems.html" not in told
