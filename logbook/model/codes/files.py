"""Files that are no logs, and signs that no editor shows, explained."""

from logbook.model.codes.entry import Chapter, Where, explained

_NOTHING = "Nothing of it is read. The archive keeps the trip as it was last read."
_SAVE = "It is saved as plain text, encoding UTF-8."

FILES = Chapter(
    id="files",
    title="Files",
    entries=(
        explained(
            "cut-short",
            "The file ends in the middle of a letter, as after a full disk or a transfer that broke off. Entries may be missing.",
            "All that is there is read.",
            "The last of the two bytes of å is missing at the end of the file.",
            "The file is copied again, whole.",
            Where.FILE,
        ),
        explained(
            "encoding",
            "The file is not UTF-8, and letters with accents and degree signs may come out wrong.",
            "Lines that are UTF-8 are read so, the others as Windows-1252; UTF-16 is known by its zero bytes.",
            "A log with å or ° in it, saved as ANSI.",
            _SAVE,
            Where.FILE,
        ),
        explained(
            "file-empty",
            "There is nothing in the file. A power cut or a full disk while saving leaves one.",
            _NOTHING,
            "A file of no bytes, or of blanks alone.",
            "A copy, or the editor's own backup, is put in its place.",
            Where.FILE,
        ),
        explained(
            "file-too-big",
            "A log of a trip has some kilobytes; over 2 MB it is something else, or all the trips of a year.",
            _NOTHING,
            "A file of 2.4 MB.",
            "One trip a file.",
            Where.FILE,
        ),
        explained(
            "file-unreadable",
            "The computer does not let the file be read: it may be open elsewhere, not allowed, or on a disk that is failing.",
            _NOTHING,
            "A file that only somebody else may read.",
            "A file that everybody of the office may read.",
            Where.FILE,
        ),
        explained(
            "log-renamed",
            "The name ends in .yaml.txt: Notepad adds .txt where the kind of file is not set to all files.",
            "The file is not read as a log.",
            "trip-14.yaml.txt",
            "trip-14.yaml",
            Where.FILE,
        ),
        explained(
            "not-followed",
            "There is a link or a device where a log should be. Links are not followed, since they may lead out of the folder or round in a ring.",
            "It is not read.",
            "A shortcut named trip-14.yaml.",
            "The log itself.",
            Where.FILE,
        ),
        explained(
            "not-text",
            "The file is a picture, a document of a word processor, or something else that is no plain text.",
            _NOTHING,
            "A document saved by a word processor and named trip-14.yaml.",
            _SAVE,
            Where.FILE,
        ),
        explained(
            "too-many-problems",
            "More is wrong in the file than anyone reads.",
            "What was told first stands; the rest is not told, though all of it is read.",
            "A log with more than a thousand problems.",
            "What is told first is put right, and the log checked again.",
            Where.FILE,
        ),
        explained(
            "too-much",
            "There are more entries in the file than any trip has.",
            "What comes after is not read.",
            "A log with two hundred thousand items.",
            "One trip a file.",
            Where.FILE,
        ),
        explained(
            "zero-bytes",
            "There are only zero bytes in the file, as a power cut leaves them while a file is saved.",
            _NOTHING,
            "Forty zero bytes.",
            "A copy, or the editor's own backup, is put in its place.",
            Where.FILE,
        ),
        explained(
            "zero-tail",
            "The file ends in zero bytes, as a power cut leaves them while a file is saved. Entries may be missing.",
            "The zero bytes are left out and the rest is read.",
            "A log with forty zero bytes at its end.",
            "The log without them, and with its last entries.",
            Where.FILE,
        ),
    ),
)

_OUT = "It is left out."
_SPACE = "It is read as a space."

SIGNS = Chapter(
    id="signs",
    title="Signs that no editor shows",
    entries=(
        explained(
            "control-character",
            "There is a sign in the text that is none to be read, as old programs and broken transfers leave it.",
            _SPACE,
            "skipper: M.\x01Aldane",
            "skipper: M. Aldane",
        ),
        explained(
            "double-encoded",
            "A letter was saved in one encoding, opened in another and saved again, so that two signs stand in its place.",
            "The text is read as it stands.",
            "skipper: HÃ¥kon",
            "skipper: Håkon",
        ),
        explained(
            "invisible-character",
            "There is a sign in the text that has no width, as web pages and messages carry along.",
            _OUT,
            "skipper: M. Al\u200bdane",
            "skipper: M. Aldane",
        ),
        explained(
            "letters-lost",
            "A program put a question mark in a diamond where it could not read a letter, and saved the file so. The letter can't be brought back.",
            "The text is read as it stands.",
            "skipper: H\ufffdkon",
            "skipper: Håkon",
        ),
        explained(
            "line-separator",
            "There is a sign that some programs take for the end of a line and others not.",
            _SPACE,
            "remarks: one\u2028two",
            "remarks: one two",
        ),
        explained(
            "notepad-log",
            "A file that begins with .LOG has Notepad add date and time at its end each time it is opened.",
            "The line is left out.",
            ".LOG\nvessel: Solan Bright\nsailed: 2026-03-04 05:30\ntows:\n  - 1810-1940, cod 2 baskets",
            "vessel: Solan Bright\nsailed: 2026-03-04 05:30\ntows:\n  - 1810-1940, cod 2 baskets",
            Where.WHOLE,
        ),
        explained(
            "odd-space",
            "A space that is none to YAML stands where it wants a plain one: a wide one, or one that does not break.",
            "It is read as a plain one.",
            "crew:\u00a011",
            "crew: 11",
        ),
        explained(
            "page-break",
            "A line begins with the sign that has printers begin a new page; some old programs put it in.",
            "It is left out.",
            "\x0ccrew: 11",
            "crew: 11",
        ),
    ),
)
