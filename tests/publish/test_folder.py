"""The archive's folder: what is written, replaced and deleted, and what never is."""

import json
import os
from pathlib import Path

import pytest
from filelock import FileLock
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.page import Page
from logbook.publish import folder as publishing
from logbook.publish.folder import LOCK, PublishError, publish
from logbook.publish.manifest import MANIFEST, has_trips


def pages(**contents: str) -> list[Page]:
    return [
        Page(path=path.replace("__", "/").replace("_", "."), content=text.encode()) for path, text in contents.items()
    ]


def tree(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.name not in (LOCK, MANIFEST)
    }


def test_every_page_stands_where_its_path_says(tmp_path: Path) -> None:
    done = publish(pages(index_html="front", trips__a_html="a"), tmp_path / "site")

    assert tree(tmp_path / "site") == {"index.html": b"front", "trips/a.html": b"a"}
    assert (done.files, done.written, done.removed) == (2, 2, 0)


def test_a_second_build_of_the_same_pages_writes_nothing(tmp_path: Path) -> None:
    publish(pages(index_html="front"), tmp_path)
    before = (tmp_path / MANIFEST).stat().st_mtime_ns

    done = publish(pages(index_html="front"), tmp_path)

    assert (done.written, done.removed) == (0, 0)
    assert (tmp_path / MANIFEST).stat().st_mtime_ns == before


def test_a_page_that_is_gone_is_removed_with_its_empty_folder(tmp_path: Path) -> None:
    publish(pages(index_html="front", trips__a_html="a"), tmp_path)

    done = publish(pages(index_html="front"), tmp_path)

    assert done.removed == 1
    assert not (tmp_path / "trips").exists()


def test_other_peoples_files_are_never_deleted(tmp_path: Path) -> None:
    (tmp_path / "trips").mkdir()
    (tmp_path / "trips" / "mine.txt").write_text("mine")
    (tmp_path / "README.md").write_text("mine too")
    publish(pages(index_html="front", trips__a_html="a"), tmp_path)

    publish(pages(index_html="front"), tmp_path)

    assert tree(tmp_path) == {"README.md": b"mine too", "index.html": b"front", "trips/mine.txt": b"mine"}


def test_other_peoples_files_are_never_written_over(tmp_path: Path) -> None:
    (tmp_path / "index.html").write_text("mine")

    with pytest.raises(PublishError, match="not the archive's own file"):
        publish(pages(index_html="front"), tmp_path)

    assert tree(tmp_path) == {"index.html": b"mine"}


def test_a_file_damaged_on_disk_is_written_again(tmp_path: Path) -> None:
    publish(pages(index_html="front"), tmp_path)
    (tmp_path / "index.html").write_bytes(b"\0" * 5)

    assert publish(pages(index_html="front"), tmp_path).written == 1
    assert tree(tmp_path) == {"index.html": b"front"}


def test_a_page_whose_folder_is_taken_by_a_file_is_a_clear_error(tmp_path: Path) -> None:
    (tmp_path / "trips").write_text("a file")

    with pytest.raises(PublishError, match="could not write the archive"):
        publish(pages(trips__a_html="a"), tmp_path)


@pytest.mark.parametrize("path", ["", "/etc/x", "../x", "a/../../x", "a\\b", "c:x", "."])
def test_no_page_stands_outside_the_archive(tmp_path: Path, path: str) -> None:
    with pytest.raises(PublishError, match="outside the archive"):
        publish([Page(path=path, content=b"x")], tmp_path)


def test_a_manifest_that_names_files_outside_deletes_none_of_them(tmp_path: Path) -> None:
    outside = tmp_path / "outside.txt"
    outside.write_text("mine")
    site = tmp_path / "site"
    publish(pages(index_html="front"), site)
    (site / MANIFEST).write_text(json.dumps({"files": {"../outside.txt": "0", "index.html": "0"}}))

    publish(pages(index_html="new"), site)

    assert outside.read_text() == "mine"


@pytest.mark.parametrize("text", ["", "{", "[]", '{"files": 3}', '{"files": {"index.html": 3}}'])
def test_a_damaged_manifest_stops_no_build_of_an_empty_folder(tmp_path: Path, text: str) -> None:
    (tmp_path / MANIFEST).write_text(text)

    publish(pages(index_html="front"), tmp_path)

    assert tree(tmp_path) == {"index.html": b"front"}


def test_a_second_builder_waits_and_then_says_so(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(publishing, "_WAIT_S", 0.05)
    tmp_path.mkdir(exist_ok=True)

    with FileLock(tmp_path / LOCK), pytest.raises(PublishError, match="another build"):
        publish(pages(index_html="front"), tmp_path)


def test_a_build_cut_short_is_finished_by_the_next(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    publish(pages(index_html="old", trips__a_html="a"), tmp_path)
    put = publishing._put

    def stop_at_index(target: Path, content: bytes) -> None:
        if target.name == "index.html":
            raise OSError(28, "No space left on device", str(target))
        put(target, content)

    monkeypatch.setattr(publishing, "_put", stop_at_index)
    with pytest.raises(PublishError, match="No space left"):
        publish(pages(index_html="new", trips__b_html="b"), tmp_path)
    assert tree(tmp_path) == {"index.html": b"old", "trips/a.html": b"a", "trips/b.html": b"b"}
    monkeypatch.setattr(publishing, "_put", put)

    publish(pages(index_html="new", trips__b_html="b"), tmp_path)

    assert tree(tmp_path) == {"index.html": b"new", "trips/b.html": b"b"}


def test_what_is_linked_to_is_written_before_what_links_to_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    order: list[str] = []
    put = publishing._put

    def put_in_order(target: Path, content: bytes) -> None:
        order.append(target.name)
        put(target, content)

    monkeypatch.setattr(publishing, "_put", put_in_order)

    publish(pages(index_html="i", vessels__v_html="v", trips__t_html="t", charts__c_svg="c"), tmp_path)

    assert order == [MANIFEST, "c.svg", "t.html", "v.html", "index.html", MANIFEST]


def test_has_trips_tells_an_archive_with_trips_from_one_without(tmp_path: Path) -> None:
    publish(pages(index_html="front"), tmp_path)
    assert not has_trips(tmp_path)

    publish(pages(index_html="front", trips__a_html="a"), tmp_path)

    assert has_trips(tmp_path)


def test_a_read_only_folder_is_a_clear_error(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(self: Path, *args: object, **kwargs: object) -> None:
        raise PermissionError(13, "Permission denied", str(self))

    monkeypatch.setattr(Path, "mkdir", refuse)

    with pytest.raises(PublishError, match="Permission denied"):
        publish(pages(index_html="front"), tmp_path / "site")


def test_where_the_system_has_no_sync_publishing_goes_on(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delattr(os, "sync", raising=False)

    assert publish(pages(index_html="front"), tmp_path).written == 1


NAMES = st.lists(st.sampled_from(["a.html", "b.html", "index.html", "trips/a.html", "charts/x.svg"]), unique=True)


@given(first=NAMES, second=NAMES)
def test_after_a_build_the_archive_is_its_pages_whatever_stood_before(
    tmp_path_factory: pytest.TempPathFactory, first: list[str], second: list[str]
) -> None:
    folder = tmp_path_factory.mktemp("site")
    publish([Page(path=path, content=b"1" + path.encode()) for path in first], folder)

    publish([Page(path=path, content=b"2" + path.encode()) for path in second], folder)

    assert tree(folder) == {path: b"2" + path.encode() for path in sorted(second)}
