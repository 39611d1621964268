"""What stands is told by what is remembered, and nobody's change to an archive is missed that is promised to be found."""

import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.model import seen as remembering
from logbook.model.page import File, Page
from logbook.model.page import Standing as Stood
from logbook.model.seen import UNSURE
from logbook.publish import folder as publishing
from logbook.publish import standing
from logbook.publish.folder import publish
from logbook.publish.lock import LOCK
from logbook.publish.manifest import MANIFEST
from logbook.publish.staging import STAGING, Staging
from logbook.publish.standing import stands
from tests.publish.remembered import Remembered

PAGES = {"index.html": b"front", "trips/a.html": b"a", "trips/b.html": b"b", "charts/a.svg": b"chart"}
SOME, MANY = 10_000, 0
"""How many files are looked at one by one: of small archives all, of large ones none; for these tests four are many."""


@pytest.fixture(autouse=True)
def _at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """Have nothing wait, and what was written just now believed."""
    monkeypatch.setattr(publishing, "_GRACE_S", 0)
    monkeypatch.setattr(remembering, "SETTLED_NS", -(10**18))


@pytest.fixture(params=[SOME, MANY], ids=["small", "large"])
def size(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> int:
    monkeypatch.setattr(standing, "FEW", request.param)
    return int(request.param)


@pytest.fixture
def seen() -> Remembered:
    return Remembered()


@pytest.fixture
def site(tmp_path: Path, seen: Remembered) -> Path:
    publish(pages(PAGES), tmp_path / "site", seen)
    return tmp_path / "site"


def pages(contents: dict[str, bytes]) -> Iterator[Page]:
    return (Page(path=path, content=content) for path, content in contents.items())


def tree(folder: Path) -> dict[str, bytes]:
    paths = (path for path in folder.rglob("*") if path.is_file() and path.name not in (LOCK, MANIFEST))
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in paths}


def opened(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Note the name of each file whose bytes are looked at."""
    names: list[str] = []
    digest_of = standing._digest_of

    def noted(path: str | Path) -> str:
        names.append(Path(path).name)
        return digest_of(path)

    monkeypatch.setattr(standing, "_digest_of", noted)
    return names


def delete(site: Path) -> None:
    (site / "trips" / "a.html").unlink()


def swap(site: Path) -> None:
    """Put another file of the same size in a page's place, as many editors save."""
    (site / "trips" / "other").write_bytes(b"x")
    (site / "trips" / "other").replace(site / "trips" / "a.html")


def spoil(site: Path) -> None:
    (site / "trips" / "a.html").write_bytes(b"\0" * 9)


def empty(site: Path) -> None:
    shutil.rmtree(site / "trips")


def put_in(site: Path) -> None:
    (site / "trips" / "Thumbs.db").write_bytes(b"mine")


@pytest.mark.usefixtures("size")
def test_a_build_of_the_same_opens_no_file_and_remembers_nothing_new(
    site: Path, seen: Remembered, monkeypatch: pytest.MonkeyPatch
) -> None:
    names = opened(monkeypatch)

    done = publish(pages(PAGES), site, seen)

    assert (done.written, names, seen.kept) == (0, [], 1)


@pytest.mark.usefixtures("size")
def test_after_a_change_only_what_changed_is_written_and_the_next_build_opens_no_file(
    site: Path, seen: Remembered, monkeypatch: pytest.MonkeyPatch
) -> None:
    names = opened(monkeypatch)
    changed = {**PAGES, "trips/a.html": b"A", "trips/n.html": b"n"}
    del changed["charts/a.svg"]

    done = publish(pages(changed), site, seen)
    again = publish(pages(changed), site, seen)

    assert (done.written, done.removed, again.written) == (2, 1, 0)
    assert set(names) <= {"a.html"}  # its time and size are not as remembered where pages are looked at one by one
    assert seen.rows.keys() == changed.keys()
    assert stands(site, seen)


@pytest.mark.usefixtures("size")
@pytest.mark.parametrize("damage", [delete, swap, empty])
def test_what_is_missing_or_another_file_is_put_right(
    site: Path, seen: Remembered, damage: Callable[[Path], None]
) -> None:
    damage(site)

    assert not stands(site, seen)
    publish(pages(PAGES), site, seen)
    assert tree(site) == PAGES
    assert stands(site, seen)


@pytest.mark.parametrize("every", [False, True])
def test_a_page_spoilt_in_its_place_is_mended_in_a_small_archive_always_in_a_large_one_where_asked(
    size: int, site: Path, seen: Remembered, *, every: bool
) -> None:
    spoil(site)
    found = every or size == SOME

    assert stands(site, seen) == (size == MANY)
    assert publish(pages(PAGES), site, seen, every=every).written == found
    assert (tree(site) == PAGES) == found


def test_a_page_spoilt_without_a_trace_is_mended_where_every_file_is_looked_at(site: Path, seen: Remembered) -> None:
    page = site / "trips" / "a.html"
    was = page.stat()
    page.write_bytes(b"x")
    os.utime(page, ns=(was.st_atime_ns, was.st_mtime_ns))

    assert publish(pages(PAGES), site, seen).written == 0
    assert publish(pages(PAGES), site, seen, every=True).written == 1
    assert tree(site) == PAGES


@pytest.mark.usefixtures("size")
def test_somebody_elses_file_costs_a_look_at_its_folder_once(
    site: Path, seen: Remembered, monkeypatch: pytest.MonkeyPatch
) -> None:
    put_in(site)
    assert stands(site, seen)

    assert publish(pages(PAGES), site, seen).written == 0

    left = seen.left()
    assert left is not None
    assert left.folders["trips"] == (site / "trips").stat().st_mtime_ns
    assert opened(monkeypatch) == []


def test_a_large_archive_is_seen_to_stand_by_its_folders_alone(
    site: Path, seen: Remembered, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(standing, "FEW", MANY)
    looked: list[str] = []
    lstat = os.lstat

    def noted(path: str | Path) -> os.stat_result:
        looked.append(Path(path).relative_to(site).as_posix())
        return lstat(path)

    monkeypatch.setattr(os, "lstat", noted)

    assert stands(site, seen)
    assert not any(path.count("/") for path in looked)


def test_an_archive_stands_as_left_only_with_its_list_its_memory_and_nothing_aside(
    site: Path, seen: Remembered
) -> None:
    assert stands(site, seen)
    assert not stands(site, Remembered())
    assert not stands(site.parent, seen)
    (site / STAGING).mkdir()
    assert not stands(site, seen)
    (site / STAGING).rmdir()
    seen.rows.pop("trips/a.html")
    assert not stands(site, seen)
    publish(pages(PAGES), site, seen)
    assert stands(site, seen)
    (site / MANIFEST).write_text((site / MANIFEST).read_text() + " ")
    assert not stands(site, seen)


@pytest.mark.usefixtures("size")
def test_a_folder_that_changed_while_its_files_were_looked_at_is_not_believed(site: Path, seen: Remembered) -> None:
    def meanwhile() -> Iterator[Page]:
        yield from pages({**PAGES, "trips/b.html": b"B"})
        delete(site)

    publish(meanwhile(), site, seen)
    left = seen.left()

    assert left is not None
    assert left.folders["trips"] == UNSURE
    assert publish(pages(PAGES), site, seen).written == 2
    assert tree(site) == PAGES


def test_a_folder_is_given_an_earlier_time_than_any_change_to_it_can_have(site: Path, seen: Remembered) -> None:
    before = (site / "trips").stat().st_mtime_ns
    left = seen.left()

    put_in(site)

    assert left is not None
    assert left.folders["trips"] == before
    assert (site / "trips").stat().st_mtime_ns - before > 2_000_000_000


def test_where_folders_times_cant_be_set_each_file_is_looked_at(
    tmp_path: Path, seen: Remembered, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(standing, "FEW", MANY)

    def refuse(*words: object, **named: object) -> None:
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr(os, "utime", refuse)
    publish(pages(PAGES), tmp_path, seen)
    left = seen.left()
    spoil(tmp_path)

    assert left is not None
    assert set(left.folders.values()) == {UNSURE}
    assert publish(pages(PAGES), tmp_path, seen).written == 1


def test_folders_whose_time_stays_when_files_come_are_not_believed(
    site: Path, seen: Remembered, monkeypatch: pytest.MonkeyPatch
) -> None:
    # Some network shares keep no times of folders; here each is set as it was.
    monkeypatch.setattr(standing, "FEW", MANY)
    place = Staging.place

    def placed(self: Staging, *words: object) -> None:
        was = (site / "trips").stat()
        place(self, *words)  # type: ignore[arg-type] # handed on
        os.utime(site / "trips", ns=(was.st_atime_ns, was.st_mtime_ns))

    monkeypatch.setattr(Staging, "place", placed)
    publish(pages({**PAGES, "trips/a.html": b"A"}), site, seen)
    left = seen.left()

    assert left is not None
    assert left.folders["trips"] == UNSURE
    assert left.folders["charts"] != UNSURE


def test_a_file_written_just_now_is_opened_again(
    tmp_path: Path, seen: Remembered, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(remembering, "SETTLED_NS", 2_000_000_000)
    publish(pages(PAGES), tmp_path, seen)
    names = opened(monkeypatch)
    (tmp_path / "trips" / "a.html").write_bytes(b"x")

    assert {stamp.mtime_ns for stamp in seen.rows.values()} == {UNSURE}
    assert publish(pages(PAGES), tmp_path, seen).written == 1
    assert sorted(names) == ["a.html", "a.svg", "b.html", "index.html"]


def test_a_time_to_come_is_not_believed(tmp_path: Path, seen: Remembered, monkeypatch: pytest.MonkeyPatch) -> None:
    # A clock that was wrong and has been set back.
    monkeypatch.setattr(remembering, "SETTLED_NS", 2_000_000_000)
    publish(pages(PAGES), tmp_path, seen)
    late = 2**62
    os.utime(tmp_path / "trips" / "a.html", ns=(late, late))

    publish(pages(PAGES), tmp_path, seen)

    assert seen.rows["trips/a.html"].mtime_ns == UNSURE


@pytest.mark.usefixtures("size")
def test_what_another_build_did_to_the_archive_is_looked_at(site: Path, seen: Remembered) -> None:
    publish(pages({**PAGES, "trips/a.html": b"x", "charts/a.svg": b"y"}), site, Remembered())

    assert not stands(site, seen)
    assert publish(pages(PAGES), site, seen).written == 2
    assert tree(site) == PAGES


@pytest.mark.usefixtures("size")
def test_what_is_remembered_of_files_on_no_list_is_forgotten(site: Path, seen: Remembered) -> None:
    shutil.rmtree(site)
    few = {path: content for path, content in PAGES.items() if path != "trips/b.html"}

    publish(pages(few), site, seen)

    assert stands(site, seen)


@pytest.mark.usefixtures("size")
def test_a_file_of_an_earlier_build_is_made_only_where_it_no_longer_stands(site: Path, seen: Remembered) -> None:
    made: list[str] = []

    def again(path: str) -> Callable[[], bytes]:
        def make() -> bytes:
            made.append(path)
            return PAGES[path]

        return make

    files: list[File] = [
        Stood(path=path, size=stamp.size, digest=stamp.digest, make=again(path)) for path, stamp in seen.rows.items()
    ]
    publish(files, site, seen)
    assert made == []
    delete(site)

    publish(files, site, seen)

    assert made == ["trips/a.html"]
    assert tree(site) == PAGES


CHANGES = {"delete": delete, "swap": swap, "spoil": spoil, "empty": empty, "put in": put_in}


@settings(max_examples=20)
@given(
    few=st.sampled_from([SOME, MANY]),
    steps=st.lists(
        st.one_of(
            st.sampled_from([*CHANGES, "forget"]),
            st.dictionaries(st.sampled_from([*PAGES, "n.html"]), st.binary(max_size=2)),
        ),
        max_size=8,
    ),
)
def test_whatever_happens_in_between_the_archive_is_its_pages(
    tmp_path_factory: pytest.TempPathFactory, few: int, steps: list[str | dict[str, bytes]]
) -> None:
    site, seen = tmp_path_factory.mktemp("site"), Remembered()
    with pytest.MonkeyPatch.context() as meanwhile:
        meanwhile.setattr(standing, "FEW", few)
        for step in [dict(PAGES), *steps, dict(PAGES)]:
            if step == "forget":
                seen = Remembered()
            elif isinstance(step, dict):
                publish(pages(step), site, seen)
                ours = {path: content for path, content in tree(site).items() if path != "trips/Thumbs.db"}
                assert ours == step
                assert not step or stands(site, seen)
            elif (step != "spoil" or few == SOME) and (site / "trips" / "a.html").exists():
                CHANGES[step](site)
