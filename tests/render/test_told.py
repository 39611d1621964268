"""Sentences that came with figures: each is found again by its text, and said in another language."""

import re
from collections.abc import Iterator
from gettext import NullTranslations
from pathlib import Path

import pytest
from msgspec import Struct

from logbook.model import reasons
from logbook.model.figures import Reckoned
from logbook.model.named import ByName
from logbook.read.folder import read_folder
from logbook.reckon.trip import reckon_trips
from logbook.redact.policy import policy_of
from logbook.render.language import Speech, speaking
from logbook.render.told import is_known, told
from tests.ledger import redacted
from tests.untranslated import made_up

SAMPLES = Path(__file__).parents[2] / "sample_logs"

STANDS = {
    "degrees": "-0.5",
    "enough": "5",
    "factor": "1.15 (ФРГ 2011)",
    "factors": "1.17 (ФРГ 2011), 1.4 (ФРГ (новый))",
    "file": "1103.yaml",
    "fish": "2.5",
    "hours": "1.2e+02",
    "lines": "lines 3, 9 and 4 more",
    "n": "3",
    "nos": "2–9, 12",
    "part": "0.8",
    "pen": "P1",
    "port": "Sulvik",
    "species": "cod (gutted; the fleet file could state 1.15 (ФРГ 2011)), saithe",
    "states": "gutted and headed, wings",
    "which": "tows 2–9, 12",
    "why": reasons.NO_SPEED,
}
"""Something that may stand in a sentence, by its name there; in Cyrillic what is a name of our own."""

TYPED = frozenset({"P1", "Sulvik", "yaml", "cod", "saithe", "kg", "h", "C", "e"})


PHRASES = {
    "{which}: {why}": "{why} ({which})",
    "tows {nos}": "hal {nos}",
    "no distance": "ingen distanse",
    "gutted": "sløyd",
    "usual state {states}": "vanligvis {states}",
    "{this} or {that}": "{this} eller {that}",
    "assumed: a sea of {degrees} °C": "antatt: {degrees} °C i sjøen",
    "reckoned: × {factors}": "regnet: × {factors}",
}


class Norwegian(NullTranslations):
    """A catalogue with a few phrases in it, and a decimal comma."""

    def gettext(self, message: str) -> str:
        return PHRASES.get(message, message)

    def pgettext(self, context: str, message: str) -> str:
        return "," if context == "decimal mark" else message


@pytest.mark.parametrize("sentence", reasons.every())
def test_every_sentence_is_found_again(sentence: str) -> None:
    text = sentence.format(**STANDS)

    assert is_known(text)
    assert told(text) == text


@pytest.mark.parametrize("sentence", reasons.every())
def test_every_sentence_is_said_in_another_language(sentence: str) -> None:
    with speaking(made_up()):
        said = told(sentence.format(**STANDS))

    left = set(re.findall(r"[A-Za-z][\w.-]*", said))
    assert left <= TYPED, said


def test_sentences_have_no_names_but_those_that_can_be_found() -> None:
    names = {name for sentence in reasons.every() for name in re.findall(r"\{(\w+)\}", sentence)}

    assert names == STANDS.keys()


def test_words_may_change_places_and_numbers_have_the_decimal_mark() -> None:
    with speaking(Speech("nb", Norwegian())):
        assert told("tows 2–9, 12: no distance") == "ingen distanse (hal 2–9, 12)"
        assert told("assumed: a sea of 8.5 °C; reckoned: × 1.17 (EU 2.0)") == (
            "antatt: 8,5 °C i sjøen; regnet: × 1,17 (EU 2.0)"
        )
        assert told("usual state gutted or reckoned: × 1.4 (NO 1999)") == (
            "vanligvis sløyd eller regnet: × 1,4 (NO 1999)"
        )


def test_what_no_sentence_says_stays_as_it_is() -> None:
    with speaking(made_up()):
        assert told("net torn: wings; fixed or not") == "net torn: wings; fixed or not"
        assert told("") == ""
    assert not is_known("tow 3: nobody knows why")


def test_names_that_look_like_sentences_or_braces_are_names() -> None:
    pen = "the hold; {n} or so"
    text = reasons.PEN_OUTSIDE.format(pen=pen)

    with speaking(made_up()):
        assert pen in told(text)


@pytest.fixture(scope="module")
def sample() -> tuple[Reckoned, ...]:
    folder = read_folder(SAMPLES)
    return reckon_trips(folder.trips, folder.fleet, folder.problems)


@pytest.mark.parametrize("edition", ["office", "crew", "public"])
def test_everything_that_is_said_of_figures_in_the_sample_logs_is_known(
    sample: tuple[Reckoned, ...], edition: str
) -> None:
    said = set(_said(redacted(sample, policy_of(edition, read_folder(SAMPLES).fleet))))

    assert len(said) > 20
    assert {text for text in said if not is_known(text)} == set()


def _said(record: object) -> Iterator[str]:
    """Give every basis and gap in figures, whatever record they stand in."""
    if isinstance(record, Reckoned):
        yield from _said(record.figures)
    elif isinstance(record, Struct):
        yield from (words for _, words in getattr(record, "basis", ()))
        yield from getattr(record, "incomplete", ())
        for name in record.__struct_fields__:
            yield from _said(getattr(record, name))
    elif isinstance(record, ByName):
        for value in record.values():
            yield from _said(value)
    elif isinstance(record, tuple):
        for value in record:
            yield from _said(value)
