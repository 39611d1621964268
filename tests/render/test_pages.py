"""The archive as a whole: sound HTML, links that lead somewhere, texts as typed, gaps shown as gaps."""

import posixpath
import re
from collections import Counter
from collections.abc import Iterator
from datetime import datetime, timedelta, timezone
from functools import lru_cache
from itertools import pairwise
from urllib.parse import unquote, urlsplit
from xml.etree import ElementTree as ET

import html5lib
import pytest
from msgspec.structs import replace

from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet, Hold
from logbook.model.named import ByName
from logbook.model.problem import Place, Problem, Severity
from logbook.model.trip import CatchKept, Fast, Tow, Trip
from logbook.redact.policy import policy_of
from tests.render import example
from tests.render.archives import files_of
from tests.render.tags import Tags

POLICY = "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'"
LINKING = {"href", "src", "srcset", "poster", "data", "action", "formaction", "xlink:href"}


def archive(fleet: Fleet, trips: tuple[Reckoned, ...], problems: tuple[Problem, ...] = ()) -> dict[str, bytes]:
    return files_of(fleet, trips, policy_of("office", fleet), problems)


@lru_cache(maxsize=1)
def whole() -> dict[str, bytes]:
    fleet, trips, _, problems = example.whole_fleet()
    return archive(fleet, trips, problems)


def html_of(files: dict[str, bytes]) -> Iterator[tuple[str, str]]:
    return ((path, content.decode()) for path, content in files.items() if path.endswith(".html"))


def text_of(page: bytes) -> str:
    tree = html5lib.parse(page.decode(), namespaceHTMLElements=False)
    return " ".join("".join(tree.find("body").itertext()).split())


def check(files: dict[str, bytes]) -> None:
    """See that every page is sound and every link leads somewhere."""
    ids = {}
    for path, text in html_of(files):
        html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(text)
        found = [attrs["id"] for _, attrs in Tags(text).tags if "id" in attrs]
        assert [name for name, times in Counter(found).items() if times > 1] == [], path
        ids[path] = set(found)
    for path, text in html_of(files):
        for tag, attrs in Tags(text).tags:
            for name in LINKING & attrs.keys():
                check_link(files, ids, path, f"<{tag} {name}>", attrs[name])


def check_link(files: dict[str, bytes], ids: dict[str, set[str]], page: str, where: str, link: str) -> None:
    parts = urlsplit(link)
    assert not parts.scheme, (page, where, link)
    assert not parts.netloc, (page, where, link)
    assert not link.startswith("/"), (page, where, link)
    target = posixpath.normpath(posixpath.join(posixpath.dirname(page), unquote(parts.path))) if parts.path else page
    assert target in files, (page, where, link)
    assert not parts.fragment or unquote(parts.fragment) in ids[target], (page, where, link)


def test_every_page_is_sound_and_every_link_leads_somewhere() -> None:
    check(whole())


def test_there_is_a_page_for_every_vessel_and_trip() -> None:
    paths = {path for path, _ in html_of(whole())}

    assert {"index.html", "reckoning.html", "problems.html", "vessels/solan-bright.html"} <= paths
    assert len([path for path in paths if path.startswith("trips/")]) == 12


def test_every_page_can_be_reached_from_the_front() -> None:
    files, seen, todo = whole(), set(), ["index.html"]
    while todo:
        page = todo.pop()
        if page in seen:
            continue
        seen.add(page)
        links = [attrs["href"] for tag, attrs in Tags(files[page].decode()).tags if tag == "a"]
        targets = {
            posixpath.normpath(posixpath.join(posixpath.dirname(page), unquote(urlsplit(link).path))) for link in links
        }
        todo += sorted(target for target in targets if target.endswith(".html"))

    assert seen == {path for path, _ in html_of(files)}


@pytest.mark.parametrize("path", sorted(path for path, _ in html_of(whole())))
def test_a_page_has_what_every_reader_needs(path: str) -> None:
    tags = Tags(whole()[path].decode()).tags
    names = [tag for tag, _ in tags]

    assert ("html", {"lang": "en"}) in tags
    assert names.count("h1") == 1
    assert names.count("main") == 1
    assert tags[tags.index(("meta", {"charset": "utf-8"})) + 1][1]["content"] == (
        POLICY if "script" in names else POLICY.replace("script-src 'self'; ", "")
    )
    assert next(attrs for tag, attrs in tags if tag == "a")["href"] == "#main"
    assert not {"style", "iframe", "object", "form", "base"} & set(names)
    scripts = [attrs for tag, attrs in tags if tag == "script"]
    assert all(own_script(path, attrs["src"]) in whole() and "defer" in attrs for attrs in scripts)
    assert not [attrs for _, attrs in tags if "style" in attrs or any(name.startswith("on") for name in attrs)]


def own_script(page: str, link: str) -> str:
    """Return the file that a page loads as a script; it is at the top of the archive and named for what is in it."""
    path = posixpath.normpath(posixpath.join(posixpath.dirname(page), link))
    assert re.fullmatch(r"(board|find|keys|tables)\.[0-9a-f]{8}\.js", path)
    return path


@pytest.mark.parametrize("path", sorted(path for path, _ in html_of(whole())))
def test_headings_follow_one_another(path: str) -> None:
    levels = [int(tag[1]) for tag, _ in Tags(whole()[path].decode()).tags if re.fullmatch(r"h[1-6]", tag)]

    assert levels[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


@pytest.mark.parametrize("path", sorted(path for path, _ in html_of(whole())))
def test_tables_can_be_understood_without_being_seen(path: str) -> None:
    tree = html5lib.parse(whole()[path].decode(), namespaceHTMLElements=False)
    for table in tree.iter("table"):
        assert "".join(table.find("caption").itertext()).strip()
        assert all(cell.get("scope") for cell in table.iter("th"))
    scrollers = [div for div in tree.iter("div") if "scroll" in (div.get("class") or "").split()]
    assert all(div.get("tabindex") == "0" and div.get("role") == "region" for div in scrollers)


@pytest.mark.parametrize("path", sorted(path for path, _ in html_of(whole())))
def test_rows_of_a_table_are_as_wide_as_its_head(path: str) -> None:
    tree = html5lib.parse(whole()[path].decode(), namespaceHTMLElements=False)
    for table in tree.iter("table"):
        widths = {sum(int(cell.get("colspan", 1)) for cell in row) for row in table.iter("tr")}
        assert len(widths) == 1, "".join(table.find("caption").itertext())


def test_every_chart_has_words_and_stands_in_a_figure() -> None:
    for _, text in html_of(whole()):
        tree = html5lib.parse(text, namespaceHTMLElements=False)
        pictures = [img for figure in tree.iter("figure") for img in figure.iter("img")]
        assert len(pictures) == len(list(tree.iter("img")))
        assert all(len(img.get("alt")) > 20 for img in pictures)
        assert all(figure.find("figcaption") is not None for figure in tree.iter("figure"))


def test_every_trip_has_four_charts() -> None:
    for path, text in html_of(whole()):
        if path.startswith("trips/"):
            assert len([tag for tag, _ in Tags(text).tags if tag == "img"]) >= 4


def test_charts_are_sound_and_load_nothing() -> None:
    pictures = {path: content for path, content in whole().items() if path.endswith(".svg")}
    for content in pictures.values():
        ET.fromstring(content)  # noqa: S314 - our own charts
        references = re.findall(rb'(?:href|src)="([^"]*)"|url\(([^)]*)\)', content)
        assert all((one or other).startswith(b"#") for one, other in references)
        assert b"<!DOCTYPE" not in content
    assert len(pictures) >= 12 * 4 + 3 + 2


def test_no_address_of_anywhere_else_stands_in_the_archive() -> None:
    known = {
        b"http://www.w3.org/2000/svg",
        b"http://www.w3.org/1999/xlink",
        b"http://www.topografix.com/GPX/1/1",
        b"http://www.w3.org/2005/Atom",
    }
    for content in whole().values():
        assert set(re.findall(rb"(?:https?:)?//[\w.]+[^\s\"<>]*", content)) <= known


def test_the_same_trips_give_the_same_bytes_in_any_order() -> None:
    fleet, trips, _, problems = example.whole_fleet()

    assert archive(fleet, tuple(reversed(trips)), tuple(reversed(problems))) == whole()


def test_the_last_word_stands_before_what_is_expected() -> None:
    front = whole()["index.html"].decode()
    at_sea = front[front.index('id="at-sea"') : front.index('id="landings"')]

    assert at_sea.index("Last word from her") < at_sea.index("Expected")
    assert "<b>Thu 12 March 04:10</b> 2026" in at_sea
    assert "not a watch on any vessel" in at_sea
    assert "coastguard" in at_sea


def test_vessels_at_sea_stand_on_the_front_page_and_landed_ones_do_not() -> None:
    front = text_of(whole()["index.html"])
    at_sea = front[: front.index("Last landings")]

    assert "Skerry Light, trip 14 homeward" in at_sea
    assert "Arctic Tern, trip 14 at sea" in at_sea
    assert "Solan Bright" not in at_sea


def test_a_trip_leads_to_the_one_before_and_the_one_after() -> None:
    page = whole()["trips/solan-bright-2025-05-06.html"].decode()

    assert '<a href="solan-bright-2025-02-03.html" rel="prev">' in page
    assert '<a href="solan-bright-2025-10-09.html" rel="next">' in page


def test_figures_that_are_not_plain_have_a_letter_and_its_words() -> None:
    page = whole()["trips/solan-bright-2026-03-04.html"].decode()

    assert '<sup class="mark">a</sup> carried on from the tow before' in page
    assert '4.3<sup class="mark">' not in page
    assert "assumed: usual speed" in page
    assert "assumed: pens at 1 °C where there is no reading" in page


def test_totals_say_what_they_leave_out() -> None:
    assert "Totals leave out: the catch of tows 19, 38 and 57" in text_of(whole()["trips/solan-bright-2026-03-04.html"])


def test_depth_is_told_in_the_fleets_unit_and_in_metres() -> None:
    page = text_of(whole()["trips/solan-bright-2026-03-04.html"])

    assert "Depth fm logged" in page
    assert "Depth m logged" in page


def test_without_a_unit_of_the_fleets_own_depth_is_told_in_metres_alone() -> None:
    files = archive(replace(example.fleet(), units=()), (example.trip(tows=2),))

    assert "Depth fm" not in text_of(files["trips/solan-bright-2026-03-04.html"])


def test_the_clock_is_named_once() -> None:
    page = text_of(whole()["trips/solan-bright-2026-03-04.html"])

    assert "Times are UTC." in page
    assert page.count("UTC") == 1


HOSTILE = (
    "<script>alert(1)</script>",
    "{{ 7*7 }}{% raw %}",
    "$x$ \\frac{1}{2} $",
    "_leading underscore",
    "Чайка 鱈 🐟",
    "a & b < c > \"d\" 'e'",
    "n" * 300,
    "-->]]>",
    "\u202egnirts\u202c",
)


@pytest.mark.parametrize("text", HOSTILE)
def test_any_text_in_any_field_is_shown_as_typed(text: str) -> None:
    files = archive(*fleet_that_says(text))
    check(files)
    trip = next(content for path, content in files.items() if path.startswith("trips/"))
    shown = " ".join(text.split())

    assert shown in text_of(trip)
    assert shown in text_of(files["index.html"])
    assert shown in text_of(files["problems.html"])
    for path, content in files.items():
        if path.endswith(".svg"):
            ET.fromstring(content)  # noqa: S314 - our own charts
        assert not re.search(rb"<script(?! src=)", content) or path.startswith("files/")  # data, not a page


def fleet_that_says(text: str) -> tuple[Fleet, tuple[Reckoned, ...], tuple[Problem, ...]]:
    """Return a fleet with one trip that has a text everywhere a text can stand."""
    boat = replace(example.vessel(), name=text, registration=text)
    made = example.trip(boat, number=text, tows=3)
    place = Place(file=text, line=3, column=1)
    problem = Problem(place=place, severity=Severity.ERROR, code="species-unknown", message=text, hint=text)
    tows = tuple(
        replace(
            tow,
            ground=text,
            net=text,
            pens=(text,),
            damage=text,
            gear_lost=text,
            fast=Fast(what=text, at=None),
            remarks=text,
        )
        for tow in made.log.tows
    )
    caught = ByName((text if name == "cod" else name, species) for name, species in made.figures.catch.items())
    figures = tuple(
        replace(
            tow,
            ground=text,
            net=text,
            pens=(text,),
            foul=True,
            catch=ByName(
                (text if name == "cod" else name, replace(species, grades=ByName([(text, species.kept_kg)])))
                for name, species in tow.catch.items()
            ),
            basis=(("ground", text),),
        )
        for tow in made.figures.tows
    )
    log = replace(
        made.log, file=text, tows=tows, remarks=f"{text}\n\n{text}", skipper=text, crew=(text,), wants=text, bound_for=text, zone=text,
        readings=tuple(replace(reading, remarks=text) for reading in made.log.readings),
    )  # fmt: skip
    head = replace(made.figures.trip, vessel=text, number=text, skipper=text, port=text, sailed_from=text)
    whole_trip = replace(
        made,
        log=log,
        figures=replace(
            made.figures,
            trip=head,
            tows=figures,
            catch=caught,
            totals=replace(made.figures.totals, incomplete=(text,)),
            landing=replace(made.figures.landing, port=text),
            problems=(problem,),
        ),
    )
    fleet = replace(
        example.fleet(), name=text, grounds=tuple(replace(ground, name=text) for ground in example.fleet().grounds)
    )
    return fleet, (whole_trip,), (problem,)


def test_names_that_differ_in_what_file_names_lose_have_pages_of_their_own() -> None:
    boats = [replace(example.vessel(), name=name) for name in ("Чайка", "Ласточка", "Solan/Bright", "Solan\\Bright")]
    trips = tuple(example.trip(boat, tows=1) for boat in boats)
    files = archive(example.fleet(), trips)

    check(files)
    assert len([path for path in files if path.startswith("vessels/")]) == 4


def test_an_empty_archive_is_sound_and_says_that_it_is_empty() -> None:
    files = archive(Fleet(), ())

    check(files)
    assert "No vessel is at sea" in text_of(files["index.html"])
    assert "Nothing wrong was found" in text_of(files["problems.html"])


def bare_trip() -> Reckoned:
    """Return a trip of which nothing is known but the vessel and when it sailed."""
    made = example.trip(tows=0, state="at sea", number=None)
    log = Trip(
        file="bare.yaml",
        vessel=replace(example.SOLAN, hold=Hold(), nets=(), length=None),
        begins=made.log.begins,
        sailed=made.log.sailed,
    )
    head = replace(made.figures.trip, skipper=None, sailed_from=None, port=None)
    landing = replace(
        made.figures.landing, port=None, passage_nm=None, passage_h=None, docked=None, steam_out_h=None, basis=()
    )
    totals = replace(made.figures.totals, basis=(), days_at_sea=None, kept_kg=None)
    age = replace(made.figures.age, basis=())
    return replace(
        made, log=log, figures=replace(made.figures, trip=head, landing=landing, totals=totals, age=age, problems=())
    )


def half_kept_trip() -> Reckoned:
    """Return a trip whose tows tell little: a time here, a species without a weight there."""
    made = example.trip(tows=4, state="landing not logged")
    bare = replace(
        made.figures.tows[1],
        side=None, ground=None, net=None, pens=(), shot=None, hauled=None, on_ice=None, duration_h=None, distance_nm=None,
        distance_by=None, speed_kn=None, swept_doors_km2=None, swept_wings_km2=None, depth_m=None, warp_to_depth=None, light=None,
        rectangle=None, catch=ByName(), kept_kg=None, put_back_kg=None, live_kg=None, kept_kg_per_h=None, kept_kg_per_km2=None,
        ice_days=None, equivalent_ice_days=None, basis=(),
    )  # fmt: skip
    unweighed = replace(
        made.figures.tows[2],
        kept_kg=None,
        catch=ByName(
            (name, replace(species, kept_kg=None, live_kg=None)) for name, species in made.figures.tows[2].catch.items()
        ),
    )
    log = replace(
        made.log,
        sailed=None,
        tows=(made.log.tows[0], Tow(no=2, place=example.place(9), kept=CatchKept.NEXT), *made.log.tows[2:]),
    )
    return replace(
        made,
        log=log,
        figures=replace(
            made.figures,
            trip=replace(made.figures.trip, sailed=None),
            tows=(made.figures.tows[0], bare, unweighed, made.figures.tows[3]),
        ),
    )


@pytest.mark.parametrize("trip", [bare_trip(), half_kept_trip()], ids=["bare", "half kept"])
def test_what_is_missing_is_shown_as_missing_and_never_as_nought(trip: Reckoned) -> None:
    files = archive(example.fleet(), (trip,))
    check(files)
    page = files[f"trips/{trip.figures.trip.id}.html"]

    assert b"None" not in page
    assert b"&lt;span" not in b"".join(files.values())
    assert "– not known" in text_of(page)


def test_a_bare_trip_says_what_is_not_there() -> None:
    page = text_of(archive(example.fleet(), (bare_trip(),))["trips/solan-bright-2026-03-04.html"])

    assert "No tows are logged." in page
    assert "No catch is logged." in page
    assert "No positions are logged for this trip." in page
    assert "Nothing in this log was found doubtful." in page


def test_a_tow_sorted_with_the_next_says_so() -> None:
    trip = half_kept_trip()
    page = text_of(archive(example.fleet(), (trip,))[f"trips/{trip.figures.trip.id}.html"])

    assert "Sorted with the next tow" in page


def test_logs_on_several_clocks_carry_their_offsets() -> None:
    east = timezone(timedelta(hours=1))
    out = example.trip(example.TERN, datetime(2026, 3, 4, 5, 30, tzinfo=east), tows=1, state="at sea")
    trips = (example.trip(tows=1), out)
    front = archive(example.fleet(), trips)["index.html"]

    assert "Times are UTC; those by another clock say so." in text_of(front)
    assert b"<b>Wed 4 March 19:50</b> 2026 UTC+01:00</time>" in front


def test_a_page_of_the_largest_trip_stays_small() -> None:
    trip = example.trip(tows=110)
    page = archive(example.fleet(), (trip,))[f"trips/{trip.figures.trip.id}.html"]

    assert len(page) < 400_000
    assert len(Tags(page.decode()).tags) < 10_000


def test_problems_stand_with_line_severity_message_and_what_to_type() -> None:
    page = text_of(whole()["problems.html"])

    assert "tern/spoilt.yaml line 7, column 5 error This line can't be read: a tab stands in its indentation." in page
    assert "Write 14 baskets." in page
    assert page.index("tern/spoilt.yaml") < page.index("arctic-tern/2025-02-08.yaml")
