"""Find phrases that no catalogue knows: `python -m tests.untranslated [part of a page's path]`.

Builds the sample archive in a language made up for it, whose every phrase is spelt in Cyrillic letters. Whatever Latin words are
left on a page are either what people typed or a phrase that nobody marked; they are printed with the page and how often they stand.
"""

import re
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from contextlib import ExitStack
from functools import cache
from gettext import NullTranslations
from html.parser import HTMLParser
from pathlib import Path
from unittest.mock import patch

from logbook.build import build, of_trip, parallel
from logbook.build import edition as of_all
from logbook.render.language import Speech, speaking

ROOT = Path(__file__).parents[1]
SAMPLE = ROOT / "sample_logs"

_KEPT = re.compile(r"\{[^}]*\}|%\(\w+\)s|%%|<[^>]*>|&\w+;|&#\d+;")
_CYRILLIC = str.maketrans({chr(code): chr(0x410 + code % 32) for code in range(65, 91)} | {chr(code): chr(0x430 + code % 32) for code in range(97, 123)})  # fmt: skip
_WORD = re.compile(r"[A-Za-z]{2,}(?:['’][a-z]+)?")
_TYPED = frozenset({"bdi", "code", "kbd", "samp", "script", "style"})
_READ_OUT = frozenset({"alt", "title", "aria-label", "placeholder", "content", "summary"})
_SIGNS = frozenset(
    {
        "kg",
        "km",
        "kn",
        "nm",
        "kw",
        "csv",
        "gpx",
        "json",
        "geojson",
        "utc",
        "yaml",
        "eu",
        "no",
        "un",
        "wmo",
        "ilo",
        "iso",
        "rfc",
        "html",
        "svg",
        "atom",
        "icalendar",
        "datapackage",
        "ph",
        "mj",
        "kj",
    }
)
"""Units, file formats and standards, which every language has."""


class MadeUp(NullTranslations):
    """A catalogue that knows every phrase."""

    def gettext(self, message: str) -> str:
        """Return the phrase in Cyrillic letters; what is put in and HTML stay."""
        spelt, at = "", 0
        for kept in _KEPT.finditer(message):
            spelt += message[at : kept.start()].translate(_CYRILLIC) + kept[0]
            at = kept.end()
        return spelt + message[at:].translate(_CYRILLIC)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """Return the phrase said of that number."""
        return self.gettext(msgid1 if n == 1 else msgid2)

    def pgettext(self, context: str, message: str) -> str:
        """Return a phrase, save where the alphabet itself or a sign is asked for."""
        return message if context.startswith(("alphabet", "decimal")) else self.gettext(message)


@cache
def made_up() -> Speech:
    """Return the made-up language; its tag is the one for private use."""
    return Speech("x-made-up", MadeUp())


class _Texts(HTMLParser):
    """Takes our own texts out of a page: not what stands in elements for typed text, for codes, or told to be English."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.texts: list[str] = []
        self._within: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        named = dict(attrs)
        if tag in (self._within[-1:] or _TYPED) or named.get("lang") == "en" or named.get("class") == "code":
            self._within.append(tag)
        if tag == "meta" and named.get("name") != "description":
            return
        for name, value in attrs:
            if value and (name in _READ_OUT or (name.startswith("data-") and " " in value and name != "data-files")):
                self.texts.append(value)

    def handle_endtag(self, tag: str) -> None:
        if tag in self._within[-1:]:
            self._within.pop()

    def handle_data(self, data: str) -> None:
        if not self._within and data.strip():
            self.texts.append(" ".join(data.split()))


def typed_words() -> frozenset[str]:
    """Return every word of the sample logs."""
    found = {
        word.casefold() for file in SAMPLE.rglob("*.yaml") for word in _WORD.findall(file.read_text("utf-8", "replace"))
    }
    return frozenset(found) | _SIGNS


def texts_of(page: str) -> list[str]:
    """Return our own texts of a page, as they stand between its tags and in attributes that are read out."""
    taken = _Texts()
    taken.feed(page)
    return taken.texts


def untranslated(site: Path) -> Iterator[tuple[str, str]]:
    """Give page and text for every text with a word that is neither typed nor of the catalogue."""
    known = typed_words()
    for file in sorted(site.rglob("*.html")):
        for text in texts_of(file.read_text("utf-8")):
            if any(word.casefold() not in known for word in _WORD.findall(_KEPT.sub(" ", text))):
                yield file.relative_to(site).as_posix(), text


def build_made_up(site: Path, edition: str = "office") -> None:
    """Build the sample archive in the made-up language."""
    build_speaking(made_up(), site, edition)


def build_speaking(language: Speech, site: Path, edition: str) -> None:
    """Build the sample archive in a language that has no catalogue."""
    with ExitStack() as patched:
        for module in (of_all, of_trip):
            patched.enter_context(patch.object(module, "speech_of", lambda _tag: language))
        # Another process may know no such language.
        patched.enter_context(patch.object(parallel, "_processors", lambda: 1))
        patched.enter_context(speaking(language))
        build(SAMPLE, site, lambda _stage: None, (edition,))


def main() -> int:
    """Print what is left, each text once, with one page that has it."""
    part = sys.argv[1] if len(sys.argv) > 1 else ""
    with tempfile.TemporaryDirectory() as folder:
        build_made_up(Path(folder) / "site")
        found = [(page, text) for page, text in untranslated(Path(folder) / "site") if part in page]
    counted = Counter(text for _, text in found)
    first = {text: page for page, text in reversed(found)}
    for text, number in counted.most_common():
        print(f"{number:5} {first[text]}: {text[:160]}")
    print(f"{len(counted)} texts")
    return 1 if counted else 0


if __name__ == "__main__":
    sys.exit(main())
