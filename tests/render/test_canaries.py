"""Hostile texts in every field, found again as they were typed in every format, by readers of general use; none of them does anything."""

import csv
import json
import lzma
import re
import xml.etree.ElementTree as ET
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

import feedparser
import geojson
import gpxpy
import html5lib
import pytest
from icalendar import Calendar

from logbook.model.edition import EDITIONS, OFFICE
from logbook.render.files.cells import GUARD
from tests.render.canaries import (
    HOSTILE,
    every,
    expected,
    named,
    title,
    token,
)

ELSEWHERE = {"http://canary.example/a.png", "https://canary.example/?a=1&b=2"}
"""What remarks in Markdown may link to."""

HTML_IDLE = frozenset(
    {"style", "iframe", "object", "embed", "form", "base", "svg", "math", "template", "video", "audio"}
)
SVG_PARTS = frozenset(
    {"svg", "g", "path", "text", "tspan", "defs", "rect", "clipPath", "pattern", "use", "style", "title", "circle"}
)

Change = Callable[[str], str]


def spaced(text: str) -> str:
    """Return a text as HTML shows it: runs of its five blanks are one space (HTML Standard, ASCII whitespace)."""
    return re.sub(r"[ \t\n\r\f]+", " ", text)


def one_line(text: str) -> str:
    return " ".join(text.split())


def strings(value: object) -> Iterator[str]:
    """Give all keys and texts of a JSON document."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for key, held in value.items():
            yield key
            yield from strings(held)
    elif isinstance(value, list):
        for held in value:
            yield from strings(held)


def wrong(texts: Iterable[str], change: Change = str, *, markdown: bool = False) -> list[tuple[str, str]]:
    """Return the texts that have a number of ours without the whole of what was typed with it."""
    found = []
    for text in texts:
        for way, field in named(text):
            whole = expected(way, field) + (expected(way, field, markdown=True) if markdown else ())
            if not any(change(one) in change(text) for one in whole):
                found.append((field, text))
    return found


def fields(texts: Iterable[str]) -> dict[str, int]:
    """Return in how many ways of being hostile each field is told of."""
    told: dict[str, set[str]] = {}
    for text in texts:
        for way, field in named(text):
            told.setdefault(field, set()).add(way)
    return {field: len(ways) for field, ways in told.items()}


def files(sites: Path, pattern: str, edition: str = OFFICE) -> list[Path]:
    found = sorted((sites / edition).rglob(pattern))
    assert found
    return found


def all_of(*names: str) -> dict[str, int]:
    return dict.fromkeys(names, len(HOSTILE))


@pytest.fixture(scope="module")
def pages(hostile: Path) -> dict[str, Any]:
    """Return every page of every edition, read as browsers read it."""
    return {
        path.relative_to(hostile).as_posix(): html5lib.parse(path.read_text("utf-8"), namespaceHTMLElements=False)
        for path in hostile.rglob("*.html")
    }


def test_pages_show_every_text_as_it_was_typed(pages: dict[str, Any]) -> None:
    shown = "\n".join(
        spaced("".join(tree.find("body").itertext())) for path, tree in pages.items() if path.startswith(OFFICE)
    )
    # Of the bottom nothing is shown but where it is sought and in files.
    missing = [
        (way, field)
        for way, field in every()
        if field != "bottom"
        and not any(spaced(text) in shown for text in expected(way, field, markdown=field.endswith("remarks")))
    ]

    assert missing == []
    assert spaced(title()) in shown


def test_pages_have_no_element_and_no_attribute_that_was_typed(pages: dict[str, Any]) -> None:
    outside = set()
    for path, tree in pages.items():
        policy = tree.find(".//meta[@http-equiv='Content-Security-Policy']")
        assert policy is not None, path
        assert "default-src 'none'" in policy.get("content")
        for element in tree.iter():
            if not isinstance(element.tag, str):
                continue
            assert element.tag not in HTML_IDLE, path
            assert not [name for name in element.attrib if name.startswith("on") or name == "style"], path
            if element.tag == "script":
                assert re.fullmatch(r"(\.\./)?[\w-]+\.[0-9a-f]{8}\.js", element.get("src")), path
                assert not element.text
            for name in ("src", "href"):
                parts = urlsplit(element.get(name) or "")
                if not parts.scheme and not parts.netloc:
                    continue
                outside.add(element.get(name))
                assert (element.tag, name) == ("a", "href"), path
                assert {"noopener", "noreferrer"} <= set(element.get("rel").split()), path

    assert outside == ELSEWHERE


def test_pages_lead_to_files_that_are_there(hostile: Path, pages: dict[str, Any]) -> None:
    dead = []
    for path, tree in pages.items():
        for element in tree.iter():
            for name in ("src", "href"):
                link = element.get(name) if isinstance(element.tag, str) else None
                parts = urlsplit(link or "")
                if (
                    parts.path
                    and not parts.scheme
                    and not (hostile / path).parent.joinpath(unquote(parts.path)).is_file()
                ):
                    dead.append((path, link))
    assert dead == []


def test_names_of_files_are_safe_on_windows_and_differ_whatever_their_case(hostile: Path) -> None:
    # Naming Files, Paths, and Namespaces (Windows): reserved signs and names, ends, length of a name and of a path
    device = re.compile(r"(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\..*)?", re.IGNORECASE)
    paths = [path.relative_to(hostile).as_posix() for path in hostile.rglob("*")]
    for path in paths:
        for name in path.split("/"):
            assert not set(name) & set('<>:"\\|?*'), path
            assert name.isprintable(), path
            assert not name.endswith((".", " ")), path
            assert not device.fullmatch(name), path
            assert len(name.encode()) <= 255, path
        assert len(path) <= 160, path

    assert len({path.casefold() for path in paths}) == len(paths)


def test_charts_are_pictures_and_nothing_else(hostile: Path) -> None:
    texts = []
    for path in hostile.rglob("*.svg"):
        for element in ET.parse(path).iter():  # noqa: S314 - our own file
            assert element.tag.removeprefix("{http://www.w3.org/2000/svg}") in SVG_PARTS, path
            for name, value in element.attrib.items():
                assert not name.startswith("on"), path
                assert not name.endswith("href") or value.startswith("#"), path
                assert "url(" not in value or "url(#" in value, path
            texts += [element.text or "", element.tail or ""]

    assert wrong(texts, one_line) == []  # what is cut short has no number any more
    assert sum("canary" in text for text in texts) > 10


def test_json_has_every_text_as_it_was_typed(hostile: Path) -> None:
    texts = [text for path in files(hostile, "*.json") for text in strings(json.loads(path.read_bytes()))]
    kept = [text for path in files(hostile, "*.xz") for text in strings(json.loads(lzma.decompress(path.read_bytes())))]

    assert wrong(texts) == []
    assert wrong(kept) == []
    assert fields(texts).items() >= all_of("vessel", "trip", "skipper", "ground", "net", "pen", "grade", "port").items()
    assert fields(kept).items() >= all_of("trip remarks", "tow remarks", "bottom", "item", "hand", "swell").items()


def test_tables_have_every_text_as_it_was_typed_behind_its_guard(hostile: Path) -> None:
    cells = []
    for path in files(hostile, "*.csv"):
        with path.open(encoding="utf-8", newline="") as file:
            cells += [cell for row in csv.reader(file, strict=True) for cell in row]
    lists = [json.loads(cell) for cell in cells if cell.startswith("[") and cell.endswith("]") and _is_json(cell)]
    texts = [cell.removeprefix(GUARD) for cell in cells] + list(strings(lists))

    assert [cell for cell in cells if re.match(r"\s*[=+@＝\t\r\n]|\s*-(?!\d)", cell)] == []
    assert [pair for pair in wrong(texts) if not _is_json(pair[1])] == []
    told = all_of(
        "vessel", "trip", "skipper", "hand", "ground", "net", "pen", "bottom", "damage", "fast", "tow remarks"
    )
    assert fields(texts).items() >= told.items()


def _is_json(text: str) -> bool:
    try:
        return isinstance(json.loads(text), list)
    except ValueError:
        return False


def test_places_for_plotters_have_every_text_as_it_was_typed(hostile: Path) -> None:
    # RFC 7946 and GPX 1.1
    features = [
        text for path in files(hostile, "*.geojson") for text in strings(geojson.loads(path.read_text("utf-8")))
    ]
    marks: list[str] = []
    for path in files(hostile, "*.gpx"):
        gpx = gpxpy.parse(path.read_text("utf-8"))
        for mark in gpx.waypoints:
            marks += [mark.name or "", mark.description or "", mark.comment or ""]
        for track in gpx.tracks:
            marks += [track.name or "", track.description or "", track.comment or ""]

    assert wrong(features) == wrong(marks) == []
    assert fields(features).items() >= all_of("vessel", "ground", "net", "fast").items()
    assert fields(marks).items() >= all_of("vessel", "ground", "fast").items()


def test_the_feed_has_every_text_as_it_was_typed(hostile: Path) -> None:
    # RFC 4287
    (path,) = files(hostile, "*.atom")
    feed = feedparser.parse(path.read_bytes())
    texts = [text for entry in feed.entries for text in (entry.title, *(part.value for part in entry.content))]

    assert not feed.bozo
    assert title() in feed.feed.title
    assert {entry.title_detail.type for entry in feed.entries} == {"text/plain"}
    assert wrong(texts, spaced) == []
    assert fields(texts).items() >= all_of("vessel", "port", "species").items()


def test_the_calendar_has_every_text_as_it_was_typed(hostile: Path) -> None:
    # RFC 5545: lines of 75 octets, breaks and signs of its own escaped
    (path,) = files(hostile, "*.ics")
    content = path.read_bytes()
    calendar = Calendar.from_ical(content)
    texts = [str(value) for part in calendar.walk() for value in part.values()]

    assert all(len(line) <= 75 for line in content.split(b"\r\n"))
    assert {part.name for part in calendar.walk()} == {"VCALENDAR", "VEVENT"}
    assert len(calendar.events) == len(HOSTILE)
    assert wrong(texts) == []
    assert fields(texts).items() >= all_of("vessel", "port").items()


def test_what_find_looks_through_has_every_text_and_ends_no_script(hostile: Path) -> None:
    texts: list[str] = []
    for path in files(hostile, "find/*.js"):
        script = path.read_text("ascii")
        assert not set(script) & set("<>&'")
        texts += strings(json.loads(script[script.index("({") + 1 : script.rindex(");")]))

    assert wrong(texts, one_line, markdown=True) == []
    assert (
        fields(texts).items() >= all_of("vessel", "skipper", "ground", "port", "damage", "bottom", "why lost").items()
    )


@pytest.mark.parametrize("edition", EDITIONS)
def test_every_edition_has_the_vessels_and_none_but_the_office_what_is_its_own(hostile: Path, edition: str) -> None:
    texts = [text for path in files(hostile, "*.json", edition) for text in strings(json.loads(path.read_bytes()))]
    told = fields(texts)

    assert told["vessel"] == len(HOSTILE)
    assert ("expense" in told) is (edition == OFFICE)
    assert token("script", "hand") not in " ".join(texts) or edition == OFFICE
