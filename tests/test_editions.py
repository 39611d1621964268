"""Editions as they are published: every file of each is searched for words, sums and positions that it must not have."""

import json
import lzma
import re
import xml.etree.ElementTree as ET
from html import unescape
from pathlib import Path
from urllib.parse import unquote

import pytest

from logbook.build import build
from logbook.export import export
from logbook.model.built import PublishError
from logbook.model.edition import CREW, EDITIONS, OFFICE, PUBLIC
from tests.redact.canaries import (
    DEGREES,
    EXACT_ROWS,
    FAST_TYPED,
    HELD_BACK,
    HELD_FAST,
    HELD_RECTANGLE,
    MONEY,
    NOBODY,
    PASSAGE,
    RECTANGLE,
    WORDS,
    plant,
)

DEFAULT = ""
CLOSE = "editions: {crew: {positions: exact, fasts: no, after: 5 days}, public: {positions: rectangle, after: 5 days}}"
OPEN = "editions: {crew: {positions: exact, fasts: yes}, public: {positions: exact, fasts: yes}}"
FLEETS = {"default": DEFAULT, "close": CLOSE, "open": OPEN}

TRACKS = EXACT_ROWS + PASSAGE
PLACES = {
    ("default", CREW): (FAST_TYPED, HELD_FAST),
    ("default", PUBLIC): (),
    ("close", CREW): (*TRACKS, RECTANGLE),
    ("close", PUBLIC): (RECTANGLE,),
    ("open", CREW): (*TRACKS, *HELD_BACK, FAST_TYPED, HELD_FAST, RECTANGLE, HELD_RECTANGLE),
    ("open", PUBLIC): (RECTANGLE, HELD_RECTANGLE),
}
"""Which of the positions and rectangles an edition shows, by what the fleet file says of editions."""

EVERY_PLACE = (*TRACKS, *HELD_BACK, FAST_TYPED, HELD_FAST, RECTANGLE, HELD_RECTANGLE)


@pytest.fixture(scope="module")
def archives(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    made = {}
    for name, editions in FLEETS.items():
        folder = tmp_path_factory.mktemp(name)
        build(plant(folder, editions), folder / "site", lambda _: None, EDITIONS)
        made[name] = folder / "site"
    return made


def files(archive: Path) -> list[Path]:
    return sorted(path for path in archive.rglob("*") if path.is_file())


def text_of(path: Path) -> str:
    """Return what is in a file, packed or not."""
    content = path.read_bytes()
    return (lzma.decompress(content) if path.suffix == ".xz" else content).decode()


def everything(archive: Path) -> str:
    """Return the names and contents of all files as one line without spaces, links and signs spelt out."""
    parts = []
    for path in files(archive):
        text = text_of(path)
        parts += [path.relative_to(archive).as_posix(), unquote(unescape(text))]
    return re.sub(r"[\s\u00a0\u202f\u2009]", "", "\n".join(parts))


@pytest.mark.parametrize("fleet", FLEETS)
@pytest.mark.parametrize("edition", EDITIONS)
def test_no_file_has_a_word_that_its_edition_does_not_show(archives: dict[str, Path], fleet: str, edition: str) -> None:
    text = everything(archives[fleet] / edition).casefold()

    assert [word for word, who in WORDS.items() if edition not in who and word in text] == []


def test_the_search_finds_what_the_office_is_shown(archives: dict[str, Path]) -> None:
    text = everything(archives["default"] / OFFICE)

    not_on_a_page = {"quillbottom"}
    shown = [word for word, who in WORDS.items() if who != NOBODY and word not in not_on_a_page]
    assert [word for word in shown if word not in text.casefold()] == []
    assert [sum_ for sum_ in MONEY if sum_ not in text] == []
    assert [place for place in EVERY_PLACE if place not in text] == []


@pytest.mark.parametrize("fleet", FLEETS)
@pytest.mark.parametrize("edition", [CREW, PUBLIC])
def test_no_file_but_the_offices_has_money(archives: dict[str, Path], fleet: str, edition: str) -> None:
    text = everything(archives[fleet] / edition)

    assert [sum_ for sum_ in MONEY if sum_ in text] == []
    assert [path for path in files(archives[fleet] / edition) if "gross" in path.name] == []


@pytest.mark.parametrize(("fleet", "edition"), PLACES)
def test_places_are_as_fine_as_the_edition_shows_them(archives: dict[str, Path], fleet: str, edition: str) -> None:
    text = everything(archives[fleet] / edition)

    assert [place for place in EVERY_PLACE if place in text] == [
        place for place in EVERY_PLACE if place in PLACES[fleet, edition]
    ]


@pytest.mark.parametrize("fleet", FLEETS)
def test_the_public_has_no_position_no_chartlet_and_no_fast(archives: dict[str, Path], fleet: str) -> None:
    public = archives[fleet] / PUBLIC
    names = [path.relative_to(public).as_posix() for path in files(public)]

    assert re.findall(r"\d+°\d\d\.\d′", everything(public)) == []
    assert [name for name in names if "chartlet" in name or "fasts" in name or "problems" in name] == []


DECIMALS = {
    ("default", CREW): {"fasts"},
    ("default", PUBLIC): set(),
    ("close", CREW): {"tracks"},
    ("close", PUBLIC): set(),
    ("open", CREW): {"tracks", "held back", "fasts"},
    ("open", PUBLIC): set(),
}


@pytest.mark.parametrize(("fleet", "edition"), DECIMALS)
def test_decimal_degrees_are_in_files_for_programs_only_where_they_are_shown(
    archives: dict[str, Path], fleet: str, edition: str
) -> None:
    found = degrees(archives[fleet] / edition)

    assert {name for name in DEGREES if name != "passage" and found & near(DEGREES[name])} == DECIMALS[fleet, edition]
    if fleet == "default" or edition == PUBLIC:
        assert not found & near(DEGREES["passage"])
    assert degrees(archives[fleet] / OFFICE) >= near(DEGREES["tracks"] + DEGREES["fasts"])


def degrees(archive: Path) -> set[float]:
    """Return the numbers with three places at least in all files but pictures, whose paths are full of them."""
    texts = (text_of(path) for path in files(archive) if path.suffix != ".svg")
    return {round(abs(float(number)), 3) for text in texts for number in re.findall(r"\d+\.\d{3,}", text)}


def near(places: tuple[float, ...]) -> set[float]:
    return {round(abs(place), 3) for place in places}


@pytest.mark.parametrize("edition", [CREW, PUBLIC])
def test_exported_files_have_no_more_than_the_archive(tmp_path: Path, edition: str) -> None:
    export(plant(tmp_path), tmp_path / "files", lambda _: None, edition)
    text = everything(tmp_path / "files").casefold()

    assert "quillvessel" in text
    assert [word for word, who in WORDS.items() if edition not in who and word in text] == []
    assert [sum_ for sum_ in MONEY if sum_ in text] == []
    allowed = near(DEGREES["fasts"]) if edition == CREW else set()
    every = near(tuple(place for places in DEGREES.values() for place in places))
    assert degrees(tmp_path / "files") & every == allowed


def test_a_chartlet_of_tows_is_drawn_only_where_positions_are_exact_and_not_held_back(
    archives: dict[str, Path],
) -> None:
    drawn = {
        fleet: [path.name.removesuffix("-chartlet.svg") for path in files(archive / CREW) if "-chartlet" in path.name]
        for fleet, archive in archives.items()
    }

    both = ["quillvessel-2026-03-04", "ternbank-2026-03-20"]
    assert drawn == {"default": [], "close": both[:1], "open": both}


def test_files_for_plotters_have_typed_positions_of_fasts_alone_where_tracks_are_not_shown(
    archives: dict[str, Path],
) -> None:
    folder = archives["default"] / CREW / "files"
    features = json.loads((folder / "fasts.geojson").read_text())["features"]
    gpx = ET.fromstring((folder / "fasts.gpx").read_text())  # noqa: S314 - our own file
    points = {tuple(feature["geometry"]["coordinates"]) for feature in features}

    assert {feature["geometry"]["type"] for feature in features} == {"Point"}
    # 58 35.9N 015 20.2W and 59 15.7N 016 05.9W in degrees: minutes over sixty.
    assert {(round(lon, 4), round(lat, 4)) for lon, lat in points} == {(-15.3367, 58.5983), (-16.0983, 59.2617)}
    assert [element.tag.partition("}")[2] for element in gpx] == ["metadata", "wpt", "wpt"]


def test_what_is_withheld_leaves_no_empty_husk(archives: dict[str, Path]) -> None:
    page = (archives["default"] / PUBLIC / "trips" / "quillvessel-2026-03-04.html").read_text()

    for id_ in ("money", "rest", "doubts", "gear", "remarks"):
        assert f'id="{id_}"' not in page
        assert f'href="#{id_}"' not in page
    for head in ("Put back", "Undersize", ">From<", ">To<", "Rectangle"):
        assert head not in page.split("<tfoot>")[0].split('id="catch"')[0]
    assert "Positions of tows are not shown in this edition." in page
    assert "No positions are logged" not in page


@pytest.mark.parametrize("fleet", FLEETS)
@pytest.mark.parametrize("edition", EDITIONS)
def test_every_row_of_a_table_fills_its_columns(archives: dict[str, Path], fleet: str, edition: str) -> None:
    for page in (archives[fleet] / edition / "trips").glob("*.html"):
        for table in re.findall(r"<table.*?</table>", page.read_text(), re.DOTALL):
            widths = {_width(row) for row in re.findall(r"<tr.*?</tr>", table, re.DOTALL)}
            assert len(widths) == 1, (page.name, re.findall(r"<caption[^>]*>[^<]*", table), widths)


def _width(row: str) -> int:
    cells = re.findall(r"<t[hd]\b[^>]*>", row)
    return sum(int(span.group(1)) if (span := re.search(r'colspan="(\d+)"', cell)) else 1 for cell in cells)


def test_another_edition_in_the_same_folder_takes_away_the_files_that_it_has_not(tmp_path: Path) -> None:
    logs, site = plant(tmp_path, OPEN), tmp_path / "site"
    build(logs, site, lambda _: None, (OFFICE,))
    before = {path.relative_to(site).as_posix() for path in files(site)}
    (published,) = build(logs, site, lambda _: None, (PUBLIC,)).published
    after = {path.relative_to(site).as_posix() for path in files(site)}

    gone = {"problems.html", "files/fasts.gpx", "files/fasts.geojson", "charts/fleet-fasts.svg"}
    assert gone <= before - after
    assert published[1].removed == len(before - after)
    text = everything(site).casefold()
    assert [word for word, who in WORDS.items() if PUBLIC not in who and word in text] == []


def test_one_edition_is_the_same_alone_and_among_several(tmp_path: Path, archives: dict[str, Path]) -> None:
    build(plant(tmp_path), tmp_path / "site", lambda _: None)

    alone = {path.relative_to(tmp_path / "site"): path.read_bytes() for path in files(tmp_path / "site")}
    crew = archives["default"] / CREW
    assert alone == {path.relative_to(crew): path.read_bytes() for path in files(crew)}


def test_several_editions_do_not_go_below_an_archive_nor_one_above_several(tmp_path: Path) -> None:
    logs = plant(tmp_path)
    build(logs, tmp_path / "one", lambda _: None, (OFFICE,))
    build(logs, tmp_path / "several", lambda _: None, (OFFICE, CREW))

    with pytest.raises(PublishError, match="another archive stands in"):
        build(logs, tmp_path / "one", lambda _: None, (CREW, PUBLIC))
    with pytest.raises(PublishError, match="another archive stands in"):
        build(logs, tmp_path / "several", lambda _: None, (PUBLIC,))
    build(logs, tmp_path / "several", lambda _: None, (CREW, PUBLIC))
    build(logs, tmp_path / "one", lambda _: None, (PUBLIC,))
