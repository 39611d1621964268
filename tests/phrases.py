"""Keep the catalogues in step with code and templates: `python -m tests.phrases`.

Takes every marked phrase out of code and templates, brings each language's catalogue up to date and compiles it. What has no
translation yet, or one of a phrase that has changed since, is printed; the tests don't let either through.
"""

import sys
from collections.abc import Iterator
from datetime import UTC, datetime
from io import BytesIO
from pathlib import Path

from babel.messages.catalog import Catalog, Message
from babel.messages.extract import extract_from_dir
from babel.messages.frontend import parse_mapping_cfg
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po

ROOT = Path(__file__).parents[1]
FOLDER = ROOT / "logbook" / "render" / "phrases"
KEYWORDS = {
    "_": None,
    "N_": None,
    "_n": (1, 2),
    "_c": ((1, "c"), 2),
    "many": (2, 3),
    "gettext": None,
    "pgettext": ((1, "c"), 2),
}
_NEVER = datetime(2026, 1, 1, tzinfo=UTC)
"""Catalogues have no date of their own: the same phrases give the same bytes."""


def template() -> Catalog:
    """Return every marked phrase, with where it stands and what is said of it to translators."""
    with (FOLDER / "babel.cfg").open() as told:
        methods, options = parse_mapping_cfg(told)  # type: ignore[no-untyped-call]
    found = Catalog(project="logbook", version="1", creation_date=_NEVER, charset="utf-8")
    found.header_comment = (
        "# Phrases of the pages, for translation. Taken from code and templates: python -m tests.phrases"
    )
    for folder in ("logbook", "templates"):
        taken = extract_from_dir(
            ROOT / folder, [(where.removeprefix(f"{folder}/"), how) for where, how in methods if where.startswith(folder)],
            {where.removeprefix(f"{folder}/"): option for where, option in options.items()},
            KEYWORDS, comment_tags=("For translators:",), strip_comment_tags=True,
        )  # fmt: skip
        for name, _line, message, comments, context in sorted(taken, key=lambda one: (one[0], one[1])):
            found.add(message, None, [(f"{folder}/{name}", 0)], auto_comments=comments, context=context)
    return found


def updated(language: str, phrases: Catalog) -> Catalog:
    """Return a language's catalogue with the phrases there are now; guesses none."""
    catalogue = kept(language)
    catalogue.update(phrases, no_fuzzy_matching=True)
    catalogue.obsolete.clear()
    catalogue.creation_date = catalogue.revision_date = _NEVER
    return catalogue


def kept(language: str) -> Catalog:
    """Return a language's catalogue as it lies in its file."""
    with (FOLDER / f"{language}.po").open("rb") as file:
        return read_po(file, locale=language)


def po_of(catalogue: Catalog) -> bytes:
    """Return a catalogue's file as people translate it."""
    out = BytesIO()
    write_po(out, catalogue, width=120, sort_output=False, include_lineno=False)
    return out.getvalue()


def mo_of(catalogue: Catalog) -> bytes:
    """Return a catalogue's file as the program reads it."""
    out = BytesIO()
    write_mo(out, catalogue)
    return out.getvalue()


def wanting(catalogue: Catalog) -> Iterator[Message]:
    """Give the phrases that have no translation, or a doubtful one."""
    for message in catalogue:
        told = message.string if isinstance(message.string, (tuple, list)) else (message.string,)
        if message.id and (message.fuzzy or not all(told)):
            yield message


def main() -> int:
    """Bring every catalogue up to date; 1 where something wants translating."""
    phrases = template()
    (FOLDER / "logbook.pot").write_bytes(po_of(phrases))
    left = 0
    for file in sorted(FOLDER.glob("*.po")):
        catalogue = updated(file.stem, phrases)
        file.write_bytes(po_of(catalogue))
        file.with_suffix(".mo").write_bytes(mo_of(catalogue))
        for message in wanting(catalogue):
            left += 1
            print(f"{file.stem}: {message.id!r}")
        print(f"{file.stem}: {len(catalogue)} phrases")
    return 1 if left else 0


if __name__ == "__main__":
    sys.exit(main())
