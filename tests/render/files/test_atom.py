"""The feed of landings, read by feedparser and held against what RFC 4287 asks."""

import posixpath
import re
from urllib.parse import unquote
from xml.etree import ElementTree as ET

import feedparser
import pytest
from msgspec.structs import replace

from logbook.model.edition import EDITIONS, OFFICE, PUBLIC
from tests.reckon.build import reckoned
from tests.render import example
from tests.render.files.data import LANDED, NASTY, files, saying, two_trips

ATOM = "{http://www.w3.org/2005/Atom}"
MOMENT = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)")
"""RFC 3339 date-time, as RFC 4287 section 3.3 asks."""
URN = re.compile(r"urn:uuid:[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}")
"""RFC 9562 section 4, as a URN."""
XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""What XML 1.0 has no place for (production 2, Char)."""


def feed(edition: str = OFFICE, *, linked: bool = True) -> ET.Element:
    return ET.fromstring(files(edition=edition, linked=linked)["files/landings.atom"])  # noqa: S314 - our own feed


def one(element: ET.Element, name: str) -> str:
    """Return the text of the only element of a name."""
    (found,) = element.findall(f"{ATOM}{name}")
    return found.text or ""


def check(root: ET.Element) -> None:
    """Hold a feed against RFC 4287 sections 4.1.1, 4.1.2, 4.2.6 and 4.2.7."""
    assert root.tag == f"{ATOM}feed"
    assert one(root, "title")
    assert one(root.find(f"{ATOM}author") or ET.Element("none"), "name")
    entries = root.findall(f"{ATOM}entry")
    for element in (root, *entries):
        assert URN.fullmatch(one(element, "id"))
        assert MOMENT.fullmatch(one(element, "updated"))
        assert len(element.findall(f"{ATOM}title")) == 1
        alternates = [link for link in element.findall(f"{ATOM}link") if link.get("rel") == "alternate"]
        assert len(alternates) <= 1
        assert {link.get("type") for link in alternates} <= {"text/html"}
    ids = [one(element, "id") for element in (root, *entries)]
    assert len(set(ids)) == len(ids)
    for entry in entries:
        assert MOMENT.fullmatch(one(entry, "published"))
        (content,) = entry.findall(f"{ATOM}content")
        assert content.get("type") == "text"
        assert list(content) == []


@pytest.mark.parametrize("edition", EDITIONS)
def test_the_feed_is_what_the_standard_asks(edition: str) -> None:
    check(feed(edition))


def test_a_feed_reader_finds_the_landings() -> None:
    read = feedparser.parse(files()["files/landings.atom"])

    assert not read.bozo
    assert read.version == "atom10"
    assert read.feed.title == "Landings, Test Fleet"
    (entry,) = read.entries
    assert entry.title == "Solan Bright landed at Port Kerrin"
    assert entry.published == "2026-03-06T08:00:00+00:00"
    assert entry.link == "../trips/solan-bright-2026-03-04.html"
    said = entry.content[0].value
    assert "Docked 6 March 2026, 08:00 UTC." in said
    assert "204 kg, over the scale:" in said
    assert "cod 159 kg" in said


def test_links_lead_to_pages_of_the_archive() -> None:
    links = [unquote(link.get("href") or "") for link in feed().iter(f"{ATOM}link")]
    led = [posixpath.normpath(posixpath.join("files", link)) for link in links]

    assert led == ["index.html", "trips/solan-bright-2026-03-04.html"]


def test_without_pages_there_are_no_links_to_them() -> None:
    alone = feed(linked=False)

    check(alone)
    assert list(alone.iter(f"{ATOM}link")) == []


def test_an_entry_keeps_its_id_when_the_log_is_written_on_and_tells_when_that_was() -> None:
    later = LANDED.replace("11:30", "13:30").replace("large: 99 kg", "large: 98 kg")
    (before,) = ET.fromstring(files(two_trips()[:1])["files/landings.atom"]).findall(f"{ATOM}entry")  # noqa: S314
    (after,) = ET.fromstring(files(reckoned(later))["files/landings.atom"]).findall(f"{ATOM}entry")  # noqa: S314

    assert one(before, "id") == one(after, "id")
    assert one(before, "updated") == "2026-03-06T11:30:00+00:00"
    assert one(after, "updated") == "2026-03-06T13:30:00+00:00"


def test_each_edition_and_each_fleet_has_a_feed_of_its_own() -> None:
    of = replace(example.fleet(), name="Another")
    ids = {one(feed(edition), "id") for edition in EDITIONS}
    another = ET.fromstring(files((example.trip(tows=1),), of=of)["files/landings.atom"])  # noqa: S314

    assert len(ids | {one(another, "id")}) == 4


def test_only_the_latest_landings_are_in_the_feed_the_latest_first() -> None:
    trips = example.whole_fleet()[1]
    many = tuple(
        replace(trip, figures=replace(trip.figures, trip=replace(trip.figures.trip, id=f"{trip.figures.trip.id}-{n}")))
        for n in range(12)
        for trip in trips
    )
    root = ET.fromstring(files(many, of=example.fleet())["files/landings.atom"])  # noqa: S314
    docked = [one(entry, "published") for entry in root.findall(f"{ATOM}entry")]

    check(root)
    assert len(docked) == 100
    assert docked == sorted(docked, reverse=True)


def test_nothing_landed_is_no_feed() -> None:
    assert "files/landings.atom" not in files(two_trips()[1:])


def test_no_person_and_no_remark_is_in_the_publics_feed() -> None:
    content = files(edition=PUBLIC)["files/landings.atom"].decode()

    assert "Aldane" not in content
    assert "quoted" not in content


@pytest.mark.parametrize("text", NASTY)
def test_any_text_that_xml_allows_comes_back_as_typed(text: str) -> None:
    content = saying(text)["files/landings.atom"]
    kept = XML.sub("", text)
    root = ET.fromstring(content)  # noqa: S314
    (entry,) = root.findall(f"{ATOM}entry")

    check(root)
    assert not feedparser.parse(content).bozo
    assert one(entry, "title") == f"{kept} landed at {kept}"
    assert one(root, "title") == f"Landings, {kept}"
