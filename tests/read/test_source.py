"""Bytes to letters: what editors, old code pages, bad transfers and power cuts make of a log."""

import codecs
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.read.report import Report
from logbook.read.source import MAX_BYTES, decode, one_line_end
from tests.read.trees import HEAD, kept, read, told

NORTHERN = "vessel: Håkon\nfrom: 67°12.4'N 014°30.2'E\nremarks: fair – “ok” … 5 kr\n"


def decoded(data: bytes) -> tuple[str | None, list[str]]:
    report = Report("f")
    text = decode(data, report)
    return text, [f"{each.place.line}:{each.place.column} {each.severity} {each.code}" for each in report.problems]


# The marks are those of the Unicode Standard, chapter 23.8 (byte order mark), as Python's `codecs` has them.
@pytest.mark.parametrize(
    ("encoding", "mark"),
    [
        ("utf-8", b""),
        ("utf-8", codecs.BOM_UTF8),
        ("utf-16-le", codecs.BOM_UTF16_LE),
        ("utf-16-be", codecs.BOM_UTF16_BE),
        ("utf-32-le", codecs.BOM_UTF32_LE),
        ("utf-32-be", codecs.BOM_UTF32_BE),
    ],
)
def test_unicode_is_read_with_its_mark(encoding: str, mark: bytes) -> None:
    assert decoded(mark + NORTHERN.encode(encoding)) == (NORTHERN, [])


@pytest.mark.parametrize("encoding", ["utf-16-le", "utf-16-be"])
def test_utf16_without_a_mark_is_read_with_a_warning(encoding: str) -> None:
    assert decoded(HEAD.encode(encoding)) == (HEAD, ["1:1 warning encoding"])


def test_another_code_page_is_read_as_windows_1252() -> None:
    data = "crew: 4\n" + NORTHERN

    assert decoded(data.encode("cp1252")) == (data, ["2:10 warning encoding"])


def test_lines_of_two_editors_are_each_read_by_their_own_code_page() -> None:
    data = "skipper: Åse\r\n".encode() + "vessel: Håkon\r\n".encode("cp1252") + "remarks: blåst".encode()

    assert decoded(data) == ("skipper: Åse\nvessel: Håkon\nremarks: blåst", ["2:10 warning encoding"])


def test_a_warning_of_another_code_page_says_how_many_lines() -> None:
    _, problems = read("remarks: å\nskipper: ø\n".encode("cp1252"))

    assert problems[0].message == "this line and 1 more are not UTF-8 and read as Windows-1252"


# Code page 850 as Python's codec has it (IBM CP00850): å is byte 86, the degree sign F8, which Windows-1252 reads as ø.
@pytest.mark.parametrize("text", ["vessel: Håkon\n", "from: 67°12.4'N 014°30.2'E\n"])
def test_an_old_dos_code_page_is_recognised(text: str) -> None:
    _, problems = read(text.encode("cp850"))

    assert "old DOS code page" in problems[0].message


def test_typed_quotes_of_windows_are_no_dos_letters() -> None:
    _, problems = read("skipper: the boy’s\n".encode("cp1252"))

    assert "DOS" not in problems[0].message


def test_an_undefined_byte_is_shown_as_lost() -> None:
    assert decoded(b"vessel: H\x8dk\n") == (
        "vessel: H\ufffdk\n",
        ["1:10 warning encoding", "1:10 warning letters-lost"],
    )


def test_zero_bytes_of_a_power_cut_are_dropped() -> None:
    assert decoded(HEAD.encode() + bytes(512)) == (HEAD, ["3:1 warning zero-tail"])
    assert decoded(b"vessel: Petrel" + bytes(9)) == ("vessel: Petrel", ["1:15 warning zero-tail"])


def test_zero_letters_of_a_power_cut_are_dropped_from_utf16_too() -> None:
    assert decoded(HEAD.encode("utf-16") + bytes(512)) == (HEAD, ["3:1 warning zero-tail"])


def test_zero_bytes_in_the_middle_are_no_utf16() -> None:
    text, said = decoded(HEAD.encode() + bytes(40) + b"\ncrew: 4\n")

    assert text == HEAD + " " * 40 + "\ncrew: 4\n"
    assert said == ["3:1 warning control-character"]


@pytest.mark.parametrize("data", [bytes(1), bytes(4096)])
def test_a_file_of_zero_bytes_alone_is_an_error(data: bytes) -> None:
    assert decoded(data) == (None, ["1:1 error zero-bytes"])


@pytest.mark.parametrize("data", [b"", b"\r\n  \t\n", codecs.BOM_UTF8, b"\x1a"])
def test_an_empty_file_is_an_error(data: bytes) -> None:
    assert decoded(data) == (None, ["1:1 error file-empty"])


def test_the_dos_sign_for_the_end_of_a_file_is_dropped() -> None:
    assert decoded(HEAD.encode() + b"\x1a") == (HEAD, [])
    assert decoded(HEAD.encode() + b"\x1a\x1a\0") == (HEAD, ["3:1 warning zero-tail"])


def test_a_letter_cut_in_two_at_the_end_is_dropped() -> None:
    assert decoded("vessel: Hå".encode()[:-1]) == ("vessel: H", ["1:10 warning cut-short"])
    assert decoded("vessel: Hå".encode("utf-16")[:-1]) == ("vessel: H", ["1:10 warning cut-short"])


def test_a_letter_of_another_code_page_at_the_end_is_not_taken_for_one_cut_in_two() -> None:
    assert decoded("vessel: Hå, Hå".encode("cp1252")) == ("vessel: Hå, Hå", ["1:10 warning encoding"])


# PNG: ISO/IEC 15948 5.2; JPEG: ITU-T T.81 B.1.1.3; GIF: GIF89a 17; PDF: ISO 32000-1 7.5.2; zip: APPNOTE 4.3.7;
# gzip: RFC 1952 2.3.1; RTF 1.9.1; SQLite: "Database File Format" 1.3. The others from memory.
@pytest.mark.parametrize(
    ("data", "kind"),
    [
        (b"\x89PNG\r\n\x1a\n", "picture"),
        (b"\xff\xd8\xff\xe0", "picture"),
        (b"GIF89a", "picture"),
        (b"II*\0", "picture"),
        (b"%PDF-1.7", "PDF"),
        (b"PK\x03\x04\x14", "spreadsheet"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "spreadsheet"),
        (b"{\\rtf1\\ansi vessel: Petrel\\par}", "rich text"),
        (b"\x1f\x8b\x08", "compressed"),
        (b"SQLite format 3\0", "database"),
        (b"<!DOCTYPE html>\n<html>", "web page"),
        (b"\r\n <HTML>", "web page"),
        (b"<?xml version='1.0'?>", "XML"),
        (bytes(range(1, 32)) * 3 + b"vessel: Petrel", "program"),
    ],
)
def test_a_file_of_another_kind_is_told_by_its_first_bytes(data: bytes, kind: str) -> None:
    root, problems = read(data)

    assert root is None
    assert [problem.code for problem in problems] == ["not-text"]
    assert kind in problems[0].message


def test_a_log_has_two_megabytes_at_most() -> None:
    line = b"# " + b"x" * 97 + b"\n"

    assert told(line * (MAX_BYTES // 100 + 1)) == ["1:1 file-too-big"]
    assert told(line * (MAX_BYTES // 100)) == ["1:1 no-log"]


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r", "\r\r\n"], ids=ascii)
def test_line_ends_of_any_system_are_the_same(end: str) -> None:
    assert one_line_end(NORTHERN.replace("\n", end)) == NORTHERN
    assert kept(NORTHERN.replace("\n", end)) == kept(NORTHERN)


def test_line_ends_may_be_mixed() -> None:
    assert one_line_end("a\r\nb\nc\rd\r\r\ne\n\rf") == "a\nb\nc\nd\ne\n\nf"


@given(st.text(st.characters(codec="utf-8", exclude_categories=("C", "Z")), max_size=60))
def test_letters_come_through_as_they_were_typed(text: str) -> None:
    typed = f"x{text}\n"

    assert decoded(typed.encode()) in ((typed, []), (typed, decoded(typed.encode())[1]))
    assert unicodedata.normalize("NFC", decoded(typed.encode())[0] or "") == unicodedata.normalize("NFC", typed)
