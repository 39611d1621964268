"""Say what the code of a problem means, with a bad and a good line, and what the reader did with it; without one, list them."""

from argparse import ArgumentParser, Namespace
from collections.abc import Iterable, Iterator, Sequence

from logbook.cli.say import CLEAN, WRONG_USAGE, Failure
from logbook.model.codes.entry import Chapter, Entry

WIDTH = 100


def arguments(parser: ArgumentParser) -> None:
    """Add which codes."""
    parser.add_argument("codes", metavar="CODE", nargs="*", help="the words in brackets at the end of a problem's line")


def run(asked: Namespace) -> int:
    """Print what the codes mean, and return the exit status."""
    from logbook.model.codes import CHAPTERS, ENTRIES

    codes = [code.strip("[]").casefold() for code in asked.codes]
    unknown = next((code for code in codes if code not in ENTRIES), None)
    if unknown is not None:
        raise Failure(_no_code(unknown, ENTRIES), WRONG_USAGE)
    if codes:
        print("\n\n".join("\n".join(page(ENTRIES[code])) for code in dict.fromkeys(codes)))
    else:
        print("\n".join(listed(CHAPTERS)))
    return CLEAN


def page(entry: Entry) -> Iterator[str]:
    """Give the lines that tell of one code."""
    yield entry.code
    yield ""
    yield from _wrapped(entry.means)
    yield ""
    if entry.in_words:
        yield from _wrapped(f"So it is told:  {entry.bad}")
        yield from _wrapped(f"So it is right: {entry.good}")
    else:
        for said, sample in (("So it is told, ", entry.bad), ("So it is right, ", entry.good)):
            yield f"  {said}{entry.where}:"
            yield from (f"      {line}" for line in entry.lines(sample))
            yield ""
    yield from ([""] if entry.in_words else [])
    yield from _wrapped(f"What was done: {entry.read}")


def listed(chapters: Iterable[Chapter]) -> Iterator[str]:
    """Give the lines that list every code with the first sentence about it."""
    for chapter in chapters:
        yield chapter.title
        for entry in chapter.entries:
            yield f"  {entry.code:<24} {_cut(entry.means, WIDTH - 27)}"
        yield ""
    yield "logbook explain CODE says more of one."


def _cut(text: str, width: int) -> str:
    """Return a text, cut between words where it is too long."""
    if len(text) <= width:
        return text.rstrip(".")
    return f"{text[: width - 4].rsplit(' ', 1)[0]} ..."


def _wrapped(text: str) -> Sequence[str]:
    import textwrap

    return textwrap.wrap(text, WIDTH, initial_indent="  ", subsequent_indent="  ", break_long_words=False)


def _no_code(code: str, known: Iterable[str]) -> str:
    import difflib

    near = difflib.get_close_matches(code, list(known), n=1)
    hint = f"did you mean {near[0]}?" if near else "logbook explain lists the codes"
    return f"there is no code '{code}'; {hint}"
