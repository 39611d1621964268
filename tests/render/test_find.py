"""What the page "find" looks through: all of it, nothing that is withheld, safe inside a script, the same each time."""

import json
import re
from datetime import UTC, datetime
from decimal import Decimal
from functools import lru_cache
from hashlib import sha256
from itertools import takewhile
from typing import Any

import pytest
from msgspec.structs import replace

from logbook.model.edition import OFFICE
from logbook.model.figures import Reckoned
from logbook.model.named import ByName
from logbook.model.page import AtOnce, Page, content_of
from logbook.model.trip import Fast, Period, Tow
from logbook.redact.policy import policy_of
from logbook.render import find
from logbook.render.find import Counts, find_files
from logbook.render.find_index import NOT_KEPT, NOT_WEIGHED, Table, tow_texts, trip_data, trip_texts, year_file
from logbook.render.pages import site_of
from logbook.render.shown import month_names
from tests.ledger import ledger_of, redacted
from tests.render import example
from tests.render.tags import Tags

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


def page_of(*trips: Reckoned) -> Page:
    return year_file("2026", map(trip_data, trips))


def data_of(trip: Reckoned) -> list[Any]:
    """Return the data of a trip as the script gets it."""
    (row,) = opened(page_of(trip))["trips"]
    assert isinstance(row, list)
    return row


def caught(row: list[Any]) -> list[Any]:
    """Return species and kilograms of a tow in turn: what stands before its texts, where it has some."""
    return list(takewhile(lambda one: not isinstance(one, list), row[3:]))


def files_of(
    trips: tuple[Reckoned, ...], counts: Counts | None = None, seasons: tuple[str, ...] = ("2025", "2026")
) -> dict[str, bytes]:
    """Return the page and its data."""
    policy = policy_of(OFFICE, example.fleet())
    site = site_of("Kerrin Isles", policy, ())
    ledger = ledger_of(trips, example.fleet(), policy)
    counts = counts or Counts(species=ByName(), grounds=ByName(), vessels=ByName())
    return {file.path: content_of(file) for file in find_files(site, ledger, counts, seasons, AtOnce())}


def links_of(page: bytes) -> set[str]:
    return {attrs["href"] for tag, attrs in Tags(page.decode()).tags if tag == "a"}


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
    species, grounds, rows = data[10], data[11], data[14]

    assert len(rows) == len(trip().figures.tows)
    for row, tow in zip(rows, trip().figures.tows, strict=True):
        kept = dict(zip(caught(row)[::2], caught(row)[1::2], strict=True))
        assert {species[2 * number]: kg for number, kg in kept.items()} == pytest.approx(
            {name: float(one.kept_kg or 0) for name, one in tow.catch.items()}
        )
        assert grounds[row[1]] == tow.ground


def test_the_weights_of_a_species_add_up_to_the_trips_own() -> None:
    data = data_of(trip())
    place = data[10].index("haddock")
    pairs = [pair for row in data[14] for pair in zip(caught(row)[::2], caught(row)[1::2], strict=True)]
    kept = sum(kg for number, kg in pairs if number == place // 2)

    assert data[10][place + 1] == "HAD"
    assert kept == pytest.approx(float(trip().figures.catch["haddock"].kept_kg or 0))


def test_minutes_give_the_rate_that_the_pages_show() -> None:
    timed = tuple(replace(tow, catch_h=tow.duration_h) for tow in trip().figures.tows)
    data = data_of(replace(trip(), figures=replace(trip().figures, tows=timed)))

    for row, tow in zip(data[14], timed, strict=True):
        if tow.kept_kg is None:
            assert row[2] == 0
        else:
            assert float(tow.kept_kg) * 60 / row[2] == pytest.approx(tow.kept_kg_per_h, rel=1e-3)


def test_a_tow_without_time_or_catch_has_no_minutes() -> None:
    figures = replace(trip().figures.tows[0], shot=None, hauled=None, catch_h=None, kept_kg=None, ground=None)
    made = replace(
        trip(), figures=replace(trip().figures, tows=(figures,)), log=replace(trip().log, tows=trip().log.tows[:1])
    )

    assert data_of(made)[14][0][:3] == [-1, -1, 0]


def test_fish_not_weighed_and_fish_put_back_are_told_apart_from_none() -> None:
    tow = trip().figures.tows[0]
    name, one = next(iter(tow.catch.items()))
    back = replace(one, kept_kg=None, put_back_kg=Decimal(90), kept=False)
    catch = type(tow.catch)([(name, replace(one, kept_kg=None)), ("skate", back)])
    made = replace(
        trip(),
        figures=replace(trip().figures, tows=(replace(tow, catch=catch),)),
        log=replace(trip().log, tows=trip().log.tows[:1]),
    )

    assert caught(data_of(made)[14][0])[1::2] == [NOT_WEIGHED, NOT_KEPT]


def test_a_tow_that_says_nothing_new_is_short_and_one_with_another_number_tells_it() -> None:
    rows = data_of(trip())[14]
    renumbered = replace(
        trip(), figures=replace(trip().figures, tows=tuple(replace(one, no=one.no + 4) for one in trip().figures.tows))
    )
    logged = tuple(replace(one, no=one.no + 4) for one in trip().log.tows)
    others = data_of(replace(renumbered, log=replace(trip().log, tows=logged)))[14]

    assert min(len(row) - len(caught(row)) for row in rows) == 3
    assert [row[-1] for row in others] == [tow.no + 4 for tow in trip().figures.tows]
    assert all(isinstance(row[-2], list) for row in others)


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
    page = page_of(saying(text))
    (row,) = opened(page)["trips"]

    assert not set(b"<>&'") & set(page.content)
    assert page.content.isascii()
    assert page.content.count(b"\n") == 1
    assert row[1:6] == [text] * 5
    assert " ".join(text.split()) in row[12] or "\u202e" in text


def test_a_year_is_the_same_each_time() -> None:
    first, again, other = page_of(trip()), page_of(example.trip()), page_of(example.trip(richness=90))

    assert first == again
    assert first.path == other.path == "find/2026.js"
    assert other.content != first.content


def test_a_trip_belongs_to_the_year_it_docked_in_whatever_order_they_come_in() -> None:
    # It sails on 29 December and docks in January.
    over = example.trip(sailed=datetime(2025, 12, 29, 5, tzinfo=UTC))
    _, trips, _, _ = example.whole_fleet()
    made = files_of((*trips, over))
    told = {
        data["season"]: [row[0] for row in data["trips"]]
        for data in (opened(Page(path=path, content=made[path])) for path in made if path.endswith(".js"))
    }

    assert files_of((over, *reversed(trips))) == made
    assert over.figures.trip.id in told["2026"]
    assert sorted(name for names in told.values() for name in names) == sorted(
        one.figures.trip.id for one in (*trips, over)
    )


def test_what_an_edition_withholds_is_not_in_its_data() -> None:
    canary = "quillword"
    made = saying(canary)
    boat = replace(made.log.vessel, name="Solan Bright", registration="KI 114")
    head = replace(made.figures.trip, id="solan-bright-2026-03-04", vessel="Solan Bright", port="Port Kerrin")
    tows = tuple(replace(tow, ground="The Saddle") for tow in made.figures.tows)
    made = replace(made, log=replace(made.log, vessel=boat), figures=replace(made.figures, trip=head, tows=tows))
    shown = {
        edition: page_of(*redacted((made,), policy_of(edition, example.fleet()))).content.decode()
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
    _, trips, _, _ = example.whole_fleet()
    page = files_of(trips)["find.html"]

    assert {f"trips/{one.figures.trip.id}.html" for one in trips} <= links_of(page)
    assert b"<noscript>" in page
    assert b"Every trip stands below" in page
    assert not any(link.startswith("seasons/") for link in links_of(page))


@pytest.mark.parametrize(
    ("most", "listed", "seasons"),
    [
        (5, {"2026"}, {"2025", "2024"}),  # the whole of the latest, which has three; the next would be too many
        (11, {"2026"}, {"2025", "2024"}),
        (2, {"2026"}, {"2026", "2025", "2024"}),  # not even the latest is whole
    ],
)
def test_a_large_archives_page_lists_the_latest_trips_and_leads_to_the_seasons_of_the_others(
    monkeypatch: pytest.MonkeyPatch, most: int, listed: set[str], seasons: set[str]
) -> None:
    monkeypatch.setattr(find, "_LISTED", most)
    _, trips, _, _ = example.whole_fleet()
    page = files_of(trips, seasons=("2024", "2025", "2026"))["find.html"]
    shown = {link for link in links_of(page) if link.startswith("trips/")}
    latest = sorted((one for one in trips if year_of(one) in listed), key=lambda one: one.log.begins, reverse=True)

    assert shown == {f"trips/{one.figures.trip.id}.html" for one in latest[:most]}
    assert {link for link in links_of(page) if link.startswith("seasons/")} == {
        f"seasons/{name}.html" for name in seasons
    }
    assert b"The latest trips stand below" in page
    assert (b"the latest 2 of 3 trips" in page) is (most == 2)


def year_of(one: Reckoned) -> str:
    head = one.figures.trip
    return str((head.docked or head.last_word).year)


def test_a_season_that_begins_in_the_year_before_is_led_to(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(find, "_LISTED", 5)
    _, trips, _, _ = example.whole_fleet()
    page = files_of(trips, seasons=("2024–25", "2025–26", "2026–27"))["find.html"]

    assert {link for link in links_of(page) if link.startswith("seasons/")} == {
        "seasons/2024-25.html",
        "seasons/2025-26.html",
    }


def test_the_page_names_its_data_and_what_can_be_touched() -> None:
    _, trips, _, _ = example.whole_fleet()
    counts = Counts(
        species=ByName([("cod", Decimal(7)), ("haddock", Decimal("7.1"))]),
        grounds=ByName([("Gannet Edge", 3), ("The Saddle", 9)]),
        vessels=ByName([("Solan Bright", 4), ("Arctic Tern", 4)]),
    )
    made = files_of(trips, counts)
    page = made["find.html"].decode()
    attrs = next(attrs for _, attrs in Tags(page).tags if attrs.get("id") == "find")
    buttons = re.findall(r'aria-pressed="false"><bdi>([^<]*)</bdi>', page)

    asked = [f"{path}?{sha256(made[path]).hexdigest()[:8]}" for path in made if path.startswith("find/")]
    assert attrs["data-files"].split() == sorted(asked, reverse=True)
    assert buttons == [
        *("haddock", "cod", *month_names(), "The Saddle", "Gannet Edge", "Arctic Tern", "Solan Bright", "2026", "2025")
    ]


def test_only_what_counts_most_can_be_touched() -> None:
    counts = Counts(
        species=ByName((f"fish {number:02}", Decimal(number)) for number in range(40)),
        grounds=ByName(),
        vessels=ByName(),
    )
    page = files_of((trip(),), counts)["find.html"].decode()

    assert re.findall(r"<bdi>(fish \d+)</bdi>", page) == [f"fish {number:02}" for number in range(39, 27, -1)]


def test_the_data_of_two_thousand_trips_stay_small() -> None:
    # 2,000 trips of some 75 tows over eight years: about 1 MB a year, which a script reads in the blink of an eye.
    assert len(trip_data(trip())) * 250 < 1_100_000
