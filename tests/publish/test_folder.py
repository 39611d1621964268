"""The archive's folder: what is written, replaced and deleted, and what never is."""

import json
import os
import re
import signal
import threading
import time
import tracemalloc
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from filelock import FileLock
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.built import PublishError
from logbook.model.page import Page
from logbook.publish import folder as publishing
from logbook.publish import lock
from logbook.publish.folder import publish
from logbook.publish.lock import BUILDER, LOCK
from logbook.publish.manifest import MANIFEST, has_pages, has_trips, manifest_text, published_trips, read_manifest
from logbook.publish.staging import STAGING, Part, Staging


@pytest.fixture(autouse=True)
def _no_grace(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(publishing, "_GRACE_S", 0)


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


def test_a_name_taken_by_a_folder_or_a_folder_by_a_file_is_a_clear_error_and_nothing_is_written(tmp_path: Path) -> None:
    publish(pages(index_html="old"), tmp_path)
    (tmp_path / "trips").write_text("a file")
    (tmp_path / "find.html").mkdir()
    before = tree(tmp_path)

    with pytest.raises(PublishError, match="trips is a file, and the archive has a folder of that name"):
        publish(pages(index_html="new", trips__a_html="a"), tmp_path)
    with pytest.raises(PublishError, match=r"find\.html is a folder, and the archive has a file of that name"):
        publish(pages(index_html="new", find_html="f"), tmp_path)
    with pytest.raises(PublishError, match="is a file or leads nowhere"):
        publish(pages(index_html="new"), tmp_path / "trips")

    assert tree(tmp_path) == before
    assert not (tmp_path / STAGING).exists()


def test_nothing_is_written_or_deleted_through_a_link_out_of_the_archive(tmp_path: Path) -> None:
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "a.html").write_text("mine")
    site = tmp_path / "site"
    publish(pages(index_html="front", trips__a_html="a"), site)
    (site / "trips" / "a.html").unlink()
    (site / "trips").rmdir()
    (site / "trips").symlink_to(elsewhere, target_is_directory=True)

    with pytest.raises(PublishError, match="a link out of the archive"):
        publish(pages(index_html="new", trips__b_html="b"), site)
    publish(pages(index_html="new"), site)

    assert tree(elsewhere) == {"a.html": b"mine"}
    assert (site / "index.html").read_text() == "new"


def test_a_link_in_a_pages_place_is_replaced_and_what_it_led_to_stays(tmp_path: Path) -> None:
    mine = tmp_path / "mine.txt"
    site = tmp_path / "site"
    publish(pages(index_html="front"), site)
    (site / "index.html").unlink()
    mine.write_text("front")
    (site / "index.html").symlink_to(mine)

    publish(pages(index_html="front"), site)

    assert not (site / "index.html").is_symlink()
    assert mine.read_text() == "front"


def test_the_archive_may_stand_behind_a_link_itself(tmp_path: Path) -> None:
    (tmp_path / "disk").mkdir()
    (tmp_path / "site").symlink_to(tmp_path / "disk", target_is_directory=True)

    publish(pages(index_html="front", trips__a_html="a"), tmp_path / "site")

    assert tree(tmp_path / "disk") == {"index.html": b"front", "trips/a.html": b"a"}


def test_a_folder_that_may_not_be_written_is_a_clear_error_and_all_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    publish(pages(index_html="old", trips__a_html="old"), tmp_path)
    before = tree(tmp_path)
    allowed = os.access
    # Root may write anywhere, so the answer is given for it.
    monkeypatch.setattr(os, "access", lambda path, mode: Path(path).name != "trips" and allowed(path, mode))

    with pytest.raises(PublishError, match="trips can't be written to"):
        publish(pages(index_html="new", trips__a_html="new"), tmp_path)

    assert tree(tmp_path) == before


def test_a_file_held_open_is_tried_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # Windows: ERROR_SHARING_VIOLATION (32) of the system error codes; here it is raised in its place.
    pauses: list[float] = []
    replace = Path.replace

    def held(self: Path, target: Path) -> Path:
        if target.name == "index.html" and len(pauses) < 2:
            fault = PermissionError(13, "held open", str(target))
            fault.winerror = 32  # type: ignore[attr-defined]
            raise fault
        return replace(self, target)

    monkeypatch.setattr(Path, "replace", held)
    monkeypatch.setattr(time, "sleep", pauses.append)

    publish(pages(index_html="front"), tmp_path)

    assert pauses == [0.05, 0.1]
    assert tree(tmp_path) == {"index.html": b"front"}


def test_a_file_held_open_for_good_is_a_clear_error_and_the_next_build_finishes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    publish(pages(index_html="old", a_html="old"), tmp_path)
    with monkeypatch.context() as meanwhile:
        replace = Path.replace

        def held(self: Path, target: Path) -> Path:
            if target.name == "index.html":
                raise PermissionError(13, "Permission denied", str(target))
            return replace(self, target)

        meanwhile.setattr(Path, "replace", held)
        with pytest.raises(PublishError, match=r"index\.html: Permission denied"):
            publish(pages(index_html="new", a_html="new", b_html="new"), tmp_path)
    assert tree(tmp_path) == {"index.html": b"old", "a.html": b"new", "b.html": b"new"}

    publish(pages(index_html="new", a_html="new"), tmp_path)

    assert tree(tmp_path) == {"index.html": b"new", "a.html": b"new"}


@pytest.mark.parametrize(
    "path",
    ["", "/etc/x", "../x", "a/../../x", "a\\b", "c:x", ".", "a//b", "a/", "./a", LOCK, f"{STAGING}/1.part", MANIFEST],
)
def test_no_page_stands_outside_the_archive_or_where_its_own_things_do(tmp_path: Path, path: str) -> None:
    with pytest.raises(PublishError, match="outside the archive"):
        publish([Page(path=path, content=b"x")], tmp_path)


def test_a_manifest_that_names_files_outside_deletes_none_of_them(tmp_path: Path) -> None:
    outside = tmp_path / "outside.txt"
    outside.write_text("mine")
    site = tmp_path / "site"
    publish(pages(index_html="front"), site)
    (site / MANIFEST).write_text(json.dumps({"files": {"../outside.txt": "0", str(outside): "0", "index.html": "0"}}))

    publish(pages(index_html="new"), site)

    assert outside.read_text() == "mine"


@pytest.mark.parametrize("text", ["", "{", "[]", '{"files": 3}', '{"files": {"index.html": 3}}'])
def test_a_damaged_manifest_stops_no_build_of_an_empty_folder(tmp_path: Path, text: str) -> None:
    (tmp_path / MANIFEST).write_text(text)

    publish(pages(index_html="front"), tmp_path)

    assert tree(tmp_path) == {"index.html": b"front"}


@given(st.dictionaries(st.text(), st.text("0123456789abcdef", max_size=9)), st.lists(st.text()))
def test_the_list_is_as_pythons_own_json_writes_it_indented(files: dict[str, str], unlinked: list[str]) -> None:
    text = manifest_text(files, unlinked)

    assert text == (json.dumps(json.loads(text), indent=1) + "\n").encode()
    assert json.loads(text)["files"] == files
    assert list(json.loads(text)["files"]) == sorted(files)
    assert json.loads(text).get("unlinked", []) == sorted(unlinked)


def test_the_list_tells_which_trips_have_pages(tmp_path: Path) -> None:
    publish(pages(index_html="i", trips__a_html="a", trips__b_html="b", files__trips__c_json="c"), tmp_path)

    assert published_trips(tmp_path) == {"a", "b"}
    assert has_pages(tmp_path)


def test_a_second_builder_waits_and_then_says_who_is_building(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(lock, "_WAIT_S", 0.05)

    with lock.alone(tmp_path), pytest.raises(PublishError, match=rf"another build \(process {os.getpid()} on .*\) is"):
        publish(pages(index_html="front"), tmp_path)
    with FileLock(tmp_path / LOCK), pytest.raises(PublishError, match="another build is writing"):
        publish(pages(index_html="front"), tmp_path)

    (tmp_path / BUILDER).write_text("process 1 on a machine that stopped")
    publish(pages(index_html="front"), tmp_path)
    assert not (tmp_path / BUILDER).exists()


def test_a_full_disk_changes_nothing_and_leaves_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    publish(pages(index_html="old", trips__a_html="a"), tmp_path)
    before = {path: path.read_bytes() for path in tmp_path.rglob("*") if path.is_file()}
    flushed = os.fsync

    def full(opened: int) -> None:
        if os.fstat(opened).st_size == len(b"much longer"):
            raise OSError(28, "No space left on device")
        flushed(opened)

    monkeypatch.setattr(os, "fsync", full)

    with pytest.raises(PublishError, match="No space left on device; make room and build again"):
        publish(pages(index_html="new", trips__b_html="b", weeks__w_html="much longer"), tmp_path)

    assert {path: path.read_bytes() for path in tmp_path.rglob("*") if path.is_file()} == before
    assert not (tmp_path / "weeks").exists()
    assert not (tmp_path / STAGING).exists()


class RenderError(Exception):
    """Whatever may go wrong while pages are made."""


@pytest.mark.parametrize("fault", [RenderError(), KeyboardInterrupt(), MemoryError(), PublishError("no")])
@pytest.mark.parametrize("after", [0, 1, 3])
def test_where_the_pages_fail_the_archive_stays_as_it_was_and_nothing_is_left_aside(
    tmp_path: Path, fault: BaseException, after: int
) -> None:
    publish(pages(index_html="old", trips__a_html="a"), tmp_path)
    before = {path: path.read_bytes() for path in tmp_path.rglob("*") if path.is_file()}

    def failing() -> Iterator[Page]:
        yield from pages(index_html="new", trips__b_html="b", weeks__w_html="w")[:after]
        raise fault

    with pytest.raises(type(fault)):
        publish(failing(), tmp_path)

    assert {path: path.read_bytes() for path in tmp_path.rglob("*") if path.is_file()} == before
    assert {path.name for path in tmp_path.iterdir() if path.is_dir()} == {"trips"}


def test_no_file_is_held_once_it_is_aside(tmp_path: Path) -> None:
    def large() -> Iterator[Page]:
        for number in range(30):
            yield Page(path=f"{number}.html", content=bytes([number]) * 1_000_000)

    tracemalloc.start()
    publish(large(), tmp_path)
    _, most = tracemalloc.get_traced_memory()
    tracemalloc.stop()

    assert most < 6_000_000


def test_the_last_of_two_files_of_one_path_is_published(tmp_path: Path) -> None:
    publish(pages(index_html="old"), tmp_path)

    for last in ("new", "old"):
        others = [Page(path="index.html", content=content) for content in (b"other", b"old", last.encode())]
        publish(others, tmp_path)
        assert tree(tmp_path) == {"index.html": last.encode()}


def test_a_disk_that_fails_to_keep_one_file_of_many_is_a_clear_error_and_no_thread_is_left(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    publish(pages(index_html="old"), tmp_path)
    before = {path: path.read_bytes() for path in tmp_path.rglob("*") if path.is_file()}
    flushed, threads = os.fsync, threading.active_count()

    def failing(opened: int) -> None:
        if os.fstat(opened).st_size == 77:
            raise OSError(5, "Input/output error")
        flushed(opened)

    monkeypatch.setattr(os, "fsync", failing)

    with pytest.raises(PublishError, match="could not write the archive: Input/output error"):
        publish((Page(path=f"{number}.html", content=b"x" * number) for number in range(200)), tmp_path)

    assert threading.active_count() == threads
    assert {path: path.read_bytes() for path in tmp_path.rglob("*") if path.is_file()} == before


def noted(monkeypatch: pytest.MonkeyPatch, order: list[str]) -> None:
    """Note every path that is placed, and with a dash before it every one that is removed."""
    place, remove = Staging.place, Staging.remove

    def placed(self: Staging, part: Part, path: str) -> None:
        order.append(path)
        place(self, part, path)

    def removed(self: Staging, path: str) -> None:
        order.append(f"-{path}")
        remove(self, path)

    monkeypatch.setattr(Staging, "place", placed)
    monkeypatch.setattr(Staging, "remove", removed)


def stopped_at(monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    """Have a build end as if it were killed when it would place or remove a file of that name."""

    def stop(act: Callable[..., None]) -> Callable[..., None]:
        def acted(self: Staging, *words: Any) -> None:  # noqa: ANN401 - of either
            if str(words[-1]).endswith(name):
                os.kill(os.getpid(), signal.SIGINT)
            act(self, *words)

        return acted

    monkeypatch.setattr(Staging, "place", stop(Staging.place))
    monkeypatch.setattr(Staging, "remove", stop(Staging.remove))


@pytest.mark.parametrize("name", ["n.html", "index.html", "a.html", "b.html"])
def test_a_build_cut_short_is_finished_by_the_next(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    publish(pages(index_html="old", trips__a_html="a", trips__b_html="b"), tmp_path)
    with monkeypatch.context() as meanwhile:
        stopped_at(meanwhile, name)
        with pytest.raises(KeyboardInterrupt):
            publish(pages(index_html="new", trips__n_html="n", trips__b_html="new"), tmp_path)
    assert not (tmp_path / STAGING).exists()

    publish(pages(index_html="newer", trips__b_html="b"), tmp_path)

    assert tree(tmp_path) == {"index.html": b"newer", "trips/b.html": b"b"}
    assert read_manifest(tmp_path).files.keys() == {"index.html", "trips/b.html"}


def test_new_files_come_before_what_is_replaced_and_what_has_gone_goes_last(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    publish(pages(index_html="i", trips__a_html="a", trips__o_html="o", charts__o_svg="o"), tmp_path)
    order: list[str] = []
    noted(monkeypatch, order)

    publish(
        pages(index_html="I", trips__a_html="A", vessels__v_html="v", trips__t_html="t", charts__c_svg="c"), tmp_path
    )

    new = ["charts/c.svg", "trips/t.html", "vessels/v.html"]
    replaced, gone = ["trips/a.html", "index.html"], ["trips/o.html", "-trips/o.html", "-charts/o.svg"]
    assert order == [MANIFEST, *new, MANIFEST, *replaced, MANIFEST, *gone, MANIFEST]


@pytest.mark.parametrize(
    ("changed", "lists"),
    [
        ({"index_html": "I", "trips__a_html": "a"}, 1),
        ({"index_html": "I", "trips__a_html": "A", "trips__n_html": "n"}, 2),
        ({"index_html": "I"}, 2),
        ({"index_html": "I", "trips__n_html": "n"}, 4),
        ({"index_html": "i", "trips__a_html": "a"}, 0),
    ],
)
def test_the_list_is_written_only_where_it_has_something_to_say(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, changed: dict[str, str], lists: int
) -> None:
    publish(pages(index_html="i", trips__a_html="a"), tmp_path)
    order: list[str] = []
    noted(monkeypatch, order)

    publish(pages(**changed), tmp_path)

    assert order.count(MANIFEST) == lists
    assert read_manifest(tmp_path).files.keys() == tree(tmp_path).keys()


def test_pages_that_lead_to_new_ones_are_replaced_only_when_the_list_calls_those_linked(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    publish(pages(index_html="i", trips__a_html="a"), tmp_path)
    with monkeypatch.context() as meanwhile:
        stopped_at(meanwhile, "index.html")
        with pytest.raises(KeyboardInterrupt):
            publish(pages(index_html="I", trips__a_html="leads to n", trips__n_html="n"), tmp_path)

    assert tree(tmp_path) == {"index.html": b"i", "trips/a.html": b"leads to n", "trips/n.html": b"n"}
    assert read_manifest(tmp_path).unlinked == frozenset()


def test_a_page_that_has_gone_leads_back_to_the_front_page_until_it_is_taken_away(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    publish(pages(index_html="i", trips__a_html="leads to b", trips__b_html="leads to a"), tmp_path)
    met: list[str] = []
    monkeypatch.setattr(publishing, "_GRACE_S", 7)
    monkeypatch.setattr(
        time, "sleep", lambda s: met.extend([str(s), *((tmp_path / "trips" / f"{n}.html").read_text() for n in "ab")])
    )

    publish(pages(index_html="I"), tmp_path)

    assert met[0] == "7"
    assert [re.findall(r'href="([^"]*)"', page) for page in met[1:]] == [["../index.html"], ["../index.html"]]
    assert tree(tmp_path) == {"index.html": b"I"}


def test_what_a_killed_build_put_there_unlinked_is_taken_away_before_anything_leads_to_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    publish(pages(index_html="i"), tmp_path)
    with monkeypatch.context() as meanwhile:
        stopped_at(meanwhile, "t.html")
        with pytest.raises(KeyboardInterrupt):
            publish(pages(index_html="I", trips__s_html="leads to t", trips__t_html="t"), tmp_path)
    assert read_manifest(tmp_path).unlinked == {"trips/s.html", "trips/t.html"}
    order: list[str] = []
    noted(monkeypatch, order)

    publish(pages(index_html="J", trips__s_html="leads to u", trips__u_html="u"), tmp_path)

    assert order[:2] == ["-trips/t.html", "-trips/s.html"]
    assert tree(tmp_path) == {"index.html": b"J", "trips/s.html": b"leads to u", "trips/u.html": b"u"}


def test_what_a_killed_build_left_aside_is_taken_away_and_nothing_else(tmp_path: Path) -> None:
    publish(pages(index_html="front"), tmp_path)
    (tmp_path / STAGING).mkdir()
    (tmp_path / STAGING / "1.part").write_text("half")
    publish(pages(index_html="front"), tmp_path)
    assert not (tmp_path / STAGING).exists()
    (tmp_path / STAGING).mkdir()
    (tmp_path / STAGING / "mine.txt").write_text("mine")

    publish(pages(index_html="new"), tmp_path)

    assert (tmp_path / STAGING / "mine.txt").read_text() == "mine"


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


def test_where_the_system_flushes_no_folders_publishing_goes_on(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delattr(os, "O_DIRECTORY", raising=False)

    assert publish(pages(index_html="front"), tmp_path).written == 1


@pytest.mark.skipif(not hasattr(os, "O_DIRECTORY"), reason="only where folders can be flushed")
def test_every_file_is_flushed_before_it_is_placed_and_every_folder_after(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    done: list[str] = []
    flush, replace = os.fsync, Path.replace

    def flushed(opened: int) -> None:
        done.append(f"flush {Path(f'/proc/self/fd/{opened}').readlink().name}")
        flush(opened)

    def placed(self: Path, target: Path) -> Path:
        done.append(f"{self.name} to {target.name}")
        return replace(self, target)

    monkeypatch.setattr(os, "fsync", flushed)
    monkeypatch.setattr(Path, "replace", placed)

    publish(pages(trips__a_html="a"), tmp_path)

    assert done.index("flush 1.part") < done.index("1.part to a.html") < done.index("flush trips")


@pytest.mark.skipif(not hasattr(os, "O_DIRECTORY"), reason="only where folders can be flushed")
def test_of_many_files_all_are_flushed_before_the_first_is_placed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    done: list[str] = []
    flush, replace = os.fsync, Path.replace

    def flushed(opened: int) -> None:
        flush(opened)
        done.append(Path(f"/proc/self/fd/{opened}").readlink().name)

    def placed(self: Path, target: Path) -> Path:
        done.append("placed")
        return replace(self, target)

    monkeypatch.setattr(os, "fsync", flushed)
    monkeypatch.setattr(Path, "replace", placed)

    publish((Page(path=f"{number}.html", content=b"x") for number in range(150)), tmp_path)

    assert {f"{number}.part" for number in range(1, 151)} <= set(done[: done.index("placed")])


NAMES = st.lists(st.sampled_from(["a.html", "b.html", "index.html", "trips/a.html", "charts/x.svg"]), unique=True)


@given(first=NAMES, second=NAMES)
def test_after_a_build_the_archive_is_its_pages_whatever_stood_before(
    tmp_path_factory: pytest.TempPathFactory, first: list[str], second: list[str]
) -> None:
    folder = tmp_path_factory.mktemp("site")
    publish([Page(path=path, content=b"1" + path.encode()) for path in first], folder)

    publish([Page(path=path, content=b"2" + path.encode()) for path in second], folder)

    assert tree(folder) == {path: b"2" + path.encode() for path in sorted(second)}
