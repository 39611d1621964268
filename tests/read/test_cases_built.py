"""Cases that no editor would keep as they are, that are too long to keep, or that are folders: built, with the same comments."""

from pathlib import Path

import pytest

from logbook.read.folder import Folder, named_from, read_folder
from logbook.read.trip import prepare, read_trip
from tests.read.closed import close
from tests.read.logs import FLEET, fleet
from tests.read.test_cases import assert_as_expected

HEAD = "vessel: Solan Bright\nsailed: 2026-03-04 05:30\n"
LOG = f"{HEAD}tows:\n  - 1810-1940, cod 2 baskets\n"
PLAIN = LOG.encode()
LATER = LOG.replace("03-04", "03-14").encode()
MANY = "what stands behind '#' is no part of 'wants' … put the text in single quotes"

BUILT: dict[str, tuple[bytes, str]] = {
    "empty": (b"", "# expect 1:1 file-empty, error: the file is empty … look for a copy"),
    "zeros": (
        b"\0" * 40,
        "# expect 1:1 zero-bytes, error: there are only zero bytes in it, as a power cut leaves them",
    ),
    "too big": (
        PLAIN + b"# x\n" * 600_000,
        "# expect 1:1 file-too-big, error: this file is larger than 2 MB … one trip a file",
    ),
    "a picture": (b"\x89PNG\r\n\x1a\n" + PLAIN, "# expect 1:1 not-text, error: this is no plain text but a picture"),
    "zeros at its end": (PLAIN + b"\0" * 40, "# expect 5:1 zero-tail, warning: the file ends in 40 zero bytes"),
    "cut": (PLAIN + b"skipper: H\xc3", "# expect 5:11 cut-short, warning: the file is cut in the middle of a letter"),
    "Windows letters": (
        PLAIN + b"skipper: H\xe5kon\n",
        "# expect 5:11 encoding, warning: this line is not UTF-8 … save the file with encoding UTF-8",
    ),
    "wide letters": (
        LOG.encode("utf-16-le"),
        "# expect 1:1 encoding, warning: the file is UTF-16 without the mark … save it with encoding UTF-8",
    ),
    "a control character": (
        PLAIN + b"skipper: M.\x01Aldane\n",
        "# expect 5:12 control-character, warning: a control character is read as a space … take it out",
    ),
    "an invisible character": (
        PLAIN + "skipper: M. Al\u200bdane\n".encode(),
        "# expect 5:15 invisible-character, note: an invisible character is left out … type the word again",
    ),
    "an odd line end": (
        PLAIN + "remarks: one\u2028two\n".encode(),
        "# expect 5:13 line-separator, note: an odd line separator is read as a space … type a space",
    ),
    "an odd space": (
        PLAIN + "crew:\u00a011\n".encode(),
        "# expect 5:6 odd-space, note: an odd kind of space is read as a plain one … type plain spaces",
    ),
    "a page break": (
        PLAIN + b"\x0ccrew: 11\n",
        "# expect 5:1 page-break, note: the sign of a new page or of a gap for printers is left out … take it out",
    ),
    "lines that end oddly": (
        LOG.replace("\n", "\u2028").encode(),
        "# expect 1:21 line-separator, note: the lines of this file end in a separator that few editors know … plain line ends",
    ),
    "more returns before each line's end": (
        (LOG + "skipper: H").replace("\n", "\r\r\r\n").encode() + b"\xe5kon\r\r\n",
        "# expect 5:11 encoding, warning: this line is not UTF-8 … save the file with encoding UTF-8",
    ),
    "zeros behind letters": (
        PLAIN + "skipper: Håkon Ås".encode() + b"\0" * 7,
        "# expect 5:18 zero-tail, warning: the file ends in 7 zero bytes … look whether its last entries are missing",
    ),
    "too much": (
        HEAD.encode() + b"crew:\n" + b"- x\n" * 200_000,
        "# expect 199994:3 too-much, error: this file holds more than a log can … keep one trip a file",
    ),
    "too many entries": (
        HEAD.encode() + b"skipper:\n" + b"- x\n" * 2100 + b"crew: 4\ntows: []\n",
        """\
# expect 2004:3 too-much, error: there are more than 2000 entries here; from this one on they are not read … keep one trip a file
# expect 2105:1 no-tows, note: this log has no tows yet … add them below `tows:`""",
    ),
    "too many parts": (
        HEAD.encode() + b"tows:\n  - 1810-1940, cod 2 baskets" + b", put back nothing" * 300 + b"\n",
        """\
# expect 4:5 too-much, error: this tow has more than 200 parts; the rest of the line is not read … a line for each key
# expect 4:5 tow-line-words, note: 'put back nothing, put back nothing""",
    ),
    "too many problems": (
        PLAIN + b"wants:\n" + b"  - ice # lots\n" * 1100,
        "\n".join(f"# expect {line}:9 comment-cuts-text, warning: {MANY}" for line in range(6, 1006))
        + "\n# expect 1006:9 too-many-problems, error: there is more wrong in this file than is told",
    ),
}


@pytest.mark.parametrize("name", BUILT)
def test_a_built_case_gives_the_problems_it_says(name: str) -> None:
    data, comments = BUILT[name]

    problems = read_trip(data, "trip.yaml", prepare(fleet()))[1]

    assert_as_expected(problems, comments)


FOLDERS: dict[str, tuple[dict[str, bytes], str]] = {
    "one trip twice": (
        {"trip - Copy.yaml": PLAIN, "trip.yaml": PLAIN},
        "# expect 1:1 same-trip, warning: this is the same trip as trip - Copy.yaml … keep one of the two",
    ),
    "one trip in two versions": (
        {"trip - old.yaml": PLAIN, "trip.yaml": PLAIN + b"crew: 11\n"},
        """\
# expect 1:1 same-trip, warning: this is the same trip as trip.yaml … keep one of the two
# expect 1:1 same-trip, warning: this is the same trip as trip - old.yaml … keep one of the two""",
    ),
    "two trips at once": (
        {"a.yaml": PLAIN + b"landed: 2026-03-16 08:00\n", "b.yaml": LATER},
        "# expect 1:1 logs-overlap, warning: this trip begins before the end of a.yaml … see the dates of both",
    ),
    "a log named as text": (
        {"trip.yaml.txt": PLAIN},
        "# expect 1:1 log-renamed, warning: its name ends in .txt, so it is not read … rename it to trip.yaml",
    ),
}


def read_below(path: Path, files: dict[str, bytes]) -> Folder:
    """Return what is read of a folder with some logs and a fleet file."""
    (path / "fleet.yaml").write_text(FLEET)
    for name, data in files.items():
        (path / name).write_bytes(data)
    return named_from(read_folder(path), path)


@pytest.mark.parametrize("name", FOLDERS)
def test_a_folder_gives_the_problems_it_says(name: str, tmp_path: Path) -> None:
    files, comments = FOLDERS[name]

    folder = read_below(tmp_path, files)

    assert max(files) in {problem.place.file for problem in folder.problems}
    assert_as_expected(folder.problems, comments)


LINKED = "# expect 1:1 not-followed, warning: this is a link or a device, not a log … put the log itself here"
CLOSED = "# expect 1:1 file-unreadable, error: this file can't be read: permission denied"


def test_a_link_gives_the_problem_it_says(tmp_path: Path) -> None:
    (tmp_path / "linked.yaml").symlink_to(tmp_path / "fleet.yaml")

    folder = read_below(tmp_path, {})

    assert [problem.place.file for problem in folder.problems] == ["linked.yaml"]
    assert_as_expected(folder.problems, LINKED)


def test_a_closed_log_gives_the_problem_it_says(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    close("closed.yaml", monkeypatch)
    folder = read_below(tmp_path, {"closed.yaml": PLAIN})

    assert [problem.place.file for problem in folder.problems] == ["closed.yaml"]
    assert_as_expected(folder.problems, CLOSED)


COMMENTS = (*(comments for _, comments in (*BUILT.values(), *FOLDERS.values())), LINKED, CLOSED)
"""What all built cases say."""
