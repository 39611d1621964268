"""The sample archive as a whole: it builds clean, leads nowhere outside itself, and is the same bytes each time."""

import re
import subprocess
import sys
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path, PurePosixPath
from urllib.parse import unquote, urljoin, urlsplit

import html5lib
import pytest

from logbook.build import build
from logbook.model.problem import Severity
from logbook.publish.lock import LOCK
from logbook.read.folder import Folder, read_folder
from logbook.reckon.trip import reckon_trips

ROOT = Path(__file__).parents[1]
SAMPLES = ROOT / "sample_logs"


@pytest.fixture(scope="session")
def archive(tmp_path_factory: pytest.TempPathFactory) -> Path:
    site = tmp_path_factory.mktemp("archive")
    stages: list[str] = []
    built = build(SAMPLES, site, stages.append, ("office",))  # the edition that has every page
    assert built.errors == 0
    assert len(stages) == 2
    return site


@pytest.fixture(scope="session")
def samples() -> Folder:
    return read_folder(SAMPLES)


class Page(HTMLParser):
    """What a page links to, what it loads, and the ids it has."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.links: list[str] = []
        self.ids: list[str] = []
        self.h1 = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.h1 += tag == "h1"
        for name, value in attrs:
            if name == "id" and value is not None:
                self.ids.append(value)
            elif name in ("href", "src", "data", "action", "poster") and value is not None:
                self.links.append(value)
            assert name != "style"
            assert not name.startswith("on")
        assert tag not in ("style", "iframe", "object")
        assert tag != "script" or re.fullmatch(
            r"(\.\./)*(board|find|keys|tables)\.[0-9a-f]{8}\.js", dict(attrs)["src"] or ""
        )


def pages(archive: Path) -> Iterator[tuple[str, Page]]:
    for path in sorted(archive.rglob("*.html")):
        page = Page()
        page.feed(path.read_text("utf-8"))
        yield path.relative_to(archive).as_posix(), page


def test_every_link_and_fragment_leads_somewhere_inside_the_archive(archive: Path) -> None:
    files = {path.relative_to(archive).as_posix() for path in archive.rglob("*") if path.is_file()}
    opened = dict(pages(archive))
    dead = []
    for name, page in opened.items():
        for link in page.links:
            parts = urlsplit(link)
            target = unquote("/".join(PurePosixPath(urljoin(f"/{name}", parts.path)).parts[1:])) if parts.path else name
            if (
                parts.scheme
                or parts.netloc
                or link.startswith("/")
                or target not in files
                or (parts.fragment and target in opened and unquote(parts.fragment) not in opened[target].ids)
            ):
                dead.append((name, link))
    assert dead == []


def test_every_page_has_one_heading_and_each_id_once(archive: Path) -> None:
    for name, page in pages(archive):
        assert page.h1 == 1, name
        assert len(page.ids) == len(set(page.ids)), name


def test_pages_are_sound_html(archive: Path) -> None:
    parser = html5lib.HTMLParser(strict=True)
    for name in (
        "index.html",
        "reckoning.html",
        "problems.html",
        "vessels/solan-bright.html",
        "trips/marrick-2026-01-07.html",
    ):
        parser.parse((archive / name).read_text("utf-8"))


def test_style_and_charts_load_nothing(archive: Path) -> None:
    for path in (*archive.glob("*.css"), *archive.rglob("*.svg")):
        text = re.sub(
            r"xmlns(:\w+)?=\"[^\"]*\"|<!DOCTYPE[^>]*>|<metadata>.*?</metadata>",
            "",
            path.read_text("utf-8"),
            flags=re.DOTALL,
        )
        assert not re.search(r"url\(['\"]?(?!#)|@import|https?://|<script", text), path.name


def test_every_trip_has_a_page_and_four_charts_with_words_for_them(archive: Path, samples: Folder) -> None:
    for reckoned in reckon_trips(samples.trips, samples.fleet):
        text = (archive / "trips" / f"{reckoned.figures.trip.id}.html").read_text("utf-8")
        charts = re.findall(r"<img [^>]*>", text)
        assert len(charts) >= (4 if len(reckoned.log.tows) > 20 else 3)
        assert all(re.search(r'alt="[^"]{20,}"', chart) for chart in charts)


def test_the_same_logs_give_the_same_bytes_in_another_process(archive: Path, tmp_path: Path) -> None:
    code = "import sys; from pathlib import Path; from logbook.build import build; build(Path(sys.argv[1]), Path(sys.argv[2]), print, ['office'])"
    environment = {
        "PYTHONHASHSEED": "7",
        "TZ": "Asia/Tokyo",
        "LC_ALL": "C",
        "PYTHONPATH": str(ROOT),
        "HOME": str(tmp_path),
        "PATH": "/usr/bin:/bin",
    }
    subprocess.run(
        [sys.executable, "-c", code, str(SAMPLES), str(tmp_path / "again")],
        check=True,
        capture_output=True,
        env=environment,
        cwd=ROOT,
    )

    def tree(folder: Path) -> dict[str, bytes]:
        paths = (path for path in folder.rglob("*") if path.is_file() and path.name != LOCK)
        return {path.relative_to(folder).as_posix(): path.read_bytes() for path in paths}

    first, again = tree(archive), tree(tmp_path / "again")
    assert first.keys() == again.keys()
    # Names of files in messages are as the folder was given, here the same for both.
    assert [name for name in first if first[name] != again[name]] == []


def test_no_page_tells_where_the_logs_stand(archive: Path) -> None:
    assert all(str(ROOT) not in path.read_text("utf-8") for path in archive.rglob("*.html"))


def test_the_sample_logs_read_without_errors_and_with_few_warnings(samples: Folder) -> None:
    severities = [problem.severity for problem in samples.problems]

    assert Severity.ERROR not in severities
    assert severities.count(Severity.WARNING) <= 6
    assert len(samples.trips) >= 12


def test_the_sample_trips_are_plausible_against_common_practice(samples: Folder) -> None:
    # Common practice, no source: a tow about every hour and a half for some six days; ten to twelve hours' steam; landing at about
    # five tonnes an hour; about five million pounds a year for a trawler of this size, at some 44 trips a year.
    reckoned = reckon_trips(samples.trips, samples.fleet)
    whole = [trip.figures for trip in reckoned if len(trip.log.tows) >= 60 and trip.figures.trip.docked is not None]
    kept = [float(figures.totals.kept_kg) for figures in whole if figures.totals.kept_kg is not None]

    assert {trip.figures.trip.state for trip in reckoned} == {"landed", "homeward", "at sea", "landing not logged"}
    for figures in whole:
        assert 60 <= figures.totals.tows <= 110
        assert figures.totals.mean_cycle_h == pytest.approx(1.5, abs=0.25)
        assert figures.totals.days_at_sea == pytest.approx(6.3, abs=1.7)
        assert figures.landing.steam_out_h == pytest.approx(11, abs=1.2)
        if figures.landing.discharge_kg_per_h is not None:
            assert figures.landing.discharge_kg_per_h == pytest.approx(5000, rel=0.25)
        top = list(figures.catch)[:2]
        assert set(top) == {"cod", "haddock"}
    assert sum(kept) / len(kept) * 44 / 0.45359237 == pytest.approx(5e6, rel=0.25)


GOLDEN = ROOT / "tests" / "golden" / "site"
KEPT_WHOLE = ("index.html", "problems.html", "reckoning.html", "vessels/marrick.html", "trips/marrick-2026-01-07.html")
"""Pages that the golden archive keeps whole; of the others it keeps the names."""


def test_the_archive_is_the_golden_one(archive: Path, request: pytest.FixtureRequest) -> None:
    names = sorted(
        path.relative_to(archive).as_posix() for path in archive.rglob("*") if path.is_file() and path.name != LOCK
    )
    listed = "\n".join(names) + "\n"
    if request.config.getoption("--update-golden"):
        (GOLDEN / "files.txt").write_text(listed, "utf-8")
        for name in KEPT_WHOLE:
            (GOLDEN / name).parent.mkdir(parents=True, exist_ok=True)
            (GOLDEN / name).write_bytes((archive / name).read_bytes())

    assert listed == (GOLDEN / "files.txt").read_text("utf-8")
    for name in KEPT_WHOLE:
        assert (archive / name).read_text("utf-8") == (GOLDEN / name).read_text("utf-8"), name
