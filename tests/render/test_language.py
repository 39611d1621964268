"""The languages of the pages: every phrase is in every catalogue, and what belongs to a language is as the Unicode CLDR has it."""

import re
import string
from datetime import date
from pathlib import Path

import pytest
from babel import Locale
from babel.dates import get_day_names, get_month_names
from babel.messages.catalog import Message

from logbook.model.language import ENGLISH, LANGUAGES
from logbook.render import shown
from logbook.render.guides import GUIDES, guide_of
from logbook.render.language import speaking, speech_of
from tests.phrases import FOLDER, kept, mo_of, po_of, template, updated, wanting
from tests.untranslated import build_made_up, untranslated

OTHERS = sorted(set(LANGUAGES) - {ENGLISH})
_HELD = re.compile(r"\{\w*\}|%\(\w+\)s|%%|</?\w+[^>]*>|&\w+;")


def texts(message: Message) -> list[tuple[str, str]]:
    if isinstance(message.id, (tuple, list)):
        return [(message.id[min(place, 1)], told) for place, told in enumerate(message.string or ())]
    return [(message.id, str(message.string))]


def test_every_language_has_a_catalogue_and_every_catalogue_a_language() -> None:
    assert {file.stem for file in FOLDER.glob("*.po")} == {file.stem for file in FOLDER.glob("*.mo")} == set(OTHERS)


@pytest.mark.parametrize("tag", OTHERS)
def test_a_catalogue_has_every_phrase_and_is_compiled(tag: str) -> None:
    phrases = template()
    catalogue = updated(tag, phrases)

    assert (FOLDER / "logbook.pot").read_bytes() == po_of(phrases), "python -m tests.phrases"
    assert (FOLDER / f"{tag}.po").read_bytes() == po_of(catalogue), "python -m tests.phrases"
    assert (FOLDER / f"{tag}.mo").read_bytes() == mo_of(catalogue), "python -m tests.phrases"
    assert [message.id for message in wanting(catalogue)] == []


@pytest.mark.parametrize("tag", OTHERS)
def test_a_translation_holds_what_the_phrase_holds(tag: str) -> None:
    for message in kept(tag):
        for phrase, told in texts(message) if message.id and message.context != "date" else ():
            assert set(_HELD.findall(phrase)) >= set(_HELD.findall(told)) or isinstance(message.id, tuple), (
                phrase,
                told,
            )
            if not isinstance(message.id, (tuple, list)):
                assert sorted(_HELD.findall(phrase)) == sorted(_HELD.findall(told)), (phrase, told)


@pytest.mark.parametrize("tag", sorted(LANGUAGES))
def test_months_days_and_numbers_are_as_the_unicode_cldr_has_them(tag: str) -> None:
    # Unicode CLDR, by way of babel.
    spoken, locale = speech_of(tag), Locale.parse(tag)

    assert spoken.months == tuple(get_month_names("wide", locale=locale)[month] for month in range(1, 13))
    assert spoken.weekdays == tuple(get_day_names("wide", locale=locale)[day] for day in range(7))
    assert spoken.decimal == locale.number_symbols["latn"]["decimal"]
    for brief, wide in zip(spoken.brief_months, spoken.months, strict=True):
        assert wide.startswith(brief)
    for brief, wide in zip(spoken.brief_weekdays, spoken.weekdays, strict=True):
        assert wide.startswith(brief)


def test_a_language_gives_dates_and_numbers_its_own_form() -> None:
    with speaking(speech_of("nb")):
        assert shown.full_date(date(2026, 3, 5)) == "5. mars 2026"
        assert shown.day(date(2026, 3, 5)) == "torsdag 5. mars 2026"
        assert shown.fixed(1234.5, 1) == "1\u202f234,5"
        assert shown.month("2026-03") == "Mars 2026"
    assert shown.full_date(date(2026, 3, 5)) == "5 March 2026"


@pytest.mark.parametrize(
    ("tag", "names"),
    [
        ("en", ["Ångström", "Auk", "Östra", "Pen 2", "Pen 10", "Zephyr"]),
        ("nb", ["Auk", "Pen 2", "Pen 10", "Zephyr", "Ægir", "Østra", "Ångström"]),
    ],
)
def test_names_stand_in_the_alphabet_of_the_language(tag: str, names: list[str]) -> None:
    # The Norwegian alphabet ends in æ, ø, å: Unicode CLDR collation, nb.
    turned = sorted(names, reverse=True)
    assert sorted(turned, key=speech_of(tag).place_in_alphabet) == names
    assert set("".join(speech_of(tag)._order)) >= set(string.ascii_lowercase)


def test_no_phrase_of_a_page_is_left_out_of_the_catalogue(tmp_path: Path) -> None:
    build_made_up(tmp_path / "site")
    guides = {guide_of(name, ENGLISH).title for name in GUIDES}
    left = {text for _, text in untranslated(tmp_path / "site") if text.partition(" – ")[0] not in guides}
    assert {text for text in left if not re.fullmatch(r"[\w./-]+|Did you mean \w+\?\.?", text)} == set()
