"""What the page "find" looks through: all of it, nothing that is withheld, safe inside a script, the same each time."""

import hashlib
import json
import re
from datetime import UTC, datetime
from decimal import Decimal
from functools import lru_cache
from typing import Any

import pytest
from msgspec.structs import replace

from logbook.model.figures import Reckoned
from logbook.model.page import Page
from logbook.model.trip import Fast, Period, Tow
from logbook.redact.policy import policy_of
from logbook.redact.trip import redact_trips
from logbook.render.find_index import NOT_KEPT, NOT_WEIGHED, Table, by_season, season_file, tow_texts, trip_texts
from logbook.render.shown import month_names
from tests.render import example
from tests.render.test_pages import Tags, whole

BEFORE, AFTER = "(window.logbookSeasons=window.logbookSeasons||[]).push(", ");\n"


def opened(page: Page) -> dict[str, Any]:
    """Return the data of a season as the script gets it: what stands in the call is JSON (RFC 8259)."""
    text = page.content.decode("ascii")
    assert text.startswith(BEFORE)
    assert text.endswith(AFTER)
    told = json.loads(text.removeprefix(BEFORE).removesuffix(AFTER))
    assert isinstance(told, dict)
    return told


@lru_cache(maxsize=1)
def trip() -> Reckoned:
    return example.trip()


def data_of(*trips: Reckoned) -> dict[str, Any]:
    return opened(season_file("2026", trips))


def saying(text: str) -> Reckoned:
    """Return a trip with a text everywhere that a find looks."""
    made = example.trip(example.vessel(text, text), number=text, tows=2)
    tows = tuple(
        replace(tow, remarks=text, damage=text, gear_lost=text, bottom=text, fast=Fast(what=text, at=None))
        for tow in made.log.tows
    )
    figures = replace(
        made.figures,
        trip=replace(made.figures.trip, skipper=text, port=text),
        tows=tuple(replace(tow, ground=text) for tow in made.figures.tows),
    )
    return replace(made, log=replace(made.log, tows=tows, remarks=text), figures=figures)


def test_every_tow_has_what_it_kept_and_where() -> None:
    data = data_of(trip())
    rows = data["trips"][0][12]

    assert len(rows) == len(trip().figures.tows)
    for row, tow in zip(rows, trip().figures.tows, strict=True):
        caught = dict(zip(row[3][::2], row[3][1::2], strict=True))
        assert {data["species"][number][0]: kg for number, kg in caught.items()} == pytest.approx(
            {name: float(one.kept_kg or 0) for name, one in tow.catch.items()}
        )
        assert data["grounds"][row[1]] == tow.ground


def test_the_weights_of_a_species_add_up_to_the_trips_own() -> None:
    data = data_of(trip())
    number = data["species"].index(["haddock", "HAD"])
    kept = sum(
        row[3][at + 1] for row in data["trips"][0][12] for at in range(0, len(row[3]), 2) if row[3][at] == number
    )

    assert kept == pytest.approx(float(trip().figures.catch["haddock"].kept_kg or 0))


def test_minutes_give_the_rate_that_the_pages_show() -> None:
    timed = tuple(replace(tow, catch_h=tow.duration_h) for tow in trip().figures.tows)
    data = data_of(replace(trip(), figures=replace(trip().figures, tows=timed)))

    for row, tow in zip(data["trips"][0][12], timed, strict=True):
        if tow.kept_kg is None:
            assert row[2] == 0
        else:
            assert float(tow.kept_kg) * 60 / row[2] == pytest.approx(tow.kept_kg_per_h, rel=1e-3)


def test_a_tow_without_time_or_catch_has_no_minutes() -> None:
    figures = replace(trip().figures.tows[0], shot=None, hauled=None, catch_h=None, kept_kg=None, ground=None)
    made = replace(
        trip(), figures=replace(trip().figures, tows=(figures,)), log=replace(trip().log, tows=trip().log.tows[:1])
    )

    assert data_of(made)["trips"][0][12][0][:3] == [-1, -1, 0]


def test_fish_not_weighed_and_fish_put_back_are_told_apart_from_none() -> None:
    tow = trip().figures.tows[0]
    name, one = next(iter(tow.catch.items()))
    back = replace(one, kept_kg=None, put_back_kg=Decimal(90), kept=False)
    caught = type(tow.catch)([(name, replace(one, kept_kg=None)), ("skate", back)])
    made = replace(
        trip(),
        figures=replace(trip().figures, tows=(replace(tow, catch=caught),)),
        log=replace(trip().log, tows=trip().log.tows[:1]),
    )

    assert data_of(made)["trips"][0][12][0][3][1::2] == [NOT_WEIGHED, NOT_KEPT]


def test_a_tow_that_says_nothing_new_is_short_and_one_with_another_number_tells_it() -> None:
    rows = data_of(trip())["trips"][0][12]
    renumbered = replace(
        trip(), figures=replace(trip().figures, tows=tuple(replace(one, no=one.no + 4) for one in trip().figures.tows))
    )
    logged = tuple(replace(one, no=one.no + 4) for one in trip().log.tows)
    others = data_of(replace(renumbered, log=replace(trip().log, tows=logged)))["trips"][0][12]

    assert min(len(row) for row in rows) == 4
    assert [row[5] for row in others] == [tow.no + 4 for tow in trip().figures.tows]


def test_words_of_trouble_say_what_they_are_of() -> None:
    tow = Tow(
        no=1,
        place=example.place(1),
        damage="*wing* torn",
        fast=Fast(what="rock", at=None),
        remarks="Slack [water](https://x.example)",
    )

    assert tow_texts(tow, foul=True) == ("Slack water", "damage: wing torn", "fast: rock", "foul tow")
    assert tow_texts(replace(tow, damage=None, remarks="", fast=Fast(what="", at=None)), foul=False) == ("fast",)


def test_what_was_said_of_a_trip_is_there_once_and_without_markdown() -> None:
    period = Period(place=example.place(1), start=None, end=None, words="dodging")
    texts = trip_texts(replace(trip().log, time_lost=(period, period), remarks="Lost a *marker*.\n\n- it came back"))

    assert texts.count("time lost: dodging") == 1
    assert texts[0] == "Lost a marker. it came back"
    assert "Dry at the after end." in texts


@pytest.mark.parametrize(
    "text",
    [
        "</script><script>alert(1)</script>",
        "<!-- <script>",
        "]]>",
        'it\'s "quoted" & \\ back',
        "line\u2028and\u2029paragraph",
        "Чайка 鱈 🐟",
        "\u202egnirts\u202c",
    ],
)
def test_any_text_is_safe_inside_a_script(text: str) -> None:
    # HTML Standard, "Restrictions for contents of script elements": no "<!--", "<script" or "</script" inside; ECMA-262: U+2028 and
    # U+2029 end a line in programs older than 2019.
    page = season_file("2026", (saying(text),))
    data = opened(page)

    assert not set(b"<>&'") & set(page.content)
    assert page.content.isascii()
    assert page.content.count(b"\n") == 1
    assert data["vessels"][0] == [text, text]
    assert " ".join(text.split()) in data["texts"] or "\u202e" in text


def test_a_season_is_named_for_what_is_in_it_and_is_the_same_each_time() -> None:
    first, again = season_file("2026", (trip(),)), season_file("2026", (example.trip(),))
    other = season_file("2026", (example.trip(richness=90),))

    assert first == again
    assert first.path == f"find/2026.{hashlib.sha256(first.content).hexdigest()[:8]}.js"
    assert other.path != first.path


def test_trips_are_by_season_whatever_order_they_come_in() -> None:
    _, trips, _, _ = example.whole_fleet()
    seasons = by_season(trips)

    assert by_season(tuple(reversed(trips))) == seasons
    assert [name for name, _ in seasons] == ["2026", "2025"]
    assert sum(len(of_it) for _, of_it in seasons) == len(trips)


def test_a_trip_belongs_to_the_season_it_docked_in() -> None:
    # It sails on 29 December and docks in January.
    over = example.trip(sailed=datetime(2025, 12, 29, 5, tzinfo=UTC))

    assert [name for name, _ in by_season((over,))] == ["2026"]


def test_what_an_edition_withholds_is_not_in_its_data() -> None:
    canary = "quillword"
    made = saying(canary)
    boat = replace(made.log.vessel, name="Solan Bright", registration="KI 114")
    head = replace(made.figures.trip, id="solan-bright-2026-03-04", vessel="Solan Bright", port="Port Kerrin")
    tows = tuple(replace(tow, ground="The Saddle") for tow in made.figures.tows)
    made = replace(made, log=replace(made.log, vessel=boat), figures=replace(made.figures, trip=head, tows=tows))
    shown = {
        edition: season_file("2026", redact_trips((made,), policy_of(edition, example.fleet()))).content.decode()
        for edition in ("office", "crew", "public")
    }

    assert canary in shown["office"]
    assert canary in shown["crew"]
    assert canary not in shown["public"]


def test_names_stand_once_and_what_is_not_told_has_no_number() -> None:
    table = Table()

    assert [table.number(name) for name in ("cod", "ling", "cod", None, "")] == [0, 1, 0, -1, -1]
    assert table.names() == ["cod", "ling"]


def test_the_page_lists_every_trip_without_scripts() -> None:
    page = whole()["find.html"].decode()
    links = {attrs["href"] for tag, attrs in Tags(page).tags if tag == "a"}
    trips = {path for path in whole() if path.startswith("trips/")}

    assert trips <= links
    assert "<noscript>" in page


def test_the_page_names_its_data_and_what_can_be_touched() -> None:
    page = whole()["find.html"].decode()
    attrs = next(attrs for _, attrs in Tags(page).tags if attrs.get("id") == "find")
    buttons = re.findall(r'aria-pressed="false"><bdi>([^<]*)</bdi>', page)

    assert attrs["data-files"].split() == sorted((path for path in whole() if path.startswith("find/")), reverse=True)
    assert set(month_names()) | {"haddock", "cod", "The Saddle", "Gannet Edge", "Solan Bright", "2025", "2026"} <= set(
        buttons
    )
    assert buttons[0] == "haddock"


def test_the_data_of_two_thousand_trips_stay_small() -> None:
    # 2,000 trips of some 75 tows over eight years: under 1 MB a season, which a script reads in the blink of an eye.
    made = season_file("2026", (trip(),))

    assert len(made.content) * 250 < 1_000_000
