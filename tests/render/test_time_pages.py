"""The pages of seasons and weeks: what belongs to which, who is due and on which market."""

import re
from datetime import date

import pytest

from logbook.model.fleet import Fleet
from logbook.model.problem import Problem, Severity
from logbook.render.gather import latest_landed, out_at_sea, week_of, weeks_of
from logbook.render.time_pages import (
    Last,
    SeasonPage,
    WeekPage,
    render_season,
    render_week,
    season_context,
    week_context,
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
    """Return what the page of every season shows, each with those beside it."""
    site, ledger = shown(*texts, of=of)
    groups = tuple(ledger.fleet().seasons.values())
    names = (None, *(group.name for group in groups), None)
    return tuple(season_context(site, ledger, group, names[n], names[n + 2]) for n, group in enumerate(groups))


def weeks(
    *texts: str, of: Fleet | None = None, problems: tuple[Problem, ...] = (), edition: str = "office"
) -> tuple[WeekPage, ...]:
    """Return what the page of every week shows, each with those beside it, the first first."""
    site, ledger = shown(*texts, of=of, edition=edition)
    every = tuple(reversed(weeks_of(ledger)))
    names = (None, *every, None)
    last = Last(out=out_at_sea(ledger.entries), problems=problems)
    return tuple(
        week_context(
            site,
            ledger,
            name,
            [
                one
                for one in reversed(latest_landed(ledger.entries))
                if one.docked and week_of(one.docked.date()) == name
            ],
            last if name == every[-1] else None,
            names[n],
            names[n + 2],
        )
        for n, name in enumerate(every)
    )


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


def test_pages_of_the_archive_are_those_of_its_seasons_and_weeks_and_lead_to_one_another() -> None:
    files = archive_of(
        landed("2024-12-31 23:59"),
        landed("2025-06-04 09:00", vessel="B"),
        landed("2026-01-01 00:00", vessel="C"),
        out("D"),
    )
    seasons_and_weeks = {path for path in files if path.startswith(("seasons/", "weeks/"))}

    assert seasons_and_weeks == {
        "seasons/2024.html",
        "seasons/2025.html",
        "seasons/2026.html",
        "weeks/2025-w01.html",
        "weeks/2025-w23.html",
        "weeks/2026-w01.html",
        "weeks/2026-w11.html",
    }
    assert _beside(files["seasons/2024.html"]) == {"next": "2025.html"}
    assert _beside(files["seasons/2025.html"]) == {"prev": "2024.html", "next": "2026.html"}
    assert _beside(files["seasons/2026.html"]) == {"prev": "2025.html"}
    assert _beside(files["weeks/2025-w01.html"]) == {"next": "2025-w23.html"}
    assert _beside(files["weeks/2026-w01.html"]) == {"prev": "2025-w23.html", "next": "2026-w11.html"}
    assert _beside(files["weeks/2026-w11.html"]) == {"prev": "2026-w01.html"}
    told = [path for path in seasons_and_weeks if b"coastguard" in files[path]]
    assert told == ["weeks/2026-w11.html"]  # who is due stands on the page of the last week alone


def _beside(page: bytes) -> dict[str, str]:
    """Return where a page's links to the one before and the one after lead."""
    return {rel: path for path, rel in re.findall(r'href="([^"]+)" rel="(prev|next)"', page.decode())}


@pytest.mark.parametrize(
    "docked",
    ["2020-12-31", "2021-01-03", "2021-01-04", "2024-12-30", "2025-12-28", "2025-12-29", "2026-01-01", "2027-01-01"],
)
def test_a_week_is_that_of_the_standard_and_a_month_that_of_the_calendar(docked: str) -> None:
    # ISO 8601 week dates, as the C library's strftime has them.
    day = date.fromisoformat(docked)
    log = landed(f"{docked} 09:00").replace(f"sailed: {day.replace(day=1)}", f"sailed: {day.year - 1}-11-04")

    assert [page.name for page in weeks(log)] == [day.strftime("%G-W%V")]
    assert [month.name for page in seasons(log) for month in page.months] == [docked[:7]]


def trip(sailed: str, docked: str | None, kept: int, more: str = "") -> str:
    end = f"landed: {{docked: {docked}, port: Port Kerrin{more}}}\n" if docked else ""
    return (
        f"vessel: Solan Bright\nsailed: {sailed}, Port Kerrin\n"
        f"tows:\n  - {{shot: 18:00, hauled: 19:00, catch: {{cod: {kept} kg}}}}\n{end}"
    )


def test_weeks_and_months_are_of_docking_and_stand_in_order() -> None:
    logs = (
        trip("2026-02-27 05:30", "2026-03-02 09:00", 10),
        trip("2026-02-20 05:30", "2026-02-26 09:00", 30),
        trip("2025-12-20 05:30", "2026-01-02 09:00", 5),
        trip("2026-03-20 05:30", None, 70),
    )
    (season,) = seasons(*logs)

    assert [(page.name, page.group and page.group.kept_kg) for page in weeks(*logs)] == [
        ("2026-W01", 5),
        ("2026-W09", 30),
        ("2026-W10", 10),
        ("2026-W12", None),
    ]
    assert [(month.name, month.kept_kg) for month in season.months] == [
        ("2026-01", 5),
        ("2026-02", 30),
        ("2026-03", 10),
    ]
    assert (season.group.trips, season.group.kept_kg) == (3, 45)
    assert [line.landed_kg for line in season.trips] == [10, 30, 5]
    assert season.weeks == ("2026-W01", "2026-W09", "2026-W10")


def test_a_month_of_trips_of_no_known_out_turn_and_price_has_none() -> None:
    (season,) = seasons(
        trip("2026-01-04 05:30", "2026-01-06 20:00", 100, ", out-turn: {cod: 90 kg}, prices: {cod: 3.50/kg}"),
        trip("2026-02-04 05:30", "2026-02-05 20:00", 300),
    )

    assert [(month.out_turn_kg, month.gross) for month in season.months] == [(90, 315), (None, None)]


def test_the_archive_of_an_odd_season_is_sound() -> None:
    check(archive_of(landed("2025-09-14 09:00"), landed("2025-09-15 09:00", 200, "B"), out("A"), of=SPLIT))


def test_no_words_of_a_log_come_into_the_weeks_of_the_public() -> None:
    log = out("A", more="wants: canary-wants\nremarks: canary\nskipper: Canary\n")
    told = "".join(render_week(page) for page in weeks(log, edition="public", problems=()))

    assert "anary" not in told
    assert "problems.html" not in told
